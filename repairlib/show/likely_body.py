"""Which body is drawn for a marking: it follows from what was read, not from the kind alone.

What most such parts look like is common practice. Where the marking does not say what part it is
on, the body is "unknown": a picture puts a part into people's heads.
"""

from __future__ import annotations

from repairlib.markings import Reading, bands_of

UNKNOWN = "unknown"
OF_KIND = {
    "capacitor": "disc",
    "ceramic": "disc",
    "film": "film box",
    "tantalum": "moulded tantalum",
    "can": "can",
    "radial": "radial",
    "axial": "axial",
    "temperature-characteristic": "disc",
    "case-size": "chip",
    "resistor": "resistor",
    "chip-resistor": "chip resistor",
    "inductor": "inductor",
    "chip-inductor": "chip",
    "fuse": "fuse",
    "memory-chip": "soic",
}
OF_OTHER_PART = {
    "diode": "diode",
    "transistor": "to-92",
    "voltage regulator": "to-220",
    "thyristor or triac": "to-220",
    "integrated circuit": "dip",
    "varistor": "varistor",
    "thermal cut-off": "thermal cut-off",
    "inrush or NTC thermistor": "inrush disc",
    "PTC thermistor": "inrush disc",
}
GLASS_DIODES = ("1N4148", "1N4448", "1N914", "1N34", "1N60", "AA", "OA", "BAT4", "BAT8", "BAV2")
GLASS_ZENERS = ("BZX55", "BZX79", "BZX83", "ZPD")
POWER_TRANSISTORS = ("TIP", "BD", "BU", "MJE", "IRF", "IRL", "2SD", "2SB", "STP", "FQP")
SMALL_REGULATORS = ("78L", "79L", "LM78L", "LM79L")
SNAP_IN_JOULES, SCREW_JOULES = 10.0, 60.0  # from about these on, as a rule
FILM_FROM = 0.15e-6  # F; a printed part without a dielectric is film above it, as a rule
OIL_CAN_FROM = 0.5e-6  # F; smaller ones with oil or paper are tubes, as a rule
CERAMIC_CLASS = "Y"


def body_for(reading: Reading) -> str:
    """The body that is drawn for this reading, a name from BODIES.

    >>> from repairlib.markings import read
    >>> [body_for(read(marking)[0]) for marking in ("100n 275V X2", "220µF 385V", "N6")]
    ['mains box', 'snap-in can', 'unknown']
    """
    if "filling" in reading.carries and (reading.value or 0) >= OIL_CAN_FROM:
        return "oil can"
    if reading.kind == "other-part":
        return _other_part(reading.text.upper(), reading.carries["part"])
    if reading.kind in ("capacitor", "ceramic", "film"):
        return _not_polar(reading)
    if reading.kind in ("radial", "axial"):
        return _aluminium(reading)
    if reading.kind == "tantalum" and _has_volts_in_figures(reading.text):
        return "dipped tantalum"
    return body_of_kind(reading.kind)


def body_of_kind(kind: str) -> str:
    """The body of a kind of part, as long as no marking is read.

    >>> body_of_kind("film"), body_of_kind("date"), body_of_kind("")
    ('film box', 'unknown', 'unknown')
    """
    return OF_KIND.get(kind, UNKNOWN)


def _not_polar(reading: Reading) -> str:
    carries = reading.carries
    safety_class = str(carries.get("safety_class", ""))
    if bands_of(reading.text) and reading.kind == "film":
        return "film drop"
    if safety_class.startswith(CERAMIC_CLASS) and reading.kind != "film":
        return "disc"
    if carries.get("dielectric") == "paper" or "filling" in carries:
        return "paper tube"
    if safety_class or carries.get("voltage_type") == "AC":
        return "mains box"
    if reading.kind == "capacitor" and (reading.value or 0) >= FILM_FROM:
        return "film box"
    return body_of_kind(reading.kind)


def _aluminium(reading: Reading) -> str:
    carries = reading.carries
    if "sections" in carries:
        return "can with sections"
    if reading.kind == "axial":
        return "axial"
    if carries.get("polarity") == "non-polar":
        return "non-polar"
    joules = (reading.value or 0) * carries.get("rated_voltage", 0) ** 2 / 2
    if joules >= SCREW_JOULES:
        return "screw can"
    return "snap-in can" if joules >= SNAP_IN_JOULES else "radial"


def _has_volts_in_figures(text: str) -> bool:
    """10/25 and 47 16V stand on a bead; 107 C, 476 J and 107 16V on a moulded chip."""
    first, *rest = text.replace("/", " ").split()
    is_code = len(first) == 3 and first.isdecimal()
    return not is_code and any(piece[0].isdecimal() for piece in rest)


def _other_part(code: str, part: str) -> str:
    if part == "diode":
        return "glass diode" if code.startswith(GLASS_DIODES + GLASS_ZENERS) else "diode"
    if part == "transistor" and code.startswith(POWER_TRANSISTORS):
        return "to-220"
    if part == "voltage regulator" and code.startswith(SMALL_REGULATORS):
        return "to-92"
    return OF_OTHER_PART.get(part, UNKNOWN)
