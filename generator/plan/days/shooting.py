"""Hours in which game may be taken, day by day: the owner's rule on the times of the sun.

Always inwards: the hours begin on the next whole minute and end on the last one, and what the
times of the sun may be off is taken from both ends first.
"""

import datetime
from collections.abc import Callable, Iterable, Iterator

from generator.compute import sun
from generator.dataclass import dataclass
from generator.inventory.dates import ALL_PLACES, CLOCK, HUNTED, ShootingHours
from generator.inventory.schema import Inventory
from generator.plan.findings.about_days import DayCaution
from generator.plan.findings.order import finding
from generator.plan.jobs.job_days import FIRST_OF_SEASON, LAST_OF_SEASON
from generator.plan.model.days import ONE_DAY, Span, comes_back, day_words, moved
from generator.plan.model.finding import Finding, Subject
from generator.plan.model.plan import HuntedDates, HuntedDay, HuntedWeek
from generator.plan.season.open_dates import day_in_season
from generator.reference.zones import zone
from generator.units import LatLon

_FIRST_DAY = datetime.date(2000, 1, 1)
SUNDAY = 6
MINUTE = datetime.timedelta(minutes=1)
MARGIN = datetime.timedelta(seconds=sun.MAY_BE_OFF_SECONDS)
BEGINS = {"sunrise": sun.sunrise_minutes, "civil_dawn": sun.civil_dawn_minutes}
_ENDS = {"sunset": sun.sunset_minutes, "civil_dusk": sun.civil_dusk_minutes}


@dataclass(frozen=True, slots=True)
class Here:
    """A point of the earth and the clock that is kept there."""

    at_lat_lon: LatLon
    clock: datetime.tzinfo

    def begins(
        self, by: str, day: datetime.date, before_minutes: float
    ) -> datetime.datetime | None:
        """Return the first whole minute, so long before sunrise or dawn; None without one."""
        found = BEGINS[by](*self.at_lat_lon, (day - _FIRST_DAY).days)
        if found is None:
            return None
        return _minute_up(_instant(day, found - before_minutes) + MARGIN).astimezone(self.clock)

    def ends(self, by: str, day: datetime.date, after_minutes: float) -> datetime.datetime | None:
        """Return the last whole minute, so long after sunset or dusk; None without one."""
        found = _ENDS[by](*self.at_lat_lon, (day - _FIRST_DAY).days)
        if found is None:
            return None
        return _minute(_instant(day, found + after_minutes) - MARGIN).astimezone(self.clock)

    def at(self, day: datetime.date, time: str) -> datetime.datetime:
        """Return a time of the clock on a day."""
        return datetime.datetime.combine(day, datetime.time.fromisoformat(time), self.clock)


def _instant(day: datetime.date, minutes: float) -> datetime.datetime:
    midnight = datetime.datetime.combine(day, datetime.time(), datetime.UTC)
    return midnight + datetime.timedelta(minutes=minutes)


def _minute(instant: datetime.datetime) -> datetime.datetime:
    return instant.replace(second=0, microsecond=0)


def _minute_up(instant: datetime.datetime) -> datetime.datetime:
    whole = _minute(instant)
    return whole if whole == instant else whole + MINUTE


def hunted_dates(inventory: Inventory, season: int) -> tuple[HuntedDates, ...]:
    """Return the hunting dates of a season with their hours on every day, the first to begin first.

    Without a location or a time zone the days are left out.
    """
    inside = (day_in_season(FIRST_OF_SEASON, season), day_in_season(LAST_OF_SEASON, season))
    rules = {dates_id: hours for hours in inventory.shooting_hours for dates_id in hours.dates}
    here = here_at(inventory.property.location_lat_lon, inventory.property.time_zone)
    found = [
        HuntedDates(dates, spans, rule, tuple(_days(spans, rule, here)) if here is not None else ())
        for dates in inventory.dates
        if dates.kind in HUNTED and (spans := comes_back(dates, inside))
        for rule in (rules.get(dates.id),)
    ]
    return tuple(sorted(found, key=lambda hunted: (hunted.spans, hunted.dates.id)))


def here_at(at: LatLon | None, time_zone: str | None) -> Here | None:
    """Return a point with its clock; None where either is not known."""
    return Here(at, zone(time_zone)) if at is not None and time_zone is not None else None


def _days(
    spans: Iterable[tuple[datetime.date, datetime.date]], rule: ShootingHours | None, here: Here
) -> Iterator[HuntedDay]:
    for first, last in spans:
        for number in range((last - first).days + 1):
            day = first + number * ONE_DAY
            up, down = here.begins("sunrise", day, 0), here.ends("sunset", day, 0)
            starts, ends = lawful_hours(day, rule, here) if rule is not None else (None, None)
            yield HuntedDay(day, up, down, starts, ends)


def lawful_hours(
    day: datetime.date, rule: ShootingHours, here: Here
) -> tuple[datetime.datetime | None, datetime.datetime | None]:
    """Return when game may be taken on a day, from and until; None where either is not known."""
    starts = here.begins(rule.begins, day, rule.begins_before_minutes.value)
    if rule.ends == CLOCK:
        assert rule.ends_at is not None
        ends: datetime.datetime | None = here.at(day, rule.ends_at)
    else:
        assert rule.ends_after_minutes is not None
        ends = here.ends(rule.ends, day, rule.ends_after_minutes.value)
    # with one end missing, or the two crossed, no hour is known to be lawful
    if starts is None or ends is None or ends < starts:
        return None, None
    return starts, ends


def on_stand(hunted: Iterable[HuntedDates], stand_id: str) -> tuple[HuntedDates, ...]:
    """Return the hunting dates that hold on a stand."""
    return tuple(
        hunt for hunt in hunted if ALL_PLACES in hunt.dates.places or stand_id in hunt.dates.places
    )


def weeks(hunted: HuntedDates, closed: tuple[Span, ...] = ()) -> tuple[HuntedWeek, ...]:
    """Return the days by weeks from Sunday to Saturday, with hours that hold on each of their days.

    A week in which the clocks change, or that is cut in two by days between or by days on which
    nobody goes in, stands as two. `closed` are those days.
    """
    groups: list[list[HuntedDay]] = []
    for day in hunted.days:
        before = groups[-1][-1] if groups else None
        if before is None or day.day.weekday() == SUNDAY or _is_apart(before, day, closed):
            groups.append([])
        groups[-1].append(day)
    return tuple(_week(group, closed) for group in groups)


def _is_apart(before: HuntedDay, after: HuntedDay, closed: tuple[Span, ...]) -> bool:
    is_a_break = after.day - before.day != ONE_DAY or _offset(before) != _offset(after)
    return is_a_break or _is_in(before.day, closed) != _is_in(after.day, closed)


def _is_in(day: datetime.date, spans: tuple[Span, ...]) -> bool:
    return any(first <= day <= last for first, last in spans)


def _offset(day: HuntedDay) -> datetime.timedelta | None:
    # at sunset the clocks of a day are those after its change, which comes by night
    return day.sunset.utcoffset() if day.sunset is not None else None


def _week(days: list[HuntedDay], closed: tuple[Span, ...]) -> HuntedWeek:
    return HuntedWeek(
        days[0].day,
        days[-1].day,
        _of_all(max, [(day.day, day.sunrise) for day in days]),
        _of_all(min, [(day.day, day.sunset) for day in days]),
        _of_all(max, [(day.day, day.starts) for day in days]),
        _of_all(min, [(day.day, day.ends) for day in days]),
        closed=_is_in(days[0].day, closed),
    )


def _of_all(
    choose: Callable[[list[datetime.timedelta]], datetime.timedelta],
    times: list[tuple[datetime.date, datetime.datetime | None]],
) -> datetime.time | None:
    """Return the latest or the earliest time of several days; None where a day has none."""
    # from midnight of its own day, so that an end after midnight is later than one before it
    since = [
        time.replace(tzinfo=None) - datetime.datetime.combine(day, datetime.time())
        for day, time in times
        if time is not None
    ]
    if len(since) < len(times):
        return None
    return (datetime.datetime.combine(times[0][0], datetime.time()) + choose(since)).time()


def clock_changes(hunted: HuntedDates) -> tuple[datetime.date, ...]:
    """Return the days among the hunting dates on which the clocks are changed."""
    return tuple(
        after.day
        for before, after in zip(hunted.days, hunted.days[1:], strict=False)
        if after.day - before.day == ONE_DAY and _offset(before) != _offset(after)
    )


def shooting_findings(hunted: Iterable[HuntedDates]) -> Iterator[Finding]:
    """Yield a caution on dates whose hours were looked up before the dates of a year ago ended."""
    for hunt in hunted:
        if hunt.hours is None:
            continue
        ended, looked = moved(hunt.spans[0][1], -1), hunt.hours.looked_up_on
        # looked up since then, it can be the rule of this season
        if looked <= ended:
            yield finding(
                DayCaution.HOURS_OF_BEFORE,
                Subject("dates", hunt.dates.id),
                hunt.hours.where,
                dates=hunt.dates.id,
                day=day_words(looked),
                ended=day_words(ended),
            )
