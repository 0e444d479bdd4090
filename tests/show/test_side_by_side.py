"""Drawings side by side."""

from repairlib.show import beside, draw_hot_air, draw_row


def test_each_is_shown_and_said():
    disc, film = draw_row(("disc", "104", "ceramic")), draw_row(("film box", "4n7J", "film"))
    both = beside(disc, film, room="20rem")
    assert repr(both) == f"{disc.alt}\n{film.alt}"
    html = both._repr_html_()
    assert html.count("<img") == 2 and html.count("flex:1 1 20rem") == 2


def test_what_has_no_look_of_its_own_is_shown_as_its_text():
    row = beside(draw_hot_air(), "a < b")
    assert "<img" in row._repr_html_()
    assert "a &lt; b" in row._repr_html_()
    assert str(row).endswith("a < b")
