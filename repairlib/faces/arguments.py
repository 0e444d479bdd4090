"""The words of a command taken apart by hand: `argparse` alone would cost 6 ms at every start."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError


def take_options(
    arguments: list[str],
    known: tuple[str, ...],
    switches: tuple[str, ...] = ("--json",),
    repeated: dict[str, list[str]] | None = None,
) -> tuple[list[str], dict[str, str]]:
    """The plain words, and the options of `known` with the word behind each; switches have none.

    What stands behind an option of `repeated`, which may come again, is added to its list there.
    """
    words: list[str] = []
    options: dict[str, str] = {}
    rest = iter(arguments)
    for word in rest:
        name, equals, value = word.partition("=")
        if not word.startswith("--"):
            words.append(word)
        elif word in switches:
            options[word] = word
        elif name not in known or name in options:
            wrong = "given twice" if name in options else "not an option of this command"
            raise RepairlibError(word, wrong, " ".join((*known, *switches)))
        else:
            value = value if equals else next(rest, "")
            if not value:
                raise RepairlibError(word, "nothing stands behind it", f"{name} VALUE")
            if repeated is not None and name in repeated:
                repeated[name].append(value)
            else:
                options[name] = value
    return words, options
