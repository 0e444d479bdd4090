"""The list of words: what one is, as it is typed; and all of them on paper."""

from __future__ import annotations

from repairlib.core.html import text
from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.faces.panels.look import words
from repairlib.faces.panels.sheet_view import file_link
from repairlib.learn.words import Explained, all_words, begin_with
from repairlib.show.sheets.sheet_pieces import page

SIZE = Fields("5rem", "20rem")
TITLE = "The words of this workbook"
SAVE = "Save all words as a page to print"
FILE = "repair-words.html"
NARROW = """<style>ul {columns: 2; column-gap: 8mm; padding-left: 4mm}
li {break-inside: avoid}</style>"""


def words_view(word: str = "ESR") -> FieldPanel:
    """The panel: type a word, or how it begins. Its parts: `word`, `answer`.

    >>> "equivalent series resistance" in words_view().answer.value
    True
    """
    save = words(file_link(FILE, words_page(), SAVE))
    return FieldPanel({"word": SIZE.text("Word", word)}, found, ["answer"], below=[save])


def found(word: str) -> tuple[str]:
    """What the word means, as HTML."""
    return (begin_with(word).listed(),)


def words_page() -> str:
    """All words as a page to print: two sheets of A4."""
    parts = [NARROW, f"<h1>{text(TITLE)}</h1>", Explained(all_words()).listed()]
    return page(TITLE, parts, TITLE)
