"""A chip tantalum that is gone: value, rating, case and way round in one answer."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.missing_parts import missing_tantalum
from repairlib.missing_parts.tantalum_value import PLACES, SIGNAL
from tests.documents import document

PADS = {
    "A": ("1.4 mm", "1 mm", "1.8 mm"),
    "B": ("1.4 mm", "1.2 mm", "2.8 mm"),
    "C": ("2 mm", "2.5 mm", "2.8 mm"),
    "D": ("2 mm", "4 mm", "3 mm"),
}
PROVEN = {"board_mark": "plus sign", "mark_at": "left pad", "ground_at": "right pad"}
BACKWARDS = {"board_mark": "plus sign", "mark_at": "left pad", "ground_at": "left pad"}


def plain(finding) -> str:
    return " ".join((str(finding), *finding.working, *finding.notes)).replace("\xa0", " ")


@pytest.mark.published(document("KEMET derating 2015", "half of the rating to 85 °C"))
@pytest.mark.parametrize(
    ("rail", "rated"),
    [("1.8 V", 4), ("3.3 V", 10), ("5 V", 10), ("8 V", 16), ("12 V", 25), ("-12 V", 25)],
)
def test_rated_at_twice_the_rail(rail, rated):
    assert missing_tantalum(rail, case="D").rated_voltage == rated


@pytest.mark.published(
    document("tantalum parts in lists", "TAJB107K006, TAJA476K006: 100 and 47 µF at 6.3 V")
)
def test_a_smaller_case_holds_less():
    for letter, most in (("A", 47), ("B", 100)):
        finding = missing_tantalum("5 V", *PADS[letter], place="regulator output", **PROVEN)
        assert finding.verdict == "only with these conditions"
        assert f"to {most} µF" in plain(finding)
        assert letter in finding.fit


@pytest.mark.published(
    document("LM1117 data sheet", "10 µF tantalum at least, 22 µF for an adjustable one")
)
@pytest.mark.parametrize(("least", "fits"), [("10 µF", 22), ("22 µF", 47)])
def test_a_regulators_least_is_kept_with_its_tolerance(least, fits):
    finding = missing_tantalum("3.3 V", case="C", place="regulator output", least=least, **PROVEN)
    value = float(finding.fit.replace("\xa0", " ").split()[0])
    assert value * 0.8 >= float(least.split()[0])
    assert value == fits


@pytest.mark.published(document("LM1117 data sheet", "an ESR of 0.3 Ω to 22 Ω"))
def test_a_window_of_esr_is_part_of_the_answer():
    window = {"esr_low": "0.3 Ω", "esr_high": "22 Ω"}
    finding = missing_tantalum("3.3 V", case="C", place="regulator output", **PROVEN, **window)
    assert "its ESR by the data sheet 300 mΩ to 22 Ω" in plain(finding)
    assert "ordinary tantalum in the window" in finding.esr
    assert "class 2 ceramic out of the window" in finding.esr
    open_one = missing_tantalum("3.3 V", case="C", place="regulator output", **PROVEN)
    assert "esr" not in open_one.values and "nobody can tell" in plain(open_one)


@pytest.mark.behaviour
def test_what_may_stand_in_comes_with_the_value():
    finding = missing_tantalum("5 V", case="B", twin="22 µF", **PROVEN)
    assert finding.or_polymer.replace("\xa0", " ") == "22 µF or more, 6.3 V or more"
    assert finding.or_ceramic.replace("\xa0", " ") == "47 µF or more, 10 V or more"
    finding = missing_tantalum("48 V", case="B", twin="1 µF")
    assert finding.or_polymer == "none is made for this rail"
    assert finding.or_ceramic.replace("\xa0", " ") == "2.2 µF or more, 100 V or more"


@pytest.mark.behaviour
def test_a_twin_says_more_than_the_place():
    finding = missing_tantalum("5 V", *PADS["D"], place="branch of a rail", twin="150 µF", **PROVEN)
    assert finding.fit.replace("\xa0", " ").startswith("150 µF 10 V in 7343-31")
    finding = missing_tantalum("5 V", case="D", twin="95 µF", twin_rated="16 V", **PROVEN)
    assert finding.rated_voltage == 16 and "less room" not in plain(finding)
    weak = missing_tantalum("12 V", case="D", twin="22 µF", twin_rated="16 V", **PROVEN)
    assert weak.rated_voltage == 25 and "less room" in plain(weak)
    assert finding.fit.replace("\xa0", " ").startswith("100 µF 16 V")


@pytest.mark.behaviour
def test_a_twin_below_what_the_regulator_asks_for_is_no_answer():
    finding = missing_tantalum("5 V", case="B", twin="4.7 µF", least="22 µF", **PROVEN)
    assert finding.verdict == "cannot tell"
    assert "contradict" in finding.reason


@pytest.mark.behaviour
@pytest.mark.parametrize("way", [{}, BACKWARDS, {"board_mark": "white bar", "mark_at": "left pad"}])
def test_the_way_round_is_never_guessed(way):
    finding = missing_tantalum("5 V", *PADS["B"], place="regulator output", **way)
    assert finding.verdict == "cannot tell"
    assert finding.bar == "not known"
    assert "left pad against right pad" in finding.reason


@pytest.mark.behaviour
def test_a_higher_voltage_across_the_place_sets_the_rating():
    finding = missing_tantalum("5 V", case="C", place="rail at chips", across="11.6 V")
    assert finding.rated_voltage == 25 and finding.bar == "to the left pad"
    assert "11.6 V were read across the place" in plain(finding)
    assert "50 V" in missing_tantalum(
        "5 V", case="B", twin="1 µF", across="24 V"
    ).or_ceramic.replace("\xa0", " ")


@pytest.mark.behaviour
@pytest.mark.parametrize("rail", ["28 V", "48 V", "-60 V", "400 V"])
def test_no_tantalum_for_a_high_rail(rail):
    finding = missing_tantalum(rail, *PADS["D"], place="supply entry", twin="10 µF", **PROVEN)
    assert finding.verdict == "do not"
    assert "take another kind" in finding.reason
    assert "fit" not in finding.values


@pytest.mark.behaviour
def test_a_value_that_does_not_go_into_the_case_is_not_forced():
    finding = missing_tantalum("12 V", *PADS["A"], twin="100 µF", **PROVEN)
    assert finding.verdict == "cannot tell"
    assert "usually holds" in finding.reason and "fit" not in finding.values


@pytest.mark.behaviour
def test_pads_that_no_case_fits_name_the_nearest():
    finding = missing_tantalum("5 V", "1 mm", "9 mm", "3 mm", place="rail at chips", **PROVEN)
    assert finding.verdict == "cannot tell"
    assert "no case of tantalum chips" in finding.reason and "nearest" in finding.reason


@pytest.mark.behaviour
def test_a_case_that_does_not_go_with_the_pads_is_told():
    finding = missing_tantalum("5 V", *PADS["A"], case="D", place="rail at chips", **PROVEN)
    assert finding.verdict == "cannot tell"
    assert "7343-31 (D) does not go with these pads: it is 7.3" in plain(finding)
    fine = missing_tantalum("5 V", *PADS["D"], case="D", place="rail at chips", **PROVEN)
    assert fine.verdict == "only with these conditions"


@pytest.mark.behaviour
def test_only_a_least_value_is_open_upwards():
    finding = missing_tantalum("5 V", least="10 µF")
    assert finding.capacitance.replace("\xa0", " ") == "10 µF or more"
    assert finding.verdict == "cannot tell" and "measure both pads" in finding.reason


@pytest.mark.behaviour
def test_a_signal_place_wants_a_twin():
    assert "circuit sets the value" in missing_tantalum("5 V", case="A", place=SIGNAL).reason
    finding = missing_tantalum("5 V", case="A", place=SIGNAL, twin="1 µF", **PROVEN)
    assert finding.verdict == "only with these conditions"


@pytest.mark.published(
    document(
        "AVX tantalum summary",
        "at most rated / (0.65 Ω + ESR); 100 µF 10 V with 0.9 Ω: 6.45 A; reverse 10 %, at most 1 V",
    )
)
def test_the_surge_by_a_makers_rule():
    """5 V on 10 V, nothing in series: 5 / ESR = 10 / (0.65 + ESR) at 0.65 Ω."""
    said = plain(missing_tantalum("5 V", case="D", place="supply entry", **PROVEN))
    assert "asks for an ESR of 650 mΩ or more" in said
    surge = 5 / 0.65
    assert surge == pytest.approx(10 / (0.65 + 0.65))
    said = plain(missing_tantalum("5 V", case="D", place="supply entry", series="0.2 Ω", **PROVEN))
    assert "asks for an ESR of 250 mΩ or more" in said
    surge = 5 / (0.2 + 0.25)
    assert surge == pytest.approx(10 / (0.65 + 0.25))
    said = plain(missing_tantalum("5 V", case="D", place="supply entry", series="1 Ω", **PROVEN))
    assert "a part of any ESR" in said
    assert "in reverse it bears peaks of 1 V" in said
    assert "peaks of 630 mV" in plain(missing_tantalum("3 V", case="D"))


@pytest.mark.behaviour
@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("letter", PADS)
@pytest.mark.parametrize("rail", [1.2, 3.3, 5, -12, 24])
def test_what_is_fitted_keeps_every_rule(rail, letter, place):
    finding = missing_tantalum(rail, *PADS[letter], place=place, **PROVEN)
    assert finding.rated_voltage >= 2 * abs(rail) * (1 - 1e-9)
    assert "heat and fire" in finding.cautions
    assert "reversed or rated too low" in finding.notes[0]
    if rail < 0:  # its plus is ground, and the print says the other pad
        assert finding.verdict == "cannot tell"
    if finding.verdict == "only with these conditions":
        assert letter in finding.fit and finding.bar == "to the left pad"


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("given", "wrong"),
    [
        ({"rail": 0}, "a rail has a voltage"),
        ({"rail": "5 V", "gap": "1 mm"}, "pad_length, pad_width is missing"),
        ({"rail": "5 V", "esr_low": 1}, "only one end"),
        ({"rail": "5 V", "esr_low": 5, "esr_high": 0.1}, "window of ESR is empty"),
        ({"rail": "5 V", "case": "E"}, "7343-43 or 7360-38"),
        ({"rail": "5 V", "case": "sugar cube"}, "not a known case"),
        ({"rail": "5 V", "pad_length": "1.4", "gap": "1", "pad_width": "2"}, "out of range"),
        ({"rail": "900 V"}, "out of range"),
        ({"rail": "5 V", "board_mark": "smiley"}, "not a known board mark"),
    ],
)
def test_bad_input_is_one_line(given, wrong):
    with pytest.raises(RepairlibError, match=wrong) as refused:
        missing_tantalum(**given)
    assert "\n" not in str(refused.value)


@pytest.mark.published(
    document("tantalum parts in lists", "10 µF at 25 V in case B: a maker may use it on 24 V")
)
def test_the_rule_for_the_new_part_does_not_bound_what_stood_there():
    finding = missing_tantalum("24 V", case="B", ground_at="right pad")
    assert "to 10 µF" in finding.capacitance.replace("\xa0", " ")
    assert finding.fit.replace("\xa0", " ").endswith("50 V in 3528-21 (B)")
    assert "Up to 10 µF may have stood there, rated below 50 V" in plain(finding)


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("rail", "case", "twin", "rated"),
    [
        ("24 V", "B", "4.7 µF", "35 V"),
        ("24 V", "B", "10 µF", "25 V"),
        ("5 V", "7343-31", "330 µF", "6.3 V"),
        ("5 V", "7343-31", "470 µF", "6.3 V"),
        ("12 V", "A", "10 µF", "16 V"),
    ],
)
def test_a_twin_rated_below_the_rule_is_told_with_what_it_means(rail, case, twin, rated):
    finding = missing_tantalum(rail, case=case, twin=twin, twin_rated=rated, ground_at="right pad")
    said = plain(finding)
    assert finding.verdict == "only with these conditions"
    assert finding.stood_there.replace("\xa0", " ") == f"{twin}, rated {rated}"
    assert "fit" not in finding.values and "take another kind" in finding.reason
    assert f"rated {rated}, for" in finding.reason.replace("\xa0", " ")
    assert "times the rail" in said and "no reason to do so again" in said
    assert "or_ceramic" in finding.values and "its bar to the left pad" in said
    unknown = missing_tantalum(rail, case=case, twin=twin, twin_rated=rated)
    assert unknown.verdict == "cannot tell" and "stood_there" in unknown.values


@pytest.mark.behaviour
def test_a_twin_rated_below_the_rail_is_none():
    finding = missing_tantalum("12 V", case="D", twin="22 µF", twin_rated="10 V", **PROVEN)
    assert finding.verdict == "cannot tell" and "it is no twin" in finding.reason


@pytest.mark.behaviour
def test_a_twin_on_a_rail_that_no_tantalum_keeps_is_told_too():
    finding = missing_tantalum("28 V", case="D", twin="22 µF", twin_rated="35 V", **PROVEN)
    assert finding.verdict == "do not" and "1.25 times the rail" in plain(finding)
