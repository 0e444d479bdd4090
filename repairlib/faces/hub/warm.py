"""Learners' servers from one warm process: it has imported JupyterLab, and forks.

To import JupyterLab takes longer than all else in a learner's start, and what was imported is then
in memory once for all. The hub talks to this process over a socket that only root can open. Each
connection is one server: the process forks, and the child alone reads what is to be started, so
that nothing of one learner (a token, a name) ever stands in the memory from which the next comes.
"""

from __future__ import annotations

import gc
import json
import os
import pwd
import resource
import signal
import socket
import struct
import sys
from importlib import import_module
from pathlib import Path

from repairlib.faces.hub import served
from repairlib.faces.lessons.server import start_lightly

# What a server imports by the time it answers.
IMPORTED = (
    "jupyterlab.labapp",
    "jupyterhub.singleuser.extension",
    "jupyter_server.services.contents.handlers",
    "jupyter_server.services.kernels.handlers",
    "jupyter_server.services.sessions.handlers",
    "repairlib.faces.hub.kernels",
)
LENGTH = struct.Struct("!I")


def main() -> None:
    """Import, listen at the socket whose path is the one argument, and fork until it is ended."""
    start_lightly()
    for name in IMPORTED:
        import_module(name)
    gc.freeze()
    signal.signal(signal.SIGCHLD, signal.SIG_IGN)  # whoever ends is gone, and the hub sees it
    path = Path(sys.argv[1])
    path.unlink(missing_ok=True)
    listening = socket.socket(socket.AF_UNIX)
    os.umask(0o077)
    listening.bind(str(path))
    listening.listen(64)
    while True:
        connection, _ = listening.accept()
        if os.fork():
            connection.close()
            continue
        listening.close()
        _serve(connection)


def _serve(connection: socket.socket) -> None:
    """In the child: become the learner, tell the hub who this is, and serve."""
    try:
        signal.signal(signal.SIGCHLD, signal.SIG_DFL)
        os.setsid()
        asked = json.loads(_read(connection))
        become(asked["user"], asked["limits"])
        os.environ.clear()
        os.environ.update(asked["environment"])
        sys.argv = ["served", *asked["arguments"]]
        connection.sendall(LENGTH.pack(os.getpid()))
        connection.close()
        served.main()
    except BaseException:  # nothing may go back into the loop of the parent
        sys.excepthook(*sys.exc_info())
        os._exit(1)
    os._exit(0)


def become(user: str, limits: dict[str, int]) -> None:
    """Turn this process into one of `user`, for good, with limits that the user cannot lift."""
    who = pwd.getpwnam(user)
    for name, most in limits.items():
        resource.setrlimit(getattr(resource, name), (most, most))
    os.initgroups(user, who.pw_gid)
    os.setgid(who.pw_gid)
    os.setuid(who.pw_uid)
    os.chdir(who.pw_dir)


def request(user: str, environment: dict, arguments: list[str], limits: dict[str, int]) -> bytes:
    """What the hub sends for one server."""
    asked = {"user": user, "environment": environment, "arguments": arguments, "limits": limits}
    content = json.dumps(asked).encode()
    return LENGTH.pack(len(content)) + content


def _read(connection: socket.socket) -> bytes:
    with connection.makefile("rb") as stream:
        (length,) = LENGTH.unpack(stream.read(LENGTH.size))
        return stream.read(length)


if __name__ == "__main__":
    main()
