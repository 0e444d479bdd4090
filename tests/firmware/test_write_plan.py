"""Writing a chip: nothing is erased before two equal reads lie stored, and none can be skipped."""

import os
import random
import zlib
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
    check_image,
    image_of,
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
        "stuck.bin": bytes(byte & ~8 for byte in OLD),
        "stuck-too.bin": bytes(byte & ~8 for byte in OLD),
        "half.bin": NEW[: SIZE // 2] * 2,
        "line-low.bin": bytes(byte & ~8 for byte in NEW),
        "bare.bin": b"\xff" * SIZE,
        "back-again.bin": NEW,
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
        (1, {"path": "stuck.bin"}, "damaged: stuck bit.*; or why it counts all the same"),
        (2, {"path": "stuck.bin", "found": "ok"}, "damaged: stuck bit"),
        (3, {}, "nobody said that there is nothing to keep"),
        (3, {"found": "x"}, "'x'.*who looked and how, in three words"),
        (3, {"found": "x x x y"}, "nobody said"),
        (3, {"keeps": (ADDRESS,)}, "1 lines and 0 answers"),
        (3, {"keeps": (ADDRESS,), "answers": ("perhaps",)}, "no answer to network address"),
        (4, {"path": "donor.bin"}, "has not what was to be kept: network address"),
        (4, {"path": "short.bin"}, "4,096 bytes, and the chip 8,192"),
        (4, {"path": "ones.bin"}, "would write nothing"),
        (4, {"path": "new.bin", "donor": "short.bin"}, "4,096 bytes, and the chip 8,192"),
        (5, {"found": "yes"}, "no answer to go"),
        (8, {"path": "first.bin"}, "stored before the chip was written"),
        (8, {"path": "new.bin"}, "stored before the chip was written"),
    ],
)
def test_each_refusal_is_one_line_and_loses_nothing(files, at, event, said):
    state = walked(way(files)[:at])
    event = {
        name: files / told if name in ("path", "donor") and told else told
        for name, told in event.items()
    }
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
def test_a_damaged_read_counts_only_with_a_reason_and_is_told(files):
    state = walked(way(files)[:1])
    reason = "another programmer reads the same at half the speed"
    for name in ("stuck.bin", "stuck-too.bin"):
        with pytest.raises(RepairlibError, match="stuck bit"):
            write_step(state, WriteEvent(READ, path=files / name))
        state = write_step(state, WriteEvent(READ, path=files / name, found=reason))
    assert state.step == KEEP_LIST
    assert "are equal" in state.told and "stuck bit" in state.told and reason in state.told


@pytest.mark.behaviour
def test_the_doubts_of_a_read_are_told(tmp_path):
    table = bytes(range(256)) * 16
    doubtful = table + OLD[:4096] + table + OLD[:4096]
    state = begin_write(len(doubtful))
    state = write_step(state, WriteEvent(SUPPLY, volts=1.8, measured=1.8))
    checked = check_image(image_of(doubtful), len(doubtful))
    reason = "the maker keeps two copies"
    for name in ("one.bin", "two.bin"):
        (tmp_path / name).write_bytes(doubtful)
        state = write_step(state, WriteEvent(READ, path=tmp_path / name, found=reason))
    assert checked.damages or checked.doubts
    for one in (*checked.damages, *checked.doubts):
        assert one.kind in state.told


@pytest.mark.behaviour
def test_two_equal_reads_must_follow_each_other(files):
    state = walked(way(files)[:2])
    state = write_step(state, WriteEvent(READ, path=files / "loose.bin"))
    state = write_step(state, WriteEvent(READ, path=files / "second.bin"))
    assert state.step == READ and "must follow each other" in state.told and not state.old
    (files / "third.bin").write_bytes(OLD)
    state = write_step(state, WriteEvent(READ, path=files / "third.bin"))
    assert state.step == KEEP_LIST
    assert [one.path.name for one in state.old] == ["second.bin", "third.bin"]


@pytest.mark.behaviour
def test_a_damaged_image_is_written_only_with_a_reason(files):
    events = [*way(files)[:3], WriteEvent(KEEP_LIST, found="we compared two twins")]
    state = walked(events)
    with pytest.raises(RepairlibError, match="damaged: repeated half"):
        write_step(state, WriteEvent(INTENDED, path=files / "half.bin"))
    reason = "the maker writes it twice"
    state = write_step(state, WriteEvent(INTENDED, path=files / "half.bin", found=reason))
    assert state.step == GO and reason in state.told


@pytest.mark.behaviour
def test_a_check_sum_that_no_longer_fits_is_asked(tmp_path):
    def settings(number):
        record = f"serial={number}\0".encode().ljust(1020, b"1")
        return NEW[:4096] + record + zlib.crc32(record).to_bytes(4) + b"\xff" * 3072

    old, donor = settings("K4-20117"), settings("K4-20162")
    at = 4096 + len("serial=")
    mixed = donor[:at] + old[at : at + 8] + donor[at + 8 :]
    for name, data in {"a": old, "b": old, "donor": donor, "mixed": mixed, "right": old}.items():
        (tmp_path / name).write_bytes(data)
    kept = Keep("serial number", (at, at + 8), "K4-20117", "", "likely")
    state = walked(
        [
            WriteEvent(SUPPLY, volts=3.3, measured=3.3),
            WriteEvent(READ, path=tmp_path / "a"),
            WriteEvent(READ, path=tmp_path / "b"),
            WriteEvent(KEEP_LIST, keeps=(kept,), answers=(KEPT,)),
        ]
    )
    event = WriteEvent(INTENDED, path=tmp_path / "mixed", donor=tmp_path / "donor")
    for asked in (event, replace(event, donor="")):
        with pytest.raises(RepairlibError, match=r"CRC-32 at 0x0013FC.*would fit"):
            write_step(state, asked)
    after = write_step(state, replace(event, found="the set does not check its settings"))
    assert after.step == GO and "CRC-32" in after.told and "does not check" in after.told
    assert write_step(state, replace(event, path=tmp_path / "right")).step == GO


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("name", "due", "said"),
    [
        ("bad.bin", ERASED, "Erase these sectors"),
        ("first-again.bin", ERASED, "write protection"),
        ("not-all.bin", WRITTEN, "Write these places again"),
        ("line-low.bin", READ_BACK, "contact of that data line"),
        ("bare.bin", READ_BACK, "contact and pin 1"),
        ("short.bin", READ_BACK, "read again"),
    ],
)
def test_after_a_bad_read_back_another_read_or_a_new_write_is_possible(files, name, due, said):
    (files / "first-again.bin").write_bytes(OLD)
    (files / "not-all.bin").write_bytes(NEW[:4096] + b"\xff" * 4096)
    state = walked([*way(files)[:8], WriteEvent(READ_BACK, path=files / name)])
    assert state.step == due and said in state.do
    assert state.do in state.told and state.why in state.told
    assert {READ_BACK, ERASED} <= set(state.takes)
    with pytest.raises(RepairlibError, match="given before"):
        write_step(state, WriteEvent(READ_BACK, path=files / name))
    with pytest.raises(RepairlibError, match=f"Accepted: {due}"):
        write_step(state, WriteEvent(GO, found=DONE))
    good = write_step(state, WriteEvent(READ_BACK, path=files / "back.bin"))
    assert good.step is None and good.takes == ()
    for event in way(files)[6:]:
        state = write_step(state, event)
        assert state.takes == ((state.step,) if state.step else ())
    assert state.step is None


@pytest.mark.behaviour
def test_written_again_without_an_erase_only_where_nothing_but_ones_is_wrong(files):
    state = walked([*way(files)[:8], WriteEvent(READ_BACK, path=files / "line-low.bin")])
    with pytest.raises(RepairlibError, match="not what is due now"):
        write_step(state, WriteEvent(WRITTEN, found=DONE))


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
