"""A logged thermocouple file: times and one or more channels, with every oddity told.

Reads text tables from loggers (see log_columns) in °C or °F. An open sensor, a spike, a stuck
sensor, a gap and a jump are found by `sensor_faults` and told; a reading is left out only where
it cannot be a temperature. A regular file is read in one stroke; others row by row.
"""

from __future__ import annotations

import io
from pathlib import Path
from typing import NamedTuple

from repairlib.core.errors import RepairlibError, shown
from repairlib.core.typed.set_aside import BLANK, HEADING
from repairlib.core.typed.table import BLANKS, FRAMED, Table, with_plain_ends
from repairlib.core.typed.textfile import TextFile, as_text, read_text
from repairlib.core.wording import counted, sentence
from repairlib.heat.log_columns import (
    CELSIUS,
    FAHRENHEIT,
    Layout,
    clock_seconds,
    find_layout,
    number,
)
from repairlib.heat.profile import FEWEST, Doubt, Profile, check_rising, make_profile
from repairlib.heat.sensor_faults import check_channel

UNITS = (CELSIUS, FAHRENHEIT)
_HALF_DAY = 43200.0
_HEAD = 200_000  # characters in which the table begins
_LONE = 300.0  # °C; a log labelled °C that gets hotter was perhaps logged in °F


class Log(NamedTuple):
    """A log as read: seconds and channels in °C as arrays, NaN where a reading was left out.

    `notes` are sentences on everything odd; `doubts` says for each channel which stretches
    tell nothing.
    """

    name: str
    seconds: object
    channels: dict[str, object]
    doubts: dict[str, tuple[Doubt, ...]]
    notes: tuple[str, ...]

    def __repr__(self) -> str:
        span = f"{self.seconds[0]:g} to {self.seconds[-1]:g} s"
        head = f"{self.name}: {len(self.seconds)} readings, {span}, {', '.join(self.channels)}"
        return "\n".join([head, *(f"  {note}" for note in self.notes)])

    def profile(self, channel: str | None = None) -> Profile:
        """One channel as a profile; the first one when none is named.

        Raises RepairlibError for an unknown channel and for one with fewer than three readings.
        """
        import numpy as np

        channel = next(iter(self.channels)) if channel is None else channel
        if channel not in self.channels:
            raise RepairlibError(channel, "no such channel", ", ".join(self.channels))
        celsius = self.channels[channel]
        good = ~np.isnan(celsius)
        if int(good.sum()) < FEWEST:
            wrong = "the sensor was open or gave no temperature: too few readings are left"
            raise RepairlibError(channel, wrong, f"a channel with at least {FEWEST} readings")
        seconds = self.seconds if good.all() else self.seconds[good]
        celsius = celsius if good.all() else celsius[good]
        return make_profile(channel, seconds, celsius, self.doubts[channel])


def read_log(path, unit: str | None = None) -> Log:
    """The log in the file at `path`. `unit`, "°C" or "°F", is for a file that does not state one.

    Raises RepairlibError for a file that cannot be read or is no text, holds no table or fewer
    than three readings, has times that do not rise, or states no unit while none is given.
    """
    text = read_text(path)
    return _parsed(text, Path(path).name, unit, "" if text.note else path)


def parse_log(text: TextFile | str | bytes, name: str = "log", unit: str | None = None) -> Log:
    """The log in a text. See `read_log`.

    >>> parse_log("time (s),joint (°F)\\n0,77\\n60,212\\n120,302").channels["joint"].tolist()
    [25.0, 100.0, 150.0]
    """
    return _parsed(as_text(text, name), name, unit)


def _parsed(file: TextFile, name: str, unit: str | None, path="") -> Log:
    """The log in a text; `path` is its file when that is plain UTF-8, which is read faster."""
    if unit is not None and unit not in UNITS:
        raise RepairlibError(unit, "not a unit of a thermocouple log", ", ".join(UNITS))
    text = with_plain_ends(file.text.removeprefix("\ufeff"))
    if not text.strip():
        raise RepairlibError(name, "the log is empty", "a time and a temperature on each line")
    head = text[:_HEAD].split("\n")
    layout = find_layout(head, name)
    start = sum(len(line) + 1 for line in head[: layout.first])
    notes = [sentence(file.note)] if file.note else []
    notes += layout.notes
    table = _in_one_stroke(text, start, layout, path)
    if table is None:
        table = _row_by_row(text[start:], layout, name, notes)
    if len(table) < FEWEST:
        wrong = f"{len(table)} readings make no profile"
        raise RepairlibError(name, wrong, f"at least {FEWEST} readings")
    seconds = _seconds(table[:, 0], layout, name)
    celsius, told = _in_celsius(table[:, 1:], layout.unit, unit, name)
    return _checked(name, seconds, celsius, layout.names, notes + told)


def _in_one_stroke(text: str, start: int, layout: Layout, path):
    """The whole table at once; None when some row is not plain numbers as wide as the others."""
    import numpy as np

    if '"' in text or layout.separator == FRAMED:
        return None
    sign = None if layout.separator == BLANKS else layout.separator
    settings = {"delimiter": sign, "comments": None, "ndmin": 2}
    try:
        if path and layout.decimal == ".":  # numpy reads a file in large pieces
            table = np.loadtxt(path, skiprows=layout.first, encoding="utf-8", **settings)
        else:
            stream = io.StringIO(text if layout.decimal == "." else text.replace(",", "."))
            stream.seek(start)
            table = np.loadtxt(stream, **settings)
    except ValueError:
        return None
    return table if table.shape[1] == len(layout.names) + 1 else None


def _row_by_row(text: str, layout: Layout, name: str, notes: list[str]):
    """The table from lines that are not all alike; what is no row is left out and told."""
    import numpy as np

    width, rows, strange, days = len(layout.names) + 1, [], [], 0.0
    for row in Table(text.split("\n"), layout.separator).rows():
        if row.what in (BLANK, HEADING):
            continue
        fields = row.cells or [""]
        while len(fields) > width and not fields[-1]:
            fields.pop()
        time = number(fields[0], layout.decimal)
        if time is None:
            time = clock_seconds(fields[0])
            if time is not None:
                if rows and time + days < rows[-1][0] - _HALF_DAY:
                    days += 2 * _HALF_DAY
                time = (time + days) / layout.seconds_a_unit
        readings = [number(field, layout.decimal) for field in fields[1:]]
        if time is None or time != time or None in readings or len(fields) > width:
            strange.append(row.text)
            continue
        rows.append([time, *readings, *[float("nan")] * (width - len(fields))])
    if days:
        notes.append("The clock passed midnight.")
    if strange:
        count = counted(len(strange), "line")
        notes.append(f"{count} among the readings left out: {shown(strange[0].strip())}")
    if len(strange) > len(rows):
        wrong = "most lines are no readings"
        raise RepairlibError(name, wrong, "a time and the same number of readings on each line")
    return np.array(rows, dtype=float).reshape(-1, width)


def _seconds(column, layout: Layout, name: str):
    import numpy as np

    if not np.isfinite(column).all():
        row = int(np.argmax(~np.isfinite(column))) + 1
        raise RepairlibError(name, f"reading {row} has no time", "a time for each reading")
    seconds = column * layout.seconds_a_unit
    check_rising(name, seconds)
    return seconds - seconds[0] if seconds[0] > 2 * _HALF_DAY else seconds


def _in_celsius(readings, stated: str | None, given: str | None, name: str):
    import numpy as np

    told = []
    if stated and given and stated != given:
        wrong = f"the file says {stated}"
        raise RepairlibError(f"{name}, {given}", wrong, f"{stated}, or no unit")
    believable = readings[np.isfinite(readings) & (np.abs(readings) < 900)]
    top = float(believable.max()) if believable.size else float("nan")
    unit = stated or given
    if unit is None:
        wrong = "the log does not say whether it is in °C or °F"
        if believable.size:
            wrong += f": its {top:g} may be {top:g} °C or {(top - 32) / 1.8:.0f} °C"
        accepted = 'a heading such as "joint (°C)", or unit="°C" or unit="°F"'
        raise RepairlibError(name, wrong, accepted)
    if unit == FAHRENHEIT:
        told.append("Logged in °F: changed to °C.")
        return (readings - 32) / 1.8, told
    if top > _LONE:
        told.append(f"{top:g} °C is hot for a board: was it logged in °F?")
    return readings, told


def _checked(name, seconds, celsius, names, notes) -> Log:
    channels, doubts = {}, {}
    for place, channel in enumerate(names):
        cleaned, doubt, told = check_channel(channel, seconds, celsius[:, place])
        channels[channel], doubts[channel] = cleaned, doubt
        notes += told
    return Log(name, seconds, channels, doubts, tuple(notes))
