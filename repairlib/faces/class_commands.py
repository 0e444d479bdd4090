"""What an instructor does with a group: `python -m repairlib class VERB ...`.

Each verb is one function in a file of `class_verbs/`, which takes the plain words, the options and
whether JSON is asked for, and returns the text to print.
"""

from __future__ import annotations

from importlib import import_module
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.faces.arguments import take_options


class Verb(NamedTuple):
    """One verb: how it is written, in which file and function it is done, and its options.

    `says` is what its help says besides.
    """

    usage: str
    done_by: str
    options: tuple[str, ...] = ()
    switches: tuple[str, ...] = ()
    says: str = ""


TYPING_IN = """One line for each sheet: the member's word, the number of the lesson, the answers in
the order of the questions, with | between them. Options and steps by their letters on that sheet,
the cells of a table row by row with commas. An empty place or - is not answered.
    kite 03: b | 100 nF | c a b | 16, 25, a
    kite + moss 04: a | - | b            (two who answered together)
A line that was read out ends in = and its two check signs. A later line replaces an earlier
one."""
NAMING = """NAMES is a text file, or - for what is typed or piped in. A second time in the same
FOLDER adds who is new and the lessons named, and changes nobody's word or questions; --leave-out
takes out who is no longer in the list. Use one folder for all evenings: permits come from it."""
HOLDING = """A lesson that is held saves answers and does not say what is right or wrong until it is
released, to all at once. What is dangerous it says at once. It is practice and no examination:
who can program can find the answers on the learner's computer."""
VERBS: dict[str, Verb] = {
    "new": Verb(
        "new NAMES --out FOLDER [--called GROUP] [--lessons one-evening|all|00,03,...] "
        "[--leave-out] [--no-paper]",
        "new:make_group",
        ("--out", "--called", "--lessons"),
        ("--leave-out", "--no-paper"),
        NAMING,
    ),
    "forget": Verb(
        "forget WHO [--for-good] | WHO --from FOLDER",
        "forget:forget_person",
        ("--from",),
        ("--for-good",),
    ),
    "clear": Verb("clear [--for-good]", "forget:clear_group", switches=("--for-good",)),
    "check": Verb(
        "check OWN.txt ... | --example | --example-table",
        "own:check",
        switches=("--example", "--example-table"),
    ),
    "add": Verb("add FOLDER OWN.txt ...", "own:add"),
    "collect": Verb(
        "collect FOLDER [PLACE ...] [--anew LESSON:QUESTION] [--every SECONDS] [--json]",
        "collect:collect_marks",
        ("--anew", "--every"),
    ),
    "type-in": Verb("type-in FOLDER LINES.txt [--json]", "type_in:type_in_lines", says=TYPING_IN),
    "screens": Verb("screens LESSON --out FILE.html", "screens:show_on_screens", ("--out",)),
    "hold": Verb("hold FOLDER LESSON", "hold:hold", says=HOLDING),
    "release": Verb("release FOLDER LESSON", "hold:release", says=HOLDING),
    "paper": Verb(
        "paper FOLDER [--letter] [--list PARTS.csv]", "paper:paper", ("--list",), ("--letter",)
    ),
    "sign": Verb("sign FOLDER WORD --by NAME", "paper:sign", ("--by",)),
    "hub": Verb(
        "hub FOLDER --out PLACE --instructor NAME [--make-users | --remove-users] [--port N]\n"
        "                    [--memory MB] [--proxy COMMAND] [--containers IMAGE]",
        "hub:hub",
        ("--out", "--instructor", "--port", "--memory", "--proxy", "--containers"),
        ("--make-users", "--remove-users"),
    ),
    "stick": Verb(
        "stick FOLDER --to PLACE [--also-for 3.12,win_amd64] [--no-page]",
        "stick:stick",
        ("--to", "--also-for"),
        ("--no-page",),
    ),
}
HELP = ("-h", "--help", "help")


def run_class(arguments: list[str], as_json: bool) -> str:
    """The text to print for the words behind `class`. Raises RepairlibError for bad input."""
    verb, *rest = arguments or [""]
    if verb in HELP:
        return usages()
    if verb not in VERBS:
        raise RepairlibError(verb, "no verb of class", ", ".join(VERBS))
    if any(word in HELP for word in rest):
        return f"python -m repairlib class {VERBS[verb].usage}\n{VERBS[verb].says}".rstrip()
    chosen = VERBS[verb]
    words, options = take_options(rest, chosen.options, chosen.switches)
    name, _, function = chosen.done_by.partition(":")
    module = import_module(f"repairlib.faces.class_verbs.{name}")
    return getattr(module, function)(words, options, as_json)


def usages() -> str:
    """How each verb is written."""
    return "\n".join(f"python -m repairlib class {one.usage}" for one in VERBS.values())
