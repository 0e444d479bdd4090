"""Charge in a capacitor: its energy, how it leaves through a resistor, and when to stop."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    discharge="OWN bleeder discharge_time stored_energy",
    energy_classes="ac_limits energy_class steady_dc",
    hand_on="QUALIFIED VERIFY by_voltage hazards_at proof",
    pulse="NOT_TRIED",
    unplugging="after_unplugging",
)
