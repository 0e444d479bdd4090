"""Where resistors and links stand: common practice of schematics, in plain words."""

from __future__ import annotations

from repairlib.missing_parts.rule import Rule

_THROUGH = "A line passes through: a signal on both sides"
_NOT_THROUGH = "No signal passes through it"
_SHORT = "Between a supply and ground it would only waste power"

RULES = (
    Rule("series resistor", 4, "signal-signal", _THROUGH),
    Rule("series resistor", 3, "end:data_line|end:interface", "A data or clock line is damped so"),
    Rule("series resistor", 1, "at:data_line|at:interface", "Data lines are beside it"),
    Rule("series resistor", 1, "at:connector", "A line to a connector is guarded so"),
    Rule("series resistor", 1, "end:sound|end:slow_input", "An input is guarded so"),
    Rule("series resistor", -7, "rail-ground", _SHORT),
    Rule("series resistor", -5, "rail-rail|signal-ground|rail-signal", _NOT_THROUGH),
    Rule(
        "series resistor", -3, "end:gate|end:base|end:LED|end:feedback", "That pin has its own job"
    ),
    Rule("series resistor", -3, "at:sense|size:large", "Made for current rather than for a signal"),
    Rule("series resistor", -3, "both:bus_pair|both:crystal", "It lies across, not in line"),
    Rule("pull-up resistor", 5, "rail-signal", "From a supply to a signal"),
    Rule("pull-up resistor", 4, "end:shared_bus", "A shared bus needs one to be high at rest"),
    Rule("pull-up resistor", 4, "end:open_drain", "That line is only ever pulled low by others"),
    Rule("pull-up resistor", 4, "end:reset", "A reset pin is held high while nobody resets"),
    Rule("pull-up resistor", 3, "end:enable", "An enable pin is held high"),
    Rule("pull-up resistor", 2, "end:switched_end", "A transistor's output is held high"),
    Rule("pull-up resistor", 2, "end:data_line|end:interface|end:chip_pin", "A pin is held high"),
    Rule("pull-up resistor", 2, "end:gate|end:base rail-signal", "It keeps the transistor off"),
    Rule("pull-up resistor", 2, "at:shared_bus|at:open_drain nets_unknown|rail_only", "Such a bus"),
    Rule(
        "pull-up resistor", -6, "!rail-signal|nets_unknown|rail_only|signal_only", "No supply to it"
    ),
    Rule("pull-up resistor", -5, "end:feedback|end:LED", "That side has its own job"),
    Rule("pull-up resistor", -2, "end:timer", "A pin that times is charged, not held"),
    Rule("pull-up resistor", -3, "at:pull", "Another resistor pulls that line already"),
    Rule("pull-down resistor", 4, "signal-ground", "From a signal to ground"),
    Rule("pull-down resistor", 5, "end:gate|end:base signal-ground", "It keeps the transistor off"),
    Rule("pull-down resistor", 3, "end:enable|end:open_drain", "A choice pin is held low"),
    Rule("pull-down resistor", 2, "end:data_line|end:interface|end:chip_pin", "A pin is held low"),
    Rule(
        "pull-down resistor", -6, "!signal-ground|nets_unknown|ground_only|signal_only", "No ground"
    ),
    Rule("pull-down resistor", -5, "end:feedback|end:LED|at:sense", "That side has its own job"),
    Rule(
        "pull-down resistor", -3, "end:crystal|end:timer|end:source_end", "That pin has its own job"
    ),
    Rule(
        "pull-down resistor", 12, "end:gate end:source_end", "From gate to source: it keeps it off"
    ),
    Rule("gate resistor", -8, "end:gate end:source_end", "It lies across, not in line"),
    Rule("pull-down resistor", -4, "at:pull", "Another resistor pulls that line already"),
    Rule("feedback divider resistor", 8, "end:feedback", "At a regulator's feedback pin"),
    Rule("feedback divider resistor", 7, "end:reference", "A divider sets the pin of a reference"),
    Rule("pull-up resistor", -4, "end:reference", "That pin has its own job"),
    Rule("pull-down resistor", -4, "end:reference", "That pin has its own job"),
    Rule("feedback divider resistor", 3, "near:feedback", "A feedback pin is near"),
    Rule(
        "feedback divider resistor", 2, "end:feedback rail-signal|signal-ground", "Half a divider"
    ),
    Rule("feedback divider resistor", -8, "!at:feedback|end:reference", "No feedback pin is named"),
    Rule("feedback divider resistor", -6, "rail-ground|rail-rail", "It misses the feedback pin"),
    Rule("gain resistor", 6, "end:amplifier_input", "At an amplifier's input: it sets the gain"),
    Rule("gain resistor", 2, "near:amplifier_input", "An amplifier is near"),
    Rule("gain resistor", 1, "at:sound signal-signal", "Sound passes there"),
    Rule("gain resistor", -5, "!at:amplifier_input", "No amplifier's input is named"),
    Rule("gain resistor", -7, "rail-ground|rail-rail", _SHORT),
    Rule("current-sense resistor", 7, "at:sense", "A current is measured there"),
    Rule("current-sense resistor", 5, "end:source_end signal-ground", "From a switch to ground"),
    Rule("current-sense resistor", 3, "end:coil at:ground", "In the return of a motor or coil"),
    Rule("current-sense resistor", 3, "size:large", "A large body: it carries a current"),
    Rule("current-sense resistor", 2, "mark:wide_tracks", "Wide tracks lead to it"),
    Rule("current-sense resistor", 3, "letter:RS", "The letters RS are used for it"),
    Rule("current-sense resistor", -4, "size:tiny", "The body is too small for a current"),
    Rule(
        "current-sense resistor",
        -6,
        "!at:sense|end:source_end|end:coil|letter:RS|size:large",
        "No current is measured there",
    ),
    Rule("current-sense resistor", -6, "rail-ground", _SHORT),
    Rule("current-sense resistor", -4, "end:feedback|end:LED", "That side has its own job"),
    Rule("LED resistor", 7, "end:LED", "In line with an LED"),
    Rule("LED resistor", 4, "near:LED", "An LED is beside it"),
    Rule("LED resistor", -8, "!at:LED", "No LED is named"),
    Rule("LED resistor", -6, "rail-ground|rail-rail", "It misses the LED"),
    Rule("timing resistor", 6, "end:timer", "At a pin that times"),
    Rule("timing resistor", 3, "near:timer", "A timer is near"),
    Rule("timing resistor", -6, "!at:timer", "Nothing there times"),
    Rule("timing resistor", -6, "rail-ground|rail-rail", _SHORT),
    Rule("crystal resistor", 7, "end:crystal signal-signal", "In line with a crystal or across it"),
    Rule("crystal resistor", 1, "near:crystal signal-signal", "A crystal is near"),
    Rule("crystal resistor", -7, "!at:crystal", "No crystal is named"),
    Rule(
        "crystal resistor", -5, "!signal-signal|nets_unknown", "It does not pass the crystal's line"
    ),
    Rule("gate resistor", 8, "end:gate|end:base signal-signal", "In line with a gate or base"),
    Rule("gate resistor", 3, "near:gate|near:base signal-signal", "A transistor is beside it"),
    Rule("gate resistor", 2, "at:gate|at:base nets_unknown|signal_only", "A transistor is there"),
    Rule("gate resistor", -7, "!at:gate|at:base", "No gate or base is named"),
    Rule("gate resistor", -5, "rail-signal|signal-ground|rail-rail|rail-ground", _NOT_THROUGH),
    Rule("termination resistor", 8, "both:bus_pair", "From one line of a pair to the other"),
    Rule("termination resistor", 3, "end:bus_pair signal-signal", "Two lines, one of such a pair"),
    Rule("termination resistor", 3, "at:bus_pair", "A bus with a pair of lines is there"),
    Rule("termination resistor", -8, "!at:bus_pair", "No such pair is named"),
    Rule("termination resistor", -5, "rail-ground|rail-rail", _SHORT),
    Rule("zero-ohm link", 8, "ground-ground", "Ground on both sides"),
    Rule("zero-ohm link", 4, "rail-rail volts_alike", "The same supply on both sides"),
    Rule("zero-ohm link", 1, "signal-signal", "It may join two pieces of one line"),
    Rule("zero-ohm link", 2, "mark:link", "The text speaks of a link or an option"),
    Rule("zero-ohm link", 1, "at:open_drain rail-signal|signal-ground", "It may choose an option"),
    Rule("zero-ohm link", -9, "rail-ground", "It would short the supply"),
    Rule("zero-ohm link", -6, "volts_differ", "Two voltages must not be joined"),
    Rule("zero-ohm link", -4, "rail-signal|signal-ground", "It would tie the signal"),
    Rule("zero-ohm link", -4, "at:sense|end:LED|end:gate|end:crystal", "A value is due there"),
    Rule("thermistor", 6, "at:temperature", "A temperature is measured or limited there"),
    Rule("thermistor", 1, "end:slow_input signal-ground|rail-signal", "A slow input"),
    Rule(
        "thermistor",
        -6,
        "!at:temperature|letter:NTC|letter:PTC|letter:TH|letter:RT",
        "No heat named",
    ),
    Rule("thermistor", -6, "rail-ground", _SHORT),
    Rule("thermistor", -5, "end:shared_bus|end:open_drain|end:data_line", "A digital line"),
)
