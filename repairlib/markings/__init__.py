"""Markings: what a text printed on a part, or its colours, may mean, every meaning with its why.

Covers capacitors, resistors, inductors, fuses and memory chips, rated-voltage codes, temperature
characteristics, case sizes and date codes. Not other semiconductors.
"""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.core.public import public_names
from repairlib.markings.around_value import Beside, apart, set_aside, tantalum_print, with_mark
from repairlib.markings.bodies import read_body
from repairlib.markings.clean_text import clean, has_plus, split, split_at_volts
from repairlib.markings.kinds import KIND_NAMES, READERS, TABLE, WIRED, Reader, has_figure
from repairlib.markings.ranks import HARDLY
from repairlib.markings.reading import Reading, Tolerance
from repairlib.markings.value_pieces import Apart

KINDS = tuple(TABLE)
_ANY_BODY = ("capacitor", "radial", "can", "tantalum")  # an axial part is marked as a radial one
_POLAR_BODIES = ("radial", "can", "tantalum")

# Imported when they are asked for: a quick check only reads.
__getattr__, _later = public_names(
    __name__,
    body_end_dot="is_painted places_of",
    calculators="band_confusions",
    case_sizes="CHIPS TANTALUM_CASES",
    colours="COEFFICIENTS FIGURES MULTIPLIERS TOLERANCES bands_of colour_of read_bands words_of",
    confusions="what_else",
    memory_chips="memory_chip",
    sections="sections_in",
    voltage_codes="CAN_LETTERS TANTALUM_LETTERS TWO_CHARACTERS code_source letter_source",
    writing="write_capacitor_code write_letter_code write_voltage_code",
    writing_inductors="write_inductor_bands write_inductor_code",
    writing_resistors="write_bands write_chip_code write_e96_code write_resistor_code",
)
__all__ = ["KINDS", "KIND_NAMES", "Reading", "Tolerance", "read", *_later]


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
    if part is not None and not (isinstance(part, str) and part in KINDS):
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
    pieces = [one for piece in pieces for one in apart(piece)]
    if len(pieces) > 1:
        pieces = tantalum_print(pieces)
        left, beside = set_aside(cleaned, pieces)
    else:
        left, beside = with_mark(pieces[0])
    marking = (cleaned, left, beside, Apart())
    found = []
    if part is None and has_plus(cleaned):
        found = _on_bodies(_POLAR_BODIES, marking, sound_only=True)
    if not found:
        bodies = _bodies(part) if has_figure(cleaned) else ()
        others = _by_other_readers(cleaned, pieces, part)
        if part is None:
            sound = [(rank, reading) for rank, reading in others if not reading.doubt]
            found = _on_bodies(bodies, marking, sound_only=True) + sound
        found = found or _on_bodies(bodies, marking, sound_only=False) + others
    if not found and ("+" in cleaned or "-" in cleaned):
        return _of_sections(cleaned, part)
    found.sort(key=_rank)
    return _distinct(found)


def _of_sections(cleaned: str, part: str | None) -> list[Reading]:
    """The likeliest reading of each section of a can; none when the marking has no sections."""
    from repairlib.markings.sections import joined, motor_start, rating_of_sections, sections_in

    if part not in (None, *WIRED):
        return []
    found = motor_start(cleaned)
    parted = sections_in(cleaned)
    if found or parted is None:
        return found
    numbers, rest = parted
    rest, ac = rating_of_sections(rest)
    for number in dict.fromkeys(numbers):
        on_cans = candidates(number + rest, part or ("film" if ac else "radial"))
        for one in on_cans[:1]:
            carries = {**one.carries, "sections": len(numbers)}
            why = f"{one.why} It is {joined(numbers, ac)}."
            found.append(one.changed(text=cleaned, carries=carries, why=why))
    return found


def _bodies(part: str | None) -> tuple[str, ...]:
    """The bodies of capacitors that may be meant: all where the part is not known."""
    if part is None:
        return _ANY_BODY
    return () if TABLE[part].polar is None else (part,)


def _on_bodies(
    bodies: tuple[str, ...], marking: tuple[str, list[str], Beside, Apart], sound_only: bool
) -> list[tuple[int, Reading]]:
    """The readings of a marking on the bodies of capacitors, each with its rank."""
    return [found for body in bodies for found in read_body(*marking, body, sound_only)]


def _by_other_readers(
    cleaned: str, pieces: list[str], part: str | None
) -> list[tuple[int, Reading]]:
    """The readings on all else, each with its rank."""
    readers = _readers(cleaned, pieces, part)
    return [found for reader in readers for found in reader.read(cleaned, pieces, part)]


def _readers(cleaned: str, pieces: list[str], part: str | None) -> list[Reader]:
    """The readers of the part, or where it is not known those that the text may be for."""
    if part is None:
        return [
            one
            for one in READERS.values()
            if (len(pieces) == 1 or not one.lone) and one.may_be(cleaned, pieces)
        ]
    readers = [READERS[name] for name in TABLE[part].readers]
    return [one for one in readers if len(pieces) == 1 or not one.lone]


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
