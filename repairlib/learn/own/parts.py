"""What all kinds of question share: what was typed of one, its mistakes, its hazards, its cells."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from difflib import get_close_matches
from typing import Any, NamedTuple

from repairlib.core.draws import normal
from repairlib.core.errors import RepairlibError
from repairlib.core.safety import HAZARDS
from repairlib.learn.own.drawn import read_picture
from repairlib.learn.own.said import Said
from repairlib.learn.own.slips import Slip
from repairlib.learn.question import Mistake


class Wrong(NamedTuple):
    """A wrong or dangerous answer as typed, and what is said on it."""

    said: Said
    say: Said | None


class Asked(NamedTuple):
    """What was typed of one question: its head, its prompt, and the rest by its words."""

    head: Said
    prompt: list[Said]
    by_word: dict[str, list[Said]]
    wrong: list[Wrong]

    def all_said(self) -> Iterator[Said]:
        """Everything in it."""
        yield from self.prompt
        for several in self.by_word.values():
            yield from several
        for one in self.wrong:
            yield one.said
            if one.say:
                yield one.say

    def texts(self) -> Iterator[str]:
        """The texts in which a value may stand."""
        return (one.text for one in self.all_said() if one.word not in ("names", "values"))

    def filled(self, fill: Callable[[Said], Said]) -> Asked:
        """The question with the values that `fill` puts in; names and values stay."""
        return Asked(
            self.head,
            [fill(one) for one in self.prompt],
            {
                word: several if word in ("names", "values") else [fill(one) for one in several]
                for word, several in self.by_word.items()
            },
            [Wrong(fill(one.said), fill(one.say) if one.say else None) for one in self.wrong],
        )

    def one(self, word: str) -> Said:
        """What stands behind a word that comes up once."""
        return self.by_word[word][0]

    def common(self, slips: list[Slip]) -> dict[str, Any]:
        """What all kinds of question have: the prompt, the hint, the picture."""
        found: dict[str, Any] = {"prompt": "\n\n".join(one.text for one in self.prompt)}
        if "hint" in self.by_word:
            found["hint"] = self.one("hint").text
        if "picture" in self.by_word:
            with slipping(self.one("picture").line, slips):
                found["picture"] = read_picture(self.one("picture").text)
        return found


@contextmanager
def slipping(line: int, slips: list[Slip]):
    """What cannot be read inside is a slip on that line."""
    try:
        yield
    except RepairlibError as error:
        slips.append(Slip(line, error.read, error.wrong, error.accepted))


def cells_of(text: str) -> list[str]:
    """The cells between upright strokes, or between tabs as a spreadsheet copies them.

    >>> cells_of("104 | 100 nF | disc")
    ['104', '100 nF', 'disc']
    """
    return [cell.strip() for cell in text.split("|" if "|" in text else "\t")]


def hazard_of(about: str) -> str:
    """The hazard that a danger names. Raises RepairlibError that offers the nearest.

    >>> hazard_of("Stored  charge")
    'stored charge'
    >>> hazard_of("fire")
    Traceback (most recent call last):
    repairlib.core.errors.RepairlibError: 'fire': no hazard has this name. Accepted: heat and fire
    """
    known = {normal(key): key for key in HAZARDS}
    if normal(about) in known:
        return known[normal(about)]
    words = set(normal(about).split()) - {"and"}
    near = [key for name, key in known.items() if words & set(name.split())]
    near += [known[name] for name in get_close_matches(normal(about), known, 2)]
    accepted = ", ".join(dict.fromkeys(near) or HAZARDS)
    raise RepairlibError(about, "no hazard has this name", accepted)


def mistake(wrong: Wrong, when: Any, slips: list[Slip], needs_say: bool = True) -> list[Mistake]:
    """What a wrong answer gets; none where nothing is said on it and nothing need be."""
    said, say = wrong.said, wrong.say.text if wrong.say else ""
    if said.word == "danger":
        with slipping(said.line, slips):
            hazard = hazard_of(said.about)
            known = HAZARDS[hazard].of_part or HAZARDS[hazard]
            return [Mistake(when, say or known.strikes, hazard)]
        return []
    if needs_say and not say:
        slips.append(Slip(said.line, said.text, "nothing is said on it", "Say: on the line below"))
    return [Mistake(when, say)] if say else []
