"""The cautions, once each, by hazard. Calculators and lessons name the hazard; the words are here.

Usual cautions of the trade and of public safety guidance, in our own words. They do not replace
local rules, an employer's instructions or a licensed person.
"""

from __future__ import annotations

from dataclasses import dataclass

from repairlib.core import html


@dataclass(frozen=True)
class Hazard:
    """A danger at the bench: when it applies, what to do, and whom to defer to."""

    title: str
    when: str
    do: tuple[str, ...]
    defer: str


_LOCAL = "Local electrical rules and a licensed electrician come first."

HAZARDS = {
    "mains": Hazard(
        "Mains voltage can kill",
        "Whenever the equipment has a mains lead, a mains switch or an internal power supply.",
        (
            "Pull the plug; a switch is not enough. Keep the plug where you can see it.",
            "Wait, discharge, then prove every mains and supply point dead with a meter. "
            "Check the meter on a known source before and after.",
            "Do not work alone, keep one hand away, wear no jewellery.",
            "Fit mains parts only with the same safety class and rating; never improvise.",
        ),
        _LOCAL + " Live mains work is outside these lessons.",
    ),
    "stored charge": Hazard(
        "A capacitor keeps its charge after the plug is out",
        "Whenever there is a mains supply, a flash, a display drive or any large capacitor.",
        (
            "Unplug, wait, and discharge through a resistor made for it, not with a screwdriver.",
            "Measure the voltage across the part. Wait a minute and measure again: "
            "charge creeps back.",
            "Treat every built-in bleeder resistor as broken until you have measured.",
        ),
        "Above 60 V dc, or with banks of large capacitors, leave it to a qualified person.",
    ),
    "heat and fire": Hazard(
        "Hot tools burn and start fires",
        "Whenever an iron, hot air or a fault under power is involved.",
        (
            "Rest the iron in its stand, keep the lead clear, and switch it off when you leave.",
            "Keep paper, solvents and cables away from the hot end.",
            "A part fitted the wrong way round can burst or burn: check before power, "
            "and power up from a current-limited supply.",
        ),
        "Follow the tool maker's instructions and the fire rules of your workshop.",
    ),
    "fumes and flux": Hazard(
        "Flux smoke harms lungs",
        "Whenever you solder or heat a board.",
        (
            "Use fume extraction or move the air away from your face.",
            "Keep your head out of the plume. Stop if your eyes or chest are irritated.",
        ),
        "The safety data sheet of the flux and your workplace's limits come first.",
    ),
    "lead": Hazard(
        "Lead solder is poisonous when swallowed",
        "Whenever the solder, old or new, may contain lead.",
        (
            "Do not eat, drink or smoke at the bench. Wash your hands when you stop.",
            "Wipe the bench wet; do not sweep or blow. Keep children away.",
            "Collect the waste as hazardous waste.",
        ),
        "Local waste and workplace rules come first.",
    ),
    "solvents": Hazard(
        "Solvent vapour burns and harms",
        "Whenever you clean with alcohol or another solvent.",
        (
            "No hot tool, spark or power near it. Let the board dry fully before power.",
            "Air the room, wear gloves, keep the can closed.",
        ),
        "The safety data sheet of the solvent comes first.",
    ),
    "flying leads and eyes": Hazard(
        "Cut leads and bursting parts fly",
        "Whenever you cut leads, pull parts or power up after a repair.",
        (
            "Wear safety glasses.",
            "Hold the lead while you cut it. Keep your face away at the first power-up.",
        ),
        "Follow the eye-protection rule of your workshop.",
    ),
    "batteries": Hazard(
        "Batteries burn, leak and explode",
        "Whenever a cell or battery pack is on the board or nearby.",
        (
            "Take the battery out before you solder. Do not short, charge or heat a cell.",
            "What leaks out burns skin and eyes: wear gloves and glasses, and clean it up as the "
            "safety data sheet of that cell says. Lead-acid, alkaline and lithium cells differ.",
        ),
        "Swollen or hot lithium cells: stop, move away, follow local fire advice.",
    ),
    "high-voltage tubes": Hazard(
        "Tubes and their supplies hold lethal voltage",
        "Whenever a picture tube, a valve set, a flash or a microwave oven is involved.",
        (
            "Do not open it. The voltage stays for days after the plug is out.",
            "Picture tubes can implode.",
        ),
        "Only people trained and licensed for high voltage.",
    ),
}


@dataclass(frozen=True)
class Caution:
    """The cautions of one place in a lesson or report."""

    hazards: tuple[Hazard, ...]

    def __str__(self) -> str:
        return "\n".join(
            f"CAUTION: {hazard.title}. {' '.join(hazard.do)} {hazard.defer}"
            for hazard in self.hazards
        )

    __repr__ = __str__

    def _repr_html_(self) -> str:
        inside = "<hr>".join(
            f"<strong>⚠ {html.text(hazard.title)}</strong><br>{html.text(hazard.when)}"
            f"{html.listed(hazard.do)}<em>{html.text(hazard.defer)}</em>"
            for hazard in self.hazards
        )
        return (
            '<div role="note" style="border:2px solid #b45309;border-left-width:10px;'
            f'padding:8px 14px;border-radius:4px;max-width:46em">{inside}</div>'
        )

    def folded(self, title: object = "Cautions", opened: bool = False) -> str:
        """The cautions as HTML behind a title."""
        return html.fold(title, self._repr_html_(), opened)


def caution(*keys: str) -> Caution:
    """The cautions for these hazards, to show at the place where work can hurt someone.

    >>> print(caution("flying leads and eyes"))  # doctest: +ELLIPSIS
    CAUTION: Cut leads and bursting parts fly. Wear safety glasses. ...
    """
    return Caution(tuple(HAZARDS[key] for key in keys))
