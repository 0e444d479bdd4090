"""Lines of a list or table that gave nothing, each kept with the reason."""

from __future__ import annotations

from dataclasses import dataclass

# What a line can be, besides a line of parts.
HEADING, BLANK, TITLE, OTHER_PART, NOT_FITTED, UNREADABLE = (
    "heading",
    "blank",
    "title or note",
    "not a capacitor",
    "not fitted",
    "unreadable",
)


@dataclass(eq=False, slots=True)
class SetAside:
    """A line that gave no parts: its number, its text, what it is, and why."""

    line: int
    text: str
    what: str
    why: str = ""

    def __repr__(self) -> str:
        return f"line {self.line}: {self.what}" + (f" ({self.why})" if self.why else "")
