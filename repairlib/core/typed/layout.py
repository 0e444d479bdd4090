"""How a list is laid out: what separates its columns, and which lines only rule off others.

Covers CSV, TSV, semicolons, pipes, columns by runs of spaces, and plain lines of words.
"""

from __future__ import annotations

import csv
import re
from itertools import islice

SPACES, WORDS = "  ", ""
NAMES = {
    ",": "commas",
    "\t": "tabs",
    ";": "semicolons",
    "|": "upright strokes",
    SPACES: "runs of spaces",
    WORDS: "no columns",
}
_GAP = re.compile(r"\s{2,}|\t")
_DIGIT = re.compile("[0-9]")
_RULE = re.compile(r"[\s|+:=_*~.–—-]+")
_FOOTER = re.compile(
    r"(?:page|p\.|sheet)\s*[0-9]+(?:\s*(?:/|of|-)\s*[0-9]+)?|[-–]+\s*[0-9]+\s*[-–]+|[0-9]+",
    re.IGNORECASE,
)
_SAMPLE = 200


def find_separator(lines: list[str]) -> str:
    """What separates the columns of `lines`: one of NAMES.

    >>> find_separator(["Ref;Value", "C1;4,7/25", "C2, C3;10/16"])
    ';'
    >>> find_separator(["C1-C4, C7   10/16   elect", "C8   47/25   elect"]) == SPACES
    True
    """
    with_figures = (line for line in lines if _DIGIT.search(line))
    sample = list(islice(with_figures, _SAMPLE)) or lines[:_SAMPLE]
    shares = ((1, "\t"), (1, "|"), (1, ";"), (1.6, ","), (1, SPACES), (1, ","))
    for share, separator in shares:
        holding = sum(separator in line.strip() for line in sample)
        if sample and holding * 2 >= len(sample) * share:
            return separator
    return WORDS


def split_line(line: str, separator: str) -> list[str] | None:
    """The cells of one line, stripped; None when a quoted cell does not end on it."""
    if separator == WORDS:
        return [line.strip()]
    if separator == SPACES:
        return _GAP.split(line.strip())
    if separator == "|":
        return [cell.strip() for cell in line.strip().strip("|").split("|")]
    if '"' not in line:
        return [cell.strip() for cell in line.split(separator)]
    if not any(cell.lstrip().startswith('"') for cell in line.split(separator)):
        return [cell.strip() for cell in line.split(separator)]
    try:
        rows = list(csv.reader([line], delimiter=separator, skipinitialspace=True, strict=True))
    except csv.Error:
        return None
    return [" ".join(cell.split()) for cell in rows[0]]


def is_rule(line: str) -> bool:
    """Whether the line only rules off others, such as `|---|---|` or `=====`."""
    return bool(_RULE.fullmatch(line))


def is_footer(line: str) -> bool:
    """Whether the line is a page number, alone or after `Page`."""
    return bool(_FOOTER.fullmatch(line.strip()))
