"""Whether the part is polar: bodies that share a marking, AC volts, safety classes, a plus."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.markings import read
from repairlib.markings.reading import POLAR_IF

ASKS = "stripe, a plus or legs of two lengths"
NEVER_POLAR = "never fit a polar part in its place"


def bodies(reading):
    return {reading.kind, *reading.also_on}


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("text", "farad", "first", "polar"),
    [
        ("1uF 50V", 1e-6, "radial", {"radial", "tantalum"}),
        ("4.7uF 25V", 4.7e-6, "radial", {"radial", "tantalum"}),
        ("2.2uF 250V", 2.2e-6, "radial", {"radial"}),
        ("1/50", 1e-6, "radial", {"radial", "tantalum", "can"}),
        ("1µ5 35", 1.5e-6, "radial", {"radial", "tantalum"}),
        ("105 35V", 1e-6, "tantalum", {"tantalum"}),
        ("335 16V", 3.3e-6, "tantalum", {"tantalum"}),
        ("475 25V", 4.7e-6, "tantalum", {"tantalum"}),
        ("0.47 50V", 0.47e-6, "capacitor", {"radial", "tantalum", "can"}),
        (".22 35", 0.22e-6, "capacitor", {"radial", "tantalum", "can"}),
        ("2µ2 100", 2.2e-6, "capacitor", {"radial"}),
        ("105", 1e-6, "capacitor", {"tantalum"}),
    ],
)
def test_one_meaning_names_polar_and_other_bodies(text, farad, first, polar):
    reading = read(text)[0]
    assert (reading.kind, reading.value) == (first, pytest.approx(farad))
    assert bodies(reading) == polar | {"capacitor"}
    assert reading.why.endswith(POLAR_IF) and ASKS in str(reading)
    assert set(reading.to_dict()["also_on"]) == bodies(reading) - {first}


def test_bodies_stand_in_words_likeliest_first():
    assert read("4.7µF 25V")[0].on == "radial aluminium, ceramic, film or tantalum capacitor"
    assert read("47/25")[0].on == "radial aluminium or tantalum capacitor, or aluminium SMD can"
    assert "or tantalum capacitor" in read("105")[0]._repr_html_()


@pytest.mark.common_practice
@pytest.mark.parametrize("text", ["104K", "473J", ".022 400", "0.1-400", "104", "4n7", "220p"])
def test_what_is_hardly_ever_polar_stays_one_kind(text):
    assert read(text)[0].also_on == () and ASKS not in read(text)[0].why


def test_the_body_known_is_the_only_one_named():
    assert read("4.7µF 25V", part="tantalum")[0].also_on == ()


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("text", "farad", "volts"),
    [
        ("40µF 450VAC", 40e-6, 450),
        ("25uF 440VAC", 25e-6, 440),
        ("8µF 400V~", 8e-6, 400),
        ("8µF 370VAC", 8e-6, 370),
        ("10UF 25VAC", 10e-6, 25),
        ("10µF 63V AC", 10e-6, 63),
        ("10 µF 63 V AC", 10e-6, 63),
        ("25uF440VAC", 25e-6, 440),
    ],
)
def test_ac_volts_are_film_or_non_polar(text, farad, volts):
    first, second = read(text)
    assert first.kind == "film" and first.also_on == ()
    assert (second.kind, second.carries["polarity"]) == ("radial", "non-polar")
    for reading in (first, second):
        assert reading.value == pytest.approx(farad)
        assert (reading.carries["rated_voltage"], reading.carries["voltage_type"]) == (volts, "AC")
        assert NEVER_POLAR in reading.why


@pytest.mark.common_practice
def test_ac_on_a_large_part_is_a_non_polar_electrolytic():
    (reading,) = read("200µF 250V~")
    assert (reading.kind, reading.carries["polarity"]) == ("radial", "non-polar")


@pytest.mark.common_practice
@pytest.mark.parametrize("part", ["tantalum", "can"])
def test_ac_on_a_part_that_is_always_polar_is_doubted(part):
    assert "never fit a polar part" in read("10µF 63VAC", part=part)[0].doubt


@pytest.mark.common_practice
@pytest.mark.parametrize("part", ["radial", "axial"])
def test_ac_on_an_electrolytic_says_non_polar(part):
    reading = read("40µF 450VAC", part=part)[0]
    assert reading.carries["polarity"] == "non-polar" and NEVER_POLAR in reading.why


@pytest.mark.common_practice
@pytest.mark.parametrize(
    "text",
    ["0.1/250~", "0.1µF X2 275VAC", "X1 440~ Y2 300~ 472M", "472M Y1", "275VAC"],
)
def test_mains_parts_carry_their_cautions(text):
    for reading in read(text):
        assert reading.cautions[:3] == ("mains", "stored charge", "heat and fire")
        assert set(reading.cautions[3:]) <= {"PCB oil"}
        assert reading.to_dict()["cautions"] == list(reading.cautions)


def test_small_ac_and_dc_volts_carry_no_mains_caution():
    assert read("10UF 25VAC")[0].cautions == ()
    assert read("220 16V")[0].cautions == ()


@pytest.mark.common_practice
@pytest.mark.parametrize("part", ["radial", "axial", "tantalum", "can"])
def test_a_safety_class_stands_on_no_polar_part(part):
    with pytest.raises(RepairlibError, match="not a marking of this kind"):
        read("0.1µF X2 275V~", part=part)


@pytest.mark.common_practice
def test_two_safety_classes_keep_their_volts():
    reading = read("X1 440~ Y2 300~ 472M")[0]
    assert (reading.value, reading.tolerance.high) == (4.7e-9, 0.2)
    assert reading.carries == {"safety_class": "X1 440 V AC, Y2 300 V AC"}
    assert "same classes only" in reading.why


@pytest.mark.from_memory("German film names such as MKT and MKP")
@pytest.mark.parametrize(
    ("text", "farad", "name"),
    [("1uF 100V MKT", 1e-6, "MKT"), ("MKP X2 0.22uF 275V~", 0.22e-6, "MKP")],
)
def test_a_film_name_settles_the_kind(text, farad, name):
    (reading,) = read(text)
    assert (reading.kind, reading.value) == ("film", pytest.approx(farad))
    assert reading.carries["dielectric"] == name


@pytest.mark.common_practice
@pytest.mark.parametrize("text", ["10 25+", "+ 10µF 25V -", "+10µF 25V", "1µF+ 35V"])
def test_a_plus_leaves_polar_bodies_only(text):
    for reading in read(text):
        assert bodies(reading) <= {"radial", "tantalum", "can"}
