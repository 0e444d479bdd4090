"""The lesson for instructors: its outputs are stored as it runs, and it is laid for them alone."""

import re

import pytest

from repairlib.faces.class_commands import VERBS
from repairlib.faces.lessons.laying import INSTRUCTORS, lay_lessons
from tests.refresh import LESSONS, refreshed
from tests.test_lessons import read

PATH = LESSONS / INSTRUCTORS
CELLS = read(PATH).cells


def test_its_cells_are_run_in_order_and_short():
    code = [cell for cell in CELLS if cell.cell_type == "code"]
    assert [cell.execution_count for cell in code] == list(range(1, len(code) + 1))
    assert max(cell.source.count("\n") + 1 for cell in code) <= 5
    assert not [one for cell in code for one in cell.outputs if one.get("name") == "stderr"]


def test_every_command_in_it_is_one():
    prose = "\n".join(cell.source for cell in CELLS if cell.cell_type == "markdown")
    named = set(re.findall(r"\bclass ([a-z-]+) ", prose)) | set(
        re.findall(r"`class ([a-z-]+)", prose)
    )
    assert named <= set(VERBS)
    assert {"new", "paper", "collect", "hold", "release", "check", "add", "stick"} <= named


def test_it_is_laid_for_an_instructor_and_for_nobody_else(tmp_path):
    lay_lessons(tmp_path / "learner")
    lay_lessons(tmp_path / "instructor", for_instructor=True)
    name = PATH.name
    assert not (tmp_path / "learner" / name).exists()
    assert (tmp_path / "instructor" / name).read_bytes() == PATH.read_bytes()


@pytest.mark.slow
def test_refreshing_again_changes_no_byte():
    assert refreshed(read(PATH), PATH.parent) == PATH.read_text(encoding="utf-8")
