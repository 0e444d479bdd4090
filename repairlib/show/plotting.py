"""What every chart shares: matplotlib settings for text that stays text, and byte-stable SVG.

Draw inside `with rc_context(STYLE)`, on a Figure of your own; pyplot is never touched.
"""

from __future__ import annotations

import io
from typing import Any

from matplotlib.backends.backend_svg import FigureCanvasSVG
from matplotlib.figure import Figure

STYLE: dict[Any, Any] = {
    "svg.hashsalt": "repairlib",
    "svg.fonttype": "none",
    "text.parse_math": False,
    "font.size": 12,
    "font.family": "sans-serif",
    "font.sans-serif": ["Helvetica", "Arial", "Liberation Sans", "DejaVu Sans"],
}


def svg_of(figure: Figure) -> str:
    """The figure as an SVG document: the same bytes on each run, no date and no random ids."""
    text = io.StringIO()
    FigureCanvasSVG(figure).print_svg(text, metadata={"Date": None, "Creator": None})
    return text.getvalue()
