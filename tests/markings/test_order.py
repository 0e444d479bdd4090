"""Ambiguous markings: which reading comes first, and which after it, by the habits of the trade."""

import pytest

from repairlib.markings import read

CERAMIC, FILM, PF_OR_FILM = "ceramic", "film", "capacitor"
CHIP, COIL, RF_COIL = "chip-resistor", "inductor", "chip-inductor"

# (marking, readings in their order, the rule). Other readings may stand between, none before.
ORDER = [
    ("104", [(PF_OR_FILM, 100e-9), (CHIP, 100e3), (COIL, 0.1)], "figures alone: pF, Ω, µH"),
    ("103", [(PF_OR_FILM, 10e-9), (CHIP, 10e3), (COIL, 10e-3)], "figures alone: pF, Ω, µH"),
    ("101", [(PF_OR_FILM, 100e-12), (CHIP, 100), (COIL, 100e-6)], "figures alone: pF, Ω, µH"),
    (
        "220",
        [(PF_OR_FILM, 22e-12), (CHIP, 22), ("can", 220e-6), (COIL, 22e-6), (PF_OR_FILM, 220e-12)],
        "the code before plain µF on a can; plain pF of old parts last",
    ),
    (
        "150",
        [(PF_OR_FILM, 15e-12), (CHIP, 15), ("can", 150e-6), (COIL, 15e-6), (PF_OR_FILM, 150e-12)],
        "the code before plain µF on a can; plain pF of old parts last",
    ),
    ("22", [(PF_OR_FILM, 22e-12), ("can", 22e-6)], "a small whole number is pF, then µF"),
    ("47", [(PF_OR_FILM, 47e-12), ("can", 47e-6)], "a small whole number is pF, then µF"),
    ("4.7", [("can", 4.7e-6), (CERAMIC, 4.7e-12)], "a decimal point is printed for µF"),
    ("0.1", [(PF_OR_FILM, 100e-9)], "a fraction alone is µF, never pF"),
    ("4701", [(CHIP, 4.7e3), ("date", None)], "four figures: a chip of 1 %, then year and week"),
    ("0603", [("case-size", 1.6e-3), ("case-size", 0.6e-3)], "the imperial size is the usual name"),
    ("0402", [("case-size", 1e-3), ("case-size", 0.4e-3)], "the imperial size is the usual name"),
    ("4,700", [("can", 4700e-6), ("can", 4.7e-6)], "three figures behind a comma: thousands"),
    ("1,000", [("can", 1000e-6), ("can", 1e-6)], "three figures behind a comma: thousands"),
    ("4K7", [("resistor", 4.7e3)], "K among figures is a resistor and nothing else"),
    ("4R7", [("resistor", 4.7), (CERAMIC, 4.7e-12), (COIL, 4.7e-6)], "R: Ω, then pF, then µH"),
    ("6R8", [("resistor", 6.8), (CERAMIC, 6.8e-12), (COIL, 6.8e-6)], "R: Ω, then pF, then µH"),
    ("3R3K", [("resistor", 3.3), (CERAMIC, 3.3e-12), (COIL, 3.3e-6)], "R: Ω, then pF, then µH"),
    ("R47", [("resistor", 0.47), (CERAMIC, 0.47e-12), (COIL, 0.47e-6)], "R: Ω, then pF, then µH"),
    ("10R", [("resistor", 10), (PF_OR_FILM, 10e-12), (COIL, 10e-6)], "R: Ω, then pF, then µH"),
    ("104K", [(PF_OR_FILM, 100e-9), (COIL, 0.1), ("resistor", 104e3)], "code and tolerance first"),
    (
        "470K",
        [(PF_OR_FILM, 47e-12), ("resistor", 470e3), (COIL, 47e-6), (PF_OR_FILM, 470e-12)],
        "code and tolerance, then 470 kΩ, which is in E12; plain pF of old parts last",
    ),
    (
        "100M",
        [(PF_OR_FILM, 10e-12), (COIL, 10e-6), ("resistor", 100e6), (PF_OR_FILM, 100e-12)],
        "20 % is commoner than a hundred megohm; plain pF of old parts last",
    ),
    ("10M", [("resistor", 10e6), (PF_OR_FILM, 10e-12), (CHIP, 10e-3)], "two figures and M: MΩ"),
    ("473J", [(PF_OR_FILM, 47e-9), ("tantalum", 47e-9), (COIL, 47e-3)], "J is rather 5 %"),
    ("68C", [(CHIP, 49.9e3), ("can", 68e-6), (PF_OR_FILM, 68e-12)], "place 68 of E96 first"),
    ("10L", [(CHIP, 10e-3)], "L is the point in mΩ"),
    ("5L00", [(CHIP, 5e-3)], "L is the point in mΩ"),
    ("82N", [(PF_OR_FILM, 82e-9), (PF_OR_FILM, 82e-12), (RF_COIL, 82e-9)], "N is rather nF"),
    ("22n", [(PF_OR_FILM, 22e-9), (RF_COIL, 22e-9)], "a letter code first of all a capacitor"),
    ("4n7K", [(PF_OR_FILM, 4.7e-9), (RF_COIL, 4.7e-9)], "a letter code first of all a capacitor"),
    ("10P", [(PF_OR_FILM, 10e-12), (PF_OR_FILM, 10e-12)], "P the unit, then P the tolerance"),
    ("47pF", [(PF_OR_FILM, 47e-12), (PF_OR_FILM, 47e-12)], "pF the unit, then F the tolerance"),
    ("1C", [("voltage-code", 16), ("can", 1e-6)], "figure and letter: volts, then a value"),
    ("1J", [("voltage-code", 63), ("can", 1e-6), (CERAMIC, 1e-12)], "volts, then a value"),
    ("2A", [("voltage-code", 100), ("fuse", 2)], "without speed or volts hardly a fuse"),
    ("1A", [("voltage-code", 10), ("can", 1e-6), ("fuse", 1)], "without speed hardly a fuse"),
    ("5F", [(CERAMIC, 5e-12), ("radial", 5)], "5 pF with a tolerance before a back-up cell"),
    ("10G", [(PF_OR_FILM, 10e-12), ("tantalum", 10e-6), ("resistor", 10e9)], "10 GΩ is rare"),
    ("10S", [(PF_OR_FILM, 10e-12), ("can", 10e-6), (CHIP, 12.4)], "S is seldom a multiplier"),
    ("22K", [("resistor", 22e3), (PF_OR_FILM, 22e-12)], "two figures and K: kΩ"),
    ("104A", [("tantalum", 100e-9), (PF_OR_FILM, 100e-9)], "A: 10 V on tantalum"),
    ("1B", [("voltage-code", 12.5), (CERAMIC, 1e-12)], "figure and letter: volts, then a value"),
    ("T3.15A", [("fuse", 3.15)], "speed and amperes are a fuse"),
    ("10MF", [("radial", 10e-6), ("resistor", 10e6)], "MF is old for microfarad"),
    ("100mF", [("radial", 100e-6), ("radial", 0.1)], "hundreds of mF are µF in old printing"),
    ("10mF", [("radial", 10e-3), ("radial", 10e-6)], "mF is millifarad, then old for µF"),
    ("220 16V", [("radial", 220e-6), (PF_OR_FILM, 22e-12)], "with low volts µF before the code"),
    ("100 25V", [("radial", 100e-6), (PF_OR_FILM, 10e-12)], "with low volts µF before the code"),
    ("220\nE", [("can", 220e-6)], "a letter on the line below a number: a can"),
    ("107\nC", [("tantalum", 100e-6)], "a letter on the line below a code: tantalum"),
    ("47\nC", [("can", 47e-6), (PF_OR_FILM, 47e-12)], "a letter on the line below a number: a can"),
    ("47 25V", [("radial", 47e-6), (PF_OR_FILM, 47e-12)], "a number with low volts is µF"),
    ("16 10", [("radial", 16e-6), ("radial", 10e-6)], "the value stands before its volts"),
    ("10µ35", [("radial", 10e-6), ("radial", 10.35e-6)], "35 is a rating, 10.35 no made value"),
    ("1µF 50V", [("radial", 1e-6)], "1 µF and low volts: aluminium before film"),
    ("105 35V", [("tantalum", 1e-6)], "a code of 1 µF with low volts: tantalum"),
    ("0.1 400V", [(PF_OR_FILM, 100e-9)], "a fraction and high volts: film or ceramic"),
    ("8µF 400VAC", [(FILM, 8e-6), ("radial", 8e-6)], "AC stands on film before aluminium"),
    (
        "50Z",
        [(PF_OR_FILM, 50e-12), (CHIP, 0.324)],
        "Z is -20/+80 %; a chip in mΩ is rare",
    ),
    (
        "yellow-violet-red",
        [("resistor", 4.7e3), ("resistor", 270e3), (COIL, 4.7e-3), (RF_COIL, 4.7e-6)],
        "resistor before inductor; as seen before the other end; three dots last",
    ),
    (
        "brown-black-black-brown-brown",
        [("resistor", 1e3), ("resistor", 110)],
        "as seen before the other end",
    ),
    (
        "red-black-red-red",
        [("resistor", 2e3), ("resistor", 22), (COIL, 2e-3), ("fuse", 2)],
        "resistor, its other end, inductor; a fuse with bands is rare",
    ),
    ("N6", [("date", None), ("date", None), (RF_COIL, 0.6e-9)], "letter and figure: a date first"),
    ("R10", [("resistor", 0.1), (CERAMIC, 0.1e-12), ("date", None)], "R: Ω, then pF, then a date"),
]


def _meaning(reading):
    """The kind with the value; a case size by its length."""
    value = reading.carries["length"] if reading.kind == "case-size" else reading.value
    return reading.kind, None if value is None else pytest.approx(value)


@pytest.mark.common_practice
@pytest.mark.parametrize(("text", "expected", "rule"), ORDER, ids=[row[0] for row in ORDER])
def test_likeliest_first(text, expected, rule):
    found = [_meaning(reading) for reading in read(text)]
    assert found[0] == expected[0], rule
    rest = iter(found)
    assert all(any(one == wanted for one in rest) for wanted in expected), (rule, found)
