"""The types hold: mypy reads each folder below with the settings of pyproject.toml."""

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
FOLDERS = ("core", "markings")


@pytest.mark.slow
@pytest.mark.parametrize("folder", FOLDERS)
def test_folder_has_no_error_of_types(folder, tmp_path):
    # A cache of its own: two runs at the same time must not write into one.
    command = [sys.executable, "-m", "mypy", "--cache-dir", str(tmp_path), f"repairlib/{folder}"]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr
