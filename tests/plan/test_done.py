"""Jobs the log says are finished or begun: what their sheets still say, to whom."""

from typing import Any

from generator.plan.model.job import Job
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import BURN_DOWN, KILL, inventory_of, job_of, planned
from tests.properties import SEASON, Data, small_property


def logged(*entries: Data) -> Data:
    """The small property with entries about its fall kill."""
    data = small_property()
    data["log"] = {
        "entries": [
            {"id": f"e-{n}", "done_on": "2026-08-19"} | entry for n, entry in enumerate(entries)
        ]
    }
    return data


def kill(**more: Any) -> Data:
    return {"job": {"planting": "lane-27", "step": "autumn_kill"} | more}


def codes(plan: Plan) -> set[str]:
    return {one.code for one in plan.findings_on(KILL)}


def handed(data: Data) -> Job:
    plan = planned(data)
    seen = seen_by(plan, inventory_of(data).readers[0])
    return next(one for one in seen.jobs if one.step.id == "autumn_kill")


def test_a_finished_job_is_over_and_says_so_to_every_reader() -> None:
    data = logged(kill(finished=True))
    job = job_of(planned(data))
    assert (job.state.kind, str(job.state.day)) == ("done", "2026-08-19")
    shown = handed(data)
    assert (shown.state.kind, shown.state.day, shown.mix, shown.numbers) == ("done", None, None, {})
    assert handed(small_property()).mix is not None


def test_what_stood_against_a_finished_job_stands_no_more() -> None:
    data = logged(kill(finished=True))
    del data["screens"]["screens"][0]["known_as"]
    assert codes(planned(data)) == set()
    data = logged()
    del data["screens"]["screens"][0]["known_as"]
    assert "S122" in codes(planned(data))


def test_a_finished_spraying_still_counts_towards_its_label_s_year() -> None:
    once = planned(logged())
    over = planned(logged(kill(finished=True)))
    assert [one.total.value for one in over.actives] == [one.total.value for one in once.actives]
    assert over.actives


def test_a_begun_job_says_that_its_amounts_are_for_all_of_it() -> None:
    plan = planned(logged(kill()))
    assert "C280" in codes(plan)
    assert job_of(plan).mix is not None
    assert "C280" not in codes(planned(logged()))
    assert "C280" not in codes(planned(logged(kill(), kill(finished=True))))


def test_only_the_job_that_is_named_is_over() -> None:
    plan = planned(logged(kill(finished=True)))
    assert job_of(plan, BURN_DOWN).state.kind == "waiting"
    assert {one.id for one in plan.jobs if one.state.kind == "done"} == {
        f"lane/{SEASON}/autumn_kill"
    }


def test_an_entry_of_a_later_day_finishes_nothing_yet() -> None:
    data = logged(kill(finished=True) | {"done_on": "2026-08-21"})
    assert job_of(planned(data)).state.kind != "done"
