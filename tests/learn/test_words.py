"""The list of words: sorted, short, and with every abbreviation that the lessons use."""

import json
import re
from pathlib import Path

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.learn import explain
from repairlib.learn.words import LINE, PAGE, all_words, begin_with, explain_in
from tests.refresh import LESSONS, lesson_names

pytestmark = pytest.mark.behaviour

# Names of documents and of those who write them; nobody needs them explained to read a lesson.
NAMES = {"IEC", "IPC", "ILAC", "JEDEC", "STD", "README"}
PLAIN = {"STOP"}  # a word, said loudly
ABBREVIATION = re.compile(r"\b[A-Z]{2,}(?=s?\b)")
LINK_OR_CODE = re.compile(r"`[^`]*`|\]\([^)]*\)")
SENTENCE = re.compile(r"[.!?] (?=[A-Z])|[.!?]$")


def prose(path: Path) -> str:
    """What a learner reads in a lesson, up to its sources and without what stands on parts."""
    cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
    told = "\n".join("".join(one["source"]) for one in cells if one["cell_type"] == "markdown")
    return LINK_OR_CODE.sub(" ", told.partition("\n## Sources")[0])


def test_every_line_of_the_page_is_read_as_a_word():
    lines = PAGE.read_text(encoding="utf-8").splitlines()
    assert len(all_words()) == sum(line.startswith("-") for line in lines) > 60
    assert all(LINE.fullmatch(line) for line in lines if line.startswith("-"))


def test_words_are_sorted_and_every_name_stands_once():
    first = [", ".join(one.names).casefold() for one in all_words()]
    assert [name.split(", ")[0] for name in first] == sorted(name.split(", ")[0] for name in first)
    every = [name.casefold() for one in all_words() for name in one.names]
    assert len(every) == len(set(every))


@pytest.mark.parametrize("word", all_words(), ids=lambda one: one.names[0])
def test_a_word_is_explained_in_one_or_two_short_sentences(word):
    assert word.means[-1] == "."
    sentences = [one for one in SENTENCE.split(word.means) if one]
    assert len(sentences) <= 2
    assert all(len(one.split()) <= 20 for one in sentences)


@pytest.mark.parametrize("word", all_words(), ids=lambda one: one.names[0])
def test_an_abbreviation_says_what_it_stands_for(word):
    name = word.names[0]
    assert word.in_full or not ABBREVIATION.fullmatch(name) or name in ("CV", "PCB")


@pytest.mark.parametrize("name", [one for one in lesson_names() if one != "template"])
def test_every_abbreviation_of_a_lesson_is_explained(name):
    known = {token for one in all_words() for each in one.names for token in each.split()}
    used = set(ABBREVIATION.findall(prose(LESSONS / f"{name}.ipynb")))
    assert not used - known - NAMES - PLAIN


def test_words_are_found_by_any_of_their_names():
    assert explain("coil") == explain(" Inductor ")
    assert str(explain("ESR")[0]).startswith("ESR (equivalent series resistance): ")


def test_words_are_folded_and_escaped():
    shown = explain("ESR", "E24").folded()
    assert shown.startswith("<details><summary>In plain words: ESR, E6</summary>")
    assert explain_in("nothing to explain here").folded() == ""


def test_an_unknown_word_is_refused_with_what_is_near():
    with pytest.raises(RepairlibError, match=r"'impedence'.*impedance"):
        explain("impedence")


def test_only_whole_words_are_found_in_prose():
    assert explain_in("a polarity, an ESRX") == ()
    assert [one.names[0] for one in explain_in("The bleeder, and OL")] == ["bleeder", "OL"]


def test_the_beginning_of_a_word_is_enough():
    assert {"polar", "polymer"} <= {one.names[0] for one in begin_with(" Po")}
    assert begin_with("esr") == explain("ESR")
    assert begin_with("") == all_words()
