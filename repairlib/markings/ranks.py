"""How likely a meaning is: 0 is the likeliest, and readings are given in rising order.

A reading has a place, by what it is taken for, and steps down are added for what speaks against
it. The order is common practice; `tests/markings/test_order.py` holds it on ambiguous texts.
"""

from __future__ import annotations

# Places, likeliest first.
OTHER_PART = -2  # 1N4148: a type number
MEMORY_CHIP = -2  # 25Q64, 24LC256: no value has such letters among its figures
LETTER_AMONG_FIGURES = -1  # 4K7: a resistor before all else
IN_FULL = 0  # what is printed in full, or in a form that nothing else has
USUAL_CODE = 1  # 103 on a chip resistor, 1C for volts, 470K on a resistor
PLAIN_VOLTS = 2  # 16V alone
PLACE_AMONG_96 = 2  # 68C
VALUE_OVER_VOLTS = 3  # 220 on one line of a can and E on the next
POLAR_WITH_VOLTS = 4  # 47µF 25V: first of all a radial can
TANTALUM_CODE = 4  # 107 C
POINT_R = 4  # 4R7 on a chip
POINT_IN_MILLIOHM = 5  # 5L00 on a chip
MICROFARAD_ALONE = 6  # 220 alone on a polar part
CAN_WITH_VOLTS = 8  # 220 16V on one line of a can
IMPERIAL_SIZE = 4  # 0603: people say the imperial name
BEAD_IN_MICROFARAD = 9  # 4.7 25 on a tantalum bead
SMALL_TANTALUM_CODE = 10  # 104 with volts: rather a ceramic part
FOUR_FIGURES = 5  # 4701 on a chip
VOLTAGE_LETTER = 10  # C alone
DATE_LETTERS = 10  # N6
SELDOM_VOLTS = 10  # 1B: 12.5 V, which is no usual rating
AC_ON_ALUMINIUM = 10  # volts AC stand first of all on film
INDUCTOR_CODE = 12  # 101: the same figures are pF on more parts
YEAR_AND_WEEK = 12  # 2135
FOUR_FIGURES_OF_A_MEMORY = 16  # 2716: rather a date
MEMORY_OR_VALUE = 16  # 25R16: rather a resistor
INDUCTOR_POINT = 13  # 6R8, 82N
METRIC_SIZE = 13  # 0603 in tenths of a millimetre
RESISTOR_IN_MILLIOHM = 14  # 5L0
CERAMIC_ON_LINES = 15  # a value over a letter is rather a can
OHM_BY_E_OF_ONE_FIGURE = 8  # 1E: rather 25 V
RESISTOR_ON_LINES = 15  # a value over a letter is rather a can
RESISTOR_OR_VOLTS = 15  # 10M50: rather 10 µF of 20 % and 50 V
RESISTOR_OF_THREE_FIGURES = 18  # 104K: rather a capacitor of 10 %
FILM_DROP_OR_RESISTOR = 7  # five bands, where they are also a usual resistor
BEAD_COLOURS = 1  # on a resistor such colours would be no usual tolerance
BEAD_COLOURS_OR_BANDS = 6  # a usual resistor has them too
INDUCTOR_BANDS = 20  # the same bands are a resistor
OLD_MICROFARAD_OR_MEGOHM = 20  # 10MF: microfarad on old parts
FUSE_OF_AMPERES_ALONE = 20  # 2A without speed or volts: rather a voltage code
SELDOM_MULTIPLIER = 20  # R S G H behind a place among the 96 values
UNITS_ON_POLAR_ALONE = 20  # 47µF without volts
CHIP_INDUCTOR_DOTS = 22  # three bands are rather a resistor
FUSE_BANDS = 24
MILITARY_BANDS = 25  # silver first is rather the other end
HARDLY = 30  # such a part is hardly marked so; it is not named beside a likelier one
RESISTOR_ABOVE_MEGOHM = 30  # G, T
HARDLY_EVER = 40  # against the habit of the makers
BACK_UP_CELL = 45  # 5F is rather 5 pF with a tolerance letter
VOLTS_OF_A_KNOWN_BODY = 60  # on a body a line with volts belongs to a value

# Steps down, added to a place.
NEXT = 1  # the next meaning of the same letter, comma or band
RATING_BY_SPACE = -1  # 16 10: a value that is made, and the higher volts
RATING_FIRST = 3  # 16/10 with the rating in front
CAPITAL_UNIT = 5  # N or P where the standard has n or p
LETTER_IS_VOLTS_FIRST = 5  # a tolerance letter that is a voltage letter on that body
LOW_VOLTS_WITHOUT_POLARITY = 5  # under 25 V
OTHER_END = 5  # bands read from the other end
MILLIFARAD = 5  # 10mF: in old printing it is microfarad
MICROFARAD_WITHOUT_TOLERANCE = 7  # 1 µF and volts without a letter: rather aluminium
PLAIN_NUMBER_ABOVE_ONE = 8  # 4.7 alone, in µF on a part without polarity
CODE_WITHOUT_ZEROS = 8  # 220 25V, 271 16V: rather µF
UNLIKELY_SERIES = 8  # a value of E192 that only closer parts have
SMALL_NUMBER_WITH_VOLTS = 10  # 47 25V: rather µF than pF
LETTER_ON_BARE_NUMBER = 10  # F, P, N behind a bare number are rather units
FUSE_WITHOUT_UNIT = -1  # T315L250V: nothing else is printed so
FUSE_BANDS_FROM_OTHER_END = 10
LONE_FIGURE_AND_LETTER = 12  # 1J: rather a voltage code
THOUSANDS = 12  # 4.700 for 4,700: three decimals are hardly printed
DECIMALS_IN_PICOFARAD = 12  # 4.7 alone, in pF
SMALL_NUMBER_IN_MICROFARAD = 15  # 47 alone, in µF, where pF is the habit
TOO_TIGHT = 15  # closer than 1 % is seldom on capacitors
NO_TOLERANCE_LETTER = 25  # A: the tolerance is in the data sheet
OLD_HABIT = 30  # 220 in plain pF, as old parts print it
DOUBTED = 100  # no such part is made
