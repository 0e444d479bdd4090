"""The types hold: mypy reads the folders below with the settings of pyproject.toml."""

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
FOLDERS = ("core", "markings", "learn", "show", "teach", "firmware", "missing_parts", "bench")


@pytest.mark.slow
def test_folders_have_no_error_of_types(tmp_path):
    # A cache of its own: two runs at the same time must not write into one.
    folders = [f"repairlib/{folder}" for folder in FOLDERS]
    command = [sys.executable, "-m", "mypy", "--cache-dir", str(tmp_path), *folders]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr
