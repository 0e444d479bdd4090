"""Markings read for a body: ceramic or film, tantalum, aluminium can, radial, axial.

A marking is a value piece and other pieces in any order: volts, a voltage code or letter, a
tolerance, a temperature characteristic, a date. Every way to read the value piece becomes one
reading, ranked by how likely it is and doubted when no such part is made.
"""

from __future__ import annotations

from repairlib.markings import made
from repairlib.markings.other_pieces import IS_AC, IS_RATING, explicit_piece, implied_piece
from repairlib.markings.reading import Reading
from repairlib.markings.tolerance_letters import tolerances
from repairlib.markings.value_codes import BARE, CODE, PRACTICE, SMALL_PICO
from repairlib.markings.value_pieces import VOLTAGE_LETTERS, Way, ways_to_read

_DOUBT = 100  # added to the rank, once or twice
_NEVER_POLAR = ("capacitor", "ceramic", "film")
_NOT_SAID = 30  # added where NP or BP is printed: such parts need not say that they are non-polar


def read_body(
    text: str, pieces: list[str], part: str, sound_only: bool
) -> list[tuple[int, Reading]]:
    """Readings of the marking on `part` (capacitor, ceramic, film, tantalum, can, radial, axial),
    each with its rank, 0 being likeliest. With `sound_only` without the doubtful ones."""
    readings = _in_order(text, pieces, part, sound_only)
    sound = any(not one.doubt and made.is_preferred("can", one.value) for _, one in readings)
    if len(pieces) == 2 and "\n" not in text and not sound:
        turned = _in_order(text, pieces[::-1], part, sound_only)  # the rating first: 16/10
        readings += [(rank + 3, reading) for rank, reading in turned]
    return readings


def _in_order(text, pieces, part, sound_only) -> list[tuple[int, Reading]]:
    body = "capacitor" if part in ("ceramic", "film") else part
    letters = VOLTAGE_LETTERS.get(body)
    ways: list[Way] = []
    found: dict[str, tuple] = {}
    lines = "\n" in text
    for piece in pieces:
        other = explicit_piece(piece) if len(pieces) > 1 else None
        if other is None and not ways:
            ways = ways_to_read(piece, body, sound_only)
            if ways:
                continue
            if len(pieces) == 1:
                return []
        if other is None:
            other = implied_piece(piece, letters, body)
        if other is None and lines and ways and letters and len(piece) <= 4:
            other = "not_read", piece, f"{piece} is a series or lot mark", PRACTICE
        if other is None or other[0] in found:
            return []
        found[other[0]] = other[1:]
    bare_rating = found.get("rated_voltage", ("", "", ""))[1].endswith(IS_RATING)
    readings = []
    for way in ways:
        if not (bare_rating and way.value.form == SMALL_PICO):  # 47 25 is µF and volts
            readings += _readings(text, way, found, part, sound_only)
    return readings


def _readings(text, way: Way, found: dict, part: str, sound_only: bool) -> list:
    """The readings of one way: none when two pieces speak of the same thing."""
    tolerance, volts = way.tolerance, way.volts
    if (volts is not None and "rated_voltage" in found) or (
        tolerance is not None and ("tolerance" in found or "tolerance_letter" in found)
    ):
        return []
    options = ((tolerance, ""),)
    if found:
        if "rated_voltage" in found:
            volts = found["rated_voltage"][0]
        elif "not_read" in found and volts is None:
            return []
        if "tolerance" in found:
            options = ((found["tolerance"][0], ""),)
        elif "tolerance_letter" in found:
            letter = found["tolerance_letter"][0]
            meanings = tolerances(letter, way.value.farad)
            options = [(one, f"{letter} is {one}") for one, _ in meanings]
    readings = []
    for place, (one, words) in enumerate(options):
        kind, level = _fit(part, way, volts, one)
        if level and sound_only:
            continue
        rank = way.rank + place + _likelihood(part, way, volts, "\n" in text) + _DOUBT * level
        rank += _NOT_SAID if "polarity" in found and part in _NEVER_POLAR else 0
        doubt = made.doubt(_body_of(kind), way.value.farad, volts, one) if level else ""
        readings.append((rank, _reading(text, kind, way, found, volts, one, words, doubt)))
    return readings


def _reading(text, kind, way: Way, found: dict, volts, tolerance, words: str, doubt: str):
    """The finished Reading of one way and the other pieces found beside it."""
    said, sources = way.words(), way.sources()
    carries = {} if volts is None else {"rated_voltage": volts}
    for name, (what, meaning, source) in found.items():
        if name == "rated_voltage":
            carries |= {"voltage_type": "AC"} if meaning == IS_AC else {}
        elif name not in ("tolerance", "tolerance_letter"):
            carries[name] = what
        said += [meaning] if meaning else []
        sources.append(source)
    sentence = "; ".join([*said, words] if words else said)
    return Reading(
        *(kind, text, "capacitance", way.value.farad, "F"),
        *(f"{sentence[0].upper()}{sentence[1:]}.", way.value.digits, tolerance, carries),
        *(way.value.steps, doubt, tuple(dict.fromkeys(sources))),
    )


def _fit(part: str, way: Way, volts, tolerance) -> tuple[str, int]:
    """The kind of part the reading fits, and how plausible it is there (see made)."""
    farad = way.value.farad
    if part != "capacitor":
        return part, made.how_plausible(part, farad, volts, tolerance, way.value.form in BARE)
    ceramic = made.how_plausible("ceramic", farad, volts, tolerance, False)
    film = made.how_plausible("film", farad, volts, tolerance, False)
    if bool(ceramic) == bool(film):
        return part, ceramic
    return ("film", film) if ceramic else ("ceramic", ceramic)


def _body_of(kind: str) -> str:
    return "ceramic" if kind == "capacitor" else kind


def _likelihood(part: str, way: Way, volts: float | None, lines: bool) -> int:
    """How far down the list of an unknown part the reading on this body belongs."""
    farad = way.value.farad
    if part in ("capacitor", "ceramic", "film"):
        unusual = 15 if lines else 5 if volts is not None and volts < 25 else 0
        unusual += 10 if way.value.form == SMALL_PICO and volts and volts < 500 else 0
        return unusual + (25 if farad > 4.7e-6 else 0)
    if part == "tantalum":
        if way.value.form != CODE:
            return 9
        return 5 if farad >= 10e-6 or lines else 10
    if volts:
        return 4 if part != "can" else 3 if lines else 8
    prints_units = way.value.form not in BARE  # a can has no room for them
    return 20 if prints_units == (part == "can") else 6
