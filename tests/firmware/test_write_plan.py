"""Writing a chip: nothing is erased before two equal reads lie stored, and none can be skipped."""

import os
import random
from dataclasses import replace

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.safety import HAZARDS
from repairlib.firmware import (
    CHIP_IS_BLANK,
    DONE,
    ERASED,
    GO,
    INTENDED,
    KEEP_LIST,
    KEPT,
    LEFT,
    READ,
    READ_BACK,
    SUPPLY,
    WRITE_STEPS,
    WRITTEN,
    Keep,
    WriteEvent,
    begin_write,
    write_step,
)

SIZE = 8192
OLD = bytes(random.Random(1).randbytes(SIZE))
NEW = bytearray(random.Random(2).randbytes(SIZE))
NEW[100:106] = OLD[100:106]
NEW = bytes(NEW)
ADDRESS = Keep("network address", (100, 106), "of this board", "", "likely")


@pytest.fixture
def files(tmp_path):
    """A folder with two equal reads, a third that differs, the intended image, and a read back."""
    made = {
        "first.bin": OLD,
        "second.bin": OLD,
        "loose.bin": OLD[:4000] + b"\xff" * 96 + OLD[4096:],
        "new.bin": NEW,
        "donor.bin": NEW[:100] + b"donor!" + NEW[106:],
        "back.bin": NEW,
        "bad.bin": NEW[:4096] + bytes(a & b for a, b in zip(OLD, NEW, strict=True))[4096:],
        "short.bin": OLD[:4096],
        "ones.bin": b"\xff" * SIZE,
        "ones-again.bin": b"\xff" * SIZE,
        "empty.bin": b"",
    }
    for name, data in made.items():
        (tmp_path / name).write_bytes(data)
    return tmp_path


def way(files):
    """The events of a writing that goes well."""
    return [
        WriteEvent(SUPPLY, volts=3.3, measured=3.28),
        WriteEvent(READ, path=files / "first.bin"),
        WriteEvent(READ, path=files / "second.bin"),
        WriteEvent(KEEP_LIST, keeps=(ADDRESS,), answers=(KEPT,)),
        WriteEvent(INTENDED, path=files / "new.bin"),
        WriteEvent(GO, found=DONE),
        WriteEvent(ERASED, found=DONE),
        WriteEvent(WRITTEN, found=DONE),
        WriteEvent(READ_BACK, path=files / "back.bin"),
    ]


def walked(events):
    state = begin_write(SIZE)
    for event in events:
        state = write_step(state, event)
    return state


@pytest.mark.behaviour
def test_the_whole_way(files):
    state = begin_write(SIZE)
    for event in way(files):
        assert state.do and state.why and set(state.cautions) <= set(HAZARDS)
        state = write_step(state, event)
    assert (state.step, state.told) == (None, "every byte is as intended")
    assert state.events == tuple(way(files))
    with pytest.raises(RepairlibError, match="at its end"):
        write_step(state, WriteEvent(ERASED, found=DONE))


@pytest.mark.behaviour
@pytest.mark.parametrize("done", range(9))
def test_no_step_can_be_skipped(files, done):
    state = walked(way(files)[:done])
    for step in set(WRITE_STEPS) - {state.step}:
        with pytest.raises(RepairlibError, match="not what is due now"):
            write_step(state, WriteEvent(step, found=DONE, path=files / "new.bin"))


@pytest.mark.behaviour
@pytest.mark.parametrize("name", ["first.bin", "second.bin", "new.bin"])
@pytest.mark.parametrize("harm", ["gone", "changed", "shorter"])
@pytest.mark.parametrize("step", [GO, ERASED, WRITTEN, READ_BACK])
def test_nothing_goes_on_once_a_stored_file_is_gone_or_changed(files, name, harm, step):
    events = way(files)
    at = [event.step for event in events].index(step)
    state = walked(events[:at])
    data = (files / name).read_bytes()
    if harm == "gone":
        (files / name).unlink()
    else:
        changed = data[:-1] if harm == "shorter" else bytes([data[0] ^ 1]) + data[1:]
        (files / name).write_bytes(changed)
    with pytest.raises(RepairlibError, match="nothing more is erased or written"):
        write_step(state, events[at])
    (files / name).write_bytes(data)
    assert write_step(state, events[at]).events == tuple(events[: at + 1])


@pytest.mark.behaviour
def test_reads_are_taken_until_two_are_equal(files):
    state = walked(way(files)[:1])
    for name, told in (("loose.bin", "no copy yet"), ("first.bin", "differ in 9")):
        state = write_step(state, WriteEvent(READ, path=files / name))
        assert state.step == READ and told in state.told
    state = write_step(state, WriteEvent(READ, path=files / "second.bin"))
    assert state.step == KEEP_LIST
    assert [one.path.name for one in state.old] == ["first.bin", "second.bin"]


@pytest.mark.behaviour
def test_one_file_is_one_read(files):
    state = walked(way(files)[:2])
    (files / "soft.bin").symlink_to(files / "first.bin")
    os.link(files / "first.bin", files / "hard.bin")
    for name in ("first.bin", "soft.bin", "hard.bin", "../" + files.name + "/first.bin"):
        with pytest.raises(RepairlibError, match="given before"):
            write_step(state, WriteEvent(READ, path=files / name))


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("at", "event", "said"),
    [
        (0, {"volts": 3.3, "measured": 5.0}, "made for 3.3 V"),
        (0, {"volts": 1.8, "measured": 3.3}, "would kill it.*1.62 to 1.98 V"),
        (0, {"volts": 3.3}, "no number"),
        (0, {"volts": 12.0, "measured": 12.0}, "no supply of a memory chip"),
        (0, {"volts": float("nan"), "measured": 3.3}, "no number"),
        (1, {"path": "short.bin"}, "4,096 bytes, and the chip 8,192"),
        (1, {"path": "ones.bin"}, "every byte is FF: the chip is blank, or does not answer"),
        (1, {"path": "empty.bin"}, "empty"),
        (1, {"path": "none.bin"}, "cannot be read"),
        (1, {"path": "."}, "folder"),
        (1, {"path": ""}, "no file is named"),
        (3, {}, "nobody said that there is nothing to keep"),
        (3, {"keeps": (ADDRESS,)}, "1 lines and 0 answers"),
        (3, {"keeps": (ADDRESS,), "answers": ("perhaps",)}, "no answer to network address"),
        (4, {"path": "donor.bin"}, "has not what was to be kept: network address"),
        (4, {"path": "short.bin"}, "4,096 bytes, and the chip 8,192"),
        (4, {"path": "ones.bin"}, "would write nothing"),
        (5, {"found": "yes"}, "no answer to go"),
        (8, {"path": "first.bin"}, "stored before the chip was written"),
        (8, {"path": "new.bin"}, "stored before the chip was written"),
    ],
)
def test_each_refusal_is_one_line_and_loses_nothing(files, at, event, said):
    state = walked(way(files)[:at])
    path = event.get("path")
    event = event | ({"path": files / path} if path else {})
    with pytest.raises(RepairlibError, match=said) as told:
        write_step(state, WriteEvent(state.step, **event))
    assert "\n" not in str(told.value)
    assert write_step(state, way(files)[at]).events[-1] == way(files)[at]


@pytest.mark.behaviour
def test_a_chip_that_is_blank_may_be_said_to_be(files):
    state = walked(way(files)[:1])
    for name in ("ones.bin", "ones-again.bin"):
        state = write_step(state, WriteEvent(READ, path=files / name, found=CHIP_IS_BLANK))
    assert state.step == KEEP_LIST


@pytest.mark.behaviour
def test_what_is_left_behind_need_not_be_in_the_image(files):
    events = way(files)
    events[3] = replace(events[3], answers=(LEFT,))
    state = walked([*events[:4], WriteEvent(INTENDED, path=files / "donor.bin")])
    assert state.step == GO


@pytest.mark.behaviour
def test_a_bad_read_back_leads_to_the_erase_again(files):
    state = walked([*way(files)[:8], WriteEvent(READ_BACK, path=files / "bad.bin")])
    assert state.step == ERASED
    assert "without an erase" in state.told and "0x001000" in state.told
    for event in way(files)[6:]:
        state = write_step(state, event)
    assert state.step is None


@pytest.mark.behaviour
@pytest.mark.parametrize("capacity", [0, -1, True, 1.5, "8M", 1 << 40, None])
def test_no_capacity(capacity):
    with pytest.raises(RepairlibError, match="capacity"):
        begin_write(capacity)


@pytest.mark.behaviour
def test_no_walk_erases_without_two_equal_reads(files):
    """Random events: wherever a walk comes to, what the step needs lies stored."""
    chance = random.Random(7)
    names = [path.name for path in files.iterdir()]
    reached = set()
    for _ in range(2000 if os.environ.get("FIRMWARE") == "all" else 30):
        state = begin_write(SIZE)
        for _ in range(40):
            good = next((e for e in way(files) if e.step == state.step), way(files)[0])
            event = chance.choice((good, replace(good, path=files / chance.choice(names))))
            event = chance.choice((event, replace(event, step=chance.choice(WRITE_STEPS))))
            try:
                state = write_step(state, event)
            except RepairlibError:
                continue
            reached.add(state.step)
            if state.step in (GO, ERASED, WRITTEN, READ_BACK, None):
                first, second = (one.path.read_bytes() for one in state.old)
                assert first == second and len(first) == SIZE
                assert state.old[0].path != state.old[1].path
    assert None in reached and ERASED in reached
