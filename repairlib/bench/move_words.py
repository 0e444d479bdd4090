"""The words in which moves are typed: how each verb may be said, and what may follow it."""

from __future__ import annotations

from typing import NamedTuple

TURNED, OLD = "turned", "old"
LOW, USUAL, HIGH = 0.9, 1.0, 1.1
PUMP, BRAID, VACUUM, HOT_AIR, LOW_MELT = "pump", "braid", "vacuum", "hot air", "low-melt alloy"
TOOLS = (PUMP, BRAID, VACUUM, HOT_AIR, LOW_MELT)
TIPS = ("fine tip", "usual tip", "large tip")
FOUND, MEASURED, FITTED, SAID = "found", "measured", "fitted", "told"
CARD = (FOUND, MEASURED, FITTED, SAID)  # the lines of a job card
CARD_EXAMPLES = {
    FOUND: "found: C1 has dried out", MEASURED: "measured: 9.0 V at out",
    FITTED: "fitted: a new C1", SAID: "told: keep it away from heat",
}  # fmt: skip
TO_MEASURE = ("measure", "check", "test", "probe")
MEASURES = ("volts", "ohms", "esr", "capacitance", "scope")  # what a measurement is, in short


class Form(NamedTuple):
    """How a verb is typed: its phrases, how many names follow, its figures, its other words.

    `figures` are units by name as they are said, `words` what each phrase means.
    """

    phrases: tuple[str, ...]
    least: int
    most: int
    example: str
    figures: dict[str, str] = {}  # noqa: RUF012  # nobody writes to it
    words: dict[str, str] = {}  # noqa: RUF012


_HEAT = {"celsius": "°C", "seconds": "s"}
_TIPS = {"fine": "fine tip", "usual": "usual tip", "large": "large tip", "big": "large tip"} | {
    tip: tip for tip in TIPS
}
_TOOLS = {
    PUMP: PUMP,
    "solder sucker": PUMP,
    BRAID: BRAID,
    "wick": BRAID,
    VACUUM: VACUUM,
    "desoldering iron": VACUUM,
    "desoldering station": VACUUM,
    HOT_AIR: HOT_AIR,
    "hot-air": HOT_AIR,
    LOW_MELT: LOW_MELT,
    "low melt solder": LOW_MELT,
    "low-melt solder": LOW_MELT,
    "low melt": LOW_MELT,
    "iron": "",
}
_CARD = {one: one for one in CARD}

FORMS: dict[str, Form] = {
    "look": Form(
        ("look at", "look", "inspect", "examine", "see"),
        0, 1, "look, or look C1 with lens",
        words={"lens": "lens", "magnifier": "lens", "loupe": "lens", "closely": "lens"},
    ),
    "smell": Form(("smell at", "smell", "sniff at", "sniff"), 0, 1, "smell, or smell C1"),
    "touch": Form(
        ("touch", "feel", "hold a finger near", "finger on"), 1, 1, "touch U1"
    ),
    "plug in": Form(
        ("plug it in", "plug in", "switch it on", "switch on", "power up", "power on",
         "turn it on", "turn on", "connect", "set the supply to", "set supply to",
         "turn the supply up to", "turn the supply to"),
        0, 0, "plug in, plug in with lamp, or plug in with supply 9 V 200 mA",
        {"watts": "W", "volts": "V", "amps": "A"},
        {"own plug": "", "bench supply": "supply", "current-limited supply": "supply",
         "supply": "supply", "series lamp": "lamp", "lamp in series": "lamp", "lamp": "lamp",
         "bulb": "lamp"},
    ),
    "unplug": Form(
        ("unplug it", "unplug", "pull the plug", "pull plug", "switch it off", "switch off",
         "power off", "power down", "cut the power", "turn it off", "turn off", "disconnect"),
        0, 0, "unplug",
    ),
    "line": Form(
        ("set the line to", "set line to", "line voltage", "line", "mains voltage"),
        0, 0, "line low, line usual, line high, or line 90 %",
        {"line": "%"}, {"low": "90 %", "usual": "100 %", "normal": "100 %", "high": "110 %"},
    ),
    "load": Form(
        ("set the load to", "load", "play"), 0, 0, "load light, or load full",
        words={"light": "light", "soft": "light", "low": "light", "full": "full", "loud": "full",
               "high": "full"},
    ),
    "wait": Form(
        ("wait", "pause", "let it rest"), 0, 0, "wait 2 min", {"seconds": "s"},
        {"a minute": "1 min", "half a minute": "30 s", "an hour": "1 h", "half an hour": "30 min"},
    ),
    "discharge": Form(
        ("discharge", "bleed", "drain"), 1, 2, "discharge C1 with 1 kΩ for 10 s",
        {"ohm": "Ω", "seconds": "s"},
        # a blade and its two contacts: a choice of this workbook
        {"screwdriver": "10 mΩ", "a screwdriver": "10 mΩ", "wire": "10 mΩ"},
    ),
    "clip": Form(
        ("clip the black probe to", "clip black to", "clip black", "black probe on",
         "black probe to", "clip", "unclip"),
        0, 1, "clip 0, or clip off", words={"off": "off", "away": "off"},
    ),
    "volts": Form(
        ("dc volts", "volts dc", "volts", "dc voltage", "voltage", "volt", "v dc", "vdc", "v"),
        1, 2, "volts out 0, or volts C1",
    ),
    "ac volts": Form(
        ("ac volts", "volts ac", "ac voltage", "v ac", "vac", "ac", "ripple"),
        1, 2, "ac volts rail 0, or ac volts C1",
    ),
    "ohms": Form(
        ("ohms", "ohm", "resistance", "continuity", "beep", "ω"), 1, 2,
        "ohms R1, or ohms rail 0",
    ),
    "diode": Form(("diode test", "diode"), 1, 2, "diode D1"),
    "amps": Form(
        ("current through", "amps", "current", "ampere"), 1, 2, "amps F1"
    ),
    "esr": Form(("esr",), 1, 2, "esr C1, or esr C1 at 1 kHz", {"hertz": "Hz"}),
    "capacitance": Form(
        ("capacitance", "capacity", "farads", "farad"), 1, 2, "capacitance C1"
    ),
    "scope": Form(
        ("oscilloscope", "scope", "trace", "waveform"), 1, 2,
        "scope rail 0, or scope rail 0 at 1 V 5 ms",
        {"volts": "V", "seconds": "s"}, {"ac": "ac", "dc": "dc"},
    ),
    "temperature": Form(
        ("temperature", "temp", "thermometer"), 1, 1, "temperature U1"
    ),
    "supply": Form(
        ("look at the supply", "look at supply", "look supply", "read the supply",
         "display of the supply", "supply display", "bench supply", "supply"),
        0, 0, "supply, or plug in with supply 9 V 200 mA",
    ),
    "lift": Form(
        ("lift one leg of", "lift a leg of", "lift the leg of", "lift leg of", "lift",
         "unsolder one leg of"), 1, 1,
        "lift C1, or lift C1 at 350 °C 3 s", _HEAT, _TIPS,
    ),
    "take out": Form(
        ("take out", "take off", "remove", "desolder", "pull out", "unsolder"), 1, 1,
        "take out C1, or take out C1 with pump, usual tip, 350 °C, 3 s", _HEAT, _TOOLS | _TIPS,
    ),
    "clean": Form(
        ("clean the pads of", "clean pads of", "clean", "clear the holes of"), 1, 1, "clean C1",
        words={BRAID: "", "wick": "", "pads": "", "holes": ""},
    ),
    "fit": Form(
        ("fit", "replace", "swap", "change", "put in", "put", "install", "insert", "solder in",
         "renew", "refit"),
        1, 1, "fit C1, fit C1 1000 µF 25 V, fit C1 plus up, or fit C1 old",
        words={"as marked": "", "right way round": "", "same": "", "like the old": "",
               "turned": TURNED, "reversed": TURNED, "wrong way round": TURNED,
               "other way round": TURNED, "old one": OLD, "the old": OLD, "old": OLD,
               "back": OLD, "itself": OLD,
               "plus up": "plus up", "plus down": "plus down", "plus left": "plus left",
               "plus right": "plus right"},
    ),
    "resolder": Form(
        ("resolder", "re-solder", "reflow", "solder again", "solder"), 1, 1,
        "resolder J1, or resolder J1 at 350 °C 3 s", _HEAT, _TIPS,
    ),
    "bridge": Form(
        ("bridge the pad of", "bridge", "wire", "repair the pad of", "repair pad of"), 1, 1,
        "bridge C1", words={"with wire": "", "pad": ""},
    ),
    "read chip": Form(
        ("read chip", "read the chip", "read out", "read"), 1, 1, "read chip M1"
    ),
    "write chip": Form(
        ("write chip", "write the chip", "program chip", "program", "flash"), 1, 1,
        "write chip M1",
    ),
    "write": Form(
        ("write on the card", "write on card", "write", "note", "card", *CARD), 0, 0,
        "write found: the reservoir capacitor has dried out", words=_CARD,
    ),
    "hand on": Form(
        ("hand it on", "hand on", "pass it on", "leave it to a qualified person"), 0, 0,
        "hand on: the mains side is not mine",
    ),
    "hand back": Form(
        ("hand it back", "hand back", "give it back", "give back", "done", "finish"), 0, 0,
        "hand back",
    ),
    "give up": Form(("give up", "stop here", "abandon"), 0, 0, "give up"),
}  # fmt: skip
BEFORE = (
    "please", "now", "measure", "check", "test", "take", "probe", "set", "the", "then", "i", "what",
    "what's", "is", "and", "let's", "go",
)  # fmt: skip
POINTS = (
    "volts",
    "ac volts",
    "ohms",
    "diode",
    "amps",
    "esr",
    "capacitance",
    "scope",
    "discharge",
    "clip",
)  # verbs that go to points as well as to parts
BETWEEN = (
    "at", "on", "of", "across", "from", "to", "the", "with", "between", "and", "in", "for", "by",
    "against", "through", "into", "point", "points", "part", "new", "a", "an", "its", "it", "over",
    "using", "out", "is", "tip", "test", "rail", "me", "joint", "pin", "resistor", "limit", "set",
    "until", "there", "again", "black", "probe", "via", "up", "owner", "customer", "seconds",
    "coupling", "coupled", "rated", "board", "whole", "everything", "all", "around",
)  # fmt: skip
ZERO_WORDS = ("gnd", "ground", "0v", "0 v", "zero", "minus", "chassis")
