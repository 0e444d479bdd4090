"""The words by which parts lists name a kind of capacitor, its build and its headings.

Abbreviations as found in service manuals of the 1970s to 1990s; common practice of the trade.
A word decides only where it stands alone: `NP0` is a ceramic, `NP` is a non-polar part.
How the words of a cell are taken apart stands in wording.py.
"""

from __future__ import annotations

import re

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
        elcap elco elcos elkos alum aluminium aluminum al-el ce ce04 ce04w ce02 ce02w ael
        elektrolyt elektrolytkondensator elektrolytisch becherelko ladeelko siebelko lytic
        elettrolitico elettrolitici elettrolit elettr electrolitico electroliticos electrolit
        electrolytique electrolytiques electrochimique electrochim chimique chimiques chim
        elektrolit elektrolityczny chem""",
    BIPOLAR: """np n.p n.p. bp b.p b.p. bipolar bi-polar non-polar nonpolar non-pol nonpol
        non-polarised nonpolarised non-polarized nonpolarized unpolarised unpolarized n-p
        tonfrequenz""",
    POLYMER: "polymer os-con solid-polymer",
    TANTALUM: """tantalum tantal tant tanta ta tan cs15 cs13 bead tantale tantalio tantalo tantaal
        tantalperle goutte""",
    FILM: """film mylar polyester polypropylene polypro polyprop polycarb polystyrene styrene styrol
        styroflex mkt mkp
        mks pet metallised metallized met.film mpp polycarbonate mica
        folie folien folienkondensator kunststoff mkc fkp fks fkc kp ks kt glimmer plastique
        plastico metallise polypropylene polystyrene poliestere polipropilene polistirolo
        pellicola poliester polipropileno poliestireno pelicula foliowy""",
    CERAMIC: """ceramic cerami cer disc disk cc ck mlcc monolithic mono x7r x5r y5v y5p z5u z5v
        np0 npo c0g cog barrier semicon
        cera ceram multilayer multi-layer ker keramik keramisch scheibe ceramique ceramiques disque
        ceramico ceramica ceramici disco""",
    PAPER: "paper oil-paper papier papierkondensator carta papel pio mp",
    MAINS: """mains line-filter rfi emi emc interference antiparasitic safety motor x-cap y-cap
        across-the-line motor-run motor-start
        netzfilter netfilter""",
}
KIND_OF = {word: kind for kind, words in _KIND_WORDS.items() for word in words.split()}

_FORM_WORDS = {
    "radial": "radial rad upright ce04 ce04w stehend radiale radiali radiaal staand",
    "axial": "axial ax ce02 ce02w liegend axiale assiale assiali axiaal liggend",
    "can": "smd smt v-chip",
    "snap-in": "snap-in snapin snap lug",
}
FORM_OF = {word: form for form, words in _FORM_WORDS.items() for word in words.split()}

# The build of a part only in a column of builds; elsewhere a stage of a television set.
BUILD_OR_STAGE = {
    **dict.fromkeys(("horizontal", "horiz", "horizontale", "orizzontale", "orizz"), "axial"),
    **dict.fromkeys(("vertical", "vert", "verticale"), "radial"),
}
_DEFLECTION = """deflection defl deflexion scan sweep flyback h.out v.out h.def v.def zeilen
    ablenkung balayage barrido riga yoke s-correction"""
DEFLECTION = {*BUILD_OR_STAGE, *_DEFLECTION.split()}
_BACK_UP = "memory backup puffer pufferung sauvegarde tampone respaldo geheugen"
BACK_UP = set(_BACK_UP.split())
MOTOR = ("motor-run", "motor-start")
_CROSSOVERS = ("crossover", "frequenzweiche", "weiche", "lautsprecherweiche", "scheidingsfilter")
_FOILS = ("glatt", "glatte", "rauh", "rau")  # bipolar electrolytics of crossovers
_EITHER_WAY = ("reversible", "symmetric", "symmetrical", "symmetrisch", "sym", "bi", "xover")
WITHOUT_POLARITY = ("ac", *_CROSSOVERS, *_FOILS, *_EITHER_WAY)
# A class of mains parts, or how many of a part.
COUNTS = {"x1", "x2", "x3"}
NOT_FITTED = "not-fitted"
# Alone in a cell; beside other words they may mean something else.
NOT_FITTED_ALONE = {
    "nc",
    "n.c",
    "nm",
    "n.m",
    "n.best",
    "n. best",
    "n/f",
    "n/m",
    "open",
    "omit",
    "omitted",
    "deleted",
}
DITTO_BEGINS = frozenset("\"“”„»«〃″'’,-dDiIsSaAwWcC")
DITTO = re.compile(
    r"(?:[\"“”„»«〃″]|''|’’|,,|-\s?[\"“”″]\s?-|ditto|dito|do|dto|idem|id|same|as above|wie oben"
    r"|comme ci-dessus|come sopra)\.?",
    re.IGNORECASE,
)

LOW_IMPEDANCE = "low impedance"
WET_SLUG = "wet slug"  # of tantalum: sulphuric acid in a metal case
WET_SLUG_WORDS = {"wet", "wet-slug", "slug", "silver-case", "nass", "nasse", "humide", "umido"}
WET_SLUG_WORDS |= {"humedo", "natte"}
# Words of which is asked whether a line has them, whatever else they say.
ASKED_FOR = {*DEFLECTION, *BACK_UP, *MOTOR, *WITHOUT_POLARITY, *WET_SLUG_WORDS, "poly", *COUNTS}
# What a list asks for beyond the ordinary; the new part must offer it too.
FEATURES = {
    "low leakage": "low-leakage low-leak ll",
    LOW_IMPEDANCE: """low-esr low-imp low-impedance low-z lz high-ripple smps schaltnetzteil
        switching switch-mode switchmode decoupage""",
    "low noise": "low-noise rauscharm",
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
    analogue mtg pitch spacing can box insulated isolated upright smps
    vcc vdd pwm controller boost gen generator bootstrap line schalttransistor
    memory backup deflection defl scan sweep flyback drive drv driving sync osc blanking
    horizontal horiz vertical vert
    kondensator kondensatoren netzteil siebung sieb lade koppel kopplung koppelung entkopplung
    eingang ausgang verstarker endstufe vorstufe links rechts kanal stufe gleichrichter regler
    mit fur ersatz becher isoliert isolierhulle aufrecht zeilen ablenkung puffer pufferung
    condensateur condensateurs cond alimentation alim filtrage liaison decouplage sortie entree
    ampli gauche droite voie avec pour de du des la le les balayage sauvegarde
    condensatore condensatori alimentazione uscita ingresso accoppiamento disaccoppiamento
    livellamento destra sinistra canale con per di del della riga tampone orizzontale orizz
    verticale horizontale
    condensador condensadores filtro fuente salida entrada acoplo desacoplo derecha izquierda
    para barrido respaldo
    condensator condensatoren voeding uitgang ingang afvlak ontkoppel kanaal met voor van geheugen
"""
SAYS_NOTHING = set(_SAYS_NOTHING.split())

NOT_IN_TITLES = {"see", "on", "under", "behind", "siehe", "voir", "vedi", "ver", "zie", "the"}
# Words that a title such as "ELECTROLYTIC CAPACITORS" may hold besides the kind.
TITLE_FILLERS = {"capacitor", "capacitors", "cap", "caps", "condenser", "condensers", "type"}
TITLE_FILLERS |= {"types", "section", "list", "fixed", "dipped", "moulded", "molded", "plastic"}
