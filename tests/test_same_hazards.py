"""Every face gives the same hazards for the same part."""

import ast
import json
from itertools import product
from pathlib import Path

import pytest

from repairlib.core.limits import LINE_AC, MAINS_AC, STEADY, TOUCHABLE_DC, hazards_of_capacitor
from repairlib.faces.cli import main
from repairlib.health import judge_capacitor
from repairlib.markings import read
from repairlib.recap import plan, replacement_capacitor, substitute_capacitor
from repairlib.show.sheets import bench_sheet

LIBRARY = Path(__file__).parent.parent / "repairlib"
# How the quick check and a parts list are told the same part: (--as, words of the list).
KINDS = {
    "capacitor": "film",
    "ceramic": "ceramic",
    "radial": "elect",
    "tantalum": "tantalum",
}
VALUES = {
    "capacitor": ("0.1µF", "0.47µF", "10nF"),
    "ceramic": ("100pF", "4.7nF", "0.1µF"),
    "radial": ("10µF", "47µF", "1000µF"),
    "tantalum": ("1µF", "10µF", "47µF"),
}
DC = (6.3, 16, 35, 50, 63, 100, 160, 250, 400, 630)
AC = (25, 40, 50, 63, 100, 160, 250, 275, 310, 440)
PARTS = [
    (kind, f"{value} {volts:g}V{suffix}", f"{value} {volts:g}V{suffix} {KINDS[kind]}")
    for kind in KINDS
    for value, (volts, suffix) in product(
        VALUES[kind], [(v, "") for v in DC] + [(v, "AC") for v in AC if kind != "tantalum"]
    )
]


def hazards_of_line(words):
    """The hazards of the one part of a list, by the plan."""
    (item,) = plan(f"C1 {words}\n").all_items
    return set(item.cautions)


def test_the_corpus_is_large():
    assert len(PARTS) >= 200


@pytest.mark.parametrize("kind", KINDS)
def test_quick_check_and_plan_agree(kind):
    differing = {}
    for as_kind, marking, words in PARTS:
        if as_kind == kind:
            quick = set(read(marking, kind)[0].cautions)
            if quick != hazards_of_line(words):
                differing[marking] = (quick, hazards_of_line(words))
    assert not differing


@pytest.mark.parametrize("marking", ["0.1µF X2 275VAC", "2.2nF Y2 250V~", "472M Y1 400V~"])
def test_a_safety_class_is_a_part_of_the_mains_on_every_face(marking):
    wanted = {"mains", "stored charge", "heat and fire"}
    assert set(read(marking)[0].cautions) == wanted
    assert hazards_of_line(f"{marking} film") == wanted


@pytest.mark.parametrize("volts", [63, 100, 400])
def test_calculator_sheet_and_json_say_what_the_plan_says(volts, tmp_path, capsys):
    words = f"47µF {volts}V elect"
    wanted = hazards_of_line(words)
    assert wanted == {"mains", "stored charge"}
    for finding in (
        replacement_capacitor("47 µF", f"{volts} V", "aluminium electrolytic"),
        substitute_capacitor("aluminium electrolytic", "film", f"{volts} V"),
        judge_capacitor("aluminium general 105", "47 µF", f"{volts} V", measured="46 µF"),
    ):
        assert wanted <= set(finding.cautions), finding.title
    sheet = bench_sheet(plan(f"C1 {words}\n"))
    assert "Mains voltage can kill" in sheet and "A capacitor keeps its charge" in sheet
    (tmp_path / "list.txt").write_text(f"C1 {words}\n", encoding="utf-8")
    assert main(["plan", str(tmp_path / "list.txt"), "--json"]) == 0
    assert wanted <= set(json.loads(capsys.readouterr().out)["cautions"])


@pytest.mark.published("IEC 62368-1, tables of ES1 and ES2: 60 V dc, 30 V rms; 120 V dc, 50 V rms")
def test_where_the_hazards_begin():
    """Above 60 V dc; from 50 V ac. The next rating below each brings nothing."""
    assert TOUCHABLE_DC == 60 and MAINS_AC == 50 and STEADY["IEC 62368-1, ES1"].ac_rms == 30
    assert hazards_of_capacitor(60) == () and hazards_of_capacitor(63)
    assert hazards_of_capacitor(49, ac=True) == () and hazards_of_capacitor(50, ac=True)
    assert STEADY["IEC 62368-1, ES2"].dc == 120


def test_an_ac_rating_is_held_against_ac_limits():
    assert MAINS_AC < TOUCHABLE_DC < LINE_AC
    assert "mains" in hazards_of_capacitor(55, ac=True)
    assert hazards_of_capacitor(55, ac=False) == ()


def constants():
    """(file, name, value) of each plain value that the library gives a name in capitals."""
    for path in sorted(LIBRARY.rglob("*.py")):
        if "questions" in path.parts:
            continue
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Assign):
                for one in ast.walk(node.value):
                    if isinstance(one, ast.Constant):
                        names = [ast.unparse(target) for target in node.targets]
                        yield path.relative_to(LIBRARY).as_posix(), " ".join(names), one.value


def test_cannot_tell_is_said_once():
    homes = {file for file, _, value in constants() if value == "cannot tell"}
    assert homes == {"core/verdicts.py"}


def test_limits_of_voltage_have_one_home():
    """No other module names 60 V dc or 50 V ac as a limit, a danger or a voltage to touch."""
    words = ("LIMIT", "TOUCH", "DANGER", "MAINS", "LOWEST", "ES1")
    strangers = [
        (file, name)
        for file, name, value in constants()
        if "HZ" not in name
        and value in (60, 120, 42.4, 50)
        and any(word in name.upper() for word in words)
    ]
    assert [one for one in strangers if one[0] != "core/limits.py"] == []


RUN_PARTS = [
    "8µF 450V~ motor run",
    "8µF 450V~",
    "12µF 400VAC motor-run",
    "40µF 450VAC",
    "3.3µF 250VAC",
    "2µF 250V~ ballast",
    "4µF 440V~ oil paper",
    "0.5µF 600V oil",
    "0.1µF 400V paper",
]


@pytest.mark.common_practice
@pytest.mark.parametrize("words", RUN_PARTS)
def test_oil_that_may_hold_pcb_is_named_on_every_face(words):
    assert all("PCB oil" in one.cautions for one in read(words) if one.kind == "film")
    assert "PCB oil" in read(words)[0].cautions
    tubes = {"high-voltage tubes"}
    assert set(read(words)[0].cautions) - tubes == hazards_of_line(words) - tubes


@pytest.mark.common_practice
@pytest.mark.parametrize(
    "words",
    [
        "8µF 450V~ MKP",
        "2.2µF X2 275V~",
        "6µF 440V~ NO PCBS motor-run",
        "6µF 440V~ motor run no PCB",
        "0.47µF 250V~",
        "10µF 63V~",
        "4.7µF 400V",
    ],
)
def test_and_not_where_there_is_none(words):
    assert "PCB oil" not in read(words)[0].cautions
    assert "PCB oil" not in hazards_of_line(words)


def test_the_quick_check_prints_it(capsys):
    assert main(["8µF 450V~"]) == 0
    assert "PCB oil" in capsys.readouterr().out
