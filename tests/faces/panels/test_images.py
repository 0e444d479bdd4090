"""The panel of images: files by path or from the browser, each trouble in its place, none lost."""

import os

import pytest

from repairlib.core.tables import demo_path
from repairlib.faces.panels import image_reader
from repairlib.faces.shown.images import chosen_of
from repairlib.firmware import read_image
from repairlib.learn.home import home

FIRST, SECOND, LOOSE, SISTER = (
    f"printer-{name}.bin" for name in ("read-first", "read-second", "read-loose-clip", "sister")
)


def give(panel, role, name, data):
    button = panel.buttons[role]
    button._take(button, {"name": name, "start": 0, "size": len(data)}, [data])


def test_one_read_is_judged_and_drawn():
    panel = image_reader()
    assert "64 KiB" in panel.answer.value and "CRC-32" in panel.answer.value
    assert "<img" in panel.answer.value and "Map of printer-read-first.bin" in panel.answer.value
    assert panel.reads.value == panel.writing.value == panel.after.value == ""
    panel.chip.value = "16 MiB"
    assert "short read" in panel.answer.value


def test_two_reads():
    panel = image_reader(second=SECOND)
    assert "are equal" in panel.reads.value and "rl-right" in panel.reads.value
    panel.second.value = LOOSE
    assert "differ" in panel.reads.value and "≠" not in panel.reads.value.partition("<img")[0]
    assert "where some bytes differ" in panel.reads.value


def test_what_is_chosen_in_the_browser_is_kept_and_its_path_stands_in_the_field():
    panel = image_reader("")
    assert "No read yet" in panel.answer.value
    data = demo_path(FIRST).read_bytes()
    give(panel, "first", "my read.bin", data)
    assert read_image(panel.first.value).data == data
    assert str(home()) in panel.first.value and "my read.bin" in panel.told.value
    assert "64 KiB" in panel.answer.value
    again = image_reader("")
    assert again.first.value == panel.first.value and "64 KiB" in again.answer.value
    give(panel, "second", "empty.bin", b"")
    assert "it is empty" in panel.reads.value and panel.first.value in again.first.value


def test_what_only_this_board_has_goes_into_a_new_image(tmp_path):
    panel = image_reader(intended=SISTER, twin="printer-other-sister.bin")
    assert "serial number" in panel.kept_back.value and "PB-204117" in panel.kept_back.value
    assert "Writing can destroy the only copy" in panel.writing.value
    assert panel.choice.layout.display == ""
    panel.make.click()
    made = read_image(panel.intended.value)
    sister = demo_path(SISTER).read_bytes()
    assert b"PB-204117" in made.data and b"PB-204117" not in sister and made.size == len(sister)
    assert "Put in: serial number" in panel.told.value
    assert "PB-204117" not in panel.kept_back.value
    panel.back.value = SISTER
    assert "not as meant" in panel.after.value
    panel.back.value = panel.intended.value
    assert "holds what was meant" not in panel.after.value and "itself" in panel.after.value
    (tmp_path / "back.bin").write_bytes(made.data)
    panel.back.value = str(tmp_path / "back.bin")
    assert "the chip holds what was meant" in panel.after.value


def test_nothing_is_written_before_two_equal_reads():
    panel = image_reader(intended=SISTER)
    for second, ready in (("", False), (LOOSE, False), (SECOND, True), ("no.bin", False)):
        panel.second.value = second
        assert ("Do not erase or write yet" not in panel.writing.value) == ready
        assert "to be erased first" in panel.writing.value


def test_one_file_given_twice_is_no_second_read(tmp_path):
    data = demo_path(FIRST).read_bytes()
    file, link, hard, copy = (tmp_path / name for name in ("a.bin", "link", "hard", "copy"))
    file.write_bytes(data)
    link.symlink_to(file)
    hard.hardlink_to(file)
    copy.write_bytes(data)
    panel = image_reader(str(file), intended=SISTER)
    for second in (file, tmp_path / "." / "a.bin", link, hard):
        panel.second.value = str(second)
        assert "no second read" in panel.reads.value and "are equal" not in panel.reads.value
        assert "Do not erase" in panel.writing.value and "erased first" not in panel.writing.value
    panel.second.value = str(copy)
    assert "are equal" in panel.reads.value and "erased first" in panel.writing.value
    for role in ("first", "second"):
        give(panel, role, "read.bin", data)
    assert "no second read" in panel.reads.value
    give(panel, "second", "again.bin", data)
    assert "are equal" in panel.reads.value


def test_nothing_is_written_over_what_was_read_equally_wrong(tmp_path):
    stuck = bytes(byte & ~8 for byte in demo_path(FIRST).read_bytes())
    for name in ("one.bin", "two.bin"):
        (tmp_path / name).write_bytes(stuck)
    panel = image_reader(*(str(tmp_path / name) for name in ("one.bin", "two.bin")), SISTER)
    assert "are equal" in panel.reads.value
    assert "Do not erase or write yet" in panel.writing.value
    assert "equally wrong is no copy (stuck bit)" in panel.writing.value


def test_numbers_of_the_list():
    panel = image_reader(intended=SISTER, twin="printer-other-sister.bin")
    count = len(panel._keeps)
    assert count >= 3 and chosen_of(panel._keeps, f"{count}, 1 1") == [
        panel._keeps[0],
        panel._keeps[-1],
    ]
    for wrong in ("0", str(count + 1), "all", "-1", "²"):
        panel.numbers.value = wrong
        panel.make.click()
        assert f"1 to {count}" in panel.told.value and panel.intended.value == SISTER


@pytest.mark.parametrize("role", ["first", "second", "intended", "twin", "back"])
def test_what_is_no_file_is_one_line_at_its_place(role, tmp_path):
    os.mkfifo(tmp_path / "pipe")
    (tmp_path / "empty.bin").write_bytes(b"")
    said = {
        tmp_path: "folder",
        tmp_path / "pipe": "pipe or a device",
        "/dev/zero": "pipe or a device",
        tmp_path / "empty.bin": "empty",
        "nowhere.bin": "cannot be read",
        "a\0b": "cannot be read",
        "~nobody-of-this-name/a": "cannot be read",
        "x" * 5000: "cannot be read",
    }
    panel = image_reader(SECOND if role != "first" else "")
    for typed, why in said.items():
        panel.fields[role].value = str(typed)
        shown = "".join(text.value for text in panel.shown.values())
        assert shown.count("Not done") == 1 and why in shown, typed
        assert panel.fields[role].value == str(typed)
    if role != "first":
        assert "64 KiB" in panel.answer.value  # the others stay


def test_images_of_two_sizes_and_a_capacity_that_is_none(tmp_path):
    (tmp_path / "short.bin").write_bytes(b"short")
    panel = image_reader(intended=str(tmp_path / "short.bin"), chip="8 apples")
    assert "not a size of a memory chip" in panel.answer.value and "64 KiB" in panel.answer.value
    assert "equally long" in panel.writing.value and panel.kept_back.value == ""
    panel.back.value = FIRST
    assert "too long" in panel.after.value
    panel.intended.value = ""
    assert "What should it hold?" in panel.after.value


def test_a_file_that_changed_is_read_again(tmp_path):
    path = tmp_path / "read.bin"
    path.write_bytes(b"\xff" * 512)
    panel = image_reader(str(path))
    assert "blank" in panel.answer.value
    path.write_bytes(bytes(1024))
    panel.chip.value = "1 KiB"
    assert "all zero" in panel.answer.value


def test_names_cannot_put_tags_on_the_page(tmp_path):
    path = tmp_path / "<b>bold<b>.bin"
    path.write_bytes(b"\x12" * 600)
    panel = image_reader(str(path), second=FIRST, intended=str(path), back=FIRST)
    shown = "".join(text.value for text in panel.shown.values())
    assert "&lt;b&gt;bold" in shown and "<b>bold" not in shown


def test_a_place_that_cannot_be_written_loses_nothing():
    panel = image_reader("")
    home().mkdir(parents=True, exist_ok=True)
    (home() / "images").write_text("in the way")
    give(panel, "first", "read.bin", b"data")
    assert "Not done" in panel.told.value and panel.first.value == ""


def test_what_is_not_put_in_is_told():
    panel = image_reader(intended=SISTER)
    panel.numbers.value = "2"
    panel.make.click()
    assert panel.told.value.count("Not put in, printer-sister.bin has its own there") == 3
