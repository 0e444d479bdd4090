"""Safety limits for voltage and current, each once: its value, dc or ac, its edition and source.

They are figures for the design of equipment and no permission to touch. What counts as a hazard
of a capacitor is decided here too, by these limits, for every face alike.

Slots and no other module, because the quick check loads this.
"""

from __future__ import annotations

ES1, ES2 = "IEC 62368-1, ES1", "IEC 62368-1, ES2"


class Steady:
    """What one rule calls low for a steady voltage, ac up to 1 kHz; None where it states nothing.

    `ac_rms`, `ac_peak` and `dc` in V, the currents in A; `sources` are keys of core.sources.
    """

    __slots__ = (
        "ac_peak",
        "ac_peak_current",
        "ac_rms",
        "ac_rms_current",
        "dc",
        "dc_current",
        "sources",
    )

    def __init__(
        self,
        dc: float,
        ac_peak: float,
        ac_rms: float | None = None,
        dc_current: float | None = None,
        ac_peak_current: float | None = None,
        ac_rms_current: float | None = None,
        sources: tuple[str, ...] = ("from memory",),
    ):
        self.dc = dc
        self.ac_peak = ac_peak
        self.ac_rms = ac_rms
        self.dc_current = dc_current
        self.ac_peak_current = ac_peak_current
        self.ac_rms_current = ac_rms_current
        self.sources = sources


# The stored text of IEC 62368-1 prints the ac current of ES2 as that of ES1: 5 mA is from memory.
STEADY = {
    ES1: Steady(60, 42.4, 30, 2e-3, 0.707e-3, 0.5e-3, ("IEC 62368-1",)),
    ES2: Steady(120, 70.7, 50, 25e-3, 7.07e-3, 5e-3, ("IEC 62368-1", "from memory")),
    "IEC 60335-1 8.1.4": Steady(
        42.4, 42.4, None, 2e-3, 0.7e-3, None, ("IEC 60335-1 8.1.4, quoted",)
    ),
    "IEC 61010-1:2010": Steady(70, 46.7, 33),
    "IEC 61010-1, before 2010": Steady(60, 42.4, 30),
    "TV safety clause": Steady(60, 35, None, 2e-3, 0.7e-3, None, ("TV safety clause, quoted",)),
}


class Left:
    """A voltage that a capacitor has to get below: `volts`, in words with its kind, its source."""

    __slots__ = ("source", "volts", "words")

    def __init__(self, volts: float, kind: str, source: str):
        self.volts = float(volts)
        self.words = f"{volts:g} V {kind}".strip()
        self.source = source


AFTER_UNPLUGGING = {
    ES1: Left(STEADY[ES1].dc, "dc", "IEC 62368-1"),
    ES2: Left(STEADY[ES2].dc, "dc", "IEC 62368-1"),
    "IEC 60335-1, unplugging": Left(34, "peak", "IEC 60335-1 unplugging, quoted"),
    "IEC 60335-1, extra-low": Left(
        STEADY["IEC 60335-1 8.1.4"].ac_peak, "peak", "IEC 60335-1 8.1.4, quoted"
    ),
    "IEC 60204-1": Left(60, "", "IEC 60204-1, quoted"),
    "IEC 61010-1:2010": Left(STEADY["IEC 61010-1:2010"].dc, "dc", "from memory"),
    "TV safety clause": Left(STEADY["TV safety clause"].dc, "dc", "TV safety clause, quoted"),
}

# V dc above which charge is left to a qualified person: ES1 of IEC 62368-1.
TOUCHABLE_DC = float(STEADY[ES1].dc)
# V up to which an ordinary hand-held meter may be used. The Velleman DVM68 manual, section 4, has
# CAT III 600 V and CAT II 1000 V, which is usual; no more is common practice. Which one lies on
# the bench cannot be seen from here, so the lower figure decides.
METER_VOLTS = 600.0
METER_MOST = 1000.0
# V ac r.m.s. from which a rating brings the cautions of the mains: the ac limit of ES2. Below are
# parts of loudspeaker crossovers and the like; common practice.
MAINS_AC = float(STEADY[ES2].ac_rms or 0)
# A rating above these, in V dc and V ac r.m.s., stands in no ordinary supply: picture tubes, lamp
# inverters and flashes have 3 kV parts, a microwave oven one of 2.1 kV ac. Common practice.
HIGH_DC, HIGH_AC = 2000.0, 1000.0
HOT_JOULE = 100.0  # J, below 100 V: LBNL's hazard of heat
# V ac r.m.s. from which a part of a list that says no more counts as one across the line: the
# lowest mains in use, 100 V; common practice. Between the two a person looks.
LINE_AC = 100.0
# F and V ac r.m.s. from which a part without a safety class has value and rating of a motor-run or
# ballast part, which was once filled with oil; common practice. Below are those of loudspeakers.
RUN_FARAD, RUN_AC = 0.99e-6, 200.0


def is_beyond_meter(volts: float) -> bool:
    """True when no answer may send anybody to that voltage with an ordinary meter.

    >>> is_beyond_meter(600), is_beyond_meter(3000)
    (False, True)
    """
    return volts > METER_VOLTS


def is_of_a_run_part(farad: float | None, volts: float | None, ac: bool) -> bool:
    """Whether value [F] and ac rating [V] are of a motor-run, ballast or microwave oven part.

    >>> is_of_a_run_part(8e-6, 450, ac=True), is_of_a_run_part(0.1e-6, 275, ac=True)
    (True, False)
    """
    rated = volts or 0.0
    return ac and rated >= RUN_AC and ((farad or 0.0) >= RUN_FARAD or rated > HIGH_AC)


def hazards_of_capacitor(
    volts: float | None,
    ac: bool = False,
    line_part: bool = False,
    oil: bool = False,
    farad: float | None = None,
    valves: bool = False,
) -> tuple[str, ...]:
    """The hazards of replacing a capacitor, as keys of safety.HAZARDS; none for most.

    `volts` is its rating, None where not stated; `ac` says that it is an ac rating [V r.m.s.].
    `line_part` says that it carries a safety class or is listed as a part of the mains. `oil`
    says that it is of a kind that was filled with oil, such as oil-paper; `valves` that it is of a
    kind that stands in valve sets and flashes. `farad` is its capacitance, which counts where a low
    voltage holds much energy.

    >>> hazards_of_capacitor(25), hazards_of_capacitor(400)
    ((), ('mains', 'stored charge'))
    >>> hazards_of_capacitor(60, ac=True)
    ('mains', 'stored charge', 'heat and fire')
    >>> hazards_of_capacitor(2.7, farad=350), hazards_of_capacitor(6000)[-1]
    (('stored charge', 'heat and fire'), 'high-voltage tubes')
    """
    rated = volts or 0.0
    found: tuple[str, ...] = ()
    if line_part or (ac and (volts is None or volts >= MAINS_AC)):
        found = ("mains", "stored charge", "heat and fire")
    elif not ac and rated > TOUCHABLE_DC:
        found = ("mains", "stored charge")
    elif (farad or 0.0) * rated**2 / 2 > HOT_JOULE:
        found = ("stored charge", "heat and fire")
    if oil:
        found += ("PCB oil",)
    if rated > (HIGH_AC if ac else HIGH_DC) or (valves and "mains" in found):
        found += ("high-voltage tubes",)
    return found
