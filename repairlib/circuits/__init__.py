"""Small supply circuits worked out: at rest, for small signals, in time; ready supplies, faults."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    at_rest="OperatingPoint operating_point small_signals",
    in_time="BACKWARD_EULER TRAPEZOIDAL Stepper Waveforms transient",
    parts="CircuitPart read_circuit",
    power="heat_in",
    rectifier="rectifier_supply textbook",
    settled="Cycle Rail one_cycle rails",
    steady="way_left",
    supplies="BRIDGE CENTRE_TAP HALF_WAVE aged opened scaled shorted supply",
    symptoms="FAULTS SOUND SYMPTOMS look_at most_ripple symptom_rows symptoms_of that_fit waves_of",
)
