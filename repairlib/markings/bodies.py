"""Markings read for a body: ceramic or film, tantalum, aluminium can, radial, axial.

A marking is a value piece and other pieces in any order: volts, a voltage code or letter, a
tolerance, a temperature characteristic, a date. Every way to read the value piece becomes one
reading, ranked by how likely it is and doubted when no such part is made.
"""

from __future__ import annotations

from repairlib.markings import made
from repairlib.markings.kinds import NOT_POLAR, POLAR, WIRED
from repairlib.markings.other_pieces import (
    IS_AC,
    IS_RATING,
    implied_piece,
)
from repairlib.markings.ranks import (
    AC_ON_ALUMINIUM,
    BACK_UP_CELL,
    BEAD_IN_MICROFARAD,
    CAN_WITH_VOLTS,
    CERAMIC_ON_LINES,
    CODE_WITHOUT_ZEROS,
    DOUBTED,
    HARDLY,
    HARDLY_EVER,
    IN_FULL,
    LOW_VOLTS_WITHOUT_POLARITY,
    MICROFARAD_ALONE,
    MICROFARAD_WITHOUT_TOLERANCE,
    NEXT,
    POLAR_WITH_VOLTS,
    RATING_BY_SPACE,
    RATING_FIRST,
    SMALL_NUMBER_WITH_VOLTS,
    SMALL_TANTALUM_CODE,
    TANTALUM_CODE,
    UNITS_ON_POLAR_ALONE,
    VALUE_OVER_VOLTS,
)
from repairlib.markings.reading import Reading, Tolerance
from repairlib.markings.tolerance_letters import tolerances
from repairlib.markings.value_codes import (
    BARE,
    CODE,
    CODE_IN_MICRO,
    LETTER_STANDARD,
    POINT,
    PRACTICE,
    SMALL_PICO,
)
from repairlib.markings.value_pieces import VOLTAGE_LETTERS, Apart, Way, ways_to_read
from repairlib.markings.voltage_codes import bare_volts

_ALUMINIUM_VOLTS = 450.0  # up to here a round number with volts is rather µF than a code in pF
# Tantalum with its value in µF is made up to here; a number without a unit is smaller still.
_MOST_ON_BEAD, _MOST_BARE, _BEAD_VOLTS = 330e-6, 68e-6, 50.0
_POLYMER_VOLTS, _POLYMER_CODE = 35.0, 1.6e-9  # V; F of the same code read in pF
_CAN_VOLTS = 100.0  # few cans stand more
_LEAST_FILM_ONLY = 1e-6  # with AC volts no ceramic part is so large
_CLOSE, _MOST_ENERGY = 0.09, 110.0  # a fraction, J in one can with leads
_MOST_CLASS_1 = 0.11e-6  # F
_CLASS_1_IS_SMALL = "marked ceramic parts of class 1 end at 0.1 µF"
_LEAST_OF_SMALL = 16.0  # V; tantalum below 1 µF is made for more
_LOW_DISCS = (9e-9, 0.12e-6)  # F; so small a part for 12 or 16 V is a disc
_BACK_UP = 0.15  # F: so much is a double-layer cell
_CELL_FROM, _CELL_VOLTS = 0.00999, (2.5, 2.7, 3.0, 5.0, 5.5)  # F and V of cells of any size
_TEMPERATURES = ("85", "105", "130", "135")
_LOT_LETTERS = "ABCDEFGHLNPRUVWX"  # no tolerance of an aluminium part
_IS_BACK_UP = "so large a value is a memory back-up (double-layer) cell, rated for a few volts only"
_NO_AC = "these parts are polar and have no AC rating; never fit a polar part where AC stands"


def read_body(
    text: str,
    pieces: list[str],
    around: dict[str, tuple],
    apart: Apart,
    part: str,
    sound_only: bool,
) -> list[tuple[int, Reading]]:
    """Readings of the marking on `part` (capacitor, ceramic, film, tantalum, can, radial, axial),
    each with its rank, 0 being likeliest. `around` is what was set aside, `apart` what the pieces
    say on any body. With `sound_only` without the doubtful ones."""
    if around and not all([_may_stand(name, said[0], part) for name, said in around.items()]):
        return []
    readings = _in_order(text, pieces, around, apart, part, sound_only)
    if len(pieces) == 2 and "\n" not in text and not any(map(_is_sound, readings)):
        # the rating first: 16/10
        turned = _in_order(text, pieces[::-1], around, apart, part, sound_only)
        down = RATING_BY_SPACE if _is_rating_by_space(text, pieces) else RATING_FIRST
        readings += [(rank + down, reading) for rank, reading in turned]
    return readings


def _is_sound(ranked: tuple[int, Reading]) -> bool:
    """Whether the reading is without doubt, and a value that cans are made in."""
    return not ranked[1].doubt and made.is_preferred("can", ranked[1].value or 0.0)


def _is_rating_by_space(text: str, pieces: list[str]) -> bool:
    """Whether 16 10 is rather 10 µF and 16 V: a space, the higher volts, a value that is made.

    16/10 is a value over its volts.
    """
    first, second = pieces
    if "/" in text or not (first.isdecimal() and second.isdecimal()):
        return False
    return float(first) > float(second) and made.is_preferred("can", float(second) * 1e-6)


def _in_order(
    text: str,
    pieces: list[str],
    around: dict[str, tuple],
    apart: Apart,
    part: str,
    sound_only: bool,
) -> list[tuple[int, Reading]]:
    """The readings of the pieces where the value stands before its rating."""
    beside = dict(around)
    ways = _ways_and_beside(pieces, apart, part, sound_only, "\n" in text, beside)
    return [one for way in ways for one in _readings(text, way, beside, part, sound_only)]


def _ways_and_beside(
    pieces: list[str],
    apart: Apart,
    part: str,
    sound_only: bool,
    lines: bool,
    beside: dict[str, tuple],
) -> list[Way]:
    """The ways to read the value; the other pieces are put into `beside`: name, and its meaning.

    No ways where a piece is not understood, says a thing twice, or does not stand on the part.
    """
    body = "capacitor" if part in NOT_POLAR else part
    ways: list[Way] = []
    for piece in pieces:
        said = apart.explicit[piece] if len(pieces) > 1 or beside else None
        if said is None and not ways:
            ways = ways_to_read(piece, apart, body, sound_only)
            if ways:
                continue
            if len(pieces) == 1:
                return []
        said = said or _by_its_place(piece, body, lines and bool(ways), beside)
        if said is None or said[0] in beside or not _may_say(said[0], part):
            return []
        beside[said[0]] = said[1:]
    bare_rating = "rated_voltage" in beside and beside["rated_voltage"][1].endswith(IS_RATING)
    # 47 25 is µF and volts
    return [way for way in ways if not (bare_rating and way.value.form == SMALL_PICO)]


def _by_its_place(piece: str, body: str, on_a_line: bool, beside: dict[str, tuple]) -> tuple | None:
    """What a piece says that only its place explains; a lot mark on a line below the value."""
    letters = VOLTAGE_LETTERS.get(body)
    if "rated_voltage" in beside:
        if piece in _TEMPERATURES:  # 100 25 105
            return "highest_temperature", float(piece), f"{piece} is the highest °C", PRACTICE
        if body in POLAR and body != "tantalum" and len(piece) == 1 and piece in _LOT_LETTERS:
            return "not_read", piece, f"{piece} is a lot or series letter", PRACTICE
    said = implied_piece(piece, letters, body)
    if said is None and body == "tantalum" and "rated_voltage" in beside and _is_lot(piece):
        return "not_read", piece, f"{piece} is a lot or date mark", PRACTICE
    if said is None and on_a_line and letters and len(piece) <= 4:
        return "not_read", piece, f"{piece} is a series or lot mark", PRACTICE
    return said


def _is_lot(piece: str) -> bool:
    """Whether figures behind the volts are a lot: not where they are a rating themselves."""
    return len(piece) <= 4 and piece.isdecimal() and not bare_volts(piece)


def _may_stand(name: str, what, part: str) -> bool:
    """Whether what was set aside stands on the part."""
    return part in what if name == "body" else _may_say(name, part)


def _may_say(name: str, part: str) -> bool:
    """Whether such a thing stands on the part: film and safety classes on no polar one."""
    if name.startswith("temperature_") or name == "ac_voltage":
        return part in NOT_POLAR
    if name == "dielectric":
        return part in NOT_POLAR and part != "ceramic"
    return name != "safety_class" or part in NOT_POLAR


def _readings(
    text: str, way: Way, beside: dict[str, tuple], part: str, sound_only: bool
) -> list[tuple[int, Reading]]:
    """The readings of one way: none when two pieces speak of the same thing."""
    if _says_twice(way, beside):
        return []
    volts = beside["rated_voltage"][0] if "rated_voltage" in beside else way.volts
    if volts is None and "not_read" in beside:
        return []
    if part not in NOT_POLAR and not _may_be_microfarad(way, volts):
        return []
    is_ac = "safety_class" in beside or _is_ac(beside)
    non_polar = is_ac or "polarity" in beside or "dielectric" in beside
    readings = []
    for place, (tolerance, words) in enumerate(_tolerances(way, beside)):
        kind, level = _fit(part, way, volts, tolerance, is_ac, "dielectric" in beside)
        never_ac = is_ac and part in ("tantalum", "can")
        if sound_only and (level or never_ac):
            continue
        farad = way.value.farad
        doubt = made.doubt(_body_of(kind, is_ac), farad, volts, tolerance) if level else ""
        if not level and farad > _MOST_CLASS_1 and _is_class_1(beside):
            level, doubt = made.DOUBTFUL, _CLASS_1_IS_SMALL
            if sound_only:
                continue
        if never_ac:
            level, doubt = level or made.DOUBTFUL, doubt or _NO_AC
        rank = way.rank + NEXT * place + DOUBTED * level
        if non_polar:
            rank += _likelihood_non_polar(part, is_ac)
        else:
            rank += _likelihood(part, way, volts, tolerance, "\n" in text)
        reading = _reading(text, kind, way, beside, volts, tolerance, words, doubt)
        readings.append((rank, reading))
    return readings


def _is_class_1(beside: dict[str, tuple]) -> bool:
    """Whether NP0, N750 or the like stands beside the value."""
    code = beside.get("temperature_characteristic", ("",))[0]
    return code in ("NP0", "C0G") or (code[:1] in ("N", "P") and code[1:].isdecimal())


def _may_be_microfarad(way: Way, volts: float | None) -> bool:
    """Whether R47 or 271 may be in µF, which only low volts in figures beside it say."""
    if way.value.form not in (POINT, CODE_IN_MICRO):
        return True
    if volts is None or (way.letter and way.tolerance is None):
        return False
    return way.value.form == POINT or volts <= _POLYMER_VOLTS


def _says_twice(way: Way, beside: dict[str, tuple]) -> bool:
    """Whether the value piece and another both give volts, or both a tolerance."""
    volts_twice = way.volts is not None and "rated_voltage" in beside
    has_tolerance = "tolerance" in beside or "tolerance_letter" in beside
    return volts_twice or (way.tolerance is not None and has_tolerance)


def _is_ac(beside: dict[str, tuple]) -> bool:
    return "rated_voltage" in beside and beside["rated_voltage"][1] == IS_AC


def _tolerances(way: Way, beside: dict[str, tuple]) -> list[tuple[Tolerance | None, str]]:
    """Every tolerance the marking may give, likeliest first, with words where a letter stands."""
    if "tolerance" in beside:
        return [(beside["tolerance"][0], "")]
    if "tolerance_letter" in beside:
        letter = beside["tolerance_letter"][0]
        return [(one, f"{letter} is {one}") for one, _ in tolerances(letter, way.value.farad)]
    return [(way.tolerance, "")]


def _reading(
    text: str,
    kind: str,
    way: Way,
    beside: dict[str, tuple],
    volts: float | None,
    tolerance: Tolerance | None,
    words: str,
    doubt: str,
) -> Reading:
    """The finished Reading of one way and the other pieces found beside it."""
    said, sources = way.words(), way.sources()
    carries: dict = {} if volts is None else {"rated_voltage": volts}
    for name, (what, meaning, source) in beside.items():
        if name == "rated_voltage":
            if meaning == IS_AC:
                carries["voltage_type"] = "AC"
                if kind in WIRED:
                    carries["polarity"] = "non-polar"
        elif name not in ("tolerance", "tolerance_letter", "body", "remark"):
            carries[name] = what
        said += [meaning] if meaning else []
        sources.append(source)
    if kind == "radial" and _is_back_up_cell(way, volts):
        said.append(_IS_BACK_UP)
        sources.append(PRACTICE)
    sentence = "; ".join([*said, words] if words else said)
    return Reading(
        kind=kind,
        text=text,
        quantity="capacitance",
        value=way.value.farad,
        unit="F",
        why=f"{sentence[0].upper()}{sentence[1:]}.",
        digits=way.value.digits,
        tolerance=tolerance,
        carries=carries,
        steps=way.value.steps,
        doubt=doubt,
        sources=tuple(dict.fromkeys(sources)),
    )


def _is_back_up_cell(way: Way, volts: float | None) -> bool:
    """Whether it is a double-layer cell: by its size alone, or large and for a cell's few volts."""
    farad = way.value.farad
    if volts is None:
        return farad >= _BACK_UP
    return farad >= _CELL_FROM and (volts in _CELL_VOLTS or (farad >= _BACK_UP and volts <= 6.3))


def _fit(part: str, way: Way, volts, tolerance, is_ac: bool, is_film: bool) -> tuple[str, int]:
    """The kind of part the reading fits, and how plausible it is there (see made)."""
    farad = way.value.farad
    if part in WIRED and is_ac:
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
    if is_ac and kind in WIRED:
        return "non-polar"
    return "motor run" if kind == "film" and is_ac else kind


def _likelihood_non_polar(part: str, is_ac: bool) -> int:
    """The same for AC volts, for a film's name, and for NP or BP, which only a part says that is
    polar as a rule. A body that is not of this sort is hardly meant."""
    if part in NOT_POLAR:
        return IN_FULL if is_ac else HARDLY
    return HARDLY_EVER if part in ("tantalum", "can") else AC_ON_ALUMINIUM if is_ac else IN_FULL


def _likelihood(part: str, way: Way, volts: float | None, tolerance, lines: bool) -> int:
    """How far down the list of an unknown part the reading on this body belongs."""
    farad, form = way.value.farad, way.value.form
    if part in NOT_POLAR:
        return _likelihood_never_polar(way, volts, tolerance, lines)
    prints_units = form not in BARE  # a can has no room for them
    if volts and not prints_units and _is_no_bare_can(farad, volts, tolerance):
        return HARDLY
    if volts is None and farad < 1e-6:
        return HARDLY_EVER  # so small a polar part says its volts
    if part == "tantalum":
        if form != CODE:
            most = _MOST_BARE if form in BARE else _MOST_ON_BEAD
            return (
                BEAD_IN_MICROFARAD if farad <= most and (volts or 0) <= _BEAD_VOLTS else HARDLY_EVER
            )
        if farad < 1e-6 and volts and volts < _LEAST_OF_SMALL:
            return HARDLY
        large = farad >= 10e-6 or (volts and farad >= 1e-6 and not tolerance)
        return TANTALUM_CODE if large or lines else SMALL_TANTALUM_CODE
    if volts:
        if part == "can":
            hardly = form not in BARE or volts > _CAN_VOLTS
            return VALUE_OVER_VOLTS if lines else HARDLY_EVER if hardly else CAN_WITH_VOLTS
        return POLAR_WITH_VOLTS if farad >= 0.47e-6 or volts <= 100 else HARDLY_EVER
    if farad >= _BACK_UP:
        return BACK_UP_CELL
    if prints_units != (part == "can"):
        return MICROFARAD_ALONE
    return HARDLY if part == "can" else UNITS_ON_POLAR_ALONE


def _is_no_bare_can(farad: float, volts: float, tolerance) -> bool:
    """Whether a bare number is no µF of an aluminium part: closer than 10 %, or too much energy.

    390 J 160 and 4700/630- are film of 390 pF and 4700 pF.
    """
    close = tolerance is not None and tolerance.high < _CLOSE
    return close or farad * volts**2 / 2 > _MOST_ENERGY


def _likelihood_never_polar(way: Way, volts: float | None, tolerance, lines: bool) -> int:
    """The same for ceramic and film."""
    farad, form = way.value.farad, way.value.form
    if farad > 4.7e-6:
        return HARDLY
    if lines:
        return CERAMIC_ON_LINES
    if volts is None:
        return IN_FULL
    is_disc = volts >= 10 and _LOW_DISCS[0] <= farad <= _LOW_DISCS[1]
    low = volts < 25 and not is_disc
    unusual = LOW_VOLTS_WITHOUT_POLARITY if low else IN_FULL
    if form == SMALL_PICO and volts < 500:
        return unusual + SMALL_NUMBER_WITH_VOLTS
    if form == POINT and tolerance is None and volts <= _CAN_VOLTS:
        return unusual + CODE_WITHOUT_ZEROS
    if form == CODE and farad < _POLYMER_CODE and volts <= _POLYMER_VOLTS and tolerance is None:
        return unusual + CODE_WITHOUT_ZEROS
    no_zeros = form == CODE and 9.9e-12 < farad < 99.9e-12 and way.letter in ("", "M")
    if no_zeros and made.is_preferred("radial", farad) and volts <= _ALUMINIUM_VOLTS:
        return unusual + CODE_WITHOUT_ZEROS
    film_print = way.value.source == LETTER_STANDARD and volts > _BEAD_VOLTS  # 2µ2 100
    if farad >= 0.999e-6 and tolerance is None and not film_print:
        return unusual + MICROFARAD_WITHOUT_TOLERANCE
    return unusual
