"""Any calculator as a panel: one input per parameter, the finding below as one types."""

from __future__ import annotations

import ipywidgets as widgets

from repairlib.core.calculator import Calculator, Choice, Given, Parameter
from repairlib.core.calculators import calculator_named
from repairlib.core.errors import RepairlibError
from repairlib.core.finding import spoken
from repairlib.core.html import escape
from repairlib.faces.panels import look
from repairlib.faces.panels.keeping import Keeping


class CalculatorPanel(look.Panel):
    """The panel of one calculator. `inputs` holds the fields by name, `answer` what is found."""

    def __init__(self, calculator: Calculator, start: dict[str, str] | None = None, kept: str = ""):
        self.calculator = calculator
        start = start or {}
        shown = {
            name: one for name, one in calculator.parameters.items() if name in start or not start
        }
        self.inputs = {
            name: look.named(
                _input(one, start.get(name, calculator.defaults.get(name))), spoken(name)
            )
            for name, one in shown.items()
        }
        self.answer = look.words()
        self.answer.add_class("rl-beside")
        self.keeping = Keeping(kept, self.inputs)
        rows = [
            widgets.VBox([look.words(_label(name, one)), self.inputs[name]])
            for name, one in shown.items()
        ]
        for field in self.inputs.values():
            field.observe(self._update, "value")
        self._update()
        super().__init__(
            look.words(f"<h4>{calculator.title}</h4>"), *rows, self.keeping.strip, self.answer
        )

    def _update(self, _change=None) -> None:
        typed = {name: field.value for name, field in self.inputs.items() if field.value}
        missing = [
            spoken(name)
            for name in self.calculator.parameters
            if name not in typed and name not in self.calculator.defaults
        ]
        if missing:
            self.answer.value = look.told("unanswered", f"Type {' and '.join(missing)}.")
            return
        try:
            self.answer.value = self.calculator(**typed).under_its_title()
        except RepairlibError as error:
            self.answer.value = look.trouble(error)


def calculator_panel(name: str, **start: str) -> CalculatorPanel:
    """A panel for the calculator of that name, such as "capacitor_code".

    `start` types values in to begin with: then only these fields are shown, in the calculator's
    order. Raises RepairlibError when there is no calculator or value of that name.
    """
    calculator = calculator_named(name)
    strangers = [given for given in start if given not in calculator.parameters]
    if strangers:
        accepted = ", ".join(calculator.parameters)
        raise RepairlibError(strangers[0], f"{name} has no such value", accepted)
    return CalculatorPanel(calculator, start, kept=name.replace("_", " "))


def _label(name: str, parameter: Parameter) -> str:
    sentence = escape(parameter.sentence)
    return f'<span class="rl-head">{spoken(name)}</span> <span class="rl-soft">{sentence}</span>'


def _input(parameter: Parameter, start: object) -> widgets.Widget:
    """A field that begins with `start`; empty for None."""
    typed = "" if start is None else str(start)
    width = widgets.Layout(width="22rem", max_width="100%")
    if isinstance(parameter, Choice):
        options = parameter.all_options()
        return widgets.Dropdown(options=options, value=typed or options[0], layout=width)
    placeholder = parameter.range() if isinstance(parameter, Given) else ""
    return widgets.Text(value=typed, placeholder=placeholder, layout=width)
