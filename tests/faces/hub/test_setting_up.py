"""The folder of a hub: what is written, and that JupyterHub knows every setting in it."""

from __future__ import annotations

import json
import os
import pwd
import secrets
import shutil
from importlib.util import find_spec
from pathlib import Path

import pytest

from repairlib.faces.cli import main
from repairlib.faces.hub import setting_up
from repairlib.faces.hub.setting_up import Wanted, configuration, set_up
from repairlib.learn.group import Group, Member, read_group
from tests.faces.hub.settings import settings_in, unknown_settings

pytestmark = pytest.mark.behaviour
GROUP = Group("Tuesday bench", (Member("Ada Example", "zqkite"), Member("Ben", "zqmoss")))
SOMEBODY = pwd.getpwuid(0).pw_name


@pytest.fixture
def place(monkeypatch):
    """A folder with a short path, as sockets need; it goes again."""
    monkeypatch.setattr(setting_up, "_fonts", lambda place: [])  # seconds, and not ours
    monkeypatch.setattr(setting_up, "_compiled", lambda: [])
    place = Path(f"/tmp/hub-{secrets.token_hex(4)}")
    yield place
    shutil.rmtree(place, ignore_errors=True)


@pytest.fixture
def command(place, tmp_path):
    (tmp_path / "group.json").write_text(json.dumps(GROUP.to_dict() | {"format": 1}))
    return ["class", "hub", str(tmp_path), "--out", str(place), "--instructor", SOMEBODY]


def text(place, **more) -> str:
    return configuration(place, GROUP, Wanted(SOMEBODY, **more))


def test_the_folder_holds_the_group_with_the_way_to_hand_in(place):
    set_up(place, GROUP, Wanted(SOMEBODY))
    group = read_group(place / "group.json")
    assert group == GROUP._replace(hand_in_to="~/handed-in")
    assert oct((place / "hub").stat().st_mode)[-3:] == "700"
    assert oct((place / "group.json").stat().st_mode)[-3:] == "644"


def test_only_members_come_in_and_the_door_is_this_computer(place):
    found = settings_in(text(place, port=8100))
    assert found["Authenticator"]["allowed_users"] == {"zqkite", "zqmoss"}
    assert found["JupyterHub"]["bind_url"] == "http://127.0.0.1:8100"
    assert "allow_all" not in found["Authenticator"]


def test_idle_lessons_and_servers_end_and_memory_is_limited(place):
    found = settings_in(text(place, memory=400))
    assert found["Spawner"]["mem_limit"] == "400M"
    arguments = dict(one.split("=") for one in found["Spawner"]["args"])
    assert int(arguments["--FewKernels.cull_idle_timeout"]) > 0
    assert int(arguments["--ServerApp.shutdown_no_activity_timeout"]) > 0
    assert int(arguments["--FewKernels.most"]) == 3


@pytest.mark.skipif(find_spec("jupyterhub") is None, reason="JupyterHub is not installed")
def test_jupyterhub_knows_every_setting(place):
    from repairlib.faces.hub.spawning import LearnersServer

    assert not unknown_settings(text(place), LearnersServer)


def containers(place) -> str:
    wanted = Wanted("margaret", image="bench.example/workbook:1")
    return configuration(place, GROUP, wanted, setting_up.FOR_CONTAINERS)


def test_each_container_holds_its_own_learner_and_no_rights(place):
    found = settings_in(containers(place))
    assert found["Authenticator"]["allowed_users"] == {"zqkite", "zqmoss"}
    kept = found["KubeSpawner"]
    assert kept["image"] == "bench.example/workbook:1"
    assert kept["allow_privilege_escalation"] is kept["automount_service_account_token"] is False
    mounts = {one["name"]: one for one in kept["volume_mounts"]}
    assert mounts["handed-in"]["subPath"] == "{username}"
    assert mounts["group"]["readOnly"]


CODE = """x"}; import os; os.environ["LEAKED"] = "1" #\n'''; 1 / 0"""


def test_what_is_typed_is_a_text_in_the_configuration_and_never_code(place):
    """Whatever stands in a name or a command: it comes back as it was, and nothing of it runs."""
    group = GROUP._replace(name=CODE, members=(Member("Ada Example", CODE),))
    wanted = Wanted(CODE, proxy=CODE, image=CODE)
    here = settings_in(configuration(place, group, wanted))
    assert here["ConfigurableHTTPProxy"]["command"] == [CODE]
    there = settings_in(configuration(place, group, wanted, setting_up.FOR_CONTAINERS))
    assert there["KubeSpawner"]["image"] == CODE
    for found in (here, there):
        assert found["Authenticator"]["admin_users"] == {CODE}
        assert found["Authenticator"]["allowed_users"] == {CODE}
    assert "LEAKED" not in os.environ


@pytest.mark.parametrize("name", ['x"}; import os', "two words", "zqkite"])
def test_an_instructor_who_can_be_none_is_refused_for_containers_too(place, command, capsys, name):
    given = [*command[:-1], name, "--containers", "bench.example/workbook:1"]
    assert main(given) == 2
    assert "--instructor NAME" in capsys.readouterr().err and not place.exists()


@pytest.mark.skipif(find_spec("kubespawner") is None, reason="the spawner is not installed")
def test_the_spawner_for_containers_knows_every_setting(place):
    from kubespawner import KubeSpawner

    assert not unknown_settings(containers(place), KubeSpawner)


def test_the_command_writes_the_configuration_for_containers(place, command, capsys):
    assert main([*command, "--containers", "bench.example/workbook:1"]) == 0
    assert (place / "jupyterhub_config.py").read_text() == configuration(
        place,
        GROUP,
        Wanted(SOMEBODY, image="bench.example/workbook:1"),
        setting_up.FOR_CONTAINERS,
    )
    assert "cluster" in capsys.readouterr().out


def test_the_command_shows_the_calls_and_makes_none(place, command, capsys):
    assert main(command) == 0
    said = capsys.readouterr().out
    assert "useradd" in said and "--make-users" in said
    assert "zqkite" not in {one.pw_name for one in pwd.getpwall()}
    assert not (place / "learners").exists()


@pytest.mark.parametrize("more", [["--port", "x"], ["--port", "70000"], ["--memory", "0"]])
def test_a_bad_number_is_one_line(place, command, capsys, more):
    assert main([*command, *more]) == 2
    assert len(capsys.readouterr().err.splitlines()) == 1
    assert not place.exists()
