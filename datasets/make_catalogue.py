"""Writes demo/parts-catalogue.csv: 2,000 invented parts, the same bytes on every run.

    python datasets/make_catalogue.py

Series, prices and sizes are invented; nothing here is a maker's part, and the tokens of the bench
are no money. Cans grow with charge as real ones roughly do, so that some parts are too high for
some places. A part has a line for each way in which it is sold.
"""

from __future__ import annotations

import csv
from pathlib import Path
from typing import NamedTuple

PATH = Path(__file__).parent / "demo" / "parts-catalogue.csv"
PARTS = 2000
CURRENCY = "tokens"
PACKS_ONLY = ("Birch", "Oak")
HEADING = (
    "part,series,family,capacitance_uf,rated_v,rated_c,life_h,ripple_ma,ripple_hz,esr_class,impedance_ohm,"
    "diameter_mm,length_mm,lead_spacing_mm,mounting,price,pack,minimum,currency"
)
FIGURES = (1, 1.5, 2.2, 3.3, 4.7, 6.8)
COMMON = (1, 2.2, 4.7)
CANS = ((5, 11), (6.3, 11), (8, 11.5), (8, 16), (10, 12.5), (10, 16), (10, 20), (12.5, 20))
CANS += ((12.5, 25), (16, 25), (16, 31.5), (18, 35.5), (18, 40))
BODIES = ((5, 12), (6.3, 13), (8, 16), (8, 20), (10, 20), (10, 30), (13, 30), (16, 30), (18, 40))
CHIPS = ((4, 5.4), (5, 5.4), (6.3, 5.4), (6.3, 7.7), (8, 10.2), (10, 10.2))
SPACING = {5: 2, 6.3: 2.5, 8: 3.5, 10: 5, 12.5: 5, 16: 7.5, 18: 7.5}
LOW = (6.3, 10, 16, 25, 35, 50, 63, 100)
HIGH = (160, 250, 350, 400, 450)


class Series(NamedTuple):
    """An invented series: what it is made of, and by how much its cans and prices differ.

    `bulk` is its size and `dear` its price against the plainest series; `ohm` its impedance at
    100 kHz against that of a low-impedance can, None where the series states none.
    """

    name: str
    family: str
    volts: tuple[float, ...]
    figures: tuple[float, ...]
    least: float
    most: float
    celsius: int
    hours: int
    bulk: float
    dear: float
    ohm: float | None
    esr_class: str
    mounting: str = "radial"


GENERAL, ZED = "aluminium general 105", "aluminium low impedance"
SERIES = (
    Series("Alder", GENERAL, LOW, FIGURES, 0.1, 22000, 105, 2000, 1.0, 1.0, None, "general"),
    Series("Birch", GENERAL, LOW, FIGURES, 0.47, 10000, 105, 2000, 1.05, 1.0, None, "general"),
    Series("Cedar", GENERAL, LOW, FIGURES, 0.47, 10000, 105, 5000, 1.5, 1.7, None, "general"),
    Series("Damson", ZED, LOW, FIGURES, 4.7, 8200, 105, 4000, 1.25, 1.5, 1.0, "low"),
    Series("Elder", ZED, LOW, FIGURES, 10, 6800, 105, 10000, 1.9, 2.6, 0.8, "low"),
    Series("Fir", GENERAL, HIGH, FIGURES, 1, 470, 105, 2000, 3.5, 2.2, None, "general"),
    Series(
        "Gorse",
        "aluminium general 85",
        LOW,
        FIGURES,
        0.1,
        22000,
        85,
        2000,
        0.8,
        0.7,
        None,
        "general",
    ),
    Series(
        "Hazel",
        "aluminium non-polar",
        LOW,
        FIGURES,
        0.47,
        470,
        105,
        1000,
        2.0,
        2.0,
        None,
        "general",
    ),
    Series(
        "Ivy", "aluminium bipolar", LOW, FIGURES, 0.47, 100, 105, 2000, 2.2, 2.6, None, "general"
    ),
    Series(
        "Juniper", GENERAL, LOW, FIGURES, 1, 4700, 105, 2000, 1.3, 3.0, None, "general", "axial"
    ),
    Series(
        "Larch", GENERAL, LOW[2:6], COMMON, 10, 4700, 125, 3000, 1.8, 5.0, None, "general", "axial"
    ),
    Series(
        "Maple",
        "aluminium chip small",
        LOW[:6],
        FIGURES,
        1,
        470,
        105,
        2000,
        1.2,
        1.6,
        3.0,
        "low",
        "can",
    ),
    Series(
        "Nettle", "polymer radial", LOW[:4], FIGURES, 10, 1500, 105, 2000, 0.9, 4.0, 0.2, "polymer"
    ),
    Series(
        "Oak", "tantalum", (6.3, 10, 16, 25, 35), FIGURES, 0.47, 150, 125, 0, 0.5, 6.0, None, ""
    ),
    Series(
        "Pine", "film polyester", (63, 100, 250), FIGURES, 0.047, 4.7, 105, 0, 12, 3.0, None, ""
    ),
)


def rows():
    """Every line of the catalogue below its heading."""
    every = [
        _row(series, microfarad, volts)
        for series in SERIES
        for microfarad in _values(series)
        for volts in series.volts
    ]
    made = [row for row in every if row]
    surplus = len(made) - PARTS
    # The plainest series stay whole; the others have gaps, as real catalogues do.
    first = next(at for at, row in enumerate(made) if row[1] == "Damson")
    rest = len(made) - first
    gaps = {first + rest * gap // surplus for gap in range(surplus)} if surplus > 0 else set()
    parts = [row for at, row in enumerate(made) if at not in gaps]
    return [line for row in parts for line in _offers(row)]


def _offers(row: tuple):
    """The lines of one part: single pieces at a higher price than in packs, and price steps."""
    *figures, price, pack = row
    cents = round(float(price) * 100)
    if pack == 1:
        offers = [(cents, 1, 1), (max(cents * 17 // 20, 1), 1, 10)]
    elif row[1] in PACKS_ONLY:
        offers = [(max(cents * 9 // 10, 1), pack, pack)]
    else:
        offers = [(-(-cents * 8 // 5), 1, 1), (-(-cents * 13 // 10), 1, 10), (cents, pack, pack)]
    for each, pieces, least in offers:
        yield (*figures, f"{each / 100:.2f}", pieces, least, CURRENCY)


def _values(series: Series):
    for decade in range(-2, 5):
        for figure in series.figures:
            value = round(figure * 10.0**decade, 6)
            if series.least <= value <= series.most:
                yield value


def _row(series: Series, microfarad: float, volts: float):
    size = _size(series, microfarad * volts)
    if size is None:
        return None
    diameter, length = size
    ripple = ohm = ""
    surface = diameter * length
    if series.hours:
        ripple = _two_figures(
            1.1 * (microfarad * surface) ** 0.5 / (2 if series.ohm is None else 1)
        )
    if series.ohm is not None:
        ohm = f"{series.ohm * 14 / surface**1.05:.3f}"
    spacing = "" if series.mounting == "axial" else SPACING.get(diameter, "")
    if series.name in ("Oak", "Pine"):
        spacing = 2.5 if series.name == "Oak" else 5
    cents = series.dear * (3 + surface**1.15 / 18)
    price = f"{max(round(cents), 1) / 100:.2f}"
    pack = 100 if cents < 8 else 50 if cents < 15 else 10 if cents < 60 else 1
    code = f"{series.name[:3].upper()}-{microfarad:g}-{volts:g}".replace(".", "R")
    hours = series.hours or ""
    return (
        code,
        series.name,
        series.family,
        f"{microfarad:g}",
        f"{volts:g}",
        series.celsius,
        hours,
        ripple,
        ripple and (120 if series.ohm is None else 100000),
        series.esr_class,
        ohm,
        f"{diameter:g}",
        f"{length:g}",
        spacing,
        series.mounting,
        price,
        pack,
    )


def _size(series: Series, charge: float):
    """The smallest can [mm] that takes that charge [µC]; None when none does."""
    cans = {"axial": BODIES, "can": CHIPS}.get(series.mounting, CANS)
    for diameter, length in cans:
        volume = 0.785 * diameter**2 * length
        if 1600 * (volume / 216) ** 1.39 >= charge * series.bulk:
            return diameter, length
    return None


def _two_figures(value: float) -> str:
    return f"{float(f'{value:.2g}'):g}"


if __name__ == "__main__":
    with open(PATH, "w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(HEADING.split(","))
        writer.writerows(rows())
