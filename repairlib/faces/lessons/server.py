"""JupyterLab in this process: its options, a free port, the printed address, a quiet end."""

from __future__ import annotations

import errno
import os
import secrets
import signal
import sys
from pathlib import Path

from repairlib.core.errors import RepairlibError

PORTS_TRIED = 50
LAB = Path(__file__).parent / "lab"  # what JupyterLab loads beside its own
EVERYWHERE = ("0.0.0.0", "::", "*", "")


def free_port(ip: str, first: int) -> int:
    """The first port from `first` on that is free at `ip`. Raises RepairlibError for none."""
    from tornado.netutil import bind_sockets

    for port in range(first, min(first + PORTS_TRIED, 65536)):
        try:
            sockets = bind_sockets(port, "" if ip == "*" else ip)
        except (OSError, UnicodeError) as error:  # the latter: no name of a computer
            if getattr(error, "errno", None) == errno.EADDRINUSE:
                continue
            reason = getattr(error, "strerror", None) or "this is no address"
            wrong = f"nothing can be opened there: {reason.lower()}"
            accepted = "--ip 127.0.0.1, --ip 0.0.0.0 or an address of this computer; --port 8888"
            raise RepairlibError(f"{ip} port {port}", wrong, accepted) from None
        for one in sockets:
            one.close()
        return port
    wrong = f"neither this port nor the next {PORTS_TRIED} are free"
    raise RepairlibError(first, wrong, "another --port NUMBER")


def prepare_server(folder: Path, ip: str, port: int, prefix: str):
    """A JupyterLab on `folder`, ready to `run`, and its token."""
    from jupyterlab.labapp import LabApp

    token = secrets.token_hex(24)
    options = house_options(folder) | {
        "ServerApp.ip": ip,
        "ServerApp.port": port,
        "ServerApp.base_url": prefix,
        "ServerApp.allow_root": hasattr(os, "geteuid") and os.geteuid() == 0,
        "IdentityProvider.token": token,
    }
    if prefix != "/":  # behind a proxy, whose name the browser then gives as the host
        options["ServerApp.allow_remote_access"] = True
    return LabApp.initialize_server(argv=switches(options)), token


def house_options(folder: Path) -> dict[str, object]:
    """What makes a JupyterLab on `folder` the lessons', wherever it is served."""
    return {
        "ServerApp.root_dir": folder,
        "ServerApp.open_browser": False,
        "ServerApp.log_level": "ERROR",
        "LabApp.log_level": "ERROR",
        "LabApp.extra_labextensions_path": os.fspath(LAB),
        "LabApp.news_url": None,
        "LanguageServerManager.autodetect": False,  # it would start npm to look for some
        "LabApp.check_for_updates_class": "jupyterlab.NeverCheckForUpdate",
    }


def switches(options: dict[str, object]) -> list[str]:
    """The options as on a command line."""
    return [f"--{name}={value}" for name, value in options.items()]


def start_lightly() -> None:
    """Before JupyterLab is imported: half of its start, two seconds, is the grammar of one check.

    `rfc3987_syntax` works it out anew each time it is imported. It judges addresses with letters
    of all alphabets in a JSON schema, none of which is here, and jsonschema does without it.
    """
    sys.modules.setdefault("rfc3987_syntax", None)  # type: ignore[arg-type]


def address(server, ip: str, token: str, notebook: str) -> str:
    """Where a browser on this computer finds `notebook`."""
    host = "127.0.0.1" if ip in EVERYWHERE else f"[{ip}]" if ":" in ip else ip
    scheme = "https" if server.certfile else "http"
    return f"{scheme}://{host}:{server.port}{server.base_url}lab/tree/{notebook}?token={token}"


def run(server, when_listening) -> None:
    """Serve until the learner chooses File > Shut Down or presses Ctrl-C; a second one kills.

    `when_listening` is called once, as soon as a browser would be answered.
    """

    def stop(number, _):
        signal.signal(number, signal.SIG_DFL)
        server.stop(from_signal=True)

    for number in (signal.SIGINT, signal.SIGTERM):
        signal.signal(number, stop)
    server.io_loop.add_callback(when_listening)  # the callback that opens the port came first
    server.start()
