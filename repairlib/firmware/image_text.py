"""Is there text that reads as text? How well letters follow each other, in what looks like words.

Which letter follows which is counted in our own cautions and in words that such chips often hold.
Other languages with these letters come out lower, but well above letters in disorder: vowels and
consonants take turns in all of them. Numbers and names in disorder score alike either way round.
"""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from repairlib.core.safety import HAZARDS

USUAL = (
    "error failed version copyright reserved device memory system update address loading firmware "
    "button please press continue invalid unknown command register temperature sensor motor paper "
    "network connection settings default serial number password user message status ready waiting "
    "timeout checksum expected received buffer overflow initialise started stopped controller "
    "partition mounted kernel process thread interrupt handler driver interface channel frequency "
    "voltage current battery charge warning display screen language service maintenance printer "
    "calibration complete finished successful unable cannot reading writing erase verify sector"
)
FEWEST_LETTERS = 5  # in a row: by chance once in 20,000 places of bytes without order
MOST_WORDS = 4000  # that are weighed: more say nothing new


class Legible(NamedTuple):
    """How well the words of some bytes read.

    `pairs` is how many pairs of letters were weighed, each word once; `score` the mean of how much
    likelier a pair is in a text than its two letters are, as a natural logarithm.
    """

    pairs: int
    score: float


class Reader:
    """Weighs the words of pieces of data one by one, and no word twice.

    `stuck` is a bit that is known to have always the same `level`, which changes the letters.
    `letters` holds those that it has seen: code that looks like letters has few of them.
    """

    def __init__(self, stuck: int | None = None, level: int = 0) -> None:
        letter = stuck is not None and stuck < 5
        self._table = _likelier(stuck if letter else None, level)
        self._mark = _marks(range(64, 128) if letter else range(0))
        self._run = b"\1" * (FEWEST_LETTERS + letter)
        self._seen: set[bytes] = set()
        self.letters: set[int] = set()

    def _words(self, data: bytes) -> set[bytes]:
        """The runs of letters, found by the bytes' own search: patterns take ten times as long."""
        marks, found = data.translate(self._mark), set()
        begin = marks.find(self._run)
        while begin >= 0:
            end = marks.find(b"\0", begin)
            end = len(data) if end < 0 else end
            if _one_size(data[begin:end]):
                found.add(data[begin:end])
            begin = marks.find(self._run, end)
        return found

    def weigh(self, data: bytes) -> Legible:
        """How well those words of `data` read that have not been seen before.

        >>> Reader().weigh(b"cover open, please continue").score > 0
        True
        >>> Reader().weigh(b"ocev rpone ,lpaees ocnitune").score < 0.1
        True
        """
        import numpy as np

        if len(self._seen) > MOST_WORDS:
            return Legible(0, 0.0)
        words = self._words(data) - self._seen
        if not words:
            return Legible(0, 0.0)
        self._seen |= words
        self.letters.update(*(word.lower() for word in words))
        codes = np.frombuffer(b" ".join(sorted(words)), np.uint8)
        inside = (codes[:-1] >= 64) & (codes[1:] >= 64)
        scores = self._table[(codes[:-1] & 31)[inside], (codes[1:] & 31)[inside]]
        return Legible(len(scores), float(scores.mean()))


def _one_size(word: bytes) -> bool:
    """Small letters, the first of which may be large, or large ones: not by turns."""
    return word[1:].islower() or word.isupper()


@cache
def _marks(letters: range) -> bytes:
    """For each byte 1 where it is a letter, or among `letters` where these are given."""
    if letters:
        return bytes(int(byte in letters) for byte in range(256))
    return bytes(int(65 <= byte & ~32 <= 90) for byte in range(256))


@cache
def _likelier(stuck: int | None = None, level: int = 0):
    """How much likelier each pair of letters is than its letters are: an array of 32 by 32."""
    import numpy as np

    said = " ".join(
        " ".join((hazard.when, *hazard.do, hazard.defer, hazard.strikes))
        for hazard in HAZARDS.values()
    )
    codes = np.frombuffer(f"{said} {USUAL}".encode("ascii", "replace"), np.uint8)
    is_letter = (codes | 32) - np.uint8(ord("a")) < 26
    letters = codes & np.uint8(31)
    if stuck is not None:
        bit = np.uint8(1 << stuck)
        letters = letters | bit if level else letters & ~bit
    counts = np.zeros((32, 32))
    both = is_letter[:-1] & is_letter[1:]
    np.add.at(counts, (letters[:-1][both], letters[1:][both]), 1)
    chance = counts.sum(axis=1)[:, None] * counts.sum(axis=0)[None] / counts.sum()
    chance += 0.3  # else letters that are rare in this text would count too much
    return np.log((counts + chance) / (2 * chance))
