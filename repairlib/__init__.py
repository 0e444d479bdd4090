"""Calculators for component-level electronics repair: read, judge, plan, and teach.

>>> import repairlib
>>> print(repairlib.read("104K")[0])  # doctest: +ELLIPSIS
100 nF ±10 %...
"""

from __future__ import annotations

from repairlib.errors import RepairlibError
from repairlib.markings import read
from repairlib.quantity import Quantity, engineering, read_quantity

__all__ = ["Quantity", "RepairlibError", "engineering", "read", "read_quantity"]
__version__ = "0.1.0"
