"""A joint under heat: choose tool, joint and copper; see when it melts and what gets how hot.

The panel is a thin view. The numbers come from `repairlib.heat`, the drawings from
`repairlib.show`.
"""

from __future__ import annotations

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.core.html import LEFT, picture, row, soft, state_of, table, text, told
from repairlib.core.safety import caution
from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.faces.panels.look import trouble, words
from repairlib.heat import (
    HOT_AIR,
    IRON,
    LIMITS,
    MATS,
    NO_PLANE,
    NOT_SAID,
    PLASTICS,
    RELIEF,
    SOLID,
    SURFACE,
    THROUGH_HOLE,
    TIPS,
    Heating,
    Help,
    Setup,
    about,
    heat_joint,
    judge,
    last_melted,
    may_be_a_cell,
    neighbours_or_not_said,
    verdict,
    what_helps,
)
from repairlib.show.joint_chart import draw_joint_chart
from repairlib.show.joint_section import draw_joint_section

SOLDERS = ("Sn63Pb37", "Sn60Pb40", "SAC305", "Sn99.3Cu0.7", "Bi58Sn42")
YES_NO = (("yes", True), ("no", False))
SIZE = Fields("11rem", "30rem")


class JointHeat(FieldPanel):
    """The panel's parts: a field for each name in `fields`, then `answer`, `section`, `chart`.

    `help` computes what would melt the joint sooner when it is pressed, into `helps`.

    >>> panel = JointHeat()
    >>> panel.fields["mat"].value = "unknown"
    >>> "cannot tell" in panel.answer.value
    True
    """

    def __init__(self, beside: str = NOT_SAID, kept: str = "joint heat", **start):
        usual = Setup(**start)
        self.helps = words()
        self.help = widgets.Button(description="What would help?", layout={"width": "14rem"})
        self.help.on_click(self._help)
        fields = {
            "kind": SIZE.choice("Joint", (THROUGH_HOLE, SURFACE), usual.kind),
            "source": SIZE.choice("Heated by", (IRON, HOT_AIR), usual.source),
            "celsius": SIZE.slider("Tool set to, °C", usual.celsius, 250, 480, 5),
            "tip": SIZE.choice("Tip of the iron", tuple(TIPS), usual.tip),
            "wet_tip": SIZE.choice("Fresh solder on the tip", YES_NO, usual.wet_tip),
            "solder": SIZE.choice("Solder", SOLDERS, usual.solder),
            "plane": SIZE.choice("Copper at the joint", (NO_PLANE, RELIEF, SOLID), usual.plane),
            "preheat": SIZE.slider("Board preheated to, °C", usual.preheat, 25, 150, 5),
            "plastic": SIZE.choice("Plastic at the lead", PLASTICS, usual.plastic),
            "beside": SIZE.choice("Beside it, 5 mm away", neighbours_or_not_said(), beside),
            "mat": SIZE.choice("Mat", MATS, usual.mat),
        }
        super().__init__(fields, heated, ("answer", "section", "chart"), keeps=True, kept=kept)
        *above, section, chart = self.children
        self.children = (*above, self.help, self.helps, section, chart)

    def _update(self, _change=None) -> None:
        self.helps.value = ""
        no_tip = self.fields["source"].value == HOT_AIR
        self.fields["tip"].disabled = self.fields["wet_tip"].disabled = no_tip
        super()._update()

    def _help(self, _button=None) -> None:
        try:
            self.helps.value = helps_html(what_helps(setup(**self.typed())))
        except RepairlibError as error:
            self.helps.value = trouble(error)


def joint_heat_panel(**start) -> JointHeat:
    """The panel, ready to be shown. `start` sets fields, as `plane="solid plane"`."""
    return JointHeat(**start)


def setup(celsius: int, preheat: int, beside: str = NOT_SAID, **chosen) -> Setup:
    """The joint as the fields say; what stands beside it is no part of it."""
    return Setup(celsius=float(celsius), preheat=float(preheat), **chosen)


def heated(**typed) -> tuple[str, str, str]:
    """The answer, the section and the chart of a joint, as HTML."""
    run = heat_joint(setup(**typed))
    answer = answer_html(run, typed["beside"])
    return answer, picture(draw_joint_section(run)), picture(draw_joint_chart(run))


def answer_html(run: Heating, beside: str) -> str:
    """The verdict, every limit, and the cautions of work with heat."""
    checks = judge(run, beside)
    word, _ = verdict(checks)
    when = last_melted(run)
    melted = "some solder stays solid" if when is None else f"all solder liquid after {about(when)}"
    says = [f"{check.name}: {check.says} ({check.verdict})" for check in checks]
    cells = ("batteries",) if may_be_a_cell(beside) else ()
    held = caution("hot tools", "fumes and flux", *cells).folded("Cautions for work with heat")
    return told(state_of(word), f"{word}: {melted}", says, soft(text(LIMITS)) + held)


def helps_html(helps: list[Help]) -> str:
    """What would help, the best first, as a small table."""
    if not helps:
        return told("unanswered", "Nothing more to try in this model.")
    looks = (LEFT, "", "", LEFT)
    rows = [
        row((one.change, _when(one.seconds), f"{one.pad_celsius:.0f} °C", one.note), looks)
        for one in helps
    ]
    return table(rows, row(("change", "all liquid", "board under pad", "mind"), tag="th"))


def _when(seconds: float | None) -> str:
    return "not at all" if seconds is None else f"after {about(seconds)}"
