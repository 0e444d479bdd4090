"""What every test run needs: provenance counts, a fresh home for each notebook, stable settings.

Loaded with `-p tests.plugin` (pyproject.toml), so that it holds for tests/, repairlib/ and lessons/
alike, also when one notebook is run alone.
"""

from __future__ import annotations

import doctest
import os
import tempfile
from collections import Counter
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
PROVENANCE = {
    "published": "published",
    "common_practice": "common practice",
    "from_memory": "from memory",
}


class Run:
    """The state of one test run: checks counted by provenance, and the notebook under test."""

    def __init__(self):
        self.passed = Counter()
        self.failed = Counter()
        self.notebook = None
        self.homes = tempfile.TemporaryDirectory(prefix="repairlib-test-")

    def fresh_home(self) -> None:
        """Answers and the learner's name of one notebook must not reach the next."""
        os.environ["REPAIRLIB_HOME"] = tempfile.mkdtemp(dir=self.homes.name)


run = Run()


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


def _read_no_break_spaces_as_spaces():
    """Let a docstring write "100 nF" with a plain space where the library prints a fixed one."""
    to_ascii = doctest.OutputChecker._toAscii
    doctest.OutputChecker._toAscii = lambda self, text: to_ascii(self, text.replace("\xa0", " "))


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_protocol(item):
    if item.path.suffix == ".ipynb" and item.path != run.notebook:
        run.notebook = item.path
        run.fresh_home()


@pytest.hookimpl(hookwrapper=True)
def pytest_runtest_makereport(item, call):
    outcome = yield
    report = outcome.get_result()
    marks = [mark for mark in PROVENANCE if item.get_closest_marker(mark)]
    if len(marks) > 1:
        pytest.fail(f"{item.nodeid} has more than one provenance: {marks}")
    if report.when == "call" and marks:
        (run.passed if report.passed else run.failed)[marks[0]] += 1


def pytest_terminal_summary(terminalreporter):
    if run.passed or run.failed:
        counts = ", ".join(f"{run.passed[mark]} {word}" for mark, word in PROVENANCE.items())
        terminalreporter.write_line(f"Checks against the outside world that passed: {counts}.")
    if run.failed:
        counts = ", ".join(f"{run.failed[mark]} {word}" for mark, word in PROVENANCE.items())
        terminalreporter.write_line(f"Checks against the outside world that FAILED: {counts}.")
