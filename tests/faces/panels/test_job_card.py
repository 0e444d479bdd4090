"""The job card: entries are added, told at their place when they cannot be, and never lost."""

from base64 import b64decode

import pytest

from repairlib.core.tables import demo_path
from repairlib.faces.panels import job_cards
from repairlib.faces.panels.following import turn_to
from repairlib.faces.panels.job_card import BEGIN
from repairlib.faces.panels.recap_plan import PlanView
from repairlib.learn import set_learner
from repairlib.record import FIELDS, read_card
from tests.record import cards

pytestmark = pytest.mark.behaviour


def write(panel, kind, **said):
    """Choose a kind, type, and press the button."""
    panel.kind.value = kind
    for name, value in said.items():
        panel.fields[kind, name].value = value
    panel.write.click()


def begun(plan=None, by="Ana"):
    """A panel on which a card was begun."""
    panel = job_cards(plan)
    panel.by.value = by
    write(panel, "job", set="desk radio", job="hum", date="2026-11-28")
    return panel


def path_of(panel):
    return panel.folder / panel.card.value


ONE_OF_EACH = cards.ONE_OF_EACH | {"note": {"text": "<b>bold</b>"}}


def test_a_card_is_begun_and_each_kind_of_entry_is_written():
    panel = begun()
    assert panel.card.value == "2026-11-28-hum.jsonl"
    for number, (kind, said) in enumerate(ONE_OF_EACH.items(), 2):
        write(panel, kind, **said)
        assert f"Entry {number} is written" in panel.said.value
    card = read_card(path_of(panel))
    assert [one.kind for one in card.entries] == ["job", *ONE_OF_EACH]
    assert all(dict(one.said) == ONE_OF_EACH[one.kind] for one in card.entries[1:])
    assert "Repaired, to be verified before it goes back" in panel.so_far.value
    assert "&lt;b&gt;bold" in panel.so_far.value and "<b>bold" not in panel.so_far.value
    assert set(ONE_OF_EACH) == set(FIELDS) - {"job"}


def test_without_a_date_it_is_today():
    from datetime import date

    panel = job_cards()
    panel.by.value = "Ana"
    write(panel, "job", set="lamp", job="flicker", date=" ")
    assert panel.card.value.startswith(date.today().isoformat())


@pytest.mark.parametrize(
    ("kind", "said", "wrong"),
    [
        ("hours", {"spent": "30 hours"}, "spent: not between nothing and 24 hours"),
        ("photo", {"file": "../board.jpg"}, "file: a path with folders in it"),
        ("finding", {"text": " "}, "text: nothing was typed"),
        ("reading", {"what": "C1", "reading": "lots"}, "lots"),
    ],
)
def test_what_cannot_be_written_is_told_and_stays(kind, said, wrong):
    panel = begun()
    before = path_of(panel).read_bytes()
    write(panel, kind, **said)
    assert "Not done" in panel.said.value and wrong in panel.said.value
    assert all(panel.fields[kind, name].value == value for name, value in said.items())
    assert path_of(panel).read_bytes() == before
    again = job_cards()
    assert all(again.fields[kind, name].value == value for name, value in said.items())


def test_nobody_writes_without_a_name():
    panel = job_cards()
    write(panel, "job", set="desk radio", job="hum")
    assert "nobody has signed yet" in panel.said.value
    assert panel.card.value == BEGIN and not panel.folder.exists()


def test_an_entry_is_corrected_by_one_in_its_place():
    panel = begun()
    write(panel, "hours", spent="15 min")
    panel.corrects.value = 2
    write(panel, "hours", spent="1 h 15 min")
    assert read_card(path_of(panel)).hours == 1.25
    assert "15 min (corrected by 3)" in panel.so_far.value
    assert [number for _, number in panel.corrects.options] == [0, 3]


def test_two_writers_lose_nothing():
    mine, yours = begun(), job_cards()
    yours.card.value = mine.card.value
    yours.by.value = "Ben"
    write(mine, "note", text="first")
    write(yours, "note", text="second")
    assert "first" in yours.so_far.value and "second" not in mine.so_far.value
    mine.again.click()
    assert "second" in mine.so_far.value
    assert [one.by for one in read_card(path_of(mine)).entries] == ["Ana", "Ana", "Ben"]


@pytest.mark.parametrize("line", [b'{"version": 1, "numb', b'{"version": 2, "number": 7}\n'])
def test_a_line_that_cannot_be_read_is_quoted_and_blocks_nothing(line):
    panel = begun()
    with open(path_of(panel), "ab") as file:
        file.write(line)
    panel.again.click()
    told = panel.so_far.value
    assert "Not all of it can be read" in told and "1 line could not be read" in told
    assert "&quot;version&quot;" in told and "desk radio" in told
    write(panel, "note", text="goes on")
    assert "is written" in panel.said.value
    assert line.strip() in path_of(panel).read_bytes()
    assert "goes on" in panel.so_far.value


def saved(panel):
    """What the link saves, byte for byte."""
    data = panel.files.value.partition("application/json;base64,")[2].partition('"')[0]
    return b64decode(data)


def test_a_card_is_saved_and_taken_in_elsewhere_beside_what_is_there():
    panel = begun()
    write(panel, "note", text="here")
    data, name = saved(panel), panel.card.value
    assert data == path_of(panel).read_bytes()
    assert "Job card: hum" in b64decode(
        panel.files.value.partition("text/html;base64,")[2].partition('"')[0]
    ).decode("utf-8")
    panel._open(name, data)
    assert list(panel.cards) == [name]
    write(panel, "note", text="later")
    panel._open(name, data)
    assert len(panel.cards) == 2
    assert "later" in (panel.folder / name).read_text("utf-8")
    assert (panel.folder / panel.card.value).read_bytes() == data


@pytest.mark.parametrize("content", [b"", b"C1,10/16", b"\xff\x00", b'{"version": 1, "nu'])
def test_a_file_that_is_no_card_is_refused(content):
    panel = begun()
    panel._open("list.jsonl", content)
    assert "nothing in it is an entry of a job card" in panel.said.value
    assert len(panel.cards) == 1


def test_the_plan_proposes_what_was_fitted_and_its_cautions_once():
    view = PlanView("C1,47/25,elect\nC2,10/16,elect\n", kept="")
    panel = begun(view)
    offered = [label for label, _ in panel.proposed.options]
    assert not any(label.startswith("C1") for label in offered)
    assert any(label.startswith("caution") for label in offered)
    view.route.done.click()
    panel.proposed.value = 1
    assert panel.kind.value == "part"
    assert "47\xa0µF 25\xa0V" in panel.fields["part", "new"].value
    panel.fields["part", "plus"].value = "left"
    panel.write.click()
    entry = read_card(path_of(panel)).last("part")
    assert (entry["reference"], entry["plus"]) == ("C1", "left")
    assert not any(label.startswith("C1") for label, _ in panel.proposed.options)


def test_a_caution_is_read_in_full_before_it_is_acknowledged():
    panel = begun()
    panel.kind.value = "caution"
    panel.fields["caution", "hazard"].value = "mains"
    assert "Pull the plug" in panel.caution.value
    panel.kind.value = "note"
    assert panel.caution.value == ""


def test_all_cards_are_summed_up():
    panel = begun()
    for path in sorted(demo_path("job-cards").glob("*.jsonl")):
        panel._open(path.name, path.read_bytes())
    assert "All jobs: 6" in panel.all_cards.value
    assert "3.08 h, 3 jobs" not in panel.all_cards.value  # a fourth one of that month is here
    assert "2.5 h, 1 job, 1 part" in panel.all_cards.value.replace("&nbsp;", " ")


def test_the_place_of_the_cards_is_told_and_follows_the_learner():
    panel = begun()
    assert str(panel.folder) in panel.where.value
    turn_to("Ada Example", "bench-7")
    assert panel.card.value == BEGIN and panel.cards == {}
    assert str(panel.folder) in panel.where.value and "ada-example" in str(panel.folder)
    turn_to("", "")
    assert list(panel.cards) == ["2026-11-28-hum.jsonl"]


def test_nothing_is_written_for_somebody_whose_turn_it_became_elsewhere():
    panel = job_cards()
    panel.by.value = "Ana"
    panel.fields["job", "set"].value = "desk radio"
    panel.fields["job", "job"].value = "hum"
    set_learner("Ada Example")  # as another kernel does: this page is not told
    panel.write.click()
    assert "it became the turn of Ada Example" in panel.said.value
    assert not panel.folder.exists()


def test_a_folder_that_cannot_be_read_is_one_line(home):
    (home / "jobs").mkdir(parents=True)
    (home / "jobs" / "demo").write_text("a file where the folder should be")
    panel = job_cards()
    assert "Not done" in panel.where.value
    panel.by.value = "Ana"
    write(panel, "job", set="desk radio", job="hum")
    assert "Not done" in panel.said.value
    assert panel.fields["job", "set"].value == "desk radio"


def test_a_card_that_is_gone_is_told(home):
    panel = begun()
    path_of(panel).unlink()
    write(panel, "note", text="still here")
    assert "Not done" in panel.said.value
    assert panel.fields["note", "text"].value == "still here"


def test_every_field_has_a_name():
    panel = job_cards()
    named = (panel.card, panel.by, panel.kind, panel.proposed, panel.corrects)
    assert all(one.description for one in (*named, *panel.fields.values()))
