"""A JupyterLab of our own for the browser test: temporary folders, a free port, no pop-ups."""

from __future__ import annotations

import json
import os
import re
import secrets
import shutil
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from contextlib import contextmanager
from pathlib import Path

from tests import refresh

TOKEN = secrets.token_hex(16)  # others on this computer may not run code through it
START_TIMEOUT_S = 60
WAIT_MS = 60_000
LAUNCH = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
SETTINGS = {
    # Every cell is on the page, seen or not; no news or update pop-ups.
    "notebook-extension/tracker": {"windowingMode": "none"},
    "apputils-extension/notification": {"fetchNews": "false", "checkForUpdates": False},
}


def find_browser() -> str | None:
    """The path of an installed Chromium or Chrome, or None."""
    names = ("chromium", "chromium-browser", "google-chrome")
    return next((path for path in map(shutil.which, names) if path), None)


BROWSER = find_browser()


@contextmanager
def running_lab(folder: Path):
    """Serve a copy of the lessons from `folder`; gives the address of a notebook by its name."""
    shutil.copytree(refresh.LESSONS, folder / "lessons")
    write_settings(folder / "settings")
    port = free_port()
    log = folder / "jupyterlab.log"
    with open(log, "w") as output:
        server = subprocess.Popen(
            command(port, folder / "lessons"),
            env=environment(folder),
            stdout=output,
            stderr=subprocess.STDOUT,
        )
        try:
            wait_until_up(port, server, log)
            yield lambda name: f"http://127.0.0.1:{port}/lab/tree/{name}.ipynb?reset&token={TOKEN}"
        finally:
            stop(server)


@contextmanager
def lessons_opened(home):
    """The command as a learner types it; gives the address that it prints."""
    command = [sys.executable, "-m", "repairlib", "lessons", "--port", str(free_port())]
    quiet = {
        name: value for name, value in os.environ.items() if name not in ("DISPLAY", "BROWSER")
    }
    server = subprocess.Popen(
        command,
        cwd=refresh.ROOT,
        env=quiet | {"REPAIRLIB_HOME": str(home), "PYTHONPATH": str(refresh.ROOT)},
        stdout=subprocess.PIPE,
        text=True,
    )
    try:
        lines = iter(server.stdout.readline, "")
        yield next(found[0] for line in lines if (found := re.search(r"http\S+", line)))
    finally:
        stop(server)


def stop(server: subprocess.Popen, patience: float = 30) -> None:
    """Ask JupyterLab to end, which ends its kernels too; make it end if it does not."""
    server.terminate()
    try:
        server.wait(timeout=patience)
    except subprocess.TimeoutExpired:
        server.kill()
        server.wait()


def command(port: int, lessons: Path) -> list[str]:
    options = {
        "ServerApp.ip": "127.0.0.1",
        "ServerApp.port": port,
        "ServerApp.port_retries": 0,
        "ServerApp.root_dir": lessons,
        "ServerApp.open_browser": False,
        "ServerApp.allow_root": True,  # CI runs as root in a container
        "IdentityProvider.token": TOKEN,
        "LabApp.news_url": None,
        "LabApp.check_for_updates_class": "jupyterlab.NeverCheckForUpdate",
    }
    switches = [f"--{name}={value}" for name, value in options.items()]
    return [sys.executable, "-m", "jupyterlab", *switches]


def environment(folder: Path) -> dict[str, str]:
    """As for a refresh, and every other place that JupyterLab writes to is in `folder` as well."""
    return refresh.environment(folder) | {
        "JUPYTER_CONFIG_DIR": str(folder / "config"),
        "JUPYTER_DATA_DIR": str(folder / "data"),
        "JUPYTER_RUNTIME_DIR": str(folder / "runtime"),
        "JUPYTERLAB_SETTINGS_DIR": str(folder / "settings"),
        "JUPYTERLAB_WORKSPACES_DIR": str(folder / "workspaces"),
    }


def write_settings(folder: Path) -> None:
    for name, values in SETTINGS.items():
        path = folder / "@jupyterlab" / f"{name}.jupyterlab-settings"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(json.dumps(values), encoding="utf-8")


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


def wait_until_up(port: int, server: subprocess.Popen, log: Path) -> None:
    """Return when the server answers; fail with its log when it ends or takes too long."""
    address = f"http://127.0.0.1:{port}/api/status?token={TOKEN}"
    deadline = time.monotonic() + START_TIMEOUT_S
    while time.monotonic() < deadline and server.poll() is None:
        try:
            with urllib.request.urlopen(address, timeout=5):
                return
        except (urllib.error.URLError, ConnectionError):
            time.sleep(0.1)  # between two questions, not instead of an answer
    raise AssertionError(f"JupyterLab did not start:\n{log.read_text()}")
