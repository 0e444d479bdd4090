"""Points where a wire from a torn pad can land, as people type them: what, how far, what it reads.

`via 3 mm 0.2 ohm; R12 pin 1 8 mm; TP5 20 mm, U4 pin 7 5 mm OL`. The reading is from the stub of
the torn pad, or from the sound pad of a twin, to that point, with the power off.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import brief, read_quantity

TEST_POINT, LEAD, VIA, TRACK = "test point", "lead or pad of a part", "via", "track"
# How much further [m] one would go for a better joint: a via is small, a track must be scraped.
DETOUR = {TEST_POINT: 0.0, LEAD: 0.0, VIA: 3e-3, TRACK: 6e-3}  # common practice
SAME_NET = 1.0  # Ω between two points of one net at most, leads taken off; common practice
LONGEST, MOST, FURTHEST = 2000, 50, 1.0  # characters, points, m
EXAMPLE = "via 3 mm 0.2 Ω; R12 pin 1 8 mm; TP5 20 mm"

_KINDS = (
    (TEST_POINT, r"\btp ?\d*\b|\btest ?(?:point|pad)"),
    (VIA, r"\bvias?\b|\bthrough.?hole\b|\bplated hole"),
    (LEAD, r"\b[a-z]{1,3}\d+\b|\bpins?\b|\bleads?\b|\blegs?\b|\bpads?\b|\bconnector|\bheader"),
    (TRACK, r"\btracks?\b|\btraces?\b|\bstub\b|\bcopper\b"),
)
_FIGURE = r"(\d+(?:[.,]\d+)?)"
_DISTANCE = re.compile(rf"{_FIGURE}\s*(mm|cm|mil|in)\b", re.IGNORECASE)
_METRES = {"mm": 1e-3, "cm": 1e-2, "mil": 25.4e-6, "in": 25.4e-3}
_OHM = re.compile(
    rf"(?<![\w.,]){_FIGURE}\s*(?:([mkKM]?)\s*(?:Ω|\u2126|[Oo]hms?\b|R\b)|([kKM])\b(?!\s*[a-zA-Z]))"
    r"|(?<![\w.,])(\d+)([RkKM])(\d+)\b"
)
# A figure that must mean something, and stands neither in a name nor with a unit known here.
_LEFT = re.compile(
    r"(?<![\w.,])(?:\d+[.,]\d+\s*[^\W\d]*|\d+[^\W\d]+)|(?<!pin )(?<!lead )(?<!leg )(?<!pad )"
    r"(?<![\w.,])\d+\s*$"
)
_TIMES = {"m": 1e-3, "": 1.0, "R": 1.0, "k": 1e3, "K": 1e3, "M": 1e6}
_OPEN = re.compile(r"\bO\.?L\b|\bopen\b|\binfinite\b|∞", re.IGNORECASE)


class Landing(NamedTuple):
    """A point where a wire can land: its distance [m] and reading [Ω], None where not said.

    The reading is infinite for an open one.
    """

    name: str
    kind: str
    distance: float | None
    ohm: float | None

    @property
    def proven(self) -> bool:
        """Whether a meter says that it is the same net."""
        return self.ohm is not None and self.ohm <= SAME_NET

    @property
    def refuted(self) -> bool:
        """Whether a meter says that it is another net, or lies behind a part."""
        return self.ohm is not None and self.ohm > SAME_NET

    def __str__(self) -> str:
        far = "" if self.distance is None else f", {brief(self.distance, 'm')} away"
        return f"{self.name} ({self.kind}{far})"


def read_landings(text: str) -> tuple[Landing, ...]:
    """The points of a text, one to a clause, in the order in which they were typed.

    Raises RepairlibError for nothing, for a clause that names no point, for a distance above 1 m,
    for more than 50 points.

    >>> print(*read_landings("via 3 mm 0.2 ohm; R12 pin 1 8 mm"), sep="; ")
    via (via, 3 mm away); R12 pin 1 (lead or pad of a part, 8 mm away)
    """
    if not isinstance(text, str):
        raise RepairlibError(text, "not a text", EXAMPLE)
    if len(text) > LONGEST:
        raise RepairlibError(text, f"longer than {LONGEST} characters", EXAMPLE)
    found = [_landing(clause) for clause in _clauses(text)]
    if not found:
        raise RepairlibError(text, "no point was typed", EXAMPLE)
    if len(found) > MOST:
        raise RepairlibError(text, f"more than {MOST} points", "the nearest ones")
    return tuple(found)


def _clauses(text: str) -> list[str]:
    """What is said of each point: a figure behind a comma belongs to the point before it."""
    clauses: list[str] = []
    for piece in re.split(r"[;\n]|,(?!\d)", text):
        said = piece.strip()
        figure = _DISTANCE.match(said) or _OHM.match(said) or _OPEN.match(said)
        if figure and clauses and not _kind_of(said):
            clauses[-1] += f" {said}"
        elif said:
            clauses.append(said)
    return clauses


def _kind_of(clause: str) -> str:
    """The kind of point that a clause names, or ""."""
    return next((name for name, words in _KINDS if re.search(words, clause, re.IGNORECASE)), "")


def _landing(clause: str) -> Landing:
    distance, ohm, opened = _DISTANCE.search(clause), _OHM.search(clause), _OPEN.search(clause)
    kind = _kind_of(clause)
    if not kind:
        wrong = "names neither a via, a test point, a pin, a pad nor a track"
        raise RepairlibError(clause, wrong, EXAMPLE)
    spans = [one.span() for one in (distance, ohm, opened) if one]
    name = clause[: min((begin for begin, _ in spans), default=len(clause))].strip(" :=,") or kind
    _check_figures(clause, spans)
    metres = None if distance is None else _metres(distance)
    return Landing(name, kind, metres, float("inf") if opened else _ohms(ohm))


def _check_figures(clause: str, spans: Iterable[tuple[int, int]]) -> None:
    """No figure of a clause is passed over: what is not understood is said."""
    left = clause
    for begin, end in spans:
        left = left[:begin] + " " * (end - begin) + left[end:]
    begins = min((begin for begin, _ in spans), default=len(clause))
    strange = _LEFT.search(left, begins) or re.search(r"(?<![\w.,])\d+[.,]\d+[^;]*", left[:begins])
    if strange:
        wrong = f"of {clause.strip()!r}: a distance needs mm, a reading Ω, kΩ or OL"
        raise RepairlibError(strange[0].strip(), wrong, EXAMPLE)


def _metres(found: re.Match[str]) -> float:
    metres = read_quantity(found[1]).value * _METRES[found[2].lower()]
    if metres > FURTHEST:
        raise RepairlibError(found[0], "no point of a board is that far", "a distance up to 1 m")
    return metres


def _ohms(found: re.Match[str] | None) -> float | None:
    if found is None:
        return None
    if found[4]:  # 4k7
        return float(f"{found[4]}.{found[6]}") * _TIMES[found[5]]
    return read_quantity(found[1]).value * _TIMES[found[2] or found[3] or ""]


def best_first(landings: Iterable[Landing], reach: float, kinds: Sequence[str]) -> list[Landing]:
    """The points that a wire may land on, best first: proven before not proven, then near ones.

    Out fall those that a meter refuted, those beyond `reach` [m], and kinds that do not serve.
    A good joint is worth a detour: a test point or a lead rather than a via, that before a track.

    >>> near = read_landings("via 3 mm, TP5 5 mm, R1 90 mm")
    >>> [one.name for one in best_first(near, 0.05, list(DETOUR))]
    ['TP5', 'via']
    """
    left = [
        one
        for one in landings
        if not one.refuted and one.kind in kinds and (one.distance or 0.0) <= reach
    ]
    return sorted(
        left,
        key=lambda one: (
            not one.proven,
            one.distance is None,
            (one.distance or 0.0) + DETOUR[one.kind],
        ),
    )
