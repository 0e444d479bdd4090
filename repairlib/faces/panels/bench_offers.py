"""What the practice board offers to a mouse: moves in the words in which they are typed."""

from __future__ import annotations

from typing import NamedTuple

from repairlib.bench import DOES, BoardPart, PracticeSet, State
from repairlib.core.quantity import brief

UNITS = {"C": "F", "R": "Ω", "L": "H"}


class Offer(NamedTuple):
    """A button: its label, and the words of the move that it makes.

    to_box: the words are only put into the box, where more may be typed before they are done.
    sure: what is asked before it is done, "" where nothing is.
    """

    label: str
    words: str
    to_box: bool = False
    sure: str = ""


def of_part(state: State, part: BoardPart) -> list[Offer]:
    """What can be done at a part, as its place is now."""
    name = part.name
    offers = [
        Offer("Look", f"look {name}"),
        Offer("Look with the lens", f"look {name} with lens"),
        Offer("Smell", f"smell {name}"),
    ]
    if part.circuit is None:
        offers += [
            Offer("Read the chip", f"read chip {name}"),
            Offer("Write the chip", f"write chip {name}"),
        ]
    else:
        offers += _across(name)
    offers += [Offer("Temperature", f"temperature {name}"), Offer("Touch", f"touch {name}")]
    return _there(offers + _hands(state, part))


def _across(name: str) -> list[Offer]:
    """What the two probes find across a part."""
    return [
        Offer("Volts", f"volts {name}"),
        Offer("AC volts", f"ac volts {name}"),
        Offer("Ohms", f"ohms {name}"),
        Offer("Diode test", f"diode {name}"),
        Offer("Capacitance", f"capacitance {name}"),
        Offer("ESR", f"esr {name}"),
        Offer("Amps", f"amps {name}"),
        Offer("Discharge…", f"discharge {name} with 1 kΩ for 10 s", True),
    ]


def _hands(state: State, part: BoardPart) -> list[Offer]:
    name, place = part.name, state.places[part.name]
    new = f"fit {name}{_as_marked(part)}"
    if place.fitted is None:
        offers = [
            Offer("Clean its pads", f"clean {name}"),
            Offer("Fit a new one…", new, True),
        ]
        if place.taken is not None:
            offers.append(Offer("Fit the old one again", f"fit {name} old"))
    else:
        offers = [
            Offer("Take it out", f"take out {name}"),
            Offer("Take it out with…", f"take out {name} with pump, 350 °C, 3 s", True),
            Offer("Solder it again", f"resolder {name}"),
        ]
    if place.pads == "lifted":
        offers.append(Offer("Bridge its pad with wire", f"bridge {name}"))
    return offers


def _as_marked(part: BoardPart) -> str:
    """The value and the rating of a part as they belong there, to be typed over."""
    made = part.circuit
    if made is None or made.letter not in UNITS:
        return ""
    rated = f" {brief(part.rated, 'V')}" if part.rated and made.letter == "C" else ""
    return f" {brief(made.value, UNITS[made.letter])}{rated}"


def of_point(state: State, point: str) -> list[Offer]:
    """What can be done at a point; the black probe is at its clip, else at the zero point."""
    black = state.clipped or "0"
    ends = point if point == black else f"{point} {black}"
    measured = [
        Offer(f"Volts, black on {black}", f"volts {ends}"),
        Offer("AC volts", f"ac volts {ends}"),
        Offer("Oscilloscope", f"scope {ends}"),
        Offer("Ohms", f"ohms {ends}"),
        Offer("Diode test", f"diode {ends}"),
    ]
    clip = "clip off" if state.clipped == point else f"clip {point}"
    said = "Take the clip off" if state.clipped == point else "Clip the black probe here"
    clipping = Offer(said, clip)
    return _there([clipping] if point == black else [*measured, clipping])


def of_bench(of: PracticeSet) -> list[Offer]:
    """What can be done with the whole set."""
    supply = f"plug in with supply {brief(of.feed_volts, 'V')} {brief(of.feed_amps, 'A')}"
    return _there(
        [
            Offer("Look", "look"),
            Offer("Smell", "smell"),
            Offer("Plug in", "plug in"),
            Offer("Plug in, lamp in series", "plug in with lamp"),
            Offer("Bench supply…", supply, True),
            Offer("Unplug", "unplug"),
            Offer("Wait 10 s", "wait 10 s"),
            Offer("Wait…", "wait 2 min", True),
            Offer("Load light", "load light"),
            Offer("Load full", "load full"),
            Offer("Line low", "line low"),
            Offer("Line usual", "line usual"),
            Offer("Line high", "line high"),
            *(Offer(f"Card: {one}…", f"write {one}: ", True) for one in CARD),
            Offer("Hand it on…", "hand on: ", True),
            Offer("Hand it back", "hand back", sure="Sure? The attempt ends"),
            Offer("Give up", "give up", sure="Sure? The attempt ends"),
        ]
    )


CARD = ("found", "measured", "fitted", "told")


def _there(offers: list[Offer]) -> list[Offer]:
    """Those whose move there is."""
    return [one for one in offers if any(one.words.startswith(verb) for verb in DOES)]
