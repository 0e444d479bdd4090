"""A list of names as an instructor has it: pasted from a message, out of a spreadsheet, numbered.

Covers one name a line and tables with or without headings; numbers, bullets, titles, addresses and
remarks beside a name are left out. Every line is a name, or blank, or is told with its number. Two
people of one name are never made one: the list is refused until an initial tells them apart.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from repairlib.core.draws import normal
from repairlib.core.errors import RepairlibError, shown
from repairlib.core.typed.letters import without_accents
from repairlib.core.typed.set_aside import UNREADABLE
from repairlib.core.typed.table import (
    COMMAS,
    FRAMED,
    LONGEST_LINE,
    SIGNS,
    SPACES,
    STROKES,
    WORDS,
    Row,
    Table,
    cells_of,
    is_framed,
    is_rule,
    lines_of,
)
from repairlib.core.typed.textfile import TextFile, as_text
from repairlib.learn.learner import LONGEST

ACCEPTED = "one name on each line, or a table with a column of names"
TOGETHER, FIRST, LAST, OTHER = "name", "first name", "surname", "other"
_HEADINGS = {
    TOGETHER: """name names full-name fullname member members learner learners student students
        pupil pupils participant participants attendee attendees person who nom-complet
        nom-et-prenom nombre-completo nombre-y-apellidos nome-completo volledige-naam naam namen
        teilnehmer teilnehmerin namn navn imie-i-nazwisko""",
    FIRST: """first-name firstname first forename given-name given vorname prenom nombre nome
        voornaam fornamn fornavn imie""",
    LAST: """surname last-name lastname last family-name familyname nachname familienname nom
        apellido apellidos cognome achternaam efternamn etternavn nazwisko""",
    OTHER: """e-mail email mail e-mail-address email-address address phone telephone mobile tel cell
        no nr number id age born birthday date-of-birth group class course date present signed
        signature remark remarks note notes comment comments title salutation pronouns paid seat
        anrede telefon handy geburtsdatum gruppe kurs bemerkung titre courriel telefono correo""",
}
ROLE = {word: role for role, words in _HEADINGS.items() for word in words.split()}
HEADING, BESIDE = "a heading", "left out beside the name"
HEADINGS_WITHIN = 10  # lines; what stands below is no heading any more
_TITLES = """
    mr mrs ms miss mx dr prof herr frau mme mlle monsieur madame mademoiselle sr sra srta senor
    senora signora dhr mevr mw"""
TITLES = set(_TITLES.split())
FIGURES = 4  # more of them are a number with letters, such as a place or a code

_NUMBERING = re.compile(
    r"""(?: [-*•·‣▪●○◦–—+>☐☑☒✓✗]+ \s*                                 # bullets
          | \[ [ xX]? \] \s*                                          # a box to tick
          | [(\[]? [0-9]{1,4} [)\].:°]+ \s* | [#№] \s* [0-9]{1,4} \s*  # 1. (1) #1
          | [0-9]{1,4} \s* [-–—] \s* | [0-9]{1,4} \s+                  # 1 - Ada, 1 Ada
          | [(]? [a-zA-Z] [)] \s* )+""",  # a) Ada
    re.VERBOSE,
)
_HEADING = re.compile(r"[^,;\t|]*:\s*[0-9]*")  # Tuesday:  Total: 12
_ADDRESS = re.compile(r"<[^<>]*>|\S*@\S*|\bhttps?://\S*")
_REMARK = re.compile(r"\([^()]*\)|\[[^\[\]]*\]|\{[^{}]*\}")
_PHONE = re.compile(r"[+(]?[0-9][-0-9 ()/.]{5,}$")
_QUOTES = '"“”„«»'
_BEFORE, _BEHIND = f" .,;:|-–—_*=/{_QUOTES}", f" ,;:|-–—_*=/{_QUOTES}"


class Listed(NamedTuple):
    """A name, and the line on which it stands."""

    line: int
    name: str


class Told(NamedTuple):
    """Something on a line that is no name, or stands beside one, and what was made of it."""

    line: int
    what: str
    why: str

    def __str__(self) -> str:
        return f"line {self.line}: {shown(self.what)}: {self.why}"


class NameList(NamedTuple):
    """The `names` of a list, in its order, and what is `told` of it. No two names are equal."""

    names: tuple[Listed, ...]
    told: tuple[Told, ...]


class _Found(NamedTuple):
    """What a line holds: the parts of one name as they are said, and the cells beside it."""

    line: int
    parts: Sequence[str]
    beside: Sequence[str] = ()


def read_names(given: TextFile | str | bytes, called: str = "the list") -> NameList:
    r"""The names in a list.

    Raises RepairlibError for what is no text, for a list without a name, and where one name stands
    twice.

    >>> found = read_names("Tuesday:\n1. Ms Ada Example <ada@bench.example>\n2) Example, Ben\n")
    >>> [listed.name for listed in found.names]
    ['Ada Example', 'Ben Example']
    >>> print(*found.told, sep="\n")
    line 1: 'Tuesday:': a heading
    line 3: 'Example, Ben': read as Ben Example
    """
    lines = lines_of(as_text(given, called).text, called, ACCEPTED)
    told: list[Told] = []
    named = []
    for found in _rows(lines, called, told):
        name = _joined(found, told)
        if name:
            named.append((Listed(found.line, name), tuple(filter(None, found.beside))))
    if not named:
        why = f": {told[0]}" if told else ""
        raise RepairlibError(called, f"there is no name in it{why}", ACCEPTED)
    return NameList(_each_once(named, told), tuple(sorted(told)))


# Lines and cells


def _rows(lines: list[str], called: str, told: list[Told]) -> Iterator[_Found]:
    heading = _find_heading(lines, called)
    if heading:
        number, separator, roles = heading
        told += [Told(at, line.strip(), HEADING) for at, line in _filled(lines[: number - 1])]
        for row in Table(lines, separator).rows(number + 1):
            if row.what == UNREADABLE:
                told.append(Told(row.line, row.text.strip(), row.why))
            elif any(row.cells):
                yield _under(roles, row)
        return
    filled = list(_filled(lines))
    for number, line in filled:
        yield from _without_heading(number, line, told, alone=len(filled) == 1)


def _filled(lines: list[str]) -> Iterator[tuple[int, str]]:
    """The lines that hold more than a rule, each with its number."""
    return ((at, one) for at, one in enumerate(lines, 1) if one.strip() and not is_rule(one))


def _find_heading(lines: list[str], called: str) -> tuple[int, str, list[str]] | None:
    """The line of headings, what separates its cells, and the role of each; None without one."""
    for number, line in [*_filled(lines)][:HEADINGS_WITHIN]:
        for separator in (*(sign for sign in (*SIGNS, SPACES) if sign in line), WORDS):
            if separator == STROKES and is_framed(line.strip()):
                separator = FRAMED
            cells = cells_of(line, separator) or []
            roles = [_role(cell) for cell in cells]
            known = sum(role != "" for role in roles)
            if known * 2 < sum(map(bool, cells)) or not known:
                continue
            if {TOGETHER, FIRST, LAST} & set(roles):
                return number, separator, roles
            if known == len(cells) > 1:
                raise RepairlibError(called, f"no column of names on line {number}", ACCEPTED)
    return None


def _role(cell: str) -> str:
    """What a column of that heading holds, or "" for a heading that is not known.

    >>> _role("E-Mail:"), _role("Family name (as on the form)"), _role("Ada")
    ('other', 'surname', '')
    """
    text = _REMARK.sub("", without_accents(cell)).replace(".", " ").strip(f" *#{_BEHIND}")
    return ROLE.get("-".join(text.replace("-", " ").replace("_", " ").split()), "")


def _under(roles: list[str], row: Row) -> _Found:
    """What stands in a row under its headings. A "name" beside a first name is the surname."""
    cells = [*row.cells, *[""] * len(roles)]
    of = {role: cells[at] for at, role in reversed([*enumerate(roles)]) if role}
    first, last, whole = of.get(FIRST, ""), of.get(LAST, ""), of.get(TOGETHER, "")
    if FIRST in of and LAST in of:
        whole = ""
    parts = (first, whole, last)
    names = {FIRST, LAST, TOGETHER}
    beside = [cell for role, cell in zip(roles, cells, strict=False) if role not in names]
    return _Found(row.line, [part for part in parts if part], beside)


def _without_heading(number: int, line: str, told: list[Told], alone: bool) -> Iterator[_Found]:
    """What stands on a line of which no heading says what its cells are."""
    separator = next((sign for sign in SIGNS if sign in line), WORDS)
    cells = cells_of(line, separator)
    if cells is None or len(line) > LONGEST_LINE:
        told.append(Told(number, line.strip(), "no line of names"))
        return
    words = [cell for cell in cells if _may_be_name(cell)]
    beside = [cell for cell in cells if cell not in words]
    if alone and len(words) > (2 if separator == COMMAS else 1):
        yield from (_Found(number, [cell]) for cell in cells if cell)
    elif len(words) > 2:
        why = f"{len(words)} columns of words: put headings above them, such as name, group"
        told.append(Told(number, line.strip(), why))
    elif len(words) == 2 and ", " in line:  # as people write; a table has no space there
        yield _Found(number, [", ".join(words)], beside)
    else:
        yield _Found(number, words or [line], beside)


def _may_be_name(cell: str) -> bool:
    rest = _PHONE.sub("", _ADDRESS.sub("", cell))
    return any(sign.isalpha() for sign in rest)


# One name


def _joined(found: _Found, told: list[Told]) -> str:
    """The name on a line, or "" where there is none, which is told."""
    if not found.parts:
        told.append(Told(found.line, ", ".join(filter(None, found.beside)), "no name in this row"))
        return ""
    text = " ".join(found.parts)
    if len(found.parts) == 1 and _HEADING.fullmatch(text.strip()):
        told.append(Told(found.line, text.strip(), HEADING))
        return ""
    beside: list[Told] = []
    name = " ".join(filter(None, (_cleaned(found.line, part, beside) for part in found.parts)))
    why = _no_name(name)
    told += [Told(found.line, text.strip(), why)] if why else beside
    return "" if why else name


def _cleaned(line: int, part: str, told: list[Told]) -> str:
    """A part of a name without its number, title, addresses and remarks."""
    seen = "".join(" " if one.isspace() else one for one in part if not _is_unseen(one))
    text = unicodedata.normalize("NFC", " ".join(seen.split()))
    numbering = _NUMBERING.match(text)
    if numbering and numbering.end() < len(text):
        text = text[numbering.end() :]
    text = _ADDRESS.sub(" ", text)
    for beside in (_REMARK, _PHONE):
        told += [Told(line, one.strip(), BESIDE) for one in beside.findall(text)]
        text = beside.sub(" ", text)
    text = _stripped(text)
    last, comma, first = (piece.strip() for piece in text.partition(","))
    if comma and first:
        told.append(Told(line, text, f"read as {_without_title(f'{first} {last}')}"))
        text = f"{first} {last}"
    return _without_title(text)


def _is_unseen(sign: str) -> bool:
    """Whether a sign only steers others, such as the direction of a line, and is no space."""
    return unicodedata.category(sign) in ("Cf", "Cc") and not sign.isspace()


def _stripped(text: str) -> str:
    text = " ".join(text.split()).lstrip(_BEFORE).rstrip(_BEHIND)
    short = len(text.split()[-1]) <= 4 if text else False  # an initial, Jr.
    return text if short else text.rstrip(f".{_BEHIND}")


def _without_title(text: str) -> str:
    words = text.split()
    while len(words) > 1 and words[0].rstrip(".").casefold() in TITLES:
        del words[0]
    return " ".join(words)


def _no_name(name: str) -> str:
    """Why this is no name, or "" when it is one."""
    if not any(sign.isalpha() for sign in name):
        return "no letter that could be a name"
    if any(sign in name for sign in "!?:="):
        return "a sentence or a label, no name"
    if name.rstrip(".").casefold() in TITLES:
        return "a title alone"
    if sum(sign.isdigit() for sign in name) > FIGURES:
        return "more figures than a name has"
    if len(name) > LONGEST or not name.isprintable():
        return f"no name of up to {LONGEST} letters on one line"
    return ""


# Two of one name


def _each_once(named: list[tuple[Listed, tuple[str, ...]]], told: list[Told]) -> tuple[Listed, ...]:
    """Each name once. One that stands again with the same beside it is the same person."""
    first: dict[str, tuple[Listed, tuple[str, ...]]] = {}
    clashes: dict[str, list[Listed]] = {}
    for listed, beside in named:
        key = normal(listed.name)
        before, beside_it = first.setdefault(key, (listed, beside))
        if before is listed:
            continue
        if beside and beside == beside_it:
            told.append(Told(listed.line, listed.name, f"again, as on line {before.line}"))
        else:
            clashes.setdefault(key, [before]).append(listed)
    if clashes:
        _refuse(list(clashes.values()))
    return tuple(listed for listed, _ in first.values())


def _refuse(clashes: list[list[Listed]]) -> None:
    each = [
        f"{alike[0].name} on lines {', '.join(str(one.line) for one in alike)}" for alike in clashes
    ]
    which = clashes[0][0].name
    raise RepairlibError(
        which,
        f"this name stands more than once: {'; '.join(each)}",
        f"an initial behind each of them, such as {which} B., or one line where it is one person",
    )
