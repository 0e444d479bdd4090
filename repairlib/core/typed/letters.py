"""Letters without their accents, so that a word is found however it was typed."""

from __future__ import annotations

_PLAIN = str.maketrans("àáâäåãąçćèéêëęìíîïłñńóòôöõśùúûüýźż", "aaaaaaacceeeeeiiiilnnooooosuuuuyzz")


def without_accents(text: str) -> str:
    """`text` in small letters without accents; µ and Ω stay.

    >>> without_accents("Électrochimique"), without_accents("Stück"), without_accents("4,7 µF")
    ('electrochimique', 'stuck', '4,7 µf')
    """
    text = text.lower()
    return text if text.isascii() else text.translate(_PLAIN).replace("ß", "ss")
