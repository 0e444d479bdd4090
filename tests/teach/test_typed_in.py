"""Paper answers typed in: what each line gives, what is told, and how many keys a sheet takes."""

import json
import stat

import pytest

from repairlib.core.quantity import engineering
from repairlib.learn.arranging import Order, Table
from repairlib.learn.exercise import LESSONS, questions_of
from repairlib.learn.hand_in import answer_line, read_hand_in
from repairlib.learn.learner import member_of
from repairlib.learn.marking import mark
from repairlib.learn.question import LETTERS, Choice
from repairlib.learn.saved_answers import Saved, SavedAnswers
from repairlib.learn.tries import from_list
from repairlib.teach.typed_in import read_typed, type_in
from tests.learn.asking import right_answer
from tests.teach.rooms import group_of, wrong_answer

GROUP = group_of(4, LESSONS)
KITE, MOSS = GROUP.members[:2]
START = "00-start-here"


def shortest(ask):
    """The right answer in as few keys as are understood."""
    if isinstance(ask, Table):
        return ",".join(shortest(one) for cells in ask.cells.values() for one in cells.values())
    if isinstance(ask, Choice):
        return LETTERS[ask.options.index(ask.answer)]
    if isinstance(ask, Order):
        return "".join(LETTERS[ask.shown.index(step)] for step in ask.steps)
    long = engineering(ask.answer, ask.unit, digits=6) if ask.unit else f"{ask.answer:g}"
    long = "".join(long.split()).replace("µ", "u")
    return next(
        one
        for one in (long[:-1], long, f"{ask.answer!r}{ask.unit}")
        if ask.judge(one).state == "right"
    )


def right_line(member, lesson):
    asked = questions_of(lesson, member_of(GROUP, member))
    return f"{member.word} {lesson[:2]}:{'|'.join(map(shortest, asked))}"


def sheet_of(line, lesson, member=KITE):
    """The marks of the one sheet in a text."""
    (sheet,) = read_typed(line, GROUP).sheets
    assert (sheet.lesson, sheet.member) == (lesson, member)
    return mark(questions_of(lesson, member_of(GROUP, member)), sheet.answers)


@pytest.mark.parametrize("lesson", LESSONS[:-1])  # in the last one a repair is typed move by move
def test_a_right_sheet_takes_at_most_200_keys_and_is_right(lesson):
    """200 keys in 60 s are 40 words a minute of five letters."""
    for member in GROUP.members:
        line = right_line(member, lesson)
        assert len(line) + 1 <= 200, line
        sheet = sheet_of(line, lesson, member)
        assert sheet.points == sheet.out_of, line


def test_letters_are_those_of_the_own_sheet():
    lesson = "03-capacitor-markings"
    asked = {who.word: questions_of(lesson, member_of(GROUP, who))[7] for who in (KITE, MOSS)}
    place = "|" * 7 + "b|"
    for member in (KITE, MOSS):
        (sheet,) = read_typed(f"{member.word} 3: {place}", GROUP).sheets
        assert sheet.answers == {"q8": asked[member.word].options[1]}


@pytest.mark.parametrize("who", [KITE.word.upper(), KITE.name, f"  {KITE.name.lower()} "])
def test_word_or_name_and_any_spelling_of_the_lesson(who):
    for lesson in ("00", "0", START):
        assert sheet_of(f"{who} {lesson}: a||||||b|", START).answered == 2


def test_a_pair_has_two_names():
    (sheet,) = read_typed(f"{KITE.word} + {MOSS.word} 00: a|||||||", GROUP).sheets
    assert (sheet.member, sheet.partner) == (KITE, MOSS.name)


def test_a_lesson_that_the_group_does_not_take_is_told():
    """A line of another evening's group, with the same words, is for nobody here."""
    read = read_typed(f"{KITE.word} 00: a|||||||", GROUP._replace(lessons=(LESSONS[1],)))
    assert not read.sheets
    assert "the group Tuesday bench does not take this lesson" in str(read.troubles[0])


def test_each_trouble_names_line_and_question_and_nothing_else_is_lost():
    lines = f"""
# the first evening
{KITE.word} 00: a | 12 q | b | a | b | c | 10 nF | z
nobody 00: a|||||||
{MOSS.word} 00: a | b
{MOSS.word} 44: a
{MOSS.word} is ill
{right_line(GROUP.members[2], START)}
"""
    read = read_typed(lines, GROUP)
    assert [one.line for one in read.sheets] == [3, 8]
    assert [(one.line, one.id) for one in read.troubles][:1] == [(3, "q2")]
    told = "\n".join(map(str, read.troubles))
    assert "line 3, q2: kept as typed, and cannot be read: '12 q'" in told
    assert "line 3, q4: kept as typed" in told and "a b c d" in told
    assert "line 3, q8: kept as typed" in told and "a letter from a to d" in told
    assert "line 4: not taken: 'nobody': nobody in the group" in told
    assert "line 5: not taken: 'a | b': 2 answers for the 8 questions of lesson 00" in told
    assert "line 6: not taken: '44': no lesson has this number" in told
    assert "line 7: not taken" in told and "WORD LESSON" in told
    assert set(read.sheets[0].answers) == {f"q{number}" for number in range(1, 9)}


def test_a_table_of_too_few_cells_names_them_and_the_rest_of_the_line_stays():
    lesson = "01-a-safe-bench"
    line = right_line(KITE, lesson).rpartition(",")[0]
    read = read_typed(line, GROUP)
    (trouble,) = read.troubles
    table = questions_of(lesson, member_of(GROUP, KITE))[9]
    assert (trouble.line, trouble.id) == (1, "q10")
    assert "4 texts for 5 cells" in trouble.wrong
    assert all(row in trouble.wrong for row in table.cells)
    assert len(read.sheets[0].answers) == 9


def test_a_later_line_takes_the_place_of_an_earlier_one_with_its_troubles():
    wrong = f"{KITE.word} 00: a | 12 q |||||| "
    read = read_typed(f"{wrong}\n{right_line(KITE, START)}", GROUP)
    assert [one.line for one in read.sheets] == [2] and not read.troubles
    assert read.replaced == ("line 2 takes the place of line 1",)


def test_lines_read_out_with_their_check_signs(tmp_path):
    for lesson in LESSONS:
        learner = member_of(GROUP, KITE)
        asked = questions_of(lesson, learner)
        answers = {one.id: right_answer(one) for one in asked[1:]}
        missed = next(one for one in asked[1:] if not isinstance(one, Table))
        answers[missed.id] = wrong_answer(missed)
        SavedAnswers(lesson, learner).save(answers)
        line = answer_line(learner, lesson, KITE.word)
        (sheet,) = read_typed(line, GROUP).sheets
        marks = mark(asked, sheet.answers), mark(asked, answers)
        assert [(x.id, x.state) for x in marks[0].lines] == [
            (x.id, x.state) for x in marks[1].lines
        ]
        misheard = line.replace("|", "| a", 1)
        assert "do not fit" in str(read_typed(misheard, GROUP).troubles[0])


def test_the_file_is_one_that_was_handed_in_and_says_from_paper(tmp_path):
    lesson = "03-capacitor-markings"
    asked = questions_of(lesson, member_of(GROUP, KITE))
    answers = [shortest(one) for one in asked]
    answers[5] = "2000 V"
    answers[7] = ""
    text = f"{KITE.word}+{MOSS.word} 03: {'|'.join(answers)}\n{right_line(MOSS, START)}"
    done = type_in(tmp_path, GROUP, text, at=1_796_000_000_000)
    assert [one.parent.name for one in done.files] == ["handed-in"] * 2
    assert stat.S_IMODE((tmp_path / "handed-in").stat().st_mode) == 0o700
    content = read_hand_in(done.files[0].read_bytes())
    assert not content["changed"]
    said = [content[name] for name in ("name", "partner", "from")]
    assert said == [KITE.name, MOSS.name, "paper"]
    saved = Saved.of(content["lessons"][lesson])
    assert saved.unsafe == ("q6",) and "q8" not in saved.answers
    tries = list(map(from_list, content["tries"][lesson]))
    assert {one.id: one.state for one in tries}["q6"] == "unsafe"
    assert len(tries) == 8 and {one.at for one in tries} == {1_796_000_000_000}
    assert tries[5].hazards == ("heat and fire",)
    again = type_in(tmp_path, GROUP, text, at=1_796_000_009_000)
    assert again.files == done.files  # the same sheet typed twice is one file, of the later time
    assert json.loads(done.files[0].read_text())["at"] == 1_796_000_009_000


def test_a_text_without_a_line_writes_nothing(tmp_path):
    assert not type_in(tmp_path, GROUP, "# nothing\n").files
    assert not list((tmp_path / "handed-in").iterdir())
