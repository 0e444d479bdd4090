"""`python -m repairlib plan`, as a person types it: answers, files, and one line for bad input."""

import json
import os
import subprocess
import sys

import pytest

from repairlib.core.tables import demo_path

PARTS = demo_path("keyboard-parts.csv")
BOARD = demo_path("keyboard-board.csv")
MEASURED = demo_path("keyboard-measured.csv")
CATALOGUE = demo_path("parts-catalogue.csv")


def run(*words, cwd=None):
    command = [sys.executable, "-m", "repairlib", "plan", *map(str, words)]
    return subprocess.run(command, capture_output=True, text=True, encoding="utf-8", cwd=cwd)


def test_plan_as_text():
    done = run(PARTS, "--board", BOARD)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith("keyboard-parts.csv: 23 to replace, 4 to judge, 12 stay, 1 on")
    assert "CAUTION: A capacitor keeps its charge after the plug is out." in done.stdout
    assert "[ ] C26   4.7\xa0µF 50\xa0V 105 °C radial bipolar aluminium, no plus" in done.stdout


def test_plan_as_json():
    done = run(PARTS, "--json")
    told = json.loads(done.stdout)
    assert told["counts"]["replace"] == 23
    assert told["parts"][0]["reference"]
    assert len(told["parts"]) == 40


def test_measured_values_catalogue_and_boards():
    options = ("--measured", MEASURED, "--catalogue", CATALOGUE, "--boards", "12")
    done = run(PARTS, "--board", BOARD, *options)
    assert (done.returncode, done.stderr) == (0, "")
    assert "17 to replace, 7 may stay as measured, 3 to judge" in done.stdout
    for title in ("Measured, must go:", "Measured, may stay:", "Measured, cannot tell:"):
        assert title in done.stdout
    assert "Measured, not in the list:\n  C48" in done.stdout
    assert "for 12 boards, spares among them" in done.stdout
    assert "One spare for each ten of a kind" in done.stdout


def test_measured_and_order_as_json():
    options = ("--measured", MEASURED, "--catalogue", CATALOGUE, "--boards", "2", "--json")
    told = json.loads(run(PARTS, *options).stdout)
    assert told["measured"]["not_in_list"] == ["C48"]
    assert told["catalogue"] == {"lines": 2001, "parts": 2000, "unreadable": []}
    assert told["order"]["boards"] == 2
    row = next(row for row in told["parts"] if row["reference"] == "C1")
    assert row["must go or may stay"].startswith("must go: ESR")


def test_catalogue_lines_that_cannot_be_read_are_told(tmp_path):
    good = CATALOGUE.read_text("utf-8").splitlines()
    path = tmp_path / "catalogue.csv"
    path.write_text("\n".join([*good[:3], "nonsense", *["x,y"] * 30, ""]), "utf-8")
    done = run(PARTS, "--catalogue", path)
    assert done.returncode == 0
    assert "line 4: 1 columns where the headings are 17: nonsense" in done.stdout
    assert "and 11 more lines: --json lists them all" in done.stdout


@pytest.mark.parametrize(
    ("options", "wrong"),
    [
        (("--boards", "0"), "not a number of boards"),
        (("--boards", "many"), "not a whole number"),
        (("--catalogue", PARTS), "no column part"),
        (("--catalogue", "none.csv"), "No such file"),
        (("--measured", BOARD.parent), "this is a folder"),
        (("--measured", CATALOGUE), "holds a reading of a part"),
        (("--measured",), "nothing stands behind it"),
        (("--meassured", MEASURED), "not an option"),
    ],
)
def test_bad_options(options, wrong):
    assert_one_line(run(PARTS, *options), wrong)


def test_files_get_a_number_instead_of_overwriting(tmp_path):
    for _ in range(2):
        assert run(PARTS, "--out", tmp_path).returncode == 0
    assert sorted(os.listdir(tmp_path)) == [
        "keyboard-parts-2-bench-sheet.html",
        "keyboard-parts-2-plan.csv",
        "keyboard-parts-bench-sheet.html",
        "keyboard-parts-plan.csv",
    ]


def assert_one_line(done, wrong):
    assert done.returncode == 2
    assert done.stdout == ""
    assert done.stderr.count("\n") == 1
    assert "Traceback" not in done.stderr
    assert wrong in done.stderr


@pytest.mark.parametrize(
    ("data", "wrong"),
    [
        (b"", "empty"),
        (b"C1,10/16\0", "NUL byte"),
        (b"C1,10\x81F\n", "no encoding"),
        (b"C1" + b",x" * 199 + b"\n", "200 columns"),
        (b"Ref,Value,Type\nC1,10/16,el\nC2,1", "cut off"),
        (b"hello\nworld\n", "no line of its 2 begins with a reference"),
        (b"\xf0\x9f\x98\x80\n", "begins with a reference"),
    ],
)
def test_bad_lists(tmp_path, data, wrong):
    (tmp_path / "list.csv").write_bytes(data)
    assert_one_line(run(tmp_path / "list.csv"), wrong)


def test_folder_given_as_file(tmp_path):
    assert_one_line(run(tmp_path), "this is a folder")


def test_no_such_file(tmp_path):
    assert_one_line(run(tmp_path / "none.csv"), "No such file")


def test_output_folder_in_which_nothing_can_be_written():
    """/proc refuses new files even to the superuser."""
    if not os.path.isdir("/proc/self"):
        pytest.skip("no /proc on this machine")
    assert_one_line(run(PARTS, "--out", "/proc/self"), "cannot be written")


def test_read_only_output_folder(tmp_path):
    if os.access("/", os.W_OK):
        pytest.skip("the superuser may write anywhere")
    tmp_path.chmod(0o500)
    assert_one_line(run(PARTS, "--out", tmp_path), "cannot be written")
    tmp_path.chmod(0o700)
    assert os.listdir(tmp_path) == []


def test_output_that_is_a_file(tmp_path):
    (tmp_path / "out").write_text("mine")
    assert_one_line(run(PARTS, "--out", tmp_path / "out"), "no such folder")
    assert (tmp_path / "out").read_text() == "mine"
