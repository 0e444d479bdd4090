"""An install without extras: what must run on the standard library alone."""

import subprocess
import sys
import tomllib
from importlib.metadata import version
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
BLOCKED = """
import sys

class NothingInstalled:
    def find_spec(self, name, path=None, target=None):
        if name.partition(".")[0] not in {*sys.stdlib_module_names, "repairlib"}:
            raise ModuleNotFoundError(f"No module named {name!r}", name=name)

sys.meta_path.insert(0, NothingInstalled())
"""
STEPS = {
    "read a marking": """
from repairlib import read
assert str(read("104K")[0]).startswith("100")
assert str(read("brown black red gold")[0]).startswith("1")
""",
    "check a polarity": """
from repairlib.polarity import check_polarity
words = ["aluminium radial", "stripe with minus signs", "plus sign", "part's mark at the other end"]
assert check_polarity(*words).verdict == "right"
""",
    "draw parts": """
from repairlib.show import BODIES, draw_bands, draw_part, draw_polarity
assert draw_part("radial", "10µF\\n25V").svg.startswith("<svg")
assert draw_bands("brown-black-red-gold").alt
""",
    "plan a recap and print its sheet": """
from repairlib.recap import plan
from repairlib.show.sheets import bench_sheet
made = plan("Ref,Value,Type\\nC1-C2,10/16,elect\\nC3,.1,film\\n")
assert "C1" in bench_sheet(made) and len(made.items) == 2
""",
    "keep a job card and print it": """
from tempfile import TemporaryDirectory
from repairlib.record import add_entry, open_job, read_card
from repairlib.show.sheets import job_sheet
with TemporaryDirectory() as folder:
    path = open_job(folder, "Ana", set="desk radio", job="hum", date="2026-11-28")
    add_entry(path, "hours", "Ana", spent="1.5")
    assert "desk radio" in job_sheet(read_card(path))
""",
    "judge a capacitor": """
from repairlib.health import judge_capacitor
judge_capacitor("aluminium general 105", "470 µF", "25 V", measured="431 µF", uncertainty="1 %")
""",
    "ask and mark questions": """
from repairlib.learn import LESSONS, mark, questions_of
for lesson in LESSONS:
    assert mark(questions_of(lesson), {}, lesson, "").points == 0
""",
}


def run(code: str) -> subprocess.CompletedProcess:
    return subprocess.run(
        [sys.executable, "-c", BLOCKED + code], cwd=ROOT, capture_output=True, text=True
    )


def test_the_block_blocks():
    assert "No module named 'numpy'" in run("import numpy").stderr


@pytest.mark.parametrize("step", STEPS)
def test_the_standard_library_is_enough_to(step):
    done = run(STEPS[step])
    assert done.returncode == 0, done.stderr


def test_what_needs_more_says_what_to_install():
    done = run(
        "from repairlib.faces.cli import main\nsys.exit(main(['calc', 'joint_heat', 'tip=fine']))"
    )
    assert done.returncode == 2
    assert done.stderr.count("\n") == 1
    assert "numpy" in done.stderr and "repairlib[arrays]" in done.stderr


def test_a_bare_install_brings_nothing_else():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    assert not project.get("dependencies")
    extras = project["optional-dependencies"]
    pinned = (ROOT / "requirements.txt").read_text(encoding="utf-8")
    names = {word.partition(">=")[0] for extra in extras.values() for word in extra}
    assert {"numpy", "jupyterlab", "ipywidgets"} <= names
    assert all(f"{name}~=" in pinned for name in names)


def test_widgets_of_one_panel_are_answered_one_after_the_other():
    """From ipykernel 7 on in two threads at once; see DEVELOPERS.md, "Decisions"."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    wanted = [one for one in project["optional-dependencies"]["lessons"] if "ipykernel" in one]
    assert [one.rpartition(",")[2] for one in wanted] == ["<7"]
    assert int(version("ipykernel").partition(".")[0]) < 7
