"""Images of a memory chip: choose the files or type their paths, and see what they are.

A thin view: what is wrong with an image is decided in `repairlib.firmware`, what is said of it in
`repairlib.faces.shown.images`. Files are only read. One that is chosen in the browser is kept as a
file of the learner's, so that its path can stand in the field.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.core.html import told
from repairlib.core.plain_file import is_one_file, size_in_words
from repairlib.core.tables import demo_path
from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.faces.panels.file_button import FileButton
from repairlib.faces.panels.look import trouble, words
from repairlib.faces.shown.images import (
    back_html,
    chosen_of,
    image_html,
    keeps_html,
    reads_html,
    write_html,
)
from repairlib.firmware import (
    SECTOR,
    Image,
    Keep,
    check_image,
    keep_into,
    keep_list,
    read_any_image,
    read_size,
    sums_in_doubt,
)
from repairlib.learn.kept_images import keep_image

SIZE = Fields("8.5rem", "26rem")
LARGEST = 64 << 20  # bytes that a browser gives; a path may lead to more
ROLES = {
    "first": "First read",
    "second": "Second read",
    "intended": "Image to write",
    "twin": "A further twin",
    "back": "Read afterwards",
}
TOLD_IN = {"first": "answer", "second": "reads", "intended": "writing", "twin": "kept_back",
           "back": "after"}  # fmt: skip
SHOWN = ("answer", "reads", "kept_back", "writing", "after")
ERASES = [(size_in_words(size), size) for size in (SECTOR, 8 * SECTOR, 16 * SECTOR)]
BEGIN = (
    f"Choose files of up to {size_in_words(LARGEST)}, or type their paths. Files are only read: "
    "images as bytes, Intel HEX or S-records."
)
NOT_YET = "Do not erase or write yet"
EQUALLY_WRONG = "The two reads are equal and damaged: equally wrong is no copy"
WHY_NOT_YET = "There are no two equal reads of the old content. One read is no copy."
ONE_FILE = "One file, given twice"
NO_SECOND = "This is no second read. Read the chip again, into a file of another name."
NO_READ = "This is the image to write itself. Read the chip, into a file of another name."
KEPT = "It is kept on this computer, in your own folder, and its path stands in the field."


class ImageReader(FieldPanel):
    """The panel's parts: a field for each of ROLES, `chip`, `erase`, `numbers`; `buttons` by role.

    `answer` judges the first read, `reads` compares two, `kept_back` says what only this board has
    and the image to write would overwrite, `make` puts that into a new image, `writing` says what
    would change in the chip, `after` whether it then holds what was meant. `told` tells what became
    of a file.
    """

    def __init__(self, chip: str, kept: str, **paths: str):
        self._files: dict[str, tuple[object, Image]] = {}
        self._made: dict[str, tuple[tuple, Any]] = {}
        self._keeps: tuple[Keep, ...] = ()
        self.buttons = {role: self._button(role) for role in ROLES}
        self.make = widgets.Button(description="Make a new image with them")
        self.make.layout = widgets.Layout(width="auto", align_self="flex-start")
        self.told, self.choice = words(), widgets.VBox()
        fields: dict[str, widgets.DOMWidget] = {
            role: SIZE.text(label, paths.get(role, "")) for role, label in ROLES.items()
        }
        fields |= {
            "chip": SIZE.text("The chip holds", chip),
            "erase": SIZE.choice("It erases at once", ERASES, SECTOR),
            "numbers": SIZE.text("Keep, by number", ""),
        }
        fields["chip"].placeholder = "8 MiB or 64 Mbit, if known"
        fields["numbers"].placeholder = "blank: all but what is only possible"
        for name in (*ROLES, "chip", "numbers"):
            fields[name].continuous_update = False  # a path is looked at when it is whole
        super().__init__(fields, self._judge, SHOWN, kept=kept)
        self.answer.add_class("rl-beside")
        self.make.on_click(self._make)
        self._set_in_order()

    def _button(self, role: str) -> FileButton:
        button = FileButton(
            f"Choose: {ROLES[role].lower()}",
            lambda name, data: self._chosen(role, name, data),
            kinds="",
            largest=LARGEST,
            instead="type its path instead",
        )
        button.layout = widgets.Layout(width="26rem", max_width="100%", margin="0 0 8px 0")
        return button

    def _set_in_order(self) -> None:
        """Each button below the field that it fills, and what is kept beside its list."""
        form: list[widgets.Widget] = [self.children[0], words(f"<p>{BEGIN}</p>")]
        for role in ROLES:
            form += [self.fields[role], self.buttons[role]]
        form += [self.fields["chip"], self.fields["erase"], self.told, self.keeping.strip]
        self.choice.children = (self.fields["numbers"], self.make)
        self.choice.add_class("rl-below")
        first, second, kept_back, *others = (self.shown[name] for name in SHOWN)
        self.children = (*form, first, second, kept_back, self.choice, *others)

    def _chosen(self, role: str, name: str, data: bytes) -> None:
        """Keep a file that was chosen, and let its path stand in its field."""
        try:
            path = keep_image(name, data)
        except RepairlibError as problem:
            self.told.value = trouble(problem)
            return
        self.told.value = told("told later", f"{ROLES[role]}: {name}", [KEPT])
        self.fields[role].value = str(path)

    def _make(self, _button=None) -> None:
        """A new image: the one to write, with what is kept of the old content put in."""
        try:
            old, new = (
                self._image(role, self.fields[role].value) for role in ("first", "intended")
            )
            keeps = chosen_of(self._keeps, self.fields["numbers"].value)
            made = keep_into(new, old, keeps)
            path = keep_image(f"to-write-{Path(new.name).stem}.bin", made.data)
        except RepairlibError as problem:
            self.told.value = trouble(problem)
            return
        says = [KEPT, *(f"Put in: {one}." for one in keeps)]
        left = [one for one in self._keeps if one not in keeps]
        says += [f"Not put in, {new.name} has its own there: {one}." for one in left]
        says += sums_in_doubt(new, made, keeps)
        self.told.value = told("told later", f"Image to write: {path.name}", says)
        self.fields["intended"].value = str(path)

    def _judge(self, chip: str, erase: int, numbers: str, **typed: str) -> list[str]:
        said = dict.fromkeys(SHOWN, "")
        images: dict[str, Image] = {}

        def say(name: str, make: Callable[..., str], *given) -> None:
            try:
                said[name] += self._once(name, make, *given)
            except RepairlibError as problem:
                said[name] += trouble(problem)

        for role in ROLES:
            try:
                if typed[role].strip():
                    images[role] = self._image(role, typed[role])
            except RepairlibError as problem:
                said[TOLD_IN[role]] += trouble(problem)
        capacity = None
        try:
            capacity = read_size(chip) if chip.strip() else None
        except RepairlibError as problem:
            said["answer"] += trouble(problem)
        first, second, new, twin, back = (images.get(role) for role in ROLES)
        if first:
            say("answer", image_html, first, capacity)
        elif not typed["first"].strip():
            asks = "Choose the first read of the old content, or type its path."
            said["answer"] += told("unanswered", "No read yet", [asks])
        paths = {role: path_of(typed[role]) for role in images}
        one_file = bool(first and second) and is_one_file(paths["first"], paths["second"])
        if one_file:
            said["reads"] += told("wrong", ONE_FILE, [NO_SECOND])
        elif first and second:
            say("reads", reads_html, [first, second])
        self._keeps = ()
        if first and new:
            if first.size == new.size:
                twins = [twin] if twin else []
                self._keeps = self._once("keeps", keep_list, first, new, twins)
                say("kept_back", keeps_html, self._keeps, first, new)
            if one_file or second is None or second.data != first.data:
                said["writing"] += told("wrong", NOT_YET, [WHY_NOT_YET])
            elif damages := self._once("damage", check_image, first, capacity).damages:
                kinds = " and ".join(dict.fromkeys(one.kind for one in damages))
                said["writing"] += told("wrong", NOT_YET, [f"{EQUALLY_WRONG} ({kinds})."])
            if not one_file:
                say("writing", write_html, first, new, capacity, erase)
        if back and new and is_one_file(paths["back"], paths["intended"]):
            said["after"] += told("wrong", ONE_FILE, [NO_READ])
        elif back and new:
            say("after", back_html, new, back, first)
        elif back:
            asks = "Give the image that was to be written too."
            said["after"] += told("unanswered", "What should it hold?", [asks])
        self.choice.layout.display = "" if self._keeps else "none"
        return list(said.values())

    def _image(self, role: str, typed: str) -> Image:
        """The image at a path; read again only when the file has changed."""
        path = path_of(typed)
        try:
            seen = path.stat()
            stamp: object = (path, seen.st_mtime_ns, seen.st_size)
        except (OSError, ValueError):  # to read it says why
            stamp = None
        before = self._files.get(role)
        if stamp is None or before is None or before[0] != stamp:
            before = self._files[role] = (stamp, read_any_image(path))
        return before[1]

    def _once(self, name: str, make: Callable[..., Any], *given) -> Any:
        """What `make` gives, made anew only when something of what it is given is new."""
        before = self._made.get(name)
        if before is None or before[0] != given:
            before = self._made[name] = (given, make(*given))
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
    except (RuntimeError, ValueError, OSError):  # no such home, or no name of a file: to read says
        return Path(text)
    return path


def image_reader(
    first: str = "printer-read-first.bin",
    second: str = "",
    intended: str = "",
    twin: str = "",
    back: str = "",
    chip: str = "",
    kept: str = "image reader",
) -> ImageReader:
    """The panel, ready to be shown. All values are text, as typed; a bare name may be a demo file.

    >>> "64 KiB" in image_reader(kept="").answer.value
    True
    """
    paths = {"first": first, "second": second, "intended": intended, "twin": twin, "back": back}
    return ImageReader(chip, kept, **paths)
