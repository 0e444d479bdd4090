"""Images of a memory chip: choose the files or type their paths, and see what they are.

A thin view: what is wrong with an image is decided in `repairlib.firmware`, what is said of it in
`repairlib.faces.shown.images`. Files are only read. One that is chosen in the browser is kept as a
file of the learner's, so that its path can stand in the field.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.core.html import Html, told
from repairlib.core.plain_file import size_in_words
from repairlib.core.tables import demo_path
from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.faces.panels.file_button import FileButton
from repairlib.faces.panels.look import trouble, words
from repairlib.faces.shown.images import back_html, image_html, reads_html, write_html
from repairlib.firmware import SECTOR, Image, read_any_image, read_size
from repairlib.learn.kept_images import keep_image

SIZE = Fields("8.5rem", "26rem")
LARGEST = 64 << 20  # bytes that a browser gives; a path may lead to more
ROLES = {
    "first": "First read",
    "second": "Second read",
    "intended": "Image to write",
    "back": "Read after writing",
}
ERASES = [(size_in_words(size), size) for size in (SECTOR, 8 * SECTOR, 16 * SECTOR)]
BEGIN = (
    "Two reads of the old content come first. "
    f"Choose files of up to {size_in_words(LARGEST)}, or type paths; files are only read."
)
KEPT = "What you chose is kept on this computer, in your own folder."


class ImageReader(FieldPanel):
    """The panel's parts: a field for each of ROLES, `chip` and `erase`; `buttons` by role.

    `answer` judges the first read, `reads` compares two, `writing` says what the image to write
    would change, `after` whether the chip then holds it.
    """

    def __init__(self, chip: str, kept: str, **paths: str):
        self._read: dict[str, tuple[object, Image]] = {}
        self._made: dict[str, tuple[tuple, Html]] = {}
        self.buttons = {
            role: FileButton(
                f"Choose: {label.lower()}",
                lambda name, data, role=role: self._chosen(role, name, data),
                kinds="",
                largest=LARGEST,
                instead="type its path instead",
            )
            for role, label in ROLES.items()
        }
        fields: dict[str, widgets.DOMWidget] = {
            role: SIZE.text(label, paths.get(role, "")) for role, label in ROLES.items()
        }
        fields |= {
            "chip": SIZE.text("The chip holds", chip),
            "erase": SIZE.choice("It erases at once", ERASES, SECTOR),
        }
        fields["chip"].placeholder = "8 MiB or 64 Mbit, if known"
        for name in (*ROLES, "chip"):
            fields[name].continuous_update = False  # a path is looked at when it is whole
        row = widgets.HBox(
            list(self.buttons.values()), layout=widgets.Layout(flex_flow="row wrap", grid_gap="6px")
        )
        row.add_class("rl-below")
        self.told = words()
        shows = ("answer", "reads", "writing", "after")
        above = [words(f"<p>{BEGIN}</p>"), row, self.told]
        super().__init__(fields, self._judge, shows, above=above, beside=(), kept=kept)

    def _chosen(self, role: str, name: str, data: bytes) -> None:
        """Keep a file that was chosen, and let its path stand in its field."""
        try:
            path = keep_image(name, data)
        except RepairlibError as problem:
            self.told.value = trouble(problem)
            return
        self.told.value = told("told later", f"{ROLES[role]}: {name}", [KEPT])
        self.fields[role].value = str(path)

    def _judge(self, chip: str, erase: int, **typed: str) -> tuple[str, str, str, str]:
        images, troubles = {}, {}
        for role in ROLES:
            try:
                if typed[role].strip():
                    images[role] = self._image(role, typed[role])
            except RepairlibError as problem:
                troubles[role] = trouble(problem)
        capacity = None
        try:
            capacity = read_size(chip) if chip.strip() else None
        except RepairlibError as problem:
            troubles["first"] = trouble(problem) + troubles.get("first", "")
        first, second, new, back = (images.get(role) for role in ROLES)
        answer = told("unanswered", "No read yet", ["Choose the first read of the old content."])
        if first:
            answer = self._once("answer", image_html, first, capacity)
        elif "first" in troubles:
            answer = Html("")
        reads = writing = after = ""
        if first and second:
            reads = self._once("reads", reads_html, [first, second])
        if first and new:
            writing = self._once("writing", write_html, first, new, capacity, erase)
        if back and new:
            after = self._once("after", back_html, new, back, first)
        elif back:
            after = told("unanswered", "What should it hold?", ["Give the image to write too."])
        return (
            troubles.get("first", "") + answer,
            troubles.get("second", "") + reads,
            troubles.get("intended", "") + writing,
            troubles.get("back", "") + after,
        )

    def _image(self, role: str, typed: str) -> Image:
        """The image at a path; read again only when the file has changed."""
        path = path_of(typed)
        try:
            seen = path.stat()
            stamp: object = (path, seen.st_mtime_ns, seen.st_size)
        except (OSError, ValueError):
            stamp = None
        before = self._read.get(role)
        if stamp is None or before is None or before[0] != stamp:
            before = self._read[role] = (stamp, read_any_image(path))
        return before[1]

    def _once(self, name: str, make: Callable[..., Html], *given) -> Html:
        """What `make` gives, made anew only when something of it is new; troubles in its place."""
        before = self._made.get(name)
        if before is None or before[0] != given:
            try:
                made = make(*given)
            except RepairlibError as problem:
                made = trouble(problem)
            before = self._made[name] = (given, made)
        return before[1]


def path_of(typed: str) -> Path:
    """The path that was typed, also in quotation marks; a bare name may be a file of the demo.

    >>> path_of('"printer-sister.bin"') == demo_path("printer-sister.bin")
    True
    """
    text = typed.strip().strip("\"'")
    try:
        path = Path(text).expanduser()
        if path.name == text and not path.exists() and demo_path(text).is_file():
            return demo_path(text)
    except (RuntimeError, ValueError, OSError):
        return Path(text)
    return path


def image_reader(
    first: str = "printer-read-first.bin",
    second: str = "",
    intended: str = "",
    back: str = "",
    chip: str = "",
    kept: str = "image reader",
) -> ImageReader:
    """The panel, ready to be shown. All values are text, as typed; a bare name may be a demo file.

    >>> "64 KiB" in image_reader(kept="").answer.value
    True
    """
    return ImageReader(chip, kept, first=first, second=second, intended=intended, back=back)
