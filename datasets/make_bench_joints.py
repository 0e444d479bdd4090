"""Writes reference/bench-joints.csv: joints of the practice board under heat, by the joint model.

    python datasets/make_bench_joints.py

A joint takes the model up to a second, and a move at the practice board may take a tenth of that.
Each row is one joint under one tool: when its last solder melts [s], empty where it never does, and
how hot the board under its pad is [°C] after the seconds in the column `after`. Under hot air the
board lies on a preheating plate of 100 °C; without one no joint at a plane would melt.
"""

from __future__ import annotations

import csv
from pathlib import Path

from repairlib.heat import HOT_AIR, IRON, NO_PLANE, RELIEF, SURFACE, THROUGH_HOLE, heat_joint

AT = Path(__file__).parent / "reference" / "bench-joints.csv"
HEADINGS = ("tool", "tip", "solder", "joint", "plane", "celsius", "melts", "after", "pad", "source")
CELSIUS = range(200, 451, 25)
LEADED, LOW_MELT = "Sn63Pb37", "Bi58Sn42"
AFTER = {IRON: (0.5, 1, 2, 4, 8, 15, 30), HOT_AIR: (2, 5, 10, 20, 40, 60)}
TOOLS = (
    *((IRON, tip, solder) for tip in ("fine", "usual", "large") for solder in (LEADED, LOW_MELT)),
    (HOT_AIR, "usual", LEADED),
)
PREHEAT = {IRON: 25.0, HOT_AIR: 100.0}


def joints():
    """The joints of the table, in its order."""
    for source, tip, solder in TOOLS:
        for kind in (THROUGH_HOLE, SURFACE):
            for plane in (NO_PLANE, RELIEF):
                for celsius in CELSIUS:
                    joint = {"kind": kind, "plane": plane, "celsius": celsius}
                    yield {"source": source, "tip": tip, "solder": solder} | joint


def row_of(joint: dict) -> dict[str, object]:
    """One row: a heating as long as the table goes."""
    import numpy as np

    after = AFTER[joint["source"]]
    run = heat_joint(seconds=after[-1], preheat=PREHEAT[joint["source"]], **joint)
    pad = np.interp(after, run.seconds, run.traces["board under the pad"])
    return {
        "tool": joint["source"],
        "tip": joint["tip"],
        "solder": joint["solder"],
        "joint": joint["kind"],
        "plane": joint["plane"],
        "celsius": joint["celsius"],
        "melts": "" if run.all_melted is None else f"{run.all_melted:.2f}",
        "after": " ".join(f"{seconds:g}" for seconds in after),
        "pad": " ".join(f"{celsius:.0f}" for celsius in pad),
        "source": "joint model",
    }


def write() -> None:
    """Writes the table."""
    with open(AT, "w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, HEADINGS, lineterminator="\n")
        writer.writeheader()
        writer.writerows(map(row_of, joints()))


if __name__ == "__main__":
    write()
