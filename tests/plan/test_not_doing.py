"""What closed without a record, what a later record settles, what is left out for a reason."""

import datetime

from generator.plan.build.season_plan import make_plan
from generator.plan.findings.about_places import PlaceStop
from generator.plan.model.job import Job
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.plan.views.closed import ClosedJob, closed_without_record
from tests.plan.planned import KILL, inventory_of
from tests.plan.test_upkeep import CHECK, kept_up, plan_on
from tests.properties import SEASON, Data, small_property

SOWING = f"lane/{SEASON}/frost_seeding"
WHY = "the sod died by itself"


def logged(data: Data, *entries: Data) -> Data:
    """A property with a log."""
    return data | {
        "log": {"entries": [{"id": f"e-{number}"} | entry for number, entry in enumerate(entries)]}
    }


def left_out(step: str = "autumn_kill", **more: object) -> Data:
    return {
        "done_on": "2026-09-12",
        "not_doing": [{"planting": "lane-27", "step": step, "why": WHY} | more],
    }


def job_in(plan: Plan, job_id: str) -> Job:
    return next(job for job in plan.jobs if job.id == job_id)


def closed_on(data: Data, day: str) -> dict[str, ClosedJob]:
    return {job.id: job for job in closed_without_record(plan_on(data, day))}


def test_a_kill_whose_days_are_over_is_closed_without_a_record() -> None:
    """The kill is open to Sep 27, 2026."""
    assert KILL not in closed_on(small_property(), "2026-09-27")
    closed = closed_on(small_property(), "2026-09-28")[KILL]
    assert closed.last_day == datetime.date(2026, 9, 27)
    assert closed.settled_by is None
    assert not closed.is_optional


def test_a_step_left_out_is_closed_with_its_reason_and_kills_nothing() -> None:
    """The sowing behind it is still stopped for living sod: nobody killed it."""
    data = logged(small_property(), left_out())
    plan = plan_on(data, "2026-10-20")
    state = job_in(plan, KILL).state
    assert (state.kind, state.why_not) == ("not_needed", WHY)
    assert KILL not in closed_on(data, "2026-10-20")
    stops = {one.code for one in plan.findings_on(SOWING) if one.severity == "stop"}
    assert PlaceStop.LIVING_SOD.value.code in stops


def test_before_its_day_a_decision_does_not_count() -> None:
    data = logged(small_property(), left_out())
    assert job_in(plan_on(data, "2026-09-11"), KILL).state.kind == "open"


def test_what_was_done_all_the_same_is_done() -> None:
    done = {"done_on": "2026-09-20",
            "job": {"planting": "lane-27", "step": "autumn_kill", "finished": True}}  # fmt: skip
    state = job_in(plan_on(logged(small_property(), left_out(), done), "2026-10-20"), KILL).state
    assert state.kind == "done"


def test_the_reason_is_for_the_owner_alone() -> None:
    data = logged(small_property(), left_out())
    inventory = inventory_of(data)
    plan = make_plan(inventory, SEASON, datetime.date(2026, 10, 20))
    for reader in inventory.readers:
        for job in seen_by(plan, reader).jobs:
            assert job.state.why_not is None
        assert seen_by(plan, reader).before == ()


def test_a_later_record_settles_what_was_missed() -> None:
    """All of the seed in the ground: nothing that made ready for it is left to do."""
    sown = {"done_on": "2027-03-02",
            "job": {"planting": "lane-27", "step": "frost_seeding", "finished": True}}  # fmt: skip
    settled = closed_on(logged(small_property(), sown), "2027-03-10")[KILL].settled_by
    assert settled is not None
    assert settled.done_on == datetime.date(2027, 3, 2)
    begun = sown | {"job": {"planting": "lane-27", "step": "frost_seeding"}}
    assert closed_on(logged(small_property(), begun), "2027-03-10")[KILL].settled_by is None


def test_a_look_in_the_log_settles_an_inspection_that_was_missed() -> None:
    """The stand was to be inspected by Aug 20, 2027."""
    missed = closed_on(kept_up(), "2027-08-25")
    assert missed[CHECK].settled_by is None
    looked = {"done_on": "2027-08-22", "inspected": {"what": ["oak"], "sound": True}}
    settled = closed_on(logged(kept_up(), looked), "2027-08-25")[CHECK].settled_by
    assert settled is not None


def test_an_upkeep_left_out_in_one_season_stands_in_the_next() -> None:
    why = {"at": "oak", "step": "stand_check", "why": "it comes down", "season": SEASON}
    data = logged(kept_up(), {"done_on": "2027-07-01", "not_doing": [why]})
    plan = plan_on(data, "2027-08-25")
    states = {job.id: job.state.kind for job in plan.upkeep}
    assert states[CHECK] == "not_needed"
    assert CHECK not in closed_on(data, "2027-08-25")
    later = make_plan(inventory_of(data), SEASON + 1, datetime.date(2028, 8, 25))
    (next_one,) = (job for job in later.upkeep if job.id == f"oak/{SEASON + 1}/stand_check")
    assert next_one.state.kind == "missed"


def test_the_season_before_is_not_lost_once_it_is_over() -> None:
    """On a day of October 2027 the plan of season 2028 still names what 2027 left."""
    plan = make_plan(inventory_of(kept_up()), SEASON + 1, datetime.date(2027, 10, 1))
    closed = {job.id: job for job in closed_without_record(plan)}
    assert KILL in closed
    assert CHECK in closed
    assert closed[KILL].address is None
    assert closed[KILL].season == SEASON


def test_stops_of_missed_jobs_are_not_to_act_on() -> None:
    plan = plan_on(small_property(), "2026-10-20")
    missed = {job.id for job in plan.jobs if job.state.kind == "missed"}
    assert KILL in missed
    on_missed = [one for one in plan.findings if one.subject.id in missed]
    assert on_missed
    assert not [one for one in plan.to_act_on() if one.subject.id in missed]
    assert len(plan.to_act_on()) == len(plan.findings) - len(on_missed)
