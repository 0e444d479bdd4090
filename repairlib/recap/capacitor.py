"""What one line of a parts list says about its capacitor, once it is read."""

from __future__ import annotations

from dataclasses import dataclass

from repairlib.recap.places import PLACES
from repairlib.recap.words import BIPOLAR, LOW_IMPEDANCE

NEARLY_1_UF = 0.99e-6  # F; 1 µF and more, whatever the rounding


@dataclass(eq=False, slots=True)
class Capacitor:
    """What one line says about its capacitor. Lines that say the same share one.

    `farad` [F] and `volts` [V] are None where not stated; `ac` says that the volts are AC.
    `kind` is one of words.KINDS or "" when not stated; `form` "radial", "axial", ... or "".
    `tolerance` is (low, high) as fractions, or None. `features` are extra demands, `doubts` say
    in words what has two readings; `looks` what to look at before it is ordered; `spare` are bare
    figures that may be a quantity. `not_fitted` says that the list calls the place empty.
    `places` are names of places.PLACES: where it works.
    """

    farad: float | None
    volts: float | None
    kind: str
    ac: bool = False
    form: str = ""
    tolerance: tuple[float, float] | None = None
    features: tuple[str, ...] = ()
    doubts: tuple[str, ...] = ()
    looks: tuple[str, ...] = ()
    spare: tuple[str, ...] = ()
    text: str = ""
    not_fitted: bool = False
    places: tuple[str, ...] = ()

    @property
    def low_impedance(self) -> bool:
        """Whether the list, or the place in which it works, asks for low impedance."""
        by_place = any(PLACES[name].low_impedance for name in self.places)
        return LOW_IMPEDANCE in self.features or (by_place and self.kind != BIPOLAR)

    def says_the_same(self, other: Capacitor) -> bool:
        """Whether both lines describe the same part, in whatever words."""
        return self.same_part() == other.same_part()

    def same_part(self) -> tuple:
        farad = self.farad and float(f"{self.farad:.6g}")
        unread = self.text if self.farad is None else ""
        return farad, self.volts, self.ac, self.kind, self.form, self.doubts, unread
