"""The catalogue reader: every line a part or told, and the demo catalogue as its script writes it.

The catalogue is invented: it is never used for a check of a rule.
"""

import csv
import io
import runpy

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.core.tables import DATASETS, demo_path
from repairlib.core.typed.table import is_rule
from repairlib.recap.catalogue import COLUMNS, NEEDED, parse_catalogue, read_catalogue

HEAD = "part,family,capacitance_uf,rated_v,rated_c,mounting,price"
GOOD = "A1,aluminium general 105,10,16,105,radial,0.05"


def test_demo_catalogue_is_whole():
    made = read_catalogue(demo_path("parts-catalogue.csv"))
    assert (len(made), made.problems, made.lines) == (2000, (), 5155)
    first = made.parts[0]
    assert (first.part, first.farad, first.volts, first.celsius) == ("ALD-0R1-6R3", 1e-7, 6.3, 105)
    assert len({part.part for part in made.parts}) == 2000


def test_demo_catalogue_is_what_its_script_writes():
    script = runpy.run_path(str(DATASETS / "make_catalogue.py"))
    buffer = io.StringIO()
    writer = csv.writer(buffer, lineterminator="\n")
    writer.writerow(script["HEADING"].split(","))
    writer.writerows(script["rows"]())
    assert buffer.getvalue() == demo_path("parts-catalogue.csv").read_text("utf-8")
    assert tuple(script["HEADING"].split(",")) == COLUMNS


BAD_ROWS = {
    "no figure": ("A2,aluminium general 105,ten,16,105,radial,0.05", "'ten' is not a number"),
    "negative": ("A2,aluminium general 105,-10,16,105,radial,0.05", "not a number above 0"),
    "not finite": ("A2,aluminium general 105,inf,16,105,radial,0.05", "not between"),
    "not a number": ("A2,aluminium general 105,nan,16,105,radial,0.05", "not a number above 0"),
    "too much": ("A2,aluminium general 105,10,16000,105,radial,0.05", "rated_v '16000' is not"),
    "empty": ("A2,aluminium general 105,,16,105,radial,0.05", "capacitance_uf '' is not"),
    "family": ("A2,magic,10,16,105,radial,0.05", "family 'magic' is not known"),
    "mounting": ("A2,aluminium general 105,10,16,105,glued,0.05", "mounting 'glued'"),
    "free": ("A2,aluminium general 105,10,16,105,radial,0", "not a price"),
    "price": ("A2,aluminium general 105,10,16,105,radial,cheap", "not a price"),
    "short": ("A2,aluminium general 105,10,16", "4 columns where the headings are 7"),
    "long": (GOOD.replace("A1", "A2") + ",x", "8 columns"),
    "decimal comma": ("A2,aluminium general 105,4,7,16,105,radial,0.05", "8 columns"),
    "no part": (",aluminium general 105,10,16,105,radial,0.05", "no part number"),
    "twice": (GOOD, "part A1 stands on line 2 already"),
    "open quotes": ('"A2,aluminium general 105,10,16,105,radial,0.05', "not closed"),
    "very long": ("A2" + "x" * 3000, "longer than 2000"),
}


@pytest.mark.parametrize(("row", "why"), BAD_ROWS.values(), ids=BAD_ROWS)
def test_bad_row_is_told_and_the_next_is_read(row, why):
    made = parse_catalogue("\n".join([HEAD, GOOD, row, GOOD.replace("A1", "A3"), ""]))
    assert [part.part for part in made.parts] == ["A1", "A3"]
    ((problem,)) = made.problems
    assert (problem.line, problem.text) == (3, row)
    assert why in problem.why


def test_pack_and_life_are_checked():
    head = f"{HEAD},pack,life_h"
    rows = [f"{GOOD},0,2000", f"{GOOD},many,2000", f"{GOOD},10,2", f"{GOOD},,"]
    made = parse_catalogue("\n".join([head, *rows]))
    assert [problem.line for problem in made.problems] == [2, 3, 4]
    assert made.parts[0].hours is None
    assert [(offer.pack, offer.minimum) for offer in made.parts[0].offers] == [(1, 1)]


@pytest.mark.behaviour
def test_a_part_may_stand_on_a_line_for_each_way_in_which_it_is_sold():
    rows = [f"{GOOD},1,", f"{GOOD[:-4]}0.03,1,10", f"{GOOD[:-4]}0.02,50,"]
    made = parse_catalogue("\n".join([f"{HEAD},pack,minimum", *rows]))
    assert not made.problems
    (part,) = made.parts
    offers = [(str(one.price), one.pack, one.minimum) for one in part.offers]
    assert offers == [("0.05", 1, 1), ("0.03", 1, 10), ("0.02", 50, 1)]


DISAGREE = {
    "another figure": (GOOD.replace("16", "25") + ",10,", "and with other figures"),
    "two prices": (GOOD.replace("0.05", "0.06") + ",1,", "another line of it has another pack"),
    "no minimum": (GOOD + ",10,few", "minimum 'few' is not a number of pieces"),
    "zero": (GOOD + ",10,0", "minimum '0' is not a number of pieces"),
}


@pytest.mark.parametrize(("row", "why"), DISAGREE.values(), ids=DISAGREE)
def test_lines_of_one_part_that_disagree_are_told(row, why):
    made = parse_catalogue("\n".join([f"{HEAD},pack,minimum", f"{GOOD},1,", row]))
    assert why in made.problems[0].why and len(made.parts[0].offers) == 1


def test_prices_are_in_one_currency():
    rows = [f"{GOOD},", f"{GOOD.replace('A1', 'A2')},pence", f"{GOOD.replace('A1', 'A3')},groats"]
    made = parse_catalogue("\n".join([f"{HEAD},currency", *rows]))
    assert (made.currency, [part.part for part in made.parts]) == ("pence", ["A1", "A2"])
    assert made.problems[0].why == "its price is in 'groats', the lines above it in 'pence'"
    assert parse_catalogue(f"{HEAD}\n{GOOD}").currency == ""


@pytest.mark.parametrize("separator", [";", "\t", "|"])
def test_other_separators_and_quotes(separator):
    text = "\r\n".join([HEAD, '"A1","aluminium general 105",10,16,105,radial,0.05']) + "\r\n"
    made = parse_catalogue(text.replace(",", separator))
    assert made.parts[0].family == "aluminium general 105"


NO_CATALOGUES = {
    "blank": ("\n \n", "no line"),
    "no price": (HEAD.replace(",price", ""), "no column price"),
    "two prices": (HEAD + ",price", "two columns price"),
    "open quotes": ('"' + HEAD, "heading cannot be read"),
    "a parts list": ("C1,10/16,elect", "no column part, family"),
}


@pytest.mark.parametrize(("text", "wrong"), NO_CATALOGUES.values(), ids=NO_CATALOGUES)
def test_no_catalogue(text, wrong):
    with pytest.raises(RepairlibError, match=wrong) as caught:
        parse_catalogue(text)
    assert "\n" not in str(caught.value)


_CELLS = st.one_of(
    st.sampled_from(
        ["10", "16", "105", "radial", "aluminium general 105", "0.05", "", '"', "1e999"]
    ),
    st.text(max_size=12),
)


@settings(max_examples=300, deadline=None)
@given(st.lists(st.lists(_CELLS, max_size=9).map(",".join), max_size=8))
def test_no_line_is_lost(rows):
    """Whatever stands in it: a part, a problem, a blank or the heading; never another error."""
    text = "\n".join([HEAD, *rows]).replace("\r", "\n") + "\n"
    made = parse_catalogue(text)
    lines = text.split("\n")[:-1]
    signs = str.maketrans("", "", ',"')
    empty = sum(not line.translate(signs).strip() or is_rule(line) for line in lines[1:])
    told = [line for problem in made.problems for line in problem.text.split("\n")]
    assert made.lines == len(lines)
    assert len(lines) - 1 - empty <= len(made.parts) + len(told) <= len(lines) - 1
    assert set(told) <= set(lines)


@settings(max_examples=300, deadline=None)
@given(st.text(max_size=200))
def test_any_text_is_a_catalogue_or_one_clear_error(text):
    try:
        parse_catalogue(text)
    except RepairlibError as problem:
        assert "\n" not in str(problem)


def test_needed_columns_are_columns():
    assert set(NEEDED) <= set(COLUMNS)
