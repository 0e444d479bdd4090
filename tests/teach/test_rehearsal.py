"""A group that answers by itself: the same each time, and marked as any other."""

from repairlib.learn.group import Group, Member
from repairlib.teach.collecting import COUNTED, collect
from repairlib.teach.rehearsal import handed_in, rehearse

LESSONS = ("00-start-here", "03-capacitor-markings")
MEMBERS = tuple(Member(f"Somebody Number {n}", f"word{n}") for n in range(8))
GROUP = Group("Tuesday bench", MEMBERS, LESSONS)


def test_all_but_one_hand_in_what_is_marked_and_not_all_of_it_is_right(tmp_path):
    paths = rehearse(GROUP, tmp_path)
    collected = collect(GROUP, [tmp_path], cores=1)
    marked = list(collected.marked)
    assert {one.outcome for one in collected.accounts} == {COUNTED}
    assert len(paths) == len(MEMBERS) - 1
    assert {(one.word, one.lesson) for one in marked} == {
        (member.word, lesson) for member in MEMBERS[:-1] for lesson in LESSONS
    }
    lines = [line for one in marked for line in one.sheet.lines]
    states = [line.state for line in lines]
    assert 0.5 < states.count("right") / len(states) < 1
    assert any(line.unsafe_first for line in lines)
    tries = [story.tries for one in marked for story in one.stories.values()]
    assert min(tries) == 1 < max(tries)


def test_the_same_group_answers_the_same():
    assert handed_in(GROUP, MEMBERS[0]) == handed_in(GROUP, MEMBERS[0])
    assert handed_in(GROUP, MEMBERS[0]).data != handed_in(GROUP, MEMBERS[1]).data
