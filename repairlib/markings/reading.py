"""What reading a marking gives: one possible meaning, with its why.

Values are in SI units. A tolerance is a pair of fractions, or of farads, henries or ppm/K.
"""

from __future__ import annotations

from repairlib.core.quantity import NBSP, engineering
from repairlib.markings.kinds import HAZARDS_OF_PART, KIND_NAMES, NOT_POLAR, POLAR

_CAPACITOR = " capacitor"
POLAR_IF = "If it has a stripe, a plus or legs of two lengths, it is polar."
_SAFETY_CLASSES = ("X1", "X2", "Y1", "Y2")
_OTHER_VOLTS = {"surge_voltage": "surge", "ac_voltage": "for AC"}
_SAYS_ITSELF = (
    "temperature_characteristic",
    "voltage_type",
    "polarity",
    "safety_class",
    "dielectric",
    "filling",
    "memory",
    "bus",
)


class Tolerance:
    """How far a value may lie from its marking: `low` and `high`, in `unit`.

    The unit "" means fractions (0.1 is 10 %), "F" farads, "H" henries, "ppm/K" a temperature
    coefficient.

    >>> print(Tolerance(-0.2, 0.8), Tolerance(-0.25e-12, 0.25e-12, "F"))
    -20/+80 % ±0.25 pF
    """

    __slots__ = ("high", "low", "unit")
    low: float
    high: float
    unit: str

    def __init__(self, low: float, high: float, unit: str = ""):
        object.__setattr__(self, "low", low)
        object.__setattr__(self, "high", high)
        object.__setattr__(self, "unit", unit)

    def __setattr__(self, name, value):
        raise AttributeError(f"a Tolerance does not change; make a new one to set {name}")

    def __reduce__(self):
        return Tolerance, (self.low, self.high, self.unit)

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Tolerance):
            return NotImplemented
        return (self.low, self.high, self.unit) == (other.low, other.high, other.unit)

    def __hash__(self):
        return hash((self.low, self.high, self.unit))

    def limits(self, value: float) -> tuple[float, float]:
        """The least and the most that a part marked `value` may have, in the unit of `value`."""
        if self.unit:
            return value + self.low, value + self.high
        return value * (1 + self.low), value * (1 + self.high)

    def __str__(self) -> str:
        if self.low == -self.high:
            return f"±{self._side(self.high)}"
        low = self._side(self.low).removesuffix(f"{NBSP}%") if self.low else "-0"
        return f"{low}/+{self._side(self.high)}"

    def _side(self, amount: float) -> str:
        if self.unit:
            return engineering(amount, self.unit)
        return f"{float(f'{amount * 100:.6g}') or 0.0:g}{NBSP}%"

    __repr__ = __str__


def percent_either_side(percent: str) -> Tolerance:
    """The tolerance of a number of percent as printed, exact in the last digit.

    >>> percent_either_side("0.25")
    ±0.25 %
    """
    return Tolerance(float(f"-{percent}e-2"), float(f"{percent}e-2"))


class Reading:
    """One meaning of a marking.

    `kind` is the part it would likeliest be on (a key of KIND_NAMES), `also_on` the other kinds
    that carry the same marking with the same meaning, `on` all of them in words. `text` is the
    marking as typed.
    `quantity` names what was read: "capacitance", "resistance", "inductance", "current", "voltage",
    "temperature characteristic", "date" or "case size". `value` is in SI in `unit`, or None where
    the marking is no number; `digits` are its significant digits. `tolerance` is a Tolerance or
    None. `carries` holds what else the marking says (rated_voltage in volts, tempco in ppm/K,
    temperature_characteristic, date, ...). `why` is one sentence, `working` the steps, `doubt`
    empty or the reason to distrust the reading, `sources` keys of repairlib.core.sources.

    >>> from repairlib.markings import read
    >>> reading = read("2A104J", part="film")[0]
    >>> reading.value, reading.carries["rated_voltage"], reading.tolerance
    (1e-07, 100.0, ±5 %)
    >>> print(reading)
    100 nF ±5 %, 100 V: film capacitor. 10 and four zeros, in pF; J is ±5 %; 2A is 100 V.
    """

    __slots__ = (
        "also_on",
        "carries",
        "digits",
        "doubt",
        "kind",
        "quantity",
        "sources",
        "steps",
        "text",
        "tolerance",
        "unit",
        "value",
        "why",
    )
    kind: str
    text: str
    quantity: str
    value: float | None
    unit: str
    digits: int | None
    tolerance: Tolerance | None
    carries: dict
    why: str
    steps: tuple[str, ...]
    doubt: str
    sources: tuple[str, ...]
    also_on: tuple[str, ...]

    def __init__(
        self,
        kind: str,
        text: str,
        quantity: str,
        value: float | None,
        unit: str,
        why: str,
        digits: int | None = None,
        tolerance: Tolerance | None = None,
        carries: dict | None = None,
        steps: tuple[str, ...] = (),
        doubt: str = "",
        sources: tuple[str, ...] = (),
        also_on: tuple[str, ...] = (),
    ):
        put = object.__setattr__
        put(self, "kind", kind)
        put(self, "text", text)
        put(self, "quantity", quantity)
        put(self, "value", value)
        put(self, "unit", unit)
        put(self, "why", why)
        put(self, "digits", digits)
        put(self, "tolerance", tolerance)
        put(self, "carries", carries or {})
        put(self, "steps", steps)
        put(self, "doubt", doubt)
        put(self, "sources", sources)
        put(self, "also_on", also_on)

    def __setattr__(self, name, value):
        raise AttributeError(f"a Reading does not change; {name} stays as it was read")

    def __reduce__(self):
        return _reading_of, ({name: getattr(self, name) for name in self.__slots__},)

    @property
    def working(self) -> tuple[str, ...]:
        """The steps a teacher would write on the board, ending with the limits of the value."""
        if self.tolerance is None or self.value is None:
            return self.steps
        low, high = self.tolerance.limits(self.value)
        between = f"{engineering(low, self.unit)} to {engineering(high, self.unit)}"
        return (*self.steps, f"{self.tolerance}: a good part measures {between}")

    @property
    def cautions(self) -> tuple[str, ...]:
        """Keys of the hazards of replacing such a part, for repairlib.core.safety."""
        if self.kind == "fuse":
            return ("mains", "heat and fire")
        if self.kind == "memory-chip":
            return ("chip supply", "static charge")
        if self.kind == "other-part":
            return HAZARDS_OF_PART.get(self.carries["part"], ())
        from repairlib.core.limits import hazards_of_capacitor, is_of_a_run_part

        says = self.carries
        volts = self.value if self.unit == "V" else says.get("rated_voltage")
        farad = self.value if self.unit == "F" else None
        ac = says.get("voltage_type") == "AC"
        filling, inside = says.get("filling", ""), says.get("dielectric")
        line_part = "safety_class" in says or self.text in _SAFETY_CLASSES
        paper = inside in ("paper", "oil-paper")
        unnamed = not (line_part or inside) and self.kind in NOT_POLAR
        oil = paper or filling == "perhaps oil"
        oil = oil or (unnamed and is_of_a_run_part(farad, volts, ac))
        found = hazards_of_capacitor(
            volts,
            ac,
            line_part=line_part or bool(filling) or inside == "oil-paper",
            oil=oil and filling != "no PCB",
            farad=farad,
            valves=(paper and not ac) or says.get("use") == "flash",
        )
        return (*found, "wet tantalum") if says.get("inside") == "acid" else found

    @property
    def on(self) -> str:
        """The parts that may carry it, in words, the likeliest first.

        >>> from repairlib.markings import read
        >>> read("4.7µF 25V")[0].on
        'radial aluminium, ceramic, film or tantalum capacitor'
        """
        kinds = (self.kind, *self.also_on)
        if len(kinds) == 1:
            return KIND_NAMES[self.kind]
        names = [KIND_NAMES[kind].removesuffix(_CAPACITOR) for kind in kinds if kind != "can"]
        *others, last = " or ".join(names).split(" or ")
        said = f"{', '.join(others)} or {last}{_CAPACITOR}" if others else f"{last}{_CAPACITOR}"
        if "can" not in kinds:
            return said
        order = (KIND_NAMES["can"], said) if self.kind == "can" else (said, KIND_NAMES["can"])
        return ", or ".join(order)

    def with_bodies(self, kinds: tuple[str, ...]) -> Reading:
        """The same reading, on bodies of these `kinds` too. Says so when only some are polar."""
        bodies = (self.kind, *kinds)
        polar = [kind in POLAR for kind in bodies]
        open_question = any(polar) and any(kind in NOT_POLAR for kind in bodies)
        why = f"{self.why} {POLAR_IF}" if open_question else self.why
        return self.changed(also_on=kinds, why=why)

    def changed(self, **fields) -> Reading:
        """The same reading with these `fields` changed."""
        kept = {name: getattr(self, name) for name in self.__slots__}
        return Reading(**(kept | fields))

    @property
    def headline(self) -> str:
        """What was read, without the why: `100 nF ±5 %, 100 V`."""
        tolerance = [] if self.tolerance is None else [str(self.tolerance)]
        carried = [_carried(name, what) for name, what in self.carries.items()]
        if self.value is None:
            return ", ".join(carried + tolerance)
        return ", ".join([" ".join([engineering(self.value, self.unit), *tolerance]), *carried])

    def meaning(self) -> tuple:
        """What makes two readings the same answer for a person who measures the part."""
        carried = tuple(self.carries.items())
        return self.quantity, self.value, self.unit, self.tolerance, carried

    def __str__(self) -> str:
        return f"{self.headline}: {self.on}. {self.why}"

    __repr__ = __str__

    def to_dict(self) -> dict:
        """The reading as JSON-able values, SI units; what it carries stands beside the value."""
        pair = self.tolerance
        return {
            "kind": self.kind,
            "also_on": list(self.also_on),
            "text": self.text,
            "quantity": self.quantity,
            "value": self.value,
            "unit": self.unit,
            "digits": self.digits,
            "tolerance": None if pair is None else [pair.low, pair.high],
            "tolerance_unit": None if pair is None else pair.unit,
            **self.carries,
            "why": self.why,
            "working": list(self.working),
            "doubt": self.doubt,
            "sources": list(self.sources),
            "cautions": list(self.cautions),
        }

    def _caution_rows(self) -> list[tuple[str, str]]:
        if not self.cautions:
            return []
        from repairlib.core.safety import HAZARDS

        return [("caution", HAZARDS[key].title) for key in self.cautions]

    def _repr_html_(self) -> str:
        from repairlib.core.html import named

        rows = [("reads", self.headline), ("on a", self.on), ("why", self.why)]
        rows += [("step", step) for step in self.working]
        rows += [("doubt", self.doubt)] if self.doubt else []
        rows += self._caution_rows()
        rows += [("source", ", ".join(self.sources))]
        return named(rows, caption=self.text)


def _reading_of(fields: dict) -> Reading:
    """The Reading of a copy or a saved file."""
    return Reading(**fields)


def _carried(name: str, what) -> str:
    """One carried thing as a person would say it."""
    if name == "rated_voltage":
        return engineering(what, "V")
    if name == "rated_power":
        return engineering(what, "W")
    if name == "rated_current":
        return engineering(what, "A")
    if name in ("surge_voltage", "ac_voltage"):
        return f"{engineering(what, 'V')} {_OTHER_VOLTS[name]}"
    if name == "tempco":
        return f"±{engineering(what, 'ppm/K')}"
    if name in ("lowest_temperature", "highest_temperature"):
        return f"{name.partition('_')[0]} {engineering(what, '°C')}"
    if name in ("length", "width", "height"):
        return f"{name} {engineering(what, 'm')}"
    if name == "part":
        return f"{what}, not read here"
    if name == "capacity":
        return _capacity(what)
    if name == "supply":
        return f"{what[0]:g} to {what[1]:g}{NBSP}V by its letters"
    if name in _SAYS_ITSELF:
        return str(what)
    return f"{name.replace('_', ' ')} {what}"


def _capacity(size: int) -> str:
    """Bytes as a programmer counts them, and bits as a data sheet does: 8 MiB (64 Mbit)."""
    return f"{_in_powers(size, 'bytes', 'iB')} ({capacity_in_bits(size)})"


def capacity_in_bits(size: int) -> str:
    """A capacity in bytes as a data sheet counts it: 64 Mbit."""
    return _in_powers(size * 8, "bits", "bit")


def _in_powers(count: int, single: str, unit: str) -> str:
    """A number with the largest unit that leaves it whole: 1 Mbit, 256 bytes."""
    for shift, prefix in ((30, "G"), (20, "M"), (10, "K")):
        if count >> shift and count % (1 << shift) == 0:
            return f"{count >> shift}{NBSP}{prefix}{unit}"
    return f"{count}{NBSP}{single}"
