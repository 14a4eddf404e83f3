"""Open dates from season signs: the careful side, and what is not known."""

import datetime
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.inventory.fields import SeasonMarker, Where
from generator.inventory.schema import SeasonMarkers
from generator.plan.build.season_plan import make_plan
from generator.plan.model.job import DateReason, OpenDates
from generator.plan.season.open_dates import day_in_season, open_dates
from generator.reference.steps import Bound, Step, step_plans
from tests.plan.planned import BURN_DOWN, KILL, inventory_of, job_of, planned, stops_of
from tests.properties import small_property

SOURCE = "common_practice"


def a_step(opens: list[Bound], closes: list[Bound]) -> Step:
    """A step with these bounds."""
    return Step(
        id="step", name="Step", operation="mow", timing="seedlings", why="", why_source=SOURCE,
        opens=tuple(opens), closes=tuple(closes), settings=(), ticks=(), if_missed="",
    )  # fmt: skip


def on(month: int, day: int) -> Bound:
    """A bound on a day of the calendar."""
    return Bound((month, day), None, "typical", 0, SOURCE)


def at(sign: str, by: str, offset_days: int = 0) -> Bound:
    """A bound that waits for a sign."""
    return Bound(None, sign, by, offset_days, SOURCE)


def signs(**days: tuple[tuple[int, int], tuple[int, int], tuple[int, int]]) -> SeasonMarkers:
    """Typed signs as early, typical and late days."""
    where = Where("property.yaml", 1, 1)
    return SeasonMarkers(
        where=where,
        **{
            name: SeasonMarker(where=where, early=early, typical=typical, late=late, single=False)
            for name, (early, typical, late) in days.items()
        },
    )


@pytest.mark.parametrize(
    ("month_day", "day"),
    [
        ((9, 1), date(2026, 9, 1)),
        ((12, 31), date(2026, 12, 31)),
        ((1, 1), date(2027, 1, 1)),
        ((8, 31), date(2027, 8, 31)),
        ((2, 29), date(2027, 2, 28)),
    ],
)
def test_a_day_stands_in_the_season_named_by_its_spring(
    month_day: tuple[int, int], day: datetime.date
) -> None:
    assert day_in_season(month_day, 2027) == day


def test_a_leap_day_stands_in_a_leap_year() -> None:
    assert day_in_season((2, 29), 2028) == date(2028, 2, 29)


@given(st.dates(date(2026, 9, 1), date(2027, 8, 31)))
def test_every_day_of_a_season_comes_back(day: datetime.date) -> None:
    assert day_in_season((day.month, day.day), 2027) == day


def test_the_last_opening_and_the_first_closing_hold() -> None:
    typed = signs(
        weed_green_up=((3, 18), (3, 28), (4, 8)), grass_emergence=((5, 6), (5, 14), (5, 22))
    )
    step = a_step(
        [on(4, 1), at("weed_green_up", "late", 3)],
        [on(6, 1), at("grass_emergence", "early", -7)],
    )
    dates = open_dates(step, 2027, typed)
    assert (dates.opens, dates.closes) == (date(2027, 4, 11), date(2027, 4, 29))
    assert [one.day for one in dates.opens_reasons] == [date(2027, 4, 1), date(2027, 4, 11)]
    assert dates.missing_signs == ()


def test_a_sign_that_is_not_typed_leaves_its_end_open() -> None:
    typed = signs(weed_green_up=((3, 18), (3, 28), (4, 8)))
    step = a_step([at("weed_green_up", "late")], [on(6, 1), at("grass_emergence", "early")])
    dates = open_dates(step, 2027, typed)
    assert (dates.opens, dates.closes) == (date(2027, 4, 8), None)
    assert dates.missing_signs == ("grass_emergence",)
    # The day that is known is still told.
    assert [one.day for one in dates.closes_reasons] == [date(2027, 6, 1)]
    none = open_dates(step, 2027, None)
    assert (none.opens, none.closes) == (None, None)
    assert none.missing_signs == ("weed_green_up", "grass_emergence")


def test_every_step_keeps_to_the_careful_side() -> None:
    bounds = [
        (bound, side)
        for plan in step_plans().values()
        for step in plan.steps
        for side, ends in (("late", step.opens), ("early", step.closes))
        for bound in ends
        if bound.sign is not None
    ]
    assert len(bounds) >= 4
    assert all(bound.by == side for bound, side in bounds)


def cautions_on(job_id: str, sign: str, value: object) -> set[str]:
    """The findings on a job of the small property when one sign is typed so, or not at all."""
    data = small_property()
    data["property"]["season_signs"][sign] = value
    if value is None:
        del data["property"]["season_signs"][sign]
    return {one.code for one in planned(data).findings_on(job_id)}


def test_a_missing_sign_is_a_caution() -> None:
    assert "C206" in cautions_on(BURN_DOWN, "grass_emergence", None)
    assert "C206" not in cautions_on(BURN_DOWN, "grass_emergence", "05-14")
    assert "C206" not in cautions_on(KILL, "grass_emergence", None)


def test_dates_that_do_not_meet_are_a_stop() -> None:
    # Opens on the late green-up, Apr 8; an emergence of Apr 14 closes on the 7th.
    assert "S123" in cautions_on(BURN_DOWN, "grass_emergence", "04-14")
    assert "S123" not in cautions_on(BURN_DOWN, "grass_emergence", "04-15")


def test_nothing_is_measured_or_bought_for_a_job_without_a_day() -> None:
    # the kill opens on Sep 10; a freeze of Sep 18 closes it 7 days before, on the 11th
    data = small_property()
    data["property"]["season_signs"]["first_hard_freeze"] = "09-18"
    assert job_of(planned(data)).mix is not None
    data["property"]["season_signs"]["first_hard_freeze"] = "09-16"
    stopped = planned(data)
    assert stops_of(stopped) == {"S123"}
    assert "brew" not in {one.item.id for one in stopped.buying.purchases}
    assert [one.id for one in stopped.buying.not_yet] == ["brew"]
    (stop,) = (one for one in stopped.findings_on(KILL) if one.code == "S123")
    assert "Sep 9, 2026" in stop.words
    assert "Sep 10, 2026" in stop.words


def test_one_day_for_a_sign_is_a_note() -> None:
    data = small_property()
    data["property"]["season_signs"]["grass_emergence"] = "05-14"
    noted = [one.subject for one in planned(data).findings if one.code == "N301"]
    assert noted == ["sign/grass_emergence"]


@pytest.mark.parametrize(("as_of", "over"), [(date(2026, 9, 27), False), (date(2026, 9, 28), True)])
def test_a_job_that_is_over_is_noted(as_of: datetime.date, over: bool) -> None:
    plan = make_plan(inventory_of(small_property()), 2027, as_of)
    assert ("N302" in {one.code for one in plan.findings_on(KILL)}) == over


def test_dates_of_an_early_a_typical_and_a_late_year_by_hand() -> None:
    # The small property's first hard freeze: early, typical and late as typed; the kill closes a
    # week before it and opens on a calendar day in every year.
    data = small_property()
    freeze = {"early": "10-04", "typical": "10-15", "late": "10-27"}
    data["property"]["season_signs"]["first_hard_freeze"] = freeze
    dates = job_of(planned(data)).dates
    assert [(one.year, one.opens, one.closes) for one in dates.by_year] == [
        ("early", date(2026, 9, 10), date(2026, 9, 27)),
        ("typical", date(2026, 9, 10), date(2026, 10, 8)),
        ("late", date(2026, 9, 10), date(2026, 10, 20)),
    ]
    # what is done before a sign counts on the early year
    assert (dates.opens, dates.closes) == (dates.by_year[0].opens, dates.by_year[0].closes)


def test_dates_of_the_calendar_alone_are_the_same_in_every_year_and_not_told() -> None:
    jobs = planned(small_property()).jobs
    alone = [one for one in jobs if not any(r.sign for r in every_reason(one.dates))]
    assert len(alone) >= 3
    assert {one.dates.by_year for one in alone} == {()}
    waiting = [one for one in jobs if any(r.sign for r in every_reason(one.dates))]
    assert all(len(one.dates.by_year) == 3 for one in waiting)


def test_careful_dates_lie_inside_the_hull_of_the_years() -> None:
    for job in planned(small_property()).jobs:
        opens = [one.opens for one in job.dates.by_year if one.opens]
        closes = [one.closes for one in job.dates.by_year if one.closes]
        assert not opens or min(opens) <= job.dates.opens <= max(opens)
        assert not closes or min(closes) <= job.dates.closes <= max(closes)


def every_reason(dates: OpenDates) -> tuple[DateReason, ...]:
    return (*dates.opens_reasons, *dates.closes_reasons)
