"""The practice board: a broken set on the screen, honest instruments, a repair by its outcome."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    attempt="Attempt Done Task walked",
    bench_supply="supply_shows",
    capacitance_meter="capacitance",
    complaint="told_by",
    conditions="CONDITIONS Fault as_it_acts read_fault read_faults",
    electric="Electric circuit_of",
    esr_tester="esr",
    information="Belief Cut believed best_next cuts gain learned",
    fair_set="fair unfair unfair_fault",
    generator="LEVELS lines_of_level task",
    judging="Act Finding Judgement judge",
    knowing="known_way",
    lamp_glow="glow",
    looks="Look look look_over looks_of smell",
    moves="Move Reading Told Trace VERBS",
    multimeter="ac_volts amps diode ohms volts",
    oscilloscope="scope",
    practice_set="BoardPart PracticeSet Rail demo_set read_set",
    replaying="MOMENT_KINDS Moment is_off replayed",
    service_sheet="WHEN_DUE Due rails_due",
    state="GIVEN_UP REPAIRED End Feed Fitted Place State begin",
    step="DOES",
    suspects="Suspect all_suspects listed_suspects",
    thermometer="temperature",
    typed_move="read_move say_move",
    where="on_mains_side",
)
