"""What has to be paid and is paid back, by hand: only for what is bought, done and sown."""

from typing import Any

import pytest

from generator.plan.budget import purchases
from generator.plan.model import Plan
from generator.plan.money import payments, to_pay
from tests.plan.planned import planned
from tests.plan.sown import sown, the_lot
from tests.properties import SEASON, Data, small_property

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
    paid = to_pay(plan, purchases(plan))
    assert paid is not None
    # 11.1 lb of seed: two bags at $118; a gallon of spray at $41.25; crew $150; a day's rent $95
    assert paid.value == pytest.approx(2 * 118 + 41.25 + 150 + 95)
