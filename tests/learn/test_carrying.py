"""One file carries all work to another computer: the later of each wins, nothing goes unsaid."""

import json
from concurrent.futures import ThreadPoolExecutor

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.learn import DEMO, Learner, current_learner, open_exercise, set_learner
from repairlib.learn.carrying import ANSWERS, WORK, bring, how_many, join, take_along
from repairlib.learn.kept_work import KeptWork
from repairlib.learn.tries import path_of, read_tries

ADA, BEN = Learner("Ada Example", "bench-7"), Learner("Ben Example", "bench-7")
LESSON = "00-start-here"


@pytest.fixture
def computer(tmp_path, monkeypatch):
    """Go to one of several computers by its name."""

    def go(name: str) -> None:
        monkeypatch.setenv("REPAIRLIB_HOME", str(tmp_path / name))

    go("first")
    return go


def carried(learner=ADA) -> bytes:
    return json.dumps(take_along(learner)).encode()


def work_a_little(learner=ADA) -> None:
    set_learner(learner.name, learner.group)
    open_exercise(LESSON).answer(q2="1 s", q8="a")
    KeptWork("07-plan").save({"list": "C1, 10/16, elect", "ticked": ["C1"]})


def test_all_is_there_on_another_computer(computer):
    work_a_little()
    file = carried()
    assert how_many(json.loads(file)) == (2, 2)
    computer("second")
    brought = bring(file)
    assert (brought.new, brought.stayed, brought.same, brought.replaced) == (4, 0, 0, None)
    assert current_learner() == (ADA, "")
    assert open_exercise(LESSON).saved.read() == {"q2": "1 s", "q8": "a"}
    assert KeptWork("07-plan").read() == {"list": "C1, 10/16, elect", "ticked": ["C1"]}
    assert str(open_exercise(LESSON).sheet()).count("changed") == 0


def test_brought_twice_is_as_brought_once(computer):
    work_a_little()
    file = carried()
    assert bring(file)[1:4] == bring(file)[1:4] == (0, 0, 4)
    assert carried() == file


def test_there_and_back_the_later_wins_also_from_a_computer_whose_clock_is_behind(
    computer, monkeypatch
):
    work_a_little()
    file = carried()
    computer("second")
    bring(file)
    with monkeypatch.context() as slow:
        slow.setattr("time.time_ns", lambda: 10**15)  # January 1970
        KeptWork("07-plan").save({"list": "C1, 22/25, elect"})
        open_exercise(LESSON).answer(q2="60 s")
    back = carried()
    computer("first")
    KeptWork("07-plan").save({"ticked": ["C1", "C2"]})
    brought = bring(back)
    assert (brought.new, brought.stayed, brought.same) == (2, 1, 1)
    assert KeptWork("07-plan").read() == {"list": "C1, 22/25, elect", "ticked": ["C1", "C2"]}
    assert open_exercise(LESSON).saved.read()["q2"] == "60 s"


def test_what_is_replaced_is_kept_in_a_file_that_can_be_brought(computer):
    work_a_little()
    file = carried()
    computer("second")
    set_learner("Ada Example", "bench-7")
    KeptWork("07-plan").save({"list": "old"})
    late = json.loads(file)
    late["carried"]["work"]["07-plan"]["at"]["list"] += 10**9
    brought = bring(signed(late))
    assert brought.new == 4 and KeptWork("07-plan").read()["list"] == "C1, 10/16, elect"
    kept = json.loads(brought.replaced.read_bytes())
    assert kept["carried"]["work"]["07-plan"]["kept"] == {"list": "old"}
    computer("third")
    bring(brought.replaced.read_bytes())
    assert KeptWork("07-plan", ADA).read() == {"list": "old"}


def test_cells_of_a_table_answered_on_two_computers_are_all_kept():
    asked = {"q7": {"fingerprint": "x", "version": "1"}}
    here = answers({"q7": {"C3": {"volts": "16 V"}}}, {"q7": 5}, asked)
    brought = answers({"q7": {"C3": {"volts": "25 V", "fit": "axial"}}}, {"q7": 9}, asked)
    whole = {"C3": {"volts": "25 V", "fit": "axial"}}
    assert join(ANSWERS, here, brought)[0]["answers"]["q7"] == whole
    assert join(ANSWERS, brought, here)[0]["answers"]["q7"] == whole
    other = answers({"q7": {"C9": {"volts": "9 V"}}}, {"q7": 9}, {})
    joined, _ = join(ANSWERS, here, other)
    assert joined["answers"]["q7"] == {"C9": {"volts": "9 V"}} and joined["asked"] == {}


def test_an_answer_that_was_once_dangerous_stays_noted():
    here, brought = answers({"q1": "b"}, {"q1": 9}), answers({"q1": "a", "q3": "a"}, {"q1": 1})
    joined, _ = join(ANSWERS, here | {"unsafe": ["q2"]}, brought | {"unsafe": ["q1"]})
    assert joined["unsafe"] == ["q1", "q2"]


def answers(given, at, asked=None):
    whose = {"name": ADA.name, "group": ADA.group, "lesson": LESSON, "format": 1}
    return whose | {"answers": given, "at": at, "asked": asked or {}}


def work(kept, at):
    whose = {"name": ADA.name, "group": ADA.group, "work": "07-plan", "format": 1}
    return whose | {"kept": kept, "at": at}


things = st.dictionaries(st.sampled_from("abc"), st.tuples(st.text(max_size=2), st.integers(1, 4)))


@given(things, things)
def test_of_each_thing_the_later_is_kept_and_none_is_lost(here, brought):
    files = [
        work({k: v for k, (v, _) in one.items()}, {k: at for k, (_, at) in one.items()})
        for one in (here, brought)
    ]
    joined, ends = join(WORK, *files)
    assert len(ends) == len(brought) and set(joined["kept"]) == set(here) | set(brought)
    for name, value in joined["kept"].items():
        sides = [one[name] for one in (here, brought) if name in one]
        latest = max(at for _, at in sides)
        assert value == next(value for value, at in sides if at == latest)
        assert joined["at"][name] == latest
    assert join(WORK, joined, files[1])[0] == joined


def test_files_of_before_without_times_join_and_what_is_here_stays():
    here = work({"list": "mine"}, {})
    joined, ends = join(WORK, here, work({"list": "other", "boards": 2}, {}))
    assert joined["kept"] == {"list": "mine", "boards": 2} and ends == ["stayed", "new"]


def test_the_work_of_somebody_else_is_refused_and_nothing_changes(computer):
    work_a_little(ADA)
    file = carried(ADA)
    computer("second")
    work_a_little(BEN)
    before = carried(BEN)
    with pytest.raises(RepairlibError, match="work of Ada Example, group bench-7") as error:
        bring(file, "work.json")
    assert "\n" not in str(error.value) and "turn of Ben Example" in str(error.value)
    assert carried(BEN) == before and current_learner()[0] == BEN
    with pytest.raises(RepairlibError, match="nobody in particular"):
        bring(carried(DEMO))


def test_the_demo_variant_can_be_carried_too(computer):
    open_exercise(LESSON).answer(q8="a")
    file = carried(DEMO)
    computer("second")
    assert bring(file).new == 1
    assert current_learner() == (DEMO, "")
    assert open_exercise(LESSON).saved.read() == {"q8": "a"}


def signed(content: dict) -> bytes:
    from repairlib.learn.carrying import check_of

    content = {key: value for key, value in content.items() if key != "check"}
    return json.dumps(content | {"check": check_of(content)}).encode()


FOREIGN = [
    b"",
    b"PK\x03\x04",
    b"\xff\xfe\x00",
    b"[1, 2]",
    b'{"cells": [], "nbformat": 4}',
    b'{"carried": 7}',
    b'{"carried": {}}',
    b"[" * 100_000,
    b'{"format": 1, "lesson": "00-start-here", "answers": {"q1": "x"}}',
]


@pytest.mark.parametrize("data", FOREIGN)
def test_a_foreign_file_is_refused_in_one_line(data):
    with pytest.raises(RepairlibError) as error:
        bring(data, "photo.jpg")
    assert str(error.value).startswith("'photo.jpg': ") and "\n" not in str(error.value)
    assert "Take my work with me" in error.value.accepted


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.data())
def test_a_damaged_file_is_refused_whole(data):
    work_a_little()
    file = bytearray(carried())
    place = data.draw(st.integers(0, len(file) - 1))
    kind = data.draw(st.sampled_from(["cut", "changed", "doubled"]))
    if kind == "cut":
        file = file[:place]
    elif kind == "changed":
        file[place] = file[place] ^ 1
    else:
        file[place:place] = file[place : place + 7]
    try:
        content = json.loads(bytes(file))
    except ValueError:
        content = None
    before = carried()
    if content == json.loads(before):  # a blank more or less
        return
    with pytest.raises(RepairlibError):
        bring(bytes(file))
    assert carried() == before


HARMFUL = [
    lambda content: content["carried"]["answers"].update({"../../x": {}}),
    lambda content: content["carried"]["answers"].update(
        {"other": content["carried"]["answers"][LESSON]}
    ),
    lambda content: content["carried"].update({"settings": {}}),
    lambda content: content["carried"].update({"work": []}),
    lambda content: content["carried"]["work"]["07-plan"].update({"kept": 3}),
    lambda content: content["carried"]["work"]["07-plan"].update({"name": "Ben Example"}),
    lambda content: content.update({"name": "Ben Example"}),
    lambda content: content.update({"group": None}),
    lambda content: content.update({"format": 3}),
]


@pytest.mark.parametrize("change", HARMFUL)
def test_a_file_made_by_hand_leads_nowhere(change, home):
    work_a_little()
    content = take_along(ADA)
    change(content)
    before = sorted(home.rglob("*.json"))
    with pytest.raises(RepairlibError):
        bring(signed(content))
    assert sorted(home.rglob("*.json")) == before


def test_a_damaged_file_here_is_kept_aside_and_told():
    work_a_little()
    file = carried()
    KeptWork("07-plan").path.write_bytes(b"{")
    brought = bring(file)
    assert "It is kept as " in brought.notes[0]
    assert KeptWork("07-plan").read()["ticked"] == ["C1"]


def test_what_is_typed_while_a_file_is_brought_is_not_lost():
    work_a_little()
    file = carried()
    typed = [{f"place {number}": str(number)} for number in range(20)]
    with ThreadPoolExecutor(4) as pool:
        list(pool.map(lambda _: bring(file), range(3)))
        list(pool.map(KeptWork("07-plan", ADA).save, typed))
    assert len(KeptWork("07-plan", ADA).read()) == 22


def test_too_large_a_file_is_refused(monkeypatch):
    monkeypatch.setattr("repairlib.learn.carrying.LARGEST", 10)
    with pytest.raises(RepairlibError, match="larger than"):
        bring(b"x" * 11)


def test_tries_go_along_and_are_joined_once(computer):
    work_a_little()
    open_exercise(LESSON).answer(q2="60 s")
    file = carried()
    here = read_tries(LESSON, ADA)
    computer("second")
    set_learner(ADA.name, ADA.group)
    open_exercise(LESSON).answer(q7="1 nF")
    other = read_tries(LESSON, ADA)
    for _ in range(2):
        bring(file)
        assert sorted(read_tries(LESSON, ADA)) == sorted([*here, *other])
    assert path_of(LESSON, ADA).read_bytes().startswith(b'{"at": ' + str(other[0].at).encode())


def test_a_file_of_before_has_no_tries_and_strange_ones_are_refused(computer):
    work_a_little()
    content = json.loads(carried())
    before = {name: value for name, value in content.items() if name != "tries"} | {"format": 1}
    computer("second")
    assert bring(signed(before)).new == 4 and read_tries(LESSON, ADA) == []
    for tries in ([], {LESSON: 5}, {LESSON: [[1, "q1", "a", "right"]]}, {"../x": []}):
        with pytest.raises(RepairlibError, match="changed or damaged"):
            bring(signed(content | {"tries": tries}))
