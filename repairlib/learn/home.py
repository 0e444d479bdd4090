"""Where everything is remembered: one folder outside the workbook, for each person or computer."""

from __future__ import annotations

import hashlib
import os
from pathlib import Path

from repairlib.core.draws import normal
from repairlib.core.errors import RepairlibError
from repairlib.learn import files


def home() -> Path:
    """The folder of everything remembered: REPAIRLIB_HOME, or the user's own data folder.

    Raises RepairlibError when either begins with the home of a user who has none.
    """
    from platformdirs import user_data_dir

    chosen = os.environ.get("REPAIRLIB_HOME", "").strip()
    try:
        return Path(chosen or user_data_dir("repairlib", appauthor=False)).expanduser()
    except RuntimeError:
        where = chosen or "your home folder"
        raise RepairlibError(where, "this computer knows no such home", files.WRITABLE) from None


def file_name(text: str) -> str:
    """A file name for any text: some plain letters to read, a hash to tell names apart.

    >>> file_name("Ada Example") == file_name("ada  example")
    True
    >>> file_name("../Zoë").startswith("zo-")
    True
    """
    plain = "".join(c for c in normal(text) if c.isascii() and (c.isalnum() or c == " "))
    mark = hashlib.sha256(normal(text).encode("utf-8", "surrogatepass")).hexdigest()[:16]
    return f"{plain.strip().replace(' ', '-')[:24]}-{mark}"
