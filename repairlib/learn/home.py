"""Where everything is remembered: one folder outside the workbook, for each person or computer."""

from __future__ import annotations

import os
from pathlib import Path

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
