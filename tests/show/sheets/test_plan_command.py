"""`python -m repairlib plan`, as a person types it: answers, files, and one line for bad input."""

import errno
import json
import os
import subprocess
import sys

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.tables import demo_path
from repairlib.core.typed import textfile
from repairlib.recap import plan
from repairlib.show.sheets.plan_files import report_plan

posix = pytest.mark.skipif(os.name != "posix", reason="names, links and pipes of POSIX systems")

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
    assert told["catalogue"] == {
        "lines": 5155,
        "parts": 2000,
        "currency": "tokens",
        "unreadable": [],
    }
    assert told["order"]["boards"] == 2
    row = next(row for row in told["parts"] if row["reference"] == "C1")
    assert row["must go or may stay"].startswith("must go: ESR")


def test_catalogue_lines_that_cannot_be_read_are_told(tmp_path):
    good = CATALOGUE.read_text("utf-8").splitlines()
    path = tmp_path / "catalogue.csv"
    path.write_text("\n".join([*good[:3], "nonsense", *["x,y"] * 30, ""]), "utf-8")
    done = run(PARTS, "--catalogue", path)
    assert done.returncode == 0
    assert "line 4: 1 columns where the headings are 19: nonsense" in done.stdout
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


def test_csv_and_sheet_are_written_both_or_neither(tmp_path, monkeypatch):
    synced, real = [], os.fsync

    def full_at_the_second(handle):
        synced.append(handle)
        if len(synced) == 2:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        real(handle)

    monkeypatch.setattr(os, "fsync", full_at_the_second)
    with pytest.raises(RepairlibError, match="nothing was changed"):
        report_plan(PARTS, out=tmp_path)
    assert os.listdir(tmp_path) == []


@posix
def test_a_sheet_in_the_way_gives_both_the_next_number(tmp_path):
    (tmp_path / "keyboard-parts-bench-sheet.html").symlink_to(tmp_path / "nowhere")
    report = report_plan(PARTS, out=tmp_path)
    assert [saved.path.name for saved in report.saved] == [
        "keyboard-parts-2-plan.csv",
        "keyboard-parts-2-bench-sheet.html",
    ]


def test_several_at_once_write_into_one_folder(tmp_path):
    command = [sys.executable, "-m", "repairlib", "plan", str(PARTS), "--out", str(tmp_path)]
    running = [subprocess.Popen(command, stdout=subprocess.DEVNULL) for _ in range(5)]
    assert [process.wait(timeout=120) for process in running] == [0] * 5
    tables = {path.name.removesuffix("-plan.csv") for path in tmp_path.glob("*.csv")}
    sheets = {path.name.removesuffix("-bench-sheet.html") for path in tmp_path.glob("*.html")}
    assert tables == sheets
    assert len(tables) == 5
    assert not list(tmp_path.glob(".saving-*"))


@pytest.mark.parametrize("name", ["..csv", "...csv", ".hidden.csv", "-.csv"])
def test_odd_names_stay_inside_the_folder(tmp_path, name):
    (tmp_path / "out").mkdir()
    (tmp_path / name).write_text("C1,10/16,elect\n")
    report = report_plan(tmp_path / name, out=tmp_path / "out")
    assert sorted(os.listdir(tmp_path)) == sorted([name, "out"])
    assert {saved.path.name for saved in report.saved} == set(os.listdir(tmp_path / "out"))
    assert not any(one.startswith(".") for one in os.listdir(tmp_path / "out"))


@pytest.mark.parametrize("letter", ["x", "é", "電"])
def test_a_name_that_leaves_no_room_for_an_ending_is_one_line(tmp_path, letter):
    name = letter * (248 // len(letter.encode())) + ".csv"
    (tmp_path / name).write_text("C1,10/16,elect\n")
    (tmp_path / "out").mkdir()
    done = run(tmp_path / name, "--out", tmp_path / "out")
    assert_one_line(done, "a list with a shorter name")
    assert os.listdir(tmp_path / "out") == []


HIDDEN = "\x9b\u202e\u2066\x85\u200b"


@posix
def test_what_cannot_be_seen_is_written_out_on_every_face(tmp_path):
    parts, board = tmp_path / "\x1b[31m\u202eparts.csv", tmp_path / "board.csv"
    typed = f"C1,10/16,elect,16V {HIDDEN}\n"
    parts.write_text(typed + "C9 rubbish \u202e\n", "utf-8")
    board.write_text("reference,x,y,form,angle,height,room,plus\n", "utf-8")
    (tmp_path / "out").mkdir()
    told = run(parts, "--out", tmp_path / "out").stdout
    faces = [told, run(parts, "--json").stdout]
    faces += [path.read_text("utf-8-sig") for path in (tmp_path / "out").iterdir()]
    for face in faces:
        assert not set(face) & set("\x1b" + HIDDEN)
        assert "\\u202e" in face
    assert json.loads(faces[1])["name"] == parts.name


@posix
def test_pipes_and_devices_are_refused_and_never_waited_for(tmp_path):
    pipe, zeros = tmp_path / "pipe", tmp_path / "zeros.csv"
    os.mkfifo(pipe)
    zeros.symlink_to("/dev/zero")
    for odd in (pipe, zeros, "/dev/null"):
        assert_one_line(run(odd), "a pipe or a device")
    for option in ("--board", "--measured", "--catalogue"):
        assert_one_line(run(PARTS, option, pipe), "a pipe or a device")


def test_no_more_than_the_largest_file_is_read(tmp_path, monkeypatch):
    """Whatever its size is said to be: some files grow, and some say nothing."""
    monkeypatch.setattr(textfile, "LARGEST", 1000)
    asked = []
    real = open

    class Growing:
        def __init__(self, path, mode):
            with real(path, "ab") as more:
                more.write(b"C1,10/16,elect\n" * 100)
            self.file = real(path, mode)

        def __enter__(self):
            return self

        def __exit__(self, *_):
            self.file.close()

        def read(self, most):
            asked.append(most)
            return self.file.read(most)

    monkeypatch.setattr("builtins.open", Growing)
    (path := tmp_path / "list.csv").touch()
    with pytest.raises(RepairlibError, match="larger than"):
        textfile.read_text(path)
    assert asked == [1001]
    with pytest.raises(RepairlibError, match="larger than"):
        textfile.read_text(path)
    assert asked == [1001]  # its size said so, and it was not opened again


# Small files, long work: counted in parts and characters, not in seconds.


@pytest.mark.parametrize(
    "line",
    [
        "C1-C500 10/16 elect\n",
        "C1-C500 " * 240 + "10/16 elect\n",
        "C1 to C400, C1 thru C499; C2-C300 47/25 elect\n",
        "C1 1u 16V elect\nC1 2u 16V elect\n",
        "C7 " * 600 + "10/16\n",
    ],
)
def test_a_small_list_makes_no_large_plan(line, tmp_path):
    text = "C2 10/16\n" + (line * 4000)[:32_000].rpartition("\n")[0]
    (path := tmp_path / "list.csv").write_text(text + "\n")
    report = report_plan(path, out=tmp_path)
    assert len(report.plan.list.references) <= 10_000 + len(report.plan.list.lines)
    written = len(str(report)) + sum(saved.path.stat().st_size for saved in report.saved)
    assert written < 400 * 32_000


def test_parts_beyond_what_ranges_may_name_are_told_and_none_is_lost():
    lines = [f"C{n * 500 + 1}-C{n * 500 + 500} 10/16 elect" for n in range(30)]
    made = plan("\n".join([*lines, "C20000 10/16 elect"]) + "\n")
    assert len(made.items) + len(made.held) == 20 * 500 + 1
    assert len(made.unreadable) == 10
    assert "ranges named 10000 parts before" in made.unreadable[0].why
