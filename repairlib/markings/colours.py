"""The colours of bands and dots: their names and abbreviations, and what each means (IEC 60062).

A table holds the exponent or the figures of a number as printed, with its source. Where the two
editions of the standard differ both meanings are given, and each names its edition.
"""

from __future__ import annotations

from repairlib.core.errors import RepairlibError, shown

CARD = "Vishay colour card"
OLDER = "IEC 60062:2005"
MEMORY = "from memory"

FIGURES = ("black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white")
NAMES = (*FIGURES, "gold", "silver", "pink")

# colour: (power of ten, source)
MULTIPLIERS = {
    **{colour: (power, CARD if power < 7 else OLDER) for power, colour in enumerate(FIGURES)},
    "gold": (-1, CARD),
    "silver": (-2, CARD),
    "pink": (-3, MEMORY),
}

# colour: ((percent either side, words on the edition, source), ...), likeliest first
TOLERANCES = {
    "brown": (("1", "", CARD),),
    "red": (("2", "", CARD),),
    "orange": (("0.05", "in the 2016 edition only", CARD),),
    "yellow": (
        ("0.02", "in the 2016 edition only; on some high-voltage parts it is 5\u00a0%", CARD),
    ),
    "green": (("0.5", "", CARD),),
    "blue": (("0.25", "", CARD),),
    "violet": (("0.1", "", CARD),),
    "grey": (
        ("0.01", "in the 2016 edition, 0.05\u00a0% in the 2005 edition", CARD),
        (
            "0.05",
            "in the 2005 edition, 0.01\u00a0% in the 2016 edition; "
            "on some high-voltage parts it is 10\u00a0%",
            OLDER,
        ),
    ),
    "gold": (("5", "", CARD),),
    "silver": (("10", "", CARD),),
}
NO_BAND = "20"  # percent, where the tolerance band is missing
TOLERANCE_LETTERS = {
    "brown": "F",
    "red": "G",
    "orange": "W",
    "yellow": "P",
    "green": "D",
    "blue": "C",
    "violet": "B",
    "grey": "L",
    "gold": "J",
    "silver": "K",
}

# colour: (ppm/K either side, source). In the 2005 edition green and blue share the letter Z.
COEFFICIENTS = {
    "black": (250, OLDER),
    "brown": (100, CARD),
    "red": (50, CARD),
    "orange": (15, CARD),
    "yellow": (25, CARD),
    "green": (20, OLDER),
    "blue": (10, CARD),
    "violet": (5, CARD),
    "grey": (1, OLDER),
}

# Two letters after IEC 60757, from memory; the others are what people write.
_SHORT = """
black BK BLK BLA   brown BN BRN BRO BR   red RD   orange OG ORN ORG OR   yellow YE YEL YL
green GN GRN   blue BU BLU   violet VT VIO VI purple PUR   grey GY GRY gray GRA   white WH WHT
gold GD GLD GO   silver SR SLV SIL SV   pink PK PNK
"""
_TWO_MEANINGS = {
    "B": "black, brown or blue",
    "BL": "black or blue",
    "G": "green, grey or gold",
    "GR": "green or grey",
}
SEPARATORS = "-,;/"


def _words() -> dict[str, str]:
    words, colour = {}, ""
    for word in _SHORT.split():
        colour = word if word in NAMES else colour
        words[word.upper()] = colour
    return words


_WORDS = _words()


def colour_of(word: str) -> str | None:
    """The colour that a name or abbreviation means, or None.

    >>> colour_of("Brown"), colour_of("bn"), colour_of("purple"), colour_of("mauve")
    ('brown', 'brown', 'violet', None)
    """
    return _WORDS.get(word.upper().rstrip("."))


def words_of(text: str) -> list[str]:
    """The words of a marking in colours, whatever stands between them.

    >>> words_of("brown-black, red / gold")
    ['brown', 'black', 'red', 'gold']
    """
    for separator in SEPARATORS:
        text = text.replace(separator, " ")
    return text.split()


def bands_of(text: str) -> list[str]:
    """The colours of a marking. Empty when one of its words is no colour.

    >>> bands_of("bn bk rd gd"), bands_of("brown mauve red")
    (['brown', 'black', 'red', 'gold'], [])
    """
    words = words_of(text)
    colours = [colour for colour in map(colour_of, words) if colour is not None]
    return colours if len(colours) == len(words) else []


def read_bands(text: str) -> list[str]:
    """The colours of a marking. Raises RepairlibError that names the word which is no colour."""
    if not isinstance(text, str) or not words_of(text):
        raise RepairlibError(text, "no colours were given", "brown-black-red-gold")
    wrong = no_colour(text)
    if wrong:
        raise RepairlibError(text, wrong, " ".join(NAMES))
    return bands_of(text)


def no_colour(text: str) -> str:
    """What to say about the first word that is no colour, or "" where all are."""
    for word in words_of(text):
        meanings = _TWO_MEANINGS.get(word.upper())
        if meanings:
            return f"{word} may be {meanings}"
        if colour_of(word) is None:
            return f"{shown(word)} is not a colour of the code"
    return ""
