"""How much ESR a new aluminium electrolytic has, as two tables to lay beside the meter.

One is for meters that measure at 120 Hz, the other for those at 100 kHz: a figure of one never
judges a reading of the other. The figures come from `repairlib.health`; this module sets them out.
"""

from __future__ import annotations

from repairlib.core.quantity import NBSP, brief
from repairlib.core.tables import read_table
from repairlib.health import LOW_IMPEDANCE, esr_limit, usual_at_high
from repairlib.show.sourced_table import SourcedTable

ORDINARY = "aluminium general 105"
MICROFARADS = (1, 2.2, 4.7, 10, 22, 47, 100, 220, 470, 1000, 2200)
VOLTS = (10, 16, 25, 35, 50, 63)
CANS = ((5, 11), (6.3, 11), (8, 11.5), (10, 12.5), (10, 16), (10, 20), (12.5, 20), (16, 25))  # mm


def esr_at_120_hz() -> SourcedTable:
    """The highest ESR of a new part at 120 Hz and 20 °C, by capacitance and rated voltage.

    Of ordinary aluminium electrolytics for 105 °C, two figures each. Source: the tan δ limits of
    that family's data sheet, ESR = tan δ / (2 π f C).

    >>> print(repr(esr_at_120_hz()).splitlines()[9])
    220 µF | 1.2 | 0.96 | 0.84 | 0.72 | 0.60 | 0.54
    """
    rows = []
    for microfarad in MICROFARADS:
        found = [esr_limit(ORDINARY, f"{microfarad} µF", f"{v} V", "120 Hz").esr for v in VOLTS]
        rows.append((_part(microfarad), *map(_two, found)))
    head = ("", *(brief(volt, "V") for volt in VOLTS))
    caption = "New and ordinary, at 120 Hz: at most this many Ω"
    return SourcedTable(caption, head, rows, ("Lelon RGA",))


def esr_at_100_khz() -> SourcedTable:
    """What a new part usually has at 100 kHz and 20 °C, by the size of its can: a hint, no limit.

    The usual figures are from memory; the last column holds what makers printed for single
    low-impedance parts of that size.

    >>> print(repr(esr_at_100_khz()).splitlines()[2])
    5 × 11 mm | 0.40 to 3.0 | 0.15 to 0.60 | 0.34 (22 µF 50 V)
    """
    rows, keys = [], ["from memory"]
    for wide, long in CANS:
        printed, source = _printed(wide, long)
        usual = [usual_at_high(name, wide / 1e3, long / 1e3) for name in (ORDINARY, LOW_IMPEDANCE)]
        rows.append((f"{wide:g} × {long:g} mm".replace(" ", NBSP), *map(_span, usual), printed))
        keys += [source] if source and source not in keys else []
    head = ("can", "ordinary", "low impedance", "printed for one part")
    return SourcedTable("New, at 100 kHz: about this many Ω", head, rows, keys)


def _printed(wide: float, long: float) -> tuple[str, str]:
    """What a maker printed for a low-impedance part of just that size [mm], and where."""
    for row in read_table("low-impedance-100-khz"):
        size = float(row["diameter_mm"]), float(row["length_mm"])
        if row["family"] == LOW_IMPEDANCE and size == (wide, long):
            part = f"{_part(float(row['capacitance_uf']))} {row['rated_v']} V"
            return f"{_two(float(row['impedance_ohm']))} ({part})", row["source"]
    return "", ""


def _part(microfarad: float) -> str:
    return brief(microfarad * 1e-6, "F")


def _span(ends: tuple[float, float] | None) -> str:
    return f"{_two(ends[0])} to {_two(ends[1])}" if ends else ""


def _two(ohm: float) -> str:
    """Two figures, always in ohm, so that a column can be compared.

    >>> _two(0.9646), _two(0.02), _two(132.6), _two(9.96)
    ('0.96', '0.020', '130', '10')
    """
    rounded = float(f"{ohm:.1e}")
    decimals = next(d for d, least in enumerate((10, 1, 0.1, 0)) if rounded >= least)
    return f"{rounded:.{decimals}f}"
