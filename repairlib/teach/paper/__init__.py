"""Class paper: hand-outs, question sheets and key, cards, agenda, kit, hazards and permits."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(__name__, writing="Written write_paper")
