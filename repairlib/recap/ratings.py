"""What a line of a parts list says about a capacitor: capacitance, rated voltage, kind, build.

Covers the ways in which lists write them (`10/16`, `1000µ 25V`, `.1`, `10uF/35V`, `4u7`).
Nothing is guessed: whatever has two readings, or is left over, becomes a doubt in plain words.

Words too: in a description, a value or a line without headings, each word beside the part must be
understood when the part would count as polar aluminium. A remark (a column of remarks, or a cell
of its own that says nothing else of the part) and what looks like a maker's series is a look only.
"""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.core.limits import LINE_AC
from repairlib.markings import read
from repairlib.recap import words
from repairlib.recap.capacitor import NEARLY_1_UF, Capacitor
from repairlib.recap.old_kinds import may_be_a_cell
from repairlib.recap.part_numbers import is_a_code, is_plain, may_be_bipolar
from repairlib.recap.places import MEMORY
from repairlib.recap.said import LARGEST, Cells, Said, Says
from repairlib.recap.tokens import tidy, tokens
from repairlib.recap.wording import may_be_a_series
from repairlib.recap.words import ALUMINIUM, BIPOLAR, CERAMIC, FILM, MAINS, PAPER, POLYMER, TANTALUM

# Above it a part under that title, with no kind of its own, may belong to another section.
_MOST_UNDER_TITLE = dict.fromkeys(("", *words.KINDS), LARGEST) | {
    CERAMIC: NEARLY_1_UF,
    FILM: 9.9e-6,
}
_SMALLEST_WET = 0.0989e-6  # F; common practice: electrolytics begin at 0.1 µF
_LARGEST_ORDINARY = 1.0  # F; common practice: more is made at a few volts only


def describe(cells: tuple[tuple[str, str], ...], section: str = "") -> Capacitor:
    """The capacitor that the cells of one line describe; `section` is the kind in a title above.

    Each cell is (role, text) with a role of headings.ROLE_OF_HEADING, "unnamed" under an unknown
    heading, or "free" where there is none.

    >>> part = describe((("free", "10/16"), ("free", "elect.")))
    >>> part.farad, part.volts, part.kind
    (1e-05, 16.0, 'aluminium electrolytic')
    >>> describe((("value", "1,000"), ("kind", "elect"))).doubts
    ("'1,000' may be 1 or 1000",)
    """
    return weigh(Cells().say(cells), section)


def weigh(cells: tuple[Says, ...], section: str = "") -> Capacitor:
    """The same of cells that were read before (see said.Cells)."""
    said = Said()
    for says in cells:
        said.add(says)
    if not (said.farads or said.bare or said.codes):
        _look_among_part_numbers(said)
    return _weighed(said, section)


def _look_among_part_numbers(said: Said) -> None:
    """Take a value that stands under the heading of part numbers, as on a page set otherwise."""
    for says in Cells().say(("free", text) for text in said.part_numbers if _has_value(text)):
        said.add(says)


def _has_value(text: str) -> bool:
    return any(what in ("pair", "farads", "middle") for what, _ in tokens(tidy(text)))


def _weighed(said: Said, section: str) -> Capacitor:
    kind = _kind(said) or section
    _read_codes(said, kind)
    _settle_rails(said)
    farads, volts, forms = map(_different, (said.farads, said.volts, said.forms))
    if not farads and said.bare:
        farads = _from_bare_number(said, kind, bool(volts))
    if len(farads) > 1:
        both = " and ".join(f"{farad * 1e6:g} µF" for farad in farads)
        said.doubts.append(f"two capacitances: {both}")
    if len(volts) > 1:
        both = " and ".join(f"{value:g} V" for value in volts)
        said.doubts.append(f"two voltage ratings: {both}")
    if section == kind and not said.kinds and farads and farads[0] > _MOST_UNDER_TITLE[kind]:
        said.doubts.append(f"very large for the title above, which says {kind}")
    if farads:
        said.doubts += doubts_of_value(farads[0], kind)
    if words.BACK_UP.intersection(said.words) and may_be_a_cell(*_first(farads, volts), named=True):
        said.places.append(MEMORY)
    if farads and farads[-1] > _LARGEST_ORDINARY and not may_be_a_cell(*_first(farads, volts)):
        said.doubts.append(f"{farads[-1]:g} F is not a value that is made at such a rating")
    ac = "ac" in said.signs or ("~" in said.signs and bool(said.volts))
    if ac:
        kind = _kind_of_an_ac_part(said, kind)
    counted = not words.COUNTS.isdisjoint(said.words)
    if kind == MAINS and counted and not ac and volts and volts[-1] < LINE_AC:
        said.doubts.append("x2 may be a safety class or a count of two")
    kind = _settle_words(said, kind, farads[0] if farads else None)
    if len(forms) > 1:
        said.doubts.append("two builds: " + " and ".join(forms))
    if kind == TANTALUM and words.WET_SLUG_WORDS.intersection(said.words):
        said.features.append(words.WET_SLUG)
    return Capacitor(
        farads[0] if len(farads) == 1 else None,
        volts[0] if len(volts) == 1 else None,
        kind,
        ac,
        forms[0] if len(forms) == 1 else "",
        said.tolerances[-1] if said.tolerances else None,
        _each_once(said.features),
        _each_once(said.doubts),
        _each_once(said.looks),
        tuple(said.bare),
        " ".join(said.texts),
        words.NOT_FITTED in said.signs and not said.doubts,
        _each_once(said.places),
    )


def _first(farads: list[float], volts: list[float]) -> tuple[float | None, float | None]:
    return farads[0] if farads else None, volts[0] if volts else None


def _settle_rails(said: Said) -> None:
    """The volts of a rail beside a rating are none; alone, or above it, they may be one."""
    if not said.volts and said.rails:
        said.looks.append(f"{max(said.rails):g} V may be what is there, not its rating: read it")
    if not said.volts or max(said.rails, default=0) > max(said.volts):
        said.volts += said.rails


def _different(said: list) -> list:
    """What was said, each once and in order; most lines say one thing once."""
    return sorted(set(said)) if len(said) > 1 else said


def _each_once(said: list[str]) -> tuple[str, ...]:
    """What was said, each once, as it came."""
    return tuple(dict.fromkeys(said)) if said else ()


def _settle_words(said: Said, kind: str, farad: float | None) -> str:
    """The kind, with a doubt for each word that could make a polar part of another."""
    if "poly" in said.words and kind in ("", ALUMINIUM):
        if not kind and farad is not None and farad < NEARLY_1_UF:
            kind = FILM
        else:
            said.doubts.append("'poly' may be a film or a polymer part")
    if kind not in ("", ALUMINIUM):
        return kind
    if not (said.words or said.unknown or said.apart or said.signs or said.part_numbers):
        return kind
    _weigh_part_numbers(said)
    if "~" in said.signs:
        said.doubts.append("'~' asks for a part that stands AC: look at the part")
    if kind and not said.places and not words.DEFLECTION.isdisjoint(said.words):
        said.looks.append(
            "perhaps in a deflection stage: see that it asks for no bipolar part, and fit a type "
            "for high ripple"
        )
    beside = said.unknown if kind else said.unknown + said.apart
    looks = [word for word in beside if kind and may_be_a_series(word)]
    coded = [word for word in said.apart if kind and is_a_code(word) and may_be_bipolar(word)]
    said.doubts += [f"'{word}' may mean a bipolar part: look at it" for word in coded]
    for word in [*looks, *said.apart] if kind else looks:
        said.looks.append(f"'{word}' is not known here: see that it asks for no bipolar part")
    for word in dict.fromkeys(beside):
        if word.lower() not in (*words.WITHOUT_POLARITY, "poly", *map(str.lower, looks)):
            said.doubts.append(f"'{word}' was not understood: look at the part")
    for word in words.WITHOUT_POLARITY:
        if word in said.words:
            said.doubts.append(f"'{word}' asks for a part without polarity: look at the part")
    return kind


def _weigh_part_numbers(said: Said) -> None:
    """A doubt or a look for each part number that may ask for a bipolar part."""
    for code in said.part_numbers:
        if may_be_bipolar(code):
            said.doubts.append(f"part number '{code}' may mean a bipolar part: look at it")
        elif not is_plain(code):
            said.looks.append(
                f"part number '{code}' is not known here: see that it asks for no bipolar part"
            )


def doubts_of_value(farad: float, kind: str) -> tuple[str, ...]:
    """What is doubtful about a value on that kind.

    >>> doubts_of_value(10e-9, ALUMINIUM)
    ('0.01 µF is very small for an aluminium electrolytic',)
    """
    if kind in (ALUMINIUM, BIPOLAR) and farad < _SMALLEST_WET:
        return (f"{farad * 1e6:g} µF is very small for an {kind}",)
    return ()


def _read_codes(said: Said, kind: str) -> None:
    """Take codes such as 104K or 1H104K, which electrolytic cans do not carry."""
    for code in said.codes:
        if kind in (ALUMINIUM, BIPOLAR):
            said.doubts.append(f"'{code}' is no marking of an {kind}")
            continue
        try:
            reading = read(code, part="tantalum" if kind == TANTALUM else "capacitor")[0]
        except RepairlibError as problem:
            said.doubts.append(problem.wrong)
            continue
        said.farads.append(reading.value)
        if "rated_voltage" in reading.carries:
            said.volts.append(float(reading.carries["rated_voltage"]))


def _kind(said: Said) -> str:
    """The one kind that the words name; a doubt when they name two that exclude each other."""
    if any(word in words.MOTOR for word in said.words):
        return MAINS  # motor starting parts are bipolar electrolytics on the mains
    kinds = set(said.kinds)
    if len(kinds) > 1:
        kinds.discard(ALUMINIUM) if kinds & {BIPOLAR, TANTALUM, POLYMER} else None
    if MAINS in kinds:
        kinds -= {FILM, PAPER, CERAMIC}
    if len(kinds) > 1:
        said.doubts.append("two kinds of part: " + " and ".join(sorted(kinds)))
        return MAINS if MAINS in kinds else ""
    return kinds.pop() if kinds else ""


def _kind_of_an_ac_part(said: Said, kind: str) -> str:
    if kind in (ALUMINIUM, TANTALUM, POLYMER):
        said.doubts.append(f"an AC voltage on a part that is listed as {kind}")
        return kind
    if max(said.volts) >= LINE_AC:
        return MAINS
    if kind in ("", BIPOLAR):
        said.doubts.append("rated in AC volts: find a part with that AC rating by hand")
    return kind


def _from_bare_number(said: Said, kind: str, rated: bool) -> list[float]:
    """The capacitance of a figure without a unit, where the custom of lists settles it.

    Below 1 it is µF; on an electrolytic it is µF. Otherwise it may be pF or a code as well.
    """
    first = said.bare[0]
    value = said.number(first, first)
    if value is None:
        said.bare.pop(0)
        return []
    if kind in (CERAMIC, FILM, PAPER, MAINS) and value >= 1:
        return []  # stays on the board, so its exact value does not matter here
    if value == 0:
        said.doubts.append(f"'{first}' is not a value that is made")
        return []
    if value < 1 or kind in (ALUMINIUM, BIPOLAR):
        said.bare.pop(0)
        return [float(f"{value!r}e-6")]
    if kind in (TANTALUM, POLYMER):
        return []
    if len(said.bare) > 1 or not rated:
        listed = ", ".join(said.bare)
        said.doubts.append(f"no unit and no kind of part: {listed} cannot be told apart")
    else:
        said.doubts.append(f"no unit and no kind of part: {first} may be µF or pF")
    return []
