"""The readers of typed tables: whatever parts the columns, the same content or the same reason."""

import numpy as np
import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.textfile import read_text
from repairlib.health import read_measured_file, read_neighbourhood
from repairlib.heat import read_exposure_log, read_log
from repairlib.recap import plan_file, read_board, read_catalogue


def parts_list(path):
    return [
        (item.reference, item.old.farad, item.old.volts, item.old.kind)
        for item in plan_file(path).all_items
    ]


def board(path):
    return [(p.reference, p.area, p.x_mm, p.spacing_mm, p.plus) for p in read_board(path).positions]


def catalogue(path):
    made = read_catalogue(path)
    assert not made.problems
    return [
        (p.part, p.farad, p.volts, p.ripple, p.length, p.mounting, str(p.price)) for p in made.parts
    ]


def measured(path):
    return [
        (part.reference, {name: one.value for name, one in part.readings.items()}, part.note)
        for part in read_measured_file(path).parts
    ]


def history(path):
    return [tuple(event) for event in read_exposure_log(path)]


def log(path):
    found = read_log(path)
    columns = {"seconds": found.seconds, **found.channels}
    return {name: column.round(9).tolist() for name, column in columns.items()}


def parts_nearby(path):
    parts = read_neighbourhood(read_text(path).text)
    return [(part.name, part.nodes, part.value, part.series) for part in parts]


# What each reader gets, cell by cell, and what it says, worked out by hand.
TABLES = {
    parts_list: (
        [
            ["Ref", "Value", "Volts", "Type", "Remarks"],
            ["C1", "4,7µF", "16", "elect", "left, top"],
            ["C2-C3", "0,1µF", "63", "film", ""],
        ],
        [
            ("C1", 4.7e-6, 16.0, "aluminium electrolytic"),
            ("C2", 1e-7, 63.0, "film"),
            ("C3", 1e-7, 63.0, "film"),
        ],
    ),
    board: (
        [
            ["reference", "area", "x_mm", "lead_spacing_mm", "plus"],
            ["C1", "supply, main", "22,5", "7,5", "left"],
            ["C2", "voices", "30", "", ""],
        ],
        [("C1", "supply, main", 22.5, 7.5, "left"), ("C2", "voices", 30.0, None, "")],
    ),
    catalogue: (
        [
            [
                "part",
                "family",
                "capacitance_uf",
                "rated_v",
                "rated_c",
                "ripple_ma",
                "length_mm",
                "mounting",
                "price",
            ],
            ["A1", "aluminium general 105", "4,7", "6,3", "105", "", "11,5", "radial", "0,05"],
            ["A2", "aluminium general 105", "10", "16", "105", "40", "", "radial", "0.10"],
        ],
        [
            ("A1", 4.7e-6, 6.3, None, 11.5, "radial", "0.05"),
            ("A2", 1e-5, 16.0, 0.04, None, "radial", "0.10"),
        ],
    ),
    measured: (
        [
            ["Ref", "C (µF)", "ESR @ 100 kHz (Ω)", "Remarks"],
            ["C1", "98,4", "0,31", "bulged, warm"],
            ["C2", "47", "", ""],
        ],
        [
            ("C1", {"capacitance": 98.4e-6, "esr": 0.31}, "bulged, warm"),
            ("C2", {"capacitance": 47e-6}, ""),
        ],
    ),
    parts_nearby: (
        [
            ["part", "more", "from", "to", "value"],
            ["C1", "0,3 ohm", "a", "b", "4,7 µF"],
            ["R1", "", "b", "0", "2k2"],
        ],
        [("C1", ("a", "b"), 4.7e-6, 0.3), ("R1", ("b", "0"), 2200.0, 0.0)],
    ),
    history: (
        [
            ["when", "event", "celsius", "humidity"],
            ["2031-05-06 08:00", "out", "23,5", "45"],
            ["2031-05-07 20:00", "now", "", ""],
        ],
        [(0.0, "out", 23.5, 45.0), (36.0, "now", None, None)],
    ),
    log: (
        [
            ["time (s)", "joint (°C)", "body (°C)"],
            ["0,5", "24,9", "25,5"],
            ["1,5", "26,4", "26,5"],
            ["2,5", "28,1", "27,5"],
        ],
        {"seconds": [0.5, 1.5, 2.5], "joint": [24.9, 26.4, 28.1], "body": [25.5, 26.5, 27.5]},
    ),
}


def joined(rows, sign, quote=False):
    """The rows as text; a cell that holds the sign is quoted, as every program that saves does."""
    return "".join(
        sign.join(f'"{cell}"' if quote or sign in cell else cell for cell in row) + "\n"
        for row in rows
    )


def framed(rows):
    head, *others = ("| " + " | ".join(row) + " |\n" for row in rows)
    return head + "|" + "---|" * len(rows[0]) + "\n" + "".join(others)


LAYOUTS = {
    "commas": lambda rows: joined(rows, ","),
    "semicolons": lambda rows: joined(rows, ";"),
    "tabs": lambda rows: joined(rows, "\t"),
    "strokes": lambda rows: joined(rows, "|"),
    "framed by strokes": framed,
    "commas, all quoted": lambda rows: joined(rows, ",", quote=True),
    "semicolons, all quoted": lambda rows: joined(rows, ";", quote=True),
    "tabs, all quoted": lambda rows: joined(rows, "\t", quote=True),
    "strokes, all quoted": lambda rows: joined(rows, "|", quote=True),
}
SAVED = {
    "UTF-8": lambda text: text.encode(),
    "with byte order mark": lambda text: text.encode("utf-8-sig"),
    "UTF-16": lambda text: text.encode("utf-16"),
    "Windows-1252": lambda text: text.replace("Ω", "ohm").encode("cp1252"),
    "CRLF": lambda text: text.replace("\n", "\r\n").encode(),
    "CR": lambda text: text.replace("\n", "\r").encode(),
    "UTF-16 with CRLF": lambda text: text.replace("\n", "\r\n").encode("utf-16"),
    "blank line above": lambda text: ("\n" + text).encode(),
}


@pytest.mark.parametrize("layout", LAYOUTS.values(), ids=LAYOUTS)
@pytest.mark.parametrize("reader", TABLES, ids=lambda reader: reader.__name__)
def test_the_same_content(reader, layout, tmp_path):
    rows, said = TABLES[reader]
    found = {}
    for name, saved in SAVED.items():
        (tmp_path / "table.csv").write_bytes(saved(layout(rows)))
        found[name] = reader(tmp_path / "table.csv")
    assert found == dict.fromkeys(SAVED, said)


def reason(reader, text, tmp_path):
    """Why a reader refused a text, or set a line of it aside."""
    path = tmp_path / "table.csv"
    path.write_text(text, encoding="utf-8")
    try:
        if reader is catalogue:
            return "; ".join(problem.why for problem in read_catalogue(path).problems)
        if reader is parts_list:
            return "; ".join(line.why for line in plan_file(path).list.set_aside)
        if reader is measured:
            return "; ".join(line.why for line in read_measured_file(path).set_aside)
        return str(reader(path))
    except RepairlibError as problem:
        return str(problem)


BY_LINE = [reader for reader in TABLES if reader is not log]
HEADED = [board, catalogue, history, parts_nearby]


@pytest.mark.parametrize("reader", BY_LINE, ids=lambda reader: reader.__name__)
def test_a_decimal_comma_between_commas_is_told(reader, tmp_path):
    rows, _ = TABLES[reader]
    text = "\n".join(",".join(row) for row in [*rows, rows[1]]) + "\n"
    assert "where the headings are" in reason(reader, text, tmp_path)
    assert "is a comma inside a value?" in reason(reader, text, tmp_path)


@pytest.mark.parametrize("sign", [",", ";", "\t", "|"])
@pytest.mark.parametrize("reader", BY_LINE, ids=lambda reader: reader.__name__)
def test_a_quotation_mark_that_is_not_closed_is_told(reader, sign, tmp_path):
    rows, _ = TABLES[reader]
    text = joined(rows, sign) + '"' + sign.join(rows[-1]) + "\n" + joined([rows[-1]], sign)
    assert "a quotation mark is opened and not closed" in reason(reader, text, tmp_path)


@pytest.mark.parametrize("reader", HEADED, ids=lambda reader: reader.__name__)
def test_columns_by_spaces_are_refused_where_an_empty_cell_means_something(reader, tmp_path):
    rows, _ = TABLES[reader]
    text = "".join("   ".join(row) + "\n" for row in rows)
    assert "its columns are set apart by spaces" in reason(reader, text, tmp_path)


@pytest.mark.parametrize("reader", HEADED, ids=lambda reader: reader.__name__)
def test_a_figure_that_may_be_thousands_is_told_with_both_readings(reader, tmp_path):
    rows, _ = TABLES[reader]
    two = {"22,5": "1,250", "4,7": "1,250", "23,5": "1,250", "4,7 µF": "1,250 µF"}
    changed = [[two.get(cell, cell) for cell in row] for row in rows]
    assert "may be 1.250 or 1250" in reason(reader, joined(changed, ";"), tmp_path)


def test_a_log_with_decimal_commas_and_columns_by_blanks(tmp_path):
    (tmp_path / "log.txt").write_text("time temp_°C\n0,5 24,9\n1,0 25,3\n1,5 26,0\n", "utf-8")
    found = read_log(tmp_path / "log.txt", "°C")
    assert np.array_equal(found.seconds, [0.5, 1.0, 1.5])
