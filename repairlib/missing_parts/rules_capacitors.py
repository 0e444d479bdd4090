"""Where capacitors stand: common practice of schematics, in plain words."""

from __future__ import annotations

from repairlib.missing_parts.rule import Rule

_SUPPLY = "One side is a supply, the other ground"
_NO_SUPPLY = "It does not lie between a supply and ground"
_POLAR = "A mark for the positive end: a polar part"

RULES = (
    Rule("decoupling capacitor", 5, "rail-ground", _SUPPLY),
    Rule("decoupling capacitor", -5, "!rail-ground|rail_only|ground_only|nets_unknown", _NO_SUPPLY),
    Rule("decoupling capacitor", 4, "at:supply_pin", "It stands at a chip's supply pin"),
    Rule("decoupling capacitor", 2, "at:chip !at:regulator", "A chip is beside it"),
    Rule("decoupling capacitor", -3, "at:regulator", "A regulator wants more than 100 nF"),
    Rule("decoupling capacitor", -2, "at:power_input", "At the power input much more is usual"),
    Rule("decoupling capacitor", 1, "size:tiny|size:small", "A small body, as 100 nF has"),
    Rule("decoupling capacitor", -4, "size:large", "The body is far larger than 100 nF needs"),
    Rule("decoupling capacitor", -6, "mark:plus|mark:round_outline", _POLAR),
    Rule("bulk capacitor", 5, "rail-ground", _SUPPLY),
    Rule("bulk capacitor", -5, "!rail-ground|rail_only|ground_only|nets_unknown", _NO_SUPPLY),
    Rule("bulk capacitor", 4, "at:regulator_output", "At a regulator's output: it keeps it stable"),
    Rule("bulk capacitor", 4, "at:regulator_input", "At a regulator's input: it feeds it"),
    Rule(
        "bulk capacitor",
        3,
        "at:regulator !at:regulator_output|at:regulator_input",
        "A regulator is beside it",
    ),
    Rule("bulk capacitor", 3, "at:power_input", "The supply comes in there"),
    Rule("bulk capacitor", 2, "at:coil", "A load that pulls in jerks is beside it"),
    Rule("bulk capacitor", 1, "at:connector", "A rail that leaves by a connector is held there"),
    Rule("bulk capacitor", 1, "size:middle", "A body with room for microfarads"),
    Rule("bulk capacitor", 3, "size:large", "A large body: microfarads"),
    Rule("bulk capacitor", -4, "size:tiny", "The body is small for microfarads"),
    Rule("bulk capacitor", -4, "mark:plus|mark:bar", _POLAR),
    Rule(
        "bulk capacitor", -5, "mark:round_outline|mark:half-filled_circle", "A round can is drawn"
    ),
    Rule("bulk capacitor", -3, "tantalum_size", "No ceramic chip has these pads"),
    Rule("bulk capacitor", 1, "mark:no_polarity", "No mark of polarity: a ceramic part"),
    Rule("chip tantalum", 4, "rail-ground", _SUPPLY),
    Rule("chip tantalum", 5, "tantalum_size", "The pads fit a tantalum case"),
    Rule("chip tantalum", 1, "tantalum_or_chip_size", "The pads fit tantalum case A"),
    Rule("chip tantalum", 5, "mark:plus|mark:bar !mark:round_outline", _POLAR),
    Rule("chip tantalum", 2, "at:regulator|at:power_input", "A rail is held there"),
    Rule("chip tantalum", -3, "!mark:plus|mark:bar|tantalum_size", "No mark for the positive end"),
    Rule("chip tantalum", -6, "size:tiny|size:small", "The body is too small for it"),
    Rule("chip tantalum", -6, "mark:no_polarity", "No polarity is marked, and it needs one"),
    Rule("chip tantalum", -6, "mark:round_outline|mark:half-filled_circle", "A round can is drawn"),
    Rule("chip tantalum", -4, "signal-ground|rail-rail|rail-signal", _NO_SUPPLY),
    Rule("chip tantalum", -8, "semiconductor_body", "The pads are those of a semiconductor"),
    Rule("aluminium can", 4, "rail-ground", _SUPPLY),
    Rule("aluminium can", 7, "mark:round_outline|mark:half-filled_circle", "A round can is drawn"),
    Rule("aluminium can", 2, "at:power_input|at:regulator", "A rail is held there"),
    Rule("aluminium can", 1, "holes", "Holes for leads"),
    Rule("aluminium can", -6, "chip_size|tantalum_size", "The pads are those of a chip part"),
    Rule(
        "aluminium can",
        -3,
        "!mark:round_outline|mark:half-filled_circle|holes|size:large",
        "No round can is drawn",
    ),
    Rule("aluminium can", -4, "mark:no_polarity", "No polarity is marked, and it needs one"),
    Rule("aluminium can", -4, "signal-ground|rail-rail|rail-signal", _NO_SUPPLY),
    Rule("crystal load capacitor", 8, "end:crystal signal-ground", "From a crystal to ground"),
    Rule("crystal load capacitor", 3, "near:crystal signal-ground", "A crystal is beside it"),
    Rule(
        "crystal load capacitor",
        4,
        "at:crystal nets_unknown|ground_only|signal_only",
        "A crystal is beside it",
    ),
    Rule("crystal load capacitor", -8, "!at:crystal", "No crystal is named there"),
    Rule(
        "crystal load capacitor", -6, "rail-ground|rail-rail|rail-signal", "A supply is no crystal"
    ),
    Rule("crystal load capacitor", -3, "signal-signal", "Neither side is ground"),
    Rule("crystal load capacitor", -4, "size:large|mark:plus", "Far too large for picofarads"),
    Rule("timing capacitor", 6, "at:timer signal-ground|signal-signal", "At a pin that times"),
    Rule("timing capacitor", 6, "end:reset signal-ground", "It delays the reset after power-on"),
    Rule("timing capacitor", 7, "end:soft_start", "It sets how fast the supply comes up"),
    Rule("timing capacitor", 6, "end:enable signal-ground", "It delays the enable pin"),
    Rule("timing capacitor", 2, "at:pull signal-ground", "A resistor that charges it is beside it"),
    Rule(
        "timing capacitor", 2, "at:timer nets_unknown|ground_only|signal_only", "A timer is there"
    ),
    Rule(
        "timing capacitor",
        -6,
        "!at:timer|end:reset|end:soft_start|end:enable",
        "Nothing there times",
    ),
    Rule("timing capacitor", -6, "rail-ground|rail-rail", "A supply needs no timing"),
    Rule("coupling capacitor", 4, "signal-signal", "A signal passes from one side to the other"),
    Rule("coupling capacitor", 4, "at:sound", "Sound or picture: dc is held back between stages"),
    Rule("coupling capacitor", 3, "at:radio signal-signal", "A radio path passes through"),
    Rule("coupling capacitor", 2, "at:amplifier_input signal-signal", "An amplifier's input"),
    Rule("coupling capacitor", 1, "end:fast_pair signal-signal", "A fast pair may be coupled so"),
    Rule("coupling capacitor", -8, "rail-ground|rail-rail", "No signal passes there"),
    Rule("coupling capacitor", -5, "signal-ground|rail-signal", "The other side is no signal"),
    Rule(
        "coupling capacitor", -4, "end:bootstrap|end:switch_node|end:feedback", "A converter's pin"
    ),
    Rule("coupling capacitor", -4, "end:timer|both:crystal", "That pin times and carries no sound"),
    Rule("filter capacitor", 5, "signal-ground", "From a signal to ground: noise is taken off"),
    Rule("filter capacitor", 3, "at:slow_input|at:sense", "A slow input is kept quiet"),
    Rule("filter capacitor", 4, "end:reference", "A reference pin is kept steady"),
    Rule("filter capacitor", 1, "at:connector|at:open_drain", "A line that comes from outside"),
    Rule("filter capacitor", -6, "rail-ground|rail-rail", "That is a supply, no signal"),
    Rule("filter capacitor", -5, "signal-signal|rail-signal", "Neither side is ground"),
    Rule(
        "filter capacitor", -3, "end:crystal|end:timer|end:soft_start", "That pin has its own job"
    ),
    Rule("filter capacitor", 2, "at:pull signal-ground", "A resistor on that line is beside it"),
    Rule("filter capacitor", -2, "end:reset|end:enable", "On such a pin it sets a delay"),
    Rule("bootstrap capacitor", 8, "at:bootstrap", "At the pin that feeds the upper switch"),
    Rule(
        "bootstrap capacitor",
        3,
        "at:bootstrap end:switch_node",
        "The other side is the switch node",
    ),
    Rule("bootstrap capacitor", -8, "!at:bootstrap", "No bootstrap pin is named"),
    Rule("compensation capacitor", 8, "end:compensation", "At the pin of the control loop"),
    Rule("compensation capacitor", 4, "near:compensation", "The pin of the control loop is near"),
    Rule(
        "compensation capacitor",
        7,
        "end:feedback rail-signal|signal-signal",
        "From the output to the feedback pin: it speeds up the loop",
    ),
    Rule("compensation capacitor", 4, "end:feedback signal-ground", "At the feedback pin"),
    Rule("compensation capacitor", 3, "end:amplifier_input signal-signal", "Across an amplifier"),
    Rule(
        "compensation capacitor",
        -8,
        "!at:compensation|end:feedback|end:amplifier_input",
        "No control loop is named",
    ),
    Rule("snubber capacitor", 7, "end:switch_node", "At a node that switches: it damps ringing"),
    Rule("snubber capacitor", -6, "end:bootstrap", "The bootstrap pin is named"),
    Rule("snubber capacitor", 4, "at:coil !rail-ground|rail-rail", "A coil is switched there"),
    Rule("snubber capacitor", 6, "end:switched_end", "At the switching end of a transistor"),
    Rule(
        "snubber capacitor",
        -7,
        "!end:switch_node|at:coil|end:switched_end",
        "Nothing switches there",
    ),
    Rule("mains suppression capacitor", 9, "at:mains", "It stands on the mains side"),
    Rule("mains suppression capacitor", -12, "!at:mains", "It is not on the mains side"),
)
