"""Health of parts: what a reading is worth, what a part should read, and a verdict with why."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    ageing="better_part expected_life too_old",
    capacitor_families="LOW_IMPEDANCE WET families",
    derating="MNO2 POLYMER RATINGS tantalum_rating working_share",
    end_of_life="ENDURANCE criterion_of",
    esr="ASK_FREQUENCY STATED_HZ esr_limit esr_of loss_limit usual_at_high",
    in_circuit="PARALLEL SERIES in_circuit_reading look_at",
    leakage="own_leakage_limit",
    life="CAP_HOURS CAP_YEARS HOURS_A_YEAR expected",
    measured="MeasuredPart MeasuredTable read_measured read_measured_file",
    meter="interval judge_reading two_wire_resistance",
    neighbourhood="INSIDE KINDS PART_COLUMNS Part UNITS named_rows part_named read_neighbourhood",
    reforming="reforming_schedule",
    verdict="FIT MARGINAL REPLACE judge_capacitor spread_of",
)
