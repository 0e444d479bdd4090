"""Lists of odd shapes: what each line becomes, and that none is lost."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.textfile import decode
from repairlib.recap import Plan, expectation, plan, read_parts, words


def fates(text):
    """Line number: what the line is, for the lines that gave no parts."""
    return {line.line: line.what for line in read_parts(text).set_aside}


def held(text):
    return {item.reference: item.why for item in plan(text).held}


def test_no_headings():
    made = plan("C1,10/16,elect\nC2,.1,film\n")
    assert [item.reference for item in made.items] == ["C1"]


def test_references_without_quotation_marks():
    made = plan("Ref,Value,Type\nC1,C2,10/16,elect\nC3,47/25,elect\n")
    assert [item.reference for item in made.items] == ["C1", "C2", "C3"]


def test_decimal_comma_in_a_comma_list_is_not_read_as_two_cells():
    made = plan("Ref,Value,Volts,Type\nC5,4,7µF,16,elect\nC6,10,16,elect\n")
    assert made.unreadable[0].line == 2
    assert "comma inside a value" in made.unreadable[0].why


def test_quantity_that_disagrees():
    assert "quantity says 3" in held("Ref,Value,Type,Qty\nC1-C4,10/16,elect,3\n")["C1"]


def test_bare_figure_that_nobody_explains():
    assert "'3' was not understood" in held("C1,10/16,elect,3\n")["C1"]


def test_missing_rating_waits():
    why = held("Ref,Value,Volts,Type\nC1,100µF,,elect\n")["C1"]
    assert why.startswith("no voltage rating stated: read it on the old part")


def test_same_duplicate_is_merged_and_another_is_held():
    made = plan("C1,10/16,elect\nC2,10/16,elect\nC1,10µF 16V,electrolytic\nC2,10/25,elect\n")
    assert [item.reference for item in made.items] == ["C1"]
    assert [(item.reference, item.line) for item in made.held] == [("C2", 2), ("C2", 4)]
    assert [duplicate.same for duplicate in made.duplicates] == [True, False]


def test_column_missing_in_pasted_text():
    """A gap in a column of figures cannot tell value from rating."""
    text = "Ref   Value  Volts  Type\nC1    10     16     el\nC2  16  el\n"
    assert "3 columns where the headings are 4" in plan(text).unreadable[0].why


def test_gap_under_a_heading_is_a_gap():
    text = "Ref   Value  Volts  Type\nC1    10     16     el\nC2    100           el\n"
    made = plan(text)
    assert [item.reference for item in made.items] == ["C1"]
    assert "no voltage rating" in made.held[0].why


def test_lines_that_are_no_parts():
    text = "BOARD A\nRef,Value\n\nC1,.1 film\nPage 2 of 9\n------\nR1,10k\nVC1,20p\nsee notes\n"
    assert fates(text) == {
        1: "title or note",
        2: "heading",
        3: "blank",
        5: "title or note",
        6: "heading",
        7: "not a capacitor",
        8: "not a capacitor",
        9: "title or note",
    }


UNREADABLE = {
    "10/16 electrolytic": "no reference",
    "see C5": "does not begin with it",
    "C9-C2,10/16": "does not go up",
    "C1,": "nothing stands after",
    'C1,"10/16': "quotation mark",
    "C1," + "x" * 3000: "longer than",
}


@pytest.mark.parametrize(("line", "why"), UNREADABLE.items())
def test_unreadable_lines_say_why(line, why):
    made = plan(f"C7,10/16,el\nC8,10/16,el\n{line}\nC9,10/16,el\n")
    assert [found.line for found in made.unreadable] == [3]
    assert why in made.unreadable[0].why
    assert len(made.items) == 3


def test_quoted_cell_over_two_lines():
    made = plan('Ref,Value,Type\n"C1,\nC2",10/16,elect\nC3,10/16,elect\n')
    assert [item.reference for item in made.items] == ["C1", "C2", "C3"]


def test_what_was_read_before_does_not_change_the_reading():
    plan('Ref,Value,Type\nC1,"10/16\nel",\nC2,10/16\n')
    made = plan('Ref,Value,Type\nC3,"10/16\nel",\nC4,"10/16\nel",\n')
    assert [item.reference for item in made.items] == ["C3", "C4"]
    with pytest.raises(RepairlibError, match="2 of 3 columns"):
        read_parts("Ref,Value,Type\nC1,47/25,el\nC2,10/16", from_file=True)


def test_a_changed_table_of_words_is_used_by_the_next_reading(monkeypatch):
    """What one reading remembers is dropped with it, so that no older answer comes back."""
    text = "Ref,Value,Type\nC1,10µF 16V,gizmo\nC2,10µF 16V,gizmo\nC3,10µF 16V,elect\n"
    assert [item.reference for item in plan(text).held] == ["C1", "C2"]
    monkeypatch.setitem(words.KIND_OF, "gizmo", words.FILM)
    assert [item.reference for item in plan(text).kept] == ["C1", "C2"]
    monkeypatch.setitem(words.KIND_OF, "elect", words.BIPOLAR)
    assert not plan(text).items[0].new.polar
    monkeypatch.setitem(words.FORM_OF, "elect", "axial")
    assert plan(text).items[0].old.form == "axial"


def test_a_changed_rule_of_life_is_used_by_the_next_plan(monkeypatch):
    """128,000 h are 14 years; half the hours of the ordinary part are half of that."""
    text = "C1,10µF 16V,elect\n"
    assert plan(text).items[0].expected.life == "14 years"
    monkeypatch.setitem(expectation.ORDINARY_HOURS, expectation.GENERAL, 1000)
    assert plan(text).items[0].expected.life == "7 years"


def test_lines_that_say_the_same_share_one_capacitor():
    made = read_parts("C1,10/16,elect\nC2,10/25,elect\nC3,10/16,elect\nCX1,10/16,elect\n")
    first, second, third, mains = made.capacitors
    assert first is third
    assert second is not first
    assert mains.kind != first.kind or mains.doubts


def test_ditto_marks_lose_no_part():
    made = plan('Ref,Value,Type,Note\nC1,10/16,elect,"\nC2,10/16,elect,"\nC3,",elect,"\n')
    assert [item.reference for item in made.items] == ["C1", "C2", "C3"]
    assert str(made.items[2].new).startswith("10\xa0µF 16\xa0V")
    assert "ditto mark: as on line 3" in made.items[2].looks


@pytest.mark.common_practice
@pytest.mark.parametrize(
    "mark", ['"', "do.", "Do", "dto.", "id.", "idem", '-"-', "ditto", "''", "〃"]
)
def test_a_value_in_ditto_marks_is_the_value_above(mark):
    made = plan(
        f"Pos;Value;Volts;Type\nC3;22µF;40;NP\nC4;{mark};{mark};{mark}\nC5;47µF;{mark};el\n"
    )
    told = [(item.reference, item.new.farad, item.old.volts, item.new.polar) for item in made.items]
    assert told == [("C3", 22e-6, 40, False), ("C4", 22e-6, 40, False), ("C5", 47e-6, 40, True)]
    assert [len(item.looks) for item in made.items] == [0, 1, 1]


@pytest.mark.parametrize(
    "between", ["R7;1k;1;carbon", "CERAMIC CAPACITORS", "see C9", "C9;;;"], ids=str
)
def test_a_ditto_mark_below_another_line_waits(between):
    made = plan(f'Pos;Value;Volts;Type\nC3;22µF;40;elect\n{between}\nC4;";40;elect\n')
    assert "ditto mark" in {item.reference: item.why for item in made.held}["C4"]


@pytest.mark.common_practice
def test_ditto_marks_among_words():
    made = plan('C1 10uF 25V elect\nC2 "\nC3 47uF " "\nC4 " 16V\n')
    assert [(item.reference, item.new.farad) for item in made.items] == [
        ("C1", 10e-6),
        ("C2", 10e-6),
        ("C3", 47e-6),
    ]
    assert "ditto mark" in made.held[0].why


def test_titles_give_the_kind_until_the_next_title():
    text = "TANTALUM CAPACITORS\nC1,10/16\nCERAMIC CAPACITORS\nC2,.1/50\nELECTROLYTIC\nC3,10/16\n"
    made = plan(text)
    assert [made.judged[0].reference, made.kept[0].reference] == ["C1", "C2"]
    assert made.items[0].reference == "C3"


@pytest.mark.common_practice
@pytest.mark.parametrize("title", ["NON-POLAR ELECTROLYTIC CAPACITORS", "BIPOL. ELECTROLYTICS"])
def test_a_title_can_make_parts_bipolar(title):
    made = plan(f"ELECTROLYTIC\nC1 10/16\n{title}\nC2 10/16\nELECTROLYTIC\nC3 10/16\n")
    assert [item.new.polar for item in made.items] == [True, False, True]


@pytest.mark.common_practice
def test_references_of_parts_across_the_mains():
    """CX and CY name capacitors of class X and Y: none is taken for an ordinary part."""
    made = plan("CX1,0.1uF 250V\nCY1-CY2,4n7 ceramic\nCX2,10/16,elect\n")
    assert [item.reference for item in made.judged] == ["CX1", "CY1", "CY2"]
    assert all("heat and fire" in item.cautions for item in made.judged)
    assert [item.reference for item in made.held] == ["CX2"]
    for text in ("CX1,0.1uF 250V\nC1,0.1uF 250V\n", "C1,0.1uF 250V\nCX1,0.1uF 250V\n"):
        made = plan(text)  # what one line said is not carried to the other
        assert [item.reference for item in made.kept + made.judged] == ["C1", "CX1"]


def test_a_title_does_not_hide_an_electrolytic():
    """Under CERAMIC a 10 µF part is more likely one of the next section."""
    made = plan("CERAMIC CAPACITORS\nC1,.1/50\nC2,10/16\n")
    assert [item.reference for item in made.kept] == ["C1"]
    assert "title above" in made.held[0].why


def test_figures_under_another_unit_are_not_taken_for_microfarads():
    made = plan("Ref,Value (nF),Volts,Type\nC1,470,16,elect\nC2,10,16,elect\n")
    assert {item.why for item in made.held} == {"no capacitance stated: read it on the old part"}
    made = plan("Ref,Value,Rating (kV),Type\nC1,10,2,elect\nC2,10,2,elect\n")
    assert all(item.verdict == "hold" for item in made.all_items)


def test_200_columns():
    with pytest.raises(RepairlibError, match="200 columns"):
        plan("Ref,Value" + ",x" * 198 + "\n")


@pytest.mark.parametrize("text", ["", " \n\t\n", "\ufeff"])
def test_nothing_in_it(text):
    with pytest.raises(RepairlibError, match="no line"):
        plan(text)


def test_ten_megabytes_in_one_line():
    made = plan("C1,10/16,el\n" + "C" * 10_000_000)
    assert made.unreadable[0].why == "longer than 2000 characters"


NAMES = ["C1", "C2", "C1-C3", "C7,C8", "C9-C2", "R1", "VC1", "C", "5", "1C106M", "104K"]
FIGURES = ["10/16", "4u7", ".1", "1,000", "100µF", "16V", "16", "25V", "250VAC", "X2", "1", "2"]
WORDS = ["elect", "film", "tant", "NP", "Ref", "Value", "Volts", "Qty", "Type", "Page", "--"]
CELLS = st.sampled_from([*NAMES, *FIGURES, *WORDS, "|", "=", '"', "'", "\t"])
LISTS = st.lists(st.lists(CELLS, max_size=7), min_size=1, max_size=12).flatmap(
    lambda rows: st.sampled_from([",", "\t", ";", "|", "  ", " "]).map(
        lambda separator: "\n".join(separator.join(row) for row in rows)
    )
)


def assert_nothing_is_lost(made: Plan):
    parts_list = made.list
    set_aside = [line.line for line in parts_list.set_aside]
    everything = sorted([*set_aside, *parts_list.lines_with_parts()])
    assert everything == list(range(1, len(parts_list.lines) + 1))
    merged = {d.reference for d in made.duplicates if d.same}
    planned = [(item.reference, item.line) for item in made.all_items]
    assert len(planned) == len(set(planned)) or made.duplicates
    for part in zip(parts_list.references, parts_list.part_lines, strict=True):
        assert part in planned or part[0] in merged
    for item in made.items:
        assert item.new.volts >= item.old.volts
        assert item.new.polar == (item.old.kind != "bipolar electrolytic")
    assert sorted(map(id, made.checklist)) == sorted(map(id, made.items))


@settings(max_examples=300, deadline=None)
@given(LISTS)
def test_any_list_is_accounted_for(text):
    try:
        made = plan(text)
    except RepairlibError:
        return
    assert_nothing_is_lost(made)


@settings(max_examples=200, deadline=None)
@given(st.text())
def test_any_text_is_accounted_for(text):
    try:
        made = plan(text)
    except RepairlibError:
        return
    assert_nothing_is_lost(made)


@settings(max_examples=200, deadline=None)
@given(st.binary())
def test_any_bytes_are_read_or_refused(data):
    try:
        made = plan(decode(data).text)
    except RepairlibError as problem:
        assert "\n" not in str(problem)
        return
    assert_nothing_is_lost(made)


@pytest.mark.common_practice
@pytest.mark.parametrize("mark", ["do.", "dto.", '"', "idem"])
def test_a_ditto_mark_alone_is_the_whole_row_above(mark):
    made = plan(f"Ref;Value;Volts;Type\nC3;33µF;40;NP\nC4;{mark}\nC5;{mark}\nC6;47µF;25;elect\n")
    told = [(item.reference, item.new.farad, item.old.volts, item.new.polar) for item in made.items]
    assert told[:3] == [(name, 33e-6, 40, False) for name in ("C3", "C4", "C5")]
    assert [len(item.looks) for item in made.items] == [0, 1, 1, 0]


@pytest.mark.common_practice
def test_an_empty_cell_beside_a_ditto_mark_does_not_lose_the_kind():
    """A bipolar part whose type is not repeated is never ordered as a polar one."""
    made = plan("Ref,Value,Volts,Type\nC3,33uF,40,NP\nC4,do.,do.,\nC5,15uF,do.,\n")
    assert [item.new.polar for item in made.items] == [False, False, False]


@pytest.mark.common_practice
def test_x2_may_be_a_count():
    made = plan("C1 100µF 16V x2\nC2 0.1µF 275V X2\n")
    assert "count of two" in made.held[0].why and made.judged[0].reference == "C2"
