"""A panel that is a table of fields: what they hold goes to one function, what it says is shown."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.faces.panels.keeping import Keeping
from repairlib.faces.panels.look import Panel, trouble, words


class Fields:
    """Makes the fields of a panel, all as wide as each other, with labels as wide as each other."""

    def __init__(self, label: str, width: str):
        self.label = label
        self.width = width

    def text(self, label: str, value: str) -> widgets.Text:
        return widgets.Text(value=value, **self._look(label))

    def lines(self, label: str, value: str, rows: int) -> widgets.Textarea:
        return widgets.Textarea(value=value, rows=rows, **self._look(label))

    def choice(self, label: str, options: Sequence, value: object = None) -> widgets.Dropdown:
        """A list to choose from; without a value it begins with its first option."""
        first = options[0] if value is None else value
        return widgets.Dropdown(options=options, value=first, **self._look(label))

    def slider(
        self, label: str, value: float, low: int, high: int, step: int = 1
    ) -> widgets.IntSlider:
        """A slider that answers when it is let go, because every answer draws a picture."""
        return widgets.IntSlider(
            value=int(value),
            min=low,
            max=high,
            step=step,
            continuous_update=False,
            **self._look(label),
        )

    def _look(self, label: str) -> dict:
        return {
            "description": label,
            "style": {"description_width": self.label},
            "layout": {"width": self.width, "max_width": "100%"},
        }


BY_FIELDS = "rl-beside"
BESIDE = ("picture", "section")  # drawings that stand beside the fields, so that both are seen


class FieldPanel(Panel):
    """Fields and, with them, what `compute` makes of their values, anew at every change.

    `compute` takes the values by the names of the `fields` and gives a text of HTML for each name
    of `shows`. Each field and each text shown is an attribute of its name. Where `compute` raises
    RepairlibError, its line stands in the first text, and the others are empty, or, with `keeps`,
    as they were last understood. With a name in `kept`, what is typed is kept for the learner; the
    line about that is `keeping.strip`.

    >>> size = Fields("5rem", "20rem")
    >>> panel = FieldPanel({"word": size.text("Type", "a")}, lambda word: [2 * word], ["answer"])
    >>> panel.word.value = "b"
    >>> panel.answer.value
    'bb'
    """

    def __init__(
        self,
        fields: dict[str, widgets.DOMWidget],
        compute: Callable[..., Sequence[str]],
        shows: Sequence[str] = ("answer", "picture"),
        keeps: bool = False,
        above: Sequence[widgets.Widget] = (),
        below: Sequence[widgets.Widget] = (),
        beside: Sequence[str] = BESIDE,
        kept: str = "",
    ):
        self.fields = fields
        self.shown = {name: words() for name in shows}
        self.compute = compute
        self.keeps = keeps
        for name, widget in {**fields, **self.shown}.items():
            setattr(self, name, widget)
        for name, widget in self.shown.items():
            if name != "answer":
                widget.add_class(BY_FIELDS if name in beside else "rl-below")
        self.keeping = Keeping(kept, fields)
        for field in fields.values():
            field.observe(self._update, "value")
        strip = self.keeping.strip
        super().__init__(*above, *fields.values(), strip, *self.shown.values(), *below)
        self._update()

    def stand_beside(self, drawn: widgets.HTML, said: widgets.HTML) -> None:
        """Put both beside the fields, what is said below the drawing."""
        together = widgets.VBox((drawn, said))
        together.add_class(BY_FIELDS)
        others = [one for one in self.children if one not in (drawn, said)]
        self.children = (*others, together)

    def typed(self) -> dict:
        """What the fields hold, by their names."""
        return {name: field.value for name, field in self.fields.items()}

    def _update(self, _change=None) -> None:
        typed = self.typed()
        if None in typed.values():
            return  # the options of a list are just being changed
        answer, *others = self.shown.values()
        try:
            said = self.compute(**typed)
        except RepairlibError as error:
            answer.value = trouble(error)
            for other in () if self.keeps else others:
                other.value = ""
            return
        for shown, html in zip(self.shown.values(), said, strict=True):
            shown.value = html
