"""What the practice board offers to a mouse: moves in the words in which they are typed.

Each is an offer: what stands on its button, the words of the move, and whether more is to be typed
behind them before it is done.
"""

from __future__ import annotations

from typing import NamedTuple

from repairlib.bench import DOES, BoardPart, PracticeSet, State

GROUND = "0"


class Offer(NamedTuple):
    """A button: its label, the move that it makes, and whether it is only put into the box.

    `sure` is what is asked before it is done, "" where nothing is.
    """

    label: str
    words: str
    to_box: bool = False
    sure: str = ""


def _known(offers: list[Offer]) -> list[Offer]:
    """Those whose move there is."""
    return [one for one in offers if any(one.words.startswith(verb) for verb in DOES)]


def of_part(state: State, part: BoardPart) -> list[Offer]:
    """What can be done at a part."""
    name, (one, other) = part.name, part.nodes
    ends = f"{one} {other}"
    offers = [Offer("Look at it", f"look {name}"), Offer("Smell at it", f"smell {name}")]
    if part.circuit is not None:
        offers += [
            Offer(f"Volts, {one} to {other}", f"volts {ends}"),
            Offer("AC volts", f"ac volts {ends}"),
            Offer("Ohms", f"ohms {ends}"),
            Offer("Diode test", f"diode {ends}"),
            Offer("Capacitance", f"capacitance {ends}"),
            Offer("ESR", f"esr {ends}"),
            Offer("Amps", f"amps {name}"),
            Offer("Discharge…", f"discharge {name} with 1 kΩ", True),
        ]
    else:
        offers += [
            Offer("Read chip", f"read chip {name}"),
            Offer("Write chip", f"write chip {name}"),
        ]
    offers += [Offer("Temperature", f"temperature {name}"), Offer("Touch it", f"touch {name}")]
    if state.places[name].fitted is None:
        offers += [
            Offer("Clean the pads", f"clean {name}"),
            Offer("Fit a new one…", f"fit {name}", True),
        ]
    else:
        offers += [
            Offer("Take it out", f"take out {name}"),
            Offer("Solder its joints again", f"resolder {name}"),
            Offer("Replace it…", f"fit {name}", True),
        ]
    offers.append(Offer("Bridge a lifted pad", f"bridge {name}"))
    return _known(offers)


def of_point(state: State, point: str) -> list[Offer]:
    """What can be done with a probe on a point; the other one is where the black one is clipped."""
    black = state.clipped or GROUND
    ends = f"{point} {black}"
    return _known(
        [
            Offer(f"Volts to {black}", f"volts {ends}"),
            Offer(f"AC volts to {black}", f"ac volts {ends}"),
            Offer(f"Scope to {black}", f"scope {ends}"),
            Offer(f"Ohms to {black}", f"ohms {ends}"),
            Offer(f"Diode test to {black}", f"diode {ends}"),
            Offer("Clip the black probe here", f"clip {point}"),
            Offer("Touch it", f"touch {point}"),
        ]
    )


def of_bench(of: PracticeSet) -> list[Offer]:
    """What can be done with the whole set."""
    supply = f"plug in with supply {of.feed_volts:g} V {of.feed_amps * 1000:g} mA"
    return _known(
        [
            Offer("Look at all", "look"),
            Offer("Smell", "smell"),
            Offer("Plug in", "plug in"),
            Offer("Plug in with lamp", "plug in with lamp"),
            Offer("Bench supply…", supply, True),
            Offer("Unplug", "unplug"),
            Offer("Wait…", "wait 30 s", True),
            Offer("Load…", "load light", True),
            Offer("Line…", "line 90 %", True),
            Offer("Job card…", "write found ", True),
            Offer("Hand it back", "hand back", sure="The attempt ends. Hand the set back?"),
            Offer("Hand it on…", "hand on ", True),
            Offer("Give up", "give up", sure="The attempt ends. Give up?"),
        ]
    )
