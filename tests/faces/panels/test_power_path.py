"""The panel of power through a plug: what it says, what it refuses, what stays typed."""

from repairlib.faces.panels import power_path_panel


def said(panel):
    return panel.answer.value.replace("\xa0", " ")


def test_verdict_and_reason_come_first_with_a_picture():
    panel = power_path_panel()
    assert said(panel).index("outside the limits") < said(panel).index("<img")
    assert "120 mΩ is above 30 mΩ" in said(panel) and "10.79 V arrive" in said(panel)
    assert "bursts or burns" in panel.held.value and "both halves" in panel.held.value
    assert "<summary>Working</summary>" in said(panel) and "<summary>Sources</summary>" in said(
        panel
    )


def test_a_new_inlet_is_within():
    panel = power_path_panel()
    panel.measured.value = "30 mΩ"
    assert "✓ within the limits" in said(panel)
    panel.gauge.value = "20"
    assert "11.52 V arrive" in said(panel)


def test_what_may_be_left_empty():
    panel = power_path_panel(measured="", needs="")
    assert "with contacts as new" in said(panel) and "needs" not in said(panel)


def test_the_figures_of_a_sheet_are_asked_for_where_no_table_is():
    panel = power_path_panel()
    assert not panel.single.disabled and not panel.new.disabled
    panel.family.value = "4.20 mm pitch"
    assert panel.single.disabled and panel.new.disabled
    assert "120 mΩ is above 10 mΩ" in said(panel)


def test_bad_input_is_one_line_and_nothing_typed_is_lost():
    panel = power_path_panel()
    for field, typed in (("current", "three"), ("gauge", "24.5"), ("needs", "<b>"), ("new", "")):
        kept = getattr(panel, field).value
        getattr(panel, field).value = typed
        assert "Not done" in said(panel) and "<b>" not in said(panel)
        assert getattr(panel, field).value == typed and panel.length.value == "1.5 m"
        getattr(panel, field).value = kept
    assert "outside the limits" in said(panel)
