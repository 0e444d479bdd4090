"""Parts lists and markings for the benchmarks: as people type them, no two lines alike."""

from __future__ import annotations

import random
from pathlib import Path

FIGURES = (1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2)
VOLTS = ("6.3", "10", "16", "25", "35", "50", "63", "100", "160", "250", "400")
WET = ("Elect radial", "electrolytic", "Elko axial", "elect", "NP", "Tant", "alum. can SMD")
DRY = ("Film", "Ceramic", "polyester", "disc", "MKT", "styroflex")
PLACES = ("rail", "coupling", "clock", "tone", "reset", "amp", "display", "output", "supply")
MARKINGS = Path(__file__).parent.parent / "corpus" / "markings.txt"


def parts_list(length: int, seed: int) -> str:
    """`length` lines under one heading. Another seed gives other lines."""
    draw = random.Random(seed)
    rows, seen = [], set()
    while len(rows) < length:
        wet = draw.random() < 0.6
        number = draw.choice(FIGURES) * 10 ** draw.randrange(0, 4 if wet else 3)
        value = draw.choice((f"{number:g}uF", f"{number:g}µF", f"{number:g}"))
        if not wet:
            value = draw.choice((f"{number:g}nF", f"{number:g}n", f"{number / 1000:g}uF"))
        kind = draw.choice(WET if wet else DRY)
        note = f"{draw.choice(PLACES)} {draw.randrange(1, 5000)}"
        rest = f"{value},{draw.choice(VOLTS)},{kind},1,{note}"
        if rest not in seen:
            seen.add(rest)
            rows.append(f"C{len(rows) + 1},{rest}")
    return "\n".join(["Ref,Value,Volts,Type,Qty,Note", *rows, ""])


def markings() -> list[str]:
    """Every marking of the recorded corpus: codes, printed values, colours, and nonsense."""
    return MARKINGS.read_text(encoding="utf-8").splitlines()
