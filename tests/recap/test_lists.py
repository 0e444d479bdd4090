"""Twenty invented lists of several decades, languages and layouts, worked by hand.

Beside each list in `lists/` stands what a technician makes of each of its lines: the number of the
line, the outcome, the places, and the part to fit. `look` is a part to fit with something to look
at first. How such lists are written is common practice of the trade.
"""

from pathlib import Path

import pytest

from repairlib.recap import plan_file

LISTS = sorted(
    path for path in (Path(__file__).parent / "lists").iterdir() if path.suffix != ".expected"
)


def outcomes(made):
    """Line number: what it became, in the words of the tables beside the lists."""
    found = {line.line: [line.what] for line in made.list.set_aside}
    for line in made.list.set_aside:
        if line.what == "not fitted":
            found[line.line] += line.why.split(", ")
    places = {}
    for item in made.all_items:
        verdict = "look" if item.new and item.looks else item.verdict
        new = str(item.new or "").replace("\xa0", " ").replace("105 °C ", "")
        what = verdict, new.removesuffix(" aluminium")
        places.setdefault(item.line, {}).setdefault(what, []).append(item.reference)
    for line, said in places.items():
        assert len(said) == 1, "the parts of a line have one outcome"
        for (verdict, new), names in said.items():
            found[line] = [verdict, *names, *new.split()]
    return {line: " ".join(words) for line, words in found.items()}


@pytest.mark.common_practice
@pytest.mark.parametrize("path", LISTS, ids=lambda path: path.stem)
def test_every_line_has_the_outcome_worked_by_hand(path):
    expected = {}
    for row in path.with_suffix(".expected").read_text(encoding="utf-8").splitlines():
        line, _, outcome = row.strip().partition("  ")
        expected[int(line)] = outcome
    found = outcomes(plan_file(path))
    assert {n: found.get(n) for n in expected} == expected
    assert sorted(found) == sorted(expected)


def test_there_are_twenty_lists():
    assert len(LISTS) == 20
