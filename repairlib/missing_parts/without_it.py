"""What happens without a part, and whether leaving it out is worse than waiting for a new one.

Leaving out is judged for a set that is handed back; a short run on the bench is another question,
and each kind says what it asks for.
"""

from __future__ import annotations

from functools import cache
from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, calculator, found
from repairlib.core.tables import read_table
from repairlib.core.verdicts import CANNOT_TELL, CONDITIONS, MAY_STAY, NEVER
from repairlib.core.wording import sentence
from repairlib.missing_parts.kinds import KINDS, kind_named

OTHERS, ALONE, NOT_KNOWN = "others of its kind on the same net", "none", "not known"
LOW, MAINS = "low voltage", "mains side"
WORSE = {NEVER: "yes", CONDITIONS: "no, with these conditions", MAY_STAY: "no"}
_FIND_OUT = "find out whether others of its kind lie on the same net: by eye, and by meter"
_MAINS = "a part of the mains side is neither left out nor replaced but by a qualified person"


class Without(NamedTuple):
    """What comes of leaving a kind of part out.

    `without` is what is seen, `harm` what may be destroyed, "" for nothing. `verdict` holds where
    it is alone, `with_others` where others of its kind lie on the same net, "" where that changes
    nothing. `bench` says what a short run on the bench asks for.
    """

    without: str
    harm: str
    verdict: str
    with_others: str
    conditions: str
    bench: str
    hazards: tuple[str, ...]
    source: str


@cache
def _table() -> dict[str, Without]:
    names = [name for name in Without._fields if name != "hazards"]
    return {
        row["kind"]: Without(
            **{name: row[name] for name in names},
            hazards=tuple(filter(None, row["hazards"].split(";"))),
        )
        for row in read_table("without-part")
    }


def left_out(kind: str) -> Without:
    """What comes of leaving out a part of that kind.

    Raises RepairlibError for a kind that is not known, with those there are.

    >>> left_out("fuse").verdict, left_out("ferrite bead").verdict
    ('do not', 'only with these conditions')
    """
    return _table()[kind_named(kind).name]


@calculator(
    topic="missing parts",
    title="Without the missing part",
    sources=("common practice",),
)
def without_part(
    kind: Annotated[str, Choice(tuple(KINDS), "What stood there, at its job.")],
    beside: Annotated[
        str, Choice((OTHERS, ALONE, NOT_KNOWN), "What else is there of its kind.")
    ] = NOT_KNOWN,
    where: Annotated[str, Choice((LOW, MAINS), "Which side of the supply.")] = LOW,
) -> Found:
    """What happens without a part, and whether leaving it out is worse than waiting for it.

    The verdict is "do not" where waiting is better, "only with these conditions", "may stay" for a
    place that was never fitted, and "cannot tell" where it hangs on what is not known yet. On the
    mains side nothing is left out. Raises RepairlibError for a word that is not among the choices.
    Source: common practice.

    >>> finding = without_part("chip tantalum", "none")
    >>> finding.verdict, finding.worse_than_waiting
    ('do not', 'yes')
    >>> without_part("chip tantalum").verdict
    'cannot tell'
    """
    row = left_out(kind)
    verdict, reason = _judged(row, beside, where)
    hazards = dict.fromkeys(row.hazards + (("mains",) if where == MAINS else ()))
    values = {
        "without_it": row.without,
        "may_be_destroyed": row.harm or "nothing by itself",
        "worse_than_waiting": WORSE.get(verdict, CANNOT_TELL),
        "on_the_bench": "no, it is for a qualified person" if where == MAINS else row.bench,
    }
    notes = [f"Its job: {KINDS[kind].job}."]
    if KINDS[kind].protects:
        notes.append("It protects: nobody sees that it is gone until it was needed.")
    notes.append("On the bench: a supply that limits its current, and your face away.")
    return found(
        values,
        working=[f"without it: {row.without}", *([f"at worst: {row.harm}"] if row.harm else ())],
        verdict=verdict,
        reason=reason,
        notes=notes,
        sources=(row.source,),
        cautions=hazards,
    )


def _judged(row: Without, beside: str, where: str) -> tuple[str, str]:
    """The verdict and its reason."""
    if where == MAINS and row.verdict != MAY_STAY:
        return NEVER, _MAINS
    verdict = row.verdict
    if row.with_others and beside == OTHERS:
        verdict = row.with_others
    elif row.with_others not in ("", row.verdict) and beside == NOT_KNOWN:
        worst = sentence(f"alone on its net it must not be left out: {row.harm}")
        return CANNOT_TELL, f"{_FIND_OUT}. {worst} Until then, wait"
    if verdict == NEVER:
        return NEVER, f"waiting is better: {row.harm}"
    return verdict, row.conditions
