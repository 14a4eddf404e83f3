"""What has to be paid and is paid back, by hand: only for what is bought, done and sown."""

import datetime
from typing import Any

import pytest

from generator.book.money_views import money_rows
from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.money.field_work import rentings
from generator.plan.money.money_hours import MoneyRow, payments, to_pay
from tests.plan.planned import KILL, inventory_of, planned
from tests.plan.sown import sown, the_lot
from tests.properties import SEASON, Data, full_card, full_use, small_property

FERTILIZING = f"lane/{SEASON}/fertilizing"
BLEND: Data = {"id": "blend", "name": "13-13-13", "n_pct": 13, "p2o5_pct": 13, "k2o_pct": 13}
TUG: Data = {"id": "tug", "name": "Tractor", "speed_mph": 5, "width_ft": 10, "efficiency_pct": 80}


def fed(p2o5: float) -> Data:
    """The small property, fertilized by a rented tractor and a hired crew, or not at all."""
    data = small_property()
    planting: Data = data["screens"]["screens"][0]["plantings"][0]
    planting |= {
        "need": {"n_lb_per_ac": 0, "p2o5_lb_per_ac": p2o5, "k2o_lb_per_ac": 0},
        "fertilizers": ["blend"],
    }
    planting["work"].append({"step": "fertilizing", "machine": "tug"})
    data["products"]["fertilizers"] = [dict(BLEND)]
    data["equipment"]["machines"] = [TUG | {"rent_usd_per_day": 95, "work_day_hours": 8}]
    jobs = [{"planting": "lane-27", "steps": ["fertilizing"]}]
    data["money"] = {"hires": [{"id": "crew", "name": "Crew", "jobs": jobs, "price_usd": 150}]}
    return data


def kinds_on_fertilizing(plan: Plan) -> set[str]:
    return {one.kind for one in plan.lines if one.job_id == FERTILIZING}


def test_nothing_to_spread_takes_no_machine_and_no_crew() -> None:
    assert kinds_on_fertilizing(planned(fed(26))) == {"fertilizer", "hours", "rent", "hire"}
    assert kinds_on_fertilizing(planned(fed(0))) == set()


def test_a_payment_by_the_acre_is_for_the_ground_that_is_sown() -> None:
    data = sown()
    data["money"] = {
        "cost_share": [
            {"id": "program", "name": "P", "planting": "lane-27", "pays_usd_per_ac": 60,
             "approved_on": "2026-08-01"}
        ]
    }  # fmt: skip
    (whole,) = payments(planned(data))
    assert whole.paid is not None
    assert whole.paid.value == pytest.approx(60)
    # 11.1111 lb would sow the acre: 4 lb sow 0.36 of it
    the_lot(data).update({"on_hand_lb": 4, "most_to_be_had_lb": 0})
    (part,) = payments(planned(data))
    assert part.paid is not None
    assert part.paid.value == pytest.approx(60 * 0.36)


def priced(lot: dict[str, Any]) -> Data:
    data = fed(26)
    data["seed"]["lots"][0] |= lot
    return data


def test_to_pay_are_whole_packages_hire_and_rent() -> None:
    data = priced({"package_lb": 10, "price_usd": 118, "on_hand_lb": 0})
    plan = planned(data)
    paid = to_pay(plan)
    assert paid is not None
    # 11.1 lb of seed: two bags at $118; a gallon of spray at $41.25; crew $150; a day's rent $95
    assert paid.value == pytest.approx(2 * 118 + 41.25 + 150 + 95)


def shares(*contracts: Data) -> Data:
    """A planting on which no job is stopped, all but the blend priced, with its contracts."""
    data = priced({"package_lb": 10, "price_usd": 118, "on_hand_lb": 0})
    spring = full_use("after_sowing_before_emergence")
    data["products"]["products"][0]["label"] = full_card(full_use(), spring)
    work: list[Data] = data["screens"]["screens"][0]["plantings"][0]["work"]
    work.append(work[0] | {"step": "spring_burn_down"})
    data["money"]["cost_share"] = [
        {"id": f"paper-{number}", "name": "P", "planting": "lane-27", "approved_on": "2026-08-01"}
        | one
        for number, one in enumerate(contracts)
    ]
    return data


def of_planting(plan: Plan) -> MoneyRow:
    (row,) = money_rows(plan, "planting")
    return row


def codes_on(plan: Plan, subject: str) -> set[str]:
    return {one.code for one in plan.findings_on(subject)}


def test_contracts_that_together_pay_above_the_cost_ask_to_look_again() -> None:
    data = shares({"pays_usd": 300}, {"pays_usd": 300})
    data["products"]["fertilizers"][0] |= {"package_lb": 50, "price_usd": 20}
    plan = planned(data)
    row = of_planting(plan)
    assert row.total.cost is not None
    assert row.total.unpriced == ()
    assert row.total.cost.value < 600
    assert "C267" in codes_on(plan, "paper-0") | codes_on(plan, "paper-1")
    data["money"]["cost_share"][0] |= {"cap_usd": 100}
    assert row.total.cost.value > 400
    capped = planned(data)
    assert "C267" not in codes_on(capped, "paper-0") | codes_on(capped, "paper-1")


def test_a_share_of_a_cost_that_is_not_all_of_it_says_so() -> None:
    data = shares({"pays_pct": 50})
    (unpriced,) = payments(planned(data))
    assert unpriced.unfinished  # the blend has no price
    assert of_planting(planned(data)).unfinished
    data["products"]["fertilizers"][0] |= {"package_lb": 50, "price_usd": 20}
    (all_priced,) = payments(planned(data))
    assert not all_priced.unfinished
    assert not of_planting(planned(data)).unfinished
    job = {"planting": "lane-27", "step": "autumn_kill", "finished": True}
    data["log"] = {"entries": [{"id": "e", "done_on": "2026-08-19", "job": job}]}
    (rest,) = payments(planned(data))
    assert rest.unfinished
    data["money"]["cost_share"][0] = data["money"]["cost_share"][0] | {"pays_usd": 90}
    del data["money"]["cost_share"][0]["pays_pct"]
    (flat,) = payments(planned(data))
    assert not flat.unfinished


def test_a_job_that_is_missed_takes_no_crew_no_machine_and_no_money() -> None:
    data = fed(26)
    data["money"]["hires"][0]["jobs"] = [{"planting": "lane-27", "steps": ["autumn_kill"]}]
    inventory = inventory_of(data)
    before = make_plan(inventory, SEASON, datetime.date(2026, 9, 27))
    after = make_plan(inventory, SEASON, datetime.date(2026, 9, 28))
    assert {line.kind for line in before.lines if line.job_id == KILL} == {"product", "hire"}
    assert [line for line in after.lines if line.job_id == KILL] == []
    paid_before, paid_after = (to_pay(plan) for plan in (before, after))
    assert paid_before is not None
    assert paid_after is not None
    assert paid_after.value <= paid_before.value - 150


def test_a_finished_sowing_is_paid_for_the_ground_the_log_says() -> None:
    data = sown()
    paper = {"id": "program", "name": "P", "planting": "lane-27", "pays_usd_per_ac": 60}
    data["money"] = {"cost_share": [paper | {"approved_on": "2026-08-01"}]}
    the_lot(data).update({"on_hand_lb": 4, "most_to_be_had_lb": 0})
    job = {"planting": "lane-27", "step": "frost_seeding", "finished": True}
    data["log"] = {"entries": [{"id": "e", "done_on": "2026-08-19", "job": job}]}
    (whole,) = payments(planned(data))
    assert whole.paid is not None
    assert whole.paid.value == pytest.approx(60)
    job["area_ac"] = 0.36
    (part,) = payments(planned(data))
    assert part.paid is not None
    assert part.paid.value == pytest.approx(60 * 0.36)


def test_a_contract_whose_place_says_none_is_told() -> None:
    data = shares({"pays_usd": 90})
    place = data["screens"]["screens"][0]
    place["contract"] = "none"
    assert "N362" in codes_on(planned(data), "paper-0")
    place["contract"] = "County screen program"
    assert "N362" not in codes_on(planned(data), "paper-0")


def test_two_steps_are_two_times_of_renting() -> None:
    data = fed(26)
    work = data["screens"]["screens"][0]["plantings"][0]["work"]
    (kill,) = (one for one in work if one["step"] == "autumn_kill")
    kill["machine"] = "tug"
    found = rentings(planned(data))
    assert {(len(one.job_ids), one.days.value) for one in found} == {(1, 1)}
    assert len(found) == 2
