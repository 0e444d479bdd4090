"""The job card of a repair: found, measured, fitted, said, one entry after the other."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    card="Card ENDING Row Unread read_card read_cards",
    entries="Entry FIELDS OUTCOMES STAGES",
    prefilling="Proposed prefill",
    summary="per_job per_month",
    writing="add_entry open_job take_in",
)
