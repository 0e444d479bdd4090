"""Paper as it is laid out: pages counted, nothing torn, clipped or too small. With CLASS=all, all.

What makes PDF needs a library of the system: without it these are skipped.
"""

import os

import pytest

from repairlib.core.tables import demo_path
from repairlib.faces.class_commands import run_class
from repairlib.learn import files
from repairlib.learn.exercise import LESSONS, ONE_EVENING, questions_of
from repairlib.learn.group import Group, Member
from repairlib.learn.learner import member_of
from repairlib.teach.instructor import Signed
from repairlib.teach.paper import writing
from repairlib.teach.paper.agenda import agenda
from repairlib.teach.paper.asked import asked, called
from repairlib.teach.paper.cards import pocket_cards
from repairlib.teach.paper.hand_out import PAGES, hand_out
from repairlib.teach.paper.hazard_sheet import hazard_sheet
from repairlib.teach.paper.key import key_sheet
from repairlib.teach.paper.kit import kit_list
from repairlib.teach.paper.measuring_sheet import measuring_sheet, places_of
from repairlib.teach.paper.permits import permits
from repairlib.teach.paper.pictures import LETTERS
from repairlib.teach.paper.printing import A4, LETTER, NO_PDF, laid_out, pdf_can_be_made, pdf_of
from repairlib.teach.paper.question_sheet import question_sheet
from repairlib.teach.paper.word_list import word_list
from tests.teach.paper.paper_pages import last_words, outside, smallest_letters, torn

needs_pdf = pytest.mark.skipif(not pdf_can_be_made(), reason=NO_PDF)
pytestmark = pytest.mark.behaviour

WORDS = [
    "kite",
    "moss",
    "fern",
    "lark",
    "reed",
    "silt",
    "dune",
    "wolf",
    "crab",
    "plum",
    "goat",
    "yarn",
]
TWELVE = tuple(Member(f"Member {word.title()}", word) for word in WORDS)
GROUP = Group("Tuesday bench", TWELVE, ONE_EVENING)
WHOLE = os.environ.get("CLASS") == "all"
# One lesson of long prose, with a table torn in two when it is printed as a notebook.
LAID = LESSONS if WHOLE else ("03-capacitor-markings",)
SIZES = (A4, LETTER) if WHOLE else (LETTER,)
MEMBERS = TWELVE if WHOLE else TWELVE[:1]


def looked_at(sheet, size: str, most: int):
    """The sheet laid out, once nothing is wrong with its pages."""
    document = laid_out(sheet, size)
    assert 1 <= len(document.pages) <= most, sheet.title
    assert not torn(document) and not outside(document), sheet.title
    assert smallest_letters(document) >= 8 - 1e-6, sheet.title
    assert all(last_words(page)[0] not in ("h1", "h2", "h3") for page in document.pages)
    return document


@needs_pdf
@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("lesson", LAID)
def test_questions_have_two_pages_and_nothing_torn(lesson, size):
    for member in MEMBERS:
        questions = questions_of(lesson, member_of(GROUP, member))
        looked_at(question_sheet(questions, called(lesson, GROUP), member, GROUP.name), size, 2)


@needs_pdf
@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("lesson", LAID)
def test_hand_outs_have_four_pages_with_the_lesson_named_on_each(lesson, size, tmp_path):
    files.write(tmp_path / "group.json", GROUP.to_dict())
    (tmp_path / "paper").mkdir()
    job = writing.Job("lesson", lesson, str(tmp_path), {}, size, "", True)
    assert 1 <= writing._hand_out(job, called(lesson, GROUP), GROUP).pages <= PAGES
    made = (tmp_path / "paper" / "hand-outs" / f"{lesson}.html").read_text(encoding="utf-8")
    shorter = next(at for at in range(99) if _whole(hand_out(lesson, "", at)) in made)
    looked_at(hand_out(lesson, called(lesson, GROUP), shorter), size, PAGES)
    assert "counter(page)" in made and "counter(pages)" in made


def _whole(sheet) -> str:
    return "\n".join(part for part in sheet.parts if part)


@needs_pdf
@pytest.mark.parametrize("size", SIZES)
def test_all_other_paper_is_whole_too(size):
    every = [(pocket_cards(), 2), (word_list(), 2)]
    if WHOLE:
        signed = {
            one.word: Signed(one.word, one.name, "Ida Muster", "2026-11-29") for one in TWELVE[:5]
        }
        every += [(one, 6) for one in permits(GROUP, {}, signed)]
        every += [(agenda(GROUP), 4), (kit_list(GROUP), 2), (hazard_sheet(GROUP), 2)]
        every.append((measuring_sheet(places_of(demo_path("keyboard-parts.csv")), "x"), 2))
        for lesson in LESSONS:
            every.append((key_sheet(asked(lesson, GROUP), lesson, GROUP.name), 2))
    for sheet, most in every:
        looked_at(sheet, size, most)
    assert LETTERS >= 8


@needs_pdf
def test_each_sheet_of_a_pdf_counts_its_own_pages():
    documents = [laid_out(word_list()) for _ in range(2)]
    pages = [page for one in documents for page in one.pages]
    said = [[getattr(box, "text", "") for box in page._page_box.descendants()] for page in pages]
    counted = [next(one for one in words if one.startswith("page ")) for words in said]
    assert counted == ["page 1 of 2", "page 2 of 2"] * 2
    assert pdf_of(documents).startswith(b"%PDF-")


def test_without_pdf_the_html_is_written_and_one_line_says_what_to_install(tmp_path, monkeypatch):
    monkeypatch.setattr(writing, "pdf_can_be_made", lambda: False)
    group = GROUP._replace(members=TWELVE[:2], lessons=("00-start-here",))
    files.write(tmp_path / "group.json", group.to_dict())
    said = run_class(["paper", str(tmp_path), "--letter"], False).splitlines()
    assert said[0].startswith("Paper: 12 files. Open ") and said[1:] == [NO_PDF]
    paper = tmp_path / "paper"
    assert not list(paper.glob("**/*.pdf"))
    questions = (paper / "questions" / "00-start-here.html").read_text(encoding="utf-8")
    for member in group.members:
        assert f"<b>{member.name}</b>, word <b>{member.word}</b>" in questions
    assert "size: Letter;" in questions and "page: s1" in questions
    index = (paper / "index.html").read_text(encoding="utf-8")
    linked = [one.relative_to(paper).as_posix() for one in paper.glob("*/*.html")]
    assert len(linked) == 12 and all(f'href="{one}"' in index for one in linked)
    assert (paper / "instructor").stat().st_mode & 0o077 == 0 or os.name == "nt"
    key = (paper / "instructor" / "key.html").read_text(encoding="utf-8")
    assert "Instructor only" in key and "kite" in key and "moss" in key
