"""The practice board: a broken set on the screen, honest instruments, a repair by its outcome."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    capacitance_meter="capacitance",
    bench_supply="supply_shows",
    attempt="Attempt Done Task walked",
    conditions="CONDITIONS Fault as_it_acts read_fault",
    electric="Electric circuit_of",
    esr_tester="esr",
    judging="Finding Judgement judge",
    information="Belief Cut believed best_next cuts gain learned",
    looks="Look look looks_of smell",
    moves="Move Reading Told Trace VERBS",
    multimeter="ac_volts amps diode ohms volts",
    oscilloscope="scope",
    thermometer="temperature",
    practice_set="BoardPart PracticeSet Rail demo_set read_set",
    state="End Feed Fitted Place State begin",
    step="DOES",
    suspects="Suspect all_suspects listed_suspects",
    typed_move="read_move say_move",
    where="on_mains_side",
)
