"""The room view of 30 members in 16 lessons, beside writing the same facts with nothing looked at.

The floor takes each mark as it is and writes it with the standard library three times: as CSV, as
JSON and as a cell of an HTML table. Each run is of another group, so that nothing remembered can
flatter.
"""

import csv
import io
import itertools
import json
import math
import time
from html import escape

from repairlib.learn.exercise import LESSONS
from repairlib.learn.group import Group
from repairlib.learn.own import lesson_name
from repairlib.teach.mark_book import write_mark_book
from tests.benchmarks.floor import report
from tests.teach.rooms import NOON, evening, group_of

NUMBERS = itertools.count(1)
ROOM = 50  # times the floor
TEN = "\n\n".join(f"Question\nWhat is {n} V and 1 V?\nAnswer: {n + 1} V" for n in range(10))
OWN = {f"own {which}.txt": f"Own {which}\n\n{TEN}\n" for which in ("one", "two")}


def group_of_30() -> Group:
    """Thirty members, fourteen lessons and two of their own."""
    lessons = (*LESSONS, *map(lesson_name, OWN))
    return group_of(30, lessons, f"bench {next(NUMBERS)}")._replace(own=OWN)


def floor(group, marked) -> tuple[str, str, str]:
    """The same facts as CSV, JSON and HTML."""
    rows = [
        (
            *(group.name, one.word, one.name, one.partner, one.lesson, line.id, line.state),
            *(line.points, line.out_of, story.tries, len(story.unsafe), story.first.state),
            *(story.last.at, one.at),
        )
        for one in marked
        for line in one.sheet.lines
        for story in [one.stories[line.id]]
    ]
    table = io.StringIO()
    csv.writer(table, quoting=csv.QUOTE_ALL).writerows(rows)
    cells = "".join(f"<td>{escape(row[2])} {escape(row[6])} {row[9]}</td>" for row in rows)
    return table.getvalue(), json.dumps(rows), f"<table><tr>{cells}</tr></table>"


def test_mark_book_and_room_view_of_30_by_15(capsys, tmp_path):
    """All three files, from what is marked to the disk.

    Measured: 0.5 s alone on two cores, 15 to 26 times the floor, of which drawing and judging the
    answers that were wrong at first takes a quarter, and keeping formulas out of the CSV another.
    """
    least, whole = math.inf, math.inf
    for _ in range(3):
        group = group_of_30()
        marked = list(evening(group, 1.1))
        start = time.perf_counter()
        bare = floor(group, marked)
        middle = time.perf_counter()
        write_mark_book(tmp_path, group, marked, at=NOON)
        least = min(least, middle - start)
        whole = min(whole, time.perf_counter() - middle)
    page = (tmp_path / "marks" / "room.html").stat().st_size
    report(
        capsys,
        f"mark book of 30 members in {len(group.lessons)} lessons {whole:.2f} s, page "
        f"{page / 1e3:.0f} kB = {whole / least:.0f} x the floor ({least * 1e3:.1f} ms, "
        f"{sum(map(len, bare)) / 1e3:.0f} kB)",
    )
    assert whole < ROOM * least
