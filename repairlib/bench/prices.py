"""What moves take from the clock and the purse. Times and prices are choices of this workbook.

Seconds are those of a practised hand at a tidy bench, prices in tokens; a new part has its own
price in the table of its set.
"""

from __future__ import annotations

SECONDS = {
    "look": 20.0, "smell": 10.0, "touch": 10.0, "plug in": 10.0, "unplug": 5.0, "line": 10.0,
    "load": 10.0, "clip": 10.0, "volts": 15.0, "ac volts": 15.0, "ohms": 15.0, "diode": 15.0,
    "amps": 60.0, "esr": 20.0, "capacitance": 20.0, "scope": 40.0, "temperature": 15.0,
    "lift": 60.0, "take out": 90.0, "clean": 60.0, "fit": 90.0, "resolder": 60.0, "bridge": 300.0,
    "read chip": 120.0, "write chip": 180.0, "write": 30.0, "supply": 5.0,
    "hand on": 120.0, "hand back": 60.0, "give up": 0.0, "discharge": 10.0, "wait": 0.0,
}  # fmt: skip
SUPPLY_SECONDS = 60.0  # to set a bench supply or to fetch the lamp and clip them on
LENS_SECONDS = 20.0  # more, for each part under the lens
DISCHARGE_HELD = 5.0  # s the resistor is held on where nothing is said
WAIT_USUAL = 30.0  # s
TOKENS = {"lift": 0.1, "take out": 0.1, "clean": 0.1, "fit": 0.1, "resolder": 0.1, "bridge": 0.5}
# braid, flux and solder; 0.1 each time, 0.5 for wire and glue
LOW_MELT_TOKENS = 0.8  # of the alloy, for one part
METER_TOKENS = 15.0  # a multimeter or tester that was destroyed
