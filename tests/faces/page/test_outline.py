"""The page's HTML: its words, its policy, its weight; no browser is needed for these."""

from __future__ import annotations

import gzip
import re
from html.parser import HTMLParser
from pathlib import Path

import pytest

from repairlib.core.html import text
from repairlib.core.series import E_SERIES
from repairlib.faces.page import outline as page
from repairlib.faces.page.outline import POLICY, language, outline
from repairlib.faces.shown.polarity import seen_on
from repairlib.markings import KIND_NAMES
from repairlib.polarity import ENDS, FITTED, NOTHING_ELSE, board_marks, families
from repairlib.show.bands import INKS

pytestmark = pytest.mark.behaviour

STATIC = Path(page.__file__).with_name("static")
ENGLISH = language("en")
SEEN = [mark for family in families() for mark in seen_on(family)]
NAMES = {*KIND_NAMES.values(), *INKS, *families(), *SEEN, *board_marks(), *ENDS, *FITTED}
NAMES.add(NOTHING_ELSE)
SPOKEN = ("aria-label", "title", "alt", "placeholder")
HEAVIEST = 25_000  # bytes, compressed


def bracketed(words: dict) -> dict:
    """A made-up language: each string in brackets, each name of the library too."""
    made = {key: f"⟦{said}⟧" for key, said in words.items() if isinstance(said, str)}
    later = {key: f"⟦{said}⟧" for key, said in words["later"].items()}
    names = {name: f"⟦{name}⟧" for name in NAMES}
    return made | {"lang": "xx", "later": later, "names": names}


class Page(HTMLParser):
    """The elements of a page, and all words on it that somebody sees or hears."""

    def __init__(self, html: str):
        super().__init__()
        self.elements: list[tuple[str, dict]] = []
        self.words: list[str] = []
        self.inside: list[str] = []
        self.feed(html)

    def handle_starttag(self, tag, attrs):
        self.elements.append((tag, dict(attrs)))
        self.words += [said for name, said in attrs if name in SPOKEN and said]
        if dict(attrs).get("name") == "description":
            self.words.append(dict(attrs)["content"])
        self.inside.append(tag)

    def handle_endtag(self, tag):
        while self.inside and self.inside.pop() != tag:
            pass

    def handle_data(self, data):
        if data.strip() and self.inside[-1:] != ["script"]:
            self.words.append(data.strip())

    def every(self, tag: str) -> list[dict]:
        return [attrs for name, attrs in self.elements if name == tag]


MADE = outline(ENGLISH, "v-1", [("de.html", "<Deutsch>")])
READ = Page(MADE)


def test_every_string_of_a_language_is_used():
    made = outline(bracketed(ENGLISH), "v-1", [("de.html", "Deutsch")])
    shown = [key for key, said in ENGLISH.items() if isinstance(said, str)]
    for key in set(shown) - {"lang", "name", "no script"}:
        assert f"⟦{text(ENGLISH[key])}⟧" in made, key
    scripts = "".join(file.read_text(encoding="utf-8") for file in STATIC.glob("*.js"))
    for key in ENGLISH["later"]:
        assert f"'{key}'" in scripts, key


def test_the_scripts_say_nothing_that_no_language_holds():
    ours = [file for file in STATIC.glob("*.js") if "words.js" in file.read_text(encoding="utf-8")]
    said = {key for file in ours for key in re.findall(r"say\('([^']+)'", file.read_text("utf-8"))}
    assert said and said <= set(ENGLISH["later"])


def test_a_page_in_another_language_has_no_word_of_this_one():
    words = Page(outline(bracketed(ENGLISH), "v-1", [])).words
    joined = re.sub(r"⟦[^⟧]*⟧", "", " ".join(words))
    left = joined.replace("python -m repairlib 104K", "").split()
    assert set(left) - {":", "⟦", "⟧"} <= set(E_SERIES)


def test_other_languages_are_named_only_if_there_are_any():
    assert "&lt;Deutsch&gt;" in MADE and 'href="de.html"' in MADE
    assert ENGLISH["languages"] not in outline(ENGLISH, "v-1", [])


def test_policy_is_first_and_allows_nothing_from_elsewhere():
    head = [element for element in READ.elements if element[0] not in ("html", "head")]
    assert head[0] == ("meta", {"http-equiv": "Content-Security-Policy", "content": POLICY})
    assert "default-src 'none'" in POLICY and "http" not in POLICY
    addresses = [one.get("src") or one.get("href") or "" for _, one in READ.elements]
    assert not [one for one in addresses if "//" in one and not one.startswith("data:image/svg")]


def test_no_script_and_no_style_stands_in_the_page():
    scripts = READ.every("script")
    assert [one.get("src") for one in scripts if one.get("type") == "module"] == ["v-1/page.js"]
    assert all(one["type"] in ("module", "application/json") for one in scripts)
    assert not READ.every("style")
    assert not [name for _, one in READ.elements for name in one if name.startswith("on")]


def test_data_cannot_end_its_own_block():
    words = ENGLISH | {"later": {"none": "</script><img src=x>"}}
    assert not [one for one in Page(outline(words, "1", [])).every("img") if one["src"] == "x"]


def test_pictures_have_words_beside_them_and_are_small():
    pictures = READ.every("img")
    assert len(pictures) == len(KIND_NAMES) + 1
    assert all(one["alt"] == "" for one in pictures)  # the name stands beside each
    drawn = "".join(one["src"] for one in pictures)
    assert len(gzip.compress(drawn.encode())) < 12_000


def test_every_control_has_a_label():
    labelled = {one.get("for") for one in READ.every("label")}
    fields = READ.every("textarea") + READ.every("select")
    fields += [one for one in READ.every("input") if one["type"] != "radio"]
    assert {one["id"] for one in fields} <= labelled
    assert all(one["type"] == "button" for one in READ.every("button"))


def test_what_a_label_or_description_points_at_is_there():
    ids = [one["id"] for _, one in READ.elements if "id" in one]
    assert len(ids) == len(set(ids))
    wanted = {one[name] for _, one in READ.elements for name in one if name in POINTS}
    assert wanted <= set(ids)


POINTS = ("for", "aria-labelledby", "aria-describedby")


def test_the_html_is_light():
    assert len(gzip.compress(MADE.encode())) < HEAVIEST
