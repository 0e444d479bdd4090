"""Connectors: current and heat of contacts, wires, slot power, pin 1, checks before power."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    before_power="GO_ON pairs shorts_before_power",
    before_power_table="Checked NOT_MEASURED NOT_THERE Row asked_pairs check_pairs",
    contact_resistance="contact_heat new_contact",
    contacts="FAMILIES OWN contact_current limit",
    heat_plan="FINE INLET MAINS_INLET connector_heat",
    keying="pin_one ways",
    lead_and_plug="power_path",
    pad_repairs="link_wire repairs wire_for",
    slot="budget plugs slot_power",
    wire="cautious_current copper_wire diameter ohm_per_metre wire_drop",
)
