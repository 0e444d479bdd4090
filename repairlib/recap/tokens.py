"""A cell of a parts list taken apart: figures with their units, words, and what is left over.

Covers the ways in which lists write them (`10/16`, `1000µ 25V`, `.1`, `10uF/35V`, `4u7`). What the
pieces say of the part is collected in said.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from repairlib.recap.wording import join_phrases

_NUMBER = r"(?:[0-9]{1,7}(?:[.,][0-9]{1,6})?|[.,][0-9]{1,6})"
# The same where a letter or a sign has to follow: then no shorter number need be tried.
_FIGURE = r"(?:[0-9]{1,7}+(?:[.,][0-9]{1,6}+)?|[.,][0-9]{1,6}+)"
_FARADS = r"(?:µf|uf|mfd|mmfd|mmf|uuf|nf|pf|mf|f|µ|u|n|p)"
_VOLTS = r"(?:kv\s?(?:[da]\.?c\.?)?|v\.?\s?d\.?c\.?|v\.?\s?a\.?c\.?|wvdc|wv|volts?|v~|v-|v)"
# What begins with a letter and is no word: u47, WV 25, AC250V.
_LETTER_FIRST = (
    r"[pnuµ][0-9]{1,3}(?!\w)"
    rf"|(?:ac|dc|wv)\s?{_FIGURE}\s?{_VOLTS}(?!\w)\s?(?:ac|dc|~)?(?!\w)|wv\s?{_NUMBER}(?!\w)"
)
# A figure before what may be a unit; most figures of a remark stand before something else.
_MAY_HAVE_A_UNIT = r"\s?(?:[^0-9\s]|[0-9]++[.,]?[0-9]*+\s{0,2}[cdfkmnpuvwxµ°℃×%/~,+-])"
_TOKENS = re.compile(
    rf"""
    \ ?(?:
      (?P<word>(?!{_LETTER_FIRST})(?:[^\W\d_][\w.'-]*[\w.]|[^\W\d_]))
    | (?P<order>(?<![\w.,/])(?:[0-9]{1, 6}(?:-[0-9]{2, 6}){(2,)}|[0-9]{(5,)}-[0-9]{(3,)}
                 |[0-9]{4}\ [0-9]{3}\ [0-9]{5})(?![\w.,/]))
    | (?={_MAY_HAVE_A_UNIT})(?:
        (?P<percent>[±+-]?\s?[+-]?\s?[0-9]++(?:\.[0-9]++)?\s?%?\s?[/~,]?\s?[+-]\s?[0-9]++\s?%
                   |(?:±|\+/?-|\+)?\s?[0-9]++(?:\.[0-9]++)?\s?%)
      | (?P<size>{_FIGURE}\s?(?:mm)?\s?[x×]\s?{_NUMBER}\s?(?:mm)?(?![\w.])|{_FIGURE}\s?mm(?!\w))
      | (?P<degrees>[+-]?[0-9]{{2,3}}\s?(?:°\s?c?|℃|deg\.?\s?c|c)(?![\w]))
      | (?P<pair>(?P<pair_c>{_FIGURE})\s?(?P<pair_unit>{_FARADS})?\s?/\s?
           (?P<pair_v>{_NUMBER})\s?(?P<pair_sign>{_VOLTS})?(?![\w/µ]|\.[0-9]))
      | (?P<middle>(?P<mid_whole>[0-9]{{0,3}})(?P<mid_unit>[pnuµ])(?P<mid_part>[0-9]{{1,3}})(?!\w))
      | (?P<volts>(?P<ac_first>ac|dc|wv)?\s?(?P<v>{_FIGURE})\s?(?P<v_sign>{_VOLTS})(?![\w])
           \s?(?P<ac_last>ac|dc|~)?(?!\w)
         |(?P<v_whole>[0-9]{{1,3}})v(?P<v_part>[0-9])(?!\w)
         |wv\s?(?P<v_after>{_NUMBER})(?!\w))
      | (?P<farads>(?P<c>{_FIGURE})\s?(?P<c_unit>{_FARADS})(?:(?<=f)(?=[0-9])|(?![a-z0-9µ])))
      )
    | (?P<number>{_FIGURE}(?![\w.,]*\w))
    | (?P<other>[0-9][^\s/@]*)
    | (?P<sign>.)
    )
    """,
    re.VERBOSE | re.IGNORECASE | re.DOTALL,
)

_TILDES = str.maketrans("∼～∿", "~~~")


def tidy(text: str) -> str:
    """`text` with one kind of µ and of space, and two-word names joined.

    >>> tidy(" 10 μF   n.pol ")
    '10 µF np'
    """
    if not text.isascii():
        text = text.replace("μ", "µ").replace("Âµ", "µ").replace("\N{SUPERSCRIPT TWO}", "2")
        text = text.translate(_TILDES)
    return join_phrases(" ".join(text.split()))


def tokens(text: str) -> Iterator[tuple[str, re.Match[str]]]:
    """The pieces of a tidy cell, each with what it is: the name of its line in _TOKENS.

    >>> [(what, found[what]) for what, found in tokens("10/16 elect, 105 °C")]
    [('pair', '10/16'), ('word', 'elect'), ('sign', ','), ('degrees', '105 °C')]
    """
    for found in _TOKENS.finditer(text):
        yield found.lastgroup or "", found  # of groups in each other the outermost closes last
