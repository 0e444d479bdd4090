"""The command line as a person meets it: fresh processes, exit status, one clear line."""

import json
import os
import subprocess
import sys

import pytest

from repairlib.faces.cli import main


def run(*arguments, **options):
    return subprocess.run(
        [sys.executable, "-m", "repairlib", *arguments],
        capture_output=True,
        text=True,
        encoding="utf-8",
        timeout=60,
        **options,
    )


def assert_one_clear_line(done):
    assert done.returncode == 2
    assert done.stdout == ""
    assert len(done.stderr.splitlines()) == 1
    assert "Accepted:" in done.stderr


@pytest.mark.published(
    "KEMET, Ceramic Open Mode Capacitors, Capacitor ordering information: 104; "
    "Sanyo, DP19649 service manual, page 41: K"
)
def test_quick_check(capsys):
    assert main(["104K"]) == 0
    assert capsys.readouterr().out.startswith(("100\xa0nF ±10", "1. 100\xa0nF ±10"))


def test_quick_check_in_a_fresh_process_and_words_unquoted():
    assert "220\xa0µF" in run("220", "16V").stdout


@pytest.mark.parametrize(
    "marking",
    ["", "hello", "\t", "10\x074", "🔥", "٤٧k", "9" * 100_000, "--nope", "104X", "1O4", "-"],
    ids=lambda text: text[:8].encode("unicode_escape").decode(),
)
def test_bad_marking_is_one_clear_line(marking):
    assert_one_clear_line(run("read", marking))


@pytest.mark.parametrize(
    "marking", ["", "hello", "9" * 10_000_000, "\x00", "\ud800", "\u202e104"], ids=range(6)
)
def test_bad_marking_that_no_shell_can_pass(marking, capsys):
    assert main(["read", marking]) == 2
    output = capsys.readouterr()
    assert output.out == ""
    assert len(output.err.splitlines()) == 1


@pytest.mark.parametrize(
    "arguments",
    [
        [],
        ["read"],
        ["read", "104K", "--as"],
        ["read", "104K", "--as", "spanner"],
        ["read", "104K", "--as=can", "--as=can"],
        ["read", "--what=x", "104K"],
        ["calc", "no_such"],
        ["calc", "check_polarity", "family"],
        ["plan"],
        ["plan", "a.csv", "b.csv"],
        ["plan", "no-such-file.csv"],
        ["plan", "."],
    ],
    ids=" ".join,
)
def test_bad_commands_are_one_clear_line(arguments):
    assert_one_clear_line(run(*arguments))


def test_error_as_json():
    done = run("read", "hello", "--json")
    assert done.returncode == 2
    assert done.stderr == ""
    assert json.loads(done.stdout)["error"].startswith("'hello'")


@pytest.mark.published(
    "Panasonic, Aluminum Electrolytic Capacitors, Explanation of part numbers: 2A is 100 V; "
    "KEMET, Ceramic Open Mode Capacitors, Capacitor ordering information: 104; "
    "Sanyo, DP19649 service manual, page 41: J is 5 %"
)
def test_figures_of_a_reading_as_json():
    first, *_ = json.loads(run("read", "2A104J", "--json").stdout)
    assert first["value"] == pytest.approx(100e-9)
    assert first["tolerance"][:2] == pytest.approx([-0.05, 0.05])
    assert first["rated_voltage"] == 100


@pytest.mark.behaviour
def test_reading_as_json():
    first, *_ = json.loads(run("read", "2A104J", "--json").stdout)
    assert first["kind"] == "capacitor"
    assert first["quantity"] == "capacitance"
    assert first["unit"] == "F"
    assert first["why"]


def test_calculators_listed_shown_and_run():
    listing = run("calc").stdout
    assert "check_polarity" in listing
    assert "source:" in run("calc", "check_polarity").stdout
    every = json.loads(run("calc", "--json").stdout)
    assert {"name", "topic", "title", "usage"} == set(every[0])


def test_help_and_version():
    assert "quick check" in run("--help").stdout
    assert run("--version").stdout.startswith("repairlib ")


@pytest.mark.behaviour
@pytest.mark.parametrize("verb", ["read", "calc", "plan", "lessons"])
@pytest.mark.parametrize("behind", [["--help"], ["-h"], ["something", "--help"], ["--json", "-h"]])
def test_help_behind_a_verb_is_its_usage(verb, behind, capsys):
    assert main([verb, *behind]) == 0
    told = capsys.readouterr().out
    assert told.startswith(f"python -m repairlib {verb}")
    others = {"read", "calc", "plan", "lessons"} - {verb}
    assert not any(f"python -m repairlib {other}" in told for other in others)


def test_help_behind_a_marking_is_the_whole_usage(capsys):
    assert main(["104K", "--help"]) == 0
    assert "quick check" in capsys.readouterr().out


def test_a_terminal_without_unicode_still_answers():
    done = run("read", "104K", env={"PYTHONIOENCODING": "ascii"})
    assert done.returncode == 0
    assert "100" in done.stdout


def test_a_reader_that_has_seen_enough_is_no_error():
    reader, writer = os.pipe()
    os.close(reader)
    done = subprocess.run(
        [sys.executable, "-m", "repairlib", "calc"],
        stdout=writer,
        stderr=subprocess.PIPE,
        timeout=60,
    )
    os.close(writer)
    assert done.stderr == b""
    assert done.returncode == 0


@pytest.mark.skipif(not os.path.exists("/dev/full"), reason="needs a disk that is always full")
@pytest.mark.parametrize("arguments", [["104K"], ["calc"], ["--help"], ["104K", "--json"]])
def test_an_output_without_room_is_one_clear_line(arguments):
    with open("/dev/full", "w") as full:
        done = subprocess.run(
            [sys.executable, "-m", "repairlib", *arguments],
            stdout=full,
            stderr=subprocess.PIPE,
            text=True,
            timeout=60,
        )
    assert done.returncode == 2
    assert len(done.stderr.splitlines()) == 1
    assert "cannot be written (No space left on device)" in done.stderr


def test_ctrl_c_is_no_traceback(monkeypatch, capsys):
    def stopped(*_):
        raise KeyboardInterrupt

    monkeypatch.setattr("repairlib.faces.cli._run", stopped)
    assert main(["plan", "parts.csv"]) == 130
    assert capsys.readouterr().err == "Stopped.\n"


@pytest.mark.parametrize("name", ["joint_heat", "charging_by_walking", "lead_in_air"])
def test_a_calculator_with_defaults_alone_can_be_run(name, capsys):
    assert main(["calc", name]) == 0
    page = capsys.readouterr().out
    assert page.endswith(f"calc {name} --run\n")
    assert main(["calc", name, "--run"]) == 0
    assert capsys.readouterr().out.startswith(page.partition("\n")[0] + ": ")


def test_a_calculator_that_needs_a_value_says_which(capsys):
    assert main(["calc", "stored_energy", "--run"]) == 2
    assert "capacitance is missing" in capsys.readouterr().err


def test_an_error_keeps_no_escape_codes_of_spaces(capsys):
    asked = (
        "old_kind=aluminium electrolytic,new_kind=tantalum,rated_voltage=16V,working_voltage=20V"
    )
    assert main(["calc", "substitute_capacitor", *asked.split(",")]) == 2
    assert "20 V" in (told := capsys.readouterr().err).replace("\u00a0", " ")
    assert "\\x" not in told
