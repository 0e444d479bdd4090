"""An image chosen in a browser arrives byte for byte, also one larger than a message may be."""

from __future__ import annotations

import json
import os
import random
from hashlib import sha256

import pytest
from playwright.sync_api import expect

from tests.browser.lab import running_lab
from tests.browser.test_browser import expect_no_failure, open_lesson, run_all

ALL = os.environ.get("FIRMWARE") == "all"
MANY = 12 << 20  # bytes; a server takes 10 MiB in one message
CODE = "from repairlib.faces.panels import image_reader\nimage_reader('')"


@pytest.mark.skipif(not ALL, reason="FIRMWARE=all: it needs a JupyterLab of its own")
def test_a_large_file_and_an_empty_one(page, tmp_path):
    cell = {"cell_type": "code", "id": "a", "metadata": {}, "execution_count": None}
    notebook = {"cells": [cell | {"outputs": [], "source": CODE}], "nbformat": 4}
    kernel = {"kernelspec": {"name": "python3", "display_name": "Python 3", "language": "python"}}
    data = random.Random(1).randbytes(MANY)
    (tmp_path / "large.bin").write_bytes(data)
    (tmp_path / "empty.bin").write_bytes(b"")
    with running_lab(tmp_path / "lab") as address:
        path = tmp_path / "lab" / "lessons" / "images.ipynb"
        path.write_text(json.dumps(notebook | {"metadata": kernel, "nbformat_minor": 5}))
        open_lesson(page, address("images"))
        run_all(page)
        first, second, *_ = page.locator(".rl-panel input[type=file]").all()
        first.set_input_files(tmp_path / "large.bin")
        shown = page.locator(".rl-panel")
        expect(shown).to_contain_text("12 MiB")
        assert sha256(data).hexdigest() in shown.inner_html()
        expect(page.get_by_label("First read", exact=True)).to_have_value(
            str(next((tmp_path / "lab").rglob("large-*.bin")))
        )
        second.set_input_files(tmp_path / "empty.bin")
        expect(shown).to_contain_text("it is empty")
        expect_no_failure(page)
