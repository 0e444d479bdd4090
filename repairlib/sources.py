"""Where figures come from: each standard or handbook once, with its edition."""

from __future__ import annotations

PUBLISHED = "published"
COMMON_PRACTICE = "common practice"
FROM_MEMORY = "from memory"


class Source:
    """A standard, handbook or data sheet, and how its figures were obtained.

    `how` is "published" (read in the document), "common practice" (a fact of the trade with no
    document behind it) or "from memory" (a document that could not be looked up: verify it).
    """

    __slots__ = ("how", "key", "title")

    def __init__(self, key: str, title: str, how: str):
        self.key = key
        self.title = title
        self.how = how

    def __repr__(self) -> str:
        return f"{self.title} ({self.how})"


# In alphabetical order of the keys.
_ALL = (
    Source(
        "AVX TAP and TEP",
        "AVX TAP and TEP dipped tantalum data sheet, wire-form outlines",
        PUBLISHED,
    ),
    Source("common practice", "Common practice of the trade, no document", COMMON_PRACTICE),
    Source("EIA-198", "EIA-198 codes as printed in TI SLAA701B, Table 1-16", PUBLISHED),
    Source(
        "EIA-198, quoted",
        "EIA-198 tables as quoted in an encyclopaedia, Ceramic capacitor",
        PUBLISHED,
    ),
    Source("EIA-476", "EIA-476, date code marking, scope in a standards catalogue", PUBLISHED),
    Source("from memory", "From memory, not looked up: verify before relying on it", FROM_MEMORY),
    Source(
        "IEC 60062:2016",
        "IEC 60062:2016 letter codes as quoted in an encyclopaedia, RKM code",
        PUBLISHED,
    ),
    Source(
        "KEMET ceramic ordering table",
        "KEMET ceramic open-mode data sheet, ordering table",
        PUBLISHED,
    ),
    Source("KEMET T491", "KEMET T491 tantalum chip data sheet, case sizes", PUBLISHED),
    Source("Lelon RGA", "Lelon RGA radial aluminium data sheet, ratings, order codes", PUBLISHED),
    Source(
        "Navy diode markings",
        "Navy electricity and electronics training handbook, Diode Markings",
        PUBLISHED,
    ),
    Source("Nichicon CD", "Nichicon CD aluminium SMD data sheet, marking", PUBLISHED),
    Source(
        "Panasonic FC and FN SMD",
        "Panasonic FC and FN SMD aluminium data sheets, marking",
        PUBLISHED,
    ),
    Source(
        "Panasonic part number system",
        "Panasonic radial aluminium, part number system",
        PUBLISHED,
    ),
    Source("Panasonic TEH", "Panasonic TEH tantalum chip data sheet, marking", PUBLISHED),
    Source("Rubycon ZL", "Rubycon ZL radial aluminium data sheet, part number", PUBLISHED),
    Source(
        "Samsung part-number table",
        "Samsung ceramic chip capacitors, part-number table",
        PUBLISHED,
    ),
    Source("Sanyo DP19649", "Sanyo DP19649 service manual, page 41 (2009)", PUBLISHED),
    Source(
        "TI striped capacitors",
        "TI, The Signal: PCB layout tricks, striped capacitors and more, 2012-12-10",
        PUBLISHED,
    ),
)

SOURCES = {source.key: source for source in _ALL}


def source(key: str) -> Source:
    """The source of that key; KeyError names the key when a table cites an unknown one.

    >>> source("common practice").how
    'common practice'
    """
    return SOURCES[key]
