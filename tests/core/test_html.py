"""repairlib.core.html: what is typed never becomes a tag, and the pieces fit each other."""

import html

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.html import (
    Html,
    escape,
    fold,
    listed,
    named,
    paragraphs,
    row,
    table,
    text,
    told,
)

TYPED = '<b>C1</b> & "5 V"'
PIECES = {
    "row": lambda typed: row([typed]),
    "named": lambda typed: named([(typed, typed)], caption=typed),
    "listed": lambda typed: listed([typed], "ol"),
    "paragraphs": lambda typed: paragraphs([typed]),
    "title of a fold": lambda typed: fold(typed, ""),
    "caption": lambda typed: table([], caption=typed),
    "told": lambda typed: told("right", typed, [typed]),
}


@pytest.mark.parametrize("piece", PIECES)
def test_what_is_typed_never_becomes_a_tag(piece):
    made = PIECES[piece](TYPED)
    assert "<b>" not in made and "&lt;b&gt;C1&lt;/b&gt; &amp;" in made


def test_html_goes_through_as_it_is():
    assert text(fold("More", text("<b>"))) == "<details><summary>More</summary>&lt;b&gt;</details>"
    assert row([Html("<b>1</b>")]) == "<tr><td><b>1</b></td></tr>"


def test_each_cell_has_its_own_look_and_the_first_its_own_tag():
    shown = row(("a", 1), ('class="name"', ""), first="th")
    assert shown == '<tr><th class="name">a</th><td>1</td></tr>'


def test_an_empty_first_cell_is_no_second_first_cell():
    assert row(("", "a", "b"), first="th") == "<tr><th></th><td>a</td><td>b</td></tr>"


def test_a_row_of_the_wrong_width_is_not_cut():
    with pytest.raises(ValueError, match="shorter"):
        row(("a", "b", "c"), ("", ""))


def test_a_head_is_repeated_on_every_page():
    shown = table([row([1])], row(["a"], tag="th"))
    assert shown.replace("\n", "") == (
        "<table><thead><tr><th>a</th></tr></thead><tbody><tr><td>1</td></tr></tbody></table>"
    )


@pytest.mark.parametrize("quote", [True, False])
@given(words=st.text())
def test_escaped_as_the_standard_library_does(words, quote):
    assert escape(words, quote) == html.escape(words, quote)
