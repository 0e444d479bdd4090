"""The command line: a quick check in as little time as Python takes to start, and the verbs.

Exit status 0 on an answer; 2 and one line on bad input. Arguments are taken apart by hand here and
everything else is imported by the verb that needs it, because the quick check must be quick.
"""

from __future__ import annotations

import sys

from repairlib.core.errors import RepairlibError, escaped
from repairlib.faces.arguments import take_options

QUICK = """\
python -m repairlib MARKING                    quick check, such as: 104K   "220 16V"   4K7"""
USAGES = {
    "read": "python -m repairlib read MARKING [--as KIND] [--json]",
    "calc": """\
python -m repairlib calc                       the calculators by topic
python -m repairlib calc NAME key=value ... [--json]
python -m repairlib calc NAME --run            with its defaults alone, where each value has one""",
    "plan": """\
python -m repairlib plan PARTS.csv [--board BOARD.csv] [--measured READINGS.csv]
                    [--catalogue CATALOGUE.csv] [--boards N] [--out FOLDER] [--json]
python -m repairlib plan A.csv B.csv ...       each list one board, one order for all of them:
                    --measured and --board once for each list, in their order; none: without""",
    "image": "python -m repairlib image VERB ...             images of memory chips: image --help",
    "page": """\
python -m repairlib page --out FOLDER [--runtime FOLDER] [--json]
                    the quick check as a page for a phone: files for any web server or a stick
python -m repairlib page --card ADDRESS [MARKING ...] --out FILE.html
                    square codes to print, for the page at that address""",
    "lessons": """\
python -m repairlib lessons [--large] [--to FOLDER] [--ip ADDRESS] [--port N] [--base-url PREFIX]
python -m repairlib lessons [--instructor] [--group GROUP.json]
                    with the lesson for instructors; this computer knows the group from now on""",
    "class": "python -m repairlib class VERB ...             for instructors: class --help",
}
USAGE = "\n".join([QUICK, *USAGES.values(), "python -m repairlib --help | --version"])
HELP = ("-h", "--help")


def main(arguments: list[str] | None = None) -> int:
    """Run one command; the exit status. Bad input is one line, never a traceback."""
    arguments = sys.argv[1:] if arguments is None else list(arguments)
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")  # a terminal without Ω still gets its answer
    as_json = "--json" in arguments
    try:
        answer = _told_what_to_install([word for word in arguments if word != "--json"], as_json)
        return _print_all(answer)
    except RepairlibError as error:
        if as_json:
            _print_all(_refusal(error))
        else:
            for one in (*error.each, error):
                print(escaped(str(one)), file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        print("Stopped.", file=sys.stderr)
        return 130  # as every program that Ctrl-C ends


def _told_what_to_install(arguments: list[str], as_json: bool) -> str:
    """The text to print; a library that a bare install does not bring is named in one line."""
    try:
        return _run(arguments, as_json)
    except ModuleNotFoundError as missing:
        extra = {"numpy": "arrays", "bincopy": "firmware"}.get(missing.name or "", "lessons")
        wrong = "this needs it, and it is not installed"
        raise RepairlibError(missing.name, wrong, f'pip install "repairlib[{extra}]"') from None


def _print_all(answer: str) -> int:
    """Print the answer; the exit status. A reader that has seen enough, such as `head`, is fine."""
    try:
        print(escaped(answer, kept="\n\t"), flush=True)
    except OSError as error:
        import os

        # Python writes once more at its end; let that go nowhere.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        if not isinstance(error, BrokenPipeError):
            wrong = f"cannot be written ({error.strerror})"
            print(RepairlibError("the answer", wrong, "an output with room"), file=sys.stderr)
            return 2
    return 0


def _run(arguments: list[str], as_json: bool) -> str:
    """The text to print for these arguments."""
    if not arguments:
        raise RepairlibError(
            "", "no marking or command was given", "a marking such as 104K, --help"
        )
    verb, *rest = arguments
    if verb in (*HELP, "help"):
        return USAGE
    if verb == "class":
        from repairlib.faces.class_commands import run_class

        return run_class(rest, as_json)
    if any(word in HELP for word in rest):
        return _image_usage() if verb == "image" else USAGES.get(verb, USAGE)
    if verb == "--version":
        from repairlib import __version__

        return f"repairlib {__version__}"
    verbs = {"read": _read, "calc": _calc, "plan": _plan, "image": _image, "page": _page}
    verbs["lessons"] = _lessons
    if verb in verbs:
        return verbs[verb](rest, as_json)
    return _read(arguments, as_json)


def _read(arguments: list[str], as_json: bool) -> str:
    words, options = take_options(arguments, ("--as",))
    from repairlib.markings import read

    readings = read(" ".join(words), options.get("--as"))
    if as_json:
        return _json([reading.to_dict() for reading in readings])
    return "\n".join(_reading_lines(readings))


def _reading_lines(readings) -> list[str]:
    from repairlib.core.sources import source

    lines = []
    for place, reading in enumerate(readings, start=1):
        lines.append(f"{place}. {reading}" if len(readings) > 1 else str(reading))
        if reading.doubt:
            lines.append(f"   doubt: {reading.doubt}")
        lines += [f"   source: {source(key)}" for key in reading.sources]
    hazards = dict.fromkeys(key for one in readings for key in one.cautions)
    if hazards:
        from repairlib.faces.plain_text import caution_lines

        lines += caution_lines(hazards)
    return lines


def _calc(arguments: list[str], as_json: bool) -> str:
    from repairlib.core.calculators import all_calculators, calculator_named

    words, options = take_options(arguments, (), ("--json", "--run"))
    if not words:
        calculators = all_calculators()
        return _json(_listed(calculators)) if as_json else _list_by_topic(calculators)
    name, *pairs = words
    chosen = calculator_named(name)
    if not pairs and not as_json and "--run" not in options:
        alone = len(chosen.defaults) == len(chosen.parameters)
        return chosen.page() + f"\n  as it stands: calc {name} --run" * alone
    finding = chosen(**_take_pairs(pairs, chosen.usage()))
    if as_json:
        return _json(finding.to_dict())
    from repairlib.faces.plain_text import finding_text

    return finding_text(finding)


def _listed(calculators) -> list[dict]:
    return [
        {"name": one.name, "topic": one.topic, "title": one.title, "usage": one.usage()}
        for one in calculators.values()
    ]


def _list_by_topic(calculators) -> str:
    topics: dict[str, list[str]] = {}
    for one in calculators.values():
        topics.setdefault(one.topic, []).append(f"  {one.name:26} {one.title}")
    return "\n".join(line for topic, lines in topics.items() for line in (topic, *lines))


def _take_pairs(pairs: list[str], usage: str) -> dict[str, str]:
    """{'voltage': '16 V'} of ['voltage=16 V']."""
    taken: dict[str, str] = {}
    for pair in pairs:
        name, equals, value = pair.partition("=")
        if not equals or name in taken:
            wrong = "given twice" if name in taken else "not of the form key=value"
            raise RepairlibError(pair, wrong, usage)
        taken[name] = value
    return taken


def _plan(arguments: list[str], as_json: bool) -> str:
    from repairlib.show.sheets import report_boards, report_plan

    known = ("--board", "--measured", "--catalogue", "--boards", "--out")
    repeated: dict[str, list[str]] = {"--board": [], "--measured": []}
    words, options = take_options(arguments, known, repeated=repeated)
    if not words:
        raise RepairlibError("", "a parts list is due", "plan PARTS.csv")
    count = _whole_number(options.get("--boards", "1"))
    boards, measured = ([_or_none(one) for one in given] for given in repeated.values())
    shop, out = options.get("--catalogue"), options.get("--out")
    if len(words) == 1 and len(boards) < 2 and len(measured) < 2:
        board, readings = (boards or [None])[0], (measured or [None])[0]
        report = report_plan(words[0], out, board, readings, shop, count)
    elif "--boards" in options:
        wrong = "with several lists each is one board"
        raise RepairlibError(f"--boards {count}", wrong, "one list with --boards, or lists alone")
    else:
        report = report_boards(words, out, boards, measured, shop)
    return _json(report.to_dict()) if as_json else str(report)


def _or_none(name: str) -> str | None:
    """A file's name; None for the word that says that a list has none."""
    return None if name == "none" else name


def _image(arguments: list[str], as_json: bool) -> str:
    from repairlib.faces.image_command import run_image

    return run_image(arguments, as_json)


def _image_usage() -> str:
    from repairlib.faces.image_command import USAGE

    return USAGE


def _page(arguments: list[str], as_json: bool) -> str:
    known = ("--out", "--runtime", "--card")
    words, options = take_options(arguments + ["--json"] * as_json, known)
    if "--out" not in options:
        raise RepairlibError("page", "no place for it is given", "page --out FOLDER")
    if "--card" in options:
        if other := next((one for one in ("--runtime", "--json") if one in options), ""):
            raise RepairlibError(other, "not an option of a card", "--card ADDRESS --out FILE.html")
        from repairlib.faces.page import write_card

        return write_card(options["--card"], words, options["--out"])
    if words:
        raise RepairlibError(" ".join(words), "only options are due", USAGES["page"].split("\n")[0])
    from repairlib.faces.page import build_page

    built = build_page(options["--out"], options.get("--runtime"))
    return _json(built.to_dict()) if as_json else str(built)


def _lessons(arguments: list[str], as_json: bool) -> str:
    from repairlib.faces.lessons import open_lessons

    known = ("--to", "--ip", "--port", "--base-url", "--group")
    words, options = take_options(
        arguments + ["--json"] * as_json, known, ("--large", "--instructor")
    )
    if words:
        raise RepairlibError(" ".join(words), "only options are due", "lessons --to FOLDER")
    return open_lessons(**{name[2:].replace("-", "_"): value for name, value in options.items()})


def _whole_number(text: str) -> int:
    if not (text.isascii() and text.isdigit() and len(text) < 10):
        raise RepairlibError(text, "not a whole number", "--boards 12")
    return int(text)


def _json(document) -> str:
    from repairlib.faces.documents import json_text

    return json_text(document)


def _refusal(error: RepairlibError) -> str:
    from repairlib.faces.documents import refusal

    return refusal(error)
