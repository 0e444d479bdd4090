"""Tip temperatures and hand-soldering limits against their sources."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.core.sources import SOURCES
from repairlib.heat.iron import (
    JOINTS,
    METHODS,
    iron_temperature,
    limits,
    setting_for,
)
from repairlib.heat.solder_alloys import alloy, alloys


def row(item):
    one = limits()[item]
    return one.low, one.high, one.unit


@pytest.mark.published("Indium Corporation, Hand Soldering Tip Temperatures: 315 °C for both")
def test_one_makers_set_point():
    assert iron_temperature("SAC305", "small").low == 315
    for name in ("Sn63Pb37", "SAC305"):
        assert any("315 °C" in note for note in iron_temperature(name).notes)
    # 315 is 95 above the liquidus of SAC305 at 220 and 132 above Sn63 at 183; Bi58Sn42: 138.
    other = iron_temperature("Bi58Sn42")
    assert (other.low, other.high) == (138 + 95, 138 + 132)


@pytest.mark.published("Indium Corporation, Hand Soldering Tip Temperatures: flux to 350 °C")
def test_flux_blackens_above_its_limit():
    """The usual range ends at 350 °C for leaded solder and above it for lead-free."""

    def blackens(solder):
        return any("350 °C" in n and "blackens" in n for n in iron_temperature(solder).notes)

    assert row("flux of that note is made to stand")[1] == 350
    assert not blackens("Sn63Pb37")
    assert blackens("SAC305")


@pytest.mark.published(
    "Pearce, PICList, 2009-01-05, quoting ESA PSS-01-738, 3.5.7: 280 recommended, 320 not to be "
    "exceeded"
)
def test_small_leaded_joints():
    finding = iron_temperature("Sn63Pb37", "small")
    assert (finding.start, finding.high) == (280, 320)


@pytest.mark.published(
    "Soldering Technology International, Rework & repair, item 3: 600 to 700 °F, no downward "
    "pressure"
)
def test_trade_advice():
    # (°F − 32) / 1.8: 600 is 315.6, 700 is 371.1
    assert row("trade rework advice")[:2] == (316, 371)
    assert any("316 to 371 °C" in note for note in iron_temperature("Sn63Pb37").notes)
    assert "no downward pressure" in limits()["trade rework advice"].note


@pytest.mark.from_memory("common bench ranges, contact time, space ceilings, hot-air outlets")
def test_bench_ranges():
    leaded, lead_free = iron_temperature("Sn63Pb37"), iron_temperature("SAC305")
    assert (leaded.low, leaded.high) == row("usual bench range leaded")[:2] == (315, 350)
    assert (lead_free.low, lead_free.high) == row("usual bench range lead-free")[:2] == (350, 380)
    assert iron_temperature("SAC305", "heavy").high == row("heavy planes with care")[1] == 400
    assert row("space standards tin-lead ceiling by joint")[:2] == (280, 330)
    assert "360" in limits()["space standards tin-lead ceiling by joint"].note
    assert row("contact with an ordinary joint") == (1, 3, "s")
    assert leaded.contact == "1 to 3 s, under 5 s"
    air = iron_temperature("Sn63Pb37", method="hot air")
    assert (air.low, air.high) == row("outlet of a hand tool leaded")[:2] == (280, 320)
    air = iron_temperature("SAC305", method="hot air")
    assert (air.low, air.high) == row("outlet of a hand tool lead-free")[:2] == (320, 380)
    for name in ("leaded", "lead-free"):
        assert "low to medium flow" in limits()[f"outlet of a hand tool {name}"].note
    assert row("temperature ramp of ceramic capacitors") == (2, 3, "°C/s")
    assert "do not touch the body" in limits()["temperature ramp of ceramic capacitors"].note
    contact = limits()["contact with an ordinary joint"].note
    assert "under about 5 s" in contact and "let it cool before a retry" in contact
    assert row("distance of that limit from the body") == (1.6, 1.6, "mm")


@pytest.mark.common_practice
def test_desoldering_tip():
    """About 350 °C at a desoldering tip suits leaded through-hole work."""
    assert iron_temperature("60/40", method="vacuum").start == 350
    assert row("desoldering tip for leaded through-hole work")[:2] == (350, 350)


@pytest.mark.published(
    "PCA Electronics, Recommended Thermal Profiles for Lead Free Parts, Table I: 260 °C for 10 s"
)
def test_what_a_lead_bears():
    """Every tip is hotter than that, so the time with the tip on stays below those 10 s."""
    assert row("lead of a component")[1] == row("wave solder peak")[1] == 260
    assert iron_temperature("Sn63Pb37", "small").low > limits()["lead of a component"].high
    assert row("contact with an ordinary joint")[1] < 10
    for item in ("lead of a component", "wave solder peak"):
        assert "10 s" in limits()[item].note


@pytest.mark.from_memory("an open manufacturing handbook, 2.2 and 2.3, not found again")
def test_ball_grid_removal_in_a_handbook():
    assert row("preheat in a handbook") == (100, 140, "°C")
    assert row("reflow cycles after assembly")[1] == 2


@pytest.mark.published(
    "BEST Inc., Part Removal: preheat 75 to 125 °C; joint from 190 or 230; neighbours to 180 or 200"
)
def test_ball_grid_removal():
    """The joint melts, and what stands beside it does not: 183 and 217 °C."""
    assert row("preheat of the whole board") == (75, 125, "°C")
    for kind, joint, neighbour, melts in (
        ("leaded", 190, 180, alloy("Sn63Pb37")),
        ("lead-free", 230, 200, alloy("SAC305")),
    ):
        assert row(f"joint to be removed {kind}")[0] == joint > melts.liquidus
        assert row(f"neighbours stay {kind}")[1] == neighbour < melts.solidus


@pytest.mark.published("Microchip, Soldering Profile (J-STD-020), line below Table 1: three passes")
def test_passes_of_a_ball_grid():
    assert "3 passes" in limits()["reflow cycles after assembly"].note


def test_low_and_high_melting_solders_follow_the_rule_above_liquidus():
    """By hand: 138 + 95 and 138 + 132."""
    finding = iron_temperature("Bi58Sn42")
    assert (finding.low, finding.high) == (233, 270)
    assert finding.verdict == "start at 252 °C"
    assert iron_temperature("Pb95Sn5").verdict == "not by this rule"
    # 280 + 95 = 375, 302 + 95 = 397; 280 + 132 = 412 and 302 + 132 = 434 are above 400
    for name, start in (("Au80Sn20", 375), ("Pb90Sn10", 397)):
        small = iron_temperature(name, "small")
        assert (small.start, small.high) == (start, 400)


@given(st.sampled_from(sorted(alloys())), st.sampled_from(JOINTS), st.sampled_from(METHODS))
def test_every_setting_melts_the_solder_and_has_a_reason(name, joint, method):
    setting = setting_for(alloy(name), joint, method)
    assert alloy(name).liquidus + 40 <= setting.low <= setting.start <= setting.high
    assert setting.why
    finding = iron_temperature(name, joint, method)
    assert "safe" not in str(finding).casefold()
    assert set(finding.cautions) >= {"hot tools", "fumes and flux"}


def test_rows_have_sources():
    assert all(one.source in SOURCES for one in limits().values())


def test_unknown_words():
    for words in (("Sn63Pb37", "huge"), ("Sn63Pb37", "small", "blowlamp"), ("lead", "small")):
        with pytest.raises(RepairlibError):
            iron_temperature(*words)
    with pytest.raises(RepairlibError):
        setting_for(alloy("SAC305"), "huge")
