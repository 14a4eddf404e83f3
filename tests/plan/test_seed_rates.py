"""Rates of seed, by pounds, by count and by share, and what live seed costs: worked by hand."""

import pytest

from generator.plan.model.job import Job
from generator.plan.sowing.seed_price import live_prices
from tests.plan.planned import job_of, planned
from tests.plan.sown import DRILLING, SOWING, by_drill, codes_on, found_on, sown, the_lot, with_lot


def numbers(job: Job, lot: str) -> dict[str, float]:
    """The numbers of one lot of a sowing."""
    (part,) = [one for one in job.sowings if one.lot.id == lot]
    return {name: one.value for name, one in part.numbers.items()} | {"rate": part.rate.value}


def test_seeds_on_a_square_foot_become_pounds() -> None:
    data = sown(seed=[{"species": "switchgrass", "lot": "sg", "rate_seeds_per_sq_ft": 40}])
    number = numbers(job_of(planned(data), SOWING), "sg")
    # 40 x 43,560 / 259,000 = 6.72741 lb an acre; / 0.72 = 9.34363 lb off the bag
    assert number["rate"] == pytest.approx(6.72741, abs=5e-6)
    assert number["bulk_seed_lb"] == pytest.approx(9.34363, abs=5e-6)
    assert number["seeds_per_sq_ft"] == pytest.approx(40)


def test_seeds_on_an_acre_are_taken_too() -> None:
    seed = {"species": "switchgrass", "lot": "sg", "rate_seeds_per_ac": 40 * 43560}
    number = numbers(job_of(planned(sown(seed=[seed])), SOWING), "sg")
    assert number["seeds_per_sq_ft"] == pytest.approx(40)


def test_a_mixture_by_weight() -> None:
    data = sown(
        mix_rate_pls_lb_per_ac=10,
        seed=[
            {"species": "switchgrass", "lot": "sg", "share_pct": 30},
            {"species": "big-bluestem", "lot": "bb", "share_fraction": 0.7},
        ],
    )
    with_lot(data, "bb", "big-bluestem", live_seeds_per_lb=165000)
    job = job_of(planned(data), SOWING)
    grass, blue = numbers(job, "sg"), numbers(job, "bb")
    # three and seven pounds of ten; / 0.72 = 4.16667 and 9.72222; together 13.88889
    assert (grass["rate"], blue["rate"]) == (pytest.approx(3), pytest.approx(7))
    assert grass["bulk_rate_lb_per_ac"] == pytest.approx(4.16667, abs=5e-6)
    assert blue["bulk_seed_lb"] == pytest.approx(9.72222, abs=5e-6)
    assert job.numbers["bulk_seed_lb"].value == pytest.approx(13.88889, abs=5e-6)
    # 0.3 x 259,000 + 0.7 x 165,000 = 77,700 + 115,500 = 193,200 seeds in a pound
    assert job.numbers["mix_seeds_per_lb"].value == pytest.approx(193200)
    # 3 x 259,000 / 43,560 = 17.8375; 7 x 165,000 / 43,560 = 26.5152; together 44.3526
    assert grass["seeds_per_sq_ft"] == pytest.approx(17.8375, abs=5e-5)
    assert job.numbers["seeds_per_sq_ft"].value == pytest.approx(44.3526, abs=5e-5)


def test_seeds_are_not_counted_together_while_one_lot_is_not() -> None:
    seed = [
        {"species": "switchgrass", "lot": "sg", "rate_pls_lb_per_ac": 4},
        {"species": "big-bluestem", "lot": "bb", "rate_pls_lb_per_ac": 4},
    ]
    data = with_lot(sown(seed=seed), "bb", "big-bluestem", live_seeds_per_lb=None)
    plan = planned(data)
    job = job_of(plan, SOWING)
    assert "seeds_per_sq_ft" not in job.numbers
    assert "seeds_per_sq_ft" in numbers(job, "sg")
    assert "seeds_per_sq_ft" not in numbers(job, "bb")
    assert "N303" in codes_on(plan)


@pytest.mark.parametrize(("germination", "dormant"), [(80, 0), (60, 20), (10, 70)])
def test_sleeping_seed_never_changes_the_pounds(germination: int, dormant: int) -> None:
    data = sown()
    the_lot(data)["tag"] |= {"germination_pct": germination, "dormant_pct": dormant}
    plan = planned(data)
    number = numbers(job_of(plan, SOWING), "sg")
    # 8 / (0.9 x 0.8) = 11.1111 lb on an acre, asleep or not
    assert number["bulk_seed_lb"] == pytest.approx(11.1111, abs=5e-5)
    (line,) = [one for one in plan.lines if one.item_id == "sg"]
    assert (line.kind, line.amount.value) == ("seed", number["bulk_seed_lb"])
    assert number["ready_rate_pls_lb_per_ac"] == pytest.approx(8 * germination / 80)
    assert ("C201" in codes_on(plan)) == bool(dormant)


def test_sleeping_seed_is_told_by_method_and_date() -> None:
    winter, spring = planned(sown()), planned(by_drill(sown()))
    assert "C201" in codes_on(winter)
    assert "C237" in codes_on(spring, DRILLING)
    assert "C201" not in codes_on(spring, DRILLING)
    told = dict(found_on(spring, "C237", DRILLING).figures)
    # 8 lb on the tag; 60 of 80 live seeds are awake: 6 lb
    assert told["To an acre, as the tag counts it"].value == 8
    assert told["Ready to grow without a winter"].value == pytest.approx(6)
    same = [numbers(job_of(plan, one), "sg")["bulk_seed_lb"]
            for plan, one in ((winter, SOWING), (spring, DRILLING))]  # fmt: skip
    assert same[0] == same[1]


def test_live_seed_of_two_lots_is_compared_by_the_pound() -> None:
    data = with_lot(sown(), "dear", "switchgrass", package_lb=50, price_usd=600)
    the_lot(data, 1)["tag"] = the_lot(data)["tag"] | {"purity_pct": 99, "germination_pct": 90,
                                                      "dormant_pct": 5}  # fmt: skip
    del the_lot(data)["price_usd"]
    with_lot(data, "cheap", "switchgrass", package_oz_wt=160, package_lb=None, price_usd=100)
    cost = {one.lot.id: one.pound and one.pound.value for one in live_prices(planned(data))}
    assert cost["sg"] is None
    # 0.99 x 0.95 = 0.9405: 600 / (50 x 0.9405) = 12.7592; 100 / (10 x 0.72) = 13.8889
    assert cost["dear"] == pytest.approx(12.7592, abs=5e-5)
    assert cost["cheap"] == pytest.approx(13.8889, abs=5e-5)


def test_hard_seed_is_not_ready_either() -> None:
    data = sown()
    parts = {"germination_pct": 20, "hard_pct": 10, "dormant_pct": 50}
    the_lot(data)["tag"] |= parts
    # 8 lb x 20 / 80 = 2 lb sprouted in the test; hard and dormant seed did not
    number = numbers(job_of(planned(data), SOWING), "sg")
    assert number["ready_rate_pls_lb_per_ac"] == pytest.approx(2)
