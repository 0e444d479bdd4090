"""The cautions: whole ones for the head of a lesson, short ones for a part or an answer in hand."""

import re

import pytest

from repairlib.core.limits import hazards_of_capacitor
from repairlib.core.safety import HAZARDS, caution
from repairlib.esd import strap_on_or_off
from repairlib.markings import read
from repairlib.recap import plan, substitute_capacitor


def visible(html):
    """What stands there before anything is unfolded."""
    return re.sub(r"<[^>]*>", " ", re.sub(r"<details>.*?</details>", "", html))


@pytest.mark.behaviour
@pytest.mark.parametrize("key", HAZARDS)
def test_a_short_caution_is_one_strong_sentence_and_that_hazard_only(key):
    hazard = HAZARDS[key].of_part or HAZARDS[key]
    short = caution(key).short()
    assert visible(short).strip() == f"⚠ {hazard.strikes}"
    assert hazard.strikes.count(".") == 1 and hazard.strikes.endswith(".")
    assert short.count("<details>") == 1 and all(f"<li>{line}</li>" in short for line in hazard.do)
    others = [one.title for name, one in HAZARDS.items() if name != key]
    assert not any(title in short for title in others)


@pytest.mark.behaviour
def test_a_part_in_hand_brings_no_line_on_irons():
    short = caution("heat and fire").short()
    assert "bursts or burns" in short and "iron" not in re.sub("<[^>]*>", "", short)
    assert "Rest the iron in its stand" in caution("heat and fire")._repr_html_()


@pytest.mark.common_practice
def test_a_supply_without_a_current_limit_is_answered():
    for told in (str(caution("heat and fire")), caution("heat and fire").short()):
        assert "current-limited supply. Without one, hand the first power-up to somebody" in told


@pytest.mark.published("Yale EHS, Polychlorinated Biphenyls: ballasts, capacitors, motors")
def test_oil_in_old_capacitors():
    told = str(caution("PCB oil"))
    assert "motor-run, ballast and oil-paper" in told and "hazardous waste" in told


@pytest.mark.published("Yale EHS, Polychlorinated Biphenyls: ballasts, capacitors, motors")
def test_oil_is_named_where_an_oil_paper_part_is_met():
    (item,) = plan("C3 0.1uF 600V oil-paper\n").all_items
    assert "PCB oil" in item.cautions
    (item,) = plan("C3 0.1uF 630V film\n").all_items
    assert "PCB oil" not in item.cautions
    assert "PCB oil" in substitute_capacitor("paper", "film", "400 V").cautions
    assert hazards_of_capacitor(25, oil=True) == ("PCB oil",)


@pytest.mark.published("IEC 62368-1, 5.2.2, ES1: 60 V dc, 30 V rms")
def test_a_strap_comes_off_above_the_limits_that_the_calculator_has():
    assert "above 60 V dc or 30 V rms: strap off" in str(caution("wrist strap"))
    for volts, kind in ((60, "dc"), (30, "ac rms")):
        assert strap_on_or_off(volts, kind).verdict == "strap may stay on"
        assert strap_on_or_off(volts + 1, kind).verdict.startswith("strap off")


@pytest.mark.common_practice
def test_dusts_that_kill_slowly():
    assert "do not cut" in str(caution("asbestos"))
    assert "Do not break, file, grind" in str(caution("beryllium oxide"))


@pytest.mark.published("IEC 62368-1, 5.2.2, ES1: 60 V dc")
@pytest.mark.parametrize("marking", ["100uF 160V", "33µF 450V", "4.7µF 250V", "68µF 63V"])
def test_a_capacitor_above_60_volts_says_so_at_the_quick_check(marking):
    from repairlib.faces.shown.marking import look_up

    shown = look_up(marking, "radial")[1]
    first = visible(shown[shown.index('role="note"') :])
    assert first.index("gives all it holds in one blow") < first.index("Mains current")
    assert "qualified person" in first


@pytest.mark.behaviour
@pytest.mark.parametrize("marking", ["F500mA", "T2.5A250V", "10uF 50V", "22µF 16V"])
def test_what_a_fuse_or_a_low_part_does_not_bring(marking):
    from repairlib.faces.shown.marking import look_up

    shown = look_up(marking, "")[1]
    assert "iron" not in re.sub("<[^>]*>", "", shown)
    lines = [line for line in visible(shown).split("⚠") if line.strip()]
    assert len(lines) <= 3
    assert bool(read(marking)[0].cautions) == ('role="note"' in shown)
