"""A button that opens a file of the learner's own; its bytes go to one function."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import anywidget
import traitlets

from repairlib.core.plain_file import size_in_words

LISTS = ".csv,.tsv,.txt,text/*"
LARGEST = 8_000_000  # bytes; a list of a hundred thousand lines


class FileButton(anywidget.AnyWidget):
    """The button; `opened(name, content)` is called with each file that is opened.

    kinds: of the files that are offered, as a browser names them; "" for all. largest: bytes; of
    more the button says that it is too large, and `instead` what to do then. A file comes in
    pieces, and is opened when it is whole.

    >>> button = FileButton("Open a list", lambda name, content: print(name, content))
    >>> button.label, button.too_large
    ('Open a list', 'too large: more than 8 MB')
    """

    _esm = Path(__file__).with_name("file_button.js")
    _css = Path(__file__).with_name("own_board.css")
    label = traitlets.Unicode().tag(sync=True)
    kinds = traitlets.Unicode().tag(sync=True)
    largest = traitlets.Int().tag(sync=True)
    too_large = traitlets.Unicode().tag(sync=True)

    def __init__(
        self,
        label: str,
        opened: Callable[[str, bytes], None],
        kinds: str = LISTS,
        largest: int = LARGEST,
        instead: str = "",
    ):
        words = f"too large: more than {size_in_words(largest)}"
        if instead:
            words += f"; {instead}"
        super().__init__(label=label, kinds=kinds, largest=largest, too_large=words)
        self.opened = opened
        self._come = bytearray()
        self.on_msg(self._take)

    def _take(self, _button: object, said: dict, buffers: list) -> None:
        """Put the next piece to those that came; a first one begins anew."""
        piece, start = bytes(buffers[0]), said["start"]
        if start == 0:
            self._come = bytearray()
        if start != len(self._come) or start + len(piece) > self.largest:
            return
        self._come += piece
        if len(self._come) == said["size"]:
            content, self._come = bytes(self._come), bytearray()
            self.opened(str(said["name"]), content)
