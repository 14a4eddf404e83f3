"""The page of mornings and evenings that each stand can be counted on, by month."""

import datetime

from generator.book.pages.written import STANDS, Written, address_of, from_template
from generator.dataclass import dataclass
from generator.inventory.dates import HUNTED, ShootingHours
from generator.inventory.places import Stand
from generator.plan.days.shooting import here_at
from generator.plan.days.sit_hours import SIT_PARTS, SitHours, SitLengths, sits_of
from generator.plan.days.sits_counted import (
    SitsOfMonth,
    WindsOfMonth,
    counted_sits,
    is_counted,
    winds_of_sits,
)
from generator.plan.model.markers import WindSeen
from generator.plan.model.plan import Plan
from generator.plan.winds.widths import EIGHT_WINDS_DEG
from generator.reference.library import methods, values
from generator.working import Given, Reference

_TITLE = "Mornings and evenings to count on"
_MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip
_FIRST_MONTH_OF_SEASON = 9
_HOURS_IN_DAY = 24
_EPOCH = datetime.date(1970, 1, 1)


@dataclass(frozen=True, slots=True)
class StandRow:
    """A stand in a month: its mornings and its evenings, None where the record has none."""

    stand: Stand
    sits: tuple[SitsOfMonth | None, ...]


@dataclass(frozen=True, slots=True)
class MonthShown:
    """A month with the sits of every stand, and how often each wind blew in its sits."""

    name: str
    is_hunted: bool
    rows: tuple[StandRow, ...]
    winds: WindsOfMonth | None


def has_wind_months(plan: Plan) -> bool:
    """Return whether the book has the page: the owner's does, with hours of wind and a stand."""
    seen = plan.weather.winds if plan.weather is not None else ()
    return plan.reader == "owner" and bool(seen and plan.land.stands)


def wind_months_page(plan: Plan) -> list[Written]:
    """Return the page of sits by month, or none without a record of hourly wind and a stand."""
    if plan.weather is None or not has_wind_months(plan):
        return []
    seen = plan.weather.winds[0]
    sits = _sits(plan, seen)
    months = _months(plan, seen, sits) if sits is not None else []
    first, last = (
        _EPOCH + datetime.timedelta(days=hour // _HOURS_IN_DAY)
        for hour in (seen.record.hours[0], seen.record.hours[-1])
    )
    return [
        from_template(
            plan,
            "wind-months.md",
            _TITLE,
            STANDS,
            "wind_months",
            ["wind", "mornings", "evenings", "months", *EIGHT_WINDS_DEG],
            seen=seen,
            first=first,
            last=last,
            is_placed=sits is not None,
            months=months,
            others=[stand for stand in plan.land.stands if not is_counted(stand)],
            hunted=[month for month in months if month.is_hunted],
            winds=_winds([month.winds for month in months if month.is_hunted and month.winds]),
            years=last.year - first.year + 1,
            is_told=any(
                one is not None and one.least is not None
                for month in months
                for row in month.rows
                for one in row.sits
            ),
            rule=_rule(plan),
            lengths=_lengths(plan),
            values=values(),
            methods=methods(),
            address_of=address_of,
        )
    ]


def _winds(months: list[WindsOfMonth]) -> list[tuple[str, list[str]]]:
    """Return of each wind, of calms and of winds without a direction the share of each month."""
    rows = [
        (wind, [winds.blown_fraction[number] for winds in months])
        for number, wind in enumerate(EIGHT_WINDS_DEG)
    ]
    rows.append(("calm", [winds.calm_fraction for winds in months]))
    rows.append(("no one direction", [winds.turning_fraction for winds in months]))
    return [(name, [f"{100 * share:.0f}" for share in shares]) for name, shares in rows]


def _lengths(plan: Plan) -> tuple[Given | Reference, Given | Reference]:
    """Return how long a morning and an evening take: as typed, else as is common practice."""
    land, known = plan.land, values()
    return (
        land.morning_sit_hours or known["morning_sit_hours"],
        land.evening_sit_hours or known["evening_sit_hours"],
    )


def _rule(plan: Plan) -> ShootingHours | None:
    """Return the rule for the light: that of the first hunting dates that have one."""
    hunting = (hunted for hunted in plan.hunted if hunted.dates.kind == HUNTED[0])
    return next((hunted.hours for hunted in hunting if hunted.hours is not None), None)


def _sits(plan: Plan, seen: WindSeen) -> list[SitHours] | None:
    """Return the sits of every day of the record; None where place or clock is not typed."""
    here = here_at(plan.land.location_lat_lon, plan.land.time_zone)
    if here is None:
        return None
    hours = seen.record.hours
    days = range(hours[0] // _HOURS_IN_DAY - 1, hours[-1] // _HOURS_IN_DAY + 1)
    morning, evening = _lengths(plan)
    lengths = SitLengths(morning.value, evening.value, values()["steady_air_hours"].value)
    calendar = (_EPOCH + datetime.timedelta(days=day) for day in days)
    return list(sits_of(calendar, _rule(plan), here, lengths))


def _months(plan: Plan, seen: WindSeen, sits: list[SitHours]) -> list[MonthShown]:
    """Return the months of the record: those hunted first, each in the order of the season."""
    hunted = {day.day.month for dates in plan.hunted for day in dates.days}
    winds = winds_of_sits(seen.record, sits)
    stands = [
        (stand, counted_sits(stand, seen.record, sits))
        for stand in plan.land.stands
        if is_counted(stand)
    ]
    in_season = [(_FIRST_MONTH_OF_SEASON - 1 + n) % len(_MONTHS) + 1 for n in range(len(_MONTHS))]
    return [
        MonthShown(
            _MONTHS[month - 1],
            month in hunted,
            tuple(
                StandRow(stand, tuple(found.get((month, part)) for part in SIT_PARTS))
                for stand, found in stands
            ),
            winds.get(month),
        )
        for month in sorted(in_season, key=lambda month: month not in hunted)
        if any((month, part) in found for _, found in stands for part in SIT_PARTS)
    ]
