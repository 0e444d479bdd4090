"""Calculators on markings: a value to the codes that its part will carry."""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, Text, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, read_quantity
from repairlib.markings.colours import OLDER
from repairlib.markings.confusions import what_else
from repairlib.markings.reading import Tolerance
from repairlib.markings.tolerance_letters import LETTERS, tolerances
from repairlib.markings.writing import write_capacitor_code, write_letter_code
from repairlib.markings.writing_inductors import write_inductor_bands, write_inductor_code
from repairlib.markings.writing_resistors import (
    write_bands,
    write_chip_code,
    write_e96_code,
    write_resistor_code,
)

NO_LETTER = "none"
_PERCENTS = "20 10 5 2 1 0.5 0.25 0.1 0.05 0.02 0.01"
BAND_TOLERANCES = tuple([f"{percent} %" for percent in _PERCENTS.split()])
_BAND_LETTERS = dict(zip(BAND_TOLERANCES, "MKJGFDCBWPL", strict=True))
_COEFFICIENTS = (NO_LETTER, "250", "100", "50", "25", "20", "15", "10", "5", "1")
_LETTERS = (NO_LETTER, *(letter for letter in LETTERS if letter.isalpha()))


@calculator(
    topic="markings",
    title="Capacitor marking for a value",
    sources=("KEMET ceramic ordering table", "IEC 60062:2016"),
)
def capacitor_code(
    capacitance: Annotated[
        float,
        Given("F", "The capacitance to be marked, of two figures.", at_least=1e-13, at_most=9.9e-4),
    ],
    tolerance: Annotated[str, Choice(_LETTERS, "The tolerance letter.")] = NO_LETTER,
) -> Found:
    """The codes that a capacitor of this value carries: what to look for in the parts drawer.

    `capacitance` in farad, from 0.1 pF to 990 µF; `tolerance` a letter of IEC 60062 or "none".
    Raises RepairlibError for a value that two figures and a power of ten cannot say.

    >>> finding = capacitor_code("4.7 nF", "J")
    >>> finding.three_figure_code, finding.letter_code
    ('472J', '4n7J')
    """
    letter = "" if tolerance == NO_LETTER else tolerance
    code = write_capacitor_code(capacitance, letter)
    value = Quantity(capacitance, "F")
    values = {"three_figure_code": code, "letter_code": write_letter_code(capacitance, letter)}
    working = [f"{code[:2]} and the multiplier {code[2]}, in pF, make {value}"]
    for allowed in _spans(letter, capacitance):
        low, high = allowed.limits(capacitance)
        working.append(f"{letter} is {allowed}: {Quantity(low, 'F')} to {Quantity(high, 'F')}")
    return found(values, working=working)


def _spans(letter: str, capacitance: float) -> list[Tolerance]:
    return [span for span, *_ in tolerances(letter, capacitance)] if letter else []


@calculator(
    topic="markings",
    title="Resistor bands and codes for a value",
    sources=("Vishay colour card", "IEC 60062:2016", "Yageo chip marking"),
)
def resistor_bands(
    resistance: Annotated[float, Given("Ω", "The resistance.", at_least=0, at_most=9.9e10)],
    tolerance: Annotated[str, Choice(BAND_TOLERANCES, "The tolerance either side.")] = "5 %",
    tempco: Annotated[
        str, Choice(_COEFFICIENTS, "The temperature coefficient in ppm/K.")
    ] = NO_LETTER,
) -> Found:
    """What a resistor of this value carries: bands, letter code, chip codes.

    `resistance` in ohm, up to three figures; `tolerance` and `tempco` (ppm/K) as the bands know
    them. A code that cannot say the value is "none". Raises RepairlibError when bands cannot.

    >>> finding = resistor_bands("4.7 kΩ", "5 %")
    >>> finding.bands, finding.letter_code, finding.chip_code
    ('yellow-violet-red-gold', '4K7J', '472')
    """
    fraction = float(tolerance.removesuffix(" %")) / 100
    bands = write_bands(resistance, fraction, tempco=0 if tempco == NO_LETTER else float(tempco))
    letter = _BAND_LETTERS[tolerance] if resistance else ""
    values = {
        "bands": bands,
        "from_the_other_end": "-".join(bands.split("-")[::-1]),
        "letter_code": _or_none(write_resistor_code, resistance, letter),
        "chip_code": _or_none(write_chip_code, resistance, 3),
        "chip_code_of_four": _or_none(write_chip_code, resistance, 4),
        "chip_code_of_the_96_values": _or_none(write_e96_code, resistance),
    }
    notes = []
    if tolerance in ("0.01 %", "0.02 %", "0.05 %"):
        notes.append("This tolerance band is of the 2016 edition; in 2005 grey was 0.05 %.")
    sources = (OLDER,) if notes else ()
    return found(
        values,
        working=[f"{Quantity(resistance, 'Ω')} {tolerance}: {bands}"],
        verdict=None,
        reason=None,
        notes=notes,
        sources=sources,
    )


@calculator(
    topic="markings",
    title="Inductor bands and code for a value",
    sources=("Token inductor colour code", "CTC coils"),
)
def inductor_bands(
    inductance: Annotated[
        float, Given("H", "The inductance, of two figures.", at_least=1e-8, at_most=0.99)
    ],
    tolerance: Annotated[
        str, Choice(("20 %", "10 %", "5 %"), "The tolerance either side.")
    ] = "10 %",
) -> Found:
    """What an inductor of this value carries: four bands in µH, and the code.

    `inductance` in henry. What cannot say the value is "none".

    >>> finding = inductor_bands("1.5 mH")
    >>> finding.bands, finding.code
    ('brown-green-red-silver', '152K')
    """
    fraction = float(tolerance.removesuffix(" %")) / 100
    values = {
        "bands": _or_none(write_inductor_bands, inductance, fraction),
        "code": _or_none(write_inductor_code, inductance, _BAND_LETTERS[tolerance]),
    }
    return found(values, working=[f"{Quantity(inductance, 'H')} is {inductance * 1e6:.6g} µH"])


@calculator(
    topic="markings",
    title="What else these bands could be",
    sources=("common practice", "Vishay colour card"),
)
def band_confusions(
    bands: Annotated[str, Text("The colours as you see them.")],
    measured: Annotated[
        str, Text("What the meter says out of the board, such as 4.7 kΩ; may be empty.")
    ] = "",
) -> Found:
    """What a resistor could be if heat or the lamp changed one colour, such as red into brown.

    `bands` is a text of colours, `measured` a resistance or empty. With a measured resistance the
    values that agree with it come alone. Raises RepairlibError for a word that is no colour.

    >>> band_confusions("brown-black-brown-gold", "1 kΩ").fits
    'band 3 red, not brown'
    """
    found_else = what_else(bands)
    if not measured.strip():
        said = [f"{change}: {reading.headline}" for change, reading in found_else]
        return found({"possible": len(said)}, working=said)
    ohm = read_quantity(measured, "Ω")
    fits = [(change, reading) for change, reading in found_else if _agrees(reading, ohm.value)]
    said = [f"{change}: {reading.headline}" for change, reading in fits]
    values = {"measured": ohm, "fits": "; ".join(change for change, _ in fits) or "none"}
    notes = ["A burnt resistor may have changed its value too: look for why it burnt."]
    return found(values, working=said, notes=notes)


def _agrees(reading, ohm: float) -> bool:
    low, high = reading.tolerance.limits(reading.value)
    return low <= ohm <= high


def _or_none(write, *arguments) -> str:
    """The marking, or "none" where this kind of marking cannot say the value."""
    try:
        return write(*arguments)
    except RepairlibError:
        return "none"
