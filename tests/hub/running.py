"""A hub of our own for the tests: its users are made before, and go whatever happens.

It needs the rights of root, JupyterHub (`pip install jupyterhub`) and its proxy (`npm install
--global configurable-http-proxy`).
"""

from __future__ import annotations

import importlib.util
import json
import os
import pwd
import secrets
import shutil
import signal
import stat
import subprocess
import sys
import time
import urllib.error
import urllib.request
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import NamedTuple

from repairlib.learn.group import Group, Member
from tests.browser.lab import free_port, stop
from tests.refresh import ROOT

RUN = secrets.token_hex(2)  # two runs at a time are not in each other's way
INSTRUCTOR = f"hubteach{RUN}"
START_TIMEOUT_S = 120
SYSTEM_PYTHON = Path("/usr/bin/python3")


class Hub(NamedTuple):
    """A hub that runs: its door, its folder, the class folder, the learners' passwords."""

    address: str
    place: Path
    folder: Path
    passwords: dict[str, str]
    python: Path
    process: subprocess.Popen

    def as_user(self, user: str, command: list[str]) -> subprocess.CompletedProcess:
        """Run a command as a user of the system."""
        who = pwd.getpwnam(user)
        return subprocess.run(
            command,
            user=user,
            group=who.pw_gid,
            extra_groups=os.getgrouplist(user, who.pw_gid),
            cwd="/",
            env={"HOME": who.pw_dir, "PATH": os.environ["PATH"], "PYTHONPATH": str(ROOT)},
            capture_output=True,
            text=True,
        )


def missing() -> str:
    """Why no hub can run here, or ""."""
    if os.environ.get("CLASS") != "all":
        return "real users of this system log in with CLASS=all"
    if not hasattr(os, "geteuid") or os.geteuid() != 0:
        return "users of the system can be made by root only"
    if importlib.util.find_spec("jupyterhub") is None:
        return "JupyterHub is not installed: pip install jupyterhub"
    if shutil.which("configurable-http-proxy") is None:
        return "its proxy is not installed: npm install --global configurable-http-proxy"
    if shut := [one for one in (ROOT, Path(sys.prefix)) if not _everybody_enters(one)]:
        return f"other users cannot enter {shut[0]}"
    return "no Python of this version that other users can start" if _no_python() else ""


@contextmanager
def running_hub(words: list[str]):
    """A hub for members with these words; everything of it goes at the end."""
    place = _new_folder()
    python = python_for_everybody(place / "python")
    folder = place / "class"
    command = [str(python), "-m", "repairlib", "class", "hub", str(folder), "--out", str(place)]
    port = free_port()
    process = None
    try:
        _run(["useradd", "--no-create-home", "--home-dir", "/", INSTRUCTOR])
        _write_group(folder, words)
        _run([*command, "--instructor", INSTRUCTOR, "--port", str(port), "--make-users"])
        lines = (place / "passwords.txt").read_text().splitlines()
        process = _start(place, python)
        address = f"http://127.0.0.1:{port}"
        _wait_until_up(address, process, place / "hub.log")
        yield Hub(address, place, folder, dict(line.split() for line in lines), python, process)
    finally:
        if process:
            stop(process, patience=60)
        for user in (*words, INSTRUCTOR):
            _end_all_of(user)
        subprocess.run([*command, "--remove-users"], env=_environment(), capture_output=True)
        subprocess.run(["userdel", INSTRUCTOR], capture_output=True)
        shutil.rmtree(place, ignore_errors=True)


def python_for_everybody(folder: Path) -> Path:
    """This environment's Python, or one like it that other users may start too.

    The Python of this environment may stand in the home of root. Then a folder of links makes an
    environment of the system's Python, which is of the same version, and of the same libraries.
    """
    if _everybody_enters(Path(sys.executable).resolve()):
        return Path(sys.executable)
    (folder / "bin").mkdir(parents=True)
    (folder / "bin" / "python").symlink_to(SYSTEM_PYTHON)
    for name in ("lib", "etc", "share"):
        (folder / name).symlink_to(Path(sys.prefix) / name)
    settings = f"home = {SYSTEM_PYTHON.parent}\ninclude-system-site-packages = false\n"
    (folder / "pyvenv.cfg").write_text(settings)
    return folder / "bin" / "python"


def _no_python() -> bool:
    if _everybody_enters(Path(sys.executable).resolve()):
        return False
    said = subprocess.run([SYSTEM_PYTHON, "--version"], capture_output=True, text=True)
    return said.stdout.split(".")[:2] != f"Python {sys.version}".split(".")[:2]


def _everybody_enters(path: Path) -> bool:
    return all(one.stat().st_mode & stat.S_IXOTH for one in (path, *path.parents))


def _new_folder() -> Path:
    place = Path(f"/tmp/hub-{secrets.token_hex(4)}")
    place.mkdir(mode=0o755)
    return place


def _write_group(folder: Path, words: list[str]) -> None:
    members = tuple(Member(f"Learner {word.title()}", word) for word in words)
    folder.mkdir()
    group = Group("Tuesday bench", members, ("00-start-here",))
    (folder / "group.json").write_text(json.dumps(group.to_dict() | {"format": 1}))
    shutil.chown(folder, INSTRUCTOR)


def _environment() -> dict[str, str]:
    return {"PATH": os.environ["PATH"], "PYTHONPATH": str(ROOT), "HOME": "/root"}


def _run(command: list[str]) -> None:
    done = subprocess.run(command, env=_environment(), cwd="/", capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr


def _start(place: Path, python: Path) -> subprocess.Popen:
    command = [str(python), "-m", "jupyterhub", "--config", str(place / "jupyterhub_config.py")]
    with open(place / "hub.log", "w") as log:
        return subprocess.Popen(command, cwd=place, env=_environment(), stdout=log, stderr=log)


def _wait_until_up(address: str, process: subprocess.Popen, log: Path) -> None:
    deadline = time.monotonic() + START_TIMEOUT_S
    while time.monotonic() < deadline and process.poll() is None:
        try:
            with urllib.request.urlopen(f"{address}/hub/login", timeout=5):
                return
        except (urllib.error.URLError, ConnectionError):
            time.sleep(0.1)  # between two questions
    raise AssertionError(f"the hub did not start:\n{log.read_text()}")


def _end_all_of(user: str) -> None:
    """End the processes of one user that we have made, each by its number."""
    listed = subprocess.run(["ps", "-u", user, "-o", "pid="], capture_output=True, text=True)
    for number in listed.stdout.split():
        with suppress(ProcessLookupError):
            os.kill(int(number), signal.SIGKILL)
