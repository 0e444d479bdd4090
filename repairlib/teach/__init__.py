"""For instructors: a group, its paper, what it hands in, and who is stuck where."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    apart="shared",
    collecting="collect counts",
    mark_book="write_mark_book",
    names="read_names",
    preparing="prepare",
    rehearsal="rehearsal_folder rehearse",
)
