"""Images of memory chips on the command line: every verb, and one clear line for bad input."""

import json
import os
import re
import struct

import pytest

from repairlib import firmware
from repairlib.core.tables import demo_path
from repairlib.faces.cli import main
from repairlib.faces.image_command import VERBS
from repairlib.firmware import Keep
from tests.firmware.invented_boards import board

FIRST, SECOND = demo_path("printer-read-first.bin"), demo_path("printer-read-second.bin")
LOOSE, SISTER = demo_path("printer-read-loose-clip.bin"), demo_path("printer-sister.bin")
OTHER = demo_path("printer-other-sister.bin")
SFDP = (
    bytes.fromhex("53464450060100FF 0006010B300000FF").ljust(0x30, b"\xff")
    + struct.pack("<4I", 0xFFF120E5, 0x03FFFFFF, 0x6B08EB44, 0xBB423B08)
    + struct.pack("<4I", 0xFFFFFFEE, 0x0000FFFF, 0x0000FFFF, 0x520F200C)
    + struct.pack("<3I", 0xFF00D810, 0, 0x81)
)


@pytest.fixture
def told(capsys):
    """The text that a command prints."""

    def run(*words):
        status = main(["image", *map(str, words)])
        output = capsys.readouterr()
        assert status == 0, output.err
        return output.out

    return run


@pytest.fixture
def refused(capsys):
    """The one line that a command is refused with."""

    def run(*words):
        assert main(["image", *map(str, words)]) == 2
        output = capsys.readouterr()
        assert output.out == "" and len(output.err.splitlines()) == 1
        return output.err

    return run


@pytest.mark.behaviour
def test_check_one_read(told):
    text = told("check", FIRST, "--chip", "128KiB")
    assert "damage: short read" in text and "SHA-256" in text and "One read cannot tell" in text
    assert "damage:" not in told("check", FIRST, "--chip", "64 KiB")


@pytest.mark.behaviour
def test_check_reads_against_each_other(told):
    assert "2 reads: equal" in told("check", FIRST, SECOND)
    text = told("check", FIRST, SECOND, LOOSE)
    assert "3 reads: they differ, contact" in text and "0x002340 to 0x0023BF" in text


@pytest.mark.behaviour
def test_one_file_given_twice_is_no_second_read(told, tmp_path):
    (tmp_path / "link.bin").symlink_to(FIRST)
    (tmp_path / "a.bin").write_bytes(FIRST.read_bytes())
    (tmp_path / "b.bin").hardlink_to(tmp_path / "a.bin")
    for one, again in (
        (FIRST, FIRST),
        (FIRST, tmp_path / "link.bin"),
        (tmp_path / "a.bin", tmp_path / "b.bin"),
    ):
        text = told("check", one, again)
        assert text.count("no second read") == 1 and "equal" not in text
    text = told("check", FIRST, FIRST, SECOND)
    assert "2 reads: equal" in text and "no second read" in text
    answer = json.loads(told("check", FIRST, FIRST, "--json"))
    assert answer["given_again"] == [FIRST.name] and "reads" not in answer
    assert "no second read" not in told("check", FIRST, SECOND)


@pytest.mark.behaviour
def test_what_cannot_be_seen_in_a_name_is_written_out(told, tmp_path):
    path = tmp_path / "two\nlines\x1b[2J.bin"
    path.write_bytes(FIRST.read_bytes())
    assert "two\\nlines\\x1b[2J.bin: 64 KiB" in told("check", path).splitlines()
    lines = told("keep", path, SISTER, "--twin", OTHER, "--out", f"{path}.new").splitlines()
    assert sum("two\\nlines" in line for line in lines) == 2


@pytest.mark.behaviour
def test_a_map_that_does_not_fit_on_the_disk_leaves_nothing_behind(refused, tmp_path, monkeypatch):
    def full(_number):
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patched:
        patched.setattr(os, "fsync", full)
        assert "No space left" in refused("keep", FIRST, SISTER, "--out", tmp_path / "new.bin")
    assert list(tmp_path.iterdir()) == []
    assert main(["image", "keep", str(FIRST), str(SISTER), "--out", str(tmp_path / "new.bin")]) == 0


@pytest.mark.behaviour
def test_each_read_is_checked(told, tmp_path):
    (tmp_path / "short.bin").write_bytes(FIRST.read_bytes()[:40000])
    text = told("check", FIRST, tmp_path / "short.bin", "--chip", "64KiB")
    assert text.index("short.bin: 40,000 bytes") < text.index("damage: short read")


@pytest.mark.behaviour
def test_check_as_json_and_with_a_map(told, refused, tmp_path):
    drawn = tmp_path / "map.svg"
    answer = json.loads(told("check", FIRST, LOOSE, "--json", "--map", drawn))
    assert [one["size"] for one in answer["images"]] == [65536, 65536]
    assert len(answer["images"][0]["sha256"]) == 64
    assert answer["reads"]["equal"] is False and answer["reads"]["ranges"][0][0] == 0x2340
    assert drawn.read_text().startswith("<svg")
    assert "already" in refused("check", FIRST, "--map", drawn)


@pytest.mark.behaviour
def test_compare(told, tmp_path):
    text = told("compare", FIRST, SISTER)
    assert "erase first:" in text and "Writing can destroy the only copy" in text
    answer = json.loads(told("compare", FIRST, SISTER, "--erase", "64KiB", "--json"))
    assert answer["erase"] == 65536 and answer["erase first"] == [[0, 65536]]
    assert "Nothing has to be written" in told("compare", FIRST, SECOND)


@pytest.mark.behaviour
def test_keep_makes_a_new_image(told, refused, tmp_path):
    new, before = tmp_path / "new.bin", (FIRST.read_bytes(), SISTER.read_bytes())
    text = told("keep", FIRST, SISTER, "--twin", OTHER, "--out", new)
    assert "serial number PB-204117" in text and "Writing can destroy the only copy" in text
    made = new.read_bytes()
    assert b"PB-204117" in made and made not in before
    assert (FIRST.read_bytes(), SISTER.read_bytes()) == before
    answer = json.loads(told("keep", FIRST, SISTER, "--twin", OTHER, SECOND, "--json"))
    assert {"kind", "where", "value", "why", "sure", "next"} <= set(answer["keep"][0])
    assert "already" in refused("keep", FIRST, SISTER, "--out", new)
    assert "nothing to put in" in refused("keep", FIRST, SECOND, "--out", tmp_path / "none.bin")


@pytest.fixture
def listed(tmp_path, monkeypatch):
    """Two files, the old one and the donor's, with a keep-list of one sure and two possible."""
    keeps = (
        Keep("serial number", (0, 2), "17", "invented", "likely"),
        Keep("network address", (3, 5), "02:00", "invented", "possible"),
        Keep("data of its own", (6, 8), "x", "invented", "possible"),
    )
    monkeypatch.setattr(firmware, "keep_list", lambda *images: keeps)
    (tmp_path / "old.bin").write_bytes(b"17-----a--")
    (tmp_path / "donor.bin").write_bytes(b"62++++++++")
    return [tmp_path / name for name in ("old.bin", "donor.bin")]


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("answers", "made"),
    [
        (("--also", "2", "--leave", "3"), b"17+--+++++"),
        (("--also", "all"), b"17+--+-a++"),
        (("--leave", "all"), b"17++++++++"),
        (("--leave", "1,3", "--also", "2"), b"62+--+++++"),
    ],
)
def test_what_is_only_possible_goes_as_a_person_says(told, tmp_path, listed, answers, made):
    text = told("keep", *listed, "--out", tmp_path / "new.bin", *answers)
    assert (tmp_path / "new.bin").read_bytes() == made
    assert "2: network address 02:00" in text
    put_in = 3 - text.count("not put in, donor.bin has its own there")
    assert f"with {put_in} of 3 put in" in text


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("answers", "said"),
    [
        ((), "2: network address 02:00 .*and 1 more.*donor.bin would have its own.*--also 2,3"),
        (("--also", "2"), "3: data of its own x .*--also 3"),
        (("--leave", "3"), "2: network address.*--leave 2"),
        (("--also", "2,3", "--leave", "3"), "--also and by --leave"),
        (("--also", "4"), "1 to 3"),
        (("--also", "two"), "1 to 3"),
        (("--also", ","), "--also 2,3"),
    ],
)
def test_nothing_possible_is_left_to_the_donor_in_silence(refused, tmp_path, listed, answers, said):
    assert re.search(said, refused("keep", *listed, "--out", tmp_path / "new.bin", *answers))
    assert not (tmp_path / "new.bin").exists()


@pytest.mark.behaviour
def test_keep_wants_images_of_one_size_and_a_new_file_for_answers(refused, tmp_path):
    (tmp_path / "one.bin").write_bytes(b"x")
    assert "equally long" in refused("keep", FIRST, tmp_path / "one.bin")
    assert "equally long" in refused("keep", FIRST, SISTER, "--twin", tmp_path / "one.bin")
    assert "no new file" in refused("keep", FIRST, SISTER, "--also", "1")


@pytest.mark.behaviour
def test_an_own_address_goes_into_the_new_image(told, tmp_path):
    """One board's address differs from the donor's in its last byte."""
    for name, last in (("old.bin", "17"), ("donor.bin", "62")):
        own = {64: bytes.fromhex("001DC31041" + last)}
        (tmp_path / name).write_bytes(board(own))
    told("keep", tmp_path / "old.bin", tmp_path / "donor.bin", "--out", tmp_path / "new.bin")
    assert (tmp_path / "new.bin").read_bytes() == (tmp_path / "old.bin").read_bytes()


@pytest.mark.behaviour
def test_write_goes_from_step_to_step(told, refused, tmp_path):
    """A chip's way on the command line, each time with one thing more that was done."""
    made, back = tmp_path / "new.bin", tmp_path / "back.bin"
    told("keep", FIRST, SISTER, "--out", made)
    words = ["write", FIRST, "--chip", "64KiB"]
    assert "next, supply: " in told(*words)
    words += ["--supply", "3.3", "--measured", "3.28"]
    assert "next, read: " in told(*words) and "CAUTION" in told(*words)
    loose = told(*words, LOOSE, "--donor", SISTER, "--keep", "all")
    assert "clean the contact" in loose and "next, read: " in loose and "not named" not in loose
    words.insert(2, SECOND)
    assert "not named yet: --donor, or --looked" in told(*words)
    assert "in three words" in refused(*words, "--looked", "x")
    words += ["--donor", SISTER]
    text = told(*words)
    assert "3: serial number PB-204117" in text and "not answered yet" in text
    assert "next, keep-list: " in told(*words, "--keep", "1,2")
    words += ["--keep", "all"]
    assert "next, intended image: " in told(*words)
    assert "has not what was to be kept" in refused(*words, "--new", SISTER)
    words += ["--new", made]
    assert "next, go: " in told(*words)
    (tmp_path / "short.bin").write_bytes(made.read_bytes()[:4096])
    words += ["--back", tmp_path / "short.bin"]
    answer = json.loads(told(*words, "--json"))
    assert answer["takes"] == ["read back", "erased"] and "read again" in answer["do"]
    back.write_bytes(made.read_bytes())
    text = told(*words, "--back", back)
    assert "every byte is as intended" in text and "next: Fit the chip" in text


@pytest.mark.behaviour
def test_write_is_held_in_one_line(refused, tmp_path):
    begin = ("write", FIRST, SECOND, "--chip", "64KiB", "--supply", "3.3V", "--measured")
    assert "the size of the chip is not named" in refused("write", FIRST)
    assert "made for 3.3 V" in refused(*begin, "5")
    assert "no voltage" in refused(*begin, "much") and "no number" in refused(*begin, "nan")
    begin += ("3.3",)
    assert "the chip 131,072" in refused(*begin[:4], "128KiB", *begin[5:])
    assert "given before" in refused("write", FIRST, *begin[1:])
    donor = (*begin, "--donor", SISTER)
    assert "--keep and by --leave" in refused(*donor, "--keep", "1,2", "--leave", "2")
    assert "1 to 4" in refused(*donor, "--keep", "9")
    stuck = [tmp_path / f"{at}.bin" for at in range(2)]
    for path in stuck:
        path.write_bytes(bytes(byte & ~8 for byte in FIRST.read_bytes()))
    assert "damaged: stuck bit" in refused("write", *stuck, *begin[3:])


@pytest.mark.behaviour
def test_sfdp_of_bytes_and_of_hex(told, refused, tmp_path):
    (tmp_path / "dump.bin").write_bytes(SFDP)
    (tmp_path / "dump.txt").write_text(SFDP.hex(" "))
    for name in ("dump.bin", "dump.txt"):
        assert "capacity 8 MiB (64 Mbit)" in told("sfdp", tmp_path / name)
    assert json.loads(told("sfdp", tmp_path / "dump.bin", "--json"))["values"]["bytes"] == 8 << 20
    assert "does not begin with 53 46 44 50" in refused("sfdp", FIRST)
    (tmp_path / "cut.bin").write_bytes(SFDP[:70])
    assert "basic table cannot be read" in refused("sfdp", tmp_path / "cut.bin")


@pytest.mark.published("Intel, Hexadecimal Object File Format Specification, data and end records")
def test_convert(told, refused, tmp_path):
    (tmp_path / "a.hex").write_text(":0300300002337A1E\n:00000001FF\n")
    made = tmp_path / "a.bin"
    text = told("convert", tmp_path / "a.hex", "--fill", "00", "--out", made)
    assert "Intel HEX" in text and made.read_bytes() == bytes(0x30) + b"\x02\x33\x7a"
    told("convert", tmp_path / "a.hex", "--from", "0x30", "--out", tmp_path / "b.bin")
    assert (tmp_path / "b.bin").read_bytes() == b"\x02\x33\x7a"
    assert "no new file is named" in refused("convert", tmp_path / "a.hex")
    assert "hex" in refused("convert", tmp_path / "a.hex", "--fill", "zz", "--out", "c.bin")
    assert "hex" in refused("convert", tmp_path / "a.hex", "--from", "-1", "--out", "c.bin")
    assert "image convert" in told("check", tmp_path / "a.hex")
    assert "3 bytes in 1 piece\n" in text
    beyond = refused("convert", tmp_path / "a.hex", "--from", "0x8000000", "--out", "c.bin")
    assert "'0x8000000'" in beyond


@pytest.mark.behaviour
def test_bad_input_is_one_clear_line(refused, tmp_path):
    (tmp_path / "empty.bin").write_bytes(b"")
    os.mkfifo(tmp_path / "pipe")
    for path, said in (
        (tmp_path, "folder"),
        (tmp_path / "empty.bin", "empty"),
        (tmp_path / "pipe", "pipe or a device"),
        ("/dev/zero", "pipe or a device"),
        (tmp_path / "none.bin", "cannot be read"),
        ("\x00", "cannot be read"),
    ):
        for verb in ("check", "sfdp"):
            assert said in refused(verb, path)
        assert said in refused("compare", FIRST, path)
        assert said in refused("keep", path, FIRST)
    assert "check, compare, keep, write, sfdp, convert" in refused()
    assert "not a verb" in refused("frob")
    for verb in VERBS:
        assert "due" in refused(verb) and "not an option" in refused(verb, FIRST, "--nope")
    assert "image compare OLD NEW" in refused("compare", FIRST)
    assert "size" in refused("check", FIRST, "--chip", "many")
    assert "'empty.bin'" in refused("sfdp", tmp_path / "empty.bin")
    assert "17 files are too many" in refused("check", *[FIRST] * 17)
    for size in ("1", "3", "100"):
        assert "erases so much" in refused("compare", FIRST, SISTER, "--erase", size)


@pytest.mark.behaviour
def test_help_lists_every_verb(capsys):
    for words in (["image", "--help"], ["image", "check", "--help"]):
        assert main(words) == 0
        text = capsys.readouterr().out
        assert all(f"image {verb} " in text for verb in VERBS)
