"""The checks of a first power-up in their order: what is done, why, and what may come out.

The order, the looks and the words are common practice; limits come from the rails and the supply.
"""

from __future__ import annotations

from dataclasses import dataclass

from repairlib.core.errors import RepairlibError
from repairlib.core.limits import TOUCHABLE_DC
from repairlib.core.quantity import brief
from repairlib.power_up.rails import HOW_RIPPLE, Window
from repairlib.power_up.supply import LEADS_OHM, LIMITED, SUPPLIES, WITHOUT, steps_up

BEFORE, STEPS, RAILS, RIPPLE, MINUTES = (
    "before power",
    "limited supply",
    "rails",
    "ripple",
    "first minutes",
)
DEAD = "dead"


@dataclass(frozen=True, slots=True)
class RailToCheck:
    """A rail of the set: window [V], the ohms to ground below which it is shorted, ripple [V].

    `ripple` is peak to peak, None where no limit is known: then it is not asked for. Raises
    RepairlibError for a window that is none, and for less than 1 Ω, which is a short to any meter
    with two wires.

    >>> RailToCheck("+5 V", 4.75, 5.25, short_below=10).ripple is None
    True
    """

    name: str
    low: float
    high: float
    short_below: float
    ripple: float | None = None

    def __post_init__(self) -> None:
        if not (isinstance(self.name, str) and self.name.strip()):
            raise RepairlibError(self.name, "a rail without a name", "a name, such as +5 V")
        low, high = number(self.low, "a rail's low end"), number(self.high, "a rail's high end")
        if not low < high or low * high <= 0:
            raise RepairlibError(f"{low:g} V to {high:g} V", "no window", "the lower end first")
        if number(self.short_below, "the ohms of a short") < LEADS_OHM:
            wrong = "two wires do not tell so little from their leads"
            raise RepairlibError(f"{self.short_below:g} Ω", wrong, f"{LEADS_OHM:g} Ω or more")
        if self.ripple is not None:
            above_zero(self.ripple, "a ripple limit")


@dataclass(frozen=True, slots=True)
class Setup:
    """The set at hand: its supply [V dc], the current it should draw [A], its rails.

    `supply` is one of SUPPLIES, what there is to limit the current. Raises RepairlibError for
    figures that are not above 0, for no rail, and for two of one name.
    """

    voltage: float
    current: float
    rails: tuple[RailToCheck, ...]
    supply: str = LIMITED

    def __post_init__(self) -> None:
        above_zero(self.voltage, "the volts of the supply")
        above_zero(self.current, "the current of the set")
        object.__setattr__(self, "rails", tuple(self.rails))
        names = [rail.name for rail in self.rails]
        if not names or len(set(names)) < len(names):
            read = ", ".join(names) or "no rail"
            raise RepairlibError(read, "each rail once is due", "one rail or more")
        if self.supply not in SUPPLIES:
            raise RepairlibError(self.supply, "not a supply known here", ", ".join(SUPPLIES))


@dataclass(frozen=True, slots=True)
class Check:
    """One check. Without a `unit` it is a look, else a reading from `low` to `high` in that unit.

    `doubt_stops` says that a look or reading which cannot be told counts as wrong.
    """

    key: str
    stage: str
    do: str
    why: str
    cautions: tuple[str, ...]
    unit: str = ""
    low: float | None = None
    high: float | None = None
    doubt_stops: bool = False

    @property
    def powered(self) -> bool:
        """Whether the set is under power in it."""
        return self.stage != BEFORE


def rail_to_check(window: Window, short_below: float) -> RailToCheck:
    """A rail of the table, or one of `window_around`, with the ohms of a short.

    >>> from repairlib.power_up.rails import windows
    >>> rail_to_check(windows()["+12 V"], 20).high
    12.6
    """
    return RailToCheck(window.rail, window.low, window.high, short_below, window.ripple)


def handed_on(setup: Setup) -> str:
    """Why the power itself is not for the person at the bench, or "" where it is.

    >>> rail = RailToCheck("+5 V", 4.75, 5.25, 10)
    >>> handed_on(Setup(9, 0.5, (rail,))), handed_on(Setup(9, 0.5, (rail,), "neither"))[:30]
    ('', 'nothing limits the current: ha')
    """
    if _is_high(setup):
        return "more than 60 V dc, ES1 of IEC 62368-1: a qualified person goes on"
    return WITHOUT.get(setup.supply, "")


def checks_of(setup: Setup) -> tuple[Check, ...]:
    """Every check of this set that is for the person at the bench, in order.

    None above 60 V dc, those before power where nothing limits the current.

    >>> rail = RailToCheck("+5 V", 4.75, 5.25, 10)
    >>> [one.key for one in checks_of(Setup(9, 0.5, (rail,), "neither"))]
    ['dead', 'foreign metal', 'polarity', 'ohms +5 V', 'fuse']
    """
    if _is_high(setup):
        return ()
    before = _before(setup)
    return before if handed_on(setup) else (*before, *_under_power(setup))


def _is_high(setup: Setup) -> bool:
    ends = [abs(end) for rail in setup.rails for end in (rail.low, rail.high)]
    return max(setup.voltage, *ends) > TOUCHABLE_DC


def _before(setup: Setup) -> tuple[Check, ...]:
    return (
        Check(
            DEAD,
            BEFORE,
            "Plug out, battery out, capacitors discharged and measured, twice.",
            "What still has charge burns, and ohms on it mean nothing.",
            ("stored charge", "mains", "batteries"),
        ),
        Check(
            "foreign metal",
            BEFORE,
            "Both sides under a lens and a light: balls of solder, cut leads, screws, bridges.",
            "A loose piece of metal shorts what was good.",
            ("flying leads and eyes",),
        ),
        Check(
            "polarity",
            BEFORE,
            "Every part that was fitted, once more, against the board and the photograph.",
            "A part the wrong way round bursts when power comes.",
            ("heat and fire",),
        ),
        *(_ohms(rail) for rail in setup.rails),
        Check(
            "fuse",
            BEFORE,
            "The fuse out: is it whole, and of the rating, speed and volts that are due?",
            "A larger one lets the board burn in its place.",
            ("heat and fire",),
        ),
    )


def _ohms(rail: RailToCheck) -> Check:
    return Check(
        f"ohms {rail.name}",
        BEFORE,
        f"Ohms from {rail.name} to ground, once the reading stands still.",
        f"Below {brief(rail.short_below, 'Ω')} it counts as shorted and gets no power.",
        ("stored charge",),
        "Ω",
        low=rail.short_below,
    )


def _under_power(setup: Setup) -> tuple[Check, ...]:
    steps = steps_up(setup.voltage, setup.current)
    looks = (
        ("smell", "Sniff from a distance: burning, fish, hot lacquer?", "A part is burning."),
        (
            "warm parts",
            "The back of a hand near each part, none touched: does one get hot soon?",
            "What gets hot so soon takes too much, and fails or burns.",
        ),
        ("noise", "Listen: hiss, crackle, whine, a fan that stands?", "A can that hisses bursts."),
    )
    return (
        *(
            Check(
                f"power {place}",
                STEPS,
                f"{'Output off. Set' if place == 1 else 'Raise to'} {brief(step.volts, 'V')}, "
                f"limit {brief(step.limit, 'A')}. Glasses on, face away"
                f"{', output on' if place == 1 else ''}. Read the current.",
                f"Above {brief(step.most, 'A')} the supply counts as limiting: something takes "
                "too much.",
                ("heat and fire", "flying leads and eyes"),
                "A",
                None,
                step.most,
                doubt_stops=True,
            )
            for place, step in enumerate(steps, 1)
        ),
        *(
            Check(
                f"volts {rail.name}",
                RAILS,
                f"Volts of {rail.name} against ground. The probe must not slip.",
                "A rail outside its window kills what it feeds.",
                ("flying leads and eyes",),
                "V",
                rail.low,
                rail.high,
            )
            for rail in setup.rails
        ),
        *(
            Check(
                f"ripple {rail.name}",
                RIPPLE,
                f"Ripple of {rail.name}, peak to peak.",
                HOW_RIPPLE,
                ("flying leads and eyes",),
                "V",
                None,
                rail.ripple,
            )
            for rail in setup.rails
            if rail.ripple is not None
        ),
        *(
            Check(
                key,
                MINUTES,
                f"The first five minutes. {do}",
                why,
                ("heat and fire", "flying leads and eyes"),
                doubt_stops=True,
            )
            for key, do, why in looks
        ),
    )


def number(value: object, what: str) -> float:
    """`value` as a finite number; RepairlibError names what it should be.

    >>> number(3, "the volts")
    3.0
    """
    if isinstance(value, bool) or not isinstance(value, int | float) or not abs(value) < 1e20:
        raise RepairlibError(value, f"{what} is not a number", "a finite number, in SI units")
    return float(value)


def above_zero(value: object, what: str) -> None:
    """RepairlibError where `value` is not a finite number above 0."""
    if number(value, what) <= 0:
        raise RepairlibError(value, f"{what} is not above 0", "a number above 0, in SI units")
