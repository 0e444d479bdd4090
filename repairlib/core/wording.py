"""Small pieces of plain words that every room says alike: so many things, a sentence."""

from __future__ import annotations


def counted(count: object, thing: str) -> str:
    """So many things in words; more than one takes an s.

    >>> counted(1, "answer"), counted(0, "answer"), counted(f"{2000:,}", "answer")
    ('1 answer', '0 answers', '2,000 answers')
    """
    return f"{count} {thing}{'' if str(count) == '1' else 's'}"


def sentence(words: str) -> str:
    """Words with a capital at their begin and a stop at their end.

    >>> sentence("a model, not a measurement")
    'A model, not a measurement.'
    """
    return f"{words[:1].upper()}{words[1:]}."
