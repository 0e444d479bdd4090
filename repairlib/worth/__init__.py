"""Is it worth repairing? What a repair costs and brings, what would turn it, which set first."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    calculators="break_even worth_repairing",
    deciding="Decision decide_on",
    hazards="read_hazards",
    job="Job",
    ranking="Standing which_first",
    shelf="COLUMNS FIGURES job_of read_cells read_shelf",
)
