"""Files as they come: encodings, damage, and what is no list at all."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.recap import plan_file, read_board

LIST = "Ref,Value,Type\nC1,10µF 16V,elect\n"


@pytest.mark.from_memory("ISO/IEC 8859-1: the micro sign is byte B5; byte order marks of Unicode")
@pytest.mark.parametrize(
    ("data", "told"),
    [
        (b"C1,10\xb5F 16V,elect\n", "Windows-1252"),
        (b"C1,10\xc2\xb5F 16V,elect\n", ""),
        (b"\xef\xbb\xbfC1,10\xc2\xb5F 16V,elect\n", "byte order mark"),
        (b"\xff\xfe" + "C1,10µF 16V,elect\n".encode("utf-16-le"), "UTF-16"),
        (b"\xfe\xff" + "C1,10µF 16V,elect\n".encode("utf-16-be"), "UTF-16"),
        (b"C1,10\xc2\xb5F 16V,elect\r\n", ""),
        (b"C1,10\xc2\xb5F 16V,elect\rC2,10/16,elect\r", ""),
    ],
)
def test_encodings_give_one_plan(tmp_path, data, told):
    (tmp_path / "list.csv").write_bytes(data)
    made = plan_file(tmp_path / "list.csv")
    assert str(made.items[0].new).startswith("10\xa0µF 16\xa0V")
    assert told in " ".join(made.list.notes)


BROKEN = {
    "empty": (b"", "empty"),
    "blank": (b" \n\n", "empty"),
    "NUL byte": (b"C1,10/16\0,el\n", "NUL byte at byte 9"),
    "UTF-16 without mark": ("C1,10/16,el\n".encode("utf-16-le"), "NUL byte"),
    "control characters": (b"C1,10/16\x01,el\n", "control character 1 on line 1"),
    "workbook": (b"PK\x03\x04rest", "spreadsheet workbook"),
    "PDF": (b"%PDF-1.4 C1", "PDF"),
    "picture": (b"\x89PNG\r\n\x1a\n", "picture"),
    "another encoding": (b"C1,10\x81\xf0F\n", "fits no encoding"),
    "cut in a character": ("C1,10µ".encode()[:-1], "inside a character"),
    "cut UTF-16": (LIST.encode("utf-16")[:-1], "inside a character"),
    "cut in a row": (b"Ref,Value,Volts,Type\nC1,10,16,el\nC2,10", "has 2 of 4 columns"),
    "cut after a title": (b"Ref,Value,Type\nC1,10/16,el\nPage 1\nC2,10", "has 2 of 3 columns"),
    "cut in quotes": (b'Ref,Value,Type\nC1,10/16,el\n"C2, C3,10', "was cut off"),
    "200 columns": (b"C1," + b"x," * 198 + b"x\n", "200 columns"),
}


@pytest.mark.parametrize(("data", "wrong"), BROKEN.values(), ids=BROKEN)
def test_no_list(tmp_path, data, wrong):
    path = tmp_path / "list.csv"
    path.write_bytes(data)
    with pytest.raises(RepairlibError, match=wrong) as caught:
        plan_file(path)
    assert "\n" not in str(caught.value)
    assert path.read_bytes() == data


def test_a_whole_file_without_last_line_end_is_read_with_a_note(tmp_path):
    (tmp_path / "list.csv").write_bytes(b"Ref,Value,Type\nC1,10/16,el\nC2,10/16,el")
    made = plan_file(tmp_path / "list.csv")
    assert len(made.items) == 2
    assert "does not end with a line end" in made.list.notes[0]


@pytest.mark.parametrize("path", ["", "missing.csv", "a\0b"])
def test_no_file(tmp_path, path):
    """A folder, a name that does not exist, a name that cannot exist."""
    with pytest.raises(RepairlibError):
        plan_file(f"{tmp_path}/{path}")


BOARDS = {
    "no reference column": ("name,x_mm\nC1,5\n", "no column reference"),
    "no reference": ("reference,x_mm\n,5\n", "no reference"),
    "no length": ("reference,x_mm\nC1,wide\n", "not a length"),
    "negative": ("reference,x_mm\nC1,-5\n", "not a length"),
    "direction": ("reference,plus\nC1,north\n", "not a word"),
    "twice": ("reference\nC1\nC1\n", "listed twice"),
    "comma inside": ("reference,x_mm\nC1,4,7\n", "3 columns .* is a comma inside a value"),
    "two readings": ("reference;x_mm\nC1;1,000\n", "may be 1.000 or 1000"),
    "open quotes": ('reference,x_mm\n"C1,4\n', "opened and not closed"),
}


@pytest.mark.parametrize(("text", "wrong"), BOARDS.values(), ids=BOARDS)
def test_no_board(tmp_path, text, wrong):
    (tmp_path / "board.csv").write_text(text)
    with pytest.raises(RepairlibError, match=wrong):
        read_board(tmp_path / "board.csv")
