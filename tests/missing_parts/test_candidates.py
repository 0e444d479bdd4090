"""What may have stood in an empty place: twenty torn-off parts, their reasons, and any text."""

import csv
import os
import random
from pathlib import Path

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.missing_parts import (
    KINDS,
    candidates,
    kind_named,
    missing_tantalum,
    read_place,
)
from repairlib.missing_parts.rules_capacitors import RULES as CAPACITORS
from repairlib.missing_parts.rules_others import RULES as OTHERS
from repairlib.missing_parts.rules_resistors import RULES as RESISTORS
from repairlib.missing_parts.usual_values import USUAL, value_words

RULES = (*CAPACITORS, *RESISTORS, *OTHERS)


def rows(name):
    with Path(__file__).with_name(name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


TORN = rows("torn-off.csv")
BLIND = rows("torn-off-blind.csv")


def rank_of(row):
    names = [one.what for one in candidates(row["typed"])]
    return names.index(row["true"]) + 1 if row["true"] in names else 99


@pytest.mark.common_practice
def test_the_true_part_of_twenty_stands_first_in_sixteen_and_in_the_first_three_in_all():
    assert len(TORN) == 20
    ranks = {row["board"]: rank_of(row) for row in TORN}
    assert sum(rank == 1 for rank in ranks.values()) >= 16, ranks
    assert max(ranks.values()) <= 3, ranks


@pytest.mark.common_practice
@pytest.mark.parametrize("which", ["first", "second", "third", "fourth"])
def test_blind_places_fare_no_worse_than_when_they_were_first_asked(which):
    # Each set of ten was written when the rules were finished, and asked once: `first_run` is the
    # rank it got, "none" beyond the answers. The first set got 8 first and 9 in three. What it
    # showed was mended before the second set was written (9 and 10), and so again before the third
    # (9 and 9). The fourth, twenty in a stranger's words after kinds were added: 16 and 18.
    # The sewing machine pedal was corrected later: no ESD diode comes in glass.
    asked = [row for row in BLIND if row["set"] == which]
    assert len(asked) == (20 if which == "fourth" else 10)
    ranks = [rank_of(row) for row in asked]
    before = [99 if row["first_run"] == "none" else int(row["first_run"]) for row in asked]
    assert sum(rank == 1 for rank in ranks) >= before.count(1), ranks
    assert sum(rank <= 3 for rank in ranks) >= sum(rank <= 3 for rank in before), ranks


@pytest.mark.common_practice
@pytest.mark.parametrize("row", TORN, ids=[row["board"] for row in TORN])
def test_the_reasons_are_those_of_a_technician(row):
    (true,) = [one for one in candidates(row["typed"]) if one.what == row["true"]]
    for words in row["words"].split(";"):
        assert any(words.casefold() in why.casefold() for why in true.pro), (words, true.pro)


@pytest.mark.behaviour
def test_a_rule_is_of_a_known_kind_and_says_why():
    for rule in RULES:
        assert rule.kind in KINDS and rule.points and rule.why, rule
    assert {rule.kind for rule in RULES} == set(KINDS)
    pairs = [(rule.kind, rule.when) for rule in RULES]
    assert len(pairs) == len(set(pairs))


@pytest.mark.behaviour
def test_every_kind_has_a_value_in_words():
    somewhere = read_place("a part")
    assert all(value_words(kind, somewhere) for kind in KINDS.values())
    assert set(USUAL) < set(KINDS)


@pytest.mark.common_practice
def test_a_letter_is_strong_but_not_sure():
    link = "two pads 0805, the same +5 V on both sides: between +5V and +5V_USB, at the connector"
    assert candidates(f"FB? {link}")[0].what == "ferrite bead"
    assert candidates(f"F? {link}")[0].what == "fuse"
    # An R between a supply and ground at a chip's supply pin: its place outweighs the letter.
    first = candidates("R? 0402 between VCC and GND at the supply pin of U3")[0]
    assert first.what == "decoupling capacitor"
    assert any("another kind" in why for why in first.con)


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("twin", "first"),
    [
        ("twin has 100 nF", "decoupling capacitor"),
        ("twin has 22 µF", "bulk capacitor"),
        ("twin place is empty", "never fitted"),
    ],
)
def test_a_twin_decides(twin, first):
    assert candidates(f"0805, 5 V to ground near a chip, {twin}")[0].what == first


@pytest.mark.behaviour
def test_what_must_never_be_guessed():
    assert "polarity" in " ".join(candidates("C? 7343, bar, 5 V to ground")[0].never)
    assert "rating" in " ".join(candidates("C? 1206, 5 V to ground at the LDO")[0].never)
    fuse = candidates("F? 1206 between the DC jack and +12 V")[0]
    assert fuse.what == "fuse" and "never" in fuse.values
    assert "bridge" in " ".join(fuse.never)


@pytest.mark.behaviour
@pytest.mark.parametrize(
    "typed", ["C? across live and neutral at the mains inlet", "C? between +325 V and ground"]
)
def test_a_mains_side_part_is_handed_on(typed):
    for one in candidates(typed):
        assert one.values == one.rating == "handed on"
        assert one.decide == (
            "Do not measure: mains or more than 60 V. Hand it to a qualified person",
        )


@pytest.mark.behaviour
def test_nothing_known_is_not_called_likely():
    assert {one.likely for one in candidates("a part, 0603")} <= {"possible", "unlikely"}


@pytest.mark.behaviour
def test_an_unknown_kind_is_one_line():
    with pytest.raises(RepairlibError, match="not a kind of missing part"):
        kind_named("flux capacitor")


SIGNS = "0123456789 ,;.-+/VxµΩ\x00\u202e²½İßǰ٣\n()"
RUNS = 100_000 if os.environ.get("FIRMWARE") == "all" else 150


@pytest.mark.behaviour
def test_any_text_gives_candidates_or_one_line():
    chance = random.Random(20261129)
    typed = [row["typed"] for row in TORN]
    words = " ".join(typed).split()
    for _ in range(RUNS):
        text = list(chance.choice(typed))
        for _ in range(chance.randint(1, 6)):
            text[chance.randrange(len(text))] = chance.choice(SIGNS)
        mixed = " ".join(chance.choices(words, k=chance.randint(1, 40)))
        given = chance.choice(["".join(text), mixed, mixed[: chance.randint(0, 40)]])
        try:
            found = candidates(given)
        except RepairlibError as error:
            assert "\n" not in str(error), given
        else:
            assert 3 <= len(found) <= 5, given


@pytest.mark.common_practice
def test_a_twin_read_on_its_board_is_a_limit():
    printed = candidates("C? 0805, 5 V to ground at the LDO output, twin has 10 µF")[0]
    assert printed.values.startswith("10\u00a0µF as the twin")
    read = candidates("C? 0805, 5 V to ground at the LDO output, twin reads 12 µF in circuit")[0]
    assert read.values.startswith("12\u00a0µF at most")
    pulled = candidates("R? SDA to 3.3 V, the same part on SCL reads 4.6 kΩ")[0]
    assert pulled.values.startswith("4.6\u00a0kΩ at least")


@pytest.mark.behaviour
def test_behind_a_rectifier_of_unknown_voltage_nothing_is_chosen():
    unknown = "C? round can 22 mm, plus, from the bridge rectifier to ground"
    assert candidates(unknown)[0].values == "handed on"
    assert candidates(unknown.replace("rectifier", "rectifier, 24 V,"))[0].what == "aluminium can"
    assert candidates(unknown.replace("rectifier", "rectifier, 24 V,"))[0].values != "handed on"


@pytest.mark.behaviour
def test_across_the_barrier_nothing_is_chosen():
    assert candidates("C? between primary ground and secondary ground")[0].values == "handed on"


@pytest.mark.common_practice
def test_a_bar_on_the_board_may_be_either_end():
    (first, *_) = candidates("C? 3528, white bar on the board at one end, -12 V to ground")
    said = " ".join((*first.pro, *first.decide))
    assert first.what == "chip tantalum"
    assert "the positive or the negative" in said and "either end" in said
    assert "on a negative rail ground is the positive end" in said
    plus = candidates("C? 3528, plus sign, 5 V to ground")[0]
    assert "A plus marks the positive end: a polar part" in plus.pro


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("typed", "asked"),
    [
        ("C? 3528, plus sign, {rail} to ground, at the regulator output", {"case": "B"}),
        ("C? 7343-43, plus sign, {rail} to ground, at the regulator output", {"case": "7343-43"}),
    ],
)
@pytest.mark.parametrize("rail", ["3.3 V", "5 V", "24 V", "-12 V", "48 V"])
def test_value_and_rating_of_a_chip_tantalum_are_those_of_its_own_question(typed, asked, rail):
    (one,) = [one for one in candidates(typed.format(rail=rail)) if one.what == "chip tantalum"]
    finding = missing_tantalum(rail, place="regulator output", **asked)
    if finding.verdict == "do not":
        assert one.rating.startswith("do not") and one.values.startswith("none")
    else:
        assert one.values == finding.values.get("capacitance", one.values)
        assert one.rating.startswith(f"{finding.rated_voltage} or more")


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("typed", "value"),
    [
        ("R? emitter of Q12 to the output. Left one is 0.22 ohm 5W ceramic block", "220 mΩ"),
        ("C? wiper of the left pot to ground, right stick has one 100nF", "100 nF"),
        ("R7 from tap B3 to the drain, others are 100 ohm", "100 Ω"),
        ("R? in a row, to ground; the others read 75 ohm", "75 Ω"),
        ("R? SDA to 5V; SCL one shows 473 = 47k", "47 kΩ"),
        ("C? crystal to ground, the other leg's one is 12pF", "12 pF"),
    ],
)
def test_a_twin_in_a_strangers_words(typed, value):
    assert str(read_place(typed).twin.value).replace("\u00a0", " ") == value


@pytest.mark.behaviour
@pytest.mark.parametrize(
    "typed",
    ["R? left pad is 3.3 V, right pad has 5 V", "R? one side is 5V and other side is R5 10k"],
)
def test_the_other_side_is_no_twin(typed):
    assert read_place(typed).twin is None and len(read_place(typed).nets) == 2


@pytest.mark.behaviour
def test_a_twin_that_no_tantalum_can_be_still_gives_an_answer():
    assert candidates("C? 7343, plus, 5 V to ground, twin has 1 F")
    assert candidates("C? pads 25 x 20 mm, gap 25 mm, plus, 5 V to ground")


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("board", "words"),
    [
        ("accordion interface", "many alike"),
        ("loading dock display", "tab"),
        ("loading dock display", "one rail in"),
        ("choir riser light", "comes in through it"),
        ("choir tuner", "twin"),
        ("telescope focuser", "from their sources to ground"),
        ("parking meter", "the same on both sides"),
        ("well-level radio", "the same on both sides"),
        ("pinball target", "motor"),
        ("night-train sign", "tantalum case"),
        ("puppet theatre lights", "in line with a gate or base"),
    ],
)
def test_a_stranger_s_words_give_the_reason_too(board, words):
    (row,) = [row for row in BLIND if row["board"] == board]
    (true,) = [one for one in candidates(row["typed"]) if one.what == row["true"]]
    assert any(words in why.casefold() for why in true.pro), true.pro
