"""Parts that are gone: what stood there, what may go in, how torn pads are bridged."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    calculators="missing_part",
    candidate="Candidate candidates on_the_mains",
    chip_tantalum="missing_tantalum",
    divider="divider_resistor",
    footprint="Footprint read_footprint",
    kinds="KINDS Kind kind_named",
    landings="Landing read_landings",
    nets="Net net_of",
    place="Place read_place with_more",
    reading_a_twin="twin_reading",
    tantalum_bar="bar_of",
    tantalum_cases="Pads cases cases_on misfit",
    tantalum_said="said_of_tantalum",
    torn_pads="HOW_TO_FIND proof torn_pad",
    twins="Twin read_twin",
    without_it="Without left_out without_part",
)
