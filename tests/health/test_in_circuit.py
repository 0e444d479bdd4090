"""repairlib.health.in_circuit and neighbourhood: against ngspice, against hand work, bad input."""

import math
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.health.in_circuit import in_circuit_reading, look_at, look_between
from repairlib.health.neighbourhood import read_neighbourhood
from tests.circuits import ngspice


def table(rows):
    """A table of parts out of rows with spaces, parted by line ends or semicolons."""
    lines = [",".join(row.split()) for row in re.split("[;\n]", rows)]
    return "\n".join(["part,from,to,value,more", *lines])


# Name: (rows as a learner types it, the same as a circuit for ngspice typed by hand,
# nodes between which the meter is, frequency in Hz). Node 0 of ngspice is the second node.
NETWORKS = {
    "a tired capacitor with a good one across it": (
        "C1 a 0 100u 5\nC2 a 0 100u 0.1",
        "C1 a 1 100u\nR1 1 0 5\nC2 a 2 100u\nR2 2 0 0.1",
        ("a", "0"),
        100e3,
    ),
    "a supply rail with five capacitors": (
        "C1 a 0 1000u 0.05\nC2 a 0 220u 0.3\nC3 a 0 100n\nC4 a 0 10u 2\nC5 a 0 100n",
        "C1 a 1 1000u\nR1 1 0 0.05\nC2 a 2 220u\nR2 2 0 0.3\nC3 a 0 100n\nC4 a 3 10u\nR4 3 0 2\n"
        "C5 a 0 100n",
        ("a", "0"),
        120,
    ),
    "a coupling capacitor between two resistors": (
        "C1 a b 10u 1.5\nR1 a 0 10k\nR2 b 0 47k\nR3 a b 1M",
        "C1 a 1 10u\nRs 1 0 1.5\nR1 a g 10k\nR2 0 g 47k\nR3 a 0 1meg",
        ("a", "b"),
        1e3,
    ),
    "a resistor bridged by others, dc": (
        "R1 a 0 100k\nR2 a b 22k\nR3 b 0 47k\nC1 b 0 100u\nC2 a 0 10n",
        "R1 a 0 100k\nR2 a b 22k\nR3 b 0 47k\nC1 b 0 100u\nC2 a 0 10n",
        ("a", "0"),
        0,
    ),
    "a resistor across a winding, dc": (
        "R1 a 0 1k\nL1 a b 10m 12\nR2 b 0 33",
        "R1 a 0 1k\nL1 a 1 10m\nRw 1 b 12\nR2 b 0 33",
        ("a", "0"),
        0,
    ),
    "a bridge that is no series or parallel pair, dc": (
        "R1 a b 100\nR2 a c 220\nR3 b 0 330\nR4 c 0 470\nR5 b c 150",
        "R1 a b 100\nR2 a c 220\nR3 b 0 330\nR4 c 0 470\nR5 b c 150",
        ("a", "0"),
        0,
    ),
    "a supply filter with a choke": (
        "C1 a 0 220u 0.2\nL1 a b 47u 0.08\nC2 b 0 220u 0.15\nR1 b 0 22",
        "C1 a 1 220u\nR1s 1 0 0.2\nL1 a 2 47u\nRw 2 b 0.08\nC2 b 3 220u\nR2s 3 0 0.15\nR1 b 0 22",
        ("a", "0"),
        10e3,
    ),
    "a small film capacitor with a winding beside it": (
        "C1 a 0 22n\nL1 a 0 4.7m 9\nR1 a 0 100k",
        "C1 a 0 22n\nL1 a 1 4.7m\nRw 1 0 9\nR1 a 0 100k",
        ("a", "0"),
        1e3,
    ),
    "a ladder of six nodes": (
        "R1 a b 1k\nC1 b 0 100n 3\nR2 b c 2k2\nC2 c 0 47n\nL1 c d 1m 2\nC3 d 0 10u 1\n"
        "R3 d e 680\nR4 e 0 10k\nR5 a e 33k",
        "R1 a b 1k\nC1 b 1 100n\nR1s 1 0 3\nR2 b c 2200\nC2 c 0 47n\nL1 c 2 1m\nRw 2 d 2\n"
        "C3 d 3 10u\nR3s 3 0 1\nR3 d e 680\nR4 e 0 10k\nR5 a e 33k",
        ("a", "0"),
        5e3,
    ),
    "milliohms beside megohms": (
        "C1 a b 470u 0.012\nR1 b 0 0.005\nR2 a 0 4.7M\nC2 a 0 1n\nR3 b c 10M\nR4 c 0 1M",
        "C1 a 1 470u\nR1s 1 b 0.012\nR1 b 0 0.005\nR2 a 0 4.7meg\nC2 a 0 1n\nR3 b c 10meg\n"
        "R4 c 0 1meg",
        ("a", "0"),
        100e3,
    ),
}


def spice_impedance(folder, circuit, frequency):
    """The voltage at node a for 1 A into it, from ngspice: real and imaginary part."""
    if frequency:
        analysis = f".ac lin 1 {frequency} {frequency}\n.print ac vr(a) vi(a)"
    else:
        analysis = ".dc Iin 1 1 1\n.print dc v(a)"
    said = ngspice.run(folder, f"Iin 0 a DC 1 AC 1\n{circuit}\n.options numdgt=9\n{analysis}")
    row = re.search(r"^0\t(.+)$", said, re.MULTILINE)
    assert row, said
    numbers = [float(word.rstrip(",")) for word in row[1].split()]
    return complex(*numbers[1:3]) if frequency else complex(numbers[1])


# The reference is a program, ngspice, which works out the same circuit by nodal analysis.
@pytest.mark.parametrize("name", NETWORKS)
def test_against_ngspice(name, tmp_path):
    typed, circuit, (one, other), frequency = NETWORKS[name]
    ours = look_between(read_neighbourhood(table(typed)), one, other, frequency)
    theirs = spice_impedance(tmp_path, circuit, frequency)
    assert ours.resistance == pytest.approx(theirs.real, rel=1e-3)
    assert ours.z.imag == pytest.approx(theirs.imag, rel=1e-3)
    assert ours.magnitude == pytest.approx(abs(theirs), rel=1e-3)


def test_there_are_ten_networks():
    assert len(NETWORKS) == 10


# By hand


@pytest.mark.common_practice
def test_a_good_neighbour_hides_a_tired_capacitor():
    parts = read_neighbourhood(table("C1 a b 100u 5; C2 a b 100u 0.1"))
    on_board, alone = look_at(parts, "c1", 100e3)
    assert alone.resistance == pytest.approx(5)
    # Two resistances in parallel, 5 × 0.1 / 5.1; the reactance of 16 mΩ hardly counts.
    assert on_board.resistance == pytest.approx(0.098, rel=2e-3)


@pytest.mark.common_practice
def test_capacitances_add_and_resistances_shunt():
    parts = read_neighbourhood(table("C1 a b 100u; C2 a b 47u; R1 a b 10k; R2 a b 10k"))
    seen = look_between(parts, "a", "b", 120)
    assert seen.parallel_capacitance == pytest.approx(147e-6)
    assert seen.parallel_resistance == pytest.approx(5000)
    assert look_between(parts, "a", "b", 0).resistance == pytest.approx(5000)


@pytest.mark.common_practice
def test_the_two_models_of_one_lossy_capacitor():
    # D = ω Cp / G: 1 µF beside 1 kΩ at 159.155 Hz has D = 1, so Cs = 2 Cp and Rs = Rp / 2.
    seen = look_between(read_neighbourhood(table("C1 a b 1u; R1 a b 1k")), "a", "b", 159.15494)
    assert seen.dissipation == pytest.approx(1)
    assert (seen.parallel_capacitance, seen.parallel_resistance) == pytest.approx((1e-6, 1e3))
    assert (seen.capacitance, seen.resistance) == pytest.approx((2e-6, 500))


@pytest.mark.common_practice
def test_a_winding_beside_a_capacitor_makes_it_read_as_an_inductor():
    finding = in_circuit_reading(table("C1 a b 10n; L1 a b 1m 1"), "C1", "1 kHz")
    assert finding.capacitance == "none"
    assert finding.capacitance_alone == pytest.approx(10e-9)
    assert any("not read as a capacitor" in note for note in finding.notes)


def test_direct_current():
    parts = read_neighbourhood(table("C1 a b 100u 0.1; L1 a c 1m; R1 c b 47; R2 c d 1k; R9 x y 1"))
    assert look_between(parts, "a", "b", 0).resistance == pytest.approx(47)
    assert look_between(parts, "a", "c", 0).z == 0  # an ideal winding is a link
    assert math.isinf(look_between(parts, "a", "x", 0).resistance)
    assert look_between(parts, "a", "b", 0).capacitance is None
    finding = in_circuit_reading(table("C1 a b 1u; C2 b c 1u"), "C1", 0)
    assert finding.esr == "open circuit"
    assert any("choose a frequency" in note for note in finding.notes)


def test_a_zero_ohm_link_joins_its_nodes():
    parts = read_neighbourhood(table("R1 a b 100; R2 b c 0; R3 c d 0; R4 d e 50; R5 a e 1k"))
    assert look_between(parts, "a", "e", 0).resistance == pytest.approx(150 * 1000 / 1150)
    assert look_between(parts, "b", "d", 1e3).z == 0


def test_a_resonance_without_loss_is_refused():
    parts = read_neighbourhood(table("C1 a b 1u; L1 a b 1m"))
    at = 1 / (2 * math.pi * math.sqrt(1e-9))
    with pytest.raises(RepairlibError, match="resonates without any loss"):
        look_between(parts, "a", "b", at)


def test_the_parallel_model_and_an_inductor():
    finding = in_circuit_reading(table("L1 a b 10m 4; R1 a b 1k"), "L1", "1 kHz", "series")
    assert finding.inductance < finding.inductance_alone == pytest.approx(0.01)
    finding = in_circuit_reading(table("C1 a b 1u; R1 a b 1k"), "C1", 159.15494, "parallel")
    assert finding.capacitance == pytest.approx(1e-6)
    assert finding.resistance == pytest.approx(1e3)
    assert finding.resistance_alone == "open circuit"


# Bad input


@pytest.mark.parametrize(
    "text, said",
    [
        (table("C1 a b"), "nothing was typed"),
        (table("C1 a"), "two points are due"),
        (table("Q1 a b 100"), "neither R, C nor L"),
        (table("R1 a A 100"), "both ends are on point a"),
        (table("R1 a b ten"), "no number"),
        ("part,from,to,value\nR1,a,b,10 µF", "in F where Ω is due"),
        (table("C1 a b -10u"), "out of range"),
        (table("C1 a b 0"), "out of range"),
        (table("C1 a b 10u -1"), "out of range"),
        (table("R1 a b 10k 1"), "a resistor has nothing more"),
        (table("R1 a b 1k; r1 b c 2k"), "stands twice"),
        (table("\n".join(f"R{n} a b 1k" for n in range(201))), "more than 200"),
        ("", "there is no line"),
        ("part,from,to,value\n", "no part was typed"),
        ("C1 a b 100u", "no column"),
        (table("C1 a b 100u x=5"), "'x=5'"),
        ("part,from,value\nR1,a,1k", "no column to"),
        ("part from to value\nR1 a b 1k", "set apart by spaces"),
        (7, "not a text"),
    ],
)
def test_lines_that_cannot_be_read(text, said):
    with pytest.raises(RepairlibError, match=said):
        read_neighbourhood(text)


SAME = (
    "part,from,to,value,more\nC1,a,b,100u,5ohm\nR1,b,c,4k7,",
    "Value;More;Part;To;From\n100 µF;5 Ω;C1;b;a\n4,7 kΩ;;R1;c;b",
    "| more | from | to | part | value |\n|---|---|---|---|---|\n"
    "| ESR 5 ohms | a | b | C1 | 0.1 mF |\n| | b | c | R1 | 4700 ohm |",
    "part\tfrom\tto\tvalue\tmore\nC1\tA\tB\t100uF\t5 R\nR1\tb\tc\t4.7 kohm\t",
    "part,from,to,value,more / C1,a,b,100µF,esr 5 / R1,b,c,4.7k,",
)


@pytest.mark.parametrize("typed", SAME)
def test_headings_in_any_order_and_values_as_people_type_them(typed):
    capacitor, resistor = read_neighbourhood(typed)
    assert (capacitor.value, capacitor.series) == pytest.approx((100e-6, 5))
    assert (resistor.value, resistor.nodes) == (pytest.approx(4700), ("b", "c"))


def test_what_is_not_there():
    with pytest.raises(RepairlibError, match=r"no such part here\. Accepted: C1, R1"):
        in_circuit_reading(table("C1 a b 1u; R1 a b 1k"), "C7", 1e3)
    parts = read_neighbourhood(table("R1 a b 1k"))
    with pytest.raises(RepairlibError, match=r"no such node here\. Accepted: a, b"):
        look_between(parts, "a", "z", 0)
    for frequency in (-1, 1e-9, 1e12, math.nan, math.inf):
        with pytest.raises(RepairlibError, match="frequency is out of range"):
            look_between(parts, "a", "b", frequency)


lines = st.builds(
    "{} {} {} {}{}".format,
    st.sampled_from(["R1", "R2", "C1", "C2", "L1", "L2", "X1"]),
    st.sampled_from("abc0"),
    st.sampled_from("abcd"),
    st.sampled_from(["0", "1p", "10n", "4k7", "100u", "1e9", "1M", "-3", "1e-12", "1 F"]),
    st.sampled_from(["", " 0.3", " 0", " 1e12", " x=1", " # y"]),
)


@given(
    st.lists(lines, max_size=6).map("\n".join).map(table) | st.text(max_size=40),
    st.sampled_from(["R1", "C1", "L1"]),
    st.sampled_from([0, 1e-3, 120.0, 1e5, 1e9]) | st.floats(),
    st.sampled_from(["series", "parallel"]),
)
def test_any_neighbourhood_gives_a_reading_or_one_clear_error(text, part, frequency, model):
    try:
        finding = in_circuit_reading(text, part, frequency, model)
    except RepairlibError as error:
        assert "\n" not in str(error)
        return
    assert "nan" not in str(finding)
