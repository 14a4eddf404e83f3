"""Jobs: dates, state and work."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from dataclasses import replace
from typing import Literal

from generator.dataclass import dataclass
from generator.inventory.schema import KeptUp
from generator.plan.model.days import Span
from generator.plan.model.finding import SafetyLine
from generator.plan.model.markers import MarkerFound
from generator.plan.model.place import DangerNear, KeptOff
from generator.plan.model.work import (
    JobWork,
    Mix,
    Numbers,
    Nutrient,
    RowPlanted,
    RowsWork,
    Sower,
    Sowing,
    SowWork,
    SprayWork,
    Spreading,
    SpreadWork,
    Taken,
)
from generator.reference.steps import Answer, Step
from generator.working import Quantity

NOTHING_SOWS = Sower()


@dataclass(frozen=True, slots=True)
class DateReason:
    """How one end of the open dates came about; `sign` names a season sign.

    `rests_on` says where the sign is from, for the owner alone.
    """

    day: datetime.date
    sign: str | None
    by: str
    offset_days: int
    source: str
    rests_on: MarkerFound | None = None


@dataclass(frozen=True, slots=True)
class YearDates:
    """Open dates in an early, a typical or a late year; `closes` before `opens`: not open at all.

    An end that waits for nothing is None.
    """

    year: Literal["early", "typical", "late"]
    opens: datetime.date | None
    closes: datetime.date | None


@dataclass(frozen=True, slots=True)
class OpenDates:
    """First and last day on which a job works; None where a sign is not known.

    They are on the careful side; `by_year` are those of an early, a typical and a late year, none
    where they wait for no sign of the season or for one that is not known.
    """

    opens: datetime.date | None
    closes: datetime.date | None
    opens_reasons: tuple[DateReason, ...]
    closes_reasons: tuple[DateReason, ...]
    missing_signs: tuple[str, ...]
    by_year: tuple[YearDates, ...] = ()


@dataclass(frozen=True, slots=True)
class JobState:
    """Where a job stands on the plan's day.

    `day` is the day it was done, its last day where it is open or missed, its first day or the day
    to decide where it waits; None where that is not known or not for the reader. `step` is the
    name of the step that decides, with the `question` that waits or the `answer` it had; `why_not`
    is why the owner leaves it out, for the owner alone.
    """

    kind: Literal["done", "not_needed", "missed", "undated", "waiting", "open"]
    day: datetime.date | None = None
    step: str | None = None
    question: str | None = None
    answer: Answer | None = None
    why_not: str | None = None

    @property
    def is_settled(self) -> bool:
        """Whether nothing of the job is left to do, whatever its dates."""
        return self.kind in ("done", "not_needed")

    @property
    def is_ahead(self) -> bool:
        """Whether the job can still come: it takes seed, product, hours and money."""
        # of an undated job nobody can say that it is over, so it counts
        return self.kind in ("open", "waiting", "undated")


@dataclass(frozen=True, slots=True)
class JobDays:
    """What dates take of the open dates of a job.

    `not_on` are the days on which it must not be done, `left` those that remain, `last_before` the
    last of them before the first that is taken; `why` is what takes them, the first to begin first,
    for the owner alone.
    """

    not_on: tuple[Span, ...]
    left: tuple[Span, ...]
    last_before: datetime.date | None
    why: tuple[tuple[str, tuple[Span, ...]], ...] = ()


def usable_days(dates: OpenDates, days: JobDays | None) -> tuple[Span, ...]:
    """Return the days of a job that are left to do it on; none where an end is not known."""
    opens, closes = dates.opens, dates.closes
    if opens is None or closes is None or closes < opens:
        return ()
    return days.left if days is not None else ((opens, closes),)


def last_day_of(job: Job | UpkeepJob) -> datetime.date | None:
    """Return the last day of a job, known also where the first is not or dates take every day."""
    if job.usable:
        return job.usable[-1][1]
    opens, closes = job.dates.opens, job.dates.closes
    return None if opens is not None and closes is not None and closes < opens else closes


@dataclass(frozen=True, slots=True)
class Job:
    """One step on one planting in one season.

    `id` is `place/season/step`; `address` is the sheet's file name without its ending; `part` is
    what the owner calls the part of the place it is done on; `needs` are the ids of what it uses
    up, for the owner alone, a stop or not; `method` is how the sowing is done that a planting
    begins with. `work` is what is put down with all its amounts, None where nothing is or a stop
    stands in its place. `had_left` are the days that dates left of it, of a settled job alone:
    calendars had those. `near` is what dangerous lies near its place, the nearest first.
    """

    id: str
    address: str
    place_id: str
    planting_id: str
    season: int
    step: Step
    dates: OpenDates
    state: JobState
    note: str | None
    part: str | None
    safety: tuple[SafetyLine, ...]
    needs: tuple[str, ...] = ()
    work: JobWork | None = None
    days: JobDays | None = None
    had_left: tuple[Span, ...] = ()
    method: str | None = None
    near: tuple[DangerNear, ...] = ()

    @property
    def usable(self) -> tuple[Span, ...]:
        """The open days that are left once dates took theirs; none where an end is not known."""
        return usable_days(self.dates, self.days)

    def without_amounts(self) -> Job:
        """Return the job without any amount: by what is left nobody can measure or spread."""
        return replace(self, work=None)

    @property
    def numbers(self) -> Numbers:
        """The numbers of a spraying or a sowing as a whole, by name; else none."""
        return self.work.numbers if isinstance(self.work, SprayWork | SowWork) else {}

    @property
    def mix(self) -> Mix | None:
        """The tank of a spraying that is cleared; else None."""
        return self.work.mix if isinstance(self.work, SprayWork) else None

    @property
    def kept_off(self) -> tuple[KeptOff, ...]:
        """What is left out of the ground of a spraying; else nothing."""
        return self.work.kept_off if isinstance(self.work, SprayWork) else ()

    @property
    def sowings(self) -> tuple[Sowing, ...]:
        """What a sowing puts down, lot by lot; else none."""
        return self.work.sowings if isinstance(self.work, SowWork) else ()

    @property
    def sower(self) -> Sower:
        """What sows: nothing, where nothing is sown."""
        return self.work.sower if isinstance(self.work, SowWork) else NOTHING_SOWS

    @property
    def spreadings(self) -> tuple[Spreading, ...]:
        """What is spread; else none."""
        return self.work.spreadings if isinstance(self.work, SpreadWork) else ()

    @property
    def nutrients(self) -> tuple[Nutrient, ...]:
        """What a fertilizing was asked for and gives; else none."""
        return self.work.nutrients if isinstance(self.work, SpreadWork) else ()

    @property
    def rows(self) -> tuple[RowPlanted, ...]:
        """The rows that are set; else none."""
        return self.work.rows if isinstance(self.work, RowsWork) else ()

    def every_number(self) -> tuple[Quantity, ...]:
        """Return every computed number that stands anywhere in it, each once."""
        figures = [*(self.work.figures() if self.work is not None else ())]
        figures += [line.figure for line in self.safety]
        computed = (number for number in figures if isinstance(number, Quantity))
        return tuple({number.identity: number for number in computed}.values())

    def used_up(self) -> Iterator[Taken]:
        """Yield everything it uses up, by kind of thing and id, as the budget counts it."""
        yield from self.work.used_up(self.id) if self.work is not None else ()


@dataclass(frozen=True, slots=True)
class JobAhead:
    """A job of a season after the plan's: looked at, with dates and state, and no amounts.

    `days` is what the dates typed so far take of it, None where they take nothing.
    """

    id: str
    place_id: str
    planting_id: str
    season: int
    step: Step
    dates: OpenDates
    state: JobState
    days: JobDays | None = None

    @property
    def usable(self) -> tuple[Span, ...]:
        """The open days that are left once dates took theirs; none where an end is not known."""
        return usable_days(self.dates, self.days)


@dataclass(frozen=True, slots=True)
class JobBefore:
    """A job of the season before that was missed, and so far is in no record.

    `thing_id` is the place, stand, walk or water hole; `planting_id` is None but of a planting.
    """

    id: str
    thing_id: str
    planting_id: str | None
    season: int
    step: Step
    last_day: datetime.date


@dataclass(frozen=True, slots=True)
class UpkeepJob:
    """One step of the upkeep of a stand, a walk or a water hole in one season.

    `id` is `subject/season/step`; `kind` is stand, route or water_hole; `safety` are the lines
    that no reader's sheet may lose; `days` is what dates take of it, None where they take nothing.
    """

    id: str
    address: str
    subject: KeptUp
    kind: str
    season: int
    step: Step
    dates: OpenDates
    state: JobState
    safety: tuple[SafetyLine, ...] = ()
    days: JobDays | None = None

    @property
    def usable(self) -> tuple[Span, ...]:
        """The open days that are left once dates took theirs; none where an end is not known."""
        return usable_days(self.dates, self.days)
