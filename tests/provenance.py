"""Where each check comes from: markers refused when they say nothing, and an honest count.

`published(source)` is for figures that the source states; `common_practice` for facts of the trade
without a source; `from_memory(what)` for values that could not be looked up; `behaviour` for our
own words, choices and refusals, which no document states.
"""

from __future__ import annotations

import ast
import inspect
from collections import defaultdict
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
NEEDS_TEXT = {"published": "the source", "from_memory": "what it is"}
PROVENANCE = ("published", "common_practice", "from_memory", "behaviour")
PROPERTY = "provenance"


@pytest.hookimpl(wrapper=True)
def pytest_pycollect_makeitem(collector, name, obj):
    """Refuse a test that proves nothing: the whole file is then an error of collection."""
    made = yield
    for item in made if isinstance(made, list) else ():
        if isinstance(item, pytest.Function):
            wrong = what_is_wrong(item)
            if wrong:
                raise collector.CollectError(f"{item.nodeid}: {wrong}")
            mark = next((mark for mark in item.iter_markers() if mark.name in PROVENANCE), None)
            if mark:
                source = mark.args[0] if mark.args else ""
                item.user_properties.append((PROPERTY, (mark.name, source)))
    return made


def what_is_wrong(item: pytest.Function) -> str:
    """Why the test proves nothing, or "" when it may stand."""
    marks = [mark for mark in item.iter_markers() if mark.name in PROVENANCE]
    if len(marks) > 1:
        return f"more than one provenance: {', '.join(mark.name for mark in marks)}"
    for mark in marks:
        text = mark.args[0] if len(mark.args) == 1 else ""
        if mark.name in NEEDS_TEXT and not (isinstance(text, str) and text.strip()):
            return f"{mark.name} names nothing; write {mark.name}({NEEDS_TEXT[mark.name]!r})"
    function = inspect.unwrap(item.function)
    inner = getattr(getattr(item.function, "hypothesis", None), "inner_test", function)
    if not asserts(Path(inspect.getfile(inner)), inner.__name__):
        return "nothing in it can fail: no assert, no expect and no pytest.raises"
    return ""


ASSERTING = {"raises", "warns", "fail", "expect"}  # of pytest, and of the browser


@cache
def functions_of(path: Path) -> dict[str, tuple[bool, frozenset[str]]]:
    """Each function of a test file: whether it asserts by itself, and the names it calls."""
    found = {}
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.FunctionDef):
            inside = list(ast.walk(node))
            calls = {called(one) for one in inside if isinstance(one, ast.Call)}
            own = any(isinstance(one, ast.Assert | ast.Raise) for one in inside)
            found[node.name] = (
                own or bool(calls & {"raises", "warns", "fail", "expect"}),
                frozenset(calls),
            )
    return found


def called(call: ast.Call) -> str:
    return getattr(call.func, "attr", getattr(call.func, "id", ""))


def asserts(path: Path, name: str, seen: frozenset = frozenset()) -> bool:
    """Whether the function of this file asserts, by itself or in a helper of the tests."""
    if name in seen or (name not in functions_of(path) and name not in imported(path)):
        return False
    if name not in functions_of(path):
        return asserts(imported(path)[name], name, seen)
    own, calls = functions_of(path)[name]
    return own or any(asserts(path, one, seen | {name}) for one in calls)


@cache
def imported(path: Path) -> dict[str, Path]:
    """The names that a test file imports from other files of the tests, with the file."""
    found = {}
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("tests."):
            home = ROOT / (node.module.replace(".", "/") + ".py")
            if home.exists():
                found |= {alias.asname or alias.name: home for alias in node.names}
    return found


class Count:
    """Test functions by provenance and source, in the process that hears of all results."""

    def __init__(self):
        self.facts: dict[str, set[str]] = defaultdict(set)
        self.failed: dict[str, set[str]] = defaultdict(set)
        self.sources: dict[str, set[str]] = defaultdict(set)

    def pytest_runtest_logreport(self, report):
        kind, source = dict(report.user_properties).get(PROPERTY, (None, ""))
        if kind is None or (report.when != "call" and report.passed) or report.skipped:
            return
        function = report.nodeid.partition("[")[0]
        (self.facts if report.passed else self.failed)[kind].add(function)
        self.sources[kind].add(source)

    def pytest_terminal_summary(self, terminalreporter):
        if not self.facts and not self.failed:
            return
        good = {kind: len(self.facts[kind] - self.failed[kind]) for kind in PROVENANCE}
        terminalreporter.write_line(
            "Checked against the outside world (test functions, not repeats): "
            f"{good['published']} published from {len(self.sources['published'])} named places, "
            f"{good['common_practice']} common practice, {good['from_memory']} from memory. "
            f"Own words and refusals: {good['behaviour']}."
        )
        failed = sum(map(len, self.failed.values()))
        if failed:
            terminalreporter.write_line(f"Of such checks FAILED: {failed}.")


def pytest_configure(config):
    if not hasattr(config, "workerinput"):  # xdist's workers report to this process
        config.pluginmanager.register(Count(), "provenance count")
