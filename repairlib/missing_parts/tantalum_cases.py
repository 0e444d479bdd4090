"""Cases of tantalum chips: which one stands well on two pads, and how much goes into it.

The pads are compared with the terminals of each case: a case letter differs from maker to maker,
and pads differ from board to board, so neither is compared with a list of pads.
"""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from repairlib.core.errors import RepairlibError, as_printed
from repairlib.core.quantity import brief
from repairlib.core.tables import read_table
from repairlib.markings import TANTALUM_CASES

ON_THE_PAD = 0.5  # of a terminal's length, at least; common practice
TOE = 0.7e-3  # m that a pad goes on beyond the end of the part, at most; common practice
BESIDE = 0.6e-3  # m by which a pad is wider than the part, at most; common practice
SLACK = 0.05e-3  # m to which pads are measured with a calliper


class Pads(NamedTuple):
    """Two equal pads, in metres: `length` along the part, `gap` between them, `width` across."""

    length: float
    gap: float
    width: float

    @property
    def span(self) -> float:
        """From the outer end of one pad to that of the other."""
        return 2 * self.length + self.gap


class Case(NamedTuple):
    """A case by its EIA number: the letters that makers use, body and terminals in metres."""

    eia: str
    letters: tuple[str, ...]
    length: float
    width: float
    height: float
    terminal_length: float
    terminal_width: float
    source: str

    @property
    def name(self) -> str:
        """The number, and the letters that makers use for it."""
        return f"{self.eia} ({' or '.join(self.letters)})" if self.letters else self.eia


@cache
def cases() -> dict[str, Case]:
    """Every case by its EIA number, small ones first.

    >>> cases()["3528-21"].name, cases()["7343-43"].name, cases()["6032-15"].height
    ('3528-21 (B)', '7343-43 (E or X)', 0.0015)
    """
    names = [name for name in Case._fields if name not in ("eia", "letters", "source")]
    return {
        row["eia"]: Case(
            eia=row["eia"],
            letters=_letters(row["eia"], row["letter"]),
            source=row["source"],
            **{name: float(row[f"{name}_mm"]) / 1000 for name in names},
        )
        for row in read_table("tantalum-cases")
    }


def _letters(eia: str, of_one_maker: str) -> tuple[str, ...]:
    """The letters of a case at the makers known here, each once, in order."""
    others = [
        letter for letter, sizes in TANTALUM_CASES.items() if eia in [size for size, _ in sizes]
    ]
    return tuple(sorted({of_one_maker, *others} - {""}))


def misfit(case: Case, pads: Pads) -> str:
    """Why the case does not stand well on the pads; "" where it does.

    >>> print(misfit(cases()["6032-28"], Pads(1.4e-3, 1.2e-3, 2.8e-3)))
    it is 6 mm long and hangs over pads that end 4 mm apart
    """
    if pads.span < case.length - SLACK:
        return f"it is {_mm(case.length)} long and hangs over pads that end {_mm(pads.span)} apart"
    if (pads.span - case.length) / 2 > TOE + SLACK:
        return f"its {_mm(case.length)} end far inside pads that end {_mm(pads.span)} apart"
    on_the_pad = case.length / 2 - max(pads.gap / 2, case.length / 2 - case.terminal_length)
    if on_the_pad < ON_THE_PAD * case.terminal_length - SLACK:
        return f"its terminals hardly reach pads with a gap of {_mm(pads.gap)}"
    if pads.width < case.terminal_width - SLACK:
        return f"its terminals are {_mm(case.terminal_width)} wide, the pads only {_mm(pads.width)}"
    if pads.width > case.width + BESIDE + SLACK:
        return f"pads {_mm(pads.width)} wide are made for a wider part"
    return ""


def cases_on(pads: Pads) -> tuple[Case, ...]:
    """The cases that stand well on these pads, flat ones first.

    >>> [case.eia for case in cases_on(Pads(1.4e-3, 1.2e-3, 2.8e-3))]
    ['3528-12', '3528-21']
    """
    return tuple(case for case in cases().values() if not misfit(case, pads))


def nearest_misfit(pads: Pads) -> str:
    """Where no case stands well on these pads: the nearest by length and width, and why not."""
    near = min(
        cases().values(),
        key=lambda case: (
            abs(pads.span - case.length) + abs(pads.width - (case.terminal_width + case.width) / 2)
        ),
    )
    return f"the nearest is {near.name}: {misfit(near, pads)}"


def case_named(text: object) -> str:
    """The EIA number of a case that is given by its letter or by its number without the height.

    Raises RepairlibError where makers mean several cases by it, or none.

    >>> case_named("b"), case_named("case D")
    ('3528-21', '7343-31')
    """
    read = as_printed(text).strip().upper().removeprefix("CASE").removesuffix("CASE").strip()
    meant = [
        case for case in cases().values() if read in (*case.letters, case.eia.partition("-")[0])
    ]
    if len(meant) == 1:
        return meant[0].eia
    accepted = " or ".join(case.eia for case in meant) or ", ".join(cases())
    raise RepairlibError(text, "not a known case", accepted)


class Largest(NamedTuple):
    """The largest usual capacitance [F] of a case at a rating, and where it was seen."""

    farad: float
    part: str
    source: str


@cache
def _largest() -> dict[str, dict[float, Largest]]:
    found: dict[str, dict[float, Largest]] = {}
    for row in read_table("tantalum-largest"):
        one = Largest(float(row["largest_uf"]) / 1e6, row["part"], row["source"])
        found.setdefault(row["eia"], {})[float(row["rated_v"])] = one
    return found


def largest_in(eia: str, rated: float) -> Largest | None:
    """The largest usual capacitance of a case at a rated voltage [V] or at the next one above it.

    None where nothing is listed: flat cases, and ratings above the highest made. Ordinary parts
    with manganese dioxide; newer and low-ESR series hold more.

    >>> largest_in("3528-21", 10).farad, largest_in("3528-21", 4).farad
    (4.7e-05, 0.0001)
    >>> largest_in("3528-12", 10) is None
    True
    """
    ratings = _largest().get(eia, {})
    made = min((one for one in ratings if one >= rated * (1 - 1e-9)), default=None)
    return None if made is None else ratings[made]


def _mm(metre: float) -> str:
    return brief(metre, "m")
