"""`python -m repairlib image write`: how far the writing of a chip has come, and what comes next.

Nothing is written here. The steps of `repairlib.firmware.write_plan` are gone through with what is
named, from the first one on each time, so that no step can be passed over.
"""

from __future__ import annotations

from collections.abc import Iterator

from repairlib.core.errors import RepairlibError
from repairlib.faces.image_keep import numbers_of
from repairlib.faces.plain_text import caution_lines

WRITE_OPTIONS = (
    *("--chip", "--supply", "--measured", "--donor", "--twin", "--keep", "--leave", "--looked"),
    *("--new", "--back", "--why", "--why-new"),
)


def write_verb(words: list[str], options: dict) -> tuple[dict, list[str]]:
    """The answer as JSON and in lines."""
    from repairlib.firmware import KEEP_LIST, begin_write, read_size, write_step

    if "--chip" not in options:
        raise RepairlibError("write", "the size of the chip is not named", "--chip 8MiB")
    state = begin_write(read_size(options["--chip"]))
    told: list[dict] = []
    lines: list[str] = []
    for step, events in ((state.step, _reads), (KEEP_LIST, _writing)):
        if state.step != step:  # no two equal reads yet
            break
        for event in events(words, options, lines):
            state = write_step(state, event)
            told.append({"step": event.step, "told": state.told})
    lines = [f"{one['step']}: {one['told']}" for one in told] + lines
    lines += [f"next, {state.step}: {state.do}" if state.step else f"next: {state.do}", state.why]
    document = {
        "told": told,
        "step": state.step,
        "takes": list(state.takes),
        "do": state.do,
        "why": state.why,
    }
    return document, [*lines, *caution_lines(state.cautions)]


def _reads(words: list[str], options: dict, lines: list[str]) -> Iterator:
    """The supply and the reads, as far as they are named; `lines` take what is not."""
    from repairlib import firmware as the

    if not {"--supply", "--measured"} <= options.keys():
        lines.append("not named yet: --supply and --measured")
        return
    supply, measured = (_volts(options[name]) for name in ("--supply", "--measured"))
    yield the.WriteEvent(the.SUPPLY, volts=supply, measured=measured)
    for word in words:
        yield the.WriteEvent(the.READ, path=word, found=options.get("--why", ""))


def _writing(words: list[str], options: dict, lines: list[str]) -> Iterator:
    """What comes behind two equal reads, as far as it is named; `lines` take what is not."""
    from repairlib import firmware as the

    keeping = _keeping(words[-1], options, lines)
    if keeping is None:
        return
    yield keeping
    if "--new" not in options:
        lines.append("not named yet: --new")
        return
    donor, reason = options.get("--donor", ""), options.get("--why-new", "")
    yield the.WriteEvent(the.INTENDED, path=options["--new"], donor=donor, found=reason)
    if options["--back"]:
        for step in (the.GO, the.ERASED, the.WRITTEN):
            yield the.WriteEvent(step, found=the.DONE)
    for back in options["--back"]:
        yield the.WriteEvent(the.READ_BACK, path=back)


def _keeping(read: str, options: dict, lines: list[str]):
    """The answered keep-list as an event; None while an answer is missing."""
    from repairlib import firmware as the

    keeps: tuple = ()
    if "--donor" in options:
        boards = [the.read_image(one) for one in (options["--donor"], *options["--twin"])]
        keeps = the.keep_list(the.read_image(read), boards[0], boards[1:])
    if not keeps:
        if "--looked" not in options:
            lines.append("not named yet: --donor, or --looked with who looked and how")
            return None
        return the.WriteEvent(the.KEEP_LIST, found=options["--looked"])
    every = set(range(1, len(keeps) + 1))
    keep, leave = (
        numbers_of(options[name], len(keeps), every) if name in options else set()
        for name in ("--keep", "--leave")
    )
    if both := keep & leave:
        raise RepairlibError(min(both), "named by --keep and by --leave", "one of the two")
    if not_said := sorted(every - keep - leave):
        lines += [f"{number}: {keeps[number - 1]}" for number in not_said]
        lines.append("not answered yet: --keep or --leave with these numbers, or with all")
        return None
    answers = tuple(the.KEPT if number in keep else the.LEFT for number in sorted(every))
    return the.WriteEvent(the.KEEP_LIST, keeps=keeps, answers=answers)


def _volts(typed: str) -> float:
    try:
        return float(typed.lower().removesuffix("v").strip())
    except ValueError:
        raise RepairlibError(typed, "no voltage", "volts, as 3.3") from None
