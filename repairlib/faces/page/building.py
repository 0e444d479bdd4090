"""The folder of static files: the page, the workbook's reader, and the Python that it runs on.

    index.html  de.html ...      the page, in each language
    service.js                   keeps it all on the device
    v-0123456789ab/              what the page loads; the name follows from every byte in it
    python-314.0.7/              the Python

A browser never meets files of two versions: a page names its folder, and the folder's name changes
with anything in it. `index.html` is put in place last. The version before stays for those who are
just loading it; older ones are taken away.
"""

from __future__ import annotations

import gzip
import hashlib
import json
import re
import shutil
from collections.abc import Mapping
from pathlib import Path
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.saving import saying_why
from repairlib.faces.page import runtime
from repairlib.faces.page.bundling import bundle
from repairlib.faces.page.needed import files_of_the_page
from repairlib.faces.page.outline import outline
from repairlib.faces.page.square import segno_files
from repairlib.recap import write_whole

HERE = Path(__file__).parent
STATIC = HERE / "static"
LANGUAGES = HERE / "languages"
FIRST = "en"
READER, SQUARE = "reader.bin", "square.bin"
PYTHON = f"python-{runtime.VERSION}"
COMMENT_LINE = re.compile(rb"^ *(//.*|/\*.*\*/)\n", re.MULTILINE)
SERVICE_BEGINS = "const VERSION = "
VERSIONS = "v-" + 12 * "[0-9a-f]"  # what their folders are called
EMPTY_FOLDER = "a new or empty folder, or one that holds an earlier page"
SERVE = "python -m http.server 8731 --directory"  # a port of its own: a page kept there stays


class Piece(NamedTuple):
    """One part of the page: its name, its bytes as they lie there, and as they travel."""

    name: str
    size: int
    compressed: int

    def __str__(self) -> str:
        return f"{self.name:24} {self.size / 1000:9.1f} kB {self.compressed / 1000:9.1f} kB"


class Built(NamedTuple):
    """What was built: the folder, the version, and what each part weighs."""

    folder: Path
    version: str
    pieces: tuple[Piece, ...]

    def __str__(self) -> str:
        ours = [one for one in self.pieces if not one.name.startswith(PYTHON)]
        sizes = sum(one.size for one in ours), sum(one.compressed for one in ours)
        total = Piece("without the Python", *sizes)
        return "\n".join(
            [
                f"The page is in {self.folder}, version {self.version}.",
                f"{'part':24} {'as it is':>12} {'compressed':>12}",
                *map(str, self.pieces),
                str(total),
                f"To look at it here: {SERVE} {self.folder}",
            ]
        )

    def to_dict(self) -> dict[str, object]:
        """As a document for --json."""
        pieces = [one._asdict() for one in self.pieces]
        return {"folder": str(self.folder), "version": self.version, "pieces": pieces}


def build_page(out: str | Path, python: str | Path | None = None) -> Built:
    """Build the page into the folder `out`.

    python: the unpacked package of the Python for browsers, where there is one; else it is fetched
    from the npm registry, once. Raises RepairlibError when it cannot be had, or `out` holds
    something else.
    """
    folder = Path(out)
    _may_be_built(folder)
    found = runtime.find_runtime(python)
    inside = _static() | {READER: bundle(files_of_the_page()), SQUARE: bundle(segno_files())}
    inside["build.js"] = _build_js(found, len(inside[READER]))
    version = f"v-{_sum_of(inside | _pages(''))[:12]}"
    pages = _pages(version)
    with saying_why(folder):
        loaded = {f"{version}/{name}": content for name, content in inside.items()}
        python_files = {f"{PYTHON}/{name}": (found / name).read_bytes() for name in runtime.FILES}
        for name, content in (loaded | python_files).items():
            _write(folder / name, content)
        _write(folder / PYTHON / "about.txt", _about_python().encode())
        _write(folder / "service.js", _service(version, loaded | python_files | pages))
        for name, content in sorted(pages.items(), key=lambda page: page[0] == "index.html"):
            _write(folder / name, content)
        _forget_older(folder, version)
    return Built(folder, version, _weighed(pages, inside, python_files))


def _may_be_built(folder: Path) -> None:
    with saying_why(folder):
        if folder.exists() and not folder.is_dir():
            raise RepairlibError(str(folder), "this is a file", EMPTY_FOLDER)
        if folder.is_dir() and any(folder.iterdir()) and not _holds_a_page(folder):
            raise RepairlibError(str(folder), "it holds other files", EMPTY_FOLDER)


def is_of_a_page(folder: Path) -> bool:
    """True for a folder with nothing but parts of a page, be it whole or begun."""
    kinds = (VERSIONS, "python-*", "service.js", "*.html")
    return (
        folder.is_dir()
        and any(folder.glob(VERSIONS))
        and all(any(one.match(kind) for kind in kinds) for one in folder.iterdir())
    )


def _holds_a_page(folder: Path) -> bool:
    service = folder / "service.js"
    return service.is_file() and service.read_bytes().startswith(SERVICE_BEGINS.encode())


def _static() -> dict[str, bytes]:
    """What the browser loads; `service.js` gets its version from the build."""
    files = sorted(STATIC.iterdir())
    return {file.name: _without_words(file) for file in files if file.name != "service.js"}


def _without_words(file: Path) -> bytes:
    """A file without its comments on lines of their own: they stay at home, as those of Python."""
    return COMMENT_LINE.sub(b"", file.read_bytes())


def _build_js(python: Path, reader_size: int) -> bytes:
    """What only the build knows, as a script that the reader imports."""
    sizes = {name: (python / name).stat().st_size for name in runtime.FILES}
    lock = json.loads((python / runtime.LOCK).read_text(encoding="utf-8"))
    told = {
        "PYTHON": f"../{PYTHON}/",
        "BUNDLE": f"./{READER}",
        "LATER": {"square": f"./{SQUARE}"},
        "LOCK": {"info": lock["info"], "packages": {}},
        "SIZES": {**sizes, READER: reader_size},
    }
    lines = (f"export const {name} = {json.dumps(value)};\n" for name, value in told.items())
    return "".join(lines).encode()


def _pages(version: str) -> dict[str, bytes]:
    """The page in each language, by its file's name."""
    words = [json.loads(file.read_text("utf-8")) for file in sorted(LANGUAGES.glob("*.json"))]
    pages = {}
    for one in words:
        others = [(_page_name(other), other["name"]) for other in words if other is not one]
        pages[_page_name(one)] = outline(one, version, others).encode()
    return pages


def _page_name(words: Mapping[str, str]) -> str:
    return "index.html" if words["lang"] == FIRST else f"{words['lang']}.html"


def _service(version: str, files: Mapping[str, bytes]) -> bytes:
    sums = json.dumps(_sums(files), indent=1)
    head = f"{SERVICE_BEGINS}{json.dumps(version)};\nconst FILES = {sums};\n\n"
    return head.encode() + _without_words(STATIC / "service.js")


def _sum_of(files: Mapping[str, bytes]) -> str:
    sums = _sums(files | {"service.js": (STATIC / "service.js").read_bytes()})
    return hashlib.sha256(json.dumps([PYTHON, sums]).encode()).hexdigest()


def _sums(files: Mapping[str, bytes]) -> dict[str, str]:
    return {name: hashlib.sha256(content).hexdigest() for name, content in sorted(files.items())}


def _write(path: Path, content: bytes) -> None:
    """Put a file in place, whole or not at all; one that is the same keeps its date."""
    if path.is_file() and path.read_bytes() == content:
        return
    path.parent.mkdir(parents=True, exist_ok=True)
    write_whole(path, content, overwrite=True)


def _about_python() -> str:
    return (
        f"{runtime.PACKAGE} of the npm registry, {runtime.LICENCE}, unchanged: "
        "CPython for WebAssembly.\nhttps://github.com/pyodide/pyodide\n"
    )


def _forget_older(folder: Path, version: str) -> None:
    """Take away the folders of all versions but this one and the one before it."""
    others = [one for one in folder.glob(VERSIONS) if one.is_dir() and one.name != version]
    others.sort(key=lambda one: one.stat().st_mtime, reverse=True)
    for old in others[1:]:
        shutil.rmtree(old)


def _weighed(*parts: Mapping[str, bytes]) -> tuple[Piece, ...]:
    files = {name: content for part in parts for name, content in part.items()}
    return tuple(
        Piece(name, len(content), len(gzip.compress(content, 9))) for name, content in files.items()
    )
