"""Drawings side by side."""

from repairlib.show import beside, draw_part


def test_every_picture_is_shown_and_said_in_order():
    can, disc = draw_part("radial", "10\n16V"), draw_part("disc", "104")
    both = beside(can, disc)
    assert repr(both) == f"{can.alt}\n{disc.alt}"
    assert both._repr_html_() == can._repr_html_() + disc._repr_html_()
