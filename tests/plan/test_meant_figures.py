"""What a figure that is out of the usual was meant to be, and what would follow from that."""

import pytest

from generator.compute.seed import BULK_RATE, PLS_FRACTION, VIABLE
from generator.plan.usual.meant_figures import as_if, figure_as_such, moved_by_tens
from generator.reference.usual import Usual, usual, usual_seed
from generator.working import Given, Quantity
from tests.plan.planned import planned
from tests.plan.sown import SOWING, by_spreader, sown, the_planting, with_lot


def typed(name: str, value: float, unit: str) -> Given:
    return Given(f"{name}_{unit}", value, unit, value, unit, "seed.yaml", 3, "page")


def part(value: float) -> Given:
    return typed("part", value, "fraction")


@pytest.mark.parametrize(
    ("value", "range_of_it", "unit", "meant"),
    [
        (300, usual("screen_width", "ft"), "ft", 30),
        (7300, usual("place_length", "ft"), "ft", 730),
        (0.02, usual("boom_tank", "gal"), "gal", 20),
        (259, usual_seed()["switchgrass"].seeds, "seeds_per_lb", 259_000),
        (160, usual("screen_width", "ft"), "ft", 16),
        (0.0982, usual("purity", "pct"), "fraction", 0.982),
        (0.35, usual("purity", "pct"), "fraction", 0.4),  # 350% is no purity: the end
        (0.5, usual("catch_correction", "pct"), "fraction", 0.75),  # neither 50 nor 500% is usual
    ],
)
def test_a_point_is_moved_until_the_figure_is_usual_else_the_end_is_taken(
    value: float, range_of_it: Usual, unit: str, meant: float
) -> None:
    assert moved_by_tens(typed("it", value, unit), range_of_it) == pytest.approx(meant)


def test_what_follows_is_worked_out_anew_by_the_same_formulas() -> None:
    pure, germinates, hard, dormant = part(0.0982), part(0.41), part(0), part(0.49)
    pls = PLS_FRACTION(
        "a/pls_fraction",
        purity_fraction=pure,
        germination_fraction=germinates,
        hard_fraction=hard,
        dormant_fraction=dormant,
    )
    rate = typed("rate_pls", 8, "lb_per_ac")
    bulk = BULK_RATE("a/bulk", rate_pls_lb_per_ac=rate, pls_fraction=pls)
    assert as_if(bulk, {}) == bulk.value
    # 8 / (0.982 x 0.9) = 9.0518
    assert as_if(bulk, {figure_as_such(pure): 0.982}) == pytest.approx(9.0518, abs=5e-5)
    assert as_if(bulk, {figure_as_such(pls): 0.5}) == 16
    assert as_if(bulk, {figure_as_such(part(0.123)): 1}) == bulk.value


def test_the_same_number_under_another_id_is_alike() -> None:
    def alive(identity: str, germinates: float) -> Quantity:
        return VIABLE(
            identity,
            germination_fraction=part(germinates),
            hard_fraction=part(0),
            dormant_fraction=part(0.49),
        )

    assert figure_as_such(alive("a", 0.41)) == figure_as_such(alive("b", 0.41))
    assert figure_as_such(alive("a", 0.41)) != figure_as_such(alive("a", 0.4))


def test_a_thin_mixture_explains_a_catch_that_is_right_for_what_was_meant() -> None:
    # six pounds of the mixture, typed 0.6: the catch puts down ten times what is asked for
    data = by_spreader(
        with_lot(sown(), "bb", "big-bluestem", live_seeds_per_lb=165000),
        {"caught_lb": 0.2296, "mixed_with": ["bb"]},
    )
    planting = the_planting(data)
    planting["seed"] = [
        {"species": "switchgrass", "lot": "sg", "share_pct": 90},
        {"species": "big-bluestem", "lot": "bb", "share_pct": 10},
    ]
    planting["mix_rate_pls_lb_per_ac"] = 6
    codes = {"C403", "C406", "C407", "C408"}
    assert [one for one in planned(data).findings_on(SOWING) if one.code in codes] == []
    planting["mix_rate_pls_lb_per_ac"] = 0.6
    found = [one.code for one in planned(data).findings_on(SOWING) if one.code in codes]
    assert found == ["C403"]
