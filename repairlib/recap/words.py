"""The words by which parts lists name a kind of capacitor, its build and its headings.

Abbreviations as found in service manuals of the 1970s to 1990s; common practice of the trade.
A word decides only where it stands alone: `NP0` is a ceramic, `NP` is a non-polar part.
How the words of a cell are taken apart stands in wording.py.
"""

from __future__ import annotations

ALUMINIUM = "aluminium electrolytic"
BIPOLAR = "bipolar electrolytic"
POLYMER = "polymer electrolytic"
TANTALUM = "tantalum"
FILM = "film"
CERAMIC = "ceramic"
PAPER = "paper"
MAINS = "mains suppression"
KINDS = (ALUMINIUM, BIPOLAR, POLYMER, TANTALUM, FILM, CERAMIC, PAPER, MAINS)

_KIND_WORDS = {
    ALUMINIUM: """electrolytic electrolytics elect elec electro elyt elyte elko el ecap e-cap
        elcap elco elcos elkos alum aluminium aluminum al-el al ce ce04 ce04w ce02 ce02w ael
        elektrolyt elektrolytkondensator elettrolitico electrolitico electrolytique chimique""",
    BIPOLAR: """np n.p n.p. bp b.p b.p. bipolar bi-polar non-polar nonpolar non-pol nonpol
        non-polarised nonpolarised non-polarized nonpolarized unpolarised unpolarized n-p""",
    POLYMER: "polymer os-con solid-polymer",
    TANTALUM: "tantalum tantal tant tanta ta tan cs15 cs13 bead",
    FILM: """film mylar polyester polypropylene polypro polystyrene styrol styroflex mkt mkp
        mks pet metallised metallized met.film mpp polycarbonate mica""",
    CERAMIC: """ceramic cerami cer disc disk cc ck mlcc monolithic mono x7r x5r y5v y5p z5u z5v
        np0 npo c0g cog barrier semicon""",
    PAPER: "paper oil-paper papier pio mp",
    MAINS: """mains line-filter rfi emi emc interference antiparasitic safety motor x-cap y-cap
        across-the-line motor-run motor-start""",
}
KIND_OF = {word: kind for kind, words in _KIND_WORDS.items() for word in words.split()}

_FORM_WORDS = {
    "radial": "radial rad upright vertical vert ce04 ce04w",
    "axial": "axial ax horizontal horiz ce02 ce02w",
    "can": "smd smt v-chip",
    "snap-in": "snap-in snapin snap lug",
}
FORM_OF = {word: form for form, words in _FORM_WORDS.items() for word in words.split()}

LOW_IMPEDANCE = "low impedance"
# What a list asks for beyond the ordinary; the new part must offer it too.
FEATURES = {
    "low leakage": "low-leakage low-leak ll",
    LOW_IMPEDANCE: """low-esr low-imp low-impedance low-z lz smps switching switch-mode
        switchmode high-ripple""",
    "low noise": "low-noise",
    "audio grade": "audio",
}
FEATURE_OF = {word: feature for feature, words in FEATURES.items() for word in words.split()}

# Words that say nothing of what is inside, nor of how it may be used: the shape, the place, the
# work it does. A description with any other unknown word waits for a person.
_SAYS_NOTHING = """
    capacitor capacitors cap caps condenser condensers kondensator fixed general purpose gp
    standard std type types typ dipped moulded molded miniature mini subminiature small large
    sleeve sleeved sealed tape taped ammo bulk lead leads leaded wire terminal terminals pin
    pins chassis pcb board plus minus positive negative polar polarised polarized case size
    dia tolerance tol temp temperature deg max min working voltage dc vdc wv each pcs pc qty
    of the and or on in at to for from with as by see new old original same again reservoir
    smoothing filter filtering decoupling decouple bypass coupling couple supply power rail
    regulator regulators rectifier bridge output input out audio signal amp amplifier preamp
    driver speaker headphone headphones lamp panel main front rear left right channel voice
    tone volume timing reset clock oscillator bass treble display logic digital analog
    analogue
"""
SAYS_NOTHING = set(_SAYS_NOTHING.split())

# Words that a title such as "ELECTROLYTIC CAPACITORS" may hold besides the kind.
TITLE_FILLERS = {"capacitor", "capacitors", "cap", "caps", "condenser", "condensers", "type"}
TITLE_FILLERS |= {"types", "section", "list", "fixed", "dipped", "moulded", "molded", "plastic"}
