"""The owner is told where days of a handed job end at dates that its reader is not told of."""

import datetime
from typing import Any

import pytest

from generator.book.make import make_book
from generator.plan.build.season_plan import make_plan
from generator.plan.model.days import joined
from generator.plan.model.plan import Handed, Plan
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import AS_OF, KILL, inventory_of
from tests.properties import SEASON, Data
from tests.readers.test_every_number_told import demo
from tests.readers.test_non_interference import made
from tests.readers.test_partner import JOBS, shared, told

DAY = datetime.date


def dated(*dates: Data) -> Data:
    """The small property with dates; the kill is open from 10 to Sep 27."""
    data = shared()
    data["readers"]["readers"][0]["jobs"] = JOBS
    data["dates"] = {"dates": [{"id": f"d-{n}", "places": ["lane"]} | one
                               for n, one in enumerate(dates)]}  # fmt: skip
    return data


def span(kind: str, first: str, last: str) -> Data:
    return {"kind": kind, "first": first, "last": last}


def plan_of(data: Data) -> Plan:
    return make_plan(inventory_of(data), SEASON, AS_OF)


def handed(data: Data) -> dict[str, Handed]:
    return {one.reader: one for one in plan_of(data).handed}


def rows(one: Handed) -> list[tuple[str, str, Any]]:
    return [(told.job_id, told.dates.id, told.ends) for told in one.windows]


def test_the_kill_is_open_as_these_tests_take_it() -> None:
    (job,) = (one for one in plan_of(shared()).jobs if one.id == KILL)
    assert (job.dates.opens, job.dates.closes) == (DAY(2026, 9, 10), DAY(2026, 9, 27))


@pytest.mark.parametrize(
    ("first", "last", "ends"),
    [
        ("2026-09-15", "2026-09-20", (DAY(2026, 9, 15), DAY(2026, 9, 20))),
        ("2026-09-15", "2026-11-20", (DAY(2026, 9, 15),)),
        ("2026-08-15", "2026-09-20", (DAY(2026, 9, 20),)),
        ("2026-08-15", "2026-11-20", ()),
    ],
)
def test_quiet_dates_are_told_with_the_ends_inside_the_window(
    first: str, last: str, ends: tuple[datetime.date, ...]
) -> None:
    found = handed(dated(span("quiet", first, last)))
    assert rows(found["hired"]) == rows(found["friend"]) == [(KILL, "d-0", ends)]


def test_dates_that_take_no_open_day_and_jobs_kept_give_nothing_away() -> None:
    data = dated(span("quiet", "2026-10-15", "2026-11-20"))
    assert [one.windows for one in handed(data).values()] == [(), ()]
    data = dated(span("quiet", "2026-09-15", "2026-11-20"))
    for reader in data["readers"]["readers"]:
        reader["jobs"] = [{"planting": "lane-27", "steps": ["first_summer_mowing"]}]
    assert [one.windows for one in handed(data).values()] == [(), ()]


def test_what_is_done_is_told_of_by_its_calendar_alone() -> None:
    data = dated(
        span("quiet", "2026-09-15", "2026-11-20"), span("hunting", "2026-09-12", "2026-09-13")
    )
    data["log"] = {"entries": [{"id": "e-1", "done_on": "2026-08-18", "job": {
        "planting": "lane-27", "step": "autumn_kill", "finished": True}}]}  # fmt: skip
    assert rows(handed(data)["hired"]) == [(KILL, "d-0", (DAY(2026, 9, 15),))]
    pages = told(make_book(plan_of(data)))
    assert (
        "In the calendar, where it is called off: not on Sep 15 to 27, 2026 "
        "Stay-out dates, Sep 15 to Nov 20, 2026"
    ) in pages["readers/hired.md"]
    assert "<dt>Not on</dt>" not in pages["work/lane-2027-autumn_kill.md"]


def test_hunting_is_told_of_a_contractor_and_a_partner_knows_it_anyway() -> None:
    found = handed(dated(span("hunting", "2026-09-15", "2026-11-20")))
    assert rows(found["hired"]) == [(KILL, "d-0", (DAY(2026, 9, 15),))]
    assert found["friend"].windows == ()


def test_a_dry_spell_is_told_of_both() -> None:
    found = handed(dated(span("dry_spell", "2026-09-01", "2026-09-13")))
    for one in found.values():
        assert rows(one) == [(KILL, "d-0", (DAY(2026, 9, 13),))]


def test_nesting_dates_take_no_day_and_are_not_told() -> None:
    found = handed(dated(span("nesting", "2026-09-15", "2026-09-20")))
    assert [one.windows for one in found.values()] == [(), ()]


def test_maintenance_of_a_handed_stand_or_walk_is_told_too() -> None:
    # straps are let out from Feb 1 to 28, the walk is cut from Feb 1 to Mar 15; oak and walk are
    # handed to the partner, elm is not
    quiet = span("quiet", "2027-02-10", "2027-04-30") | {"places": ["oak", "walk", "elm"]}
    found = handed(dated(quiet))
    assert found["hired"].windows == ()
    ends = {job_id: ends for job_id, _, ends in rows(found["friend"])}
    assert ends[f"oak/{SEASON}/strap_release"] == (DAY(2027, 2, 10),)
    assert ends[f"walk/{SEASON}/cut_walk"] == (DAY(2027, 2, 10),)
    assert {job_id.partition("/")[0] for job_id in ends} == {"oak", "walk"}
    page = told(make_book(plan_of(dated(quiet))))["readers/friend.md"]
    assert (
        "Cut the walk and its lanes: Lane walk Not on Feb 10 to Mar 15, 2027 "
        "Stay-out dates, Feb 10 to Apr 30, 2027 Feb 10, 2027"
    ) in page


def test_the_page_says_which_dates_and_what_the_sheet_shows() -> None:
    data = dated(span("quiet", "2026-09-15", "2026-11-20"))
    page = told(make_book(plan_of(data)))["readers/hired.md"]
    assert (
        "Kill the sod in fall: Lane screen Not on Sep 15 to 27, 2026 "
        "Stay-out dates, Sep 15 to Nov 20, 2026 Sep 15, 2026"
    ) in page
    assert (
        "These days on their sheets, or in their calendar, come from dates"
        not in told(make_book(plan_of(shared())))["readers/hired.md"]
    )


@pytest.mark.parametrize("seed", [None, *range(8)])
def test_what_is_told_makes_up_every_day_a_sheet_takes(seed: int | None) -> None:
    """Held against the plan of the reader: the days not to work on that they see."""
    inventory = demo() if seed is None else inventory_of(made(seed))
    plan = make_plan(inventory, SEASON, AS_OF)
    compared = 0
    for reader, one in zip(inventory.readers, plan.handed, strict=True):
        seen = seen_by(plan, reader)
        every = (*seen.jobs, *seen.upkeep)
        taken = sorted(job.days.not_on for job in every if job.days is not None)
        by_job: dict[str, list[Any]] = {}
        for row in one.windows:
            if row.dates.kind in ("quiet", "dry_spell", "burn_ban"):
                by_job.setdefault(row.job_id, []).extend(row.spans)
        burns = [job for job in seen.jobs if job.step.operation == "burn"]
        assert reader.kind == "contractor" or not burns
        assert sorted(joined(spans) for spans in by_job.values()) == taken
        compared += len(taken)
    assert compared or seed is not None
