"""Calculators for component-level electronics repair: read, judge, plan, and teach.

>>> import repairlib
>>> print(repairlib.read("104K")[0])  # doctest: +ELLIPSIS
100 nF ±10 %...
"""

from repairlib.core.public import public_names
from repairlib.core.version import VERSION

__version__ = VERSION
__getattr__, __all__ = public_names(
    __name__,
    **{
        "core.decide": "decide",
        "core.errors": "RepairlibError",
        "core.pairs": "capacitor_pairs resistor_pairs",
        "core.quantity": "Quantity engineering read_quantity",
        "core.safety": "caution",
        "core.tables": "demo_path",
        "markings": "read",
    },
)
