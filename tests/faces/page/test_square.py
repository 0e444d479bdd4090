"""The square code against the standard's own figures, and against a reader that is not ours."""

from __future__ import annotations

import os
import re
import subprocess
import sys

import numpy as np
import pytest
import segno
import zxingcpp

from repairlib.core.errors import RepairlibError
from repairlib.faces.page.answers import square as answer
from repairlib.faces.page.square import LONGEST, QUIET, drawn, modules, segno_files, square

READER = "zxing-cpp, a reader of codes by other hands"
RUN = re.compile(r"M(\d+) (\d+)h(\d+)v1h-\3z")
# The symbol for 01234567 of version 1-M under mask 010.
FIGURE = """
111111100101101111111
100000100111101000001
101110101000001011101
101110101100001011101
101110101011101011101
100000101000101000001
111111101010101111111
000000001001100000000
101111100100101111100
000101011010100101100
001000110101010011111
000010000100000111100
000111111001010010000
000000001011111001100
111111100110101100000
100000101011111000101
101110101000100101100
101110101100100100000
101110101011010010100
100000100000000110110
111111101111010010100
"""
# Version: bytes of a code of level M.
CAPACITY = {1: 14, 2: 26, 3: 42, 4: 62, 5: 84, 6: 106, 7: 122, 8: 152, 9: 180, 10: 213, 16: 450}
CAPACITY[40] = 2331


def seen(svg: str) -> np.ndarray:
    """The modules that the drawing shows, with all that is around them; 1 is dark."""
    found = re.search(r'viewBox="0 0 (\d+) \1"', svg)
    assert found
    shown = np.zeros((int(found[1]), int(found[1])), np.uint8)
    for x, y, width in RUN.findall(svg.partition('fill="#000"')[2]):
        shown[int(y), int(x) : int(x) + int(width)] = 1
    return shown


def read_back(svg: str):
    grey = np.kron(255 - 255 * seen(svg), np.ones((4, 4), np.uint8))
    (found,) = zxingcpp.read_barcodes(grey)
    return found


@pytest.mark.published("ISO/IEC 18004:2015, Annex I, figure of the symbol for 01234567, 1-M")
def test_the_modules_of_the_standards_example_are_drawn_one_by_one():
    figure = [[int(sign) for sign in line] for line in FIGURE.split()]
    code = segno.make_qr("01234567", error="m", version=1, mask=2, boost_error=False)
    inside = seen(drawn(code.matrix, ""))[QUIET:-QUIET, QUIET:-QUIET]
    assert inside.tolist() == figure


@pytest.mark.published("ISO/IEC 18004:2015, section on the quiet zone: four modules on each side")
def test_four_white_modules_are_around_it():
    shown = seen(square("https://bench.example/").svg)
    dark = np.argwhere(shown)
    assert dark.min() == 4 and dark.max() == len(shown) - 5
    assert f'fill="#fff" d="M0 0h{len(shown)}v' in square("https://bench.example/").svg


@pytest.mark.published("ISO/IEC 18004:2015, table 7, data capacity: bytes of a code of level M")
@pytest.mark.parametrize("version", CAPACITY)
def test_it_is_as_small_as_the_standard_allows_at_level_m(version):
    fits = CAPACITY[version]
    assert len(modules("a" * fits)) == 17 + 4 * version
    if version < 40:
        assert len(modules("a" * (fits + 1))) == 17 + 4 * (version + 1)
    else:
        assert fits == LONGEST


@pytest.mark.published(READER)
@pytest.mark.parametrize(
    "held",
    [
        "https://bench.example/",
        "https://bench.example/#4%C2%B57%2016V",
        "HTTPS://BENCH.EXAMPLE/",
        "0123456789",
        "http://192.168.4.1:8000/page/#275V%20X2",
        "https://bücher.example/Ω/修理",
        "ä",
        'https://bench.example/?a=1&b="<2>"',
        "x" * LONGEST,
    ],
    ids=range(9),
)
def test_a_reader_finds_what_it_holds(held):
    found = read_back(square(held).svg)
    assert found.text == held
    assert found.ec_level in ("M", "Q", "H")


@pytest.mark.published(
    "ISO/IEC 18004:2015: level M restores about 15 % of the codewords; " + READER
)
def test_a_scratched_code_is_still_read():
    held = "https://bench.example/repair/#104K"
    shown = seen(square(held).svg)
    middle = len(shown) // 2
    shown[middle - 2 : middle + 3, middle - 2 : middle + 3] = 0
    grey = np.kron(255 - 255 * shown, np.ones((4, 4), np.uint8))
    assert [one.text for one in zxingcpp.read_barcodes(grey)] == [held]


@pytest.mark.behaviour
def test_words_stand_for_the_drawing_and_no_address_is_markup():
    code = square('https://bench.example/<b>"')
    assert repr(code) == 'Square code (QR code). It holds: https://bench.example/<b>"'
    assert "<b>" not in code.svg and "<b>" not in code._repr_html_()
    assert code.across == len(seen(code.svg))


@pytest.mark.behaviour
@pytest.mark.parametrize("text", ["", "x" * (LONGEST + 1), "Ω" * 1166, "Ω\ud800"], ids=range(4))
def test_what_no_code_holds_is_one_clear_line(text):
    with pytest.raises(RepairlibError, match=r"Accepted: (a text of 1 to 2331 bytes|whole char)"):
        square(text)
    assert "No code can be drawn" in str(answer(text)["html"])


@pytest.mark.behaviour
def test_without_the_library_the_extra_is_named():
    script = "import sys; sys.modules['segno'] = None; from repairlib.faces.page.answers import *"
    script += "\nprint(square('https://bench.example/')['html'])"
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True)
    assert "repairlib[page]" in done.stdout, done.stderr


@pytest.mark.behaviour
def test_the_files_for_the_browser_are_enough_and_bring_their_licence(tmp_path):
    for name, path in segno_files().items():
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_bytes(path.read_bytes())
    assert "copyright" in (tmp_path / "segno/LICENSE").read_text("utf-8").lower()
    script = "import sys, segno; from repairlib.faces.page.square import square"
    script += "\nprint(segno.__file__, square('https://bench.example/').svg)"
    done = subprocess.run(
        [sys.executable, "-c", script],
        capture_output=True,
        text=True,
        env={**os.environ, "PYTHONPATH": os.pathsep.join([str(tmp_path), *filter(None, sys.path)])},
    )
    assert done.stdout.startswith(str(tmp_path)), done.stderr
    assert square("https://bench.example/").svg in done.stdout
