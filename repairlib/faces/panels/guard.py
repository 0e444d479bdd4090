"""What the browser does for every panel: keys stay in it, and each control has a name.

ipywidgets can do neither, so this is one small widget of JavaScript, `guard.js`, in each panel.
"""

from __future__ import annotations

from pathlib import Path

import anywidget


class Guard(anywidget.AnyWidget):
    """Nothing to be seen: it works on the panel that it stands in."""

    _esm = Path(__file__).with_name("guard.js")
