"""Quiet, hunting and nesting dates, burn bans and re-entry against open dates, by hand.

The small property's fall kill is open from 10 to Sep 27, 2026: the freeze may come on
Oct 4, seven days less. The mowing is open from Jun 1 to Aug 1, 2027. The plan's day is
Aug 20, 2026, and everything is handed to reader `hired`.
"""

import datetime
from dataclasses import replace
from typing import Any

import pytest

from generator.inventory.dates import DateRange
from generator.inventory.fields import Where
from generator.plan.build.season_plan import make_plan
from generator.plan.days.day_findings import day_findings
from generator.plan.days.paper_findings import paper_findings
from generator.plan.jobs.job_days import days_of_job
from generator.plan.model.days import comes_back, days_left_of, in_words, joined, last_day_kept_out
from generator.plan.model.job import Job
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.reference.steps import Step
from tests.plan.planned import AS_OF, BURN_DOWN, KILL, inventory_of, job_of, planned
from tests.properties import SEASON, Data, full_card, full_use, small_property

MOWING = f"lane/{SEASON}/first_summer_mowing"
SOWING = f"lane/{SEASON}/frost_seeding"
DAY = datetime.date
KILL_OPEN = (DAY(2026, 9, 10), DAY(2026, 9, 27))


def dated(*records: Data, **changes: Any) -> Data:
    """The small property with dates on its one place."""
    data = small_property(**changes)
    data["dates"] = {
        "dates": [
            {"id": f"d-{n}", "places": "all", "source": "booklet", "looked_up_on": "2026-08-01"}
            | one
            for n, one in enumerate(records)
        ]
    }
    return data


def quiet(first: str, last: str, **more: Any) -> Data:
    return {"kind": "quiet", "first": first, "last": last} | more


def span(kind: str, first: str, last: str, **more: Any) -> Data:
    return {"kind": kind, "first": first, "last": last} | more


def codes(plan: Plan, subject: str = KILL) -> set[str]:
    return {one.code for one in plan.findings_on(subject)}


def words(plan: Plan, code: str, subject: str = KILL) -> str:
    (one,) = [one for one in plan.findings_on(subject) if one.code == code]
    return f"{one.words} {one.cure} {one.to_type}"


def contractors(data: Data, plan: Plan | None = None) -> Plan:
    return seen_by(plan or planned(data), inventory_of(data).readers[0])


def step_job(plan: Plan, step: str = "autumn_kill") -> Job:
    return next(one for one in plan.jobs if one.step.id == step)


def a_step(operation: str) -> Step:
    return replace(job_of(planned(small_property()), MOWING).step, operation=operation)


def test_the_open_dates_are_those_the_cases_are_worked_by() -> None:
    dates = job_of(planned(small_property())).dates
    assert (dates.opens, dates.closes) == KILL_OPEN
    mowing = job_of(planned(small_property()), MOWING).dates
    assert (mowing.opens, mowing.closes) == (DAY(2027, 6, 1), DAY(2027, 8, 1))


def test_no_dates_say_nothing() -> None:
    plan = planned(small_property())
    assert job_of(plan).days is None
    assert not {"C300", "C301", "C302", "N380", "N381"} & codes(plan)


def test_quiet_from_the_first_open_day_to_the_last_leaves_none() -> None:
    plan = planned(dated(quiet("2026-09-10", "2026-09-27")))
    assert "C300" in codes(plan)
    days = job_of(plan).days
    assert days is not None
    assert (days.not_on, days.left, days.last_before) == ((KILL_OPEN,), (), None)


@pytest.mark.parametrize(
    ("first", "last", "left", "before"),
    [
        ("2026-09-11", "2026-12-01", ((DAY(2026, 9, 10), DAY(2026, 9, 10)),), DAY(2026, 9, 10)),
        ("2026-09-01", "2026-09-26", ((DAY(2026, 9, 27), DAY(2026, 9, 27)),), None),
        (
            "2026-09-15",
            "2026-09-20",
            ((DAY(2026, 9, 10), DAY(2026, 9, 14)), (DAY(2026, 9, 21), DAY(2026, 9, 27))),
            DAY(2026, 9, 14),
        ),
    ],
)
def test_quiet_in_part_says_what_is_left_and_the_last_day_before(
    first: str, last: str, left: tuple[tuple[DAY, DAY], ...], before: DAY | None
) -> None:
    plan = planned(dated(quiet(first, last)))
    days = job_of(plan).days
    assert days is not None
    assert (days.left, days.last_before) == (left, before)
    assert "C300" not in codes(plan)
    told = words(plan, "N380")
    assert in_words(left) in told
    (note,) = [one for one in plan.findings_on(KILL) if one.code == "N380"]
    assert note.place == "dates.yaml:2"
    assert ("The last day" in told) == (before is not None)


@pytest.mark.parametrize(
    ("first", "last"), [("2026-09-01", "2026-09-09"), ("2026-09-28", "2026-10-09")]
)
def test_quiet_beside_the_open_dates_says_nothing(first: str, last: str) -> None:
    plan = planned(dated(quiet(first, last)))
    assert job_of(plan).days is None
    assert not {"C300", "N380"} & codes(plan)


def test_quiet_of_another_place_says_nothing() -> None:
    data = dated(quiet("2026-09-01", "2026-10-09", places=["spare"]))
    spare = {"id": "spare", "name": "Spare", "length_ft": 100, "width_ft": 10}
    data["screens"]["screens"].append(spare)
    assert not {"C300", "N380"} & codes(planned(data))
    data["dates"]["dates"][0]["places"] = ["spare", "lane"]
    assert "C300" in codes(planned(data))


def test_two_records_together_can_take_every_day() -> None:
    plan = planned(dated(quiet("2026-09-01", "2026-09-18"), quiet("2026-09-19", "2026-10-01")))
    assert "C300" in codes(plan)
    assert "C300" not in codes(
        planned(dated(quiet("2026-09-01", "2026-09-18"), quiet("2026-09-20", "2026-10-01")))
    )


def test_days_that_are_over_are_not_left() -> None:
    inventory = inventory_of(dated(quiet("2026-09-15", "2026-09-30")))
    before, after = (make_plan(inventory, SEASON, DAY(2026, 9, day)) for day in (14, 15))
    assert "N380" in codes(before)
    assert "C300" in codes(after)


def test_every_year_comes_back_and_once_does_not() -> None:
    old = quiet("2019-09-01", "2019-10-31", every_year=True)
    assert "C300" in codes(planned(dated(old)))
    assert not {"C300", "N380"} & codes(planned(dated(old | {"every_year": False})))
    over_new_year = quiet("2022-09-20", "2023-01-10", every_year=True)
    days = job_of(planned(dated(over_new_year))).days
    assert days is not None
    assert days.last_before == DAY(2026, 9, 19)
    frost = job_of(planned(dated(over_new_year | {"last": "2023-01-25"})), SOWING).days
    assert frost is not None
    assert frost.not_on == ((DAY(2027, 1, 20), DAY(2027, 1, 25)),)


def test_a_leap_day_comes_back_on_the_28th() -> None:
    one = record(kind="quiet", first=DAY(2024, 2, 29), last=DAY(2024, 3, 2), every_year=True)
    inside = (DAY(2027, 1, 1), DAY(2027, 12, 31))
    assert comes_back(one, inside) == ((DAY(2027, 2, 28), DAY(2027, 3, 2)),)


def record(**fields: Any) -> DateRange:
    return DateRange(**({"id": "d", "places": ("all",), "where": Where("", 1, 1)} | fields))


def test_the_owner_s_sheet_says_why_and_the_contractor_s_only_when() -> None:
    data = dated(quiet("2026-09-15", "2026-09-20"))
    mine, theirs = job_of(planned(data)).days, step_job(contractors(data)).days
    assert mine is not None
    assert theirs is not None
    taken = ((DAY(2026, 9, 15), DAY(2026, 9, 20)),)
    assert mine.why == (("stay-out dates", taken),)
    assert (theirs.why, theirs.not_on, theirs.left) == ((), taken, mine.left)
    said = " ".join(one.words for one in contractors(data).findings)
    assert "quiet" not in said.lower()


def test_hunting_on_the_open_days_of_a_job_that_is_handed_over() -> None:
    data = dated(span("hunting", "2026-09-27", "2027-01-10"))
    assert "C301" in codes(planned(data))
    line = next(one for one in step_job(contractors(data)).safety if one.key == "dates.others")
    assert line.text == "Sep 27, 2026"
    assert "C301" not in codes(planned(dated(span("hunting", "2026-09-28", "2027-01-10"))))


def test_hunting_stands_on_the_sheet_of_a_job_that_is_not_handed_over_without_a_caution() -> None:
    data = dated(span("turkey", "2026-09-12", "2026-09-13"))
    data["readers"]["readers"][0]["jobs"][0]["steps"] = ["frost_seeding"]
    plan = planned(data)
    assert "C301" not in codes(plan)
    assert "dates.others" in {one.key for one in job_of(plan).safety}


def test_hunting_is_said_of_the_season_where_the_open_dates_are_not_known() -> None:
    data = dated(span("hunting", "2026-11-14", "2026-11-22"))
    assert "dates.others" not in {one.key for one in job_of(planned(data)).safety}
    del data["property"]["season_signs"]["first_hard_freeze"]
    line = next(one for one in job_of(planned(data)).safety if one.key == "dates.others")
    assert line.text == "Nov 14 to 22, 2026"


@pytest.mark.parametrize(
    ("hours", "hunting", "found"),
    # Sprayed at the end of Sep 27, 12 hours end on the 28th and 48 with the 29th.
    [(12, "2026-09-28", True), (12, "2026-09-29", False), (48, "2026-09-29", True),
     (48, "2026-09-30", False), (0, "2026-09-27", True), (0, "2026-09-28", False)],
)  # fmt: skip
def test_re_entry_that_reaches_into_hunting(hours: int, hunting: str, found: bool) -> None:
    card = full_card(full_use(), reentry={"agricultural_hours": hours, "elsewhere": "until dry"})
    plan = planned(dated(span("hunting", hunting, "2027-01-10"), card=card))
    assert ("C302" in codes(plan)) == found
    if found:
        assert in_words(((last_day_kept_out(KILL_OPEN[1], hours),) * 2,)) in words(plan, "C302")


def test_nesting_is_a_note_on_mowing_and_spraying_of_all_land() -> None:
    data = dated(span("nesting", "2020-04-09", "2020-07-01", every_year=True))
    plan = planned(data)
    assert "N381" in codes(plan, MOWING)
    assert "N381" in codes(plan, BURN_DOWN)
    assert "N381" not in codes(plan, SOWING)
    assert "N381" not in codes(plan)
    assert not {"S192"} & (codes(plan, MOWING) | codes(plan, BURN_DOWN))
    later = dated(span("fawning", "2027-08-02", "2027-08-20"))
    assert "N381" not in codes(planned(later), MOWING)


def on_contract(**contract: Any) -> Data:
    """Nesting dates on ground under a contract that is typed if any of it is."""
    data = dated(span("nesting", "2027-05-15", "2027-08-01"))
    data["screens"]["screens"][0]["contract"] = "ten-year cover"
    if contract:
        paper = {"id": "cover", "name": "ten-year cover", "places": ["lane"]} | contract
        data["papers"] = {"contracts": [paper]}
    return data


def test_mowing_contract_land_in_nesting_dates_is_a_stop_until_it_is_allowed_in_writing() -> None:
    assert "S192" in codes(planned(on_contract()), MOWING)
    allowed = {"written_permission_for": ["mow"], "permission_on": "2026-08-20"}
    assert "S192" not in codes(planned(on_contract(**allowed)), MOWING)
    by_step = allowed | {"written_permission_for": ["first_summer_mowing"]}
    assert "S192" not in codes(planned(on_contract(**by_step)), MOWING)
    for wrong in (
        {"permission_on": "2026-08-21"},
        {"written_permission_for": ["spray"]},
        {"places": ["spare"]},
    ):
        data = on_contract(**(allowed | wrong))
        spare = {"id": "spare", "name": "Spare", "length_ft": 100, "width_ft": 10}
        data["screens"]["screens"].append(spare)
        assert "S192" in codes(planned(data), MOWING), wrong
    undated = {key: value for key, value in allowed.items() if key != "permission_on"}
    assert "S192" in codes(planned(on_contract(**undated)), MOWING)


def test_the_stop_of_nesting_goes_once_the_ground_is_under_no_contract() -> None:
    data = on_contract()
    data["screens"]["screens"][0]["contract"] = "none"
    assert "S192" not in codes(planned(data), MOWING)


def test_a_sheet_stopped_by_nesting_does_not_tell_others_why() -> None:
    theirs = contractors(on_contract())
    said = [one for one in theirs.findings if one.code == "S192"]
    assert said
    assert not [one for one in said if "nest" in one.words or "contract" in one.words]


def test_dates_of_a_state_that_nobody_looked_up_are_a_note() -> None:
    data = dated(span("hunting", "2026-11-14", "2026-11-22"), quiet("2026-11-14", "2026-11-22"))
    for one in data["dates"]["dates"]:
        del one["looked_up_on"]
    plan = planned(data)
    assert codes(plan, "d-0") == {"N382"}
    assert codes(plan, "d-1") == set()
    data["dates"]["dates"][0]["looked_up_on"] = "2026-08-02"
    assert codes(planned(data), "d-0") == set()


def burning(data: Data) -> tuple[Job, Any]:
    """The kill's dates on a job that burns: shipped step plans may have none."""
    job = job_of(planned(data))
    return replace(job, step=replace(job.step, operation="burn")), inventory_of(data)


def burn_codes(data: Data, as_of: DAY = AS_OF) -> set[str]:
    job, inventory = burning(data)
    found = day_findings([job], inventory, as_of) + paper_findings([job], inventory, (), as_of)
    return {one.code for one in found if one.subject == job.id}


def permitted(data: Data, **permit: Any) -> Data:
    paper = {"id": "leave", "kind": "burn", "places": "all", "approved_on": "2026-08-10"}
    data["papers"] = {"permits": [paper | permit]}
    return data


def test_a_burn_ban_over_all_that_is_left_or_over_the_plan_s_day_is_a_stop() -> None:
    ban = dated(span("burn_ban", "2026-09-01", "2026-09-27"))
    assert "S190" in burn_codes(ban)
    assert "S190" not in codes(planned(ban))
    part = dated(span("burn_ban", "2026-09-20", "2026-10-01"))
    assert "C309" in burn_codes(part)
    assert "S190" not in burn_codes(part)
    assert "S190" in burn_codes(part, DAY(2026, 9, 20))
    assert not {"S190", "C309"} & burn_codes(dated(span("burn_ban", "2026-10-01", "2026-10-09")))


def test_the_days_of_a_ban_are_kept_free_by_burning_alone() -> None:
    ban = record(kind="burn_ban", first=DAY(2026, 9, 20), last=DAY(2026, 10, 1))
    rest = record(kind="quiet", first=DAY(2026, 9, 12), last=DAY(2026, 9, 12))
    burned = days_of_job([ban, rest], a_step("burn"), "lane", KILL_OPEN)
    mown = days_of_job([ban, rest], a_step("mow"), "lane", KILL_OPEN)
    taken = (DAY(2026, 9, 12),) * 2
    assert burned.not_on == (taken, (DAY(2026, 9, 20), DAY(2026, 9, 27)))
    assert mown.not_on == (taken,)
    assert [words for words, _ in burned.why] == ["stay-out dates", "a burn ban"]


def test_burning_without_a_permit_good_on_every_open_day_is_a_stop() -> None:
    assert "S191" in burn_codes(small_property())
    assert "S191" not in burn_codes(permitted(small_property()))
    assert "S191" not in burn_codes(permitted(small_property(), expires_on="2026-09-27"))
    for wrong in (
        {"expires_on": "2026-09-26"},
        {"approved_on": "2026-08-21"},
        {"kind": "water"},
        {"places": ["spare"]},
    ):
        data = permitted(small_property(), **wrong)
        spare = {"id": "spare", "name": "Spare", "length_ft": 100, "width_ft": 10}
        data["screens"]["screens"].append(spare)
        assert "S191" in burn_codes(data), wrong
    assert "S191" not in codes(planned(small_property()))


def test_a_job_that_is_done_is_held_against_no_dates() -> None:
    data = dated(quiet("2026-09-01", "2026-09-30"), span("hunting", "2026-09-01", "2026-09-30"))
    job = {"planting": "lane-27", "step": "autumn_kill", "finished": True}
    data["log"] = {"entries": [{"id": "e", "done_on": "2026-08-19", "job": job}]}
    plan = planned(data)
    assert codes(plan) == set()
    assert job_of(plan).days is None


def test_spans_that_touch_are_one_and_what_is_left_is_the_rest() -> None:
    days = [DAY(2027, 5, n) for n in range(1, 11)]
    taken = joined([(days[4], days[5]), (days[1], days[1]), (days[2], days[2])])
    assert taken == ((days[1], days[2]), (days[4], days[5]))
    assert days_left_of((days[0], days[9]), taken) == (
        (days[0], days[0]),
        (days[3], days[3]),
        (days[6], days[9]),
    )
    assert days_left_of((days[1], days[5]), joined([(days[1], days[5])])) == ()


def test_a_dry_spell_holds_what_water_is_wanted_for_and_says_why() -> None:
    dry = dated(span("dry_spell", "2026-09-15", "2026-09-20"))
    plan = planned(dry)
    assert job_of(plan).days is not None
    assert job_of(plan).days.not_on == ((DAY(2026, 9, 15), DAY(2026, 9, 20)),)
    assert "take up little spray" in words(plan, "C362")
    assert job_of(plan).step.if_missed in words(plan, "C362")
    told = [one.words for one in contractors(dry, plan).findings if one.code == "C362"]
    assert told
    assert not any("2026" in one for one in told)
    assert "C362" not in codes(planned(dated(span("dry_spell", "2026-10-01", "2026-10-09"))))


@pytest.mark.parametrize(
    ("operation", "is_held"),
    [("spray", True), ("mow", True), ("fertilize", True), ("count", True), ("burn", False),
     ("lime", False), ("roll", False), ("look", False)],
)  # fmt: skip
def test_a_dry_spell_holds_some_kinds_of_work(operation: str, is_held: bool) -> None:
    dry = record(kind="dry_spell", first=DAY(2026, 9, 12), last=DAY(2026, 9, 12))
    taken = days_of_job([dry], a_step(operation), "lane", KILL_OPEN).not_on
    assert bool(taken) == is_held


def test_seed_that_waits_for_frost_does_not_wait_for_rain() -> None:
    plan = planned(dated(span("dry_spell", "2027-01-25", "2027-02-10")))
    assert job_of(plan, SOWING).days is None
    assert "C362" not in codes(plan, SOWING)
