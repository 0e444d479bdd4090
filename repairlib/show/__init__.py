"""Findings and parts made visible: drawings and charts, and sheets for paper. Text out, no widgets.

Every drawing is a Picture: SVG that is the same byte for byte on each run, and words that say
what it shows.
"""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    bands="draw_bands",
    bench="draw_bench",
    board="draw_board",
    charts="RatedLife draw_life",
    circuits="draw_leads draw_neighbourhood",
    colour_code="draw_colour_code",
    decision="decided",
    discharge="draw_discharge draw_discharge_circuit draw_strap_path",
    discharging="draw_discharging",
    esr_tables="esr_at_100_khz esr_at_120_hz",
    esr_verdicts="draw_esr_verdicts",
    family="FAMILIES draw_family",
    faults="FAULTS",
    floor_clock="draw_floor_clock",
    hot_air_bench="draw_hot_air",
    intervals="draw_intervals",
    joint_looks="draw_joints",
    joint_section="draw_joint_section",
    likely_body="body_for body_of_kind",
    looks="LOOKS",
    measuring="draw_discharge_tool draw_meter",
    oxide="draw_oxide_skin",
    parts="BODIES draw_part",
    picture="Picture",
    polarity="draw_polarity",
    power_checks="checks_before_power",
    powering="draw_powering",
    rail_chart="draw_rail",
    recap_board="draw_recap",
    record_chart="draw_work",
    reflow_chart="draw_reflow",
    reflow_zones="draw_zones",
    reforming="draw_reforming",
    row="draw_places draw_row",
    side_by_side="beside",
    solder="draw_hole_fill draw_melting",
    soldering="draw_heat_bridge draw_pump_and_braid draw_putting_in draw_taking_out",
    symptoms="symptom_table",
    to_scale="draw_life_size draw_to_scale",
    worth_chart="draw_worth",
)
