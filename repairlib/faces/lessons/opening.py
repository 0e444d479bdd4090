"""The command `lessons`: lay the working copy, start JupyterLab on it, tell where it is."""

from __future__ import annotations

import os
import threading
from contextlib import suppress
from importlib.util import find_spec
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.faces.lessons.browser import find_browser


def open_lessons(
    to: str = "",
    ip: str = "127.0.0.1",
    port: str = "8888",
    base_url: str = "",
    large: str = "",
    group: str = "",
    instructor: str = "",
) -> str:
    """Open lesson 00 and serve the lessons until they are closed; the line to end with.

    `to` is the folder of the working copy (the learner's own if ""), `base_url` the prefix under
    which a proxy passes requests on; with `large` the type is larger. `group` is the file of a
    group that this computer is to know. An `instructor` gets the lesson for instructors, opened
    first. Raises RepairlibError.
    """
    _demand_jupyterlab()
    prefix, number = _prefix(base_url), _port(port)
    if group:
        _say(*_make_group_known(group))
    with suppress(KeyboardInterrupt):
        _serve(to, ip, number, prefix, bool(large), bool(instructor))
    return "The lessons are closed. To open them again: python -m repairlib lessons"


def _serve(to: str, ip: str, port: int, prefix: str, large: bool, teaches: bool) -> None:
    from repairlib.faces.lessons import server as lab
    from repairlib.faces.lessons.laying import FIRST, INSTRUCTORS, LESSON_FOLDER, lay_lessons
    from repairlib.learn.home import home

    port = lab.free_port(ip, port)
    own = home().absolute()
    folder = Path(os.path.expanduser(to)).absolute() if to else own / "lessons"
    _say(
        f"Your lessons are in {folder}. JupyterLab starts ...",
        *lay_lessons(folder, LESSON_FOLDER, teaches),
    )
    furnish(own, large)
    server, token = lab.prepare_server(folder, ip, port, prefix)
    first = Path(INSTRUCTORS).name if teaches else FIRST
    lab.run(server, lambda: _show(lab.address(server, ip, token, first), ip, server.port))


def _make_group_known(path: str) -> list[str]:
    """Take in the file of a group; what there is to say of it."""
    from repairlib.core.wording import counted
    from repairlib.learn.group import make_known

    known = make_known(path)
    group = known.group
    lines = [
        f"This computer knows the group {group.name}: {counted(len(group.members), 'member')}."
    ]
    if known.put_away:
        lines.append(f"The group {known.put_away} is put away; its learners are still found here.")
    if known.gone:
        lines.append(f"No longer in the group: {', '.join(known.gone)}.")
    return lines


def furnish(own: Path, large: bool = False) -> None:
    """Set JupyterLab up in private, and let its kernels find this home and this repairlib."""
    from repairlib.faces.lessons.laying import HOUSE
    from repairlib.faces.lessons.server import start_lightly
    from repairlib.faces.lessons.settings import private_environment, write_settings
    from repairlib.learn import files

    start_lightly()  # the settings are written with JupyterLab's help
    private = own / "jupyter"
    with files.saying_why(private):
        write_settings(private, large)
    os.environ |= private_environment(private, large) | {"REPAIRLIB_HOME": str(own)}
    if not (HOUSE / "__init__.py").exists():  # a clone; what is installed is found anyway
        search = (str(HOUSE), os.environ.get("PYTHONPATH"))
        os.environ["PYTHONPATH"] = os.pathsep.join(filter(None, search))


def _show(address: str, ip: str, port: int) -> None:
    """Print the address and what to do with it; open it where there is a browser."""
    browser = find_browser()
    _say(address, _what_to_do(bool(browser), ip, port))
    if browser:
        threading.Thread(target=browser.open, args=(address,), daemon=True).start()


def _what_to_do(opens: bool, ip: str, port: int) -> str:
    """The one line under the address."""
    if opens:
        return "Your browser opens. If it does not, copy the address into it. Ctrl-C here ends."
    if ip in ("127.0.0.1", "localhost", "::1"):
        return (
            "Copy the address into a browser. From another computer first: "
            f"ssh -L {port}:localhost:{port} THIS-COMPUTER. "
            f"From a container: publish port {port} and add --ip 0.0.0.0. Ctrl-C here ends."
        )
    return (
        "Copy the address into a browser; on another computer, put this one's name in it. "
        "Ctrl-C here ends."
    )


def _demand_jupyterlab() -> None:
    """Stop before anything is laid; the command line says what to install."""
    for name in ("jupyterlab", "ipywidgets"):
        if find_spec(name) is None:
            raise ModuleNotFoundError(name=name)


def _port(text: str) -> int:
    if text.isascii() and text.isdigit() and len(text) < 6 and 0 < int(text) < 65536:
        return int(text)
    raise RepairlibError(text, "not a port", "a whole number from 1 to 65535, such as --port 8888")


def _prefix(text: str) -> str:
    """The prefix with its slashes: what was given, or what a hub says, or "/"."""
    text = text or os.environ.get("JUPYTERHUB_SERVICE_PREFIX", "")
    if "://" in text or any(sign in text for sign in "?#%\\ ") or not text.isprintable():
        raise RepairlibError(text, "not a path", "the path that a proxy passes on: /bench/7/")
    return f"/{text.strip('/')}/" if text.strip("/") else "/"


def _say(*lines: str) -> None:
    """Print at once. A reader that has seen enough is no error; the last line settles that."""
    with suppress(BrokenPipeError):
        print(*lines, sep="\n", flush=True)
