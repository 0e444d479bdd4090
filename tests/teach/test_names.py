"""Lists of names as people have them: every line is a name or is told, nobody becomes another."""

import os

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from repairlib.core.draws import normal
from repairlib.core.errors import RepairlibError
from repairlib.learn import Learner
from repairlib.teach.names import read_names

pytestmark = pytest.mark.behaviour


def names(text):
    return [listed.name for listed in read_names(text).names]


def told(text):
    return [str(one) for one in read_names(text).told]


@pytest.mark.parametrize(
    "text",
    [
        "Ada Example\nBen Example\n",
        "\ufeff1. Ada Example\r\n\r\n2. Ben Example\r\n",
        "(1) Ada Example\n(2) Ben Example",
        "01 Ada Example\n02 Ben Example",
        "a) Ada Example\nb) Ben Example",
        "- [x] Ada Example\n- [ ] Ben Example",
        "• Ada Example,\n• Ben Example.",
        "Ada   Example\nBen\u00a0Example\u200e",
        "Ms Ada Example\nDr. Ben Example",
        "Prof. Dr. Ada Example\nHerr Ben Example",
        "Ada Example <ada@bench.example>; Ben Example <ben@bench.example>",
        "Ada Example, ada@bench.example\nBen Example, ben@bench.example",
        "Ada Example; Ben Example",
        "Ada\tExample\nBen\tExample",
        "Ada,Example\nBen,Example",
        "Example, Ada\nExample, Ben",
        "7;Ada Example;0123 456789\n8;Ben Example;",
        "Name\nAda Example\nBen Example",
        "Name,E-mail\nAda Example,a@bench.example\nBen Example,",
        "Nr;Vorname;Name\n1;Ada;Example\n2;Ben;Example",
        "Surname\tFirst name\nExample\tAda\nExample\tBen",
        "First name  Surname\nAda         Example\nBen         Example",
        "Tuesday bench\nFULL NAME;Paid\nAda Example;yes\nBen Example;no",
        "| Name | Seat |\n|---|---|\n| Ada Example | 1 |\n| Ben Example | 2 |",
        '"Name","Group"\n"Example, Ada","Tuesday, late"\n"Example, Ben",""\n,\n',
        b"\xff\xfe" + "Ada Example\nBen Example\n".encode("utf-16-le"),
    ],
)
def test_one_list_written_in_many_ways(text):
    assert names(text) == ["Ada Example", "Ben Example"]


@pytest.mark.parametrize(
    "name",
    [
        "山田 太郎",
        "Αλέξανδρος Παπ",
        "אדה לדוגמה",
        "अदिति उदाहरण",
        "Zoë O'Neil-Example",
        "Van 't Hart",
        "Ada E.",
        "Ada Example Jr.",
        "Ada 2",
    ],
)
def test_names_stay_as_they_are_written(name):
    assert names(f"1. {name}\nBen") == [name, "Ben"]


def test_both_spellings_of_an_accent_are_one_name():
    assert names("Zoe\u0301 Example") == ["Zoé Example"]
    with pytest.raises(RepairlibError, match="on lines 1, 2"):
        read_names("Zoe\u0301 Example\nZOÉ EXAMPLE")


def test_what_is_no_name_is_told_with_its_line():
    text = "Group of Tuesday:\nAda (she/her)\n+49 151 2345678\nTotal: 12\nBen 0151 2345678\nc@b.ex"
    assert names(text) == ["Ada", "Ben"]
    assert told(text) == [
        "line 1: 'Group of Tuesday:': a heading",
        "line 2: '(she/her)': left out beside the name",
        "line 3: '+49 151 2345678': no letter that could be a name",
        "line 4: 'Total: 12': a heading",
        "line 5: '0151 2345678': left out beside the name",
        "line 6: 'c@b.ex': no letter that could be a name",
    ]


def test_columns_without_headings_of_which_none_is_surely_the_name_are_told():
    (line,) = told("Ada,Bench,Tuesday\nBen\n")
    assert "line 1" in line and "put headings above them" in line


def test_two_of_one_name_are_asked_for_an_initial_with_all_their_lines():
    with pytest.raises(RepairlibError) as error:
        read_names("Ada\nBen\nada\nCleo\nBEN\nAda")
    assert "Ada on lines 1, 3, 6; Ben on lines 2, 5" in str(error.value)
    assert "an initial behind each of them" in str(error.value)
    assert names("Ada B.\nAda C.") == ["Ada B.", "Ada C."]


def test_two_of_one_name_with_other_addresses_are_two_people_and_with_the_same_one():
    with pytest.raises(RepairlibError, match="Ada on lines 2, 3"):
        read_names("Name,E-mail\nAda,a@b.example\nAda,c@b.example")
    same = "Name,E-mail\nAda,a@b.example\nAda,a@b.example"
    assert names(same) == ["Ada"] and told(same) == ["line 3: 'Ada': again, as on line 2"]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "there is no line in it"),
        ("7\n8\n", "there is no name in it"),
        ("E-mail;Phone\na@b.example;12", "no column of names"),
        (b"PK\x03\x04", "spreadsheet workbook"),
        (b"\x00\x01", "NUL byte"),
        (3, "not a text"),
    ],
)
def test_what_holds_no_name_is_refused_in_one_line(text, said):
    with pytest.raises(RepairlibError, match=said):
        read_names(text)


def test_two_thousand_names_are_read():
    assert len(names("".join(f"{i}. Learner {i:04} Example\n" for i in range(2000)))) == 2000


anything = st.text(st.sampled_from("Aé山ا1 .,;\t|\"'-()<@:\u200e\u00a0\n\r") | st.characters())


MANY = settings(max_examples=5000 if os.environ.get("CLASS") == "all" else 40)


@MANY
@given(anything)
def test_any_text_is_a_list_of_learners_or_one_line_of_refusal(text):
    try:
        found = read_names(text)
    except RepairlibError as error:
        assert len(str(error).splitlines()) == 1
        return
    learners = [Learner(listed.name, "bench") for listed in found.names]  # none is refused
    assert len({one.folder() for one in learners}) == len(learners) > 0
    assert all(one.name == " ".join(one.name.split()) for one in learners)


people = st.lists(
    st.tuples(st.sampled_from(["Ada", "Ben", "Zoë", "太郎"]), st.integers(0, 99)).map(
        lambda pair: f"{pair[0]} Example{chr(97 + pair[1] % 26)}{chr(97 + pair[1] // 26)}"
    ),
    min_size=1,
    max_size=8,
    unique_by=normal,
)
before = st.sampled_from(["", "{}. ", "{}) ", "- ", "☐ ", "\ufeff", "  ", "Ms ", "#{} "])
behind = st.sampled_from(["", " ", ",", " <x@b.example>", "\t", " (late)", "\u200f"])


@MANY
@given(people, before, behind, st.sampled_from(["\n", "\r\n", "\n\n", "\r", "\n----\n"]))
def test_decorated_lists_give_the_names_in_their_order(people, before, behind, end):
    lines = [f"{before.format(i)}{name}{behind}" for i, name in enumerate(people, 1)]
    assert names(end.join(lines) + end) == people


@MANY
@given(
    st.lists(
        st.sampled_from(["Ada", "Ben (late)", "7", "", "---", "x@b.example"]),
        min_size=1,
        max_size=20,
    )
)
def test_every_line_is_a_name_or_told_or_blank(lines):
    lines = [line.replace("Ada", f"Ada {chr(65 + i)}") for i, line in enumerate(lines)]
    lines = [line.replace("Ben", f"Ben {chr(65 + i)}") for i, line in enumerate(lines)]
    found = read_names("\n".join([*lines, "Cleo"]))
    met = {one.line for one in (*found.names, *found.told)}
    filled = {i for i, line in enumerate(lines, 1) if line and line != "---"}
    assert met == filled | {len(lines) + 1}
