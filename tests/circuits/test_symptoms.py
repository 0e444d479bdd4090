"""repairlib.circuits.symptoms: each row of the table is what the supply with that fault does."""

import pytest

from repairlib.circuits import (
    FAULTS,
    SOUND,
    SYMPTOMS,
    look_at,
    most_ripple,
    symptom_rows,
    symptoms_of,
    that_fit,
    waves_of,
)
from repairlib.circuits import symptoms as module
from repairlib.core.errors import RepairlibError
from repairlib.core.sources import SOURCES
from repairlib.power_up import windows

ROWS = {row.fault: row for row in symptom_rows()}
WINDOW = windows()["+5 V"]


def test_a_sound_supply_shows_no_symptom():
    assert symptoms_of(SOUND) == ()


def test_the_table_has_each_fault_once():
    assert (SOUND, *ROWS) == tuple(FAULTS)
    assert len(symptom_rows()) == len(ROWS)


@pytest.mark.common_practice
@pytest.mark.parametrize("symptom", SYMPTOMS)
@pytest.mark.parametrize("fault", ROWS)
def test_each_fault_shows_its_symptoms_and_no_others(fault, symptom):
    assert (symptom in symptoms_of(fault)) == (symptom in ROWS[fault].shows)


def test_every_symptom_is_shown_by_some_fault_and_not_by_all():
    for symptom in SYMPTOMS:
        assert 0 < sum(symptom in row.shows for row in ROWS.values()) < len(ROWS)


def test_every_row_names_a_part_a_measurement_and_its_source():
    for row in ROWS.values():
        assert row.part
        assert row.decides
        assert row.source in SOURCES


def test_no_fault_stands_at_a_limit():
    """Where a figure lay within 1 % of what decides, rounding could turn a symptom."""
    sound = look_at(SOUND)
    for fault in FAULTS:
        seen = look_at(fault)
        for figure, limit in (
            (seen.ripple, most_ripple()),
            (seen.mean, 0.9 * sound.mean),
            (seen.mean, 1.1 * sound.mean),
            (seen.low, WINDOW.low),
            (seen.high, WINDOW.high),
            (seen.high - seen.low, WINDOW.ripple),
            (seen.watts, module.WARM),
            (seen.amps, module.MORE * sound.amps),
            (seen.amps, module.AT_ONCE * sound.amps),
        ):
            assert abs(figure - limit) > 0.01 * limit, fault


@pytest.mark.published("University course sheet FEEG1004, part B: I / (2 f C), by hand")
def test_the_sound_ripple_is_below_the_formula_and_its_most_above():
    # 0.15 / (2 × 50 × 1000e-6) = 1.5 V; with 20 % less capacitance 1.875 V.
    assert 0.6 * 1.5 < look_at(SOUND).ripple < 1.5
    assert most_ripple() == pytest.approx(1.875)


def test_a_regulator_without_room_gives_its_input_less_its_dropout():
    cycle = waves_of("reservoir nearly empty").volts
    lowest = cycle["rail"].argmin()
    assert cycle["out"][lowest] == pytest.approx(cycle["rail"][lowest] - 2, abs=1e-6)
    assert cycle["out"].max() == pytest.approx(5, abs=1e-6)


def test_what_leaks_warms_the_can_by_v_squared_over_r():
    rail = waves_of("reservoir leaks").volts["rail"]
    assert look_at("reservoir leaks").watts == pytest.approx((rail**2).mean() / 50, rel=0.05)


def test_the_current_of_the_winding_is_that_of_the_load():
    """A bridge takes from the winding, on average, what load and bleeder draw."""
    cycle = waves_of(SOUND)
    parts = {part.name: part for part in module.small_supply()}
    drawn = 0.15 + cycle.volts["rail"].mean() / parts["R1"].value
    taken = abs(module._lost(parts["V1"], cycle)).mean() / parts["V1"].more["series"]
    assert taken == pytest.approx(drawn, rel=0.01)


def test_what_fits_is_found_from_the_symptoms_alone():
    for fault, row in ROWS.items():
        assert fault in [one.fault for one in that_fit(symptoms_of(fault))]
        assert [one for one in that_fit(row.shows) if set(one.shows) != set(row.shows)] == []
    assert that_fit([]) == ()


def test_unknown_words_are_refused_with_those_that_are_known():
    with pytest.raises(RepairlibError, match="reservoir leaks"):
        symptoms_of("gremlins")
    with pytest.raises(RepairlibError, match="rail low"):
        that_fit(["sparks"])
