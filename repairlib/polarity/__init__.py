"""Polarity and orientation: what the mark on a part shows, and whether it is fitted right."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    checker="ENDS FITTED NOTHING_ELSE NOT_DECIDED OTHER_END SAME_END check_polarity",
    rules="""
        EITHER NOTHING_SEEN OPPOSITE PartMark SOMETHING_ELSE UNKNOWN board_marks families marks_of
        part_mark part_mark_names part_marks
    """,
)
