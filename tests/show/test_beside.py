"""Drawings side by side: each shown and said, none larger than it is drawn."""

from repairlib.show import draw_part, side_by_side


def test_every_picture_is_shown_and_said_in_order():
    can, disc = draw_part("radial", "10\n16V"), draw_part("disc", "104", labels=False)
    both = side_by_side(can, disc)
    assert repr(both) == f"{can.alt}\n{disc.alt}"
    shown = both._repr_html_()
    assert shown.index(can._repr_html_()) < shown.index(disc._repr_html_())
    assert "max-width:660px" in shown and shown.count("min-width") == 2
