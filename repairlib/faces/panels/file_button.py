"""A button that opens a file of the learner's own; its bytes go to one function."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import anywidget
import traitlets

LISTS = ".csv,.tsv,.txt,text/*"


class FileButton(anywidget.AnyWidget):
    """The button; `opened(name, content)` is called with each file that is opened.

    >>> button = FileButton("Open a list", lambda name, content: print(name, content))
    >>> button.label
    'Open a list'
    """

    _esm = Path(__file__).with_name("file_button.js")
    _css = Path(__file__).with_name("own_board.css")
    label = traitlets.Unicode().tag(sync=True)
    kinds = traitlets.Unicode().tag(sync=True)

    def __init__(self, label: str, opened: Callable[[str, bytes], None], kinds: str = LISTS):
        super().__init__(label=label, kinds=kinds)
        self.on_msg(lambda _, said, buffers: opened(str(said["name"]), bytes(buffers[0])))
