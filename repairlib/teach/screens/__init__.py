"""A lesson for the projector: one idea on a screen, large type, no code, one key to go on."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(__name__, writing="write_screens screens_page")
