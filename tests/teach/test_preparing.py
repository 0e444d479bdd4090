"""A group is made in one command, and made longer without changing what is there."""

import json
import stat

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.faces.class_commands import run_class
from repairlib.faces.cli import main
from repairlib.learn.exercise import LESSONS, ONE_EVENING
from repairlib.learn.group import read_group
from repairlib.teach.instructor import keep_release_word, release_words, sign, signed_for
from repairlib.teach.names import read_names
from repairlib.teach.preparing import lessons_named, prepare
from repairlib.teach.words import give_words

pytestmark = pytest.mark.behaviour

NAMES = "Ada Example\nBen Example\nCleo Example\n"


@pytest.fixture
def folder(tmp_path):
    return tmp_path / "tuesday-bench"


def made(folder, text=NAMES, **how):
    return prepare(folder, read_names(text), **how)


def test_a_folder_has_the_group_and_what_stays_with_the_instructor(folder):
    prepared = made(folder)
    group = read_group(folder / "group.json")
    assert group == prepared.group and group.name == "tuesday-bench"
    assert [one.name for one in group.members] == NAMES.split("\n")[:-1]
    assert len({one.word for one in group.members}) == 3 and group.lessons == ONE_EVENING
    assert json.loads((folder / "instructor.json").read_text())["group"] == "tuesday-bench"
    assert mode(folder) == 0o700 and mode(folder / "instructor.json") == 0o600


def mode(path):
    return stat.S_IMODE(path.stat().st_mode)


def test_the_same_list_gives_the_same_group_in_any_order(tmp_path):
    one = made(tmp_path / "a", called="Tuesday bench").group
    other = made(tmp_path / "b", "Cleo Example\nAda Example\nBen Example", called="Tuesday bench")
    assert {m.name: m.word for m in one.members} == {m.name: m.word for m in other.group.members}


def test_a_longer_list_adds_and_all_else_stays(folder):
    first = made(folder).group
    keep_release_word(folder, "03-capacitor-markings", "kept")
    again = made(folder, NAMES + "Dan Example\n", lessons=lessons_named("05"))
    assert again.new == ("Dan Example",) and not again.gone
    assert again.group.members[:3] == first.members
    assert set(again.group.lessons) == {*ONE_EVENING, "05-measure-and-judge"}
    assert list(again.group.lessons) == sorted(again.group.lessons)
    assert release_words(folder) == {"03-capacitor-markings": "kept"}


def test_who_is_no_longer_in_the_list_is_named_and_stays_unless_left_out(folder):
    made(folder)
    shorter = made(folder, "ada  EXAMPLE\nBen Example")
    assert shorter.gone == ("Cleo Example",) and len(shorter.group.members) == 3
    shorter = made(folder, "Ada Example\nBen Example", leave_out=True)
    assert shorter.gone == ("Cleo Example",) and len(shorter.group.members) == 2


def test_a_word_is_never_given_again_and_who_is_left_out_is_no_longer_signed_for(folder):
    """The permit of one who left was printed for a newcomer who was given the same word."""
    first = made(folder).group
    cleo = first.member("Cleo Example")
    sign(folder, first, cleo.word, "Ida Muster", "2026-11-29")
    assert set(signed_for(folder, first)) == {cleo.word}
    made(folder, "Ada Example\nBen Example", leave_out=True)
    assert cleo.word not in (folder / "group.json").read_text()
    assert cleo.name not in (folder / "instructor.json").read_text()
    back = made(folder).group
    assert back.member("Cleo Example").word != cleo.word and not signed_for(folder, back)


def test_a_forgotten_member_s_word_stays_used_without_their_name(folder):
    first = made(folder).group
    cleo = first.member("Cleo Example")
    sign(folder, first, cleo.word, "Ida Muster", "2026-11-29")
    run_class(["forget", "Cleo Example", "--from", str(folder)], False)
    assert "Cleo" not in (folder / "instructor.json").read_text()
    back = made(folder, NAMES).group
    assert back.member("Cleo Example").word != cleo.word and not signed_for(folder, back)


def test_a_signature_needs_word_and_name(folder):
    """Also where the file of the group was written by hand."""
    group = made(folder).group
    sign(folder, group, group.members[0].word, "Ida Muster", "2026-11-29")
    other = group.members[0]._replace(name="Dan Example")
    assert not signed_for(folder, group._replace(members=(other, *group.members[1:])))


@pytest.mark.parametrize("other", ["Wasp Example", "Ann-Wasp Example", "d'Wasp", "WASP"])
def test_a_word_is_no_name_of_anybody_in_the_group(folder, other):
    """Else `class sign FOLDER wasp` signs for one of the two, and who knows for whom."""
    usual = give_words("Tuesday bench", ["Ada Example"])
    assert usual == {"Ada Example": "wasp"}
    listed = f"Ada Example\n{other}"
    together = made(folder, listed, called="Tuesday bench").group
    assert "wasp" not in {one.word for one in together.members}
    later = folder.with_name("later")
    made(later, other, called="Tuesday bench")
    assert "wasp" not in {one.word for one in made(later, listed).group.members}


def test_nobody_joins_by_a_name_that_is_a_word_in_the_group(folder):
    made(folder, "Ada Example", called="Tuesday bench")
    with pytest.raises(RepairlibError, match="this is the word of Ada Example"):
        made(folder, "Ada Example\nWasp")
    assert len(made(folder, "Ada Example\nWasp Sample").group.members) == 2


def test_what_is_handed_in_has_a_folder_from_the_beginning(folder):
    made(folder)
    assert (folder / "handed-in").is_dir()


def test_another_evening_without_lessons_named_keeps_those_there_are(folder):
    made(folder, lessons=lessons_named("05"))
    assert made(folder).group.lessons == ("05-measure-and-judge",)


def test_own_questions_held_lessons_and_the_rest_of_the_file_stay(folder):
    made(folder)
    path = folder / "group.json"
    content = json.loads(path.read_text())
    content |= {"own": {"fuses.txt": "text"}, "held": {"05": "ab"}, "hand_in_to": "/srv/in"}
    content["lessons"].append("own-fuses")
    path.write_text(json.dumps(content))
    group = made(folder, NAMES + "Dan").group
    assert group.own == {"fuses.txt": "text"} and group.held == {"05": "ab"}
    assert group.hand_in_to == "/srv/in" and group.lessons[-1] == "own-fuses"


def test_another_group_or_a_spoilt_file_is_never_overwritten(folder):
    made(folder, called="Tuesday bench")
    with pytest.raises(RepairlibError, match="this folder has the group Tuesday bench"):
        made(folder, called="Thursday bench")
    (folder / "group.json").write_text("{")
    with pytest.raises(RepairlibError, match="cut short"):
        made(folder)
    assert (folder / "group.json").read_text() == "{"


@pytest.mark.parametrize(
    ("text", "lessons"),
    [
        ("all", LESSONS),
        ("one-evening", ONE_EVENING),
        ("03,0", ("00-start-here", "03-capacitor-markings")),
        ("04-polarity", ("04-polarity",)),
    ],
)
def test_lessons_are_named_in_short(text, lessons):
    assert lessons_named(text) == lessons


@pytest.mark.parametrize("text", ["", ",", "99", "x", "00;03"])
def test_a_lesson_that_is_none_is_told(text):
    with pytest.raises(RepairlibError, match="no lesson has this number"):
        lessons_named(text)


# As a command


def run(capsys, *words, paper="--no-paper"):
    status = main(["class", "new", *map(str, words), *filter(None, [paper])])
    out = capsys.readouterr()
    return status, out.out + out.err


def test_the_command_prints_words_what_was_told_and_what_is_next(capsys, tmp_path, folder):
    names = tmp_path / "names.csv"
    names.write_text("Name;E-mail\nAda Example (late);a@bench.example\nBen Example;\n")
    status, said = run(capsys, names, "--out", folder, "--called", "Tuesday bench")
    assert status == 0
    assert "Group Tuesday bench: 2 members, 2 new." in said and "Ada Example  wasp\n" in said
    assert "line 2: '(late)': left out beside the name" in said
    assert len(said.strip().splitlines()[-3:]) == 3 and "1. Copy" in said.splitlines()[-3]
    names.write_text("Ada Exampel\nBen Example\n")
    _, said = run(capsys, names, "--out", folder)
    assert "Ada Example is not in this list and stays" in said
    assert "Is it Ada Exampel, written anew?" in said and "(new)" in said


def test_the_command_prints_the_paper_too(capsys, tmp_path, folder):
    names = tmp_path / "names.txt"
    names.write_text("Ada Example")
    status, said = run(capsys, names, "--out", folder, "--lessons", "00", paper="")
    assert status == 0 and f"Open {folder / 'paper' / 'index.html'}" in said
    assert "Ada Example" in (folder / "paper" / "questions" / "00-start-here.html").read_text()
    assert mode(folder / "paper") == mode(folder / "paper" / "instructor") == 0o700


def test_the_command_answers_in_json_and_refuses_in_one_line(capsys, tmp_path, folder):
    names = tmp_path / "names.txt"
    names.write_text(NAMES)
    _, said = run(capsys, names, "--out", folder, "--json")
    assert json.loads(said)["members"][0]["name"] == "Ada Example"
    for words in ([names], ["--out", folder], [tmp_path / "none", "--out", folder]):
        status, said = run(capsys, *words)
        assert status == 2 and len(said.splitlines()) == 1
