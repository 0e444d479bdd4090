"""The one family of errors: what was read, what is wrong with it, what would be accepted."""

from __future__ import annotations


class RepairlibError(ValueError):
    """Bad input, said in one line that a person at a bench can act on.

    `read` is the text as it came in, `wrong` a short clause and `accepted` what to give instead.

    >>> print(RepairlibError("4X7", "X is not a multiplier letter", "p n µ m F"))
    '4X7': X is not a multiplier letter. Accepted: p n µ m F
    """

    def __init__(self, read: object, wrong: str, accepted: str):
        self.read = read
        self.wrong = one_line(wrong).rstrip(".")
        self.accepted = one_line(accepted)
        super().__init__(f"{shown(read)}: {self.wrong}. Accepted: {self.accepted}")

    def _render_traceback_(self) -> list[str]:
        """What a notebook shows in place of a traceback: the one line."""
        return [str(self)]

    def __reduce__(self):
        return type(self), (self.read, self.wrong, self.accepted)


def shown(text: object, limit: int = 40) -> str:
    r"""`text` in quotes on one line: control characters escaped, long text cut.

    >>> shown("10\n4"), shown("9" * 100, limit=6)
    ("'10\\n4'", "'999999…' (100 characters)")
    """
    try:
        whole = text if isinstance(text, str) else str(text)
    except ValueError:  # a whole number of more figures than Python writes
        whole = f"a {type(text).__name__} too long to be written"
    cut = whole[:limit]
    safe = "".join(c if c.isprintable() else c.encode("unicode_escape").decode() for c in cut)
    if len(whole) > limit:
        return f"'{safe}…' ({len(whole)} characters)"
    return f"'{safe}'"


def one_line(text: str) -> str:
    """`text` with its line ends and tabs made spaces."""
    return text.replace("\r", " ").replace("\n", " ").replace("\t", " ")
