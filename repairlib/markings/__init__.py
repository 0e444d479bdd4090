"""Markings: what a text printed on a part, or its colours, may mean, every meaning with its why.

Covers capacitors, resistors, inductors and fuses, rated-voltage codes, temperature characteristics,
case sizes and date codes. Not semiconductors.
"""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.markings.bodies import HARDLY, read_body
from repairlib.markings.clean_text import clean, has_plus, split, split_at_volts
from repairlib.markings.reading import KIND_NAMES, Reading, Tolerance
from repairlib.markings.voltage_codes import read_voltage

KINDS = tuple(KIND_NAMES)
_BODIES = ("capacitor", "ceramic", "film", "tantalum", "can", "radial", "axial")
_NO_CAPACITORS = ("resistor", "chip-resistor", "inductor", "chip-inductor", "fuse")
_ANY_BODY = ("capacitor", "radial", "can", "tantalum")

# name: its module, imported when the name is asked for: a quick check only reads.
_LATER = {
    **dict.fromkeys(("write_capacitor_code", "write_letter_code", "write_voltage_code"), "writing"),
    **dict.fromkeys(("write_bands", "write_resistor_code"), "writing_resistors"),
    **dict.fromkeys(("write_chip_code", "write_e96_code"), "writing_resistors"),
    **dict.fromkeys(("write_inductor_bands", "write_inductor_code"), "writing_inductors"),
    **dict.fromkeys(("bands_of", "colour_of", "read_bands", "words_of"), "colours"),
    **dict.fromkeys(("is_painted", "places_of"), "body_end_dot"),
    "band_confusions": "calculators",
    "what_else": "confusions",
}

__all__ = ["KINDS", "KIND_NAMES", "Reading", "Tolerance", "read", *_LATER]


def __getattr__(name: str):
    """The writers and what else a band could be."""
    if name in _LATER:
        from importlib import import_module

        return getattr(import_module(f"repairlib.markings.{_LATER[name]}"), name)
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
    22 Ω: chip resistor. 22 and no zeros, in Ω; three figures are used for 5 %.
    220 µF: aluminium SMD can, or radial aluminium capacitor. A number without a unit is in µF.
    22 µH: inductor. 22 and no zeros, in µH.
    220 pF: ceramic or film capacitor. Old parts print plain pF.
    >>> read("220\\nE", part="can")[0].carries
    {'rated_voltage': 25.0}
    >>> read("104X")
    Traceback (most recent call last):
        ...
    repairlib.core.errors.RepairlibError: '104X': X is not a tolerance letter. Accepted: B C D F G
    H J K M N, Q T S Z
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
    if len(pieces) == 1 and ("V" in cleaned or "~" in cleaned):
        pieces = split_at_volts(pieces[0])
    found = _on_polar_bodies(cleaned, pieces) if part is None and has_plus(cleaned) else []
    found = found or _found(cleaned, pieces, part, sound_only=part is None)
    if not found and part is None:
        found = _found(cleaned, pieces, part, sound_only=False)
    found.sort(key=_rank)
    return _distinct(found)


def _on_polar_bodies(cleaned: str, pieces: list[str]) -> list[tuple[int, Reading]]:
    """The sound readings of a marking with a plus for a lead, which stands on polar parts only."""
    found = []
    for body in ("radial", "can", "tantalum"):
        found += read_body(cleaned, pieces, body, sound_only=True)
    return found


def _found(cleaned: str, pieces: list[str], part: str | None, sound_only: bool):
    """All readings, each with its rank."""
    bodies = _ANY_BODY if part is None else (part,) if part in _BODIES else ()
    found: list[tuple[int, Reading]] = []
    for body in bodies:
        found += read_body(cleaned, pieces, body, sound_only)
    for reader in _readers_of_all_pieces(cleaned, pieces, part):
        found += reader(cleaned, pieces, part)
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


def _readers_of_all_pieces(cleaned: str, pieces: list[str], part: str | None):
    """The readers of resistors, inductors and fuses, imported only when the text looks like one."""
    if part is not None and part not in _NO_CAPACITORS:
        return
    if not _has_figure(cleaned):
        if len(cleaned) > 2:
            from repairlib.markings.colour_text import read_colour_text

            yield read_colour_text
        return
    if part == "resistor" or (part is None and _has_any(cleaned, "RKMkΩrLGTEo")):
        from repairlib.markings.resistor_codes import read_resistor

        yield read_resistor
    if part == "chip-resistor" or (part is None and _may_be_chip(pieces)):
        from repairlib.markings.chip_resistors import read_chip_resistor

        yield read_chip_resistor
    if part in ("inductor", "chip-inductor") or (
        part is None and (len(cleaned) <= 5 or "H" in cleaned)
    ):
        from repairlib.markings.inductors import read_inductor

        yield read_inductor
    if part == "fuse" or (part is None and "A" in cleaned):
        from repairlib.markings.fuses import read_fuse

        yield read_fuse


def _has_figure(text: str) -> bool:
    return text[0].isdecimal() or _has_any(text, "0123456789")


def _has_any(text: str, characters: str) -> bool:
    return any([character in text for character in characters])


def _may_be_chip(pieces: list[str]) -> bool:
    piece = pieces[0]
    if len(pieces) > 1 or len(piece) > 6:
        return False
    return (piece.isdecimal() and len(piece) <= 4) or len(piece) == 3 or _has_any(piece, "RLmr")


def _may_be_date(piece: str) -> bool:
    return piece[0].isalpha() or (len(piece) == 4 and piece.isdecimal())


def _may_be_size(piece: str) -> bool:
    return len(piece) in (4, 5, 7) and piece.replace("-", "").isdecimal()


def _rank(pair: tuple[int, Reading]) -> int:
    return pair[0]


def _distinct(found: list[tuple[int, Reading]]) -> list[Reading]:
    """Each meaning once: the likeliest reading names the other bodies that carry the same."""
    kept: dict[tuple, Reading] = {}
    others: dict[tuple, list[str]] = {}
    for rank, reading in found:
        meaning = reading.meaning()
        if meaning not in kept:
            kept[meaning] = reading
        elif rank < HARDLY and reading.unit == "F" and reading.kind != kept[meaning].kind:
            kinds = others.setdefault(meaning, [])
            if reading.kind not in kinds:
                kinds.append(reading.kind)
    for meaning, kinds in others.items():
        kept[meaning] = kept[meaning].with_bodies(tuple(kinds))
    return list(kept.values())
