import pytest


@pytest.fixture(autouse=True)
def home(tmp_path, monkeypatch):
    """An empty folder for everything that is remembered, one for each test."""
    monkeypatch.setenv("REPAIRLIB_HOME", str(tmp_path / "home"))
    return tmp_path / "home"
