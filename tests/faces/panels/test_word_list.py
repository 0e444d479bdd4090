"""The list of words as a panel, and as a page to print."""

from base64 import b64decode

import ipywidgets as widgets
import pytest

from repairlib.faces.panels import words_view
from repairlib.faces.panels.word_list import words_page
from repairlib.learn.words import all_words

pytestmark = pytest.mark.behaviour


def test_a_word_is_explained_while_it_is_typed():
    panel = words_view()
    panel.word.value = "ri"
    assert "ripple" in panel.answer.value
    panel.word.value = "<b>"
    assert "not in the list of words" in panel.answer.value and "<b>&" not in panel.answer.value
    assert panel.word.value == "<b>"


def shown():
    return [one for one in words_view().children if isinstance(one, widgets.HTML)]


def test_all_words_can_be_saved_as_a_page():
    (link,) = (one.value for one in shown() if "download=" in one.value)
    saved = b64decode(link.partition("base64,")[2].partition('"')[0]).decode()
    assert saved == words_page()
    assert all(f"<b>{', '.join(word.names)}</b>" in saved for word in all_words())
