"""The notebook of an own lesson: the house's headings, and nothing typed that a notebook obeys."""

import ast
import json
import re

import nbformat
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from repairlib.faces.lessons.laying import lay_lessons
from repairlib.learn import files
from repairlib.learn.group import Group
from repairlib.learn.own import read_own
from repairlib.learn.own.notebook import as_shown, own_notebook
from tests.learn.own.typed import EXAMPLE
from tests.test_lessons import HEADINGS, code_cells, headings, tags


def notebook(text):
    made = nbformat.reads(own_notebook(read_own(text)).decode(), as_version=4)
    nbformat.validate(made)
    return made


def test_headings_stand_in_the_order_of_all_lessons():
    found = headings(notebook(EXAMPLE))
    assert found == [one for one in HEADINGS if one != "In depth"]
    bare = headings(notebook("Fuses\nQuestion\nWhy?\nAnswer: 5"))
    assert bare == ["Try it", "Graded exercise", "Going further", "Sources"]


def test_it_says_which_lesson_it_is_and_has_one_place_to_answer():
    made = notebook(EXAMPLE)
    assert made.metadata.repairlib == {"lesson": "own-fuses"}
    for tag in ("answers", "grading"):
        assert len([cell for cell in made.cells if tag in tags(cell)]) == 1
    assert all(cell.metadata.jupyter.source_hidden for cell in code_cells(made))
    assert len({cell.id for cell in made.cells}) == len(made.cells)


def test_cautions_are_those_named_and_those_of_dangerous_answers():
    (cell,) = [cell for cell in code_cells(notebook(EXAMPLE)) if cell.source.startswith("caution")]
    assert cell.source == "caution('mains', 'heat and fire', 'stored charge')"


def test_cautions_and_drawings_stand_in_it_before_it_is_run():
    shown = {cell.source.partition("(")[0]: cell.outputs for cell in code_cells(notebook(EXAMPLE))}
    assert "Mains current through the chest" in shown["caution"][0].data["text/html"]
    assert "Printed on it: T2A 250V" in shown["draw_part"][0].data["text/plain"]
    assert not shown["answer_form"]


HOSTILE = "<script>alert(1)</script> [a](javascript:x) ![i](x) **b** $x$ # _u_ `` ` \\(y\\)"


ESCAPED = re.compile(r"\\([!-/:-@\[-`{-~])")  # any sign of ASCII with a stroke before it
CODE = re.compile(r"(?<!\\)(`[^`]*`)")
COMMANDS = "<>[]*_$#|\\`!@~^{}-+&"


def seen(source):
    """What a reader of the notebook sees of a text, without spaces and marks."""
    pieces = CODE.split(source)
    words = [one if at % 2 else ESCAPED.sub(r"\1", one) for at, one in enumerate(pieces)]
    return letters("".join(words))


def letters(words):
    return "".join(words.replace("`", "").split())


def bare(source):
    """What could be a command: neither code nor a sign with a stroke before it."""
    return ESCAPED.sub("", CODE.sub("", source))


@pytest.mark.parametrize("words", [HOSTILE, "1. one", "12) two", "- dash", "a | b", "a@b <c"])
def test_text_is_shown_as_it_was_typed(words):
    assert seen(as_shown(words)) == letters(words)
    assert not set(bare(as_shown(words))) & set(COMMANDS)
    assert not re.match(r"\s*[0-9]+[.)]", as_shown(words))


@pytest.mark.parametrize("words", ["see https://a_b.example/c", "WWW.example.org", "ftp://x"])
def test_no_text_becomes_a_link(words):
    assert seen(as_shown(words)) == letters(words)
    assert not re.search(r"://|www\.", bare(as_shown(words)), re.IGNORECASE)


@pytest.mark.parametrize(
    "words, shown",
    [
        ("`104K` and `x`", "`104K` and `x`"),
        ("one ` alone", "one \\` alone"),
        ("$5 or $6", "`$`5 or `$`6"),
        ("\\(y\\)", "`\\`(y`\\`)"),
        ("`a`$", "`a` `$`"),
        ("`` `", "\\`\\` \\`"),
    ],
)
def test_marks_stand_out_and_signs_of_formulas_do_too(words, shown):
    assert as_shown(words) == shown


@settings(max_examples=80)
@given(st.text(st.characters(exclude_categories=("C",)), max_size=80))
def test_any_text_is_shown_as_it_was_typed(words):
    assert seen(as_shown(words)) == letters(words)
    assert not set(bare(as_shown(words))) & set(COMMANDS)


def test_two_at_signs_are_no_place_of_a_formula():
    """JupyterLab shows nothing at all of a cell in which it looks for one that is not there."""
    assert "@@" not in as_shown("`@@0@@` and @@1@@").replace("\\@", "@")


MARKINGS = st.text(st.characters(exclude_categories=("C", "Z")), min_size=1, max_size=12)


@settings(max_examples=15)
@given(MARKINGS.filter(lambda one: "," not in one and "[" not in one))
def test_code_holds_what_was_typed_as_texts_and_nothing_else(marking):
    made = notebook(f"Fuses\n\nPicture: disc, {marking}\n\nQuestion\nWhy?\nAnswer: 5")
    for cell in code_cells(made)[1:]:
        assert cell.source.count("\n") == 0
        (node,) = ast.parse(cell.source).body
        call = node.value
        assert isinstance(call, ast.Call)
    (drawn,) = [cell.source for cell in code_cells(made) if cell.source.startswith("draw_part")]
    assert [ast.literal_eval(one) for one in ast.parse(drawn).body[0].value.args] == [
        "disc",
        marking,
    ]


@pytest.fixture
def known(tmp_path, monkeypatch):
    """Call it to put an own lesson into the group of this computer."""
    monkeypatch.setenv("REPAIRLIB_HOME", str(tmp_path / "home"))
    (tmp_path / "home").mkdir()

    def put(text):
        made = Group("Tuesday bench", own={"fuses.txt": text})
        files.write(tmp_path / "home" / "group.json", made.to_dict())

    put(EXAMPLE)
    return put


def test_own_lessons_are_laid_with_the_others_and_renewed_like_them(tmp_path, known):
    copy = tmp_path / "copy"
    assert lay_lessons(copy) == []
    own = copy / "own-fuses.ipynb"
    assert own.read_bytes() == own_notebook(read_own(EXAMPLE))
    newer = EXAMPLE.replace("on purpose", "on purpose, always")
    known(newer)
    assert lay_lessons(copy) == []
    assert own.read_bytes() == own_notebook(read_own(newer))


def test_a_changed_own_lesson_is_kept_and_the_new_one_put_beside_it(tmp_path, known):
    copy = tmp_path / "copy"
    lay_lessons(copy)
    mine = json.loads((copy / "own-fuses.ipynb").read_bytes())
    mine["cells"][0]["source"] = ["mine"]
    (copy / "own-fuses.ipynb").write_text(json.dumps(mine))
    known(EXAMPLE.replace("on purpose", "always"))
    (line,) = lay_lessons(copy)
    assert "Your changed own-fuses.ipynb is kept" in line
    assert json.loads((copy / "own-fuses.ipynb").read_bytes()) == mine
    assert (copy / "own-fuses.new.ipynb").exists()


def test_an_own_lesson_that_cannot_be_read_is_told_and_all_others_are_laid(tmp_path, known):
    known("Fuses\nQuestion\nWhy?\nAnwser: 5")
    (line,) = lay_lessons(tmp_path / "copy")
    assert line.startswith("The own lesson own-fuses is not laid: ")
    assert (tmp_path / "copy" / "00-start-here.ipynb").exists()


def test_a_group_that_cannot_be_used_is_told_and_all_others_are_laid(tmp_path, known):
    (tmp_path / "home" / "group.json").write_text("{")
    (line,) = lay_lessons(tmp_path / "copy")
    assert line.startswith("The file of the group cannot be used")
    assert (tmp_path / "copy" / "00-start-here.ipynb").exists()
