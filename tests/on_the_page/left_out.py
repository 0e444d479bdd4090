"""What cannot run on the page's Python is left out, counted and named, by two rules.

- It imports a library that is neither Python's nor ours: the page has none.
- It starts a process or a thread: there are none in WebAssembly.

Where a file of the page itself asks for one of these, that is no reason but a failure.
"""

from __future__ import annotations

import sys
import traceback
from collections import defaultdict
from importlib import import_module
from pathlib import Path

import pytest
from _pytest.doctest import DoctestModule

from repairlib.faces.page.needed import files_of_the_page

ROOT = Path(__file__).parents[2]
OURS = {*sys.stdlib_module_names, "repairlib", "tests"}
OF_THE_PAGE = {str(ROOT / name) for name in files_of_the_page()}
SAID = {
    "emscripten does not support processes": "starts a process",
    "can't start new thread": "starts a thread",
}
left_out: dict[str, set[str]] = defaultdict(set)  # by the reason


def reason(error: BaseException) -> str:
    """Why this cannot run here, or "" when it is a failure."""
    frames = traceback.extract_tb(error.__traceback__)
    ours = [one.filename for one in frames if one.filename.startswith(f"{ROOT}/")]
    if not ours or ours[-1] in OF_THE_PAGE:
        return ""
    if isinstance(error, ModuleNotFoundError):
        library = str(error.name).partition(".")[0]
        return "" if library in OURS else f"imports {library}"
    return next((why for said, why in SAID.items() if said in str(error)), "")


@pytest.hookimpl(wrapper=True)
def pytest_make_collect_report(collector):
    """Leave out a whole file that cannot be imported."""
    report = yield
    if report.failed and isinstance(collector, pytest.Module | DoctestModule):
        name = collector.path.relative_to(ROOT).as_posix()
        try:
            import_module(name.removesuffix(".py").replace("/", "."))
        except ModuleNotFoundError as error:
            why = reason(error)
            if why:
                left_out[why].add(f"{name} (all of it)")
                report.outcome, report.longrepr = "skipped", (str(collector.path), 0, why)
    return report


@pytest.hookimpl(wrapper=True)
def pytest_runtest_call(item):
    try:
        return (yield)
    except Exception as error:
        why = reason(error)
        if not why:
            raise
        left_out[why].add(item.nodeid.partition("[")[0])
        pytest.skip(why)


def pytest_terminal_summary(terminalreporter):
    for why, names in sorted(left_out.items()):
        terminalreporter.section(f"left out, as it {why}: {len(names)} files or functions")
        for name in sorted(names):
            terminalreporter.write_line(name)
