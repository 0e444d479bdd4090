"""The Python that runs in the browser: the package pyodide of the npm registry, one version of it.

Only its core is taken: four files, no packages. It is fetched once, by npm, and kept beside what
the workbook remembers; its sum is compared with the one that is written here.
"""

from __future__ import annotations

import base64
import hashlib
import json
import shutil
import subprocess
import tarfile
import tempfile
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.core.saving import locked, saying_why
from repairlib.learn.learner import home

VERSION = "314.0.7"
PACKAGE = f"pyodide@{VERSION}"
# As the registry gives it: `npm view pyodide@314.0.7 dist.integrity`
SHA512 = "0YvXxEhfEdpLfb/XkM2BFAeMROq0iMUX2bzzH9pOttyMcWkwq+HbE5uyuGD82LN7y2q+SNvi/6V5JEsOlD2R1A=="
FILES = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip")
LOCK = "pyodide-lock.json"  # says which packages fit; the page takes its head, and no package
LICENCE = "MPL-2.0"
ACCEPTED = (
    f"npm on the path and a network, once; or --runtime FOLDER with the unpacked package {PACKAGE}"
)
PATIENCE_S = 300


def find_runtime(folder: str | Path | None = None) -> Path:
    """The folder with the four files, fetched by npm if it must be.

    folder: the unpacked package, where there is one. Raises RepairlibError when it is another
    version, not whole, or cannot be fetched.
    """
    if folder is not None:
        return _looked_at(Path(folder))
    kept = home() / "page" / PACKAGE
    with locked(kept):
        if not kept.is_dir():
            _fetch(kept)
    return kept


def _looked_at(folder: Path) -> Path:
    missing = [name for name in (*FILES, LOCK) if not (folder / name).is_file()]
    if missing:
        raise RepairlibError(str(folder), f"it holds no {missing[0]}", ACCEPTED)
    about = folder / "package.json"
    version = json.loads(about.read_text(encoding="utf-8"))["version"] if about.is_file() else "?"
    if version != VERSION:
        raise RepairlibError(str(folder), f"it is version {version}", ACCEPTED)
    return folder


def _fetch(kept: Path) -> None:
    """Put the four files into `kept`, whole or not at all."""
    npm = shutil.which("npm")
    if npm is None:
        raise RepairlibError(PACKAGE, "npm, which fetches it, is not installed", ACCEPTED)
    with saying_why(kept), tempfile.TemporaryDirectory(dir=kept.parent) as made:
        archive = _packed(npm, Path(made))
        fresh = Path(made) / "files"
        fresh.mkdir()
        with tarfile.open(archive) as packed:
            for name in (*FILES, LOCK):
                inside = packed.extractfile(f"package/{name}")
                assert inside is not None, name  # the sum says that it is the very package
                (fresh / name).write_bytes(inside.read())
        fresh.rename(kept)


def _packed(npm: str, folder: Path) -> Path:
    """The package as npm gives it, in `folder`; its sum is right."""
    command = [npm, "pack", PACKAGE, "--silent", "--pack-destination", str(folder)]
    try:
        done = subprocess.run(command, capture_output=True, text=True, timeout=PATIENCE_S)
    except subprocess.TimeoutExpired:
        raise RepairlibError(PACKAGE, f"npm gave nothing in {PATIENCE_S} s", ACCEPTED) from None
    archives = list(folder.glob("*.tgz"))
    if done.returncode or not archives:
        said = (done.stderr.strip().splitlines() or ["no word"])[-1]
        raise RepairlibError(PACKAGE, f"npm could not fetch it: {said}", ACCEPTED)
    found = base64.b64encode(hashlib.sha512(archives[0].read_bytes()).digest()).decode()
    if found != SHA512:
        raise RepairlibError(PACKAGE, "what came is not that package: its sum differs", ACCEPTED)
    return archives[0]
