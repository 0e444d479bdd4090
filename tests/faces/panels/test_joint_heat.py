"""repairlib.faces.panels.joint_heat: what it shows, what helps, and what is refused."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.faces.panels.joint_heat import joint_heat_panel


def test_it_answers_at_once():
    panel = joint_heat_panel(celsius=330.0, plastic="none", beside="ceramic chip")
    assert panel.answer.value.count("within the limits") == 7  # the whole, and six limits
    assert "not a measurement" in panel.answer.value
    assert "Hot tools burn" in panel.answer.value
    assert "<img" in panel.section.value and "<img" in panel.chart.value


def test_a_change_is_seen():
    panel = joint_heat_panel()
    panel.fields["plane"].value = "solid plane"
    panel.fields["wet_tip"].value = False
    assert "some solder stays solid" in panel.answer.value
    assert "what stands there?" in panel.answer.value and "Batteries burn" in panel.answer.value
    panel.fields["beside"].value = "aluminium electrolytic"
    assert "bears 85 to 105" in panel.answer.value and "Batteries burn" not in panel.answer.value
    panel.fields["mat"].value = "unknown"
    assert "cannot tell" in panel.answer.value


def test_what_would_help():
    panel = joint_heat_panel(plane="thermal relief", wet_tip=False)
    assert panel.helps.value == ""
    panel.help.click()
    assert "fresh solder on the tip" in panel.helps.value
    panel.fields["wet_tip"].value = True
    assert panel.helps.value == ""


def test_hot_air_has_no_tip():
    panel = joint_heat_panel(source="hot air", kind="surface")
    assert panel.fields["tip"].disabled and panel.fields["wet_tip"].disabled
    assert "hot air" in panel.section.value


def test_wrong_start_is_refused():
    with pytest.raises(RepairlibError, match="not a plane known"):
        joint_heat_panel(plane="star")
