"""Run the lessons and store their outputs, so that a second run changes not one byte.

    python -m tests.refresh                       every lesson, and the answered copy
    python -m tests.refresh 03-capacitor-markings one lesson

The one answered copy in tests/answered/ is made here too: the lesson with the cell tagged `answers`
replaced by answers given in code, so that the whole way to the sheet is shown once. Its answers
come from the file worked by hand that stands beside it.

Nothing else of a lesson is touched: its prose, code, ids and tags stay as they were written.
"""

from __future__ import annotations

import json
import os
import sys
import tempfile
from copy import deepcopy
from pathlib import Path

import nbformat
from nbclient import NotebookClient
from nbclient.exceptions import CellExecutionError

ROOT = Path(__file__).resolve().parent.parent
LESSONS = ROOT / "lessons"
ANSWERED = ROOT / "tests" / "answered"
LIVE_VIEW = "application/vnd.jupyter.widget-view+json"
LIVE_PANEL = "A live panel stands here. To use it, choose Run > Run All Cells in JupyterLab."
KERNEL = {"display_name": "Python 3", "language": "python", "name": "python3"}
CELL_TIMEOUT_S = 60


def main(names: list[str]) -> int:
    """Refresh the lessons named, or all of them. Returns the exit code."""
    unknown = [name for name in names if not lesson_path(name).exists()]
    if unknown:
        print(f"No such lesson: {', '.join(unknown)}. There are: {', '.join(lesson_names())}.")
        return 2
    for name in names or lesson_names():
        for path, notebook in notebooks_of(name):
            try:
                path.write_text(refreshed(notebook, path.parent), encoding="utf-8", newline="\n")
            except CellExecutionError as error:
                print(f"{path.relative_to(ROOT)}: not written, a cell failed.\n{error}")
                return 1
            print(path.relative_to(ROOT))
    return 0


def lesson_names() -> list[str]:
    """Names of the notebooks in lessons/, in order, the template among them."""
    return sorted(path.stem for path in LESSONS.glob("*.ipynb"))


def lesson_path(name: str) -> Path:
    return LESSONS / f"{name}.ipynb"


def notebooks_of(name: str) -> list[tuple[Path, nbformat.NotebookNode]]:
    """The lesson, and its answered copy if it has one, each with the path where it is kept."""
    lesson = nbformat.read(lesson_path(name), as_version=4)
    copies = [
        (path, answered(lesson, json.loads(path.with_suffix(".json").read_text(encoding="utf-8"))))
        for path in sorted(ANSWERED.glob(f"{name}-*.ipynb"))
    ]
    return [(lesson_path(name), lesson), *copies]


def answered(lesson: nbformat.NotebookNode, rows: dict) -> nbformat.NotebookNode:
    """A copy of the lesson in which the cell tagged `answers` gives these answers in code.

    `rows` maps a question's id to its row; the row's "answer" is given to `ex.answer`.
    """
    copy = deepcopy(lesson)
    (cell,) = (cell for cell in copy.cells if "answers" in tags(cell))
    arguments = "".join(f"    {key}={row['answer']!r},\n" for key, row in rows.items())
    cell.source = f"ex.answer(\n{arguments})"
    cell.metadata.tags = ["answers"]
    return copy


def tags(cell: nbformat.NotebookNode) -> list[str]:
    return cell.metadata.get("tags", [])


def refreshed(notebook: nbformat.NotebookNode, folder: Path) -> str:
    """Run the notebook in `folder` as a new learner would, and give its text to store."""
    notebook = deepcopy(notebook)
    # By its own word a lesson is known to the page, which runs it when it is opened.
    kept = {name: notebook.metadata[name] for name in ("repairlib",) if name in notebook.metadata}
    notebook.metadata = nbformat.from_dict({"kernelspec": KERNEL} | kept)
    with tempfile.TemporaryDirectory() as home:
        client = NotebookClient(
            notebook,
            kernel_name=KERNEL["name"],
            timeout=CELL_TIMEOUT_S,
            record_timing=False,
            coalesce_streams=True,
            resources={"metadata": {"path": str(folder)}},
        )
        client.execute(env=environment(Path(home)))
    return nbformat.writes(without_traces(notebook)) + "\n"


def environment(home: Path) -> dict[str, str]:
    """This process's environment, with no saved answers, no personal set-up and no date."""
    search = [str(ROOT), os.environ.get("PYTHONPATH", "")]
    return os.environ | {
        "PYTHONPATH": os.pathsep.join(filter(None, search)),
        "REPAIRLIB_HOME": str(home / "repairlib"),
        "IPYTHONDIR": str(home / "ipython"),
        "SOURCE_DATE_EPOCH": "0",
    }


def without_traces(notebook: nbformat.NotebookNode) -> nbformat.NotebookNode:
    """Drop what differs from run to run: widget state, timings, the Python version."""
    notebook.metadata.pop("widgets", None)
    notebook.metadata.get("language_info", {}).pop("version", None)
    for cell in notebook.cells:
        cell.metadata.pop("execution", None)
        for output in cell.get("outputs", []):
            if output.get("data", {}).pop(LIVE_VIEW, None):
                output.data["text/plain"] = LIVE_PANEL
    return notebook


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
