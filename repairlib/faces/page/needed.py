"""Which files of the workbook the page needs: found by following the imports in their text.

Nothing is imported for it, so what a function imports later is found too. A folder that gives its
names away one by one (`core/public.py`) is followed to the module of the name that is asked for,
and a table of readers (`markings/kinds.py`) to the module of each.
"""

from __future__ import annotations

import ast
from functools import cache
from pathlib import Path

from repairlib.core.tables import DATASETS, LESSON_FOLDER

PACKAGE = Path(__file__).parents[2]
ANSWERS = "repairlib.faces.page.answers"
WORDS = LESSON_FOLDER / "words.md"  # what the plain words come from


def files_of_the_page() -> dict[str, Path]:
    """Each file that the page takes along, by its path there.

    >>> files = files_of_the_page()
    >>> "repairlib/markings/bands.py" in files, "repairlib/heat/joint.py" in files
    (True, False)
    """
    modules = modules_needed(ANSWERS)
    tables = sorted({name for module in modules for name in _tables(module)})
    return {
        **{_place(_path(module)): _path(module) for module in modules},
        **{f"repairlib/datasets/reference/{name}.csv": _table(name) for name in tables},
        f"repairlib/lessons/{WORDS.name}": WORDS,
    }


def _place(file: Path) -> str:
    return file.relative_to(PACKAGE.parent).as_posix()


def modules_needed(start: str) -> list[str]:
    """The modules of the library that `start` needs, itself among them."""
    found: set[str] = set()
    waiting = [start]
    while waiting:
        module = waiting.pop()
        if module not in found:
            found.add(module)
            waiting += _imported(module)
            waiting += [folder for folder in [module.rpartition(".")[0]] if folder]
    return sorted(found)


@cache
def _tree(module: str) -> ast.Module:
    return ast.parse(_path(module).read_text(encoding="utf-8"))


def _path(module: str) -> Path:
    below = PACKAGE.parent / module.replace(".", "/")
    return below / "__init__.py" if below.is_dir() else below.with_suffix(".py")


def _is_module(name: str) -> bool:
    return _path(name).is_file()


def _imported(module: str) -> list[str]:
    """The modules that this one names in its imports, those inside functions too."""
    found = []
    for node in ast.walk(_tree(module)):
        if isinstance(node, ast.Import):
            found += [alias.name for alias in node.names if _is_ours(alias.name)]
        elif isinstance(node, ast.ImportFrom) and _is_ours(node.module or ""):
            found += [_home(str(node.module), alias.name) for alias in node.names]
        elif isinstance(node, ast.Call) and _called(node) == "Reader":
            found.append(f"{module.rpartition('.')[0]}.{ast.literal_eval(node.args[0])}")
    return found


def _is_ours(name: str) -> bool:
    return name.partition(".")[0] == PACKAGE.name


def _home(folder: str, name: str) -> str:
    """The module in which `name` is found when it is imported from `folder`."""
    if _is_module(f"{folder}.{name}"):
        return f"{folder}.{name}"
    home = _given_away(folder).get(name)
    return f"{folder}.{home}" if home else folder


@cache
def _given_away(folder: str) -> dict[str, str]:
    """The public names of a folder and the module of each, where it gives them one by one."""
    return {
        name: str(keyword.arg)
        for node in ast.walk(_tree(folder))
        if isinstance(node, ast.Call) and _called(node) == "public_names"
        for keyword in node.keywords
        for name in ast.literal_eval(keyword.value).split()
    }


def _tables(module: str) -> list[str]:
    """The published tables that a module reads."""
    return [
        ast.literal_eval(node.args[0])
        for node in ast.walk(_tree(module))
        if isinstance(node, ast.Call) and _called(node) == "read_table"
    ]


def _called(node: ast.Call) -> str:
    return node.func.id if isinstance(node.func, ast.Name) else ""


def _table(name: str) -> Path:
    return DATASETS / "reference" / f"{name}.csv"
