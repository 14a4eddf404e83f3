"""Season markers as the owner saw them: they move their own season, and no other."""

import datetime
from typing import Any

import pytest

from generator.inventory.entry import Typed
from generator.inventory.record import record_entry
from generator.plan.build.season_plan import make_plan
from generator.plan.model.job import OpenDates
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import BURN_DOWN, inventory_of, job_of
from tests.properties import SEASON, Data, small_property, write_property

LATER = datetime.date(2027, 4, 20)
# Step plan: the burn-down opens 10 days after weed green-up in its late year, and closes 10 days
# before the grass comes up in an early one. Typed: green-up 03-18, 03-28, 04-08.
GREEN_UP = "weed_green_up"


def saw(*days: str, sign: str = GREEN_UP, **more: Any) -> Data:
    """The small property with a marker seen on some days."""
    data = small_property()
    data["log"] = {
        "entries": [
            {"id": f"saw-{number}", "done_on": day, "markers_seen": [sign]} | more
            for number, day in enumerate(days)
        ]
    }
    return data


def plan_of(data: Data, season: int = SEASON, day: datetime.date = LATER) -> Plan:
    return make_plan(inventory_of(data), season, day)


def dates(plan: Plan, job_id: str = BURN_DOWN) -> OpenDates:
    return job_of(plan, job_id).dates


def shift(plan: Plan) -> datetime.timedelta:
    """How far after green-up in its late year, April 8, the burn-down opened."""
    (reason,) = (one for one in dates(plan).opens_reasons if one.sign == GREEN_UP)
    return datetime.timedelta(days=reason.offset_days)


def test_a_marker_that_was_seen_moves_its_season_and_leaves_the_years_alone() -> None:
    before, after = plan_of(small_property()), plan_of(saw("2027-03-21"))
    assert dates(before).opens == datetime.date(2027, 4, 8) + shift(before)
    assert dates(after).opens == datetime.date(2027, 3, 21) + shift(after)
    # early, typical and late year stay, and so does what waits for another marker
    assert dates(after).by_year == dates(before).by_year
    assert dates(after).closes == dates(before).closes
    assert after.land.signs is not None
    assert before.land.signs is not None
    assert after.land.signs.weed_green_up == before.land.signs.weed_green_up


def test_a_marker_seen_in_another_season_moves_nothing_in_this_one() -> None:
    assert dates(plan_of(saw("2026-03-21"))) == dates(plan_of(small_property()))


def test_a_marker_seen_after_the_plan_s_day_does_not_count_yet() -> None:
    early = plan_of(saw("2027-03-21"), day=datetime.date(2027, 3, 20))
    assert dates(early).opens == dates(plan_of(small_property())).opens


def test_a_marker_that_nobody_typed_is_known_once_it_is_seen() -> None:
    data = saw("2027-03-21")
    del data["property"]["season_signs"][GREEN_UP]
    plan = plan_of(data)
    assert dates(plan).opens == datetime.date(2027, 3, 21) + shift(plan)
    assert dates(plan).missing_signs == ()
    assert dates(plan).by_year == ()


def test_of_two_days_of_one_season_the_careful_one_counts() -> None:
    # what waits for it keeps to the last of them, what must be over before it to the first
    plan = plan_of(saw("2027-03-21", "2027-03-25"))
    assert dates(plan).opens == datetime.date(2027, 3, 25) + shift(plan)
    emerged = plan_of(
        saw("2027-05-02", "2027-04-28", sign="grass_emergence"), day=LATER.replace(month=5)
    )
    (closes,) = (one for one in dates(emerged).closes_reasons if one.sign == "grass_emergence")
    assert closes.day == datetime.date(2027, 4, 28) + datetime.timedelta(days=closes.offset_days)


def test_a_correction_takes_a_marker_back() -> None:
    data = saw("2027-03-21")
    data["log"]["entries"].append(
        {"id": "back", "done_on": "2027-03-22", "corrects": "saw-0", "not_done": True}
    )
    assert dates(plan_of(data)) == dates(plan_of(small_property()))


def test_it_says_that_it_was_seen_to_the_owner_alone() -> None:
    data = saw("2027-03-21")
    plan = plan_of(data)
    (reason,) = (one for one in dates(plan).opens_reasons if one.sign == GREEN_UP)
    assert reason.by == "seen"
    assert reason.rests_on is not None
    assert reason.rests_on.kind == "seen"
    (reader,) = inventory_of(data).readers
    theirs = seen_by(plan, reader)
    assert theirs.seen == ()
    handed = job_of(theirs, f"strip-1/{SEASON}/spring_burn_down")
    assert handed.dates.opens == dates(plan).opens
    assert all(one.rests_on is None for one in handed.dates.opens_reasons)


TEN = [f"{year}-03-{10 + year - 2018:02}" for year in range(2018, 2028)]


def test_ten_seasons_give_an_early_a_typical_and_a_late_year_of_one_s_own() -> None:
    (nine,) = plan_of(saw(*TEN[1:])).seen
    assert len(nine.seasons) == 9
    assert nine.days is None
    (ten,) = plan_of(saw(*TEN)).seen
    assert ten.days is not None
    # by hand: March 10 to 19, one a year. One in ten lies at 10.9, the middle at 14.5, nine in
    # ten at 18.1; early goes down to a whole day, late up, half a day of the middle down
    assert (ten.days.early, ten.days.typical, ten.days.late) == ((3, 10), (3, 14), (3, 19))


def test_ten_seasons_of_one_s_own_stand_beside_what_was_typed_and_move_nothing() -> None:
    others = plan_of(saw(*TEN[:-1], "2017-03-09"))
    assert dates(others) == dates(plan_of(small_property()))


@pytest.mark.parametrize(
    ("day", "asked"),
    [
        # early year March 18, late year April 8: a month and more before and after
        ("2027-02-14", True),
        ("2027-02-15", False),
        ("2027-05-09", False),
        ("2027-05-10", True),
        ("2026-10-10", True),
    ],
)
def test_a_marker_seen_far_from_its_years_is_asked_about_until_it_is_confirmed(
    day: str, asked: bool
) -> None:
    data, late = saw(day), datetime.date(2027, 6, 1)
    codes = {one.code for one in plan_of(data, day=late).findings}
    assert ("C440" in codes) == asked
    data["log"]["entries"].append({"id": "sure", "done_on": "2027-05-20", "confirms": ["saw-0"]})
    assert "C440" not in {one.code for one in plan_of(data, day=late).findings}


@pytest.mark.parametrize("sign", ["weed_greenup", "oak_leaves"])
def test_a_marker_that_there_is_not_is_refused(sign: str, tmp_path: Any) -> None:
    land = write_property(tmp_path / "land", small_property())
    recorded = record_entry(
        land, Typed("2027-03-21", seen=(sign,)), lambda _before, _after: (), yes=False
    )
    assert recorded.entry is None
    (fault,) = recorded.faults
    assert fault.startswith("--seen")
    assert "weed_green_up" in fault
