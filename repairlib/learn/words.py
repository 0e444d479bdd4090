"""The words of the workbook, each explained in one or two short sentences.

They stand in one place, `lessons/words.md`: a page that a person reads, prints and translates. One
line is one word: `- **ESR**, equivalent series resistance: What it is.` Other names of it stand
behind "also": `- **inductor**, also coil, choke: What it is.`
"""

from __future__ import annotations

import re
from functools import cache
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.html import Html, fold, listed, text
from repairlib.core.tables import LESSON_FOLDER

PAGE = LESSON_FOLDER / "words.md"
LINE = re.compile(r"- \*\*(?P<names>[^*]+)\*\*(?:, (?P<more>[^:]+))?: (?P<means>.+)")
ALSO = "also "


class Word(NamedTuple):
    """One word: its names, the first of them leading, what it stands for, and what it means."""

    names: tuple[str, ...]
    in_full: str
    means: str

    def __str__(self) -> str:
        full = f" ({self.in_full})" if self.in_full else ""
        return f"{', '.join(self.names)}{full}: {self.means}"


class Explained(tuple[Word, ...]):
    """Words to look at: folded in a notebook, one line each elsewhere."""

    __slots__ = ()

    def __repr__(self) -> str:
        return "\n".join(map(str, self))

    def folded(self) -> Html:
        """The words as a title that opens; nothing where there are none."""
        if not self:
            return Html("")
        title = f"In plain words: {', '.join(one.names[0] for one in self)}"
        return fold(title, self.listed())

    def listed(self) -> Html:
        """Each word on a line of a list."""
        return listed(map(_line, self))

    _repr_html_ = folded


def explain(*names: str) -> Explained:
    """What these words mean. Capital letters do not matter. Raises RepairlibError.

    >>> explain("OL")
    OL (overload): What a meter shows when the value is above its range.
    >>> explain("ESRR")
    Traceback (most recent call last):
        ...
    repairlib.core.errors.RepairlibError: 'ESRR': not in the list of words. Accepted: esr, reservoir
    """
    return Explained(map(_find, names))


def begin_with(typed: str) -> Explained:
    """The words of which a name begins so, or those of that very name. Raises RepairlibError.

    >>> [one.names[0] for one in begin_with("re")][:3]
    ['reactance', 'recap', 'rectifier']
    """
    start = typed.strip().casefold()
    if start in _by_name():
        return explain(typed)
    found = [one for one in all_words() if any(n.casefold().startswith(start) for n in one.names)]
    return Explained(found) or explain(typed)


def explain_in(prose: str) -> Explained:
    """Those words that stand in some prose, each once, in the order of the list.

    >>> [one.names[0] for one in explain_in("Polar, with a low ESR.")]
    ['ESR', 'polar']
    """
    said = {name.casefold() for name in _any_name().findall(prose)}
    return Explained(one for one in all_words() if said & {name.casefold() for name in one.names})


@cache
def all_words() -> tuple[Word, ...]:
    """All words, in the order of their page."""
    found = map(LINE.fullmatch, PAGE.read_text(encoding="utf-8").splitlines())
    return tuple(_word(**line.groupdict()) for line in found if line)


def _word(names: str, more: str | None, means: str) -> Word:
    full, _, also = (more or "").rpartition(ALSO)
    if ALSO not in (more or ""):
        full, also = also, ""
    every = names.split(", ") + (also.split(", ") if also else [])
    return Word(tuple(every), full.removesuffix(", "), means)


@cache
def _by_name() -> dict[str, Word]:
    return {name.casefold(): one for one in all_words() for name in one.names}


@cache
def _any_name() -> re.Pattern[str]:
    longest_first = sorted(map(re.escape, _by_name()), key=len, reverse=True)
    return re.compile(rf"\b(?:{'|'.join(longest_first)})\b", re.IGNORECASE)


def _find(name: str) -> Word:
    try:
        return _by_name()[name.strip().casefold()]
    except KeyError:
        from difflib import get_close_matches  # rarely needed, and slow to come

        near = get_close_matches(name.casefold(), _by_name(), 3) or list(_by_name())
        raise RepairlibError(name, "not in the list of words", ", ".join(near)) from None


def _line(one: Word) -> Html:
    full = f", {text(one.in_full)}" if one.in_full else ""
    return Html(f"<b>{text(', '.join(one.names))}</b>{full}: {text(one.means)}")
