"""Every calculator by name, and the module it lives in, so that one call loads one room only."""

from __future__ import annotations

from importlib import import_module

from repairlib.core.calculator import Calculator
from repairlib.core.errors import RepairlibError

# Module below repairlib: its calculators, in the order in which they are listed. A test compares
# the table with every module.
HOMES = {
    "markings.calculators": "capacitor_code resistor_bands inductor_bands band_confusions",
    "core.pairs": "nearest_value resistor_pairs capacitor_pairs",
    "polarity.checker": "check_polarity",
    "recap.calculators": "replacement_capacitor",
    "recap.substitution": "substitute_capacitor",
    "recap.makeshifts": "ceramic_under_bias ceramic_ageing series_pair back_to_back",
    "health.meter": "meter_interval two_wire_resistance four_wire_resistance judge_reading",
    "health.in_circuit": "in_circuit_reading",
    "health.esr": "esr_from_tan_delta esr_limit impedance_ratio",
    "health.leakage": "leakage_limit",
    "health.end_of_life": "end_of_life_limits",
    "health.reforming": "reforming_schedule",
    "health.verdict": "judge_capacitor",
    "health.ripple": "ripple_at_frequency ripple_of_can",
    "health.ageing": "expected_life mixed_use_life too_old better_part",
    "health.derating": "tantalum_working_voltage tantalum_rating returning_voltage",
    "heat.solder_alloys": "solder_alloy solder_composition",
    "heat.phase_diagrams": "melting_by_composition",
    "heat.invariants": "invariant_points",
    "heat.mixed_joint": "solders_meet solders_meet_by_mass",
    "heat.iron": "iron_temperature",
    "heat.volume": "solder_for_joint judge_hole_fill stencil_opening",
    "heat.desoldering": "take_out shield_neighbour",
    "heat.flux": "flux_code",
    "heat.cleaning": "solvent_for dry_before_power ionic_cleanliness",
    "heat.air_limits": (
        "alcohol_vapour alcohol_for_level alcohol_level alcohol_ventilation bench_air lead_in_air"
    ),
    "heat.reflow_limits": "reflow_limits",
    "heat.reflow": "judge_reflow",
    "esd.limits": "esd_limit",
    "esd.charge": (
        "body_charge body_spark charge_decay charge_left drain_resistance charging_by_walking"
    ),
    "esd.parts": "esd_class damage_level insulator_distance",
    "esd.strap": "strap_current strap_on_or_off",
    "stored_charge.energy_classes": "energy_class ac_and_dc",
    "stored_charge.steady_limits": "steady_limits",
    "stored_charge.discharge": (
        "stored_energy voltage_of_energy voltage_left discharge_time bleeder"
    ),
    "stored_charge.unplugging": "after_unplugging limited_current shock_hazard",
    "circuits.rectifier": "rectifier_supply",
    "heat.joint_verdict": "joint_heat",
    "heat.estimates": (
        "contact_temperature melting_heat heat_resistance hole_resistance "
        "heat_at_depth warming_time"
    ),
    "heat.moisture": "floor_life_left reset_in_dry_air humidity_card",
    "heat.bake": "bake_before_reflow",
    "connectors.contacts": "contact_current",
    "connectors.contact_resistance": "contact_heat",
    "connectors.wire": "copper_wire wire_drop",
    "connectors.lead_and_plug": "power_path",
    "connectors.slot": "slot_power",
    "connectors.keying": "pin_one",
    "connectors.before_power": "shorts_before_power",
    "connectors.pad_repairs": "link_wire",
    "connectors.heat_plan": "connector_heat",
    "missing_parts.chip_tantalum": "missing_tantalum",
    "missing_parts.without_it": "without_part",
    "missing_parts.torn_pads": "torn_pad",
    "worth.calculators": "worth_repairing break_even",
    "power_up.rails": "rail_check",
    "power_up.ripple": "ripple_check",
    "power_up.supply": "current_limit",
    "power_up.lamp": "series_lamp",
    "power_up.fuse": "fuse_pulse",
    "firmware.chip_voltage": "before_connecting",
    "firmware.identity": "flash_identity",
    "firmware.bodies": "chip_body chip_on_pads",
    "firmware.in_circuit": "reading_on_board",
    "firmware.lifting": "lift_chip",
    "firmware.sfdp_calculators": (
        "sfdp_header sfdp_parameter_header sfdp_density sfdp_erase_types sfdp_first_dword sfdp_dump"
    ),
    "missing_parts.calculators": "missing_part",
    "missing_parts.reading_a_twin": "twin_reading",
    "missing_parts.divider": "divider_resistor",
}


def all_calculators() -> dict[str, Calculator]:
    """Every calculator by name, in the order of the table."""
    return {name: _load(name, home) for home, names in HOMES.items() for name in names.split()}


def calculator_named(name: str) -> Calculator:
    """The calculator of that name. Raises RepairlibError with the nearest names there are.

    >>> calculator_named("stored_energy").title
    'Energy in a capacitor'
    """
    for home, names in HOMES.items():
        if name in names.split():
            return _load(name, home)
    from difflib import get_close_matches

    known = [one for names in HOMES.values() for one in names.split()]
    near = get_close_matches(name[:60], known, n=3, cutoff=0.5)
    suggested = f"{', '.join(near)}; " if near else ""
    raise RepairlibError(
        name, "not a calculator known here", f"{suggested}python -m repairlib calc lists all"
    )


def _load(name: str, home: str) -> Calculator:
    return getattr(import_module(f"repairlib.{home}"), name)
