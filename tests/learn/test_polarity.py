"""The exercise of lesson 04: its answers against their sources, in every variant."""

import re

import pytest

from repairlib.learn import Table, mark
from repairlib.learn.questions.polarity import (
    DEAD,
    DIAGRAM,
    FIT,
    LOOK,
    METER,
    POWER,
    STEPS,
)
from repairlib.learn.questions.polarity_judgements import (
    ALUMINIUM,
    CANNOT_TELL,
    HARMLESS,
    JUDGEMENTS,
    OTHERS,
    REVERSED,
    RIGHT,
    TANTALUM,
    judgement,
)
from repairlib.polarity import check_polarity, part_mark
from tests.documents import document
from tests.learn.asking import VARIANTS, asks_of

questions, warm_up = asks_of("04-polarity")

# What each drawn mark shows, typed in by hand from the source in front of it.
PUBLISHED = {
    "black segment on top": "negative",  # Panasonic FC and FN SMD
    "bar at one end": "positive",  # Panasonic TEH, on a flat chip
    "plus sign": "positive",  # AVX TAP and TEP
    "band at one end": "cathode",  # Navy training handbook
}
FROM_MEMORY = {
    "stripe with minus signs": "negative",
    "line with arrows": "negative",
    "coloured segment on top": "negative",
    "flat on the rim": "cathode",
    "green mark": "not fixed",
    "dot": "not fixed",  # on a chip LED
}
COMMON_PRACTICE = {"notch at one end": "pin 1", "triangle": "pin 1"}
SHOWN = PUBLISHED | FROM_MEMORY | COMMON_PRACTICE
OPPOSITE = {"positive": "negative", "negative": "positive", "cathode": "anode"}

# What each mark on a board shows beside a capacitor, a can, a diode, an LED, pins.
BOARD = {
    "plus sign": {"capacitor": "positive", "LED": "anode"},
    "minus sign": {"capacitor": "negative"},
    "two cut corners of the outline": {"capacitor": "positive"},
    "letter K": {"diode": "cathode", "LED": "cathode"},
    "letter A": {"diode": "anode"},
    "bar of the diode symbol": {"diode": "cathode"},
    "white bar": {"diode": "cathode"},
    "flat side of the outline": {"LED": "cathode"},
    "figure 1": {"pins": "pin 1"},
    "dot": {"pins": "pin 1"},
    "square pad": {"pins": "pin 1"},
}


def one(name, draw):
    (found,) = (ask for ask in questions(draw) if ask.id == name)
    return found


def alt(ask):
    return ask.picture().alt


def kind_of(text):
    kinds = {"dome": "LED", "lens": "LED", "cylinder with a lead": "diode"}
    kinds |= {"four leads on each": "pins", "connector": "pins"}
    return next((kind for words, kind in kinds.items() if words in text), "capacitor")


def by_hand(text):
    """Right, reversed or cannot tell, from what the drawing shows: the board's mark is left."""
    part, board = text.split(" Below it its place on the board. On the board: ")
    name, side = re.search(r"Marks: ([^(]+) \((left|right)", part).groups()
    of_part = SHOWN[name]
    of_board = BOARD.get(board.split(" (")[0].rstrip("."), {}).get(kind_of(part), "not fixed")
    if "not fixed" in (of_part, of_board):
        return CANNOT_TELL
    at_left = of_part if side == "left" else OPPOSITE.get(of_part, "away from pin 1")
    return RIGHT if at_left == of_board else REVERSED


PLACES = ALUMINIUM + TANTALUM + OTHERS


class Every:
    """A draw that picks one certain place."""

    def __init__(self, place):
        self.place = place

    def pick(self, bank):
        return self.place


def place_with_its_source(place):
    """A verdict is as good as its weaker half: the part's mark or the board's."""
    by_memory = part_mark(place[0]).mark in FROM_MEMORY or place[1] == "bar of the diode symbol"
    by_memory = by_memory or place[0].startswith("polymer")
    source = pytest.mark.from_memory(place[0]) if by_memory else pytest.mark.common_practice
    return pytest.param(place, id=f"{place[0]}, {place[1]}, {place[2]}", marks=source)


@pytest.mark.parametrize("place", [place_with_its_source(place) for place in PLACES])
def test_every_place_that_is_judged(place):
    ask = judgement(Every(place), (), "heat and fire")
    right = by_hand(alt(ask))
    assert [said for said in JUDGEMENTS if ask.judge(said).state == "right"] == [right]
    for said in JUDGEMENTS:
        if said != right:
            judged = ask.judge(said)
            goes_in_wrong = said != CANNOT_TELL and place[0] not in HARMLESS
            assert judged.says and (judged.state == "unsafe") == goes_in_wrong


@pytest.mark.parametrize("place", PLACES)
def test_lesson_and_exercise_judge_alike(place):
    """The panel must not contradict the sheet."""
    rule, board, fitted, answer = place
    kind = part_mark(rule)
    verdict = check_polarity(kind.family, kind.mark, board, fitted).verdict
    assert verdict == {RIGHT: "right", REVERSED: "reversed", CANNOT_TELL: "cannot tell"}[answer]


@pytest.mark.parametrize("name", ["q2", "q3", "q4"])
def test_every_judgement_comes_up(name):
    assert {one(name, draw).answer for draw in VARIANTS} == set(JUDGEMENTS)


def left_marks(ask):
    """Letter: the mark at that part's left end, and whether its body is a polymer one."""
    found = re.findall(r"(\w): (.*) Marks: ([^(]+) \(left", alt(ask))
    assert [letter for letter, *_ in found] == list("ABCD")
    return {letter: (name, "dark moulded" in looks) for letter, looks, name in found}


def check_left_ends(source, polymer):
    """The marks of this source and kind of body that come up, each with its end."""
    seen = set()
    for draw in VARIANTS:
        ask = one("q1", draw)
        for letter, (name, is_polymer) in left_marks(ask).items():
            if name in source and is_polymer == polymer:
                assert (
                    ask.cells[letter]["its left end"].judge(end_of(source[name])).state == "right"
                )
                seen.add(name)
    return seen


def end_of(shown):
    """What is typed for an end that a mark shows."""
    return shown.replace("not fixed", "the mark does not tell")


TELL_ENDS = (
    document("Panasonic FC and FN SMD", "black on top is minus"),
    document("Panasonic TEH", "the bar is plus"),
    document("AVX TAP and TEP", "the plus sign"),
    document("Navy diode markings", "bands are at the cathode"),
)


@pytest.mark.published("; ".join(TELL_ENDS))
def test_left_ends_that_data_sheets_tell():
    assert check_left_ends(PUBLISHED, polymer=False) == set(PUBLISHED)


@pytest.mark.from_memory("stripe, arrows, polymer can, chip LED; bar of a polymer chip")
def test_left_ends_from_memory():
    by_memory = {name: FROM_MEMORY[name] for name in FROM_MEMORY if "flat" not in name}
    assert check_left_ends(by_memory, polymer=False) == set(by_memory) - {"green mark"}
    assert check_left_ends({"bar at one end": "positive"}, polymer=True) == {"bar at one end"}


@pytest.mark.common_practice
def test_a_capacitor_turned_round_is_dangerous():
    seen = set()
    for draw in VARIANTS:
        ask = one("q1", draw)
        for letter, (name, _) in left_marks(ask).items():
            if SHOWN[name] in ("positive", "negative"):
                turned = OPPOSITE[SHOWN[name]]
                cell = ask.cells[letter]["its left end"]
                assert cell.judge(turned).hazards == ("heat and fire",)
                assert ask.judge({letter: {"its left end": turned}}).state == "unsafe"
                seen.add(name)
    assert {"bar at one end", "stripe with minus signs"} <= seen


def test_typed_mistakes_of_the_left_end():
    hints = set()
    for draw in VARIANTS:
        ask = one("q1", draw)
        for letter, row in ask.cells.items():
            cell = row["its left end"]
            if cell.answer == "cathode":
                (said,) = cell.judge("anode").says
                assert said == "What does the band show?" or said.startswith("A Zener works in")
                hints.add(said)
            elif cell.answer == "the mark does not tell":
                assert "every maker" in cell.judge("cathode").says[0], letter
    assert len(hints) == 2


@pytest.mark.from_memory("leads of a used part say nothing, its stripe is negative")
def test_used_part_goes_by_its_stripe():
    seen = set()
    for draw in VARIANTS:
        ask = one("q5", draw)
        stripe = re.search(r"stripe with minus signs \((left|right)\)", alt(ask)).group(1)
        plus = {"left": "right", "right": "left"}[stripe]
        assert ask.judge(f"The {plus} lead").state == "right"
        assert ask.judge(f"The {stripe} lead").hazards == ("flying leads and eyes",)
        assert "length of the leads" in ask.judge(f"The {stripe} lead").says[0]
        assert ask.judge("c").state == "unsafe" and ask.judge("d").state == "wrong"
        seen.add(stripe)
    assert seen == {"left", "right"}


@pytest.mark.common_practice
def test_zener_band_faces_the_more_positive_side():
    by_sign = {"+": "To the ", "−": "To ground"}
    seen = set()
    for draw in VARIANTS:
        ask = one("q6", draw)
        sign = re.search(r"holds a rail at ([+−])", ask.prompt).group(1)
        (right,) = (option for option in ask.options if ask.judge(option).state == "right")
        assert right.startswith(by_sign[sign])
        plain = {"+": "To ground", "−": next(o for o in ask.options if o.endswith("rail"))}[sign]
        assert "like a plain diode" in ask.judge(plain).says[0]
        assert ask.judge(plain).hazards == ("heat and fire",)
        seen.add(sign)
    assert seen == {"+", "−"}


LED_FACTS = {
    "draws the mark at the cathode": "is at K",
    "draws the mark at the anode": "is at A",
    "red probe at the mark": "is at A",
    "black probe at the mark": "is at K",
    "draws the anode at the end without a mark": "is A",
    "draws the cathode at the end without a mark": "is K",
    "red probe at the end without a mark": "is A",
    "black probe at the end without a mark": "is K",
}


def right_of_led(draw):
    """The question on the chip LED, its right option and the fact that it gives, or ""."""
    ask = one("q7", draw)
    (right,) = (option for option in ask.options if ask.judge(option).state == "right")
    return ask, right, next((fact for fact in LED_FACTS if fact in ask.prompt), "")


@pytest.mark.published(
    "Duane Benson, Screaming Circuits blog, How NOT to mark a diode, January 2013: two LEDs of one "
    "maker, one mark, at opposite ends by their data sheets"
)
def test_mark_of_a_chip_led_is_not_trusted():
    marks = set()
    for draw in VARIANTS:
        ask, right, known = right_of_led(draw)
        marks.add(re.search(r"Marks: ([^(]+) \(", alt(ask)).group(1))
        if not known:
            assert not right.startswith("No further test")
            trusting = [option for option in ask.options if option.startswith("No further test")]
            assert len(trusting) == 2
            assert all("You trust this mark" in ask.judge(option).says[0] for option in trusting)
    assert marks == {"dot", "notch", "green mark"}


@pytest.mark.common_practice
def test_data_sheet_or_diode_test_tells_the_ends_of_a_chip_led():
    facts = set()
    for draw in VARIANTS:
        _, right, known = right_of_led(draw)
        assert right.endswith(LED_FACTS.get(known, "the black probe is on K"))
        assert ("end without the" in right) == ("end without a mark" in known)
        facts.add(known)
    assert facts == {"", *LED_FACTS}


@pytest.mark.common_practice
def test_plus_goes_to_ground_on_a_negative_rail_only():
    seen = set()
    for draw in VARIANTS:
        ask = one("q8", draw)
        ground = re.search(r"(pad \d) to the ground", ask.prompt).group(1)
        sign = re.search(r"of the ([+−])\d+\sV regulator", ask.prompt).group(1)
        other = {"pad 1": "pad 2", "pad 2": "pad 1"}[ground]
        plus, minus = (other, ground) if sign == "+" else (ground, other)
        assert ask.judge(f"Into {plus}").state == "right"
        for option in ask.options:
            if option != f"Into {plus}":
                assert ask.judge(option).hazards == ("heat and fire",)
        assert "reversed" in ask.judge(f"Into {minus}").says[0]
        assert "guess" in ask.judge("Into either pad").says[0]
        seen.add((sign, ground))
    assert len(seen) == 4


@pytest.mark.common_practice
def test_polar_part_never_goes_into_a_bipolar_place():
    for draw in VARIANTS:
        ask = one("q9", draw)
        assert alt(ask).endswith("On the board: NP or BP.")
        states = {option: ask.judge(option).state for option in ask.options}
        assert sorted(states.values()) == ["right", "unsafe", "unsafe", "unsafe"]
        assert next(o for o in states if states[o] == "right").startswith("Leave the place empty")


@pytest.mark.common_practice
def test_order_of_work_when_the_mark_is_gone():
    ask = one("q10", VARIANTS[0])
    assert ask.judge(" > ".join([DEAD, LOOK, DIAGRAM, METER, FIT, POWER])).state == "right"
    on_a_guess = ask.judge(" > ".join([DEAD, LOOK, DIAGRAM, FIT, METER, POWER]))
    assert on_a_guess.hazards == ("heat and fire",) and "guess" in on_a_guess.says[0]
    alive = ask.judge(" > ".join([LOOK, DEAD, DIAGRAM, METER, FIT, POWER]))
    assert alive.hazards == ("stored charge",)
    for powered in (
        [DEAD, POWER, LOOK, DIAGRAM, METER, FIT],
        [DEAD, LOOK, DIAGRAM, METER, POWER, FIT],
    ):
        judged = ask.judge(" > ".join(powered))
        assert judged.hazards == ("heat and fire",) and "under power" in judged.says[0]
    swapped = ask.judge(" > ".join([DEAD, LOOK, METER, DIAGRAM, FIT, POWER]))
    assert swapped.state == "partly right" and "Which rail" in swapped.says[0]


@pytest.mark.parametrize("draw", VARIANTS[:30], ids=lambda draw: draw.seed)
def test_right_answers_of_every_variant_get_full_marks(draw):
    answers = {}
    for ask in questions(draw):
        if isinstance(ask, Table):
            cells = {row: list(columns.items()) for row, columns in ask.cells.items()}
            answers[ask.id] = {
                row: {name: cell.answer for name, cell in columns} for row, columns in cells.items()
            }
        else:
            answers[ask.id] = getattr(ask, "answer", None) or " > ".join(STEPS)
    sheet = mark(questions(draw), answers)
    assert sheet.points == sheet.out_of == 19


def test_no_question_shows_its_answer():
    told = re.compile(r"positive end|negative end|is the cathode|end is ", re.IGNORECASE)
    for draw in VARIANTS[:20]:
        for ask in questions(draw):
            assert ask.picture is None or not told.search(alt(ask))
            said = [mistake.hint for mistake in ask.mistakes]
            assert not [hint for hint in said if getattr(ask, "answer", "-") in hint]


@pytest.mark.from_memory("marks of the practised parts; pin 1 of a chip is common practice")
def test_practice_is_right_too():
    seen = set()
    for draw in VARIANTS:
        plus, place, pin = warm_up(draw)
        name, side = re.search(r"Marks: ([^(]+) \((left|right)", alt(plus)).groups()
        other = {"left": "right", "right": "left"}[side]
        end = side if SHOWN[name] == "positive" else other
        assert plus.judge(f"the {end} end").state == "right"
        assert place.judge(by_hand(alt(place))).state == "right"
        at_left = re.search(r"(notch at one end|dot) \((left|right)\)", alt(pin)).group(2) == "left"
        assert pin.judge("lower left" if at_left else "upper right").state == "right"
        seen.add((name, side))
    assert len(seen) == 10
