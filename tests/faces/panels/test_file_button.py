"""A file comes from the browser in pieces and is opened when it is whole, byte for byte."""

import pytest

from repairlib.faces.panels.file_button import FileButton

DATA = bytes(range(256)) * 5


def button(opened, **more):
    return FileButton("Open", lambda name, content: opened.append((name, content)), **more)


def give(button, name, data, piece=500, start=0, size=None):
    for first in range(start, max(len(data), 1), piece):
        said = {"name": name, "start": first, "size": len(data) if size is None else size}
        button._take(button, said, [memoryview(data[first : first + piece])])


@pytest.mark.parametrize("data", [DATA, b"", b"a", DATA[:500], DATA[:1000]])
def test_pieces_are_put_together(data):
    opened = []
    give(button(opened), "a.bin", data)
    assert opened == [("a.bin", data)]


def test_a_file_that_stopped_half_way_does_not_touch_the_next():
    opened = []
    one = button(opened)
    give(one, "half.bin", DATA[:700], size=5000)
    give(one, "whole.bin", DATA)
    give(one, "late.bin", DATA, start=500)  # its beginning never came
    assert opened == [("whole.bin", DATA)]


def test_no_more_than_the_largest():
    opened = []
    one = button(opened, largest=1000, instead="type its path")
    give(one, "large.bin", DATA)
    assert not opened and len(one._come) <= 1000
    assert one.too_large == "too large: more than 1,000 bytes; type its path"
