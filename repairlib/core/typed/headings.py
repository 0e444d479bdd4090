"""The headings of lists as people type them: which column holds what.

Words of service manuals and measuring sheets; common practice of the trade.
"""

from __future__ import annotations

_HEADINGS = {
    "reference": """ref refs reference references designator designators refdes ref-des circuit-ref
        circuit-no ref-no symbol symbol-no location loc position pos part-ref no # item des
        component""",
    "value": """value values val capacitance capacity cap value-uf value-µf uf µf mfd
        capacitance-uf capacitance-µf""",
    "volts": """volts volt voltage rating rated-voltage rated rated-v v wv w-v vdc wvdc
        working-voltage volts-dc max-v""",
    "quantity": "qty q'ty quantity qnty pcs count number-off no-off amount pieces",
    "kind": "type kind description desc dielectric material part construction part-name name spec",
    "form": "mounting mount lead leads body case style form",
    "tolerance": "tolerance tol %",
    "other": """page price part-no part-number partno order-no stock-no code remarks remark
        notes note comment comments board area unit-price supplier maker make manufacturer mfr
        brand series function use""",
}
_OTHER_UNITS = ("pf", "nf", "mf)", "kv", "mv")
ROLE_OF_HEADING = {word: role for role, words in _HEADINGS.items() for word in words.split()}


def role_of_heading(cell: str) -> str | None:
    """What a column headed by `cell` holds, or None when that is no heading known here.

    A heading in another unit than µF or V is not known, so that its figures are not taken for µF
    or V.

    >>> role_of_heading("Symbol No."), role_of_heading("Rated Voltage (V)"), role_of_heading("C5")
    ('reference', 'volts', None)
    >>> role_of_heading("Value (pF)") is None
    True
    """
    text = cell.strip().lower().replace("(s)", "").replace("*", "").strip(" :|_")
    if any(unit in text for unit in _OTHER_UNITS):
        return None
    for opening in "([":
        text = text.partition(opening)[0].strip() or text.strip("()[] ")
    return ROLE_OF_HEADING.get("-".join(text.replace(".", " ").replace("-", " ").split()))


class Columns:
    """What the columns of a list hold, as its headings say.

    `roles` has one role for each column, "unnamed" under a heading that is not known. `starts` and
    `ends` are where the headings stand on their line, so that a line with a gap can be set under
    them.
    """

    def __init__(self, roles: list[str], cells: list[str], line: str):
        self.roles = roles
        self.starts: list[int] = []
        self.ends: list[int] = []
        at = 0
        for cell in cells:
            at = max(line.find(cell, at), at)
            self.starts.append(at)
            at += len(cell)
            self.ends.append(at)

    def under(self, line: str, cells: list[str]) -> list[str] | None:
        """The roles of `cells`, by the headings under which they stand; None when unclear."""
        roles: list[str] = []
        at, last = 0, -1
        for cell in cells:
            at = line.find(cell, at)
            end = at + len(cell)
            over = [
                index
                for index in range(len(self.roles))
                if self.starts[index] < end and self.ends[index] > at
            ]
            if len(over) != 1 or over[0] <= last:
                return None
            last = over[0]
            roles.append(self.roles[last])
            at = end
        return roles


def read_headings(cells: list[str], line: str) -> Columns | None:
    """The columns that a line of headings announces, or None when it is no such line."""
    if len(cells) == 1:
        cells = cells[0].split()
        if any(c.isdigit() for c in line):
            return None
    roles = [role_of_heading(cell) for cell in cells]
    named = [role for role in roles if role]
    filled = sum(bool(cell) for cell in cells)
    if (
        len(named) < 2
        or len(named) * 2 < filled
        or "reference" not in named + ["reference"] * (len(named) > 2)
    ):
        return None
    return Columns([role or "unnamed" for role in roles], cells, line)
