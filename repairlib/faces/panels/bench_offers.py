"""What the practice board offers to a mouse: moves in the words in which they are typed."""

from __future__ import annotations

from typing import NamedTuple

from repairlib.bench import DOES, BoardPart, PracticeSet, State, as_listed, can_lift, on_mains_side
from repairlib.core.quantity import brief

JOINT = "joint"  # of solder: it does not come out
CARD = ("found", "measured", "fitted", "told")
MAINS = "Mains: hand it on"
SURE = "Sure? The attempt ends"


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
    if part.mains:
        return {MAINS: [Offer("Look", f"look {name}"), *_hand_on()]}
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
            Offer("Fit a new one…", f"fit {name}{as_listed(part)}", True),
        ]
        if place.taken is not None:
            offers.append(Offer("Fit the old one again", f"fit {name} old"))
    else:
        offers = [
            Offer("Lift one leg", f"lift {name}"),
            Offer("Take it out", f"take out {name}"),
            Offer("Take it out with…", f"take out {name} with pump, 350 °C, 3 s", True),
            Offer("Solder it again", f"resolder {name}"),
        ]
        if part.what == JOINT:
            offers = offers[3:]
        elif place.leg_up or not can_lift(part):
            offers = offers[1:]
    if place.pads == "lifted":
        offers.append(Offer("Bridge its pad with wire", f"bridge {name}"))
    if part.circuit is not None and part.circuit.letter == "C":
        offers.append(Offer("Discharge…", f"discharge {name} with 1 kΩ for 10 s", True))
    return offers


def typed(words: str) -> str:
    """Words as a keyboard has them, without the spaces that hold a figure and its unit together."""
    return words.replace("\u00a0", " ")


def of_point(state: State, point: str) -> Offers:
    """What can be done at a point; the black probe is at its clip, else at the zero point."""
    if on_mains_side(state.set, point):
        return {MAINS: _hand_on()}
    black = state.clipped or "0"
    ends = f"{point} {black}"
    measure = [
        Offer("Volts", f"volts {ends}"),
        Offer("AC volts", f"ac volts {ends}"),
        Offer("Oscilloscope", f"scope {ends}"),
        Offer("Oscilloscope, ac", f"scope {ends} ac"),
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
                Offer("Hand it back", "hand back", sure=SURE),
                *_hand_on(),
                Offer("Give up", "give up", sure=SURE),
            ],
        }
    )


def _hand_on() -> list[Offer]:
    return [Offer("Hand it on…", "hand on: ", True)]


def lines_of(of: PracticeSet) -> dict[str, list[str]]:
    """One whole line for each move, of this set's own parts and points, by what they are for."""
    part, can, rail = _names(of)
    supply = f"plug in with supply {brief(of.feed_volts, 'V')} {brief(of.feed_amps, 'A')}"
    chips = [one.name for one in of.parts if one.circuit is None and not one.mains]
    lines = {
        "Power": ["plug in", "plug in with lamp", supply, "supply", "unplug", "wait 2 min"],
        "How it is tried": ["load light", "load full", "line low", "line usual", "line high"],
        "Look": ["look", f"look {part}", f"look {part} with lens", "smell", f"smell {part}"],
        "Warmth": [f"temperature {part}", f"touch {part}"],
        "Measure": [
            *(f"{verb} {rail} 0" for verb in ("volts", "ac volts", "scope")),
            f"scope {rail} 0 ac",
            *(f"{verb} {part}" for verb in ("volts", "ohms")),
            *(f"diode {one}" for one in _first(of, "diode")),
            *(f"amps {one}" for one in _first(of, "fuse")),
            *(f"{verb} {can}" for verb in ("capacitance", "esr") if can),
            *(f"esr {can} at 1 kHz" for can in (can,) if can),
            "clip 0",
            "clip off",
        ],
        "Work": [
            *(f"discharge {can} with 1 kΩ for 10 s" for can in (can,) if can),
            *(f"lift {can}" for can in (can,) if can),
            f"take out {part}",
            f"take out {part} with pump, 350 °C, 3 s",
            f"clean {part}",
            f"fit {part}",
            *(f"fit {can}{as_listed(of.part(can))}" for can in (can,) if can),
            f"fit {part} turned",
            f"fit {part} old",
            f"resolder {part}",
            f"bridge {part}",
        ],
        "Chip": [f"{verb} chip {name}" for name in chips[:1] for verb in ("read", "write")],
        "Job card": [f"write {one}: …" for one in CARD],
        "The end": ["hand back", "hand on: what you found", "give up"],
    }
    return {name: [typed(line) for line in those] for name, those in lines.items() if those}


def _names(of: PracticeSet) -> tuple[str, str, str]:
    """A part with two ends and a capacitor off the mains side, "" for none, and a rail's point."""
    ours = [one for one in of.parts if one.circuit and not one.mains]
    cans = [one.name for one in ours if one.circuit and one.circuit.letter == "C"]
    others = [one.name for one in ours if one.name not in cans and one.what != JOINT]
    return (cans or others)[0], (cans or [""])[0], of.rails[0].point


def _first(of: PracticeSet, kind: str) -> list[str]:
    """The first part of that kind off the mains side, or none."""
    return [one.name for one in of.parts if kind in one.what and not one.mains][:1]


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
