"""Places to judge in lesson 04: a part drawn above its place, right, reversed or not to be told.

The judgements are typed in by hand, from the sources named in `polarity`. What a plus, minus,
K, A or figure 1 on a board means, and which board marks have no fixed meaning, is common practice.
"""

from __future__ import annotations

from repairlib.core.draws import Draw
from repairlib.learn.question import Choice, Mistake

RIGHT = "Right: it may go in like this"
REVERSED = "Reversed: it must be turned round"
CANNOT_TELL = "These marks do not tell: look further before you fit it"
JUDGEMENTS = (RIGHT, REVERSED, CANNOT_TELL)
HARMLESS = ("led-flat", "chip-led-green")  # the wrong way round an LED only stays dark

AT_THE_MARK = "part's mark at the board's mark"
AT_THE_OTHER_END = "part's mark at the other end"
HALF_CIRCLE = "filled or hatched half circle"

# Each part above its place: rule, mark on the board, how it is drawn, judgement.
ALUMINIUM = (
    ("axial-arrows", "plus sign", AT_THE_MARK, REVERSED),
    ("radial-stripe", "plus sign", AT_THE_MARK, REVERSED),
    ("radial-stripe", "plus sign", AT_THE_OTHER_END, RIGHT),
    ("radial-stripe", "minus sign", AT_THE_MARK, RIGHT),
    ("radial-stripe", HALF_CIRCLE, AT_THE_MARK, CANNOT_TELL),
    ("radial-stripe", "square pad", AT_THE_OTHER_END, CANNOT_TELL),
    ("axial-arrows", "minus sign", AT_THE_MARK, RIGHT),
    ("axial-arrows", "minus sign", AT_THE_OTHER_END, REVERSED),
    ("can-segment", "two cut corners of the outline", AT_THE_MARK, REVERSED),
    ("can-segment", "two cut corners of the outline", AT_THE_OTHER_END, RIGHT),
    ("can-segment", "white bar", AT_THE_MARK, CANNOT_TELL),
)
TANTALUM = (
    ("tantalum-chip-bar", "plus sign", AT_THE_MARK, RIGHT),
    ("tantalum-chip-bar", "plus sign", AT_THE_OTHER_END, REVERSED),
    ("tantalum-chip-bar", "minus sign", AT_THE_MARK, REVERSED),
    ("tantalum-chip-bar", "minus sign", AT_THE_OTHER_END, RIGHT),
    ("tantalum-chip-bar", "white bar", AT_THE_MARK, CANNOT_TELL),
    ("tantalum-chip-bar", "dot", AT_THE_MARK, CANNOT_TELL),
    ("dipped-plus", "plus sign", AT_THE_MARK, RIGHT),
    ("dipped-plus", "minus sign", AT_THE_MARK, REVERSED),
    ("dipped-plus", "square pad", AT_THE_MARK, CANNOT_TELL),
    ("polymer-chip-bar", "plus sign", AT_THE_OTHER_END, REVERSED),
    ("polymer-chip-bar", "plus sign", AT_THE_MARK, RIGHT),
    ("polymer-chip-bar", "stripe", AT_THE_MARK, CANNOT_TELL),
)
OTHERS = (
    ("ic-notch", "figure 1", AT_THE_OTHER_END, REVERSED),
    ("diode-band", "letter K", AT_THE_MARK, RIGHT),
    ("diode-band", "letter A", AT_THE_MARK, REVERSED),
    ("diode-band", "bar of the diode symbol", AT_THE_OTHER_END, REVERSED),
    ("diode-band", "plus sign", AT_THE_MARK, CANNOT_TELL),
    ("zener-band", "white bar", AT_THE_MARK, RIGHT),
    ("led-flat", "flat side of the outline", AT_THE_MARK, RIGHT),
    ("led-flat", "plus sign", AT_THE_MARK, REVERSED),
    ("chip-led-green", "letter K", AT_THE_MARK, CANNOT_TELL),
    ("ic-notch", "dot", AT_THE_MARK, RIGHT),
    ("connector-triangle", "square pad", AT_THE_MARK, RIGHT),
    ("connector-triangle", "square pad", AT_THE_OTHER_END, REVERSED),
)


def judgement(draw: Draw, bank: tuple, hazard: str) -> Choice:
    """One place out of the bank to judge.

    Each wrong answer that puts a part in is dangerous: "right" where it is not, and "reversed"
    where it is right or cannot be told, for then it gets turned round.
    """
    rule, board, fitted, answer = draw.pick(bank)
    mistakes = []
    for said in JUDGEMENTS:
        harmless = said == CANNOT_TELL or rule in HARMLESS
        if said != answer:
            mistakes.append(Mistake(said, _hint(answer, said), "" if harmless else hazard))
    return Choice(
        prompt="The part is held above its place on the board, just as it would go down into it. "
        "What do you say?",
        options=JUDGEMENTS,
        answer=answer,
        picture=lambda: above_its_place(rule, board, fitted),
        mistakes=mistakes,
    )


def _hint(answer: str, said: str) -> str:
    if answer == CANNOT_TELL:
        return "That is a guess. Does each of the two marks mean the same on every part and board?"
    if said == CANNOT_TELL:
        return "Take the two marks one after the other. What does each of them show?"
    return "One of the two marks was read the wrong way. What does it show on this body?"


def above_its_place(rule: str, board: str, fitted: str):
    """The drawing, without words that would give the answer away."""
    from repairlib.show import draw_polarity

    return draw_polarity(rule, board, fitted, labels=False)
