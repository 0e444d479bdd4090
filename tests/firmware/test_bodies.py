"""Bodies of memory chips, each size under its drawing, and which pads take which."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.firmware import OUTLINES, PADS, bodies_of, chip_body, chip_on_pads, feet_on_pads
from repairlib.firmware.body_names import body_typed
from tests.documents import document


def names(**measured):
    return [one.name for one in bodies_of(**measured)]


@pytest.mark.published(document("SO-8 outline", "3.80-4.00 × 4.80-5.00, 5.80-6.20, pitch 1.27 mm"))
def test_150_mil():
    one = OUTLINES["150 mil"]
    assert one.width == (3.8, 4.0) and one.length == (4.8, 5.0)
    assert one.over_leads == (5.8, 6.2) and one.pitch == 1.27 and one.foot == (0.4, 1.27)
    assert names(width=3.9, pitch=1.27, leads=8) == ["150 mil"]


@pytest.mark.published(document("S25FL064K", "5.283 × 5.283, 8.001 over leads, pitch 1.27 mm"))
def test_208_mil():
    one = OUTLINES["208 mil"]
    for size, drawn in ((5.283, one.width), (5.283, one.length), (8.001, one.over_leads)):
        assert drawn[0] <= size <= drawn[1]
    assert one.pitch == 1.27 and one.foot == (0.508, 0.762)
    assert names(width=5.283, over_leads=8.001) == ["208 mil"]


@pytest.mark.published(document("dual layout note", "209 mil: 7.7 to 8.1 mm over the leads"))
def test_the_spread_of_208_mil():
    assert names(over_leads=7.7, leads=8, pitch=1.27) == ["208 mil"]
    assert "208 mil" in names(over_leads=8.1)


@pytest.mark.published(
    document("dual layout note, 150 mil", "no leads: 5.90-6.10 wide, pitch 1.27; 150 mil: 6.20")
)
def test_no_leads_6_by_5():
    assert OUTLINES["no leads, 6 × 5 mm"].width == (5.9, 6.1)
    assert names(width=6.0, over_leads=6.0, pitch=1.27) == ["no leads, 6 × 5 mm"]
    assert names(width=3.9, over_leads=6.2) == ["150 mil"]


@pytest.mark.published(
    document("TSSOP-8 outline", "4.3-4.5 × 2.9-3.1, 6.2-6.6, 0.65, foot 0.45-0.75")
)
def test_tssop():
    one = OUTLINES["TSSOP-8"]
    assert (one.width, one.length, one.over_leads) == ((4.3, 4.5), (2.9, 3.1), (6.2, 6.6))
    assert (one.pitch, one.foot) == (0.65, (0.45, 0.75))


@pytest.mark.published(
    document("SO-16 outline", "0.295 ± 0.004, 0.406 ± 0.004, 0.406 ± 0.008, 0.030 ± 0.009 inch")
)
def test_300_mil():
    one = OUTLINES["300 mil, 16 leads"]
    inches = ((0.295, 0.004), (0.406, 0.004), (0.406, 0.008), (0.030, 0.009))
    for (middle, spread), drawn in zip(
        inches, (one.width, one.length, one.over_leads, one.foot), strict=True
    ):
        assert drawn == pytest.approx(
            (25.4 * (middle - spread), 25.4 * (middle + spread)), abs=0.006
        )


@pytest.mark.published(document("W25Q16BV", "one pin configuration of SOIC 150 / 208-mil"))
def test_the_same_chip_in_both_widths():
    for width in ("3.9 mm", "5.28 mm"):
        assert any("same leads" in note for note in chip_body(width=width).notes)


@pytest.mark.from_memory("sizes of the other bodies without leads, and of pins in holes")
def test_other_bodies():
    for width, pitch, name in (
        (8.0, 1.27, "no leads, 8 × 6 mm"),
        (3.0, 0.5, "no leads, 3 × 2 mm"),
        (6.35, 2.54, "pins, 300 mil"),
    ):
        assert names(width=width, pitch=pitch) == [name]
    assert names(width=4.0, pitch=0.8) == ["no leads, 4 × 4 mm", "no leads, 4 × 3 mm"]


@pytest.mark.common_practice
def test_one_width_does_not_go_on_the_pads_of_the_other():
    for body in PADS:
        for width, pads in PADS.items():
            inside, outside = (f"{size} mm" for size in pads)
            verdict = chip_on_pads(body, inside, outside, "1.27 mm").verdict
            assert (verdict == "fit") == (body == width), (body, width)
    assert chip_on_pads("208 mil", "4 mm", "9 mm", "1.27 mm").verdict == "fit"
    assert chip_on_pads("150 mil", "4 mm", "9 mm", "1.27 mm").verdict == "fit"


@pytest.mark.published(document("TSSOP-8 outline", "pitch 0.65 mm"))
@pytest.mark.parametrize("body", [one.name for one in OUTLINES.values() if one.foot])
def test_pads_of_another_pitch_take_no_body(body):
    long_enough = {"inside": "3 mm", "outside": "11 mm"}
    for pitch in (0.5, 0.65, 0.8, 1.27, 2.54):
        verdict = chip_on_pads(body, **long_enough, pitch=f"{pitch} mm").verdict
        assert verdict == ("fit" if pitch == OUTLINES[body].pitch else "do not")
    not_measured = chip_on_pads(body, **long_enough)
    assert not_measured.verdict == "only with these conditions"
    assert f"{OUTLINES[body].pitch} mm apart" in not_measured.reason


@pytest.mark.behaviour
def test_feet_on_pads():
    assert feet_on_pads(8.0, 0.6, PADS["208 mil"]).on == pytest.approx(0.6)
    short = feet_on_pads(6.0, 0.6, PADS["208 mil"])
    assert short.on == pytest.approx(0.25) and "too little to hold" in short.sentence
    beyond = feet_on_pads(8.0, 0.6, PADS["150 mil"])
    assert beyond.on == pytest.approx(0.1) and "0.5 mm beyond the pads" in beyond.sentence
    assert feet_on_pads(6.4, 0.6, PADS["208 mil"]).verdict == "marginal"


@pytest.mark.behaviour
def test_the_body_from_what_was_measured():
    assert chip_body(width="5.3 mm").body == "208 mil"
    assert chip_body(width="3.95 mm", pitch="1.27 mm").body == "150 mil"
    assert chip_body(width="7.5 mm", leads=16).body == "300 mil, 16 leads"
    assert chip_body(span="6 mm").body == "150 mil"
    assert chip_body(span="6 mm", ends="pads under it").body == "no leads, 6 × 5 mm"
    assert chip_body(width="6.35 mm", ends="pins in holes").body == "pins, 300 mil"
    either = chip_body(span="4 mm", ends="pads under it")
    assert either.verdict == "cannot tell" and "4 × 4 mm or no leads, 4 × 3 mm" in either.reason
    nothing = chip_body(width="4.7 mm")
    assert nothing.verdict == "cannot tell" and "no body known here" in nothing.reason


@pytest.mark.behaviour
def test_widths_as_people_write_them():
    for typed in ("208mil", "209 mil", "200MIL"):
        assert chip_on_pads(typed, "5.5 mm", "9 mm", "1.27 mm").verdict == "fit"


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("no leads, 6 x 5 mm", "no leads, 6 × 5 mm"),
        ("6x5", "no leads, 6 × 5 mm"),
        ("WSON-8 8*6 mm", "no leads, 8 × 6 mm"),
        ("SO-8 narrow", "150 mil"),
        ("SOIC-8 wide", "208 mil"),
        ("8-pin SOP 208mil", "208 mil"),
        ("SOIC-16", "300 mil, 16 leads"),
        ("tssop8", "TSSOP-8"),
        ("DIP-8", "pins, 300 mil"),
        ("5.3 mm", "208 mil"),
    ],
)
def test_bodies_as_people_write_them(typed, name):
    assert body_typed(typed) == name


@pytest.mark.common_practice
def test_a_name_of_several_bodies_says_which_and_what_to_measure():
    with pytest.raises(RepairlibError, match="several bodies: measure") as told:
        body_typed("SOIC-8")
    said = str(told.value)
    assert "150 mil" in said and "208 mil" in said and "300 mil" not in said


@pytest.mark.behaviour
def test_a_body_without_leads_is_measured_either_way_round():
    for sides in ({"width": "5 mm"}, {"span": "6 mm"}, {"width": "5 mm", "span": "6 mm"}):
        assert chip_body(**sides, ends="pads under it").body == "no leads, 6 × 5 mm"
    either = chip_body(width="6 mm", ends="pads under it")
    assert either.verdict == "cannot tell" and "8 × 6 mm" in either.reason


@pytest.mark.behaviour
def test_what_is_refused():
    with pytest.raises(RepairlibError, match="not a known body"):
        chip_on_pads("400 mil", "5.5 mm", "9 mm")
    with pytest.raises(RepairlibError, match="neither the width nor the span"):
        chip_body(pitch="1.27 mm")
    with pytest.raises(RepairlibError, match="inner ends lie outside"):
        chip_on_pads("150 mil", inside="7 mm", outside="4 mm")
    with pytest.raises(RepairlibError, match="no unit and was taken in m"):
        chip_body(width="5.28")
