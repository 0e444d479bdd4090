"""The lines before the table of a set, `word: what`: each with where it stands."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from repairlib.bench.board_part import number, read_point, within
from repairlib.core.errors import RepairlibError
from repairlib.power_up import window_around

LINES = {
    "title": "desk radio",
    "says": "It does not play as it should.",
    "when dead": "It is dead.",
    "when rippled": "It hums.",
    "when warm": "It plays for some minutes, then it stops.",
    "when loaded": "It goes off when it is loud.",
    "when low": "In the evening, when the mains is low, it hums.",
    "when corrupt": "After an update it does not start.",
    "works": "It plays without hum.",
    "feed": "V1, inlet rail 0, 14 V, 250 mA",
    "ripple": "60 mV rms, 65 kHz",
    "behind": "F9",
    "rail": "+9 V, at out, 9 V, 5 %, 50 mV",
    "loads": "I1",
    "board": "120 x 80",
    "worth": "80",
    "fault": "C1 dried out to 25 %, ESR x 6",
    "together": "D1 short; F1 blown",
}
WHEN = "when "  # begins the lines with what the customer says of one kind of symptom
SEVERAL = ("rail", "fault", "together")
NEEDED_LINES = ("title", "says", "works", "feed", "rail", "loads", "board")
MOST_LINES, LONGEST_LINE = 400, 500
EXAMPLE = "lines such as 'title: desk radio', then a table of parts with the columns part, is, …"


class Said(NamedTuple):
    """What a line says, and where it stands."""

    what: str
    where: str

    def pieces(self, word: str, *many: int) -> list[str]:
        """Its pieces between commas. RepairlibError where their number is none of `many`."""
        found = [piece.strip() for piece in self.what.split(",")]
        if len(found) not in many or not all(found):
            due = " or ".join(map(str, many))
            wrong = f"{due} pieces between commas are due ({self.where})"
            raise RepairlibError(self.what, wrong, f"{word}: {LINES[word]}")
        return found


class Rail(NamedTuple):
    """A rail that the set must have, at a point: its window and the most ripple [V], or None."""

    name: str
    point: str
    low: float
    high: float
    ripple: float | None = None


class Feed(NamedTuple):
    """The source that the plug switches on, the points of a bench supply, its volts and amps."""

    part: str
    inlet: tuple[str, str]
    volts: float
    amps: float


def read_lines(lines: Iterable[str]) -> dict[str, list[Said]]:
    """What each word says. RepairlibError for an unknown word, one said twice, one that is missing.

    >>> read_lines(["title: lamp board"])
    Traceback (most recent call last):
    repairlib.core.errors.RepairlibError: 'the set': no line says: before the table. Accepted: says: It does not play as it should.
    """  # noqa: E501
    said: dict[str, list[Said]] = {word: [] for word in LINES}
    for at, line in enumerate(lines, 1):
        word, colon, what = (" ".join(piece.split()) for piece in line.partition(":"))
        if not line.strip():
            continue
        where = f"line {at}"
        if not colon or word.casefold() not in LINES or len(line) > LONGEST_LINE:
            raise RepairlibError(line, f"not a line of a set ({where})", f"{', '.join(LINES)}: …")
        word = word.casefold()
        if not what:
            raise RepairlibError(line, f"it says nothing ({where})", f"{word}: {LINES[word]}")
        if said[word] and word not in SEVERAL:
            raise RepairlibError(line, f"{word} stands twice ({where})", "one such line")
        said[word].append(Said(what, where))
    for word in NEEDED_LINES:
        if not said[word]:
            raise RepairlibError(
                "the set", f"no line {word}: before the table", f"{word}: {LINES[word]}"
            )
    return said


def read_feed(said: Said) -> Feed:
    """`V1, inlet rail 0, 14 V, 250 mA`. Raises RepairlibError.

    >>> read_feed(Said("P1, inlet dc gnd, 9 V, 100 mA", "line 4"))
    Feed(part='P1', inlet=('dc', '0'), volts=9.0, amps=0.1)
    """
    part, ends, volts, amps = said.pieces("feed", 4)
    words = ends.split()
    if len(words) != 3 or words[0].casefold() != "inlet":
        raise RepairlibError(
            ends, f"not the two points of an inlet ({said.where})", "inlet rail 0, plus first"
        )
    one, other = read_point(words[1], said.where), read_point(words[2], said.where)
    if one == other:
        raise RepairlibError(ends, f"both are point {one} ({said.where})", "inlet rail 0")
    return Feed(part, (one, other), within(volts, "V", said.where), within(amps, "A", said.where))


def read_rail(said: Said) -> Rail:
    """`+9 V, at out, 9 V, 5 %, 50 mV`; the ripple may be left out. Raises RepairlibError.

    >>> read_rail(Said("+5 V, at out, 5 V, 4 %", "line 6"))
    Rail(name='+5 V', point='out', low=4.8, high=5.2, ripple=None)
    """
    name, at, volts, share, *ripple = said.pieces("rail", 4, 5)
    words = at.split()
    if len(words) != 2 or words[0].casefold() != "at":
        raise RepairlibError(at, f"not the point of a rail ({said.where})", "at out")
    most = within(ripple[0], "V", said.where) if ripple else None
    nominal = within(volts, "V", said.where)
    per_cent = number(share.rstrip("% "), said.where, "per cent", 50.0)
    window = window_around(nominal, per_cent, most)
    return Rail(name, read_point(words[1], said.where), window.low, window.high, most)


def read_ripple(said: Said) -> tuple[float, float]:
    """`60 mV rms, 65 kHz`: volts r.m.s. and Hz. Raises RepairlibError.

    >>> read_ripple(Said("60 mV rms, 65 kHz", "line 5"))
    (0.06, 65000.0)
    """
    volts, hertz = said.pieces("ripple", 2)
    volts = volts.removesuffix("rms").strip()
    return within(volts, "V", said.where), within(hertz, "Hz", said.where, 1e6)


def read_size(said: Said) -> tuple[float, float]:
    """`120 x 80`: width and height in mm. Raises RepairlibError.

    >>> read_size(Said("120 x 80", "line 9"))
    (120.0, 80.0)
    """
    words = said.what.casefold().replace("×", "x").removesuffix("mm").split("x")
    if len(words) != 2:
        raise RepairlibError(said.what, f"not a width and a height ({said.where})", "120 x 80")
    wide, high = (number(word.strip(), said.where, "mm of board", 400.0, 10.0) for word in words)
    return wide, high
