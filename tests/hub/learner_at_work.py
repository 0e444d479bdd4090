"""A learner as the server sees one: logs in, opens lesson 00, its cells run, answers are typed.

No browser: that runs on the learner's own computer. What it would send is sent here, through the
hub's door, with the same cookies and messages.
"""

from __future__ import annotations

import json
import time
import uuid
from datetime import UTC, datetime
from typing import NamedTuple

import requests
import websocket

PATIENCE_S = 240
LESSON = "00-start-here.ipynb"


class Waited(NamedTuple):
    """Seconds from logging in until each was there, and from each key until its feedback."""

    server: float
    kernel: float
    ready: float
    keys: tuple[float, ...]


class LearnerAtWork:
    """One learner at the hub's door `address`."""

    def __init__(self, address: str, user: str, password: str):
        self.address, self.user, self.password = address, user, password
        self.web = requests.Session()
        self.own = f"{address}/user/{user}"
        self.began = 0.0

    def waited(self, answers: list[str]) -> Waited:
        """Do it all; what it took."""
        self.began = time.monotonic()
        self.log_in()
        server = self.passed()
        channel = self.open_lesson()
        kernel = self.passed()
        field = self.run_cells(channel)
        ready = self.passed()
        keys = tuple(self.type(channel, field, text) for text in answers)
        channel.close()
        return Waited(server, kernel, ready, keys)

    def passed(self) -> float:
        """Seconds since this learner began."""
        return time.monotonic() - self.began

    def log_in(self) -> None:
        """Log in and wait for the server as the hub's page does."""
        door = f"{self.address}/hub/login"
        self.web.get(door)
        typed = {"username": self.user, "password": self.password, "_xsrf": self._xsrf("/hub/")}
        found = self.web.post(door, params={"next": "/hub/spawn"}, data=typed)
        found.raise_for_status()
        while True:
            found = self.web.get(f"{self.own}/lab")
            if found.ok and found.url.startswith(f"{self.own}/lab"):
                return
            assert self.passed() < PATIENCE_S, f"{found.status_code} {found.url}"
            time.sleep(0.2)

    def open_lesson(self) -> websocket.WebSocket:
        """Open the lesson's session; the channel to its kernel, once that has answered."""
        xsrf = {"X-XSRFToken": self._xsrf(f"/user/{self.user}/")}
        wanted = {"path": LESSON, "name": LESSON, "type": "notebook", "kernel": {"name": "python3"}}
        found = self.web.post(f"{self.own}/api/sessions", json=wanted, headers=xsrf)
        found.raise_for_status()
        kernel = found.json()["kernel"]["id"]
        cookies = requests.cookies.get_cookie_header(
            self.web.cookies, requests.Request("GET", f"{self.own}/").prepare()
        )
        channel = websocket.create_connection(
            f"{self.own.replace('http', 'ws', 1)}/api/kernels/{kernel}/channels",
            cookie=cookies,
            timeout=PATIENCE_S,
        )
        self._answered(channel, self._send(channel, "kernel_info_request", {}))
        return channel

    def run_cells(self, channel: websocket.WebSocket) -> str:
        """Run every cell of the lesson; the field of question 2, by its comm."""
        notebook = self.web.get(f"{self.own}/api/contents/{LESSON}").json()["content"]
        cells = [one["source"] for one in notebook["cells"] if one["cell_type"] == "code"]
        wanted = {"silent": False, "store_history": True, "allow_stdin": False}
        sent = [self._send(channel, "execute_request", wanted | {"code": one}) for one in cells]
        fields = set()
        for message in self._until_idle(channel, sent[-1]):
            assert message["msg_type"] != "error", message["content"]
            if message["msg_type"] in ("comm_open", "comm_msg"):
                state = message["content"]["data"].get("state", {})
                if "(q2)" in state.get("description", ""):
                    fields.add(message["content"]["comm_id"])
        (field,) = fields
        return field

    def type(self, channel: websocket.WebSocket, field: str, text: str) -> float:
        """Put `text` into a field; seconds until everything that follows from it was shown."""
        data = {"method": "update", "state": {"value": text}, "buffer_paths": []}
        began = time.monotonic()
        sent = self._send(channel, "comm_msg", {"comm_id": field, "data": data})
        told = [one for one in self._until_idle(channel, sent) if one["msg_type"] == "comm_msg"]
        assert told, "nothing followed from what was typed"
        return time.monotonic() - began

    def _answered(self, channel: websocket.WebSocket, sent: str) -> None:
        for _ in self._until_idle(channel, sent):
            pass

    def _until_idle(self, channel: websocket.WebSocket, sent: str):
        """The messages up to the one that says the kernel is done with what was sent."""
        while True:
            message = json.loads(channel.recv())
            yield message
            done = message["content"].get("execution_state") == "idle"
            if done and message["parent_header"].get("msg_id") == sent:
                return

    def _send(self, channel: websocket.WebSocket, kind: str, content: dict) -> str:
        header = {
            "msg_id": uuid.uuid4().hex,
            "msg_type": kind,
            "username": self.user,
            "session": self.user,
            "date": datetime.now(UTC).isoformat(),
            "version": "5.3",
        }
        rest = {"parent_header": {}, "metadata": {}, "buffers": [], "channel": "shell"}
        channel.send(json.dumps({"header": header, "content": content, **rest}))
        return header["msg_id"]

    def _xsrf(self, path: str) -> str:
        """The token that a page below `path` sends back in its own requests."""
        found = [one for one in self.web.cookies if one.name == "_xsrf"]
        fitting = [one for one in found if one.path == path] or found
        return fitting[0].value or ""
