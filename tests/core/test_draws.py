"""Variants are the same everywhere: checked against SHA-256 worked here by another route."""

import hashlib
import subprocess
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.draws import DemoDraw, Draw, normal
from repairlib.learn import Learner

ADA = Draw.for_learner("Bench-7", "Ada Example", "00-start-here")


def number(text: str) -> int:
    """SHA-256 of a text as a whole number, read from the hexadecimal form."""
    return int(hashlib.sha256(text.encode()).hexdigest(), 16)


def test_the_option_with_the_highest_hash_is_taken():
    seed = "learner\nbench-7\nada example\n00-start-here\nstripe\n"
    bank = ["10 µF", "22 µF", ("473", 4.7e-08, True, None)]
    as_text = {
        bank[0]: r"'10 \xb5F'",
        bank[1]: r"'22 \xb5F'",
        bank[2]: "('473', 4.7e-08, True, None)",
    }
    draw = ADA.part("stripe")
    for count in range(20):
        hashes = {option: number(f"{seed}{count}\n{as_text[option]}") for option in bank}
        assert draw.pick(bank) == max(bank, key=hashes.get)
    found = [draw.integer(1, 6) for _ in range(20)]
    assert found == [
        max(range(1, 7), key=lambda n: number(f"{seed}{count}\n{n}")) for count in range(20, 40)
    ]


def test_shuffle_and_sample_go_down_from_the_highest_hash():
    seed = "learner\nbench-7\nada example\n00-start-here\nq2\n0\n"
    falling = sorted("abcdefg", key=lambda letter: -number(f"{seed}'{letter}'"))
    assert ADA.part("q2").shuffle("abcdefg") == tuple(falling)
    assert ADA.part("q2").sample("abcdefg", 3) == tuple(falling[:3])


LEARNERS = [Draw(f"learner {number}") for number in range(2000)]
SIX = ("473", "224", "681", "152", "333", "472")


def test_one_option_more_moves_one_learner_in_seven():
    before = [draw.part("code").pick(SIX) for draw in LEARNERS]
    after = [draw.part("code").pick((*SIX, "103")) for draw in LEARNERS]
    moved = [new for old, new in zip(before, after, strict=True) if old != new]
    assert set(moved) == {"103"}
    assert 0.12 < len(moved) / len(LEARNERS) < 0.165  # 1/7 and three standard deviations of it


def test_a_wider_range_moves_few_and_a_longer_list_keeps_its_order():
    wider = sum(draw.part("n").integer(1, 6) != draw.part("n").integer(1, 7) for draw in LEARNERS)
    assert wider / len(LEARNERS) < 0.2
    for draw in LEARNERS[:50]:
        longer = draw.part("order").shuffle("abcdefg")
        assert tuple(one for one in longer if one != "g") == draw.part("order").shuffle("abcdef")


def test_options_without_a_fixed_written_form_are_refused():
    with pytest.raises(TypeError, match="a text, a number or a tuple"):
        ADA.part("q").pick([object(), object()])


def test_the_demo_variant_takes_the_first_of_a_bank_and_orders_by_place():
    """6 is the last digit of `printf 'demo\\n03-capacitor-markings\\nq1\\n0' | sha256sum`."""
    draw = DemoDraw.of("03-capacitor-markings").part("q1")
    assert draw.shuffle("0123456789abcdef")[0] == "6"
    assert draw.pick(SIX) == draw.pick((*SIX, "103")) == "473"
    first, second = (DemoDraw.of("x").part("q") for _ in range(2))
    assert first.shuffle("abcd") == tuple(
        "abcd"["wxyz".index(one)] for one in second.shuffle("wxyz")
    )


@pytest.mark.parametrize("seed", ["0", "1", "random"])
def test_the_same_in_a_fresh_process_whatever_the_hash_seed(seed):
    code = (
        "from repairlib.core.draws import Draw;"
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


def test_other_learner_group_or_lesson_is_another_variant():
    draws = [
        Draw.for_learner("c", "a", "1"),
        Draw.for_learner("c", "b", "1"),
        Draw.for_learner("d", "a", "1"),
        Draw.for_learner("c", "a", "2"),
        DemoDraw.of("1"),
    ]
    assert len({draw.shuffle(range(50)) for draw in draws}) == len(draws)


def test_drawing_for_one_question_leaves_the_others_as_they_were():
    first, second = Draw("x"), Draw("x")
    first.part("q1").shuffle(range(9))
    assert first.part("q2").shuffle(range(9)) == second.part("q2").shuffle(range(9))


def test_nothing_between_is_refused():
    with pytest.raises(ValueError, match="nothing lies between"):
        ADA.part("q").integer(2, 1)


@given(st.text(), st.text(), st.lists(st.integers(), max_size=30))
def test_shuffle_keeps_every_item(group, name, items):
    assert sorted(Draw.for_learner(group, name, "x").shuffle(items)) == sorted(items)


def test_all_numbers_come_up_about_equally_often():
    draw = Draw("even")
    counts = [0] * 6
    for _ in range(6000):
        counts[draw.integer(1, 6) - 1] += 1
    assert all(850 < count < 1150 for count in counts)
