"""Parts that are gone: what stood there, what may go in, how torn pads are bridged."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    footprint="Footprint read_footprint",
    kinds="KINDS Kind kind_named",
    place="Net Place net_of read_place",
    twins="Twin read_twin",
)
