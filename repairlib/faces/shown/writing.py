"""What is said while a memory chip is written: the step that is due, what the last one came to."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.core.html import Html, fold, listed, soft, text, told
from repairlib.core.safety import caution
from repairlib.core.wording import counted
from repairlib.faces.shown.images import (
    keeps_html,
    numbers_of,
    reads_html,
    sectors_html,
    with_picture,
)
from repairlib.firmware import (
    ERASED,
    GO,
    KEEP_LIST,
    KEPT,
    LEFT,
    READ,
    WRITE_STEPS,
    WRITTEN,
    Keep,
    WriteEvent,
    WriteState,
    read_image,
    sectors_that_differ,
)
from repairlib.show import draw_sectors

STEPS = len(WRITE_STEPS)


def card_html(state: WriteState) -> Html:
    """What to do next and why, with the dangers of just this."""
    if state.step is None:
        return told("right", "Every byte is as intended", [state.do])
    where = f"{WRITE_STEPS.index(state.step) + 1} of {STEPS}: {state.step}"
    head = f'<div style="font-size:1.2em;font-weight:600">{text(state.do)}</div>'
    why = f"<p>{text(state.why)}</p>"
    card = f'<div role="status">{soft(text(where))}{head}{why}</div>'
    return Html(card + caution(*state.cautions).short())


def came_html(state: WriteState) -> Html:
    """What the last event came to; "" before the first."""
    if not state.told:
        return Html("")
    if state.bad:
        return told("wrong", f"{state.backs[-1].path.name}: {state.bad.pattern}", [state.told])
    first, *more = state.told.split("; ")
    return told("told later", first, more)


def looked_at_html(state: WriteState, keeps: Sequence[Keep], donor: Path | None, erase: int) -> str:
    """What has to be looked at for the step that is due: reads, the keep-list, the sectors."""
    if state.step == READ and len(state.reads) > 1:
        return reads_html([read_image(one.path) for one in state.reads[-2:]])
    if state.step == KEEP_LIST and donor:
        return keeps_html(keeps, read_image(state.old[0].path), read_image(donor))
    if state.step in (GO, ERASED, WRITTEN) and state.intended:
        old, new = read_image(state.old[0].path), read_image(state.intended.path)
        sectors = sectors_that_differ(old, new, erase)
        return with_picture(sectors_html(sectors), draw_sectors(sectors, new.name))
    return ""


def answers_of(keeps: Sequence[Keep], kept: str, left: str) -> tuple[str, ...]:
    """KEPT or LEFT for each line of the list, out of the numbers typed for both.

    Raises RepairlibError for a number of no line, for one that is given both ways, and for lines
    without an answer.

    >>> answers_of([], "", "")
    ()
    """
    keep, leave = set(numbers_of(keeps, kept)), set(numbers_of(keeps, left))
    if both := keep & leave:
        raise RepairlibError(_numbers(both), "to be kept and to be left behind", "one of the two")
    if none := set(range(1, len(keeps) + 1)) - keep - leave:
        wrong = f"{counted(len(none), 'line')} without an answer"
        raise RepairlibError(_numbers(none), wrong, "each number, to be kept or to be left behind")
    return tuple(KEPT if number in keep else LEFT for number in range(1, len(keeps) + 1))


def so_far_html(events: Sequence[WriteEvent]) -> str:
    """Every step so far, folded."""
    if not events:
        return ""
    return fold(f"Done so far: {len(events)}", listed(map(_said, events), "ol"))


def _said(event: WriteEvent) -> str:
    volts = f"{event.volts:g} V, measured {event.measured:g} V" if event.volts else ""
    answers = [f"{answer}: {keep}" for keep, answer in zip(event.keeps, event.answers, strict=True)]
    says = (volts, Path(event.path).name, event.found, *answers)
    return f"{event.step}: {'; '.join(one for one in says if one)}"


def _numbers(some: set[int]) -> str:
    return ", ".join(map(str, sorted(some)))
