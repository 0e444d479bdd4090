"""The questions of one lesson for one member on paper: exactly their variant, with room to answer.

What is chosen is lettered as on the screen, so that the answers can be typed in by their letters.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from repairlib.core.html import Html, prose, row, table, text
from repairlib.learn.arranging import Order, Table
from repairlib.learn.bench_question import Bench
from repairlib.learn.group import Member
from repairlib.learn.in_words import lettered
from repairlib.learn.marking import worth
from repairlib.learn.question import Choice, Number, Question
from repairlib.show.sheets.sheet_pieces import BOX
from repairlib.teach.paper.pictures import ROOM, in_words, on_paper, size_on_paper
from repairlib.teach.paper.printing import Sheet
from repairlib.teach.paper.style import QUESTION_STYLE

WRITE = '<span class="write"></span>'
SHORT = 34  # characters of an option that stands beside another one
BESIDE = 106.0  # mm: a drawing up to this width has the question beside it
MOVES = 14  # lines of a repair on paper, our choice
PLAYED = ("what I do, and where", "what it showed", "what that rules out")
ON_THE_CARD = ("found", "measured", "fitted", "told")
AT_ONE_COMPUTER = (
    "The board is played at a computer: one types the moves of all who share it, the others keep "
    "this sheet. Without any, write the first readings you would take, and what each rules out."
)
HIGH = 30.0  # mm: drawings that are no lower stand side by side
SEEN_FROM = (
    "Parts and boards are drawn as you see them from the component side, this sheet upright; left, "
    "right, top and bottom are those of the drawing. Seen from the solder side left and right "
    "change places."
)


def question_sheet(questions: Sequence[Question], lesson: str, member: Member, group: str) -> Sheet:
    """The sheet of one member of a group; `lesson` is what the lesson is called."""
    who = f"{member.name} · {member.word} · {group}"
    parts = [
        f"<h1>{text(lesson)}: your questions</h1>",
        f'<p class="fields"><b>{text(member.name)}</b>, word <b>{text(member.word)}</b>, group '
        f"<b>{text(group)}</b> &nbsp; with <span></span> Date <span></span></p>",
        "<p><small>Tick one box where you choose. Write numbers with their unit."
        f"{f' {SEEN_FROM}' if any(one.picture for one in questions) else ''}</small></p>",
    ]
    parts += rows_of_blocks(questions)
    return Sheet(f"{lesson}: {who}", f"{lesson} · {who}", tuple(parts), QUESTION_STYLE)


def rows_of_blocks(questions: Sequence[Question]) -> list[str]:
    """The questions one below the other; those with a high drawing up to three side by side."""
    numbered = list(enumerate(questions, 1))
    rows = []
    while numbered:
        count = _side_by_side([one for _, one in numbered[:3]])
        taken, numbered = numbered[:count], numbered[count:]
        blocks = [question_block(one, number) for number, one in taken]
        cells = "".join(f'<td style="width:{100 / count:.2f}%">{one}</td>' for one in blocks)
        row = f'<table class="row"><tr>{cells}</tr></table>'
        rows.append(row if count > 1 else blocks[0])
    return rows


def _side_by_side(coming: Sequence[Question]) -> int:
    """How many of the next questions stand in one row: as many as have a high drawing that fits."""
    widths: list[float] = []
    for one in coming:
        width, height = size_on_paper(one.picture().svg) if one.picture else (0, 0)
        if height < HIGH or isinstance(one, Table):
            break
        widths.append(width)
    fits = [count for count in range(2, len(widths) + 1) if max(widths[:count]) <= ROOM / count]
    return max(fits, default=1)


def question_block(question: Question, number: int) -> Html:
    """One question with all that it offers and room for the answer, never torn over two pages."""
    inside = f"{prose(question.prompt)}{answer_room(question)}"
    if question.picture:
        picture = question.picture()
        width, _ = size_on_paper(picture.svg)
        shown, words = on_paper(picture.svg, picture.alt), in_words(picture)
        if width <= BESIDE:
            row = f'<td>{inside}</td><td style="width:{width:.1f}mm">{shown}</td>'
            inside = f'<table class="beside"><tr>{row}</tr></table>{words}'
        else:
            inside = f"{prose(question.prompt)}{shown}{words}{answer_room(question)}"
    return Html(
        f'<section class="question"><h3>{number}<small>{worth(question)}</small></h3>'
        f'<div class="asked">{inside}</div></section>'
    )


def answer_room(question: Question) -> str:
    """Boxes to tick, lines to write on, or the cells of a table."""
    if isinstance(question, Table):
        return _table(question)
    if isinstance(question, Bench):
        return _repair(question)
    if isinstance(question, Order):
        boxes = "".join(f'<span class="letter">{at}</span>' for at in _places(question))
        return f'{_options(question)}<p class="answer">Letters in the right order: {boxes}</p>'
    if isinstance(question, Choice):
        return _options(question, BOX)
    how = text(question.how().replace("Type ", "Write ", 1))
    return f'<p class="answer">Answer {WRITE} <small>{how}</small></p>'


def _repair(question: Bench) -> str:
    """What the set should do, its parts, lines for the moves and readings, and a job card."""
    of = question.task.set
    rails = ", ".join(f"{rail.name}: {rail.low:.4g} V to {rail.high:.4g} V" for rail in of.rails)
    parts = "; ".join(f"<b>{text(one.name)}</b> {text(one.what)}" for one in of.parts)
    lines = table([row(("", "", ""))] * MOVES, row(PLAYED, tag="th"))
    card = table([row((head, "")) for head in ON_THE_CARD])
    return (
        f"<p>{text(of.works)} {text(rails)}.</p><p><small>{parts}</small></p>"
        f"<p><small>{text(AT_ONE_COMPUTER)}</small></p>"
        f'<div class="moves">{lines}</div><div class="job">{card}</div>'
    )


def _places(question: Order) -> Iterable[int]:
    return range(1, len(question.steps) + 1)


def _options(question: Question, box: str = "") -> str:
    offered = lettered(question)
    short = all(len(option) <= SHORT for _, option in offered)
    items = "".join(f"<li>{box}<b>{letter}</b> {text(option)}</li>" for letter, option in offered)
    looks = f"options{' boxed' if box else ''}{' short' if short else ''}"
    return f'<ul class="{looks}">{items}</ul>'


def _table(question: Table) -> str:
    """The cells; options that are the same in a whole column stand once, under the table."""
    columns = question.columns()
    shared = {column: _shared(question, column) for column in columns}
    head = "".join(f"<th>{text(one)}</th>" for one in ("", *columns))
    rows = "".join(
        f"<tr><th>{text(row)}</th>"
        + "".join(_cell(cells.get(column), bool(shared[column])) for column in columns)
        + "</tr>"
        for row, cells in question.cells.items()
    )
    keys = "".join(
        f"<p><small>{text(column)}: "
        + "; ".join(f"<b>{letter}</b> {text(option)}" for letter, option in offered)
        + ". Write the letter.</small></p>"
        for column, offered in shared.items()
        if offered
    )
    made = f"<thead><tr>{head}</tr></thead><tbody>{rows}</tbody>"
    return f'<table class="cells">{made}</table>{keys}'


def _shared(question: Table, column: str) -> list[tuple[str, str]]:
    """The options of a column when all its cells offer the same, in the same order."""
    cells = [cells[column] for cells in question.cells.values() if column in cells]
    first = lettered(cells[0])
    return first if all(lettered(one) == first for one in cells) else []


def _cell(cell: Question | None, shared: bool) -> str:
    if cell is None:
        return "<td>–</td>"
    asked = text(cell.prompt)
    if isinstance(cell, Number):
        return f'<td class="cell">{asked}<small>{"with its unit" if cell.unit else ""}</small></td>'
    if shared:
        return f'<td class="cell">{asked}</td>'
    return f"<td>{asked}{_options(cell, BOX)}</td>"
