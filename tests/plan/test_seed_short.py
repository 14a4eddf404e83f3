"""A lot that does not reach: full rate by priority, part of one place, and the rest waits.

Every place is an acre that takes 8 / 0.72 = 11.1111 lb of lot sg.
"""

import datetime
import random

import pytest

from generator.plan.build.season_plan import make_plan
from generator.plan.findings.about_sowing import SowStop
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.working import Withheld, walk
from tests.plan.planned import inventory_of, job_of, planned
from tests.plan.sown import (
    by_spreader,
    codes_on,
    found_on,
    sown,
    the_lot,
    the_planting,
    with_lot,
    with_place,
)
from tests.properties import SEASON, Data

AN_ACRE_LB = 8 / 0.72


def three(on_hand: float, more: float | None, *priorities: int | None) -> Data:
    """Three places of an acre, lane, mid and far, with these priorities; no size of a bag."""
    data = sown()
    del the_lot(data)["package_lb"]
    with_place(with_place(data, "mid"), "far")
    the_lot(data)["on_hand_lb"] = on_hand
    if more is not None:
        the_lot(data)["most_to_be_had_lb"] = more
    for number, priority in enumerate(priorities):
        if priority is not None:
            the_planting(data, number)["priority"] = priority
    return data


def sowing(place: str) -> str:
    return f"{place}/{SEASON}/frost_seeding"


def sown_acres(plan: Plan) -> dict[str, float]:
    """The acres of each place that are sown, by its budget line and the full rate."""
    return {line.place_id: line.amount.value / AN_ACRE_LB for line in plan.lines
            if line.kind == "seed"}  # fmt: skip


@pytest.mark.parametrize("more", [None, 30, 3 * AN_ACRE_LB - 4])
def test_enough_seed_changes_nothing(more: float | None) -> None:
    plan = planned(three(4, more))
    assert sown_acres(plan) == pytest.approx({"lane": 1, "mid": 1, "far": 1})
    assert not {"C230", "C231", "S140"} & {one.code for one in plan.findings}


def test_the_first_gets_all_the_next_a_part_and_the_last_waits() -> None:
    # 1.25 + 15.4166667 = 16.6666667 lb: an acre and a half
    plan = planned(three(1.25, 15.41666666666666, 3, 1, 2))
    assert sown_acres(plan) == pytest.approx({"mid": 1, "far": 0.5})
    assert codes_on(plan, sowing("mid")) & {"C230", "C231", "S140"} == set()
    part = job_of(plan, sowing("far"))
    assert part.numbers["sown_area_ac"].value == pytest.approx(0.5)
    assert part.numbers["not_sown_area_ac"].value == pytest.approx(0.5)
    # never thinner: 11.1111 lb on each acre that is sown, 5.5556 lb in all
    (seed,) = part.sowings
    assert seed.numbers["bulk_rate_lb_per_ac"].value == pytest.approx(AN_ACRE_LB)
    assert seed.numbers["bulk_seed_lb"].value == pytest.approx(AN_ACRE_LB / 2)
    figures = dict(found_on(plan, "C230", sowing("far")).figures)
    assert figures["Not sown"].value == pytest.approx(0.5)


def test_a_place_that_waits_is_stopped_and_says_how_much_is_not_sown() -> None:
    plan = planned(three(1.25, 15.4, 3, 1, 2))
    waits = job_of(plan, sowing("lane"))
    assert (waits.numbers, waits.sowings) == ({}, ())
    found = found_on(plan, "S140", sowing("lane"))
    assert dict(found.figures)["Not sown"].value == pytest.approx(1)
    assert "sg" in found.words
    assert [one.code for one in plan.findings_on(waits.id) if one.figures] == ["S140"]
    # the cure: more seed to be had
    cured = planned(three(1.25, 40, 3, 1, 2))
    assert not codes_on(cured, sowing("lane")) & {"S140", "C230"}
    assert job_of(cured, sowing("lane")).numbers


def test_seed_is_never_shared_out_thin() -> None:
    for pounds in (1, 11, 12, 23, 33):
        acres = sown_acres(planned(three(0, pounds, 1, 2, 3)))
        assert sum(acres.values()) == pytest.approx(pounds / AN_ACRE_LB)
        in_turn = [acres.get(place, 0) for place in ("lane", "mid", "far")]
        assert in_turn == sorted(in_turn, reverse=True)
        assert sum(0 < one < 1 - 1e-9 for one in in_turn) <= 1


@pytest.mark.parametrize("priorities", [(None, None, None), (2, 2, 1), (1, None, 2)])
def test_a_guessed_order_is_told(priorities: tuple[int | None, ...]) -> None:
    plan = planned(three(0, 12, *priorities))
    assert all("C231" in codes_on(plan, sowing(place)) for place in ("lane", "mid", "far"))
    assert "C231" not in codes_on(planned(three(0, 12, 1, 2, 3)), sowing("lane"))


def test_the_guessed_order_is_the_earlier_date_then_the_id() -> None:
    data = three(0, 12)
    late = the_planting(data, 2)
    assert sown_acres(planned(data))["far"] == pytest.approx(1)
    # drilled from May 1, so behind the two that open on Jan 20
    late |= {"method": "drill", "steps": "drilled_native_grass", "work": []}
    acres = sown_acres(planned(data))
    assert acres["lane"] == pytest.approx(1)
    assert "far" not in acres


def test_unweighed_seed_is_not_shared_out() -> None:
    data = three(0, 5)
    del the_lot(data)["on_hand_lb"]
    plan = planned(data)
    assert sown_acres(plan) == pytest.approx({"lane": 1, "mid": 1, "far": 1})
    assert "N320" in codes_on(plan, sowing("lane"))
    assert "N320" not in codes_on(planned(three(0, 5)), sowing("lane"))


def test_a_short_lot_takes_its_companion_along_and_leaves_the_rest_for_others() -> None:
    data = three(0, AN_ACRE_LB / 2, 1, 2, 3)
    with_lot(
        data, "bb", "big-bluestem", package_lb=None, most_to_be_had_lb=AN_ACRE_LB, on_hand_lb=0
    )
    blue = {"species": "big-bluestem", "lot": "bb", "rate_pls_lb_per_ac": 8}
    the_planting(data, 0)["seed"].append(blue)
    the_planting(data, 1)["seed"] = [blue]
    the_planting(data, 2)["seed"] = [blue]
    plan = planned(data)
    pounds = {(one.place_id, one.item_id): one.amount.value for one in plan.lines
              if one.kind == "seed"}  # fmt: skip
    # half an acre of lane for want of sg; the half acre of bb it leaves goes to mid, far waits
    half = pytest.approx(AN_ACRE_LB / 2)
    assert pounds == {("lane", "sg"): half, ("lane", "bb"): half, ("mid", "bb"): half}
    assert "S140" in codes_on(plan, sowing("far"))


def test_seed_that_falls_beside_is_needed_too() -> None:
    # 8 ft wide under a throw of 12 ft: half as much again. 0.1 ac take 1.6667 lb, 1.2 are there.
    data = by_spreader(sown(), {"caught_lb": 0.14})
    del the_lot(data)["package_lb"]
    data["screens"]["screens"][0] |= {"width_ft": 8, "length_ft": 544.5}
    the_lot(data).update(on_hand_lb=0.2, most_to_be_had_lb=1)
    plan = planned(data)
    assert job_of(plan, sowing("lane")).numbers["sown_area_ac"].value == pytest.approx(0.072)
    (line,) = [one for one in plan.lines if one.kind == "seed"]
    assert line.amount.value == pytest.approx(1.2)


def test_order_in_the_file_does_not_matter() -> None:
    data = three(2, 14, 2, 3, 1)
    before = sown_acres(planned(data))
    random.Random(1).shuffle(data["screens"]["screens"])
    assert sown_acres(planned(data)) == before


def test_another_reader_sees_the_acres_and_not_what_they_rest_on() -> None:
    data = three(1.25, 15, 3, 1, 2)
    data["readers"]["readers"][0]["jobs"] = [
        {"planting": name, "steps": ["frost_seeding"]} for name in ("far-27", "lane-27")
    ]
    inventory, plan = inventory_of(data), planned(data)
    theirs = seen_by(plan, inventory.readers[0])
    part, waits = sorted(theirs.jobs, key=lambda one: not one.numbers)
    mine = job_of(plan, sowing("far"))
    assert part.numbers["sown_area_ac"].value == mine.numbers["sown_area_ac"].value
    inputs = {name: one for one in walk(part.numbers["sown_area_ac"]) for name, one in one.inputs}
    assert isinstance(inputs["left_lb"], Withheld)
    (stop,) = [one for one in theirs.findings_on(waits.id) if one.severity == "stop"]
    assert stop.words == SowStop.SEED_WAITS.value.others
    assert stop.figures == ()


def test_seed_that_was_bought_after_the_count_is_there() -> None:
    data = three(0, 0)
    the_lot(data)["counted_on"] = "2026-08-15"
    assert sown_acres(planned(data)) == {}
    bought = [{"item": "sg", "amount_lb": 2 * AN_ACRE_LB}]
    data["log"] = {"entries": [{"id": "e-1", "done_on": "2026-08-16", "bought": bought}]}
    assert sown_acres(planned(data)) == pytest.approx({"far": 1, "lane": 1})


def test_what_is_bought_since_the_count_can_not_be_had_again() -> None:
    # 5 lb counted and 12 to be had are 17 lb, before the 12 are bought and after
    data = three(5, 12, 1, 2, 3)
    the_lot(data)["counted_on"] = "2026-08-15"
    before = sown_acres(planned(data))
    bought = [{"item": "sg", "amount_lb": 12}]
    data["log"] = {"entries": [{"id": "e-1", "done_on": "2026-08-18", "bought": bought}]}
    after = planned(data)
    assert sown_acres(after) == pytest.approx(before)
    assert sum(before.values()) == pytest.approx(17 / AN_ACRE_LB)
    assert "C230" in codes_on(after, sowing("mid"))
    # bought on the day of the count it is in the count, and 12 lb more are to be had
    data["log"]["entries"][0]["done_on"] = "2026-08-15"
    assert sown_acres(planned(data)) == pytest.approx(before)


def test_seed_sold_by_the_bag_is_to_be_had_in_whole_bags() -> None:
    # 5 lb on hand and one bag of 10 within the 12 to be had: 15 lb are sown, and one bag bought
    data = three(5, 12, 1, 2, 3)
    the_lot(data)["package_lb"] = 10
    plan = planned(data)
    assert sum(sown_acres(plan).values()) == pytest.approx(15 / AN_ACRE_LB)
    (bought,) = (one for one in plan.buying.purchases if one.item.id == "sg")
    assert bought.packages is not None
    assert bought.packages.value == 1
    assert bought.left_over is not None
    assert bought.left_over.value == pytest.approx(0)
    # a bag that is not to be had whole is not to be had
    the_lot(data)["most_to_be_had_lb"] = 9.5
    assert sum(sown_acres(planned(data)).values()) == pytest.approx(5 / AN_ACRE_LB)


def test_a_place_that_is_sown_takes_nothing_more() -> None:
    data = three(AN_ACRE_LB, 0, 1, 2, 3)
    assert set(sown_acres(planned(data))) == {"lane"}
    job = {"planting": "lane-27", "step": "frost_seeding", "finished": True}
    data["log"] = {"entries": [{"id": "e-1", "done_on": "2026-08-14", "job": job}]}
    plan = planned(data)
    assert job_of(plan, sowing("lane")).state.kind == "done"
    assert "S140" not in {one.code for one in plan.findings_on(sowing("mid"))}
    assert "S140" in {one.code for one in plan.findings_on(sowing("far"))}


def test_a_place_that_is_over_by_its_dates_comes_after_the_others() -> None:
    # drilled from May 1 on; the frost seeding of lane and mid is over then
    data = three(AN_ACRE_LB, 0, 1, 2, 3)
    the_planting(data, 2).update(method="drill", steps="drilled_native_grass", work=[])
    data["screens"]["screens"][2]["cover_now"] = {"kind": "stubble"}
    assert set(sown_acres(planned(data))) == {"lane"}
    late = make_plan(inventory_of(data), SEASON, datetime.date(2027, 5, 1))
    assert set(sown_acres(late)) == {"far"}


def logged(data: Data, pounds: float, *, finished: bool, **lot: object) -> Data:
    """So much seed logged as sown on lane the day after the count."""
    the_lot(data).update({"counted_on": "2026-08-15"} | lot)
    job = {"planting": "lane-27", "step": "frost_seeding", "finished": finished}
    use = [{"item": "sg", "amount_lb": pounds}]
    data["log"] = {"entries": [{"id": "e", "done_on": "2026-08-16", "job": job, "used": use}]}
    return data


def test_seed_left_by_a_finished_place_goes_to_the_next() -> None:
    # counted after the sowing of lane: an acre's worth is there, and mid takes it
    data = logged(three(AN_ACRE_LB, 0, 1, 2, 3), AN_ACRE_LB, finished=True, counted_on="2026-08-17")
    plan = planned(data)
    assert sown_acres(plan)["mid"] == pytest.approx(1)
    assert "S140" not in codes_on(plan, sowing("mid"))
    assert "S140" in codes_on(plan, sowing("far"))
    # counted before it, the seed is used up
    the_lot(data)["counted_on"] = "2026-08-15"
    assert "S140" in codes_on(planned(data), sowing("mid"))


def test_a_place_that_is_begun_takes_only_what_it_still_needs() -> None:
    # two acres' worth counted, half of one sown on lane since: lane takes half an acre more,
    # mid an acre, and nothing is left for far
    data = logged(three(2 * AN_ACRE_LB, 0, 1, 2, 3), AN_ACRE_LB / 2, finished=False)
    plan = planned(data)
    assert sown_acres(plan) == pytest.approx({"lane": 1, "mid": 1})
    (bought,) = (one for one in plan.buying.purchases if one.item.id == "sg")
    # 1.5 acres' worth are there and needed: nothing to buy, nothing left
    assert bought.needed.value == pytest.approx(1.5 * AN_ACRE_LB)
    assert bought.nothing


def test_a_place_that_is_begun_and_gets_no_more_is_sown_in_part() -> None:
    data = logged(three(AN_ACRE_LB / 4, 0, 1, 2, 3), AN_ACRE_LB / 4, finished=False)
    plan = planned(data)
    assert sown_acres(plan) == pytest.approx({"lane": 0.25})
    assert "C230" in codes_on(plan, sowing("lane"))
    assert not codes_on(plan, sowing("mid")) & {"C230"}
    # below nothing by a slip of the log is nothing, and the place that is begun counts it all
    slip = planned(logged(data, AN_ACRE_LB / 2, finished=False))
    assert sown_acres(slip) == pytest.approx({"lane": 0.5})


def test_seed_counted_on_a_later_day_is_not_shared_out_yet() -> None:
    data = three(0, 5)
    the_lot(data)["counted_on"] = "2026-08-21"
    plan = planned(data)
    assert sown_acres(plan) == pytest.approx({"lane": 1, "mid": 1, "far": 1})
    assert "N320" in codes_on(plan, sowing("lane"))
    the_lot(data)["counted_on"] = "2026-08-20"
    assert "N320" not in codes_on(planned(data), sowing("lane"))
