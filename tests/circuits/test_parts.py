"""repairlib.circuits: tables as people type them, and what a circuit may not be."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from repairlib.circuits import opened, operating_point, rails, read_circuit, supply, transient
from repairlib.core.errors import RepairlibError

HEAD = "part,from,to,value,more\n"
SOUND = "V1,a,0,9 V,\nR1,a,b,1k,\n"
SAME = (
    "part,from,to,value,more\nV1,a,0,9 V,50 Hz 0.5 Ω\nC1,a,0,100 µF,ESR 0.1 Ω",
    "Value;More;Part;To;From\n9 V rms;mains 50 Hz series 500 mΩ;V1;gnd;A\n0,1 mF;0,1;C1;0V;a",
    "part | from | to | value | more\nV1 | a | ground | 12.727922 V peak | 0.5 ohm 50Hz\n"
    "C1 | a | 0 | 100u | esr=0.1",
)


@pytest.mark.parametrize("typed", SAME)
@pytest.mark.behaviour
def test_one_circuit_in_many_hands(typed):
    source, capacitor = read_circuit(typed)
    assert source.nodes == capacitor.nodes == ("a", "0")
    assert source.value == pytest.approx(9)
    assert source.more == {"mains": 50, "series": 0.5}
    assert (capacitor.value, capacitor.more["esr"]) == pytest.approx((100e-6, 0.1))


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("R1,a,0,0 Ω,", "zero or negative"),
        ("R1,a,0,-5 Ω,", "zero or negative"),
        ("C1,a,0,0,", "zero or negative"),
        ("C1,a,0,10u,ESR -1", "zero or negative"),
        ("V1,a,0,-9 V,", "zero or negative"),
        ("L1,a,0,1e9 H,", "out of range"),
        ("R1,a,0,10 µF,", "in F where Ω is due"),
        ("C1,a,0,10u,ESR 5 F", "in F where Ω is due"),
        ("V1,a,0,9 V,5 F", "no such figure"),
        ("V1,a,0,9 V,50", "no such figure"),
        ("V1,a,0,9 V dc,50 Hz", "dc does not go with a frequency"),
        ("V1,a,0,9 V rms,", "rms does not go with no frequency"),
        ("V1,a,0,9 V,50 Hz 60 Hz", "mains stands twice"),
        ("R1,a,0,1k,5 Ω", "a resistor has no such thing"),
        ("P1,a,0,12 V,", "limit in A of the bench supply is missing"),
        ("H1,a,0,240 Ω,60 W", "cold in Ω of the lamp is missing"),
        ("U1,a,0,5 V,dropout 2 V", "third leg"),
        ("Q1,a,0,5,", "begins with neither R, C, L, V, I, D, P, H nor U"),
        ("R1,0,gnd,1k,", "both ends are on the zero point"),
        ("R1,a,a,1k,", "both ends are on point a"),
        ("R1,a,0,ten,", "no number stands in front"),
        ("R1,a,,10k,", "two points are due"),
        ("R1,a,0,1k,\nr1,a,0,2k,", "stands twice"),
        ("I1,a,0,1 A peak,", "peak goes with volts"),
    ],
)
@pytest.mark.behaviour
def test_lines_that_cannot_be_read(line, said):
    with pytest.raises(RepairlibError, match=said) as error:
        read_circuit(HEAD + line)
    assert "\n" not in str(error.value)


@pytest.mark.parametrize(
    ("lines", "read", "said"),
    [
        ("V1,a,b,9 V,\nR1,a,b,1k,", "a, b", "no zero point"),
        (f"{SOUND}C1,b,0,1u,\nR2,rial,0,1k,", "rial", "only R2 ends on this point"),
        (f"{SOUND}C1,b,x,1u,\nC2,x,0,1u,\nR2,b,0,1k,", "x", "this point floats"),
        ("I1,0,a,1 A,\nC1,a,0,1u,", "a", "this point floats"),
        ("V1,a,0,9 V,\nV2,a,0,5 V,\nR1,a,0,1k,", "V1, V2", "closed by V2"),
        ("V1,a,0,9 V,\nV2,a,b,5 V,\nV3,b,0,4 V,", "V1, V2, V3", "closed by V3"),
        ("V1,a,0,9 V,\nL1,a,0,1m,", "V1, L1", "closed by L1"),
        ("P1,a,0,9 V,limit 1 A\nV1,a,0,9 V,", "P1, V1", "closed by V1"),
    ],
)
@pytest.mark.behaviour
def test_what_is_no_circuit(lines, read, said):
    for act in (operating_point, lambda parts: transient(parts, 1e-3, 1e-4)):
        with pytest.raises(RepairlibError, match=said) as error:
            act(read_circuit(HEAD + lines))
        assert error.value.read == read


@pytest.mark.behaviour
def test_a_series_resistance_opens_the_loop():
    point = operating_point(read_circuit(HEAD + "V1,a,0,9 V,0.1 Ω\nV2,a,0,5 V,0.1 Ω"))
    assert point.volts["a"] == pytest.approx(7)
    assert point.amps["V2"] == pytest.approx(20)


@pytest.mark.behaviour
def test_what_is_not_there():
    parts = supply("bridge", "9 V", "50 Hz", "1000 µF", "100 Ω")
    with pytest.raises(RepairlibError, match="no such point here"):
        rails(parts, "rial")
    with pytest.raises(RepairlibError, match="no such part here"):
        opened(parts, "D9")
    with pytest.raises(RepairlibError, match="not a known kind"):
        supply("full wave", "9 V", "50 Hz", "1000 µF", "100 Ω")
    with pytest.raises(RepairlibError, match="not one frequency"):
        rails(read_circuit(HEAD + "V1,a,0,9 V,\nR1,a,0,1k,"), "a")


LINES = st.builds(
    "{},{},{},{},{}".format,
    st.sampled_from(["R1", "R2", "C1", "L1", "V1", "V2", "I1", "D1", "D2", "P1", "H1", "U1", "X"]),
    st.sampled_from("abc0"),
    st.sampled_from("abc0"),
    st.sampled_from(["1k", "9 V", "1 A", "10 nA", "100u", "0", "-1", "12", "1e9"]),
    st.sampled_from(["", "load", "50 Hz 1 Ω", "n 1.8", "0.1 Ω", "limit 1 A", "dropout 2 V",
                     "cold 5 Ω 60 W"]),
)  # fmt: skip


@given(st.lists(LINES, max_size=6).map(lambda lines: HEAD + "\n".join(lines)) | st.text())
@settings(max_examples=60)
def test_any_table_gives_an_answer_or_one_line(text):
    try:
        point = operating_point(read_circuit(text))
    except RepairlibError as error:
        assert "\n" not in str(error)
        return
    assert all(abs(volts) < 1e16 for volts in point.volts.values())
