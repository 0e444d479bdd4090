"""Where a part works, by the words of a list: what is due there, and that no word misleads."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.recap import plan, replacement_capacitor
from repairlib.recap.place_words import read_place, take_places
from repairlib.recap.places import PLACES
from repairlib.recap.ratings import describe
from repairlib.show.sheets import bench_sheet

ALUMINIUM = "aluminium electrolytic"
# Words of service manuals, by the place that they name.
NAMED = {
    "switch-mode output": "5V output|+3.3V out|-12V output filter|sortie 24V|Ausgangselko|"
    "filtro de salida|secondary filter|standby|DC-DC|uitgangsfilter",
    "start-up supply": "start-up|startup|start up|kick start|startup / Vcc|Hilfsspannung",
    "PWM controller supply": "PWM supply|controller supply|PWM IC Vcc|PWM-Versorgung",
    "base drive": "base drive|gate drive|base driver|Basisansteuerung|commande de base",
    "primary reservoir": "primary reservoir|mains reservoir|primary reservoir / filter|Netzelko|"
    "filtrage primaire|filtro primario|bulk reservoir|PFC",
    "primary side": "primary side|hot side|live side|côté primaire|Primärseite",
    "reservoir": "reservoir|smoothing|Ladeelko|Siebelko|filtrage|livellamento|filtrado|afvlak",
    "VRM/CPU": "VRM|VRM/CPU|Vcore|CPU supply|GPU core",
    "horizontal output": "horizontal output|horiz. drive|H.OUT|Zeilenendstufe|balayage ligne|"
    "uscita orizzontale|salida horizontal|line scan|S correction|Horizontalablenkung",
    "vertical output coupling": "vertical output|vertical output coupling|V.OUT|frame output|"
    "Bildendstufe|uscita verticale|salida vertical|balayage trame",
    "flyback/damper": "flyback|damper|flyback/damper|EHT tuning|Zeilentrafo|retrace",
    "snubber": "snubber|RC snubber|Löschglied",
    "timing/tuned": "timing|oscillator|tuned circuit|soft start|feedback loop|Zeitglied|"
    "Schwingkreis|oscillateur|oscillatore|temporización",
    "memory back-up": "memory back-up|RTC backup|sauvegarde|tampone|respaldo|geheugen",
    "reset": "reset|power on reset",
    "speaker coupling": "speaker coupling|output coupling|speaker output|Lautsprecherkoppelelko|"
    "Auskoppelelko|accoppiamento altoparlante|acoplo de salida",
    "audio coupling": "audio coupling|coupling|Kopplung|Koppelelko|liaison|accoppiamento|acoplo|"
    "koppeling|grid coupling",
    "bypass": "bypass|decoupling|cathode bypass|Entkopplung|découplage|disaccoppiamento|desacoplo|"
    "ontkoppeling",
}
EACH = [(place, words) for place, listed in NAMED.items() for words in listed.split("|")]


@pytest.mark.common_practice
@pytest.mark.parametrize(("place", "words"), EACH)
def test_a_word_names_its_place_and_nothing_else(place, words):
    """It holds no line, and is neither a kind nor a build nor a rating."""
    plain = describe((("free", "47µF 25V elect"),))
    said = describe((("free", f"47µF 25V elect {words}"),))
    assert said.places == (place,)
    assert (said.doubts, said.features) == ((), ())
    assert said.same_part()[:5] == plain.same_part()[:5]


@pytest.mark.common_practice
@pytest.mark.parametrize(("place", "words"), EACH)
def test_a_remark_names_it_too(place, words):
    said = describe((("value", "47µF"), ("volts", "25"), ("kind", "NP"), ("other", words)))
    assert said.places == (place,) and said.kind == "bipolar electrolytic" and not said.doubts


def test_every_place_has_words():
    assert set(NAMED) == set(PLACES)


@pytest.mark.common_practice
@pytest.mark.parametrize(
    "text",
    [
        "100nF X2 mains filter",
        "100nF 400V film mains side",
        "100µF 250V motor start",
        "10µF 50V Lautsprecherweiche",
        "10µF 63V elect horizontal",
        "47µF 16V elect ammo bulk",
        "100µF 200V Anlaufkondensator",
        "60µF 250V condensateur démarrage",
        "470µF 25V decoupage",
    ],
)
def test_what_only_looks_like_a_place_is_none(text):
    assert describe((("free", text),)).places == ()


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("text", "volts", "doubts"),
    [
        ("470µF 16V elect 12V output", 16, 0),
        ("+5V output 1000µF 10V elect", 10, 0),
        ("330µF 35V elect sortie 24 V", 35, 0),
        ("470µF 16V elect 24V output", None, 1),
        ("470/16 12V output elect", 16, 0),
        ("470µF elect 12V output", 12, 0),
        ("470µF 25V Ausgang 12V Elko", 25, 0),
        ("470µF 35V chim. filtrage 24V", 35, 0),
        ("470µF 25V elect +12 V", 25, 0),
        ("470µF 25V elect 12V rail", 25, 0),
        ("1000µF 16V elect output filter 5V 3A", 16, 0),
        ("470µF 16V elect smoothing 24V", None, 1),
        ("470µF 25V output coupling elect", 25, 0),
    ],
)
def test_the_volts_of_a_rail_are_no_rating(text, volts, doubts):
    said = describe((("free", text),))
    assert (said.volts, len(said.doubts)) == (volts, doubts)


def test_volts_that_may_be_a_rail_are_looked_at():
    (item,) = plan("Ref,Value,Where\nC1,470µF,elect 12V output\n").items
    assert any("12 V may be what is there" in look for look in item.looks)


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("text", "place"),
    [
        ("22µF startup 50V", "start-up supply"),
        ("10µF audio coupling 25V", "audio coupling"),
        ("220µF horizontal output 50V", "horizontal output"),
        ("1000µF Ladeelko 25V", "reservoir"),
        ("1000µF 35V uscita verticale", "vertical output coupling"),
        ("470µF 25V output coupling", "speaker coupling"),
        ("1000µF 25V sortie HP", "speaker coupling"),
        ("2200µF 25V salida altavoz", "speaker coupling"),
        ("47µF 63V Basisansteuerung Schalttransistor", "base drive"),
    ],
)
def test_the_rating_before_a_place_is_the_rating(text, place):
    said = describe((("free", f"{text} elect"),))
    assert said.places == (place,) and said.volts and not said.doubts


@pytest.mark.common_practice
@pytest.mark.parametrize("place", [name for name, one in PLACES.items() if one.low_impedance])
def test_high_frequency_places_ask_for_low_impedance(place):
    finding = replacement_capacitor("100 µF", "25 V", ALUMINIUM, place=place)
    assert any(step.startswith("ripple and ESR") for step in finding.working)
    (item,) = plan(f"C1 100µF 25V elect {place}\n").items
    assert item.low_impedance and finding.verdict == item.verdict == "replace"


@pytest.mark.common_practice
@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("kind", [ALUMINIUM, "tantalum", "film", "ceramic"])
def test_calculator_and_plan_say_the_same(place, kind):
    finding = replacement_capacitor("100 µF", "25 V", kind, place=place)
    (item,) = plan(f"C1 100µF 25V {kind} {place}\n").all_items
    assert set(item.decision.at_place) <= set(finding.notes)
    assert item.verdict == finding.verdict
    assert set(item.cautions) <= set(finding.cautions)


@pytest.mark.common_practice
@pytest.mark.parametrize("place", ["start-up supply", "PWM controller supply", "flyback/damper"])
@pytest.mark.parametrize(("old", "new"), [(20e-6, 18e-6), (22e-6, 22e-6), (50e-6, 47e-6)])
def test_no_larger_value_where_it_does_harm(place, old, new):
    finding = replacement_capacitor(old, 50, ALUMINIUM, place=place)
    assert finding.capacitance.value == pytest.approx(new)
    assert replacement_capacitor(20e-6, 50, ALUMINIUM).capacitance.value == pytest.approx(22e-6)


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("place", "key"),
    [
        ("start-up", "mains"),
        ("primary reservoir", "mains"),
        ("base drive", "mains"),
        ("snubber", "mains"),
        ("flyback", "high-voltage tubes"),
        ("horizontal output", "high-voltage tubes"),
        ("vertical output", "high-voltage tubes"),
    ],
)
def test_the_hazard_of_a_place_is_named(place, key):
    assert key in plan(f"C1 22µF 50V elect {place}\n").cautions
    assert key in replacement_capacitor("22 µF", "50 V", ALUMINIUM, place=place).cautions


@pytest.mark.common_practice
def test_a_part_on_the_mains_side_is_handed_on_and_one_behind_it_is_not():
    made = plan("C1 22µF 50V elect start-up\nC2 470µF 16V elect 12V output\n")
    assert [(step.items[0].reference, step.handed_on) for step in made.steps] == [
        ("C2", False),
        ("C1", True),
    ]


@pytest.mark.common_practice
@pytest.mark.parametrize("words", ["snubber", "flyback/damper", "horizontal output", "base drive"])
def test_film_in_a_pulse_place_keeps_its_dielectric_and_pulse_rating(words):
    made = plan(f"C1 4.7nF 1600V polypropylene {words}\n")
    said = " ".join(made.kept[0].looks)
    assert "dv/dt" in said and "pulse current not below" in said
    assert said.split(":")[0] in made.explain("C1") and "dv/dt" in bench_sheet(made)


@pytest.mark.common_practice
def test_steady_values_and_bypass():
    (kept,) = plan("C1 10nF 63V polystyrene oscillator\n").kept
    assert "C0G" in kept.looks[0]
    assert plan("C1 100nF 50V ceramic bypass\n").kept[0].looks == ()


@pytest.mark.common_practice
def test_a_start_part_of_many_volts_may_be_of_a_motor():
    assert "motor" in plan("C1 100µF 250V elect start-up\n").held[0].why


@pytest.mark.common_practice
def test_an_ordinary_catalogue_part_is_not_taken_for_a_switch_mode_place():
    (item,) = plan("C1 470µF 16V elect 12V output\n").items
    assert item.expected.esr.startswith("low impedance")


def test_a_place_that_is_none_is_one_line():
    with pytest.raises(RepairlibError, match="not a known place"):
        replacement_capacitor("22 µF", "50 V", ALUMINIUM, place="kitchen")
    with pytest.raises(RepairlibError, match="several places"):
        read_place("reset and snubber")


def test_a_bipolar_part_keeps_its_own_limits():
    (item,) = plan("C1 3.3µF 100V NP S correction\n").items
    assert not item.low_impedance and "pulses" not in item.expected.esr


def test_what_is_left_of_a_cell():
    assert take_places("Siebelko 22µF").text.split() == ["elko", "22µF"]
    assert take_places("22µF 63V").places == ()


@pytest.mark.common_practice
def test_the_order_keeps_low_impedance_apart():
    """One line to buy for both would give an ordinary part to the switch-mode place."""
    made = plan("C1 470µF 16V elect 12V output\nC2 470µF 16V elect\nC3 470µF 16V elect low esr\n")
    lines = {line.what: line.places for line in made.order.lines}
    assert sorted(lines.values()) == [("C1", "C3"), ("C2",)]
    assert all(("low-impedance" in what) == ("C1" in places) for what, places in lines.items())


@pytest.mark.behaviour
def test_a_number_too_long_to_be_written_is_refused_in_one_line():
    with pytest.raises(RepairlibError, match="not a known place"):
        read_place(10**5000)
