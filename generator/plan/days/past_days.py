"""What may be counted on: how many days of the open dates suited a job in each past year."""

import datetime
import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import lru_cache

from generator.compute.climate_spread import at_share_days
from generator.compute.suited import (
    Flags,
    all_of_days,
    at_least_days,
    at_most_days,
    dry_before_days,
    dry_days,
    night_after_days,
    rain_after_days,
    running_days,
    storm_after_days,
)
from generator.dataclass import dataclass
from generator.inventory.weather import DailyRecord
from generator.plan.findings.about_days import DayCaution
from generator.plan.findings.order import finding
from generator.plan.jobs.job_days import days_left
from generator.plan.model.days import ONE_DAY, Span, moved
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.job import Job
from generator.plan.model.markers import Series, StationSeen
from generator.plan.model.suited_days import Chance, CountedDays, YearCounted
from generator.plan.season.marker_years import EARLY, FREEZE_THAW_UNTIL, TYPICAL
from generator.reference.library import values
from generator.reference.suited import Suits, suited

# A year that lacks more of the days than this part says nothing of them (common practice).
MOST_UNKNOWN = 0.1
# Kinds of work, of which a process that stays asks the same record at each save.
_REMEMBERED = 20
# Days of a record from one on, up to one that is not in.
_Stretch = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Counts:
    """Running counts over a record: days that have something, days of which nobody knows."""

    yes: Sequence[int]
    unknown: Sequence[int]

    def known(self, stretch: _Stretch) -> int:
        """Return how many days of a stretch are known."""
        return stretch[1] - stretch[0] - self.unknown[stretch[1]] + self.unknown[stretch[0]]

    def had(self, stretch: _Stretch) -> int:
        """Return how many days of a stretch have it."""
        return self.yes[stretch[1]] - self.yes[stretch[0]]


@dataclass(frozen=True, slots=True)
class Past:
    """The days of a record made ready to count those that suit one kind of work."""

    suits: Suits
    record_first: datetime.date
    record_last: datetime.date
    flags: Flags
    suited: Counts
    freezing: Counts | None
    rain: Counts | None
    storm: Counts | None

    def flag_on(self, day: datetime.date) -> bool | None:
        """Return whether a day suited; None where it is not known or not in the record."""
        if not self.record_first <= day <= self.record_last:
            return None
        return self.flags[(day - self.record_first).days]


def counted_at(stations: Sequence[StationSeen]) -> StationSeen | None:
    """Return the station whose days are counted: the most trusted that has rain, else the first."""
    with_rain = (
        station for station in stations if any(rain is not None for rain in station.record.rain_in)
    )
    return next(with_rain, stations[0] if stations else None)


def ready_for(jobs: Iterable[Job], series: Series) -> dict[str, Past]:
    """Return the record made ready for every kind of work among jobs, by the name of its days."""
    # for each kind of work once: a record may be a hundred years of days, and jobs are many
    names = {job.step.suits for job in jobs if job.step.suits is not None}
    return {name: past_of(suited()[name], series) for name in names}


@lru_cache(maxsize=_REMEMBERED)
def past_of(suits: Suits, series: Series) -> Past:
    """Return a record made ready for one kind of work."""
    record = series.record
    flags = all_of_days(list(_asked(suits, series)))
    rain_days = int(values()["rain_wait_days"].value)
    freezing = rain = storm = None
    if suits.freezes_and_thaws:
        freezing = _counts(_freeze_and_thaw(record))
    if suits.rain_after:
        wanted_in, storm_in = values()["rain_to_move_it_in_low_in"], values()["storm_in"]
        rain = _counts(rain_after_days(record.rain_in, rain_days, wanted_in.value))
        storm = _counts(storm_after_days(record.rain_in, rain_days, storm_in.value))
    return Past(suits, record.first, record.last, flags, _counts(flags), freezing, rain, storm)


def _asked(suits: Suits, series: Series) -> Iterator[Flags]:
    """Yield for each thing that is asked which days have it."""
    record = series.record
    if suits.high_at_least is not None:
        yield at_least_days(record.high_f, suits.high_at_least.value)
    if suits.night_at_least is not None:
        yield night_after_days(record.low_f, suits.night_at_least.value)
    if suits.soil_over is not None:
        yield [soil_f > suits.soil_over.value for soil_f in series.soil_f]
    if suits.freezes_and_thaws:
        yield _freeze_and_thaw(record)
    if suits.rain_at_most is not None:
        yield dry_days(record.rain_in, suits.rain_at_most.value)
    if suits.rain_before_at_most is not None and suits.days_before is not None:
        days = int(suits.days_before.value)
        yield dry_before_days(record.rain_in, days, suits.rain_before_at_most.value)


def _freeze_and_thaw(record: DailyRecord) -> Flags:
    thaws = at_least_days(record.high_f, values()["thaws_f"].value)
    return all_of_days([thaws, at_most_days(record.low_f, values()["freezes_f"].value)])


def _counts(flags: Flags) -> Counts:
    return Counts(running_days(flags, True), running_days(flags, None))


def spans_left(job: Job, as_of: datetime.date) -> tuple[Span, ...]:
    """Return the days a job has left from the plan's day on, those that dates take left out."""
    left = days_left(job, as_of)
    if left is None or not job.state.is_ahead:
        return ()
    ahead = ((max(first, left[0]), last) for first, last in job.usable)
    return tuple(span for span in ahead if span[0] <= span[1])


def counted_days(
    jobs: Iterable[Job], ready: Mapping[str, Past], as_of: datetime.date
) -> dict[str, CountedDays]:
    """Return by job what past years say of the days it has left; nothing where any day will do."""
    asked = {
        job.id: (name, spans)
        for job in jobs
        if (name := job.step.suits) in ready and name and (spans := spans_left(job, as_of))
    }
    # many jobs ask for the same work on the same days
    counted = {key: counted_in(ready[key[0]], key[1]) for key in set(asked.values())}
    return {job_id: counted[key] for job_id, key in asked.items()}


def counted_in(past: Past, spans: tuple[Span, ...]) -> CountedDays:
    """Return what the years of a record say of spans of days."""
    years: list[YearCounted] = []
    whole = list(_in_past_years(past, spans))
    for year, stretches in whole:
        days = sum(last - first for first, last in stretches)
        known = sum(past.suited.known(stretch) for stretch in stretches)
        if days - known <= MOST_UNKNOWN * days:
            days_suited = sum(past.suited.had(stretch) for stretch in stretches)
            years.append(YearCounted(year, days_suited, _freezing_after(past, stretches[-1][1])))
    least, typical = _spread([counted.suited for counted in years])
    left = _spread([counted.left_after for counted in years if counted.left_after is not None])
    # a chance is of days, not of years: known days of the years left out count too
    every = [stretch for _, them in whole for stretch in them]
    return CountedDays(
        past.suits,
        spans,
        tuple(years),
        len(whole) - len(years),
        least,
        typical,
        *left,
        rain=_chance(past.rain, every),
        storm=_chance(past.storm, every),
    )


def _in_past_years(
    past: Past, spans: tuple[Span, ...]
) -> Iterator[tuple[int, tuple[_Stretch, ...]]]:
    """Yield the spans as they lie in each past year, named by the year of the first day."""
    begins = spans[0][0].year
    for year in range(past.record_first.year - 1, past.record_last.year + 1):
        then = [(moved(first, year - begins), moved(last, year - begins)) for first, last in spans]
        # a year that the record holds in part would have fewer days than it had
        if past.record_first <= then[0][0] and then[-1][1] <= past.record_last:
            yield (
                year,
                tuple(
                    ((first - past.record_first).days, (last - past.record_first).days + 1)
                    for first, last in then
                ),
            )


def _freezing_after(past: Past, ends: int) -> int | None:
    """Return how many days freeze and thaw after some days, to the end of April."""
    if past.freezing is None:
        return None
    day = past.record_first + datetime.timedelta(days=ends)
    until = datetime.date(day.year, *FREEZE_THAW_UNTIL) + ONE_DAY
    stop = (min(until, past.record_last + ONE_DAY) - past.record_first).days
    # days that end after April have none left, not fewer than none
    return past.freezing.had((ends, max(ends, stop)))


def _spread(counts: Sequence[int]) -> tuple[int | None, int | None]:
    """Return what nine years of ten have at least and what the middle year has, rounded down."""
    if len(counts) < values()["fewest_years"].value:
        return None, None
    # down: part of a day is no day to work on
    least, typical = (math.floor(at_share_days(counts, share)) for share in (EARLY, TYPICAL))
    return least, typical


def _chance(counts: Counts | None, stretches: Sequence[_Stretch]) -> Chance | None:
    if counts is None:
        return None
    days = sum(counts.known(stretch) for stretch in stretches)
    return Chance(days, sum(counts.had(stretch) for stretch in stretches)) if days else None


def count_findings(jobs: Iterable[Job], suited_days: Mapping[str, CountedDays]) -> list[Finding]:
    """Return the cautions on jobs that had no suited day in one year of ten, or in half of them."""
    found = []
    for job in jobs:
        counted = suited_days.get(job.id)
        if counted is None:
            continue
        if counted.typical == 0:
            found.append(
                finding(DayCaution.HARDLY_A_DAY, about_job(job.id), missed=job.step.if_missed)
            )
        elif counted.least == 0:
            found.append(
                finding(
                    DayCaution.NO_DAY_IN_SOME_YEARS, about_job(job.id), missed=job.step.if_missed
                )
            )
    return found
