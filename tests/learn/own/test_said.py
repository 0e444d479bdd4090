"""Lines taken apart: words, text, tables, encodings, and what is told of odd ones."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.textfile import decode
from repairlib.learn.own import Slips, read_own
from repairlib.learn.own.said import LONGEST_LINE, MOST_LINES, said_in
from tests.learn.own.typed import EXAMPLE, TABLE, lesson, slips


def words(text):
    found = []
    said = [(one.word, one.about, one.text) for one in said_in(text, found)]
    assert not found
    return said


def test_a_line_goes_on_until_an_empty_line_or_the_next_word():
    text = "Fuses\n\nGoal: read\n  one\nGoal: two\n\nText that\nruns on.\n\nMore."
    assert [(word, said) for word, _, said in words(text)] == [
        ("title", "Fuses"),
        ("goal", "read one"),
        ("goal", "two"),
        ("", "Text that runs on."),
        ("", "More."),
    ]


@pytest.mark.parametrize(
    "line, about",
    [
        ("Question", ""),
        ("question 3", ""),
        ("Question, 2 points", "2"),
        ("Question 4 (1.5 points)", "1.5"),
        ("QUESTION, 1 point:", "1"),
    ],
)
def test_a_question_may_begin_in_several_ways(line, about):
    assert words(f"Fuses\n\n{line}\nWhy?")[1][:2] == ("question", about)


def test_a_question_that_stands_on_its_first_line_goes_on_below():
    assert words("Fuses\nQuestion: Why\nnot?")[1] == ("question", "", "Why not?")


@pytest.mark.parametrize("colon", [":", " :", "\u00a0:", "："])
def test_other_ways_to_type_a_colon_are_read(colon):
    assert words(f"Fuses\nRIGHT{colon} this")[1] == ("right", "", "this")


def test_prose_with_a_colon_stays_prose():
    text = "Fuses\n\nThe rule is this: look first.\n\nNote: a fuse is thin."
    assert [word for word, *_ in words(text)] == ["title", "", ""]


@pytest.mark.parametrize(
    "line, better",
    [
        ("Rihgt: this", "Right:"),
        ("Awnser: 5 V", "Answer:"),
        ("Cautons: mains", "Cautions:"),
        ("Hnit: look", "Hint:"),
        ("Dangr (mains): touch it", "Danger:"),
        ("Correct: this", "Right:"),
        ("- Wrong: that", "Wrong: first on its line"),
        ("b) Danger (mains): that", "Danger: first on its line"),
        ("Wrong: that Say: no", "Say: on a line of its own"),
    ],
)
def test_a_mistyped_word_is_told_with_the_nearest(line, better):
    (told,) = slips(f"{line_before()}{line}")
    assert told.startswith("line 7: ")
    assert better in told


def line_before():
    return "Fuses\n\nQuestion\nWhat?\nRight: a fuse\nWrong: a wire\n"


def test_an_unknown_word_below_a_known_one_is_not_taken_for_its_text():
    (told,) = slips(line_before() + "Remember: look first")
    assert told.startswith("line 7: 'Remember': no word")
    assert not said_slips(line_before() + "  Remember: look first")  # set in, it is text


def said_slips(text):
    found = []
    said_in(text, found)
    return found


@pytest.mark.parametrize("ends", ["\n", "\r\n", "\r"])
def test_line_ends_of_any_computer(ends):
    assert lesson(EXAMPLE.replace("\n", ends)) == lesson(EXAMPLE)


def test_mixed_line_ends():
    lines = EXAMPLE.split("\n")
    mixed = "".join(line + ("\r\n", "\n")[place % 2] for place, line in enumerate(lines))
    assert lesson(mixed) == lesson(EXAMPLE)


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16"])
@pytest.mark.parametrize("text", [EXAMPLE, TABLE], ids=["text", "table"])
def test_encodings_of_spreadsheets_and_editors(text, encoding):
    assert lesson(decode(text.encode(encoding)).text) == lesson(text)


def test_an_old_encoding():
    typed = "Mikrofarad\n\nQuestion\nWieviel µF?\nAnswer: 10 µF"
    assert lesson(decode(typed.encode("cp1252")).text) == lesson(typed)


@pytest.mark.parametrize("separator", [",", ";", "\t"])
def test_a_table_with_any_separator(separator):
    typed = separator.join(["question", "right", "wrong"])
    typed += "\n" + separator.join(["Which?", "this", '"that; or, so"'])
    typed = f"title{separator}{typed.replace(chr(10), chr(10) + 'Fuses' + separator)}"
    (asked,) = lesson(typed).asked
    (question,) = asked.variants.values()
    assert question.options == ("this", "that; or, so")


def test_a_row_without_a_question_goes_on_with_the_one_above():
    typed = "title,question,right,wrong\nFuses,Which?,this,that\n,,,neither"
    (question,) = lesson(typed).asked[0].variants.values()
    assert question.options == ("this", "that", "neither")


def test_a_cell_of_several_lines_is_several_paragraphs():
    typed = 'title,question,right,wrong\nFuses,"One line.\n\nWhich\none?",this,that'
    (question,) = lesson(typed).asked[0].variants.values()
    assert question.prompt == "One line.\n\nWhich one?"


@pytest.mark.parametrize(
    "typed, line, told",
    [
        ("title,question,right,wrnog\nFuses,Which?,this,that", 1, "'wrnog': no heading"),
        ("title,question,right,wrong\nFuses,Which?,this,that,more", 2, "5 cells under 4"),
        ("title,question,right,wrong\nFuses,Which?,this,#REF!", 2, "a formula that failed"),
        ('title,question,right,wrong\nFuses,Which?,this,that\n,"open', 3, "quotation marks"),
    ],
)
def test_bad_tables_are_told_with_their_line(typed, line, told):
    assert any(one.startswith(f"line {line}: ") and told in one for one in slips(typed, "a.csv"))


def test_formulas_are_text_and_nothing_else():
    typed = 'title,question,right,wrong\n=A1,"=1+1?","=HYPERLINK(""http://x"")",@SUM(1)'
    (question,) = lesson(typed).asked[0].variants.values()
    assert question.options == ('=HYPERLINK("http://x")', "@SUM(1)")


@pytest.mark.parametrize("sign", ["\u202e", "\u200b", "\u2028", "\x85"])
def test_a_character_that_cannot_be_seen_is_told_with_its_line(sign):
    (told,) = slips(f"Fuses\n\nQuestion\nWhy{sign}?\nAnswer: 5")
    assert told.startswith("line 4: ")
    assert f"U+{ord(sign):04X}" in told


def test_joined_letters_and_wide_spaces_are_kept():
    typed = "Fuses\n\nQuestion\nنمی\u200cخواهم 5\u202fV 👩\u200d🔧?\nAnswer: 5"
    (question,) = lesson(typed).asked[0].variants.values()
    assert question.prompt == "نمی\u200cخواهم 5\u202fV 👩\u200d🔧?"


def test_what_is_too_long_is_told_once():
    assert slips("x" * 600_000)[0].startswith("line 1: ")
    assert slips("Fuses\n" + "Question\n" * MOST_LINES)[0].startswith(f"line {MOST_LINES}: ")
    (told,) = slips(f"Fuses\n\nQuestion\n{'x' * (LONGEST_LINE + 1)}\nAnswer: 5")
    assert told.startswith("line 4: ")


def test_ten_thousand_questions_are_refused_and_hold_nobody_up():
    told = slips("Fuses\n" + "Question\nWhy?\nAnswer: 5\n" * 10_000)
    assert len(told) <= 3
    told = slips("Fuses\n" + "Question\nWhy?\nAnswer: 5\n" * 1000)
    assert told == [
        "line 302: '1000 questions': too many questions for one lesson. Accepted: up to 100"
    ]


ASKED = "Fuses\n\nQuestion\nWhy?\n"
VALUES = "Names: a\n" + "".join(f"Values: {n}\n" for n in range(500))


@pytest.mark.parametrize(
    "text",
    [
        ASKED + "Answer: 1" + " " * 3900 + "x",
        ASKED + "Columns: a | b\n" + "".join(f"Row: {n} | 1{' ,' * 900}x\n" for n in range(100)),
        ASKED + VALUES + "Answer: [a]" + " ," * 1900 + "x",
        ASKED + VALUES + "Answer: [a] V\n" + "Wrong: 9 kV\nSay: no\n" * 2000,
        ASKED + VALUES + "Right: [a]\n" + "".join(f"Wrong: [a] {n}\n" for n in range(2000)),
        ASKED + f"Columns: a{' | c' * 500}\n" + f"Row: r{' | 1 V' * 500}\n" * 100,
        ASKED + "First: x\n" + "".join(f"Then: {n}\n" for n in range(4000)),
        'question,right,wrong\n"' + "a" * 400_000,
        "question,right,wrong\n" + "," * 400_000,
    ],
    ids=["spaces", "rows", "values", "wrongs", "options", "cells", "steps", "quote", "columns"],
)
def test_what_is_made_to_hold_readers_up_is_refused(text):
    """Each of these took minutes, or would for a reader without limits."""
    assert slips(text)


def test_the_letter_of_a_word_processor_is_refused_by_name():
    with pytest.raises(RepairlibError, match="word processor"):
        read_own("{\\rtf1\\ansi Fuses}")


def test_every_slip_of_a_file_is_told_in_one_run():
    bad = EXAMPLE.replace("Right: Stop", "Rihgt: Stop").replace(
        "Picture: fuse, T2A", "Picture: fuze, T2A"
    )
    bad = bad.replace("Answer: 500 mA", "Answer: half").replace(
        "Danger (mains): step", "Danger (mans): step"
    )
    told = slips(bad)
    assert [int(one.split(":")[0].removeprefix("line ")) for one in told] == sorted(
        1 + bad[: bad.index(part)].count("\n")
        for part in ("Picture: fuze", "Answer: half", "Rihgt", "Danger (mans)")
    )


LINES = st.lists(
    st.one_of(
        st.text(max_size=30),
        st.sampled_from([line for line in EXAMPLE.split("\n") if line]),
        st.sampled_from(["Question", "Right:", "Names: a", "Values: 1", "[a]", "Columns: a | b"]),
    ),
    max_size=40,
)


@settings(max_examples=60)
@given(LINES)
def test_any_lines_give_a_lesson_or_slips_each_with_its_line(lines):
    text = "\n".join(lines)
    try:
        read_own(text)
    except Slips as refused:
        assert refused.each
        last = text.replace("\r\n", "\n").replace("\r", "\n").count("\n") + 1
        assert all(1 <= one.line <= last for one in refused.each)
    except RepairlibError as refused:
        assert "no line" in str(refused) or "rtf" in text
