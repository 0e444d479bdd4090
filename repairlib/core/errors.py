"""The one family of errors: what was read, what is wrong with it, what would be accepted."""

from __future__ import annotations

SPACES = "\u00a0\u2007\u2009\u202f\u3000"  # no letters to Python, and harmless on every face


class RepairlibError(ValueError):
    """Bad input, said in one line that a person at a bench can act on.

    `read` is the text as it came in, `wrong` a short clause and `accepted` what to give instead.

    >>> print(RepairlibError("4X7", "X is not a multiplier letter", "p n µ m F"))
    '4X7': X is not a multiplier letter. Accepted: p n µ m F
    """

    each: tuple[RepairlibError, ...] = ()  # where several were found at once, this is their sum

    def __init__(self, read: object, wrong: str, accepted: str):
        self.read = read
        self.wrong = one_line(wrong).rstrip(".")
        self.accepted = one_line(accepted)
        super().__init__(f"{shown(read)}: {self.wrong}. Accepted: {self.accepted}")

    def _render_traceback_(self) -> list[str]:
        """What a notebook shows in place of a traceback: one line for each thing that is wrong."""
        return [str(one) for one in (*self.each, self)]

    def __reduce__(self):
        return type(self), (self.read, self.wrong, self.accepted)


def shown(text: object, limit: int = 40) -> str:
    r"""`text` in quotes on one line: control characters escaped, long text cut.

    >>> shown("10\n4"), shown("9" * 100, limit=6)
    ("'10\\n4'", "'999999…' (100 characters)")
    """
    whole = as_printed(text)
    safe = escaped(whole[:limit])
    if len(whole) > limit:
        return f"'{safe}…' ({len(whole)} characters)"
    return f"'{safe}'"


def as_printed(thing: object) -> str:
    """`thing` as text, or its kind for what cannot be printed, such as a number of 5000 digits.

    >>> as_printed(16.0), as_printed(10**5000)
    ('16.0', 'a int too long to be written')
    """
    if isinstance(thing, str):
        return str.__str__(thing)
    try:
        return str(thing)
    except Exception:  # whatever a stranger's object raises
        return f"a {type(thing).__name__} too long to be written"


def escaped(text: str, kept: str = "") -> str:
    r"""`text` with every character that cannot be seen written out, but spaces and those in `kept`.

    Control characters can rule a terminal, and some turn the reading direction of a line.

    >>> escaped("\x1b[2J \u202e16\u00a0V") == r"\x1b[2J \u202e16" + "\u00a0V"
    True
    """
    if text.isprintable():
        return text
    kept += SPACES
    return "".join(
        c if c.isprintable() or c in kept else c.encode("unicode_escape").decode() for c in text
    )


def one_line(text: str) -> str:
    """`text` with its line ends and tabs made spaces."""
    return text.replace("\r", " ").replace("\n", " ").replace("\t", " ")
