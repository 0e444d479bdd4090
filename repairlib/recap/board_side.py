"""From which side a board is looked at, and which edge is down: without both, no left is a left.

Turn a board over and every plus on its left is on its right.
"""

from __future__ import annotations

from repairlib.core.errors import RepairlibError

COMPONENT, SOLDER = "component side", "solder side"
NOT_STATED = "as the board file has it, side not stated"
OPPOSITE = {"left": "right", "right": "left"}
_DIRECTIONS = (" up", " down", " left", " right")
ACCEPTED = "such as 'component side, connector edge down', or nothing"


def check_seen_from(text: str, where: str) -> str:
    """`text`, or RepairlibError when it names no side or an edge without its direction.

    >>> check_seen_from("component side, connector edge down", "line 2")
    'component side, connector edge down'
    """
    side, _, edge = text.partition(", ")
    known = side in (COMPONENT, SOLDER) and (not edge or edge.endswith(_DIRECTIONS))
    if text and not known:
        raise RepairlibError(text, f"no side from which a board is seen ({where})", ACCEPTED)
    return text


def spoken(seen_from: str) -> str:
    """The side and its edge in words, to stand behind every direction.

    >>> spoken("component side, connector edge down")
    'seen from the component side with the connector edge down'
    >>> spoken(""), spoken("solder side")
    ('as the board file has it, side not stated', 'seen from the solder side, no edge stated')
    """
    if not seen_from:
        return NOT_STATED
    side, _, edge = seen_from.partition(", ")
    return f"seen from the {side}" + (f" with the {edge}" if edge else ", no edge stated")


def turned_over(seen_from: str) -> str:
    """The same board turned over like a page: left and right change, up and down stay.

    >>> turned_over("component side, connector edge left")
    'solder side, connector edge right'
    """
    side, comma, edge = seen_from.partition(", ")
    words, _, direction = edge.rpartition(" ")
    turned = f"{words} {OPPOSITE.get(direction, direction)}" if edge else ""
    return (SOLDER if side == COMPONENT else COMPONENT) + comma + turned
