"""The panel of the short table: go on or stop for each pair, and for the set."""

from repairlib.faces.panels import before_power_panel

SCANNER = {"5 V rail and ground": "160 Ω", "supply contact and signal contact": "2.1 Ω"}


def said(panel):
    return panel.answer.value.replace("\xa0", " ")


def test_one_stop_stops_the_set():
    panel = before_power_panel(SCANNER)
    assert said(panel).startswith('<div class="rl-told rl-unsafe" role="alert"')
    assert "Stop: no power" in said(panel) and "✗ stop" in said(panel) and "→ go on" in said(panel)
    panel.fields["pair 2"].value = "47 kΩ"
    assert "Go on to the next check" in said(panel) and "✓" not in said(panel)


def test_every_pair_is_asked_for_at_first():
    panel = before_power_panel()
    labels = [field.description for field in panel.fields.values()]
    assert "neighbouring contacts" in labels and "mains contacts" not in labels
    assert "measure what is missing" in said(panel)


def test_the_core_rail_takes_a_limit_of_its_own():
    panel = before_power_panel({"core rail and ground": "1.9 Ω"})
    assert "give a threshold" in said(panel)
    panel.core_limit.value = "0.2 Ω"
    assert "Go on" in said(panel)


def test_what_the_set_does_not_have_is_left_out():
    panel = before_power_panel({**SCANNER, "two rails": ""})
    panel.fields["pair 2"].value = "47 kΩ"
    assert "Not yet" in said(panel)
    panel.fields["pair 3"].value = "not there"
    assert "Go on" in said(panel)


def test_bad_input_is_one_line_in_its_row_and_nothing_is_lost():
    panel = before_power_panel(SCANNER)
    panel.fields["pair 1"].value = "<b>low"
    assert "&lt;b&gt;low" in said(panel) and "◐ measure again" in said(panel)
    assert "✗ stop" in said(panel)  # the other row stands
    panel.leads.value = "two"
    assert "Not done" in said(panel) and panel.fields["pair 1"].value == "<b>low"
    panel.leads.value = "0.3 Ω"
    assert "✗ stop" in said(panel)
