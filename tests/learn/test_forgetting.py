"""A person or a group is taken off a computer: each byte of a home before and after."""

import json
import os
import shutil
import time

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.faces.cli import main
from repairlib.learn import DEMO, Learner, current_learner, files, open_exercise, set_learner
from repairlib.learn.carrying import bring, take_along
from repairlib.learn.delivering import deliver, note_given
from repairlib.learn.forgetting import forget_group, forget_learner, learner_meant
from repairlib.learn.group import Group, Member, group_put_away, known_group, make_known
from repairlib.learn.kept_work import KeptWork
from repairlib.learn.learner import known_learners
from repairlib.learn.tries import note_try
from repairlib.record import open_job

pytestmark = pytest.mark.behaviour

LESSON = "00-start-here"
WORDS = {"Zoë Example": "wasp", "Ben Example": "beam", "Cleo O'Neil": "cube"}
GROUP = Group("Tuesday bench", tuple(Member(*pair) for pair in WORDS.items()), (LESSON,))
ZOE, BEN, CLEO = (Learner(name, GROUP.name) for name in WORDS)
GUS = Learner("Gus Alone")


@pytest.fixture(scope="module")
def worked_on(tmp_path_factory):
    """A computer on which three of a group have worked, and one on their own; made once."""
    home = tmp_path_factory.mktemp("worked-on") / "home"
    path = home.parent / "group.json"
    path.write_text(json.dumps({"format": 1, **GROUP.to_dict()}))
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("REPAIRLIB_HOME", str(home))
        make_known(path)
        for learner, partner in ((GUS, ""), (ZOE, ""), (BEN, "Zoë Example"), (CLEO, "")):
            work_as(learner, partner)
    lessons = home / "lessons"
    notebook(lessons / "00.ipynb", "variant of Zoë Example, group", "variant of Ben Example")
    notebook(lessons / ".ipynb_checkpoints" / "00.ipynb", "Cleo O'Neil is answering")
    return home


@pytest.fixture
def used(worked_on, home):
    """A copy of that computer's home."""
    shutil.copytree(worked_on, home)
    return home


def work_as(learner, partner=""):
    set_learner(learner.name, learner.group, partner)
    open_exercise(LESSON).answer(q2="1 s", q8="a")
    KeptWork("07-plan").save({"list": "C1"})
    note_try(LESSON, current_learner()[0], "q2", "1 s", "unsafe", ["stored charge"])
    home = KeptWork("07-plan").path.parents[3]
    open_job(home / "jobs" / learner.folder(), learner.name, "radio", "Hum", "2026-11-29")
    path = open_exercise(LESSON).saved.path
    earlier = path.read_bytes()
    open_exercise(LESSON).answer(q2="2 s")
    later = json.dumps(take_along(current_learner()[0])).encode()
    path.write_bytes(earlier)
    bring(later)  # what was here is kept among what was replaced


def notebook(path, *outputs):
    path.parent.mkdir(parents=True, exist_ok=True)
    cells = [
        {"cell_type": "code", "source": "x", "outputs": [{"text": one}], "execution_count": 1}
        for one in outputs
    ]
    path.write_text(json.dumps({"cells": cells, "metadata": {}}, ensure_ascii=False), "utf-8")


def bytes_in(home):
    """Every file of a home with its bytes, without the locks, which are empty."""
    return {
        path.relative_to(home).as_posix(): path.read_bytes()
        for path in sorted(home.rglob("*"))
        if path.is_file() and not path.name.endswith(".lock")
    }


def naming(home, learner):
    """The files, and folders, in which a name stands: as letters or as JSON writes them."""
    name = learner.name
    written = (name.encode(), json.dumps(name).strip('"').encode())
    found = [path for path, data in bytes_in(home).items() if any(one in data for one in written)]
    return found + [str(one) for one in home.rglob("*") if learner.folder().name in one.name]


def hand_everything_in():
    for learner in known_learners():
        give(learner)


def give(learner):
    """As one who hands in, saves the file and says so."""
    note_given(learner, deliver(learner).handed.data)


def test_one_is_forgotten_and_the_files_of_the_others_are_as_before(used):
    hand_everything_in()
    before = bytes_in(used)
    assert naming(used, ZOE)
    found = forget_learner(ZOE)
    assert (found.answers, found.typed, found.cards, found.never_handed_in) == (2, 1, 1, ())
    after = bytes_in(used)
    assert naming(used, ZOE) == []
    gone = {path for path in before if path not in after}
    assert gone and all(ZOE.folder().as_posix() in path for path in gone)
    changed = {path for path in after if before.get(path) != after[path]}
    of_ben = {path for path in changed if BEN.folder().as_posix() in path}
    assert changed - of_ben == {"learner.json", "group.json", "lessons/00.ipynb"}
    for path in of_ben:  # his partner's name is taken out, and nothing else
        then = json.loads(before[path])
        assert "Zo" in before[path].decode()
        assert without_partner(json.loads(after[path])) == without_partner(then)
    assert all(path.startswith(("answers", "work", "replaced")) for path in of_ben)


def without_partner(value):
    if not isinstance(value, dict):
        return value
    return {k: without_partner(v) for k, v in value.items() if k not in ("partner", "check")}


def test_the_others_go_on_as_before(used):
    hand_everything_in()
    forget_learner(ZOE)
    assert current_learner()[0] == CLEO
    set_learner(BEN.name, BEN.group)
    assert open_exercise(LESSON).saved.read() == {"q2": "2 s", "q8": "a"}
    assert KeptWork("07-plan").read() == {"list": "C1"}
    assert [one.name for one in known_group()[0].members] == ["Ben Example", "Cleo O'Neil"]
    assert {one.name for one in known_learners()} == {BEN.name, CLEO.name, GUS.name}
    (replaced,) = (used / "replaced" / BEN.folder()).glob("*.json")
    bring(replaced.read_bytes())  # its check still fits


def test_whose_turn_it_was_becomes_the_demo_variant_s(used):
    assert forget_learner(CLEO, for_good=True).cards == 1
    assert current_learner()[0] is DEMO and naming(used, CLEO) == []


def test_what_was_never_handed_in_is_kept_until_it_is_for_good(used):
    before = bytes_in(used)
    with pytest.raises(RepairlibError, match="never handed in: lesson 00") as error:
        forget_learner(ZOE)
    assert "--for-good" in error.value.accepted and bytes_in(used) == before
    give(ZOE)
    set_learner(ZOE.name, ZOE.group)
    open_exercise(LESSON).answer(q8="b")
    with pytest.raises(RepairlibError, match="never handed in"):
        forget_learner(ZOE)
    give(ZOE)
    assert forget_learner(ZOE).never_handed_in == ()


def test_what_lies_nowhere_is_not_handed_in(used, tmp_path):
    deliver(ZOE)  # no folder: a file to give by hand, of which nobody has said that it is saved
    with pytest.raises(RepairlibError, match="never handed in: lesson 00"):
        forget_learner(ZOE)
    group = GROUP._replace(hand_in_to=str(tmp_path / "away"))
    files.write(used / "group.json", group.to_dict())
    with pytest.raises(RepairlibError, match="cannot be read or saved"):
        deliver(ZOE)
    with pytest.raises(RepairlibError, match="never handed in: lesson 00"):
        forget_learner(ZOE)
    (tmp_path / "away").mkdir()
    deliver(ZOE)
    assert forget_learner(ZOE).never_handed_in == ()


def test_a_computer_is_cleared_for_the_next_group_and_who_is_of_none_stays(used):
    before = bytes_in(used)
    with pytest.raises(RepairlibError, match=r"not cleared: .*Zoë Example: .*; "):
        forget_group()
    assert bytes_in(used) == before
    hand_everything_in()
    before, begun = bytes_in(used), time.perf_counter()
    group, found = forget_group()
    assert time.perf_counter() - begun < 10
    assert group == GROUP and {one.learner.name for one in found} == set(WORDS)
    after = bytes_in(used)
    for learner in (ZOE, BEN, CLEO):
        assert naming(used, learner) == []
    assert not (used / "group.json").exists() and known_group() == (None, "")
    kept = {path for path in before if GUS.folder().as_posix() in path}
    assert kept and all(after[path] == before[path] for path in kept)
    assert set(after) == kept | {
        "learner.json",
        "lessons/00.ipynb",
        "lessons/.ipynb_checkpoints/00.ipynb",
    }
    assert known_learners() == [GUS] and current_learner()[0] is DEMO


def test_what_was_kept_aside_and_the_group_put_away_go_with_it(used, capsys):
    (used / "group.json").write_text((used / "group.json").read_text() + "}")
    files.write(used / "again.json", GROUP.to_dict())
    make_known(used / "again.json")  # what was damaged is kept aside, with all names
    (used / "again.json").unlink()
    group_put_away("").parent.mkdir()
    files.write(group_put_away(GROUP.name), GROUP.to_dict())
    open_job(used / "jobs" / GUS.folder(), "Zoë Example", "radio", "Hum", "2026-11-30")
    assert len(list(used.glob("group.kept-*.json"))) == 1
    status, said = run(capsys, "clear", "--for-good")
    assert status == 0
    (line,) = (one for one in said.splitlines() if one.startswith("Named in a file"))
    assert "2026-11-30-hum.jsonl" in line
    assert not list(used.glob("group.*")) and not list((used / "groups").iterdir())


def test_who_typed_the_group_but_is_no_member_goes_with_it(used):
    set_learner("Dan Typed", "tuesday  BENCH")
    open_exercise(LESSON).answer(q8="a")
    forget_group(for_good=True)
    assert naming(used, Learner("Dan Typed", "Tuesday bench")) == []


def test_without_a_group_there_is_nothing_to_clear():
    with pytest.raises(RepairlibError, match="no group is known here"):
        forget_group()


@pytest.mark.parametrize("typed", ["wasp", "ZOË example", "Zoë Example, group Tuesday bench"])
def test_who_is_meant(used, typed):
    assert learner_meant(typed) == ZOE


def test_nobody_or_two_of_one_name_are_not_guessed_at(used):
    with pytest.raises(RepairlibError, match="no learner here has this name") as error:
        learner_meant("Zoe")
    assert "Gus Alone" in error.value.accepted
    set_learner("Gus Alone", "Thursday bench")
    with pytest.raises(RepairlibError, match="more than one learner") as error:
        learner_meant("Gus Alone")
    assert error.value.accepted == "Gus Alone, group Thursday bench, Gus Alone"
    assert learner_meant("Gus Alone, group Thursday bench").group == "Thursday bench"


@pytest.mark.skipif(os.name != "posix", reason="links of POSIX systems")
def test_a_link_is_removed_and_what_it_leads_to_stays(used, tmp_path):
    hand_everything_in()
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    (elsewhere / "kept.txt").write_text("kept")
    folder = used / "work" / ZOE.folder()
    folder.rename(used / "away")
    folder.symlink_to(elsewhere)
    forget_learner(ZOE)
    assert not folder.is_symlink() and (elsewhere / "kept.txt").exists()


# As a command


def run(capsys, *words):
    status = main(["class", *words])
    out = capsys.readouterr()
    return status, out.out + out.err


def test_the_command_says_what_went_and_refuses_in_one_line(used, capsys):
    status, said = run(capsys, "forget", "wasp")
    assert status == 2 and "never handed in: lesson 00" in said and len(said.splitlines()) == 1
    status, said = run(capsys, "forget", "wasp", "--for-good")
    assert status == 0
    assert "Zoë Example: 2 answers, 1 thing typed into panels, 1 job card; never handed in" in said
    status, said = run(capsys, "forget", "Gus", "Alone", "--for-good", "--json")
    assert json.loads(said)["answers"] == 2
    status, said = run(capsys, "clear")
    assert status == 2 and "Ben Example" in said
    status, said = run(capsys, "clear", "--for-good")
    assert "Cleared: the group Tuesday bench. 2 people had something here." in said
    assert run(capsys, "forget")[0] == run(capsys, "clear", "everything")[0] == 2
    assert not bytes_in(used / "answers") and naming(used, CLEO) == []


def test_another_s_card_that_names_them_is_told_and_left(used, capsys):
    open_job(used / "jobs" / BEN.folder(), "Zoë Example", "radio", "Hum", "2026-11-30")
    _, said = run(capsys, "forget", "wasp", "--for-good")
    assert "Named in a file of somebody else still: " in said and "2026-11-30-hum.jsonl" in said
