"""The words of a parts list that say where a part works, in six languages.

Common practice of service manuals. What names a place says nothing of the part itself: it is taken
out of the cell, so that it is neither a kind, nor a build, nor a rating, nor an unknown word. What
is due in a place stands in places.py.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from repairlib.core.errors import RepairlibError, as_printed
from repairlib.core.typed.letters import without_accents
from repairlib.recap.places import PLACES

_RAIL = r"(?<![\w.,/])[+-]?\s?[0-9]{1,3}(?:[.,][0-9]{1,2})?\s?v(?:dc|olts?)?(?!\w)"
_AMPERES = r"(?:\s?[0-9]+(?:[.,][0-9]+)?\s?a(?!\w))?"
_OUT = r"(?:output|outp|out|o/p|ausgang|sortie|uscita|salida|uitgang)"
_FILTER = r"(?:filter\w*|smoothing|reservoir|cap\w*|rail|elko)"
_STAGE = (
    r"(?:output|out|driver?|driving|drv|drive|defl(?:ection|exion|\.)?|scan(?:ning)?|stage|amp\w*)"
)
_COUPLING = r"(?:coupling|coupl\.?|cap\w*|kopp(?:el|l)\w*)"
_HORIZONTAL = r"(?:horizontal|horiz\.?|hor\.|horizontale|orizzontale|orizz\.?)"
_VERTICAL = r"(?:vertical|vert\.?|verticale|vertikal|field|frame)"

# Place: its patterns, without accents. The first that matches at a word decides, so that
# "primary reservoir" and "decoupling" come before "reservoir" and "coupling". A word of motor
# starting (Anlauf, arranque, avviamento, démarrage) is left out: such parts are of the mains.
_PATTERNS = {
    "primary reservoir": r"""
        (?:primary|mains|hot)(?:[ -]side)?(?:[ /,-]{1,3}(?:reservoir|smoothing|bulk))(?:[ /]{1,3}
         filter)?|primary[ /-]filter
        |bulk[ -](?:reservoir|cap\w*|filter)|pfc|prim(?:a|ae)r(?:elko|sieb\w*)|netz(?:sieb)?elko
        |(?:filtrage|condensateur)[ -]primaire|filtro[ -]primario|primaire[ -]elco""",
    "primary side": r"""
        (?:primary|hot|live)[ -]side|primary|prim(?:a|ae)r(?:seite|seitig)?|cote[ -]primaire
        |primaire|primario|primair""",
    "start-up supply": r"""
        start-?\s?up(?:\s*/\s*vcc)?|vcc\s*/\s*start-?\s?up|kick[ -]?start(?:er)?
        |hilfs(?:spannung|versorgung)\w*|anlaufelko""",
    "PWM controller supply": r"""
        (?:pwm|control(?:ler)?)(?:[ -](?:controller|control|ic|chip))*[ -](?:supply|vcc|vdd|power)
        |pwm[ -](?:controller|ic)|(?:alimentation|alimentazione|alimentacion)[ -]pwm
        |pwm-?(?:versorgung|voeding)""",
    "base drive": r"""
        (?:base|gate)[ -]driv(?:e|er|ing)|speed-?\s?up|basis-?(?:ansteuerung|treiber)
        |commande[ -](?:de[ -])?base|pilotaggio[ -](?:di[ -])?base|excitacion[ -](?:de[ -])?base
        |basissturing""",
    "VRM/CPU": r"""
        vrm(?:[ /,-]{1,3}(?:cpu|gpu|output|input|out|in)\b)*|v[ -]?core
        |(?:cpu|gpu|processor|chipset)(?:[ /-](?:vrm|core|supply|power|vcore|vcc)\b)*
        |prozessor(?:versorgung)?|processeur|procesador|processore""",
    "vertical output coupling": rf"""
        {_VERTICAL}[ -]{_STAGE}(?:[ -]{_COUPLING})?|{_VERTICAL}[ -]{_COUPLING}
        |v\.(?:out|def\w*|drive)|bild(?:endstufe|ablenkung|kippstufe)|vertikal(?:endstufe|ablenkung)
        |(?:balayage|etage|salida|sortie|uscita|barrido|deflessione|deflexion|stadio|finale)[ -]
         (?:di[ -]|de[ -])?(?:verticale?|trame|quadro|cuadro)|rastereindtrap""",
    "flyback/damper": r"""
        (?:flyback|damper|retrace|eht)(?:[ /,-]{1,3}(?:flyback|damper|tuning|tune|cap\w*|stage
         |transformer)\b)*|fly-back|zeilentrafo|zeilenrucklauf\w*|retour[ -](?:de[ -])?ligne
        |smorzatore|terugslag\w*""",
    "horizontal output": rf"""
        {_HORIZONTAL}[ -]{_STAGE}(?:[ -]{_COUPLING})?|h\.(?:out|def\w*|drive)
        |line[ -](?:scan|driver?|deflection|output[ -](?:stage|transistor|transformer))
        |zeilen(?:endstufe|ablenkung|treiber|kippstufe)|horizontal(?:endstufe|ablenkung)
        |(?:balayage|etage|salida|sortie|uscita|barrido|deflessione|deflexion|stadio|finale)[ -]
         (?:di[ -]|de[ -])?(?:horizontale?|orizzontale|riga|lineas?|lignes?)
        |s[ -]correction|deflection|deflexion|ablenkung|balayage|barrido|lijneindtrap|afbuiging""",
    "switch-mode output": rf"""
        (?P<rail>{_RAIL})\s?-?(?:standby|stby|sb|{_OUT})(?!\w)(?:[ -]{_FILTER})?
        |{_OUT}(?=[ -]{_RAIL})
        |(?:secondary|sec\.)(?:[ -]{_OUT})?(?:[ -]{_FILTER})?
        |{_OUT}[ -](?:filter|smoothing|reservoir)|dc[ /-]dc
        |standby(?:[ -](?:supply|output))?|(?:buck|boost|flyback)[ -](?:converter|regulator)
        |sekund(?:a|ae)r(?:seite|seitig|elko|sieb\w*)?|ausgangs(?:elko|filter|sieb\w*)
        |filtr(?:age|o|aggio)[ -](?:(?:de|di)[ -])?(?:sortie|uscita|salida)
        |secondaire|secondario|secundario|secundair|uitgangs(?:filter|elco)""",
    "snubber": r"(?:rc[ -])?snubber(?:netzwerk)?|snub|loschglied|loeschglied",
    "timing/tuned": r"""
        (?:timing|tuned|tuning|oscillator|osc\b\.?)(?:[ /,-]{1,3}(?:tuned|tuning|oscillator|timing
         |circuit)\b)*|time[ -]constant|soft[ -]start|ramp|one-shot|multivibrator|pll
        |(?:feedback|loop)(?:[ -](?:loop|compensation|filter))*|compensation
        |zeit(?:glied|konstante)|oszillator|schwingkreis|oscillateur|temporisation
        |oscillatore|temporizza\w*|oscilador|temporiza\w*|tijdconstante|afstemming""",
    "memory back-up": r"""
        (?:memory|ram|clock|rtc|data)[ -](?:backup|retention|hold-?up|keep)|backup
        |sauvegarde(?:[ -]memoire)?|tampone(?:[ -]memoria)?|respaldo(?:[ -](?:de[ -])?memoria)?
        |geheugen(?:steun)?|speichererhalt\w*|datenerhalt\w*""",
    "reset": r"(?:power-?[ ]?on[ -])?reset|rucksetz\w*|ruecksetz\w*|reinicio|azzeramento",
    "speaker coupling": r"""
        (?:(?:loud)?speaker|spkr|output)[ -](?:coupling|coupl\.?)|(?:loud)?speaker[ -](?:output|out)
        |lautsprecher(?:koppel\w*|ausgang)|aus(?:gangs)?koppel\w*
        |(?:sortie|liaison)[ -](?:hp|haut-parleurs?)|uscita[ -]altoparlanti?
        |salida[ -](?:de[ -])?altavo(?:z|ces)|luidspreker[ -]?uitgang
        |liaison[ -](?:de[ -])?(?:sortie|haut-parleur)
        |accoppiamento[ -](?:di[ -]|d')?(?:uscita|altoparlante)
        |aco(?:plo|plamiento)[ -](?:de[ -])?(?:salida|altavoz)|uitgangskoppel\w*
        |luidspreker-?koppel\w*""",
    "bypass": r"""
        (?:(?:cathode|emitter|source|screen|rail|supply)[ -])?(?:by-?pass|de-?coupl(?:ing|e|er))
        |entkopp(?:el|l)\w*|abblock\w*|decouplage|disaccoppiamento
        |desacoplo|desacoplamiento|ontkoppel\w*""",
    "audio coupling": r"""
        (?:(?:audio|signal|input|grid|interstage|stage)[ -])?(?:coupling|coupl\.)
        |dc[ -]block(?:ing)?|(?:ein)?koppel(?:ung|elko|kondensator|condensator|elco)?|kopplung
        |koppeling|liaison(?:[ -]audio)?|accoppiamento|acoplo|acoplamiento|couplage""",
    "reservoir": r"""
        reservoir|smoothing|(?:supply|psu|rectifier|rail)[ -]filter
        |(?:lade|sieb)(?:elko|kondensator|ung)?|filtrage|filtraggio|filtrado|livellamento
        |spianamento|aplanamiento|afvlak\w*
        |filtro[ -](?:(?:de|di)[ -])?(?:alimentacion|alimentazione|fuente)""",
    # A voltage that is on the board, without a place.
    "": rf"(?P<on_board>(?=\+){_RAIL}|{_RAIL}[ ](?:rail|supply|line))",
}

_PLACES = tuple(_PATTERNS)
_ANY_PLACE = re.compile(
    r"(?<!\w)(?:"
    + "|".join(f"(?P<p{at}>{pattern})" for at, pattern in enumerate(_PATTERNS.values()))
    + rf")(?!\w)(?:[ ](?P<rail_after>{_RAIL}){_AMPERES})?",
    re.VERBOSE,
)
# The first voltage behind a capacitance, which is the rating.
_RATED = re.compile(
    r"[0-9]\s?(?:(?:µf|uf|mfd|nf|pf|mf|f|µ|u|n|p)(?![a-z])[^0-9]*?|/\s?)"
    r"(?P<rated>[0-9.,]+\s?(?:wv|v)?(?:dc|ac|olts?)?)"
)
_HAS_A_WORD = re.compile(r"[^\W\d_]{3}|[hv]\.|dc|\+").search


class Named(NamedTuple):
    """What is left of a text, the `places` that it named, and the `rails` [V] named with them."""

    text: str
    places: tuple[str, ...] = ()
    rails: tuple[float, ...] = ()


def take_places(text: str) -> Named:
    """The places that a cell names, and the cell without them; `text` is tidy (tokens.tidy).

    A compound that ends in -elko still says that it is an electrolytic.

    >>> take_places("470µF 16V elect 12V output")
    Named(text='470µF 16V elect  ', places=('switch-mode output',), rails=(12.0,))
    >>> take_places("22µF Siebelko").text, take_places("10n decoupling").places
    ('22µF  elko ', ('bypass',))
    """
    plain = without_accents(text)
    if len(plain) != len(text):  # a letter that becomes two
        plain = text.lower()
    if len(plain) != len(text) or not _HAS_A_WORD(plain):
        return Named(text)
    left, places, rails, at = [], [], [], 0
    rating = _RATED.search(plain)
    if rating:
        start, end = rating.span("rated")
        plain = plain[:start] + "\0" * (end - start) + plain[end:]
    for found in _ANY_PLACE.finditer(plain):
        place, words = next(
            (name, found[f"p{number}"])
            for number, name in enumerate(_PLACES)
            if found[f"p{number}"]
        )
        elko = words.endswith(("elko", "elco"))
        left += [text[at : found.start()], " elko " if elko else " "]
        at = found.end()
        places.append(place)
        named = (found["rail"], found["rail_after"], found["on_board"])
        rails += [_volts(rail) for rail in named if rail]
    if not at:
        return Named(text)
    names = tuple(dict.fromkeys(filter(None, places)))
    return Named("".join(left) + text[at:], names, tuple(rails))


def _volts(rail: str) -> float:
    digits = re.search(r"[0-9]+(?:[.,][0-9]+)?", rail)
    return float(digits[0].replace(",", ".")) if digits else 0.0


def read_place(said: object) -> str:
    """The one place that some words of a list name; RepairlibError when it is none or several.

    >>> read_place("Ladeelko"), read_place("speaker output")
    ('reservoir', 'speaker coupling')
    """
    places = take_places(as_printed(said)).places
    if len(places) == 1:
        return places[0]
    wrong = "names several places: " + ", ".join(places) if places else "not a known place"
    raise RepairlibError(said, wrong, ", ".join(PLACES))
