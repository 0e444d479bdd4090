"""Files that a collecting instructor meets or fears, each kind made by a small function.

A kind takes a good file of a member and a number, and gives {name: bytes}: files as they lie in the
folder. `expected` is the outcome that each of them must have. The kinds that need the disk (links,
pipes, folders without end) are made by `on_the_disk`.
"""

import base64
import io
import json
import os
import stat
import struct
import warnings
import zipfile
import zlib

from tests.teach.hand_ins import as_file

KINDS = {}


def kind(*expected):
    """Enter a kind of file, with the outcomes that its files may have."""

    def enter(make):
        KINDS[make.__name__] = (make, set(expected))
        return make

    return enter


def changed(content, **changes):
    """A file with other content, whose sum is made to fit."""
    return as_file(content | changes)


def zipped(members, compression=zipfile.ZIP_DEFLATED):
    """An archive of (name or ZipInfo, data) pairs."""
    packed = io.BytesIO()
    with warnings.catch_warnings(), zipfile.ZipFile(packed, "w", compression) as archive:
        warnings.simplefilter("ignore")  # of names that come twice
        for name, data in members:
            archive.writestr(name, data, compression)
    return packed.getvalue()


@kind("damaged")
def cut_short(content, number):
    data = as_file(content)
    return {"cut.json": data[: len(data) * (number % 90 + 5) // 100]}


@kind("damaged", "changed after it was handed in")
def one_byte_flipped(content, number):
    data = bytearray(as_file(content))
    data[len(data) // 2 + number] ^= 0x01
    return {"flipped.json": bytes(data)}


@kind("no hand-in")
def empty(content, number):
    return {"empty.json": b""}


@kind("no hand-in")
def nul_bytes(content, number):
    return {"nul.json": b"\0" * (100 + number)}


@kind("no hand-in")
def noise(content, number):
    return {"noise.json": bytes((n * n + number) % 251 for n in range(3000))}


@kind("no hand-in")
def a_parts_list(content, number):
    return {"parts.csv": b"C1,10/16\nC2,22/25\n" * (number + 1)}


@kind("no hand-in")
def a_formula(content, number):
    return {"formula.csv": b'=HYPERLINK("http://example.invalid";1)\n' * (number + 1)}


@kind("no hand-in")
def a_script(content, number):
    return {"run.py": b"import os\nos.mkdir('ran')\n# %d" % number}


@kind("no hand-in")
def a_pickle(content, number):
    return {"run.json": b"cos\nmkdir\n(S'ran%d'\ntR." % number}


@kind("no hand-in")
def other_json(content, number):
    return {"other.json": json.dumps({"kind": "notes", "at": number}).encode()}


@kind("no hand-in")
def a_list_of_json(content, number):
    return {"list.json": json.dumps([number]).encode()}


@kind("no hand-in", "damaged")
def nested_deep(content, number):
    return {"deep.json": b"[" * (100_000 + number)}


@kind("damaged")
def answers_nested_deep(content, number):
    data = as_file(content).replace(b'"answers":{', b'"answers":{"q1":' + b"[" * 200_000, 1)
    return {"deep-answers.json": data + b" " * number}


@kind("damaged")
def a_huge_whole_number(content, number):
    data = as_file(content).replace(b'"at":%d,' % content["at"], b'"at":1%s,' % (b"0" * 6000), 1)
    return {"huge.json": data + b" " * number}


@kind("damaged")
def a_huge_power(content, number):
    data = as_file(content).replace(b'"at":%d,' % content["at"], b'"at":1e%d,' % (400 + number), 1)
    return {"power.json": data}


@kind("damaged")
def no_number(content, number):
    data = as_file(content).replace(b'"at":%d,' % content["at"], b'"at":NaN,', 1)
    return {"nan.json": data + b" " * number}


@kind("damaged")
def a_time_below_nothing(content, number):
    return {"past.json": changed(content, at=-1 - number)}


@kind("damaged", "unknown member")
def a_name_that_is_no_text(content, number):
    return {"name.json": changed(content, name="x\ud800" * (number + 1))}


@kind("damaged", "unknown member")
def a_name_without_end(content, number):
    return {"long-name.json": changed(content, name="a" * (100_000 + number))}


@kind("damaged")
def two_names(content, number):
    data = as_file(content)
    other = json.dumps(f"Somebody Number {number}").encode()
    return {"two-names.json": data[:-1] + b',"name":' + other + b"}"}


@kind("changed after it was handed in")
def answers_replaced(content, number):
    data = as_file(content)
    start = data.index(b'"answers":{') + 11
    return {"edited.json": data[:start] + b'"q99":"%d",' % number + data[start:]}


@kind("damaged")
def answers_that_are_no_texts(content, number):
    lessons = {"00-start-here": {"answers": {"q1": number}, "asked": {}}}
    return {"numbers.json": changed(content, lessons=lessons)}


@kind("damaged")
def tries_that_are_none(content, number):
    return {"tries.json": changed(content, tries={"00-start-here": [[number, "q1"]]})}


@kind("damaged")
def tries_that_unpack_without_end(content, number):
    bomb = base64.b64encode(zlib.compress(b"[" + b" " * (30_000_000 + number), 9)).decode()
    data = json.dumps({**content, "tries": bomb}, separators=(",", ":")).encode()
    return {"tries-bomb.json": data}


@kind("no hand-in", "damaged")
def of_a_later_version(content, number):
    return {"later.json": changed(content, format=2 + number)}


@kind("from another group")
def of_another_group(content, number):
    return {"other-group.json": changed(content, group=f"Bench {number}")}


@kind("unknown member")
def of_a_stranger(content, number):
    return {"stranger.json": changed(content, name=f"Sombody Number {number}")}


@kind("no lesson of this group")
def of_an_unknown_lesson(content, number):
    lessons = {f"../../{number}": {"answers": {"q1": "a"}, "asked": {}}}
    return {"lesson.json": changed(content, lessons=lessons, tries={}, at=content["at"] + 1)}


@kind("too large")
def too_large(content, number):
    return {"large.json": as_file(content) + b" " * (2_000_001 + number)}


@kind("too large")
def a_bomb(content, number):
    return {"bomb.zip": zipped([("bomb.json", b"\0" * (40_000_000 + number))])}


@kind("too large")
def a_bomb_in_an_archive(content, number):
    inner = zipped([("bomb.json", b"0" * (5_000_000 + number))])
    return {"nested-bomb.zip": zipped([("inner.zip", inner)])}


@kind("too deep")
def archives_in_archives(content, number):
    data = as_file(content | {"at": content["at"] - number - 1})
    for depth in range(3):
        data = zipped([(f"{depth}.zip" if depth else "kite.json", data)])
    return {"deep.zip": data}


@kind("too large", "damaged")
def a_member_that_lies_about_its_size(content, number):
    data = bytearray(zipped([("lie.json", b" " * (3_000_000 + number))]))
    at = data.rindex(b"PK\1\2")
    data[at + 24 : at + 28] = struct.pack("<L", 100)
    return {"lie.zip": bytes(data)}


@kind("too large")
def more_members_than_a_list_can_hold(content, number):
    end = struct.pack("<4s4H2LH", b"PK\5\6", 0, 0, 65535, 65535, 400_000_000, 0, 0)
    return {"many.zip": b"PK\3\4" + b"\0" * number + end}


@kind("path trick")
def names_that_lead_out(content, number):
    data = as_file(content)
    names = ("../../out.json", "/etc/out.json", "C:\\out.json", "a/../../out.json", "\\\\x\\y.json")
    return {"out.zip": zipped([(names[number % len(names)], data + b" " * number)])}


@kind("link")
def a_link_in_an_archive(content, number):
    info = zipfile.ZipInfo("kite.json")
    info.external_attr = (stat.S_IFLNK | 0o777) << 16
    return {"link.zip": zipped([(info, f"/etc/{number}")])}


@kind("no plain file")
def a_device_in_an_archive(content, number):
    info = zipfile.ZipInfo(f"zero{number}")
    info.external_attr = (stat.S_IFCHR | 0o666) << 16
    return {"device.zip": zipped([(info, b"")])}


@kind("encrypted")
def encrypted(content, number):
    data = bytearray(zipped([(f"secret{number}.json", as_file(content))]))
    data[6] |= 1
    data[data.rindex(b"PK\1\2") + 8] |= 1
    return {"secret.zip": bytes(data)}


@kind("cannot be read")
def packed_otherwise(content, number):
    member = [(f"kite{number}.json", as_file(content))]
    return {"other-packing.zip": zipped(member, zipfile.ZIP_LZMA)}


@kind("damaged")
def a_member_damaged(content, number):
    data = bytearray(zipped([("kite.json", as_file(content))]))
    middle = len(data) // 2
    data[middle : middle + 20 + number] = b"\xff" * (20 + number)
    return {"member.zip": bytes(data)}


@kind("damaged")
def an_archive_cut_short(content, number):
    return {"cut.zip": zipped([("kite.json", as_file(content))])[: -30 - number]}


@kind("no hand-in")
def another_kind_of_archive(content, number):
    import gzip

    return {"kite.json.gz": gzip.compress(as_file(content) + b" " * number)}


@kind("same again")
def handed_in_twice(content, number):
    return {"again.json": as_file(content)}


@kind("same again")
def handed_in_again_before(content, number):
    return {"before.json": changed(content, at=content["at"] - 1 - number)}


@kind("older")
def an_older_one(content, number):
    lesson, found = next(iter(content["lessons"].items()))
    fewer = {lesson: found | {"answers": dict(list(found["answers"].items())[1:])}}
    return {"old.json": changed(content, lessons=fewer, at=content["at"] - 1000 - number)}


@kind("same again")
def two_of_a_name_in_an_archive(content, number):
    data = as_file(content)
    return {"twice.zip": zipped([("kite.json", data), ("kite.json", data)])}


@kind("no hand-in")
def a_name_that_turns_the_line(content, number):
    return {"\u202egnp.exe\x1b[2J": b"nothing %d" % number}


def on_the_disk(folder):
    """What no bytes can be: links, a pipe, a loop, a folder without end. {name: outcome}."""
    outside = folder.parent / "outside.json"
    outside.write_bytes(b"{}")
    os.symlink(outside, folder / "link.json")
    os.symlink(folder, folder / "loop")
    os.symlink("/dev/zero", folder / "zero.json")
    os.symlink(folder / "nowhere", folder / "dangling.json")
    os.mkfifo(folder / "pipe.json")
    deep = folder / "deep"
    deep.mkdir()
    for _ in range(30):
        deep = deep / "d"
        deep.mkdir()
    return {
        "link.json": "link",
        "loop": "link",
        "zero.json": "link",
        "dangling.json": "link",
        "pipe.json": "no plain file",
        "deep" + "/d" * 20: "too deep",
    }
