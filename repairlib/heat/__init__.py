"""Heat at the bench: solders, irons, joints, desoldering, hot air, moisture, cleaning."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    bake="bake_before_reflow",
    cleaning="dry_before_power solvent_for",
    desoldering="jobs_of plan_removal removals shield_neighbour take_out",
    exposure_log="Event clock_readings judge_exposure read_exposure_log",
    flux="flux_code",
    hot_air="HEAT Recipe Stage play",
    iron="iron_temperature",
    joint="FLOW_TIME Heating LIMITS about heat_joint",
    joint_mesh="HOT_AIR IRON NO_PLANE RELIEF SOLID SURFACE Setup THROUGH_HOLE TIPS",
    joint_verdict="Help OVER TOO_LITTLE WITHIN joint_heat judge last_melted verdict what_helps",
    materials="MATS PLASTICS SOFTENS figure",
    mixed_joint="solders_meet",
    moisture="FLOOR_LIFE",
    neighbours="NOT_SAID may_be_a_cell neighbours_or_not_said",
    phase_diagrams="DIAGRAMS Diagram liquidus solidus",
    profile="Profile read_points",
    reflow="CANNOT_TELL Criterion FAIL Judgement PASS judge_profile",
    reflow_limits="ReflowLimits package_limits standard_limits",
    reflow_measures="measure",
    solder_alloys="alloy",
    thermocouple_log="read_log",
    volume="judge_hole_fill solder_for_joint",
)
