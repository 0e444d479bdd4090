"""Guards over the stored lessons: what nbval does not look at, or cannot."""

from __future__ import annotations

import json
import re
from pathlib import Path

import nbformat
import pytest

from repairlib.learn import LESSONS as EXERCISES
from tests.refresh import (
    ANSWERED,
    LESSONS,
    LIVE_PANEL,
    LIVE_VIEW,
    ROOT,
    answered,
    lesson_names,
    main,
    refreshed,
    tags,
)

IN_DEPTH = "In depth"  # what a laboratory needs; not every lesson has it
FOLDED = (IN_DEPTH, "Sources")
HEADINGS = (
    "Try it",
    "What you will be able to do",
    "Time, parts and tools",
    "Cautions",
    "The idea",
    "Worked example",
    "Practice",
    "Graded exercise",
    IN_DEPTH,
    "Going further",
    "Sources",
)
MACHINE_PATH = re.compile(r"/home/|/root/|/work/|/tmp/|/Users/|\b[A-Z]:\\\\")  # as in JSON
LINK = re.compile(r"\]\(([^)\s#]+)")
EVERY = [*LESSONS.glob("*.ipynb"), *ANSWERED.glob("*.ipynb")]

every_notebook = pytest.mark.parametrize("path", sorted(EVERY), ids=lambda path: path.stem)
every_lesson = pytest.mark.parametrize("name", lesson_names())


def read(path: Path) -> nbformat.NotebookNode:
    return nbformat.read(path, as_version=4)


def lesson(name: str) -> nbformat.NotebookNode:
    return read(LESSONS / f"{name}.ipynb")


def code_cells(notebook: nbformat.NotebookNode) -> list[nbformat.NotebookNode]:
    return [cell for cell in notebook.cells if cell.cell_type == "code"]


def tagged(notebook: nbformat.NotebookNode, tag: str) -> list[nbformat.NotebookNode]:
    return [cell for cell in notebook.cells if tag in tags(cell)]


def headings(notebook: nbformat.NotebookNode) -> list[str]:
    """Second-level headings in order, without what may follow a colon."""
    prose = "\n".join(cell.source for cell in notebook.cells if cell.cell_type == "markdown")
    return [line[3:].split(":")[0].strip() for line in prose.split("\n") if line[:3] == "## "]


def sheet_text(notebook: nbformat.NotebookNode) -> str:
    (cell,) = tagged(notebook, "grading")
    return "".join(output.text for output in cell.outputs if output.output_type == "stream")


# Every stored notebook


@every_notebook
def test_cells_were_run_once_from_top_to_bottom(path):
    """Without its counts a notebook passes nbval with nothing compared."""
    cells = code_cells(read(path))
    assert [cell.execution_count for cell in cells] == list(range(1, len(cells) + 1))


@every_notebook
def test_cell_ids_are_present_and_unique(path):
    raw = json.loads(path.read_text(encoding="utf-8"))
    ids = [cell["id"] for cell in raw["cells"]]
    assert len(set(ids)) == len(ids)


@every_notebook
def test_format_and_kernel(path):
    notebook = read(path)
    assert (notebook.nbformat, notebook.nbformat_minor) == (4, 5)
    assert notebook.metadata.kernelspec.name == "python3"


@every_notebook
def test_nothing_that_differs_from_run_to_run_is_stored(path):
    notebook = read(path)
    assert "widgets" not in notebook.metadata
    assert "version" not in notebook.metadata.language_info
    assert not [cell.id for cell in code_cells(notebook) if "execution" in cell.metadata]
    assert LIVE_VIEW not in path.read_text(encoding="utf-8")


@every_notebook
def test_no_error_or_warning_is_stored(path):
    outputs = [output for cell in code_cells(read(path)) for output in cell.outputs]
    assert not [output for output in outputs if output.output_type == "error"]
    assert not [output for output in outputs if output.get("name") == "stderr"]


@every_notebook
def test_no_machine_path_is_stored(path):
    found = MACHINE_PATH.findall(path.read_text(encoding="utf-8"))
    assert not found


# Lessons as a learner reads them


@every_lesson
def test_headings_stand_in_the_fixed_order(name):
    notebook = lesson(name)
    assert notebook.cells[0].source.startswith("# ")
    found = headings(notebook)
    assert found == [one for one in HEADINGS if one != IN_DEPTH or IN_DEPTH in found]


@every_lesson
def test_a_lesson_says_that_it_is_one(name):
    """The page runs what says so by itself when it is opened."""
    assert lesson(name).metadata.repairlib == {"lesson": name}


@every_lesson
def test_code_is_folded_where_it_is_not_the_subject(name):
    section, open_cells = "", []
    for cell in lesson(name).cells:
        if cell.cell_type == "markdown":
            titles = [line[3:] for line in cell.source.splitlines() if line.startswith("## ")]
            section = titles[-1] if titles else section
        elif not cell.metadata.get("jupyter", {}).get("source_hidden"):
            open_cells.append(section)
    assert set(open_cells) <= {"Going further"}


@every_lesson
def test_what_few_read_is_folded_behind_its_heading(name):
    for cell in lesson(name).cells:
        title = cell.source.partition("\n")[0].removeprefix("## ")
        if cell.source.startswith("## ") and title in FOLDED:
            assert cell.source == f"## {title}"  # what stands in the same cell is not folded
            assert cell.metadata["jp-MarkdownHeadingCollapsed"]


@every_lesson
def test_code_that_a_learner_reads_is_short(name):
    too_long = [cell.source for cell in code_cells(lesson(name)) if cell.source.count("\n") > 4]
    assert not too_long


@every_lesson
def test_first_code_cell_only_imports(name):
    lines = code_cells(lesson(name))[0].source.splitlines()
    assert all(line.startswith(("import ", "from ", "%matplotlib")) for line in lines)


@every_lesson
def test_one_place_to_answer_and_one_grading_after_it(name):
    cells = lesson(name).cells
    (answers,) = [index for index, cell in enumerate(cells) if "answers" in tags(cell)]
    (grading,) = [index for index, cell in enumerate(cells) if "grading" in tags(cell)]
    assert answers < grading
    assert sheet_text(lesson(name)).strip()


@every_lesson
def test_only_live_cells_go_uncompared(name):
    """A tag that hides an output from nbval is for live panels and nothing else."""
    for cell in tagged(lesson(name), "nbval-ignore-output"):
        texts = [output.get("data", {}).get("text/plain", "") for output in cell.outputs]
        assert LIVE_PANEL in texts, cell.source


# Links, and the developers' index


@pytest.mark.parametrize(
    "path", [*sorted(LESSONS.glob("*.ipynb")), *LESSONS.glob("*.md")], ids=lambda path: path.name
)
def test_only_what_exists_is_linked(path):
    text = path.read_text(encoding="utf-8")
    if path.suffix == ".ipynb":
        text = "\n".join(c.source for c in read(path).cells if c.cell_type == "markdown")
    targets = [target for target in LINK.findall(text) if "://" not in target]
    assert not [target for target in targets if not (path.parent / target).exists()]


def test_every_notebook_is_a_lesson_or_the_template():
    assert lesson_names() == [*EXERCISES, "template"]


def index_rows() -> dict[str, str]:
    """Rows of the table in DEVELOPERS.md: lesson name to what stands behind it."""
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    return dict(re.findall(r"^\| \[(.+?)\]\(lessons/\1\.ipynb\) \|(.+)$", text, re.MULTILINE))


def test_the_index_lists_all_lessons_in_order():
    assert tuple(index_rows()) == EXERCISES


@pytest.mark.parametrize("name", EXERCISES)
def test_the_index_names_modules_and_tables_that_exist(name):
    named = re.findall(r"`([^`]+)`", index_rows()[name])
    assert named
    assert not [path for path in named if not (ROOT / path).exists()]


# The answered copy


def test_the_answered_copy_is_its_lesson_with_all_answers_right():
    (path,) = ANSWERED.glob("*.ipynb")
    rows = json.loads(path.with_suffix(".json").read_text(encoding="utf-8"))
    copy = answered(lesson(path.stem.removesuffix("-right")), rows)
    assert [cell.source for cell in read(path).cells] == [cell.source for cell in copy.cells]
    got, whole = re.findall(r"[\d.]+", sheet_text(read(path)).strip().splitlines()[-1])[:2]
    assert float(got) == float(whole) > 0


# The refresh command


@pytest.mark.slow
@every_lesson
def test_refreshing_again_changes_no_byte(name):
    path = LESSONS / f"{name}.ipynb"
    assert refreshed(read(path), LESSONS) == path.read_text(encoding="utf-8")


def test_refresh_names_the_lessons_when_one_is_unknown(capsys):
    assert main(["99-no-such-lesson"]) == 2
    assert "00-start-here" in capsys.readouterr().out
