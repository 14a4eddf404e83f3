"""What a contractor's own sprayer takes, by its own gallons to the acre: worked by hand.

The ground is an acre, so that spray in all is the gallons to an acre, and product in all is the
rate. The arithmetic is area times rate, and rate over volume for each gallon; what a load takes at
a volume is also held to a published answer in tests/published/spray.yaml (albany_calibration, 20
gallons at 20 to an acre take the rate of one acre).
"""

import copy

import pytest

from generator.plan.model.work import OwnLoads
from generator.plan.readers.seen_by import seen_by
from generator.working import Given, Reference
from tests.plan.planned import KILL, inventory_of, job_of, planned
from tests.properties import Data, full_card, full_use, small_property, the_work
from tests.properties_tank import three_in_the_tank


def rows_of(data: Data) -> tuple[OwnLoads, ...]:
    """The rows of the kill for the one who is hired; of a job with a stop there are none."""
    mix = job_of(planned(data)).mix
    return mix.own_sprayer if mix is not None else ()


def volumes_of(data: Data) -> list[float]:
    return [
        row.carrier.value for row in rows_of(data) if isinstance(row.carrier, Given | Reference)
    ]


def by_the_ounce(data: Data) -> Data:
    """The property with a jug marked every fluid ounce, in place of every half."""
    data["equipment"]["measures"][0]["mark_fl_oz"] = 1
    return data


def spraying(low_gal_per_ac: float, high_gal_per_ac: float, **work: object) -> Data:
    """The small property whose label takes these volumes; 18.5625 gal to an acre must fit."""
    carrier = {"low_gal_per_ac": low_gal_per_ac, "high_gal_per_ac": high_gal_per_ac}
    return small_property(full_card(full_use(carrier_gal_per_ac=carrier)), **work)


def test_rows_run_from_the_label_s_least_to_its_most_over_round_figures() -> None:
    assert volumes_of(spraying(10, 25)) == [10, 15, 20, 25]
    assert volumes_of(spraying(18, 21)) == [18, 19, 20, 21]
    assert volumes_of(spraying(9.5, 40)) == [9.5, 10, 20, 30, 40]


def test_spray_and_product_of_an_acre_by_hand() -> None:
    # 32 fl oz on an acre: 32 in all whatever the spray; in 10 gal 32 x 10 / 10 = 32, 32 x 10 / 15
    # = 21.33, 32 x 10 / 20 = 16 and 32 x 10 / 25 = 12.8, each at the nearest mark of 1 fl oz
    rows = rows_of(by_the_ounce(spraying(10, 25)))
    assert [row.whole.spray.value for row in rows] == [10, 15, 20, 25]
    assert [row.whole.doses[0].amount.value for row in rows] == [32, 32, 32, 32]
    assert [row.part.spray.value for row in rows] == [10, 10, 10, 10]
    assert [row.part.doses[0].amount.value for row in rows] == [32, 21, 16, 13]


def test_an_adjuvant_by_weight_in_the_spray_follows_the_spray() -> None:
    # 10 lb in 100 gal are 160 oz in 100 gal, 16 oz in 10 gal, 1.6 oz for every gallon in all
    data = spraying(10, 20, adjuvants=[{"adjuvant": "salt", "rate_lb_per_100_gal": 10}])
    data["products"]["adjuvants"] = [
        {"id": "salt", "name": "Made-up conditioner", "formulation": "soluble_powder"}
    ]
    data["equipment"]["measures"].append({"id": "scale", "name": "scale", "mark_oz_wt": 0.5})
    data["equipment"]["sprayers"][0]["measure"] = ["jug", "scale"]
    rows = rows_of(data)
    assert volumes_of(data) == [10, 12, 14, 16, 18, 20]
    assert [row.part.doses[1].amount.value for row in rows] == [16] * 6
    # 16, 19.2, 22.4, 25.6, 28.8 and 32 oz, at the nearest half ounce
    assert [row.whole.doses[1].amount.value for row in rows] == [16, 19, 22.5, 25.5, 29, 32]


def test_no_mark_takes_an_amount_over_the_label_s_most() -> None:
    # 33.5 fl oz to an acre, at most 33.6 at one time: the nearest mark in all would be 34, which
    # gives 34 to an acre, so 33 is poured
    data = small_property(
        full_card(full_use(rate_high_fl_oz_per_ac=33.6, max_per_application_fl_oz_per_ac=33.6)),
        rate_product_fl_oz_per_ac=33.5,
    )
    rows = rows_of(by_the_ounce(data))
    assert rows
    for row in rows:
        assert row.whole.doses[0].amount.value == 33
        for load in (row.whole, row.part):
            assert load.doses[0].rate.value <= 33.6


def test_where_a_mark_is_too_coarse_at_one_volume_no_row_stands() -> None:
    # of a card that takes 32 to 33 fl oz to an acre, 10 gal at 18 to an acre take 17.8 to 18.3:
    # 18 fl oz; at 24 to an acre they take 13.33 to 13.75, and a mark of 1 fl oz is not among them
    use = full_use(
        rate_low_fl_oz_per_ac=32,
        rate_high_fl_oz_per_ac=33,
        carrier_gal_per_ac={"low_gal_per_ac": 18, "high_gal_per_ac": 24},
    )
    data = by_the_ounce(small_property(full_card(use)))
    assert job_of(planned(data)).mix is not None
    assert rows_of(data) == ()


def test_of_several_labels_the_volumes_that_all_of_them_allow() -> None:
    data = three_in_the_tank()
    ranges = [(10, 25), (12, 40), (5, 20)]
    for product, (low, high) in zip(data["products"]["products"], ranges, strict=True):
        product["label"]["uses"][0]["carrier_gal_per_ac"] = {
            "low_gal_per_ac": low, "high_gal_per_ac": high,
        }  # fmt: skip
    assert volumes_of(data) == [12, 14, 16, 18, 20]
    assert [len(row.whole.doses) for row in rows_of(data)] == [3] * 5


def test_no_rows_where_one_label_gives_no_volume() -> None:
    data = three_in_the_tank()
    use = data["products"]["products"][1]["label"]["uses"][0]
    assert rows_of(data)
    use["carrier_gal_per_ac"] = "not_on_label"
    assert job_of(planned(data)).mix is not None
    assert rows_of(data) == ()


def test_no_rows_where_a_stop_stands() -> None:
    data = small_property(full_card(full_use(allowed="no")))
    assert job_of(planned(data)).mix is None
    assert rows_of(data) == ()


@pytest.mark.parametrize("kind", ["partner", None])
def test_no_rows_where_nobody_is_hired(kind: str | None) -> None:
    data = small_property()
    assert rows_of(data)
    if kind is None:
        data["readers"]["readers"] = []
    else:
        data["readers"]["readers"][0]["kind"] = kind
    assert rows_of(data) == ()


def test_the_one_who_is_hired_reads_the_amounts_that_the_owner_has() -> None:
    inventory = inventory_of(small_property())
    plan = planned(small_property())
    (reader,) = inventory.readers
    theirs = next(job for job in seen_by(plan, reader).jobs if job.step.id == "autumn_kill")
    assert theirs.mix is not None
    told = [
        [load.doses[0].amount.value for load in (row.whole, row.part)]
        for row in theirs.mix.own_sprayer
    ]
    assert told == [
        [load.doses[0].amount.value for load in (row.whole, row.part)]
        for row in rows_of(small_property())
    ]
    assert KILL not in str(theirs.mix.own_sprayer)


def test_twice_the_ground_takes_twice_the_spray_and_the_same_in_ten_gallons() -> None:
    single, double = spraying(10, 25), copy.deepcopy(spraying(10, 25))
    double["screens"]["screens"][0]["length_ft"] *= 2
    once, twice = rows_of(single), rows_of(double)
    assert [row.whole.spray.value for row in twice] == [2 * row.whole.spray.value for row in once]
    assert [row.part.doses[0].amount.value for row in twice] == [
        row.part.doses[0].amount.value for row in once
    ]


def test_spots_have_no_rows() -> None:
    data = small_property(full_card(full_use(method="spot")), method="spot", treated_sq_ft=2000)
    assert "treated_sq_ft" in the_work(data)[0]
    assert rows_of(data) == ()
