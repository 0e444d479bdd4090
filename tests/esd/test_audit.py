"""The audit of a whole bench: every line gets its verdict, nothing typed is lost."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.core.tables import demo_path
from repairlib.esd.audit import audit_bench
from repairlib.esd.limits import EDITIONS, esd_limit, items


def verdicts(audit):
    return {row.item: row.verdict for row in audit.rows}


# Worked by hand: 36 MΩ fails below 35 MΩ; 5e8 Ω passes below 1e9 Ω and its walk of 120 V fails.
@pytest.mark.published(
    "ANSI/ESD S20.20-2007, Table 2, as printed by StaticWorx: 35 MΩ, 1e9 Ω and 100 V"
)
def test_a_person_who_fails_twice():
    audit = audit_bench("strap: 36 MΩ\nperson: 500 MΩ at 100 V, walk 120 V", "S20.20-2007")
    assert set(verdicts(audit).values()) == {"fail"}
    good = audit_bench("strap: 34 MΩ\nperson: 500 MΩ at 100 V, walk 99 V", "S20.20-2007")
    assert set(verdicts(good).values()) == {"pass"}


@pytest.mark.from_memory("S20.20-2014: strap below 35 MΩ, work surface below 1e9 Ω")
def test_a_bench_that_fails_twice():
    audit = audit_bench(
        "wrist strap: 36 MΩ\nperson: 500 MΩ at 100 V, walk 120 V\nmat: 40 MΩ at 100 V",
        "S20.20-2014",
    )
    assert verdicts(audit) == {
        "wrist strap": "fail",
        "person with shoes and floor": "fail",
        "work surface": "pass",
    }
    assert audit.verdict == "fail" and audit.missing == ()


@pytest.mark.published(
    "ESD Association forum, thread 133: below 3.5e7 Ω no walking test, dropped in 2014"
)
def test_the_edition_decides():
    text = "strap: 1 MΩ; mat: 40 MΩ; person: 20 MΩ"
    assert audit_bench(text, "S20.20-2007").verdict == "pass"
    assert audit_bench(text, "S20.20-2014").verdict == "cannot tell"


def test_what_is_missing_is_said():
    audit = audit_bench("floor: 20 MΩ")
    assert audit.missing == ("wrist strap", "work surface")
    assert audit.verdict == "cannot tell"
    assert "work surface: cannot tell, not measured" in str(audit)


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("felt mat: 3 MΩ", "nothing to audit by this name"),
        ("strap 1 MΩ", "no colon"),
        ("strap: 1 V", "where Ω is due"),
        ("mat: 3 MΩ at 10 V at 100 V", "twice"),
        ("floor: 3 MΩ walk 20 V", "no walking test"),
    ],
)
def test_a_line_that_cannot_be_read_is_kept_and_told(line, words):
    audit = audit_bench(f"{line}\nstrap: 1.02 MΩ # daily\n")
    bad, good = audit.rows
    assert bad.typed == line and bad.verdict == "cannot tell" and words in bad.reason
    assert good.verdict == "pass"


def test_bad_input():
    for text in ("", " # only a remark", None, "x" * 10_001):
        with pytest.raises(RepairlibError):
            audit_bench(text)
    with pytest.raises(RepairlibError, match="not an edition"):
        audit_bench("strap: 1M", "S20.20-1999")


def test_the_demo_bench():
    audit = audit_bench(demo_path("bench-audit.txt").read_text(encoding="utf-8"), "S20.20-2021")
    assert [row.verdict for row in audit.rows] == [
        "pass",
        "fail",
        "cannot tell",
        "cannot tell",
        "pass",
        "fail",
        "pass",
    ]


@given(st.text(max_size=80), st.sampled_from(EDITIONS))
def test_any_text_gets_an_audit_or_one_clear_line(text, edition):
    try:
        audit = audit_bench(text, edition)
    except RepairlibError as error:
        assert "\n" not in str(error)
    else:
        assert all(row.verdict in ("pass", "fail", "cannot tell") for row in audit.rows)


@given(
    st.sampled_from(items()),
    st.floats(1e-3, 1e13),
    st.sampled_from(EDITIONS),
    st.floats(0, 100),
)
def test_more_uncertainty_never_turns_a_fail_into_a_pass(item, value, edition, percent):
    from repairlib.esd.limits import limit_row

    row = limit_row(item, edition)
    reading = f"{value:.6g} {row['unit'] if row else 'Ω'}"
    walk = {"walk": "20 V"} if item.startswith("person") else {}
    exact = esd_limit(item, reading, edition, uncertainty=0, **walk).verdict
    rough = esd_limit(item, reading, edition, uncertainty=percent, **walk).verdict
    assert rough in (exact, "cannot tell")
