"""Whole markings: moulded tantalum, cans, sleeves, plain text; what is ambiguous or odd."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.markings import read
from tests.documents import document

NICHICON = document("Nichicon CD", "220 over E is 220 µF 25 V")
TEH = document("Panasonic TEH", "C is 16 V")
SAMSUNG = document("Samsung part-number table", "107 is 100 µF")


def first(text, part=None):
    reading = read(text, part=part)[0]
    return reading.kind, reading.value, reading.carries.get("rated_voltage")


@pytest.mark.published(f"{TEH}; {SAMSUNG}")
@pytest.mark.parametrize("text", ["107 C", "107C", "107\nC"])
def test_moulded_tantalum_code_and_letter(text):
    assert first(text) == ("tantalum", 100e-6, 16)


@pytest.mark.published(NICHICON)
@pytest.mark.parametrize("text", ["220\nE", "220 E"])
def test_can_with_microfarad_over_a_letter(text):
    assert first(text, part="can") == ("can", 220e-6, 25)


@pytest.mark.behaviour
@pytest.mark.parametrize("text", ["220\nE", "220 E"])
def test_a_can_is_among_the_readings_of_an_unknown_part(text):
    assert ("can", 220e-6, 25) in [
        (one.kind, one.value, one.carries.get("rated_voltage")) for one in read(text)
    ]


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("text", "kind", "farad", "volts"),
    [
        ("476 16V", "tantalum", 47e-6, 16),
        ("C107", "tantalum", 100e-6, 16),
        ("220\n16V", "can", 220e-6, 16),
        ("220 16V", "radial", 220e-6, 16),
        ("1000µF 16V", "radial", 1000e-6, 16),
        ("1000 µF 16 V", "radial", 1000e-6, 16),
        ("10uF/35V", "radial", 10e-6, 35),
        ("47/25", "radial", 47e-6, 25),
        ("4,7/63", "radial", 4.7e-6, 63),
        ("100 MFD 25 VDC", "radial", 100e-6, 25),
        ("50/25V", "radial", 50e-6, 25),
        ("104 50V", "capacitor", 100e-9, 50),
        ("104J100", "capacitor", 100e-9, 100),
        (".022 400", "capacitor", 22e-9, 400),
        ("0.1", "capacitor", 0.1e-6, None),
        (".022", "capacitor", 22e-9, None),
        ("4,7", "can", 4.7e-6, None),
        ("1F 5.5V", "radial", 1.0, 5.5),
        ("1000µF16V", "radial", 1000e-6, 16),
        ("10µ35", "radial", 10e-6, 35),
        ("0.1-400", "capacitor", 0.1e-6, 400),
        ("104J2A", "capacitor", 100e-9, 100),
        ("µ1 63-", "capacitor", 0.1e-6, 63),
        ("0.1/250~", "capacitor", 0.1e-6, 250),
        ("2µ2 100", "capacitor", 2.2e-6, 100),
        ("+ 47µF 16V -", "radial", 47e-6, 16),
        ("+47µF 16V", "radial", 47e-6, 16),
        ("0.1 uf 50v", "capacitor", 0.1e-6, 50),
        ("100µF +80-20% 25V", "radial", 100e-6, 25),
        ("470µF25V", "radial", 470e-6, 25),
        ("10 MFD 25 WVDC", "radial", 10e-6, 25),
        ("1000 µF -40+105°C 35V", "radial", 1000e-6, 35),
        ("0.47µF 50V BP", "radial", 0.47e-6, 50),
        ("0.47µF 50V", "capacitor", 0.47e-6, 50),
    ],
)
def test_plain_text(text, kind, farad, volts):
    assert first(text) == (kind, farad, volts)


@pytest.mark.common_practice
def test_sleeve_with_everything_on_it():
    reading = read("NP 47µF (M) 25V 105°C", part="radial")[0]
    assert reading.value == 47e-6
    assert reading.tolerance.high == 0.2
    assert reading.carries == {
        "rated_voltage": 25,
        "highest_temperature": 105,
        "polarity": "non-polar",
    }


@pytest.mark.common_practice
@pytest.mark.parametrize(
    "text", ["47µF 25V 105°C", "47µF 25V +105°C", "47µF 25V 105C", "47µF 25V -40+105°C"]
)
def test_highest_temperature(text):
    assert read(text)[0].carries["highest_temperature"] == 105


def test_four_figures_in_a_letter_code_may_hold_the_volts():
    assert [one.value for one in read("10µ35")] == [10e-6, pytest.approx(10.35e-6)]


@pytest.mark.common_practice
@pytest.mark.parametrize("text", ["10µF ±10% 25V", "10µF 10% 25V", "10µF +/- 10 % 25V"])
def test_tolerance_in_percent(text):
    assert read(text)[0].tolerance.high == 0.1


@pytest.mark.common_practice
def test_unsymmetrical_percent():
    tolerance = read("100µF -10/+50% 25V")[0].tolerance
    assert (tolerance.low, tolerance.high) == (-0.1, 0.5)


@pytest.mark.common_practice
def test_series_mark_of_a_can_is_said_to_be_unread():
    reading = read("220\n16V\nFK", part="can")[0]
    assert reading.carries == {"series": "FK", "rated_voltage": 16}


def test_small_letter_on_a_can_is_not_its_capital():
    assert first("100\nj", part="can")[2] == 6.3
    assert first("100\nJ", part="can")[2] == 63


def test_letter_behind_a_tantalum_code_may_be_volts_or_a_tolerance():
    volts, tolerance = read("227J", part="tantalum")[:2]
    assert (volts.carries, volts.tolerance) == ({"rated_voltage": 6.3}, None)
    assert (tolerance.carries, tolerance.tolerance.high) == ({}, 0.05)


def test_the_same_code_on_film_and_tantalum():
    film, tantalum = read("105J")
    assert (film.tolerance.high, film.carries) == (0.05, {})
    assert (tantalum.kind, tantalum.carries) == ("tantalum", {"rated_voltage": 6.3})


def test_rating_before_the_value_is_shown_too():
    assert ("radial", 10e-6, 16) in [
        (one.kind, one.value, one.carries["rated_voltage"]) for one in read("16/10")
    ]


def test_thousands_mark_or_decimal_comma():
    values = [one.value for one in read("1,000µF 16V")]
    assert values == [1000e-6, 1e-6]


@pytest.mark.common_practice
@pytest.mark.parametrize("text", ["4,700µF 50V", "4,700µF", "4,700"])
def test_thousands_mark_is_likelier_than_three_decimals(text):
    assert [one.value for one in read(text)][:2] == [4700e-6, pytest.approx(4.7e-6)]


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("text", "farad", "volts"),
    [
        ("100 25V", 100e-6, 25),
        ("470/25", 470e-6, 25),
        ("330 400V", 330e-6, 400),
        ("220 200", 220e-6, 200),
        ("100/385", 100e-6, 385),
        ("680 450V", 680e-6, 450),
        ("100 16V", 100e-6, 16),
    ],
)
def test_whole_number_with_volts_is_aluminium_first_and_a_code_behind(text, farad, volts):
    assert first(text) == ("radial", farad, volts)
    codes = [one for one in read(text) if one.kind == "capacitor"]
    assert codes[0].value == pytest.approx(farad * 1e-7)


@pytest.mark.common_practice
@pytest.mark.parametrize("text", ["220K 50V", "104 50V", "101 50V", "330 1000V"])
def test_a_letter_a_code_or_high_volts_keep_picofarad_first(text):
    assert read(text)[0].value < 1e-6 and read(text)[0].kind == "capacitor"


def test_an_odd_code_is_no_sound_tantalum():
    assert [one.kind for one in read("100/385")].count("tantalum") == 0
    assert "385" not in str(read("100/385")[0].value)
    assert read("385", part="tantalum")[0].doubt


@pytest.mark.common_practice
@pytest.mark.parametrize(("text", "farad"), [("0.02MF", 0.02e-6), ("1MF", 1e-6)])
def test_mf_behind_a_number_is_microfarad_before_a_resistor(text, farad):
    assert read(text)[0].value == pytest.approx(farad)
    assert "resistor" in [one.kind for one in read(text)]


@pytest.mark.common_practice
def test_volts_and_value_in_one_word():
    assert first("25V470µF") == ("radial", 470e-6, 25)


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("text", "microfarads"),
    [("32+32/450V", [32]), ("8+16 500V", [8, 16]), ("50-30-20 150V", [50, 30, 20])],
)
def test_sections_share_the_minus(text, microfarads):
    found = read(text)
    assert [one.value for one in found] == pytest.approx([one * 1e-6 for one in microfarads])
    assert all("share the minus" in one.why and one.kind == "radial" for one in found)


@pytest.mark.common_practice
def test_sections_that_differ_in_unit_are_refused():
    with pytest.raises(RepairlibError):
        read("0,1µF+2x2500pF")


def test_a_maker_series_is_named_as_not_read():
    reading = read("KX 472M")[0]
    assert reading.carries["series"] == "KX" and "not read here" in reading.why


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("100 25 M 105 foo", "foo"),
        ("0.1uF FOOBAR 16V", "FOOBAR"),
        ("10µF 50V elect ~", "~"),
        ("2n2 M qq X1 440~", "qq"),
    ],
)
def test_only_what_is_not_understood_is_named(text, named):
    with pytest.raises(RepairlibError) as caught:
        read(text)
    assert caught.value.wrong.startswith(f"'{named}' is not understood")
    assert named not in caught.value.accepted.partition(",")[0]


def test_a_safety_class_alone_asks_for_its_value():
    with pytest.raises(RepairlibError, match="Y2 alone is a safety class"):
        read("Y2")


@pytest.mark.common_practice
def test_whole_farads_are_a_back_up_cell_or_picofarad_first():
    pico, farads = read("5F")
    assert (pico.value, farads.value) == (5e-12, 5.0)
    assert "memory back-up (double-layer) cell" in farads.why
    assert "double-layer" in read("1F 5.5V")[0].why


def test_old_millifarad_may_be_microfarad():
    assert [one.value for one in read("10mF 16V")] == [10e-6, 10e-3]
    assert [one.value for one in read("100mF 25V")] == [100e-6, 0.1]


@pytest.mark.parametrize(
    ("text", "part", "farad"),
    [
        ("5F", "ceramic", 5.0),
        ("107", "ceramic", 100e-6),
        ("220µF", "film", 220e-6),
        ("100p", "can", 100e-12),
        ("104", "can", 104e-6),
        ("479", "film", 4.7e-12),
    ],
)
def test_what_is_not_made_is_doubted_not_dropped(text, part, farad):
    doubted = [one for one in read(text, part=part) if one.value == pytest.approx(farad)]
    assert doubted and doubted[0].doubt


def test_a_voltage_no_such_part_has_is_doubted():
    assert "125" in read("10µF 400V", part="tantalum")[0].doubt


def test_nothing_sound_is_left_out_of_an_unknown_part():
    assert all(not one.doubt for one in read("220"))
    assert read("0.01pF")[0].doubt  # nothing fits, so the doubtful reading is given


def test_wrong_part_says_what_it_would_be_elsewhere():
    with pytest.raises(RepairlibError, match="elsewhere it would be 220\u00a0µF, 25\u00a0V"):
        read("220\nE", part="film")
    with pytest.raises(RepairlibError, match="elsewhere it would be date 1990-01"):
        read("A1", part="voltage-code")


def test_two_ratings_are_refused():
    with pytest.raises(RepairlibError):
        read("2A104J 250V")
    with pytest.raises(RepairlibError):
        read("47µF 16V 25V")


def test_reading_prints_on_one_line():
    printed = str(read("104K")[0])
    assert printed == (
        "100\u00a0nF ±10\u00a0%: ceramic or film capacitor. 10 and four zeros, in pF; "
        "K is ±10\u00a0%."
    )


def test_working_shows_the_steps_and_the_limits():
    assert read("104K")[0].working == (
        "10 × 10⁴ pF = 100000 pF",
        "±10\u00a0%: a good part measures 90\u00a0nF to 110\u00a0nF",
    )


def test_to_dict_is_plain_and_flat():
    reading = read("2A104J")[0].to_dict()
    assert reading["rated_voltage"] == 100
    assert (reading["tolerance"], reading["tolerance_unit"]) == ([-0.05, 0.05], "")
    assert (reading["kind"], reading["value"], reading["unit"]) == ("capacitor", 1e-7, "F")
