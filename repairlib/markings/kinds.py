"""The table of kinds: one record for each kind of marking, and who reads it.

Loaded by every quick check, so the records are plain classes with slots.
"""

from __future__ import annotations


class Made:
    """What parts are made in: `least` to `most` in SI units, capacitors up to `volts`.

    The ranges are common practice, drawn wide, for parts that carry a marking. `many` names them.
    """

    __slots__ = ("least", "many", "most", "volts")

    def __init__(self, many: str, least: float, most: float, volts: float = 0.0):
        self.many = many
        self.least = least
        self.most = most
        self.volts = volts


class Kind:
    """What is to be known of one kind of marking.

    `name` as people say it, `quantity` what is read and its `unit`, `accepted` examples for a
    refusal. `readers` are keys of READERS. `polar` is True or False for a body of a capacitor
    (False: as a rule not polar), None for all else; `wired` marks aluminium parts with wires.
    `made` is None where there is no range. `bands_in` is the unit that its bands count in, and
    that unit's power of ten.
    """

    __slots__ = (
        "accepted",
        "bands_in",
        "made",
        "name",
        "polar",
        "quantity",
        "readers",
        "unit",
        "wired",
    )

    def __init__(
        self,
        name: str,
        quantity: str,
        accepted: str,
        readers: tuple[str, ...],
        unit: str = "",
        made: Made | None = None,
        polar: bool | None = None,
        wired: bool = False,
        bands_in: tuple[str, int] = ("", 0),
    ):
        self.name = name
        self.quantity = quantity
        self.accepted = accepted
        self.readers = readers
        self.unit = unit
        self.made = made
        self.polar = polar
        self.wired = wired
        self.bands_in = bands_in


class Reader:
    """A function of markings, imported when a text comes that may be for it.

    `lone` readers read a marking of one piece, the others all pieces. `may_be(text, pieces)` says
    whether a text on an unknown part may be for it.
    """

    __slots__ = ("function", "lone", "may_be", "module", "name")

    def __init__(self, module: str, name: str, may_be, lone: bool = False):
        self.module = module
        self.name = name
        self.may_be = may_be
        self.lone = lone
        self.function = None

    def read(self, text: str, pieces: list[str], part: str | None) -> list:
        """The readings of `text`, each with its rank; none when it is no such marking."""
        function = self.function or self._imported()
        return function(text, pieces[0] if self.lone else pieces, part)

    def _imported(self):
        module = __import__(f"repairlib.markings.{self.module}", fromlist=(self.name,))
        self.function = getattr(module, self.name)
        return self.function


_FIGURES = frozenset("0123456789")
_OF_RESISTORS, _OF_CHIPS = frozenset("RKMkΩrLGTEoOmWBCDF"), frozenset("RLmr")
_OF_FUSES = frozenset("FTMSL")
_OF_MEMORIES = ("24", "25", "26", "27", "28", "29", "39", "45", "49", "93", "95")


def has_figure(text: str) -> bool:
    return text[0].isdecimal() or not _FIGURES.isdisjoint(text)


def _may_be_colours(text: str, pieces: list[str]) -> bool:
    return len(text) > 2 and not has_figure(text)


def _may_be_resistor(text: str, pieces: list[str]) -> bool:
    return not _OF_RESISTORS.isdisjoint(text) and has_figure(text)


def _may_be_chip(text: str, pieces: list[str]) -> bool:
    piece = pieces[0]
    if len(pieces) > 1 or len(piece) > 6 or not has_figure(piece):
        return False
    return (
        (piece.isdecimal() and len(piece) <= 4)
        or len(piece) == 3
        or not _OF_CHIPS.isdisjoint(piece)
    )


def _may_be_inductor(text: str, pieces: list[str]) -> bool:
    return (len(text) <= 5 or "H" in text) and has_figure(text)


def _may_be_fuse(text: str, pieces: list[str]) -> bool:
    if "A" in text:
        return has_figure(text)
    # without a unit a speed stands in front: T315L, SLOW 3, or 250V T315L
    fast_or_slow = any([piece[0] in "FTMSQftmsq" for piece in pieces])
    return fast_or_slow and not _OF_FUSES.isdisjoint(text) and has_figure(text)


def _may_be_other_part(text: str, pieces: list[str]) -> bool:
    if len(text) < 4 or not has_figure(text):
        return False
    starts = text[0].isalpha() or text[:2] in ("1N", "2N", "3N", "2S", "54", "74", "78", "79")
    if starts or "D" in text or "C" in text or len(pieces[0]) == 5 or text[2] == "K":
        return True
    return text[1:3].isalpha() or "Ah" in text or "AH" in text


def _may_be_memory(text: str, pieces: list[str]) -> bool:
    return len(text) > 3 and any([series in text for series in _OF_MEMORIES])


def _may_be_voltage(text: str, pieces: list[str]) -> bool:
    piece = pieces[0]
    return len(piece) <= 2 or "V" in piece or "v" in piece or piece[-1] in "~-"


def _may_be_temperature(text: str, pieces: list[str]) -> bool:
    return 3 <= len(pieces[0]) <= 5 and pieces[0][0].isalpha()


def _may_be_date(text: str, pieces: list[str]) -> bool:
    piece = pieces[0]
    is_week = len(piece) == 4 and piece.isdecimal()
    return is_week or (2 <= len(piece) <= 4 and piece[0].isalpha())


def _may_be_size(text: str, pieces: list[str]) -> bool:
    return len(pieces[0]) in (4, 5, 7) and pieces[0].replace("-", "").isdecimal()


READERS = {
    "colours": Reader("colour_text", "read_colour_text", _may_be_colours),
    "bead": Reader("tantalum_beads", "read_bead", _may_be_colours),
    "resistor": Reader("resistor_codes", "read_resistor", _may_be_resistor),
    "chip resistor": Reader("chip_resistors", "read_chip_resistor", _may_be_chip),
    "inductor": Reader("inductors", "read_inductor", _may_be_inductor),
    "fuse": Reader("fuses", "read_fuse", _may_be_fuse),
    "other part": Reader("other_parts", "read_other_part", _may_be_other_part),
    "memory chip": Reader("memory_chips", "read_memory_chip", _may_be_memory),
    "voltage": Reader("voltage_codes", "read_voltage", _may_be_voltage, lone=True),
    "temperature": Reader("temperature_codes", "read_temperature", _may_be_temperature, lone=True),
    "date": Reader("date_codes", "read_date", _may_be_date, lone=True),
    "size": Reader("case_sizes", "read_case_size", _may_be_size, lone=True),
}

_CODE_OR_VALUE = "a code such as 104K, a letter code such as 4n7, a value such as 0.1 or 47pF"
_CERAMIC = Made("marked ceramic capacitors", 0.1e-12, 22e-6, volts=50e3)
_VALUE_AND_VOLTS = "µF and volts such as 220 16V, 47/25 or 1000µF 16V"

# The bodies of capacitors (`polar` is not None) are read by bodies.read_body before all else.
TABLE = {
    "capacitor": Kind(
        name="ceramic or film capacitor",
        quantity="capacitance",
        unit="F",
        accepted=_CODE_OR_VALUE,
        readers=("voltage", "temperature"),
        made=_CERAMIC,
        polar=False,
    ),
    "ceramic": Kind(
        name="ceramic capacitor",
        quantity="capacitance",
        unit="F",
        accepted=_CODE_OR_VALUE,
        readers=("voltage", "temperature"),
        made=_CERAMIC,
        polar=False,
    ),
    "film": Kind(
        name="film capacitor",
        quantity="capacitance",
        unit="F",
        accepted=_CODE_OR_VALUE,
        readers=("voltage",),
        made=Made("film capacitors", 10e-12, 47e-6, volts=20e3),
        polar=False,
    ),
    "tantalum": Kind(
        name="tantalum capacitor",
        quantity="capacitance",
        unit="F",
        accepted="a code such as 107, with a voltage letter 107 C, or a value such as 47 16V",
        readers=("voltage", "bead"),
        made=Made("tantalum capacitors", 0.047e-6, 2200e-6, volts=125.0),
        polar=True,
    ),
    "can": Kind(
        name="aluminium SMD can",
        quantity="capacitance",
        unit="F",
        accepted="µF and a voltage letter such as 220 E, or µF and volts such as 220 16V",
        readers=("voltage",),
        made=Made("aluminium SMD cans", 0.1e-6, 10e-3, volts=450.0),
        polar=True,
    ),
    "radial": Kind(
        name="radial aluminium capacitor",
        quantity="capacitance",
        unit="F",
        accepted=_VALUE_AND_VOLTS,
        readers=("voltage",),
        made=Made("radial aluminium capacitors", 0.1e-6, 0.1, volts=630.0),
        polar=True,
        wired=True,
    ),
    "axial": Kind(
        name="axial aluminium capacitor",
        quantity="capacitance",
        unit="F",
        accepted=_VALUE_AND_VOLTS,
        readers=("voltage",),
        made=Made("axial aluminium capacitors", 0.1e-6, 0.1, volts=630.0),
        polar=True,
        wired=True,
    ),
    "date": Kind(
        name="date code",
        quantity="date",
        accepted="year letter and month such as N6, or year and week such as 2135",
        readers=("date",),
    ),
    "voltage-code": Kind(
        name="rated voltage",
        quantity="voltage",
        unit="V",
        accepted="a code such as 1C or 2A, or volts such as 16V",
        readers=("voltage",),
    ),
    "temperature-characteristic": Kind(
        name="temperature characteristic",
        quantity="temperature characteristic",
        unit="ppm/K",
        accepted="a code such as X7R, Y5V, C0G, NP0 or N750",
        readers=("temperature",),
    ),
    "case-size": Kind(
        name="case size",
        quantity="case size",
        accepted="a chip size such as 0805, or a tantalum case such as 3528-21 or B",
        readers=("size",),
    ),
    "resistor": Kind(
        name="resistor",
        quantity="resistance",
        unit="Ω",
        accepted="bands such as brown-black-red-gold, or a code such as 4K7, R22J or 470 ohm",
        readers=("colours", "resistor"),
        made=Made("resistors", 1e-3, 1e10),
        bands_in=("Ω", 0),
    ),
    "chip-resistor": Kind(
        name="chip resistor",
        quantity="resistance",
        unit="Ω",
        accepted="a code such as 103, 4701, 4R7, 5L00 or 68C",
        readers=("colours", "chip resistor"),
        made=Made("marked chip resistors", 1e-4, 10e6),
    ),
    "inductor": Kind(
        name="inductor",
        quantity="inductance",
        unit="H",
        accepted="a code such as 101K, 6R8 or R10, or bands such as brown-black-red-silver",
        readers=("colours", "inductor"),
        made=Made("coded inductors", 1e-9, 0.1),
        bands_in=("µH", -6),
    ),
    "chip-inductor": Kind(
        name="chip inductor",
        quantity="inductance",
        unit="H",
        accepted="a code such as 82N, 2N7, 6R8 or 102",
        readers=("colours", "inductor"),
        made=Made("chip inductors", 1e-10, 0.1),
        bands_in=("nH", -9),
    ),
    "other-part": Kind(
        name="semiconductor or protecting part",
        quantity="part",
        accepted="a type number such as 1N4148 or BC547, a varistor 10D471K, a cut-off 72°C 10A",
        readers=("other part",),
    ),
    "memory-chip": Kind(
        name="memory chip",
        quantity="memory",
        accepted="a number of the trade such as 25Q64, 24C02, 93C46, 27C256 or 29F040",
        readers=("memory chip",),
    ),
    "fuse": Kind(
        name="fuse",
        quantity="current",
        unit="A",
        accepted="a text such as T3.15AL250V, or bands such as red-black-red-red",
        readers=("colours", "fuse"),
    ),
}

# parts that are not read here and may sit on the mains
ON_MAINS = ("varistor", "thermal cut-off", "inrush or NTC thermistor", "PTC thermistor")
# what may hurt in such a part, as keys of core.safety; none for the others
HAZARDS_OF_PART = {
    **dict.fromkeys((*ON_MAINS, "mains rectifier"), ("mains", "heat and fire")),
    "low-voltage varistor": ("heat and fire",),
    "valve": ("high-voltage tubes",),
    "picture tube": ("high-voltage tubes",),
    "cell or battery": ("batteries",),
    "transmitter transistor": ("beryllium oxide",),
}
KIND_NAMES = {key: kind.name for key, kind in TABLE.items()}
POLAR = tuple([key for key, kind in TABLE.items() if kind.polar])
NOT_POLAR = tuple([key for key, kind in TABLE.items() if kind.polar is False])
WIRED = tuple([key for key, kind in TABLE.items() if kind.wired])
BANDED = tuple([key for key, kind in TABLE.items() if "colours" in kind.readers])
