"""The documents that tests take figures from, by their key in core/sources.py.

>>> document("F93", "0.01 CV after 1 min")
'AVX, F93 Series, Resin-Molded Chip, 062718, printed code: Leakage current: 0.01 CV after 1 min'
"""

from repairlib.core.sources import PUBLISHED, SOURCES

_PUBLISHED = {key: one for key, one in SOURCES.items() if one.how == PUBLISHED}


def document(key: str, stated: str = "") -> str:
    """Author, title, date and place of a document, and what it states, for the marker `published`.

    KeyError names the key of a source that is unknown, or that nobody has read.
    """
    one = _PUBLISHED[key]
    return f"{one.author}, {one.title}, {one.date}: {one.where}" + (f": {stated}" if stated else "")
