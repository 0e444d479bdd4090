"""Parts lists and markings for the benchmarks: as people type them, no two lines alike."""

from __future__ import annotations

import random
from pathlib import Path

FIGURES = (1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2)
VOLTS = ("6.3", "10", "16", "25", "35", "50", "63", "100", "160", "250", "400")
WET = ("Elect radial", "electrolytic", "Elko axial", "elect", "NP", "Tant", "alum. can SMD")
DRY = ("Film", "Ceramic", "polyester", "disc", "MKT", "styroflex")
PLACES = ("rail", "coupling", "clock", "tone", "reset", "amp", "display", "output", "supply")
SIDES = ("", " left", " right", " see page", " stage")
MARKINGS = Path(__file__).parent.parent / "corpus" / "markings.txt"


def parts_list(length: int, seed: int) -> str:
    """`length` lines under one heading, no two alike. Another seed gives other lines."""
    draw = random.Random(seed)
    rows, seen = [], set()
    while len(rows) < length:
        wet = draw.random() < 0.6
        number = draw.choice(FIGURES) * 10 ** draw.randrange(0, 4 if wet else 3)
        value = draw.choice((f"{number:g}uF", f"{number:g}µF", f"{number:g}"))
        if not wet:
            value = draw.choice((f"{number:g}nF", f"{number:g}n", f"{number / 1000:g}uF"))
        kind = draw.choice(WET if wet else DRY)
        rest = f"{value},{draw.choice(VOLTS)},{kind},1,{part_number(draw)},{note(draw)}"
        if rest not in seen:
            seen.add(rest)
            rows.append(f"C{len(rows)},{rest}")
    return "\n".join(["Ref,Value,Volts,Type,Qty,Part No.,Note", *rows, ""])


def part_number(draw: random.Random) -> str:
    """On a third of the lines: an order number of figures, or a code with letters."""
    many = draw.randrange(100, 100_000)
    return draw.choice(("", "", "", "", f"29-{many}-08", f"CE04W1H{many}M"))


def note(draw: random.Random) -> str:
    """What stands behind a part: the place it has, a date, a pin beside it."""
    many = draw.randrange(1, 5000)
    return draw.choice(
        (
            f"{draw.choice(PLACES)} {many}",
            f"{draw.choice(PLACES)}{draw.choice(SIDES)} {many}",
            f"changed {1 + many % 28}.{1 + many % 12}.19{70 + many % 30}",
            f"{draw.choice(PLACES)} IC{many % 900} pin {1 + many % 14}",
        )
    )


def markings() -> list[str]:
    """Every marking of the recorded corpus: codes, printed values, colours, and nonsense."""
    return MARKINGS.read_text(encoding="utf-8").splitlines()
