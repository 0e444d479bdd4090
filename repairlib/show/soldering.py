"""Soldering by hand as picture strips: how heat gets in, how a part goes in, how it comes out.

Joints are cut open, solder side up. The order and the times are common practice.
"""

from __future__ import annotations

from collections.abc import Callable

from repairlib.show.canvas import BOARD, COPPER, QUIET, Canvas
from repairlib.show.hole_section import (
    COAT,
    IRON,
    PAD,
    SOLDER,
    THICK,
    board,
    copper,
    drop,
    filled,
    fine_tip,
    joint,
    lead,
    nozzle,
    pump,
    section,
    wide_tip,
    wire,
)
from repairlib.show.strip import Shown, Strip
from repairlib.show.tools import arrow

SMALL = 13
Scene = tuple[Callable[[Canvas], None], str, str, str]  # draws, its name, its words, what is seen


def draw_heat_bridge() -> Strip:
    """Draw a fine dry tip beside a wide wet one, on the same joint, with the parts named.

    >>> [one.name for one in draw_heat_bridge().shown]
    ['Fine and dry', 'Wide and wet']
    """
    return _strip(_BRIDGE)


def draw_putting_in() -> Strip:
    """Draw how a lead is soldered into a plated hole, in four steps.

    >>> print(draw_putting_in().shown[0].name)
    1. Tip on pad and lead
    """
    return _strip(_IN)


def draw_taking_out() -> Strip:
    """Draw how a lead comes out of a plated hole with a desoldering station, in four steps.

    >>> print(draw_taking_out().shown[-1].name)
    4. The part comes by itself
    """
    return _strip(_OUT)


def draw_pump_and_braid() -> Strip:
    """Draw the hand pump at a plated hole, and braid on a flat pad.

    >>> [one.name for one in draw_pump_and_braid().shown]
    ['Hand pump, for holes', 'Braid, for flat pads']
    """
    return _strip(_BY_HAND)


def _strip(scenes: tuple[Scene, ...]) -> Strip:
    return Strip(
        [
            Shown(section(draw, f"Cut open, solder side up: {seen}."), name, words)
            for draw, name, words, seen in scenes
        ]
    )


def _named(canvas: Canvas) -> None:
    canvas.text(-62, 20, "board", SMALL)
    canvas.text(66, -24, "pad", SMALL, fill=QUIET)
    canvas.line((58, -17), (36, -5), stroke=QUIET, pen=1)
    canvas.text(34, -54, "lead", SMALL, fill=QUIET)
    canvas.line((20, -50), (6, -42), stroke=QUIET, pen=1)
    canvas.text(66, 69, "part", SMALL, fill=QUIET)


def _dry(canvas: Canvas) -> None:
    joint(canvas)
    fine_tip(canvas)
    canvas.text(-40, -74, "tip", SMALL, fill=QUIET)
    _named(canvas)


def _wet(canvas: Canvas) -> None:
    _tip_on(canvas)
    canvas.text(-30, -72, "tip", SMALL, fill=QUIET)
    _named(canvas)


def _tip_on(canvas: Canvas) -> None:
    joint(canvas)
    drop(canvas)
    wide_tip(canvas)


def _feed(canvas: Canvas) -> None:
    board(canvas)
    filled(canvas, bottom=THICK * 0.6)
    drop(canvas)
    canvas.polygon([(8, -26), (30, -COAT), (8, -COAT)], SOLDER, pen=1)
    lead(canvas)
    copper(canvas)
    wide_tip(canvas)
    wire(canvas)


def _lift(canvas: Canvas) -> None:
    joint(canvas, soldered=True)
    wide_tip(canvas, away=12)
    wire(canvas, end=(34, -30))
    canvas.text(88, -50, "1", 15, bold=True)
    arrow(canvas, (52, -22), (74, -38))
    canvas.text(-90, -36, "2", 15, bold=True)
    arrow(canvas, (-46, -12), (-66, -32))


def _still(canvas: Canvas) -> None:
    joint(canvas, soldered=True)
    canvas.line((-22, -40), (22, -40), stroke=QUIET, pen=1.5, dash="4 4")
    canvas.text(62, -42, "cut here", SMALL, fill=QUIET)


def _freshen(canvas: Canvas) -> None:
    joint(canvas, soldered=True)
    wide_tip(canvas)
    wire(canvas)


def _heat(canvas: Canvas) -> None:
    joint(canvas, soldered=True)
    nozzle(canvas)
    arrow(canvas, (48, 69), (70, 69))
    arrow(canvas, (-48, 69), (-70, 69))


def _suck(canvas: Canvas) -> None:
    joint(canvas)
    nozzle(canvas)
    arrow(canvas, (0, -52), (0, -84))


def _free(canvas: Canvas) -> None:
    board(canvas)
    copper(canvas)
    lead(canvas, down=4)
    arrow(canvas, (60, THICK + 10), (60, THICK + 38))


def _pumping(canvas: Canvas) -> None:
    joint(canvas, soldered=True)
    wide_tip(canvas)
    pump(canvas)


def _braiding(canvas: Canvas) -> None:
    canvas.rect(-100, 0, 200, THICK, BOARD, pen=1)
    canvas.rect(-PAD, -COAT, 2 * PAD, COAT, COPPER, pen=1)
    canvas.rect(-PAD + 4, -COAT - 5, 2 * PAD - 8, 5, SOLDER, pen=1)
    low, high = -COAT - 5, -COAT - 16
    end = [(98, low - 30), (98, low - 42), (44, high)]
    canvas.polygon([(-40, low), (40, low), *end, (-40, high)], COPPER, pen=1)
    for x in range(-34, 40, 9):
        canvas.line((x - 5, low), (x + 5, high), pen=1)
        canvas.line((x - 5, high), (x + 5, low), pen=1)
    canvas.polygon([(-24, high), (12, high), (-22, -84), (-62, -84)], IRON, pen=1)
    arrow(canvas, (66, -46), (66, -80))
    arrow(canvas, (10, -46), (10, -80))


_BRIDGE: tuple[Scene, ...] = (
    (
        _dry,
        "Fine and dry",
        "Touches in one point. Most of the heat stays in the iron.",
        "a pointed tip touches the pad in one point, without solder",
    ),
    (
        _wet,
        "Wide and wet",
        "Touches pad and lead. A drop of fresh solder is the bridge for the heat.",
        "a wide tip touches pad and lead, with solder in the corner between the three",
    ),
)
_IN: tuple[Scene, ...] = (
    (
        _tip_on,
        "1. Tip on pad and lead",
        "A clean tip with a drop of solder. Count: one.",
        "the tip touches pad and lead",
    ),
    (
        _feed,
        "2. Solder to the joint",
        "From the other side, not onto the tip. It runs towards the heat. Count: two.",
        "solder wire touches pad and lead opposite the tip and runs into the hole",
    ),
    (
        _lift,
        "3. Wire away, then the tip",
        "When it has run all round and through the hole. Count: three.",
        "the hole is full; first the wire, then the tip is lifted",
    ),
    (
        _still,
        "4. Hold still, look, cut",
        "Nothing moves until it is set. Hold the lead while you cut it, glasses on.",
        "a good joint without tools; the lead is cut above the solder",
    ),
)
_OUT: tuple[Scene, ...] = (
    (
        _freshen,
        "1. Flux and fresh solder",
        "A touch of each. Old solder has no flux left: it takes no heat.",
        "tip and solder wire at an old joint",
    ),
    (
        _heat,
        "2. Nozzle over the lead",
        "Heat until the lead moves freely. Do not press.",
        "a desoldering nozzle stands over the lead; arrows: the part moves from side to side",
    ),
    (
        _suck,
        "3. Now suck",
        "Circle with the nozzle while it sucks. Then off: under 5 seconds in all.",
        "the nozzle over the lead; the solder has gone up, the hole is clear",
    ),
    (
        _free,
        "4. The part comes by itself",
        "It holds? Let it cool, fresh solder, once more. Pull nothing.",
        "the hole is clear and the part moves down out of it",
    ),
)
_BY_HAND: tuple[Scene, ...] = (
    (
        _pumping,
        "Hand pump, for holes",
        "Tip on one side. It flows? Pump at once. Hold it off the pad: it kicks.",
        "the tip heats the joint from one side, the nozzle of a pump is close on the other",
    ),
    (
        _braiding,
        "Braid, for flat pads",
        "Flux on the braid, tip on the braid. Lift both together.",
        "copper braid lies on a flat pad with solder, the tip on the braid; both are lifted",
    ),
)
