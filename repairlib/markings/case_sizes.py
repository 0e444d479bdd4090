"""Case sizes: imperial and metric chip codes, and tantalum case letters with their EIA number."""

from __future__ import annotations

from repairlib.markings.ranks import IMPERIAL_SIZE, IN_FULL, METRIC_SIZE, NEXT
from repairlib.markings.reading import Reading

# imperial: (metric, source)
CHIPS = {
    "01005": ("0402", "Samsung part-number table"),
    "0201": ("0603", "Samsung part-number table"),
    "0402": ("1005", "Samsung part-number table"),
    "0603": ("1608", "Samsung part-number table"),
    "0805": ("2012", "Samsung part-number table"),
    "1206": ("3216", "Samsung part-number table"),
    "1210": ("3225", "Samsung part-number table"),
    "1806": ("4516", "from memory"),
    "1812": ("4532", "Samsung part-number table"),
    "2010": ("5025", "from memory"),
    "2220": ("5750", "Samsung part-number table"),
    "2512": ("6332", "from memory"),
}
# case letter: (EIA number, source), likeliest first. Makers disagree on E and V: use the number.
TANTALUM_CASES = {
    "A": (("3216-18", "KEMET T491"),),
    "B": (("3528-21", "KEMET T491"),),
    "C": (("6032-28", "KEMET T491"),),
    "D": (("7343-31", "KEMET T491"),),
    "X": (("7343-43", "KEMET T491"),),
    "E": (("7360-38", "KEMET T491"), ("7343-43", "from memory")),
    "R": (("2012-12", "KEMET T491"),),
    "S": (("3216-12", "KEMET T491"),),
    "T": (("3528-12", "KEMET T491"),),
    "U": (("6032-15", "KEMET T491"),),
    "V": (("7343-20", "KEMET T491"), ("7361-38", "from memory")),
}
_TANTALUM_SIZES = {size: source for sizes in TANTALUM_CASES.values() for size, source in sizes}


def read_case_size(text: str, piece: str, part: str | None) -> list[tuple[int, Reading]]:
    """Readings of a case size; a letter alone is one only when a case size is asked for."""
    code = piece.upper()
    if code in CHIPS or (len(code) == 4 and code.isdecimal()):
        return _chip(text, code)
    if code in _TANTALUM_SIZES:
        source = _TANTALUM_SIZES[code]
        return [(IN_FULL, _tantalum(text, code, "The four figures and the height", source))]
    if part == "case-size" and code in TANTALUM_CASES:
        return [
            (
                IN_FULL + NEXT * place,
                _tantalum(text, size, f"Case letter {code} of tantalum chips at one maker", source),
            )
            for place, (size, source) in enumerate(TANTALUM_CASES[code])
        ]
    return []


def _chip(text: str, code: str) -> list[tuple[int, Reading]]:
    """A bare number needs its system: 0402 and 0603 exist in both."""
    readings = []
    for imperial, (metric, source) in CHIPS.items():
        if code not in (imperial, metric):
            continue
        system = "imperial" if code == imperial else "metric"
        place = IMPERIAL_SIZE
        why = f"Read as an {system} code, length and width in hundredths of an inch."
        if system == "metric":
            place = METRIC_SIZE
            why = "Read as a metric code, length and width in tenths of a millimetre."
        carries = {
            "imperial": imperial,
            "metric": metric,
            "length": float(f"{metric[:2]}e-4"),
            "width": float(f"{metric[2:]}e-4"),
        }
        readings.append((place, _size(text, why, carries, source)))
    return readings


def _tantalum(text: str, size: str, start: str, source: str) -> Reading:
    why = f"{start}: EIA {size}, length and width in 0.1 mm, then the greatest height."
    carries = {
        "eia": size,
        "length": float(f"{size[:2]}e-4"),
        "width": float(f"{size[2:4]}e-4"),
        "height": float(f"{size[5:]}e-4"),
    }
    return _size(text, why, carries, source)


def _size(text: str, why: str, carries: dict, source: str) -> Reading:
    return Reading(
        kind="case-size",
        text=text,
        quantity="case size",
        value=None,
        unit="",
        why=why,
        carries=carries,
        sources=(source,),
    )
