"""Planning a recap: a parts list as typed, which capacitors age, what to fit instead."""

from repairlib.recap.board import Board, Position, read_board
from repairlib.recap.catalogue import Catalogue, read_catalogue
from repairlib.recap.fitting_order import ORDER_RULE
from repairlib.recap.item import Item
from repairlib.recap.parts import read_parts
from repairlib.recap.planner import Plan, plan, plan_file
from repairlib.recap.rules import RULES

__all__ = ["ORDER_RULE", "RULES", "Board", "Catalogue", "Item", "Plan", "Position", "plan"]
__all__ += ["plan_file", "read_board", "read_catalogue", "read_parts"]
