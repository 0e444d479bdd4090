"""What the page takes along: all it needs, and the code as it is in the files."""

import ast
import gzip
import json
import subprocess
import sys
from itertools import product

import pytest

from repairlib.faces.page import answers, building
from repairlib.faces.page.bundling import SOURCES, bundle, without_words
from repairlib.faces.page.needed import files_of_the_page
from repairlib.polarity import FITTED, board_marks, families, marks_of
from repairlib.show import BODIES
from tests.faces.page.typed import HOSTILE, typed_markings

pytestmark = pytest.mark.behaviour
FILES = files_of_the_page()
ALONE = """
import json, sys
sys.path.insert(0, sys.argv[1])
from repairlib.faces.page.answers import answer
print(json.dumps([answer(question) for question in json.load(sys.stdin)]))
"""


def without_docstrings(code: str) -> str:
    tree = ast.parse(code)
    for node in ast.walk(tree):
        holds = isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef)
        if holds and len(node.body) > 1 and ast.get_docstring(node) is not None:
            del node.body[0]
    return ast.dump(tree)


@pytest.fixture(scope="module")
def bundled():
    return json.loads(gzip.decompress(bundle(FILES)))


@pytest.mark.parametrize("path", [path for path in FILES if path.endswith(".py")])
def test_code_is_that_of_the_file(bundled, path):
    written = FILES[path].read_text(encoding="utf-8")
    if path == SOURCES:
        assert without_docstrings(without_words(written)) == without_docstrings(written)
    else:
        assert without_docstrings(bundled[path]) == without_docstrings(written)


def test_tables_and_words_are_taken_as_they_are(bundled):
    others = [path for path in FILES if not path.endswith(".py")]
    assert others
    assert all(bundled[path] == FILES[path].read_text(encoding="utf-8") for path in others)


def test_same_files_make_the_same_bytes():
    assert bundle(FILES) == bundle(dict(reversed(FILES.items())))


def test_text_in_quotes_keeps_what_looks_like_a_comment():
    code = 'SIGN = "#1"  # the first\n\n\nTEXT = """\n# not a comment\n\n"""\n'
    assert without_words(code) == 'SIGN = "#1"\n\n\nTEXT = """\n# not a comment\n\n"""\n'


def questions() -> list[str]:
    asked = [
        {"tool": tool, "marking": marking, "part": part}
        for marking in ["", *typed_markings()]
        for tool, part in (("marking", ""), ("document", "capacitor"))
    ]
    asked += [
        {"tool": "drawing", "marking": marking, "body": body}
        for marking, body in product(("104K", "brown black red gold", *HOSTILE), BODIES)
    ]
    for family in families():
        for mark in marks_of(family):
            for board in board_marks():
                seen = {"family": family, "part_mark": mark, "board_mark": board}
                asked.append({"tool": "polarity", **seen, "fitted": FITTED[0]})
    for value in ("", "50 kΩ", "5 µF", "12 µH", "nonsense", "0 Ω"):
        asked.append({"tool": "values", "value": value, "series": "E12"})
    return [json.dumps(one) for one in asked]


def test_what_is_taken_along_answers_alone_and_as_the_library_does(bundled, tmp_path):
    """Isolated from the clone and from every installed library: a missing file would be seen."""
    for path, text in bundled.items():
        place = tmp_path / path
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_text(text, encoding="utf-8")
    asked = questions()
    command = [sys.executable, "-I", "-S", "-c", ALONE, str(tmp_path)]
    done = subprocess.run(command, input=json.dumps(asked), capture_output=True, text=True)
    assert done.returncode == 0, done.stderr[-800:]
    assert json.loads(done.stdout) == [answers.answer(one) for one in asked]
    assert len(asked) > 2000


def test_the_page_weighs_little():
    """Without the Python, and without the drawing of square codes, which comes when asked for."""
    others = building._static() | building._pages("v-0123456789ab")
    compressed = [len(gzip.compress(content, 9)) for content in others.values()]
    assert len(bundle(FILES)) + sum(compressed) < 155_000
