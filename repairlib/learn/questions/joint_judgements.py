"""Joints to judge in lesson 08: a hole cut open, and a joint that is being made.

Answers are typed in by hand. Sources: hole fill from IPC-A-610F Table 7-4, 75 % of the board, and
in class 2 from 14 leads on 50 % or 1.2 mm, whichever is less; what a joint asks for next is common
practice.
"""

from __future__ import annotations

from repairlib.core.draws import Draw
from repairlib.core.quantity import NBSP
from repairlib.learn.question import Choice, Mistake

ACCEPT, REJECT = "accept it", "reject it"

# Fill in %, class, leads, verdict.
HOLE_FILLS = (
    (70, 3, 8, REJECT),
    (60, 2, 16, ACCEPT),
    (60, 2, 8, REJECT),
    (80, 3, 20, ACCEPT),
    (65, 3, 24, REJECT),
    (70, 3, 16, REJECT),
    (45, 2, 20, REJECT),
    (80, 2, 8, ACCEPT),
    (45, 2, 24, REJECT),
    (80, 3, 14, ACCEPT),
    (70, 2, 6, REJECT),
    (55, 2, 18, ACCEPT),
    (65, 3, 10, REJECT),
    (40, 2, 28, ACCEPT),
    (80, 3, 12, ACCEPT),
)
# Of those on other boards: how thick the board is, the height that is due, and another one, in mm.
BOARDS = {
    (70, 3, 16): ("2.4", "1.8", "1.2"),
    (45, 2, 20): ("2.4", "1.2", "1.8"),
    (80, 2, 8): ("2.0", "1.5", "1.0"),
    (45, 2, 24): ("2.0", "1.0", "1.5"),
    (80, 3, 14): ("1.0", "0.75", "0.5"),
    (70, 2, 6): ("1.0", "0.75", "0.5"),
    (55, 2, 18): ("1.2", "0.6", "0.9"),
    (65, 3, 10): ("1.2", "0.9", "0.6"),
    (40, 2, 28): ("3.2", "1.2", "1.6"),
    (80, 3, 12): ("3.2", "2.4", "1.6"),
}

PREHEAT = "Let it cool; then preheat from below, a wider tip, flux and fresh solder"
DONE = "Lift the tip away, and hold the part still until the solder has set"
HOTTER = "The same tip at 450 °C, until the solder is as bright as a mirror all over"
LONGER = "Stay on it: 20 or 30 s will do it"

# The joint, the tip, its °C, for how many seconds, and what the solder does.
JOINTS = (
    ("on a ground plane", "fine", 330, 5, "is still dull"),
    ("on a ground plane", "fine", 315, 5, "is still dull"),
    ("on a shield's wide copper", "fine", 330, 5, "is still dull"),
    ("on a narrow track", "chisel", 330, 2, "has run round lead and pad"),
    ("of a small resistor", "chisel", 315, 3, "has run round lead and pad"),
    ("on a thin signal pad", "chisel", 330, 2, "has run round lead and pad"),
    ("on an old pad", "chisel", 330, 3, "stands on it as a ball"),
    ("of a long row", "chisel", 340, 3, "follows the tip away as a spike"),
    ("of a resistor", "chisel", 330, 3, "has set grainy, as the part moved"),
    ("of a socket", "black", 330, 4, "does not stick to the tip"),
    ("of a fine row", "chisel", 330, 3, "joins it to the next pad"),
)
ASKS_FOR = {
    "is still dull": PREHEAT,
    "has run round lead and pad": DONE,
    "stands on it as a ball": (
        "Let it cool; then clean the pad, flux it, and heat pad and lead together"
    ),
    "follows the tip away as a spike": (
        "Fresh flux, then touch it once more, and lift the tip quickly"
    ),
    "has set grainy, as the part moved": (
        "Flux it, melt it once more, and keep the part from moving meanwhile"
    ),
    "does not stick to the tip": "Clean and tin the tip, then begin again with fresh flux",
    "joins it to the next pad": "Flux it, then draw the bridge off with braid or with a clean tip",
}


def cut_open(draw: Draw) -> Choice:
    """A joint cut open, to accept or to reject; the later ones with the height that is due."""
    fill, product_class, leads, right = draw.pick(HOLE_FILLS)
    thick, *heights = BOARDS.get((fill, product_class, leads), ("1.6",))
    options: tuple[str, ...] = (ACCEPT, REJECT)
    asked = "What do you say by IPC-A-610F?"
    if heights:
        verdicts = [f"{said}: {height} mm are due" for height in heights for said in options]
        options = draw.shuffle(verdicts)
        right, asked = f"{right}: {heights[0]} mm are due", f"{asked} What height is due?"
    look = (
        "Read the height on the scale. Then look up the class, and whether the part has "
        "14 leads or more."
    )
    return Choice(
        prompt=f"A joint is cut open. The board is {thick}{NBSP}mm thick, its class is "
        f"{product_class}, the part has {leads} leads, and no plane is near. {asked}",
        picture=lambda: _filled(fill, float(thick)),
        options=options,
        answer=right,
        mistakes=[Mistake(one, look) for one in options if one != right],
    )


def _filled(fill: int, board_mm: float):
    from repairlib.show.solder import draw_hole_fill

    return draw_hole_fill(fill, board_mm)


def what_next(draw: Draw) -> Choice:
    """A joint that is being made: what it asks for next."""
    joint, tip, celsius, seconds, state = draw.pick(JOINTS)
    right = ASKS_FOR[state]
    first = PREHEAT if right == DONE else right
    return Choice(
        prompt=f"A leaded joint {joint}. A {tip} tip at {celsius}{NBSP}°C has been on it for "
        f"{seconds}{NBSP}s, and the solder {state}. What next?",
        options=draw.shuffle([first, DONE, HOTTER, LONGER]),
        answer=right,
        mistakes=[
            Mistake(first if right == DONE else DONE, "Has the heat arrived? Look at the solder."),
            Mistake(HOTTER, "What does flux do above 350 °C? And how wide is the bridge for heat?"),
            Mistake(LONGER, "Where does the heat go meanwhile? A pad lifts by time, too."),
        ],
    )
