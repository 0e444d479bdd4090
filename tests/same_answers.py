"""Ask two trees of this project the same questions and print every answer that differs.

    python -m tests.same_answers BEFORE AFTER [PATTERN]

BEFORE and AFTER are folders of two checkouts; lines in which PATTERN is found are left out. Asked
of each, through the command line alone, so that a rearranged tree can be compared with the one
before it: every marking of `corpus/markings.txt` without a part and as each kind of part, the page
and one call of every calculator (`corpus/calls.txt`), and the demo plans as text, JSON, CSV and
sheet. Exit status 1 when anything differs.
"""

from __future__ import annotations

import difflib
import json
import re
import shlex
import subprocess
import sys
import tempfile
from pathlib import Path

CORPUS = Path(__file__).parent / "corpus"
KINDS = (
    "resistor", "chip-resistor", "capacitor", "tantalum", "can", "radial", "axial", "inductor",
    "chip-inductor", "fuse", "date", "voltage-code", "temperature-characteristic", "case-size",
)  # fmt: skip
LISTS = ("keyboard", "desk-radio", "echo-unit", "printer-controller")
WITH_ALL = (
    "datasets/demo/keyboard-parts.csv --board datasets/demo/keyboard-board.csv "
    "--measured datasets/demo/keyboard-measured.csv --catalogue datasets/demo/parts-catalogue.csv"
)
MOST_SHOWN = 14  # lines of one difference
# Runs in the tree that is asked, and uses nothing of it but `python -m repairlib`.
ASKER = """
import contextlib, io, json, runpy, sys
sys.path.insert(0, ".")
answers = []
for command in json.load(sys.stdin):
    out, err, status = io.StringIO(), io.StringIO(), 0
    sys.argv = ["repairlib", *command]
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        try:
            runpy.run_module("repairlib", run_name="__main__")
        except SystemExit as end:
            status = end.code
    answers.append([out.getvalue(), err.getvalue(), status])
json.dump(answers, sys.stdout)
"""


def commands(out: Path) -> list[list[str]]:
    """Every command of the corpus; the plans are written below the folder `out`."""
    markings = (CORPUS / "markings.txt").read_text(encoding="utf-8").splitlines()
    asked = [["read", marking] for marking in markings]
    asked += [["read", marking, "--json"] for marking in markings]
    asked += [["read", marking, "--as", kind] for marking in markings for kind in KINDS]
    for line in (CORPUS / "calls.txt").read_text(encoding="utf-8").splitlines():
        name, *values = shlex.split(line)
        asked += [["calc", name], ["calc", name, *values], ["calc", name, *values, "--json"]]
    asked += [["calc"], ["calc", "--json"], ["--help"]]
    plans = [f"datasets/demo/{name}-parts.{end}" for name in LISTS for end in ("csv", "tsv", "txt")]
    plans += [WITH_ALL, f"{WITH_ALL} --boards 12"]
    for place, plan in enumerate(plans):
        words = ["plan", *plan.split()]
        asked += [words, [*words, "--json"], [*words, "--out", str(out / str(place))]]
    return asked


def answers(tree: Path) -> dict[str, object]:
    """Each command of the corpus with what the tree printed, and each file its plans wrote."""
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder)
        asked = commands(out)
        done = subprocess.run(
            [sys.executable, "-c", ASKER], cwd=tree, input=json.dumps(asked), capture_output=True,
            text=True, check=True,
        )  # fmt: skip
        printed = json.loads(done.stdout.replace(folder, "OUT"))
        names = [shlex.join(one).replace(folder, "OUT") for one in asked]
        said = dict(zip(names, printed, strict=True))
        files = sorted(path for path in out.rglob("*") if path.is_file())
        said |= {str(path.relative_to(out)): path.read_text(encoding="utf-8") for path in files}
    return said


def _lines(answer: object, left_out: re.Pattern | None) -> list[str]:
    if isinstance(answer, list):
        out, err, status = answer
        lines = [*out.splitlines(), *err.splitlines(), f"exit status {status}"]
    else:
        lines = str(answer).splitlines()
    return [line for line in lines if not (left_out and left_out.search(line))]


def main(before: str, after: str, pattern: str = "") -> int:
    left_out = re.compile(pattern) if pattern else None
    old, new = (
        {key: _lines(answer, left_out) for key, answer in answers(Path(tree)).items()}
        for tree in (before, after)
    )
    differing = [key for key in {**old, **new} if old.get(key) != new.get(key)]
    for key in differing:
        print(f"--- {key}")
        changes = difflib.unified_diff(old.get(key, []), new.get(key, []), lineterm="", n=0)
        print(*[f"    {line[:200]}" for line in changes][2:MOST_SHOWN], sep="\n")
    print(f"{len(old)} answers before, {len(new)} after, {len(differing)} differ")
    return 1 if differing else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
