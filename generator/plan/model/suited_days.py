"""What was counted of past days: how many suited a job, and in how many the wind did."""

from generator.dataclass import dataclass
from generator.plan.model.days import Span
from generator.reference.suited import Suits


@dataclass(frozen=True, slots=True)
class YearCounted:
    """One past year, named by that of the first day: how many days of it suited a job.

    `left_after` are the days that froze and thawed after the last of them, where that is asked.
    """

    year: int
    suited: int
    left_after: int | None


@dataclass(frozen=True, slots=True)
class Chance:
    """Of so many past days that are known, after how many it came."""

    days: int
    came: int

    @property
    def in_hundred(self) -> int:
        """How many of a hundred, rounded down."""
        return self.came * 100 // self.days


@dataclass(frozen=True, slots=True)
class CountedDays:
    """What past years say of the days a job has left, `spans`.

    `least` is what nine years of ten had at least, `typical` the middle year, both None where too
    few years are known; `left_least` and `left_typical` say the same of the days that freeze and
    thaw after them. `rain` is how often rain came that moves a residual in, `storm` how often one
    that washes it off.
    """

    suits: Suits
    spans: tuple[Span, ...]
    years: tuple[YearCounted, ...]
    left_out: int
    least: int | None
    typical: int | None
    left_least: int | None
    left_typical: int | None
    rain: Chance | None
    storm: Chance | None

    @property
    def open_days(self) -> int:
        """How many days the job has left."""
        return sum((last - first).days + 1 for first, last in self.spans)

    @property
    def years_counted(self) -> int:
        """How many past years say something."""
        return len(self.years)


@dataclass(frozen=True, slots=True)
class WindUse:
    """Past days of a job's dates of which the wind is known hour by hour.

    `in_range` are those with hours enough in a row in the label's wind, `both` those that suited
    otherwise as well; `also_known` says of how many the rest of the weather is known.
    """

    days: int
    in_range: int
    also_known: int
    both: int
