"""Moves as people type them, and said again: `volts rail 0`, `take out C1`, `wait 30 s`.

What may be typed stands in move_words.py. A part's name where a point is due means across that
part; a rail's name means its point; ground, gnd and the like mean the zero point.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from difflib import get_close_matches

from repairlib.bench.board_part import CONTACTS, FUSES
from repairlib.bench.move_words import (
    BEFORE,
    BETWEEN,
    CARD,
    CARD_EXAMPLES,
    FORMS,
    MEASURES,
    POINTS,
    TO_MEASURE,
    ZERO_WORDS,
)
from repairlib.bench.moves import Move
from repairlib.bench.practice_set import PracticeSet
from repairlib.bench.where import OLD, is_part
from repairlib.core.errors import RepairlibError, one_line
from repairlib.core.quantity import PREFIXES, engineering, read_quantity

LIKE = 0.75  # how much of a phrase must stand in what was mistyped
LONGEST = 500  # characters; a line of the job card is shorter
NUMBER = re.compile(r"[-+]?[.,]?\d")
NAMES = re.compile(r"\b(?:[A-Z]\d\b|(?:out|rail)(?= 0))")  # of parts and points in the examples
DEGREES = re.compile(r"(?<=\d)\s*(?:°\s*[cC]|[cC]|deg(?:rees)?(?:\s*[cC])?)\b|(?<=\d)\s*°(?!\S)")
EDGE = " ,;:()!?"


def read_move(text: str, of: PracticeSet) -> Move:
    """The move that `text` asks for. Raises RepairlibError for words that are not understood.

    >>> from repairlib.bench.practice_set import demo_set
    >>> radio = demo_set("desk radio")
    >>> read_move("measure volts on +9 V", radio).at
    ('out',)
    >>> move = read_move("replace c1 1000uF 25V, plus up", radio)
    >>> print(move.verb, move.at, say_move(move), sep="; ")
    fit; ('C1',); fit C1 1000 µF 25 V
    """
    line = _line(text)
    verb, rest = _verb(line, text)
    if verb == "write":
        return Move(verb, (), {}, _card_line(line, rest, text))
    if verb == "hand on":
        return Move(verb, (), {}, rest.strip(EDGE + "."))
    at, figures, said = _pieces(rest.replace("\u00a0", " ").replace("/", " "), verb, of)
    if len(at) < FORMS[verb].least:
        raise RepairlibError(text, f"{verb} says nothing of where", example(verb, of))
    return Move(verb, at, *_meant(verb, at, figures, said, of))


def example(verb: str, of: PracticeSet) -> str:
    """How a verb may be typed, with parts and points of this board.

    >>> from repairlib.bench.practice_set import demo_set
    >>> example("volts", demo_set("network switch"))
    'volts v5 0, or volts C2'
    """

    def here(found: re.Match) -> str:
        name = found[0]
        if name in of.points or any(part.name == name for part in of.parts):
            return name
        like = (one.name for one in of.parts if one.name[0] == name[0] and not one.mains)
        return of.rails[0].point if name.islower() else next(like, name)

    return NAMES.sub(here, FORMS[verb].example)


def say_move(move: Move) -> str:
    """The move as it can be typed again; `read_move` of it gives the same move.

    >>> say_move(Move("plug in", (), {"volts": 9.0, "amps": 0.2}, "supply"))
    'plug in with supply 9 V 200 mA'
    """
    units = FORMS[move.verb].figures
    if move.verb == "fit":
        letter = move.at[0].removeprefix(OLD)[:1].upper() if move.at else ""
        units = {"value": "Ω", "volts": "V", **NEW_PART.get(letter, {}), "amps": "A"}
    figures = [
        _said(move.figures[name], unit) for name, unit in units.items() if name in move.figures
    ]
    joined = JOINED.get(move.verb, "") if move.words or figures else ""
    pieces = (move.verb, *move.at, joined, move.words, *figures)
    return " ".join(piece for piece in pieces if piece).replace("\u00a0", " ")


JOINED = {
    "discharge": "with", "plug in": "with", "take out": "with", "look": "with", "scope": "at",
    "esr": "at", "resolder": "at", "lift": "at",
}  # fmt: skip


def _said(value: float, unit: str) -> str:
    return f"{value * 100:.12g} %" if unit == "%" else engineering(value, unit)


def _line(text: str) -> str:
    if not isinstance(text, str):
        raise RepairlibError(text, "not a text", "a move such as: volts out 0")
    line = " ".join(one_line(text).split())
    if len(line) > LONGEST:
        raise RepairlibError(text, f"longer than {LONGEST} characters", "one move in a line")
    if not line.strip(EDGE + "."):
        raise RepairlibError(text, "nothing was typed", "a move such as: volts out 0")
    return line


def _verb(line: str, text: str) -> tuple[str, str]:
    """The verb, and what stands behind its phrase."""
    left = line.strip(EDGE)
    while True:
        fold = left.casefold()
        for phrase, verb in PHRASES:
            if fold.startswith(phrase) and len(fold) == len(left):
                behind = left[len(phrase) :]
                if not behind or not behind[0].isalnum():
                    return verb, behind
        first, _, behind = left.partition(" ")
        if first.casefold().strip(EDGE) not in BEFORE or not behind:
            raise _no_move(text)
        left = behind


def _no_move(text: str) -> RepairlibError:
    """The refusal of what begins no move, with the moves that may be meant."""
    first, *behind = _without_courtesy(text.casefold().strip(EDGE).split())
    if _near(first, TO_MEASURE):
        typed = bool(behind) and behind[0] in FORMS
        moves = [" ".join(behind)] if typed else [" ".join((v, *behind[:1])) for v in MEASURES]
        return RepairlibError(text, "with which instrument is not understood", ", ".join(moves))
    near = _near(first, [phrase for phrase, _ in PHRASES])
    meant = [verb for verb in FORMS if first in verb.split()]
    meant += [verb for phrase, verb in PHRASES if phrase in near]
    return RepairlibError(
        text, "no move begins like this", ", ".join(dict.fromkeys(meant) or FORMS)
    )


def _without_courtesy(words: list[str]) -> list[str]:
    """The words from the first that is no filler, or that says that something is measured."""
    while len(words) > 1 and words[0] in BEFORE and words[0] not in TO_MEASURE:
        words = words[1:]
    return words


def _near(word: str, among: Sequence[str]) -> list[str]:
    return get_close_matches(word, among, 3, LIKE)


PHRASES = sorted(
    ((phrase, verb) for verb, form in FORMS.items() for phrase in form.phrases),
    key=lambda one: -len(one[0]),
)


def _card_line(line: str, rest: str, text: str) -> str:
    """What is written, as `found: it hums`. The kind may stand first, in the place of the verb."""
    for said in (line, rest):
        said = said.strip(EDGE)
        kind = next((one for one in CARD if said.casefold().startswith(one)), None)
        if kind and (what := said[len(kind) :].strip(EDGE)):
            return f"{kind}: {what}"
        if kind:
            raise RepairlibError(text, f"nothing stands behind {kind}", CARD_EXAMPLES[kind])
    raise RepairlibError(text, f"not one of {', '.join(CARD)}", FORMS["write"].example)


def names_of(of: PracticeSet, points: bool = True) -> dict[str, str]:
    """What may be typed for a part (and a point) of the set, and what it is called there.

    A part may be called what it is, where it is the only one: `touch the regulator`.

    >>> from repairlib.bench.practice_set import demo_set
    >>> names = names_of(demo_set("desk radio"))
    >>> names["gnd"], names["+9 v"], names["transformer"], "rectifier diode" in names
    ('0', 'out', 'V1', False)
    """
    kinds = [part.what.casefold() for part in of.parts]
    called = {part.what: part.name for part in of.parts if kinds.count(part.what.casefold()) == 1}
    if points:
        called |= {word: "0" for word in ZERO_WORDS}
        called |= {rail.name: rail.point for rail in of.rails}
        called |= {point: point for point in of.points if point}
    for part in of.parts:
        called |= {part.name: part.name, OLD + part.name: OLD + part.name}
    return {" ".join(name.casefold().split()): what for name, what in called.items()}


def _pieces(rest: str, verb: str, of: PracticeSet):
    """What stands behind the verb: names of parts and points, figures, and words of that verb."""
    form, called = FORMS[verb], names_of(of, verb in POINTS)
    phrases = sorted(form.words, key=len, reverse=True)
    at: list[str] = []
    figures: dict[str, float] = {}
    said: list[str] = []
    left = rest.strip(EDGE)
    while left:
        due = len(at) < form.most and not (at and is_part(of, at[0]))
        name = _first_name(left, called) if due else ""
        phrase = next((one for one in phrases if _begins(left.casefold(), one)), "")
        if name and len(name) >= len(phrase):
            at.append(called[" ".join(name.casefold().split())])
            left = left[len(name) :]
        elif phrase:
            said.append(form.words[phrase])
            left = left[len(phrase) :]
        elif NUMBER.match(left) and form.least + form.most and len(at) < form.least:
            raise RepairlibError(left.split(" ")[0], "no part or point of this board", _there(of))
        elif NUMBER.match(left):
            figure, value, left = _figure(left, verb, at, figures, of)
            figures[figure] = value
        else:
            left = _without_filler(left, verb, due, of)
        left = left.strip(EDGE)
    return tuple(at), figures, [one for one in said if one]


def _without_filler(left: str, verb: str, name_due: bool, of: PracticeSet) -> str:
    word, _, behind = left.partition(" ")
    if word.casefold().strip(EDGE + ".") not in ("", *BETWEEN):
        if name_due:
            raise RepairlibError(word, "no part or point of this board", _there(of))
        raise RepairlibError(word, f"not understood behind {verb}", example(verb, of))
    return behind


def _there(of: PracticeSet) -> str:
    return ", ".join((*(part.name for part in of.parts), *of.points))


def _first_name(left: str, called: dict[str, str]) -> str:
    """The longest name that `left` begins with, as it is typed there."""
    fold = left.casefold()
    if len(fold) != len(left):
        return ""
    fitting = [name for name in called if _begins(fold, name)]
    return left[: len(max(fitting, key=len))] if fitting else ""


def _begins(text: str, phrase: str) -> bool:
    behind = text[len(phrase) : len(phrase) + 1]
    return text.startswith(phrase) and not (behind.isalnum() or behind in ("+", "_"))


def _units(verb: str, at: Sequence[str], of: PracticeSet) -> dict[str, str]:
    if verb != "fit" or not at or not is_part(of, at[0]):
        return FORMS[verb].figures
    part = of.part(at[0].removeprefix(OLD))
    if part.circuit is None or part.what in CONTACTS:
        return {}
    return {"amps": "A"} if part.what in FUSES else NEW_PART.get(part.circuit.letter, {})


NEW_PART = {
    "R": {"value": "Ω"},
    "C": {"value": "F", "volts": "V"},
    "L": {"value": "H"},
    "U": {"value": "V"},
    "D": {"volts": "V"},
}  # what may be said of a new part, by the letter of its circuit


def _figure(left: str, verb: str, at: Sequence[str], had: dict[str, float], of: PracticeSet):
    """The next figure: its name, its value, and what stands behind it.

    A bare number is read only where nothing else can be meant, as in `wait 30`.
    """
    units = _units(verb, at, of)
    due = {name: unit for name, unit in units.items() if name not in had}
    words = DEGREES.sub("°C", left).split(" ")
    problem = None
    for many in (4, 2, 1):
        piece = " ".join(words[:many]).strip(EDGE)
        if many > len(words) or (many == 4 and "seconds" not in due):
            continue
        for name, unit in due.items():
            try:
                value = read_quantity(piece, unit).value
            except RepairlibError as error:
                problem = problem or error
                continue
            if not (_says_unit(piece, name) or (len(units) == 1 and many == len(words))):
                continue
            value = value / 100 if unit == "%" else value
            return name, float(f"{value:.12g}"), " ".join(words[many:])
    if len(units) == 1 and problem:
        raise problem
    piece = " ".join(words[:2]).strip(EDGE)
    raise RepairlibError(piece, f"a figure that does not belong behind {verb}", example(verb, of))


def _says_unit(piece: str, name: str) -> bool:
    """Whether it has a unit, or a prefix alone where that is the custom: 4k7, 100n."""
    letters = piece.strip("0123456789.,+-' ")
    return bool(letters) and (name in ("value", "ohm") or letters not in PREFIXES)


SPOKEN = {
    "line": ("line", "%"), "discharge": ("ohm", "Ω"), "wait": ("seconds", "s"),
}  # fmt: skip  # verbs whose words stand for a figure


def _meant(verb: str, at: tuple[str, ...], figures: dict, said: list[str], of: PracticeSet):
    """The figures and the words of the move, in their own order."""
    spoken = SPOKEN.get(verb)
    if spoken and said:
        name, unit = spoken
        value = read_quantity(said[0], unit).value
        figures.setdefault(name, value / 100 if unit == "%" else value)
        said = []
    if verb == "fit":
        said = _way_round(said, at, of)
    if verb == "clip" and not at:
        said = ["off"]
    if verb == "plug in" and not said:
        said = ["lamp"] if "watts" in figures else ["supply"] if figures else []
    order = list(_units(verb, at, of))
    ordered = {name: figures[name] for name in order if name in figures}
    return ordered, " ".join(sorted(dict.fromkeys(said)))


DIRECTIONS = {"plus up": 90.0, "plus down": 270.0, "plus left": 180.0, "plus right": 0.0}


def _way_round(said: list[str], at: tuple[str, ...], of: PracticeSet) -> list[str]:
    """Where the plus was said: `turned` when that is against the board."""
    found = []
    for one in said:
        if one not in DIRECTIONS:
            found.append(one)
            continue
        plus = of.part(at[0].removeprefix(OLD)).plus
        if plus is None:
            raise RepairlibError(one, f"{at[0]} has no plus", "fit without saying where it is")
        if (DIRECTIONS[one] - plus) % 180:
            raise RepairlibError(one, f"{at[0]} does not lie that way", "the way its pads lie")
        if DIRECTIONS[one] != plus:
            found.append("turned")
    return found
