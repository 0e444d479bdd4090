"""Which pad the bar of a chip tantalum goes to: only by what the board shows and a meter reads.

The bar is the plus. Every witness counts alike: two that contradict each other decide nothing.
"""

from __future__ import annotations

from typing import NamedTuple

from repairlib.core.quantity import brief
from repairlib.polarity import check_polarity

LEFT, RIGHT = "left pad", "right pad"
OTHER = {LEFT: RIGHT, RIGHT: LEFT}
NOT_SEEN, NEITHER, NOT_MEASURED = "not seen", "neither pad", "not measured"
BOTH = "both pads"
MARKED = (LEFT, RIGHT, NOT_SEEN)
GROUNDED = (LEFT, RIGHT, NEITHER, BOTH, NOT_MEASURED)
NO_MARK = "no mark"
FAMILY, BAR = "moulded tantalum chip", "bar at one end"
LEAST_PART = 0.5  # of the rail's voltage that a reading across the pads must have to say anything
NEXT = (
    "with the power off find by meter which pad is joined to ground; where neither is, power the "
    "board with the place empty and a current limit, and measure left pad against right pad"
)


class Bar(NamedTuple):
    """The pad that the bar goes to, "" where that is not known; why; and what is still to do."""

    pad: str
    why: tuple[str, ...]
    next: str

    @property
    def proven(self) -> bool:
        """Whether a meter said it, not print alone."""
        return bool(self.pad) and not self.next


def bar_of(
    rail: float,
    board_mark: str = NO_MARK,
    mark_at: str = NOT_SEEN,
    ground_at: str = NOT_MEASURED,
    across: float | None = None,
) -> Bar:
    """Which pad takes the bar, by the board's mark, the ground pad, and the voltage `across`.

    `rail` is the voltage of the rail against ground [V], negative on a negative rail, where ground
    is the plus side. `across` [V] is the left pad against the right one, under power, with the
    place empty. Nothing is guessed: no witness, or two that contradict each other, give no pad.

    >>> bar_of(5, "plus sign", "left pad", "right pad").pad
    'left pad'
    >>> bar_of(-12, ground_at="right pad").pad, bar_of(5, "plus sign", "left pad", "left pad").pad
    ('right pad', '')
    """
    said = [
        one
        for one in (_by_mark(board_mark, mark_at), _by_ground(rail, ground_at), _by(rail, across))
        if one
    ]
    why = tuple(words for _, words, _ in said)
    pads = {pad for pad, _, _ in said if pad}
    if ground_at == BOTH:
        return Bar("", why, f"fit nothing before it is found; then {NEXT}")
    if len(pads) > 1:
        return Bar("", (*why, "These contradict each other."), f"fit nothing: {NEXT}")
    if not pads:
        nothing = "Nothing on the board says where the plus is."
        return Bar("", why or (nothing,), NEXT)
    (pad,) = pads
    by_meter = any(meter and one for one, _, meter in said)
    return Bar(pad, why, "" if by_meter else f"print can be wrong: {NEXT}")


def _by_mark(board_mark: str, mark_at: str) -> tuple[str, str, bool] | None:
    """What the board's mark says: the pad, in words, and that no meter said it."""
    if board_mark == NO_MARK:
        return None
    finding = check_polarity(FAMILY, BAR, board_mark)
    words = finding.working[1]
    if finding.board_shows not in ("positive", "negative"):
        return "", f"{words} It does not say where the plus is.", False
    if mark_at == NOT_SEEN:
        return "", f"{words} Say at which pad it is.", False
    pad = mark_at if finding.board_shows == "positive" else OTHER[mark_at]
    return pad, f"{words} It is at the {mark_at}.", False


def _by_ground(rail: float, ground_at: str) -> tuple[str, str, bool] | None:
    """What the meter said of ground."""
    if ground_at == NOT_MEASURED:
        return None
    if ground_at == BOTH:
        words = "Both pads are joined to ground: the rail has a short circuit, to be found first."
        return "", words, True
    if ground_at == NEITHER:
        return "", "Neither pad is joined to ground, so the voltage across them decides.", True
    pad = OTHER[ground_at] if rail > 0 else ground_at
    side = "the other pad is the plus" if rail > 0 else "it is the plus of a negative rail"
    return pad, f"By meter the {ground_at} is joined to ground: {side}.", True


def _by(rail: float, across: float | None) -> tuple[str, str, bool] | None:
    """What the voltage across the empty place says."""
    if across is None:
        return None
    read = f"The left pad reads {brief(across, 'V')} against the right pad"
    if abs(across) < LEAST_PART * abs(rail):
        return "", f"{read}, too little for a rail of {brief(rail, 'V')} to decide.", True
    return (LEFT if across > 0 else RIGHT), f"{read}.", True
