"""Parts other than capacitors and fuses that sit on the mains; common practice."""

from __future__ import annotations

VARISTOR, CUT_OFF = "varistor", "thermal cut-off"
NTC, PTC = "inrush or NTC thermistor", "PTC thermistor"
ON_MAINS = (VARISTOR, CUT_OFF, NTC, PTC)
