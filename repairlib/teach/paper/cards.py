"""Pocket cards: what is looked up most often, four to a page, made of the tables of calculators."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from repairlib.core.html import Html, listed, row, table, text
from repairlib.core.quantity import Quantity
from repairlib.core.safety import HAZARDS
from repairlib.core.sources import FROM_MEMORY, source
from repairlib.esd import LEAST_STRAP, items, limit_row
from repairlib.heat import alloy, iron_temperature
from repairlib.markings import (
    CAN_LETTERS,
    FIGURES,
    MULTIPLIERS,
    TANTALUM_LETTERS,
    TOLERANCES,
    TWO_CHARACTERS,
    code_source,
    letter_source,
)
from repairlib.polarity import EITHER, board_marks, part_marks
from repairlib.polarity import UNKNOWN as NOT_FIXED
from repairlib.show.sheets.before_work import at_the_iron
from repairlib.teach.paper.printing import Sheet
from repairlib.teach.paper.style import CARD_STYLE

ON_A_PAGE = 4
NOT_LOOKED_UP = "*"  # behind each figure for which no document was read
# Which of the many go on a card is our choice; what the card says of them is the table's.
SOLDERS = ("Sn63Pb37", "Sn60Pb40", "SAC305", "Sn99.3Cu0.7", "Bi58Sn42")
EDITIONS = ("S20.20-2021", "IEC 61340-5-1:2016")
PARTS = (
    "radial-stripe", "axial-arrows", "can-segment", "tantalum-chip-bar", "dipped-plus",
    "polymer-can-segment", "polymer-chip-bar", "non-polar-np", "diode-band", "led-flat", "ic-notch",
)  # fmt: skip
LETTERS = {"tantalum": TANTALUM_LETTERS, "can": CAN_LETTERS}
ON_A_BOARD = ("plus sign", "minus sign", "filled or hatched half circle", "square pad")
TURNED = (
    "Marks are as you see them from the component side. Seen from the solder side left and right "
    "change places: mark one fixed edge of the board before you turn it."
)


class Card(NamedTuple):
    """One card: its title, what it says, and the keys of the sources of its figures."""

    title: str
    says: Html
    sources: tuple[str, ...]


def pocket_cards() -> Sheet:
    """All cards, four to a page, with lines to cut along."""
    cards = [_laid(one) for one in all_cards()]
    pages = [cards[at : at + ON_A_PAGE] for at in range(0, len(cards), ON_A_PAGE)]
    return Sheet(
        "Pocket cards", "Pocket cards: cut along the dashes", (*map(_page, pages),), CARD_STYLE
    )


def all_cards() -> list[Card]:
    """Every card, those of danger first."""
    return [
        dead_first(),
        bands(),
        two_characters(),
        voltage_letters(),
        part_polarity(),
        board_polarity(),
        solders(),
        esd(),
    ]


def dead_first() -> Card:
    """What comes before every other card."""
    told = "".join(
        f"<h3>{text(one.title)}</h3>{listed(one.do)}<p><b>{text(one.defer)}</b></p>"
        for one in (HAZARDS["mains"], HAZARDS["stored charge"])
    )
    return Card("First: make it dead", Html(told), ("common practice",))


def bands() -> Card:
    """What each colour of a resistor's bands means."""
    rows = []
    for colour, (power, origin) in MULTIPLIERS.items():
        figure = str(FIGURES.index(colour)) if colour in FIGURES else "–"
        zeros = Html(f"× 10<sup>{power}</sup>{_sign(origin)}")
        within = [f"±{one[0]} %{_sign(one[2])}" for one in TOLERANCES.get(colour, ())[:1]]
        rows.append((colour, figure, zeros, *(within or ["–"])))
    keys = [origin for _, origin in MULTIPLIERS.values()]
    keys += [one[2] for found in TOLERANCES.values() for one in found[:1]]
    grey = "Orange, yellow and grey tolerances are of the 2016 edition; the 2005 edition differs."
    return Card("Bands", _table(("band", "figure", "zeros", "tolerance"), rows, grey), _once(keys))


def two_characters() -> Card:
    """Rated voltage by a digit and a letter."""
    by_digit = ("0", "1", "2")
    letters = sorted({code[1] for code in TWO_CHARACTERS if code[0] in by_digit})
    rows = [(letter, *(_volts_of_code(digit + letter) for digit in by_digit)) for letter in letters]
    told = "The digit gives the power of ten, the letter the figure: 1E is 25 V."
    keys = [code_source(code) for code in TWO_CHARACTERS if code[0] in by_digit]
    return Card(
        "Volts: digit and letter", _table(("letter", "0", "1", "2"), rows, told), _once(keys)
    )


def voltage_letters() -> Card:
    """Rated voltage by one letter: the same letter means two things."""
    letters = sorted({*TANTALUM_LETTERS, *CAN_LETTERS}, key=lambda one: (one.casefold(), one))
    rows = [
        (one, _volts_of_letter("tantalum", one), _volts_of_letter("can", one)) for one in letters
    ]
    both = [one for one in letters if one in TANTALUM_LETTERS and one in CAN_LETTERS]
    traps = [
        f"{one} is {_volts_of_letter('tantalum', one)} on a tantalum block and "
        f"{_volts_of_letter('can', one)} on a can"
        for one in both
        if TANTALUM_LETTERS[one] != CAN_LETTERS[one]
    ]
    keys = [letter_source(kind, one) for kind, known in LETTERS.items() for one in known]
    heads = ("letter", "tantalum block", "aluminium can")
    return Card("Volts: one letter", _table(heads, rows, f"Trap: {'; '.join(traps)}."), _once(keys))


def part_polarity() -> Card:
    """What the marks on parts show."""
    marks = [part_marks()[name] for name in PARTS]
    rows = [(one.family, one.mark, _shows(one.shows) + _sign(one.source)) for one in marks]
    keys = [one.source for one in marks]
    return Card("Polarity: the part", _table(("part", "mark", "shows"), rows, TURNED), _once(keys))


def board_polarity() -> Card:
    """What the marks on boards show."""
    marks, kinds = [board_marks()[name] for name in ON_A_BOARD], ("capacitor", "diode")
    rows = [
        (one.mark, *(_shows(one.shows(part)) + _sign(one.source) for part in kinds))
        for one in marks
    ]
    heads = ("mark on the board", *(f"of a {part}" for part in kinds))
    keys = [one.source for one in marks]
    return Card("Polarity: the board", _table(heads, rows, TURNED), _once(keys))


def solders() -> Card:
    """Where solders melt, and where to set the iron for an ordinary joint."""
    rows, keys = [], []
    for name in SOLDERS:
        one, iron = alloy(name), iron_temperature(name)
        melts = f"{one.melting}{_sign(one.source)}"
        heat = f"{iron.start}, at most {iron.high}{_sign(*iron.sources)}"
        rows.append((one.short or one.name, melts, "yes" if one.leaded else "no", heat))
        keys += [one.source, *iron.sources]
    heads = ("solder", "melts", "lead", "iron, ordinary joint")
    told = "Lead and bismuth must never meet. A wide, clean, wet tip first, more heat last."
    says = Html(_table(heads, rows, told) + at_the_iron())
    return Card("Solders and the iron", says, _once(keys))


def esd() -> Card:
    """The limits of a bench in two editions."""
    rows, keys = [], []
    for item in items():
        found = [limit_row(item, edition) for edition in EDITIONS]
        if any(found):
            rows.append((item, *map(_limit, found)))
            keys += [one["source"] for one in found if one]
    least = Quantity(LEAST_STRAP, "Ω")
    told = f"A strap of less than {least} no longer protects the person who wears it."
    strap = HAZARDS["wrist strap"]
    said = f"<b>{text(strap.title)}.</b> {text(' '.join((*strap.do, strap.defer)))}"
    says = Html(f'{_table(("", *EDITIONS), rows, told)}<p class="caution">⚠ {said}</p>')
    return Card("Limits of an ESD bench", says, _once(keys))


def _limit(found: dict[str, str] | None) -> str:
    if found is None:
        return "–"
    unit = found["unit"]
    sign = "up to" if found["to_included"] == "yes" else "under"
    low = f"{_short(found['from'], unit)} " if found["from"] else ""
    walk = f", walk under {found['walk_to_v']} V" if found["walk_to_v"] else ""
    return f"{low}{sign} {_short(found['to'], unit)}{walk}{_sign(found['source'])}"


def _short(number: str, unit: str) -> str:
    return str(Quantity(float(number), unit))


def _shows(end: str) -> str:
    return {EITHER: "either way round", NOT_FIXED: "not sure: measure"}.get(end, end)


def _volts_of_code(code: str) -> str:
    return _volts(TWO_CHARACTERS.get(code), code_source(code))


def _volts_of_letter(kind: str, letter: str) -> str:
    return _volts(LETTERS[kind].get(letter), letter_source(kind, letter))


def _volts(volts: float | None, origin: str) -> str:
    return "–" if volts is None else f"{volts:g} V{_sign(origin)}"


def _sign(*keys: str) -> str:
    """The sign of what was not looked up, when one of those sources is none that was."""
    return f" {NOT_LOOKED_UP}" if any(source(key).how == FROM_MEMORY for key in keys) else ""


def _table(heads: Iterable[str], rows: Iterable[Iterable[object]], told: str) -> Html:
    made = table((row(one, first="th") for one in rows), row(heads, tag="th"))
    return Html(f"{made}<p>{text(told)}</p>")


def _once(keys: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(keys))


def _laid(card: Card) -> str:
    named = [source(key) for key in card.sources]
    known = "; ".join(
        f"{one.author}, {one.title}, {one.date}" if one.author else f"{one.title}{_sign(one.key)}"
        for one in named
    )
    return f'<h2>{text(card.title)}</h2>{card.says}<p class="origin">Sources: {text(known)}</p>'


def _page(cards: list[str]) -> str:
    cells = [f"<td>{one}</td>" for one in cards] + ["<td></td>"] * (-len(cards) % 2)
    rows = "".join(f"<tr>{''.join(cells[at : at + 2])}</tr>" for at in range(0, len(cells), 2))
    return f'<table class="cards">{rows}</table>'
