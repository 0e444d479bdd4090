"""ngspice as a second opinion on circuits typed by hand: what it prints, a rail's last cycles."""

import os
import re
import shutil
import subprocess

import pytest

RECTIFIER = ".model rect D(Is=10n N=1.8)"


def program() -> str:
    """Where ngspice is; without it the test is skipped, in CI it fails."""
    found = shutil.which("ngspice")
    if not found and os.environ.get("CI"):
        pytest.fail("ngspice is not installed; in CI it must be")
    if not found:
        pytest.skip("ngspice is not installed, so nothing was compared with it")
    return found


def run(folder, deck: str) -> str:
    """What ngspice prints for a circuit."""
    path = folder / "circuit.cir"
    path.write_text(f"* a circuit\n{deck}\n.end\n")
    done = subprocess.run([program(), "-b", path], capture_output=True, text=True, timeout=120)
    return done.stdout + done.stderr


def settled(folder, circuit: str, hertz: float, point: str, seconds: float, step: float = 10e-6):
    """Peak, valley and mean [V] of a point over the last two cycles of a run of `seconds`."""
    start = seconds - 2 / hertz
    measures = "\n".join(
        f".meas tran {name} {what} v({point}) from={start} to={seconds}"
        for name, what in (("peak", "max"), ("valley", "min"), ("mean", "avg"))
    )
    said = run(
        folder,
        f"{RECTIFIER}\n{circuit}\n.options reltol=1e-4 method=gear rshunt=1e8\n"
        f".tran {step} {seconds} {start} {step} uic\n{measures}",
    )
    found = [re.search(rf"^{name}\s*=\s*(\S+)", said, re.M) for name in ("peak", "valley", "mean")]
    assert all(found), said
    return tuple(float(one[1]) for one in found)
