"""Shooting hours: the owner's rule on the times of the sun, rounded inwards, by the clock there."""

import datetime
from typing import Any

import pytest

from generator.plan.build.season_plan import make_plan
from generator.plan.days.shooting import clock_changes, on_stand, weeks
from generator.plan.model.plan import HuntedDates, Plan
from generator.reference.zones import zone, zone_names
from tests.plan.planned import inventory_of, planned
from tests.properties import Data, small_property

RULE: Data = {
    "id": "deer",
    "dates": "season",
    "begins": "sunrise",
    "begins_before_minutes": 30,
    "ends": "sunset",
    "ends_after_minutes": 30,
    "source": "booklet, invented",
    "looked_up_on": "2026-08-02",
}
SPRINGFIELD: Data = {"location_lat_lon": [39.78, -89.65], "time_zone": "America/Chicago"}
FALL = ("2026-10-01", "2027-01-10")


def hunting(at: Data, first: str, last: str, *, kind: str = "hunting", **changes: Any) -> Plan:
    """The plan of a property with hunting dates and a rule, or without where its id is None."""
    data = small_property()
    data["property"] |= at
    del data["property"]["emergency"]["gate_lat_lon"]  # it lies in Iowa
    dates = {"id": "season", "kind": kind, "first": first, "last": last, "places": "all"}
    rule = {name: one for name, one in (RULE | changes).items() if one is not None}
    data["dates"] = {"dates": [dates], "shooting_hours": [rule] if "id" in rule else []}
    return planned(data)


def hunted(at: Data, first: str, last: str, **changes: Any) -> HuntedDates:
    (one,) = hunting(at, first, last, **changes).hunted
    return one


def hours(at: Data, day: str, **changes: Any) -> tuple[str, str]:
    """When the hours of one day begin and end."""
    (one,) = hunted(at, day, day, **changes).days
    assert one.starts is not None
    assert one.ends is not None
    return f"{one.starts:%H:%M}", f"{one.ends:%H:%M}"


# By ephemeris DE421 (tests/published/sun.yaml): Honolulu, Aug 10, 2026, sunrise 16:08:22 and
# sunset 5:04:53 UTC of the next day, civil dawn 15:45:02, dusk 5:28:10; ten hours behind UTC.
HONOLULU: Data = {"location_lat_lon": [21.31, -157.86], "time_zone": "Pacific/Honolulu"}
# Place near 41 north, Sep 15, 2026: sunrise 11:52:45, sunset 0:20:58, dawn 11:25:07, dusk
# 0:48:31 UTC; five hours behind in summer.
IOWA: Data = {"location_lat_lon": [41.03, -93.02], "time_zone": "America/Chicago"}
DAY = "2026-09-15"
NONE: Data = {"begins_before_minutes": 0, "ends_after_minutes": 0}


def test_the_hours_of_a_day_by_an_ephemeris_rounded_inwards() -> None:
    assert hours(IOWA, DAY, **NONE) == ("06:53", "19:20")
    assert hours(IOWA, DAY) == ("06:23", "19:50")
    assert hours(IOWA, DAY, begins="civil_dawn", ends="civil_dusk", **NONE) == ("06:26", "19:48")


def test_springfield_in_november() -> None:
    """Sunrise 06:43:39, sunset 16:42:27 by ephemeris DE421 on Nov 15, 2025.

    With half an hour at both ends, inwards: 06:14 and 17:12.
    """
    data = small_property()
    data["property"] |= SPRINGFIELD
    dates = {"id": "season", "kind": "hunting", "first": "2025-11-15", "last": "2025-11-15",
             "places": "all"}  # fmt: skip
    data["dates"] = {"dates": [dates], "shooting_hours": [RULE | {"looked_up_on": "2025-08-02"}]}
    plan = make_plan(inventory_of(data), 2026, datetime.date(2025, 9, 1))
    (one,) = plan.hunted
    (day,) = one.days
    assert day.starts is not None
    assert day.ends is not None
    assert (f"{day.starts:%H:%M}", f"{day.ends:%H:%M}") == ("06:14", "17:12")


def test_a_sunset_past_midnight_utc_stands_on_its_own_day() -> None:
    day = datetime.date(2026, 9, 10)
    (one,) = hunted(HONOLULU, day.isoformat(), day.isoformat()).days
    assert one.sunset is not None
    assert one.sunset.date() == day
    assert one.sunset.astimezone(datetime.UTC).date() == datetime.date(2026, 9, 11)


def test_hours_that_end_by_the_clock() -> None:
    by_clock = {"ends": "clock", "ends_after_minutes": None, "ends_at": "13:00"}
    assert hours(IOWA, "2027-04-20", kind="turkey", **by_clock)[1] == "13:00"


def test_the_rule_may_be_typed_in_hours() -> None:
    in_hours = {"begins_before_minutes": None, "begins_before_hours": 0.5}
    assert hours(IOWA, DAY, **in_hours) == hours(IOWA, DAY)


def test_clocks_go_back_in_november_and_not_everywhere() -> None:
    """The first Sunday of November, at two in the morning; Arizona keeps its time."""
    one = hunted(IOWA, *FALL)
    assert clock_changes(one) == (datetime.date(2026, 11, 1),)
    around = (datetime.date(2026, 10, 31), datetime.date(2026, 11, 1))
    saturday, sunday = (day for day in one.days if day.day in around)
    assert saturday.starts is not None
    assert sunday.starts is not None
    earlier = saturday.starts.replace(tzinfo=None) - sunday.starts.replace(tzinfo=None)
    assert earlier + datetime.timedelta(days=1) == pytest.approx(
        datetime.timedelta(minutes=59), abs=datetime.timedelta(minutes=1)
    )
    assert clock_changes(hunted(IOWA | {"time_zone": "America/Phoenix"}, *FALL)) == ()


def test_no_hours_without_a_rule_and_no_times_without_a_place_or_a_zone() -> None:
    one = hunted(IOWA, DAY, DAY, id=None)
    assert one.hours is None
    (day,) = one.days
    assert day.sunrise is not None
    assert (day.starts, day.ends) == (None, None)
    for left_out in IOWA:
        known = {name: value for name, value in IOWA.items() if name != left_out}
        data = small_property()
        data["property"].pop("location_lat_lon", None)
        data["property"] |= known
        data["dates"] = {"dates": [{"id": "season", "kind": "hunting", "first": DAY, "last": DAY,
                                    "places": "all"}]}  # fmt: skip
        (bare,) = planned(data).hunted
        assert bare.days == ()


def test_where_the_sun_does_not_rise_there_are_no_hours() -> None:
    north = {"location_lat_lon": [70.0, -150.0], "time_zone": "America/Anchorage"}
    (one,) = hunted(north, "2026-12-21", "2026-12-21").days
    assert (one.sunrise, one.sunset, one.starts, one.ends) == (None,) * 4


def test_a_week_holds_on_each_of_its_days() -> None:
    one = hunted(IOWA, *FALL)
    found = weeks(one)
    assert found[0].first == datetime.date(2026, 10, 1)
    assert all(week.first.weekday() == 6 for week in found[1:])
    assert found[-1].last == datetime.date(2027, 1, 10)
    by_day = {day.day: day for day in one.days}
    for week in found:
        for number in range((week.last - week.first).days + 1):
            day = by_day.pop(week.first + datetime.timedelta(days=number))
            assert day.starts is not None
            assert day.ends is not None
            assert week.starts is not None
            assert week.ends is not None
            assert week.starts >= day.starts.time()
            assert week.ends <= day.ends.time()
    assert by_day == {}


def test_a_week_is_cut_where_days_begin_or_end_on_which_nobody_goes_in() -> None:
    one = hunted(IOWA, "2026-10-04", "2026-10-17")
    closed = ((datetime.date(2026, 10, 7), datetime.date(2026, 10, 12)),)
    found = weeks(one, closed)
    assert [(week.first.day, week.last.day, week.closed) for week in found] == [
        (4, 6, False), (7, 10, True), (11, 12, True), (13, 17, False)
    ]  # fmt: skip
    assert [week.closed for week in weeks(one)] == [False, False]


def test_a_week_in_which_clocks_change_is_cut() -> None:
    """In Europe clocks go back on the last Sunday of October; in Cairo on its last Thursday."""
    cairo = {"location_lat_lon": [30.05, 31.25], "time_zone": "Africa/Cairo"}
    found = weeks(hunted(cairo, "2026-10-25", "2026-10-31"))
    assert [(week.first.day, week.last.day) for week in found] == [(25, 29), (30, 31)]


def test_a_rule_from_before_the_last_season_is_told_until_it_is_looked_up_again() -> None:
    def told(day: str) -> list[str]:
        plan = hunting(IOWA, *FALL, looked_up_on=day)
        return [one.code for one in plan.findings_on("season") if one.code == "C315"]

    assert told("2026-01-10") == ["C315"]
    assert told("2026-01-11") == []


def test_dates_of_another_stand_do_not_hold_on_a_stand() -> None:
    data = small_property()
    data["property"] |= IOWA
    data["stands"] = {"stands": [{"id": "oak", "name": "Oak"}, {"id": "elm", "name": "Elm"}]}
    dates: Data = {"id": "season", "kind": "hunting", "first": DAY, "last": DAY}
    data["dates"] = {"dates": [dates | {"places": "oak"}, dates | {"id": "all", "places": "all"}]}
    plan = planned(data)
    assert [one.dates.id for one in on_stand(plan.hunted, "oak")] == ["all", "season"]
    assert [one.dates.id for one in on_stand(plan.hunted, "elm")] == ["all"]


def test_zones_are_those_of_the_package_and_no_file_of_the_machine() -> None:
    assert {"America/Chicago", "America/Indiana/Knox", "Pacific/Honolulu"} <= zone_names()
    for wrong in ("CDT", "../zones", "/etc/localtime", ""):
        with pytest.raises(ValueError, match="is no time zone"):
            zone(wrong)


@pytest.mark.parametrize(
    ("first", "last", "change"),
    [("2026-10-28", "2026-11-08", "2026-11-01"), ("2027-03-08", "2027-03-20", "2027-03-14")],
)
def test_no_row_spans_the_day_on_which_the_clocks_change(
    first: str, last: str, change: str
) -> None:
    """First Sunday of November and second of March, 15 U.S.C. 260a; wherever the dates begin."""
    begins, ends = datetime.date.fromisoformat(first), datetime.date.fromisoformat(last)
    changes = datetime.date.fromisoformat(change)
    for days in range((changes - begins).days):
        start = begins + datetime.timedelta(days=days)
        one = hunted(IOWA, start.isoformat(), ends.isoformat(), kind="turkey")
        found = weeks(one)
        assert clock_changes(one) == (changes,)
        assert [week for week in found if week.first < changes <= week.last] == []
        assert changes in {week.first for week in found}
        # whole hours differ between the two rows: none of them is told by the clock of the other
        before = next(week for week in found if week.last == changes - datetime.timedelta(days=1))
        after = next(week for week in found if week.first == changes)
        assert before.starts is not None
        assert after.starts is not None
        moved = abs(before.starts.hour * 60 + before.starts.minute
                    - after.starts.hour * 60 - after.starts.minute)  # fmt: skip
        assert moved > 45
