"""Markings on capacitors: what a text printed on a part may mean, every meaning with its why.

Covers ceramic, film, tantalum and aluminium capacitors, rated-voltage codes, temperature
characteristics, case sizes and date codes. Not resistors, inductors or fuses.
"""

from __future__ import annotations

from repairlib.errors import RepairlibError
from repairlib.markings.bodies import read_body
from repairlib.markings.clean_text import clean, split
from repairlib.markings.reading import KIND_NAMES, Reading, Tolerance
from repairlib.markings.voltage_codes import read_voltage

KINDS = tuple(KIND_NAMES)
_BODIES = ("capacitor", "ceramic", "film", "tantalum", "can", "radial", "axial")
_ANY_BODY = ("capacitor", "radial", "can", "tantalum")

_WRITERS = ("write_capacitor_code", "write_letter_code", "write_voltage_code")

__all__ = ["KINDS", "KIND_NAMES", "Reading", "Tolerance", "read", *_WRITERS]


def __getattr__(name: str):
    """The writers, imported when one is asked for: a quick check only reads."""
    if name in _WRITERS:
        from repairlib.markings import writing

        return getattr(writing, name)
    raise AttributeError(f"repairlib.markings has no {name}")


def read(text: str, part: str | None = None) -> list[Reading]:
    """Every plausible reading of the marking `text`, likeliest first.

    `part` is one of KINDS when the body is known. Then every reading for that part is given, also
    doubtful ones, and a marking it cannot carry is an error that says what it is elsewhere.
    Without `part`, a doubtful reading is left out where a sound one fits. Lines of a marking
    are separated by a line end. Values are in SI units. Raises RepairlibError, never anything else.

    >>> for reading in read("220"):
    ...     print(reading)
    22 pF: ceramic or film capacitor. 22 and no zeros, in pF.
    220 µF: aluminium SMD can. A number without a unit is in µF.
    220 pF: ceramic or film capacitor. Old parts print plain pF.
    >>> read("220\\nE", part="can")[0].carries
    {'rated_voltage': 25.0}
    >>> read("104X")
    Traceback (most recent call last):
        ...
    repairlib.errors.RepairlibError: '104X': X is not a tolerance letter. Accepted: B C D F G H J
    K M N, Q T S Z
    """
    cleaned = clean(text)
    if part is not None and part not in KINDS:
        raise RepairlibError(part, "not a part that is read here", ", ".join(KINDS))
    found = candidates(cleaned, part)
    if not found:
        from repairlib.markings.refusals import refusal

        raise refusal(text, cleaned, part)
    return found


def candidates(cleaned: str, part: str | None) -> list[Reading]:
    """The readings of a cleaned marking on `part`, or on any part, likeliest first; maybe none."""
    pieces = split(cleaned)
    if not pieces:
        return []
    found = _found(cleaned, pieces, part, sound_only=part is None)
    if not found and part is None:
        found = _found(cleaned, pieces, part, sound_only=False)
    found.sort(key=_rank)
    return _distinct(found)


def _found(cleaned: str, pieces: list[str], part: str | None, sound_only: bool):
    """All readings, each with its rank."""
    bodies = _ANY_BODY if part is None else (part,) if part in _BODIES else ()
    found: list[tuple[int, Reading]] = []
    for body in bodies:
        found += read_body(cleaned, pieces, body, sound_only)
    if len(pieces) == 1:
        for reader in _readers(pieces[0], part):
            found += reader(cleaned, pieces[0], part)
    if sound_only:
        found = [(rank, reading) for rank, reading in found if not reading.doubt]
    return found


def _readers(piece: str, part: str | None):
    """The readers of a lone piece that is no value; most are imported only when it looks like one.

    A voltage and a temperature characteristic also stand alone on a line of a body.
    """
    if part is None or part in _BODIES or part == "voltage-code":
        yield read_voltage
    on_ceramic = part in (None, "capacitor", "ceramic", "temperature-characteristic")
    if on_ceramic and 3 <= len(piece) <= 5 and piece[0].isalpha():
        from repairlib.markings.temperature_codes import read_temperature

        yield read_temperature
    if part == "date" or (part is None and 2 <= len(piece) <= 4 and _may_be_date(piece)):
        from repairlib.markings.date_codes import read_date

        yield read_date
    if part == "case-size" or (part is None and _may_be_size(piece)):
        from repairlib.markings.case_sizes import read_case_size

        yield read_case_size


def _may_be_date(piece: str) -> bool:
    return piece[0].isalpha() or (len(piece) == 4 and piece.isdecimal())


def _may_be_size(piece: str) -> bool:
    return len(piece) in (4, 5, 7) and piece.replace("-", "").isdecimal()


def _rank(pair: tuple[int, Reading]) -> int:
    return pair[0]


def _distinct(found: list[tuple[int, Reading]]) -> list[Reading]:
    """Each meaning once: the likeliest reading stands for all bodies where it is the same."""
    kept, seen = [], set()
    for _, reading in found:
        meaning = reading.meaning()
        if meaning not in seen:
            seen.add(meaning)
            kept.append(reading)
    return kept
