"""No list loses a reference, however it was mangled on its way from paper.

A short run belongs to the suite; `LISTS=20000 python -m pytest tests/recap/test_mangled_lists.py`
is the long one.
"""

import os
import random
import re

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.recap import plan

LISTS = int(os.environ.get("LISTS", "400"))
SEED = int(os.environ.get("LISTS_SEED", "0")) or random.randrange(1_000_000_000)

STANDING = re.compile(r"(?<![A-Za-z0-9_.])(C[0-9]{1,4})(?![A-Za-z0-9])")
VALUES = ["10uF", "4,7µF", "47", ".1", "100n", "2200uF", "1000 µF", "22/25", "µ47", '"', "do."]
VOLTS = ["16V", "25", "6.3V", "400", "50V", "2kV", '"', "12/15V", ""]
KINDS = ["elect", "Elko stehend", "film", "céram.", "NP", "tantale", "ELECT.", '"', "gizmo", ""]
REMARKS = ["", "", "left", '5" case', '"', "see note 4", "main board, left", "id.", "DNP"]
HEADINGS = [
    "Ref Value Volts Type Remarks",
    "Pos. Wert Spannung Art Bem.",
    "Rep. Valeur Tension Type Obs.",
    "Symbol Capacity W.V. Description Note",
]
BETWEEN = ["", "MAIN BOARD", "CERAMIC CAPACITORS", "-----", "Page 2", "R1,10k", "see page 14", '"']


def typed_list(draw):
    """Lines of one layout, with titles and blank lines among them."""
    separator = draw.choice([",", ";", "\t", "|", "   ", " "])
    lines = []
    if draw.random() < 0.7:
        lines.append(separator.join(draw.choice(HEADINGS).split()))
    number = 0
    for _ in range(draw.randrange(2, 12)):
        number += draw.randrange(1, 4)
        name = f"C{number}"
        if draw.random() < 0.15:
            sign = draw.choice([", ", "/", " bis ", "-", " et ", " à "])
            number += draw.randrange(1, 3)
            name = f'"{name}{sign}C{number}"' if separator == "," else f"{name}{sign}C{number}"
        cells = [name, *map(draw.choice, (VALUES, VOLTS, KINDS, REMARKS))]
        lines.append(separator.join(cells))
        if draw.random() < 0.15:
            lines.append(draw.choice(BETWEEN))
    return lines


def put_into(draw, line, *signs):
    at = draw.randrange(len(line) + 1)
    return line[:at] + draw.choice(signs) + line[at:]


def joined(draw, lines):
    at = draw.randrange(len(lines))
    return [
        *lines[:at],
        draw.choice([" ", ",", "\t", ""]).join(lines[at : at + 2]),
        *lines[at + 2 :],
    ]


def cut(draw, lines):
    at = draw.randrange(len(lines))
    place = draw.randrange(len(lines[at]) + 1)
    return [*lines[:at], lines[at][:place], lines[at][place:], *lines[at + 1 :]]


def changed(draw, lines):
    at = draw.randrange(len(lines))
    signs = draw.choice([('"',), ("\t", " ", ","), ('"\n',), (",", ";", "|"), ('"',), ("\n\n",)])
    return "\n".join([*lines[:at], put_into(draw, lines[at], *signs), *lines[at + 1 :]]).split("\n")


def without_a_piece(draw, lines):
    at = draw.randrange(len(lines))
    start = draw.randrange(len(lines[at]) + 1)
    return [*lines[:at], lines[at][:start] + lines[at][start + 1 :], *lines[at + 1 :]]


def mangled(draw):
    lines = typed_list(draw)
    for _ in range(draw.randrange(5)):
        lines = draw.choice([joined, cut, changed, changed, without_a_piece])(draw, lines)
    return "\n".join(lines) + "\n"


def lost(text):
    """The references that stand in the list, but that the plan does not show anywhere."""
    made = plan(text)
    parts_list = made.list
    numbers = [line.line for line in parts_list.set_aside]
    assert sorted([*numbers, *parts_list.lines_with_parts()]) == list(
        range(1, len(parts_list.lines) + 1)
    )
    assert sum(parts_list.lines_as().values()) == len(parts_list.lines)
    shown = {item.reference for item in made.all_items}
    told = [*parts_list.notes, *(line.text for line in made.unreadable)]
    told += [line.why for line in parts_list.set_aside if line.what == "not fitted"]
    told += [parts_list.text_of(item.line) for item in made.held]
    shown.update(name for text in told for name in STANDING.findall(text))
    standing = {
        name[:1] + (name[1:].lstrip("0") or "0")
        for line in parts_list.lines
        for name in STANDING.findall(line)
    }
    return standing - shown


@pytest.mark.behaviour
def test_no_reference_is_lost():
    for number in range(LISTS):
        text = mangled(random.Random(SEED + number))
        try:
            missing = lost(text)
        except RepairlibError as problem:
            assert "\n" not in str(problem)
            continue
        assert not missing, f"LISTS_SEED={SEED + number}: {missing} lost of {text!r}"
