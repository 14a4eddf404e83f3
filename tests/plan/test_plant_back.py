"""Sowings held back by what was or will be sprayed on the same ground, worked by hand.

The lane's sowing opens on Jan 20, 2027; its fall kill closes on Sep 27, 2026, seven days
before the early first freeze of Oct 4.
"""

import datetime
from typing import Any

import pytest

from generator.plan.build.season_plan import make_plan
from generator.plan.model.counts import Earliest
from generator.plan.model.finding import Finding
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import inventory_of, job_of, planned
from tests.properties import SEASON, Data, full_card, full_use, small_property

SOWING = f"lane/{SEASON}/frost_seeding"
OTHER = {"active": "made-up active A", "strength_lb_per_gal": 4, "basis": "ae"}


def card(works: str = "other", **use: Any) -> Data:
    return full_card(full_use(**use), actives=[OTHER | {"works_as": [works]}])


def sprayed(data: Data, day: str, **more: Any) -> Data:
    """The property with its fall kill logged as finished on a day."""
    entry = {
        "id": "kill",
        "done_on": day,
        "job": {"planting": "lane-27", "step": "autumn_kill", "finished": True},
        "used": [{"item": "brew", "amount_fl_oz": 32}],
    }
    data["log"] = {"entries": [{key: one for key, one in (entry | more).items() if one}]}
    return data


def plan_of(data: Data, as_of: str = "2026-12-01") -> Plan:
    day = datetime.date.fromisoformat(as_of)
    return make_plan(inventory_of(data), SEASON, day)


def held(plan: Plan, code: str = "S210") -> list[Finding]:
    return [one for one in plan.findings_on(SOWING) if one.code == code]


def answer(plan: Plan, kind: str, *, logged: bool = True) -> Earliest:
    (place,) = plan.decided.waits
    answers = place.logged if logged else place.planned
    return next(one for one in answers if one.kind == kind)


def test_a_logged_spraying_holds_a_sowing_back_with_its_arithmetic() -> None:
    # Sep 22, 2026 to Jan 20, 2027 are 120 days; the card asks for 150: 30 too soon
    plan = plan_of(sprayed(small_property(card(seeding_interval_days=150)), "2026-09-22"))
    (stop,) = held(plan)
    assert {name: figure.value for name, figure in stop.figures} == {
        "The label asks for": 150,
        "There are": 120,
        "Too soon by": 30,
    }
    # 150 days after Sep 22, 2026
    assert "from Feb 19, 2027 on" in stop.words
    assert job_of(plan, SOWING).numbers == {}
    kept = plan_of(sprayed(small_property(card(seeding_interval_days=120)), "2026-09-22"))
    assert held(kept) == []
    assert job_of(kept, SOWING).numbers


def test_a_season_later_or_an_earlier_day_cures_it() -> None:
    data = sprayed(small_property(card(seeding_interval_days=150)), "2026-09-22")
    data["screens"]["screens"][0]["plantings"][0]["season"] = SEASON + 1
    later = make_plan(inventory_of(data), SEASON + 1, datetime.date(2026, 12, 1))
    sowing = f"lane/{SEASON + 1}/frost_seeding"
    assert "S210" not in {one.code for one in later.findings_on(sowing)}
    early = plan_of(sprayed(small_property(card(seeding_interval_days=150)), "2026-08-23"))
    assert held(early) == []  # Aug 23 to Jan 20 are 150 days


def test_other_readers_are_told_to_wait_and_nothing_more() -> None:
    data = sprayed(small_property(card(seeding_interval_days=150)), "2026-09-22")
    plan = plan_of(data)
    seen = seen_by(plan, inventory_of(data).readers[0])
    (stop,) = [one for one in seen.findings if one.code == "S210"]
    assert stop.words == "This ground may not be sown yet. Do not begin; ask the owner."
    assert stop.figures == ()


def test_a_planned_spraying_of_its_own_is_stopped_itself_and_not_twice() -> None:
    """The label's interval to the planting it covers is held at the spraying."""
    plan = planned(small_property(card(seeding_interval_days=150)))
    kill = {one.code for one in plan.findings_on(f"lane/{SEASON}/autumn_kill")}
    assert "S118" in kill
    assert held(plan) == []


def two_plantings(listed: list[Data]) -> Data:
    """The lane with grass drilled the season before, for which another card lists crops."""
    data = small_property(card(seeding_interval_days=7))
    covers = {"kinds": ["woody_row"], "species": ["any"], "land": "any", "places": ["any"]}
    second = full_use(covers=covers, plant_back_days=listed)
    label = full_card(second, actives=[OTHER | {"works_as": ["other"]}])
    (first,) = data["products"]["products"]
    data["products"]["products"].append(first | {"id": "second", "label": label})
    old = {
        "id": "lane-26",
        "season": SEASON - 1,
        "seed": data["screens"]["screens"][0]["plantings"][0]["seed"],
        "method": "drill",
        "steps": "drilled_native_grass",
    }
    data["screens"]["screens"][0]["plantings"].append(old)
    return data


def with_second(data: Data, *, logged: bool) -> Data:
    """The other card's product put on the lane: on May 20, 2026, or planned until Apr 23."""
    if logged:
        job = {"planting": "lane-26", "step": "green_up_kill", "finished": True}
        used = [{"item": "second", "amount_fl_oz": 20}]
        entry = {"id": "old-kill", "done_on": "2026-05-20", "job": job, "used": used}
        data["log"] = {"entries": [entry]}
    else:
        work = {"step": "green_up_kill", "product": "second", "rate_product_fl_oz_per_ac": 32}
        data["screens"]["screens"][0]["plantings"][1]["work"] = [work]
    return data


# May 20, 2026 to Jan 20, 2027 are 245 days, Apr 23 to then 272
@pytest.mark.parametrize(("logged", "there"), [(True, 245), (False, 272)])
def test_a_spraying_for_another_planting_holds_this_one_back(logged: bool, there: int) -> None:
    def stops(crop: str, days: int) -> list[Finding]:
        listed = [{"crop": crop, "wait_days": days}, {"crop": "corn", "wait_days": 300}]
        return held(plan_of(with_second(two_plantings(listed), logged=logged)))

    assert stops("Switchgrass", there) == []
    (stop,) = stops("Native grass", there + 5)
    assert dict(stop.figures)["Too soon by"].value == 5
    assert ("was sprayed" in stop.words) == logged
    # a crop the label does not list takes the longest
    (stop,) = stops("wheat", 1)
    assert dict(stop.figures)["The label asks for"].value == 300


def test_a_kind_beside_the_listed_one_takes_the_longest() -> None:
    """A legume in the mixture is not listed, whatever the label says of the grass."""
    data = small_property(
        card(
            covers={"kinds": ["clover"], "species": ["any"], "land": "any", "places": ["any"]},
            plant_back_days=[
                {"crop": "native grass", "wait_days": 30},
                {"crop": "corn", "wait_days": 365},
            ],
        )
    )
    data["seed"]["lots"].append(data["seed"]["lots"][0] | {"id": "pea", "species": "partridge-pea"})
    planting = data["screens"]["screens"][0]["plantings"][0]
    data = sprayed(data, "2026-09-22")
    assert held(plan_of(data)) == []
    planting["seed"] = [
        {"species": "switchgrass", "lot": "sg", "rate_pls_lb_per_ac": 7},
        {"species": "partridge-pea", "lot": "pea", "rate_pls_lb_per_ac": 1},
    ]
    (stop,) = held(plan_of(data))
    assert dict(stop.figures)["The label asks for"].value == 365


def test_what_is_not_known_of_a_logged_spraying_is_a_stop_on_the_sowing() -> None:
    use = full_use()
    del use["plant_back_days"]
    data = sprayed(small_property(full_card(use)), "2026-09-22")
    (stop,) = held(plan_of(data), "S211")
    assert "leaves out the days before other crops" in stop.words
    assert job_of(plan_of(data), SOWING).numbers == {}
    assert held(plan_of(data)) == []
    cured = sprayed(small_property(full_card(full_use())), "2026-09-22")
    assert held(plan_of(cured), "S211") == []
    assert job_of(plan_of(cured), SOWING).numbers


def test_a_spraying_whose_product_is_not_typed_is_not_answerable() -> None:
    data = sprayed(small_property(card()), "2026-09-22", used=None)
    assert held(plan_of(data), "S211") == []  # the product is chosen under work:
    data["screens"]["screens"][0]["plantings"][0]["work"] = []
    (stop,) = held(plan_of(data), "S211")
    assert "Type used: with the product" in stop.to_type
    assert answer(plan_of(data), "clover").unknown


def test_the_page_answers_by_kind() -> None:
    listed = [{"crop": "clover", "wait_days": 120}, {"crop": "corn", "wait_days": 30}]
    data = sprayed(small_property(card(plant_back_days=listed)), "2026-09-22")
    plan = plan_of(data)
    # native grass by its interval of 7 days, clover by name, every other by the longest listed
    days = {kind: answer(plan, kind).day for kind in ("native_grass", "clover", "brassica")}
    assert days == {
        "native_grass": datetime.date(2026, 9, 29),
        "clover": datetime.date(2027, 1, 20),
        "brassica": datetime.date(2027, 1, 20),
    }
    by = answer(plan, "clover").by
    assert by is not None
    assert (by.product_name, by.logged) == ("Made-up product brew", True)


def test_a_residual_without_words_on_plant_back_is_not_answerable() -> None:
    lasting = plan_of(sprayed(small_property(card("soil_residual")), "2026-09-22"))
    assert "works through the soil" in answer(lasting, "clover").unknown[0]
    assert answer(lasting, "native_grass").day == datetime.date(2026, 9, 29)
    passing = plan_of(sprayed(small_property(card("other")), "2026-09-22"))
    assert answer(passing, "clover").unknown == ()
    # its interval of 7 days holds for clover too, which the use does not cover
    assert answer(passing, "clover").day == datetime.date(2026, 9, 29)
    silent = card("other", seeding_interval_days="not_on_label")
    assert answer(plan_of(sprayed(small_property(silent), "2026-09-22")), "clover").day is None


def test_what_is_planned_stands_apart_from_what_is_logged() -> None:
    listed = [{"crop": "clover", "wait_days": 120}]
    plan = planned(small_property(card(plant_back_days=listed)))
    assert answer(plan, "clover").day is None
    # as late as Sep 27, 2026, and 120 days
    assert answer(plan, "clover", logged=False).day == datetime.date(2027, 1, 25)


@pytest.mark.parametrize(("works", "unknown"), [("other", 0), ("soil_residual", 1)])
def test_an_entry_without_a_job_is_told_to_be_nowhere(works: str, unknown: int) -> None:
    data = small_property(card(works))
    data["log"] = {
        "entries": [
            {"id": "x", "done_on": "2026-08-12", "used": [{"item": "brew", "amount_gal": 1}]}
        ]
    }
    plan = planned(data)
    assert [one.id for one in plan.decided.nowhere] == ["x"]
    assert len(answer(plan, "clover", logged=False).unknown) == unknown


def test_waiting_twice_as_long_never_lets_a_sowing_come_sooner() -> None:
    found = []
    for days in (10, 20, 40, 80, 160):
        plan = plan_of(sprayed(small_property(card(seeding_interval_days=days)), "2026-09-22"))
        found.append(answer(plan, "native_grass").day)
    assert found == sorted(found, key=str)
    assert len(set(found)) == len(found)
