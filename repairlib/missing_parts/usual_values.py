"""Usual values of each kind of part, how its rating is chosen, and what must never be guessed.

Ranges are common practice of the bench; what a board's maker chose may lie outside.
"""

from __future__ import annotations

from typing import NamedTuple

from repairlib.core.finding import Finding
from repairlib.core.quantity import Quantity, brief, brief_range
from repairlib.core.series import nearest
from repairlib.core.tables import read_table
from repairlib.core.verdicts import NEVER
from repairlib.health import working_share
from repairlib.missing_parts.chip_tantalum import missing_tantalum
from repairlib.missing_parts.kinds import CAPACITOR, DIODE, Kind
from repairlib.missing_parts.place import Place
from repairlib.missing_parts.reading_a_twin import FEW_OHMS
from repairlib.missing_parts.tantalum_said import said_of_tantalum

LED_CURRENTS = (1e-3, 20e-3)  # A, from a faint modern one to a bright old one
LED_DROP = 2.0  # V, red to green; blue and white 3 V
CERAMIC_SHARE = 0.5  # of the rated voltage: class 2 loses capacitance towards it


class Usual(NamedTuple):
    """The range of a kind's value, `low` to `high` in `unit`, and the values met most often."""

    low: float
    high: float
    unit: str
    most: str

    @property
    def words(self) -> str:
        return f"{brief_range(self.low, self.high, self.unit)}, mostly {self.most}"


USUAL = {
    "decoupling capacitor": Usual(10e-9, 1e-6, "F", "100 nF"),
    "bulk capacitor": Usual(1e-6, 100e-6, "F", "1, 4.7, 10 or 22 µF"),
    "chip tantalum": Usual(1e-6, 470e-6, "F", "10, 22, 47 or 100 µF"),
    "aluminium can": Usual(1e-6, 2200e-6, "F", "10, 47, 100 or 220 µF"),
    "crystal load capacitor": Usual(6.8e-12, 39e-12, "F", "12, 15, 18 or 22 pF"),
    "timing capacitor": Usual(100e-12, 47e-6, "F", "1, 10 or 100 nF"),
    "coupling capacitor": Usual(10e-9, 100e-6, "F", "100 nF, 1 or 10 µF"),
    "filter capacitor": Usual(10e-12, 1e-6, "F", "100 pF, 1, 10 or 100 nF"),
    "bootstrap capacitor": Usual(10e-9, 1e-6, "F", "100 nF"),
    "compensation capacitor": Usual(1e-12, 100e-9, "F", "22 pF to 10 nF"),
    "snubber capacitor": Usual(100e-12, 100e-9, "F", "470 pF to 10 nF"),
    "series resistor": Usual(0.0, 10e3, "Ω", "22, 33 or 47 Ω, 1 kΩ at slow lines"),
    "pull-up resistor": Usual(1e3, 100e3, "Ω", "4.7 or 10 kΩ"),
    "pull-down resistor": Usual(1e3, 1e6, "Ω", "10 or 100 kΩ"),
    "gain resistor": Usual(100.0, 1e6, "Ω", "1 to 100 kΩ"),
    "feedback divider resistor": Usual(1e3, 1e6, "Ω", "10 to 100 kΩ"),
    "current-sense resistor": Usual(1e-3, 2.2, "Ω", "5 to 100 mΩ"),
    "LED resistor": Usual(47.0, 22e3, "Ω", "330 Ω to 2.2 kΩ"),
    "timing resistor": Usual(1e3, 10e6, "Ω", "10 to 470 kΩ"),
    "crystal resistor": Usual(0.0, 10e6, "Ω", "1 MΩ across, 0 to 1 kΩ in line"),
    "gate resistor": Usual(1.0, 10e3, "Ω", "10 to 100 Ω at a gate, 1 to 10 kΩ at a base"),
    "termination resistor": Usual(47.0, 150.0, "Ω", "75 Ω at a LAN socket, 100 or 120 Ω at a pair"),
    "snubber resistor": Usual(1.0, 1e3, "Ω", "10 or 22 Ω"),
    "emitter resistor": Usual(0.05, 2.2e3, "Ω", "0.22 or 0.33 Ω in an output stage"),
    "discharge resistor": Usual(10.0, 2.2e6, "Ω", "33 to 100 Ω at a cell, 100 kΩ at a capacitor"),
    "zero-ohm link": Usual(0.0, 0.05, "Ω", "0 Ω"),
    "thermistor": Usual(1e3, 100e3, "Ω", "10 kΩ at 25 °C"),
    "power inductor": Usual(470e-9, 470e-6, "H", "2.2 to 47 µH"),
}
_IN_WORDS = {
    "ferrite bead": "60 to 1000 Ω at 100 MHz, mostly 120 or 600 Ω; below 1 Ω at dc",
    "common-mode choke": "90 Ω at 100 MHz on a fast pair, 51 to 100 µH on a slow one",
    "ESD protection diode": "stand-off just above the line's voltage; 0.3 to 1 pF on a fast pair",
    "supply protection diode": "stand-off or reverse voltage above the highest supply",
    "flyback diode": "a reverse voltage above the coil's supply, a current as the coil's",
    "converter diode": "a Schottky diode: reverse voltage above the input, current as the coil's",
    "zener diode": "2.4 to 36 V: only a twin, a print or a diagram says which",
    "signal diode": "a small-signal diode, 75 V and 150 mA being the commonest",
    "LED": "its colour: 1.8 to 2.2 V red to green, about 3 V blue and white",
    "crystal": "its frequency is printed on a twin or stands in the chip's diagram",
    "transistor": "type and pin order: from a twin's print or a diagram",
    "voltage regulator": "output voltage and pin order: from a twin's print or a diagram",
    "never fitted": "nothing",
}
_WITHHELD = {
    "fuse": "its current and speed: from its print, a twin or a diagram, never from a guess",
    "varistor": "handed on",
    "mains suppression capacitor": "handed on",
}
_NEVER = {
    "fuse": "Never guess a fuse's value, nor bridge it: first find what made it blow",
    "current-sense resistor": "Never guess it: a wrong value moves the limit of the current",
    "emitter resistor": "Never guess it, nor bridge it: the stage then runs hot or cuts off",
    "discharge resistor": "Never guess it: it sets the heat, and the time to a safe voltage",
    "feedback divider resistor": "Never guess it: a wrong value puts a wrong voltage on the rail",
    "crystal": "Never guess a frequency",
    "zener diode": "Never guess its voltage",
    "zero-ohm link": "Never join two grounds or supplies on a guess: they may be kept apart",
    "transistor": "Never guess the pin order",
    "voltage regulator": "Never guess its voltage or pin order",
    "thermistor": "Never guess it: it may be what stops a fire",
}
POLARITY = "Never guess the polarity: prove with a meter which pad is the positive side or cathode"
RATING = "Never guess the rating: it follows from the highest voltage measured on that rail"
HANDED_ON = (
    "Mains or more than 60 V, or it may be: no part is chosen here; a qualified person does it"
)


def value_words(kind: Kind, place: Place) -> str:
    """The range of values that is usual for a kind, narrowed by what the place and a twin say.

    A reading in circuit is a limit: a capacitor's is too high, a resistor's or coil's too low, and
    that of a part of 1 Ω or less too high again, because the leads are in it.

    >>> from repairlib.missing_parts.place import read_place
    >>> from repairlib.missing_parts.kinds import kind_named
    >>> print(value_words(kind_named("LED resistor"), read_place("R1 from 5 V to an LED")))
    150 Ω to 3 kΩ at 5 V, from 20 mA down to 1 mA with 2 V left on the LED
    """
    if kind.name in _WITHHELD:
        return _WITHHELD[kind.name]
    usual = _tantalum_values(place) if kind.name == "chip tantalum" else ""
    usual = usual or _usual_words(kind, place)
    twin = place.twin
    if twin is None or twin.value is None or value_fits(kind, twin.value) is None:
        return usual
    if kind.family != twin.family:
        return usual
    if not twin.in_circuit:
        return f"{twin.value} as the twin; usual: {usual}"
    if kind.family != CAPACITOR and twin.value.unit == "Ω" and twin.value <= FEW_OHMS:
        return f"below {twin.value}, which is mostly the leads: four wires tell; usual: {usual}"
    limit = "at most" if kind.family == CAPACITOR else "at least"
    return f"{twin.value} {limit}, read on the twin's board; usual: {usual}"


def _usual_words(kind: Kind, place: Place) -> str:
    if kind.name in _IN_WORDS:
        return _IN_WORDS[kind.name]
    if kind.name == "LED resistor" and place.volts is not None and place.volts > LED_DROP:
        left = place.volts - LED_DROP
        low, high = (nearest(left / amps) for amps in reversed(LED_CURRENTS))
        span = brief_range(low, high, "Ω")
        return (
            f"{span} at {brief(place.volts, 'V')}, from 20 mA down to 1 mA with 2 V left on the LED"
        )
    return USUAL[kind.name].words


def value_fits(kind: Kind, value: Quantity) -> bool | None:
    """Whether a value lies in the usual range of a kind; None where there is no such range."""
    usual = USUAL.get(kind.name)
    if usual is None:
        return None
    return usual.unit == value.unit and usual.low * 0.99 <= value <= usual.high * 1.01


def rating_words(kind: Kind, place: Place) -> str:
    """How the rating is chosen, with a figure where the rail is known.

    >>> from repairlib.missing_parts.place import read_place
    >>> from repairlib.missing_parts.kinds import kind_named
    >>> print(rating_words(kind_named("bulk capacitor"), read_place("C1 from 5 V to ground")))
    10 V or more, twice the 5 V that were named
    """
    if kind.family != CAPACITOR:
        return _RATINGS.get(kind.name, _RATINGS.get(kind.family, ""))
    if kind.name == "mains suppression capacitor":
        return "handed on: only the same safety class and rating"
    if kind.name == "chip tantalum" and _tantalum(place):
        return _tantalum_rating(place)
    share = working_share("tantalum") if kind.name == "chip tantalum" else CERAMIC_SHARE
    times = "twice"
    if kind.name == "aluminium can":
        share, times = 0.8, "1.25 times"
    volts = None if place.volts is None else abs(place.volts)
    if not volts:
        return f"{times} the highest voltage measured there, or more"
    rated = [float(row["volts"]) for row in read_table("rated-voltages")]
    made = next((one for one in rated if one >= volts / share * (1 - 1e-9)), None)
    if made is None:
        return f"more than {brief(rated[-1], 'V')}: hand it on"
    return f"{brief(made, 'V')} or more, {times} the {brief(volts, 'V')} that were named"


def _tantalum(place: Place) -> Finding | None:
    """The answer of `missing_tantalum` for that place; None as long as its rail is not known."""
    said = said_of_tantalum(place)
    return missing_tantalum(**said) if "rail" in said else None


def _tantalum_values(place: Place) -> str:
    """The range of `missing_tantalum`; "" where it has none, or where a twin says more."""
    finding = None if place.twin and place.twin.value is not None else _tantalum(place)
    if finding is None:
        return ""
    if finding.verdict == NEVER:
        return "none: no usual chip tantalum is rated for that rail"
    return str(finding.values.get("capacitance", ""))


def _tantalum_rating(place: Place) -> str:
    finding = _tantalum(place)
    if finding is None:
        return ""
    if finding.verdict == NEVER:
        return f"{NEVER} fit one: {finding.reason}"
    rated, least = finding.values["rated_voltage"], finding.values["at_least"]
    return f"{rated} or more, of at least {least} by the rule for tantalum"


_RATINGS = {
    "current-sense resistor": "power: current squared times the value, and twice that",
    **dict.fromkeys(
        ("emitter resistor", "snubber resistor", "discharge resistor"),
        "power: current squared times the value, and twice that",
    ),
    "LED resistor": "power: current squared times the value, and twice that",
    "ferrite bead": "a current above what the rail carries",
    "power inductor": "a saturation current above the peak of the converter",
    "fuse": "as printed: current, speed, voltage and breaking capacity",
    "zero-ohm link": "a body for the current that passes",
    DIODE: "reverse voltage above all that may come, and the current",
}


def never_guessed(kind: Kind, mains: bool) -> tuple[str, ...]:
    """What nobody may guess about a kind of part in a place."""
    if mains:
        return (HANDED_ON,)
    said = [_NEVER[kind.name]] if kind.name in _NEVER else []
    if kind.polar:
        said.append(POLARITY)
    if kind.family == CAPACITOR:
        said.append(RATING)
    return tuple(said)
