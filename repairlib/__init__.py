"""Calculators for component-level electronics repair: read, judge, plan, and teach."""

from __future__ import annotations

from repairlib.errors import RepairlibError
from repairlib.quantity import Quantity, engineering, read_quantity

__all__ = ["Quantity", "RepairlibError", "engineering", "read_quantity"]
__version__ = "0.1.0"
