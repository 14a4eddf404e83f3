"""What a card leaves open of a wait before a sowing, worked by hand.

The lane's sowing opens on Jan 20, 2027, 120 days after Sep 22, 2026 (30 - 22 = 8 days of
September, 31 + 30 + 31 of October to December, 20 of January: 8 + 92 + 20 = 120).
"""

import datetime
from typing import Any

import pytest

from generator.inventory.label import CropDays
from generator.plan.after.waits import day_after
from generator.plan.build.season_plan import make_plan
from generator.plan.labels.crops import ids_by_name, meant_by, plain_name
from generator.plan.log.longest import longest_reentry_hours, longest_wait_days
from generator.plan.model.finding import Finding
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.reference.library import planting_kinds, species
from generator.working import Given
from tests.plan.planned import inventory_of, job_of
from tests.plan.test_plant_back import OTHER, SOWING, answer, held, plan_of, sprayed
from tests.properties import SEASON, Data, full_card, full_use, small_property

CLOVER = {"kinds": ["clover"], "species": ["any"], "land": "any", "places": ["any"]}
SPRAYED = "2026-09-22"


def on_clover(works: list[str], **use: Any) -> Data:
    """The lane with its kill logged, of a product whose one use covers clover alone."""
    card = full_card(
        full_use(**({"covers": CLOVER, "seeding_interval_days": "not_on_label"} | use)),
        actives=[OTHER | ({"works_as": works} if works else {})],
    )
    return sprayed(small_property(card), SPRAYED)


def listed(*lines: tuple[str, int], **means: list[str]) -> list[Data]:
    return [
        {"crop": crop, "wait_days": days} | ({"means": means["means"]} if means else {})
        for crop, days in lines
    ]


def words_of(found: list[Finding]) -> str:
    (one,) = found
    return f"{one.words} {one.cure} {one.to_type}"


@pytest.mark.parametrize(("days", "code"), [(120, set()), (121, {"S210"})])
def test_an_interval_holds_for_a_crop_the_use_does_not_cover(days: int, code: set[str]) -> None:
    plan = plan_of(on_clover(["other"], seeding_interval_days=days))
    assert {one.code for one in plan.findings_on(SOWING) if one.severity == "stop"} == code


def test_of_interval_and_listed_days_the_longer_holds() -> None:
    for interval, native, asked in ((30, 130, 130), (140, 130, 140)):
        lines = listed(("Native grass", native))
        plan = plan_of(on_clover(["other"], seeding_interval_days=interval, plant_back_days=lines))
        (stop,) = held(plan)
        assert dict(stop.figures)["The label asks for"].value == asked


@pytest.mark.parametrize("works", [["auxin"], ["soil_residual"], ["other", "auxin"], []])
def test_a_crop_without_a_typed_wait_is_asked_after_what_may_hold_it_back(works: list[str]) -> None:
    data = on_clover(works, plant_back_days=listed(("Clover", 30), ("Corn", 150)))
    plan = plan_of(data)
    (stop,) = held(plan, "S211")
    assert "Switchgrass" in stop.words
    assert "plant_back_days" in stop.to_type
    # 150 days after Sep 22, 2026
    assert "from Feb 19, 2027 on" in stop.cure
    assert job_of(plan, SOWING).numbers == {}
    assert "native grass" in " ".join(answer(plan, "native_grass").unknown).lower()
    use = data["products"]["products"][0]["label"]["uses"][0]
    use["plant_back_days"] += listed(("Switchgrass", 0))
    assert held(plan_of(data), "S211") == []
    assert job_of(plan_of(data), SOWING).numbers


def test_it_stops_no_longer_than_the_longest_wait_on_any_card() -> None:
    def stops(longest: int) -> set[str]:
        data = on_clover(["soil_residual"], plant_back_days=listed(("Clover", 10)))
        first = data["products"]["products"][0]
        other = full_card(full_use(plant_back_days=listed(("Corn", longest))))
        data["products"]["products"].append(first | {"id": "second", "label": other})
        return {one.code for one in plan_of(data).findings_on(SOWING)} & {"S211", "C324"}

    assert stops(120) == {"C324"}
    assert stops(121) == {"S211"}


def test_without_a_wait_on_any_card_it_does_not_end_by_itself() -> None:
    data = on_clover(["soil_residual"])
    data["log"]["entries"][0]["done_on"] = "2022-09-22"
    (stop,) = held(plan_of(data), "S211")
    assert " on: the longest" not in stop.cure


def test_a_passing_active_takes_the_longest_wait_its_card_lists() -> None:
    (stop,) = held(plan_of(on_clover(["other"], plant_back_days=listed(("Corn", 121)))))
    assert dict(stop.figures)["The label asks for"].value == 121


def test_no_wait_is_said_only_where_the_card_says_so() -> None:
    silent = plan_of(on_clover(["other"]))
    assert (answer(silent, "brassica").day, answer(silent, "brassica").unknown) == (None, ())
    none = plan_of(on_clover(["auxin"], plant_back_days=listed(("Brassica", 0))))
    assert answer(none, "brassica").day == datetime.date(2026, 9, 22)
    for works in (["auxin"], ["soil_residual"], []):
        assert answer(plan_of(on_clover(works)), "brassica").unknown
    gap = on_clover(["other"])
    del gap["products"]["products"][0]["label"]["uses"][0]["seeding_interval_days"]
    assert "type seeding_interval_days;" in answer(plan_of(gap), "brassica").unknown[0]


def test_a_card_that_lets_it_be_sprayed_at_the_sowing_lets_it_be_sown() -> None:
    grass = {"kinds": ["native_grass"], "species": ["any"], "land": "any", "places": ["any"]}
    for timing, asked in (("at_sowing", False), ("before_sowing", True)):
        data = on_clover(["soil_residual"], timing=timing, covers=grass)
        data["log"]["entries"][0] |= {"job": None, "sprayed": {"place": "lane", "treated_ac": 1}}
        data["log"]["entries"][0].pop("job")
        assert bool(held(plan_of(data), "S211")) == asked


@pytest.mark.parametrize("listed_crop", ["Switchgrass", "Big bluestem"])
def test_the_wait_of_one_species_of_a_mixture_says_nothing_of_another(listed_crop: str) -> None:
    """A residual over both; whichever the card lists, the other has no wait and is asked for."""
    grass = CLOVER | {"kinds": ["native_grass"]}
    data = on_clover(["soil_residual"], covers=grass, plant_back_days=listed((listed_crop, 150)))
    data["seed"]["lots"].append(data["seed"]["lots"][0] | {"id": "bb", "species": "big-bluestem"})
    planting = data["screens"]["screens"][0]["plantings"][0]
    planting["seed"].append({"species": "big-bluestem", "lot": "bb", "rate_pls_lb_per_ac": 2})
    data["log"]["entries"][0] |= {"sprayed": {"place": "lane", "treated_ac": 1}}
    data["log"]["entries"][0].pop("job")
    assert held(plan_of(data), "S211")


@pytest.mark.parametrize(
    ("timing", "asked"), [("before_sowing", False), ("established_dormant", True)]
)
def test_the_waits_of_other_crops_are_nothing_to_what_the_use_is_sprayed_before(
    timing: str, asked: bool
) -> None:
    """Corn has to wait 121 days; the use before grass is sown covers the grass, and names none."""
    grass = CLOVER | {"kinds": ["native_grass"]}
    lines = listed(("Corn", 121))
    data = on_clover(["other"], timing=timing, covers=grass, plant_back_days=lines)
    data["log"]["entries"][0] |= {"sprayed": {"place": "lane", "treated_ac": 1}}
    data["log"]["entries"][0].pop("job")
    assert bool(held(plan_of(data))) == asked


@pytest.mark.parametrize("waits", [True, False])
def test_a_spraying_whose_open_dates_are_not_known_leaves_open_what_has_to_wait(
    waits: bool,
) -> None:
    interval = 7 if waits else "not_on_label"
    card = full_card(full_use(seeding_interval_days=interval), actives=[OTHER])
    data = small_property(card | {"actives": [OTHER | {"works_as": ["other"]}]})
    del data["property"]["season_signs"]["first_hard_freeze"]
    found = answer(plan_of(data, "2026-08-20"), "native_grass", logged=False)
    assert found.day is None
    assert [one.endswith("its open dates are not known.") for one in found.unknown] == (
        [True] if waits else []
    )


@pytest.mark.parametrize("crop", ["Native grasses", "Switch grass", "All other crops", "Wheat"])
def test_a_crop_name_that_is_none_of_ours_stops_and_asks(crop: str) -> None:
    data = on_clover(["other"], plant_back_days=listed((crop, 121), ("Native grass", 30)))
    use = data["products"]["products"][0]["label"]["uses"][0]
    (stop,) = held(plan_of(data), "S212")
    assert crop in stop.words
    assert "means:" in stop.to_type
    # 121 days after Sep 22, 2026
    assert "Jan 21, 2027" in stop.words
    assert dict(stop.figures)["The line asks for"].value == 121
    assert job_of(plan_of(data), SOWING).numbers == {}
    use["plant_back_days"][0]["means"] = ["none"]
    assert job_of(plan_of(data), SOWING).numbers
    use["plant_back_days"][0]["means"] = ["switchgrass"]
    assert held(plan_of(data), "S212") == []
    assert len(held(plan_of(data))) == 1
    use["plant_back_days"][0] |= {"means": [], "wait_days": 120}
    del use["plant_back_days"][0]["means"]
    assert held(plan_of(data), "S212") == []


def test_all_other_crops_hold_for_what_no_other_line_names() -> None:
    lines = [
        {"crop": "All other crops", "wait_days": 200, "means": ["all_other_kinds"]},
        {"crop": "White clover", "wait_days": 100},
        {"crop": "Native grass", "wait_days": 30},
    ]
    plan = plan_of(on_clover(["soil_residual"], plant_back_days=lines))
    assert held(plan) == held(plan, "S211") == held(plan, "S212") == []
    # 200 days after Sep 22, 2026; red clover is no white clover
    for kind in ("brassica", "clover"):
        assert answer(plan, kind).day == datetime.date(2027, 4, 10)
    assert answer(plan, "native_grass").day == datetime.date(2026, 10, 22)


def test_of_two_lines_for_a_kind_the_longer_holds() -> None:
    lines = [
        {"crop": "Native grass", "wait_days": 30},
        {"crop": "Warm-season grasses", "wait_days": 125, "means": ["native_grass"]},
    ]
    (stop,) = held(plan_of(on_clover(["soil_residual"], plant_back_days=lines)))
    assert dict(stop.figures)["Too soon by"].value == 5


@pytest.mark.parametrize(("days", "asked"), [(124, 0), (125, 0), (126, 1)])
def test_a_line_nobody_can_place_is_asked_only_where_it_is_longer_than_what_holds(
    days: int, asked: int
) -> None:
    lines = listed(("Native grass", 125), ("Peanuts", days))
    plan = plan_of(on_clover(["other"], plant_back_days=lines))
    assert len(held(plan, "S210")) == 1
    assert len(held(plan, "S212")) == asked


@pytest.mark.parametrize(("days", "asked"), [(0, False), (1, True)])
def test_a_line_of_no_days_that_nobody_can_place_leaves_nothing_open(
    days: int, asked: bool
) -> None:
    data = on_clover(["other"], plant_back_days=listed(("Peanuts", days)))
    assert bool(answer(plan_of(data), "native_grass").unknown) == asked


def test_a_use_covers_the_very_species_it_names() -> None:
    """A residual at sowing: what the use covers may be sown, each of it and all of it."""
    named = CLOVER | {"kinds": ["native_grass"], "species": ["switchgrass"]}
    data = on_clover(["soil_residual"], covers=named, timing="at_sowing")
    assert held(plan_of(data), "S211") == []
    named["species"] = ["big-bluestem"]
    assert len(held(plan_of(data), "S211")) == 1


def test_one_species_of_a_mixture_is_not_covered_by_the_line_of_another() -> None:
    data = on_clover(["other"], plant_back_days=listed(("Switchgrass", 10), ("Corn", 130)))
    assert held(plan_of(data)) == []
    planting = data["screens"]["screens"][0]["plantings"][0]
    data["seed"]["lots"].append(data["seed"]["lots"][0] | {"id": "bb", "species": "big-bluestem"})
    planting["seed"] = [
        {"species": "switchgrass", "lot": "sg", "rate_pls_lb_per_ac": 5},
        {"species": "big-bluestem", "lot": "bb", "rate_pls_lb_per_ac": 3},
    ]
    (stop,) = held(plan_of(data))
    assert dict(stop.figures)["The label asks for"].value == 130


def test_names_match_to_the_letter_and_no_two_differ_by_what_is_dropped() -> None:
    names = [*planting_kinds().values(), *(one.name for one in species().values())]
    assert len({plain_name(one) for one in names}) == len(set(names))
    for typed in (
        "native grass",
        "Native-Grass",
        " native  grass ",
        "Native\u2011grass",
        "native_grass",
    ):
        assert ids_by_name()[plain_name(typed)] == {"native_grass"}
    for typed in ("Native grasses", "Switch-grass", "Clovers", "All other crops", ""):
        assert plain_name(typed) not in ids_by_name()


def test_what_is_meant_is_beside_what_is_named() -> None:
    def line(crop: str, *means: str) -> CropDays:
        lines = [{"crop": crop, "wait_days": 1} | ({"means": list(means)} if means else {})]
        data = small_property(full_card(full_use(plant_back_days=lines)))
        card = inventory_of(data).products[0].label
        assert card is not None
        typed = card.uses[0].plant_back_days
        assert isinstance(typed, tuple)
        return typed[0]

    assert meant_by(line("Clover", "brassica")) == {"clover", "brassica"}
    assert meant_by(line("Clover", "none")) == {"clover"}
    assert meant_by(line("Peanuts", "none")) == frozenset()
    assert meant_by(line("Peanuts")) is None


def test_a_sowing_whose_open_dates_are_not_known_is_held_on_the_plan_s_day() -> None:
    data = on_clover(["other"], seeding_interval_days=90)
    data["seed"]["lots"][0] |= {"species": "tall-sorghum"}
    data["screens"]["screens"][0]["plantings"][0] |= {
        "seed": [{"species": "tall-sorghum", "lot": "sg", "rate_pls_lb_per_ac": 8}],
        "method": "broadcast",
        "steps": "sorghum_screen",
        "work": [],
    }
    entry = data["log"]["entries"][0]
    del entry["job"]
    entry["sprayed"] = {"place": "lane", "treated_ac": 1}

    def stops(as_of: str) -> list[Finding]:
        plan = plan_of(data, as_of)
        (sowing,) = (one for one in plan.jobs if one.step.operation == "sow")
        assert sowing.dates.opens is None
        return [one for one in plan.findings_on(sowing.id) if one.code == "S210"]

    # 90 days after Sep 22, 2026 are Dec 21
    (stop,) = stops("2026-12-20")
    assert "its open dates are not known" in stop.words
    assert dict(stop.figures)["Too soon by"].value == 1
    assert stops("2026-12-21") == []


def test_what_a_planned_residual_of_another_planting_leaves_open_is_asked() -> None:
    """A planned spraying is asked of too; what its card leaves out stops its own job."""
    data = small_property(full_card(full_use()))
    data["property"]["season_signs"] |= {"thaw": "03-10", "grass_green_up": "04-20"}
    covers = {"kinds": ["native_grass"], "species": ["any"], "land": "any", "places": ["any"]}
    use = full_use(
        "established_dormant",
        covers=covers,
        seeding_interval_days="not_on_label",
        plant_back_days=listed(("Corn", 400)),
    )
    first = data["products"]["products"][0]
    label = full_card(use, actives=[OTHER | {"works_as": ["soil_residual"]}])
    data["products"]["products"].append(first | {"id": "second", "label": label})
    old = {
        "id": "lane-25",
        "season": SEASON - 2,
        "seed": data["screens"]["screens"][0]["plantings"][0]["seed"],
        "method": "frost_seed",
        "steps": "frost_seeded_native_grass",
        "upkeep": "established_screen_upkeep",
        "work": [
            {"step": "second_spring_residual", "product": "second", "rate_product_fl_oz_per_ac": 32,
             "method": "broadcast", "sprayer": "boom"},
        ],
    }  # fmt: skip
    data["screens"]["screens"][0]["plantings"].insert(0, old)
    plan = make_plan(inventory_of(data), SEASON, datetime.date(2026, 3, 1))
    (stop,) = held(plan, "S211")
    assert "is planned to be sprayed" in stop.words
    del data["screens"]["screens"][0]["plantings"][0]["work"]
    plan = make_plan(inventory_of(data), SEASON, datetime.date(2026, 3, 1))
    assert held(plan, "S211") == []


def test_other_readers_are_told_to_wait_and_nothing_more() -> None:
    for lines in (listed(("Corn", 150)), listed(("Native grasses", 150))):
        data = on_clover(["auxin"], plant_back_days=lines)
        seen = seen_by(plan_of(data), inventory_of(data).readers[0])
        stops = [one for one in seen.findings if one.code in ("S211", "S212")]
        assert stops
        for stop in stops:
            assert stop.words == "This ground may not be sown yet. Do not begin; ask the owner."
            assert stop.figures == ()


def test_the_longest_spans_are_those_of_any_card() -> None:
    data = small_property(
        full_card(
            full_use(seeding_interval_days=9),
            full_use(covers=CLOVER, plant_back_days=listed(("Corn", 40), ("Oats", 11))),
            reentry={"agricultural_hours": 12, "elsewhere": "not_on_label"},
        )
    )
    first = data["products"]["products"][0]
    card = full_card(full_use(seeding_interval_days=39), reentry={"agricultural_hours": 48})
    data["products"]["products"].append(first | {"id": "second", "label": card})
    products = inventory_of(data).products
    wait, hours = longest_wait_days(products), longest_reentry_hours(products)
    assert wait is not None
    assert hours is not None
    assert (wait.value, hours.value) == (40, 48)
    assert longest_wait_days(()) is None
    assert longest_reentry_hours(()) is None


def plan_with(data: Data, season: int, as_of: str) -> Plan:
    day = datetime.date.fromisoformat(as_of)
    return make_plan(inventory_of(data), season, day)


def test_a_sowing_that_the_season_before_still_owes_is_held_back_too() -> None:
    """Frost seeding of 2027 is on the list of a plan for 2028 while season 2027 runs."""
    data = on_clover(["other"], seeding_interval_days=150)
    data["property"]["season"] = SEASON + 1
    plan = plan_with(data, SEASON + 1, "2026-12-01")
    assert job_of(plan, SOWING).numbers == {}
    assert len(held(plan)) == 1


@pytest.mark.parametrize(("days", "after"), [(0, 0), (1, 1), (1.5, 2), (2, 2)])
def test_a_part_of_a_day_is_waited_for_to_its_end(days: float, after: int) -> None:
    sprayed = datetime.date(2026, 8, 20)
    wait = Given("days", days, "days", days, "days", "products.yaml", 1, "page")
    assert day_after(sprayed, wait) == sprayed + datetime.timedelta(days=after)
    # of a wait past the last day there is, that day
    ages = Given("days", 9e6, "days", 9e6, "days", "products.yaml", 1, "page")
    assert day_after(sprayed, ages) == datetime.date.max
