"""The writing of a chip as text: it stands again where it stood, as long as its files do."""

import random
from itertools import pairwise

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.firmware import (
    DONE,
    ERASED,
    GO,
    INTENDED,
    KEEP_LIST,
    KEPT,
    READ,
    SUPPLY,
    Keep,
    WriteEvent,
    begin_write,
    events_text,
    may_take_back,
    take_back,
    write_again,
    write_step,
)

DATA = random.Random(3).randbytes(4096)
KEEP = Keep("network address", (100, 106), "of this board", "it stands there", "likely")


@pytest.fixture
def states(tmp_path):
    """The states of a writing up to its erase."""
    for name in ("first.bin", "second.bin", "new.bin"):
        (tmp_path / name).write_bytes(DATA)
    events = [
        WriteEvent(SUPPLY, volts=3.3, measured=3.28),
        WriteEvent(READ, path=tmp_path / "first.bin"),
        WriteEvent(READ, path=str(tmp_path / "second.bin")),
        WriteEvent(KEEP_LIST, donor=tmp_path / "new.bin", keeps=(KEEP,), answers=(KEPT,)),
        WriteEvent(INTENDED, path=tmp_path / "new.bin", found="a reason in words"),
        WriteEvent(GO, found=DONE),
        WriteEvent(ERASED, found=DONE),
    ]
    made = [begin_write(4096)]
    for event in events:
        made.append(write_step(made[-1], event))
    return made


@pytest.mark.behaviour
def test_it_stands_where_it_stood(states):
    for state in states:
        again = write_again(4096, events_text(state))
        assert (again.step, again.told, again.old) == (state.step, state.told, state.old)
        assert (again.kept, again.intended) == (state.kept, state.intended)
        assert events_text(again) == events_text(state)


@pytest.mark.behaviour
def test_a_file_that_changed_holds_it(states, tmp_path):
    text = events_text(states[-1])
    (tmp_path / "second.bin").write_bytes(DATA[:-1] + b"?")
    with pytest.raises(RepairlibError):
        write_again(4096, text)
    (tmp_path / "second.bin").write_bytes(DATA)
    assert write_again(4096, text).step == states[-1].step


@pytest.mark.behaviour
def test_steps_can_be_taken_back_until_something_is_erased(states):
    for before, state in pairwise(states[:-1]):
        assert may_take_back(state) and take_back(state).step == before.step
        assert events_text(take_back(state)) == events_text(before)
    for state in (states[0], states[-1]):
        assert not may_take_back(state)
        with pytest.raises(RepairlibError, match="taken back"):
            take_back(state)


@pytest.mark.behaviour
@pytest.mark.parametrize(
    "text",
    ["", "{", "7", "[7]", '[{"step": "supply", "more": 1}]', '[{"keeps": [1]}]', "[" * 100000],
)
def test_what_is_no_writing_is_one_line(text):
    with pytest.raises(RepairlibError, match="no writing of a chip"):
        write_again(4096, text)
    with pytest.raises(RepairlibError):
        write_again(4096, '[{"step": "supply", "volts": "many"}]')
