"""A joint under heat: choose tool, joint and copper; see when it melts and what gets how hot.

The panel is a thin view. The numbers come from `repairlib.heat`, the drawings from
`repairlib.show`.
"""

from __future__ import annotations

from html import escape

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.core.safety import caution
from repairlib.faces.panels.look import Panel, picture_html, told, trouble, words
from repairlib.heat import (
    CANNOT_TELL,
    HOT_AIR,
    IRON,
    LIMITS,
    MATS,
    NO_PLANE,
    OVER,
    PLASTICS,
    RELIEF,
    SOLID,
    SURFACE,
    THROUGH_HOLE,
    TIPS,
    TOO_LITTLE,
    WITHIN,
    Heating,
    Help,
    Setup,
    heat_joint,
    judge,
    last_melted,
    verdict,
    what_helps,
)
from repairlib.show.joint_chart import draw_joint_chart
from repairlib.show.joint_section import draw_joint_section

SOLDERS = ("Sn63Pb37", "Sn60Pb40", "SAC305", "Sn99.3Cu0.7", "Bi58Sn42")
STATES = {WITHIN: "right", OVER: "wrong", TOO_LITTLE: "wrong", CANNOT_TELL: "cannot read"}
LABELS = {"description_width": "11rem"}
WIDE = widgets.Layout(width="30rem", max_width="100%")


class JointHeat(Panel):
    """The panel's parts: a field for each name in `fields`, then `answer`, `section`, `chart`.

    `help` computes what would melt the joint sooner when it is pressed, into `helps`.

    >>> panel = JointHeat()
    >>> panel.fields["mat"].value = "unknown"
    >>> "cannot tell" in panel.answer.value
    True
    """

    def __init__(self, **start):
        usual = Setup(**start)
        self.fields = {
            "kind": _choice("Joint", (THROUGH_HOLE, SURFACE), usual.kind),
            "source": _choice("Heated by", (IRON, HOT_AIR), usual.source),
            "celsius": _slider("Tool set to, °C", usual.celsius, 250, 480),
            "tip": _choice("Tip of the iron", tuple(TIPS), usual.tip),
            "wet_tip": _choice(
                "Fresh solder on the tip", (("yes", True), ("no", False)), usual.wet_tip
            ),
            "solder": _choice("Solder", SOLDERS, usual.solder),
            "plane": _choice("Copper at the joint", (NO_PLANE, RELIEF, SOLID), usual.plane),
            "preheat": _slider("Board preheated to, °C", usual.preheat, 25, 150),
            "plastic": _choice("Plastic at the lead", PLASTICS, usual.plastic),
            "mat": _choice("Mat", MATS, usual.mat),
        }
        self.answer, self.section, self.chart, self.helps = (words() for _ in range(4))
        self.help = widgets.Button(description="What would help?", layout={"width": "14rem"})
        self.help.on_click(self._help)
        for field in self.fields.values():
            field.observe(self._update, "value")
        super().__init__(
            *self.fields.values(), self.answer, self.help, self.helps, self.section, self.chart
        )
        self._update()

    def setup(self) -> Setup:
        """The joint as the fields say."""
        chosen = {name: field.value for name, field in self.fields.items()}
        chosen |= {name: float(chosen[name]) for name in ("celsius", "preheat")}
        return Setup(**chosen)

    def _update(self, change=None) -> None:
        self.helps.value = ""
        self.fields["tip"].disabled = self.fields["wet_tip"].disabled = (
            self.fields["source"].value == HOT_AIR
        )
        try:
            run = heat_joint(self.setup())
        except RepairlibError as error:
            self.answer.value = trouble(error)
            return
        self.answer.value = answer_html(run)
        self.section.value = picture_html(draw_joint_section(run))
        self.chart.value = picture_html(draw_joint_chart(run))

    def _help(self, button=None) -> None:
        try:
            self.helps.value = helps_html(what_helps(self.setup()))
        except RepairlibError as error:
            self.helps.value = trouble(error)


def joint_heat_panel(**start) -> JointHeat:
    """The panel, ready to be shown. `start` sets fields, as `plane="solid plane"`."""
    return JointHeat(**start)


def answer_html(run: Heating) -> str:
    """The verdict, every limit, and the cautions of work with heat."""
    checks = judge(run)
    word, _ = verdict(checks)
    when = last_melted(run)
    melted = "some solder stays solid" if when is None else f"all solder liquid after {when:.1f} s"
    says = [f"{check.name}: {check.says} ({check.verdict})" for check in checks]
    more = f'<div class="rl-soft">{escape(LIMITS)}</div>'
    held = caution("heat and fire", "fumes and flux")._repr_html_()
    more += f"<details><summary>Cautions for work with heat</summary>{held}</details>"
    return told(STATES[word], f"{word}: {melted}", says, more)


def helps_html(helps: list[Help]) -> str:
    """What would help, the best first, as a small table."""
    if not helps:
        return told("unanswered", "Nothing more to try in this model.")
    rows = "".join(
        f"<tr><td style='text-align:left'>{escape(one.change)}</td><td>{_when(one.seconds)}</td>"
        f"<td>{one.pad_celsius:.0f} °C</td>"
        f"<td style='text-align:left'>{escape(one.note)}</td></tr>"
        for one in helps
    )
    head = "<tr><th>change</th><th>all liquid</th><th>board under pad</th><th>mind</th></tr>"
    return f"<table>{head}{rows}</table>"


def _when(seconds: float | None) -> str:
    return "not at all" if seconds is None else f"after {seconds:.1f} s"


def _choice(description: str, options, value) -> widgets.Dropdown:
    return widgets.Dropdown(
        options=options, value=value, description=description, style=LABELS, layout=WIDE
    )


def _slider(description: str, value: float, low: int, high: int) -> widgets.IntSlider:
    return widgets.IntSlider(
        value=int(value),
        min=low,
        max=high,
        step=5,
        description=description,
        style=LABELS,
        layout=WIDE,
        continuous_update=False,
    )
