"""`class hub`: the group's notebook server, made ready on this computer."""

from __future__ import annotations

import os
import sys
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.faces.documents import json_text
from repairlib.faces.hub import places, users
from repairlib.faces.hub.setting_up import Wanted, set_up, set_up_for_containers, words_of
from repairlib.learn.group import GROUP_FILE, read_group

USAGE = "class hub FOLDER --out /srv/bench --instructor NAME"


def hub(words: list[str], options: dict[str, str], as_json: bool) -> str:
    """Write the hub of the group in a class folder; make or remove its users when asked to."""
    if len(words) != 1 or "--out" not in options:
        raise RepairlibError(" ".join(words), "a class folder and --out are due", USAGE)
    place = Path(options["--out"]).expanduser().absolute()
    if "--remove-users" in options:
        calls = users.calls_to_remove(place)
        users.run(calls)
        return "\n".join([*users.as_typed(calls), f"Done. The folders in {place} stay."])
    group = read_group(Path(words[0]).expanduser() / GROUP_FILE)
    wanted = Wanted(
        options.get("--instructor", os.environ.get("SUDO_USER", "")),
        _number(options.get("--port", "8000")),
        _number(options.get("--memory", "600")),
        options.get("--proxy", ""),
        options.get("--containers", ""),
    )
    if wanted.image:
        told = set_up_for_containers(place, group, wanted)
        return "\n".join([f"Containers for {group.name}: {place / places.CONFIGURATION}", *told])
    calls = users.calls_to_make(place, words_of(group), wanted.instructor)
    told = set_up(place, group, wanted)
    if "--make-users" in options:
        users.make(place, words_of(group), wanted.instructor)
    steps = _steps(place, words[0], "--make-users" in options, calls)
    if as_json:
        told_as = {"folder": str(place), "to_mend": told, "calls": users.as_typed(calls)}
        return json_text(told_as)
    return "\n".join([f"The hub of {group.name} is in {place}.", *told, *steps])


def _steps(place: Path, folder: str, made: bool, calls: list[users.Call]) -> list[str]:
    """What is left to do, in its order."""
    if made:
        first = [f"Its users are made. Passwords, to cut into slips: {place / places.PASSWORDS}"]
    else:
        first = ["These calls make its users. --make-users makes them, with passwords:"]
        first += [f"  {one}" for one in users.as_typed(calls)]
    return [
        *first,
        f"Start it as root: {sys.executable} -m jupyterhub --config {place / places.CONFIGURATION}",
        f"Collect: python -m repairlib class collect {folder} {place / places.HANDED_IN}",
    ]


def _number(text: str) -> int:
    if text.isascii() and text.isdigit() and len(text) < 6 and 0 < int(text) < 65533:
        return int(text)
    raise RepairlibError(text, "no such number", "--port 8000, --memory 600 (in MB)")
