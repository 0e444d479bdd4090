"""Permits, readings, cards, agenda and kit: what they hold, and what they hold back."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.safety import HAZARDS
from repairlib.core.tables import demo_path
from repairlib.faces.class_commands import run_class
from repairlib.health import read_measured
from repairlib.learn import files
from repairlib.learn.exercise import LESSONS, ONE_EVENING, questions_of
from repairlib.learn.group import Group, Member
from repairlib.learn.learner import member_of
from repairlib.recap import plan
from repairlib.teach.instructor import Signed, instructor_file, sign, signed_for
from repairlib.teach.marked import Joined, Marked
from repairlib.teach.paper.agenda import BREAK, agenda, spread
from repairlib.teach.paper.cards import TURNED, all_cards, pocket_cards
from repairlib.teach.paper.hazard_sheet import hazard_sheet, hazards_of_group
from repairlib.teach.paper.kit import kit_list, kit_of
from repairlib.teach.paper.measuring_sheet import measuring_sheet, places_of, table_to_type
from repairlib.teach.paper.permits import SAFETY_LESSONS, permits, still_open
from tests.teach.hand_ins import EVENING, all_right

ADA, BEN = Member("Ada Example", "kite"), Member("Ben Example", "moss")
BENCH = Group("Tuesday bench", (ADA, BEN), ONE_EVENING)
SAFETY = BENCH._replace(lessons=SAFETY_LESSONS)


def answered(member: Member, *unsafe: tuple[str, str]) -> dict[str, Marked]:
    """Both safety lessons as their file gives them: right at first try, but for those named."""
    content = all_right(SAFETY, member, unsafe=unsafe)
    found = {}
    for lesson in SAFETY_LESSONS:
        joined = Joined(SAFETY, member, lesson)
        joined.add(member, content["lessons"][lesson], content["tries"][lesson], EVENING)
        found[lesson] = joined.marked()
    return found


@pytest.mark.behaviour
def test_a_permit_is_withheld_until_each_safety_question_was_right_at_first_try():
    safety = [
        (lesson, one.id)
        for lesson in SAFETY_LESSONS
        for one in questions_of(lesson, member_of(BENCH, ADA))
        if one.hazards()
    ]
    assert len(safety) >= 6
    assert not still_open(ADA, BENCH, answered(ADA))
    for one in safety:
        (due,) = still_open(ADA, BENCH, answered(ADA, one))
        assert (due.lesson, due.question.id) == one and due.state == "unsafe"
    given, to_talk = permits(BENCH, {"kite": answered(ADA, safety[1])}, {})
    assert "Bench permit</h1>" not in "".join(given.parts)
    told = "".join(to_talk.parts)
    assert "Ada Example (kite)" in told and "dangerous: A capacitor keeps its charge" in told
    assert told.count("Nothing is known") == 1 and "Ben Example (moss)" in told


@pytest.mark.behaviour
def test_a_permit_is_given_for_right_answers_or_a_signature_and_to_nobody_else():
    given, to_talk = permits(BENCH, {"kite": answered(ADA)}, {})
    assert "Ada Example" in "".join(given.parts) and "Ben E" not in "".join(given.parts)
    assert "Ben Example (moss)" in "".join(to_talk.parts)
    signed = {"moss": Signed("moss", BEN.name, "Ida Muster", "2026-11-29")}
    given, to_talk = permits(BENCH, {}, signed)
    told = "".join(given.parts)
    assert "Ben Example" in told and "Ida Muster" in told and "Ada" not in told


@pytest.mark.behaviour
def test_signing_is_kept_with_the_instructor_and_leaves_the_rest_of_the_file(tmp_path):
    files.write(tmp_path / "group.json", BENCH.to_dict())
    files.write(instructor_file(tmp_path), {"words": {"03": "heron"}})
    with pytest.raises(RepairlibError, match="moss"):
        run_class(["sign", str(tmp_path), "mosss", "--by", "Ida Muster"], False)
    with pytest.raises(RepairlibError, match="names nobody who signs"):
        sign(tmp_path, BENCH, "moss", "  ", "2026-11-29")
    said = run_class(["sign", str(tmp_path), "moss", "--by", "Ida Muster"], False)
    assert "Ben Example (moss) by Ida Muster" in said
    assert "not right at first: 00 q1 not answered, " in said  # what was signed for
    sign(tmp_path, BENCH, "moss", "Ada Muster", "2026-11-30")
    assert signed_for(tmp_path, BENCH) == {
        "moss": Signed("moss", BEN.name, "Ada Muster", "2026-11-30")
    }
    found, _ = files.read(instructor_file(tmp_path), bool)
    assert found["words"] == {"03": "heron"}


@pytest.mark.behaviour
def test_readings_written_on_paper_are_typed_back_and_read_by_the_plan():
    listed = demo_path("keyboard-parts.csv")
    places = places_of(listed)
    sheet = "".join(measuring_sheet(places, "keyboard").parts)
    assert all(f"<td>{place}</td>" in sheet for place, _ in places)
    typed = table_to_type(places).splitlines()
    assert [line.partition(",")[0] for line in typed[1:]] == [place for place, _ in places]
    filled = {"C4": "C4,310,0.9,120,,,bulged", "C42": "C42,130,9,120,,,nothing"}
    rows = [filled.get(line.partition(",")[0], line) for line in typed]
    read = read_measured("\n".join(rows), "readings.csv")
    parts = read.by_reference()
    assert set(parts) == {"C4", "C42"}
    assert parts["C42"]["esr"].value == 9 and parts["C42"]["esr"].frequency == 120
    assert parts["C4"].note == "bulged"
    made = plan(listed.read_text(encoding="utf-8"), measured=read)
    must_go = {one.reference: one.measured.stand for one in made.all_items if one.measured}
    assert must_go == {"C4": "must go", "C42": "must go"}


@pytest.mark.published("Vishay, Resistor Color Card, after IEC 60062: figures, zeros, tolerances")
def test_the_card_of_bands_is_that_of_the_standard():
    (bands,) = (one.says for one in all_cards() if one.title == "Bands")
    by_hand = [("red", 2, 2, "±2 %"), ("violet", 7, 7, "±0.1 %"), ("gold", "–", -1, "±5 %")]
    for colour, figure, power, within in by_hand:
        cells = f"<td>{figure}</td><td>× 10<sup>{power}</sup></td><td>{within}</td>"
        assert f"<th>{colour}</th>{cells}" in bands


@pytest.mark.published("Panasonic TEH and Nichicon CD: J is 6.3 V on tantalum and 63 V on a can")
def test_the_card_of_letters_warns_of_the_one_that_means_two_things():
    (card,) = (one for one in all_cards() if one.title == "Volts: one letter")
    assert "J is 6.3 V on a tantalum block and 63 V on a can" in card.says
    assert "from memory" in card.sources  # of some letters there is no document


def _says(title: str) -> str:
    (card,) = (one for one in all_cards() if one.title == title)
    return card.says


@pytest.mark.behaviour
def test_the_card_of_the_dead_bench_holds_all_that_is_to_be_done_and_who_comes_first():
    says = _says("First: make it dead")
    for one in (HAZARDS["mains"], HAZARDS["stored charge"]):
        assert all(f"<li>{said}</li>" in says for said in one.do)
        assert f"<b>{one.defer}</b>" in says


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("title", "hazards"),
    [
        ("Solders and the iron", ("heat and fire", "fumes and flux", "lead")),
        ("Limits of an ESD bench", ("wrist strap",)),
    ],
)
def test_a_card_of_work_that_can_hurt_carries_its_caution(title, hazards):
    says = _says(title)
    for key in hazards:
        assert f"<b>{HAZARDS[key].title}.</b> {HAZARDS[key].do[0]}" in says


@pytest.mark.published("Panasonic part number system, TEH; Nichicon CD: which letters they list")
@pytest.mark.parametrize(
    ("title", "read", "from_memory"),
    [
        ("Volts: digit and letter", "<th>E</th><td>2.5 V *</td><td>25 V</td><td>250 V</td>", "B"),
        ("Volts: one letter", "<th>V</th><td>35 V</td><td>35 V</td>", "e"),
    ],
)
def test_a_voltage_that_was_read_is_told_from_one_from_memory(title, read, from_memory):
    """1E and 2E are in the maker's list, 0E and the whole row of B are not."""
    says = _says(title)
    assert read in says
    (row,) = (one for one in says.split("<tr>") if f"<th>{from_memory}</th>" in one)
    assert row.count(" V *</td>") == row.count(" V") > 1


@pytest.mark.behaviour
def test_the_sign_of_what_is_from_memory_is_explained_where_it_stands_and_nowhere_else():
    signed = 0
    for one in "".join(pocket_cards().parts).split("<h2>")[1:]:
        figures, _, origin = one.partition('<p class="origin">')
        explained = "From memory, not looked up: verify before relying on it *" in origin
        assert (" *</td>" in figures) == explained
        signed += explained
    assert signed >= 5


@pytest.mark.behaviour
def test_each_card_has_sources_and_polarity_says_from_which_side():
    cards = {one.title: one for one in all_cards()}
    assert len(cards) == 8 and all(one.sources for one in cards.values())
    for title in ("Polarity: the part", "Polarity: the board"):
        assert TURNED in cards[title].says
    assert "component side" in TURNED and "one fixed edge" in TURNED
    assert "".join(pocket_cards().parts).count("Sources: ") == 8


@pytest.mark.behaviour
@pytest.mark.parametrize("count", [1, 2, 3, 4])
def test_an_agenda_keeps_every_lesson_in_order_and_no_evening_could_be_shorter(count):
    lessons = [(str(at), long) for at, long in enumerate([30, 45, 45, 90, 20, 45, 45])]
    evenings = spread(lessons, count)
    assert [one for each in evenings for one in each.lessons] == lessons
    longest = max(one.minutes for one in evenings)
    for at in range(len(evenings) - 1):  # moving one lesson over a cut makes none shorter
        left, right = evenings[at].lessons, evenings[at + 1].lessons
        for one, other in ((left[:-1], (left[-1], *right)), ((*left, right[0]), right[1:])):
            if one and other:
                moved = [*evenings[:at], evenings[0]._replace(lessons=one)]
                moved += [evenings[0]._replace(lessons=other), *evenings[at + 2 :]]
                assert max(each.minutes for each in moved) >= longest
    assert BREAK == 10


@pytest.mark.behaviour
def test_agenda_kit_and_hazard_sheet_speak_of_the_lessons_of_this_group():
    told = "".join(agenda(BENCH).parts)
    assert "One evening" in told and "4 evenings" in told and "is longer than 3 h 00 min" in told
    assert "12 First power-up" in told and "09 Hot air" not in told
    twelve = BENCH._replace(members=tuple(Member(f"N {n}", f"w{n}") for n in range(12)))
    kit = {one.item: one for one in kit_of(twelve)}
    assert kit["safety glasses"].due == 12 and kit["safety glasses"].spares == 0
    assert kit["solder with flux core"].due == 6 and kit["solder with flux core"].spares == 1
    assert "hot-air tool" not in kit and "hot-air tool" in {
        one.item for one in kit_of(twelve._replace(lessons=LESSONS))
    }
    assert "No price is known here" in "".join(kit_list(twelve).parts)
    hazards = hazards_of_group(BENCH)
    assert {"mains", "stored charge", "lead", "hot tools", "PCB oil"} <= set(hazards)
    signed = "".join(hazard_sheet(BENCH).parts)
    assert signed.count("CAUTION: ") == len(hazards) and "<td>Ben Example</td>" in signed


@pytest.mark.behaviour
@pytest.mark.parametrize("lesson", ["../../etc/passwd", "own-fuses", "99"])
def test_paper_of_a_lesson_that_there_is_not_is_refused_before_anything_is_written(
    tmp_path, lesson
):
    files.write(tmp_path / "group.json", BENCH._replace(lessons=(lesson,)).to_dict())
    with pytest.raises(RepairlibError, match="has this name"):
        run_class(["paper", str(tmp_path)], False)
    assert not (tmp_path / "paper").exists()
