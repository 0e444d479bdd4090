"""Panels keep up with typing: what one key costs in the kernel, beside the bare widgets."""

import itertools
import os
from html import escape

import ipywidgets as widgets

from repairlib.faces.panels import answer_form, quick_check
from repairlib.learn import open_exercise
from tests.benchmarks.floor import report, seconds
from tests.benchmarks.typed_lists import markings


def as_typed(marking: str) -> list[str]:
    """What stands in the field after each key."""
    return [marking[:end] for end in range(1, len(marking) + 1)]


def test_every_key_of_the_corpus_in_the_quick_check(capsys):
    """Each marking of the corpus typed key by key once; the floor sets the same widgets to text."""
    keys = [text for marking in markings() for text in as_typed(marking)]
    panel = quick_check()
    field, picture, answer = widgets.Text(), widgets.HTML(), widgets.HTML()

    def floor():
        for typed in keys:
            field.value = typed
            picture.value = answer.value = escape(typed)

    def updates():
        for typed in keys:
            panel.marking.value = typed

    each, bare = seconds(updates, 1) / len(keys), seconds(floor, 1) / len(keys)
    report(
        capsys,
        f"one key in the quick check {each * 1e3:.2f} ms, mean of {len(keys):,}, "
        f"{each / bare:.0f} x setting the same widgets to text",
    )
    assert each < 200 * bare


def test_an_answer_saved_and_told(capsys, tmp_path, monkeypatch):
    """The floor writes a file of a few bytes and waits for the disk, as saving must."""
    monkeypatch.setenv("REPAIRLIB_HOME", str(tmp_path))
    box = answer_form(open_exercise("00-start-here")).views["q7"].box
    numbers = itertools.count(1)

    def floor():
        with open(tmp_path / "plain", "w") as file:
            file.write(str(next(numbers)))
            file.flush()
            os.fsync(file.fileno())

    def typing():
        box.value = f"{next(numbers)} pF"

    each, bare = seconds(typing, 40), seconds(floor, 40)
    report(capsys, f"answer saved {each * 1e3:.2f} ms, {each / bare:.1f} x writing a small file")
    assert each < 60 * bare
