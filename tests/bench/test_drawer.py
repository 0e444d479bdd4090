"""Which new parts there are at the bench, and what is read off the old one."""

import pytest

from repairlib.bench import Attempt, Task, demo_set, read_faults, read_move, walked
from repairlib.bench.drawer import MADE_AMPS, MADE_VOLTS, as_listed, figures_due, listed, taken_from
from repairlib.core.errors import RepairlibError
from repairlib.core.series import is_made

SETS = ("desk radio", "keyboard", "label maker", "network switch", "printer controller")
RADIO, SWITCH = demo_set("desk radio"), demo_set("network switch")


def fitted(typed, of=RADIO, faults=""):
    """What is told when a part is taken out and another one is fitted, as `C1 220 µF 25 V`."""
    name = typed.split()[0]
    attempt = Attempt(Task(of, read_faults(faults, of) if faults else (), "drawer"))
    if attempt.state.place(name).fitted:
        attempt = attempt.after(f"take out {name}")
    attempt = attempt.after(f"clean {name}").after(f"fit {typed}").after(f"look {name} with lens")
    told = [one.told.words.replace("\u00a0", " ") for one in attempt.done[-2:]]
    return *told, attempt


@pytest.mark.behaviour
@pytest.mark.parametrize("title", SETS)
def test_what_the_list_of_a_set_says_lies_in_the_drawer(title):
    of = demo_set(title)
    for part in of.parts:
        if part.mains or not figures_due(part) or part.name == of.feed:
            continue
        assert taken_from(part, listed(part), None) == listed(part)
        assert read_move(f"fit {part.name}{as_listed(part)}", of).figures == listed(part)


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("typed", "printed"),
    [
        ("F1 10 A", "printed 10 A"),
        ("F1 100 mA", "printed 100 mA"),
        ("D1 20 V", "printed 20 V"),
        ("U1 5 V", "printed 5 V"),
        ("U1", "printed 9 V"),
        ("R2 0 Ω", "printed 0 Ω"),
        ("R2 15 Ω", "printed 15 Ω"),
        ("C1 220 µF 25 V", "printed 220 µF 25 V"),
        ("C1 2200 µF 16 V turned", "printed 2200 µF 16 V; its plus end points down"),
        ("C1", "printed 2200 µF 25 V; its plus end points up"),
        ("C4 100 nF 50 V", "nothing printed on it"),
    ],
)
def test_the_lens_shows_what_is_printed_on_the_part_that_is_in(typed, printed):
    assert printed in fitted(typed)[1]


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("F1 20 A", "not made"),
        ("D1 10 V", "not made"),
        ("R2 0.1 Ω", "slip"),
        ("R2 150 kΩ", "slip"),
        ("R2 155 Ω", "not made"),
        ("R2 -5 Ω", "no part"),
        ("C1 0 µF", "no part"),
        ("C1 0 V", "no part"),
        ("C1 -5 V", "no part"),
        ("C1 2200 F 25 V", "slip"),
        ("C1 2200 µF 2500 V", "not made"),
        ("C1 2200 µF 50 V", "fits a place"),
        ("C1 10 mF 16 V", "fits a place"),
        ("C1 2500 µF", "not made"),
        ("C4", "nothing is printed"),
        ("U1 7 V", "not made"),
    ],
)
def test_what_is_not_made_or_has_no_room_is_refused_in_one_line(typed, why):
    with pytest.raises(RepairlibError, match=why) as refused:
        fitted(typed)
    assert "\n" not in str(refused.value)


@pytest.mark.behaviour
def test_what_was_read_off_the_old_one_is_said_so_that_it_can_be_checked():
    words = fitted("C1")[0]
    assert "printed on the old one: 2200 µF 25 V, its plus end points up" in words
    assert "old one" not in fitted("C1 2200 µF 25 V")[0]
    copied = fitted("R2", faults="R2 wrong value 1.5 kΩ")
    assert "1.5 kΩ" in copied[0] and copied[2].state.place("R2").fitted.value == 1500
    right = fitted("R2 150 Ω", faults="R2 wrong value 1.5 kΩ")
    assert right[2].state.place("R2").fitted.value is None


@pytest.mark.behaviour
def test_a_place_that_was_empty_has_nothing_to_read():
    with pytest.raises(RepairlibError, match="there to read"):
        fitted("C2", SWITCH, "C2 gone")
    assert "100 µF 4 V" in fitted("C2 100 µF 4 V", SWITCH, "C2 gone")[0]
    with pytest.raises(RepairlibError, match="fits a place"):
        fitted("C2 100 µF 50 V", SWITCH, "C2 gone")


@pytest.mark.behaviour
def test_a_link_of_no_ohms_is_a_part_like_any_other():
    attempt = fitted("R2 0 Ω")[2].after("ohms R2")
    assert attempt.done[-1].told.reading.value <= 0.4  # with the leads of the meter
    attempt = attempt.after("plug in").after("volts pre rail")
    assert abs(attempt.done[-1].told.reading.value) < 0.05


@pytest.mark.from_memory("IEC 60127-2 takes its ratings from R10: each the tenth root of ten more")
def test_the_ratings_of_fuses_follow_the_step_of_r10():
    for one in MADE_AMPS:
        nearest = min(
            (10 ** (step / 10) for step in range(-20, 11)), key=lambda r: abs(r / one - 1)
        )
        assert abs(nearest / one - 1) < 0.03


@pytest.mark.from_memory("common supplies: 3.3 V, 5 V, 12 V; a rectifier of 1 A is sold from 50 V")
def test_the_usual_regulators_and_diodes_are_there():
    assert {3.3, 5.0, 12.0} <= set(MADE_VOLTS["regulator"])
    assert {50.0, 100.0, 1000.0} <= set(MADE_VOLTS["diode"])
    assert is_made(2200e-6, "E6")


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("typed", "accepted"), [("fit C6 10 µF 5 V", "6.3 V"), ("fit F1 3 A", "1.25 A")]
)
def test_nothing_is_offered_that_is_rated_worse_than_the_old_one(typed, accepted):
    """Neither fewer volts for a capacitor nor a larger fuse, however near the figure is."""
    part = typed.split()[1]
    attempt = walked(
        Task(demo_set("network switch"), (), "x"), [f"take out {part}", f"clean {part}"]
    )
    with pytest.raises(RepairlibError) as refused:
        attempt.after(typed)
    assert str(refused.value).endswith(f"Accepted: {accepted}")
