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
    Source("alloy paste maker", "A solder maker's page, Solder Paste: Alloys", PUBLISHED),
    Source("alumina thesis", "A thesis, table of alumina properties", PUBLISHED),
    Source(
        "ANSI/ESD S20.20-2007",
        "ANSI/ESD S20.20-2007 personnel table, as printed by a floor maker and in a server manual",
        PUBLISHED,
    ),
    Source(
        "ANSI/ESD S20.20-2021",
        "ANSI/ESD S20.20-2021, scope, abstract in a standards store",
        PUBLISHED,
    ),
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
        "Bi-Sn diagram note", "A note on the Bi-Sn phase diagram, redrawn from Hansen", PUBLISHED
    ),
    Source(
        "Bi-Sn solubility, 2010s",
        "Abstract on the Bi-Sn, Bi-Zn and Bi-Sn-Zn systems, solubility of Bi in Sn",
        PUBLISHED,
    ),
    Source("bismuth lexicon", "A solder lexicon, Bismuth", PUBLISHED),
    Source("braid article", "EPD&T, Solder wick or braid, 2011-08-03", PUBLISHED),
    Source(
        "ceramic ageing, quoted",
        "A part-library vendor's article on ageing of ceramic capacitors",
        PUBLISHED,
    ),
    Source(
        "Charging by Walking",
        "Magazine article Charging by Walking",
        PUBLISHED,
    ),
    Source("chip solder profiles", "A chip maker's note, Recommended thermal profiles", PUBLISHED),
    Source("Coilcraft RF inductor colours", "Coilcraft RF inductors, colour coding", PUBLISHED),
    Source("common practice", "Common practice of the trade, no document", COMMON_PRACTICE),
    Source(
        "component removal handbook",
        "An open electronics manufacturing handbook, 2.2 and 2.3",
        PUBLISHED,
    ),
    Source(
        "Cornell Dubilier ESRD", "Cornell Dubilier type ESRD polymer chip data sheet", PUBLISHED
    ),
    Source(
        "Cosel lifetime note", "Cosel technical information, lifetime at varying ambient", PUBLISHED
    ),
    Source("craft solder table", "A craft page, Melting Points of Solders", PUBLISHED),
    Source("CTC coils", "CTC coils specification, table 1", PUBLISHED),
    Source(
        "dry-pack FAQ", "A chip maker's questions and answers on dry-pack shelf life", PUBLISHED
    ),
    Source("EIA-198", "EIA-198 codes as printed in TI SLAA701B, Table 1-16", PUBLISHED),
    Source(
        "EIA-198, quoted",
        "EIA-198 tables as quoted in an encyclopaedia, Ceramic capacitor",
        PUBLISHED,
    ),
    Source("EIA-476", "EIA-476, date code marking, scope in a standards catalogue", PUBLISHED),
    Source("ELNA technical note", "ELNA technical note, CAT 2023/2024E, section 2", PUBLISHED),
    Source(
        "EN 61340-5-1:2007",
        "EN 61340-5-1:2007, work surfaces, as printed on a maker's page",
        PUBLISHED,
    ),
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
    Source("encyclopaedia, FR-4", "Encyclopaedia article FR-4", PUBLISHED),
    Source("encyclopaedia, Fuse", "Encyclopaedia article Fuse, characteristic letters", PUBLISHED),
    Source("encyclopaedia, Solder alloys", "Encyclopaedia article Solder alloys", PUBLISHED),
    Source("encyclopaedia, Zero-ohm link", "Encyclopaedia article Zero-ohm link", PUBLISHED),
    Source(
        "ESD Association forum",
        "A reply in the ESD Association's forum on S20.20",
        PUBLISHED,
    ),
    Source(
        "ESD bench practice",
        "A maker's page, three main principles of ESD work",
        PUBLISHED,
    ),
    Source(
        "ESD classification levels",
        "Page on ESD sensitivity classification levels",
        PUBLISHED,
    ),
    Source(
        "ESD definitions",
        "A plastics maker's page, ESD and anti-static definitions",
        PUBLISHED,
    ),
    Source(
        "ESD qualification",
        "Note on ESD semiconductor qualification, human body model",
        PUBLISHED,
    ),
    Source(
        "ESD S20.20 garment page",
        "S20.20 as quoted on a page on ESD garments",
        PUBLISHED,
    ),
    Source(
        "ESD STM2.1, quoted",
        "ESD STM2.1 on garments, as quoted on a maker's page",
        PUBLISHED,
    ),
    Source(
        "ESD TR20.20-2008, quoted",
        "ESD TR20.20-2008, as quoted in an ESD question and answer",
        PUBLISHED,
    ),
    Source(
        "ESD voltage levels",
        "Server service guide, typical electrostatic voltage levels",
        PUBLISHED,
    ),
    Source("F93", "F93 resin-moulded tantalum chip data sheet", PUBLISHED),
    Source("film dielectric tables", "WINDAY and CeeMulti film dielectric tables", PUBLISHED),
    Source("FR-4 data sheet", "A laminate maker's FR-4 data sheet", PUBLISHED),
    Source("FR-4 Tg page", "A board maker's page, What is Tg for FR4", PUBLISHED),
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
    Source(
        "hand solder tip note", "A solder maker's note, Hand Soldering Tip Temperatures", PUBLISHED
    ),
    Source(
        "Heat and Mass Transfer, ch. 4",
        "Heat and Mass Transfer: Fundamentals and Applications, chapter 4",
        PUBLISHED,
    ),
    Source("heat transfer textbook", "A Heat Transfer Textbook, extract", PUBLISHED),
    Source("Hong Kong Resistors", "Hong Kong Resistors, metal film data sheet 2.2", PUBLISHED),
    Source(
        "hot-air model",
        "A teaching model with figures of its own, not a measured tool",
        FROM_MEMORY,
    ),
    Source("HSE SIM 03/2002/26", "HSE SIM 03/2002/26, rosin-based solder flux fume", PUBLISHED),
    Source(
        "humidity indicator card",
        "An indicator card maker's page, spots at 5, 10 and 60 %",
        PUBLISHED,
    ),
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
        "IEC 60204-1, quoted",
        "IEC 60204-1 6.2.4, as given on a machinery-safety page",
        PUBLISHED,
    ),
    Source(
        "IEC 60335-1 8.1.4, quoted",
        "IEC 60335-1 8.1.4, as quoted on discussion pages",
        PUBLISHED,
    ),
    Source(
        "IEC 60335-1 unplugging, quoted",
        "IEC 60335-1, discharge after unplugging, as quoted in a power-supply newsletter, Q1 2020",
        PUBLISHED,
    ),
    Source(
        "IEC 60384-4, quoted",
        "Pre-conditioning after IEC 60384-4, as quoted from a TDK databook",
        PUBLISHED,
    ),
    Source(
        "IEC 60584", "IEC 60584, thermocouple type K, class 2: ±2.5 °C up to 333 °C", FROM_MEMORY
    ),
    Source(
        "IEC 60950-1, quoted",
        "IEC 60950-1 2.1.1.7 and 2.4, as quoted in a product-safety list archive; withdrawn",
        PUBLISHED,
    ),
    Source(
        "IEC 61010-1, quoted",
        "IEC 61010-1 6.10.3, as quoted in a product-safety list archive",
        PUBLISHED,
    ),
    Source(
        "IEC 61340-4-3, quoted",
        "IEC 61340-4-3 on footwear, as quoted on a maker's page",
        PUBLISHED,
    ),
    Source(
        "IEC 61340-5-1:2016",
        "IEC 61340-5-1:2016, scope, abstract",
        PUBLISHED,
    ),
    Source(
        "IEC 62368-1",
        "IEC 62368-1, energy source clauses and table 5, in a stored national text",
        PUBLISHED,
    ),
    Source(
        "IEC 62368-1 test report",
        "IEC 62368-1 test report, tables 5.5.2.2 and 5.6.6.2, in a product safety booklet",
        PUBLISHED,
    ),
    Source(
        "IEC wrist strap, quoted",
        "IEC limits of a wrist strap on a seated person, as quoted on a maker's page",
        PUBLISHED,
    ),
    Source(
        "ILAC-G8:09/2019",
        "ILAC-G8:09/2019 on decision rules, pages 8 to 10",
        PUBLISHED,
    ),
    Source("IPA safety bulletin", "A maker's Technical Data and Safety Bulletin, IPA", PUBLISHED),
    Source("IPC-A-610, 2003", "IPC-A-610 of 2003 as quoted on a mailing list", PUBLISHED),
    Source("IPC-A-610F", "IPC-A-610F, 7.3.5.1 and Table 7-4, excerpts", PUBLISHED),
    Source("IPC-A-610G", "IPC-A-610G, sheets for class 2 and class 3", PUBLISHED),
    Source(
        "J-STD-001, quoted",
        "J-STD-001 cleanliness limit as quoted in board makers' guides",
        PUBLISHED,
    ),
    Source("J-STD-001D", "J-STD-001D, 3.3, in the slides of a webinar", PUBLISHED),
    Source("J-STD-004B article", "A trade article on J-STD-004B, flux codes", PUBLISHED),
    Source(
        "J-STD-006C draft", "J-STD-006C, draft, 1.2.1, and the notes of an alloy table", PUBLISHED
    ),
    Source("J-STD-020 Sn-Pb peaks", "J-STD-020D.1 and E, table 4-1, not looked up", FROM_MEMORY),
    Source("J-STD-020C tables", "Data sheet Solder profile, tables of J-STD-020C", PUBLISHED),
    Source(
        "J-STD-020D table 5-2",
        "Reflow Soldering Profile, per J-STD-020D, Table 5-2, and an NTC data sheet, page 9",
        PUBLISHED,
    ),
    Source(
        "J-STD-020D.1 profile",
        "An inductor maker's document 755, typical RoHS profile (J-STD-020D.1)",
        PUBLISHED,
    ),
    Source(
        "J-STD-033 bake conditions",
        "IPC/JEDEC J-STD-033 Bake Conditions, table of bake times",
        PUBLISHED,
    ),
    Source(
        "J-STD-033, not looked up",
        "J-STD-033B.1, table 4-1 and clock rules, not looked up",
        FROM_MEMORY,
    ),
    Source("J-STD-033B.1", "J-STD-033B.1 extracts, interrupted bake", PUBLISHED),
    Source("JCGM 106:2012", "JCGM 106:2012, guard bands, not looked up", FROM_MEMORY),
    Source(
        "JEP155 and JEP157, quoted",
        "JEDEC JEP155 and JEP157, as quoted in data-sheet footnotes",
        PUBLISHED,
    ),
    Source(
        "Jianghai, quoted",
        "Jianghai Europe lifetime paper (2010, 2018), as quoted in a public note",
        PUBLISHED,
    ),
    Source(
        "joint model",
        "A model of one joint on an axis, with figures of its own, not a measurement",
        FROM_MEMORY,
    ),
    Source(
        "JS-001-2011 note",
        "An ESD maker's note on JS-001-2011",
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
    Source(
        "LBNL electrical hazards",
        "Berkeley Lab, Hazardous: what does it mean, tables 2.2.13, 2.3.3, 2.3.5",
        PUBLISHED,
    ),
    Source("lead in Sn-Bi", "Abstract on lead contamination of Sn-Bi solder", PUBLISHED),
    Source("lead, UK limit", "A UK labour research extract, lead in air", PUBLISHED),
    Source(
        "lead, worker information",
        "Wyoming Department of Health, lead, Information for workers",
        PUBLISHED,
    ),
    Source("Lelon RGA", "Lelon RGA radial aluminium data sheet", PUBLISHED),
    Source(
        "limits as typed",
        "Limits as you typed them: check them against the paste's data sheet",
        FROM_MEMORY,
    ),
    Source(
        "low temperature solder paper",
        "57Bi-42Sn-1Ag: A Lead Free, Low Temperature Solder",
        PUBLISHED,
    ),
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
        "moisture level table",
        "A power-supply maker's answers on MSL; encyclopaedia, Moisture sensitivity level",
        PUBLISHED,
    ),
    Source("Navy 14186", "US Navy training text 14186, page 3-16", PUBLISHED),
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
    Source("NIOSH isopropyl alcohol", "NIOSH Pocket Guide, Isopropyl alcohol", PUBLISHED),
    Source(
        "Nippon Chemi-Con APSA",
        "Nippon Chemi-Con APSA conductive polymer radial data sheet",
        PUBLISHED,
    ),
    Source("NIST Bi-Cu-Pb", "NIST, Bi-Cu-Pb System", PUBLISHED),
    Source("NIST Bi-Pb-Sn", "NIST, Bi-Pb-Sn System", PUBLISHED),
    Source("NIST Pb-Sn", "NIST, Pb-Sn System", PUBLISHED),
    Source("NIST Sn-Ag-Cu", "NIST, Ternary Eutectic of Sn-Ag-Cu Solder Alloys, 2000", PUBLISHED),
    Source(
        "NIST Sn-Ag-Cu, 2004",
        "NIST, Difficulties in Determining Eutectic Compositions, 2004",
        PUBLISHED,
    ),
    Source(
        "Oscilloscope service manual",
        "An oscilloscope service manual, table 6-1",
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
    Source("Princeton MAE 324", "Princeton MAE 324 glossary, Eutectic", PUBLISHED),
    Source("PSS-01-738, quoted", "PSS-01-738, 3.5.7, as quoted in a list message", PUBLISHED),
    Source(
        "reflex hazard, quoted",
        "A page quoting a capacitor-safety table",
        PUBLISHED,
    ),
    Source("removal at a rework house", "A rework house's page, Part removal", PUBLISHED),
    Source("rework trade advice", "A trade page, Rework and repair", PUBLISHED),
    Source(
        "RF module data sheet",
        "An RF module data sheet, page 14, storage, bake and rework",
        PUBLISHED,
    ),
    Source("RFE TN", "RFE TN axial non-polar aluminium data sheet", PUBLISHED),
    Source("RND chip resistor", "RND chip resistor data sheet 2016-03, 4.0", PUBLISHED),
    Source(
        "Rubycon technical notes",
        "Rubycon technical notes on aluminium electrolytics, section 5-1",
        PUBLISHED,
    ),
    Source("Rubycon ZL", "Rubycon ZL radial aluminium data sheet", PUBLISHED),
    Source("SAC305 sheet", "A solder maker's SAC305 data sheet", PUBLISHED),
    Source(
        "Samsung part-number table",
        "Samsung ceramic chip capacitors, part-number table",
        PUBLISHED,
    ),
    Source("Sanyo DP19649", "Sanyo DP19649 service manual, page 41 (2009)", PUBLISHED),
    Source("SGS decision rules", "SGS page on decision rules", PUBLISHED),
    Source("Sn-Ag diagram", "A thermodynamics firm's page, Ag-Sn", PUBLISHED),
    Source("Sn-Ag-Cu patent", "A patent record on Sn-Ag-Cu solder", PUBLISHED),
    Source(
        "Sn-Bi melting, 1995", "Abstract, Depressing the melting point of solders, 1995", PUBLISHED
    ),
    Source("solder alloys table", "Web reference table Solder alloys, makers' data", PUBLISHED),
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
        "three reflow passes",
        "A chip maker's Soldering Profile (J-STD-020): three passes in all",
        PUBLISHED,
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
        "TV safety clause, quoted",
        "A television service manual, safety page",
        PUBLISHED,
    ),
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
