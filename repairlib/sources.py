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
    Source(
        "BC Components 051/053",
        "BC Components 051/053 PEC-PW aluminium data sheet, 2000-01-18",
        PUBLISHED,
    ),
    Source("Beckhoff PS9011", "Beckhoff PS9011-2420-0001 manual, lifetime expectancy", PUBLISHED),
    Source(
        "ceramic ageing, quoted",
        "A part-library vendor's article on ageing of ceramic capacitors",
        PUBLISHED,
    ),
    Source("Coilcraft RF inductor colours", "Coilcraft RF inductors, colour coding", PUBLISHED),
    Source("common practice", "Common practice of the trade, no document", COMMON_PRACTICE),
    Source(
        "Cornell Dubilier ESRD", "Cornell Dubilier type ESRD polymer chip data sheet", PUBLISHED
    ),
    Source(
        "Cosel lifetime note", "Cosel technical information, lifetime at varying ambient", PUBLISHED
    ),
    Source("CTC coils", "CTC coils specification, table 1", PUBLISHED),
    Source("EIA-198", "EIA-198 codes as printed in TI SLAA701B, Table 1-16", PUBLISHED),
    Source(
        "EIA-198, quoted",
        "EIA-198 tables as quoted in an encyclopaedia, Ceramic capacitor",
        PUBLISHED,
    ),
    Source("EIA-476", "EIA-476, date code marking, scope in a standards catalogue", PUBLISHED),
    Source("ELNA technical note", "ELNA technical note, CAT 2023/2024E, section 2", PUBLISHED),
    Source(
        "encyclopaedia, E series",
        "Encyclopaedia article E series of preferred numbers (IEC 60063)",
        PUBLISHED,
    ),
    Source(
        "encyclopaedia, Electrolytic capacitor",
        "Encyclopaedia article Electrolytic capacitor",
        PUBLISHED,
    ),
    Source("encyclopaedia, Fuse", "Encyclopaedia article Fuse, characteristic letters", PUBLISHED),
    Source("encyclopaedia, Zero-ohm link", "Encyclopaedia article Zero-ohm link", PUBLISHED),
    Source("F93", "F93 resin-moulded tantalum chip data sheet", PUBLISHED),
    Source("film dielectric tables", "WINDAY and CeeMulti film dielectric tables", PUBLISHED),
    Source("from memory", "From memory, not looked up: verify before relying on it", FROM_MEMORY),
    Source(
        "GE 23A", "GE capacitor type 23A, application information, tables AP1 to AP3", PUBLISHED
    ),
    Source(
        "GOST IEC 60127-1-2010",
        "GOST IEC 60127-1-2010, Table A.1, colour bands of miniature fuses",
        PUBLISHED,
    ),
    Source(
        "GOST R IEC 60127-2-2010",
        "GOST R IEC 60127-2-2010, clause 6, marking of cartridge fuses",
        PUBLISHED,
    ),
    Source("Hong Kong Resistors", "Hong Kong Resistors, metal film data sheet 2.2", PUBLISHED),
    Source(
        "IEC 60062:2005",
        "EN 60062:2005 colour table as printed in an encyclopaedia, Electronic color code",
        PUBLISHED,
    ),
    Source(
        "IEC 60062:2016",
        "IEC 60062:2016 letter codes as quoted in an encyclopaedia, RKM code",
        PUBLISHED,
    ),
    Source(
        "IEC 60384-4, quoted",
        "Pre-conditioning after IEC 60384-4, as quoted from a TDK databook",
        PUBLISHED,
    ),
    Source(
        "IEC 62368-1 test report",
        "IEC 62368-1 test report, table 5.6.6.2, in a product safety booklet",
        PUBLISHED,
    ),
    Source(
        "ILAC-G8:09/2019",
        "ILAC-G8:09/2019 on decision rules, pages 8 to 10",
        PUBLISHED,
    ),
    Source("JCGM 106:2012", "JCGM 106:2012, guard bands, not looked up", FROM_MEMORY),
    Source(
        "Jianghai, quoted",
        "Jianghai Europe lifetime paper (2010, 2018), as quoted in a public note",
        PUBLISHED,
    ),
    Source(
        "KEMET ceramic ordering table",
        "KEMET ceramic open-mode data sheet, ordering table",
        PUBLISHED,
    ),
    Source(
        "KEMET derating 2015", "KEMET engineering question and answer, tantalum, 2015", PUBLISHED
    ),
    Source("KEMET ESL", "KEMET ESL radial aluminium data sheet, 105 °C", PUBLISHED),
    Source("KEMET T491", "KEMET T491 tantalum chip data sheet, case sizes", PUBLISHED),
    Source(
        "KEMET tantalum derating",
        "KEMET engineering question and answer on tantalum derating, 2015",
        PUBLISHED,
    ),
    Source("Lelon RGA", "Lelon RGA radial aluminium data sheet", PUBLISHED),
    Source("LZ chip", "LZ low-impedance aluminium chip series, maker's product page", PUBLISHED),
    Source(
        "Meter accuracy and precision",
        "A multimeter maker's article on accuracy and precision",
        PUBLISHED,
    ),
    Source("Meter accuracy KA-03135", "A multimeter maker's article KA-03135", PUBLISHED),
    Source(
        "Meter error and accuracy",
        "An instrument maker's pages on multimeter error and accuracy",
        PUBLISHED,
    ),
    Source(
        "Navy diode markings",
        "Navy electricity and electronics training handbook, Diode Markings",
        PUBLISHED,
    ),
    Source(
        "NIC chip marking guide", "NIC Components NRC part marking guide, 1999 (EIA-575)", PUBLISHED
    ),
    Source("Nichicon CD", "Nichicon CD aluminium SMD data sheet, marking", PUBLISHED),
    Source("Nichicon ET", "Nichicon ET bipolar aluminium data sheet", PUBLISHED),
    Source(
        "Nippon Chemi-Con APSA",
        "Nippon Chemi-Con APSA conductive polymer radial data sheet",
        PUBLISHED,
    ),
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
    Source("RFE TN", "RFE TN axial non-polar aluminium data sheet", PUBLISHED),
    Source("RND chip resistor", "RND chip resistor data sheet 2016-03, 4.0", PUBLISHED),
    Source(
        "Rubycon technical notes",
        "Rubycon technical notes on aluminium electrolytics, section 5-1",
        PUBLISHED,
    ),
    Source("Rubycon ZL", "Rubycon ZL radial aluminium data sheet", PUBLISHED),
    Source(
        "Samsung part-number table",
        "Samsung ceramic chip capacitors, part-number table",
        PUBLISHED,
    ),
    Source("Sanyo DP19649", "Sanyo DP19649 service manual, page 41 (2009)", PUBLISHED),
    Source("SGS decision rules", "SGS page on decision rules", PUBLISHED),
    Source("State of the Art", "State of the Art chip resistors, ordering page", PUBLISHED),
    Source(
        "tantalum polymer chip",
        "Chip tantalum polymer, low ESR, 2.5 to 10 V, data sheet",
        PUBLISHED,
    ),
    Source("TDK life FAQ", "TDK product FAQ, life of power supplies", PUBLISHED),
    Source(
        "Teapo SN", "Teapo SN non-polar aluminium data sheet, Engineering Bulletin 2032", PUBLISHED
    ),
    Source(
        "TI converter data sheet",
        "A TI converter data sheet, output-capacitor section, in a public repository",
        PUBLISHED,
    ),
    Source(
        "TI striped capacitors",
        "TI, The Signal: PCB layout tricks, striped capacitors and more, 2012-12-10",
        PUBLISHED,
    ),
    Source("Token inductor colour code", "Token, Inductor Color Code", PUBLISHED),
    Source(
        "TRU Components", "TRU Components chip resistor data sheet V1_0717, section 6", PUBLISHED
    ),
    Source("TUV decision rules", "TÜV Rheinland page on decision rules, 2022", PUBLISHED),
    Source(
        "UF Capacitors bias note",
        "UF Capacitors note on ceramic capacitors under dc bias",
        PUBLISHED,
    ),
    Source(
        "Vishay 056/057",
        "Vishay BCcomponents 056/057 PSM-SI, document 28340, 2005-11-07",
        PUBLISHED,
    ),
    Source(
        "Vishay colour card",
        "Vishay Draloric/Beyschlag Color Code Card, after IEC 60062",
        PUBLISHED,
    ),
    Source("Vishay WSR", "Vishay WSR data sheet, part-number table", PUBLISHED),
    Source(
        "WFxxR approval sheet", "WFxxR chip resistor approval sheet V03, 2017, page 4", PUBLISHED
    ),
    Source(
        "Yageo chip marking",
        "Yageo Chip Resistor Surface Mount, Marking, June 2011 V.2, Table 1",
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
