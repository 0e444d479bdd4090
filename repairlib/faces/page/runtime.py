"""The Python that runs in the browser: the package pyodide of the npm registry, one version of it.

Only its core is taken: no packages. It is fetched once and kept beside what the workbook remembers;
its sum is compared with the one that is written here.
"""

from __future__ import annotations

import base64
import hashlib
import io
import json
import os
import shutil
import tarfile
import tempfile
import urllib.request
from http.client import HTTPException
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.core.saving import locked, saying_why
from repairlib.learn.home import home

VERSION = "314.0.7"
PACKAGE = f"pyodide@{VERSION}"
REGISTRY = "https://registry.npmjs.org"  # or what npm itself is told by this variable:
REGISTRY_VARIABLE = "npm_config_registry"
# As the registry gives it for this version, under dist.integrity.
SHA512 = "0YvXxEhfEdpLfb/XkM2BFAeMROq0iMUX2bzzH9pOttyMcWkwq+HbE5uyuGD82LN7y2q+SNvi/6V5JEsOlD2R1A=="
FILES = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip")
LOCK = "pyodide-lock.json"  # says which packages fit; the page takes its head, and no package
LICENCE = "MPL-2.0"
ACCEPTED = f"a network, once; or --runtime FOLDER with the unpacked npm package {PACKAGE}"
PATIENCE_S = 60
LARGEST = 50_000_000  # bytes


def find_runtime(folder: str | Path | None = None) -> Path:
    """The folder with the Python's files, fetched from the npm registry if it must be.

    folder: the unpacked package, where there is one. Raises RepairlibError when it is another
    version, not whole, or cannot be fetched.
    """
    if folder is not None:
        return _looked_at(Path(folder))
    kept = home() / "page" / PACKAGE
    with locked(kept):
        if not all((kept / name).is_file() for name in (*FILES, LOCK)):
            package = _fetched()
            shutil.rmtree(kept, ignore_errors=True)  # what an earlier version of this kept
            _unpack(package, kept)
    return kept


def _looked_at(folder: Path) -> Path:
    with saying_why(folder, ACCEPTED):
        for name in ("package.json", *FILES, LOCK):
            if not (folder / name).is_file():
                raise RepairlibError(str(folder), f"it holds no {name}", ACCEPTED)
        version = _named_in(folder / "package.json", "version")
        if version != VERSION:
            raise RepairlibError(str(folder), f"it is version {version}", ACCEPTED)
        _named_in(folder / LOCK, "info")
    return folder


def _named_in(file: Path, name: str) -> object:
    try:
        return json.loads(file.read_text(encoding="utf-8"))[name]
    except (ValueError, TypeError, KeyError):
        wrong = f"its {file.name} names no {name}"
        raise RepairlibError(str(file.parent), wrong, ACCEPTED) from None


def _fetched() -> bytes:
    """The package as the registry gives it; its sum is right."""
    registry = os.environ.get(REGISTRY_VARIABLE, REGISTRY).rstrip("/")
    address = f"{registry}/pyodide/-/pyodide-{VERSION}.tgz"
    try:
        with urllib.request.urlopen(address, timeout=PATIENCE_S) as answer:
            package = answer.read(LARGEST)
    except (OSError, ValueError, HTTPException) as error:  # no network, no file, or no address
        raise RepairlibError(address, f"it cannot be fetched: {error}", ACCEPTED) from None
    if base64.b64encode(hashlib.sha512(package).digest()).decode() != SHA512:
        raise RepairlibError(address, f"its sum is not that of {PACKAGE}", ACCEPTED)
    return package


def _unpack(package: bytes, kept: Path) -> None:
    """Put the files that are needed into the folder `kept`, whole or not at all."""
    with saying_why(kept), tempfile.TemporaryDirectory(dir=kept.parent) as made:
        fresh = Path(made) / kept.name
        fresh.mkdir()
        with tarfile.open(fileobj=io.BytesIO(package)) as packed:
            for name in (*FILES, LOCK):
                inside = packed.extractfile(f"package/{name}")
                assert inside is not None, name  # the sum says that it is the very package
                (fresh / name).write_bytes(inside.read())
        fresh.rename(kept)
