"""The house's import rule: floors downwards, folders without a circle, topics by public names."""

import ast
import json
from collections import defaultdict
from importlib import import_module
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
TOPICS = (
    "markings",
    "polarity",
    "stored_charge",
    "esd",
    "health",
    "recap",
    "heat",
    "connectors",
    "circuits",
    "power_up",
    "worth",
    "record",
    "firmware",
    "missing_parts",
    "bench",
)
# From the ground up; a folder imports from its own floor's folders below it and from lower floors.
FLOORS = (("core",), TOPICS, ("show",), ("learn",), ("teach",), ("faces",))
FLOOR_OF = {folder: floor for floor, folders in enumerate(FLOORS) for folder in folders}
# What only these files may import.
KEPT_TO = {
    "ipywidgets": ("faces/panels/",),
    "IPython": ("faces/panels/",),
    "matplotlib": ("show/",),
    "schemdraw": ("show/",),
    "pandas": ("recap/planner.py",),
}


def imported(source: str) -> list[str]:
    """Every module that the code names in an import, inside functions too.

    `from a.b import c` gives "a.b" and "a.b.c", since c may be a module.
    """
    names = []
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            names += [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            assert not node.level, "imports name the whole path"
            names += [node.module, *(f"{node.module}.{alias.name}" for alias in node.names)]
    return names


def modules() -> dict[str, list[str]]:
    """Each module of the library by its dotted name, with what it imports."""
    found = {}
    for path in sorted((ROOT / "repairlib").rglob("*.py")):
        parts = path.relative_to(ROOT).with_suffix("").parts
        name = ".".join(parts[:-1] if parts[-1] == "__init__" else parts)
        found[name] = imported(path.read_text(encoding="utf-8"))
    return found


MODULES = modules()
FOLDERS = {name for name in MODULES if (ROOT / name.replace(".", "/")).is_dir()}


def own(name: str) -> list[str]:
    """The modules of the library that `name` imports."""
    return [one for one in MODULES[name] if one in MODULES and one != name]


def folder_of(module: str) -> str:
    """The first folder below repairlib, "" for the top."""
    return [*module.split("."), ""][1]


def circle(edges: dict[str, set[str]]) -> list[str]:
    """One circle in a graph, as the names along it; empty when there is none."""
    done: set[str] = set()

    def follow(name: str, path: list[str]) -> list[str]:
        if name in path:
            return [*path[path.index(name) :], name]
        if name not in done:
            for other in sorted(edges.get(name, ())):
                found = follow(other, [*path, name])
                if found:
                    return found
            done.add(name)
        return []

    return next(filter(None, (follow(name, []) for name in sorted(edges))), [])


def test_every_folder_has_its_floor():
    below_the_top = {folder_of(name) for name in FOLDERS} - {""}
    assert below_the_top == set(FLOOR_OF)


def test_imports_go_down_the_floors():
    upwards = [
        f"{name} imports {other}"
        for name in MODULES
        for other in own(name)
        if FLOOR_OF.get(folder_of(name), 99) < FLOOR_OF.get(folder_of(other), 99)
        and other != "repairlib"
    ]
    assert not upwards


def test_only_the_top_of_the_package_is_imported_from_below_it():
    """`from repairlib import read` is for lessons; the library names the folder."""
    below = {name for name in MODULES if folder_of(name) not in ("", "faces")}
    assert not [name for name in below if "repairlib" in MODULES[name]]


def test_no_circle_between_folders():
    edges = defaultdict(set)
    for name in MODULES:
        for other in own(name):
            if folder_of(other) and folder_of(other) != folder_of(name):
                edges[folder_of(name)].add(folder_of(other))
    assert not circle(edges)


def test_no_circle_between_files():
    files = {name: {one for one in own(name) if one not in FOLDERS} for name in MODULES}
    assert not circle(files)


@pytest.mark.parametrize("topic", TOPICS)
def test_a_topic_is_used_by_its_public_names_only(topic):
    inside = f"repairlib.{topic}."
    reaching = [
        f"{name} imports {other}"
        for name in MODULES
        if folder_of(name) != topic
        for other in own(name)
        if other.startswith(inside)
    ]
    assert not reaching


@pytest.mark.parametrize("library", KEPT_TO)
def test_a_heavy_library_stays_in_its_place(library):
    strangers = [
        name
        for name in MODULES
        if any(one.split(".")[0] == library for one in MODULES[name])
        and not (name.replace(".", "/") + ".py").startswith(
            tuple(f"repairlib/{place}" for place in KEPT_TO[library])
        )
    ]
    assert not strangers


@pytest.mark.parametrize("path", sorted((ROOT / "lessons").rglob("*.ipynb")), ids=lambda p: p.stem)
def test_a_lesson_imports_folders_only(path):
    cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
    code = ["".join(cell["source"]) for cell in cells if cell["cell_type"] == "code"]
    names = [one for source in code for one in imported(source) if one.startswith("repairlib")]
    assert names
    assert not [one for one in names if one in MODULES and one not in FOLDERS]


@pytest.mark.parametrize("folder", sorted(FOLDERS))
def test_public_names_are_there_and_hide_no_file(folder):
    package = import_module(folder)
    for name in getattr(package, "__all__", []):
        assert getattr(package, name) is not None
        assert f"{folder}.{name}" not in MODULES, "a file of the folder has the same name"
