"""Parts that belong together in one row, each with what one has to know of it."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.show.picture import Picture
from repairlib.show.row import draw_row

BLOWN = {"state": "blown"}

# what each usually prints, and how fuses are built: common practice
FAMILIES: dict[str, tuple[tuple, ...]] = {
    "standing capacitors": (
        ("disc", "104K", "ceramic disc: pF code"),
        ("film box", "4n7J", "film box: code or µF"),
        ("film drop", "104K\n100V", "film drop: code or µF"),
        ("mains box", "0.1µF\n275V~\nX2", "mains box: plain µF"),
        ("radial", "1000µF\n16V", "aluminium: plain text"),
    ),
    "other capacitors": (
        ("moulded tantalum", "107\nC", "tantalum: pF code, letter"),
        ("can", "220\nE", "SMD can: µF, letter"),
        ("coloured bead", "blue-grey-white-pink", "old bead: colours"),
        ("paper tube", ".022\n400V", "paper tube: plain µF"),
        ("axial", "100µF\n63V", "aluminium: plain text"),
    ),
    "large cans": (
        ("snap-in can", "220µF\n400V", "snap-in"),
        ("can with sections", "20-20-20 450V", "three in one can"),
        ("oil can", "4µF\n450V~", "oil, for AC"),
        ("screw can", "10000µF\n63V", "screw terminals"),
    ),
    "chip resistors": (
        ("chip resistor", "103", "10 and three zeros: 10 kΩ"),
        ("chip resistor", "4701", "470 and one zero: 4.7 kΩ"),
        ("chip resistor", "4R7", "4.7 Ω: R is the point"),
        ("chip resistor", "000", "a link: 0 Ω"),
    ),
    "fuses": (
        ("fuse", "T3.15AL250V", "glass: low breaking"),
        ("fuse", "T3.15AL250V", "the same, blown", BLOWN),
        ("fuse", "T3.15AH250V", "ceramic: high breaking"),
        ("fuse", "T3.15AH250V", "blown: not seen", BLOWN),
    ),
}


def draw_family(name: str) -> Picture:
    """Draw the parts of one family in a row, each with a few words under it.

    name: one of FAMILIES, such as "fuses". Raises RepairlibError for another one.

    >>> print(draw_family("fuses").alt.splitlines()[1])
    the same, blown: A glass tube with a metal cap at each end. It has blown: the wire inside is \
broken, with beads at its ends. Printed on it: T3.15AL250V.
    """
    if name not in FAMILIES:
        raise RepairlibError(name, "no family has this name", ", ".join(FAMILIES))
    return draw_row(*FAMILIES[name])
