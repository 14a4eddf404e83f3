"""Whether a label lets a job be done: the whole matching table, and every entry left out."""

import copy
from typing import Any

import pytest

from generator.inventory.fields import rules_of
from generator.inventory.label import Covers, LabelCard, Reentry, Use
from generator.plan.findings.about_labels import LabelStop
from generator.plan.labels.clearance import Asked, cleared_use, missing_on_card, missing_on_use
from tests.plan.planned import BURN_DOWN, KILL, inventory_of, planned, stops_of
from tests.properties import Data, full_card, full_use, small_property, the_work

NO_USE, SAYS_NO, UNSURE, DISAGREE = "S104", "S105", "S106", "S107"
CARD_GAPS, USE_GAPS = "S103", "S108"


def covers(**changes: Any) -> Data:
    """A use's `covers` that fits the small property, with changes."""
    return {
        "kinds": ["native_grass"],
        "species": ["any"],
        "land": "any",
        "places": ["any"],
    } | changes


def stops_with(*uses: Data, **work: Any) -> set[str]:
    """The stops on the fall kill of the small property under a card of these uses."""
    return stops_of(planned(small_property(full_card(*uses), **work)))


def test_a_full_card_that_matches_clears_the_job() -> None:
    assert stops_with(full_use()) == set()


@pytest.mark.parametrize(
    "covered",
    [
        covers(kinds=["clover"]),
        covers(kinds=["woody_row", "clover"]),
        covers(species=["big-bluestem"]),
        covers(places=["other"]),
    ],
)
def test_a_use_for_another_site_does_not_clear(covered: Data) -> None:
    data = small_property(full_card(full_use(covers=covered)))
    other = copy.deepcopy(data["screens"]["screens"][0])
    other |= {"id": "other", "known_as": "Strip 2", "plantings": []}
    data["screens"]["screens"].append(other)
    assert stops_of(planned(data)) == {NO_USE}


@pytest.mark.parametrize(
    "covered",
    [
        covers(kinds=["clover", "native_grass"]),
        covers(species=["switchgrass"]),
        covers(species=["switchgrass", "big-bluestem"]),
        covers(places=["lane"]),
        covers(land="not_contract"),
    ],
)
def test_a_use_that_names_the_site_clears(covered: Data) -> None:
    assert stops_with(full_use(covers=covered)) == set()


def test_every_species_of_the_planting_must_be_covered() -> None:
    data = small_property(full_card(full_use(covers=covers(species=["switchgrass"]))))
    lot = data["seed"]["lots"][0] | {"id": "bb", "species": "big-bluestem"}
    data["seed"]["lots"].append(lot)
    planting = data["screens"]["screens"][0]["plantings"][0]
    planting["seed"].append({"species": "big-bluestem", "lot": "bb", "rate_pls_lb_per_ac": 2})
    assert stops_of(planned(data)) == {NO_USE}


@pytest.mark.parametrize(
    ("land", "contract", "clears"),
    [
        ("any", "none", True),
        ("any", "ten-year cover program", True),
        ("any", None, True),
        ("not_contract", "none", True),
        ("not_contract", "None", True),
        ("not_contract", "ten-year cover program", False),
        ("not_contract", None, False),
        ("contract", "ten-year cover program", True),
        ("contract", "none", False),
        ("contract", None, False),
    ],
)
def test_land_under_contract(land: str, contract: str | None, clears: bool) -> None:
    data = small_property(full_card(full_use(covers=covers(land=land))))
    screen = data["screens"]["screens"][0]
    del screen["contract"]
    if contract is not None:
        screen["contract"] = contract
    assert stops_of(planned(data)) == (set() if clears else {NO_USE})


@pytest.mark.parametrize(
    "timing", ["at_sowing", "after_sowing_before_emergence", "seedlings", "established_dormant"]
)
def test_a_use_at_another_time_does_not_clear(timing: str) -> None:
    assert stops_with(full_use(timing)) == {NO_USE}


def test_a_use_before_sowing_does_not_clear_a_spraying_after_it() -> None:
    data = small_property()
    the_work(data)[0]["step"] = "spring_burn_down"
    assert stops_of(planned(data), BURN_DOWN) == {NO_USE}


@pytest.mark.parametrize(
    ("use", "job", "clears"),
    [
        ("broadcast", "broadcast", True),
        ("broadcast", None, True),
        ("spot", "spot", True),
        ("broadcast", "spot", False),
        ("spot", "broadcast", False),
        ("spot", None, False),
    ],
)
def test_method(use: str, job: str | None, clears: bool) -> None:
    work = {"method": job, "treated_sq_ft": 400}
    assert stops_with(full_use(method=use), **work) == (set() if clears else {NO_USE})


@pytest.mark.parametrize(
    ("allowed", "stops"),
    [("yes", set()), ("no", {SAYS_NO}), ("unsure", {UNSURE}), (None, {UNSURE})],
)
def test_what_the_use_says(allowed: str | None, stops: set[str]) -> None:
    use = full_use(allowed=allowed)
    if allowed is None:
        del use["allowed"]
    assert stops_with(use) == stops


@pytest.mark.parametrize(
    ("second", "stops"),
    [
        ({}, set()),
        ({"site_words": "Grass stands, invented", "page": "p. 5"}, set()),
        ({"covers": covers(kinds=["native_grass", "clover"])}, set()),
        ({"allowed": "no"}, {DISAGREE}),
        ({"allowed": "unsure"}, {UNSURE}),
        ({"rate_high_fl_oz_per_ac": 63}, {DISAGREE}),
        ({"max_per_year": {"amount_fl_oz_per_ac": 128, "counted": "crop"}}, {DISAGREE}),
        ({"setbacks_ft": [{"keep_from": "open water", "distance_ft": 31}]}, {DISAGREE}),
        ({"seeding_interval_days": "not_on_label"}, {DISAGREE}),
        ({"droplet": "medium or coarser"}, {DISAGREE}),
        ({"times_per_year": 3}, {DISAGREE}),
        ({"method": "spot", "rate_high_fl_oz_per_ac": 63}, set()),
        ({"covers": covers(kinds=["clover"]), "rate_high_fl_oz_per_ac": 63}, set()),
    ],
)
def test_two_uses_clear_only_where_they_agree(second: Data, stops: set[str]) -> None:
    assert stops_with(full_use(), full_use(**second)) == stops
    assert stops_with(full_use(**second), full_use()) == stops


def test_three_uses_clear_only_where_all_of_them_agree() -> None:
    lower = full_use(rate_high_fl_oz_per_ac=63)
    for uses in ([full_use(), full_use(), lower], [full_use(), lower, lower]):
        assert stops_with(*uses) == {DISAGREE}


def test_of_uses_that_agree_the_first_on_the_card_is_the_one_named() -> None:
    card = full_card(full_use(), full_use(page="p. 5"))
    read = inventory_of(small_property(card)).products[0].label
    assert read is not None
    asked = Asked(
        "native_grass", ("switchgrass",), "lane", "not_contract", "before_sowing", "broadcast"
    )
    use = cleared_use(read, asked)
    assert isinstance(use, Use)
    assert use.page == "p. 4"


def test_the_same_numbers_typed_in_other_units_agree() -> None:
    other = full_use(rate_low_pt_per_ac=1.5, rate_high_qt_per_ac=2)
    del other["rate_low_fl_oz_per_ac"], other["rate_high_fl_oz_per_ac"]
    assert stops_with(full_use(), other) == set()


def _typed(entry: Data, field: str) -> str:
    return next(key for key in entry if key == field or key.startswith(f"{field}_"))


@pytest.mark.parametrize("field", [name for name in rules_of(LabelCard) if name != "uses"])
def test_an_entry_left_out_of_the_card_is_a_stop(field: str) -> None:
    card = full_card(full_use())
    del card[field]
    plan = planned(small_property(card))
    assert stops_of(plan) == {CARD_GAPS}
    assert field in next(one for one in plan.findings_on(KILL)).to_type


@pytest.mark.parametrize("field", list(rules_of(Reentry)))
def test_an_entry_left_out_of_reentry_is_a_stop(field: str) -> None:
    card = full_card(full_use())
    del card["reentry"][field]
    assert stops_of(planned(small_property(card))) == {CARD_GAPS}


def test_a_card_without_uses_is_a_stop() -> None:
    card = full_card()
    assert stops_of(planned(small_property(card))) == {CARD_GAPS}
    del card["uses"]
    assert stops_of(planned(small_property(card))) == {CARD_GAPS}


UNMATCHED = {"covers": NO_USE, "timing": NO_USE, "method": NO_USE, "allowed": UNSURE}


@pytest.mark.parametrize("field", [name for name in rules_of(Use) if name != "site_words"])
def test_an_entry_left_out_of_the_use_is_a_stop(field: str) -> None:
    use = full_use()
    del use[_typed(use, field)]
    assert stops_with(use) == {UNMATCHED.get(field, USE_GAPS)}


@pytest.mark.parametrize("field", list(rules_of(Covers)))
def test_an_entry_left_out_of_what_the_use_covers_is_a_stop(field: str) -> None:
    left = covers()
    del left[field]
    assert stops_with(full_use(covers=left)) == {NO_USE}


def test_what_is_not_on_the_label_is_no_gap() -> None:
    silent = [name for name, rule in rules_of(Use).items() if rule.label]
    use = full_use()
    for field in silent:
        del use[_typed(use, field)]
        use[field if not field.endswith("max_per_application") else field + "_fl_oz_per_ac"] = (
            "not_on_label"
        )
    assert stops_with(use) == set()


def test_no_card_and_no_product_are_stops() -> None:
    data = small_property()
    del data["products"]["products"][0]["label"]
    assert stops_of(planned(data)) == {"S102"}
    assert stops_of(planned(small_property(product=None))) == {"S101"}
    data = small_property()
    the_work(data).clear()
    assert stops_of(planned(data)) == {"S101"}


def test_the_pieces_say_what_is_missing_in_the_owner_s_words() -> None:
    card = full_card(full_use(covers=covers(land="any")))
    del card["signal_word"], card["reentry"]["elsewhere"], card["uses"][0]["covers"]["land"]
    del card["uses"][0]["droplet"]
    read = inventory_of(small_property(card)).products[0].label
    assert read is not None
    assert missing_on_card(read) == ("signal_word", "reentry.elsewhere")
    assert missing_on_use(read.uses[0]) == ("droplet", "covers.land")


def test_a_use_without_a_site_matches_no_job() -> None:
    card = full_card(full_use())
    del card["uses"][0]["covers"]
    read = inventory_of(small_property(card)).products[0].label
    assert read is not None
    asked = Asked(
        "native_grass", ("switchgrass",), "lane", "not_contract", "before_sowing", "broadcast"
    )
    assert cleared_use(read, asked) is LabelStop.NO_USE
