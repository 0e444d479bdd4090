"""Bad parts: every state is drawn on top of its body, and said."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.show import FAULTS, draw_part, draw_row
from tests.show.test_drawings import assert_text_is_inside_the_sheet

DRAWN = [(state, body) for state, bodies in FAULTS.items() for body in bodies]


@pytest.mark.parametrize(("state", "body"), DRAWN)
def test_it_looks_different_and_is_said(state, body):
    sound, bad = draw_part(body, "T1AL250V"), draw_part(body, "T1AL250V", state=state)
    assert bad.svg != sound.svg
    assert bad.alt != sound.alt and len(bad.alt) > len(sound.alt)
    assert_text_is_inside_the_sheet(bad)


@pytest.mark.common_practice
def test_a_blown_fuse_has_a_broken_wire_where_one_can_see_it():
    assert "broken" in draw_part("fuse", "F2AL250V", state="blown").alt
    opaque = draw_part("fuse", "F2AH250V", state="blown")
    assert "broken" not in opaque.alt and "nothing" in opaque.alt


def test_states_stand_in_a_row_too():
    row = draw_row(("radial", "", "sound"), ("radial", "", "bulged", {"state": "bulged"}))
    assert row.alt.count("is bulged") == 1


@pytest.mark.parametrize(("body", "state"), [("radial", "sad"), ("dip", "bulged")])
def test_unknown_states_are_told(body, state):
    with pytest.raises(RepairlibError, match=state if state == "sad" else body):
        draw_part(body, state=state)
