"""A board in ngspice from empty until nothing moves any more, and then with a meter on it.

From empty a coupling capacitor takes seconds, and the last volts of a rail that nothing loads take
hours. So ngspice first comes up with small capacitors, then with its own; nothing of our solution
goes in. It goes on until a second changes nothing.
"""

from __future__ import annotations

from dataclasses import replace

from tests.bench.spice_deck import Deck, Meter

UNLOADED, QUICK = 1e-5, 1 / 30  # of all capacitors, of all but the reservoir, while it comes up
ROUGH, FINE = 50e-6, 25e-6  # s, the longest step while it comes up and when it is measured
STILL = 50e-6  # s, the longest step where nothing is a sine
COMES_UP, GOES_ON, MEASURED, EACH_METER = 0.4, 1.0, 0.1, 0.06  # s
MOST_SECONDS = 20
MOVES, LEAST = 1e-3, 2e-5  # of what a point has, and V beside it, that a second may move


def settled(folder, parts, reservoir, hertz, ohm, probes):
    """What ngspice tells of it, and what a meter of `ohm` reads at each pair of `probes`.

    `reservoir` are the two points that it lies between.
    """
    sine = any(part.more.get("mains") == hertz for part in parts)
    rough, fine = (ROUGH, FINE) if sine else (STILL, STILL)
    small = _smaller(parts, UNLOADED, ())
    told = Deck(small).in_time(folder, hertz, COMES_UP, rough)
    small = _smaller(parts, QUICK, reservoir)
    told = Deck(small, told.held).in_time(folder, hertz, COMES_UP, rough)
    for _ in range(MOST_SECONDS):
        before = told.waves
        told = Deck(parts, told.held).in_time(folder, hertz, GOES_ON, rough)
        if all(_stands(told.waves[point].mean, before[point].mean) for point in before):
            break
    else:
        raise AssertionError(f"after {MOST_SECONDS} s ngspice still moves")
    begins = [MEASURED + EACH_METER * at for at in range(len(probes))]
    meters = [
        Meter(*pair, ohm, begin, begin + EACH_METER)
        for pair, begin in zip(probes, begins, strict=True)
    ]
    return Deck(parts, told.held).in_time(folder, hertz, MEASURED, fine, meters)


def _smaller(parts, share, but):
    return tuple(
        replace(part, value=part.value * share)
        if part.letter == "C" and set(part.nodes) != set(but)
        else part
        for part in parts
    )


def _stands(now, before):
    return abs(now - before) <= MOVES * abs(now) + LEAST
