"""Work filled into weekends: by hand, and against the condition that tells when it fits at all.

Work with first and last days fits into free hours if and only if, for every run of weekends, the
hours that can fall nowhere else are no more than the hours free in it (the marriage condition of
Hall, for intervals; from memory). Filling by the job that closes first must find room whenever
there is room.
"""

import datetime
import itertools
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.compute.buying import TOTAL_HOURS
from generator.inventory.people import Helper
from generator.plan.model.job import OpenDates
from generator.plan.model.plan import Plan, WorkTime
from generator.plan.money.weekends import can_be_done, weekends
from tests.plan.planned import planned
from tests.plan.test_people_and_papers import MOWING, mown
from tests.properties import SEASON, Data, small_property

DAY = datetime.date
FIRST = DAY(2026, 9, 5)  # a Saturday
ONE_WEEK = datetime.timedelta(days=7)


def with_hours(weekend_hours: float, *months: Data) -> Plan:
    """The acre mown with a machine, by one helper."""
    return planned(mown({"id": "me", "weekend_hours": weekend_hours, "months": list(months)}))


PLAN = with_hours(8)


def loaded(plan: Plan, free: float, work: list[tuple[int, int, float]]) -> Plan:
    """The plan with jobs of so many hours, each open from one weekend to another, from the first.

    Everybody's free hours are the same on every weekend.
    """
    job = next(one for one in plan.jobs if one.id == MOWING)
    time = next(one for one in plan.times if one.job_id == MOWING)
    jobs, times = [], []
    for number, (first, last, hours) in enumerate(work):
        dates = replace(job.dates, opens=FIRST + first * ONE_WEEK, closes=FIRST + last * ONE_WEEK)
        jobs.append(replace(job, id=f"job-{number}", dates=dates, days=None))
        worked = TOTAL_HOURS(f"job-{number}/hours", parts=(replace(time.hours, value=hours),))
        times.append(replace(time, job_id=f"job-{number}", hours=worked))
    (helper,) = plan.land.helpers
    assert helper.weekend_hours is not None
    free_hours = replace(helper.weekend_hours, value=free)
    return replace(
        plan,
        as_of=FIRST,
        jobs=tuple(jobs),
        times=tuple(times),
        land=replace(plan.land, helpers=(replace(helper, weekend_hours=free_hours),)),
    )


def fits(free: float, work: list[tuple[int, int, float]]) -> bool:
    """Whether no run of weekends has more work that can fall nowhere else than free hours."""
    ends = range(6)
    return all(
        sum(hours for first, last, hours in work if begin <= first and last <= end)
        <= free * (end - begin + 1) + 1e-9
        for begin, end in itertools.combinations_with_replacement(ends, 2)
    )


WORK = st.lists(
    st.tuples(st.integers(0, 5), st.integers(0, 5), st.integers(1, 12)).map(
        lambda one: (min(one[:2]), max(one[:2]), float(one[2]))
    ),
    min_size=1,
    max_size=6,
)


@settings(deadline=None, max_examples=150)
@given(WORK, st.integers(1, 10))
def test_what_fits_is_fitted_and_what_does_not_is_said(
    work: list[tuple[int, int, float]], free: int
) -> None:
    found = weekends(loaded(PLAN, free, work))
    assert (not found.without_room) == fits(free, work)
    done = [part for one in found.weekends for part in one.jobs]
    for number, (first, last, hours) in enumerate(work):
        mine = [part.hours.value for part in done if part.job.id == f"job-{number}"]
        over = [part.hours.value for part in found.without_room if part.job.id == f"job-{number}"]
        assert sum(mine) + sum(over) == pytest.approx(hours)
        days = [
            one.saturday
            for one in found.weekends
            for part in one.jobs
            if part.job.id == f"job-{number}"
        ]
        assert all(FIRST + first * ONE_WEEK <= day <= FIRST + last * ONE_WEEK for day in days)
    for one in found.weekends:
        assert one.free.value == free
        assert (one.work.value if one.work else 0) <= free + 1e-9


def test_the_mowing_falls_on_its_first_weekend() -> None:
    """By hand: 0.515625 hours, open from Jun 1, 2027, a Tuesday; the first Saturday is the 5th."""
    found = weekends(with_hours(8))
    (busy,) = [one for one in found.weekends if one.work is not None]
    assert busy.saturday == DAY(2027, 6, 5)
    assert busy.work is not None
    assert busy.work.value == pytest.approx(0.515625)
    assert found.without_room == ()
    assert found.weekends[0].saturday == DAY(2026, 8, 22)
    assert found.weekends[-1].saturday == DAY(2027, 8, 28)


def test_a_month_that_is_otherwise_is_shared_among_its_weekends() -> None:
    """By hand: June 2027 has Saturdays on 5, 12, 19, 26, so 2 hours are half an hour on each."""
    found = weekends(with_hours(8, {"month": "june", "free_hours": 2}))
    june = [one for one in found.weekends if one.saturday.month == 6]
    assert [one.free.value for one in june] == [0.5] * 4
    busy = [(one.saturday, one.work.value) for one in found.weekends if one.work is not None]
    assert busy == [(DAY(2027, 6, 5), 0.5), (DAY(2027, 6, 12), pytest.approx(0.015625))]


def test_quiet_dates_take_their_weekends() -> None:
    data = mown({"id": "me", "weekend_hours": 8})
    quiet = {"id": "q", "kind": "quiet", "first": "2027-06-01", "last": "2027-06-20"}
    data["dates"] = {"dates": [quiet | {"places": ["lane"]}]}
    (busy,) = [one for one in weekends(planned(data)).weekends if one.work is not None]
    assert busy.saturday == DAY(2027, 6, 26)


def test_without_helpers_there_is_nothing_to_fill() -> None:
    found = weekends(planned(small_property()))
    assert (found.weekends, found.without_room) == ((), ())


def test_a_sunday_is_enough() -> None:
    job = next(one for one in PLAN.jobs if one.id == MOWING)
    sunday = DAY(2027, 6, 6)
    only = replace(job, dates=replace(job.dates, opens=sunday, closes=sunday))
    assert can_be_done(only, DAY(2027, 6, 5))
    assert not can_be_done(only, DAY(2027, 6, 12))
    undated = replace(job, dates=OpenDates(None, None, (), (), ()))
    assert not can_be_done(undated, DAY(2027, 6, 5))


def test_the_season_is_the_plan_s() -> None:
    assert PLAN.season == SEASON
    assert isinstance(PLAN.land.helpers[0], Helper)
    assert all(isinstance(one, WorkTime) for one in PLAN.times)
