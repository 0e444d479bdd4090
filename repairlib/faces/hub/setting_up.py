"""The folder of a hub: the configuration, the group, a list of fonts; and what is left to do.

Nothing of the system is changed here. The calls that make the users are shown, and made when that
is asked for.
"""

from __future__ import annotations

import compileall
import os
import shutil
import stat
import subprocess
import sys
from pathlib import Path
from string import Template
from typing import NamedTuple

from repairlib.core.saving import saying_why
from repairlib.faces.hub import places, users
from repairlib.learn import files
from repairlib.learn.group import GROUP_FILE, Group

LIBRARY = Path(__file__).parents[2]
ON_THIS_COMPUTER = Path(__file__).with_name("configuration.template")
FOR_CONTAINERS = Path(__file__).with_name("containers.template")
PROXY = "configurable-http-proxy"


class Wanted(NamedTuple):
    """What the instructor says: ports of this computer, memory of each process in MB, who reads."""

    instructor: str
    port: int = 8000
    memory: int = 600
    proxy: str = ""  # the command of the proxy; "" looks for it
    image: str = ""  # of containers


def set_up(place: Path, group: Group, wanted: Wanted) -> list[str]:
    """Write the folder of the hub; what an instructor should know or mend, one line each.

    Raises RepairlibError when it cannot be written, or a member's word can be no user here.
    """
    place = place.absolute()
    users.calls_to_make(place, words_of(group), wanted.instructor)  # its refusals come first
    _write(place, group, configuration(place, group, wanted))
    with saying_why(place):
        (place / places.INSIDE).mkdir(mode=0o700, exist_ok=True)
    return [*_fonts(place), *_compiled(), *_unreadable(), *_missing(wanted)]


def set_up_for_containers(place: Path, group: Group, wanted: Wanted) -> list[str]:
    """Write the configuration for containers made of `wanted.image`, and the group beside it.

    Raises RepairlibError when it cannot be written, or the instructor's name can be none.
    """
    users.may_see_who_is_here(wanted.instructor, words_of(group))
    _write(place.absolute(), group, configuration(place, group, wanted, FOR_CONTAINERS))
    return ["Nothing of it was run in a cluster: read its first lines."]


def _write(place: Path, group: Group, text: str) -> None:
    """Write the configuration, and the group with the way by which its members hand in."""
    with saying_why(place):
        place.mkdir(mode=0o755, parents=True, exist_ok=True)
        place.chmod(0o755)
        (place / places.CONFIGURATION).write_text(text, "utf-8")
    path = place / GROUP_FILE
    with files.locked(path):
        files.write(path, group._replace(hand_in_to=f"~/{places.HANDED_IN}").to_dict())
    with saying_why(path):
        path.chmod(0o644)


def words_of(group: Group) -> list[str]:
    """The names that the members have as users."""
    return [one.word for one in group.members]


def configuration(
    place: Path, group: Group, wanted: Wanted, template: Path = ON_THIS_COMPUTER
) -> str:
    """The text of jupyterhub_config.py. What somebody typed stands in it as Python writes a text,
    quotation marks and all, so that nothing of it can be read as code."""
    known = {name.lower(): value for name, value in vars(places).items() if isinstance(value, str)}
    return Template(template.read_text("utf-8")).substitute(
        known
        | {
            "group": repr(group.name),
            "group_file": GROUP_FILE,
            "place": place,
            "python": sys.executable,
            "library": LIBRARY.parent,
            "instructor": repr(wanted.instructor),
            "words": ", ".join(map(repr, words_of(group))),
            "port": wanted.port,
            "hub_port": wanted.port + 1,
            "proxy_port": wanted.port + 2,
            "proxy": repr(_proxy(wanted)),
            "memory": wanted.memory,
            "image": repr(wanted.image),
        }
    )


def _proxy(wanted: Wanted) -> str:
    return wanted.proxy or shutil.which(PROXY) or PROXY


def _fonts(place: Path) -> list[str]:
    """Let matplotlib make its list of fonts once; each learner's kernel takes it over."""
    script = "import matplotlib.font_manager"
    environment = os.environ | {"MPLCONFIGDIR": str(place / places.FONTS)}
    done = subprocess.run([sys.executable, "-c", script], env=environment, capture_output=True)
    for path in (place / places.FONTS, *(place / places.FONTS).glob("*")):
        path.chmod(path.stat().st_mode | 0o055)
    return ["matplotlib made no list of fonts: first charts will be slow."] * bool(done.returncode)


def _compiled() -> list[str]:
    """Compile this library now: learners cannot write beside it, and would compile each time."""
    done = compileall.compile_dir(str(LIBRARY), quiet=2)
    return ["The library could not be compiled: starts will be slower."] * (not done)


def _unreadable() -> list[str]:
    """Folders of the install that learners cannot read, or could change."""
    lines = []
    for path in dict.fromkeys((LIBRARY, Path(sys.prefix), Path(sys.base_prefix))):
        shut = [one for one in (path, *path.parents) if not one.stat().st_mode & stat.S_IXOTH]
        if shut:
            lines.append(f"Learners cannot enter {shut[-1]}, where {path} is: install in /opt.")
        if path.stat().st_mode & stat.S_IWOTH:
            lines.append(f"Learners could change {path}: chmod o-w it.")
    return lines


def _missing(wanted: Wanted) -> list[str]:
    from importlib.util import find_spec

    lines = []
    if find_spec("jupyterhub") is None:
        lines.append(f"JupyterHub is missing: {sys.executable} -m pip install jupyterhub")
    if not shutil.which(_proxy(wanted)):
        lines.append(f"Its proxy is missing: npm install --global {PROXY}")
    return lines
