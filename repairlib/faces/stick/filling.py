"""Fill the folder of a stick, or renew it in place.

The sums are taken away first and written last. A stick that was pulled or is full has none, or has
sums that do not fit, and `start.py` says so before it installs anything.
"""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Sequence
from itertools import product
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.core.saving import saying_why, sync_folder
from repairlib.core.tables import LESSON_FOLDER
from repairlib.faces.stick.start import GROUP, SUMS, WHEELS, sums_of
from repairlib.learn.group import read_group

START = Path(__file__).with_name("start.py")
HOUSE = LESSON_FOLDER.parent
PAGE = "page"
HALF = ".part"  # ends the name of a file that is being written
OWN_PYTHON = f"{sys.version_info.major}.{sys.version_info.minor}"
# pip asks this computer, not the other one, whether these are needed.
NAMED_FOR = {"win": ("colorama", "pywinpty"), "macosx": ("appnope",)}
PLACE = "a new or empty folder, or a stick that was made before"
ROOM = "a stick or folder with 200 MB of room, to which you may write"


def fill_stick(folder: Path, place: Path, others: Sequence[str] = (), page: bool = True) -> str:
    """Put the group of a class `folder` and all that it needs into `place`; what was put there.

    `others` are further Pythons (3.12) and platforms as pip names them (win_amd64), beside this
    computer's own. Raises
    RepairlibError when something cannot be had or does not fit; the stick then does not start. A
    place with other files where these would lie is refused, and nothing in it is changed.
    """
    group = read_group(folder / GROUP)
    _may_be_filled(place, (folder / GROUP).read_bytes())
    with saying_why(place, ROOM), tempfile.TemporaryDirectory() as made:
        wheels = _wheels(Path(made), others)
        place.mkdir(parents=True, exist_ok=True)
        (place / SUMS).unlink(missing_ok=True)
        _put(START.read_bytes(), place / START.name)  # first: from now on the place is a stick
        _put_wheels(wheels, place / WHEELS)
        _put((folder / GROUP).read_bytes(), place / GROUP)
        told = _page(place / PAGE) if page else ""
        _put(json.dumps(sums_of(place), indent=1).encode(), place / SUMS)
    size = sum(one.stat().st_size for one in place.rglob("*") if one.is_file()) / 1e6
    lines = [
        f"The stick of {group.name} is in {place}: {size:.0f} MB, {len(wheels)} packages.",
        f"At a computer with Python {' or '.join([OWN_PYTHON, *filter(_is_python, others)])}, "
        f"in that folder: python3 {START.name}",
    ]
    return "\n".join([*lines, told] if told else lines)


def _may_be_filled(place: Path, group: bytes) -> None:
    """Raise where something of somebody else would be overwritten or taken away."""
    with saying_why(place, ROOM):
        start, there = place / START.name, place / GROUP
        if start.is_file() and start.read_bytes().splitlines()[:1] == [_begins()]:
            return
        taken = [one for one in (place / WHEELS, place / PAGE) if one.exists() and not _empty(one)]
        taken += [start] if start.exists() else []
        taken += [there] if there.exists() and there.read_bytes() != group else []
        if taken:
            raise RepairlibError(taken[0], "this is of something else, and would be lost", PLACE)


def _begins() -> bytes:
    """The first line of `start.py`, by which a stick is known."""
    return START.read_bytes().splitlines()[0]


def _empty(folder: Path) -> bool:
    return folder.is_dir() and not any(folder.iterdir())


def _wheels(made: Path, others: Sequence[str]) -> list[Path]:
    """All that is installed, as wheels in `made`: this package, and what the lessons need."""
    from importlib.util import find_spec

    if (HOUSE / "pyproject.toml").exists():  # a clone: what it says now
        if find_spec("hatchling") is None:
            wrong = "this clone is made into a package by hatchling, which is not installed"
            raise RepairlibError("hatchling", wrong, f"{sys.executable} -m pip install hatchling")
        from hatchling.builders.wheel import WheelBuilder

        next(WheelBuilder(str(HOUSE)).build(directory=str(made), versions=["standard"]))
        wanted = ["pip", "--requirement", str(HOUSE / "requirements.txt")]
    else:
        wrong = "the package was installed, and a stick is made from a clone of the repository"
        raise RepairlibError("class stick", wrong, "the command in a clone")
    pythons = [OWN_PYTHON, *(one for one in others if _is_python(one))]
    platforms = ["", *(one for one in others if not _is_python(one))]
    for python, platform in product(pythons, platforms):
        _download(made, wanted, python, platform)
    return sorted(made.glob("*.whl"))


def _is_python(word: str) -> bool:
    return word[:1].isdigit()


def _download(made: Path, wanted: Sequence[str], python: str, platform: str) -> None:
    """Fetch what runs on every Python of this series, on this platform or the one that is named."""
    command = [sys.executable, "-m", "pip", "download", "--quiet", "--only-binary=:all:"]
    command += ["--dest", str(made), "--python-version", f"{python}.0", *wanted]
    if platform:
        named = (more for kind, more in NAMED_FOR.items() if platform.startswith(kind))
        command += ["--platform", platform, *next(named, ())]
    done = subprocess.run(command, capture_output=True, text=True)
    if done.returncode:
        why = (done.stderr.strip().splitlines() or ["it said nothing"])[-1]
        accepted = "a network, once; --also-for 3.12,win_amd64: Pythons, and platforms as of pip"
        raise RepairlibError("pip download", why, accepted)


def _put_wheels(wheels: Sequence[Path], place: Path) -> None:
    """Put them there; what is there already is left, and a wheel of no use any more goes."""
    place.mkdir(exist_ok=True)
    wanted = {one.name for one in wheels}
    for old in (*place.glob("*.whl"), *place.glob(f"*.whl{HALF}")):
        if old.name not in wanted:
            old.unlink()
    for wheel in wheels:
        _put(wheel.read_bytes(), place / wheel.name)


def _put(content: bytes, path: Path) -> None:
    """Put a file there, down to the stick itself; one that is the same is left as it is."""
    if path.is_file() and path.read_bytes() == content:
        return
    fresh = path.with_name(path.name + HALF)
    with open(fresh, "wb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())
    os.replace(fresh, path)
    sync_folder(path.parent)


def _page(place: Path) -> str:
    """The quick check as a page; a line when the Python that it runs on cannot be had."""
    from repairlib.faces.page.building import build_page, is_of_a_page

    try:
        build_page(place)
    except RepairlibError as error:
        if is_of_a_page(place):
            shutil.rmtree(place, ignore_errors=True)
        return f"Without the page for a phone: {error}"
    return ""
