"""A whole table of measured capacitors judged in one call.

The rules are those of verdict.py, worked on arrays. `why` gives the reasons for one row in words.
numpy is loaded when a table is judged, not before.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from math import inf, nan, nextafter, pi

from repairlib.core.errors import RepairlibError
from repairlib.core.finding import Finding
from repairlib.health.capacitor_families import FILM, families
from repairlib.health.end_of_life import criteria_of, criterion
from repairlib.health.esr import STATED_HZ, loss_limit, loss_rows
from repairlib.health.leakage import ROOM_C, rules_of
from repairlib.health.verdict import CANNOT_TELL, FIT, MARGINAL, REPLACE, judge_capacitor

# Verdicts by code; of two readings the higher code decides.
VERDICTS = (FIT, MARGINAL, CANNOT_TELL, REPLACE)
_FIT, _MARGINAL, _CANNOT_TELL, _REPLACE = range(4)
_ROUNDING = 1e-9
_HIGHEST = 1000.0  # V
_BLOCK = 8192  # rows
_CELLS_A_VOLT, _CELLS = 20, 20_001
COLUMNS = ("capacitance", "rated_voltage", "measured", "esr", "leakage")


class Judgements:
    """The verdicts on a table. `codes` is an array of places in VERDICTS, one for each row."""

    def __init__(self, codes, families, columns, uncertainty, tolerance):
        self.codes = codes
        self._families = families
        self._columns = columns
        self._settings = {"uncertainty": uncertainty, "tolerance": tolerance}

    def __len__(self) -> int:
        return len(self.codes)

    def __repr__(self) -> str:
        return ", ".join(f"{number} {word}" for word, number in self.counts().items())

    def verdicts(self) -> list[str]:
        """The verdicts in words, one for each row."""
        return [VERDICTS[code] for code in self.codes.tolist()]

    def counts(self) -> dict[str, int]:
        """How many rows got each verdict."""
        return {word: int((self.codes == code).sum()) for code, word in enumerate(VERDICTS)}

    def why(self, row: int) -> Finding:
        """The finding on one row, counted from 0: its verdict with reasons and sources.

        Raises RepairlibError for a row that is not in the table, or whose marking is impossible.
        """
        if not 0 <= row < len(self):
            raise RepairlibError(row, "no such row", f"0 to {len(self) - 1}")
        name = tuple(families())[self._families[row]]
        values = {key: float(column[row]) for key, column in self._columns.items()}
        given = {key: value for key, value in values.items() if value == value}
        return judge_capacitor(name, **given, **self._settings)


def family_codes(names: Sequence[str]):
    """Family names as codes for `judge_table`: worth it when a table is judged more than once.

    Raises RepairlibError for a name that is no family.
    """
    import numpy as np

    places = {name: place for place, name in enumerate(families())}
    names = names.tolist() if hasattr(names, "tolist") else names  # of numpy or pandas
    try:
        # By way of bytes: the cheapest way from names to numbers, for fewer than 256 families.
        return np.frombuffer(bytes(map(places.__getitem__, names)), np.uint8)
    except (KeyError, TypeError) as error:
        accepted = ", ".join(places)
        wrong = "not a capacitor family known here"
        raise RepairlibError(error.args[0], wrong, accepted) from None


def judge_table(
    family, capacitance, rated_voltage, measured, esr, leakage, *, uncertainty=5.0, tolerance=20.0
) -> Judgements:
    """Judge many parts at once, by the usual criterion of each family, ESR read at 120 Hz.

    `family` is one name for all rows, a sequence of names, or the codes of `family_codes`. The
    others are arrays in farad, volts, farad, ohm and ampere; NaN where a value is missing or was
    not measured. `uncertainty` of the meter and `tolerance` of new parts are in per cent, 0 to 99.
    A row whose marking is missing or impossible, or whose ESR or capacitance is 0 or negative, is
    "cannot tell". Raises RepairlibError for columns of different lengths or that are no numbers.

    >>> from math import nan
    >>> table = judge_table("aluminium general 105", [1e-4, 1e-4], [25, 25], [98e-6, 90e-6],
    ...                     [0.9, 9.0], [nan, nan])
    >>> table.verdicts()
    ['fit', 'replace']
    """
    import numpy as np

    columns = dict(zip(COLUMNS, (capacitance, rated_voltage, measured, esr, leakage), strict=True))
    columns = {name: _numbers(name, column) for name, column in columns.items()}
    length = len(columns["capacitance"])
    codes = _codes(family, length)
    for name, column in columns.items():
        if len(column) != length or len(codes) != length:
            wrong = f"the column {name} is not as long as the others"
            raise RepairlibError(f"{len(column)} rows", wrong, f"{length} rows")
    for name, percent in (("uncertainty", uncertainty), ("tolerance", tolerance)):
        if not 0 <= percent <= 99:
            raise RepairlibError(percent, f"{name} is out of range", "0 to 99, in per cent")
    verdicts = np.empty(length, np.int8)
    for first in range(0, length, _BLOCK):  # in blocks that stay in the processor's cache
        rows = slice(first, first + _BLOCK)
        block = [column[rows] for column in (codes, *columns.values())]
        verdicts[rows] = _judged(*block, uncertainty / 100, tolerance / 100)
    return Judgements(verdicts, codes, columns, uncertainty, tolerance)


def _judged(codes, farad, volts, measured, esr, leakage, spread, tolerance):
    import numpy as np

    up, down = (1 + spread) * (1 - _ROUNDING), (1 - spread) * (1 + _ROUNDING)
    with np.errstate(invalid="ignore", divide="ignore", over="ignore"):
        product = farad * volts * 1e6
        at = _segment(codes, volts, product)
        limit = {name: values.take(at) for name, values in _segments().items()}
        worst = _of_capacitance(measured / farad, up, down, tolerance, limit)
        steps = np.maximum(np.floor(farad * 1e3 + 1e-9) - 1, 0)
        new = limit["tan_delta"] + steps * limit["added"]
        tan_delta = esr * farad * (2 * pi * STATED_HZ)
        found = _below(tan_delta, up, down, new, new * limit["loss_times"])
        found[esr <= 0] = _CANNOT_TELL
        if limit["film"].any():  # film is judged without ESR too, when anything was measured
            something = ~(np.isnan(measured) & np.isnan(leakage))
            found[limit["film"] & np.isnan(esr) & something] = _FIT
        np.maximum(worst, found, out=worst)
        new = np.maximum(limit["times_cv"] * product + limit["added_ua"], limit["floor_ua"]) * 1e-6
        found = _below(leakage, up, down, new, new * limit["leakage_times"])
        found[np.isnan(leakage)] = _FIT
        found[leakage < 0] = _CANNOT_TELL
        np.maximum(worst, found, out=worst)
        possible = (farad >= 1e-13) & (farad <= 1) & (volts > 0) & (volts <= _HIGHEST)
    worst[~possible] = _CANNOT_TELL
    return worst


def _of_capacitance(ratio, up, down, tolerance, limit):
    """Codes for readings of capacitance, given as a ratio to the marked one; NaN is no reading."""
    import numpy as np

    bottom, top = ratio * down, ratio * up
    low, high = 1 - tolerance, 1 + tolerance
    old_low, old_high = np.minimum(limit["low"], low), np.maximum(limit["high"], high)
    new_pass = (bottom >= low) & (top <= high)
    old_pass = (bottom >= old_low) & (top <= old_high)
    old_fail = (top < old_low) | (bottom > old_high)
    codes = _CANNOT_TELL - old_pass.view(np.int8) - new_pass.view(np.int8)
    codes += old_fail.view(np.int8)
    codes[np.isnan(ratio)] = _FIT
    codes[ratio <= 0] = _CANNOT_TELL
    return codes


def _below(reading, up, down, new, old):
    """Codes for readings that have upper limits only: `new` of a new part, `old` when worn."""
    import numpy as np

    top, bottom = reading * up, reading * down
    codes = _CANNOT_TELL - (top <= new).view(np.int8) - (top <= old).view(np.int8)
    codes += (bottom > old).view(np.int8)
    return codes


def _segment(codes, volts, product):
    """For each part the place of its limits in `_segments`."""
    import numpy as np

    starts, splits, first = _starts()
    volts = np.fmin(np.fmax(volts, 0.0), _HIGHEST)  # a missing voltage is found out later
    place = first.take(codes.astype(np.intp) * _CELLS + (volts * _CELLS_A_VOLT).astype(np.intp))
    for _ in range(2):  # at most two ranges begin within a cell
        place += volts >= starts.take(place + 1)
    return 2 * place + (product > splits.take(place))


@cache
def _starts():
    """The voltage at which each range begins, family after family, and its CV split.

    The third array names for each family and each cell of 0.05 V a range that begins at or below
    it: this finds a range several times faster than a binary search.
    """
    import numpy as np

    starts, splits, cells = [], [], []
    edges = np.arange(_CELLS) / _CELLS_A_VOLT - _ROUNDING
    for name in families():
        steps = _steps(name)
        cells.append(len(starts) + np.maximum(np.searchsorted(steps, edges, "right") - 1, 0))
        starts += steps
        splits += [_split(name, volts) for volts in steps]
    return np.array(starts), np.array(splits), np.concatenate(cells)


@cache
def _segments():
    """The limits of each range of voltages, below and above its CV split, as columns."""
    import numpy as np

    rows = [
        _limits_at(name, min(volts, _HIGHEST), product)
        for name in families()
        for volts in _steps(name)
        for product in (0.5 * min(_split(name, volts), 2), 2 * min(_split(name, volts), 1e9))
    ]
    return {name: np.array([row[name] for row in rows]) for name in rows[0]}


def _steps(name: str) -> list[float]:
    """The rated voltages at which some limit of that family changes, from 0 up to infinity."""
    starts = {0.0}
    listed = [row[0] for row in loss_rows(name)]
    starts |= set(listed)
    ends = listed[-1:]
    for one in (*criteria_of(name), *rules_of(name)):
        starts.add(one.from_v)
        ends.append(one.to_v)
    starts |= {nextafter(end, inf) for end in ends if end < _HIGHEST}
    return [*sorted(starts), inf]


def _split(name: str, volts: float) -> float:
    """The CV product in µF V above which another leakage formula holds; infinite where none."""
    ends = [one.to_cv for one in rules_of(name) if one.from_v <= volts <= one.to_v]
    return min(ends, default=inf)


def _limits_at(name: str, volts: float, product: float) -> dict[str, float]:
    worn = criterion(name, volts)
    try:
        tan_delta = loss_limit(name, 1e-6, max(volts, 1e-9)).tan_delta
    except RepairlibError:  # none is stated at this voltage: NaN is "cannot tell"
        tan_delta = nan
    rules = (
        [
            one
            for one in rules_of(name)
            if one.celsius == ROOM_C and one.holds(product / volts, volts)
        ]
        if volts
        else []
    )
    rule = rules[0] if rules else None
    adds = rule is not None and rule.form == "sum of"
    return {
        "film": families()[name].inside == FILM,
        "tan_delta": tan_delta,
        "added": families()[name].added or 0.0,
        "loss_times": worn.loss_times,
        "low": -inf if worn.low is None else worn.low,
        "high": inf if worn.high is None else worn.high,
        "times_cv": rule.times_cv if rule else nan,
        "added_ua": rule.microamps if adds else 0.0,
        "floor_ua": rule.microamps if rule and not adds else 0.0,
        "leakage_times": worn.leakage_times,
    }


def _numbers(name: str, column):
    import numpy as np

    try:
        numbers = np.asarray(column, dtype=float)
    except (TypeError, ValueError):
        wrong = f"the column {name} is not all numbers"
        raise RepairlibError(name, wrong, "numbers in SI, NaN where missing") from None
    if numbers.ndim != 1:
        raise RepairlibError(name, "not a column", "one number for each row")
    return numbers


def _codes(family, length: int):
    import numpy as np

    if isinstance(family, str):
        return np.broadcast_to(family_codes([family]), length)
    if not isinstance(family, np.ndarray) or family.dtype.kind not in "iu":
        return family_codes(family)
    codes = family
    if codes.ndim != 1 or (len(codes) and not 0 <= codes.min() <= codes.max() < len(families())):
        raise RepairlibError("family", "not codes of families", "those of family_codes")
    return codes
