"""Questions enter themselves, in order, and each from a draw of its own."""

from importlib import import_module, reload

import pytest

from repairlib.core.draws import DemoDraw, Draw
from repairlib.learn import Number, asking
from repairlib.learn.asking import graded, names, practice_question, practised, question

CODES = tuple(f"{first}{second}3" for first in "123456789" for second in "0258")
HERE = __name__


@pytest.fixture(autouse=True)
def empty(monkeypatch):
    monkeypatch.setattr(asking, "_graded", {})
    monkeypatch.setattr(asking, "_practised", {})


def enter(*called):
    """Enter a question of each name; it shows what was drawn for it."""
    for name in called:

        def ask(draw):
            return Number(prompt=draw.pick(CODES), unit="V", answer=9)

        ask.__name__ = name
        question(points=2)(ask)


def test_in_the_order_of_the_file_with_their_points():
    enter("film_code", "stripe", "can")
    asks = graded(HERE, Draw("Ada"))
    assert [ask.id for ask in asks] == ["q1", "q2", "q3"]
    assert {ask.points for ask in asks} == {2}
    assert len({ask.prompt for ask in asks}) == 3  # each has a draw of its own


def test_each_is_called_by_the_part_of_the_draw_that_it_hangs_on():
    enter("film_code", "can")
    assert names(HERE) == {"q1": "film code", "q2": "can"}
    (first, _) = graded(HERE, Draw("Ada"))
    assert first.prompt == Draw("Ada").part("film code").pick(CODES)


@pytest.mark.parametrize("draw", [Draw("Ada"), DemoDraw("demo")])
def test_a_question_added_or_moved_leaves_the_others_as_they_were(draw):
    enter("film_code", "stripe", "can")
    _, stripe, can = (ask.prompt for ask in graded(HERE, draw))
    asking._graded.clear()
    enter("can", "fuse", "stripe")
    assert [ask.prompt for ask in graded(HERE, draw)][::2] == [can, stripe]


def test_practice_is_kept_apart():
    enter("film_code")
    practice_question(lambda draw: Number(unit="V", answer=9))
    assert len(graded(HERE, Draw("Ada"))) == len(practised(HERE, Draw("Ada"))) == 1


def test_a_module_loaded_again_asks_each_question_once():
    module = reload(import_module("repairlib.learn.questions.start_here"))
    reload(module)
    assert len(graded(module.__name__, Draw("Ada"))) == 8
