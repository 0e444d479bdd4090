"""The square code (QR code, ISO/IEC 18004) of an address: for a camera, on paper or on a screen.

The library `segno` finds the modules, the small dark and light squares; they are drawn here.
"""

from __future__ import annotations

from importlib.metadata import PackageNotFoundError, distribution
from itertools import groupby
from pathlib import Path

from repairlib.core.errors import RepairlibError, escaped
from repairlib.core.html import text as as_html
from repairlib.show.picture import Picture

QUIET = 4  # modules of white on each side, as ISO/IEC 18004 demands
SCREEN_PX = 6  # a module on a screen, where nothing else is said
LEVEL = "m"  # still read with 15 % of it spoiled
LONGEST = 2331  # bytes in the largest code of this level, 40-M; an ASCII character is one byte
# What encoding and SVG need. One file holds the writers of all formats.
SEGNO_FILES = ("__init__.py", "consts.py", "encoder.py", "utils.py", "writers.py")


class Square(Picture):
    """A square code as a drawing. across: how many modules wide it is, with its quiet zone."""

    def __init__(self, svg: str, alt: str, across: int) -> None:
        super().__init__(svg, alt)
        self.across = across


def square(text: str) -> Square:
    """The square code that holds `text`, black on white, with its quiet zone.

    text: an address, or any other text of up to 2331 bytes in UTF-8. A stronger error correction
    than M is taken where the code does not grow by it. Raises RepairlibError for no text, for a
    longer one, and where `segno` is not installed. Source: ISO/IEC 18004.

    >>> code = square("https://bench.example/#104K")
    >>> code
    Square code (QR code). It holds: https://bench.example/#104K
    >>> code.across
    37
    """
    length = len(text.encode("utf-8", "surrogatepass"))
    if not text or length > LONGEST:
        wrong = f"{length} bytes do not fit" if text else "there is nothing to draw"
        raise RepairlibError(text, wrong, f"a text of 1 to {LONGEST} bytes")
    rows = modules(text)
    alt = f"Square code (QR code). It holds: {escaped(text)}"
    return Square(drawn(rows, alt), alt, len(rows) + 2 * QUIET)


def modules(text: str) -> tuple[bytearray, ...]:
    """The rows of the code from the top, without its quiet zone; 1 is dark.

    Text beyond ASCII is marked as UTF-8 in the code itself, so that no reader has to guess.
    """
    try:
        from segno import make_qr
    except ModuleNotFoundError:
        raise _not_installed() from None
    encoding = None if text.isascii() else "utf-8"
    try:
        return make_qr(text, error=LEVEL, encoding=encoding, eci=encoding is not None).matrix
    except UnicodeEncodeError:
        wrong = "half of a character cannot be written"
        raise RepairlibError(text, wrong, "whole characters") from None


def drawn(rows, alt: str) -> str:
    """The rows as SVG, one unit a module, with the quiet zone around them."""
    across = len(rows) + 2 * QUIET
    shown = across * SCREEN_PX
    path = "".join(
        f"M{x} {y}h{width}v1h-{width}z"
        for y, row in enumerate(rows, QUIET)
        for x, width in _dark_runs(row)
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {across} {across}" '
        f'width="{shown}" height="{shown}" role="img" '
        f'shape-rendering="crispEdges"><title>{as_html(alt)}</title>'
        f'<path fill="#fff" d="M0 0h{across}v{across}h-{across}z"/>'
        f'<path fill="#000" d="{path}"/></svg>'
    )


def _dark_runs(row):
    """Where each run of dark modules begins, quiet zone included, and how long it is."""
    x = QUIET
    for dark, run in groupby(row):
        width = len(list(run))
        if dark:
            yield x, width
        x += width


def segno_files() -> dict[str, Path]:
    """The files of `segno` that the page takes along for its codes, by their path there.

    Its licence goes with them. Raises RepairlibError where it is not installed.

    >>> sorted(segno_files())[:3]
    ['segno/LICENSE', 'segno/__init__.py', 'segno/consts.py']
    """
    try:
        installed = distribution("segno")
    except PackageNotFoundError:
        raise _not_installed() from None
    wanted = {f"segno/{name}" for name in SEGNO_FILES}
    files = {file.as_posix(): Path(str(file.locate())) for file in installed.files or ()}
    return {
        name if name in wanted else "segno/LICENSE": path
        for name, path in files.items()
        if name in wanted or name.endswith("LICENSE")
    }


def _not_installed() -> RepairlibError:
    wrong = "the square code needs it, and it is not installed"
    return RepairlibError("segno", wrong, 'pip install "repairlib[page]"')
