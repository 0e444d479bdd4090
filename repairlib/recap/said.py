"""What the cells of one line say about its part: every figure and word, collected cell by cell.

Nothing is guessed: what has two readings or is left over becomes a doubt in plain words. What it
all comes to is decided in ratings.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from repairlib.core.once import Once
from repairlib.core.typed.letters import without_accents
from repairlib.recap.part_numbers import is_a_code, may_be_bipolar
from repairlib.recap.place_words import take_places
from repairlib.recap.tokens import tidy, tokens
from repairlib.recap.wording import meaning
from repairlib.recap.words import (
    ASKED_FOR,
    BIPOLAR,
    BUILD_OR_STAGE,
    DITTO,
    MAINS,
    NOT_FITTED,
    NOT_FITTED_ALONE,
    TANTALUM,
)

Says = tuple[tuple[str, tuple], ...]  # what one cell says: what is added to which list of Said

_CODE = re.compile(r"(?:[0-3][A-HJ-NP-Z])?[0-9]{3}[BCDFGJKMZ]", re.IGNORECASE)
_POWERS = {"µf": -6, "uf": -6, "mfd": -6, "µ": -6, "u": -6, "nf": -9, "n": -9, "pf": -12}
_POWERS |= {"p": -12, "mmfd": -12, "mmf": -12, "uuf": -12, "f": 0}
_MISSING = {"", "-", "--", "?", "??", "n/a", "na", "none", "unknown", "—", "–", "..."}
# Values that lists write for a part of this size; outside, the line was misread.
SMALLEST, LARGEST = 1e-13, 400.0
_STRICT = ("value", "volts", "free")  # columns in which every figure must be understood
_REMARKS = ("other", "form", "tolerance", "code")  # columns in which an unknown word may stand
_MIXED = ("free", "unnamed")  # columns of which a cell may be a description or a remark
_SAY_A_PLACE = ("free", "unnamed", "value", "kind", "other")
# The surge voltage over the working voltage: from 63/79 V to 6.3/8 V and 10/13 V of one maker.
_LEAST_SURGE, _MOST_SURGE = 1.1, 1.35
_DITTO_SIGNS = '"“”„〃″'
_OF_A_WORD = ("kinds", "forms", "features")
# In a remark these words speak of the place or of a neighbour.
_NOT_IN_REMARKS = ("motor", "bead", "safety", "mp", "ac")


class Cells:
    """The cells of one list: what each says is read once, however many lines hold it."""

    def __init__(self) -> None:
        self.known: dict[tuple[str, str, bool], Says] = {}
        self.words = Once(read_word)

    def say(self, cells: Iterable[tuple[str, str]]) -> tuple[Says, ...]:
        """What the cells of one line say; a cell that says nothing of a part is left out.

        >>> Cells().say([("value", "10uF"), ("other", "see page 4")])
        ((('farads', (1e-05,)), ('texts', ('10uF',))),)
        """
        said: list[Says] = []
        has_value = False
        for role, text in cells:
            cell = role, text, has_value
            says = self.known.get(cell)
            if says is None:
                one = _Cell(self.words, has_value)
                one.read_cell(role, text)
                says = self.known[cell] = one.says()
            if says:
                said.append(says)
                has_value = has_value or says[0][0] == "farads"
        return tuple(said)


class Said:
    """What cells of one line say, not yet weighed; `doubts` and `looks` are in plain words."""

    def __init__(self) -> None:
        self.farads: list[float] = []
        self.volts: list[float] = []
        self.texts: list[str] = []
        self.places: list[str] = []  # where it works, names of places.PLACES
        self.rails: list[float] = []  # volts that are named with a place
        self.bare: list[str] = []
        self.codes: list[str] = []
        self.kinds: list[str] = []
        self.forms: list[str] = []
        self.features: list[str] = []
        self.doubts: list[str] = []
        self.looks: list[str] = []
        self.unknown: list[str] = []  # words not understood beside the part
        self.apart: list[str] = []  # and in cells of their own
        self.words: list[str] = []  # those of which ratings.py asks
        self.signs: list[str] = []  # AC beside volts, `~` apart from any figure, NOT_FITTED
        self.tolerances: list[tuple[float, float]] = []
        self.part_numbers: list[str] = []

    def add(self, says: Says) -> None:
        """Add what one more cell says."""
        for name, things in says:
            getattr(self, name).extend(things)

    def number(self, number: str, text: str) -> float | None:
        """The figure `number` of `text`; None, with a doubt, when it has two readings."""
        whole, comma, part = number.replace(",", ".").partition(".")
        if comma and len(part) == 3 and whole.strip("0") and len(whole) <= 3:
            one, thousand = float(f"{whole}.{part}"), whole + part
            self.doubts.append(f"'{number}' may be {one:g} or {thousand}")
            return None
        return float(f"{whole or 0}.{part or 0}")


class _Cell(Said):
    """One cell while it is read. `word` is what each word says (see read_word), `has_value` that a
    cell before it names a capacitance."""

    def __init__(self, word: Once, has_value: bool) -> None:
        super().__init__()
        self._word = word
        self._has_value = has_value

    def says(self) -> Says:
        """All that was said, in the order of the lists above."""
        lists = vars(self).items()
        return tuple([(name, tuple(said)) for name, said in lists if said and name[0] != "_"])

    def read_cell(self, role: str, text: str) -> None:
        """Add what the cell `text` says; `role` is what its column holds (see ratings.describe)."""
        written, text = text, tidy(text)
        if not text:
            return
        if role == "look":
            self.looks.append(text)
            return
        if role not in ("other", "code"):
            self.texts.append(text)
        lower = text.lower()
        if lower in _MISSING:
            return
        if DITTO.fullmatch(text):
            told = self.looks if role in _REMARKS else self.doubts
            told.append(f"a ditto mark ({text}), and it is not clear what it stands for")
            return
        if lower.strip(".") in NOT_FITTED_ALONE:
            self.signs.append(NOT_FITTED)
            return
        if role == "code":
            self.part_numbers.append(" ".join(written.split()))
        if role in _SAY_A_PLACE:
            text, places, rails = take_places(text)
            self.places += places
            self.rails += rails
        before = self._count() if role in _MIXED else ()
        kinds = len(self.kinds)
        unknown: list[str] = []
        for what, found in tokens(text):
            self._take(role, what, found, unknown)
        if NOT_FITTED in text:
            self._take_not_fitted(role, text, unknown)
        if not unknown:
            return
        if role in _REMARKS and not (role == "form" and len(self.kinds) > kinds):
            self.looks += [
                f"'{word}' may mean a bipolar part: look at it"
                for word in unknown
                if role != "code" and (word == "ES" or (is_a_code(word) and may_be_bipolar(word)))
            ]
        elif role in _MIXED and self._count() == before:
            self.apart += unknown
        else:
            self.unknown += unknown

    def _count(self) -> tuple[int, ...]:
        figures = (len(self.farads), len(self.volts), len(self.bare), len(self.codes))
        return *figures, len(self.kinds), len(self.forms)

    def _take(self, role: str, what: str, found: re.Match, unknown: list[str]) -> None:
        text = found[what]
        if what == "word":
            says, not_understood = self._word[text, role]
            if says:
                self.add(says)
            unknown += not_understood
        elif what == "sign" and text in _DITTO_SIGNS and role not in _REMARKS:
            self.doubts.append(f"a ditto mark ({text}), and it is not clear what it stands for")
        elif what == "sign" and text == "~":
            self.signs.append("~")
        elif what == "other" and role != "code" and may_be_bipolar(text):
            told = self.looks if role in _REMARKS else self.doubts
            told.append(f"'{text}' may mean a bipolar part: look at it")
        elif role in ("other", "code") or what == "order":
            return  # a page number, a price or an order number is not a rating
        elif what == "pair" and self._working_and_surge(role, found):
            self._add_volts(found["pair_c"], found["pair_sign"] or "v", text)
        elif what == "pair" and role != "volts":
            self._add_farads(found["pair_c"], found["pair_unit"] or "µ", text)
            self._add_volts(found["pair_v"], found["pair_sign"] or "v", text)
        elif what == "middle":
            number = (found["mid_whole"] or "0") + "." + found["mid_part"]
            self._add_farads(number, found["mid_unit"], text)
        elif what == "farads" and role != "volts":
            self._add_farads(found["c"], found["c_unit"], text)
        elif what == "volts":
            self._take_volts(found)
        elif what == "percent":
            self._take_tolerance(text)
        elif what == "number" and role == "volts":
            self._add_volts(text, "v", text)
        elif what == "number" and role in _STRICT:
            self.bare.append(text)
        elif what == "other" and _CODE.fullmatch(text):
            self.codes.append(text.upper())
        elif (what in ("pair", "farads", "other") or text == "?") and role in _STRICT:
            self.doubts.append(f"'{text.strip()}' was not understood")

    def _take_not_fitted(self, role: str, text: str, unknown: list[str]) -> None:
        """The part is not fitted, unless more is said, such as on which models."""
        others = [word for word in text.split() if word.strip(".,;:()!") != NOT_FITTED]
        if unknown or (role in _REMARKS and others):
            said = text.replace(NOT_FITTED, "not fitted")
            self.doubts.append(f"'{said}': look whether it is fitted")
        else:
            self.signs.append(NOT_FITTED)

    def _working_and_surge(self, role: str, found: re.Match) -> bool:
        """Whether a pair such as 12/15V is a working voltage and its surge voltage."""
        if found["pair_unit"] or not (role == "volts" or self._has_value or self.farads):
            return False
        working = self.number(found["pair_c"], found[0])
        surge = self.number(found["pair_v"], found[0])
        return bool(working and surge and _LEAST_SURGE <= surge / working <= _MOST_SURGE)

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
        self.tolerances.append((min(values), max(values)))

    def _add_farads(self, number: str, unit: str, text: str) -> None:
        value = self.number(number, text)
        unit = unit.lower()
        if value is None:
            return
        if unit == "mf":
            self.doubts.append(f"'{text.strip()}' may be µF, as old lists write it, or mF")
            return
        # float() of the decimal text, so that 4.7 µF is the same number from every spelling.
        farad = float(f"{value!r}e{_POWERS[unit]}")
        if not SMALLEST <= farad <= LARGEST:
            self.doubts.append(f"'{text.strip()}' is not a value that is made")
            return
        self.farads.append(farad)

    def _add_volts(self, number: str, marks: str, text: str) -> None:
        value = self.number(number, text)
        if value is None:
            return
        if "k" in marks.lower():
            value *= 1000
        if not 1 <= value <= 50_000:
            self.doubts.append(f"'{text.strip()}' is not a voltage rating that is made")
            return
        self.volts.append(value)
        if "a" in marks.lower() or "~" in marks:
            self.signs.append("ac")


def read_word(word: str, role: str) -> tuple[Says, tuple[str, ...]]:
    """What a word says in a column of that role, and the pieces of it that were not understood.

    >>> read_word("elect-gizmo", "kind")
    ((('kinds', ('aluminium electrolytic',)),), ('gizmo',))
    """
    lower = word.lower().rstrip(".-'")
    lower = "ac" if lower == "a.c" else lower
    beside = role in ("other", "code")
    says: list[tuple[str, tuple]] = []
    if beside and lower == "ac":
        says.append(("looks", ("a remark says AC: a part that sees AC is not polar",)))
    if beside and lower in _NOT_IN_REMARKS:
        return tuple(says), ()
    lower = without_accents(lower)
    if lower in ASKED_FOR:
        says.append(("words", (lower,)))
    if role == "form" and lower in BUILD_OR_STAGE:
        return (*says, ("forms", (BUILD_OR_STAGE[lower],))), ()
    kinds, forms, features, unknown = meaning(word)
    if beside:
        kinds = tuple(kind for kind in kinds if kind in (BIPOLAR, MAINS, TANTALUM))
    says += [pair for pair in zip(_OF_A_WORD, (kinds, forms, features), strict=True) if pair[1]]
    return tuple(says), unknown
