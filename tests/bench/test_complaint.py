"""What the customer says fits what the fault does at home."""

from dataclasses import replace

import pytest

from repairlib.bench import read_faults, told_by
from repairlib.bench.practice_set import demo_set

pytestmark = pytest.mark.behaviour
HEARD = {
    ("desk radio", "C1 dried out to 35 %, ESR x 6"): "rippled",
    ("desk radio", "J1 cracked"): "warm",
    ("desk radio", "F9 blown"): "dead",
    ("network switch", "C2 gone"): "rippled",
    ("network switch", "J1 worn 1.5 Ω"): "loaded",
    ("label maker", "S1 worn 3 Ω"): "loaded",
    ("keyboard", "D2 open"): "low",
    ("printer controller", "M1 corrupt"): "corrupt",
}


@pytest.mark.parametrize(("title", "line"), HEARD)
def test_a_symptom_has_its_sentence(title, line):
    of = demo_set(title)
    assert told_by(of, read_faults(line, of)).says == of.heard[HEARD[title, line]]


@pytest.mark.parametrize("line", ["", "U1 open"])
def test_all_else_has_the_usual_sentence(line):
    of = demo_set("desk radio")
    faults = read_faults(line, of) if line else ()
    assert told_by(of, faults) == of


def test_a_set_without_such_sentences_says_its_one():
    of = replace(demo_set("label maker"), heard={})
    assert told_by(of, read_faults("F1 blown", of)).says == of.says
