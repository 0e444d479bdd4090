"""The practice board: a broken set on the screen, honest instruments, a repair by its outcome."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    attempt="Attempt Done Task walked",
    conditions="CONDITIONS Fault as_it_acts read_fault",
    electric="Electric circuit_of",
    judging="Finding Judgement judge",
    information="Belief Cut believed best_next cuts gain learned",
    moves="Move Reading Told VERBS",
    practice_set="BoardPart PracticeSet Rail demo_set read_set",
    state="End Feed Fitted Place State begin",
    step="DOES",
    suspects="Suspect all_suspects listed_suspects",
    typed_move="read_move say_move",
)
