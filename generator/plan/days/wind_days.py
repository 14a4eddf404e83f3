"""Past days on which the wind was within a label's range, out of a record hour by hour."""

import datetime
from collections.abc import Iterable, Iterator, Mapping

from generator.compute.suited import is_run_of_hours
from generator.inventory.weather import HourlyWind
from generator.plan.days.past_days import Past, spans_left
from generator.plan.days.spray_weather import Wind, tightest_wind
from generator.plan.model.days import ONE_DAY, Span, moved
from generator.plan.model.job import Job
from generator.plan.model.markers import WindSeen
from generator.plan.model.suited_days import WindUse
from generator.reference.library import values

_EPOCH = datetime.date(1970, 1, 1)
_HOURS_IN_DAY = 24
# The part of a day in which a field is sprayed, by the sun: wind is often still before and after
# it, and still air must not be sprayed in (common practice).
FIRST_HOUR, LAST_HOUR = 8, 18
# A day that lacks more of these hours is not known (common practice).
FEWEST_HOURS = 8
DEG_IN_AN_HOUR = 15
Speeds = tuple[float | None, ...]


def wind_by_day(record: HourlyWind, lon_deg: float) -> dict[datetime.date, Speeds]:
    """Return the wind of the working hours of every day of which enough hours are known."""
    by_hour = dict(zip(record.hours, record.speed_mph, strict=True))
    # by longitude, not by a time zone: no clock change moves the hours of the sun
    shift = round(lon_deg / DEG_IN_AN_HOUR)
    days = {(hour + shift) // _HOURS_IN_DAY for hour in record.hours}
    found = {}
    for day in sorted(days):
        begins = day * _HOURS_IN_DAY - shift
        hours = range(begins + FIRST_HOUR, begins + LAST_HOUR)
        speeds = tuple(by_hour.get(hour) for hour in hours)
        if sum(speed is not None for speed in speeds) >= FEWEST_HOURS:
            found[_EPOCH + datetime.timedelta(days=day)] = speeds
    return found


def wind_uses(
    jobs: Iterable[Job], winds: Iterable[WindSeen], ready: Mapping[str, Past], as_of: datetime.date
) -> dict[str, WindUse]:
    """Return by job, for sprayings whose label prints a wind, on how many past days it blew so."""
    known = next((found for seen in winds if (found := _known(seen))), None)
    if known is None:
        return {}
    uses = {}
    for job in jobs:
        wind = tightest_wind(job.mix) if job.mix is not None else None
        spans = spans_left(job, as_of)
        if wind is not None and spans:
            past = ready.get(job.step.suits) if job.step.suits is not None else None
            uses[job.id] = _use(spans, wind, known, past)
    return uses


def _known(seen: WindSeen) -> dict[datetime.date, Speeds]:
    at = seen.station.at_lat_lon
    return wind_by_day(seen.record, at[1]) if at is not None else {}


def _use(
    spans: tuple[Span, ...],
    wind: Wind,
    known: Mapping[datetime.date, Speeds],
    past: Past | None,
) -> WindUse:
    hours = int(values()["spray_hours"].value)
    days = in_range = also_known = both = 0
    for day in _days_of(spans, known):
        days += 1
        blew_so = is_run_of_hours(known[day], wind.low.value, wind.high.value, hours)
        in_range += blew_so
        suited = past.flag_on(day) if past is not None else None
        also_known += suited is not None
        both += blew_so and suited is True
    return WindUse(days, in_range, also_known, both)


def _days_of(
    spans: tuple[Span, ...], known: Mapping[datetime.date, Speeds]
) -> Iterator[datetime.date]:
    """Yield the known days that lie in the spans, in whichever year."""
    begins = spans[0][0].year
    # from the year before: spans over the new year may reach into the first one known
    for year in range(min(known).year - 1, max(known).year + 1):
        for first, last in spans:
            day, until = moved(first, year - begins), moved(last, year - begins)
            while day <= until:
                if day in known:
                    yield day
                day += ONE_DAY
