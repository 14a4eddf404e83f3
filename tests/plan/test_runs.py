"""Runs: one mix or one fill for several places, held to a story worked by hand."""

import copy
import datetime
from typing import Any

import pytest

from generator.plan.model.plan import Plan
from generator.plan.model.work import Run
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import inventory_of, planned
from tests.properties import Data
from tests.sowings import drill
from tests.three_places import piece, three_places, work_on

FIRST = "one/2027/autumn_kill"


def only_run(plan: Plan) -> Run:
    (run,) = plan.runs
    return run


def why_apart(plan: Plan, job_id: str) -> str:
    """Why a job stands apart from the one run."""
    (why,) = (words for words, ids in only_run(plan).apart if job_id in ids)
    return why


def test_three_small_pieces_take_one_mix() -> None:
    # by hand: 0.125 + 0.10 + 0.08 ac at 15 gal and 64 fl oz to the acre
    run = only_run(planned(three_places()))
    assert [place.job_id.partition("/")[0] for place in run.places] == ["one", "two", "three"]
    assert run.amount.value == pytest.approx(4.575)
    assert run.amount.printed() == "4.58 gal"
    assert [(name, amount.printed()) for name, amount in run.doses] == [
        ("Made-up product brew", "19.5 fl oz")
    ]
    assert run.area.value == pytest.approx(0.305)
    assert [place.amount.value for place in run.places] == pytest.approx([1.875, 1.5, 1.2])
    assert [dose.value for place in run.places for dose in place.doses] == pytest.approx(
        [8, 6.4, 5.12]
    )


def test_what_is_left_at_each_gate_is_what_was_mixed_less_what_is_sprayed() -> None:
    # 585.6 fl oz of spray filled to the mark above, every 8 fl oz: 592 fl oz, 4.625 gal
    run = only_run(planned(three_places()))
    (load,) = run.loads
    assert load.spray.value == 4.625  # type: ignore[union-attr]
    assert [place.left.value for place in run.places] == pytest.approx([2.75, 1.25, 0.05])
    assert {place.begun.value for place in run.places} == {1}


def test_the_mix_is_held_to_the_maximum_of_every_card() -> None:
    # 19.73 fl oz go into 4.625 gal; the half ounce above would be 64.9 fl oz to an acre of 64
    (load,) = only_run(planned(three_places())).loads
    (dose,) = load.doses
    assert dose.amount.value == 19.5
    assert dose.rate.value == pytest.approx(19.5 / (4.625 / 15))
    assert dose.rate.value <= 64


def test_a_run_larger_than_the_tank_is_split_into_loads() -> None:
    data = three_places()
    data["equipment"]["sprayers"][-1]["tank_gal"] = 3
    run = only_run(planned(data))
    # 4.575 gal: a full tank of 3, then 1.575 gal filled to the mark above, 1.625 gal
    assert [load.spray.value for load in run.loads] == [3, 1.625]  # type: ignore[union-attr]
    # 1.875 of the first; 3.375 reaches into the second: 4.625 less 3.375; then less 4.575
    assert [place.begun.value for place in run.places] == [1, 2, 2]
    assert [place.left.value for place in run.places] == pytest.approx([1.125, 1.25, 0.05])


def test_marks_that_hold_no_label_make_no_run() -> None:
    data = three_places()
    data["equipment"]["measures"][0]["mark_fl_oz"] = 4
    # every place has a mark of its own (8 fl oz, 6.4 to 4 or 8): the mix of all has 16 or 20
    plan = planned(data)
    assert all(16 < amount.value < 20 for run in plan.runs for _, amount in run.doses)
    for run in plan.runs:
        for load in run.loads:
            assert all(24 <= dose.rate.value <= 64 for dose in load.doses)


def _stopped(data: Data) -> None:
    piece(data, "three")["contract"] = "ten-year cover program"
    data["products"]["products"][0]["label"]["uses"][0]["covers"]["land"] = "not_contract"


def _other_rate(data: Data) -> None:
    work_on(data, "three")["rate_product_fl_oz_per_ac"] = 48


def _other_sprayer(data: Data) -> None:
    other = copy.deepcopy(data["equipment"]["sprayers"][-1]) | {"id": "second", "name": "Second"}
    data["equipment"]["sprayers"].append(other)
    work_on(data, "three")["sprayer"] = "second"


def _other_hands(data: Data) -> None:
    handed = {"planting": "three-27", "steps": ["autumn_kill"]}
    data["readers"] = {"readers": [{"id": "hired", "kind": "contractor", "jobs": [handed]}]}


def _no_slope(data: Data) -> None:
    data["products"]["products"][0]["label"]["uses"][0]["slope_limit_pct"] = 12
    for name in ("one", "two"):
        piece(data, name)["near"] = {"slope_pct": 2}


def _with_an_adjuvant(data: Data) -> None:
    data["products"]["adjuvants"] = [
        {"id": "wetter", "name": "Wetter", "formulation": "surfactant_or_oil"}
    ]
    work_on(data, "three")["adjuvants"] = [{"adjuvant": "wetter", "mix_pct": 0.25}]


def _other_days(data: Data) -> None:
    data["dates"] = {
        "dates": [
            {"id": "a", "kind": "quiet", "first": "2026-09-01", "last": "2026-09-18",
             "places": ["three"]},
            {"id": "b", "kind": "quiet", "first": "2026-09-19", "last": "2026-09-30",
             "places": ["one"]},
        ]
    }  # fmt: skip


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (_stopped, "A stop stands on it"),
        (_other_rate, "Another rate"),
        (_other_sprayer, "Another machine, nozzle, setting or way"),
        (_other_hands, "Somebody else does it"),
        (_no_slope, "Its slope is not measured"),
        (_with_an_adjuvant, "Something else goes in with it"),
    ],
)
def test_a_place_that_differs_is_not_in_the_run_and_the_run_says_why(
    change: Any, words: str
) -> None:
    data = three_places()
    change(data)
    plan = planned(data)
    assert [place.job_id for place in only_run(plan).places] == [FIRST, "two/2027/autumn_kill"]
    assert why_apart(plan, "three/2027/autumn_kill") == words


def test_ground_that_distances_leave_and_nobody_measured_keeps_a_place_out() -> None:
    data = three_places()
    del work_on(data, "three")["treated_ac"]
    plan = planned(data)
    assert len(only_run(plan).places) == 2
    assert why_apart(plan, "three/2027/autumn_kill") == "Its passes are not counted"
    data["equipment"]["sprayers"][-1]["swath_ft"] = 4
    piece(data, "three")["width_ft"] = 16
    piece(data, "three")["length_ft"] = 217.8
    del piece(data, "three")["area_ac"]
    plan = planned(data)
    words = "What its label keeps clear is not taken out of its ground"
    assert why_apart(plan, "three/2027/autumn_kill") == words


def test_jobs_without_a_day_for_all_are_no_run_together() -> None:
    data = three_places()
    _other_days(data)
    plan = planned(data)
    run = only_run(plan)
    assert [place.job_id.partition("/")[0] for place in run.places] == ["one", "two"]
    assert run.days == ((datetime.date(2026, 9, 10), datetime.date(2026, 9, 18)),)
    assert why_apart(plan, "three/2027/autumn_kill") == "No day suits it and all of these"


def test_pieces_that_may_be_the_same_ground_are_not_sprayed_in_one_run() -> None:
    data = three_places()
    corners = [[41.02, -93.02], [41.02, -93.01975], [41.02018, -93.01975], [41.02018, -93.02]]
    for name in ("two", "three"):
        piece(data, name)["area_lat_lon"] = corners
    # one label a year, so that both on one ground would pass no limit
    plan = planned(data)
    assert all(
        not {"two", "three"} <= {place.job_id.partition("/")[0] for place in run.places}
        for run in plan.runs
    )


def test_the_order_of_a_run_is_that_of_the_owner_s_files() -> None:
    data = three_places()
    data["screens"]["screens"].reverse()
    run = only_run(planned(data))
    assert [place.job_id.partition("/")[0] for place in run.places] == ["three", "two", "one"]
    # 4.625 less 1.2, less 1.5, less 1.875
    assert [place.left.value for place in run.places] == pytest.approx([3.425, 1.925, 0.05])


def test_a_run_is_of_jobs_that_are_ahead() -> None:
    data = three_places()
    data["log"] = {
        "entries": [
            {
                "id": "done",
                "done_on": "2026-08-18",
                "job": {"planting": "three-27", "step": "autumn_kill", "finished": True},
                "used": [{"item": "brew", "amount_fl_oz": 5}],
            }
        ]
    }
    run = only_run(planned(data))
    assert [place.job_id.partition("/")[0] for place in run.places] == ["one", "two"]


def test_a_contractor_gets_a_run_only_of_jobs_that_all_are_handed_over() -> None:
    data = three_places()
    handed = [{"planting": f"{name}-27", "steps": ["autumn_kill"]} for name in ("one", "two")]
    data["readers"] = {"readers": [{"id": "hired", "kind": "contractor", "jobs": handed}]}
    plan = planned(data)
    (reader,) = inventory_of(data).readers
    seen = seen_by(plan, reader)
    (run,) = seen.runs
    assert [place.job_id for place in run.places] == [
        "strip-1/2027/autumn_kill",
        "strip-2/2027/autumn_kill",
    ]
    assert run.apart == ()
    assert {job.id for job in seen.jobs} >= {place.job_id for place in run.places}
    # the third place is the owner's alone: no number of the run holds it
    assert run.amount.value == pytest.approx(1.875 + 1.5)
    assert "three" not in repr(run)


def test_of_a_run_with_one_place_of_the_owner_s_alone_a_contractor_sees_nothing() -> None:
    data = three_places()
    handed = [{"planting": "one-27", "steps": ["autumn_kill"]}]
    data["readers"] = {"readers": [{"id": "hired", "kind": "contractor", "jobs": handed}]}
    (reader,) = inventory_of(data).readers
    plan = planned(data)
    assert len(only_run(plan).places) == 2
    assert seen_by(plan, reader).runs == ()


def _sown(spreader: bool) -> Data:
    data = three_places()
    tests = [{"tested_on": "2026-08-16", "lot": "sg", "setting": "3", "caught_lb": 0.14,
              "swath_ft": 12, "distance_ft": 100}]  # fmt: skip
    data["equipment"]["spreaders"] = [
        {"id": "crank", "name": "Crank", "hopper_lb": 3, "catch_tests": tests}
    ]
    data["equipment"]["drills"] = [drill("sg")]
    for place in data["screens"]["screens"]:
        (planting,) = place["plantings"]
        place["width_ft"] = 12
        how, step = {"spreader": "crank"}, "frost_seeding"
        if not spreader:
            planting |= {"method": "drill", "steps": "drilled_native_grass"}
            how, step = {"drill": "box"}, "drilling"
        planting["work"].append({"step": step, **how})
    return data


def test_one_fill_sows_several_places() -> None:
    # by hand: 8 lb of pure live seed to an acre of 0.54 live seed in a pound, 0.305 acres
    plan = planned(_sown(spreader=True))
    (run,) = (run for run in plan.runs if run.kind == "sow")
    jobs = {job.id: job for job in plan.jobs}
    each = [jobs[place.job_id].numbers["bulk_seed_lb"].value for place in run.places]
    assert [place.amount.value for place in run.places] == pytest.approx(each)
    assert run.amount.value == pytest.approx(sum(each))
    # a hopper of 3 lb is filled twice, half of it each time
    assert run.count.value == 2
    assert run.fill is not None
    assert run.fill.value == pytest.approx(sum(each) / 2)
    left = [2 * sum(each) / 2 - sum(each[:number]) for number in (2, 3)]
    assert run.places[0].left.value == pytest.approx(sum(each) / 2 - each[0], abs=0.001)
    assert [place.left.value for place in run.places[1:]] == pytest.approx(left, abs=0.001)


def test_a_drill_is_filled_once_with_all_it_sows() -> None:
    (run,) = (run for run in planned(_sown(spreader=False)).runs if run.kind == "sow")
    assert run.count.value == 1
    assert run.fill == run.amount
    assert run.places[-1].left.value == 0


def test_another_lot_is_no_run() -> None:
    data = _sown(spreader=True)
    data["seed"]["lots"].append(copy.deepcopy(data["seed"]["lots"][0]) | {"id": "other"})
    for name in ("one", "two"):
        piece(data, name)["plantings"][0]["seed"][0]["lot"] = "other"
    runs = [run for run in planned(data).runs if run.kind == "sow"]
    assert [[place.job_id.partition("/")[0] for place in run.places] for run in runs] == [
        ["one", "two"]
    ]
