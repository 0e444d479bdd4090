"""The words of the workbook on at most two pages."""

from __future__ import annotations

from repairlib.learn.words import Explained, all_words
from repairlib.teach.paper.printing import Sheet
from repairlib.teach.paper.style import WORD_STYLE


def word_list() -> Sheet:
    """All words, each with its meaning."""
    words = Explained(all_words())
    parts = ("<h1>Word list</h1>", words.listed())
    return Sheet("Word list", "The words of this workbook", parts, WORD_STYLE)
