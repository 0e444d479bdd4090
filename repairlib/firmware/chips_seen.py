"""Small chips as somebody saw them: read from lines of free words, one chip a line.

`U5: 25Q64, 8 pins, 208 mil, near U4 processor, nets SPI_CLK SPI_CS, 3.3 V`. What is not understood
is kept and said.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from repairlib.core.errors import RepairlibError
from repairlib.firmware.chip_numbers import numbered
from repairlib.firmware.chip_signs import CALLED, FOUND, NEAR, NETS, OSCILLATOR, Row
from repairlib.markings import memory_chip

MOST_CHIPS, LONGEST_LINE = 60, 500
_ACCEPTED = "one chip a line, such as: U5: 25Q64, 8 pins, 208 mil, near U4 processor, 3.3 V"
_MIL = 0.0254  # mm
_WIDE_16 = 7.5  # mm, of bodies with more leads: 300 mil
_WIDTHS = {"narrow": 3.9, "wide": 5.3, "broad": 5.3}  # mm: 150 and 208 mil


@dataclass(frozen=True, slots=True)
class Seen:
    """One chip: where it stands, what is read on it, and what is around it.

    `place` is its name on the board or where it is, `marks` its top marks, `package` the words for
    its body, `width` of the body in mm and `pins` where known, `called` what somebody took it for,
    `near` what stands beside it, `nets` the names of its lines, `supply` in volts, `identity` the
    bytes that a programmer gave in hex, `found` what was measured or seen at it, `unknown` the
    words that were not understood. One text may stand for a list of one; pins and width that only
    the words for the body tell are taken from there.

    >>> chip = Seen("U5", marks="25Q64", package="SOIC-8, 208 mil")
    >>> chip.marks, chip.pins, round(chip.width, 1)
    (('25Q64',), 8, 5.3)
    """

    place: str
    marks: tuple[str, ...] = ()
    package: str = ""
    width: float | None = None
    pins: int | None = None
    called: str = ""
    near: tuple[str, ...] = ()
    nets: tuple[str, ...] = ()
    supply: float | None = None
    identity: str = ""
    found: tuple[str, ...] = ()
    unknown: tuple[str, ...] = ()

    def __post_init__(self):
        for name in ("marks", "near", "nets", "found", "unknown"):
            told = getattr(self, name)
            object.__setattr__(self, name, (told,) if isinstance(told, str) else tuple(told or ()))
        if self.package and (self.pins is None or self.width is None):
            line = _Line(self.package, 1)
            line.of_the_body(self.package)
            object.__setattr__(self, "pins", line.pins if self.pins is None else self.pins)
            object.__setattr__(self, "width", line.width if self.width is None else self.width)


def read_seen(text: str) -> list[Seen]:
    """The chips of a text, one a line; empty lines and those that begin with # are left out.

    Raises RepairlibError for what is no text, for no chip, for more than 60 and for lines beyond
    500 characters.

    >>> chip = read_seen("U5: 25Q64, 8 pins, 208 mil, near U4 processor, nets SPI_CLK, 3.3 V")[0]
    >>> chip.marks, chip.pins, round(chip.width, 2), chip.supply, chip.unknown
    (('25Q64',), 8, 5.28, 3.3, ())
    """
    if not isinstance(text, str):
        raise RepairlibError(text, "not a text", _ACCEPTED)
    lines = [line.strip() for line in text.splitlines()]
    lines = [line for line in lines if line and not line.startswith("#")]
    if not lines:
        raise RepairlibError(text, "no chip was typed", _ACCEPTED)
    if len(lines) > MOST_CHIPS:
        wrong = f"{len(lines)} chips are more than are compared at once"
        raise RepairlibError(f"{lines[0]} …", wrong, f"at most {MOST_CHIPS} lines")
    for line in lines:
        if len(line) > LONGEST_LINE:
            raise RepairlibError(line, f"longer than {LONGEST_LINE} characters", _ACCEPTED)
    chips: list[Seen] = []
    for number, line in enumerate(lines, 1):
        chip = _Line(line, number).seen()
        if chip.place in [other.place for other in chips]:
            wrong = "this place is named twice"
            raise RepairlibError(chip.place, wrong, "each chip once, with a name of its own")
        chips.append(chip)
    return chips


_PLACE = re.compile(
    r"^\s*((?:IC|VR|REG|PS|TR|XTAL|OSC|CR|ZD|[A-Z])\s?\d+[A-Z]?)\b\s*[:=,;–-]?\s*", re.I
)
_NAMED_PLACE = re.compile(r"^([^:]{1,60}):\s*")
_CLAUSES = re.compile(
    r"\s*(?:(?<!\d),|,(?!\d)|[;|])(?!\s*\d\s*(?:,|and\b|&|joined|connected|together))\s*"
    r"|\s+[-–—]\s+|\.\s+|\s+(?=(?:near|beside|next to|close to)\b)"
)
_NEAR = re.compile(
    r"^(?:sits |stands |is |located |placed )?(?:(?:right |very |close )*(?:near|"
    r"beside|by|next to|close to|"
    r"adjacent to|nearby|under|behind|between|around|neighbou?rs?|surrounded by)|"
    r"with|has|at|touching|"
    r"\d+ ?(?:mm|cm) from)(?: to)?(?: the| a| an| its)?[: ]+",
    re.I,
)
_LEADS_TO = re.compile(
    r"\b(?:to|from|into|towards|drives|feeds|under|shared with) (?:the |a |an |its )?(.+)", re.I
)
_BEHIND = re.compile(
    r"\s+(?:(?:right |very |close )*(?:beside|next to|close to|near|around|"
    r"by)(?: (?:it|them|this))?|nearby|"
    r"close by|alongside|adjacent)$",
    re.I,
)
_WHERE = re.compile(
    r"\b(?:near|beside|by|next to|at|under|below|above|behind|close to) (?:the |a |an )?(.+)", re.I
)
_NETS = re.compile(
    r"^(?:(?:on )?(?:the )?(?:nets?|lines?|signals?|bus|tracks?|traces?|"
    r"wires?)(?: are| is| named| called| to)?"
    r"|connected to|goes to|wired to)[: ]+",
    re.I,
)
_IDENTITY = re.compile(
    r"\b(?:jedec |flash |chip )?(?:id|identity|identification|9f(?:h)?|"
    r"programmer)(?: bytes?| gives?| says?|"
    r" reads?| answers?| is)*[:= ]+((?:0x)?[0-9a-f]{2}(?:[ ,:-]?(?:0x)?[0-9a-f]{2}){1,7})\b",
    re.I,
)
_VOLTS = re.compile(
    r"(?<![\w.,-])(?:(?:supply|vcc|vdd|powered (?:from|by)|runs (?:at|on|from)|on|at)[:= ]*)?"
    r"(\d{1,2}(?:[.,]\d{1,2})?) ?v(?:olts?)?(\d{0,2})(?![\w.,]*\w)(?: (?:supply|rail))?",
    re.I,
)
_WIDTH = re.compile(
    r"(\d+(?:[.,]\d+)?) ?(mil|mm|thou)s?\b(?: (?:wide|body|across|broad))*(?! from|"
    r" away| pitch| apart)",
    re.I,
)
_SIZE = re.compile(r"(\d+(?:[.,]\d+)?) ?(?:mm)? ?(?:x|×|by) ?(\d+(?:[.,]\d+)?) ?mm", re.I)
_PINS = re.compile(
    r"(\d{1,3})[ -]?(?:pins?|leads?|legs?|pads?|balls?|terminals?|"
    r"contacts?)\b(?:[ -]?(?:package|body|chip|"
    r"device|part))?",
    re.I,
)
_FAMILIES = (
    "sot-?223|sot-?89|sot-?23|sot-?353|sot-?363|sc-?70|to-?252|to-?263|to-?220|to-?92|d-?pak|d2pak|"
    "tssop|msop|ssop|tsop|vsop|qsop|soic|sop|soj|so|pdip|sdip|dip|dil|plcc|lqfp|tqfp|qfp|vqfn|wqfn|qfn|"
    "udfn|dfn|wson|uson|son|mlf|fbga|tfbga|bga|wlcsp|csp|lga|hvson"
)
_BODY = re.compile(
    rf"\b(?:(\d{{1,3}})[ -]?)?({_FAMILIES})(?:[ -]?(\d{{1,3}}))?(w|"
    rf"n)?(?:[ -]?(?:package|body|case))?"
    rf"(?![\w-])",
    re.I,
)
_PADS = re.compile(r"\b(?:no[ -]?lead|leadless|without leads|gull[ -]?wings?)\b", re.I)
_SIZE_WORD = re.compile(
    r"\b(narrow|wide|broad)(?: (?:body|one|package|chip))?(?=\s*(?:$|[,;.)]|and\b))", re.I
)
_COUNTS = {"two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "eight": 8, "ten": 10}
_COUNTS |= {"fourteen": 14, "sixteen": 16, "twenty": 20}
_COUNTED = re.compile(
    rf"\b({'|'.join(_COUNTS)})(?=[ -](?:pin|lead|leg|pad|ball|terminal)s?\b)", re.I
)
_MARKED = re.compile(
    r"^(?:top ?)?(?:mark(?:ed|ing|s)?|reads|printed|says|text|labelled)[: ]+", re.I
)
_GONE = (
    r"(?:gone|worn|sanded|ground|scratched|rubbed|removed|missing|illegible|"
    r"unreadable|blank|faded|"
    r"not readable|not legible|unknown)(?: off| away| out)?"
)
_PRINT = r"(?:mark(?:s|ing|ings)?|text|print(?:ing)?|legend|lettering|writing|letters)"
_BLANK = re.compile(
    rf"\b(?:no (?:(?:readable|visible|legible) )?(?:top )?{_PRINT}|unmarked|blank top|"
    rf"(?:top |the )?(?:{_PRINT}|label)(?: is| are|:)? {_GONE}|"
    rf"(?<!\w ){_GONE}(?: (?:top )?mark(?:s|ing)?)?)(?![\w-])",
    re.I,
)
_FILLER_WORDS = (
    "a an the and or with is are has it its in on at of to from by for chip ic part small one "
    "two tiny little black package body case top mark marks marked near beside next close "
    "same board side which that also only both this there very other pin pins line lines net "
    "nets supply leads between just about like looks probably maybe perhaps some another "
    "right left above below under back front wired connected goes away mm straight then named "
    "seen tracks connector connectors socket rest rests output outputs out control unknown "
    "unsure nothing else across each end edge corner middle stands sits short "
    "trace traces run runs thick thin resistors resistor kohm ohm power bus module four three "
    "shield can mb mbit mib kb read lens together uh current no not without never "
)
_FILLER = frozenset(_FILLER_WORDS.split())
_REFERENCE = re.compile(r"^(?:[A-Z]{1,3}\d{1,4}[A-Z]?)$", re.I)


class _Line:
    """One line while it is read: what is left of a clause after each thing was taken out of it."""

    def __init__(self, line: str, number: int):
        self.line = line
        self.number = number
        self.marks: list[str] = []
        self.bodies: list[str] = []
        self.called: list[str] = []
        self.near: list[str] = []
        self.nets: list[str] = []
        self.found: list[str] = []
        self.unknown: list[str] = []
        self.width: float | None = None
        self.pins: int | None = None
        self.supply: float | None = None
        self.identity = ""

    def seen(self) -> Seen:
        place, rest = self._place()
        where = _WHERE.search(place)
        if where:
            self._told(where[1], (NEAR,), self.near)
            if _first(where[1], FOUND):
                self.found.append(where[1])
            self.unknown.clear()  # its name need not be understood
        rest = _COUNTED.sub(lambda match: str(_COUNTS[match[1].lower()]), rest)
        rest = self._identity(rest)
        listing = ""
        for clause in _CLAUSES.split(rest):
            if clause and clause.strip():
                listing = self._clause(clause.strip(), listing)
        return Seen(
            place=place,
            marks=tuple(self.marks),
            package=", ".join(self.bodies),
            width=self.width,
            pins=self.pins,
            called=", ".join(self.called),
            near=tuple(self.near),
            nets=tuple(self.nets),
            supply=self.supply,
            identity=self.identity,
            found=tuple(self.found),
            unknown=tuple(self.unknown),
        )

    def _place(self) -> tuple[str, str]:
        match = _NAMED_PLACE.match(self.line) or _PLACE.match(self.line)
        if match and not memory_chip(match[1].strip()):
            return match[1].strip(), self.line[match.end() :]
        return f"chip {self.number}", self.line

    def _identity(self, text: str) -> str:
        match = _IDENTITY.search(text)
        if not match:
            return text
        self.identity = match[1]
        return text[: match.start()] + text[match.end() :]

    def _clause(self, clause: str, listing: str) -> str:
        """Read one clause; gives "near" or "nets" while further clauses may belong to that list."""
        behind = _BEHIND.search(clause)
        if behind and _first(clause, NEAR):
            clause = f"near {clause[: behind.start()]}"
        near, nets, marked = _NEAR.match(clause), _NETS.match(clause), _MARKED.match(clause)
        if _BLANK.search(clause):
            clause = self._taken(_BLANK, clause, lambda match: None).strip()
        elif marked:
            self._marked(clause[marked.end() :].strip(" '\""))
            return ""
        if self._whole(clause, FOUND):
            return ""
        if near and not self._is_own(clause[near.end() :]):
            beside = self.of_the_body(clause[near.end() :], volts=False)
            self._told(beside, (NEAR, NETS, FOUND), self.near)
            return "near"
        if nets:
            self._net_names(clause[nets.end() :])
            return "nets"
        left = self.of_the_body(clause)
        if not left:
            return listing
        called = _first(left, CALLED)
        anything = self.marks or self.bodies or self.called or self.pins
        of_another = called is None or (OSCILLATOR in called.sign.points and anything)
        if self._whole_of(left, NEAR) and (listing == "near" or of_another):
            self._told(left, (NEAR, NETS, FOUND), self.near)
            return listing
        leads = _LEADS_TO.search(left)
        before = left[: leads.start()] if leads else left
        if leads and self._whole_of(leads[1], NEAR) and not self._whole_of(before, CALLED):
            self._told(leads[1], (NEAR,), self.near)
            left = before.strip()
            if not left or not _names_nets(left):
                return listing
        if _names_nets(left) and not self._whole_of(left, CALLED):
            self.nets.append(left)
            return "nets"
        self._own(left)
        return ""

    def _marked(self, text: str) -> None:
        """What follows `marked`: a mark, unless it only says what kind of chip it is."""
        if _first(text, CALLED) and not any(one.isdigit() for one in text):
            self._told(text, (CALLED,), self.called)
        elif text:
            self.marks.append(text)

    def _is_own(self, text: str) -> bool:
        """Whether `with 8 pins`, `has 208 mil` say something of the chip itself."""
        return not _first(text, NEAR) and bool(
            _PINS.search(text)
            or _WIDTH.search(text)
            or _BODY.search(text)
            or self._whole_of(text, NETS)
        )

    def _whole(self, clause: str, rows: tuple[Row, ...]) -> bool:
        """Take the clause as found at the chip where it says such a thing."""
        if _first(clause, rows) is None:
            return False
        left = self._without_marks(self.of_the_body(clause, volts=False))
        self._told(left or clause, (FOUND, NEAR, CALLED), self.found)
        return True

    def _without_marks(self, text: str) -> str:
        """Keep the words that are marks as such; the other words."""
        words = text.split()
        marks = [word for word in words if _is_mark(word)]
        self.marks += [word.strip("'\"()?") for word in marks]
        return " ".join(word for word in words if word not in marks)

    def _whole_of(self, text: str, rows: tuple[Row, ...]) -> bool:
        return _first(text, rows) is not None

    def _net_names(self, text: str) -> None:
        for name in re.split(r"[\s/]+(?:and )?", text):
            if name and name.lower() not in _FILLER:
                self.nets.append(name)
        if len(text.split()) > 1:
            self.nets.append(text)  # names of several words, such as address bus

    def of_the_body(self, text: str, volts: bool = True) -> str:
        """Take body, pins, width and volts out of the words; what is left."""
        text = self._taken(_BLANK, text, lambda match: None)
        text = self._taken(_SIZE, text, self._size)
        text = self._taken(_PINS, text, lambda match: self._set_pins(match[1]))
        text = self._taken(_BODY, text, self._body)
        text = self._taken(_PADS, text, lambda match: self.bodies.append(match[0].lower()))
        if volts:
            text = self._taken(_WIDTH, text, self._set_width)
            text = self._taken(_SIZE_WORD, text, self._width_word)
            text = self._taken(_VOLTS, text, self._volts)
        return text.strip(" ,;.()")

    def _taken(self, pattern: re.Pattern, text: str, use) -> str:
        match = pattern.search(text)
        if not match:
            return text
        use(match)
        return f"{text[: match.start()]} {text[match.end() :]}"

    def _size(self, match: re.Match) -> None:
        sides = sorted(_number(side) for side in (match[1], match[2]))
        self.width = sides[0]
        self.bodies.append(match[0])

    def _set_pins(self, count: str) -> None:
        self.pins = int(count)

    def _body(self, match: re.Match) -> None:
        family = match[2].lower().replace("-", "")
        behind = match[3]
        count = match[1] or behind
        if family in ("sot23", "sc70", "sot223", "sot89", "to252", "to263", "to220", "to92"):
            count = behind
        self.bodies.append(family)
        if count:
            self.pins = int(count)
        if match[4]:
            wide = match[4].lower() == "w"
            many = (self.pins or 0) > 8
            self.width = _WIDE_16 if wide and many else _WIDTHS["wide" if wide else "narrow"]

    def _set_width(self, match: re.Match) -> None:
        number = _number(match[1])
        self.width = number if match[2].lower() == "mm" else number * _MIL
        self.bodies.append(match[0].strip())

    def _width_word(self, match: re.Match) -> None:
        if self.width is None:
            wide = match[1].lower() != "narrow"
            self.width = _WIDE_16 if wide and (self.pins or 0) > 8 else _WIDTHS[match[1].lower()]
        self.bodies.append(match[0].lower())

    def _volts(self, match: re.Match) -> None:
        whole = f"{match[1]}.{match[2]}" if match[2] else match[1]
        self.supply = _number(whole)

    def _own(self, text: str) -> None:
        """A clause that is none of the rest: marks, what the chip is called, or unknown words."""
        rest = self._without_marks(text)
        if rest:
            self._told(rest, (CALLED, FOUND, NEAR, NETS), self.called)

    def _told(self, text: str, known: tuple[tuple[Row, ...], ...], into: list[str]) -> None:
        """Keep the text, and note the words in it that no sign knows."""
        left = text.lower()
        understood = False
        for rows in known:
            for row in rows:
                left, count = row.pattern.subn(" ", left)
                understood = understood or bool(count)
        words = re.findall(r"[\w.+#/-]+", left)
        if understood or any(map(_REFERENCE.match, words)):
            into.append(text)
        for word in words:
            plain = word.strip(".-/+#")
            if (
                plain
                and plain not in _FILLER
                and not _REFERENCE.match(plain)
                and not plain.isdigit()
            ):
                self.unknown.append(plain)


def _number(text: str) -> float:
    return float(text.replace(",", "."))


def _first(text: str, rows: tuple[Row, ...]) -> Row | None:
    low = text.lower()
    return next((row for row in rows if row.found_in(low)), None)


_KNOWN_LINES = re.compile(r"clocks?|clk|data|spi|i2c|[a-z]+ ?select|one[ -]wire")


def _names_nets(text: str) -> bool:
    """Whether words that nobody announced as nets are some: written as names are, or well known.

    >>> _names_nets("SDA and SCL"), _names_nets("main board"), _names_nets("chip select")
    (True, False, True)
    """
    if any(numbered(word) or memory_chip(word) for word in text.split()):
        return False
    for row in NETS:
        for match in row.pattern.finditer(text.lower()):
            written = text[match.start() : match.end()]
            named = written != written.lower() or not written.isalpha()
            if row.found_in(text.lower()) and (named or _KNOWN_LINES.fullmatch(written)):
                return True
    return False


def _is_mark(word: str) -> bool:
    """Whether a word is a top mark: a memory chip's or another number of the trade, or like one."""
    plain = word.strip("'\"()?")
    if memory_chip(plain):
        return True
    if numbered(plain):
        return True
    figures = sum(one.isdigit() for one in plain)
    letters = sum(one.isalpha() for one in plain)
    capital = plain.upper() == plain
    return figures >= 2 and letters >= 1 and capital and len(plain) >= 4 and "_" not in plain
