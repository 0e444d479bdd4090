"""Files for the browser in one compressed piece, their code without what only a reader needs.

A page is loaded over slow networks, so docstrings, comments, and sources that nothing in it names
stay at home. All else is as in the file, byte for byte; tests compare the two.
"""

from __future__ import annotations

import ast
import gzip
import io
import json
import tokenize
from collections.abc import Iterator, Mapping
from pathlib import Path

Place = tuple[int, int]  # line from 1, column in characters from 0
LINE_END = "\n"
SOURCES = "repairlib/core/sources.py"


def bundle(files: Mapping[str, Path]) -> bytes:
    """The text of each file by its path, as JSON, compressed; the same bytes for the same files."""
    texts = {path: _text(file) for path, file in sorted(files.items())}
    if SOURCES in texts:
        others = "".join(text for path, text in texts.items() if path != SOURCES)
        texts[SOURCES] = without_unnamed(texts[SOURCES], others)
    told = json.dumps(texts, ensure_ascii=False).encode("utf-8")
    return gzip.compress(told, compresslevel=9, mtime=0)


def _text(file: Path) -> str:
    text = file.read_text(encoding="utf-8")
    return without_words(text) if file.suffix == ".py" else text


def without_words(code: str) -> str:
    r"""The code without docstrings and comments.

    >>> without_words('def half(x):\n    "Of x."\n    return x / 2  # exact\n')
    'def half(x):\n    return x / 2\n'
    """
    lines = code.splitlines(keepends=True)
    for start, end in sorted([*_comments(code), *_docstrings(code)], reverse=True):
        first, last = lines[start[0] - 1], lines[end[0] - 1]
        left = (first[: start[1]] + last[end[1] :]).rstrip()
        lines[start[0] - 1 : end[0]] = [left + LINE_END] if left else []
    return "".join(lines)


def without_unnamed(sources: str, others: str) -> str:
    r"""The list of sources without those whose key the other files do not name.

    >>> without_unnamed("ALL = (\n('a', 'Book A'),\n('b', 'Book B'),\n)\n", "see 'b'")
    "ALL = (\n('b', 'Book B'),\n)\n"
    """
    lines = sources.splitlines(keepends=True)
    for listed in ast.parse(sources).body:
        rows = listed.value.elts if isinstance(listed, ast.Assign) and _is_list(listed) else []
        for row in rows:
            if ast.literal_eval(row.elts[0]) not in others:
                lines[row.lineno - 1 : row.end_lineno] = [""] * (row.end_lineno - row.lineno + 1)
    return "".join(lines)


def _is_list(listed: ast.Assign) -> bool:
    return isinstance(listed.value, ast.Tuple)


def _comments(code: str) -> Iterator[tuple[Place, Place]]:
    for token in tokenize.generate_tokens(io.StringIO(code).readline):
        if token.type == tokenize.COMMENT:
            yield token.start, token.end


def _docstrings(code: str) -> Iterator[tuple[Place, Place]]:
    """Where the docstrings are; one that is all of a body stays, as a body must have something."""
    lines = code.splitlines()
    for node in ast.walk(ast.parse(code)):
        holds_one = isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef)
        if not holds_one or len(node.body) < 2 or ast.get_docstring(node) is None:
            continue
        words = node.body[0]
        yield (
            (words.lineno, _characters(lines[words.lineno - 1], words.col_offset)),
            (
                int(words.end_lineno or 0),
                _characters(lines[int(words.end_lineno or 0) - 1], int(words.end_col_offset or 0)),
            ),
        )


def _characters(line: str, offset: int) -> int:
    """How many characters the first `offset` bytes of a line are."""
    return len(line.encode("utf-8")[:offset].decode("utf-8"))
