"""One writer at a time, whoever it is, and whatever became of the one before."""

import os
import signal
import subprocess
import sys
import threading

import pytest

from repairlib.core import saving
from repairlib.core.errors import RepairlibError
from repairlib.core.saving import locked, saying_why

HOLDING = """
import sys, time
from pathlib import Path
from repairlib.core.saving import locked
with locked(Path(sys.argv[1])):
    print("held", flush=True)
    time.sleep(60)
"""


def held_by_another(path):
    process = subprocess.Popen(
        [sys.executable, "-c", HOLDING, str(path)],
        env=os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)},
        stdout=subprocess.PIPE,
    )
    assert process.stdout.readline().strip() == b"held"
    return process


def test_what_another_process_holds_is_waited_for_and_said(tmp_path, monkeypatch):
    path = tmp_path / "card.jsonl"
    process = held_by_another(path)
    monkeypatch.setattr(saving, "PATIENCE", 0.05)
    try:
        with pytest.raises(RepairlibError, match="another program has held this file") as error:
            locked(path).__enter__()
        assert "\n" not in str(error.value)
    finally:
        process.kill()
        process.wait()


@pytest.mark.skipif(os.name != "posix", reason="kill -9 is a signal of POSIX systems")
def test_the_lock_of_a_killed_process_is_free_again(tmp_path):
    path = tmp_path / "card.jsonl"
    process = held_by_another(path)
    process.send_signal(signal.SIGKILL)
    process.wait()
    with locked(path):
        assert True is os.path.exists(f"{path}.lock")


def test_threads_of_one_process_wait_for_each_other(tmp_path):
    path, inside, most = tmp_path / "card.jsonl", [], []

    def work():
        for _ in range(20):
            with locked(path):
                inside.append(1)
                most.append(len(inside))
                inside.pop()

    threads = [threading.Thread(target=work) for _ in range(4)]
    for one in threads:
        one.start()
    for one in threads:
        one.join()
    assert len(most) == 80
    assert set(most) == {1}


def test_the_lock_is_let_go_after_a_mistake(tmp_path):
    with pytest.raises(KeyError), locked(tmp_path / "a"):
        raise KeyError
    with locked(tmp_path / "a"):
        assert list(tmp_path.iterdir()) == [tmp_path / "a.lock"]


def test_what_the_system_refuses_is_one_line(tmp_path):
    (tmp_path / "file").write_text("")
    for path in (tmp_path / "file" / "below", tmp_path / ("n" * 300)):
        with pytest.raises(RepairlibError, match="cannot be read or saved") as error:
            locked(path).__enter__()
        assert "\n" not in str(error.value)
    with pytest.raises(RepairlibError, match="no such file"), saying_why(tmp_path / "none"):
        open(tmp_path / "none").close()
