"""The exported CSV: no live formula, whole or not at all, nothing overwritten."""

import csv
import io
import os

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.health.measured import read_measured
from repairlib.recap import plan
from repairlib.recap.catalogue import parse_catalogue
from repairlib.recap.export import csv_text, free_stem, not_live, write_csv, write_whole

LIST = "Ref,Value,Type,Note\nC1,10/16,elect,=SUM(A1)\n"
LIVE = tuple("=+-@\t\r＝＋－＠")


@pytest.mark.published("MITRE, CWE-1236, mitigations: = + - @ begin a formula, ' stops it")
@pytest.mark.parametrize("cell", ["=1+1", "+1", "-1", "@SUM(A1)"])
def test_formula_is_marked(cell):
    assert not_live(cell) == "'" + cell


@pytest.mark.from_memory("tab, return, blank and the full-width sign hide the start of a formula")
@pytest.mark.parametrize("cell", ["\t=1", "\r=1", " =1", "＝1"])
def test_hidden_formula_is_marked(cell):
    assert not_live(cell).lstrip()[0] == "'"


@settings(max_examples=300, deadline=None)
@given(st.text(alphabet="=+-@\t\r\n;,|\" 'Ca1＝"))
def test_no_cell_comes_out_live(text):
    """Neither as a comma file nor when opened with another separator."""
    made = plan(f"C1,10/16,elect\nC2,10/16,{text}\n")
    written = csv_text(made.rows())[0]
    for row in csv.reader(io.StringIO(written)):
        for cell in row:
            for separator in ("\0", ";", "\t", "|"):
                for piece in cell.split(separator):
                    assert piece.strip(" \n")[:1] not in LIVE


def test_catalogue_and_readings_come_out_harmless():
    catalogue = parse_catalogue(
        "part,family,capacitance_uf,rated_v,rated_c,mounting,price\n"
        "=1+1,aluminium general 105,10,16,105,radial,0.07\n"
    )
    readings = read_measured("Ref,C (µF),ESR @ 120 Hz (Ω)\nC1,=1+1,+5\n")
    made = plan("C1,10/16,elect\n", measured=readings, catalogue=catalogue)
    (row,) = csv.DictReader(io.StringIO(csv_text(made.rows())[0]))
    assert row["catalogue part"] == "'=1+1"
    assert not any(cell.strip().startswith(LIVE) for cell in row.values())


def test_export_says_what_it_marked(tmp_path):
    saved = plan(LIST).to_csv(tmp_path / "plan.csv")
    assert saved.marked == 1
    assert "1 cell began like a spreadsheet formula" in str(saved)
    rows = list(csv.DictReader(io.StringIO(saved.path.read_text("utf-8-sig"))))
    assert rows[0]["source text"] == "C1,10/16,elect,'=SUM(A1)"
    assert rows[0]["new part"] == "10\xa0µF 16\xa0V 105 °C polar aluminium"


def test_existing_file_is_left_alone(tmp_path):
    path = tmp_path / "plan.csv"
    path.write_text("mine")
    with pytest.raises(RepairlibError, match="nothing was overwritten"):
        write_csv(plan(LIST).rows(), path)
    assert path.read_text() == "mine"
    assert os.listdir(tmp_path) == ["plan.csv"]
    write_csv(plan(LIST).rows(), path, overwrite=True)
    assert path.read_text("utf-8-sig").startswith('"reference"')


@pytest.mark.parametrize("target", ["no/such/folder.csv", "list.csv/plan.csv", "a\0b.csv"])
def test_cannot_be_written(tmp_path, target):
    (tmp_path / "list.csv").write_text("mine")
    with pytest.raises(RepairlibError, match="cannot be written"):
        write_whole(tmp_path / target, b"x")
    assert (tmp_path / "list.csv").read_text() == "mine"


def test_failing_disk_leaves_nothing_behind(tmp_path, monkeypatch):
    def full(*_):
        raise OSError(28, "No space left on device")

    (tmp_path / "plan.csv").write_text("mine")
    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(RepairlibError, match="No space left"):
        write_whole(tmp_path / "plan.csv", b"x", overwrite=True)
    assert [path.read_text() for path in tmp_path.iterdir()] == ["mine"]


def test_file_system_without_hard_links(tmp_path, monkeypatch):
    def no_links(*_):
        raise OSError(95, "Operation not supported")

    monkeypatch.setattr(os, "link", no_links)
    write_whole(tmp_path / "plan.csv", b"one")
    with pytest.raises(RepairlibError, match="exists"):
        write_whole(tmp_path / "plan.csv", b"two")
    assert (tmp_path / "plan.csv").read_bytes() == b"one"


def test_free_name(tmp_path):
    assert free_stem(tmp_path, "a", (".csv",)) == "a"
    (tmp_path / "a.csv").touch()
    assert free_stem(tmp_path, "a", (".csv", ".html")) == "a-2"


def test_table_is_the_same_as_the_csv():
    made = plan(LIST)
    table = made.table()
    assert list(table.columns) == list(made.rows()[0])
    assert table.iloc[0]["new part"].startswith("10\xa0µF")


@pytest.mark.from_memory("a spreadsheet opens a file with the separator of its country")
@pytest.mark.parametrize(
    "cell",
    [
        'x;"=HYPERLINK("http://x";1);y',
        'z|"=1+1|y',
        '" =1',
        'a|""@SUM(A1)',
        'b; "-2+3"',
        '""=1',
        'c,"＝1',
    ],
)
def test_a_formula_behind_a_quotation_mark_is_marked(cell):
    made = plan(f"C1,10/16,elect,plain\nC2\t10/16\t{cell}\n")
    rows = [{**made.rows()[0], "source text": cell}]
    written = csv_text(rows)[0]
    for separator in ";|,\t":
        for row in csv.reader(io.StringIO(written, newline=""), delimiter=separator):
            assert not any(one.strip(' "')[:1] in LIVE for one in row)


def test_what_cannot_be_seen_is_written_out():
    """U+202E turns the reading direction: 16V would be read as V61."""
    assert (
        not_live("a\u202e16V\x1b[2J\x9b\ufeff\u00a0b") == "a\\u202e16V\\x1b[2J\\x9b\\ufeff\u00a0b"
    )


def test_a_dangling_link_takes_a_name_too(tmp_path):
    (tmp_path / "a.csv").symlink_to(tmp_path / "nowhere")
    assert free_stem(tmp_path, "a", (".csv",)) == "a-2"


def test_a_name_too_long_is_one_clear_line(tmp_path):
    with pytest.raises(RepairlibError, match="cannot be written") as error:
        write_whole(tmp_path / ("x" * 300 + ".csv"), b"x")
    assert error.value.accepted == "a list with a shorter name"
    assert not list(tmp_path.iterdir())
