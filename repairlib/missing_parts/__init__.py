"""Parts that are gone: what stood there, what may go in, how torn pads are bridged."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(__name__)
