import pytest

from repairlib.faces.panels import following


@pytest.fixture(autouse=True)
def home(tmp_path, monkeypatch):
    """An empty folder for everything that is remembered, and no panels of earlier tests."""
    monkeypatch.setenv("REPAIRLIB_HOME", str(tmp_path / "home"))
    monkeypatch.setattr(following, "_turns", {})
    return tmp_path / "home"
