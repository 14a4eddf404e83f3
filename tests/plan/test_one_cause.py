"""A stop names its one cause, with its numbers or with the key that is missing."""

from __future__ import annotations

import copy
from typing import Any

import pytest

from generator.plan.model.finding import Finding
from tests.plan.planned import KILL, planned, stops_of
from tests.plan.test_people_and_papers import FOR_PAY, LICENCE, restricted, without
from tests.properties import Data, full_card, full_use, small_property, the_work


def told(data: Data, code: str) -> Finding:
    """The one stop of a code on the kill of the small property."""
    (stop,) = [one for one in planned(data).findings_on(KILL) if one.code == code]
    return stop


# 5940 x 0.25 gal a minute / (4 mph x 20 in) = 18.5625 gal/ac: tests/properties.py
@pytest.mark.parametrize(
    ("low", "high", "said"),
    [
        (20, 30, "puts on 18.6 gal/ac; the card of Product brew allows 20 to 30."),
        (5, 10, "puts on 18.6 gal/ac; the card of Product brew allows 5 to 10."),
        # as many digits as it takes to be seen outside
        (18.6, 30, "puts on 18.56 gal/ac; the card of Product brew allows 18.6 to 30."),
    ],
)
def test_spray_volume_outside_the_card_is_said_with_its_numbers(
    low: float, high: float, said: str
) -> None:
    wanted = {"low_gal_per_ac": low, "high_gal_per_ac": high}
    data = small_property(full_card(full_use(carrier_gal_per_ac=wanted)))
    name = data["products"]["products"][0]["name"]
    assert said.replace("Product brew", name) in told(data, "S120").words


def test_a_use_without_its_basis_is_the_one_cause_where_a_rate_is_typed() -> None:
    use = full_use()
    del use["basis"]
    data = small_property(full_card(use))
    assert stops_of(planned(data)) == {"S108"}
    assert told(data, "S108").to_type.startswith("Left out: basis.")
    del the_work(data)[0]["rate_product_fl_oz_per_ac"]
    assert stops_of(planned(data)) == {"S108", "S109"}
    assert told(data, "S109").words.startswith("No rate of ")


TWO = [
    {"active": "made-up active A", "strength_lb_per_gal": 4, "basis": "ae"},
    {"active": "quite other B", "strength_lb_per_gal": 1, "basis": "ae"},
]
POUNDS = {"rate_low_lb_per_ac": 0.5, "rate_high_lb_per_ac": 2, "basis": "ae",
          "max_per_application_lb_per_ac": 2}  # fmt: skip


def in_pounds(**changes: Any) -> Data:
    use = full_use(**POUNDS) | changes
    for key in ("rate_low", "rate_high", "max_per_application"):
        del use[f"{key}_fl_oz_per_ac"]
    return use


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (small_property(rate_product_fl_oz_per_ac=None), "No rate of "),
        (
            small_property(rate_product_fl_oz_per_ac=None, rate_ai_lb_per_ac=1),
            "is typed as active ingredient, and its card states acid equivalent",
        ),
        (
            small_property(rate_product_fl_oz_per_ac=None, rate_product_lb_per_ac=1),
            "is typed in lb/ac, and its card has it as liquid",
        ),
        (
            small_property(full_card(in_pounds(), actives=TWO)),
            "The use counts acid equivalent, and the card of",
        ),
        (
            small_property(
                full_card(full_use(), actives=TWO),
                rate_product_fl_oz_per_ac=None,
                rate_ae_lb_per_ac=1,
            ),
            "counts no one active",
        ),
        (
            small_property(
                full_card(full_use(method="spot")),
                rate_product_fl_oz_per_ac=None,
                mix_pct=2,
                method="spot",
                sprayer=None,
                treated_sq_ft=500,
            ),
            "no sprayer with a catch test is named",
        ),
        (
            small_property(
                full_card(full_use(rate_low_pct=1, rate_high_pct=2, basis="mix", method="spot")),
                method="spot",
                treated_sq_ft=500,
            ),
            "is product, and the use counts percent of the spray",
        ),
    ],
)
def test_a_rate_that_cannot_be_held_against_the_card_says_what_keeps_it(
    data: Data, said: str
) -> None:
    data = copy.deepcopy(data)
    use = data["products"]["products"][0]["label"]["uses"][0]
    if "rate_low_pct" in use:
        del use["rate_low_fl_oz_per_ac"], use["rate_high_fl_oz_per_ac"]
    stop = told(data, "S109")
    assert said in stop.words
    assert stop.cure.endswith(".")


THEIRS = LICENCE | FOR_PAY | {"reader": "hired"}


@pytest.mark.parametrize(
    ("licence", "said"),
    [
        (without(THEIRS, "reader"), "sprays holds one, and no reader: says that it is hired"),
        (THEIRS | {"for_hire": False}, "covers no hire: licence_class: commercial, for_hire: true"),
        (without(THEIRS, "fits"), "of sprays, brew under fits: is missing"),
        (without(THEIRS, "asked_on"), "of sprays, asked_on: is missing"),
        (
            THEIRS | {"licence_expires_on": "2026-09-26"},
            "ends on Sep 26, 2026, before the last open",
        ),
    ],
)
def test_a_licence_that_does_not_count_says_which_key_is_missing(licence: Data, said: str) -> None:
    assert said in told(restricted(licence, handed=True), "S114").to_type
    assert said not in told(restricted(handed=True), "S114").to_type
    assert stops_of(planned(restricted(THEIRS, handed=True))) == set()


def test_a_licence_of_somebody_the_job_is_not_handed_to_is_said_so() -> None:
    assert (
        "as reader hired, and this job is handed to nobody"
        in told(restricted(THEIRS), "S114").to_type
    )


@pytest.mark.parametrize("left_out", ["timing", "method", "covers.kinds", "covers.species"])
def test_a_use_that_would_match_but_for_what_it_leaves_out_is_named(left_out: str) -> None:
    use = full_use()
    inside = use[left_out.partition(".")[0]] if "." in left_out else use
    del inside[left_out.rpartition(".")[2]]
    stop = told(small_property(full_card(use)), "S104")
    assert f'The use "{use["site_words"]}" may be meant, and is not finished.' in stop.words
    assert f'Of the use "{use["site_words"]}", {left_out} is left out.' in stop.to_type


def test_a_use_for_another_time_is_not_said_to_be_meant() -> None:
    stop = told(small_property(full_card(full_use("seedlings"))), "S104")
    assert "may be meant" not in stop.words
