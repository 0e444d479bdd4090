"""The short words: unlike each other, hard to misread, the same on every machine."""

import hashlib
import re
from itertools import combinations

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.teach.words import NOUNS, all_words, give_words

pytestmark = pytest.mark.behaviour


def distance(one: str, other: str) -> int:
    """How many letters must be put in, left out or changed: the textbook's table, row by row."""
    row = list(range(len(other) + 1))
    for i, letter in enumerate(one, 1):
        above, row[0] = row[0], i
        for j, sign in enumerate(other, 1):
            above, row[j] = row[j], min(row[j] + 1, row[j - 1] + 1, above + (letter != sign))
    return row[-1]


def test_nouns_have_four_letters_and_none_like_a_figure():
    assert len(NOUNS) == len(set(NOUNS)) > 100
    for words in all_words():
        assert all(re.fullmatch("[a-hjkmnp-z]{4,6}", word) for word in words)  # no i, l, o
    assert {len(word) for word in NOUNS} == {4}


def test_any_two_nouns_differ_in_two_letters():
    assert min(distance(*pair) for pair in combinations(NOUNS, 2)) == 2


def test_one_letter_typed_wrong_is_never_the_word_of_another():
    """All words at once: what one slip makes of each is none of the others."""
    words = {word for kind in all_words() for word in kind}
    letters = "abcdefghijklmnopqrstuvwxyz"
    for word in words:
        for at in range(len(word)):
            slips = {word[:at] + word[at + 1 :]} | {
                word[:at] + letter + word[at + 1 :] for letter in letters
            }
            assert words & slips == {word}


def test_of_two_words_that_sound_alike_only_one_is_given():
    heard = [word.replace("d", "t") for kind in all_words() for word in kind]
    assert len(set(heard)) == len(heard) > 2000


def test_a_word_hangs_on_group_and_name_alone():
    names = [f"Learner {i}" for i in range(30)]
    words = give_words("Tuesday bench", names)
    assert give_words("tuesday  BENCH", names[::-1]) == words
    assert give_words("Thursday bench", names) != words


def test_the_words_of_every_python_are_these():
    """By hand: SHA-256 of the four lines, its first eight bytes, the rest by the nouns."""
    seed = b"word\ntuesday bench\nada example\n0"
    number = int.from_bytes(hashlib.sha256(seed).digest()[:8], "big")
    assert NOUNS[number % len(NOUNS)] == "wasp"
    assert give_words("Tuesday bench", ["Ada Example"]) == {"Ada Example": "wasp"}


def test_those_who_come_later_get_words_that_are_free():
    first = give_words("Tuesday bench", ["Ada Example"])
    later = give_words("Tuesday bench", [f"Learner {i}" for i in range(200)], first.values())
    assert len(set(later.values()) | set(first.values())) == 201


def test_two_thousand_get_different_words_and_too_many_are_refused():
    assert len(set(give_words("all", [f"Learner {i}" for i in range(2000)]).values())) == 2000
    with pytest.raises(RepairlibError, match="every word is given"):
        give_words("all", [f"Learner {i}" for i in range(3000)])
