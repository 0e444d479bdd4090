"""The page as it is built, on a web server of this process that can be stopped and asked."""

from __future__ import annotations

import http.server
import os
import threading
from pathlib import Path

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.faces.page import build_page


class PageServer:
    """A folder under `address`; `asked` holds the path of each request.

    `types` are those of files by their ending, where the host has others than usual. `sent_on` is
    where a path is sent on to, as some hosts do.
    """

    def __init__(self, folder: Path, types: dict[str, str] | None = None):
        self.folder = folder
        self.types = types or {}
        self.asked: list[str] = []
        self.sent_on: dict[str, str] = {}
        self.port = 0  # any that is free
        self.start()
        self.address = f"http://127.0.0.1:{self.port}/"

    def start(self) -> None:
        """Serve, at the same address as before."""
        asked, folder, types, sent_on = self.asked, str(self.folder), self.types, self.sent_on

        class Files(http.server.SimpleHTTPRequestHandler):
            extensions_map = http.server.SimpleHTTPRequestHandler.extensions_map | types

            def __init__(self, *args):
                super().__init__(*args, directory=folder)

            def do_GET(self):
                if self.path not in sent_on:
                    return super().do_GET()
                self.send_response(308)
                self.send_header("Location", sent_on[self.path])
                self.send_header("Content-Length", "0")
                self.end_headers()

            def log_message(self, *_):
                asked.append(self.path)

        self.server = http.server.ThreadingHTTPServer(("127.0.0.1", self.port), Files)
        self.port = self.server.server_port
        threading.Thread(target=self.server.serve_forever, daemon=True).start()

    def stop(self) -> None:
        """End the server; nobody answers at its address."""
        self.server.shutdown()
        self.server.server_close()


def build_for_tests(folder: Path, shared: Path) -> Path:
    """Build the page into `folder`, with the Python that all workers share in `shared`.

    Without a network the test is left out, but not in CI.
    """
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("REPAIRLIB_HOME", str(shared / "runtime"))
        try:
            return build_page(folder).folder
        except RepairlibError as error:
            if "CI" in os.environ or "cannot be fetched" not in str(error):
                raise
            pytest.skip(str(error))
