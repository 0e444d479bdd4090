"""Variants are the same everywhere: checked against SHA-256 worked here by another route."""

import hashlib
import subprocess
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.learn import Draw, Learner
from repairlib.learn.draws import normal

ADA = Draw.for_learner("Bench-7", "Ada Example", "00-start-here")


def number(text: str) -> int:
    """SHA-256 of a text as a whole number, read from the hexadecimal form."""
    return int(hashlib.sha256(text.encode()).hexdigest(), 16)


def test_choices_follow_the_hash_of_class_learner_lesson_and_count():
    seed = "learner\nbench-7\nada example\n00-start-here\nq1\n"
    draw = ADA.part("q1")
    expected = [number(seed + str(count)) % 6 + 1 for count in range(20)]
    assert [draw.integer(1, 6) for _ in range(20)] == expected


def test_shuffle_takes_one_item_after_the_other():
    seed = "demo\n00-start-here\nq2\n"
    left, expected = list("abcdefg"), []
    for count in range(7):
        expected.append(left.pop(number(seed + str(count)) % len(left)))
    assert Draw.demo("00-start-here").part("q2").shuffle("abcdefg") == tuple(expected)


def test_fixed_outcomes():
    """Last digits that `printf 'demo\\n03-capacitor-markings\\nq1\\n0' | sha256sum` prints."""
    draw = Draw.demo("03-capacitor-markings").part("q1")
    assert [draw.integer(0, 15) for _ in range(4)] == [0x6, 0x0, 0x6, 0xF]


@pytest.mark.parametrize("seed", ["0", "1", "random"])
def test_the_same_in_a_fresh_process_whatever_the_hash_seed(seed):
    code = (
        "from repairlib.learn import Draw;"
        "d = Draw.for_learner('Bench-7', 'Ada Example', '00-start-here').part('q3');"
        "print(d.shuffle('abcdefghij'))"
    )
    fresh = subprocess.run(
        [sys.executable, "-c", code],
        env={"PYTHONHASHSEED": seed, "PYTHONPATH": ":".join(sys.path)},
        capture_output=True,
        text=True,
        check=True,
    )
    assert fresh.stdout.strip() == str(ADA.part("q3").shuffle("abcdefghij"))


@pytest.mark.parametrize("spelling", ["ada example", " ADA\u00a0 Example ", "Ada\tExample\n"])
def test_case_and_spaces_of_a_name_do_not_matter(spelling):
    assert normal(spelling) == normal("Ada Example")


def test_accents_in_either_unicode_spelling():
    composed, apart = Learner("Zoé", "b"), Learner("Zoe\u0301", "B")
    assert composed.draw("x").seed == apart.draw("x").seed
    assert composed.folder() == apart.folder()


def test_other_learner_class_or_lesson_is_another_variant():
    draws = [
        Draw.for_learner("c", "a", "1"),
        Draw.for_learner("c", "b", "1"),
        Draw.for_learner("d", "a", "1"),
        Draw.for_learner("c", "a", "2"),
        Draw.demo("1"),
    ]
    assert len({draw.shuffle(range(50)) for draw in draws}) == len(draws)


def test_drawing_for_one_question_leaves_the_others_as_they_were():
    first, second = Draw.demo("x"), Draw.demo("x")
    first.part("q1").shuffle(range(9))
    assert first.part("q2").shuffle(range(9)) == second.part("q2").shuffle(range(9))


def test_nothing_between_is_refused():
    with pytest.raises(ValueError, match="nothing lies between"):
        ADA.part("q").integer(2, 1)


@given(st.text(), st.text(), st.lists(st.integers(), max_size=30))
def test_shuffle_keeps_every_item(class_code, name, items):
    assert sorted(Draw.for_learner(class_code, name, "x").shuffle(items)) == sorted(items)


def test_all_numbers_come_up_about_equally_often():
    draw = Draw.demo("even")
    counts = [0] * 6
    for _ in range(6000):
        counts[draw.integer(1, 6) - 1] += 1
    assert all(850 < count < 1150 for count in counts)
