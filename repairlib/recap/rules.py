"""The rules of a recap: which capacitors age, and what to fit in place of one that does.

Each rule has a name and a sentence, and every proposal lists the rules that made it.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from repairlib.core import series
from repairlib.core.limits import hazards_of_capacitor
from repairlib.core.once import Once
from repairlib.core.quantity import engineering
from repairlib.recap import words
from repairlib.recap.capacitor import NEARLY_1_UF, Capacitor
from repairlib.recap.kind_ratings import next_rating
from repairlib.recap.old_kinds import (
    is_of_a_flash,
    is_oil_filled,
    is_on_the_line,
    may_be_a_cell,
    may_be_paper,
    of_a_valve_set,
)
from repairlib.recap.places import MEMORY, PLACES, START_UP, due, hazards_there, is_special_when_dry
from repairlib.recap.sizes import CanSize, typical_can

REPLACE, KEEP, JUDGE, HOLD = "replace", "keep", "judge", "hold"
STAY = "may stay"  # it ages, but it was measured and is as new

# name: (sentence, key in sources.SOURCES)
RULES = {
    "what ages": (
        "Wet aluminium electrolytics dry out with the years: replace them all, bipolar ones too.",
        "common practice",
    ),
    "film and ceramic stay": (
        "Film, mica and ceramic parts have nothing that dries out: leave them.",
        "common practice",
    ),
    "tantalum is judged": (
        "Solid tantalum and polymer parts do not dry out. Replace one that is shorted, burnt or "
        "named by the service notes, by the same type; never swap the type.",
        "common practice",
    ),
    "mains parts": (
        "Parts across the mains, or from the mains to the chassis, crack and burn: same safety "
        "class, same value, at least the same AC rating, fitted by a qualified person.",
        "common practice",
    ),
    "old paper leaks": (
        "Waxed or moulded paper lets dc through, onto a grid or a base, and burns what comes after "
        "it: replace it by film of the same value and at least the same dc rating. Across the "
        "mains, or from the mains to the chassis, it is a mains part instead.",
        "common practice",
    ),
    "perhaps old paper": (
        "No kind stated, at a rating of valve sets: waxed paper leaks and goes, film, mica and "
        "ceramic stay. Look which it is; the set holds high voltage.",
        "common practice",
    ),
    "oil in the can": (
        "Old motor-run, ballast and oil-paper parts may hold PCB oil, a poison: leave it. Do not "
        "open it, do not touch a leak. A qualified person fits the new one and hands in the old.",
        "common practice",
    ),
    "wet tantalum": (
        "Wet-slug tantalum holds sulphuric acid in a metal case, and a reversed volt destroys it: "
        "leave it. Like for like only, wet tantalum of the same value and rating, fitted by "
        "somebody who knows it; nothing dry or of aluminium in its place unasked.",
        "common practice",
    ),
    "memory cell": (
        "A memory back-up cell is a double-layer capacitor: a double-layer cell of the same "
        "voltage and capacitance, made for currents as small as the old one's or larger, goes in; "
        "never an ordinary electrolytic, which leaks more than a memory draws.",
        "common practice",
    ),
    "place": (
        "Where a list says by its words where a part works, that place says what is due: ripple "
        "current, ESR, pulses, a steady value or long life.",
        "common practice",
    ),
    "kind not stated": (
        "Without a kind, 1 µF and more is taken as a polar aluminium electrolytic, less as film "
        "or ceramic. Look at the part before you order.",
        "common practice",
    ),
    "nothing is guessed": (
        "A value, a rating or a kind that is missing or has two readings holds the line, and so "
        "does an unknown word beside the part: read or measure the old part.",
        "common practice",
    ),
    "measured as new": (
        "A part that is as new by capacitance and ESR (or D) and looks sound may stay. It goes on "
        "ageing: write the values down and measure again within a year.",
        "common practice",
    ),
    "measured as worn": (
        "A part past its end-of-life limit must go, whatever its kind; so must one that is bulged, "
        "leaking, burst, corroded, hot or smells, and a wet one that is no longer as new.",
        "common practice",
    ),
    "same capacitance": ("The new part has the capacitance of the old one.", "common practice"),
    "made value": (
        "A value that is no longer made becomes the nearest E6 value, or else E12 value, within "
        "the old part's tolerance (20 % where none is stated).",
        "common practice",
    ),
    "voltage not below": (
        "The rated voltage is the old one, or else the next standard rating above it.",
        "common practice",
    ),
    "105 °C": ("The new part is rated for 105 °C, whatever the old one was.", "common practice"),
    "polarity kept": (
        "A polar part goes in with its plus where the old plus was.",
        "common practice",
    ),
    "bipolar stays bipolar": (
        "A bipolar part is replaced by a bipolar one: a polar part would be reversed at times.",
        "common practice",
    ),
    "build kept": ("Radial stays radial, axial stays axial.", "common practice"),
    "ripple and ESR": (
        "In a switch-mode place, or where the list asks for low impedance, the ripple current of "
        "the new part is not below the old one's and its impedance at 100 kHz not above: read both "
        "data sheets. An ordinary part heats there and fails early.",
        "common practice",
    ),
    "fits the board": (
        "Where the board's room is known, the usual can of that rating must go into it. The data "
        "sheet of the part that is ordered decides.",
        "from memory",
    ),
}

_NO_RATING = (
    "no voltage rating stated: read it on the old part; a measured voltage is only its lower limit"
)
# What rules did, where that is the same for every part.
_HOT = ("105 °C", "a 105 °C part, whatever the old one was")
_STAYS_BIPOLAR = ("bipolar stays bipolar", "bipolar, as the old part")
_STAYS_POLAR = ("polarity kept", "polar, plus where the old plus was")
_STAYS_LOW = (
    "ripple and ESR",
    "low impedance: ripple current not below, impedance at 100 kHz not above the old part's",
)
_TOLERANCE = (-0.2, 0.2)
_HIGHEST_CAPACITANCE = 0.047  # F; no larger one is proposed unseen
_MOST_OF_A_START = 100.0  # V; common practice: above it "start" speaks of a motor


@dataclass(eq=False, slots=True)
class Proposal:
    """The new part: `farad` [F], `volts` [V], `kind`, `form`, and the `rules` behind it.

    `rules` are (name, what it did here). `can` is its usual size, None where not tabled;
    `low_impedance` says that it has to be such a type.
    """

    farad: float
    volts: float
    kind: str
    form: str
    can: CanSize | None
    rules: tuple[tuple[str, str], ...]
    low_impedance: bool = False

    @property
    def polar(self) -> bool:
        return self.kind not in (words.BIPOLAR, words.FILM)

    def __str__(self) -> str:
        value = f"{engineering(self.farad, 'F')} {engineering(self.volts, 'V')}"
        build = f" {self.form}" if self.form else ""
        if self.kind == words.FILM:
            return f"{value}{build} film"
        low = " low-impedance" if self.low_impedance else ""
        return f"{value} 105 °C{build} {'polar' if self.polar else 'bipolar'}{low} aluminium"


@dataclass(eq=False, slots=True)
class Decision:
    """What to do about a capacitor: `verdict`, `why`, the `rule`'s name, and what to mind.

    `verdict` is REPLACE, KEEP, JUDGE or HOLD. `proposal` is None unless it is REPLACE.
    `looks` are things to look at before ordering; `cautions` are keys of safety.HAZARDS.
    """

    capacitor: Capacitor
    verdict: str
    rule: str
    why: str = ""
    proposal: Proposal | None = None
    looks: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()

    def __post_init__(self):
        self.why = self.why or RULES[self.rule][0]

    @property
    def at_place(self) -> tuple[str, ...]:
        """What is due where the part works, in sentences; of what stays only what is special."""
        kind, names = self.capacitor.kind, self.capacitor.places
        if self.verdict == KEEP:
            names = tuple(filter(is_special_when_dry, names))
            kind = kind or words.FILM
        return tuple(due(name, kind) for name in names)


class Made:
    """What is made today for the values and ratings of one list, each looked up once."""

    def __init__(self) -> None:
        self.capacitance = Once(new_capacitance)  # [farad, tolerance, whether it may rise]
        self.rating = Once(_new_rating)  # [volts, kind]
        self.can = Once(typical_can)  # [farad, volts]


def decide(capacitor: Capacitor, valve_set: bool = False, made: Made | None = None) -> Decision:
    """What the rules say about that capacitor, of which only the list is known.

    `valve_set` says that the list is that of a valve set; `made` is shared by the parts of a list.

    >>> from repairlib.recap.ratings import describe
    >>> decision = decide(describe((("free", "25/15 elect"),)))
    >>> print(decision.verdict, decision.proposal)
    replace 22 µF 16 V 105 °C polar aluminium
    >>> decide(describe((("free", "25µF elect"),))).why
    'no voltage rating stated: read it on the old part; a measured voltage is only its lower limit'
    """
    kind, made = capacitor.kind, made or Made()
    if capacitor.doubts:
        return hold(capacitor, "; ".join(capacitor.doubts))
    if may_be_a_cell(capacitor.farad, capacitor.volts, MEMORY in capacitor.places):
        return Decision(capacitor, HOLD, "memory cell", cautions=_cautions(capacitor))
    if kind in (words.FILM, words.CERAMIC):
        return Decision(capacitor, KEEP, "film and ceramic stay", cautions=_cautions(capacitor))
    if words.WET_SLUG in capacitor.features:
        return Decision(capacitor, JUDGE, "wet tantalum", cautions=_cautions(capacitor))
    if kind in (words.TANTALUM, words.POLYMER):
        return Decision(capacitor, JUDGE, "tantalum is judged", cautions=_cautions(capacitor))
    if is_oil_filled(capacitor):
        return Decision(capacitor, JUDGE, "oil in the can", cautions=_cautions(capacitor))
    if is_on_the_line(capacitor):
        return Decision(capacitor, JUDGE, "mains parts", cautions=_cautions(capacitor))
    if capacitor.farad is None:
        return hold(capacitor, "no capacitance stated: read it on the old part")
    if kind == words.PAPER:
        return _film_for_paper(capacitor, made)
    if may_be_paper(capacitor, valve_set) and capacitor.farad < NEARLY_1_UF:
        return Decision(capacitor, JUDGE, "perhaps old paper", cautions=_cautions(capacitor))
    if not kind and capacitor.farad < NEARLY_1_UF:
        looks = ("no kind stated: if it is a small can with a stripe, it ages", *capacitor.looks)
        cautions = _cautions(capacitor)
        return Decision(capacitor, KEEP, "kind not stated", looks=looks, cautions=cautions)
    if capacitor.volts is None:
        return hold(capacitor, _NO_RATING)
    if capacitor.farad > _HIGHEST_CAPACITANCE:
        return hold(capacitor, "very large: look at the part, and read its rating again")
    if START_UP in capacitor.places and capacitor.volts >= _MOST_OF_A_START:
        return hold(capacitor, "perhaps a motor starting part, which has no plus: look at it")
    return _replacement(capacitor, made)


def decide_all(capacitors: Iterable[Capacitor]) -> list[Decision]:
    """What the rules say about each capacitor; a capacitor that stands twice is decided once."""
    capacitors = list(capacitors)
    different = dict.fromkeys(capacitors)
    valve_set, made = of_a_valve_set(different), Made()
    of = {one: decide(one, valve_set, made) for one in different}
    return [of[one] for one in capacitors]


def hold(capacitor: Capacitor, why: str) -> Decision:
    """The decision to wait, because of `why`."""
    return Decision(capacitor, HOLD, "nothing is guessed", why, cautions=_cautions(capacitor))


def _replacement(capacitor: Capacitor, made: Made) -> Decision:
    rises = all(PLACES[name].rises for name in capacitor.places)
    farad, value_rule = made.capacitance[capacitor.farad, capacitor.tolerance, rises]
    if farad is None:
        return hold(capacitor, value_rule[1])
    bipolar = capacitor.kind == words.BIPOLAR
    of_kind = words.BIPOLAR if bipolar else words.ALUMINIUM
    volts, volts_rule = made.rating[capacitor.volts, of_kind]
    if volts is None:
        why = f"rated {capacitor.volts:g} V, above the ratings listed here: find the part by hand"
        return hold(capacitor, why)
    rules = [value_rule, volts_rule, _HOT, _STAYS_BIPOLAR if bipolar else _STAYS_POLAR]
    rules += [("place", name) for name in capacitor.places]
    if capacitor.low_impedance:
        rules.append(_STAYS_LOW)
    if capacitor.form:
        rules.append(("build kept", capacitor.form))
    radial = capacitor.form in ("", "radial") and not bipolar
    can = made.can[farad, volts] if radial else None
    kind = capacitor.kind or words.ALUMINIUM
    low = capacitor.low_impedance
    proposal = Proposal(farad, volts, kind, capacitor.form, can, tuple(rules), low)
    looks = [f"the list asks for {feature}: choose such a type" for feature in capacitor.features]
    looks += capacitor.looks
    if not capacitor.kind:
        looks.append("no kind stated: look whether it is a polar can before you order")
    rule = "what ages" if capacitor.kind else "kind not stated"
    cautions = _cautions(capacitor)
    return Decision(capacitor, REPLACE, rule, "", proposal, tuple(looks), cautions)


def _film_for_paper(capacitor: Capacitor, made: Made) -> Decision:
    farad, value_rule = made.capacitance[capacitor.farad, capacitor.tolerance, True]
    if farad is None:
        return hold(capacitor, value_rule[1])
    if capacitor.volts is None:
        return hold(capacitor, _NO_RATING)
    volts, volts_rule = made.rating[capacitor.volts, words.FILM]
    if volts is None:
        return hold(capacitor, f"rated {capacitor.volts:g} V, above the film parts listed here")
    rules = (value_rule, volts_rule)
    proposal = Proposal(farad, volts, words.FILM, capacitor.form, None, rules)
    looks = (
        "see that it sits neither across the mains nor from the mains to the chassis: there it is "
        "a mains part",
        *capacitor.looks,
    )
    cautions = _cautions(capacitor)
    return Decision(capacitor, REPLACE, "old paper leaks", "", proposal, looks, cautions)


def _cautions(capacitor: Capacitor) -> tuple[str, ...]:
    paper = capacitor.kind == words.PAPER
    oil_filled = is_oil_filled(capacitor)
    found = hazards_of_capacitor(
        capacitor.volts,
        capacitor.ac,
        line_part=oil_filled or is_on_the_line(capacitor),
        oil=paper or oil_filled,
        farad=capacitor.farad,
        valves=(paper and not capacitor.ac) or is_of_a_flash(capacitor),
    )
    acid = ("wet tantalum",) if words.WET_SLUG in capacitor.features else ()
    there = hazards_there(capacitor.places)
    there = there if "mains" in there else ()
    return tuple(dict.fromkeys((*found, *acid, *there)))


def new_capacitance(
    farad: float, tolerance=None, rises: bool = True
) -> tuple[float | None, tuple[str, str]]:
    r"""The capacitance to fit for an old one [F], with the rule and what it did.

    `tolerance` is (low, high) as fractions; `rises` says that more than the old value will do.
    None when no made value is within it.

    >>> new_capacitance(50e-6)[1]
    ('made value', '50\xa0µF is no longer made: 47\xa0µF is 6.0 % less, within ±20 %')
    """
    if series.is_made(farad, "E12"):
        return farad, ("same capacitance", engineering(farad, "F"))
    low, high = tolerance or _TOLERANCE
    within = f"within ±{high * 100:g} %" if low == -high else f"within {low:+.0%} {high:+.0%}"
    if not rises:
        high, within = 0.0, f"at most {-low * 100:g} % less and never more"
    for name in ("E6", "E12"):
        candidates = {series.next_down(farad, name), series.next_up(farad, name)}
        allowed = [value for value in candidates if low <= value / farad - 1 <= high + 1e-9]
        if allowed:
            new = min(allowed, key=lambda value: max(value / farad, farad / value))
            change = abs(new / farad - 1) * 100
            more = f"{change:.1f} % {'more' if new > farad else 'less'}"
            old = f"{engineering(farad, 'F')} is no longer made"
            return new, ("made value", f"{old}: {engineering(new, 'F')} is {more}, {within}")
    why = f"{engineering(farad, 'F')} is no longer made, and no made value is {within}"
    return None, ("made value", why)


def _new_rating(old: float, kind: str) -> tuple[float | None, tuple[str, str]]:
    """The rated voltage [V] to fit for an old one, with the rule and what it did.

    None when none that high is made.
    """
    new = next_rating(old, kind)
    if new is None:
        return None, ("voltage not below", "")
    did = f"{engineering(new, 'V')}, as the old part"
    if new != old:
        did = f"{engineering(old, 'V')} is no standard rating today: {engineering(new, 'V')}"
    return new, ("voltage not below", did)
