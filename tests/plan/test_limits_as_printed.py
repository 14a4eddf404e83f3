"""A card as labels print it: rates in product and a year in pounds, or the other way about.

Worked by hand: a quart is 32 fl oz, so a quart of 4 lb in a gallon is 1 lb of active.
"""

from typing import Any

import pytest

from generator.plan.model.finding import Finding
from generator.working import Given, Quantity
from tests.plan.planned import BURN_DOWN, KILL, job_of, planned, stops_of
from tests.plan.test_tank_mixes import dry_property
from tests.properties import Data, full_card, full_use, small_property, the_work

RESIDUAL = {"active": "demo residual", "strength_lb_per_gal": 4, "basis": "ai"}
NONE = "not_on_label"


def printed_use(timing: str = "before_sowing", **changes: Any) -> Data:
    """A use with its rates in quarts of product, 1 to 4, and its year in pounds of active."""
    use = full_use(
        timing,
        rate_low_qt_per_ac=1,
        rate_high_qt_per_ac=4,
        max_per_application_fl_oz_per_ac=NONE,
        max_per_year={"amount_lb_per_ac": 2.5, "counted": "calendar_year"},
        times_per_year=NONE,
    )
    del use["rate_low_fl_oz_per_ac"], use["rate_high_fl_oz_per_ac"]
    return use | changes


def quarts(rate: float, *uses: Data) -> Data:
    """The small property with so many quarts to an acre of the residual."""
    card = full_card(*(uses or (printed_use(),)), actives=[RESIDUAL])
    return small_property(card, rate_product_fl_oz_per_ac=None, rate_product_qt_per_ac=rate)


def the_stop(data: Data, job_id: str = KILL) -> Finding:
    (stop,) = (one for one in planned(data).findings_on(job_id) if one.severity == "stop")
    return stop


def test_three_quarts_are_three_pounds_and_the_card_allows_two_and_a_half() -> None:
    data = quarts(3)
    assert stops_of(planned(data)) == {"S112"}
    stop = the_stop(data)
    assert [(told, figure.value, figure.unit) for told, figure in stop.figures] == [
        ("Typed", 96, "fl_oz_per_ac"),
        ("Strength of demo residual", 4, "lb_per_gal"),
        ("Planned in a year", 3, "lb_per_ac"),
        ("Most in a year", 2.5, "lb_per_ac"),
    ]
    typed, strength, product, limit = (figure for _, figure in stop.figures)
    assert isinstance(typed, Given)
    assert (typed.typed, typed.typed_unit) == (3, "qt_per_ac")
    assert isinstance(product, Quantity)
    assert [one for _, one in product.inputs] == [typed, strength]
    assert isinstance(limit, Given)
    assert (
        stop.words
        == "The typed rate of Made-up product brew is more than its label allows in a year."
    )


def test_two_and_a_half_quarts_are_just_let_pass() -> None:
    assert stops_of(planned(quarts(2.5))) == set()
    assert stops_of(planned(quarts(2.51))) == {"S112"}


def test_a_year_in_product_shows_the_pounds_it_stands_for() -> None:
    year = {"amount_qt_per_ac": 2.5, "counted": "calendar_year"}
    figures = dict(the_stop(quarts(3, printed_use(max_per_year=year))).figures)
    most = figures["Most in a year"]
    assert isinstance(most, Quantity)
    assert (figures["Planned in a year"].value, most.value) == (3, 2.5)
    assert [(one.typed, one.typed_unit) for _, one in most.inputs if isinstance(one, Given)] == [
        (2.5, "qt_per_ac"),
        (4, "lb_per_gal"),
    ]


def test_the_most_at_one_time_in_pounds_beside_rates_in_product() -> None:
    def of(pounds: float) -> Data:
        use = printed_use(max_per_year=NONE)
        del use["max_per_application_fl_oz_per_ac"]
        return quarts(3, use | {"max_per_application_lb_per_ac": pounds})

    assert stops_of(planned(of(3))) == set()
    assert stops_of(planned(of(2.9))) == {"S111"}
    figures = dict(the_stop(of(2.9)).figures)
    assert (figures["Your rate"].value, figures["Most at one time"].value) == (3, 2.9)


def test_rates_in_pounds_beside_a_year_in_product() -> None:
    use = printed_use(basis="ai", rate_low_lb_per_ac=0.5, rate_high_lb_per_ac=4)
    del use["rate_low_qt_per_ac"], use["rate_high_qt_per_ac"]
    use["max_per_year"] = {"amount_qt_per_ac": 3, "counted": "calendar_year"}
    assert stops_of(planned(quarts(3, use))) == set()
    assert stops_of(planned(quarts(3.01, use))) == {"S112"}


def test_a_limit_in_the_other_basis_is_not_compared() -> None:
    # the strength is of ai, the limit of ae: nothing says how much the one is of the other
    year = {"amount_lb_per_ac": 9, "counted": "calendar_year", "basis": "ae"}
    data = quarts(2, printed_use(max_per_year=year))
    assert stops_of(planned(data)) == {"S156"}
    year["basis"] = "ai"
    assert stops_of(planned(data)) == set()


def test_a_mark_never_passes_a_year_in_pounds() -> None:
    # 2.4 quarts are 76.8 fl oz; the nearest mark of 4 is 76, of 16 is 80: 2.5 lb, which is allowed
    def measured(mark: float, limit: float) -> list[float]:
        year = {"amount_lb_per_ac": limit, "counted": "calendar_year"}
        data = quarts(2.4, printed_use(max_per_year=year))
        data["equipment"]["measures"][0]["mark_fl_oz"] = mark
        mix = job_of(planned(data)).mix
        assert mix is not None
        return [one.amount.value for load in mix.loads for one in load.doses]

    assert measured(4, 2.5) == [76]
    assert measured(16, 2.5) == [80]
    assert measured(16, 2.49) == [64]


@pytest.mark.parametrize(("basis", "stops"), [(None, set()), ("product", set()), ("ai", {"S112"})])
def test_pounds_beside_the_rates_of_a_dry_product(basis: str | None, stops: set[str]) -> None:
    # 8 ounces by weight are half a pound of product and, at 75 percent, 0.375 lb of active
    data = dry_property(8)
    use = data["products"]["products"][0]["label"]["uses"][0]
    use["max_per_year"] = {"amount_lb_per_ac": 0.5, "counted": "calendar_year"}
    if basis == "ai":
        use["max_per_year"]["amount_lb_per_ac"] = 0.37
    if basis is not None:
        use["max_per_year"]["basis"] = basis
    assert stops_of(planned(data)) == stops
    use["max_per_year"]["amount_lb_per_ac"] = 0.374 if basis == "ai" else 0.49
    assert stops_of(planned(data)) == {"S112"}
    use["max_per_year"]["amount_lb_per_ac"] = 0.375 if basis == "ai" else 0.5
    assert stops_of(planned(data)) == set()


def test_the_others_are_named_only_where_there_are_others() -> None:
    spring = printed_use("after_sowing_before_emergence")
    data = quarts(2, printed_use(), spring)
    the_work(data).append(dict(the_work(data)[0]) | {"step": "spring_burn_down"})
    assert stops_of(planned(data)) == set()
    for use in data["products"]["products"][0]["label"]["uses"]:
        use["max_per_year"]["counted"] = "any_12_months"
    stop = the_stop(data)
    assert stop.code == "S112"
    assert stop.words.startswith("Together with the other sprayings on this ground, the typed rate")
    assert stop.cure.startswith("Leave one of them out, or lower a rate")
    assert dict(stop.figures)["Planned in a year"].value == 4
    assert stops_of(planned(data), BURN_DOWN) == {"S112"}
