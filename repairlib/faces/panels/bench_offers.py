"""What the practice board offers to a mouse: moves in the words in which they are typed."""

from __future__ import annotations

from typing import NamedTuple

from repairlib.bench import DOES, BoardPart, PracticeSet, State
from repairlib.core.quantity import Quantity, brief

UNITS = {"C": "F", "R": "Ω", "L": "H"}
JOINT = "joint"  # of solder: it does not come out
CARD = ("found", "measured", "fitted", "told")


class Offer(NamedTuple):
    """A button: its label, and the words of the move that it makes.

    to_box: the words are only put into the box, where more may be typed before they are done.
    sure: what is asked before it is done, "" where nothing is.
    """

    label: str
    words: str
    to_box: bool = False
    sure: str = ""


Offers = dict[str, list[Offer]]  # by what they are for, in the order in which they stand


def of_part(state: State, part: BoardPart) -> Offers:
    """What can be done at a part, as its place is now."""
    name = part.name
    look = [
        Offer("Look", f"look {name}"),
        Offer("Look with the lens", f"look {name} with lens"),
        Offer("Smell", f"smell {name}"),
        Offer("Touch", f"touch {name}"),
        Offer("Temperature", f"temperature {name}"),
    ]
    if part.circuit is None:
        chip = [Offer("Read it", f"read chip {name}"), Offer("Write it", f"write chip {name}")]
        return _there({"Look": look, "Chip": chip, "Hands": _hands(state, part)})
    measure = [
        Offer("Volts", f"volts {name}"),
        Offer("AC volts", f"ac volts {name}"),
        Offer("Ohms", f"ohms {name}"),
        Offer("Diode test", f"diode {name}"),
        Offer("Capacitance", f"capacitance {name}"),
        Offer("ESR", f"esr {name}"),
        Offer("Amps", f"amps {name}"),
        Offer("Oscilloscope", f"scope {name}"),
    ]
    return _there({"Look": look, "Measure across it": measure, "Hands": _hands(state, part)})


def _hands(state: State, part: BoardPart) -> list[Offer]:
    name, place = part.name, state.places[part.name]
    if place.fitted is None:
        offers = [
            Offer("Clean its pads", f"clean {name}"),
            Offer("Fit a new one…", f"fit {name}{_as_marked(part)}", True),
        ]
        if place.taken is not None:
            offers.append(Offer("Fit the old one again", f"fit {name} old"))
    else:
        offers = [
            Offer("Take it out", f"take out {name}"),
            Offer("Take it out with…", f"take out {name} with pump, 350 °C, 3 s", True),
            Offer("Solder it again", f"resolder {name}"),
        ]
        if part.what == JOINT:
            offers = offers[2:]
    if place.pads == "lifted":
        offers.append(Offer("Bridge its pad with wire", f"bridge {name}"))
    if part.circuit is not None and part.circuit.letter == "C":
        offers.append(Offer("Discharge…", f"discharge {name} with 1 kΩ for 10 s", True))
    return offers


def _as_marked(part: BoardPart) -> str:
    """The value and the rating of a part as they belong there, to be typed over."""
    made = part.circuit
    if made is None or made.letter not in UNITS:
        return ""
    rated = f" {brief(part.rated, 'V')}" if part.rated and made.letter == "C" else ""
    return typed(f" {Quantity(made.value, UNITS[made.letter])}{rated}")


def typed(words: str) -> str:
    """Words as a keyboard has them, without the spaces that hold a figure and its unit together."""
    return words.replace("\u00a0", " ")


def of_point(state: State, point: str) -> Offers:
    """What can be done at a point; the black probe is at its clip, else at the zero point."""
    black = state.clipped or "0"
    ends = f"{point} {black}"
    measure = [
        Offer("Volts", f"volts {ends}"),
        Offer("AC volts", f"ac volts {ends}"),
        Offer("Oscilloscope", f"scope {ends}"),
        Offer("Ohms", f"ohms {ends}"),
        Offer("Diode test", f"diode {ends}"),
        Offer("Capacitance", f"capacitance {ends}"),
        Offer("ESR", f"esr {ends}"),
    ]
    off = state.clipped == point
    clip = Offer(
        "Take the clip off" if off else "Clip the black probe here",
        "clip off" if off else f"clip {point}",
    )
    measured = {} if point == black else {f"Red here, black on {black}": measure}
    return _there({**measured, "Black probe": [clip]})


def of_bench(of: PracticeSet) -> Offers:
    """What can be done with the whole set."""
    supply = f"plug in with supply {brief(of.feed_volts, 'V')} {brief(of.feed_amps, 'A')}"
    return _there(
        {
            "Power": [
                Offer("Plug in", "plug in"),
                Offer("Plug in, lamp in series", "plug in with lamp"),
                Offer("Bench supply…", typed(supply), True),
                Offer("Unplug", "unplug"),
            ],
            "Wait": [Offer("10 s", "wait 10 s"), Offer("2 min", "wait 2 min")],
            "Load": [Offer("light", "load light"), Offer("full", "load full")],
            "Line": [Offer(word, f"line {word}") for word in ("low", "usual", "high")],
            "Look": [Offer("at all parts", "look"), Offer("Smell", "smell")],
            "Job card": [Offer(f"{one}…", f"write {one}: ", True) for one in CARD],
            "The end": [
                Offer("Hand it back", "hand back", sure="Sure? The attempt ends"),
                Offer("Hand it on…", "hand on: ", True),
                Offer("Give up", "give up", sure="Sure? The attempt ends"),
            ],
        }
    )


def _there(groups: Offers) -> Offers:
    """Those whose move there is."""
    kept = {
        name: [one for one in offers if any(one.words.startswith(verb) for verb in DOES)]
        for name, offers in groups.items()
    }
    return {name: offers for name, offers in kept.items() if offers}


def as_sent(groups: Offers) -> list[list]:
    """The groups as they go to the browser, in their order."""
    return [[name, [one._asdict() for one in offers]] for name, offers in groups.items()]
