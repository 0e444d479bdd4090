"""Static electricity at the bench: limits and audit, charge on a body, part classes, the strap."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    audit="Audit audit_bench",
    charge="body_charge charge_decay",
    limits="EDITIONS LEAST_STRAP esd_limit items limit_row",
    parts="damage_level esd_class",
    strap="strap_on_or_off",
)
