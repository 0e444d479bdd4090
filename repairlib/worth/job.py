"""One set and what its repair takes: expected cost, expected gain, and where both are even.

Money is counted in whatever the person typed. What a working set is worth to its owner is set
against what is spent on the try. Danger is no part of the sum: see hazards.py.
"""

from __future__ import annotations

from dataclasses import dataclass

from repairlib.core.calculator import Given
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import UNITS, Quantity, brief

MOST_MONEY = 1e7
LONGEST_CURRENCY = 20
_MONEY = {"at_least": 0, "at_most": MOST_MONEY}
_CHANCE = {"at_least": 0, "at_most": 100}

# What each figure means and its range, for the calculators and for the table of the shelf.
VALUE = Given("", "Worth of the set when it works, less what it fetches as it lies.", **_MONEY)
PARTS = Given("", "Cost of the parts.", **_MONEY)
HOURS = Given("", "Hours of work, such as 1.5.", at_least=0, at_most=10000)
HOUR_WORTH = Given("", "What an hour is worth; 0 when it is done for pleasure.", **_MONEY)
TOOLS = Given("", "Cost of tools that have to be bought.", **_MONEY)
JOBS = Given("", "Over how many jobs the tools are shared.", at_least=1, at_most=100000)
SUCCESS_LOW = Given("%", "Chance that it works, the low end: 50 for 50 %.", **_CHANCE)
SUCCESS_HIGH = Given("%", "Chance that it works, the high end.", **_CHANCE)
REPLACEMENT = Given("", "Cost of another set that does the same; left out: none.", **_MONEY)
FAILED = Given("", "What a failed try costs on top, such as harm or disposal.", **_MONEY)
MASS = Given("kg", "Of the set, such as 1.2 kg.", at_least=0, at_most=1000)


@dataclass(frozen=True)
class Job:
    """A set that might be repaired. Money in `currency`, chances in per cent, `mass` in kg.

    `replacement` is None when no other set does the same. What is spent on the try (parts, hours,
    the share of the tools) is spent whether it works or not; `failed` comes on top when it does
    not. `hazards` are keys of safety.HAZARDS. Raises RepairlibError for chances the wrong way
    round, and for one above 0 and up to 1 %, which may be meant as a fraction.

    >>> radio = Job(value=60, parts=8, hours=2, hour_worth=5, success_low=50, success_high=80)
    >>> radio.gain(50), radio.gain(80), radio.break_even_chance()
    (12.0, 30.0, 30.0)
    """

    value: float
    parts: float
    hours: float
    success_low: float
    success_high: float
    hour_worth: float = 0.0
    tools: float = 0.0
    jobs: float = 1.0
    replacement: float | None = None
    failed: float = 0.0
    mass: float = 0.0
    hazards: tuple[str, ...] = ()
    currency: str = "tokens"
    name: str = "the set"
    fault: str = ""
    needs: str = ""

    def __post_init__(self) -> None:
        low, high = self.success_low, self.success_high
        for chance in (low, high):
            if 0 < chance <= 1:
                meant = f"may be {chance:g} % or {100 * chance:g} %"
                raise RepairlibError(f"{chance:g}", meant, "per cent: 0, or above 1 up to 100")
        if low > high:
            wrong = "the low end of the chance is above the high end"
            raise RepairlibError(f"{low:g} to {high:g} %", wrong, "the lower one first")

    @property
    def earned(self) -> float:
        """What success earns: the value, but no more than another set costs.

        Where another is cheaper than the value, it would be bought without a repair, so that is
        all that a repair saves.
        """
        return self.value if self.replacement is None else min(self.value, self.replacement)

    @property
    def spent(self) -> float:
        """What the try costs, whether it works or not."""
        return self.parts + self.hours * self.hour_worth + self.tools / self.jobs

    def gain(self, chance: float) -> float:
        """The expected gain over no repair at all, at a chance in per cent."""
        works = chance / 100
        return works * self.earned - (1 - works) * self.failed - self.spent

    def cost(self, chance: float) -> float:
        """The expected cost of the try, at a chance in per cent."""
        return self.spent + (1 - chance / 100) * self.failed

    def break_even_chance(self) -> float | None:
        """The chance in per cent at which nothing is gained or lost; above 100 none is enough.

        None when success earns nothing and failure costs nothing: then the chance does not matter.
        """
        between = self.earned + self.failed
        return 100 * (self.spent + self.failed) / between if between else None

    def break_even_hours(self, chance: float) -> float | None:
        """The hours at which nothing is gained or lost; below 0 even no work at all is too much.

        None when an hour is worth nothing: then hours do not matter.

        >>> Job(60, 8, 2, 50, 80, hour_worth=5).break_even_hours(50)
        4.4
        """
        if not self.hour_worth:
            return None
        return (self.gain(chance) + self.hours * self.hour_worth) / self.hour_worth

    def break_even_parts(self, chance: float) -> float:
        """The cost of the parts at which nothing is gained or lost; below 0 free is too dear.

        >>> Job(60, 8, 2, 50, 80, hour_worth=5).break_even_parts(50)
        20.0
        """
        return self.gain(chance) + self.parts

    def sign(self, chance: float) -> int:
        """1 for a gain, -1 for a loss, 0 where it is even to rounding."""
        gain = self.gain(chance)
        if abs(gain) <= 1e-9 * (self.earned + self.failed + self.spent):
            return 0
        return 1 if gain > 0 else -1

    def money(self, amount: float) -> Quantity:
        """An amount to two places in the currency of this job.

        >>> print(Job(60, 8, 2, 50, 80).money(12.004))
        12 tokens
        """
        return Quantity(round(amount, 2), self.currency)


def roughly(value: float, unit: str) -> str:
    """A figure that stands on a guess, to three digits.

    >>> print(roughly(38.3333, "%"))
    38.3 %
    """
    return brief(float(f"{value:.3g}"), unit)


def read_currency(text: str) -> str:
    """What money is counted in, as it was typed; "tokens" where nothing was.

    Raises RepairlibError for a text that is no such name: longer than 20 characters, with figures,
    or a unit that stands for something else at the bench.

    >>> read_currency(" crowns "), read_currency("")
    ('crowns', 'tokens')
    """
    name = " ".join(text.split())
    accepted = "a word or sign such as tokens"
    if len(name) > LONGEST_CURRENCY or not name.isprintable() or any(map(str.isnumeric, name)):
        raise RepairlibError(text, "not the name of a currency", accepted)
    if name in UNITS or name == "h":
        raise RepairlibError(text, "a unit of the bench, not of money", f"{accepted}, in full")
    return name or "tokens"
