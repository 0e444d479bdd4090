"""The panels of the bench: they show what the calculators say, and nothing typed is lost."""

import pytest

from repairlib.core.limits import AFTER_UNPLUGGING
from repairlib.esd.limits import EDITIONS
from repairlib.faces.panels.discharge import discharge_view
from repairlib.faces.panels.esd_audit import bench_audit


def plain(panel):
    return panel.answer.value.replace("\xa0", " ")


def test_audit_opens_on_the_demo_bench():
    panel = bench_audit()
    assert "Something fails" in plain(panel)
    assert "S20.20-2021" in plain(panel)


def test_audit_follows_its_fields():
    panel = bench_audit("strap: 1 MΩ\nmat: 40 MΩ\nperson: 20 MΩ", "S20.20-2007")
    assert "Nothing fails" in plain(panel)
    panel.edition.value = "S20.20-2014"
    assert "Cannot tell yet" in plain(panel) and "walking test is missing" in plain(panel)
    panel.lines.value = "strap: 36 MΩ"
    assert "34.2 MΩ to 37.8 MΩ may or may not be below 35 MΩ" in plain(panel)
    panel.uncertainty.value = 0
    assert "36 MΩ is not below 35 MΩ" in plain(panel)


def test_audit_keeps_what_cannot_be_read():
    panel = bench_audit("")
    assert "nothing to audit" in plain(panel)
    panel.lines.value = "<b>mat</b>: 3 MΩ"
    assert "&lt;b&gt;mat" in plain(panel) and "<b>mat" not in plain(panel)
    for edition in EDITIONS:
        panel.edition.value = edition
        assert panel.lines.value == "<b>mat</b>: 3 MΩ"


def test_discharge_leads_with_the_hand_on_above_60_volts():
    for volts, ohm in (("400 V", "100 kΩ"), ("63 V", "1 kΩ"), ("160 V", "4.7 kΩ")):
        view = discharge_view("220 µF", volts, ohm)
        told = plain(view)
        assert "rl-unsafe" in told and 'role="alert"' in told
        assert told.index("Leave it to a qualified person") < told.index(" by calculation")
        assert "<details" not in told and "A capacitor keeps its charge" in told
    assert "41.737 s" in plain(discharge_view("220 µF", "400 V", "100 kΩ"))
    burns = discharge_view("0.5 F", "50 V", "100 Ω", "own limit")
    assert "rl-unsafe" in plain(burns) and "melts metal" in plain(burns)


def test_discharge_says_the_rule():
    view = discharge_view("220 µF", "400 V", "100 kΩ")
    assert "IEC 62368-1, ES1" in plain(view) and "<img" in view.chart.value
    view.limit.value = "IEC 60335-1, unplugging"
    assert "34 V peak" in plain(view)
    for limit in AFTER_UNPLUGGING:
        view.limit.value = limit
        assert view.answer.value


# t = R C ln(V0 / V), worked by hand: 4700 µF and 470 Ω have 2.209 s, ln 12 = 2.485; 2200 µF and
# 1 kΩ have 2.2 s, ln 25 = 3.219; 1000 µF and 220 Ω have 0.22 s, ln (48 / 2) = 3.178.
@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("farad", "volts", "ohm", "own", "time"),
    [
        ("4700 µF", "12 V", "470 Ω", "1 V", "5.489 s"),
        ("2200 µF", "25 V", "1 kΩ", "1 V", "7.082 s"),
        ("1000 µF", "48 V", "220 Ω", "2 V", "699.2 ms"),
    ],
)
def test_discharge_answers_for_the_rails_of_a_hobbyist(farad, volts, ohm, own, time):
    for limit in (*AFTER_UNPLUGGING, "own limit"):
        view = discharge_view(farad, volts, ohm, limit, own)
        if limit == "own limit" or AFTER_UNPLUGGING[limit].volts >= float(volts.split()[0]):
            told = plain(view)
            assert f"{time} to {own}" in told.replace(".000 V", " V")
            assert "verify with a meter, twice" in told and "rl-unsafe" not in told
            assert "wirewound" in told and "carbon composition" in told
            assert "0.25 W film resistor" in told and "at the first instant" in told
            assert "<img" in view.chart.value


def test_discharge_says_which_resistor_is_not_to_be_tried():
    told = plain(discharge_view("470 µF", "325 V", "10 Ω"))
    assert "10.562 kW at the first instant. This resistor explodes." in told
    told = plain(discharge_view("10000 µF", "50 V", "1 Ω", "own limit"))
    assert "⚠ Not to be tried: 2.5 kW" in told and "rl-unsafe" in told
    assert "Take 25 Ω or more" in told


def test_discharge_names_what_is_wrong():
    view = discharge_view("220 µF", "50 V", "1 kΩ", "own limit", "60 V")
    assert "not below the 50 V at the start" in plain(view) and not view.chart.value
    view.own.value = "one volt"
    assert "Not done" in plain(view) and view.own.value == "one volt"
    view.voltage.value = "fifty"
    assert "Not done" in plain(view) and view.voltage.value == "fifty"
    view.limit.value = "IEC 62368-1, ES1"
    view.voltage.value = "100 V"  # now your own limit is not asked for
    assert "qualified person" in plain(view)
    view.resistance.value = "0"
    assert "out of range" in plain(view)
