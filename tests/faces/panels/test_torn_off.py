"""A part that is gone: candidates with reasons, what to measure, and nothing typed is lost."""

from repairlib.faces.panels import missing_part


def plain(panel):
    return panel.answer.value.replace("\xa0", " "), panel.deciding.value.replace("\xa0", " ")


def test_a_chip_tantalum_at_a_regulator():
    panel = missing_part()
    answer, deciding = plain(panel)
    assert "1. chip tantalum: most likely" in answer and "10 V or more" in answer
    assert "Never guess the polarity" in deciding and "prove 0 V" in deciding
    assert "cannot tell:" in deciding and "Hand the set back without the chip tantalum?" in deciding
    assert "bursts or burns" in deciding
    assert 'alt="The empty place C?, with two pads. Left pad: +3.3 V.' in deciding
    panel.beside.value = "none"
    assert "do not:" in plain(panel)[1]


def test_each_field_counts():
    panel = missing_part("R7 0402", "RESET of U1", "+3.3 V", "", "")
    assert "1. pull-up resistor: most likely" in plain(panel)[0]
    panel.one_side.value, panel.other_side.value = "+3.3 V", "ground"
    panel.place.value, panel.near.value = "C9 0402", "VDD pin of U3"
    assert "1. decoupling capacitor" in plain(panel)[0]
    panel.twin.value = "100 nF"
    assert "twin" in plain(panel)[0]


def test_the_mains_side_is_handed_on():
    panel = missing_part("F1 at the mains inlet", "230 V live", "rectifier", "", "")
    answer, deciding = plain(panel)
    assert "do not:" in answer and "qualified person" in answer
    assert "Mains" in deciding


def test_little_known_and_nothing_known():
    panel = missing_part("two pads", "", "", "", "")
    assert "cannot tell:" in plain(panel)[0] and "Hand the set back" not in plain(panel)[1]
    panel.place.value = "  "
    assert "Not done" in plain(panel)[0] and panel.deciding.value == ""
    panel.place.value = "x" * 1001
    assert "Not done" in plain(panel)[0] and panel.place.value == "x" * 1001


def test_what_is_not_understood_is_said():
    panel = missing_part("C? 0603, <b>flumph</b> wizzle", "+5 V", "ground", "", "")
    assert "Not understood" in panel.answer.value and "flumph" in panel.answer.value
    assert "<b>flumph" not in panel.answer.value


def test_a_likely_chip_tantalum_is_answered_with_rating_and_case():
    seen = "C9 pads 1.4 x 2.8 mm, gap 1.2 mm, tantalum outline, plus sign"
    panel = missing_part(seen, "+12 V", "ground", "DC input jack", kept="")
    shown = panel.deciding.value.replace("\xa0", " ")
    assert "Missing chip tantalum" in shown and "25 V" in shown and "3528-21 (B)" in shown
    assert "Say at which pad it is" in shown and "cannot tell" in shown
    assert shown.count("A charged capacitor gives all it holds") == 1
    panel.one_side.value = "a rail"
    assert "Missing chip tantalum" not in panel.deciding.value
