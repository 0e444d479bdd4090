"""The bench, the discharge curve and its circuit: named, said in words, byte-stable."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.limits import AFTER_UNPLUGGING
from repairlib.show.bench import draw_bench
from repairlib.show.discharge import draw_discharge, draw_discharge_circuit, draw_strap_path


def plain(text):
    return text.replace("\xa0", " ")


def test_everything_on_the_bench_is_named():
    picture = draw_bench()
    for words in ("meter", "discharge resistor", "iron", "fume", "plug", "mat", "wrist strap"):
        assert words in picture.svg and words in picture.alt
    assert plain(picture.svg).count("cord 1 MΩ</text>") == 2
    assert picture.svg == draw_bench().svg


# Worked by hand: 22 s × ln(400 / 60) = 41.74 s, 400 V / e = 147.2 V.
@pytest.mark.published("IEC 62368-1: 60 V dc is ES1")
def test_the_curve_names_its_limit_and_times():
    picture = draw_discharge(220e-6, 400, 100e3)
    for words in ("41.74 s", "147.2 V, 37 %", "60 V dc (IEC 62368-1, ES1)", "time (s)"):
        assert words in plain(picture.svg)
    assert "never reaches 0" in picture.alt
    assert picture.svg == draw_discharge(220e-6, 400, 100e3).svg


def test_any_limit_and_any_size_can_be_drawn():
    for limit in AFTER_UNPLUGGING:
        assert limit in draw_discharge(1e-6, 121, 1e3, limit).alt
    for farad, ohm in ((1e-12, 1), (1e-9, 1e3), (1, 1e6), (1e-6, 1e12)):
        assert draw_discharge(farad, 325, ohm).svg
    with pytest.raises(RepairlibError, match="not below"):
        draw_discharge(1e-6, 50, 1e3)


def test_circuits():
    circuit = draw_discharge_circuit(1e-3, 50, 1e3)
    for words in ("1000 µF", "1 kΩ", "insulated probe", "stays on"):
        assert words in plain(circuit.svg)
    path = draw_strap_path(230)
    assert "230 V / 1 MΩ = 230 µA" in plain(path.alt)
    assert "strap cord 1 MΩ" in plain(path.svg)
