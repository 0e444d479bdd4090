"""Where coils, diodes, fuses, crystals and semiconductors stand: common practice of schematics."""

from __future__ import annotations

from repairlib.missing_parts.kinds import CAPACITOR, KINDS, RESISTOR
from repairlib.missing_parts.rule import Rule

_PASSES = "A supply passes through: the same on both sides"
_SHORT = "Between a supply and ground it would be a short"
_DIODE_BODY = "The pads are those of a diode"

RULES = (
    Rule("ferrite bead", 5, "rail-rail volts_alike", _PASSES),
    Rule("ferrite bead", 4, "at:analogue_supply", "A quiet supply is branched off there"),
    Rule("ferrite bead", 2, "at:connector|at:power_input|at:radio", "Noise is stopped there"),
    Rule("ferrite bead", 1, "end:fast_pair signal-signal", "A fast line may be filtered so"),
    Rule("ferrite bead", 1, "size:small|size:middle", "A usual size of it"),
    Rule("ferrite bead", 1, "ground-ground", "Two grounds may be joined so"),
    Rule("ferrite bead", -9, "rail-ground", _SHORT),
    Rule("ferrite bead", -4, "volts_differ", "Two voltages must not be joined"),
    Rule("ferrite bead", -6, "rail-signal|signal-ground", "It would tie the signal"),
    Rule("ferrite bead", -5, "end:switch_node|at:sense", "That place has its own job"),
    Rule("power inductor", 8, "end:switch_node", "At the node that a converter switches"),
    Rule("power inductor", 3, "at:converter|near:switch_node", "A switching converter is there"),
    Rule("power inductor", 3, "size:large", "A large body: it carries the whole current"),
    Rule("power inductor", -5, "size:tiny", "The body is too small for it"),
    Rule("power inductor", -6, "!at:switch_node|at:converter", "No switching converter is named"),
    Rule(
        "power inductor",
        -5,
        "!at:switch_node|size:large|nets_unknown",
        "Neither the switch node nor a large body",
    ),
    Rule("power inductor", -9, "rail-ground", _SHORT),
    Rule("power inductor", -5, "end:feedback|end:bootstrap|end:compensation", "A pin of control"),
    Rule("power inductor", -5, "end:switch_node signal-ground", "It would short the switch"),
    Rule(
        "common-mode choke", 6, "pads:many at:fast_pair|at:bus_pair|at:mains", "Two lines pass it"
    ),
    Rule("common-mode choke", -6, "!pads:many", "It needs four pads"),
    Rule("ESD protection diode", 5, "signal-ground at:connector", "A line from outside, to ground"),
    Rule(
        "ESD protection diode", 5, "signal-ground at:touched", "A contact near a finger, to ground"
    ),
    Rule("ESD protection diode", 4, "at:connector nets_unknown|signal_only", "A line from outside"),
    Rule(
        "ESD protection diode", 2, "at:interface|at:data_line|at:bus_pair", "Data lines are there"
    ),
    Rule("ESD protection diode", 9, "pads:three|pads:many at:connector", "It guards several lines"),
    Rule("ESD protection diode", 1, "size:tiny|size:small|semiconductor_body", "A usual size"),
    Rule("ESD protection diode", -5, "!at:connector|at:touched", "No line from outside is named"),
    Rule("ESD protection diode", -3, "rail-ground", "A supply wants a stronger part"),
    Rule("ESD protection diode", -5, "signal-signal|rail-rail", "Neither side is ground"),
    Rule("ESD protection diode", -5, "at:coil|end:switch_node", "A coil is switched there"),
    Rule("supply protection diode", 6, "rail-ground at:power_input|at:connector", "At an input"),
    Rule(
        "supply protection diode",
        5,
        "rail-rail at:power_input|at:connector|at:interface",
        "The supply comes in through it",
    ),
    Rule("supply protection diode", 2, "rail-ground", "It guards a supply against reversal"),
    Rule("supply protection diode", 2, "rail-rail volts_differ", "A diode drops a little there"),
    Rule("supply protection diode", 2, "size:large", "A body for a surge"),
    Rule("supply protection diode", -4, "signal-ground|signal-signal|rail-signal", "No supply"),
    Rule("supply protection diode", -4, "size:tiny", "The body is too small for a surge"),
    Rule("supply protection diode", -4, "at:coil|end:switch_node", "A coil is switched there"),
    Rule("flyback diode", 8, "end:coil", "Across a coil that is switched"),
    Rule("flyback diode", 7, "near:coil", "A coil that is switched is beside it"),
    Rule("flyback diode", -9, "rail-rail", "Both sides are supplies: the coil is not between"),
    Rule("flyback diode", 2, "end:switched_end", "At the switching end of a transistor"),
    Rule("flyback diode", -8, "!at:coil", "No coil is named"),
    Rule("converter diode", 8, "end:switch_node", "At the node that a converter switches"),
    Rule("converter diode", 3, "near:converter|near:switch_node|at:storage_coil", "A converter"),
    Rule("converter diode", 1, "size:large", "A body for the whole current"),
    Rule("converter diode", -6, "!at:switch_node|at:converter", "No converter is named"),
    Rule("converter diode", -3, "end:bootstrap", "A small diode feeds the bootstrap pin"),
    Rule("zener diode", 4, "end:gate signal-ground|signal-signal", "It guards a gate"),
    Rule("zener diode", 2, "signal-ground", "From a signal to ground, it holds it down"),
    Rule("zener diode", 4, "mark:glass", "A glass cylinder is usual for it"),
    Rule("signal diode", 3, "mark:glass", "A glass cylinder is usual for it"),
    Rule("ESD protection diode", -4, "mark:glass", "It does not come in glass"),
    Rule("zener diode", 4, "at:reference", "A reference is made there"),
    Rule("zener diode", 2, "end:base|end:slow_input", "It holds that pin to a voltage"),
    Rule("zener diode", -3, "rail-rail|rail-signal|signal-signal !end:gate", "Not to ground"),
    Rule("zener diode", -3, "at:connector|at:coil|at:power_input", "Another guard is usual there"),
    Rule("signal diode", 3, "signal-signal", "A signal passes one way"),
    Rule("signal diode", 4, "rail-signal end:reset", "It empties the reset capacitor"),
    Rule("signal diode", 4, "end:bootstrap", "It charges the bootstrap capacitor"),
    Rule("signal diode", 1, "rail-signal", "It clamps a signal to the supply"),
    Rule("signal diode", -6, "rail-ground|rail-rail", "A supply wants a stronger part"),
    Rule("signal diode", -3, "at:coil|end:switch_node|size:large", "A current flows there"),
    Rule("LED", 6, "at:LED", "An LED or its resistor is named there"),
    Rule("LED", -7, "!at:LED|letter:LED|letter:DS", "No light is named there"),
    Rule("LED", -5, "rail-ground|rail-rail", "Without a resistor it would burn"),
    Rule("LED", 1, "rail-signal|signal-ground|signal-signal", "In line with its resistor"),
    Rule("fuse", 4, "rail-rail volts_alike", _PASSES),
    Rule("fuse", 5, "at:power_input rail-rail|nets_unknown|rail_only", "The supply comes in there"),
    Rule("fuse", 2, "at:connector rail-rail", "A supply at a connector is fused"),
    Rule("fuse", 2, "end:connector rail-rail", "A supply comes in by a connector there"),
    Rule("fuse", 3, "mark:burnt", "Something blew there"),
    Rule("fuse", 1, "size:middle|size:large", "A usual size of it"),
    Rule("fuse", 3, "at:mains", "On the mains side"),
    Rule("fuse", -9, "rail-ground", _SHORT),
    Rule("fuse", -7, "signal-ground|rail-signal|signal-signal|ground-ground", "No supply passes"),
    Rule("fuse", -4, "at:analogue_supply|at:sense|end:regulator_output", "Behind the regulator"),
    Rule("fuse", -2, "!at:power_input|at:connector|at:mains", "No way in or out is named"),
    Rule("varistor", 3, "at:mains", "On the mains side"),
    Rule("varistor", -7, "!at:mains|letter:RV|letter:MOV|letter:VDR", "Not on the mains side"),
    Rule("crystal", 6, "both:crystal", "Between the two clock pins of a chip"),
    Rule("crystal", 2, "end:crystal signal-signal", "Clock pins are there"),
    Rule("crystal", 1, "size:middle|size:large|pads:many", "A usual size of it"),
    Rule("crystal", -7, "!at:crystal", "No clock pins are named"),
    Rule(
        "crystal",
        -6,
        "signal-ground|rail-ground|rail-signal|rail-rail",
        "Not between two clock pins",
    ),
    Rule("transistor", 5, "pads:three", "Three pads"),
    Rule("transistor", 2, "end:transistor|at:gate|at:base", "A transistor is named there"),
    Rule("transistor", 2, "at:coil|at:LED pads:three", "It switches a load"),
    Rule(
        "transistor", -9, "!pads:three|pads:many|letter:Q|letter:TR|letter:T|letter:VT", "Two pads"
    ),
    Rule("transistor", -4, "pads:two", "It needs three pads"),
    Rule("voltage regulator", 4, "pads:three|pads:many at:regulator", "A regulator is named there"),
    Rule("voltage regulator", 4, "pads:three|pads:many volts_differ", "One rail in, another out"),
    Rule("voltage regulator", 2, "mark:tab", "A tab takes the heat of it away"),
    Rule("voltage regulator", -9, "!pads:three|pads:many|letter:U|letter:IC", "Two pads"),
    Rule("voltage regulator", -4, "pads:two", "It needs three pads or more"),
    Rule("never fitted", 8, "mark:flat_pads", "The pads look as if nothing was soldered there"),
    Rule("never fitted", 14, "mark:never_soldered", "It is said that nothing was soldered there"),
    Rule("never fitted", 16, "twin:empty", "The same place of the twin is empty too"),
    Rule(
        "never fitted",
        -7,
        "!mark:never_soldered|mark:flat_pads|twin:empty",
        "Nothing says that it was empty",
    ),
    Rule("never fitted", -4, "mark:broken_off|mark:burnt", "Something was there and broke"),
    *[
        Rule(name, -5, "pads:three|pads:many", "It has two pads, and there are more")
        for name, kind in KINDS.items()
        if kind.family in (CAPACITOR, RESISTOR) or name in ("ferrite bead", "flyback diode")
    ],
    *[
        Rule(kind, 3, "semiconductor_body pads:two", _DIODE_BODY)
        for kind in (
            *("ESD protection diode", "supply protection diode", "flyback diode"),
            *("converter diode", "zener diode", "signal diode"),
        )
    ],
    *[
        Rule(kind, 2, "mark:bar", "A bar marks one end: a diode's cathode")
        for kind in (
            *("ESD protection diode", "supply protection diode", "flyback diode", "LED"),
            *("converter diode", "zener diode", "signal diode"),
        )
    ],
)
