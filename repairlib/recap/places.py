"""Where in a set a capacitor works, and what is due there: ripple, ESR, pulses, steadiness, life.

One table for the plan, its sheet and the calculator. Common practice of the trade; the data sheets
of the old and the new part decide. The words that name a place stand in place_words.py.
"""

from __future__ import annotations

from typing import NamedTuple

from repairlib.recap.words import ALUMINIUM, BIPOLAR, POLYMER, TANTALUM

_SAME_DIELECTRIC = "the same dielectric, value and rating"
_SOLID = "the same kind and value: ripple current not below, ESR not above the old part's"
_ON_THE_MAINS = ("mains", "stored charge")


class Place(NamedTuple):
    """One place: `wet` is due where an electrolytic sits there, `dry` for film, mica or ceramic.

    `look` is what to look at. `low_impedance` asks for such an electrolytic, `rises` allows a made
    value above the old one. `hazards` are keys of safety.HAZARDS; with "mains" among them the part
    itself is on the mains side and is handed on, otherwise they are of the set.
    """

    name: str
    wet: str
    look: str
    dry: str = _SAME_DIELECTRIC
    low_impedance: bool = False
    rises: bool = True
    hazards: tuple[str, ...] = ()


MEMORY, START_UP, DEFLECTION = "memory back-up", "start-up supply", "horizontal output"
_TABLE = (
    Place(
        "switch-mode output",
        "a low-impedance 105 °C part: at 100 kHz at least the old part's ripple current, and no "
        "more impedance",
        "parts side by side go together; behind a linear regulator see that it asks for no ESR",
        low_impedance=True,
    ),
    Place(
        START_UP,
        "a low-impedance 105 °C part of long life and of the same value, never a larger one: the "
        "supply would start late or not at all",
        "it ticks, or starts only when warm: this part first; it often sits beside a hot one",
        low_impedance=True,
        rises=False,
        hazards=_ON_THE_MAINS,
    ),
    Place(
        "PWM controller supply",
        "a low-impedance 105 °C part of long life and of the same value, never a larger one: the "
        "controller would start late or not at all",
        "worn, it lets the controller stop and start again and again",
        low_impedance=True,
        rises=False,
        hazards=_ON_THE_MAINS,
    ),
    Place(
        "base drive",
        "a low-impedance 105 °C part of the same value: at least the old part's ripple current at "
        "100 kHz, for it carries pulses",
        "worn, it starves the switching transistor, which runs hot and shorts: this part before a "
        "new transistor",
        "the same dielectric and value; dv/dt and pulse current not below",
        low_impedance=True,
        rises=False,
        hazards=_ON_THE_MAINS,
    ),
    Place(
        "primary reservoir",
        "a 105 °C part: ripple current at 100 or 120 Hz and voltage not below, the value about the "
        "same, for the surge at switch-on grows with it",
        "it holds some 325 V of 230 V mains, 170 V of 120 V, long after the plug is out",
        hazards=_ON_THE_MAINS,
    ),
    Place(
        "primary side",
        "a 105 °C part: ripple current, voltage and life not below the old part's",
        "it is joined to the mains, and the charged reservoir is beside it",
        "the same dielectric and value; voltage, dv/dt and pulse current not below",
        hazards=_ON_THE_MAINS,
    ),
    Place(
        "reservoir",
        "a 105 °C part: ripple current at 100 or 120 Hz not below; the value not below and at most "
        "double, for the rectifier's pulses grow with it",
        "hum is the sign of a worn one; see that it does not run hot",
    ),
    Place(
        "VRM/CPU",
        "polymer stays polymer, wet becomes the lowest impedance made: ripple current at 100 kHz "
        "not below, impedance not above, by both data sheets",
        "replace the whole row by one type, no kinds mixed: the controller was made for its ESR",
        "the same dielectric, value and rating: class 2 ceramic loses capacitance under voltage",
        low_impedance=True,
    ),
    Place(
        DEFLECTION,
        "a 105 °C part for high ripple current at the line frequency: low impedance; a bipolar "
        "part stays bipolar",
        "of a polar part see that the deflection stage asks for no bipolar one",
        "polypropylene made for pulses, the same value within 5 %: ac rating, dv/dt and pulse "
        "current not below; no polyester",
        low_impedance=True,
        hazards=("high-voltage tubes",),
    ),
    Place(
        "vertical output coupling",
        "a 105 °C part of the same value or the next above: ripple current at 100 or 120 Hz not "
        "below, for all of the deflection current goes through it",
        "of a polar part see that it asks for no bipolar one; a picture that is low or folded is "
        "the sign of a worn one",
        hazards=("high-voltage tubes",),
    ),
    Place(
        "flyback/damper",
        "a low-impedance 105 °C part, voltage and pulse current not below",
        "with less capacitance there the high voltage rises: arcs and x-rays; measure the new part "
        "before it goes in",
        "polypropylene made for pulses, exactly the same value: voltage, dv/dt and pulse current "
        "not below; no other film, no class 2 ceramic",
        low_impedance=True,
        rises=False,
        hazards=(*_ON_THE_MAINS, "high-voltage tubes"),
    ),
    Place(
        "snubber",
        "no electrolytic belongs there: look at the part",
        "measure the resistor in series with it too",
        "the same dielectric and value, polypropylene or pulse ceramic: voltage, dv/dt and pulse "
        "current not below; no polyester",
        hazards=_ON_THE_MAINS,
    ),
    Place(
        "timing/tuned",
        "a low-leakage part of the same value and as close a tolerance: time goes with the value, "
        "and leakage stretches it",
        "measure the time or the frequency afterwards",
        "the same dielectric, value and tolerance: polypropylene, polystyrene, mica and C0G are "
        "steady, polyester and class 2 ceramic drift",
    ),
    Place(
        MEMORY,
        "a part of low leakage, so that the memory lasts as long; never an electrolytic for a "
        "double-layer cell",
        "save what the memory holds before you take it out",
    ),
    Place(
        "reset",
        "a low-leakage part of the same value: the length of the reset goes with it",
        "a start that fails at random is its sign",
    ),
    Place(
        "speaker coupling",
        "a 105 °C part of the same value or the next above, for the bass goes with it; it carries "
        "the whole loudspeaker current: ripple current not below",
        "shorted, it puts dc on the loudspeaker; a part of a crossover is bipolar instead",
    ),
    Place(
        "audio coupling",
        "a low-leakage part of the same value, or film where it fits; bipolar stays bipolar",
        "the plus goes to the side with the higher dc voltage: measure both",
        "the same dielectric and value: class 2 ceramic distorts, and turns knocks into noise",
    ),
    Place(
        "bypass",
        "a 105 °C part of the same value or the next above; the small ceramic beside it stays",
        "a place with no special need",
    ),
)
PLACES = {place.name: place for place in _TABLE}


def due(name: str, kind: str) -> str:
    """What is due for a part of a kind of words.KINDS in a place, and what to look at.

    >>> due("reset", "film")
    'reset: the same dielectric, value and rating; a start that fails at random is its sign'
    """
    place = PLACES[name]
    if kind in (TANTALUM, POLYMER):
        what = _SOLID if place.low_impedance else "the same kind, value and rating"
    else:
        what = place.wet if kind in (ALUMINIUM, BIPOLAR, "") else place.dry
    return f"{name}: {what}; {place.look}"


def is_special_when_dry(name: str) -> bool:
    """Whether film, mica or ceramic there must be of one sort, so that it is worth a word."""
    return PLACES[name].dry != _SAME_DIELECTRIC


def hazards_there(names: tuple[str, ...]) -> tuple[str, ...]:
    """The hazards of those places, as keys of safety.HAZARDS.

    >>> hazards_there(("bypass", "flyback/damper"))
    ('mains', 'stored charge', 'high-voltage tubes')
    """
    return tuple(dict.fromkeys(key for name in names for key in PLACES[name].hazards))
