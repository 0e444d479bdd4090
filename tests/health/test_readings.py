"""repairlib.core.typed.readings and measured: what people write, and tables of it."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.readings import read_measurement
from repairlib.health.measured import read_measured, read_measured_file

# One reading


@pytest.mark.common_practice
@pytest.mark.parametrize(
    "text, unit, bare, value",
    [
        ("0.35", "Ω", None, 0.35),
        ("350 mΩ", "Ω", None, 0.35),
        ("350m", "Ω", "Ω", 0.35),
        ("0,35 ohm", "Ω", None, 0.35),
        ("350", "Ω", "mΩ", 0.35),
        ("98", "F", "µF", 98e-6),
        ("98uF", "F", "nF", 98e-6),
        ("4u7", "F", None, 4.7e-6),
        ("0.08", "", None, 0.08),
        ("8 %", "", None, 0.08),
        ("8", "", "%", 0.08),
        ("3.2 µA", "A", None, 3.2e-6),
        ("20", "°C", None, 20),
        ("0", "°C", None, 0),
        ("~0.5", "Ω", None, 0.5),
        ("0.5?", "Ω", None, 0.5),
        ('"0.5"', "Ω", None, 0.5),
    ],
)
def test_values(text, unit, bare, value):
    reading = read_measurement(text, unit, bare)
    assert reading.kind == "value"
    assert reading.value == reading.low == reading.high == pytest.approx(value)


@pytest.mark.common_practice
@pytest.mark.parametrize(
    "text",
    ["OL", "O.L", "o.l.", "0L", "0.L", ".OL", "OL MΩ", "O.L kΩ", "overload", "Over range", "over",
     "inf", "∞", "open", "open circuit", "out of range"],
)  # fmt: skip
def test_overload(text):
    reading = read_measurement(text, "Ω")
    assert (reading.kind, reading.value, reading.high) == ("overload", None, math.inf)
    assert "range" in reading.why
    assert read_measurement(text, "Ω", range_top=40e6).low == 40e6


@pytest.mark.common_practice
@pytest.mark.parametrize(
    "text, kind, low, high",
    [
        ("< 0.1", "below", -math.inf, 0.1),
        ("<0.1Ω", "below", -math.inf, 0.1),
        ("≤ 100m", "below", -math.inf, 0.1),
        ("less than 0.1 ohm", "below", -math.inf, 0.1),
        (">20M", "above", 20e6, math.inf),
        ("over 20 MΩ", "above", 20e6, math.inf),
        ("≥20 Meg", "above", 20e6, math.inf),
        ("1.0 ± 0.2", "value", 0.8, 1.2),
        ("100 +/- 5 %", "value", 95, 105),
        ("0.00", "zero", 0, 0.01),
        ("0.0 mΩ", "zero", 0, 1e-4),
        ("short", "zero", 0, 0),
    ],
)
def test_bounds_and_zero(text, kind, low, high):
    reading = read_measurement(text, "Ω")
    assert reading.kind == kind
    assert (reading.low, reading.high) == pytest.approx((low, high))


def test_a_zero_says_what_to_suspect():
    assert "probes touch each other" in read_measurement("0.00", "Ω").why
    assert "broken connection" in read_measurement("0.0", "F", "nF").why


@pytest.mark.common_practice
@pytest.mark.parametrize("text", ["", " ", "-", "--", "—", "n/a", "N/A", "?", "none", "not tested"])
def test_nothing(text):
    reading = read_measurement(text, "Ω")
    assert (reading.kind, reading.value) == ("nothing", None)


def test_a_frequency_behind_the_reading():
    reading = read_measurement("0.31 Ω @ 100k", "Ω")
    assert (reading.value, reading.frequency) == (0.31, 100e3)
    assert read_measurement("0.08 at 120 Hz", "").frequency == 120


@pytest.mark.parametrize(
    "text, unit, said",
    [
        ("98", "F", "no unit, and no heading"),
        ("47 µF", "Ω", "in F where Ω is due"),
        ("5 V", "", "in V where a ratio is due"),
        ("fine", "Ω", "no number"),
        ("1,000", "Ω", "may be 1.000 or 1000"),
        ("-0.4", "Ω", "was the circuit live"),
        ("1 ± 2 ± 3", "Ω", "± stands twice"),
        ("0.3 @ dawn", "Ω", "no number"),
        ("9" * 61, "Ω", "longer than 60"),
        (None, "Ω", "not a text"),
    ],
)
def test_what_is_no_reading(text, unit, said):
    with pytest.raises(RepairlibError, match=said):
        read_measurement(text, unit)


PIECES = st.sampled_from(
    ["OL", "<", ">", "±", "0.1", "0.00", "20M", "-", "µF", "Ω", "@", "100k", "?", " ", "%", "~"]
)


@given(
    st.text(max_size=20) | st.lists(PIECES, max_size=5).map("".join),
    st.sampled_from(["Ω", "F", "A", "V", "", "°C", "Hz", "H"]),
    st.sampled_from([None, "µF", "mΩ", "%"]),
)
def test_any_text_is_a_reading_or_one_clear_error(text, unit, bare):
    try:
        reading = read_measurement(text, unit, bare)
    except RepairlibError as error:
        assert "\n" not in str(error)
        return
    assert reading.low <= reading.high
    assert str(reading)


# Tables

SHEET = """\
Bench sheet, echo unit
Ref;C (µF);ESR @ 100 kHz;D 120Hz;Leakage [µA];Remarks
C1;98,4;0,31;0,06;2;
C2;OL;< 0,1;-;;swollen
C3;47;350 mΩ;8 %;>20;
C4;0,00;0,00;;;leads slipped

R7;;0,2;;;
C5;ten;0,5;;;
C1;90;1;;;again
hum;1;2;;;
C6;;;;;
C7;1;2;3;4;5;6
C8-C9;1;2;;;
"""


def test_every_line_is_accounted_for():
    table = read_measured(SHEET)
    lines = [part.line for part in table.parts] + [line.line for line in table.set_aside]
    assert sorted(lines) == list(range(1, len(table.lines) + 1))
    assert [part.reference for part in table.parts] == ["C1", "C2", "C3", "C4", "R7", "C5"]
    why = {line.line: line.why for line in table.set_aside}
    assert "C1 stands on line 3 already" in why[10]
    assert why[12] == "nothing was read on C6"
    assert "7 columns where the headings are 6" in why[13]
    assert "more than one part" in why[14]
    assert all(line.why for line in table.set_aside if line.what == "unreadable")


def test_units_mixed_in_one_column():
    parts = read_measured(SHEET).by_reference()
    assert parts["C1"]["capacitance"].value == pytest.approx(98.4e-6)
    assert parts["C3"]["esr"].value == pytest.approx(0.35)
    assert (parts["C1"]["loss"].value, parts["C3"]["loss"].value) == pytest.approx((0.06, 0.08))
    assert parts["C3"]["leakage"].low == pytest.approx(20e-6)
    assert parts["C2"]["capacitance"].kind == "overload"
    assert parts["C2"]["loss"].kind == "nothing"
    assert parts["C4"]["esr"].kind == "zero"
    assert parts["C1"]["esr"].frequency == 100e3
    assert parts["C1"]["loss"].frequency == 120
    assert parts["C2"].note == "swollen"


def test_a_reading_that_makes_no_sense_keeps_its_place():
    table = read_measured(SHEET)
    ((line, role, reading),) = table.unread()
    assert (line, role, reading.text) == (9, "capacitance", "ten")
    assert table.by_reference()["C5"]["esr"].value == 0.5


@pytest.mark.parametrize(
    "heading, role, value, frequency",
    [
        ("ESR", "esr", 5, None),
        ("ESR (mΩ)", "esr", 5e-3, None),
        ("ESR/mΩ", "esr", 5e-3, None),
        ("ESR 100k [mΩ]", "esr", 5e-3, 100e3),
        ("ESR (mΩ) @ 100 kHz", "esr", 5e-3, 100e3),
        ("ESR in mΩ", "esr", 5e-3, None),
        ("ESR mΩ", "esr", 5e-3, None),
        ("tan δ", "loss", 5, None),
        ("DF (%)", "loss", 0.05, None),
        ("D (120 Hz)", "loss", 5, 120),
        ("Cap. (nF)", "capacitance", 5e-9, None),
        ("C µF 1kHz", "capacitance", 5e-6, 1e3),
        ("I leak (mA)", "leakage", 5e-3, None),
        ("Temp", "temperature", 5, None),
    ],
)
def test_headings(heading, role, value, frequency):
    part = read_measured(f"Ref\t{heading}\tNotes\nC1\t5\tx\n").by_reference()["C1"]
    assert part[role].value == pytest.approx(value)
    assert part[role].frequency == frequency


def test_a_column_of_frequencies():
    part = read_measured("Ref,ESR,Freq\nC1,0.3,100k\n").by_reference()["C1"]
    assert part["esr"].frequency == 100e3


def test_without_headings_the_units_say_it():
    table = read_measured("C1  98 µF  0.3 Ω  2 µA  bulged\nC2  47uF  0.5\n")
    (part,) = table.parts
    assert {role: str(r.unit) for role, r in part.readings.items()} == {
        "capacitance": "F",
        "esr": "Ω",
        "leakage": "A",
    }
    assert part.note == "bulged"
    assert "no heading and no unit say what 0.5 is" in table.set_aside[0].why


def test_a_file_in_another_encoding(tmp_path):
    path = tmp_path / "readings.csv"
    path.write_bytes("Ref,C (µF),ESR (mO)\nC1,98,300\n".encode("cp1252"))
    table = read_measured_file(path)
    kept = "Not read as a measurement, kept as remarks: 'ESR (mO)'"
    assert table.notes == [kept, "not UTF-8: read as Windows-1252"]
    assert table.name == "readings.csv"
    assert table.by_reference()["C1"]["capacitance"].value == pytest.approx(98e-6)


@pytest.mark.parametrize("text", ["", "\n\n", None])
def test_no_line_at_all(text):
    with pytest.raises(RepairlibError):
        read_measured(text)


CELLS = st.sampled_from(["Ref", "C1", "C2", "ESR (mΩ)", "C", "5", "OL", "<1", '"', "x", "", "-"])


@given(
    st.text(max_size=80)
    | st.lists(st.lists(CELLS, max_size=5).map(",".join), max_size=6).map("\n".join)
)
def test_any_text_is_read_line_by_line(text):
    try:
        table = read_measured(text)
    except RepairlibError as error:
        assert "\n" not in str(error)
        return
    lines = [part.line for part in table.parts] + [line.line for line in table.set_aside]
    assert sorted(lines) == list(range(1, len(table.lines) + 1))


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("heading", "ohm", "hertz"),
    [
        ("ESR Ohm 100kHz", 0.5, 1e5),
        ("ESR ohm", 0.5, None),
        ("esr_mohm", 0.5e-3, None),
        ("ESR 120 Hz mOhm", 0.5e-3, 120),
    ],
)
def test_ohm_in_a_heading_without_brackets(heading, ohm, hertz):
    (part,) = read_measured(f"Ref;{heading}\nC7;0.5\n").parts
    assert part["esr"].value == pytest.approx(ohm) and part["esr"].frequency == hertz
