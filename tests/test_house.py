"""The house itself: folders, pins, light imports, tidy code, a wheel that carries all it needs."""

import re
import shlex
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest
from hatchling.builders.wheel import WheelBuilder

from repairlib.faces.class_commands import VERBS
from repairlib.faces.cli import USAGES
from repairlib.markings import read

ROOT = Path(__file__).parent.parent
TOP = {"README.md", "DEVELOPERS.md", "requirements.txt", "pyproject.toml", "LICENSE"}
TOP |= {"lessons", "repairlib", "tests", "datasets", "binder"}
HEAVY = ("numpy", "pandas", "matplotlib", "schemdraw", "ipywidgets", "IPython")
SLOW_TO_START = ("re", "dataclasses", "typing", "enum", "json", "csv", "argparse", "pathlib")


def _files():
    listing = subprocess.run(
        ["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True
    )
    return listing.stdout.splitlines()


def test_top_level_holds_nothing_else():
    top = {name.split("/")[0] for name in _files()}
    assert {name for name in top if not name.startswith(".")} == TOP


@pytest.mark.parametrize("action", [["check"], ["format", "--check"]], ids=" ".join)
def test_code_and_notebooks_are_tidy(action):
    done = subprocess.run(
        [sys.executable, "-m", "ruff", *action, "."], cwd=ROOT, capture_output=True, text=True
    )
    assert done.returncode == 0, done.stdout + done.stderr


def test_hosted_server_installs_the_same_pins():
    assert (ROOT / "binder/requirements.txt").read_text() == (ROOT / "requirements.txt").read_text()


def test_every_requirement_is_pinned_to_a_tested_series():
    for name in ("requirements.txt", "tests/requirements.txt"):
        lines = (ROOT / name).read_text().splitlines()
        wanted = [line for line in lines if line and not line.startswith(("#", "-r"))]
        assert wanted
        assert all("~=" in line for line in wanted), wanted


def test_readme_has_two_set_up_commands_and_ci_runs_the_second():
    readme = (ROOT / "README.md").read_text()
    commands = [line for line in readme.splitlines() if line.startswith("python3 -m venv")]
    assert len(commands) == 2
    assert commands[0].endswith(" .venv/bin/python -m repairlib lessons")
    assert " -q " not in commands[0]  # pip takes minutes: something must move on the screen
    assert commands[1].endswith("-m pytest")
    assert "grep -m 1 -- '-m pytest$' README.md" in (ROOT / ".ci/run").read_text()


def test_commands_in_the_readme_are_those_of_the_command_line():
    readme = (ROOT / "README.md").read_text()
    command = ".venv/bin/python -m repairlib "
    lines = [line for line in readme.splitlines() if line.startswith(command)]
    verbs = set()
    for line in lines:
        first, *rest = shlex.split(line.removeprefix(command))
        if first in USAGES:
            verbs.add(first)
            options = {word for word in rest if word.startswith("--")}
            usage = VERBS[rest[0]].usage if first == "class" else USAGES[first]
            assert options <= set(re.split(r"[\s\[\]|]+", usage)), line
        else:
            assert read(first), line
    assert verbs == set(USAGES)


def _modules_after(statement):
    script = f"import sys; {statement}; print(*sys.modules)"
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True, cwd=ROOT
    )
    return set(done.stdout.split())


def test_a_quick_check_loads_nothing_slow():
    loaded = _modules_after("from repairlib.faces.cli import main; main(['104K'])")
    bare = _modules_after("pass")
    assert "repairlib.markings" in loaded
    assert not (loaded - bare) & {*HEAVY, *SLOW_TO_START}


def test_core_topics_and_questions_load_no_heavy_library():
    names = [
        ".".join(path.relative_to(ROOT).with_suffix("").parts)
        for path in sorted((ROOT / "repairlib").rglob("*.py"))
        if not {"faces", "show", "__main__.py"} & set(path.parts)
    ]
    loaded = _modules_after(f"import {', '.join(names)}")
    assert not loaded & set(HEAVY)


def test_wheel_carries_its_tables_and_lessons(tmp_path):
    wheel = next(WheelBuilder(str(ROOT)).build(directory=str(tmp_path), versions=["standard"]))
    packed = set(zipfile.ZipFile(wheel).namelist())
    for path in [*(ROOT / "datasets").rglob("*"), *(ROOT / "lessons").rglob("*")]:
        if path.is_file():
            assert f"repairlib/{path.relative_to(ROOT).as_posix()}" in packed
    assert not any(name.startswith(("tests/", "lessons/")) for name in packed)
