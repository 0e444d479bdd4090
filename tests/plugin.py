"""What every test run needs: a fresh home for each test and notebook, stable settings, tiers.

Loaded with `-p tests.plugin` (pyproject.toml), so that it holds for tests/, repairlib/ and lessons/
alike, also when one notebook is run alone.
"""

from __future__ import annotations

import doctest
import os
import random
import tempfile
from importlib.util import find_spec
from pathlib import Path

import hypothesis
import pytest

ROOT = Path(__file__).parent.parent
# Folder of the tests: its tier. What is in none of them is quick.
TIERS = {"browser": "browser", "benchmarks": "benchmark"}


class Run:
    """The state of one test run: the notebook under test and its home."""

    def __init__(self):
        self.notebook = None
        self.homes = tempfile.TemporaryDirectory(prefix="repairlib-test-")

    def fresh_home(self) -> None:
        """Answers, what was typed and who it was must not reach the next test or notebook."""
        os.environ["REPAIRLIB_HOME"] = tempfile.mkdtemp(dir=self.homes.name)


run = Run()


@pytest.hookimpl(tryfirst=True)
def pytest_configure(config):
    # Kernels are child processes and inherit this environment.
    os.environ["PYTHONPATH"] = os.pathsep.join(
        filter(None, [str(ROOT), os.environ.get("PYTHONPATH")])
    )
    os.environ["SOURCE_DATE_EPOCH"] = "0"  # dates in drawings
    os.environ["MPLCONFIGDIR"] = os.environ.get("MPLCONFIGDIR", run.homes.name)
    config.option.nbval_sanitize_with = str(ROOT / "tests" / "nbval_sanitize.cfg")
    run.fresh_home()
    _read_no_break_spaces_as_spaces()
    _draw_alike_for_everybody(config)


def _draw_alike_for_everybody(config):
    """The same fuzzing on a laptop and in CI: new cases on every run, no deadline, a known seed."""
    hypothesis.settings.register_profile("house", deadline=None, print_blob=True, database=None)
    hypothesis.settings.load_profile("house")
    if config.option.hypothesis_seed is None:
        config.option.hypothesis_seed = str(random.randrange(1_000_000_000))


def pytest_report_header(config):
    return f"fuzzed with --hypothesis-seed={config.option.hypothesis_seed}"


def _read_no_break_spaces_as_spaces():
    """Let a docstring write "100 nF" with a plain space where the library prints a fixed one."""
    check = doctest.OutputChecker.check_output
    doctest.OutputChecker.check_output = lambda self, want, got, flags: check(
        self, want.replace("\xa0", " "), got.replace("\xa0", " "), flags
    )


def pytest_itemcollected(item):
    """Put each test into its tier: browser, benchmark, lesson or slow, else quick."""
    folder = item.path.relative_to(ROOT).parts[1] if ROOT in item.path.parents else ""
    if item.path.suffix == ".ipynb":
        item.add_marker("lesson")
    elif folder in TIERS:
        item.add_marker(TIERS[folder])
    elif not item.get_closest_marker("slow"):
        item.add_marker("quick")


def pytest_ignore_collect(collection_path):
    """The hub's spawner can be imported where JupyterHub is, which no other test needs."""
    if collection_path.name == "spawning.py" and find_spec("jupyterhub") is None:
        return True
    return None


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_protocol(item):
    if item.path.suffix != ".ipynb":
        if os.listdir(os.environ["REPAIRLIB_HOME"]):  # the last test kept something
            run.fresh_home()
    elif item.path != run.notebook:
        run.notebook = item.path
        run.fresh_home()
