"""Places are walked in a fixed order; limits, links and damage are told; nothing is unpacked."""

import io
import os
import zipfile

import pytest

from repairlib.teach import archives
from repairlib.teach.archives import Reader, Refused, walk


def found_in(*places):
    """What was met, by how it is shown: its outcome, or what it holds."""
    return {met.shown: met.outcome or data for met, data in walk(places)}


def zipped(**members):
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in members.items():
            archive.writestr(name, data)
    return packed.getvalue()


def test_a_folder_is_walked_by_name_and_a_place_named_twice_once(tmp_path):
    place = tmp_path / "in"
    (place / "b").mkdir(parents=True)
    for name in ("z", "a", "b/m"):
        (place / name).write_bytes(name.encode())
    expected = {"in/a": b"a", "in/b/m": b"b/m", "in/z": b"z"}
    assert found_in(place, place) == expected
    assert list(found_in(place)) == list(expected)
    assert found_in(place / "z") == {"z": b"z"}


def test_what_was_met_is_read_again_also_inside_of_archives(tmp_path):
    inner = zipped(one=b"1", two=b"2")
    (tmp_path / "outer.zip").write_bytes(zipped(first=b"0", inner=inner))
    (tmp_path / "plain").write_bytes(b"3")
    reader = Reader()
    met = list(walk([tmp_path]))
    assert [data for _, data in met] == [b"0", b"1", b"2", b"3"]
    for one, data in (*met, *reversed(met)):
        assert reader.read(one) == data
    reader.close()


def test_a_file_that_went_meanwhile_is_refused(tmp_path):
    (tmp_path / "plain").write_bytes(b"3")
    (tmp_path / "some.zip").write_bytes(zipped(one=b"1", two=b"2"))
    met = [one for one, _ in walk([tmp_path])]
    (tmp_path / "plain").unlink()
    (tmp_path / "some.zip").write_bytes(zipped())
    for one in met:
        with pytest.raises(Refused):
            Reader().read(one)


@pytest.mark.parametrize(
    ("limit", "value", "met"),
    [
        ("MOST_FILES", 1, {"in/0.txt": b"0", "in/some.zip > one": "too large"}),
        ("DEEPEST", -1, {"in": "too deep"}),
        ("LARGEST", 1, {"in/0.txt": b"0", "in/some.zip > one": "too large"}),
        ("LARGEST_ARCHIVE", 5, {"in/0.txt": b"0", "in/some.zip": "too large"}),
        ("LARGEST_DIRECTORY", 5, {"in/0.txt": b"0", "in/some.zip": "too large"}),
        ("MOST_UNPACKED", -1, {"in/0.txt": b"0", "in/some.zip > one": "too large"}),
    ],
)
def test_every_limit_is_told(tmp_path, monkeypatch, limit, value, met):
    place = tmp_path / "in"
    place.mkdir()
    (place / "0.txt").write_bytes(b"0")
    (place / "some.zip").write_bytes(zipped(one=b"11"))
    assert found_in(place) == {"in/0.txt": b"0", "in/some.zip > one": b"11"}
    monkeypatch.setattr(archives, limit, value)
    assert found_in(place) == met


def test_a_folder_that_may_not_be_read_is_told(tmp_path):
    if os.geteuid() == 0:
        pytest.skip("root may read everything")
    barred = tmp_path / "barred"
    barred.mkdir(mode=0)
    assert found_in(tmp_path) == {f"{tmp_path.name}/barred": "cannot be read"}


def test_any_damage_to_an_archive_is_told_and_raises_nothing_else(tmp_path):
    """Every byte of a small archive is spoilt in turn."""
    whole = zipped(one=b"first" * 9, two=b"second" * 9)
    path = tmp_path / "some.zip"
    for place in range(len(whole)):
        path.write_bytes(whole[:place] + bytes([whole[place] ^ 0xFF]) + whole[place + 1 :])
        for met, data in walk([path]):
            assert met.outcome or met.inside or data
    for length in range(len(whole)):
        path.write_bytes(whole[:length])
        assert [met.outcome for met, data in walk([path]) if not data or met.outcome] or length < 4
