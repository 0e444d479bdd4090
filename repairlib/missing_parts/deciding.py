"""How to decide what stood there: the empty place and a twin, measured with the power off."""

from __future__ import annotations

from repairlib.missing_parts.kinds import (
    CAPACITOR,
    CHIP,
    CRYSTAL,
    DIODE,
    FUSE,
    INDUCTIVE,
    LED,
    NOTHING,
    RESISTOR,
    TRANSISTOR,
    Kind,
)
from repairlib.missing_parts.place import Place
from repairlib.missing_parts.reading_a_twin import FOUR_WIRES

POWER_OFF = "Power off, unplugged, battery out; discharge, and prove 0 V on both pads"
FED = (
    "Find out what feeds the board, and how many volts. From the wall without a transformer or an "
    "adapter, or more than 60 V anywhere: measure nothing, and hand it to a qualified person"
)
PACK = (
    "A battery cannot be switched off: part it from the board at its plug, and prove 0 V on both "
    "pads. Where it cannot be parted, measure nothing in ohms and let no tool bridge two points"
)
HAND_ON = "Do not measure: mains or more than 60 V. Hand it to a qualified person"
EMPTY_PADS = {
    "ground": "Ohms from this pad to ground: below 1 Ω here, and far more from the other pad, "
    "proves the ground side. Both below 1 Ω: a short, or few ohms; nothing is proven",
    "rail": "Ohms from this pad to the supply: below 1 Ω here, and far more from the other pad, "
    "proves the supply side",
    "signal": "Follow the other pad with the ohmmeter to the pin it belongs to, below 1 Ω",
}
# Family: how a twin is read on the board, and what the reading allows.
_TWIN = {
    CAPACITOR: "Read the twin with a capacitance or LCR meter at 0.2 V or less. In circuit it "
    "reads too high where other capacitors lie beside it: the part has that much at most",
    RESISTOR: "Read the twin in ohms, both ways round. In circuit it reads too low where anything "
    "lies beside it: the part has that much at least. Up to 1 Ω the leads are in it: at most",
    INDUCTIVE: "Read the twin in ohms: a bead or coil is below a few ohms. Only an LCR meter, with "
    "one end lifted, tells its value",
    DIODE: "Diode test on the twin, both ways round: 0.15 to 0.45 V Schottky, 0.5 to 0.8 V "
    "silicon. Both ways alike means something beside it conducts",
    LED: "Diode test on the twin: 1.6 V or more, and it may glow faintly",
    FUSE: "Read the twin in ohms, below 1 Ω when whole, and copy its print. Ohms do not tell "
    "its current",
    CRYSTAL: "Read the print of the twin; a meter tells nothing of a crystal in circuit",
    TRANSISTOR: "Copy the twin's print and its pin order; diode test finds its junctions",
    CHIP: "Copy the twin's print and its pin order from a board that works",
    NOTHING: "Look at the same place on a second board: empty and never soldered decides it",
}
# Kind: what in the empty place itself decides it.
_PLACE = {
    "decoupling capacitor": "Does the supply pad run straight to one chip's supply pin? Then yes",
    "bulk capacitor": "Do both pads sit in wide copper at a regulator or an inlet? Then yes",
    "chip tantalum": "A + on the board is the positive end; a bar may be either end, and on a "
    "negative rail ground is the positive end. The meter decides which pad is ground",
    "aluminium can": "Look for a round outline, and prove which pad is ground",
    "crystal load capacitor": "One pad must reach the crystal's pin, the other ground",
    "timing capacitor": "The pad must reach a pin that times, with a resistor beside it",
    "coupling capacitor": "Neither pad may reach ground or a supply; measure dc on both, from a "
    "limited supply, once the rest is proven",
    "pull-up resistor": "One pad must reach the supply. With power, the line of a twin is high",
    "pull-down resistor": "One pad must reach ground. With power, the line of a twin is low",
    "feedback divider resistor": "The pad must reach the feedback pin: read the other resistor of "
    "the divider and work the value out from the reference voltage in the data sheet",
    "current-sense resistor": "Two thin tracks to an amplifier beside the wide ones prove it",
    "snubber resistor": "The other end must reach a capacitor, and that goes on to ground or "
    "across the switch",
    "emitter resistor": "One pad must reach the emitter of a transistor. Read its partner in the "
    "other half or channel: it is the same",
    "discharge resistor": "Both pads must lie across one cell or one capacitor, directly or "
    "through a transistor",
    "thermistor": "One pad must reach a pin for temperature, or lie in line with the supply that "
    "comes in. Read a twin cold, then warmed in the hand: it moves",
    "LED resistor": "One pad must reach an LED: the diode test there lights it faintly",
    "zero-ohm link": "Is the same name on both sides elsewhere on the board? Then it joins them",
    "ferrite bead": "Behind it one chip or connector alone is fed: then a bead or a link",
    "fuse": "Behind it everything is fed, and before it only the inlet. Look for the short first",
    "ESD protection diode": "The pad must reach a contact of the connector, with a short track",
    "flyback diode": "Both pads must reach the two ends of the coil, which reads a few to some "
    "hundred ohms",
    "never fitted": "Look under a lens: torn fillets and flux say that a part was there",
}


def deciding_steps(kind: Kind, place: Place, mains: bool) -> tuple[str, ...]:
    """What to measure, in order, to decide whether a kind of part stood there.

    >>> from repairlib.missing_parts.kinds import kind_named
    >>> from repairlib.missing_parts.place import read_place
    >>> for step in deciding_steps(kind_named("LED"), read_place("D1"), False):
    ...     print(step[:40])
    Find out what feeds the board, and how m
    Power off, unplugged, battery out; disch
    Diode test on the twin: 1.6 V or more, a
    """
    if mains:
        return (HAND_ON,)
    # A named 5 V is no witness: behind a dropper it lies on the mains.
    steps = [FED, POWER_OFF, *([PACK] if "battery" in place.near else ())]
    for net in place.nets:
        side = net.side
        if EMPTY_PADS[side] not in steps:
            steps.append(EMPTY_PADS[side])
    if kind.name in _PLACE:
        steps.append(_PLACE[kind.name])
    return (*steps, FOUR_WIRES if kind.name == "current-sense resistor" else _TWIN[kind.family])
