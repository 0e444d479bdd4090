"""Letter codes of resistors (IEC 60062), and values in plain text."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.markings import read
from tests.documents import document

RKM = document("IEC 60062:2016")
SANYO = document("Sanyo DP19649", "tolerance letters of resistors")
HONG_KONG = document("Hong Kong Resistors", "tolerance letters")
CARD = document("Vishay colour card", "the maker's own letters")

PRINTED = """
R47 0.47 | 4R7 4.7 | 470R 470 | 4K7 4700 | 47K 47000 | 47K3 47300 | 470K 470000 | 4M7 4700000
"""
BY_THE_RULE = """
R15 0.15 | 82R 82 | 68K 68000 | 3M3 3300000 | 1R0 1 | 100R 100 | 1K0 1000 | 1M0 1000000
10M 10000000
"""
FROM_MEMORY = "2G2 2200000000 | 4L7 0.0047 | 100L 0.1"


def rows(table):
    return [row.split() for row in table.replace("\n", "|").split("|") if row.strip()]


def check(code, ohm, percent=None):
    reading = read(code, part="resistor")[0]
    assert reading.value == pytest.approx(float(ohm), rel=1e-12)
    assert (reading.kind, reading.unit) == ("resistor", "Ω")
    if percent is None:
        assert reading.tolerance is None
    else:
        assert reading.tolerance.high == pytest.approx(float(percent) / 100)


@pytest.mark.published(f"{RKM}: examples")
@pytest.mark.parametrize(("code", "ohm"), rows(PRINTED))
def test_value(code, ohm):
    check(code, ohm)


@pytest.mark.published(f"{RKM}: R, K and M, worked by hand")
@pytest.mark.parametrize(("code", "ohm"), rows(BY_THE_RULE))
def test_value_by_the_rule(code, ohm):
    check(code, ohm)


@pytest.mark.from_memory("IEC 60062: L is mΩ, G is GΩ, T is TΩ")
@pytest.mark.parametrize(("code", "ohm"), [*rows(FROM_MEMORY), ("1T0", "1e12")])
def test_value_with_rare_letters(code, ohm):
    check(code, ohm)


@pytest.mark.published(f"{SANYO}; values after {RKM}")
@pytest.mark.parametrize(
    ("code", "ohm", "percent"),
    rows(
        "100KJ 100000 5 | 150RG 150 2 | R33M 0.33 20 | 6K8G 6800 2 | 33KK 33000 10 | 1K5F 1500 1"
        "| 4M7M 4700000 20 | R22J 0.22 5 | 2R2K 2.2 10 | 47RD 47 0.5"
    ),
)
def test_tolerance_letter(code, ohm, percent):
    check(code, ohm, percent)


@pytest.mark.published(f"{HONG_KONG}; values after {RKM}")
@pytest.mark.parametrize(("code", "ohm", "percent"), rows("10KB 10000 0.1 | 10KC 10000 0.25"))
def test_close_tolerance_letter(code, ohm, percent):
    check(code, ohm, percent)


@pytest.mark.from_memory("IEC 60062: E L P W H N")
@pytest.mark.parametrize(
    ("letter", "percent"),
    [("E", 0.005), ("L", 0.01), ("P", 0.02), ("W", 0.05), ("H", 3), ("N", 30)],
)
def test_tolerance_letter_from_memory(letter, percent):
    check(f"1K0{letter}", 1000, percent)


# One maker letters differently from the standard. The standard stands first; the maker's letter
# is shown second, or alone where the standard has none.
@pytest.mark.published(CARD)
@pytest.mark.parametrize(
    ("letter", "percent"), [("T", 0.01), ("H", 0.02), ("Z", 0.025), ("A", 0.05)]
)
def test_letters_of_one_maker_are_shown_as_such(letter, percent):
    reading = read(f"1K0{letter}", part="resistor")[-1]
    assert reading.tolerance.high == pytest.approx(percent / 100)


@pytest.mark.behaviour
@pytest.mark.parametrize("letter", ["T", "H", "Z", "A"])
def test_letters_of_one_maker_are_said_to_be_so(letter):
    assert "in one maker's lettering" in read(f"1K0{letter}", part="resistor")[-1].why


@pytest.mark.published(CARD)
@pytest.mark.parametrize(("letter", "percent"), [("B", 0.1), ("C", 0.25)])
def test_letters_on_which_the_maker_agrees(letter, percent):
    check(f"1K0{letter}", 1000, percent)


@pytest.mark.published(f"{RKM}: temperature coefficients")
@pytest.mark.parametrize(
    ("letter", "ppm"),
    [("K", 1), ("M", 5), ("P", 15), ("Q", 25), ("R", 50), ("S", 100), ("U", 250)],
)
def test_coefficient_letter_behind_the_tolerance(letter, ppm):
    assert read(f"4K7F{letter}", part="resistor")[0].carries == {"tempco": ppm}


@pytest.mark.from_memory("IEC 60062: coefficient letter N is 10 ppm/K; the 2005 table has Z there")
def test_coefficient_n():
    assert read("4K7FN", part="resistor")[0].carries == {"tempco": 10}


@pytest.mark.published(f"{RKM}: Z is any other coefficient")
def test_coefficient_z_is_given_elsewhere():
    assert read("4K7FZ", part="resistor")[0].carries == {}


@pytest.mark.behaviour
def test_coefficient_z_is_said_to_be_open():
    assert "Z leaves the temperature coefficient" in read("4K7FZ", part="resistor")[0].why


@pytest.mark.from_memory("IEC 60062: A is a tolerance stated in another document")
def test_a_leaves_the_tolerance_open_and_one_maker_closes_it():
    standard, maker = read("1K0A", part="resistor")
    assert (standard.tolerance, maker.tolerance.high) == (None, pytest.approx(0.0005))


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("code", "wrong"),
    [
        ("4K7K7", "two letters between figures"),
        ("4X7", "X is no multiplier"),
        ("K", "no figures stand with the letter"),
        ("4K7Y", "Y is no tolerance letter"),
    ],
)
def test_is_refused(code, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        read(code, part="resistor")


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("text", "ohm", "percent", "watt"),
    [
        *[("4k7", 4700, None, None), ("470Ω", 470, None, None), ("470 ohm", 470, None, None)],
        *[("4.7 kΩ 5%", 4700, 5, None), ("4,7K", 4700, None, None), ("10K 1% 0.25W", 1e4, 1, 0.25)],
        *[("5W 10RJ", 10, 5, 5), ("5W0R22J", 0.22, 5, 5), ("5W 0.22 Ω J", 0.22, 5, 5)],
        *[
            ("0R22 5% 2W", 0.22, 5, 2),
            ("4E7", 4.7, None, None),
            ("1.5M", 1.5e6, None, None),
            ("2.2 MΩ ±10%", 2.2e6, 10, None),
        ],
    ],
)
def test_plain_text(text, ohm, percent, watt):
    check(text, ohm, percent)
    assert read(text, part="resistor")[0].carries.get("rated_power") == watt
    assert read(text)[0].value == pytest.approx(ohm)


@pytest.mark.common_practice
def test_zero_is_a_link():
    for text in ("0R", "0R0", "0 Ω"):
        assert read(text, part="resistor")[0].value == 0


# What one code is on different parts. K behind figures is kilo on a resistor, 10 % on a
# capacitor: both are shown while the part is not known.
@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("code", "meanings"),
    [
        ("104K", [("capacitor", 100e-9), ("inductor", 0.1), ("resistor", 104e3)]),
        ("103", [("capacitor", 10e-9), ("chip-resistor", 10e3), ("inductor", 10e-3)]),
        ("220", [("capacitor", 22e-12), ("chip-resistor", 22), ("can", 220e-6)]),
        ("10R", [("resistor", 10), ("capacitor", 10e-12), ("inductor", 10e-6)]),
        ("47K", [("resistor", 47e3), ("capacitor", 47e-12), ("can", 47e-6)]),
        ("4K7", [("resistor", 4700)]),
        ("470K", [("capacitor", 47e-12), ("resistor", 470e3)]),
        ("4701", [("chip-resistor", 4700)]),
        ("1210", [("case-size", None), ("chip-resistor", 121)]),
    ],
)
def test_without_a_part_the_likeliest_stands_first(code, meanings):
    found = [(one.kind, one.value) for one in read(code)][: len(meanings)]
    assert found == [
        (kind, None if value is None else pytest.approx(value)) for kind, value in meanings
    ]
