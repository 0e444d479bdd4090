"""Small boards, for instruments whose readings are worked out by hand."""

from dataclasses import replace

from repairlib.bench.practice_set import read_set
from repairlib.bench.state import OFF, OWN_PLUG, Feed, State, begin

ABOVE = """title: bench test
says: It is on the bench.
works: It works.
feed: {feed}, inlet in 0, 9 V, 100 mA
rail: rail, at in, 9 V, 20 %
loads: I9
board: 60 x 40
part,is,from,to,value,more,x,y,wide,high
"""
ADAPTER = "P1, in, 0, 9 V, limit 1 A"
FAR_AWAY = "I9, in, 0, 1 µA, load"  # a set has a load; this one hardly counts


def board(*parts: str, feed: str = ADAPTER, charges=(), on: bool = False, seed: str = "1") -> State:
    """A board of parts typed as `R1, in, out, 1 kΩ`, with what stands under `more` last."""
    rows = "\n".join(_row(part) for part in (feed, *parts, FAR_AWAY))
    made = read_set(ABOVE.format(feed=feed.split(",")[0]) + rows)
    plug = Feed(OWN_PLUG if on else OFF)
    return replace(begin(made, (), seed), feed=plug, charges=dict(charges))


def _row(part: str) -> str:
    name, one, other, value, more = (*(cell.strip() for cell in part.split(",")), "")[:5]
    return f"{name},part,{one},{other},{value},{more},10,10,5,5"
