"""Logs as loggers write them: units, layouts, faults told, and what is refused."""

import random

import numpy as np
import pytest

from repairlib.core.errors import RepairlibError
from repairlib.heat.reflow import CANNOT_TELL, PASS, judge_profile
from repairlib.heat.reflow_limits import standard_limits
from repairlib.heat.thermocouple_log import parse_log, read_log

POINTS = [(0, 25), (90, 150), (180, 200), (210, 217), (240, 245), (255, 245), (285, 217), (360, 25)]
SECONDS = np.arange(0, 361, 1.0)
JOINT = np.interp(SECONDS, *zip(*POINTS, strict=True))
FREE = standard_limits("Pb-free", 260)


def rows(celsius=JOINT, seconds=SECONDS, head="time (s),joint (°C)", separator=","):
    body = [f"{t:g}{separator}{c:.3f}" for t, c in zip(seconds, celsius, strict=True)]
    return "\n".join([head, *body])


def judged(log, channel=None):
    return judge_profile(log.profile(channel), FREE, 0)


@pytest.mark.parametrize(
    "head", ["time (s),joint (°C)", "t[s],joint [C]", "Seconds,joint degC", "time s,joint °C"]
)
def test_headings_in_celsius(head):
    log = parse_log(rows(head=head))
    assert list(log.channels) == ["joint"]
    assert log.notes == ()
    assert judged(log).verdict == PASS


@pytest.mark.common_practice
def test_fahrenheit_is_changed():
    """By hand, F = 1.8 C + 32."""
    log = parse_log("time (s),TC1 (°F)\n0,77\n60,302\n120,473")
    assert log.channels["TC1"] == pytest.approx([25, 150, 245])


@pytest.mark.behaviour
def test_a_change_from_fahrenheit_is_told():
    log = parse_log("time (s),TC1 (°F)\n0,77\n60,302\n120,473")
    assert log.notes == ("Logged in °F: changed to °C.",)


def test_fahrenheit_unlabelled_is_refused_with_both_readings():
    text = "time,TC1\n0,77\n60,302\n120,473"
    with pytest.raises(RepairlibError, match="473 °C or 245 °C"):
        parse_log(text)
    assert parse_log(text, unit="°F").channels["TC1"][2] == pytest.approx(245)
    assert any("logged in °F?" in note for note in parse_log(text, unit="°C").notes)


def test_a_unit_above_the_table_counts():
    log = parse_log("Bench logger 2\nUnit: °F\n\ntime (s),TC1\n0,77\n60,302\n120,473")
    assert log.channels["TC1"] == pytest.approx([25, 150, 245])
    assert "2 lines before the table" in log.notes[0]


def test_a_given_unit_may_not_contradict_the_file():
    with pytest.raises(RepairlibError, match="the file says °C"):
        parse_log(rows(), unit="°F")
    with pytest.raises(RepairlibError, match="some columns"):
        parse_log("s,a (°C),b (°F)\n0,25,77\n1,26,78\n2,27,79")


@pytest.mark.parametrize(("unit", "factor"), [("ms", 1000), ("min", 1 / 60), ("h", 1 / 3600)])
def test_units_of_time(unit, factor):
    body = "\n".join(f"{t * factor:.9g},{c:.3f}" for t, c in zip(SECONDS, JOINT, strict=True))
    log = parse_log(f"time ({unit}),joint (°C)\n{body}")
    assert log.seconds == pytest.approx(SECONDS, abs=1e-4)


def test_no_unit_of_time_is_told():
    assert "The time has no unit: read as seconds." in parse_log(rows(head="t,joint (°C)")).notes


@pytest.mark.parametrize("separator", [";", "\t", " "])
def test_separators(separator):
    head = f"time{separator}joint"
    assert judged(parse_log(rows(head=head, separator=separator), unit="°C")).verdict == PASS


def test_decimal_commas():
    text = rows(head="time (s);joint (°C)", separator=";").replace(".", ",")
    assert judged(parse_log(text)).verdict == PASS


def test_encodings_are_told():
    assert parse_log(rows().encode("cp1252")).notes == ("Not UTF-8: read as Windows-1252.",)
    assert parse_log(rows().encode("utf-16")).notes == ("Read as UTF-16.",)


def test_clock_times_and_midnight():
    times = ["23:59:58", "23:59:59.5", "00:00:01", "00:00:02"]
    text = "clock,joint (°C)\n" + "\n".join(f"{t},{25 + i}" for i, t in enumerate(times))
    log = parse_log(text)
    assert np.diff(log.seconds) == pytest.approx([1.5, 1.5, 1])
    assert "The clock passed midnight." in log.notes
    dated = parse_log(text.replace("23:", "2031-05-06 23:").replace("00:00", "2031-05-07 00:00"))
    assert dated.seconds == pytest.approx([0, 1.5, 3, 4])


def test_open_sensor_by_word_and_by_figure():
    text = "time (s),joint (°C),body (°C)\n0,25,25\n1,OPEN,26\n2,27,1372\n3,28,\n4,29,29"
    log = parse_log(text)
    assert np.isnan(log.channels["joint"]).tolist() == [False, True, False, False, False]
    assert np.isnan(log.channels["body"]).tolist() == [False, False, True, True, False]
    assert "joint: 1 reading of an open sensor left out, at 1 s." in log.notes
    assert "body: 2 readings of an open sensor left out, the first at 2 s." in log.notes


def test_a_sensor_that_was_open_all_the_time():
    log = parse_log("time (s),joint (°C),body (°C)\n" + "\n".join(f"{t},OL,25" for t in range(9)))
    with pytest.raises(RepairlibError, match="the sensor was open"):
        log.profile("joint")


def test_a_spike_is_left_out_and_told():
    spiky = JOINT.copy()
    spiky[100] += 90
    log = parse_log(rows(spiky))
    assert "joint: 1 reading left out as spikes, at 100 s." in log.notes
    assert judged(log).verdict == PASS


def test_a_steep_peak_is_no_spike():
    """A joint that heats at 8 K/s and cools at 8 K/s is badly treated, but real."""
    log = parse_log(rows([25, 33, 25, 25], [0, 1, 2, 3]))
    assert not np.isnan(log.channels["joint"]).any()


@pytest.mark.parametrize("stuck_at", [25.0, 180.0])
def test_a_sensor_stuck_all_the_time_tells_nothing(stuck_at):
    log = parse_log(rows(np.full(361, stuck_at)))
    assert "stuck: it stays at" in log.notes[0]
    assert set(one.verdict for one in judged(log).criteria.values()) == {CANNOT_TELL}


def test_a_sensor_stuck_for_a_while():
    stuck = JOINT.copy()
    stuck[200:260] = stuck[200]
    log = parse_log(rows(stuck))
    assert any("stuck at 211.333 °C from 200 to 259 s" in note for note in log.notes)
    verdicts = judged(log).criteria
    assert verdicts["peak"].verdict == CANNOT_TELL
    assert verdicts["soak"].verdict == PASS


def test_a_gap_is_told_and_what_lies_in_it_cannot_be():
    keep = (SECONDS < 235) | (SECONDS > 262)
    log = parse_log(rows(JOINT[keep], SECONDS[keep]))
    assert "joint: no reading from 234 to 263 s." in log.notes
    assert judged(log).criteria["peak"].verdict == CANNOT_TELL
    assert judged(log).criteria["soak"].verdict == PASS


def test_a_bead_that_comes_off():
    off = JOINT.copy()
    off[250:] = np.linspace(60, 25, 111)
    log = parse_log(rows(off))
    assert any("did the bead come off?" in note for note in log.notes)
    assert judged(log).criteria["ramp_down"].verdict == CANNOT_TELL


def test_irregular_sampling_gives_the_same_measures():
    draw = np.random.default_rng(7)
    seconds = np.unique(np.round(np.concatenate((draw.uniform(0, 360, 800), np.arange(0, 361, 5)))))
    log = parse_log(rows(np.interp(seconds, SECONDS, JOINT), seconds))
    assert judged(log).criteria["above"].value == pytest.approx(75, abs=0.5)


def test_words_among_the_readings_are_left_out_and_told():
    text = rows() + "\nend of log\n"
    log = parse_log(text.replace("\n100,", "\nmarker A\n100,"))
    assert "2 lines among the readings left out: 'marker A'" in log.notes
    assert len(log.seconds) == 361


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("time (s),joint (°C)\n0,25\n2,30\n1,31\n", "goes back at reading 3: 2 s, then 1 s"),
        ("time (s),joint (°C)\n0,25\n2,30\n2,31\n", "stands still at reading 3"),
        ("time (s),joint (°C)\n0,25\n2,30\n", "2 readings make no profile"),
        ("time (s),joint (°C)\n", "no row with a time"),
        ("hello\nworld\n", "no row with a time"),
        ("", "empty"),
        ("time (s),joint (°C)\n0,25\n1,26\n2,27\na\nb\nc\nd", "most lines are no readings"),
    ],
)
def test_refused(text, words):
    with pytest.raises(RepairlibError, match=words):
        parse_log(text)


def test_files_that_cannot_be_read(tmp_path):
    with pytest.raises(RepairlibError, match="a folder"):
        read_log(tmp_path)
    with pytest.raises(RepairlibError, match="cannot be read"):
        read_log(tmp_path / "missing.csv")
    (tmp_path / "log.csv").write_bytes(b"PK\x03\x04 and so on")
    with pytest.raises(RepairlibError, match="zip file"):
        read_log(tmp_path / "log.csv")
    with pytest.raises(RepairlibError, match="°C, °F"):
        parse_log(rows(), unit="K")


def test_unknown_channel_names_those_there_are():
    with pytest.raises(RepairlibError, match="joint"):
        parse_log(rows()).profile("nozzle")


def test_fast_and_slow_reading_agree():
    slow = parse_log(rows() + "\nend")
    fast = parse_log(rows())
    assert np.array_equal(slow.channels["joint"], fast.channels["joint"])


def test_fuzz_only_clear_errors():
    """Damaged logs are read or refused in one line; never a traceback of another kind."""
    draw = random.Random(1984)
    good = rows(JOINT[::12], SECONDS[::12])
    pieces = ["OPEN", "", ",", "\n", "1e400", "-", "nan", "°F", "99:99", ";", "\t", "\u2028", '"']
    for _ in range(600):
        text = list(good)
        for _ in range(draw.randint(1, 12)):
            at = draw.randrange(len(text))
            text[at : at + draw.randint(0, 6)] = draw.choice(pieces)
        try:
            log = parse_log("".join(text))
            for channel in log.channels:
                str(judge_profile(log.profile(channel), FREE))
        except RepairlibError as error:
            assert "\n" not in str(error)
