"""One part on the plan of a board, from what the caller says of it."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from repairlib.core.errors import RepairlibError
from repairlib.show.box import Box

POLARITIES = ("polar", "non-polar", "none")
STATES = ("to do", "here", "behind", "keep")


@dataclass(frozen=True)
class Placed:
    """One part on the plan, lengths already in SVG units."""

    reference: str
    x: float
    y: float
    half_width: float
    half_height: float
    round: bool
    angle: float | None  # radians, None where the positive end is not known
    polarity: str
    state: str
    open: bool = False
    handed_on: bool = False
    stop: int = 0  # its number on the route; 0 for a part that is no stop

    @property
    def box(self) -> Box:
        return Box(
            self.x - self.half_width,
            self.y - self.half_height,
            self.x + self.half_width,
            self.y + self.half_height,
        )

    @property
    def room_inside(self) -> bool:
        """Whether NP can be written in the part itself."""
        return min(self.half_width, self.half_height) >= 12

    @property
    def label(self) -> str:
        words = [f"{self.reference}?" if self.open else self.reference]
        if self.polarity == "non-polar" and not self.room_inside:
            words.append("NP")
        return " ".join(words)


def place(part, width_mm: float, height_mm: float, scale: float) -> Placed:
    """The part in SVG units; raises RepairlibError for one that cannot be drawn."""
    reference = str(field(part, "reference") or "").strip()
    x, y = _length(part, reference, "x_mm"), _length(part, reference, "y_mm")
    diameter = field(part, "diameter_mm")
    if diameter:
        wide = high = _length(part, reference, "diameter_mm")
    else:
        wide, high = _length(part, reference, "width_mm"), _length(part, reference, "height_mm")
    if not (0 <= x <= width_mm and 0 <= y <= height_mm):
        raise RepairlibError(
            f"{reference} at {x:g}, {y:g} mm",
            "this place is off the board",
            f"x from 0 to {width_mm:g} mm, y from 0 to {height_mm:g} mm",
        )
    angle = field(part, "angle_deg")
    return Placed(
        reference=reference,
        x=x * scale,
        y=y * scale,
        half_width=wide * scale / 2,
        half_height=high * scale / 2,
        round=bool(diameter),
        angle=None if angle in (None, "") else _length(part, reference, "angle_deg") * pi / 180,
        polarity=_word(part, reference, "polarity", "none", POLARITIES),
        state=_word(part, reference, "state", "to do", STATES),
        open=bool(field(part, "open")),
        handed_on=bool(field(part, "handed_on")),
        stop=int(field(part, "stop") or 0),
    )


def field(part, name: str):
    return part.get(name) if isinstance(part, dict) else getattr(part, name, None)


def _length(part, reference: str, name: str) -> float:
    value = field(part, name)
    try:
        number = float(value)
    except (TypeError, ValueError):
        number = float("nan")
    if number - number != 0:
        raise RepairlibError(
            value, f"{reference or 'a part'} needs {name} as a number", "e.g. 12.5"
        )
    return number


def _word(part, reference: str, name: str, absent: str, accepted: tuple[str, ...]) -> str:
    word = field(part, name) or absent
    if word not in accepted:
        raise RepairlibError(word, f"not a {name} for {reference}", ", ".join(accepted))
    return word
