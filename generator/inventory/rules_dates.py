"""Rules between fields of dates, people and papers."""

from collections.abc import Iterator
from itertools import pairwise

from generator.inventory.dates import ALL_PLACES, CLOCK, HUNTED, DateRange
from generator.inventory.meant import nearest
from generator.inventory.papers import Contract, OneCall, Permit
from generator.inventory.problems import did_you_mean, shown_value
from generator.inventory.rule import Broken, Rule
from generator.inventory.rules_records import TIME
from generator.inventory.schema import Inventory
from generator.reference.zones import zone_names

# Longer ones that come back every year would lie over themselves.
LONGEST_RANGE_DAYS = 365
# Names that the zone database keeps, and by which sunrise would be an hour off all summer.
OF_NO_PLACE = frozenset({"EST", "MST", "HST", "Factory"})
# What clocks and forecasts call the zones of the United States, by their standard or summer time.
SHORT_NAMES = {
    short: zone
    for zone, shorts in {
        "America/New_York": ("est", "edt", "et", "eastern"),
        "America/Chicago": ("cst", "cdt", "ct", "central"),
        "America/Denver": ("mst", "mdt", "mt", "mountain"),
        "America/Los_Angeles": ("pst", "pdt", "pt", "pacific"),
        "America/Anchorage": ("akst", "akdt", "alaska"),
        "Pacific/Honolulu": ("hst", "hawaii"),
    }.items()
    for short in shorts
}


def _first_before_last(inventory: Inventory) -> Iterator[Broken]:
    for span in inventory.dates:
        days = (span.last - span.first).days + 1
        if days < 1:
            what = f"the last day {span.last} is before the first day {span.first}"
            accepted = "first, then last; over the new year with its own year"
            yield Broken(span.where_of("last"), what, accepted)
        elif days > LONGEST_RANGE_DAYS and span.every_year:
            what = f"dates of {days} days cannot come back every year"
            accepted = "at most a year from first to last, or no every_year"
            yield Broken(span.where_of("every_year"), what, accepted)


def _all_or_places(inventory: Inventory) -> Iterator[Broken]:
    all_of_them: tuple[DateRange | Permit | Contract | OneCall, ...] = (
        *inventory.dates,
        *inventory.permits,
        *inventory.contracts,
        *inventory.one_calls,
    )
    for held in all_of_them:
        if ALL_PLACES in held.places and len(held.places) > 1:
            what = f"{shown_value(held.id)} holds on all places and on some"
            yield Broken(held.where_of("places"), what, "all alone, or the places one by one")


def _hours_of_helpers(inventory: Inventory) -> Iterator[Broken]:
    for helper in inventory.helpers:
        if helper.weekend_hours is None and not helper.months:
            what = f"helper {shown_value(helper.id)} has no hours"
            yield Broken(
                helper.where, what, "weekend_hours, months, or both; 0 where there are none"
            )


def _months_of_helpers(inventory: Inventory) -> Iterator[Broken]:
    for helper in inventory.helpers:
        seen: set[str] = set()
        for month in helper.months:
            if month.month in seen:
                what = f"month {month.month} is typed twice"
                yield Broken(month.where_of("month"), what, "each month once, with all its hours")
            seen.add(month.month)


def _licences(inventory: Inventory) -> Iterator[Broken]:
    for applicator in inventory.applicators:
        held = applicator.licence_class != "none"
        if not held and (applicator.licence_expires_on or applicator.fits or applicator.for_hire):
            what = (
                f"applicator {shown_value(applicator.id)} has no license, and says what it covers"
            )
            where = applicator.where_of("licence_expires_on", "fits", "for_hire")
            yield Broken(where, what, "the class of the license, or nothing beside none")
        elif applicator.for_hire and applicator.licence_class == "private":
            what = f"applicator {shown_value(applicator.id)} sprays for hire by a private license"
            accepted = "for_hire: false, or the class that covers hire"
            yield Broken(applicator.where_of("for_hire"), what, accepted)


def _days_of_papers(inventory: Inventory) -> Iterator[Broken]:
    papers: tuple[Permit | Contract, ...] = (*inventory.permits, *inventory.contracts)
    for paper in papers:
        if paper.approved_on and paper.expires_on and paper.expires_on < paper.approved_on:
            what = f"{shown_value(paper.id)} ends on {paper.expires_on}, before it was approved"
            yield Broken(paper.where_of("expires_on"), what, "approved_on first, expires_on later")
    for call in inventory.one_calls:
        named = ("asked_on", "clear_on", "expires_on")
        days = [(name, day) for name in named if (day := getattr(call, name)) is not None]
        for (_, before), (name, day) in pairwise(days):
            if day < before:
                what = f"the days of {shown_value(call.id)} are not in order"
                accepted = "asked_on, then clear_on, then expires_on"
                yield Broken(call.where_of(name), what, accepted)
                break


def _readers_once(inventory: Inventory) -> Iterator[Broken]:
    seen: set[str] = set()
    for contractor in inventory.contractors:
        if contractor.reader is not None and contractor.reader in seen:
            what = f"two contractors are reader {shown_value(contractor.reader)}"
            yield Broken(contractor.where_of("reader"), what, "one contractor for a reader")
        seen.add(contractor.reader or "")


def _time_zone(inventory: Inventory) -> Iterator[Broken]:
    name = inventory.property.time_zone
    if name in OF_NO_PLACE or (name is not None and name not in zone_names()):
        # only zones by a place are offered: of the short names several know no summer time
        places = [zone_name for zone_name in sorted(zone_names()) if "/" in zone_name]
        short = SHORT_NAMES.get(name.casefold())
        close = (short,) if short is not None else nearest(name, places)
        cure = did_you_mean(close) if close else "its name, as America/Chicago"
        what = f"there is no time zone {shown_value(name)}"
        if name in OF_NO_PLACE:
            what = f"{shown_value(name)} is the zone of no place: it has no summer time"
        yield Broken(inventory.property.where_of("time_zone"), what, cure)


def _hours_of_hunting(inventory: Inventory) -> Iterator[Broken]:
    kinds = {span.id: span.kind for span in inventory.dates}
    seen: set[str] = set()
    for rule in inventory.shooting_hours:
        for number, dates in enumerate(rule.dates):
            where = rule.where_of("dates", number=number)
            if kinds[dates] not in HUNTED:
                what = f"{shown_value(dates)} are no hunting dates"
                yield Broken(where, what, "dates of kind hunting or turkey")
            elif dates in seen:
                what = f"dates {shown_value(dates)} have shooting hours twice"
                yield Broken(where, what, "dates of their own for each kind of game")
            seen.add(dates)


def _end_of_hours(inventory: Inventory) -> Iterator[Broken]:
    for rule in inventory.shooting_hours:
        after, clock = rule.ends_after_minutes, rule.ends_at
        if rule.ends == CLOCK and (clock is None or after is not None):
            what = "shooting hours that end by the clock say no time, or say minutes"
            where = rule.where_of("ends_after_minutes", "ends")
            yield Broken(where, what, "ends_at alone, as in 13:00")
        elif rule.ends != CLOCK and (after is None or clock is not None):
            what = f"shooting hours that end by {rule.ends} say no minutes, or a time of the clock"
            where = rule.where_of("ends_at", "ends")
            yield Broken(where, what, "ends_after_minutes alone, 0 for none")
        elif clock is not None and not TIME.fullmatch(clock):
            what = f"{shown_value(clock)} for ends_at is no time of day"
            yield Broken(
                rule.where_of("ends_at"), what, "hours and minutes of the day, as in 13:00"
            )


DATES_RULES = (
    Rule(
        "F380",
        "Dates run from a first to a last day, within a year.",
        _first_before_last,
        alone=True,
    ),
    Rule("F381", "Dates and papers hold on places, or on all of them.", _all_or_places, alone=True),
    Rule("F382", "A helper has hours.", _hours_of_helpers, alone=True),
    Rule("F383", "Free hours are typed once for a month.", _months_of_helpers, alone=True),
    Rule("F384", "What a license covers goes with its class.", _licences, alone=True),
    Rule("F385", "A paper begins before it ends.", _days_of_papers, alone=True),
    Rule("F386", "A reader is one contractor.", _readers_once),
    Rule("F387", "A time zone has a name that is known.", _time_zone),
    Rule("F388", "Shooting hours hold on hunting dates, one rule on each.", _hours_of_hunting),
    Rule("F389", "Shooting hours end by the sun or by the clock.", _end_of_hours, alone=True),
)
