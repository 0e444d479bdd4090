"""The page and the command line answer alike: a thousand markings, byte for byte.

The page's Python is another one, newer, and compiled for the browser.
"""

from __future__ import annotations

import io
from contextlib import redirect_stdout

import pytest

from repairlib.faces import cli
from repairlib.markings import KIND_NAMES
from tests.faces.page.typed import typed_markings

pytestmark = pytest.mark.behaviour

ASK_ALL = """async ([address, asked]) => {
  const {ask} = await import(address);
  const found = [];
  for (const [marking, part] of asked) {
    found.push((await ask({tool: 'document', marking, part})).document);
  }
  return found;
}"""


def command_line(marking: str, part: str) -> str:
    """What `python -m repairlib read MARKING --as PART --json` prints."""
    printed = io.StringIO()
    with redirect_stdout(printed):
        cli.main(["read", "--json", *(["--as", part] if part else []), *marking.split(" ")])
    return printed.getvalue().removesuffix("\n")


def test_documents_are_those_of_the_command_line(page, page_address):
    typed = [one for one in typed_markings() if not one.startswith("-")]
    assert len(typed) >= 1000
    parts = list(KIND_NAMES)
    asked = [(one, "") for one in typed]
    asked += [(one, parts[place % len(parts)]) for place, one in enumerate(typed)]
    page.goto(page_address)
    script = page.evaluate("document.querySelector('script[type=module]').src")
    found = page.evaluate(ASK_ALL, [script.replace("page.js", "reader.js"), asked])
    wrong = [
        (one, told, wanted)
        for one, told in zip(asked, found, strict=True)
        if told != (wanted := command_line(*one))
    ]
    assert not wrong, wrong[:3]
