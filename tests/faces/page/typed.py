"""A thousand markings as people type them, for comparing one face of the library with another."""

from itertools import product
from pathlib import Path

CORPUS = Path(__file__).parents[2] / "corpus" / "markings.txt"
E12 = (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82)
COLOURS = ["black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white"]
HOSTILE = (
    "<script>alert(1)</script>",
    "\x1b[2J104K",
    "104K\u202e",
    "9" * 300,
    "-- --json",
    "%00%zz",
    "١٠٤K",
    "\n\n",
    "=1+1",
    "104K" * 60,
)


def bands(figure: int, zeros: str) -> str:
    return f"{COLOURS[figure // 10]} {COLOURS[figure % 10]} {zeros}"


def typed_markings() -> list[str]:
    """At least a thousand, all different: those of the corpus, series of codes, hostile texts."""
    made = [*CORPUS.read_text(encoding="utf-8").splitlines(), *HOSTILE]
    made += [f"{figure}{zeros}{letter}" for figure, zeros, letter in product(E12, "2345", "JKM")]
    made += [f"{figure}{zeros}" for figure, zeros in product(E12, "0123456")]
    made += [f"{figure // 10}{letter}{figure % 10}" for figure, letter in product(E12, "RKMnpuµ")]
    made += [f"{bands(figure, zeros)} gold" for figure, zeros in product(E12, COLOURS[:7])]
    made += [f"{bands(figure, zeros)} brown" for figure, zeros in product(E12, COLOURS[:6])]
    made += [f"{figure}0{zeros}" for figure, zeros in product(E12, "01234")]
    made += [f"{figure}n {volts}V X2" for figure, volts in product(E12, (250, 275))]
    made += [f"{figure} {volts}V" for figure, volts in product(E12, (6.3, 10, 16, 25, 63, 450))]
    made += [f"{figure}{letter}" for figure, letter in product((105, 106, 107, 226, 476), "eGJAC")]
    made += [f"T{amperes}AL250V" for amperes in ("100m", "1", "1.6", "2.5", "3.15", "6.3")]
    return list(dict.fromkeys(made))
