"""What a line of a parts list says about a capacitor: capacitance, rated voltage, kind, build.

Covers the ways in which lists write them (`10/16`, `1000µ 25V`, `.1`, `10uF/35V`, `4u7`).
Nothing is guessed: whatever has two readings, or is left over, becomes a doubt in plain words.

Words too: in a description, a value or a line without headings, each word beside the part must be
understood when the part would count as polar aluminium. A remark (a column of remarks, or a cell
of its own that says nothing else of the part) and what looks like a maker's series is a look only.
"""

from __future__ import annotations

import re
from functools import lru_cache

from repairlib.core.errors import RepairlibError
from repairlib.markings import read
from repairlib.recap import words
from repairlib.recap.capacitor import Capacitor
from repairlib.recap.wording import MOTOR, join_phrases, may_be_a_series, meaning
from repairlib.recap.words import ALUMINIUM, BIPOLAR, CERAMIC, FILM, MAINS, PAPER, POLYMER, TANTALUM

_NUMBER = r"(?:[0-9]{1,7}(?:[.,][0-9]{1,6})?|[.,][0-9]{1,6})"
_FARADS = r"(?:µf|uf|mfd|mmfd|mmf|uuf|nf|pf|mf|f|µ|u|n|p)"
_VOLTS = r"(?:v\.?\s?d\.?c\.?|v\.?\s?a\.?c\.?|wvdc|wv|volts?|v~|v-|v)"
_TOKENS = re.compile(
    rf"""
      (?P<percent>[±+-]?\s?[+-]?\s?[0-9]+(?:\.[0-9]+)?\s?%?\s?[/~,]?\s?[+-]\s?[0-9]+\s?%
                 |(?:±|\+/?-|\+)?\s?[0-9]+(?:\.[0-9]+)?\s?%)
    | (?P<size>{_NUMBER}\s?(?:mm)?\s?[x×]\s?{_NUMBER}\s?(?:mm)?(?![\w.])|{_NUMBER}\s?mm(?!\w))
    | (?P<degrees>[+-]?[0-9]{{2,3}}\s?(?:°\s?c|℃|deg\.?\s?c|c)(?![\w]))
    | (?P<pair>(?P<pair_c>{_NUMBER})\s?(?P<pair_unit>{_FARADS})?\s?/\s?
         (?P<pair_v>{_NUMBER})\s?(?P<pair_sign>{_VOLTS})?(?![\w/µ]|\.[0-9]))
    | (?P<middle>(?P<mid_whole>[0-9]{{0,3}})(?P<mid_unit>[pnuµ])(?P<mid_part>[0-9]{{1,3}})(?!\w))
    | (?P<volts>(?P<ac_first>ac|dc|wv)?\s?(?P<v>{_NUMBER})\s?(?P<v_sign>{_VOLTS})(?![\w])
         \s?(?P<ac_last>ac|dc|~)?(?!\w)
       |(?P<v_whole>[0-9]{{1,3}})v(?P<v_part>[0-9])(?!\w)
       |wv\s?(?P<v_after>{_NUMBER})(?!\w))
    | (?P<farads>(?P<c>{_NUMBER})\s?(?P<c_unit>{_FARADS})(?:(?<=f)(?=[0-9])|(?![a-z0-9µ])))
    | (?P<number>{_NUMBER}(?![\w.,]*\w))
    | (?P<word>[^\W\d_][\w.'-]*[\w.]|[^\W\d_])
    | (?P<other>[0-9][^\s/@]*)
    | (?P<sign>.)
    """,
    re.VERBOSE | re.IGNORECASE | re.DOTALL,
)
_CODE = re.compile(r"(?:[0-3][A-HJ-NP-Z])?[0-9]{3}[BCDFGJKMZ]", re.IGNORECASE)
_POWERS = {"µf": -6, "uf": -6, "mfd": -6, "µ": -6, "u": -6, "nf": -9, "n": -9, "pf": -12}
_POWERS |= {"p": -12, "mmfd": -12, "mmf": -12, "uuf": -12, "f": 0}
_MISSING = ("", "-", "--", "?", "??", "n/a", "na", "none", "unknown", "—", "–", "...")
# Values that lists write for a part of this size; outside, the line was misread.
_SMALLEST, _LARGEST = 1e-13, 1.0
_LEAST_POLYMER = 0.99e-6  # F; below it 'poly' is film
_MAINS_VOLTS = 100  # AC; from here a part may sit on the mains
# Above it a part under that title, with no kind of its own, may belong to another section.
_MOST_UNDER_TITLE = dict.fromkeys(("", *words.KINDS), _LARGEST) | {CERAMIC: 0.99e-6, FILM: 9.9e-6}
_STRICT = ("value", "volts", "free")  # columns in which every figure must be understood
_REMARKS = ("other", "form", "tolerance")  # columns in which an unknown word may stand
_MIXED = ("free", "unnamed")  # columns of which a cell may be a description or a remark
# In a remark these words speak of the place or of a neighbour.
_NOT_IN_REMARKS = ("motor", "bead", "safety", "mp", "ac")
_WITHOUT_POLARITY = ("crossover", "ac")


@lru_cache(maxsize=20_000)
def describe(cells: tuple[tuple[str, str], ...], section: str = "") -> Capacitor:
    """The capacitor that the cells of one line describe; `section` is the kind in a title above.

    Each cell is (role, text) with a role of words.ROLE_OF_HEADING, "unnamed" under an unknown
    heading, or "free" where there is none.

    >>> part = describe((("free", "10/16"), ("free", "elect.")))
    >>> part.farad, part.volts, part.kind
    (1e-05, 16.0, 'aluminium electrolytic')
    >>> describe((("value", "1,000"), ("kind", "elect"))).doubts
    ("'1,000' may be 1 or 1000",)
    """
    reader = _Reader()
    for role, text in cells:
        reader.read_cell(role, text)
    return reader.capacitor(section)


class _Reader:
    """Collects what the cells of one line say."""

    def __init__(self):
        self.texts: list[str] = []
        self.farads: list[float] = []
        self.volts: list[float] = []
        self.bare: list[str] = []
        self.codes: list[str] = []
        self.kinds: list[str] = []
        self.forms: list[str] = []
        self.features: list[str] = []
        self.doubts: list[str] = []
        self.looks: list[str] = []
        self.unknown: list[str] = []  # words not understood beside the part
        self.apart: list[str] = []  # and in cells of their own
        self.words: set[str] = set()
        self.tolerance: tuple[float, float] | None = None
        self.ac = False

    def read_cell(self, role: str, text: str) -> None:
        text = _tidy(text)
        if not text:
            return
        if role != "other":
            self.texts.append(text)
        if text.lower() in _MISSING:
            return
        before = self._said()
        unknown = []
        for found in _TOKENS.finditer(text):
            self._take(role, found.lastgroup and _outer(found), found, unknown)
        if not unknown or role in _REMARKS:
            return
        if role in _MIXED and self._said() == before:
            self.apart += unknown
        else:
            self.unknown += unknown

    def _said(self) -> tuple[int, ...]:
        said = (self.farads, self.volts, self.bare, self.codes, self.kinds, self.forms)
        return tuple(map(len, said))

    def _take(self, role: str, what: str, found: re.Match, unknown: list[str]) -> None:
        if what == "word":
            unknown += self._take_word(found["word"], role)
        elif role == "other":
            return  # a page number or a price is not a rating
        elif what == "pair" and role != "volts":
            self._add_farads(found["pair_c"], found["pair_unit"] or "µ", found[0])
            self._add_volts(found["pair_v"], found["pair_sign"] or "v", found[0])
        elif what == "middle":
            number = (found["mid_whole"] or "0") + "." + found["mid_part"]
            self._add_farads(number, found["mid_unit"], found[0])
        elif what == "farads" and role != "volts":
            self._add_farads(found["c"], found["c_unit"], found[0])
        elif what == "volts":
            self._take_volts(found)
        elif what == "percent":
            self._take_tolerance(found[0])
        elif what == "number" and role == "volts":
            self._add_volts(found[0], "v", found[0])
        elif what == "number" and role in _STRICT:
            self.bare.append(found[0])
        elif what == "other" and _CODE.fullmatch(found[0]):
            self.codes.append(found[0].upper())
        elif (what in ("pair", "farads", "other") or found[0] == "?") and role in _STRICT:
            self.doubts.append(f"'{found[0].strip()}' was not understood")

    def _take_word(self, word: str, role: str) -> tuple[str, ...]:
        """Take what a word says; returns the pieces of it that were not understood."""
        lower = word.lower().rstrip(".-'")
        if role == "other" and lower == "ac":
            self.looks.append("a remark says AC: a part that sees AC is not polar")
        if role == "other" and lower in _NOT_IN_REMARKS:
            return ()
        self.words.add(lower)
        says = meaning(word)
        self.kinds += [
            kind for kind in says.kinds if role != "other" or kind in (BIPOLAR, MAINS, TANTALUM)
        ]
        self.forms += says.forms
        self.features += says.features
        return says.unknown

    def _take_volts(self, found: re.Match) -> None:
        if found["v_whole"]:
            self._add_volts(f"{found['v_whole']}.{found['v_part']}", "v", found[0])
        elif found["v_after"]:
            self._add_volts(found["v_after"], "v", found[0])
        else:
            marks = "".join(found[name] or "" for name in ("ac_first", "v_sign", "ac_last"))
            self._add_volts(found["v"], marks, found[0])

    def _take_tolerance(self, text: str) -> None:
        signed = re.findall(
            r"([+-]?)\s?([0-9]+(?:\.[0-9]+)?)", text.replace("+/-", "").replace("+-", "")
        )
        values = [float(sign + number) / 100 for sign, number in signed]
        if len(values) == 1:
            values = [-abs(values[0]), abs(values[0])]
        self.tolerance = (min(values), max(values))

    def _add_farads(self, number: str, unit: str, text: str) -> None:
        value = self._number(number, text)
        unit = unit.lower()
        if value is None:
            return
        if unit == "mf":
            self.doubts.append(f"'{text.strip()}' may be µF, as old lists write it, or mF")
            return
        # float() of the decimal text, so that 4.7 µF is the same number from every spelling.
        farad = float(f"{value!r}e{_POWERS[unit]}")
        if not _SMALLEST <= farad <= _LARGEST:
            self.doubts.append(f"'{text.strip()}' is not a value that is made")
            return
        self.farads.append(farad)

    def _add_volts(self, number: str, marks: str, text: str) -> None:
        value = self._number(number, text)
        if value is None:
            return
        if not 1 <= value <= 50_000:
            self.doubts.append(f"'{text.strip()}' is not a voltage rating that is made")
            return
        self.volts.append(value)
        self.ac = self.ac or "a" in marks.lower() or "~" in marks

    def _number(self, number: str, text: str) -> float | None:
        whole, comma, part = number.replace(",", ".").partition(".")
        if comma and len(part) == 3 and whole.strip("0") and len(whole) <= 3:
            one, thousand = float(f"{whole}.{part}"), whole + part
            self.doubts.append(f"'{number}' may be {one:g} or {thousand}")
            return None
        return float(f"{whole or 0}.{part or 0}")

    def capacitor(self, section: str) -> Capacitor:
        kind = self._kind() or section
        self._read_codes(kind)
        farads, volts = sorted(set(self.farads)), sorted(set(self.volts))
        if not farads and self.bare:
            farads = self._from_bare_number(kind, bool(volts))
        if len(farads) > 1:
            both = " and ".join(f"{farad * 1e6:g} µF" for farad in farads)
            self.doubts.append(f"two capacitances: {both}")
        if len(volts) > 1:
            both = " and ".join(f"{value:g} V" for value in volts)
            self.doubts.append(f"two voltage ratings: {both}")
        if section == kind and not self.kinds and farads and farads[0] > _MOST_UNDER_TITLE[kind]:
            self.doubts.append(f"very large for the title above, which says {kind}")
        if self.ac:
            kind = self._kind_of_an_ac_part(kind)
        kind = self._settle_words(kind, farads[0] if farads else None)
        if len(set(self.forms)) > 1:
            self.doubts.append("two builds: " + " and ".join(sorted(set(self.forms))))
        return Capacitor(
            farads[0] if len(farads) == 1 else None,
            volts[0] if len(volts) == 1 else None,
            kind,
            self.ac,
            self.forms[0] if len(set(self.forms)) == 1 else "",
            self.tolerance,
            tuple(dict.fromkeys(self.features)),
            tuple(dict.fromkeys(self.doubts)),
            tuple(dict.fromkeys(self.looks)),
            tuple(self.bare),
            " ".join(self.texts),
        )

    def _settle_words(self, kind: str, farad: float | None) -> str:
        """The kind, with a doubt for each word that could make a polar part of another."""
        if "poly" in self.words and kind in ("", ALUMINIUM):
            if not kind and farad is not None and farad < _LEAST_POLYMER:
                kind = FILM
            else:
                self.doubts.append("'poly' may be a film or a polymer part")
        if kind not in ("", ALUMINIUM):
            return kind
        beside = self.unknown if kind else self.unknown + self.apart
        looks = [word for word in beside if kind and may_be_a_series(word)]
        for word in [*looks, *self.apart] if kind else looks:
            self.looks.append(f"'{word}' is not known here: see that it asks for no bipolar part")
        for word in dict.fromkeys(beside):
            if word.lower() not in (*_WITHOUT_POLARITY, "poly", *map(str.lower, looks)):
                self.doubts.append(f"'{word}' was not understood: look at the part")
        for word in _WITHOUT_POLARITY:
            if word in self.words:
                self.doubts.append(f"'{word}' asks for a part without polarity: look at the part")
        return kind

    def _read_codes(self, kind: str) -> None:
        """Take codes such as 104K or 1H104K, which electrolytic cans do not carry."""
        for code in self.codes:
            if kind in (ALUMINIUM, BIPOLAR):
                self.doubts.append(f"'{code}' is no marking of an {kind}")
                continue
            try:
                reading = read(code, part="tantalum" if kind == TANTALUM else "capacitor")[0]
            except RepairlibError as problem:
                self.doubts.append(problem.wrong)
                continue
            self.farads.append(reading.value)
            if "rated_voltage" in reading.carries:
                self.volts.append(float(reading.carries["rated_voltage"]))

    def _kind(self) -> str:
        """The one kind that the words name; a doubt when they name two that exclude each other."""
        kinds = set(self.kinds)
        if len(kinds) > 1:
            kinds.discard(ALUMINIUM) if kinds & {BIPOLAR, TANTALUM, POLYMER} else None
        if MAINS in kinds:
            kinds -= {FILM, PAPER, CERAMIC}
        if self.words & set(MOTOR):
            return MAINS  # motor starting parts are bipolar electrolytics on the mains
        if len(kinds) > 1:
            self.doubts.append("two kinds of part: " + " and ".join(sorted(kinds)))
            return MAINS if MAINS in kinds else ""
        return kinds.pop() if kinds else ""

    def _kind_of_an_ac_part(self, kind: str) -> str:
        if kind in (ALUMINIUM, TANTALUM, POLYMER):
            self.doubts.append(f"an AC voltage on a part that is listed as {kind}")
            return kind
        if max(self.volts) >= _MAINS_VOLTS:
            return MAINS
        if kind in ("", BIPOLAR):
            self.doubts.append("rated in AC volts: find a part with that AC rating by hand")
        return kind

    def _from_bare_number(self, kind: str, rated: bool) -> list[float]:
        """The capacitance of a figure without a unit, where the custom of lists settles it.

        Below 1 it is µF; on an electrolytic it is µF. Otherwise it may be pF or a code as well.
        """
        first = self.bare[0]
        value = self._number(first, first)
        if value is None:
            self.bare.pop(0)
            return []
        if kind in (CERAMIC, FILM, PAPER, MAINS) and value >= 1:
            return []  # stays on the board, so its exact value does not matter here
        if value == 0:
            self.doubts.append(f"'{first}' is not a value that is made")
            return []
        if value < 1 or kind in (ALUMINIUM, BIPOLAR):
            self.bare.pop(0)
            return [float(f"{value!r}e-6")]
        if kind in (TANTALUM, POLYMER):
            return []
        if len(self.bare) > 1 or not rated:
            listed = ", ".join(self.bare)
            self.doubts.append(f"no unit and no kind of part: {listed} cannot be told apart")
        else:
            self.doubts.append(f"no unit and no kind of part: {first} may be µF or pF")
        return []


def _outer(found: re.Match) -> str:
    """The name of the outermost group that matched."""
    groups = ("percent", "size", "degrees", "pair", "middle", "volts", "farads", "number", "word")
    for name in groups:
        if found[name] is not None:
            return name
    return "other" if found["other"] is not None else "sign"


def _tidy(text: str) -> str:
    """`text` with one kind of µ and of space, and two-word names joined."""
    text = text.replace("μ", "µ").replace("Âµ", "µ").replace("\N{SUPERSCRIPT TWO}", "2")
    return join_phrases(" ".join(text.split()))
