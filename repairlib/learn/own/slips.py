"""What cannot be read in a file of own questions: each slip with its line, all of them at once."""

from __future__ import annotations

from collections.abc import Iterable

from repairlib.core.errors import RepairlibError
from repairlib.core.wording import counted

TOLD = 200  # slips that are listed; nobody reads more before mending the first


class Slip(RepairlibError):
    """One thing on one line that cannot be read.

    >>> print(Slip(12, "Rihgt", "no such word", "Right"))
    line 12: 'Rihgt': no such word. Accepted: Right
    """

    def __init__(self, line: int, read: object, wrong: str, accepted: str):
        super().__init__(read, wrong, accepted)
        self.line = line
        self.args = (f"line {line}: {self.args[0]}",)

    def __reduce__(self):
        return type(self), (self.line, self.read, self.wrong, self.accepted)


class Slips(RepairlibError):
    """All slips of one file, `each` once and in the order of their lines.

    >>> print(Slips("fuses.txt", [Slip(2, "x", "no picture", "disc")]))
    'fuses.txt': 1 error, so nothing of it was taken. Accepted: the lines told above, mended
    """

    def __init__(self, name: str, slips: Iterable[RepairlibError]):
        found = {str(one): one for one in sorted(slips, key=lambda one: getattr(one, "line", 0))}
        self.each = tuple(found.values())[:TOLD]
        more = f"; the first {TOLD} are told" if len(found) > TOLD else ""
        wrong = f"{counted(len(found), 'error')}, so nothing of it was taken{more}"
        super().__init__(name, wrong, "the lines told above, mended")

    def __reduce__(self):
        return type(self), (self.read, self.each)
