"""The cautions, once each, by hazard. Calculators and lessons name the hazard; the words are here.

Usual cautions of the trade and of public safety guidance, in our own words. They do not replace
local rules, an employer's instructions or a licensed person.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from repairlib.core import html


@dataclass(frozen=True)
class Hazard:
    """A danger at the bench: when it applies, what to do, and whom to defer to.

    `strikes` is one strong sentence: what happens and why. `of_part` is the same danger where no
    tool is in hand and the part itself is it: a fuse that is read, a part fitted the wrong way.
    """

    title: str
    when: str
    do: tuple[str, ...]
    defer: str
    strikes: str
    of_part: Hazard | None = None

    def _repr_html_(self) -> str:
        return f"{html.text(self.when)}{html.listed(self.do)}<em>{html.text(self.defer)}</em>"


_HOT_TOOLS = Hazard(
    "Hot tools burn and start fires",
    "Whenever an iron, hot air, a hot plate or an oven is used.",
    (
        "Rest the iron in its stand, keep the lead clear, and switch it off when you leave.",
        "Keep paper, solvents and cables away from the hot end.",
        "What was heated stays hot: let it cool before you take it in hand.",
    ),
    "Follow the tool maker's instructions and the fire rules of your workshop.",
    "An iron burns skin to the bone at a touch and lights paper that it lies on.",
)
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
        "Mains current through the chest stops the heart, and a hand that has closed on a live "
        "part cannot let go.",
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
        "A charged capacitor gives all it holds in one blow to whatever bridges its two ends, long "
        "after the plug is out; above 60 V dc it is for a qualified person.",
    ),
    "live board": Hazard(
        "A tool on a board that is on shorts it",
        "Whenever a hand, a tool or a part goes to a board while anything feeds it.",
        (
            "Power off first, then prove with a meter that it is dead.",
            "With the power on only probes: bare at the tip alone, black clipped, one hand free.",
            "The tip of many irons is joined to earth: a live point that it meets is shorted.",
        ),
        "Above 60 V dc or 30 V rms leave live work to a qualified person.",
        "A tip that slips joins two points and what stands between them burns, an earthed iron "
        "does so at the first touch; above 60 V dc or 30 V rms the current takes the hand as well.",
    ),
    "wrist strap": Hazard(
        "A wrist strap ties you to ground",
        "Whenever a strap is worn and something on the bench can be live.",
        (
            "Wear it only with its 1 MΩ: measure its cord from stud to clip before each session.",
            "Bare and live above 60 V dc or 30 V rms: strap off, stop, hand the job on.",
            "It is no protection against mains.",
        ),
        "Local electrical rules and a qualified person come first.",
        "A strap without its resistor leads the current of a live part through you to ground, and "
        "that kills.",
    ),
    "hot tools": _HOT_TOOLS,
    "heat and fire": replace(
        _HOT_TOOLS,
        title="Hot tools and hot parts start fires",
        when="Whenever an iron, hot air or a fault under power is involved.",
        do=(
            *_HOT_TOOLS.do[:2],
            "A part fitted the wrong way round can burst or burn: check before power, and power up "
            "from a current-limited supply. Without one, hand the first power-up to somebody who "
            "has one.",
        ),
        of_part=Hazard(
            "A wrong or reversed part bursts or burns",
            "Whenever power comes on after a part was fitted or a fuse was changed.",
            (
                "Same rating, same class, right way round: check each before power.",
                "Power up from a current-limited supply. Without one, hand the first power-up to "
                "somebody who has one.",
                "It smokes or hisses? Switch off, stand back, let it cool before you look.",
            ),
            "Follow the fire rules of your workshop.",
            "A part of the wrong rating or the wrong way round heats up until it bursts or burns, "
            "because nothing limits its current.",
        ),
    ),
    "fumes and flux": Hazard(
        "Flux smoke harms lungs",
        "Whenever you solder or heat a board.",
        (
            "Use fume extraction or move the air away from your face.",
            "Keep your head out of the plume. Stop if your eyes or chest are irritated.",
        ),
        "The safety data sheet of the flux and your workplace's limits come first.",
        "Flux smoke gets deep into the lungs and can leave asthma that stays for life.",
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
        "Lead goes from the fingers into the mouth, stays in the body for years, and harms nerves, "
        "those of children most.",
    ),
    "solvents": Hazard(
        "Solvent vapour burns and harms",
        "Whenever you clean with alcohol or another solvent.",
        (
            "No hot tool, spark or power near it. Let the board dry fully before power.",
            "Air the room, wear gloves, keep the can closed.",
        ),
        "The safety data sheet of the solvent comes first.",
        "Its vapour creeps along the bench, and one spark or hot tip sets all of it alight.",
    ),
    "flying leads and eyes": Hazard(
        "Cut leads and bursting parts fly",
        "Whenever you cut leads, pull parts or power up after a repair.",
        (
            "Wear safety glasses.",
            "Hold the lead while you cut it. Keep your face away at the first power-up.",
        ),
        "Follow the eye-protection rule of your workshop.",
        "A cut lead or the can of a bursting part hits the eye before the lid can close.",
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
        "A cell that is shorted or heated gives all its energy at once, as a fire that needs no "
        "air.",
    ),
    "high-voltage tubes": Hazard(
        "Tubes and their supplies hold lethal voltage",
        "Whenever a picture tube, a valve set, a flash or a microwave oven is involved.",
        (
            "Do not open it. The voltage stays for days after the plug is out.",
            "Picture tubes can implode.",
        ),
        "Only people trained and licensed for high voltage.",
        "Thousands of volts jump to a hand before it touches, and an ordinary meter does not hold "
        "them back.",
    ),
    "PCB oil": Hazard(
        "Old motor-run, ballast and oil-paper capacitors can hold PCB oil",
        "Whenever a motor-run, ballast or oil-paper capacitor may be from before the 1980s, or its "
        "can is wet.",
        (
            "No mark that says it is free of PCB? Treat it as if it held PCB.",
            "Do not open, drill or heat it. Nitrile gloves; nothing that it wets goes near food.",
            "Into a closed bag or tin, as hazardous waste, with a note of what it is.",
        ),
        "The waste authority says where it goes. A leak is a job for trained people.",
        "The oil goes through the skin, stays in the body for decades, and is held to cause "
        "cancer.",
    ),
    "wet tantalum": Hazard(
        "Wet tantalum capacitors hold sulphuric acid",
        "Whenever a tantalum capacitor in a metal case with a glass or rubber seal is met.",
        (
            "A crust, a drop or a green track at its seal? Gloves and glasses before you go near.",
            "Acid on skin or in an eye: much water at once, for many minutes, then a doctor.",
            "Do not reverse it, heat its case or open it.",
        ),
        "The maker's data sheet and the waste authority come first.",
        "The acid burns skin and eyes and eats tracks, and a case that is reversed or overheated "
        "bursts.",
    ),
    "asbestos": Hazard(
        "Grey or white heat cloth and board can be asbestos",
        "Whenever old heaters, irons, toasters, ovens, projectors or resistors on board have "
        "fibrous sleeves, pads or sheets.",
        (
            "Leave it as it is: do not cut, brush, blow or peel it.",
            "It crumbles already? Close the set, wet nothing, vacuum nothing, hand it on.",
        ),
        "Local asbestos rules come first: sampling and removal are for licensed people.",
        "Its fibres stay in the lungs and cause cancer decades later; nobody sees or feels them.",
    ),
    "beryllium oxide": Hazard(
        "White ceramic in power parts can be beryllium oxide",
        "Whenever a radio-frequency power transistor, a transmitting valve, a laser tube or a "
        "white insulator under a power part is met.",
        (
            "Do not break, file, grind or sand it, and do not open the part.",
            "Broken already? Touch nothing, blow nothing, wipe wet with gloves on, bag it.",
        ),
        "The maker's safety data sheet and the waste authority come first.",
        "Whole it is harmless; its dust scars the lungs for life after a single breath of it.",
    ),
    "chip supply": Hazard(
        "The wrong supply kills a memory chip",
        "Whenever a memory chip is connected to a programmer or read on its board.",
        (
            "Find out first whether it is made for 1.8 V, 3.3 V or 5 V: by its mark and data "
            "sheet, and by a meter at its supply pin while the board runs.",
            "Set the programmer to that supply, and measure what it gives before the clip goes on.",
            "Nobody knows? Begin with nothing: ask, or look the mark up.",
        ),
        "The data sheet of the chip comes first.",
        "A chip made for a low supply dies at the first touch of a higher one, and its content "
        "goes with it.",
    ),
    "only copy": Hazard(
        "Writing can destroy the only copy",
        "Whenever a memory chip is erased or written.",
        (
            "Read it twice and compare. Only two equal reads are a copy.",
            "Store them in two places before anything is erased, also when the content is bad.",
            "Look for what only this board has: serial number, network address, calibration.",
        ),
        "Whose content it is, and whether it may be copied, is a matter of local law.",
        "What is erased cannot be brought back, and what only this board knew is lost for good.",
    ),
    "static charge": Hazard(
        "Your own charge kills chips unnoticed",
        "Whenever a chip or an open board is taken in hand.",
        (
            "Touch the ground of the unplugged set, wear a tested wrist strap, use a mat.",
            "Chips stay in their bag or foam until they are fitted.",
            "Strap off when anything is bare and live above 60 V dc or 30 V rms.",
        ),
        "The rules of your workshop against static charge come first.",
        "A spark too weak to be felt breaks a chip inside, and it may fail only weeks later.",
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
        return _in_short(self.hazards)

    def short(self) -> str:
        """As HTML, for the part or the answer in hand: of "heat and fire" what a part does."""
        return _in_short(hazard.of_part or hazard for hazard in self.hazards)

    def in_brief(self) -> str:
        """As HTML, for a panel used at the bench: one sentence each, all there is to do folded.

        >>> caution("mains", "lead").in_brief().count("<details>")
        1
        """
        hazards = [hazard.of_part or hazard for hazard in self.hazards]
        lines = "<br>".join(f"<strong>⚠ {html.text(one.strikes)}</strong>" for one in hazards)
        return _boxed(lines + Caution(tuple(hazards)).folded("What to do"))

    def in_full(self) -> str:
        """As HTML with nothing folded: for paper."""
        return _boxed(
            "<hr>".join(
                f"<strong>⚠ {html.text(hazard.title)}</strong><br>{hazard._repr_html_()}"
                for hazard in self.hazards
            )
        )

    def folded(self, title: object = "Cautions", opened: bool = False) -> str:
        """The cautions as HTML behind a title."""
        return html.fold(title, self.in_full(), opened)


def _in_short(hazards: Iterable[Hazard]) -> str:
    """Of each hazard what happens and why, in one sentence; what to do is folded.

    They stand side by side where there is room.
    """
    pieces = [
        f"<div><strong>⚠ {html.text(hazard.strikes)}</strong>"
        f"{html.fold(f'{hazard.title}: what to do', hazard._repr_html_())}</div>"
        for hazard in hazards
    ]
    wide = 46 if len(pieces) == 1 else 72
    columns = "repeat(auto-fit,minmax(min(24em,100%),1fr))"
    look = f"max-width:{wide}em;display:grid;gap:10px 24px;grid-template-columns:{columns}"
    return _boxed("".join(pieces), look)


def _boxed(cautions: str, look: str = "max-width:46em") -> str:
    """Cautions in their box."""
    return (
        '<div role="note" style="border:2px solid #b45309;border-left-width:10px;'
        f'padding:8px 14px;border-radius:4px;{look}">{cautions}</div>'
    )


def caution(*keys: str) -> Caution:
    """The cautions for these hazards, to show at the place where work can hurt someone.

    >>> print(caution("flying leads and eyes"))  # doctest: +ELLIPSIS
    CAUTION: Cut leads and bursting parts fly. Wear safety glasses. ...
    """
    return Caution(tuple(HAZARDS[key] for key in keys))
