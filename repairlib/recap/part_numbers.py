"""Makers' part numbers of electrolytics, as far as they say whether a part is bipolar.

Many lists say only ELECT, and the part number alone carries the letters of a part without
polarity. Only what is known to be polar passes without a look.
"""

from __future__ import annotations

import re

# BP and NP anywhere; N alone between figures, or between the code of the voltage and the value;
# the beginnings of series. Those of the maker's tables: 1HEN, UMP, ALB; the others from memory.
_BIPOLAR = re.compile(
    r"[BN]\.?P|BIP|(?<![A-Z])N(?![A-Z])|(?<=[0-3][A-HJ-NP-Z])E?N(?=[0-9R])|CEAN(?!L)|\b(?:ALB|U(?:ES|ET|VP|DB|MP))"
)
_DIODE_OR_TRANSISTOR = re.compile(r"[1-4]N[0-9]{2,5}[A-Z]?")
# Common practice: W in the class of JIS means polar, and L a low leakage.
_POLAR = re.compile(r"CE(?:0[246]W|ANL)")


def may_be_bipolar(code: str) -> bool:
    """Whether a part number holds letters by which makers mark a part without polarity.

    >>> [code for code in ("CE04BP1H2R2M", "ECEA1HN010S", "16N22", "CE04W1H010", "1N4148")
    ...  if may_be_bipolar(code)]
    ['CE04BP1H2R2M', 'ECEA1HN010S', '16N22']
    """
    code = code.upper()
    return bool(_BIPOLAR.search(code)) and not _DIODE_OR_TRANSISTOR.fullmatch(code)


def is_a_code(word: str) -> bool:
    """Whether a word looks like a code, and not like an ordinary word written in capitals."""
    return len(word) <= 4 or any(sign.isdigit() for sign in word)


def is_plain(code: str) -> bool:
    """Whether a part number leaves no doubt: known as polar, or an order number of figures only.

    >>> is_plain("CE04W1H010M"), is_plain("29303-001"), is_plain("ECEA1HU010")
    (True, True, False)
    """
    return bool(_POLAR.match(code.upper())) or not any(sign.isalpha() for sign in code)
