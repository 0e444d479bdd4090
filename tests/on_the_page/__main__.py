"""Run the quick tests of what the page uses on the page's own Python, in node.

    python -m tests.on_the_page [--runtime FOLDER] [ARGUMENTS OF PYTEST]

Python compiled to WebAssembly runs pytest over the files of the page, the rooms they come from and
the tests of these. It sees this folder and the libraries of the tests, and can write to neither.
What it cannot do there is left out and named: `left_out.py`. Without a FOLDER of the Python for
browsers npm fetches it, once; pip fetches the one library that is compiled for it. Needs node 20.
"""

from __future__ import annotations

import argparse
import json
import shutil
import subprocess
import sys
import tempfile
from importlib.metadata import distribution, version
from importlib.util import find_spec
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.faces.page.needed import files_of_the_page
from repairlib.faces.page.runtime import find_runtime

ROOT = Path(__file__).parents[2]
WORKBOOK, LIBRARIES, FETCHED = "/workbook", "/libraries", "/fetched"  # as that Python sees them
ROOMS = (
    *("repairlib/core", "repairlib/markings", "repairlib/polarity"),
    *("repairlib/faces/shown", "repairlib/faces/documents.py"),
    *("tests/core", "tests/markings", "tests/polarity"),
    *(f"tests/show/test_{name}.py" for name in ("bands", "drawings", "faults", "legible")),
    *(f"tests/show/test_{name}.py" for name in ("likely_body", "looks")),
)
NOT_THERE = ("repairlib/core/saving.py", "tests/core/test_saving.py")  # the page writes no file
# Taken from the Python that runs this: they are Python alone.
TAKEN = ("_pytest", "iniconfig", "packaging", "pluggy", "pygments", "pytest", "quantiphy")
TAKEN += ("segno", "sortedcontainers")
LISTED = "segno"  # the page asks which files it has
ONE_FILE = "py"  # of pytest too
COMPILED = "hypothesis"
ABOUT = "pyodide-lock.json"  # of the Python for browsers: its version, and which builds fit it


def tested() -> list[str]:
    """The rooms, and each file of the page from elsewhere."""
    files = [name for name in files_of_the_page() if name.endswith(".py")]
    return [*ROOMS, *(name for name in files if not name.startswith(ROOMS))]


def fetch_compiled(folder: str, python: dict[str, str]) -> None:
    """Put the library that is compiled into `folder`, as it is built for that Python."""
    wanted = f"{COMPILED}=={version(COMPILED)}"
    platform = f"pyemscripten_{python['abi_version']}_{python['arch']}"
    command = [sys.executable, "-m", "pip", "install", "--quiet", "--disable-pip-version-check"]
    command += ["--no-deps", "--only-binary=:all:", "--platform", platform]
    command += ["--python-version", python["python"], "--target", folder, wanted]
    if subprocess.run(command).returncode:
        raise RepairlibError(wanted, "pip could not fetch its build for WebAssembly", "a network")


def seen(fetched: str) -> dict[str, str]:
    """Each folder that the Python sees, by its place there."""
    places = {WORKBOOK: str(ROOT), FETCHED: fetched}
    for name in TAKEN:
        spec = find_spec(name)
        assert spec and spec.submodule_search_locations, name
        places[f"{LIBRARIES}/{name}"] = spec.submodule_search_locations[0]
    (about,) = (one for one in distribution(LISTED).files or () if one.name == "RECORD")
    folder = Path(str(about.locate())).parent
    places[f"{LIBRARIES}/{folder.name}"] = str(folder)
    return places


def run(runtime: Path, arguments: list[str]) -> int:
    """Run pytest there with these arguments; its exit status."""
    node = shutil.which("node")
    if node is None:
        raise RepairlibError("node", "it is not installed", "node 20 or later on the path")
    python = json.loads((runtime / ABOUT).read_text(encoding="utf-8"))["info"]
    with tempfile.TemporaryDirectory() as fetched:
        fetch_compiled(fetched, python)
        shutil.copy(str(find_spec(ONE_FILE).origin), fetched)
        asked = {
            "runtime": str(runtime.resolve()),
            "python": python,
            "seen": seen(fetched),
            "workbook": WORKBOOK,
            "path": [WORKBOOK, LIBRARIES, FETCHED],
            "arguments": arguments,
        }
        start = Path(__file__).with_name("start.mjs")
        return subprocess.run([node, start], input=json.dumps(asked), text=True).returncode


def main() -> int:
    parser = argparse.ArgumentParser(prog="python -m tests.on_the_page", description=__doc__)
    parser.formatter_class = argparse.RawDescriptionHelpFormatter
    parser.add_argument("--runtime", metavar="FOLDER", help="the unpacked Python for browsers")
    known, arguments = parser.parse_known_args()
    options = ["-o", "addopts=", "-o", f"testpaths={' '.join(tested())}", "--strict-markers"]
    options += ["-p", "no:cacheprovider", "-p", "_hypothesis_pytestplugin", "-p", "tests.plugin"]
    options += ["-p", "tests.provenance", "-p", "tests.on_the_page.left_out"]
    options += ["--doctest-modules", "-m", "quick", "-q"]
    options += [f"--ignore={name}" for name in NOT_THERE]
    try:
        return run(find_runtime(known.runtime), [*options, *arguments])
    except RepairlibError as error:
        parser.exit(2, f"{error}\n")


if __name__ == "__main__":
    sys.exit(main())
