"""What a learner's server is before it serves: whose it is, and how it is kept small."""

from __future__ import annotations

import asyncio
import json
import socket
from types import SimpleNamespace

import pytest
from tornado.web import HTTPError

from repairlib.faces.hub import warm
from repairlib.faces.hub.kernels import FewKernels
from repairlib.faces.hub.served import greet, options
from repairlib.learn.group import Group, Member
from repairlib.learn.learner import current_learner, set_learner

pytestmark = pytest.mark.behaviour


@pytest.fixture(autouse=True)
def group(tmp_path, monkeypatch):
    path = tmp_path / "group.json"
    group = Group("Tuesday bench", (Member("Ada Example", "kite"),))
    path.write_text(json.dumps(group.to_dict() | {"format": 1}))
    monkeypatch.setenv("REPAIRLIB_GROUP", str(path))


def test_who_logs_in_by_a_word_is_that_member():
    greet("kite")
    assert current_learner()[0].who == "Ada Example, group Tuesday bench"


def test_who_was_set_before_stays_and_a_stranger_is_nobody():
    greet("instructor")
    assert current_learner()[0].name == ""
    set_learner("Somebody Else")
    greet("kite")
    assert current_learner()[0].name == "Somebody Else"


def test_messages_of_kernels_pass_through_files_of_the_learner(tmp_path):
    assert options(tmp_path)["KernelManager.transport"] == "ipc"


def test_the_hub_and_the_warm_process_understand_each_other():
    ours, theirs = socket.socketpair()
    with ours, theirs:
        ours.sendall(warm.request("kite", {"A": "ä"}, ["--x=1"], {"RLIMIT_CORE": 0}))
        asked = json.loads(warm._read(theirs))
    assert asked["user"] == "kite"
    assert asked["environment"] == {"A": "ä"}
    assert asked["arguments"] == ["--x=1"]


@pytest.fixture
def lessons(monkeypatch):
    """Three lessons that run; the one named `b` was used least lately."""
    manager = FewKernels()
    used = {"a": 3, "b": 1, "c": 2}
    manager._kernels = {name: SimpleNamespace(last_activity=at) for name, at in used.items()}
    manager.ended = []

    async def shutdown(name):
        manager.ended.append(name)

    monkeypatch.setattr(manager, "shutdown_kernel", shutdown)
    return manager


def test_the_lesson_that_nobody_looks_at_makes_room(lessons):
    lessons._kernel_connections = {"a": 0, "b": 1, "c": 0}
    asyncio.run(lessons._make_room())
    assert lessons.ended == ["c"]


def test_when_all_are_looked_at_the_learner_is_told_to_close_one(lessons):
    lessons._kernel_connections = {"a": 1, "b": 1, "c": 2}
    with pytest.raises(HTTPError, match="3 lessons are open"):
        asyncio.run(lessons._make_room())
    assert lessons.ended == []
