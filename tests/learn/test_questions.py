"""What each kind of question makes of an answer as typed."""

import json
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.quantity import Quantity
from repairlib.learn import Choice, Mistake, Number, Order, Table, before, mark
from tests import fuzz

CODE = Number(
    id="q1",
    points=2,
    unit="F",
    answer=100e-9,
    mistakes=[Mistake(104e-12, "The third figure is no figure of the value.")],
    hint="Look at the code again.",
)
RATING = Number(
    id="q2",
    points=2,
    unit="V",
    answer=25,
    margin=10,
    mistakes=[Mistake(lambda v: v < 16, "It would burst.", hazard="heat and fire")],
)
STRIPE = Choice(
    id="q3",
    options=("Towards plus", "Towards minus", "Either way"),
    answer="Towards minus",
    mistakes=[
        Mistake("Towards plus", "What happens at power-up?", hazard="heat and fire"),
        Mistake("Either way", "Is the part polarised?"),
    ],
)
STEPS = Order(
    id="q4",
    points=3,
    steps=("unplug", "discharge", "measure", "touch"),
    shown=("touch", "measure", "unplug", "discharge"),
    mistakes=[
        Mistake(before("touch", "measure"), "It may bite.", hazard="stored charge"),
        Mistake(before("measure", "discharge"), "What is the measurement to prove?"),
    ],
)
PLAN = Table(
    id="q5",
    points=4,
    cells={
        "C3": {
            "capacitance": Number(answer=47e-6, unit="F", tolerance=0.2),
            "voltage": Number(
                answer=25,
                unit="V",
                mistakes=[Mistake(lambda v: v < 16, "Too low.", hazard="mains")],
            ),
        },
        "C7": {
            "capacitance": Number(answer=1e-6, unit="F"),
            "fit": Choice(options=("polar", "non-polar"), answer="non-polar"),
        },
    },
)
ALL = [CODE, RATING, STRIPE, STEPS, PLAN]
FULL_PLAN = {
    "C3": {"capacitance": "47 µF", "voltage": "25"},
    "C7": {"capacitance": "1000 nF", "fit": "b"},
}


@pytest.mark.parametrize("text", ["100 nF", "0.1 µF", "0,1uF", " 100n ", "1e-7 F", "100.9 nF"])
def test_right_numbers(text):
    assert CODE.judge(text).state == "right"


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("104 pF", "The third figure is no figure of the value."),
        ("100 µF", "The figures are right, the size is not. Check the prefix."),
        ("1 µF", "The figures are right, the size is not. Count the zeros again."),
        ("33 nF", "Look at the code again."),
        ("-100 nF", "Look at the code again."),
        ("0 F", "Look at the code again."),
    ],
)
def test_wrong_numbers_get_the_hint_of_their_mistake(text, hint):
    judged = CODE.judge(text)
    assert (judged.state, judged.share, judged.says) == ("wrong", 0.0, (hint,))


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("100", "'100': the unit is missing. Accepted: for example 8.2 nF"),
        ("100 V", "Accepted"),
        ("a lot", "Accepted"),
        ("100 nF 5", "Accepted"),
        ("1,000 pF", "1,000"),
    ],
)
def test_text_that_cannot_be_read_says_what_would_be(text, said):
    judged = CODE.judge(text)
    assert judged.state == "cannot read"
    assert said in judged.says[0]


@pytest.mark.parametrize("text", ["", "  ", "\n\t"])
def test_blank_is_unanswered(text):
    assert {one.judge(text).state for one in ALL} == {"unanswered"}


def test_unsafe_fails_even_inside_the_tolerance():
    judged = RATING.judge("15.5 V")
    assert RATING.share(15.5) == 1  # by the number alone it would be right
    assert (judged.state, judged.share) == ("unsafe", 0.0)
    assert judged.says == ("Danger (heat and fire): It would burst.",)
    assert judged.hazards == ("heat and fire",)


def test_a_dangerous_mistake_must_name_a_known_hazard():
    with pytest.raises(ValueError, match="no such hazard"):
        Mistake(1, "Ouch.", hazard="sharks")


def test_a_plain_count_takes_no_unit():
    count = Number(answer=12, unit="")
    assert count.judge("12").state == "right"
    assert count.judge("12 V").state == "cannot read"


@pytest.mark.parametrize("text", ["b", "B", " towards  MINUS ", "Towards minus"])
def test_choice_by_letter_or_text(text):
    assert STRIPE.judge(text).state == "right"


def test_choice_wrong_unsafe_unreadable():
    assert STRIPE.judge("c").says == ("Is the part polarised?",)
    assert STRIPE.judge("a").state == "unsafe"
    assert STRIPE.judge("d").says[0].startswith("'d': this is not one of the options. Accepted: ")


@pytest.mark.parametrize(
    "bad", [{"answer": "Up"}, {"options": ("a b", "A  B", "Towards minus")}, {"mistakes": [1]}]
)
def test_a_choice_written_wrongly_is_refused_when_the_lesson_is_made(bad):
    right = {"options": ("Towards minus", "x"), "answer": "Towards minus"}
    if "mistakes" in bad:
        bad = {"mistakes": [Mistake("nowhere", "Hm.")]}
    with pytest.raises(ValueError, match="not an option"):
        Choice(**right | bad)


@pytest.mark.parametrize("text", ["c d b a", "CDBA", "c, d, b, a", "unplug > d > measure > a"])
def test_order_typed_in_several_ways(text):
    assert STEPS.judge(text).state == "right"


def test_order_by_numbers_as_the_form_saves_it():
    numbers = {"touch": "4", "measure": "3", "unplug": "1", "discharge": "2"}
    assert STEPS.judge(numbers).state == "right"
    assert STEPS.judge(numbers | {"touch": "3"}).state == "cannot read"
    assert STEPS.judge(numbers | {"touch": ""}).state == "cannot read"
    assert STEPS.judge(dict.fromkeys(numbers, "")).state == "unanswered"


def test_order_gives_a_share_for_each_step_in_place():
    judged = STEPS.judge("c b d a")
    assert (judged.state, judged.share) == ("partly right", 0.5)
    assert judged.says == ("What is the measurement to prove?",)
    assert STEPS.judge("d c b a").says == ("2 of 4 steps are in their place.",)


def test_order_with_an_unsafe_step_gets_nothing():
    judged = STEPS.judge("c d a b")
    assert (judged.state, judged.share, judged.hazards) == ("unsafe", 0.0, ("stored charge",))


def test_a_drawn_order_never_shows_the_answer():
    assert Order(steps=("a 1", "b 2", "c 3"), shown=("a 1", "b 2", "c 3")).judge("abc").share < 1


def test_table_gives_a_share_for_each_cell():
    assert PLAN.judge(FULL_PLAN).state == "right"
    part = PLAN.judge({"C3": {"capacitance": "47 nF", "voltage": "25 V"}})
    assert (part.state, part.share) == ("partly right", 0.25)
    assert part.says == (
        "1 of 4 cells are right.",
        "C3, capacitance: The figures are right, the size is not. Check the prefix.",
    )


def test_table_with_an_unsafe_cell_gets_nothing():
    judged = PLAN.judge(FULL_PLAN | {"C3": {"capacitance": "47 µF", "voltage": "10 V"}})
    assert (judged.state, judged.share) == ("unsafe", 0.0)
    assert "C3, voltage: Danger (mains): Too low." in judged.says


def test_table_row_typed_as_one_line():
    typed = PLAN.as_typed({"C3": "47 µF | 25", "C7": "1 µF | non-polar"})
    assert PLAN.judge(typed).state == "right"
    with pytest.raises(ValueError, match="3 entries for 2 columns"):
        PLAN.as_typed({"C3": "47 µF | 25 | 3"})


def test_table_answered_with_text_cannot_be_read():
    assert PLAN.judge("47 µF").state == "cannot read"


texts = st.text() | st.sampled_from(["100 nF", "a", "b a c d", "1e999 F", "nan V", "٣٣ V", "∞"])
tables = st.dictionaries(
    st.sampled_from(["C3", "C7", "touch", "x"]),
    texts | st.dictionaries(st.sampled_from(["capacitance", "fit", "y"]), texts),
)


@given(st.dictionaries(st.sampled_from(["q1", "q2", "q3", "q4", "q5"]), texts | tables))
def test_no_answer_whatever_raises(answers):
    sheet = mark(ALL, answers)
    assert 0 <= sheet.points <= sheet.out_of
    assert str(sheet).count("\n") >= len(ALL) + 1


@pytest.mark.parametrize("typed", [",", ";", ", ;", ",,,", ">", " > ", "; ,\t"])
def test_signs_without_a_letter_are_no_order(typed):
    ask = Order(steps=("touch", "wait", "measure"), shown=("wait", "measure", "touch"))
    assert ask.judge(typed).state == "cannot read"


@pytest.mark.parametrize("figure", ["1e308", "1.7e308", "1e-308", "5e-324", "1e-320"])
@pytest.mark.parametrize("answer", [1e-12, 3.3, 4.7e6])
@pytest.mark.parametrize("unit", ["V", "Ω", "s"])
def test_a_number_as_large_or_small_as_there_is_one_is_just_wrong(figure, answer, unit):
    assert Number(answer=answer, unit=unit).judge(figure).state == "wrong"


@pytest.mark.parametrize(
    "given", [5, None, True, float("nan"), 10**5000, Quantity(5, "V"), {1, 2}], ids=range(7)
)
def test_an_answer_by_code_that_is_no_text_is_saved_as_one_and_never_raises(given):
    for one in ALL:
        typed = one.as_typed(given)
        assert one.judge(typed).state in ("cannot read", "wrong", "unsafe")
        assert json.dumps(typed)


@pytest.mark.parametrize(
    ("typed", "state"),
    [
        ("47.000 Ω", "cannot read"),
        ("102.100 Ω", "cannot read"),
        ("8.200", "cannot read"),
        ("102,100 Ω", "cannot read"),
        ("102100 Ω", "right"),
        ("102.1 kΩ", "right"),
        ("102.100 kΩ", "right"),
        ("102'100 Ω", "right"),
        ("47.00 Ω", "unsafe"),
        ("47.000 kΩ", "unsafe"),
        ("0.125 Ω", "unsafe"),
    ],
)
def test_a_dot_that_may_part_thousands_is_asked_back(typed, state):
    burns = Mistake(lambda ohm: ohm < 90e3, "That one would burn.", hazard="heat and fire")
    assert Number(answer=102.1e3, unit="Ω", mistakes=[burns]).judge(typed).state == state


def test_a_reading_with_three_places_that_is_right_is_right():
    assert Number(answer=4.7, unit="V").judge("4.700 V").state == "right"


@pytest.mark.parametrize(
    "typed",
    ["59.99999999999999 s", "0.016666666666 h", "59.5 s", "60.4 sec", "≈ 60 s", "1 minute"],
)
def test_a_bound_of_danger_has_the_tolerance_of_the_answer(typed):
    hasty = Mistake(lambda second: second < 60, "It is still charged.", hazard="stored charge")
    ask = Number(answer=60, unit="s", mistakes=[hasty])
    assert ask.judge(typed).state == "right"
    assert ask.judge("59 s").state == ask.judge("58 s").state == "unsafe"


def test_a_quantity_given_by_code_keeps_all_its_digits():
    ask = Number(answer=4747, unit="Ω", tolerance=0.001)
    assert ask.judge(ask.as_typed(Quantity(4747, "Ω", digits=2))).state == "right"


def test_any_answer_to_any_question_of_the_lessons_gets_a_judgement():
    """In short; `python -m tests.fuzz answers 100000` asks more."""
    seed = random.SystemRandom().randrange(10**9)
    assert not [f"seed {seed}: {wrong}" for wrong in fuzz.answers(random.Random(seed), 4000)]


def test_a_very_long_answer_is_refused_in_one_short_line():
    for one in ALL:
        judged = one.judge("9" * 10_000_000)
        assert judged.state == "cannot read"
        assert len(judged.says[0]) < 300
