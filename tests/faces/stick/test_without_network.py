"""A real stick on a bare computer: no network, no repository, nothing installed but Python.

CLASS=all python -m pytest -n 0 tests/faces/stick/test_without_network.py
"""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
import sys
import time
import urllib.request

import pytest

from repairlib.faces.stick import fill_stick
from repairlib.learn.group import Group, Member
from tests.browser.lab import free_port, stop

pytestmark = [
    pytest.mark.behaviour,
    pytest.mark.slow,
    pytest.mark.skipif(os.environ.get("CLASS") != "all", reason="minutes, with CLASS=all"),
]
GROUP = Group("Tuesday bench", (Member("Ada Example", "kite"),))
MOST_S = 120
NOWHERE = "http://127.0.0.1:9"  # nobody listens there


def environment(home) -> dict[str, str]:
    """Of somebody who has Python and nothing else; every way out leads to nowhere."""
    proxies = dict.fromkeys(("http_proxy", "https_proxy", "all_proxy"), NOWHERE)
    return proxies | {"HOME": str(home), "PATH": "/usr/bin:/bin", "LANG": "C.UTF-8"}


def test_one_command_installs_and_opens_the_lessons_with_the_group(tmp_path):
    folder, stick, home = (tmp_path / name for name in ("class", "stick", "home"))
    folder.mkdir()
    home.mkdir()
    (folder / "group.json").write_text(json.dumps(GROUP.to_dict() | {"format": 1}))
    fill_stick(folder, stick, page=False)

    began = time.monotonic()
    with_group = [sys.executable, "-I", "start.py", "--port", str(free_port())]
    process = subprocess.Popen(
        with_group, cwd=stick, env=environment(home), stdout=subprocess.PIPE, text=True
    )
    try:
        lines = []
        for line in process.stdout:
            lines.append(line)
            if found := re.search(r"http\S+", line):
                break
        address = found[0]
        with urllib.request.urlopen(address, timeout=60) as answer:
            assert answer.status == 200
        took = time.monotonic() - began
    finally:
        stop(process)
    print(f"installed and open after {took:.0f} s; load {os.getloadavg()[0]:.1f}")
    assert "This computer knows the group Tuesday bench: 1 member.\n" in lines
    assert not shutil.which("repairlib", path=environment(home)["PATH"])
    per_core = max(1.0, os.getloadavg()[0] / (os.cpu_count() or 1))
    assert took < MOST_S * per_core
