"""Date codes: year letter and month (IEC 60062), year letter and week, and YYWW.

A year letter comes back every 20 years, so it gives two years; the older one stands first,
because old equipment comes to a repair bench and no code is from the future.
"""

from __future__ import annotations

from repairlib.markings.ranks import DATE_LETTERS, NEXT, YEAR_AND_WEEK
from repairlib.markings.reading import Reading

LETTER_SOURCE = "from memory"  # IEC 60062 year and month letters
WEEK_SOURCE = "EIA-476"

_YEARS = "ABCDEFHJKLMNPRSTUVWX"  # 2010 to 2029, and 20 years earlier
_MONTHS = "123456789OND"
_CENTURY_TURN = 50  # 00-49 are 20xx, 50-99 are 19xx


def dates(code: str) -> tuple[str, ...]:
    """The dates a code may mean, as 2021-06 or 2021-W35, older first. Empty when it is none.

    >>> dates("N6"), dates("2135"), dates("2160")
    (('2001-06', '2021-06'), ('2021-W35',), ())
    """
    if len(code) == 4 and code.isdecimal():
        year = int(code[:2]) + (2000 if int(code[:2]) < _CENTURY_TURN else 1900)
        return (f"{year}-W{code[2:]}",) if 1 <= int(code[2:]) <= weeks_in(year) else ()
    if len(code) not in (2, 3) or code[0] not in _YEARS:
        return ()
    latest = 2010 + _YEARS.index(code[0])
    if len(code) == 2:
        month = _MONTHS.find(code[1]) + 1
        return tuple(f"{year}-{month:02}" for year in (latest - 20, latest)) if month else ()
    if not code[1:].isdecimal():
        return ()
    week = int(code[1:])
    return tuple(
        f"{year}-W{week:02}" for year in (latest - 20, latest) if 1 <= week <= weeks_in(year)
    )


def weeks_in(year: int) -> int:
    """52 or 53: the weeks of a year by ISO 8601.

    >>> weeks_in(2015), weeks_in(2021)
    (53, 52)
    """

    def last_weekday(of: int) -> int:
        return (of + of // 4 - of // 100 + of // 400) % 7

    return 53 if last_weekday(year) == 4 or last_weekday(year - 1) == 3 else 52


def read_date(text: str, piece: str, part: str | None) -> list[tuple[int, Reading]]:
    """Readings of a date code that stands alone."""
    if not 2 <= len(piece) <= 4:
        return []
    if len(piece) == 4:
        why, source, rank = f"Year {piece[:2]}, week {piece[2:]}.", WEEK_SOURCE, YEAR_AND_WEEK
    else:
        what = "month" if len(piece) == 2 else "week"
        why = f"{piece[0]} is the year, which comes back every 20 years; {piece[1:]} is the {what}."
        source, rank = LETTER_SOURCE, DATE_LETTERS
    if piece in ("X1", "X2", "X3"):
        why += f" Beside a mains voltage {piece} is a safety class."
    return [
        (
            rank + NEXT * place,
            Reading(
                kind="date",
                text=text,
                quantity="date",
                value=None,
                unit="",
                why=why,
                carries={"date": date},
                sources=(source,),
            ),
        )
        for place, date in enumerate(dates(piece))
    ]
