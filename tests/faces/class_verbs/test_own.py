"""`class check` and `class add`, as an instructor types them."""

import json

import pytest

from repairlib.faces.cli import main
from repairlib.learn import files
from repairlib.learn.group import Group, Member, read_group
from tests.learn.own.typed import EXAMPLE, TABLE

BAD = "Fuses\n\nQuestion\nWhy?\nAnwser: 5\nHnit: think\n"


@pytest.fixture
def folder(tmp_path):
    """The folder of a group."""
    made = Group("Tuesday bench", (Member("Ada Example", "kite"),), ("00-start-here",))
    (tmp_path / "tuesday").mkdir()
    files.write(tmp_path / "tuesday" / "group.json", made.to_dict())
    return tmp_path / "tuesday"


@pytest.fixture
def typed(tmp_path):
    """Call it to save a file of own questions."""

    def saved(text: str, name: str = "fuses.txt") -> str:
        (tmp_path / name).write_bytes(text.encode())
        return str(tmp_path / name)

    return saved


@pytest.mark.parametrize("option, text", [("--example", EXAMPLE), ("--example-table", TABLE)])
def test_the_starter_file_is_printed_and_can_be_read_again(option, text, typed, capsys):
    assert main(["class", "check", option]) == 0
    printed = capsys.readouterr().out
    assert printed.strip() == text.strip()
    name = "my.txt" if option == "--example" else "my.csv"
    assert main(["class", "check", typed(printed, name)]) == 0
    assert "own-my: A fuse has blown" in capsys.readouterr().out


def test_a_starter_file_saved_by_a_shell_that_writes_utf_16_is_read(typed, tmp_path, capsys):
    (tmp_path / "my.txt").write_bytes(EXAMPLE.replace("\n", "\r\n").encode("utf-16"))
    assert main(["class", "check", str(tmp_path / "my.txt")]) == 0
    assert "4 questions, 10 points" in capsys.readouterr().out


def test_every_error_is_told_on_a_line_of_its_own_and_the_last_sums_up(typed, capsys):
    assert main(["class", "check", typed(BAD)]) == 2
    out, told = capsys.readouterr()
    assert not out
    assert [line.partition(":")[0] for line in told.splitlines()] == [
        "line 5",
        "line 6",
        "'fuses.txt'",
    ]


def test_errors_as_json(typed, capsys):
    assert main(["class", "check", typed(BAD), "--json"]) == 2
    assert len(json.loads(capsys.readouterr().out)["each"]) == 2


def test_what_was_understood_as_json(typed, capsys):
    assert main(["class", "check", typed(EXAMPLE), "--json"]) == 0
    (summary,) = json.loads(capsys.readouterr().out)
    assert (summary["lesson"], summary["questions"], summary["points"]) == ("own-fuses", 4, 10)


@pytest.mark.parametrize("name", ["fuses.docx", "fuses", "предохранители.txt", "....txt"])
def test_a_file_that_gives_no_lesson_its_name_is_one_line(name, typed, capsys):
    assert main(["class", "check", typed(EXAMPLE, name)]) == 2
    assert len(capsys.readouterr().err.splitlines()) == 1


def test_a_file_is_put_into_the_group_as_typed(folder, typed, capsys):
    assert main(["class", "add", str(folder), typed(EXAMPLE)]) == 0
    assert "own-fuses (A fuse has blown, 4 questions) was added." in capsys.readouterr().out
    group = read_group(folder / "group.json")
    assert (group.own, group.lessons) == ({"fuses.txt": EXAMPLE}, ("00-start-here", "own-fuses"))
    assert group.members == (Member("Ada Example", "kite", {}),)


def test_a_file_of_the_same_name_replaces_its_old_text_alone(folder, typed, capsys):
    main(["class", "add", str(folder), typed(EXAMPLE)])
    assert main(["class", "add", str(folder), typed("Two\nQuestion\nWhy?\nAnswer: 5")]) == 0
    assert "was replaced." in capsys.readouterr().out
    group = read_group(folder / "group.json")
    assert len(group.own) == 1
    assert group.lessons == ("00-start-here", "own-fuses")


def test_a_group_that_takes_all_lessons_goes_on_taking_all(folder, typed):
    files.write(folder / "group.json", Group("Tuesday bench").to_dict())
    assert main(["class", "add", str(folder), typed(EXAMPLE)]) == 0
    assert read_group(folder / "group.json").lessons == ()


def test_several_files_go_in_all_or_none(folder, typed, capsys):
    good, bad = typed(EXAMPLE), typed(BAD, "bad.txt")
    assert main(["class", "add", str(folder), good, bad]) == 2
    assert not read_group(folder / "group.json").own
    assert main(["class", "add", str(folder), good, typed(TABLE, "table.csv")]) == 0
    assert read_group(folder / "group.json").lessons[1:] == ("own-fuses", "own-table")


def test_two_files_of_one_lesson_are_refused(folder, typed, capsys):
    main(["class", "add", str(folder), typed(EXAMPLE)])
    assert main(["class", "add", str(folder), typed(TABLE, "Fuses.csv")]) == 2
    assert "another name for the file" in capsys.readouterr().err


@pytest.mark.parametrize("words", [[], ["folder"]])
def test_what_is_missing_is_one_line(words, capsys):
    assert main(["class", "add", *words]) == 2
    assert "class add FOLDER OWN.txt" in capsys.readouterr().err


def test_a_folder_without_a_group_is_one_line(tmp_path, typed, capsys):
    assert main(["class", "add", str(tmp_path / "none"), typed(EXAMPLE)]) == 2
    assert "group.json" in capsys.readouterr().err
    assert not (tmp_path / "none").exists()
