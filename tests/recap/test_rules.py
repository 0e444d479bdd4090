"""What the rules decide, against the practice of the trade and the published series."""

import pytest

from repairlib.core.sources import SOURCES
from repairlib.core.tables import read_table
from repairlib.recap.kind_ratings import made_ratings, next_rating
from repairlib.recap.ratings import describe
from repairlib.recap.rules import RULES, decide, new_capacitance
from repairlib.recap.sizes import typical_can
from repairlib.recap.words import ALUMINIUM


def decided(text):
    return decide(describe((("free", text),)))


# Ratings of the Lelon RGA data sheet, table of dissipation factors, typed in.
RGA_RATINGS = [6.3, 10, 16, 25, 35, 50, 63, 100, 160, 200, 250, 350, 400, 450]


@pytest.mark.published(
    "Lelon, Aluminum Electrolytic Capacitors RGA, Specifications: rated voltages"
)
def test_published_ratings_are_known():
    assert set(RGA_RATINGS) < set(made_ratings(ALUMINIUM))
    assert list(made_ratings(ALUMINIUM)) == sorted(made_ratings(ALUMINIUM))


@pytest.mark.published(
    "Lelon, Aluminum Electrolytic Capacitors RGA, Specifications: rated voltages"
)
@pytest.mark.parametrize("old", [1, 6, 6.3, 12, 15, 16, 20, 40, 64, 101, 300, 450])
def test_rating_is_never_below(old):
    new = next_rating(old)
    assert new >= old
    assert not any(old <= rating < new for rating in RGA_RATINGS)


@pytest.mark.from_memory("80 V is a standard rating")
def test_80_volts():
    assert next_rating(75) == 80


def test_above_the_ratings_nothing_is_proposed():
    assert decided("10uF 500V el").verdict == "hold"


# Old values and what benches fit for them; the figures are of IEC 60063, E6 before E12.
MADE = {5: 4.7, 25: 22, 50: 47, 30: 33, 200: 220, 250: 220, 500: 470, 2000: 2200, 3000: 3300}
MADE |= {2: 2.2, 20: 22, 40: 47, 16: 15}


@pytest.mark.published("Wikipedia, E series of preferred numbers (IEC 60063), list of E6")
@pytest.mark.parametrize(("old", "new"), MADE.items())
def test_a_value_no_longer_made(old, new):
    farad, (rule, _) = new_capacitance(old * 1e-6)
    assert (farad, rule) == (pytest.approx(new * 1e-6), "made value")
    assert abs(new / old - 1) <= 0.2


@pytest.mark.published("Wikipedia, E series of preferred numbers (IEC 60063), list of E12")
@pytest.mark.parametrize("value", [1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2])
def test_a_made_value_stays(value):
    farad, (rule, _) = new_capacitance(value * 1e-5)
    assert (farad, rule) == (value * 1e-5, "same capacitance")


@pytest.mark.published("Wikipedia, E series of preferred numbers (IEC 60063), list of E12")
def test_a_narrow_tolerance_takes_e12():
    """25 µF ±10 % allows 27 µF (8 % more) of E12, but no value of E6."""
    assert new_capacitance(25e-6, (-0.1, 0.1))[0] == pytest.approx(27e-6)


def test_no_made_value_within_the_tolerance():
    assert new_capacitance(25e-6, (-0.01, 0.01))[0] is None
    assert decided("25/16 el ±1%").verdict == "hold"


VERDICTS = {
    "10/16 el": "replace",
    "10/16 el NP": "replace",
    "10/16": "replace",
    "10/16 tantalum": "judge",
    "10/16 polymer": "judge",
    "0.1 250VAC X2": "judge",
    "0.1/400 oil paper": "judge",
    ".1 mylar": "keep",
    "10uF 63V film": "keep",
    "100p ceramic": "keep",
    ".1": "keep",
    "100uF el": "hold",
    "16V el": "hold",
    "10 16V": "hold",
    "0.1F 5.5V el": "hold",
}


@pytest.mark.common_practice
@pytest.mark.parametrize(("text", "verdict"), VERDICTS.items())
def test_what_ages(text, verdict):
    assert decided(text).verdict == verdict


@pytest.mark.common_practice
def test_polarity_is_kept_and_bipolar_stays_bipolar():
    assert decided("10/16 el").proposal.polar
    bipolar = decided("10/16 NP").proposal
    assert not bipolar.polar
    assert "bipolar stays bipolar" in dict(bipolar.rules)


def test_every_proposal_names_its_rules():
    proposal = decided("50/15 el axial").proposal
    named = dict(proposal.rules)
    assert list(named) == [
        "made value",
        "voltage not below",
        "105 °C",
        "polarity kept",
        "build kept",
    ]
    assert set(named) <= set(RULES)
    assert "105 °C" in str(proposal)


def test_a_special_type_is_asked_for_again():
    assert "low leakage" in decided("1/50 el LL").looks[0]


def test_dangerous_voltages_carry_their_caution():
    assert "stored charge" in decided("10/450 el").cautions
    assert "mains" in decided("0.1 250VAC X2").cautions


@pytest.mark.common_practice
@pytest.mark.parametrize("words", ["X2-MKP", "X1Y1", "X-cap", "MP", "motor run", "EMI"])
def test_mains_parts_are_judged_with_their_cautions(words):
    decision = decided(f"0.1uF 250V {words}")
    assert decision.verdict == "judge"
    assert {"mains", "stored charge", "heat and fire"} <= set(decision.cautions)


def test_a_held_part_keeps_its_cautions():
    assert "mains" in decided("10/450 el gizmo").cautions


def test_rules_and_tables_have_sources():
    assert {key for _, key in RULES.values()} <= set(SOURCES)
    for table in ("rated-voltages", "radial-can-sizes", "radial-lead-spacing"):
        assert {row["source"] for row in read_table(table)} <= set(SOURCES)


# Sizes that stand in makers' part numbers: RGA101M1CTA-0511G, RGA221M1VBK-1012G, 10ZL220M6.3X11.
@pytest.mark.published("Rubycon, ZL Series, part number 10ZL220M6.3X11: 220 µF 10 V, 6.3 × 11 mm")
def test_can_size_in_a_part_number():
    can = typical_can(220e-6, 10)
    assert (can.diameter, can.length) == (6.3, 11)


@pytest.mark.from_memory("sizes of Lelon RGA cans, not looked up again")
@pytest.mark.parametrize(
    ("microfarad", "volts", "diameter", "length"), [(100, 16, 5, 11), (220, 35, 10, 12.5)]
)
def test_can_sizes_of_a_series(microfarad, volts, diameter, length):
    can = typical_can(microfarad * 1e-6, volts)
    assert (can.diameter, can.length) == (diameter, length)


@pytest.mark.from_memory("lead spacing of radial cans by diameter")
@pytest.mark.parametrize(
    ("microfarad", "volts", "spacing"),
    [(10, 50, 2.0), (220, 10, 2.5), (220, 25, 3.5), (1000, 25, 5.0), (2200, 35, 7.5)],
)
def test_lead_spacing(microfarad, volts, spacing):
    assert typical_can(microfarad * 1e-6, volts).spacing == spacing


def test_cans_grow_with_capacitance_and_rating():
    """A property that a slip of the keyboard in the table would break."""
    rows = read_table("radial-can-sizes")
    sizes = {
        (float(row["c_uf"]), float(row["volts"])): float(row["diameter_mm"]) ** 2
        * float(row["length_mm"])
        for row in rows
    }
    assert len(sizes) == len(rows)
    for (farad, volts), volume in sizes.items():
        for (other_farad, other_volts), other in sizes.items():
            if other_farad >= farad and other_volts >= volts:
                assert other >= volume
