"""The writing of a chip kept as text: its events, from which it stands again where it stood."""

from __future__ import annotations

import json
from dataclasses import asdict, replace
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.firmware.keep import Keep
from repairlib.firmware.write_plan import ERASED, WriteEvent, WriteState, begin_write, write_step

_LISTS = ("keeps", "answers")


def events_text(state: WriteState) -> str:
    """The events of a writing as text, for `write_again`.

    >>> events_text(begin_write(4096))
    '[]'
    """
    whole = [{**asdict(one), "path": str(one.path), "donor": str(one.donor),
              "keeps": [list(keep) for keep in one.keeps]} for one in state.events]  # fmt: skip
    return json.dumps([{name: one for name, one in each.items() if one} for each in whole])


def write_again(capacity: int, text: str) -> WriteState:
    """The state that these events lead to; every file is looked at again.

    Raises RepairlibError for a text that is none of `events_text`, and where an event may not go on
    now, since a file is gone or has changed.

    >>> write_again(4096, '[{"step": "supply", "volts": 3.3, "measured": 3.3}]').step
    'read'
    """
    state = begin_write(capacity)
    for event in _events(text):
        state = write_step(state, event)
    return state


def may_take_back(state: WriteState) -> bool:
    """Whether the last event can be taken back: there is one, and nothing was erased yet.

    >>> may_take_back(begin_write(4096))
    False
    """
    return bool(state.events) and ERASED not in [one.step for one in state.events]


def take_back(state: WriteState) -> WriteState:
    """The state before its last event. Raises RepairlibError once something was erased.

    >>> take_back(write_again(64, '[{"step": "supply", "volts": 3, "measured": 3}]')).step
    'supply'
    """
    if not may_take_back(state):
        raise RepairlibError("back", "what is erased cannot be taken back", "the step that is due")
    return write_again(state.capacity, events_text(replace(state, events=state.events[:-1])))


def _events(text: str) -> list[WriteEvent]:
    try:
        return [_event(each) for each in json.loads(text)]
    except (ValueError, TypeError, KeyError, AttributeError, RecursionError):
        wrong = "what was kept is no writing of a chip"
        raise RepairlibError(text, wrong, "a new one, from its first step") from None


def _event(kept: dict) -> WriteEvent:
    keeps = tuple(Keep(kind, tuple(where), *more) for kind, where, *more in kept.get("keeps", ()))
    plain = {name: one for name, one in kept.items() if name not in _LISTS}
    paths = {name: Path(plain[name]) for name in ("path", "donor") if name in plain}
    return WriteEvent(**{**plain, **paths}, keeps=keeps, answers=tuple(kept.get("answers", ())))
