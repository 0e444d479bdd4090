"""Answers as JSON: the same text from the command line and from the page."""

from __future__ import annotations

import json

from repairlib.core.errors import SPACES, RepairlibError


def json_text(document: object) -> str:
    r"""A document as JSON, indented; what cannot be seen is written out.

    >>> json_text({"marking": "16\u202eV"})
    '{\n  "marking": "16\\u202eV"\n}'
    """
    told = json.dumps(document, ensure_ascii=False, indent=2)
    kept = "\n" + SPACES
    return "".join(c if c.isprintable() or c in kept else json.dumps(c)[1:-1] for c in told)


def refusal(error: RepairlibError) -> str:
    """What is wrong with an input, as JSON; where it is several things, each of them."""
    each = {"each": [str(one) for one in error.each]} if error.each else {}
    return json_text({"error": str(error)} | each)
