"""One learner's JupyterLab behind the hub, which starts this as the learner's own user.

All that is written lies below that user's home, in a folder which nobody else can enter. Messages
between JupyterLab and kernels go through files in it: on a port of this computer everybody who is
logged in could listen to what a kernel shows.
"""

from __future__ import annotations

import os
import shutil
import sys
from pathlib import Path

from repairlib.faces.hub.places import FONTS, HANDED_IN
from repairlib.faces.lessons.laying import lay_lessons
from repairlib.faces.lessons.opening import furnish
from repairlib.faces.lessons.server import house_options, switches
from repairlib.learn.group import group_file, known_group
from repairlib.learn.learner import current_learner, set_learner

KERNELS = "repairlib.faces.hub.kernels.FewKernels"
# Nobody writes programs here, and a terminal would hold memory that nobody counts.
NOT_NEEDED = ("jupyter_lsp", "jupyter_server_terminals", "notebook_shim")


def main() -> None:
    """Lay the lessons, say who is learning, and serve until the hub or idleness ends it."""
    os.umask(0o077)
    own = Path.home() / "workbook"
    own.mkdir(mode=0o700, exist_ok=True)
    os.environ["REPAIRLIB_HOME"] = str(own)
    for line in lay_lessons(own / "lessons"):
        print(line, file=sys.stderr)
    furnish(own)
    os.environ["JUPYTER_RUNTIME_DIR"] = str(own / "run")  # a socket's path must be short
    user = os.environ["JUPYTERHUB_USER"]
    greet(user)
    _take_what_is_ready(group_file().parent, user)
    from jupyterhub.singleuser.extension import JupyterHubSingleUser

    JupyterHubSingleUser.launch_instance(argv=[*switches(options(own)), *sys.argv[1:]])


def options(own: Path) -> dict[str, object]:
    """The house's JupyterLab, kept small."""
    return house_options(own / "lessons") | {
        "ServerApp.jpserver_extensions": {"jupyterlab": True} | dict.fromkeys(NOT_NEEDED, False),
        "ServerApp.kernel_manager_class": KERNELS,
        "KernelManager.transport": "ipc",
    }


def greet(user: str) -> None:
    """Set the member whose word is this user's name, where nobody has been set yet."""
    group, _ = known_group()
    learner, _ = current_learner()
    if group and not learner.name and user in {one.word for one in group.members}:
        set_learner(group.member(user).name, group.name)


def _take_what_is_ready(hub: Path, user: str) -> None:
    """The way to this learner's folder for handing in; and the list of fonts, which matplotlib
    would need seconds to make for each learner."""
    way, drop = Path.home() / HANDED_IN, hub / HANDED_IN / user
    if drop.is_dir() and not os.path.lexists(way):
        way.symlink_to(drop)
    fonts = Path(os.environ["MPLCONFIGDIR"])
    fonts.mkdir(parents=True, exist_ok=True)
    for ready in (hub / FONTS).glob("fontlist-*.json"):
        if not (fonts / ready.name).exists():
            shutil.copyfile(ready, fonts / ready.name)
