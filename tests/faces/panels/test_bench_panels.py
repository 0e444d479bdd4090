"""The panels of the bench: they show what the calculators say, and nothing typed is lost."""

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


def test_discharge_says_time_verdict_and_rule():
    view = discharge_view("220 µF", "400 V", "100 kΩ")
    assert "41.74 s by calculation: leave it to a qualified person" in plain(view)
    assert "IEC 62368-1, ES1" in plain(view) and "<img" in view.chart.value
    view.voltage.value = "63 V"
    assert "leave it to a qualified person" in plain(view)
    view.limit.value = "IEC 60335-1, unplugging"
    assert "34 V peak" in plain(view)
    for limit in AFTER_UNPLUGGING:
        view.limit.value = limit
        assert view.answer.value


def test_discharge_names_what_is_wrong():
    view = discharge_view("220 µF", "50 V", "1 kΩ")
    assert "not below the 50 V at the start" in plain(view) and not view.chart.value
    view.voltage.value = "fifty"
    assert "Not done" in plain(view) and view.voltage.value == "fifty"
    view.voltage.value = "100 V"
    view.resistance.value = "0"
    assert "out of range" in plain(view)
