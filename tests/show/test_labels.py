"""Names on a drawn board: each is taken for its own part's."""

from hypothesis import given
from hypothesis import strategies as st

from repairlib.show.box import Box
from repairlib.show.labels import Labels

SHEET = Box(0, 0, 950, 410)
PLACES = st.lists(
    st.tuples(st.integers(1, 16), st.integers(1, 7), st.integers(6, 30)),
    min_size=1,
    max_size=30,
    unique_by=lambda place: place[:2],
)


def placed(places):
    parts = {
        f"C{number}": Box(
            56 * x - half / 2, 56 * y - half / 2, 56 * x + half / 2, 56 * y + half / 2
        )
        for number, (x, y, half) in enumerate(places)
    }
    spots = Labels(SHEET, parts.items()).place([(name, 40.0) for name in parts], 16.0)
    boxes = {
        name: Box(spot.x - 20, spot.y - 8, spot.x + 20, spot.y + 8) for name, spot in spots.items()
    }
    return parts, spots, boxes


@given(PLACES)
def test_no_name_covers_a_part_or_another_name(places):
    parts, _, boxes = placed(places)
    for name, box in boxes.items():
        assert not any(box.overlaps(part) for other, part in parts.items() if other != name)
        assert not any(box.overlaps(label) for other, label in boxes.items() if other != name)


@given(PLACES)
def test_a_name_is_nearest_to_its_own_part_or_has_a_line(places):
    parts, spots, boxes = placed(places)
    for name, box in boxes.items():
        nearest = min(parts, key=lambda other: box.distance(parts[other]))
        own = box.distance(parts[name])
        if spots[name].leader is None:
            assert box.distance(parts[nearest]) >= own
        else:
            (_, end) = spots[name].leader
            point = Box(*end, *end)
            assert point.distance(parts[name]) == 0
