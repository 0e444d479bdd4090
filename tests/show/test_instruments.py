"""The drawn instruments show what was read, and say it."""

import pytest

from repairlib.bench import Reading, Trace
from repairlib.show.instruments import draw_instrument

TRACE = Trace((128, 192, 64, 128), 128, 5.0, 5e-3, "dc", 0.0, 100.0)


@pytest.mark.behaviour
def test_a_display_has_the_reading_and_where_the_probes_are():
    drawn = draw_instrument(Reading("multimeter, V dc", ("out", "0"), "9.01 V", 9.01, "V"))
    for words in ("multimeter, V dc", "9.01 V", ">out<", ">0<"):
        assert words in drawn.svg
    assert drawn.alt == "Multimeter, V dc: 9.01 V. Red probe on out, black on 0."


@pytest.mark.behaviour
def test_the_beam_of_an_oscilloscope_goes_through_its_levels():
    reading = Reading(
        "oscilloscope", ("rail", "0"), "mean 0.0 V, 20.0 V peak to peak, 100 Hz", 20, "V",
        trace=TRACE,
    )  # fmt: skip
    drawn = draw_instrument(reading)
    beam = next(line for line in drawn.svg.split("\n") if "#ffd166" in line)
    heights = [float(point.split(",")[1]) for point in beam.split('"')[1].split()]
    assert heights[1] < heights[0] == heights[3] < heights[2]
    assert heights[2] - heights[1] == pytest.approx(4 * 27)  # 20 V at 5 V per division
    assert "5\u00a0V and 5\u00a0ms per division" in drawn.alt and "peak to peak" in drawn.alt


@pytest.mark.behaviour
def test_a_thermometer_has_no_probes_and_a_long_name_is_cut():
    assert "At U1." in draw_instrument(Reading("thermometer", ("U1", ""), "31 °C", 31, "°C")).alt
    long = Reading("multimeter, Ω", ("old c1 lead 1 of many", "0"), "OL", None, "Ω", "no end")
    assert "old c1 lead …" not in draw_instrument(long).alt
    assert "…" in draw_instrument(long).svg and "(no end)" in draw_instrument(long).alt
