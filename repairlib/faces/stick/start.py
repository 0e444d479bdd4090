"""Install the workbook from this folder and open its lessons: python3 start.py

Nothing is fetched and nothing on this stick is changed. It needs Python 3.11 or newer. What is
installed stands in your own folder `repairlib-workbook`; your answers stay on this computer.
"""

import hashlib
import json
import os
import subprocess
import sys
import venv
from pathlib import Path

HERE = Path(__file__).resolve().parent
SUMS, WHEELS, GROUP = "sums.json", "wheels", "group.json"
NEWEST = "newest.json"  # in the environment: the sums of the stick it was installed from
BROKEN = "Do not work from this stick. Let it be made anew, and copied to its end."


def sums_of(folder):
    """The sums of all files below `folder` but the sums themselves, by their path in it."""
    files = sorted(one for one in folder.rglob("*") if one.is_file())
    return {
        one.relative_to(folder).as_posix(): hashlib.sha256(one.read_bytes()).hexdigest()
        for one in files
        if one.name != SUMS and not one.name.startswith("._")  # of other systems' file managers
    }


def what_is_broken(folder):
    """What a stick lacks or has otherwise than it was made, in one line; "" for a whole one."""
    try:
        wanted = json.loads((folder / SUMS).read_text("utf-8"))
    except FileNotFoundError:
        return "it was not finished"
    except (OSError, ValueError) as error:
        return f"its list of sums cannot be read ({error})"
    try:
        found = sums_of(folder)
    except OSError as error:
        return f"it cannot be read ({error})"
    bad = sorted(name for name in wanted if found.get(name) != wanted[name])
    return f"{len(bad)} of {len(wanted)} files are missing or damaged: {bad[0]}" if bad else ""


def install(environment):
    """Make an environment and install the wheels into it, without a network."""
    python = environment / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
    sums = (HERE / SUMS).read_bytes()
    if (environment / NEWEST).is_file() and (environment / NEWEST).read_bytes() == sums:
        return python
    print("Installing from the stick. This takes a minute or two, once.", flush=True)
    (environment / NEWEST).unlink(missing_ok=True)
    venv.create(environment, clear=True)  # some systems have no pip of their own for it
    (pip,) = (HERE / WHEELS).glob("pip-*.whl")
    (workbook,) = (HERE / WHEELS).glob("repairlib-*.whl")
    offline = ["--no-index", "--find-links", str(HERE / WHEELS), "--disable-pip-version-check"]
    wanted = [*offline, f"{workbook}[lessons,page]"]
    subprocess.run(
        [str(python), str(pip / "pip"), "install", "--quiet", "--no-compile", *wanted], check=True
    )
    (environment / NEWEST).write_bytes(sums)
    return python


def main():
    """Check, install, open."""
    if sys.version_info < (3, 11):  # noqa: UP036 - it runs on whatever is there
        sys.exit("This needs Python 3.11 or newer; this one is " + sys.version.split()[0] + ".")
    broken = what_is_broken(HERE)
    if broken:
        sys.exit(f"This stick is not whole: {broken}.\n{BROKEN}")
    environment = Path.home() / "repairlib-workbook"
    try:
        python = install(environment)
    except (OSError, subprocess.CalledProcessError) as error:
        sys.exit(f"It could not be installed in {environment}: {error}")
    group = ["--group", str(HERE / GROUP)]
    command = [str(python), "-m", "repairlib", "lessons", *group, *sys.argv[1:]]
    try:
        sys.exit(subprocess.call(command))
    except KeyboardInterrupt:  # the lessons end by it, and have said so
        sys.exit()


if __name__ == "__main__":
    main()
