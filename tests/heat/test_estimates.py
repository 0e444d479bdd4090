"""repairlib.heat.estimates and materials: worked examples and the stated limits of materials."""

import pytest
from pytest import approx

from repairlib.core.errors import RepairlibError
from repairlib.heat.estimates import (
    contact_temperature,
    heat_at_depth,
    heat_resistance,
    hole_resistance,
    melting_heat,
    warming_time,
)
from repairlib.heat.joint_mesh import AIR_FILM, STILL_FILM
from repairlib.heat.materials import figure, figures, melting_heat_of, stuff, withstands

WORKED = "worked by hand from textbook formulas and the stated inputs"


@pytest.mark.from_memory(WORKED)
def test_heat_to_melt_20_mg():
    alone = melting_heat("Sn63Pb37", "20 mg")
    assert alone.heat == approx(1.296, abs=0.001)
    with_copper = melting_heat("Sn63Pb37", "20 mg", copper="0.15 g", seconds=2)
    assert with_copper.power == approx(5.21, abs=0.005)


@pytest.mark.from_memory(WORKED)
@pytest.mark.parametrize(("cold", "face"), [("FR-4", 343.4), ("alumina 96 %", 287.3)])
def test_hot_copper_touches(cold, face):
    assert contact_temperature("copper", 350, cold, 25).face == approx(face, abs=0.1)


@pytest.mark.from_memory(WORKED)
def test_resistances_to_heat():
    assert heat_resistance("FR-4", "1.6 mm", 100).kelvin_per_watt == approx(55.2, abs=0.05)
    assert heat_resistance("copper", "20 mm", 0.035).kelvin_per_watt == approx(1429, abs=0.5)
    assert hole_resistance("0.3 mm").kelvin_per_watt == approx(185.2, abs=0.1)
    assert hole_resistance("0.3 mm", number=9).kelvin_per_watt == approx(20.6, abs=0.05)


@pytest.mark.from_memory(WORKED)
def test_depth_in_a_board():
    assert heat_at_depth(350, "1 mm", 130).target_after == approx(3.59, abs=0.01)
    assert heat_at_depth(350, "0.8 mm", 130).there == approx(150.8, abs=0.1)


@pytest.mark.from_memory(WORKED)
def test_parts_in_air():
    chip = warming_time("0.5 g", 450, 80, 300, 25, 217)
    assert chip.time_constant == approx(12.5)
    assert chip.seconds == approx(14.97, abs=0.01)
    assert warming_time("3 g", 600, 10, 25, 150, 60).seconds == approx(572.8, abs=0.1)
    assert warming_time("1 g", 225, 80, 300, 25, 200).heat_at_first == approx(4.95, abs=0.005)


@pytest.mark.published(
    "Onlitex, Everything You Should Know About the Tg of PCB: 130 to 140, about 150, over 170 °C"
)
def test_softening_of_boards():
    """A standard board whose face goes to 140 °C softens, one of high Tg does not below 170."""
    standard = figure("FR-4", "softens (Tg)")
    assert (standard.low, standard.high) == (130, 140)
    assert standard.high < figure("FR-4 mid Tg", "softens (Tg)").value == 150
    assert figure("FR-4 high Tg", "softens (Tg)").value >= 170


@pytest.mark.published("P-M Services, FR4 Data Sheet, FR4 Laminate Typical Values: Tg 135 °C")
def test_softening_of_one_makers_board():
    standard = figure("FR-4", "softens (Tg)")
    assert standard.value == 135
    assert standard.low < standard.value < standard.high


@pytest.mark.from_memory("5 % mass loss of FR-4; insulation of wires")
def test_limits_of_boards_and_wires():
    board = figure("FR-4", "breaks down (Td)")
    assert (board.low, board.high) == (300, 310)
    assert figure("FR-4 high Tg", "breaks down (Td)").value == 340
    assert (withstands("PVC").low, withstands("PVC").high) == (80, 105)
    assert (withstands("PTFE").low, withstands("PTFE").high) == (200, 260)


@pytest.mark.published(
    "Wikipedia, FR-4, table of properties: 0.29 W/(m K) through, 0.81 in plane; 1850 kg/m³"
)
def test_board_conductivities():
    # 1.6 mm / (0.29 W/(m K) × 100 mm²) = 55.2 K/W
    assert heat_resistance("FR-4", "1.6 mm", 100).kelvin_per_watt == approx(55.2, abs=0.05)
    through, plane = (figure("FR-4", f"conductivity {way}") for way in ("through", "in plane"))
    assert plane.value / through.value == approx(0.81 / 0.29)
    assert (through.low, through.high, plane.high) == (0.25, 0.34, 1.06)
    assert figure("FR-4", "density").value == 1850


@pytest.mark.published(
    "Insaco Inc., alumina, in the thesis Use of metal templates for microcavity formation in "
    "alumina, Table 2.1: 30.3 W/(m K), 3.9 g/cm³"
)
def test_alumina():
    # 1 mm / (30.3 W/(m K) × 1 mm²) = 33.0 K/W
    assert heat_resistance("alumina 99.5 %", "1 mm", 1).kelvin_per_watt == approx(33.0, abs=0.05)
    assert figure("alumina 99.5 %", "density").value == 1000 * 3.9


@pytest.mark.from_memory("copper, alumina of 96 %, air at 25 and 300 °C")
def test_remembered_figures():
    assert stuff("copper")[1:] == (8933, 385)
    assert stuff("alumina 96 %") == (24, 3720, 880)
    assert figure("alumina 99.5 %", "heat capacity").value == 880
    assert figure("FR-4", "heat capacity").value == 1100
    air = {"conductivity": (0.026, 0.045), "density": (1.18, 0.62), "heat capacity": (1007, 1045)}
    for what, (at_25, at_300) in air.items():
        one = figure("air", what)
        assert (one.value, {one.low, one.high}) == (at_25, {at_25, at_300})


@pytest.mark.from_memory("filled silicone rubber: 8.4 W/(m K) at most, abstract not found again")
def test_filled_silicone_at_its_best():
    assert figure("silicone mat", "conductivity").high == 8.4


@pytest.mark.from_memory("filled silicone sheet: 0.8 to 3 W/(m K)")
def test_filled_silicone():
    one = figure("silicone mat", "conductivity")
    assert one.low == 0.8
    assert one.low <= one.value <= 3


@pytest.mark.from_memory("a small hot-air nozzle has 50 to 200 W/(m² K)")
def test_film_under_a_nozzle():
    assert 50 <= AIR_FILM <= 200


@pytest.mark.from_memory("free gas has 2 to 25 W/(m² K), notes without an author")
def test_film_of_still_air():
    assert 2 <= STILL_FILM <= 25


@pytest.mark.from_memory("ranges of heat capacity, heat of melting, silicone sheet, air")
def test_remembered_ranges():
    ranges = {
        ("FR-4", "heat capacity"): (600, 1370),
        ("Sn63Pb37", "heat capacity"): (150, 180),
        ("SAC305", "heat capacity"): (220, 230),
        ("SAC305", "heat of melting"): (57000, 65000),
        ("silicone mat", "density"): (1800, 3000),
        ("silicone mat", "heat capacity"): (800, 1200),
        ("air", "conductivity"): (0.026, 0.045),
    }
    for key, wanted in ranges.items():
        one = figures()[key]
        assert (one.low, one.high) == wanted
    assert melting_heat_of("SAC305")[1] == 60000


def test_every_figure_lies_in_its_range():
    for one in figures().values():
        assert 0 < one.low <= one.value <= one.high


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: figure("cheese", "density"),
        lambda: figure("LCP", "density"),
        lambda: melting_heat("Sn63Pb37", "-20 mg"),
        lambda: contact_temperature("copper", -300, "FR-4", 25),
        lambda: heat_resistance("FR-4", 0, 100),
        lambda: hole_resistance("0.3 mm", plating="0.2 mm"),
        lambda: heat_at_depth(350, "1 mm", 400),
        lambda: warming_time("0.5 g", 450, 80, 300, 25, 301),
        lambda: warming_time("0.5 g", -450, 80, 300, 25, 217),
    ],
)
def test_bad_input_is_refused(wrong):
    with pytest.raises(RepairlibError, match="Accepted"):
        wrong()
