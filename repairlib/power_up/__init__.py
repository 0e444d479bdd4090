"""The first power-up after a repair: rails, current limit, lamp, fuse, and the way step by step."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    checks="Check RailToCheck Setup checks_of rail_to_check",
    fuse="fuse_pulse",
    lamp="HOT_BY_COLD LIVE lamp_for series_lamp",
    rails="rail_check window_around windows",
    ripple="FULL HALF ripple_check smoothing_ripple",
    supply="HAND_ON LAMP LIMITED NEITHER SUPPLIES current_limit short_below steps_up",
    typed_setup="RAIL_COLUMNS read_reading read_setup",
    walk="CAUSE FINE LOOKS POWER_OFF Reading State VERIFY WRONG begin from_dict may_take_back step "
    "take_back walked",
)
