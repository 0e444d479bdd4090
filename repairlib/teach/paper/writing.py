"""All paper of a group written into its folder, as HTML and, where it can be made, as PDF.

    paper/index.html          what there is, with its pages
    paper/hand-outs/          one for each lesson, the same for everybody
    paper/questions/          for each lesson the sheets of all members, one behind the other
    paper/bench/              cards, words, hazard sheet, permits, sheet for readings
    paper/instructor/         key, agenda, kit list, what to talk through: for the instructor only

What laying out takes is shared between the cores of the machine, a lesson to each in turn.
"""

from __future__ import annotations

import gc
import os
from collections.abc import Callable, Iterable, Sequence
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from multiprocessing import get_context
from pathlib import Path
from typing import Any, NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.wording import counted
from repairlib.learn import files
from repairlib.learn.exercise import module_of
from repairlib.learn.group import Group, group_of
from repairlib.teach.instructor import signed_for
from repairlib.teach.paper.agenda import agenda
from repairlib.teach.paper.asked import asked, called
from repairlib.teach.paper.cards import pocket_cards
from repairlib.teach.paper.first_tries import first_tries
from repairlib.teach.paper.hand_out import PAGES, hand_out
from repairlib.teach.paper.hazard_sheet import hazard_sheet
from repairlib.teach.paper.index_page import index_page
from repairlib.teach.paper.key import key_sheet
from repairlib.teach.paper.kit import kit_list
from repairlib.teach.paper.measuring_sheet import measuring_sheet, places_of, table_to_type
from repairlib.teach.paper.permits import permits
from repairlib.teach.paper.printing import (
    A4,
    LETTER,
    NO_PDF,
    Printed,
    Sheet,
    html_of_all,
    laid_out,
    pdf_can_be_made,
    pdf_of,
)
from repairlib.teach.paper.question_sheet import question_sheet
from repairlib.teach.paper.word_list import word_list
from repairlib.teach.paper.word_strips import word_strips

FOLDER, INSTRUCTOR = "paper", "instructor"
MOST_PROCESSES = 4  # each takes about 150 MB


class Written(NamedTuple):
    """What was written: the folder, its files, and notes for the instructor."""

    folder: Path
    printed: tuple[Printed, ...]
    notes: tuple[str, ...]

    def __str__(self) -> str:
        pages = sum(one.pages for one in self.printed)
        said = counted(len(self.printed), "file") + (f", {counted(pages, 'page')}" if pages else "")
        return "\n".join((f"Paper: {said}. Open {self.folder / 'index.html'}", *self.notes))


class Job(NamedTuple):
    """What one process does at a time: some kinds of paper of the group in a folder."""

    kind: str
    lesson: str
    folder: str
    group: dict[str, Any]
    size: str
    parts_list: str
    with_pdf: bool


def write_paper(
    folder: str | Path, group: Group, letter: bool = False, parts_list: str | Path = ""
) -> Written:
    """Write all paper of a group into `folder`/paper, for A4 or, with `letter`, for Letter.

    `parts_list` is the list that the sheet for readings is made for; without one it is blank.
    What was written there before is replaced. Raises RepairlibError for a group without
    lessons, for a lesson that there is not, and when something cannot be read or written.
    """
    if not group.lessons:
        raise RepairlibError(group.name, "this group has no lessons", "a group with lessons")
    for lesson in group.lessons:
        module_of(lesson, group)  # which refuses what is no lesson, before anything is written
    place = Path(folder) / FOLDER
    with_pdf = pdf_can_be_made()
    given = (str(folder), group.to_dict(), LETTER if letter else A4, str(parts_list), with_pdf)
    job = partial(_job, given)
    jobs = [job("lesson", one) for one in group.lessons]
    jobs[1:1] = [job("key"), job("bench")]  # the longest first, so that none is left for the end
    files.make_private(place / INSTRUCTOR)  # names, questions and the key
    printed = tuple(one for done in _done(jobs, with_pdf) for one in done)
    notes = () if with_pdf else (NO_PDF,)
    index = index_page(group, printed, given[2], notes)
    files.put_in_place(place / "index.html", index.encode("utf-8"))
    return Written(place, printed, notes)


def _job(given: tuple, kind: str, lesson: str = "") -> Job:
    folder, group, size, parts_list, with_pdf = given
    return Job(kind, lesson, folder, group, size, parts_list, with_pdf)


def _done(jobs: Sequence[Job], with_pdf: bool) -> Iterable[list[Printed]]:
    """Each job done: by several processes where there are cores, since laying out takes long."""
    processes = min(os.cpu_count() or 1, MOST_PROCESSES, len(jobs))
    if not with_pdf or processes < 2:
        return [do(one) for one in jobs]
    # "spawn": a copy of a process with threads, as in a notebook, may stand still.
    with ProcessPoolExecutor(processes, mp_context=get_context("spawn")) as pool:
        return list(pool.map(do, jobs))


def do(job: Job) -> list[Printed]:
    """One job: its paper made and written. Gives what was written.

    Laying out makes many small things that live until its end: to look for garbage among them
    again and again would take a fifth of the time.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        return _KINDS[job.kind](job, group_of(job.group))
    finally:
        if was_on:
            gc.enable()
        gc.collect()


def _lesson(job: Job, group: Group) -> list[Printed]:
    """The hand-out and the question sheets of a lesson."""
    named = called(job.lesson, group)
    made = [_hand_out(job, named, group)]
    sheets = [
        question_sheet(each, named, who, group.name) for who, each in asked(job.lesson, group)
    ]
    made.append(_write(job, f"questions/{job.lesson}", sheets, f"{named}: questions"))
    return made


def _hand_out(job: Job, named: str, group: Group) -> Printed:
    """The hand-out with as much of the idea as its pages hold; where it cannot be measured, all."""
    place, shorter = f"hand-outs/{job.lesson}", 0
    sheet = hand_out(job.lesson, named, 0, group)
    if not job.with_pdf:
        return _write(job, place, [sheet])
    while len((document := laid_out(sheet, job.size)).pages) > PAGES:
        shorter += 1
        whole, sheet = sheet, hand_out(job.lesson, named, shorter, group)
        if sheet == whole:  # nothing more may go
            break
    return _write(job, place, [sheet], documents=[document])


def _key(job: Job, group: Group) -> list[Printed]:
    sheets = [
        key_sheet(asked(lesson, group), called(lesson, group), group.name)
        for lesson in group.lessons
    ]
    return [_write(job, f"{INSTRUCTOR}/key", sheets, "Key")]


def _bench(job: Job, group: Group) -> list[Printed]:
    """All that is no lesson."""
    given, to_talk = permits(group, first_tries(job.folder, group), signed_for(job.folder, group))
    places = places_of(job.parts_list) if job.parts_list else []
    named = Path(job.parts_list).stem if job.parts_list else "any parts list"
    sheets = {
        "bench/pocket-cards": pocket_cards(),
        "bench/words": word_list(),
        "bench/word-strips": word_strips(group),
        "bench/hazard-sheet": hazard_sheet(group),
        "bench/readings": measuring_sheet(places, named),
        "bench/permits": given,
        f"{INSTRUCTOR}/to-talk-through": to_talk,
        f"{INSTRUCTOR}/agenda": agenda(group),
        f"{INSTRUCTOR}/kit": kit_list(group),
    }
    typed = table_to_type(places).encode("utf-8-sig")
    made = [_write(job, place, [sheet]) for place, sheet in sheets.items()]
    files.put_in_place(Path(job.folder) / FOLDER / "bench" / "readings.csv", typed)
    return made


_KINDS: dict[str, Callable[[Job, Group], list[Printed]]] = {
    "lesson": _lesson,
    "key": _key,
    "bench": _bench,
}


def _write(
    job: Job, place: str, sheets: Sequence[Sheet], title: str = "", documents: Sequence = ()
) -> Printed:
    """Sheets written as one HTML page and one PDF; `documents` are they laid out already."""
    title = title or sheets[0].title
    path = Path(job.folder) / FOLDER / place
    with files.saying_why(path):
        path.parent.mkdir(exist_ok=True)
    files.put_in_place(path.with_suffix(".html"), html_of_all(sheets, title, job.size).encode())
    if not job.with_pdf:
        return Printed(place, title, 0)
    documents = documents or [laid_out(one, job.size) for one in sheets]
    files.put_in_place(path.with_suffix(".pdf"), pdf_of(documents))
    return Printed(place, title, sum(len(one.pages) for one in documents))
