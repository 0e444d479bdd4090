"""Markings read for a body: ceramic or film, tantalum, aluminium can, radial, axial.

A marking is a value piece and other pieces in any order: volts, a voltage code or letter, a
tolerance, a temperature characteristic, a date. Every way to read the value piece becomes one
reading, ranked by how likely it is and doubted when no such part is made.
"""

from __future__ import annotations

from repairlib.markings import made
from repairlib.markings.other_pieces import (
    IS_AC,
    IS_RATING,
    explicit_piece,
    implied_piece,
    join_safety_classes,
)
from repairlib.markings.reading import Reading
from repairlib.markings.tolerance_letters import tolerances
from repairlib.markings.value_codes import BARE, CODE, LETTER_STANDARD, PRACTICE, SMALL_PICO
from repairlib.markings.value_pieces import VOLTAGE_LETTERS, Way, ways_to_read

_DOUBT = 100  # added to the rank, once or twice
HARDLY = 30  # a body with this rank or more is not named beside a likelier one
_NEVER_POLAR = ("capacitor", "ceramic", "film")
_ALUMINIUM_VOLTS = 450.0  # up to here a round number with volts is rather µF than a code in pF
# Tantalum with its value in µF is made up to here; a number without a unit is smaller still.
_MOST_ON_BEAD, _MOST_BARE, _BEAD_VOLTS = 330e-6, 68e-6, 50.0
_CAN_VOLTS = 100.0  # few cans stand more
_LEAST_FILM_ONLY = 1e-6  # with AC volts no ceramic part is so large
_BACK_UP = 0.15  # F: so much is a double-layer cell
_IS_BACK_UP = "so large a value is a memory back-up (double-layer) cell, rated for a few volts only"
_NO_AC = "these parts are polar and have no AC rating; never fit a polar part where AC stands"


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
    if len(pieces) > 2:
        pieces, classes = join_safety_classes(pieces)
        if classes and part not in _NEVER_POLAR:
            return []
        found = {} if classes is None else {classes[0]: classes[1:]}
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
        if other[0] in ("dielectric", "safety_class") and part not in _NEVER_POLAR:
            return []
        if other[0] == "dielectric" and part == "ceramic":
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
    is_ac = "rated_voltage" in found and found["rated_voltage"][1] == IS_AC
    is_ac = is_ac or "safety_class" in found
    non_polar = is_ac or "polarity" in found or "dielectric" in found
    readings = []
    for place, (one, words) in enumerate(options):
        kind, level = _fit(part, way, volts, one, is_ac, "dielectric" in found)
        doubt = made.doubt(_body_of(kind, is_ac), way.value.farad, volts, one) if level else ""
        if is_ac and part in ("tantalum", "can"):
            level, doubt = level or made.DOUBTFUL, doubt or _NO_AC
        if level and sound_only:
            continue
        rank = way.rank + place + _DOUBT * level
        if non_polar:
            rank += _likelihood_non_polar(part, is_ac)
        else:
            rank += _likelihood(part, way, volts, one, "\n" in text)
        readings.append((rank, _reading(text, kind, way, found, volts, one, words, doubt)))
    return readings


def _reading(text, kind, way: Way, found: dict, volts, tolerance, words: str, doubt: str):
    """The finished Reading of one way and the other pieces found beside it."""
    said, sources = way.words(), way.sources()
    carries = {} if volts is None else {"rated_voltage": volts}
    for name, (what, meaning, source) in found.items():
        if name == "rated_voltage":
            if meaning == IS_AC:
                carries["voltage_type"] = "AC"
                if kind in ("radial", "axial"):
                    carries["polarity"] = "non-polar"
        elif name not in ("tolerance", "tolerance_letter"):
            carries[name] = what
        said += [meaning] if meaning else []
        sources.append(source)
    if kind == "radial" and way.value.farad >= _BACK_UP:
        said.append(_IS_BACK_UP)
        sources.append(PRACTICE)
    sentence = "; ".join([*said, words] if words else said)
    return Reading(
        *(kind, text, "capacitance", way.value.farad, "F"),
        *(f"{sentence[0].upper()}{sentence[1:]}.", way.value.digits, tolerance, carries),
        *(way.value.steps, doubt, tuple(dict.fromkeys(sources))),
    )


def _fit(part: str, way: Way, volts, tolerance, is_ac: bool, is_film: bool) -> tuple[str, int]:
    """The kind of part the reading fits, and how plausible it is there (see made)."""
    farad = way.value.farad
    if part in ("radial", "axial") and is_ac:
        return part, made.how_plausible("non-polar", farad, volts, tolerance, False)
    if part != "capacitor" and not (is_ac and part == "film"):
        in_microfarad = way.value.form in BARE or (part == "tantalum" and way.value.form == CODE)
        return part, made.how_plausible(part, farad, volts, tolerance, in_microfarad)
    film = made.how_plausible(_body_of("film", is_ac), farad, volts, tolerance, False)
    if is_film or part == "film":
        return "film", film
    ceramic = made.how_plausible("ceramic", farad, volts, tolerance, False)
    if is_ac and farad >= _LEAST_FILM_ONLY:
        return "film", film
    if bool(ceramic) == bool(film):
        return part, ceramic
    return ("film", film) if ceramic else ("ceramic", ceramic)


def _body_of(kind: str, is_ac: bool) -> str:
    """The row of made that holds for a kind."""
    if is_ac and kind in ("radial", "axial"):
        return "non-polar"
    return "ceramic" if kind == "capacitor" else "motor run" if kind == "film" and is_ac else kind


def _likelihood_non_polar(part: str, is_ac: bool) -> int:
    """The same for AC volts, for a film's name, and for NP or BP, which only a part says that is
    polar as a rule. A body that is not of this sort is hardly meant."""
    if part in _NEVER_POLAR:
        return HARDLY if not is_ac else 0
    return HARDLY + 10 if part in ("tantalum", "can") else 10 if is_ac else 0


def _likelihood(part: str, way: Way, volts: float | None, tolerance, lines: bool) -> int:
    """How far down the list of an unknown part the reading on this body belongs."""
    farad, form = way.value.farad, way.value.form
    if part in _NEVER_POLAR:
        return _likelihood_never_polar(way, volts, tolerance, lines)
    prints_units = form not in BARE  # a can has no room for them
    if volts is None and farad < 1e-6:
        return HARDLY + 10  # so small a polar part says its volts
    if part == "tantalum":
        if form != CODE:
            most = _MOST_BARE if form in BARE else _MOST_ON_BEAD
            return 9 if farad <= most and (volts or 0) <= _BEAD_VOLTS else HARDLY + 10
        return 4 if farad >= 10e-6 or lines or (volts and farad >= 1e-6 and not tolerance) else 10
    if volts:
        if part == "can":
            hardly = form not in BARE or volts > _CAN_VOLTS
            return 3 if lines else HARDLY + 10 if hardly else 8
        return 4 if farad >= 0.47e-6 or volts <= 100 else HARDLY + 10
    if farad >= _BACK_UP:
        return 45  # 5F is rather 5 pF
    return (HARDLY if part == "can" else 20) if prints_units == (part == "can") else 6


def _likelihood_never_polar(way: Way, volts: float | None, tolerance, lines: bool) -> int:
    """The same for ceramic and film."""
    farad, form = way.value.farad, way.value.form
    if farad > 4.7e-6:
        return HARDLY
    if lines:
        return 15
    if volts is None:
        return 0
    unusual = 5 if volts < 25 else 0
    if form == SMALL_PICO and volts < 500:
        return unusual + 10
    no_zeros = form == CODE and 9.9e-12 < farad < 99.9e-12 and not way.letter
    if no_zeros and made.is_preferred("radial", farad) and volts <= _ALUMINIUM_VOLTS:
        return unusual + 8  # 220 25V is rather 220 µF
    film_print = way.value.source == LETTER_STANDARD and volts > _BEAD_VOLTS  # 2µ2 100
    if farad >= 0.999e-6 and tolerance is None and not film_print:
        return unusual + 7
    return unusual
