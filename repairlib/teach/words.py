"""The short word by which a learner is known in a group: said, typed and read without a slip.

Any two words that may be given differ in two letters at least, so that one letter typed wrong is
never another member's word, and no two sound alike. No letter looks like a figure: there is no i,
l or o. Plain nouns of four letters come first; a group of more members than there are nouns gets
made-up words of five and then six letters. Group and name choose the word, by SHA-256; a word
that is part of somebody's name is passed over.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterable, Iterator
from functools import cache
from itertools import count, product

from repairlib.core.draws import normal
from repairlib.core.errors import RepairlibError

_NOUNS = """
    ache apex aqua arch area arts aunt baby bard bath beam bend brew bump bunk bush byte cake
    camp cent chat chef crab cube cuff curd cusp dart desk drum duck duet dune ease edge exam face
    farm feed fern fray fund game gnat guru gust hand harp hawk haze heap herd husk hymn jade jazz
    jeep jury keys knee mare mast menu mesh muse myth navy neck news pact page park pawn peak puma
    quad rack raft reef ruby rung saga sash scan seat snap spar spud stag step stub surf tank tape
    text thaw trek tuba tuft turn tyre user vane verb vest wasp watt wave wrap wren yarn year
    yurt"""
NOUNS = tuple(_NOUNS.split())
CONSONANTS, CLOSING, VOWELS, ENDING = "bdfhjkmrstw", "bdfkmrst", "aeu", "au"
SHAPES = (
    (CONSONANTS, VOWELS, CONSONANTS, VOWELS, CLOSING),
    (CONSONANTS, VOWELS, CONSONANTS, VOWELS, CONSONANTS, ENDING),
)
HEARD = str.maketrans("d", "t")  # made-up words must differ also when these sound alike
# Pieces of words, of English and of its neighbours, that nobody should be given as a name.
_LEFT_OUT = """
    bum but dead deb dum fak fat fuk fut had hat hur jeb jeh jes kaf kak kuf kur mad mur
    rat sad sat sem suk tam tur tud tat"""
LEFT_OUT = tuple(_LEFT_OUT.split())


def give_words(group: str, names: Iterable[str], given: Iterable[str] = ()) -> dict[str, str]:
    """A word for each name: none of those `given` before, and nobody's name or a part of one.

    `given` are words and names that are known in the group already. The order of the names does
    not matter. Raises RepairlibError for more names than words.

    >>> give_words("Tuesday bench", ["Ben Example", "Ada Example"])
    {'Ada Example': 'wasp', 'Ben Example': 'beam'}
    >>> give_words("Tuesday bench", ["Ada Example"], ["Wasp Example"])
    {'Ada Example': 'tyre'}
    """
    names = list(names)
    taken, words = set(_pieces((*given, *names))), {}
    for name in sorted(names, key=lambda name: _number(group, name, 0)):
        words[name] = _word(group, name, taken)
        taken.add(words[name])
    return words


def _pieces(texts: Iterable[str]) -> Iterator[str]:
    """Each text as it is compared, and each of its parts, also those of O'Neil and Ruby-Ann."""
    for text in map(normal, texts):
        yield text
        yield from re.split(r"\W+", text)


def all_words() -> Iterator[tuple[str, ...]]:
    """The words of each kind, the shortest first."""
    yield NOUNS
    yield from _made_words()


def _word(group: str, name: str, taken: set[str]) -> str:
    """The first free word that the hash comes to, of the first kind that has one."""
    most = 0
    for words in all_words():
        most += len(words)
        if not taken.issuperset(words):
            tried = (words[_number(group, name, again) % len(words)] for again in count())
            return next(word for word in tried if word not in taken)
    raise RepairlibError(name, "every word is given to somebody", f"a group of up to {most}")


def _number(group: str, name: str, again: int) -> int:
    seed = "\n".join(("word", normal(group), normal(name), str(again)))
    digest = hashlib.sha256(seed.encode("utf-8", "surrogatepass")).digest()
    return int.from_bytes(digest[:8], "big")


@cache
def _made_words() -> tuple[tuple[str, ...], ...]:
    """The made-up words of each shape: each that is far enough from all before it."""
    met: set[str] = set()
    for noun in NOUNS:
        met.update(_spellings(noun))
    return tuple(tuple(_far_apart(map("".join, product(*shape)), met)) for shape in SHAPES)


def _far_apart(words: Iterable[str], met: set[str]) -> Iterator[str]:
    for word in words:
        if len(set(word[::2])) < len(word[::2]) or any(piece in word for piece in LEFT_OUT):
            continue  # babab, and what is better left out
        spellings = _spellings(word)
        if met.isdisjoint(spellings):
            met.update(spellings)
            yield word


def _spellings(word: str) -> set[str]:
    """What two words share when one letter put in, left out or changed makes them one.

    Also what they share when they sound alike.
    """
    places = range(len(word))
    changed = {f"{word[:at]}?{word[at + 1 :]}" for at in places}
    left_out = {word[:at] + word[at + 1 :] for at in places}
    return {word, f"heard {word.translate(HEARD)}"} | changed | left_out
