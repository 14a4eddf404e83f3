"""What a label says against steep ground, seedlings and what grows; distances; a label's age."""

from typing import Any

import pytest

from generator.inventory.label import year_in
from generator.plan.model.plan import Plan
from generator.reference.library import hard_on, known_actives, sources, species
from tests.plan.planned import BURN_DOWN, KILL, planned, stops_of
from tests.properties import SEASON, Data, full_card, full_use, small_property, the_work

MOWING = f"lane/{SEASON}/first_summer_mowing"
RAIN = {"thaw": {"early": "02-20", "typical": "03-01", "late": "03-10"}}


def codes(plan: Plan, subject: str = KILL) -> set[str]:
    return {one.code for one in plan.findings_on(subject)}


def sloping(slope_pct: float | None, data: Data | None = None, limit: float | None = None) -> Data:
    """The small property, its lane so steep, its owner's limit for machines so much."""
    data = data or small_property()
    if slope_pct is not None:
        data["screens"]["screens"][0]["near"] = {"slope_pct": slope_pct}
    if limit is not None:
        data["property"]["slope_limit_pct"] = limit
    return data


@pytest.mark.parametrize(("slope", "stops"), [(None, set()), (10, set()), (10.1, {"S220"})])
def test_a_place_steeper_than_the_card_allows_is_a_stop(
    slope: float | None, stops: set[str]
) -> None:
    data = sloping(slope, small_property(full_card(full_use(slope_limit_pct=10))))
    plan = planned(data)
    assert stops_of(plan) == stops
    for stop in (one for one in plan.findings_on(KILL) if one.code == "S220"):
        assert {told: figure.value for told, figure in stop.figures} == {
            "Steepest here": 10.1,
            "Steepest on the card": 10,
        }


def test_a_place_steeper_than_the_owners_limit_is_a_caution_for_machines_alone() -> None:
    plan = planned(sloping(16, limit=15))
    assert stops_of(plan) == set()
    assert "C340" in codes(plan)
    assert "C340" in codes(plan, MOWING)
    assert "C340" not in codes(plan, f"lane/{SEASON}/look_again")
    assert "C340" not in codes(planned(sloping(15, limit=15)))
    assert "C340" not in codes(planned(sloping(16)))
    by_hand = sloping(16, limit=15)
    sprayer = by_hand["equipment"]["sprayers"][0]
    sprayer |= {"kind": "backpack"}
    del sprayer["nozzle_spacing_in"]
    sprayer["catch_tests"] = [
        {"tested_on": "2026-08-16", "caught_fl_oz": [20], "covered_sq_ft": 340}
    ]
    assert "C340" not in codes(planned(by_hand))


def after_sowing(use: Data, *actives: Data, step: str = "spring_burn_down") -> Data:
    """The small property with a spraying between sowing and emergence, by one card."""
    data = small_property(full_card(full_use(), use, actives=list(actives) or [auxin()]))
    the_work(data).append(the_work(data)[0] | {"step": step})
    return data


def auxin(**changes: Any) -> Data:
    return {"active": "made-up", "strength_lb_per_gal": 4, "basis": "ae"} | (
        changes or {"works_as": ["auxin"]}
    )


BEFORE_UP = "after_sowing_before_emergence"


@pytest.mark.parametrize(
    ("leaves", "held"), [("not_on_label", True), (4, True), (1, True), (0, False)]
)
def test_an_auxin_on_sown_grass_is_a_stop_unless_the_use_names_it(
    leaves: object, held: bool
) -> None:
    data = after_sowing(full_use(BEFORE_UP, seedling_leaves_at_least=leaves))
    assert ("S221" in codes(planned(data), BURN_DOWN)) == held
    other = after_sowing(
        full_use(BEFORE_UP, seedling_leaves_at_least=leaves), auxin(works_as=["other"])
    )
    assert "S221" not in codes(planned(other), BURN_DOWN)


def test_an_auxin_known_by_its_name_alone_is_held_too() -> None:
    (name,) = [one for one, works in known_actives().items() if one == "mcpa" and "auxin" in works]
    use = full_use(BEFORE_UP)
    assert "S221" in codes(planned(after_sowing(use, auxin(active=name.upper()))), BURN_DOWN)


def test_an_auxin_before_the_sowing_is_not_held_by_seedlings() -> None:
    data = small_property(full_card(full_use(), actives=[auxin()]))
    assert stops_of(planned(data)) == set()


def seedlings_sprayed(leaves: object) -> Data:
    """An owner's own step: weeds in the seedlings, sprayed in July."""
    data = after_sowing(full_use("seedlings", seedling_leaves_at_least=leaves), step="broadleaves")
    step = {
        "step": "broadleaves",
        "name": "Spray broadleaves",
        "operation": "spray",
        "timing": "seedlings",
        "why": "Broadleaves shade the seedlings.",
        "opens": [{"date": "07-01"}],
        "closes": [{"date": "07-20"}],
        "if_missed": "Mow.",
    }
    plan = {
        "id": "my_grass",
        "name": "My grass",
        "based_on": "frost_seeded_native_grass",
        "steps": [step],
    }
    data["steps"] = {"step_plans": [plan]}
    data["screens"]["screens"][0]["plantings"][0]["steps"] = "my_grass"
    return data


def test_a_use_that_names_the_leaves_lets_seedlings_be_sprayed() -> None:
    job = f"lane/{SEASON}/broadleaves"
    assert "S221" in codes(planned(seedlings_sprayed("not_on_label")), job)
    plan = planned(seedlings_sprayed(4))
    assert stops_of(plan, job) == set()


def test_what_is_cleared_and_harms_the_planting_is_told() -> None:
    killer = [auxin(works_as=["grass_killer"])]
    plan = planned(small_property(full_card(full_use(), actives=killer)))
    assert stops_of(plan) == set()
    (told,) = [one for one in plan.findings_on(KILL) if one.code == "C341"]
    assert "a grass killer, which harms native grass" in told.words
    assert "C341" not in codes(planned(small_property()))


def test_an_auxin_in_the_tank_is_told_for_the_neighbours() -> None:
    data = small_property(full_card(full_use(), actives=[auxin()]))
    data["screens"]["screens"][0]["near"] = {"neighbours": "vines to the east"}
    (told,) = [one for one in planned(data).findings_on(KILL) if one.code == "C345"]
    assert told.words.endswith("Near here: vines to the east")
    assert "vines to the east" not in told.words_for_others
    assert "C345" not in codes(planned(small_property()))


def test_an_active_that_thinned_a_species_in_trials_is_told_with_its_source() -> None:
    plan = planned(small_property(full_card(full_use(), actives=[auxin(active="Imazapic")])))
    (told,) = [one for one in plan.findings_on(KILL) if one.code == "C342"]
    ((name, source),) = hard_on()["imazapic"]
    assert species()[name].name == "Switchgrass"
    assert sources()[source].title in told.words
    data = small_property(full_card(full_use(), actives=[auxin(active="Imazapic")]))
    data["seed"]["lots"][0]["species"] = "big-bluestem"
    data["screens"]["screens"][0]["plantings"][0]["seed"][0]["species"] = "big-bluestem"
    assert "C342" not in codes(planned(data))


def test_a_label_that_keeps_a_distance_says_that_nothing_is_set_back() -> None:
    (told,) = [one for one in planned(small_property()).findings_on(KILL) if one.code == "C344"]
    assert "away from: open water" in told.words
    silent = small_property(full_card(full_use(setbacks_ft="not_on_label")))
    assert "C344" not in codes(planned(silent))


@pytest.mark.parametrize(
    ("printed", "code"),
    [("2024-02", None), ("Rev. 12/2023", "N411"), ("EST 20231231", "N411"), ("rev. B", "N412")],
)
def test_an_old_label_and_one_without_a_year_are_noted(printed: str, code: str | None) -> None:
    # the kill is of September 2026
    plan = planned(small_property(full_card(full_use(), label_date=printed)))
    assert codes(plan) & {"N411", "N412"} == ({code} if code else set())


@pytest.mark.parametrize(
    ("printed", "year"),
    [("2026-02, invented", 2026), ("02/15/24", None), ("1999 to 2003", 2003), ("20240215", 2024),
     ("12024", None), (None, None)],
)  # fmt: skip
def test_the_year_in_the_date_of_a_label(printed: str | None, year: int | None) -> None:
    assert year_in(printed) == year
