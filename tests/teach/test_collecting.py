"""All that lies in a place is accounted for; good files are marked, bad ones listed with why."""

import hashlib
import io
import json
import os
import tracemalloc
import zipfile
from random import Random

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.learn import questions_of
from repairlib.learn.learner import member_of
from repairlib.learn.marking import mark
from repairlib.teach.collecting import ELSEWHERE, OLDER, collect, counts
from tests.teach.adversaries import KINDS, on_the_disk
from tests.teach.hand_ins import EVENING, as_file, content_of, group_of_size, hand_in_of

ALL = os.environ.get("CLASS") == "all"
LESSONS = ("00-start-here", "03-capacitor-markings")
GROUP = group_of_size(12, LESSONS)
ADA, BEN, *OTHERS = GROUP.members
BAD = 500 if ALL else 120


def content(member=ADA, seed=1, **how):
    return content_of(GROUP, member, Random(seed), LESSONS, **how)


def put(folder, **files):
    folder.mkdir(exist_ok=True)
    for name, data in files.items():
        (folder / f"{name}.json").write_bytes(data)
    return folder


def collected(*places, group=GROUP, cores=1):
    """The marks and the accounts of what lies there."""
    found = collect(group, places, cores)
    return list(found.marked), found.accounts


def outcomes(accounts):
    return {one.file.partition("/")[2]: one.outcome for one in accounts}


def everything_below(folder):
    """Each path with what it is and holds, to see that nothing was written."""
    found = {}
    for path in sorted(folder.rglob("*")):
        status = os.lstat(path)
        plain = path.is_file() and not path.is_symlink()
        held = hashlib.sha256(path.read_bytes()).hexdigest() if plain else ""
        found[str(path)] = (status.st_mode, status.st_size, status.st_mtime_ns, held)
    return found


def test_a_good_file_is_marked_as_its_answers_are(tmp_path):
    said = content()
    marked, accounts = collected(put(tmp_path / "in", ada=as_file(said)))
    assert outcomes(accounts) == {"ada.json": "counted"}
    assert [(one.word, one.lesson) for one in marked] == [(ADA.word, name) for name in LESSONS]
    for one in marked:
        questions = questions_of(one.lesson, member_of(GROUP, ADA))
        found = said["lessons"][one.lesson]
        anew = mark(questions, found["answers"], unsafe=found["unsafe"])
        assert one.sheet.to_dict()["lines"] == anew.to_dict()["lines"]
        assert {*one.stories} <= {*found["answers"]}
        assert any(story.tries > 1 for story in one.stories.values())


def test_a_claimed_score_gains_nothing(tmp_path):
    """States in the tries say right, points stand in the file, dangers are left out."""
    honest = content()
    claimed = json.loads(json.dumps(honest)) | {"points": 999, "marks": {"q1": 99}}
    for lesson, found in claimed["lessons"].items():
        found |= {"points": 99, "unsafe": []}
        for line in claimed["tries"][lesson]:
            line[3:] = ["right", []]
    one, _ = collected(put(tmp_path / "honest", ada=as_file(honest)))
    other, _ = collected(put(tmp_path / "claimed", ada=as_file(claimed)))
    assert one == other
    assert any(story.unsafe for sheet in other for story in sheet.stories.values())


def test_the_newest_file_counts_lesson_by_lesson(tmp_path):
    first, second = LESSONS
    old = content(seed=1)
    new = content(seed=2, at=EVENING + 1) | {"at": EVENING + 1}
    new["lessons"] = {first: new["lessons"][first]}
    new["tries"] = {first: new["tries"][first]}
    folder = put(tmp_path / "in", old=as_file(old), new=as_file(new))
    marked, accounts = collected(folder)
    assert {one.lesson: one.at for one in marked} == {first: EVENING + 1, second: EVENING}
    assert {one.file: one.why for one in accounts} == {
        "in/new.json": "",
        "in/old.json": f"for {second}; a newer file counts for the rest",
    }
    newest = content(seed=3, at=EVENING + 2)
    marked, accounts = collected(put(folder, newest=as_file(newest)))
    assert counts(accounts) == {"counted": 1, OLDER: 2}
    assert {one.at for one in marked} == {EVENING + 2}


def test_a_pair_counts_for_both_in_the_variant_of_the_one_who_is_named_first(tmp_path):
    said = content(partner=BEN.name)
    marked, accounts = collected(put(tmp_path / "in", pair=as_file(said)))
    assert outcomes(accounts) == {"pair.json": "counted"}
    assert [(one.name, one.partner) for one in marked] == [
        *[(ADA.name, BEN.name)] * 2,
        *[(BEN.name, ADA.name)] * 2,
    ]
    assert [str(one.sheet) for one in marked[:2]] == [str(one.sheet) for one in marked[2:]]
    alone = content(BEN, at=EVENING + 1)
    marked, accounts = collected(put(tmp_path / "in", ben=as_file(alone)))
    assert counts(accounts) == {"counted": 2}
    assert {one.name: one.at for one in marked} == {ADA.name: EVENING, BEN.name: EVENING + 1}


def test_an_unknown_member_is_listed_with_the_nearest(tmp_path):
    folder = put(tmp_path / "in", x=as_file(content() | {"name": "Sombody Nummber 11"}))
    marked, (account,) = collected(folder)
    assert not marked
    assert account.outcome == "unknown member"
    assert "nearest: word11 (Somebody Number 11)" in account.why


def test_nobody_hands_in_for_another_from_a_folder_of_their_own(tmp_path):
    """As on a server, where each member writes into a folder called by their word."""
    for holder in (ADA, BEN):
        (tmp_path / "in").mkdir(exist_ok=True)
        put(tmp_path / "in" / holder.word, x=as_file(content(ADA, seed=len(holder.word))))
    marked, accounts = collected(tmp_path / "in")
    said = outcomes(accounts)
    assert said == {f"{ADA.word}/x.json": "counted", f"{BEN.word}/x.json": ELSEWHERE}
    assert {one.word for one in marked} == {ADA.word}


def archived(data):
    """A zip with this file in a folder called by the word of the first member."""
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w") as archive:
        archive.writestr(f"{ADA.word}/x.json", data)
    return made.getvalue()


@pytest.mark.parametrize("inside", ["x.json", "more/x.json", f"{ADA.word}/x.json", "x.zip"])
def test_nobody_s_own_folder_is_a_way_to_hand_in_for_another(tmp_path, inside):
    """A server makes a folder for each; a member may make further ones and archives in theirs."""
    for member in GROUP.members:
        (tmp_path / "in" / member.word).mkdir(parents=True)
    path = tmp_path / "in" / BEN.word / inside
    path.parent.mkdir(exist_ok=True, parents=True)
    data = as_file(content(ADA))
    path.write_bytes(archived(data) if path.suffix == ".zip" else data)
    marked, (account,) = collected(tmp_path / "in")
    assert account.outcome == ELSEWHERE and not marked
    assert account.why == f"{ADA.name} in the folder of {BEN.name}"


def test_a_folder_that_happens_to_be_called_by_a_word_is_nobody_s(tmp_path):
    """Words are nouns, and a folder may be called "exam" or "desk"."""
    group = GROUP._replace(members=(ADA, BEN._replace(word="exam"), *OTHERS))
    for where in (tmp_path / "exam", tmp_path / "in" / "exam", tmp_path / "deep" / "a" / "exam"):
        where.mkdir(parents=True)
        put(where, **{one.word: as_file(content(one)) for one in (ADA, *OTHERS)})
    for place in ("exam", "in", "deep", f"exam/{ADA.word}.json"):
        marked, accounts = collected(tmp_path / place, group=group)
        assert {one.outcome for one in accounts} == {"counted"}
        assert len(marked) == len(LESSONS) * len(accounts)


@pytest.mark.parametrize("name", ["SOMEBODY  number 0", "word0"])
def test_a_member_is_known_by_name_or_word(tmp_path, name):
    marked, _ = collected(put(tmp_path / "in", x=as_file(content() | {"name": name})))
    assert {one.word for one in marked} == {ADA.word}


def test_an_archive_and_an_archive_in_it_are_read_like_a_folder(tmp_path):
    inner = tmp_path / "inner.zip"
    with zipfile.ZipFile(inner, "w", zipfile.ZIP_DEFLATED) as archive:
        for member in OTHERS[:3]:
            archive.writestr(f"some/{member.word}.json", as_file(content(member)))
    with zipfile.ZipFile(tmp_path / "all.zip", "w") as archive:
        archive.writestr("renamed.txt", as_file(content()))
        archive.write(inner, "theirs.zip")
        archive.writestr("notes.txt", "bring meters")
    marked, accounts = collected(tmp_path / "all.zip")
    assert {one.name for one in marked} == {ADA.name, *(one.name for one in OTHERS[:3])}
    assert [one.file for one in accounts if one.outcome == "no hand-in"] == ["all.zip > notes.txt"]
    assert accounts[1].file == "all.zip > theirs.zip > some/word2.json"


def test_a_place_that_is_not_there_is_one_line(tmp_path):
    with pytest.raises(RepairlibError, match="no such place"):
        collect(GROUP, [tmp_path / "nowhere"])


def bad_files(folder):
    """So many bad files, each in a folder of its own: where it lies, and what may come of it."""
    expected = {}
    kinds = list(KINDS.items())
    for turn in range(BAD):
        (name, (make, outcomes)), number = kinds[turn % len(kinds)], turn // len(kinds)
        member = OTHERS[turn % len(OTHERS)]
        for file, data in make(content(member), number).items():
            place = folder / f"{name} {number}"
            place.mkdir()
            (place / file).write_bytes(data)
            expected[place.name] = outcomes
    return expected


def test_every_bad_file_is_listed_and_every_good_one_counts(tmp_path, monkeypatch):
    """Hundreds of files of named kinds lie among good ones; nothing anywhere is written."""
    place = tmp_path / "in"
    put(place, **{f"good-{one.word}": as_file(content(one)) for one in GROUP.members})
    expected = bad_files(place)
    disk = on_the_disk(place)
    monkeypatch.chdir(tmp_path)
    before = everything_below(tmp_path)
    tracemalloc.start()
    marked, accounts = collected(place)
    peak = tracemalloc.get_traced_memory()[1] / 1e6
    tracemalloc.stop()
    assert everything_below(tmp_path) == before
    assert {(one.word, one.lesson) for one in marked} == {
        (one.word, lesson) for one in GROUP.members for lesson in LESSONS
    }
    found = outcomes(accounts)
    assert {name: found[name] for name in disk} == disk
    assert {found[f"good-{one.word}.json"] for one in GROUP.members} == {"counted"}
    came = {name: set() for name in expected}
    for one in accounts:
        folder = one.file.split("/")[1]
        if folder in expected:
            came[folder].add(one.outcome)
            assert one.why
            assert one.file.isprintable()
    wrong = {name: came[name] for name in expected if not came[name] or came[name] - expected[name]}
    assert not wrong
    assert peak < 60, f"{peak:.0f} MB"


def test_on_two_cores_the_same_comes_out_in_the_same_order(tmp_path, monkeypatch):
    monkeypatch.setattr("repairlib.teach.collecting.A_SIDE", 2)
    monkeypatch.setattr("repairlib.teach.collecting.AT_A_TIME", 2)
    place = put(
        tmp_path / "in",
        **{one.word: hand_in_of(GROUP, one, lessons=LESSONS) for one in GROUP.members},
    )
    one, told = collected(place, cores=1)
    two, told_too = collected(place, cores=2)
    assert one == two
    assert told == told_too


@pytest.mark.parametrize(
    "name", ["Zoë Exämple", "Ines “Uma” Example", 'Jo "Jot" \\ Example', "李 明"]
)
def test_a_partner_of_any_name_gets_the_marks_of_the_pair(tmp_path, name):
    """JSON writes such a letter with a backslash, in the middle of the name."""
    group = GROUP._replace(members=(ADA, BEN._replace(name=name)))
    said = content_of(group, ADA, Random(1), LESSONS, partner=name)
    marked, _ = collected(put(tmp_path / "in", pair=as_file(said)), group=group)
    assert [one.name for one in marked] == [ADA.name] * 2 + [name] * 2


def test_it_is_said_whose_file_counts_and_whether_it_is_newer(tmp_path):
    folder = put(tmp_path / "in", a=as_file(content(BEN, partner=ADA.name)), b=as_file(content()))
    _, accounts = collected(folder)
    why = f"a file of {BEN.name} of the same time was met first and counts"
    assert (accounts[1].outcome, accounts[1].why) == (OLDER, why)
    newer = content(BEN, at=EVENING + 1, partner=ADA.name)
    _, accounts = collected(put(folder, a=as_file(newer)))
    assert (accounts[1].outcome, accounts[1].why) == (OLDER, f"a newer file of {BEN.name} counts")
