"""Several products, adjuvants and dry products in one tank, spots and small places, by hand."""

import copy
from typing import Any

import pytest

from generator.plan.model.job import Job
from generator.plan.model.work import Mix
from tests.plan.planned import BURN_DOWN, KILL, job_of, planned, stops_of
from tests.properties import Data, full_card, full_use, small_property, the_work

ACTIVE = "made-up active A"
SCALE = {"id": "scale", "name": "kitchen scale", "mark_oz_wt": 0.1}


def mix_of(data: Data, job_id: str = KILL) -> Mix:
    """The mix of a cleared job."""
    mix = job_of(planned(data), job_id).mix
    assert mix is not None
    return mix


def cautions_of(data: Data, job_id: str = KILL) -> set[str]:
    """The codes of the cautions and notes on a job."""
    found = planned(data).findings_on(job_id)
    return {one.code for one in found if one.severity != "stop"}


def doses_of(job: Job) -> list[tuple[str, str, float]]:
    """What is measured into each kind of load: load, name, amount."""
    assert job.mix is not None
    return [
        (load.name, dose.name, dose.amount.value) for load in job.mix.loads for dose in load.doses
    ]


def with_partner(**partner: Any) -> Data:
    """The small property with another product of its own card in the tank of the kill."""
    data = small_property()
    other = copy.deepcopy(data["products"]["products"][0]) | {"id": "other", "name": "Other"}
    other["label"]["actives"][0]["active"] = "made-up active birch"
    data["products"]["products"].append(other)
    the_work(data)[0]["partners"] = [{"product": "other"} | partner]
    return data


def dry_card(**changes: Any) -> Data:
    """A card of a dry product, 75 percent by weight, 4 to 16 ounces to an acre."""
    use = full_use(
        rate_low_oz_wt_per_ac=4,
        rate_high_oz_wt_per_ac=16,
        max_per_application_oz_wt_per_ac=16,
        max_per_year={"amount_oz_wt_per_ac": 32, "counted": "calendar_year"},
    )
    for left_out in ("rate_low_fl_oz_per_ac", "rate_high_fl_oz_per_ac",
                     "max_per_application_fl_oz_per_ac"):  # fmt: skip
        del use[left_out]
    actives = [{"active": ACTIVE, "strength_pct": 75, "basis": "ai"}]
    return full_card(use, actives=actives) | changes


def dry_property(rate_oz_wt_per_ac: float = 8) -> Data:
    """The small property with a dry product and a scale."""
    data = small_property(
        dry_card(), rate_product_fl_oz_per_ac=None, rate_product_oz_wt_per_ac=rate_oz_wt_per_ac
    )
    product = data["products"]["products"][0]
    del product["package_gal"], product["on_hand_fl_oz"]
    data["equipment"]["measures"].append(SCALE)
    data["equipment"]["sprayers"][0]["measure"] = ["jug", "scale"]
    return data


def test_two_products_in_one_tank() -> None:
    # An acre at 18.5625 gal takes 32 fl oz of the one and 40 of the other.
    job = job_of(planned(with_partner(rate_product_fl_oz_per_ac=40)))
    assert doses_of(job) == [("last", "Made-up product brew", 32), ("last", "Other", 40)]
    assert job.mix is not None
    assert [part.in_all.value for part in job.mix.parts] == [32, 40]


def test_one_product_not_cleared_stops_the_tank() -> None:
    assert stops_of(planned(with_partner(rate_product_fl_oz_per_ac=70))) == {"S110", "S111"}
    data = with_partner(rate_product_fl_oz_per_ac=40)
    del data["products"]["products"][1]["label"]
    assert stops_of(planned(data)) == {"S102"}


def test_every_product_of_a_tank_keeps_its_lines_of_safety() -> None:
    safety = job_of(planned(with_partner(rate_product_fl_oz_per_ac=40))).safety
    worn = [
        (one.product, one.label)
        for one in safety
        if one.key.startswith("label.protective_equipment")
    ]
    assert worn == [("Made-up product brew", "Wear"), ("Other", "Wear")]


def test_a_tank_counts_both_products_in_a_year() -> None:
    data = with_partner(rate_product_fl_oz_per_ac=40)
    data["products"]["products"][0]["label"]["pooled_with"] = ["made-up active birch"]
    use = data["products"]["products"][0]["label"]["uses"][0]
    use["max_per_year"]["amount_fl_oz_per_ac"] = 72
    assert stops_of(planned(data)) == set()
    use["max_per_year"]["amount_fl_oz_per_ac"] = 71.9
    assert stops_of(planned(data)) == {"S112"}


def premix(limit_lb_per_ac: float, pooled: list[str]) -> Data:
    """A premix with 2 lb in a gallon of each of two actives, limited in pounds a year."""
    use = full_use(
        basis="ai",
        rate_low_lb_per_ac=0.5,
        rate_high_lb_per_ac=2,
        max_per_application_lb_per_ac=2,
        max_per_year={"amount_lb_per_ac": limit_lb_per_ac, "counted": "calendar_year"},
    )
    for left_out in ("rate_low_fl_oz_per_ac", "rate_high_fl_oz_per_ac",
                     "max_per_application_fl_oz_per_ac"):  # fmt: skip
        del use[left_out]
    actives = [
        {"active": name, "strength_lb_per_gal": 2, "basis": "ai"}
        for name in ("made-up alder", "made-up birch")
    ]
    return full_card(use, actives=actives, pooled_with=pooled)


def test_a_premix_counts_its_actives_together_where_the_label_pools_them() -> None:
    # 40 fl oz of 2 + 2 lb/gal are 0.625 + 0.625 = 1.25 lb.
    both = ["made-up alder", "made-up birch"]
    fits = small_property(premix(1.25, both), rate_product_fl_oz_per_ac=40)
    assert stops_of(planned(fits)) == set()
    tight = small_property(premix(1.249, both), rate_product_fl_oz_per_ac=40)
    assert stops_of(planned(tight)) == {"S112"}
    apart = small_property(premix(1.25, ["made-up alder"]), rate_product_fl_oz_per_ac=40)
    assert stops_of(planned(apart)) == {"S109"}


def test_a_year_takes_a_premix_and_a_single_product_together() -> None:
    # 1.25 lb of the premix and 48 fl oz of 4 lb/gal, 1.5 lb: 2.75 lb pass a limit of 2.5 lb.
    both = ["made-up alder", "made-up birch"]
    data = small_property(premix(2.5, both), rate_product_fl_oz_per_ac=40)
    other = copy.deepcopy(data["products"]["products"][0]) | {"id": "other", "name": "Other"}
    use = copy.deepcopy(other["label"]["uses"][0]) | {"timing": "after_sowing_before_emergence"}
    other["label"] |= {
        "actives": [{"active": "made-up alder", "strength_lb_per_gal": 4, "basis": "ai"}],
        "uses": [use],
    }
    data["products"]["products"].append(other)
    later = {"step": "spring_burn_down", "product": "other", "method": "broadcast"}
    the_work(data).append(later | {"rate_product_fl_oz_per_ac": 48, "sprayer": "boom"})
    for product in data["products"]["products"]:
        product["label"]["uses"][0]["max_per_year"]["counted"] = "any_12_months"
    assert stops_of(planned(data), KILL) == {"S112"}
    assert stops_of(planned(data), BURN_DOWN) == {"S112"}


def test_a_rate_heard_somewhere_is_held_against_the_card() -> None:
    """Three quarts of 4 lb in a gallon are 3 lb to an acre; the card allows 2.5 lb in a year."""
    use = full_use(
        basis="ai",
        rate_low_lb_per_ac=0.5,
        rate_high_lb_per_ac=4,
        max_per_application_lb_per_ac="not_on_label",
        max_per_year={"amount_lb_per_ac": 2.5, "counted": "calendar_year"},
    )
    for left_out in ("rate_low_fl_oz_per_ac", "rate_high_fl_oz_per_ac",
                     "max_per_application_fl_oz_per_ac"):  # fmt: skip
        del use[left_out]
    actives = [{"active": "demo residual", "strength_lb_per_gal": 4, "basis": "ai"}]
    data = small_property(
        full_card(use, actives=actives), rate_product_fl_oz_per_ac=None, rate_product_qt_per_ac=3
    )
    plan = planned(data)
    assert stops_of(plan) == {"S112"}
    (stop,) = (one for one in plan.findings_on(KILL) if one.severity == "stop")
    assert [(told, figure.value, figure.unit) for told, figure in stop.figures] == [
        ("Typed", 96, "fl_oz_per_ac"),
        ("Strength of demo residual", 4, "lb_per_gal"),
        ("Planned in a year", 3, "lb_per_ac"),
        ("Most in a year", 2.5, "lb_per_ac"),
    ]


def test_a_dry_product_is_weighed() -> None:
    # An acre takes 8 ounces by weight; 75 percent of half a pound are 0.375 lb of active.
    job = job_of(planned(dry_property()))
    assert doses_of(job) == [("last", "Made-up product brew", 8)]
    assert job.mix is not None
    (part,) = job.mix.parts
    assert (part.in_all.value, part.in_all.unit) == (8, "oz_wt")
    assert job.mix.loads[0].doses[0].rate.value == 0.5


@pytest.mark.parametrize(("rate", "stops"), [(4, set()), (3.9, {"S110"}), (16.1, {"S110", "S111"})])
def test_a_dry_rate_lies_within_the_card(rate: float, stops: set[str]) -> None:
    assert stops_of(planned(dry_property(rate))) == stops


def test_a_dry_product_needs_a_scale() -> None:
    data = dry_property()
    data["equipment"]["sprayers"][0]["measure"] = "jug"
    assert stops_of(planned(data)) == {"S150"}


def test_a_dry_rate_by_volume_cannot_be_compared() -> None:
    data = dry_property()
    work = the_work(data)[0]
    del work["rate_product_oz_wt_per_ac"]
    work["rate_product_fl_oz_per_ac"] = 8
    assert stops_of(planned(data)) == {"S109"}


def with_adjuvants(*used: Data) -> Data:
    """The small property with a surfactant and a conditioner to choose from."""
    data = small_property()
    data["products"]["products"][0]["formulation"] = "solution"
    data["products"]["adjuvants"] = [
        {"id": "surfactant", "name": "Surfactant", "formulation": "surfactant_or_oil"},
        {"id": "conditioner", "name": "Conditioner", "formulation": "soluble_powder"},
    ]
    data["equipment"]["measures"].append(SCALE)
    data["equipment"]["sprayers"][0]["measure"] = ["jug", "scale"]
    the_work(data)[0]["adjuvants"] = list(used)
    return data


def test_adjuvants_by_share_of_the_spray_and_by_weight() -> None:
    # 0.25 percent of 18.5625 gal are 5.94 fl oz: 6 on the mark of a half. 8.5 lb in 100 gal are
    # 1.5778 lb in 18.5625 gal, 25.245 ounces: 25.2 on the scale.
    data = with_adjuvants(
        {"adjuvant": "surfactant", "mix_pct": 0.25},
        {"adjuvant": "conditioner", "rate_lb_per_100_gal": 8.5},
    )
    amounts = [(name, amount) for _, name, amount in doses_of(job_of(planned(data)))]
    assert amounts[1] == ("Surfactant", 6)
    assert amounts[2] == ("Conditioner", pytest.approx(25.2, abs=1e-9))


def test_the_order_in_which_things_go_in() -> None:
    data = with_adjuvants(
        {"adjuvant": "surfactant", "mix_pct": 0.25},
        {"adjuvant": "conditioner", "rate_lb_per_100_gal": 8.5},
    )
    assert mix_of(data).order == ("Conditioner", "Made-up product brew", "Surfactant")
    del data["products"]["products"][0]["formulation"]
    assert mix_of(data).order == ()
    assert "N330" in cautions_of(data)
    assert mix_of(small_property()).order == ()


def test_an_adjuvant_without_a_rate_is_a_stop() -> None:
    assert stops_of(planned(with_adjuvants({"adjuvant": "surfactant"}))) == {"S155"}


def by_hand(kind: str = "backpack", **work: Any) -> Data:
    """A backpack of 4 gal that puts 30 fl oz on 1/128 acre: 30 gal on an acre."""
    use = full_use(method="spot", carrier_gal_per_ac="not_on_label")
    broad = full_use(carrier_gal_per_ac="not_on_label")
    data = small_property(full_card(broad, use), **work)
    sprayer = data["equipment"]["sprayers"][0]
    del sprayer["nozzle_spacing_in"]
    test = {"tested_on": "2026-08-16", "caught_fl_oz": [30], "covered_sq_ft": 340.3125}
    sprayer |= {"kind": kind, "tank_gal": 4, "catch_tests": [test]}
    return data


def test_an_eighth_of_an_acre_by_hand() -> None:
    # 30 gal and 32 fl oz to an acre: an eighth takes 3.75 gal and 4 fl oz.
    (small,) = mix_of(by_hand(treated_sq_ft=5445)).small_place
    assert small.spray.value == pytest.approx(3.75)
    assert [one.amount.value for one in small.doses] == [4]
    assert mix_of(small_property()).small_place == ()


def test_an_eighth_of_an_acre_in_loads_that_the_tank_holds() -> None:
    # 3.75 gal in a tank of 2: a full one, and 1.75 gal, which takes 1.75 / 30 x 32 = 1.87 fl oz: 2
    # on the mark of a half. In a tank of 3.5 the rest would be a quarter of a gallon: two alike.
    def loads(tank_gal: float) -> list[tuple[str, float, float, float]]:
        data = by_hand(treated_sq_ft=5445)
        data["equipment"]["sprayers"][0]["tank_gal"] = tank_gal
        return [
            (
                one.name,
                one.count.value if one.count is not None else 1,
                one.spray.value,
                one.doses[0].amount.value,
            )
            for one in mix_of(data).small_place
        ]

    assert loads(2) == [("eighth_full", 1, 2, 2), ("eighth_last", 1, 1.75, 2)]
    assert loads(3.5) == [("eighth_equal", 2, 1.875, 2)]


def test_only_the_ground_that_is_sprayed_counts() -> None:
    job = job_of(planned(by_hand(treated_sq_ft=5445)))
    assert job.numbers["treated_ac"].value == 0.125
    assert job.numbers["spray_gal"].value == pytest.approx(3.75)
    assert job.numbers["product_fl_oz"].value == pytest.approx(4)
    assert stops_of(planned(by_hand(treated_sq_ft=43561))) == {"S152"}
    assert stops_of(planned(by_hand(treated_ac=1))) == set()


def percent(mix_pct: float = 1, **changes: Any) -> Data:
    """A percent mix on spots: one percent of 30 gal to an acre are 38.4 fl oz."""
    data = by_hand(
        method="spot", rate_product_fl_oz_per_ac=None, mix_pct=mix_pct, treated_sq_ft=1361.25
    )
    card = data["products"]["products"][0]["label"]
    card["actives"][0]["works_as"] = ["other"]
    card["uses"] = [card["uses"][1] | changes]
    return data


def test_a_percent_mix_is_held_against_the_limits_on_ground() -> None:
    # 1 percent is 38.4 fl oz to an acre, within 24 to 64; 1361.25 sq ft are 1/32 acre: 1.2 fl oz,
    # on the mark of a half 1, which gives 32 to the acre.
    job = job_of(planned(percent()))
    assert job.numbers["product_fl_oz"].value == pytest.approx(1.2)
    assert doses_of(job) == [("last", "Made-up product brew", 1)]
    assert stops_of(planned(percent(1.7))) == {"S110", "S111"}
    limit = {"amount_fl_oz_per_ac": 38.3, "counted": "calendar_year"}
    assert stops_of(planned(percent(max_per_year=limit))) == {"S112"}


def test_a_use_printed_in_percent() -> None:
    changes = {"basis": "mix", "rate_low_pct": 0.5, "rate_high_pct": 1.5}
    data = percent(**changes)
    use = data["products"]["products"][0]["label"]["uses"][0]
    for left_out in ("rate_low_fl_oz_per_ac", "rate_high_fl_oz_per_ac"):
        del use[left_out]
    assert stops_of(planned(data)) == set()
    the_work(data)[0]["mix_pct"] = 1.6
    assert stops_of(planned(data)) == {"S110"}


def test_spots_are_measured() -> None:
    data = percent()
    del the_work(data)[0]["treated_sq_ft"]
    assert stops_of(planned(data)) == {"S151"}


@pytest.mark.parametrize("works", [["soil_residual"], None])
def test_no_percent_mix_of_a_residual_or_of_what_is_not_known(works: list[str] | None) -> None:
    data = percent()
    active = data["products"]["products"][0]["label"]["actives"][0]
    if works is None:
        del active["works_as"]
    else:
        active["works_as"] = works
    assert stops_of(planned(data)) == {"S153"}


def test_a_known_residual_stays_one_whatever_is_typed() -> None:
    data = percent()
    active = data["products"]["products"][0]["label"]["actives"][0]
    active |= {"active": "Simazine", "works_as": ["other"]}
    assert stops_of(planned(data)) == {"S153"}


def test_a_pattern_without_a_boom() -> None:
    # 480 fl oz in a minute are 3.75 gal: 5940 x 3.75 / (5 x 18.5 x 12) = 20.0676 gal to an acre.
    data = small_property()
    sprayer = data["equipment"]["sprayers"][0]
    del sprayer["nozzle_spacing_in"]
    test = {"tested_on": "2026-08-16", "caught_fl_oz": [240, 240], "caught_in_seconds": 60}
    sprayer |= {"kind": "boomless", "swath_ft": 18.5, "catch_tests": [test | {"speed_mph": 5}]}
    carrier = job_of(planned(data)).numbers["carrier_gal_per_ac"].value
    assert carrier == pytest.approx(20.0676, abs=5e-5)


def test_a_nozzle_that_differs_is_a_caution() -> None:
    data = small_property()
    test = data["equipment"]["sprayers"][0]["catch_tests"][0]
    test["caught_fl_oz"] = [32, 32, 32, 32, 32, 28.9]  # mean 31.48; a tenth less is 28.33
    assert "C240" not in cautions_of(data)
    test["caught_fl_oz"] = [32, 32, 32, 32, 32, 27.5]  # mean 31.25; a tenth less is 28.125
    assert "C240" in cautions_of(data)


def with_last_load(**last: Any) -> Data:
    """The small property whose tank held something last."""
    data = small_property()
    data["equipment"]["sprayers"][0]["last_load"] = {"sprayed_on": "2026-07-01"} | last
    return data


def test_a_grass_killer_left_in_the_tank_stops_work_on_grass() -> None:
    assert stops_of(planned(with_last_load(works_as=["grass_killer"]))) == {"S154"}
    assert stops_of(planned(with_last_load(works_as=["auxin"]))) == set()
    cleaned = with_last_load(works_as=["grass_killer"], cleaned_out_on="2026-07-02")
    assert stops_of(planned(cleaned)) == set()
    early = with_last_load(works_as=["grass_killer"], cleaned_out_on="2026-06-30")
    assert stops_of(planned(early)) == {"S154"}


def test_a_tank_that_held_nobody_knows_what() -> None:
    assert stops_of(planned(with_last_load())) == {"S154"}
    data = with_last_load(cleaned_out_on="2026-07-02")
    assert stops_of(planned(data)) == set()
    del data["equipment"]["sprayers"][0]["last_load"]
    assert stops_of(planned(data)) == {"S157"}
    sprayer = data["equipment"]["sprayers"][0]
    for known in ({"new": True}, {"cleaned_out_on": "2026-07-02"}):
        data["equipment"]["sprayers"][0] = sprayer | known
        assert stops_of(planned(data)) == set()


def test_a_tank_that_held_what_goes_in_again() -> None:
    assert stops_of(planned(with_last_load(product="brew"))) == set()


def test_a_known_grass_killer_in_the_tank() -> None:
    data = with_last_load(product="other")
    other = copy.deepcopy(data["products"]["products"][0]) | {"id": "other"}
    other["label"]["actives"][0] |= {"active": "Clethodim"}
    data["products"]["products"].append(other)
    assert stops_of(planned(data)) == {"S154"}
    other["label"]["actives"][0] |= {"active": "Triclopyr"}
    assert stops_of(planned(data)) == set()


def with_the_same_active(name: str, rate: float, other_rate: float) -> Data:
    """Two products of one active in the tank, the partner's card with its name in other letters."""
    data = with_partner(rate_product_fl_oz_per_ac=other_rate)
    the_work(data)[0]["rate_product_fl_oz_per_ac"] = rate
    for product in data["products"]["products"]:
        use = product["label"]["uses"][0]
        use |= {"rate_low_fl_oz_per_ac": 8, "times_per_year": "not_on_label"}
    data["products"]["products"][1]["label"]["actives"][0]["active"] = name
    return data


@pytest.mark.parametrize("name", ["made-up active A", "Made-up Active A", " made-up  active a "])
def test_one_active_is_one_however_its_name_is_written(name: str) -> None:
    # 48 and 48 fl oz of 4 lb in a gallon: 3 lb in a year, of which 80 fl oz are 2.5 lb
    data = with_the_same_active(name, 48, 48)
    for product in data["products"]["products"]:
        use = product["label"]["uses"][0]
        use["max_per_application_fl_oz_per_ac"] = 96
        use["max_per_year"]["amount_fl_oz_per_ac"] = 96
    assert stops_of(planned(data)) == set()
    (total,) = planned(data).actives
    assert (total.active, total.total.value) == ("made-up active A", 3)
    data["products"]["products"][0]["label"]["uses"][0]["max_per_year"] = {
        "amount_fl_oz_per_ac": 80,
        "counted": "calendar_year",
    }
    assert stops_of(planned(data)) == {"S112"}


def test_pooled_actives_are_known_in_other_letters_too() -> None:
    data = with_partner(rate_product_fl_oz_per_ac=40)
    card = data["products"]["products"][0]["label"]
    card["pooled_with"] = ["MADE-UP ACTIVE BIRCH"]
    card["uses"][0]["max_per_year"]["amount_fl_oz_per_ac"] = 71.9
    assert stops_of(planned(data)) == {"S112"}


def test_the_most_at_one_time_counts_every_product_of_the_tank() -> None:
    # 32 and 32 fl oz of one active are 64 at one time
    data = with_the_same_active(ACTIVE.upper(), 32, 32)
    cards = [one["label"] for one in data["products"]["products"]]
    for card in cards:
        card["uses"][0]["max_per_year"] = "not_on_label"
    assert stops_of(planned(data)) == set()
    cards[1]["uses"][0]["max_per_application_fl_oz_per_ac"] = 63
    assert stops_of(planned(data)) == {"S111"}
    # of another active, each stands alone
    cards[1]["actives"][0]["active"] = "made-up active birch"
    assert stops_of(planned(data)) == set()


def test_rounding_up_breaks_no_limit_of_another_card() -> None:
    # 25 rounds to 32 by marks of 16; with 16 of the partner that is 48 where its card allows 41
    data = with_the_same_active(ACTIVE, 25, 16)
    cards = [one["label"] for one in data["products"]["products"]]
    data["equipment"]["measures"][0]["mark_fl_oz"] = 16
    cards[0]["uses"][0]["max_per_year"] = "not_on_label"
    cards[1]["uses"][0]["max_per_year"]["amount_fl_oz_per_ac"] = 41
    found = planned(data)
    assert stops_of(found) == set()
    assert doses_of(job_of(found)) == [("last", "Made-up product brew", 16), ("last", "Other", 16)]
