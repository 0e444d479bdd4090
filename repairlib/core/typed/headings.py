"""The headings of lists as people type them: which column holds what.

Words of service manuals and measuring sheets; common practice of the trade.
"""

from __future__ import annotations

from repairlib.core.typed.letters import without_accents

# English, German, French, Italian, Spanish, Dutch; without accents, points and hyphens alike.
_HEADINGS = {
    "reference": """ref refs reference references designator designators refdes ref-des circuit-ref
        circuit-no ref-no symbol symbol-no location loc position pos part-ref no # item des
        component pos-nr nr bauteil bauteil-nr rep repere reperes symbole rif riferimento sigla
        posizione posicion referencia simbolo positie ozn""",
    "value": """value values val capacitance capacity cap value-uf value-µf uf µf mfd
        capacitance-uf capacitance-µf wert werte kapazitat valeur valeurs capacite valore valori
        capacita valor valores capacidad waarde waarden capaciteit wartosc""",
    "volts": """volts volt voltage rating rated-voltage rated rated-v v wv w-v vdc wvdc
        working-voltage volts-dc max-v spannung nennspannung betriebsspannung tension
        tension-service tens tensione voltaje spanning werkspanning napiecie""",
    "quantity": """qty q'ty quantity qnty pcs count number-off no-off amount pieces stck stuck
        stueck anzahl menge qte quantite nbre q-ta qta quantita cant cantidad cdad aantal stuks
        ilosc""",
    "kind": """type kind description desc dielectric material part construction part-name name spec
        parts-name typ art bezeichnung benennung beschreibung ausfuhrung genre nature designation
        description tipo descrizione denominazione descripcion clase soort omschrijving opis""",
    "form": """mounting mount lead leads body case style form bauform gehause montage boitier
        contenitore forma uitvoering""",
    "tolerance": "tolerance tol % toleranz toll tolleranza tolerancia tolerantie",
    "code": """part-no part-number parts-no partno part-code order-no order-code stock-no code
        series mpn mfr-part-no mfg-part-no maker-part-no manufacturer-part-no
        manufacturer-part-number type-no cat-no catalogue-no
        bestell-nr bestellnummer artikel-nr artikelnummer teile-nr teilenummer sach-nr sachnummer
        no-de-commande code-article codice cod codigo bestel-nr bestelnummer""",
    "other": """page price remarks remark notes note comment comments board area unit-price
        supplier maker make manufacturer mfr brand function use bem bemerkung bemerkungen anm
        hinweis preis hersteller lieferant funktion obs observation observations remarque
        remarques prix fonction nota prezzo funzione notas observaciones precio funcion opm
        opmerking opmerkingen prijs functie uwagi""",
}
_OTHER_UNITS = ("pf", "nf", "mf)", "kv", "mv")
ROLE_OF_HEADING = {word: role for role, words in _HEADINGS.items() for word in words.split()}


def role_of_heading(cell: str) -> str | None:
    """What a column headed by `cell` holds, or None when that is no heading known here.

    A heading in another unit than µF or V is not known, so that its figures are not taken for µF
    or V.

    >>> role_of_heading("Symbol No."), role_of_heading("Rated Voltage (V)"), role_of_heading("C5")
    ('reference', 'volts', None)
    >>> role_of_heading("Value (pF)"), role_of_heading("Bestell-Nr."), role_of_heading("Qté")
    (None, 'code', 'quantity')
    """
    text = without_accents(cell.strip()).replace("(s)", "").replace("*", "").strip(" :|_")
    if any(unit in text for unit in _OTHER_UNITS):
        return None
    for opening in "([":
        text = text.partition(opening)[0].strip() or text.strip("()[] ")
    return ROLE_OF_HEADING.get("-".join(text.replace(".", " ").replace("-", " ").split()))


class Columns:
    """What the columns of a list hold, as its headings say.

    `roles` has one role for each column, "unnamed" under a heading that is not known; `references`
    says in which columns the references may stand. `beside` has
    the same for the cells that hold no references: a column of running numbers may be headed as if
    it held them. `starts` and `ends` are where the headings stand on their line, so that a line
    with a gap can be set under them.
    """

    def __init__(self, roles: list[str], cells: list[str], line: str):
        self.roles = roles
        self.references = [at for at, role in enumerate(roles) if role == "reference"]
        self.beside = ["other" if role == "reference" else role for role in roles]
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
