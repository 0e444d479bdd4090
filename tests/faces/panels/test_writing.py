"""The panel that leads through the writing of a chip: each step kept, none skipped, none lost."""

import pytest

from repairlib.core.tables import demo_path
from repairlib.faces.panels import write_plan
from repairlib.faces.panels.following import turn_all
from repairlib.faces.panels.writing import ANEW, SURE
from repairlib.faces.shown.writing import answers_of
from repairlib.firmware import (
    ERASED,
    GO,
    INTENDED,
    KEEP_LIST,
    KEPT,
    LEFT,
    READ,
    READ_BACK,
    SUPPLY,
    WRITTEN,
    Keep,
    read_image,
)

FIRST, SECOND, LOOSE, SISTER = (
    f"printer-{name}.bin" for name in ("read-first", "read-second", "read-loose-clip", "sister")
)


def type_in(panel, **typed):
    for name, value in typed.items():
        panel.fields[name].value = str(value)


def enter(panel, step, **typed):
    """Do a step that has to be taken."""
    type_in(panel, **typed)
    before = len(panel.state.events)
    panel.buttons[step].click()
    assert len(panel.state.events) == before + 1, panel.refused.value


def seen(things):
    return {name for name, one in things.items() if one.layout.display != "none"}


def at_the_keep_list():
    panel = write_plan()
    enter(panel, SUPPLY, volts="3.3 V", measured="3280 mV")
    enter(panel, READ, file=FIRST)
    enter(panel, READ, file=SECOND)
    type_in(panel, donor=SISTER, twin="printer-other-sister.bin")
    return panel


def at_the_go():
    panel = at_the_keep_list()
    numbers = " ".join(str(number + 1) for number in range(len(panel.keeps)))
    enter(panel, KEEP_LIST, keep=numbers)
    panel.buttons["make"].click()
    path = panel.fields["file"].value
    enter(panel, INTENDED, reason="its sums are not known")
    return panel, path


def test_it_begins_with_the_supply_and_shows_no_more_than_that():
    panel = write_plan()
    assert "1 of 8: supply" in panel.card.value and 'role="note"' in panel.card.value
    assert seen(panel.fields) - {"chip", "events"} == {"volts", "measured"}
    assert seen(panel.buttons) == {SUPPLY} and seen(panel.choose) == set()


def test_the_whole_way(tmp_path):
    panel, path = at_the_go()
    made = read_image(path)
    assert b"PB-204117" in made.data and made.size == 65536
    assert "to be erased first" in panel.shown.value
    assert "Writing can destroy the only copy" in panel.card.value
    for step in (GO, ERASED, WRITTEN):
        enter(panel, step)
    (tmp_path / "back.bin").write_bytes(made.data)
    enter(panel, READ_BACK, file=tmp_path / "back.bin")
    assert panel.state.step is None and "Every byte is as intended" in panel.card.value
    assert "back.bin" in panel.so_far.value and seen(panel.buttons) == {"back", "anew"}
    assert "safe" not in panel.card.value.lower()


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ({"volts": "3.3", "measured": "5 V"}, "would kill it"),
        ({"volts": "", "measured": "5 V"}, "Accepted"),
        ({"volts": "3.3 A", "measured": "3.3"}, "Accepted"),
    ],
)
def test_what_is_refused_stays_and_is_one_line(typed, why):
    panel = write_plan()
    type_in(panel, **typed)
    panel.buttons[SUPPLY].click()
    assert "Not done" in panel.refused.value and why in panel.refused.value
    assert panel.refused.layout.display == ""
    assert panel.state.events == () and panel.fields["measured"].value == typed["measured"]


def test_two_reads_that_differ_are_drawn_and_the_same_file_is_none():
    panel = write_plan()
    enter(panel, SUPPLY, volts="3.3", measured="3.3")
    enter(panel, READ, file=FIRST)
    type_in(panel, file=FIRST)
    panel.buttons[READ].click()
    assert "given before" in panel.refused.value and panel.fields["file"].value == FIRST
    enter(panel, READ, file=LOOSE)
    assert "contact" in panel.shown.value and panel.state.step == READ
    enter(panel, READ, file=SECOND)
    assert panel.state.step == READ  # two that follow each other


def test_each_line_of_the_list_is_answered():
    panel = at_the_keep_list()
    count = len(panel.keeps)
    assert count >= 3 and "3 of 8" in panel.card.value and "PB-204117" in panel.shown.value
    for keep, leave, why in (
        ("", "", "without an answer"),
        ("1", "1", "left behind"),
        (str(count + 1), "", f"1 to {count}"),
    ):
        type_in(panel, keep=keep, leave=leave)
        panel.buttons[KEEP_LIST].click()
        assert why in panel.refused.value and panel.state.step == KEEP_LIST
    enter(panel, KEEP_LIST, keep="1", leave=" ".join(str(n) for n in range(2, count + 1)))
    assert panel.state.kept == panel.state.events[-1].keeps[:1]


def test_numbers_become_answers():
    keeps = [Keep("serial number", (one, one + 1), "7", "", "likely") for one in range(3)]
    assert answers_of(keeps, "3,1", "2") == (KEPT, LEFT, KEPT)


def test_a_bad_read_back_shows_each_way_on(tmp_path):
    panel, path = at_the_go()
    for step in (GO, ERASED, WRITTEN):
        enter(panel, step)
    made = read_image(path).data
    (tmp_path / "bad.bin").write_bytes(made[:4096] + b"\xff" * 4096 + made[8192:])
    (tmp_path / "back.bin").write_bytes(made)
    enter(panel, READ_BACK, file=tmp_path / "bad.bin")
    assert "not written" in panel.answer.value
    assert seen(panel.buttons) >= {WRITTEN, ERASED, READ_BACK}
    assert "file" in seen(panel.fields) and panel.buttons["back"].disabled
    enter(panel, WRITTEN)
    enter(panel, READ_BACK, file=tmp_path / "back.bin")
    assert panel.state.step is None


def test_it_stands_where_it_stood_when_it_is_opened_again():
    panel, _ = at_the_go()
    panel.fields["erase"].value = 65536
    again = write_plan()
    assert again.state.step == GO and again.state.intended == panel.state.intended
    assert again.fields["erase"].value == 65536 and again.fields["chip"].disabled
    turn_all()
    assert again.state.step == GO


def test_a_file_that_is_gone_holds_it_and_nothing_is_lost(tmp_path):
    (tmp_path / "read.bin").write_bytes(demo_path(FIRST).read_bytes())
    panel = write_plan()
    enter(panel, SUPPLY, volts="3.3", measured="3.3")
    enter(panel, READ, file=tmp_path / "read.bin")
    (tmp_path / "read.bin").rename(tmp_path / "away.bin")
    again = write_plan()
    assert again.state is None and "cannot be read" in again.refused.value
    assert seen(again.buttons) == {"again", "back", "anew"} and again.buttons["back"].disabled
    (tmp_path / "away.bin").rename(tmp_path / "read.bin")
    again.buttons["again"].click()
    assert len(again.state.reads) == 1 and "Not done" not in again.refused.value


def test_back_takes_one_step_back_and_anew_asks_twice():
    panel = at_the_keep_list()
    panel.buttons["back"].click()
    assert panel.state.step == READ and len(panel.state.reads) == 1
    panel.buttons["anew"].click()
    assert panel.buttons["anew"].description == SURE and panel.state.reads
    panel.buttons["anew"].click()
    assert panel.state.events == () and panel.buttons["anew"].description == ANEW
    assert not panel.fields["chip"].disabled


def test_a_capacity_that_is_none_and_a_donor_that_is_none():
    panel = write_plan("8 apples")
    assert "not a size" in panel.refused.value and panel.state is None
    type_in(panel, chip="64 KiB")
    assert panel.state.step == SUPPLY
    panel = at_the_keep_list()
    type_in(panel, donor="nowhere.bin")
    assert "cannot be read" in panel.refused.value and panel.state.step == KEEP_LIST
    type_in(panel, donor="")
    panel.buttons[KEEP_LIST].click()
    assert "nothing to keep" in panel.refused.value
    enter(panel, KEEP_LIST, reason="two of us looked at the label")


def test_names_cannot_put_tags_on_the_page(tmp_path):
    path = tmp_path / "<b>bold<b>.bin"
    path.write_bytes(demo_path(FIRST).read_bytes())
    panel = write_plan()
    enter(panel, SUPPLY, volts="3.3", measured="3.3")
    enter(panel, READ, file=path)
    shown = panel.answer.value + panel.card.value + panel.so_far.value
    assert "&lt;b&gt;bold" in shown and "<b>bold" not in shown
