"""Words about an empty place that name no net: marks printed round the pads, and plain words."""

from __future__ import annotations

import re

# Mark: its words. What a mark shows on a board is decided in the room polarity.
_MARKS = {
    "plus": (
        r"(?<!\w)\+(?=\s*(?:sign|mark|at|on|by|beside|printed|near|,|;|$))",
        r"\bplus\b|\bpositive (?:mark|sign)",
    ),
    "bar": (
        r"\b(?:bar|stripe|band|cathode|kathode|triangle|arrow|chevron|diode symbol|bevel)\b",
        r"\b(?:polarity (?:mark|sign)|K mark|letter K|(?:thick|white) line)\b",
        r"\bline (?:at|on) (?:one|an) (?:end|side)\b",
    ),
    "half-filled circle": (
        r"\b(?:half|shaded|hatched|filled|dark)\b[^,;]{0,24}\b(?:circle|half|ring|can|round)",
    ),
    "round outline": (
        r"\b(?:round|circular|circle|(?:silk|printed|white) ring|(?:alumini?um|metal|smd) can)\b",
        r"\bcan (?=\d|outline|footprint|pads|of)",
    ),
    "no polarity": (
        r"\b(?:no|without)(?: any)? (?:polarity|mark\w*|plus|bar|stripe|sign)\b|\bunmarked\b",
    ),
    "flat pads": (
        r"\b(?:flat|clean|shiny|smooth|untouched|virgin|even|gold)\b[^,;]{0,20}\b(?:pads?|tin|lands?)\b",
        r"\bpads? (?:are|is|look|still)?\s?(?:\w+\s)?(?:flat|clean|shiny|smooth|untouched)\b",
    ),
    "never soldered": (
        r"\bno (?:trace of |sign of )?solder\b|\bnever soldered\b|\b(?:DNP|DNF|not fitted)\b",
    ),
    "broken off": (
        r"\b(?:torn|ripped|knocked off|broken|residue|half a body|remains)\b",
        r"\bsolder (?:stumps?|remains|left|blobs?)\b",
    ),
    "burnt": (r"\b(?:burnt?|charred|soot|scorched|blown|exploded)\b",),
    "link": (r"\b(?:link|jumper|option|bridge|select(?:or)?|0 ?(?:R|ohms?|Ω))\b|\bzero.?ohm",),
    "many alike": (
        r"\b(?:among|one of) (?:\w+ ){0,3}(?:like it|alike|others|identical|the same)\b",
        r"\b(?:among|one of) (?:\w+ )?(?:many|dozens|scores|several|forty|twenty|thirty|a dozen)\b",
        r"\b(?:dozens|scores|lots) of (?:them|the same|these)\b",
    ),
    "tab": (r"\b(?:a|one|the|wide|large|big) tab\b|\btabbed\b|\btab (?:pad|for|on)\b",),
    "glass": (r"\bglass\b",),
    "wide tracks": (
        r"\b(?:thick|wide|broad|heavy|fat)\b[^,;]{0,12}\b(?:tracks?|traces?|copper|pour)",
    ),
}
MARKS = {name: re.compile("|".join(words), re.IGNORECASE) for name, words in _MARKS.items()}

# What lies in line with the part, on its way to the net of a side.
_CLAUSE = (
    r"\b(?:through|via|in series with|in line with|together with|then|followed by) "
    r"(?:a |an |the |its )?(?:\w+ ){0,2}?"
)
IN_LINE = {
    "through a capacitor": re.compile(
        _CLAUSE + r"(?:\d+(?:\.\d+)?\s?[pnuµ]F?\d*\b|caps?\b|capacitors?\b)", re.IGNORECASE
    ),
    "fed back": re.compile(r"\bback (?:to|into) (?:its|the)\b", re.IGNORECASE),
    "through a resistor": re.compile(
        _CLAUSE + r"(?:\d+(?:\.\d+)?\s?(?:R|Ω|ohms?|k)\d*(?!\w)|resistors?\b)", re.IGNORECASE
    ),
}
_PLAIN = """
    the and its with one two three both each side sides end ends pad pads between near next beside
    close from into has have had was were are that this there where which what part parts missing
    lost gone board reference letter silk says printed pin pins net nets goes other but not for
    through line lines small large big tiny thin long short wide body size case chip place about
    also here then only left right top bottom under behind front row same like very just upper
    lower empty bare who did seems looks please know think maybe probably could been mark marks
    marked outline sits stood stand stands right away off torn out over across series parallel
    direct directly straight leads leading connected connects joins join ref unknown letters first
    second via vias track tracks trace traces measured measures value values around beneath above
    main component way neighbours neighbour many identical caps capacitors resistors others row ohm
    middle pass passes little spot against whose runs drops after before towards toward goes sits
    together come far can cannot see seen look any all more less than nothing else footprint
    imperial metric apart gap land lands inch mil square round smd soldered solder corner edge per
"""
PLAIN_WORDS = frozenset(_PLAIN.split())
