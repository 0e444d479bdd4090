"""How the verbs of `class` are found and told."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.faces import class_commands
from repairlib.faces.class_commands import Verb, run_class


@pytest.mark.parametrize("verb", class_commands.VERBS)
def test_each_verb_is_done_by_a_function_and_says_how_it_is_written(verb):
    from importlib import import_module

    chosen = class_commands.VERBS[verb]
    name, _, function = chosen.done_by.partition(":")
    assert callable(getattr(import_module(f"repairlib.faces.class_verbs.{name}"), function))
    assert run_class([verb, "--help"], False).startswith(f"python -m repairlib class {verb} ")
    assert all(option in chosen.usage for option in (*chosen.options, *chosen.switches))


def test_an_unknown_verb_is_told_with_those_there_are(monkeypatch):
    monkeypatch.setattr(class_commands, "VERBS", {"new": Verb("new NAMES", "new:make_group")})
    with pytest.raises(RepairlibError, match="no verb of class"):
        run_class(["knew"], False)
    assert run_class(["--help"], False) == "python -m repairlib class new NAMES"
