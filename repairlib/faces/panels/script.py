"""The script of a panel whose view is JavaScript of its own."""

from __future__ import annotations

from pathlib import Path

HERE = Path(__file__).parent


def script(name: str) -> str:
    """The text of a script, with `make` before it, by which it builds its elements."""
    return "".join((HERE / one).read_text(encoding="utf-8") for one in ("making.js", name))
