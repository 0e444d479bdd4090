"""Images of memory chips that a learner chose in the browser, kept as files of their own.

They stand beside the job cards, each under its name and the begin of its SHA-256, so that two reads
with one name are two files, and one chosen twice is one. Nothing in them is ever changed.
"""

from __future__ import annotations

import os
from hashlib import sha256
from pathlib import Path, PurePosixPath

from repairlib.learn import files
from repairlib.learn.home import home
from repairlib.learn.learner import current_learner

LONGEST = 60  # letters of a name


def keep_image(name: str, data: bytes) -> Path:
    """Keep the bytes of a file that was called `name`, and say where.

    Raises RepairlibError when they cannot be written.
    """
    first = home() / "images" / current_learner()[0].folder() / _kept_name(name, data)
    path, number = first, 1
    with files.locked(first), files.saying_why(first):
        while path.exists():
            if path.read_bytes() == data:
                return path
            number += 1  # somebody has changed that file: it stays
            path = first.with_stem(f"{first.stem}-{number}")
        files.put_in_place(path, data, 0o600)
    return path


def _kept_name(name: str, data: bytes) -> str:
    plain = PurePosixPath(name.replace("\\", "/")).name
    stem, ending = os.path.splitext(plain)
    clean = "".join(one if one.isalnum() or one in "-_" else "-" for one in stem)[:LONGEST]
    ending = "".join(one for one in ending if one.isalnum())[:8] or "bin"
    return f"{clean.strip('-') or 'image'}-{sha256(data).hexdigest()[:8]}.{ending}"
