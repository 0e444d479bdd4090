"""A JupyterLab for learners: quiet, file list folded, and no key that deletes a cell unasked.

Everything stands in one private folder. The settings are defaults there: what a learner chooses
in the Settings menu is kept beside them and wins. The user's own Jupyter set-up is not touched.
"""

from __future__ import annotations

import json
import os
from pathlib import Path

QUIET = {
    # Every cell is on the page, seen or not: what is jumped to or searched for is there.
    "@jupyterlab/notebook-extension:tracker": {
        "windowingMode": "none",
        "scrollPastEnd": False,  # a lesson ends where it ends
    },
    "@jupyterlab/apputils-extension:notification": {"fetchNews": "false", "checkForUpdates": False},
    "@jupyterlab/docmanager-extension:plugin": {"defaultViewers": {"markdown": "Markdown Preview"}},
}
# Else each kernel warns in the terminal that it talks, inside this computer, without encryption.
# What is typed into cells is not kept for whoever comes next: it may hold a name.
KERNEL = {"IPKernelApp": {"log_level": "ERROR"}, "HistoryManager": {"enabled": False}}
LARGE = {"code-font-size": "18px", "content-font-size1": "20px", "ui-font-size1": "18px"}
FOLDED = {"collapsed": True, "visible": True, "current": None, "widgets": []}


def private_environment(folder: Path, large: bool = False) -> dict[str, str]:
    """The variables that keep all that JupyterLab and its kernels write in `folder`.

    Larger type is a learner's choice to JupyterLab, not a default, so it has choices of its own.
    """
    places = {
        "JUPYTER_CONFIG_DIR": "config",
        "JUPYTER_DATA_DIR": "data",
        "JUPYTER_RUNTIME_DIR": "runtime",
        "JUPYTERLAB_SETTINGS_DIR": "settings-large" if large else "settings",
        "JUPYTERLAB_WORKSPACES_DIR": "workspaces",
        "IPYTHONDIR": "ipython",
        "MPLCONFIGDIR": "matplotlib",
    }
    return {name: str(folder / place) for name, place in places.items()}


def write_settings(folder: Path, large: bool = False) -> None:
    """Write the settings into the private `folder`, with larger type when `large`."""
    keys = {"shortcuts": [key | {"disabled": True} for key in bare_keys()]}
    settings = QUIET | {"@jupyterlab/shortcuts-extension:shortcuts": keys}
    _write(folder / "config" / "labconfig" / "default_setting_overrides.json", settings)
    _write(folder / "ipython" / "profile_default" / "ipython_kernel_config.json", KERNEL)
    themes = Path("@jupyterlab", "apputils-extension", "themes.jupyterlab-settings")
    if large and not (folder / "settings-large" / themes).exists():
        _write(folder / "settings-large" / themes, {"overrides": LARGE})
    if not (folder / "workspaces").exists():
        _fold_file_list(folder / "workspaces")


def _write(path: Path, content: dict) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(json.dumps(content), encoding="utf-8")


def bare_keys() -> list[dict]:
    """JupyterLab's shortcuts in a notebook that are letters or digits without Ctrl or Alt.

    A learner who types beside a box must not lose a cell by d, d or x, nor the kernel by 0, 0.
    """
    from jupyterlab.commands import get_app_dir

    schemas = Path(get_app_dir()) / "schemas" / "@jupyterlab"
    found = []
    for name in ("notebook-extension/tracker.json", "mainmenu-extension/plugin.json"):
        schema = json.loads((schemas / name).read_text(encoding="utf-8"))
        found += [key for key in schema["jupyter.lab.shortcuts"] if _is_bare(key.get("keys"))]
    return found


def _is_bare(keys: list[str] | None) -> bool:
    """True for ["D", "D"] and ["Shift M"]; not for ["Ctrl M"], ["Enter"] or [""]."""
    return bool(keys) and all(len(key.removeprefix("Shift ")) == 1 for key in keys)


def _fold_file_list(workspaces: Path) -> None:
    from jupyterlab_server.workspaces_handler import WorkspacesManager

    data = {"layout-restorer:data": {"left": FOLDED, "right": FOLDED}}
    workspace = {"data": data, "metadata": {"id": "default"}}
    WorkspacesManager(os.fspath(workspaces)).save("default", json.dumps(workspace))
