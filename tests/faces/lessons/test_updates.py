"""An update of the clone while twelve changed working copies lie around: nothing is lost.

The clone here is a small one, with the lessons in it: `git pull` brings a newer version of each.
"""

import json
import shutil
import subprocess
from pathlib import Path

import pytest

from repairlib.core.tables import LESSON_FOLDER
from repairlib.faces.lessons.laying import FIRST, HOUSE, lay_lessons
from repairlib.learn import Learner, files, mark_file
from repairlib.learn.exercise import Exercise
from repairlib.learn.group import Group, Member
from repairlib.learn.own import read_own
from repairlib.learn.own.notebook import own_notebook
from tests.learn.asking import right_answer
from tests.learn.own.typed import EXAMPLE

GROUP = "Thursday bench of Vollbrix Lane"  # a name that stands nowhere else
NAMES = [f"Quenby Thistlewood {number}" for number in range(12)]
OWN = "own-fuses.ipynb"


def git(folder: Path, *words: str) -> str:
    named = ("-c", "user.name=Update", "-c", "user.email=update@example.org")
    done = subprocess.run(["git", *named, *words], cwd=folder, capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    return done.stdout


def changed(notebook: Path, text: str) -> bytes:
    """Put a text of the learner's own into the first cell of a lesson."""
    content = json.loads(notebook.read_bytes())
    content["cells"][0]["source"] = [text]
    notebook.write_text(json.dumps(content))
    return notebook.read_bytes()


class Bench:
    """A repository, a clone of it, and twelve learners, each with a home and a working copy."""

    def __init__(self, folder: Path, monkeypatch):
        self.folder, self.monkeypatch = folder, monkeypatch
        self.upstream, self.clone = folder / "upstream", folder / "clone"
        shutil.copytree(LESSON_FOLDER, self.upstream / "lessons")
        git(folder, "init", "-q", str(self.upstream))
        git(self.upstream, "add", ".")
        git(self.upstream, "commit", "-qm", "first")
        git(folder, "clone", "-q", str(self.upstream), str(self.clone))

    def at(self, name: str, own: str = EXAMPLE) -> Path:
        """Sit down as a learner; the working copy, laid as the command `lessons` lays it."""
        home = self.folder / "homes" / name.replace(" ", "-")
        home.mkdir(parents=True, exist_ok=True)
        self.monkeypatch.setenv("REPAIRLIB_HOME", str(home))
        members = tuple(Member(one, f"word{place}") for place, one in enumerate(NAMES))
        files.write(home / "group.json", Group(GROUP, members, own={"fuses.txt": own}).to_dict())
        self.told = lay_lessons(home / "lessons", self.clone / "lessons")
        return home / "lessons"


@pytest.fixture
def bench(tmp_path, monkeypatch):
    return Bench(tmp_path, monkeypatch)


def test_twelve_changed_copies_and_all_answers_outlive_an_update(bench):
    mine, answers = {}, {}
    for name in NAMES:
        copy = bench.at(name)
        mine[name] = [changed(copy / lesson, f"of {name}") for lesson in (FIRST, OWN)]
        for lesson in (FIRST.removesuffix(".ipynb"), "own-fuses"):
            exercise = Exercise(lesson, Learner(name, GROUP))
            exercise.answer(**{one.id: right_answer(one) for one in exercise.questions})
            path = exercise.saved.path
            answers[name, lesson] = (path, path.read_bytes(), str(mark_file(path)))

    for lesson in (bench.upstream / "lessons").glob("[0-9]*.ipynb"):
        changed(lesson, "a newer version")
    git(bench.upstream, "commit", "-qam", "newer")
    git(bench.clone, "pull", "-q", "--ff-only")  # nothing stands in its way

    newer = EXAMPLE.replace("on purpose", "always on purpose")
    for name in NAMES:
        copy = bench.at(name, newer)
        assert [(copy / lesson).read_bytes() for lesson in (FIRST, OWN)] == mine[name]
        assert len(bench.told) == 2
        beside = copy / FIRST.replace(".ipynb", ".new.ipynb")
        assert beside.read_bytes() == (bench.clone / "lessons" / FIRST).read_bytes()
        beside = copy / OWN.replace(".ipynb", ".new.ipynb")
        assert beside.read_bytes() == own_notebook(read_own(newer))
        untouched = copy / "03-capacitor-markings.ipynb"
        assert "a newer version" in untouched.read_text()
        for lesson in (FIRST.removesuffix(".ipynb"), "own-fuses"):
            path, content, sheet = answers[name, lesson]
            assert path.read_bytes() == content
            assert str(mark_file(path)) == sheet
            assert mark_file(path).points == mark_file(path).out_of

    assert not git(bench.clone, "status", "--porcelain", "--ignored")
    named = [*NAMES, GROUP, *(name.casefold().replace(" ", "-") for name in NAMES)]
    found = [path for path in files_below(bench.clone) if holds(path, named)]
    assert not found


def test_no_name_of_a_learner_is_written_where_the_library_stands(bench):
    """The library that ran here wrote nothing of anybody below its own folder."""
    bench.at(NAMES[0])
    exercise = Exercise("own-fuses", Learner(NAMES[0], GROUP))
    exercise.answer(q1="a")
    house = [HOUSE / "repairlib", HOUSE / "lessons", HOUSE / "datasets"]
    assert exercise.saved.path.exists()
    assert not [
        path for one in house for path in files_below(one) if holds(path, [NAMES[0], GROUP])
    ]


def files_below(folder: Path) -> list[Path]:
    return [path for path in folder.rglob("*") if path.is_file()]


def holds(path: Path, names: list[str]) -> bool:
    """True when a name stands in a file or in its own name."""
    content = path.read_bytes()
    return any(one.encode() in content or one in path.name for one in names)
