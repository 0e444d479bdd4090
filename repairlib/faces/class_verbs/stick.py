"""`class stick`: all that a group needs on a memory stick, for computers without a network."""

from __future__ import annotations

from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.faces.documents import json_text
from repairlib.faces.stick import fill_stick

USAGE = "class stick FOLDER --to PLACE"


def stick(words: list[str], options: dict[str, str], as_json: bool) -> str:
    """Fill the stick at PLACE for the group of a class folder, or renew what is there."""
    if len(words) != 1 or "--to" not in options:
        raise RepairlibError(" ".join(words), "a class folder and --to are due", USAGE)
    place = Path(options["--to"]).expanduser()
    others = [one for one in options.get("--also-for", "").split(",") if one]
    told = fill_stick(Path(words[0]).expanduser(), place, others, "--no-page" not in options)
    return json_text({"folder": str(place), "told": told.splitlines()}) if as_json else told
