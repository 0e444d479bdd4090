"""The kinds of parts that may be missing, each with its job: the words that every face says.

A kind is a part at its job, because the job decides what happens without it: a capacitor that
decouples a chip is another kind than one that tunes a crystal.
"""

from __future__ import annotations

from typing import NamedTuple

from repairlib.core.errors import RepairlibError

CAPACITOR, RESISTOR, INDUCTIVE = "capacitor", "resistor", "inductor"
DIODE, LED, FUSE, CRYSTAL = "diode", "LED", "fuse", "crystal"
TRANSISTOR, CHIP, NOTHING = "transistor", "chip", "nothing"


class Kind(NamedTuple):
    """A part at its job. `family` says what kind of part it is, `job` what it does there."""

    name: str
    family: str
    job: str
    polar: bool = False
    protects: bool = False


_KINDS = (
    Kind("decoupling capacitor", CAPACITOR, "holds a chip's supply steady during fast edges"),
    Kind("bulk capacitor", CAPACITOR, "keeps the charge of a rail, or a regulator stable"),
    Kind("chip tantalum", CAPACITOR, "keeps the charge of a rail in a small body", polar=True),
    Kind("aluminium can", CAPACITOR, "keeps the charge of a rail over slow changes", polar=True),
    Kind("crystal load capacitor", CAPACITOR, "sets the frequency and the start of a crystal"),
    Kind("timing capacitor", CAPACITOR, "sets a time together with a resistor"),
    Kind("coupling capacitor", CAPACITOR, "lets a signal through and holds back dc"),
    Kind("filter capacitor", CAPACITOR, "takes fast noise off a signal"),
    Kind("bootstrap capacitor", CAPACITOR, "feeds the upper switch of a converter"),
    Kind("compensation capacitor", CAPACITOR, "keeps a control loop from oscillating"),
    Kind("snubber capacitor", CAPACITOR, "takes the ringing off a switch"),
    Kind("mains suppression capacitor", CAPACITOR, "filters the mains lead", protects=True),
    Kind("series resistor", RESISTOR, "damps or limits a line that passes through it"),
    Kind("pull-up resistor", RESISTOR, "holds a line high while nobody drives it"),
    Kind("pull-down resistor", RESISTOR, "holds a line low while nobody drives it"),
    Kind("feedback divider resistor", RESISTOR, "tells a regulator its own output voltage"),
    Kind("gain resistor", RESISTOR, "sets the gain or the bias of an amplifier"),
    Kind("current-sense resistor", RESISTOR, "turns a current into a small voltage"),
    Kind("LED resistor", RESISTOR, "limits the current of an LED"),
    Kind("timing resistor", RESISTOR, "sets a time together with a capacitor"),
    Kind("crystal resistor", RESISTOR, "biases a crystal, or limits what drives it"),
    Kind("gate resistor", RESISTOR, "limits the current into a gate or a base"),
    Kind("termination resistor", RESISTOR, "ends a pair of lines without reflection"),
    Kind("snubber resistor", RESISTOR, "damps what rings, with a capacitor in line"),
    Kind("emitter resistor", RESISTOR, "steadies a transistor's current, or shares it out"),
    Kind("discharge resistor", RESISTOR, "takes charge off a cell or a capacitor"),
    Kind("zero-ohm link", RESISTOR, "joins two nets, or chooses an option"),
    Kind("ferrite bead", INDUCTIVE, "keeps fast noise from passing along a line"),
    Kind("power inductor", INDUCTIVE, "stores the energy of a switching converter"),
    Kind("common-mode choke", INDUCTIVE, "keeps noise that both lines share from passing"),
    Kind("ESD protection diode", DIODE, "leads a spark at a contact to ground", True, True),
    Kind("supply protection diode", DIODE, "guards against reversal and surges", True, True),
    Kind("flyback diode", DIODE, "catches the kick of a coil that is switched off", True, True),
    Kind("converter diode", DIODE, "carries the current of a converter's coil", polar=True),
    Kind("zener diode", DIODE, "holds a voltage down to a fixed one", polar=True, protects=True),
    Kind("signal diode", DIODE, "lets a signal pass one way", polar=True),
    Kind("LED", LED, "shows that something is on", polar=True),
    Kind("fuse", FUSE, "opens before something burns", protects=True),
    Kind("varistor", FUSE, "clamps surges", protects=True),
    Kind("thermistor", RESISTOR, "measures heat or limits the inrush", protects=True),
    Kind("crystal", CRYSTAL, "gives a chip its clock", polar=False),
    Kind("transistor", TRANSISTOR, "switches or amplifies", polar=True),
    Kind("voltage regulator", CHIP, "makes one rail out of another", polar=True),
    Kind("never fitted", NOTHING, "an option of the layout that this version leaves empty"),
)

KINDS = {kind.name: kind for kind in _KINDS}


def kind_named(name: str) -> Kind:
    """The kind of part of that name. Raises RepairlibError naming those there are.

    >>> kind_named("pull-up resistor").job
    'holds a line high while nobody drives it'
    """
    kind = KINDS.get(name.strip()) if isinstance(name, str) else None
    if kind is None:
        raise RepairlibError(name, "not a kind of missing part known here", ", ".join(KINDS))
    return kind
