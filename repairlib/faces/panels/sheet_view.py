"""The sheet of an exercise as it stands under its questions: points, what to look at, what next."""

from __future__ import annotations

from base64 import b64encode

from repairlib.core.html import SIGNS, Html, listed, row, soft, table, text, told
from repairlib.learn.learner import Learner
from repairlib.learn.marking import NOT_COUNTED, Line, Sheet, points
from repairlib.learn.progress import is_done, next_lesson, number_of, stated
from repairlib.learn.question import CHANGED, UNANSWERED, UNREADABLE
from repairlib.show.sheets.sheet_pieces import STYLE as PAPER

WORDS = {
    UNANSWERED: "not answered",
    UNREADABLE: "cannot be read",
    CHANGED: "changed, not counted",
}
PROGRESS_LESSON = "00-start-here"


def sheet_html(sheet: Sheet, who: str) -> Html:
    """How many points, then the sheet, then praise or what to look at, then where to go."""
    return Html(
        f"<h4>Your sheet</h4>{_so_far(sheet)}{_lines(sheet)}{_verdict(sheet)}{_ways(sheet, who)}"
    )


def _so_far(sheet: Sheet) -> Html:
    answered = f"{sheet.answered} of {len(sheet.lines)} questions answered"
    if sheet.held:
        return Html(f"<b>{answered}</b>. Points are told later.")
    count = sum(line.out_of for line in sheet.lines)
    return Html(
        f'<progress value="{sheet.points}" max="{count}" aria-label="points"></progress>'
        f"<b>{points(sheet.points)} of {points(sheet.out_of)} points</b>, {answered}"
    )


def link(lesson: str, words: str) -> Html:
    """A link to another lesson, which lies beside this one."""
    return Html(f'<a href="{lesson}.ipynb">{text(words)}</a>')


def called(lesson: str) -> str:
    """A lesson in words: its number and title.

    >>> called("00-start-here")
    'lesson 00, Start here'
    """
    return f"lesson {number_of(lesson)}, {stated(lesson)[0]}"


def in_words(state: str) -> str:
    """The state of an answer with its sign.

    >>> in_words("unanswered"), in_words("right")
    ('○ not answered', '✓ right')
    """
    return f"{SIGNS[state]} {WORDS.get(state, state)}"


def file_link(name: str, content: str, label: str) -> Html:
    """A link that saves a file: a page, or else data."""
    data = b64encode(content.encode("utf-8", "replace")).decode("ascii")
    kind = "text/html" if name.endswith(".html") else "application/json"
    return Html(f'<a download="{text(name)}" href="data:{kind};base64,{data}">{text(label)}</a>')


def _lines(sheet: Sheet) -> Html:
    """Each question that was answered; those that were not stand together in one line."""
    answered = [line for line in sheet.lines if line.state != UNANSWERED]
    open_yet = [line.id for line in sheet.lines if line.state == UNANSWERED]
    made = Html("")
    if answered:
        head = row(("Question", "So far", "Points", "Look at again"), 'scope="col"', "th")
        made = Html(f'<div class="rl-sheet">{table(map(_line, answered), head)}</div>')
    if open_yet:
        made = Html(f"{made}<p>{in_words(UNANSWERED)}: <b>{', '.join(open_yet)}</b></p>")
    return made


def _line(line: Line) -> Html:
    earned = f"{points(line.points)} of {points(line.counted)}"
    shown = NOT_COUNTED.get(line.state, earned)
    return row((line.id, in_words(line.state), shown, " ".join(line.says)), first="th")


def _verdict(sheet: Sheet) -> Html:
    unsafe = [line.id for line in sheet.lines if line.unsafe_first]
    talk = f"Talk {', '.join(unsafe)} through with somebody: answered unsafely first."
    if is_done(sheet):
        headline = f"All {points(sheet.points)} points: well done!"
        return told("right", headline, [talk] if unsafe else [])
    return told("unsafe", talk) if unsafe else Html("")


def _ways(sheet: Sheet, who: str) -> Html:
    after = next_lesson(sheet.lesson)
    ways = [file_link(f"{sheet.lesson}-sheet.html", sheet_page(sheet, who), "Save a page to print")]
    if after:
        ways.insert(0, Html(f"Next: {link(after, called(after))}"))
    ways.append(link(PROGRESS_LESSON, "How far you are in all lessons (in lesson 00)"))
    return soft(listed(ways))


def sheet_page(sheet: Sheet, who: str) -> str:
    """The sheet as a page to print, with a name and a place for the date."""
    title = f"L{called(sheet.lesson)[1:]}"
    praise = "<p><b>Every question is right. Well done!</b></p>" if is_done(sheet) else ""
    notes = "".join(f"<p>{text(note)}</p>" for note in sheet.notes)
    head = row(("Question", "So far", "Points", "Look at again"), 'scope="col"', "th")
    return (
        '<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width">'
        f"<title>{text(title)}: {text(who)}</title><style>{PAPER}</style></head>\n<body>\n"
        f"<h1>{text(title)}</h1><p><b>{text(who)}</b></p>"
        '<p class="fields">Date <span></span> Seen by <span></span></p>'
        f"{notes}{table(map(_line, sheet.lines), head)}<p><b>{text(sheet.total())}</b></p>{praise}"
        "\n</body></html>\n"
    )


def who_answers(learner) -> str:
    """The learner in words for a sheet."""
    return learner.who if isinstance(learner, Learner) else "Demo variant"
