"""What may have stood there, and what a twin's reading allows, as asked on the command line."""

import json

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.faces.cli import main
from repairlib.missing_parts import divider_resistor, missing_part, twin_reading


@pytest.mark.common_practice
def test_typed_in_pieces_it_is_the_same_as_in_one():
    whole = missing_part(
        "C? 2 pads 3.2 x 1.6 mm, between +3.3 V and ground, near regulator U2 output, "
        "twin channel has 10 µF"
    )
    pieces = missing_part(
        reference="C?",
        pads="2 pads 3.2 x 1.6 mm",
        one_side="+3.3 V",
        other_side="ground",
        near="regulator U2 output",
        twin="10 µF",
    )
    assert whole.likeliest == pieces.likeliest == "bulk capacitor"
    assert whole.working == pieces.working


@pytest.mark.behaviour
def test_on_the_command_line(capsys):
    typed = ["calc", "missing_part", "reference=R?", "one_side=SDA", "other_side=3.3 V", "--json"]
    assert main(typed) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["values"]["likeliest"] == "pull-up resistor"
    assert told["cautions"] and told["notes"]


@pytest.mark.behaviour
def test_nothing_said_is_one_line():
    with pytest.raises(RepairlibError, match="nothing is said"):
        missing_part()


@pytest.mark.behaviour
def test_too_little_said_cannot_be_told():
    assert missing_part("0603").verdict == "cannot tell"


@pytest.mark.behaviour
def test_the_mains_side_is_refused():
    finding = missing_part("C? across live and neutral")
    assert finding.verdict == "do not" and "mains" in finding.cautions
    assert finding.value == "handed on"


@pytest.mark.behaviour
def test_words_not_understood_are_said():
    notes = missing_part("C? 0603 between 5 V and ground by the wobbulator").notes
    assert any("wobbulator" in note for note in notes)


# Kirchhoff's laws, worked by hand: 12.3 - 2.2 - 0.1 = 10; 1 / (1/4.6 - 1/57.5) = 5;
# 1 / (1/10 - 1/30) = 15.
@pytest.mark.published("Kirchhoff's laws: parallel capacitors add, parallel resistors by 1/R")
@pytest.mark.parametrize(
    ("part", "reading", "beside", "alone"),
    [
        ("capacitor", "12.3 µF", "2.2 µF, 100 nF", 10e-6),
        ("capacitor", "100 nF", "none", 100e-9),
        ("resistor", "4.6 kΩ", "57.5 kΩ", 5e3),
        ("inductor", "10 µH", "30 µH", 15e-6),
    ],
)
def test_the_part_alone(part, reading, beside, alone):
    assert twin_reading(part, reading, beside).part_alone == pytest.approx(alone, rel=1e-3)


@pytest.mark.behaviour
def test_a_reading_without_what_lies_beside_is_a_limit():
    capacitor = twin_reading("capacitor", "12 µF")
    assert capacitor.verdict == "cannot tell" and capacitor.at_most == pytest.approx(12e-6)
    assert twin_reading("resistor", "4.6 k").at_least == pytest.approx(4600)


@pytest.mark.behaviour
def test_what_outweighs_the_part_hides_it():
    # 2 % of 100 µF is more than 1 µF.
    assert twin_reading("capacitor", "101 µF", "100 µF").verdict == "cannot tell"


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("part", "reading", "beside"),
    [
        ("capacitor", "1 µF", "2.2 µF"),
        ("resistor", "10 k", "4.7 k"),
        ("resistor", "0", "none"),
        ("capacitor", "10 kΩ", "none"),
        ("capacitor", "10 µF", "lots"),
    ],
)
def test_what_cannot_be_is_one_line(part, reading, beside):
    with pytest.raises(RepairlibError):
        twin_reading(part, reading, beside)


# 1 kΩ × (20 V / 1.23 V - 1) = 15.26 kΩ, a worked example of data sheets of step-down regulators.
@pytest.mark.from_memory("worked example of a step-down regulator's data sheet: 15.26 kΩ for 20 V")
def test_the_missing_half_of_a_divider():
    finding = divider_resistor("upper", "1 kΩ", "20 V", "1.23 V")
    assert finding.missing_resistor == pytest.approx(15260, rel=1e-3)
    assert finding.nearest_made == 15400
    back = divider_resistor("lower", finding.missing_resistor, "20 V", "1.23 V")
    assert back.missing_resistor == pytest.approx(1000, rel=1e-3)


@pytest.mark.behaviour
def test_a_divider_makes_no_output_below_its_reference():
    with pytest.raises(RepairlibError, match="cannot make it"):
        divider_resistor("lower", "10 kΩ", "0.8 V", "1.25 V")


@pytest.mark.published("Ohm's law: two leads of 0.1 Ω and a shunt of 5 mΩ read 0.205 Ω")
@pytest.mark.parametrize("beside", ["none", "not known", "10 kΩ"])
def test_few_ohms_are_mostly_the_leads(beside):
    read = 2 * 0.1 + 0.005
    alone = twin_reading("resistor", f"{read} Ω", beside)
    assert alone.verdict == "cannot tell" and alone.at_most == pytest.approx(read)
    assert "at_least" not in alone.values and any("four wires" in note for note in alone.notes)
    with_leads = twin_reading("resistor", f"{read} Ω", beside, leads="0.2 Ω")
    assert with_leads.at_most == pytest.approx(read)


@pytest.mark.published("Ohm's law: leads of 0.2 Ω and a resistor of 1 Ω read 1.2 Ω")
def test_leads_are_taken_off():
    assert twin_reading("resistor", "1.2 Ω", "none", leads="0.2 Ω").part_alone == pytest.approx(1.0)
    assert twin_reading("resistor", "47 Ω", "none", leads="0.2 Ω").part_alone == pytest.approx(46.8)
    assert twin_reading("resistor", "5 mΩ", "none", leads=0).part_alone == pytest.approx(5e-3)
    limit = twin_reading("resistor", "1.2 Ω", leads="0.2 Ω")
    assert limit.at_least == pytest.approx(1.0)


@pytest.mark.common_practice
def test_a_shunts_twin_read_on_its_board_is_below_that():
    place = "R? 2512, from the source of Q3 to ground, the same part beside Q4 reads 0.2 ohm"
    finding = missing_part(place)
    said = " ".join((str(finding), *finding.working, *finding.notes)).replace("\xa0", " ")
    assert "below 200 mΩ" in said and "200 mΩ at least" not in said and "four wires" in said
