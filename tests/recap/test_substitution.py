"""Substitutes and makeshifts, against makers' documents; nothing is ever called safe."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.sources import SOURCES
from repairlib.recap.makeshifts import back_to_back, ceramic_ageing, ceramic_under_bias, series_pair
from repairlib.recap.substitution import (
    CONDITIONS,
    NEVER,
    NEW_KINDS,
    OLD_KINDS,
    RULES,
    rule_for,
    substitute_capacitor,
)
from repairlib.recap.words import ALUMINIUM, BIPOLAR, FILM, MAINS, POLYMER, TANTALUM


@pytest.mark.published(
    "KEMET, How much do you derate tantalum capacitors?, 2015-08-18: 50 %, so 24 V for 12 V"
)
def test_rating_of_a_tantalum_on_12_volts():
    finding = substitute_capacitor(ALUMINIUM, TANTALUM, 16, 12)
    assert (finding.verdict, finding.rated_voltage) == (CONDITIONS, 25)


@pytest.mark.published("Wikipedia, Electrolytic capacitor: tantalum polymer is derated by 20 %")
def test_rating_of_a_tantalum_polymer_on_9_volts():
    """9 V / 0.8 = 11.25 V, take 16 V; at 10 % off, which is from memory, 10 V would do."""
    finding = substitute_capacitor(ALUMINIUM, "tantalum polymer", 16, 9)
    assert (finding.verdict, finding.rated_voltage) == (CONDITIONS, 16)


@pytest.mark.published("KEMET, How much do you derate tantalum capacitors?, 2015-08-18: 50 %")
@pytest.mark.parametrize("volts", [2.5, 4, 6.3, 10, 16, 25])
def test_a_solid_tantalum_has_twice_the_voltage(volts):
    assert substitute_capacitor(ALUMINIUM, TANTALUM, volts).rated_voltage >= 2 * volts


@pytest.mark.behaviour
def test_never_a_solid_tantalum_at_the_same_voltage():
    finding = substitute_capacitor(ALUMINIUM, TANTALUM, 16)
    assert any("Never at the same rated voltage" in note for note in finding.notes)
    assert "heat and fire" in finding.cautions


# A sheet of KEMET's T491 line ends at 50 V; other makers' lists of solid tantalum go to 75 V.
@pytest.mark.from_memory("solid tantalum of all makers ends at 75 V; T491 ends at 50 V")
@pytest.mark.parametrize("kind", [TANTALUM, "tantalum polymer"])
def test_sources_disagree_where_solid_tantalum_ends(kind):
    """The highest is taken: 37.5 V is half of 75 V, and 60 V four fifths of it."""
    highest = {TANTALUM: 37.5, "tantalum polymer": 60}[kind]
    assert substitute_capacitor(ALUMINIUM, kind, highest).rated_voltage == 75
    assert substitute_capacitor(ALUMINIUM, kind, highest + 1).verdict == NEVER


# ICEL MTB: polyester 63 to 1000 V; ICEL PPB: polypropylene 250 to 2000 V; class 2 ceramic to
# 3000 V; polymer aluminium to 100 V: as the sheets state them.
@pytest.mark.published("ICEL, series MTB (63 to 1000 V) and PPB (250 to 2000 V)")
@pytest.mark.parametrize(
    ("kind", "works", "ends"),
    [("film", 800, 2000), ("polyester film", 700, 1000), ("polypropylene film", 1500, 2000)],
)
def test_film_is_made_far_above_450_volts(kind, works, ends):
    old = kind
    assert substitute_capacitor(old, kind, works).rated_voltage >= works
    assert substitute_capacitor(old, kind, ends).rated_voltage == ends
    assert substitute_capacitor(old, kind, ends + 1).verdict == NEVER


@pytest.mark.from_memory("highest ratings on makers' lists: class 2 ceramic 3 kV, polymer 100 V")
def test_ceramic_is_made_for_more_than_polymer():
    assert substitute_capacitor(BIPOLAR, "class 2 ceramic", 600).rated_voltage >= 600
    assert substitute_capacitor(ALUMINIUM, POLYMER, 100).rated_voltage == 100
    assert substitute_capacitor(ALUMINIUM, POLYMER, 160).verdict == NEVER


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("old", "new", "verdict"),
    [
        ("polypropylene film", "polyester film", NEVER),
        ("polystyrene film", "polyester film", NEVER),
        ("polystyrene film", "polypropylene film", CONDITIONS),
        ("polyester film", "polypropylene film", CONDITIONS),
        ("polyester film", "polyester film", CONDITIONS),
        ("film", "polyester film", "cannot tell"),
    ],
)
def test_films_are_kept_apart(old, new, verdict):
    """tan δ: polyester some tens of times that of polypropylene, so it heats under pulses."""
    finding = substitute_capacitor(old, new, 400)
    assert finding.verdict == verdict
    if verdict == CONDITIONS:
        said = " ".join(finding.notes)
        assert all(word in said for word in ("ac rating", "pulse rating", "dv/dt"))


@pytest.mark.common_practice
@pytest.mark.parametrize("volts", [150, 350, 600])
def test_paper_is_replaced_by_film_of_at_least_its_rating(volts):
    finding = substitute_capacitor("paper", FILM, volts)
    assert finding.verdict == CONDITIONS
    assert finding.rated_voltage >= volts
    assert any("safety class" in note and "mains" in note for note in finding.notes)
    assert "mains" in finding.cautions
    assert substitute_capacitor("paper", ALUMINIUM, volts).verdict == NEVER


@pytest.mark.parametrize("question", [(ALUMINIUM, TANTALUM, 16, 20), (FILM, FILM, 630, 700)])
def test_a_refusal_has_no_hard_space(question):
    with pytest.raises(RepairlibError) as refused:
        substitute_capacitor(*question)
    assert "\xa0" not in str(refused.value) and "\\xa0" not in str(refused.value)


@pytest.mark.common_practice
@pytest.mark.parametrize("polar", [ALUMINIUM, TANTALUM, POLYMER, "tantalum polymer"])
@pytest.mark.parametrize("old", [BIPOLAR, FILM])
def test_no_polar_part_where_there_is_no_plus(old, polar):
    assert substitute_capacitor(old, polar, 16).verdict == NEVER


@pytest.mark.common_practice
@pytest.mark.parametrize("new", NEW_KINDS)
def test_nothing_replaces_a_mains_part(new):
    finding = substitute_capacitor(MAINS, new, 250)
    assert finding.verdict == NEVER
    assert "mains" in finding.cautions


@pytest.mark.behaviour
def test_polymer_warns_of_regulators_and_leakage():
    notes = " ".join(substitute_capacitor(ALUMINIUM, POLYMER, 16).notes)
    assert "regulator" in notes
    assert "leaks more" in notes


def test_place_above_the_old_rating_is_refused():
    with pytest.raises(RepairlibError, match="works above the old part's rating"):
        substitute_capacitor(ALUMINIUM, TANTALUM, 16, 20)


@pytest.mark.parametrize("old", OLD_KINDS)
@pytest.mark.parametrize("new", NEW_KINDS)
def test_no_pair_is_called_safe(old, new):
    """Whatever is asked, the answer is a refusal, conditions to verify, or cannot tell."""
    finding = substitute_capacitor(old, new, 16, 12)
    assert finding.verdict in ("do not", "only with these conditions", "cannot tell")
    assert "safe" not in str(finding).lower().replace("safety class", "")
    assert finding.cautions
    assert finding.reason


def test_rules_are_sourced_and_asked_for():
    assert {rule.source for rule in RULES.values()} <= set(SOURCES)
    for (old, new), rule in RULES.items():
        assert rule_for(old, new) == rule
        assert rule.conditions


# A maker's note: 10 µF 10 V at 5 V, 0805 keeps 5 µF (-50 %), 1206 keeps 9.3 µF (-7 %).
@pytest.mark.published("UF Capacitors, note on dc bias of multilayer ceramics, 10 µF 10 V at 5 V")
@pytest.mark.parametrize(("size", "left", "loss"), [("0805", 5e-6, 50), ("1206", 9.3e-6, 7)])
def test_ceramic_at_the_published_point(size, left, loss):
    finding = ceramic_under_bias(size, 10e-6, 10, 5)
    assert finding.capacitance_left == pytest.approx(left)
    assert finding.loss == pytest.approx(loss)
    assert finding.notes == ()


def test_ceramic_between_points_says_so_and_elsewhere_cannot_tell():
    assert ceramic_under_bias("0805", 10e-6, 10, 0).loss == 0
    between = ceramic_under_bias("0805", 10e-6, 10, 2.5)
    assert between.loss == pytest.approx(25)
    assert "straight line" in between.notes[0]
    for asked in ((22e-6, 10, 5), (10e-6, 16, 5), (10e-6, 10, 6)):
        finding = ceramic_under_bias("0805", *asked)
        assert (finding.verdict, finding.values) == ("cannot tell", {})
    with pytest.raises(RepairlibError, match="above the rated voltage"):
        ceramic_under_bias("0805", 10e-6, 10, 11)


@pytest.mark.from_memory("a ceramic can lose more than half at rated voltage")
def test_ceramic_at_its_rating_is_not_guessed():
    assert "lose more than half" in ceramic_under_bias("1206", 22e-6, 6.3, 6.3).notes[0]


# Per tenfold of hours: X7R about 2.5 %, X5R about 5 to 7 %, C0G none. 1000 h are three tenfolds.
@pytest.mark.from_memory("ageing of ceramics by class, from an article not found again")
@pytest.mark.parametrize(("dielectric", "loss"), [("X7R", 7.5), ("X5R", 21), ("C0G", 0)])
def test_ceramic_ageing(dielectric, loss):
    assert ceramic_ageing(dielectric, 10e-6, 3.6e6).loss == pytest.approx(loss)


# By hand: RGA above 100 V: 0.02 × C (µF) × V + 25 µA. 220 × 250 gives 1125 µA, head-room
# 500 - 400 = 100 V: 88.89 kΩ, 200²/88 889 = 0.45 W. 100 × 350 gives 725 µA, head-room 200 V:
# 275.9 kΩ, 250²/275 862 = 0.2266 W. 47 × 400 gives 401 µA, head-room 150 V: 374.1 kΩ.
@pytest.mark.published(
    "Lelon, Aluminum Electrolytic Capacitors RGA, leakage above 100 V: 0.02 CV + 25 µA"
)
@pytest.mark.parametrize(
    ("micro", "rated", "total", "ohm", "watt"),
    [
        (220, 250, 400, 88_889, 0.45),
        (100, 350, 500, 275_862, 0.22656),
        (47, 400, 650, 374_065, 0.28237),
    ],
)
def test_series_pair(micro, rated, total, ohm, watt):
    finding = series_pair(micro * 1e-6, rated, total)
    assert finding.capacitance == pytest.approx(micro * 0.5e-6)
    assert finding.worst_share == pytest.approx(0.6 * total)
    assert finding.balancing_resistor == pytest.approx(ohm, rel=1e-4)
    assert finding.resistor_power == pytest.approx(watt, rel=1e-3)


@pytest.mark.common_practice
def test_all_leakage_in_one_part_stays_within_the_rating():
    """Ohm's law at the node: the tight part sees V2, the other V1 = total - V2."""
    finding = series_pair(100e-6, 350, 500)
    ohm, leakage = float(finding.balancing_resistor), 725e-6
    tight = (500 + leakage * ohm) / 2
    assert tight == pytest.approx(350, rel=1e-4)
    assert series_pair(100e-6, 250, 500, 0).verdict == NEVER  # no head-room, so no resistor


@pytest.mark.behaviour
def test_a_series_pair_brings_its_cautions():
    finding = series_pair(220e-6, 250, 400)
    assert {"stored charge", "mains"} <= set(finding.cautions)
    assert finding.verdict == CONDITIONS


# By hand: charge is shared as 1/C; with 20 % between them the smaller one takes 0.6 of the whole.
@pytest.mark.common_practice
def test_two_parts_do_not_carry_twice_their_rating():
    assert series_pair(100e-6, 250, 500).verdict == NEVER
    assert series_pair(100e-6, 250, 416).verdict == CONDITIONS
    assert series_pair(100e-6, 250, 417).verdict == NEVER


# By hand: 2 × 4.7 = 9.4, nearest E6 is 10; half of 10 is 5, 6.4 % more than 4.7.
@pytest.mark.published(
    "Wikipedia, E series of preferred numbers (IEC 60063), E6; capacitances in series by hand"
)
@pytest.mark.parametrize(
    ("wanted", "each", "pair"),
    [(4.7, 10, 5), (1, 2.2, 1.1), (10, 22, 11), (5, 10, 5), (47, 100, 50)],
)
def test_back_to_back(wanted, each, pair):
    finding = back_to_back(wanted * 1e-6, 50)
    assert finding.each_capacitance == pytest.approx(each * 1e-6)
    assert finding.pair_capacitance == pytest.approx(pair * 1e-6)
    assert finding.each_rated_voltage == 50
    assert finding.verdict == CONDITIONS


@pytest.mark.published(
    "GE Capacitor, 23A series, Application Information, Reverse voltage: at most 1.5 V"
)
def test_back_to_back_names_the_reverse_limit():
    assert any("1.5 V in reverse" in note for note in back_to_back(10e-6, 16).notes)


@pytest.mark.common_practice
def test_back_to_back_at_mains_voltages_is_for_a_qualified_person():
    finding = back_to_back(10e-6, 450)
    assert {"stored charge", "mains"} <= set(finding.cautions)
    assert any("qualified person" in note for note in finding.notes)


def test_back_to_back_above_the_ratings():
    assert back_to_back(10e-6, 450).each_rated_voltage == 450
    with pytest.raises(RepairlibError):
        back_to_back(10e-6, 500)


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("old", "new", "rated", "working", "least"),
    [
        (ALUMINIUM, ALUMINIUM, 25, 9, 25),
        (BIPOLAR, BIPOLAR, 40, 5, 50),
        (TANTALUM, TANTALUM, 20, 3, 20),
        (FILM, FILM, 400, 30, 400),
        ("paper", FILM, 600, 50, 630),
        (ALUMINIUM, TANTALUM, 63, 10, 20),  # another kind: the place decides
    ],
)
def test_the_same_kind_never_gets_a_lower_rating_than_the_old_part(old, new, rated, working, least):
    finding = substitute_capacitor(old, new, rated, working)
    assert finding.rated_voltage.value == least
