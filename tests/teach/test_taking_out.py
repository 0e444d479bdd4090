"""A member is taken out of the instructor's folder, and nobody else is moved."""

import csv
import gzip
import json
import zipfile
from io import StringIO

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.faces.cli import main
from repairlib.learn import open_exercise, set_learner
from repairlib.learn.group import Group, Member, read_group
from repairlib.learn.hand_in import hand_in, read_hand_in
from repairlib.teach import taking_out
from repairlib.teach.taking_out import take_out

pytestmark = pytest.mark.behaviour

LESSON = "00-start-here"
ADA, BEN, CLEO = (
    Member(name, word)
    for name, word in (("Ada Éxample", "wasp"), ("Ben Example", "beam"), ("Cleo", "cube"))
)
GROUP = Group("Tuesday bench", (ADA, BEN, CLEO), (LESSON,))


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """The folder of a group of three, of whom each has handed in, twice in an archive."""
    monkeypatch.setenv("REPAIRLIB_HOME", str(tmp_path / "home"))
    folder = tmp_path / "tuesday"
    for place in ("handed-in", "marks", "paper"):
        (folder / place).mkdir(parents=True)
    write(folder / "group.json", {"format": 1, **GROUP.to_dict()})
    signed = [{"word": one.word, "by": "Ada Éxample", "on": "today"} for one in GROUP.members]
    held = {"release_words": {LESSON: "wasp"}}  # by chance the same as a member's
    write(folder / "instructor.json", {"format": 1, "group": GROUP.name, "signed": signed, **held})
    handed = {}
    for one, partner in ((ADA, ""), (BEN, ADA.name), (CLEO, "")):
        set_learner(one.name, GROUP.name, partner)
        open_exercise(LESSON).answer(q8="a")
        learner = set_learner(one.name, GROUP.name, partner)
        handed[one.word] = hand_in(learner)
        (folder / "handed-in" / handed[one.word].name).write_bytes(handed[one.word].data)
    with zipfile.ZipFile(folder / "handed-in" / "all.zip", "w") as archive:
        for one in handed.values():
            archive.writestr(one.name, one.data)
    marks = [[one.word, LESSON, "q8", "right", 1] for one in GROUP.members]
    moved = [[7, "wasp", ADA.name, LESSON, "q8"], [7, "beam", BEN.name, LESSON, "q8"]]
    write(folder / "marks" / "marks.json", {"format": 1, "marks": marks, "moved": moved})
    rows = [("word", "name", "together with")]
    rows += [("wasp", ADA.name, ""), ("beam", BEN.name, ADA.name), ("cube", "Cleo", "")]
    text = StringIO()
    csv.writer(text).writerows(rows)
    (folder / "marks" / "marks.csv").write_text(text.getvalue(), "utf-8-sig")
    for name in ("marks/room.html", "paper/key.html", "paper/ada.html"):
        (folder / name).write_text(f"<p>{ADA.name}</p>", "utf-8")
    (folder / "paper" / "key.pdf").write_bytes(b"%PDF")
    (folder / "paper" / "sheet-wasp.pdf").write_bytes(b"%PDF")
    (folder / "paper" / "sheet-beam.html").write_text(f"<p>{BEN.name}</p>")
    return folder


def write(path, content):
    path.write_text(json.dumps(content))


def naming(folder):
    """The files in which the name stands, also inside an archive, as JSON writes it too."""
    written = (ADA.name.encode(), json.dumps(ADA.name).strip('"').encode())
    texts = {str(path): path.read_bytes() for path in folder.rglob("*") if path.is_file()}
    with zipfile.ZipFile(folder / "handed-in" / "all.zip") as archive:
        texts |= {name: archive.read(name) for name in archive.namelist()}
    return [path for path, data in texts.items() if any(one in data for one in written)]


def test_no_file_of_the_folder_names_them_afterwards(folder):
    taken = take_out(folder, "wasp")
    assert naming(folder) == [] and taken.member == ADA
    assert taken.handed_in == 2 and not taken.left
    assert set(taken.removed) == {
        "marks/room.html",
        "paper/ada.html",
        "paper/key.html",
        "paper/key.pdf",
        "paper/sheet-wasp.pdf",
    }
    assert len(taken.shared) == 2  # Ben's file, and the same in the archive
    assert read_group(folder / "group.json").members == (BEN, CLEO)


def test_what_belongs_to_others_stays(folder):
    before = {path.name: path.read_bytes() for path in (folder / "handed-in").iterdir()}
    take_out(folder, ADA.name)
    handed = {path.name: path.read_bytes() for path in (folder / "handed-in").iterdir()}
    (cleo,) = (name for name in handed if "cleo" in name)
    assert handed[cleo] == before[cleo]
    (ben,) = (name for name in handed if "ben" in name)
    then, now = read_hand_in(before[ben]), read_hand_in(handed[ben])
    assert not now["changed"] and now["partner"] == "" and then["partner"] == ADA.name
    assert then["lessons"][LESSON]["answers"] == now["lessons"][LESSON]["answers"]
    assert (folder / "paper" / "sheet-beam.html").exists()
    marks = json.loads((folder / "marks" / "marks.json").read_text())
    assert [one[0] for one in marks["marks"]] == ["beam", "cube"]
    assert [one[1] for one in marks["moved"]] == ["beam"]
    rows = list(csv.reader((folder / "marks" / "marks.csv").read_text("utf-8-sig").splitlines()))
    assert rows[1:] == [["beam", "Ben Example", ""], ["cube", "Cleo", ""]]
    keep = json.loads((folder / "instructor.json").read_text())
    assert [one["word"] for one in keep["signed"]] == ["beam", "cube"]
    assert keep["release_words"] == {LESSON: "wasp"} and keep["group"] == GROUP.name


def test_what_cannot_be_looked_into_is_named(folder):
    (folder / "handed-in" / "note.txt").write_text("From ada éxample, with thanks", "utf-8")
    (folder / "handed-in" / "broken.zip").write_bytes(b"PK\x03\x04 broken")
    with zipfile.ZipFile(folder / "handed-in" / "nested.zip", "w") as archive:
        archive.write(folder / "handed-in" / "all.zip", "all.zip")
    left = take_out(folder, "wasp").left
    assert len(left) == 4 and "note.txt" in left[3]
    assert all("nested.zip > all.zip > handed-in-" in one for one in left[1:3])


def test_an_archive_with_a_member_that_cannot_be_read_stays_and_is_named(folder):
    path = folder / "handed-in" / "all.zip"
    data = bytearray(path.read_bytes())
    with zipfile.ZipFile(path) as archive:
        (cleo,) = (one for one in archive.infolist() if "cleo" in one.filename)
    data[cleo.header_offset + 100] ^= 0xFF
    path.write_bytes(data)
    left = take_out(folder, "wasp").left
    assert path.read_bytes() == data
    assert "this member of the archive is damaged" in left[0]
    assert left[1].startswith(f"{path} (theirs is in it") and len(left) == 2


def test_their_file_in_another_kind_of_archive_is_named(folder):
    (own,) = (folder / "handed-in").glob("*-ada-*")
    (folder / "handed-in" / "ada.gz").write_bytes(gzip.compress(own.read_bytes()))
    (left,) = take_out(folder, "wasp").left
    assert "ada.gz" in left and "gzip" in left


@pytest.mark.parametrize("place", ["instructor.json", "marks/marks.json"])
def test_a_damaged_file_of_the_instructor_is_named(folder, place):
    (folder / place).write_text(f'{{"by": "{ADA.name}"', "utf-8")
    (left,) = take_out(folder, "wasp").left
    assert left == f"{folder / place} (damaged)"


@pytest.mark.parametrize("way", [{"encoding": "cp1252"}, {"separator": ";"}])
def test_a_list_of_marks_that_a_spreadsheet_has_saved_is_made_anew(folder, way):
    path = folder / "marks" / "marks.csv"
    text = path.read_text("utf-8-sig").replace(",", way.get("separator", ","))
    path.write_text(text, way.get("encoding", "utf-8"))
    assert "marks/marks.csv" in take_out(folder, "wasp").removed
    assert not path.exists()


def test_what_was_kept_aside_and_the_account_of_files_go(folder):
    write(folder / "marks" / "files.json", {"files": [{"owner": ADA.name}]})
    (folder / "marks" / "marks.kept-1.json").write_text('[["wasp"', "utf-8")
    write(folder / "group.kept-1.json", {"members": [ADA.name]})
    (folder / "marks" / "marks.kept-2.json").write_text('[["beam"', "utf-8")
    removed = set(take_out(folder, "wasp").removed)
    assert {"marks/files.json", "marks/marks.kept-1.json", "group.kept-1.json"} <= removed
    assert naming(folder) == [] and (folder / "marks" / "marks.kept-2.json").exists()


def test_what_was_refused_can_be_done_again(folder, monkeypatch):
    """Whichever file is barred: the group still has them, so the command can be run again."""
    with monkeypatch.context() as barred:
        barred.setattr(taking_out, "_removed", refuse)
        with pytest.raises(RepairlibError, match="barred"):
            take_out(folder, "wasp")
    assert ADA in read_group(folder / "group.json").members
    take_out(folder, "wasp")
    assert naming(folder) == [] and ADA not in read_group(folder / "group.json").members


def refuse(page, folder):
    raise RepairlibError(page, "barred", "another day")


def test_a_mistyped_folder_is_not_made(tmp_path):
    with pytest.raises(RepairlibError, match="there is no such file"):
        take_out(tmp_path / "mistyped", "wasp")
    assert not (tmp_path / "mistyped").exists()


def test_nobody_is_not_guessed_at(folder):
    with pytest.raises(RepairlibError, match=r"Accepted: wasp \(Ada Éxample\)"):
        take_out(folder, "wesp")
    with pytest.raises(RepairlibError, match="there is no such file"):
        take_out(folder / "paper", "wasp")


def test_the_command_says_what_went(folder, capsys):
    assert main(["class", "forget", "wasp", "--from", str(folder)]) == 0
    said = capsys.readouterr().out
    assert "Ada Éxample (wasp) is taken out of the group." in said
    assert "Removed: 2 files that were handed in." in said and "marks/room.html" in said
    assert main(["class", "forget", "beam", "--from", str(folder), "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["member"]["word"] == "beam"
    assert main(["class", "forget", "cube", "--from", str(folder), "--for-good"]) == 2
    assert "with --from" in capsys.readouterr().err
    assert read_group(folder / "group.json").members == (CLEO,)
