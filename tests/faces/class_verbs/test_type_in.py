"""Paper typed in, collected, looked at, and marked anew: the commands one after the other."""

import csv
import io
import json

import pytest

from repairlib.faces.cli import main
from repairlib.learn import files
from repairlib.learn.exercise import questions_of
from repairlib.learn.learner import member_of
from repairlib.learn.question import LETTERS
from tests.teach.rooms import group_of

START = "00-start-here"
GROUP = group_of(2, (START,))
KITE, MOSS = GROUP.members


@pytest.fixture
def folder(tmp_path):
    files.write(tmp_path / "group.json", GROUP.to_dict())
    return tmp_path


def run(capsys, *words):
    status = main(["class", *map(str, words)])
    told = capsys.readouterr()
    return status, told.out + told.err


def lines(folder, *typed):
    path = folder / "lines.txt"
    path.write_text("\n".join(typed), encoding="utf-8")
    return path


def letter(member, name, right=True):
    """The letter of the right option, or of a wrong one, on that member's own sheet."""
    asked = {one.id: one for one in questions_of(START, member_of(GROUP, member))}[name]
    options = [one for one in asked.options if (one == asked.answer) == right]
    return LETTERS[list(asked.options).index(options[0])]


def rows(folder):
    text = (folder / "marks" / "marks.csv").read_text(encoding="utf-8-sig")
    return {(one["word"], one["question"]): one for one in csv.DictReader(io.StringIO(text))}


def test_typed_in_and_collected(capsys, folder):
    first, third = letter(KITE, "q1"), letter(KITE, "q3", right=False)
    path = lines(folder, f"{KITE.word} 0: {first} | 12 q | {third} |||||", "kyte 0: a")
    status, told = run(capsys, "type-in", folder, path)
    assert status == 0
    assert "1 sheet of 1 member taken" in told and "line 1, q2: kept as typed" in told
    assert "line 2: not taken: 'kyte'" in told and "from-paper-" in told
    status, told = run(capsys, "collect", folder)
    assert status == 0 and "1 counted" in told and f"Nothing from: {MOSS.name}" in told
    assert "room.html" in told
    found = rows(folder)
    assert found[KITE.word, "q1"]["state now"] == "right" == found[KITE.word, "q1"]["first try"]
    assert found[KITE.word, "q2"]["state now"] == "cannot read"
    assert found[KITE.word, "q3"]["points now"] == "0"
    assert found[MOSS.word, "q1"]["state now"] == "unanswered"
    accounts = json.loads((folder / "marks" / "files.json").read_text())
    assert [one["outcome"] for one in accounts["files"]] == ["counted"]


def test_what_was_typed_later_counts(capsys, folder):
    for right in (False, True):
        typed = f"{KITE.word} 0: {letter(KITE, 'q1', right)}|||||||"
        run(capsys, "type-in", folder, lines(folder, typed))
    _, told = run(capsys, "collect", folder)
    assert "1 older" in told and rows(folder)[KITE.word, "q1"]["state now"] == "right"


def test_a_corrected_key_is_marked_anew_when_asked_and_stays_so(capsys, folder):
    run(capsys, "type-in", folder, lines(folder, f"{KITE.word} 0: {letter(KITE, 'q1')}|||||||"))
    (handed_in,) = (folder / "handed-in").iterdir()
    _as_of_another_question(handed_in)
    _, told = run(capsys, "collect", folder)
    assert rows(folder)[KITE.word, "q1"]["state now"] == "changed"
    _, told = run(capsys, "collect", folder, "--anew", "00:q1")
    assert "1 mark moved" in told
    assert f"{KITE.name}, {START} q1: not counted → 1 of 1, marked against today's key" in told
    _, told = run(capsys, "collect", folder)
    assert "moved" not in told and rows(folder)[KITE.word, "q1"]["state now"] == "right"


def _as_of_another_question(path):
    """Let the file say that another question was asked then."""
    from repairlib.learn.hand_in import file_of, read_hand_in

    content = read_hand_in(path.read_bytes())
    content.pop("changed")
    content["lessons"][START]["asked"]["q1"] = {"fingerprint": "0" * 12, "version": "0.0.1"}
    path.write_bytes(file_of(content))


@pytest.mark.parametrize(
    "anew, said",
    [
        ("q1", "does not name a question"),
        ("0:q99", "no question of this lesson"),
        ("77:q1", "no le"),
    ],
)
def test_what_cannot_be_marked_anew(capsys, folder, anew, said):
    status, told = run(capsys, "collect", folder, "--anew", anew)
    assert status == 2 and said in told and len(told.splitlines()) == 1


@pytest.mark.parametrize("words", [(), ("only",), ("a", "b", "c")])
def test_a_folder_and_a_text_are_due(capsys, words):
    status, told = run(capsys, "type-in", *words)
    assert status == 2 and "FOLDER LINES.txt" in told


def test_where_nothing_was_taken_it_is_an_error_with_all_lines(capsys, folder):
    status, told = run(capsys, "type-in", folder, lines(folder, "kyte 0: a", "moss"))
    assert status == 2 and "line 1" in told and "line 2" in told and len(told.splitlines()) == 1


def test_as_json(capsys, folder):
    path = lines(folder, f"{KITE.word} 0: {letter(KITE, 'q1')}|||||||")
    _, told = run(capsys, "type-in", folder, path, "--json")
    assert json.loads(told)["sheets"][0]["lesson"] == START
    _, told = run(capsys, "collect", folder, "--json")
    assert json.loads(told)["moved"] == []
