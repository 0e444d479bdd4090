"""Kinds of question, and how each judges one answer as typed.

Covers numbers with a unit and choices from a list. Orders and tables are in `arranging`; adding
the points of a whole exercise is in `marking`. Nothing here shows, saves or runs an answer.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import isclose, log10
from typing import Any

from repairlib.core.draws import normal
from repairlib.core.errors import RepairlibError, as_printed
from repairlib.core.quantity import Quantity, engineering, read_quantity
from repairlib.core.safety import HAZARDS

RIGHT, PARTLY, WRONG = "right", "partly right", "wrong"
UNSAFE, UNANSWERED, UNREADABLE = "unsafe", "unanswered", "cannot read"
HELD = "told later"  # answered; right or wrong is told when the instructor says so
CHANGED = "changed"  # since it was answered: the answer is to another question and is not judged

LONGEST = 300  # characters of an answer in short; no answer is longer
LETTERS = "abcdefghijklmnopqrstuvwxyz"
SIZED_UNITS = ("F", "H")  # nobody writes these without a prefix, so a bare number is a slip
EXAMPLES = {"F": "8.2 nF", "H": "8.2 µH", "Ω": "8.2 kΩ", "s": "8.2 s", "%": "82 %", "": "82"}


@dataclass(frozen=True)
class Mistake:
    """A usual mistake: how to know it, and the hint it gets.

    `when` is the answer that this mistake gives (a number in SI, an option, a step), or a function
    of the answer that says yes or no. A mistake with a `hazard`, a key of core.safety.HAZARDS, is
    dangerous: it fails its question whatever the number. A hint never gives the answer away.

    >>> Mistake("touch it", "It may be charged.", hazard="stored charge").hazard
    'stored charge'
    """

    when: Any
    hint: str
    hazard: str = ""

    def __post_init__(self):
        if self.hazard and self.hazard not in HAZARDS:
            raise ValueError(f"no such hazard: {self.hazard!r}; there are {', '.join(HAZARDS)}")


@dataclass(frozen=True)
class Judgement:
    """One answer judged: its state, the share of the points (0 to 1), what to tell the learner.

    `says` are plain sentences; `hazards` are the keys of the hazards of an unsafe answer.
    """

    state: str
    share: float = 0.0
    says: tuple[str, ...] = ()
    hazards: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True, repr=False)
class Question:
    """What all questions share. Use Number, Choice, Order or Table.

    `picture` is a function without arguments that returns a Picture; it is called when shown.
    `hint` is for a wrong answer that none of the `mistakes` explains.
    """

    id: str = ""
    prompt: str = ""
    points: float = 1
    picture: Callable[[], Any] | None = None
    mistakes: Sequence[Mistake] = ()
    hint: str = ""

    def __repr__(self) -> str:
        """The question as it is asked. A learner who prints it does not see the answer."""
        return f"{self.id or 'practice'}: {self.prompt}"

    def hazards(self) -> tuple[str, ...]:
        """The hazards of the wrong answers that could hurt someone, each once; () when none could.

        >>> careless = Mistake("a bare wire", "How fast?", hazard="stored charge")
        >>> Choice(options=("a bare wire", "100 Ω"), answer="100 Ω", mistakes=[careless]).hazards()
        ('stored charge',)
        """
        return tuple(dict.fromkeys(one.hazard for one in self.mistakes if one.hazard))

    def judge(self, typed) -> Judgement:
        """The judgement on an answer as typed. Any text gets one; none raises."""
        if self.is_blank(typed):
            return Judgement(UNANSWERED)
        try:
            answer = self.read(typed)
        except RepairlibError as error:
            return Judgement(UNREADABLE, says=(str(error),))
        made = [mistake for mistake in self.mistakes if self.shows(mistake, answer)]
        dangers = [mistake for mistake in made if mistake.hazard]
        if dangers:
            return Judgement(UNSAFE, 0.0, *_told(dangers))
        share = self.share(answer)
        if share == 1:
            return Judgement(RIGHT, 1.0)
        hints = tuple(m.hint for m in made) or self.other_hints(answer)
        return Judgement(PARTLY if share else WRONG, share, hints)

    def is_blank(self, typed) -> bool:
        """True when nothing was typed."""
        return isinstance(typed, str) and not typed.strip()

    def as_typed(self, given):
        """An answer given by code, in the form in which it is saved: text, never changed."""
        return given if isinstance(given, str) else as_printed(given)

    def in_short(self, typed):
        """An answer as short as it can be given by code: a letter, an order of letters, text.

        >>> Choice(options=("film", "ceramic"), answer="film").in_short("Ceramic")
        'b'
        """
        return typed.strip()[:LONGEST] if isinstance(typed, str) else typed

    def is_whole(self, typed) -> bool:
        """True when every part of it has an answer."""
        return not self.is_blank(typed)

    def unreadable_parts(self, typed) -> tuple[str, ...]:
        """What cannot be read of an answer of several parts, the rest of which can be."""
        return ()

    def read(self, typed):
        """The answer that was meant. Raises RepairlibError when the text cannot be read."""
        raise NotImplementedError

    def share(self, answer) -> float:
        """The share of the points, 0 to 1, that a read answer earns."""
        raise NotImplementedError

    def shows(self, mistake: Mistake, answer) -> bool:
        """True when a read answer shows this mistake."""
        return mistake.when(answer) if callable(mistake.when) else mistake.when == answer

    def other_hints(self, answer) -> tuple[str, ...]:
        """What to say on a wrong answer that no listed mistake explains."""
        return (self.hint,) if self.hint else ()

    def how(self) -> str:
        """One sentence on how to answer, for the form and for those who answer by code."""
        raise NotImplementedError


def as_text(typed) -> str:
    """`typed` if it is text. Raises RepairlibError for the cells of a table and the like."""
    if not isinstance(typed, str):
        raise RepairlibError(typed, "this is more than one answer", "one answer")
    return typed


def _told(dangers) -> tuple[tuple[str, ...], tuple[str, ...]]:
    says = tuple(f"Danger ({m.hazard}): {m.hint}" for m in dangers)
    return says, tuple(dict.fromkeys(m.hazard for m in dangers))


@dataclass(frozen=True, kw_only=True, repr=False)
class Number(Question):
    """A number with its unit; `answer` in SI, °C or %; unit "" is a plain count.

    Right within `tolerance` (a fraction of the answer) or `margin` (in the unit), the larger one.
    A wrong size with the right figures gets a hint on the prefix by itself.

    >>> ask = Number(answer=100e-9, unit="F")
    >>> ask.judge("0.1 µF").state, ask.judge("100").state, ask.judge("100 µF").says
    ('right', 'cannot read', ('The figures are right, the size is not. Check the prefix.',))
    """

    answer: float
    unit: str
    tolerance: float = 0.01
    margin: float = 0.0

    def read(self, typed) -> float:
        bare = read_quantity(as_text(typed), self.unit or None)
        if bare.unit != self.unit:
            raise RepairlibError(typed, f"{bare.unit} was not asked for", "a number without a unit")
        if self.unit in SIZED_UNITS and not any(c.isalpha() for c in typed):
            raise RepairlibError(typed, "the unit is missing", f"for example {self._example()}")
        if not self.share(bare.value):
            self._ask_back_thousands(typed, bare.value)
        return bare.value

    def share(self, answer) -> float:
        return float(self._near(answer, self.answer))

    def shows(self, mistake, answer) -> bool:
        if not callable(mistake.when):
            return self._near(answer, mistake.when)
        rounded = abs(answer - self.answer) <= max(self.tolerance, 1e-9) * abs(self.answer)
        return mistake.when(self.answer if rounded else answer)  # 59.9999 s is the 60 s asked for

    def other_hints(self, answer) -> tuple[str, ...]:
        if answer * self.answer > 0 and self.unit not in ("%", "°C", ""):
            decades = log10(abs(answer)) - log10(abs(self.answer))  # a quotient may be too large
            if round(decades) and isclose(decades, round(decades), abs_tol=0.005):
                which = "Check the prefix." if round(decades) % 3 == 0 else "Count the zeros again."
                return (f"The figures are right, the size is not. {which}",)
        return super().other_hints(answer)

    def how(self) -> str:
        if not self.unit:
            return "Type a number."
        return f"Type a number with its unit, for example {self._example()}."

    def as_typed(self, given):
        if isinstance(given, Quantity):  # with all its digits, also those that it does not show
            return engineering(given.value, given.unit)
        return super().as_typed(given)

    def _ask_back_thousands(self, typed: str, value: float) -> None:
        """Raise RepairlibError for "102.100 Ω", which may be 102100 Ω to whoever writes it so.

        Only where the larger reading would be right, or the smaller one a danger and written with
        a 0 at its end: "1.034 s" is a figure that was worked out.
        """
        figures = typed.strip().lstrip("-")
        figures = figures[: len(figures) - len(figures.lstrip("0123456789."))]
        whole, _, part = figures.partition(".")
        if len(part) != 3 or not 1 <= len(whole) <= 3 or whole[0] == "0":
            return
        if abs(value) != float(figures):  # behind a prefix: 4.700 kΩ is no 4700 kΩ
            return
        danger = any(one.hazard and self.shows(one, value) for one in self.mistakes)
        if self._near(value * 1000, self.answer) or (danger and part[-1] == "0"):
            readings = f"{whole}.{part.rstrip('0') or '0'} or {whole}{part}"
            raise RepairlibError(typed, f"{figures} may be {readings}", readings)

    def _near(self, value: float, wanted: float) -> bool:
        allowed = max(self.tolerance * abs(wanted), self.margin)
        return abs(value - wanted) <= allowed * (1 + 1e-9)

    def _example(self) -> str:
        return EXAMPLES.get(self.unit, f"82 {self.unit}")


@dataclass(frozen=True, kw_only=True, repr=False)
class Choice(Question):
    """One option out of a list, answered by its letter (a, b, c …) or its text.

    `answer` is the text of the right option; a Mistake's `when` is the text of a wrong one.

    >>> ask = Choice(options=("towards plus", "towards minus"), answer="towards minus")
    >>> ask.judge("b").state, ask.judge("Towards plus").state, ask.judge("up").state
    ('right', 'wrong', 'cannot read')
    """

    options: Sequence[str]
    answer: str

    def __post_init__(self):
        named = [self.answer, *(m.when for m in self.mistakes if isinstance(m.when, str))]
        strangers = [text for text in named if text not in self.options]
        if strangers or len({normal(text) for text in self.options}) < len(self.options):
            raise ValueError(f"{self.id}: options doubled, or not an option: {strangers}")

    def read(self, typed) -> str:
        return read_option(typed, self.options)

    def in_short(self, typed):
        try:
            return LETTERS[self.options.index(self.read(typed))]
        except RepairlibError:
            return super().in_short(typed)

    def share(self, answer) -> float:
        return float(answer == self.answer)

    def how(self) -> str:
        return "Choose one."


def read_option(typed: str, options: Sequence[str]) -> str:
    """The option meant by its text or its letter. Raises RepairlibError for anything else.

    >>> read_option(" B ", ["film", "ceramic"])
    'ceramic'
    """
    meant = normal(as_text(typed)[:1000])
    for option in options:
        if meant == normal(option):
            return option
    letters = LETTERS[: len(options)]
    if len(meant) == 1 and meant in letters:
        return options[letters.index(meant)]
    accepted = f"a letter from a to {letters[-1]}, or the text of an option"
    raise RepairlibError(typed, "this is not one of the options", accepted)
