"""Inductors: figures and letters in µH and nH, colours, dots."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.markings import read
from tests.documents import document

CTC = document("CTC coils")
TOKEN = document("Token inductor colour code")
COILCRAFT = document("Coilcraft RF inductor colours")
HONG_KONG = document("Hong Kong Resistors")


def rows(table):
    return [row.split() for row in table.replace("\n", "|").split("|") if row.strip()]


def check(code, microhenry, percent=None, part="inductor"):
    reading = read(code, part=part)[0]
    assert reading.value == pytest.approx(float(microhenry) * 1e-6, rel=1e-9)
    assert (reading.kind, reading.unit) == (part, "H")
    if percent is not None:
        assert reading.tolerance.high == pytest.approx(float(percent) / 100)


@pytest.mark.published(f"{CTC}: examples")
@pytest.mark.parametrize("part", ["inductor", "chip-inductor"])
@pytest.mark.parametrize(
    ("code", "microhenry"),
    rows("2N7 0.0027 | 27N 0.027 | R27 0.27 | 2R7 2.7 | 270 27 | 271 270 | 272 2700 | 273 27000"),
)
def test_value(code, microhenry, part):
    check(code, microhenry, part=part)


@pytest.mark.published(f"{CTC}: figures in µH, R the point, N the point in nH; worked by hand")
@pytest.mark.parametrize("part", ["inductor", "chip-inductor"])
@pytest.mark.parametrize(("code", "microhenry"), rows("6R8 6.8 | 102 1000 | 82N 0.082 | 100 10"))
def test_value_by_the_rule(code, microhenry, part):
    check(code, microhenry, part=part)


@pytest.mark.published(f"{TOKEN}; values after {CTC}")
@pytest.mark.parametrize(
    ("code", "microhenry", "percent"),
    [
        *[("101K", 100, 10), ("R10M", 0.1, 20), ("101F", 100, 1), ("101G", 100, 2)],
        *[("101H", 100, 3), ("101J", 100, 5), ("101L", 100, 15), ("101M", 100, 20)],
        *[("101V", 100, 25), ("101N", 100, 30)],
    ],
)
def test_tolerance_in_percent(code, microhenry, percent):
    check(code, microhenry, percent)


@pytest.mark.published(TOKEN)
@pytest.mark.parametrize(
    ("code", "nanohenry"), [("2N7D", 0.5), ("2N7S", 0.3), ("2N7B", 0.15), ("2N7C", 0.2)]
)
def test_tolerance_in_nanohenry(code, nanohenry):
    tolerance = read(code, part="chip-inductor")[0].tolerance
    assert (tolerance.high, tolerance.unit) == (pytest.approx(nanohenry * 1e-9), "H")


# B and C are 0.15 and 0.2 nH at one maker, 0.1 and 0.25 % in the general code. The maker's
# table is of inductors, so it stands first; the general meaning is shown with it.
@pytest.mark.published(f"{HONG_KONG}: B is 0.1 %, C is 0.25 %")
@pytest.mark.parametrize(("letter", "percent"), [("B", 0.1), ("C", 0.25)])
def test_general_meaning_of_b_and_c(letter, percent):
    tolerances = [one.tolerance for one in read(f"2N7{letter}", part="chip-inductor")]
    assert pytest.approx(percent / 100) in [one.high for one in tolerances if one.unit == ""]


@pytest.mark.behaviour
@pytest.mark.parametrize("letter", ["B", "C"])
def test_general_meaning_of_b_and_c_is_shown_second(letter):
    first, second = read(f"2N7{letter}", part="chip-inductor")
    assert "at one maker" in first.why
    assert "in the general code" in second.why


@pytest.mark.behaviour
@pytest.mark.parametrize("code", ["N", "2H7"])
def test_is_refused(code):
    for part in ("inductor", "chip-inductor", None):
        with pytest.raises(RepairlibError):
            read(code, part=part)


@pytest.mark.published(f"{TOKEN}: the first is printed, the others worked by hand from its table")
@pytest.mark.parametrize(
    ("bands", "microhenry", "percent"),
    rows(
        "brown-green-red-silver 1500 10 | red-violet-brown-gold 270 5"
        "| brown-black-gold-silver 1 10 | yellow-violet-black-silver 47 10"
        "| red-red-silver-gold 0.22 5"
    ),
)
def test_bands(bands, microhenry, percent):
    check(bands, microhenry, percent)


@pytest.mark.behaviour
def test_bands_without_a_part_may_be_an_inductor():
    assert "inductor" in [one.kind for one in read("red-violet-brown-gold")]


@pytest.mark.published(COILCRAFT)
@pytest.mark.parametrize(
    ("dots", "nanohenry"),
    rows("grey-red-black 82 | brown-red-brown 120 | yellow-violet-red 4700"),
)
def test_three_dots_are_in_nanohenry(dots, nanohenry):
    reading = read(dots, part="chip-inductor")[0]
    assert reading.value == pytest.approx(float(nanohenry) * 1e-9)


@pytest.mark.behaviour
def test_dots_say_that_they_are_in_nanohenry():
    assert "in nH" in read("grey-red-black", part="chip-inductor")[0].why


@pytest.mark.from_memory("military parts: wide silver band first, gold as the decimal point")
@pytest.mark.parametrize(
    ("bands", "microhenry", "percent"),
    rows(
        "silver-red-gold-violet-silver 2.7 10 | silver-gold-red-violet-silver 0.27 10"
        "| silver-red-violet-brown-gold 270 5"
    ),
)
def test_military_bands(bands, microhenry, percent):
    check(bands, microhenry, percent)
    assert read(bands, part="inductor")[0].sources[0] == "from memory"


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("text", "microhenry"),
    [
        *[("100µH", 100), ("100 uH 10%", 100), ("4.7 mH", 4700), ("470nH", 0.47)],
        *[("10 mH", 10000), ("4,7µH", 4.7)],
    ],
)
def test_plain_text(text, microhenry):
    check(text, microhenry)
    assert read(text)[0].value == pytest.approx(microhenry * 1e-6)


@pytest.mark.published(f"{CTC}: N is the point in nH; {TOKEN}: N is 30 %")
def test_n_behind_three_figures_may_be_the_unit_or_a_tolerance():
    readings = read("270N", part="chip-inductor")
    meanings = {round(one.value * 1e9): one.tolerance for one in readings}
    assert sorted(meanings) == [270, 27_000]
    assert meanings[270] is None
    assert meanings[27_000].high == 0.3


@pytest.mark.behaviour
def test_n_behind_three_figures_is_rather_a_tolerance():
    meanings = [(one.value, one.tolerance) for one in read("270N", part="chip-inductor")]
    assert meanings[0][0] == pytest.approx(27e-6) and meanings[0][1].high == 0.3
    assert meanings[1] == (pytest.approx(270e-9), None)
