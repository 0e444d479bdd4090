"""One writer at a time, whoever it is, and whatever became of the one before."""

import errno
import importlib.util
import os
import signal
import subprocess
import sys
import threading
import time
import types

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

# A child that is forked in the lock has the same opened file as its parent.
FORKING = """
import os, signal, sys
from pathlib import Path
from repairlib.core import saving
saving.PATIENCE = 0.2
path = Path(sys.argv[1])
with saving.locked(path):
    child = os.fork()
    if not child:
        signal.pause()
try:
    with saving.locked(path):
        print("free")
finally:
    os.kill(child, signal.SIGKILL)
"""


def running(code, path):
    return subprocess.Popen(
        [sys.executable, "-c", code, str(path)],
        env=os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)},
        stdout=subprocess.PIPE,
    )


def held_by_another(path):
    process = running(HOLDING, path)
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
    assert os.path.exists(f"{path}.lock")
    with locked(path):
        pass


@pytest.mark.skipif(not hasattr(os, "fork"), reason="processes are forked on POSIX systems")
def test_a_process_forked_meanwhile_does_not_keep_the_lock(tmp_path):
    assert running(FORKING, tmp_path / "card.jsonl").communicate()[0] == b"free\n"


@pytest.mark.skipif(os.name != "posix", reason="flock is of POSIX systems")
def test_a_disk_that_says_permission_denied_for_held_is_waited_for(tmp_path, monkeypatch):
    """Byte-range locks, to which network disks turn these, may say EACCES (POSIX, fcntl)."""
    monkeypatch.setattr(saving, "PATIENCE", 0.05)
    with locked(tmp_path / "a"):
        monkeypatch.setattr(saving, "_take", lambda beside: refuse(errno.EACCES))
        with pytest.raises(RepairlibError, match="another program has held this file"):
            locked(tmp_path / "a").__enter__()


def test_a_disk_without_locks_is_said_at_once(tmp_path, monkeypatch):
    monkeypatch.setattr(saving, "_take", lambda beside: refuse(errno.ENOSYS))
    with pytest.raises(RepairlibError, match="cannot be read or saved: function not implemented"):
        locked(tmp_path / "a").__enter__()


def refuse(code):
    raise OSError(code, os.strerror(code))


@pytest.fixture
def on_windows(monkeypatch):
    """saving.py as it is on Windows, over a stand-in for the C runtime's _locking.

    As its documentation says, a byte that another handle has, in this process or another, is
    refused with EACCES, and so is letting go of a byte that one does not have.
    """
    held = {}

    def locking(beside, mode, count):
        assert count == 1
        byte = (os.fstat(beside).st_ino, os.lseek(beside, 0, os.SEEK_CUR))
        if (byte in held) == (mode == "take") or held.get(byte, beside) != beside:
            refuse(errno.EACCES)
        held.update({byte: beside}) if mode == "take" else held.pop(byte)

    runtime = types.SimpleNamespace(locking=locking, LK_NBLCK="take", LK_UNLCK="let go", held=held)
    monkeypatch.setitem(sys.modules, "msvcrt", runtime)
    monkeypatch.setattr(sys, "platform", "win32")
    spec = importlib.util.spec_from_file_location("saving_on_windows", saving.__file__)
    there = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(there)
    monkeypatch.setattr(there, "PATIENCE", 0.05)
    return there


def test_the_lock_of_windows_is_waited_for_and_let_go(on_windows, tmp_path):
    with on_windows.locked(tmp_path / "a"):
        assert sys.modules["msvcrt"].held
        with pytest.raises(RepairlibError, match="another program has held this file"):
            on_windows.locked(tmp_path / "a").__enter__()
        assert sys.modules["msvcrt"].held
        with on_windows.locked(tmp_path / "b"):
            pass
    assert not sys.modules["msvcrt"].held
    with on_windows.locked(tmp_path / "a"):
        pass


def test_threads_of_one_process_wait_for_each_other(tmp_path):
    path, inside, most = tmp_path / "card.jsonl", [], []

    def work():
        for _ in range(20):
            with locked(path):
                inside.append(1)
                time.sleep(0.001)  # another would come in here
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
