"""What closed before the first record is not asked for; what the season itself missed is.

Worked out by hand on the small property with maintenance of a stand and a walk.
"""

import datetime
import re

from generator.book.make import make_book
from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.views.closed import closed_without_record
from tests.plan.planned import inventory_of
from tests.plan.test_upkeep import kept_up
from tests.properties import SEASON, Data

FIRST_DAY = datetime.date(2026, 8, 25)


def plan_of(data: Data, day: datetime.date = FIRST_DAY) -> Plan:
    return make_plan(inventory_of(data), SEASON, day)


def without_log() -> Data:
    data = kept_up()
    data.pop("log", None)
    return data


def logged(day: str) -> Data:
    data = without_log()
    entry = {"id": "e-1", "done_on": day, "spent": [{"what": "fuel", "cost_usd": 20}]}
    return data | {"log": {"entries": [entry]}}


def page(plan: Plan, address: str) -> str:
    found = next(one.markdown for one in make_book(plan).pages if one.address == address)
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", found))


def test_on_a_first_day_without_a_log_nobody_is_asked_for_the_season_before() -> None:
    plan = plan_of(without_log())
    closed = closed_without_record(plan)
    assert closed
    assert all(job.before_log for job in closed)
    assert "Nothing was recorded before Aug 25, 2026" in page(plan, "index.md")
    missed = page(plan, "missed.md")
    assert "Nothing was recorded before Aug 25, 2026 . This book does not ask" in missed
    assert f"Closed before the first record ({len(closed)})" in missed
    assert 'class="closed" data-closed="0" hidden' in next(
        one.markdown for one in make_book(plan).pages if one.address == "index.md"
    )


def test_what_the_season_of_the_plan_missed_is_asked_for_without_a_log_too() -> None:
    plan = plan_of(without_log(), datetime.date(2026, 11, 10))
    kill = next(job for job in closed_without_record(plan) if job.step.id == "autumn_kill")
    assert kill.season == SEASON
    assert not kill.before_log
    assert "Kill the sod in fall" in page(plan, "missed.md").partition("Closed before")[0]


def test_what_closed_after_the_first_record_is_asked_for() -> None:
    began = datetime.date(2026, 3, 1)
    closed = closed_without_record(plan_of(logged(began.isoformat())))
    assert {job.before_log for job in closed} == {True, False}
    assert all(job.before_log == (job.last_day < began) for job in closed)
    assert "Nothing was recorded" not in page(plan_of(logged("2026-03-01")), "index.md")
    assert not any(job.before_log for job in closed_without_record(plan_of(logged("2025-01-10"))))
