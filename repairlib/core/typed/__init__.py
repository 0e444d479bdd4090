"""Text and tables as people type them: encodings, columns, headings, references, readings."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    headed="HeadedTable read_headed",
    headings="Columns read_headings role_of_heading",
    readings="Measurement last_digit read_measurement unreadable",
    references="References begins_with_reference in_natural_order read_references",
    set_aside="SetAside",
    table="Row Table cells_of find_separator lines_of with_point",
    textfile="TextFile as_text decode read_text",
)
