"""Questions whose answer has several parts: steps put in order, and tables filled in.

Both give part of the points for part of the answer; an unsafe part fails the whole question.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from repairlib.core.errors import RepairlibError, as_printed
from repairlib.learn.question import (
    LETTERS,
    PARTLY,
    RIGHT,
    UNANSWERED,
    UNREADABLE,
    UNSAFE,
    WRONG,
    Judgement,
    Question,
    as_text,
    read_option,
)


def before(first: str, second: str) -> Callable[[Sequence[str]], bool]:
    """A recogniser for Order: step `first` was put before step `second`.

    >>> before("touch", "measure")(["unplug", "touch", "measure"])
    True
    """
    return lambda steps: steps.index(first) < steps.index(second)


@dataclass(frozen=True, kw_only=True, repr=False)
class Order(Question):
    """Steps to put in order. `steps` are in the right order, `shown` as the learner sees them.

    Each step in its right place earns its equal share. Typed as the letters of the shown steps
    ("c a b") or as their words with > in between; the form saves a number
    for each step. A Mistake's `when` gets the list of steps, see `before`.

    >>> ask = Order(steps=("unplug", "wait", "measure"), shown=("wait", "measure", "unplug"))
    >>> ask.judge("c a b").state, ask.judge("cab").share, ask.judge("a c b").share
    ('right', 1.0, 0.3333333333333333)
    """

    steps: Sequence[str]
    shown: Sequence[str]

    def __post_init__(self):
        if sorted(self.steps) != sorted(self.shown) or len(set(self.steps)) < len(self.steps):
            raise ValueError(f"{self.id}: the steps shown are not the steps asked for")
        if tuple(self.shown) == tuple(self.steps):  # a drawn order must not give the answer away
            object.__setattr__(self, "shown", (*self.shown[1:], self.shown[0]))

    def is_blank(self, typed) -> bool:
        if isinstance(typed, Mapping):
            return not any(str(number).strip() for number in typed.values())
        return super().is_blank(typed)

    def as_typed(self, given):
        if isinstance(given, Mapping):
            return {as_printed(step): as_printed(number) for step, number in given.items()}
        if isinstance(given, (list, tuple)):
            given = " ".join(map(as_printed, given))
        return super().as_typed(given)

    def in_short(self, typed):
        try:
            return " ".join(LETTERS[self.shown.index(step)] for step in self.read(typed))
        except RepairlibError:
            return super().in_short(typed)

    def read(self, typed) -> list[str]:
        numbered = isinstance(typed, Mapping)
        steps = self._by_number(typed) if numbered else self._by_letter(typed)
        if sorted(steps) != sorted(self.steps):
            every = " ".join(LETTERS[: len(self.steps)])
            raise RepairlibError(
                " ".join(number for number in typed.values() if number) if numbered else typed,
                "not every step stands there once",
                f"each number from 1 to {len(self.steps)} once" if numbered else f"{every}, sorted",
            )
        return steps

    def share(self, answer) -> float:
        in_place = sum(a == b for a, b in zip(answer, self.steps, strict=True))
        return in_place / len(self.steps)

    def other_hints(self, answer) -> tuple[str, ...]:
        in_place = sum(a == b for a, b in zip(answer, self.steps, strict=True))
        said = f"{in_place} of {len(self.steps)} steps are in their place."
        return (said, *super().other_hints(answer))

    def how(self) -> str:
        return "Number the steps. Each step in its right place earns its share of the points."

    def _by_letter(self, typed: str) -> list[str]:
        text = as_text(typed)[:1000]
        if ">" in text:  # the steps in words
            return [read_option(words, self.shown) for words in text.split(">")]
        words = text.replace(",", " ").replace(";", " ").split()
        letters = words if len(words) > 1 else "".join(words)
        return [read_option(letter, self.shown) for letter in letters]

    def _by_number(self, typed: Mapping[str, str]) -> list[str]:
        given = {as_text(number).strip(): step for step, number in typed.items()}
        places = [str(place + 1) for place in range(len(self.steps))]
        return [given[place] for place in places if given.get(place) in self.steps]


@dataclass(frozen=True, kw_only=True, repr=False)
class Table(Question):
    """A table to fill in, such as a small recap plan: `cells[row][column]` is a Number or a Choice.

    Each cell earns its equal share; a cell's own mistakes and dangers count. Typed as
    {row: {column: text}} or {row: "text | text"}; the points of the cells are those of the table.

    >>> from repairlib.learn import Choice, Number
    >>> lies = Choice(options=("radial", "axial"), answer="radial")
    >>> ask = Table(cells={"C3": {"rated voltage": Number(answer=25, unit="V"), "fit": lies}})
    >>> ask.judge({"C3": {"rated voltage": "25 V"}}).share
    0.5
    >>> ask.judge(ask.as_typed({"C3": "25 | radial"})).state
    'right'
    """

    cells: Mapping[str, Mapping[str, Question]]

    def __post_init__(self):
        if self.mistakes or not any(self.cells.values()):
            raise ValueError(f"{self.id}: a table needs cells, and mistakes belong to its cells")

    def columns(self) -> tuple[str, ...]:
        """The column headings, in the order in which they first come up."""
        return tuple(dict.fromkeys(column for row in self.cells.values() for column in row))

    def hazards(self) -> tuple[str, ...]:
        """The hazards of the answers to its cells that could hurt someone, each once."""
        cells = (cell for row in self.cells.values() for cell in row.values())
        return tuple(dict.fromkeys(key for cell in cells for key in cell.hazards()))

    def is_blank(self, typed) -> bool:
        return all(cell.is_blank(text) for _, cell, text in self.given(typed))

    def is_whole(self, typed) -> bool:
        return not any(cell.is_blank(text) for _, cell, text in self.given(typed))

    def unreadable_parts(self, typed) -> tuple[str, ...]:
        judged = ((place, cell.judge(text)) for place, cell, text in self.given(typed))
        return tuple(
            f"{place}: {said}"
            for place, one in judged
            if one.state == UNREADABLE
            for said in one.says
        )

    def in_short(self, typed):
        """The cells that are filled in, each in short: {row: {column: text}}."""
        if not isinstance(typed, Mapping):
            return super().in_short(typed)
        rows = {
            row: {
                column: cell.in_short(texts[column])
                for column, cell in cells.items()
                if not cell.is_blank(texts.get(column, ""))
            }
            for row, cells in self.cells.items()
            if isinstance(texts := typed.get(row), Mapping)
        }
        return {row: texts for row, texts in rows.items() if texts}

    def as_typed(self, given):
        if not isinstance(given, Mapping):
            return super().as_typed(given)
        return {as_printed(row): self._row_as_typed(row, texts) for row, texts in given.items()}

    def judge(self, typed) -> Judgement:
        if isinstance(typed, str) and typed.strip():
            error = RepairlibError(typed, "this is not a table", "the cells row by row")
            return Judgement(UNREADABLE, says=(str(error),))
        return self.together([(place, cell.judge(text)) for place, cell, text in self.given(typed)])

    def together(self, judged: Sequence[tuple[str, Judgement]]) -> Judgement:
        """The judgement on the table from those on its cells, each with its place in words."""
        share = sum(one.share for _, one in judged) / len(judged)
        says = tuple(f"{place}: {text}" for place, one in judged for text in one.says)
        hazards = tuple(dict.fromkeys(key for _, one in judged for key in one.hazards))
        states = [one.state for _, one in judged if one.state != UNANSWERED]
        if not states:
            return Judgement(UNANSWERED)
        if hazards:
            return Judgement(UNSAFE, 0.0, says, hazards)
        if share == 1:
            return Judgement(RIGHT, 1.0)
        if not share:
            return Judgement(UNREADABLE if set(states) == {UNREADABLE} else WRONG, 0.0, says)
        good = sum(one.state == RIGHT for _, one in judged)
        return Judgement(PARTLY, share, (f"{good} of {len(judged)} cells are right.", *says))

    def how(self) -> str:
        return "Fill in the table. Each right cell earns its share of the points."

    def given(self, typed):
        """(place in words, cell, text as typed) of every cell that is asked for."""
        rows = typed if isinstance(typed, (dict, Mapping)) else {}
        for row, cells in self.cells.items():
            texts = rows.get(row)
            texts = texts if isinstance(texts, (dict, Mapping)) else {}
            for column, cell in cells.items():
                yield f"{row}, {column}", cell, texts.get(column, "")

    def _row_as_typed(self, row, texts) -> dict[str, str]:
        if isinstance(texts, Mapping):
            return {as_printed(column): as_printed(text) for column, text in texts.items()}
        columns = tuple(self.cells.get(row, self.columns()))
        typed = [text.strip() for text in as_printed(texts).split("|")]
        if len(typed) > len(columns):
            wrong = f"{len(typed)} entries for {len(columns)} columns"
            raise RepairlibError(texts, wrong, " | ".join(columns))
        return dict(zip(columns, typed, strict=False))
