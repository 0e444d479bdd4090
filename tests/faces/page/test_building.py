"""The folder that is built: whole, named by what is in it, and never on top of something else."""

import hashlib
import json
import re

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.faces import cli
from repairlib.faces.page import building, runtime

pytestmark = pytest.mark.behaviour


@pytest.fixture
def python(tmp_path, monkeypatch):
    """A folder that looks like the Python for browsers; the build does not look inside it.

    What the bundles hold is for `test_bundling.py`.
    """
    monkeypatch.setattr(building, "files_of_the_page", dict)
    monkeypatch.setattr(building, "segno_files", dict)
    folder = tmp_path / "python"
    folder.mkdir()
    for name in runtime.FILES:
        (folder / name).write_text(f"instead of {name}")
    (folder / runtime.LOCK).write_text('{"info": {"abi_version": "2026_0"}, "packages": {"x": 1}}')
    (folder / "package.json").write_text(json.dumps({"version": runtime.VERSION}))
    return folder


def service_files(folder):
    return json.loads(
        re.search(r"const FILES = (\{.*?\});", (folder / "service.js").read_text(), re.S)[1]
    )


def files_in(folder):
    return {path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file()}


def test_everything_is_kept_for_a_start_without_a_network(tmp_path, python):
    folder = building.build_page(tmp_path / "page", python).folder
    kept = service_files(folder)
    assert files_in(folder) - set(kept) == {"service.js", f"{building.PYTHON}/about.txt"}
    for name, sum_ in kept.items():
        assert hashlib.sha256((folder / name).read_bytes()).hexdigest() == sum_


def test_the_page_names_the_folder_of_its_own_version(tmp_path, python):
    built = building.build_page(tmp_path / "page", python)
    page = (built.folder / "index.html").read_text(encoding="utf-8")
    assert set(re.findall(r"v-[0-9a-f]{12}", page)) == {built.version}
    assert json.dumps(built.version) in (built.folder / "service.js").read_text()


def test_same_files_make_the_same_version_and_the_same_bytes(tmp_path, python):
    one, two = (building.build_page(tmp_path / name, python).folder for name in ("one", "two"))
    assert {name: (one / name).read_bytes() for name in files_in(one)} == {
        name: (two / name).read_bytes() for name in files_in(two)
    }


def test_any_change_makes_another_version_and_the_one_before_stays(tmp_path, python, monkeypatch):
    static = building._static
    versions = []
    for word in ("first", "second", "third"):
        monkeypatch.setattr(
            building, "_static", lambda word=word: {**static(), "page.css": word.encode()}
        )
        versions.append(building.build_page(tmp_path / "page", python).version)
    assert len(set(versions)) == 3
    left = {path.name for path in (tmp_path / "page").glob("v-*")}
    assert left == set(versions[1:])


def test_a_change_of_the_service_alone_is_a_version_too(tmp_path, python, monkeypatch):
    before = building.build_page(tmp_path / "page", python).version
    changed = tmp_path / "static"
    changed.mkdir()
    for file in building.STATIC.iterdir():
        (changed / file.name).write_bytes(file.read_bytes())
    (changed / "service.js").write_text("// another\n")
    monkeypatch.setattr(building, "STATIC", changed)
    assert building.build_page(tmp_path / "page", python).version != before


@pytest.mark.parametrize("mine", ["notes", "notes/diary.txt", "notes/service.js"])
def test_other_peoples_files_are_left_alone(tmp_path, python, mine):
    (tmp_path / mine).parent.mkdir(exist_ok=True)
    (tmp_path / mine).write_text("mine")
    with pytest.raises(RepairlibError, match="Accepted: a new or empty folder"):
        building.build_page(tmp_path / "notes", python)
    assert files_in(tmp_path) - {f"python/{path.name}" for path in python.iterdir()} == {mine}
    assert (tmp_path / mine).read_text() == "mine"


def test_the_command_says_what_each_part_weighs(tmp_path, python, capsys):
    out = str(tmp_path / "page")
    assert cli.main(["page", "--out", out, "--runtime", str(python)]) == 0
    told = capsys.readouterr().out
    assert "reader.bin" in told and "without the Python" in told and "http.server" in told
    assert cli.main(["page", "--out", out, "--runtime", str(python), "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["folder"] == out


@pytest.mark.parametrize(
    "arguments, said",
    [
        ([], "no place for it is given"),
        (["104K", "--out", "x"], "only options are due"),
        (["--out", "x", "--runtime", "/nowhere"], "it holds no package.json"),
        (["--out", "x", "--runtime", "x" * 300], "Accepted: a network, once"),
        (["--card", "https://bench.example/", "--out", "x" * 300], "ile name too long"),
        (
            ["--card", "https://bench.example/", "--out", "x", "--runtime", "y"],
            "'--runtime': not an option of a card",
        ),
    ],
)
def test_the_command_refuses_in_one_line(arguments, said, capsys, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    assert cli.main(["page", *arguments]) == 2
    told = capsys.readouterr().err
    assert said in told and told.count("\n") == 1
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize("out", ["x" * 300, "python/package.json/page", "/dev/null/page"])
def test_a_place_that_cannot_be_written_is_told_in_one_line(out, tmp_path, python, capsys):
    assert cli.main(["page", "--out", str(tmp_path / out), "--runtime", str(python)]) == 2
    told = capsys.readouterr().err
    assert "this cannot be read or saved" in told and told.count("\n") == 1
