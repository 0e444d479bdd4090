"""Drawings made by code: parts with their markings and bands, polarity marks, board plans.

Every drawing is a Picture: SVG that is the same byte for byte on each run, and words that say
what it shows.
"""

from repairlib.drawings.bands import draw_bands
from repairlib.drawings.board import draw_board
from repairlib.drawings.oxide import draw_oxide_skin
from repairlib.drawings.parts import BODIES, draw_part
from repairlib.drawings.picture import Picture
from repairlib.drawings.polarity import draw_polarity
from repairlib.drawings.row import draw_places, draw_row

__all__ = [
    "BODIES",
    "Picture",
    "draw_bands",
    "draw_board",
    "draw_oxide_skin",
    "draw_part",
    "draw_places",
    "draw_polarity",
    "draw_row",
]
