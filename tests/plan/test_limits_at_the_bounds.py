"""Limits of a card at the very figure, and uses that would match but for what is left out.

Worked out by hand. A rate counts as at a limit up to a rounding of one in a thousand million.
"""

import datetime
from dataclasses import replace
from typing import Any

import pytest

from generator.compute.buying import TOTAL_FL_OZ_PER_AC
from generator.inventory.label import LabelCard
from generator.plan.build.season_plan import make_plan
from generator.plan.jobs.ground import place_on_its_ground
from generator.plan.jobs.request import every_job
from generator.plan.labels.clearance import Asked, nearly_matching
from generator.plan.labels.limit_stops import Judged, beside, limit_stops, may_be_over
from generator.plan.labels.rates import ROUNDING, ActiveRate, JobRate, job_rate
from generator.plan.labels.yearly_sums import PlannedSpray, Together, amount_in_a_year, as_laid
from generator.reference.active_names import ActiveName
from generator.working import Given, Quantity, Withheld, flat_inputs
from tests.plan.planned import KILL, inventory_of, planned, stops_of, well_stocked
from tests.plan.test_at_the_bounds import limit, of_rate, spray
from tests.properties import SEASON, Data, full_card, full_use, small_property


def card_of(*uses: Data) -> LabelCard:
    """A card with these uses, read from its file."""
    card = inventory_of(small_property(full_card(*uses))).products[0].label
    assert card is not None
    return card


def asked(**changes: Any) -> Asked:
    """What a broadcast kill before switchgrass is sown asks on the lane."""
    land, timing = "not_contract", "before_sowing"
    job = Asked("native_grass", ("switchgrass",), "lane", land, timing, "broadcast")
    return replace(job, **changes)


@pytest.mark.parametrize(
    ("covers", "job", "nearly"),
    [
        ({"species": ["switchgrass"]}, {}, True),
        ({"species": ["switchgrass"], "kinds": ["clover"]}, {}, False),
        ({"kinds": ["native_grass"], "species": ["big-bluestem"]}, {}, False),
        ({"kinds": ["native_grass"], "places": ["lane"]}, {}, True),
        ({"kinds": ["native_grass"], "places": ["lane"]}, {"place_id": "pond"}, False),
        ({"kinds": ["native_grass"], "land": "contract"}, {}, False),
        ({"kinds": ["native_grass"], "land": "not_contract"}, {}, True),
        ({"kinds": ["native_grass"], "land": "contract"}, {"land": None}, True),
    ],
)
def test_a_use_that_would_match_but_for_what_is_left_out_of_it(
    covers: Data, job: Data, nearly: bool
) -> None:
    left_out = {"species": [], "kinds": [], "places": []} | covers
    use = full_use(covers={name: value for name, value in left_out.items() if value})
    found = nearly_matching(card_of(use), asked(**job))
    assert len(found) == (1 if nearly else 0)


@pytest.mark.parametrize(
    ("rate", "stops"),
    [
        (24 * (1 - ROUNDING), set()),
        (24 * (1 - 3 * ROUNDING), {"S110"}),
        (64 * (1 + ROUNDING), set()),
        (64 * (1 + 3 * ROUNDING), {"S110"}),
    ],
)
def test_the_ends_of_a_card_s_range(rate: float, stops: set[str]) -> None:
    high = 64 * 2
    use = full_use(
        max_per_application_fl_oz_per_ac=high,
        max_per_year={"amount_fl_oz_per_ac": high, "counted": "calendar_year"},
    )
    plan = planned(small_property(full_card(use), rate_product_fl_oz_per_ac=rate))
    assert stops_of(plan) - {"S120"} == stops


@pytest.mark.parametrize("times", [1, 3])
def test_the_most_at_one_time_and_in_a_year(times: int) -> None:
    rate = 40 * (1 + times * ROUNDING)
    at_once = full_use(max_per_application_fl_oz_per_ac=40)
    in_a_year = full_use(max_per_year={"amount_fl_oz_per_ac": 40, "counted": "calendar_year"})
    for use, stop in ((at_once, "S111"), (in_a_year, "S112")):
        plan = planned(small_property(full_card(use), rate_product_fl_oz_per_ac=rate))
        assert stops_of(plan) == (set() if times == 1 else {stop})


def of_ounces(value: float) -> Given:
    """So many fluid ounces on an acre, typed."""
    return Given("typed", value, "fl_oz_per_ac", value, "fl_oz_per_ac", "a.yaml", 1, "page")


@pytest.mark.parametrize(
    ("ounces", "over"), [(64, False), (64 * (1 + ROUNDING), False), (64 * (1 + 3 * ROUNDING), True)]
)
def test_what_may_be_on_the_ground_at_a_limit_is_not_over_it(ounces: float, over: bool) -> None:
    assert may_be_over(Together(of_ounces(ounces), 2), of_ounces(64)) == over
    assert may_be_over(None, of_ounces(64))


def judged(data: Data) -> Judged:
    """The kill of the small property held against its card."""
    inventory = inventory_of(data)
    areas = {one.id: place_on_its_ground(one, SEASON).area for one in inventory.places()}
    job = next(one for one in every_job(inventory, areas, (SEASON,)) if one.job_id == KILL)
    product = inventory.products[0]
    assert product.label is not None
    assert job.work is not None
    rate = job_rate(f"{KILL}/", job.work, product.label, None)
    assert rate is not None
    return Judged(job, product, product.label, product.label.uses[0], rate)


def test_a_partner_of_the_tank_without_a_rate_leaves_no_sum_at_one_time() -> None:
    """Both hold made-up active A; what the second puts on is not known, so neither is the sum."""
    one = judged(small_property())
    mine = replace(
        of_rate(spray(KILL, "2026-09-10"), 32), actives=(ActiveName("made-up active A"),)
    )
    partner = replace(mine, product_id="second", rate=None)
    found = [stop for stop in limit_stops(one, (mine, partner)) if stop.code == "S156"]
    assert len(found) == 2  # at one time, and in the year
    assert list(limit_stops(one, (mine,))) == []


def test_typed_ounces_stand_beside_a_limit_and_no_others_do() -> None:
    one = judged(small_property())
    typed, most = of_ounces(70), of_ounces(64)
    limits = (("Most at one time", most),)
    shown = (("Your rate", typed), *limits)
    summed = TOTAL_FL_OZ_PER_AC("sum", parts=(typed, typed))
    worked_out = TOTAL_FL_OZ_PER_AC("sum", parts=(typed, summed))
    assert beside(one, "Your rate", typed, None, limits, "product") == shown
    assert beside(one, "Your rate", summed, None, limits, "product")[0] == ("Your rate", summed)
    for figure, basis in ((typed, "ae"), (worked_out, "product"), (None, "product")):
        assert beside(one, "Your rate", figure, None, limits, basis) == ()


def test_a_stop_keeps_the_product_that_a_percent_makes_and_shows_the_pounds() -> None:
    """2% of 18.5625 gal are 47.52 fl oz, at 4 lb in a gallon 1.485 lb; 40 fl oz are 1.25 lb."""
    use = full_use(
        basis="mix",
        method="spot",
        rate_low_fl_oz_per_ac=None,
        rate_high_fl_oz_per_ac=None,
        rate_low_pct=1,
        rate_high_pct=3,
        max_per_application_fl_oz_per_ac=40,
    )
    use = {name: value for name, value in use.items() if value is not None}
    spots = {"method": "spot", "treated_sq_ft": 2000, "mix_pct": 2}
    data = small_property(full_card(use), rate_product_fl_oz_per_ac=None, **spots)
    (stop,) = (one for one in planned(data).findings_on(KILL) if one.code == "S111")
    shown = dict(stop.figures)
    assert {name: round(one.value, 6) for name, one in shown.items()} == {
        "Typed": 0.02,
        "Strength of made-up active A": 4,
        "Your rate": 1.485,
        "Most at one time": 1.25,
    }
    rate = shown["Your rate"]
    assert isinstance(rate, Quantity)
    kept = {name: figure for name, figure in flat_inputs(rate) if not isinstance(figure, Given)}
    assert all(isinstance(figure, Withheld) for figure in kept.values())
    assert [figure.unit for figure in kept.values()] == ["fl_oz_per_ac"]


def pounds(identity: str, value: float) -> Given:
    """So many pounds of acid equivalent on an acre, typed."""
    return Given(identity, value, "lb_per_ac", value, "lb_per_ac", "a.yaml", 1, "page")


def two_actives(job: str) -> PlannedSpray:
    """A premix of 1 lb of made-up active A and 2 lb of B, whose own label counts 3 lb together."""
    names = (ActiveName("made-up active A"), ActiveName("made-up active B"))
    actives = tuple(
        ActiveRate(name, "ae", pounds(f"rate_{n}", n)) for n, name in enumerate(names, 1)
    )
    together = ActiveRate(names[0], "ae", pounds("both", 3))
    rate = JobRate(of_ounces(64), actives, together)
    return replace(
        spray(job, "2026-09-20"), product_id="premix", actives=names, pooled=names, rate=rate
    )


@pytest.mark.parametrize(("basis", "found"), [("ae", 1 + 1), ("product", 32 + 32)])
def test_of_a_premix_only_the_active_counts_that_the_card_holds(basis: str, found: float) -> None:
    """1 lb of A typed by itself and 1 lb of A in the premix; 1 lb is 32 fl oz of 4 lb a gallon."""
    mine = of_rate(spray("mine", "2026-09-10"), 32)
    assert mine.rate is not None
    active = ActiveRate(ActiveName("made-up active A"), "ae", pounds("mine", 1))
    mine = replace(mine, actives=(active.named,), rate=replace(mine.rate, actives=(active,)))
    in_all = amount_in_a_year(
        mine, (mine, two_actives("far")), card_of(full_use()), basis, limit("calendar_year")
    )
    assert in_all is not None
    assert (round(in_all.amount.value, 9), in_all.count) == (found, 2)
    assert isinstance(in_all.amount, Quantity)
    parts = [one for _, one in flat_inputs(in_all.amount)]
    worked_out = [one.identity for one in parts if isinstance(one, Quantity)]
    assert [one.rpartition(".")[2] for one in worked_out] == (
        [] if basis == "ae" else ["counted_1_product_fl_oz_per_ac"]
    )


def test_a_spraying_is_laid_once_where_nothing_else_is_known_of_its_passes() -> None:
    once, twice = spray("once", "2026-09-10"), replace(spray("far", "2026-09-20"), laid_times=2)
    assert as_laid((once, twice)) == (once, twice, twice)


def test_a_job_logged_over_more_ground_than_there_is_rounds_nothing_up() -> None:
    """Of an acre on 43.56 square feet nobody knows what lies there: the sum holds nothing."""
    data = small_property(full_card(full_use(rate_low_fl_oz_per_ac=1, rate_high_fl_oz_per_ac=256)))
    data["screens"]["screens"][0]["length_ft"] = 0.726
    data["equipment"]["measures"][0]["mark_fl_oz"] = 0.01
    entry = {
        "id": "e-1",
        "done_on": "2026-09-14",
        "job": {"planting": "lane-27", "step": "autumn_kill", "area_ac": 1, "finished": True},
        "used": [{"item": "brew", "amount_fl_oz": 100}],
    }
    inventory = inventory_of(well_stocked(data | {"log": {"entries": [entry]}}))
    plan = make_plan(inventory, SEASON, datetime.date(2026, 10, 1))
    mix = next(one for one in plan.jobs if one.id == KILL).mix
    assert mix is not None
    rates = [dose.rate.value for load in mix.loads for dose in load.doses]
    assert len(rates) == 1
    # no mark above the typed 32 fl oz to an acre, though the card allows 64 at one time
    assert max(rates) <= 32


@pytest.mark.parametrize(("most", "stops"), [(72.6, set()), (72.59, {"S120"})])
def test_a_sprayer_that_puts_on_just_what_the_card_allows(most: float, stops: set[str]) -> None:
    """5940 x 0.55 / (2.5 x 18) are 72.6 gal to an acre, which comes out a hair above in floats."""
    use = full_use(carrier_gal_per_ac={"low_gal_per_ac": 10, "high_gal_per_ac": most})
    data = small_property(full_card(use))
    boom = data["equipment"]["sprayers"][0]
    boom["nozzle_spacing_in"] = 18
    boom["catch_tests"][0] |= {"speed_mph": 2.5, "caught_fl_oz": [70.4] * 6}
    assert stops_of(planned(data)) & {"S120"} == stops
