"""Reading the published tables and the demo scenario in `datasets/`."""

from __future__ import annotations

from functools import cache
from pathlib import Path

_PACKAGE = Path(__file__).parent.parent
# A checkout keeps datasets/ beside the package; a wheel carries it inside.
DATASETS = next(
    folder for folder in (_PACKAGE / "datasets", _PACKAGE.parent / "datasets") if folder.is_dir()
)
LESSON_FOLDER = DATASETS.parent / "lessons"  # beside the tables, in both


@cache
def read_table(name: str) -> tuple[dict[str, str], ...]:
    """The rows of `datasets/reference/NAME.csv`, each with the key of its `source`.

    The rows are shared between callers: read them, do not change them.
    """
    import csv  # a quick check reads no table, and shall not wait for it

    with open(DATASETS / "reference" / f"{name}.csv", encoding="utf-8", newline="") as file:
        return tuple(csv.DictReader(file))


def demo_path(name: str) -> Path:
    """The path of a file of the invented demo scenario, `datasets/demo/NAME`."""
    return DATASETS / "demo" / name
