"""The Python for browsers: fetched once, the very package, or a clear line."""

import base64
import hashlib
import http.server
import io
import json
import tarfile
import threading

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.faces.page import runtime

pytestmark = pytest.mark.behaviour


def package(files) -> bytes:
    packed = io.BytesIO()
    with tarfile.open(fileobj=packed, mode="w:gz") as archive:
        for name in files:
            content = f"content of {name}".encode()
            about = tarfile.TarInfo(f"package/{name}")
            about.size = len(content)
            archive.addfile(about, io.BytesIO(content))
    return packed.getvalue()


@pytest.fixture
def registry(monkeypatch, tmp_path):
    """A registry on this computer that gives what the test puts into `gives`."""
    gives = {"content": package((*runtime.FILES, runtime.LOCK)), "asked": []}

    class Registry(http.server.BaseHTTPRequestHandler):
        def do_GET(self):
            gives["asked"].append(self.path)
            self.send_response(200 if gives["content"] else 404)
            self.end_headers()
            self.wfile.write(gives["content"])

        def log_message(self, *_):
            pass

    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Registry)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    monkeypatch.setenv(runtime.REGISTRY_VARIABLE, f"http://127.0.0.1:{server.server_port}/")
    monkeypatch.setenv("REPAIRLIB_HOME", str(tmp_path / "home"))
    yield gives
    server.shutdown()
    server.server_close()


def says_its_sum(monkeypatch, content: bytes) -> None:
    sum_ = base64.b64encode(hashlib.sha512(content).digest()).decode()
    monkeypatch.setattr(runtime, "SHA512", sum_)


def test_it_is_fetched_once(registry, monkeypatch):
    says_its_sum(monkeypatch, registry["content"])
    folder = runtime.find_runtime()
    assert runtime.find_runtime() == folder
    assert registry["asked"] == [f"/pyodide/-/pyodide-{runtime.VERSION}.tgz"]
    assert {file.name for file in folder.iterdir()} == {*runtime.FILES, runtime.LOCK}


def test_a_kept_folder_that_is_not_whole_is_fetched_again(registry, monkeypatch):
    says_its_sum(monkeypatch, registry["content"])
    folder = runtime.find_runtime()
    (folder / runtime.LOCK).unlink()
    assert (runtime.find_runtime() / runtime.LOCK).is_file()


def test_another_package_is_refused_and_leaves_nothing(registry, tmp_path):
    with pytest.raises(RepairlibError, match="its sum is not that of"):
        runtime.find_runtime()
    assert not [
        path for path in (tmp_path / "home").rglob("*") if path.suffix != ".lock" and path.is_file()
    ]


def test_no_such_package_is_said(registry):
    registry["content"] = b""
    with pytest.raises(RepairlibError, match="it cannot be fetched: HTTP Error 404"):
        runtime.find_runtime()


@pytest.mark.parametrize(
    "address", ["http://127.0.0.1:9", "no address", "ftp://127.0.0.1:9", "http://a b/"]
)
def test_no_network_is_said(address, monkeypatch, tmp_path):
    monkeypatch.setenv(runtime.REGISTRY_VARIABLE, address)
    monkeypatch.setenv("REPAIRLIB_HOME", str(tmp_path))
    with pytest.raises(RepairlibError, match="Accepted: a network, once; or --runtime"):
        runtime.find_runtime()


@pytest.mark.parametrize(
    "about, said",
    [
        (json.dumps({"version": "0.1"}), "it is version 0.1"),
        ("{", "names no version"),
        ("[]", "names no version"),
        ("{}", "names no version"),
    ],
)
def test_another_version_is_refused(tmp_path, about, said):
    for name in (*runtime.FILES, runtime.LOCK):
        (tmp_path / name).write_text("x")
    (tmp_path / "package.json").write_text(about)
    with pytest.raises(RepairlibError, match=said):
        runtime.find_runtime(tmp_path)


def test_a_package_whose_list_is_spoiled_is_refused(tmp_path):
    for name in (*runtime.FILES, runtime.LOCK):
        (tmp_path / name).write_text("x")
    (tmp_path / "package.json").write_text(json.dumps({"version": runtime.VERSION}))
    with pytest.raises(RepairlibError, match="names no info"):
        runtime.find_runtime(tmp_path)
