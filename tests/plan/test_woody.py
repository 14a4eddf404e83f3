"""Rows of trees and shrubs by hand: plants, guards, replacements, what is bought, who sees what."""

from typing import Any

from generator.plan.model.job import Job
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import inventory_of, planned
from tests.properties import SEASON, Data, small_property

PLANTING = f"edge/{SEASON}/row_planting"
REPLACING = f"edge/{SEASON}/row_replacing"


def rowed(season: int = SEASON, place: Data | None = None, **row: Any) -> Data:
    """The small property with a second place that holds two rows of redcedar."""
    data = small_property()
    rows = {
        "plants": "cedar",
        "rows_count": 2,
        "spacing_ft": 8,
        "rows_apart_ft": 12,
        "guards": "tube",
        "replace_pct": 10,
    }
    rows = {key: value for key, value in (rows | row).items() if value is not None}
    planting = {
        "id": "edge-row",
        "season": season,
        "woody": [rows],
        "method": "plant",
        "steps": "woody_row",
    }
    edge = {
        "id": "edge",
        "name": "Edge row",
        "known_as": "Strip 9",
        "length_ft": 403,
        "width_ft": 30,
        "contract": "none",
        "plantings": [planting],
    }
    data["screens"]["screens"].append(edge if place is None else place | {"plantings": [planting]})
    data["seed"]["plants"] = [
        {
            "id": "cedar",
            "name": "Redcedar, 12 in",
            "species": "eastern-redcedar",
            "root": "bare_root",
            "package_count": 25,
            "price_usd": 31.07,
            "on_hand_count": 10,
        }
    ]
    data["seed"]["guards"] = [{"id": "tube", "name": "Tube, 4 ft", "package_count": 50}]
    call = {"id": "call", "places": ["edge"], "clear_on": "2026-09-01"}
    data["papers"] = {"one_calls": [call]}
    return data


def job_in(plan: Plan, job_id: str = PLANTING) -> Job:
    return next(one for one in plan.jobs if one.id == job_id)


def counts(job: Job) -> dict[str, float]:
    (row,) = job.rows
    return {name: number.value for name, number in row.numbers.items()}


def codes(plan: Plan, job_id: str = PLANTING) -> set[str]:
    return {one.code for one in plan.findings_on(job_id)}


def test_a_plant_at_both_ends_of_each_row() -> None:
    plan = planned(rowed())
    # 403 / 8 = 50.375: fifty gaps, fifty-one plants, in two rows
    assert counts(job_in(plan)) == {
        "plants_in_row_count": 51,
        "plants_count": 102,
        "rows_width_ft": 12,
    }
    assert codes(plan) == set()


def test_every_plant_has_its_guard_and_bundles_are_whole() -> None:
    plan = planned(rowed())
    lines = {(one.kind, one.item_id): one.amount.value for one in plan.lines}
    assert lines["plant", "cedar"] == lines["guard", "tube"] == 102
    bought = {one.item.id: one for one in plan.buying.purchases}
    # 92 beyond the ten on hand: four bundles of 25 at $31.07
    assert bought["cedar"].packages is not None
    assert bought["cedar"].packages.value == 4
    assert bought["cedar"].cost is not None
    assert bought["cedar"].cost.value == 4 * 31.07


def test_what_is_replaced_is_bought_the_season_after() -> None:
    plan = planned(rowed(season=SEASON - 1))
    # a tenth of 102, no part of a plant
    assert counts(job_in(plan, REPLACING)) == {"replaced_count": 11}
    assert [one.amount.value for one in plan.lines if one.item_id == "cedar"] == [11]
    assert not [one for one in plan.lines if one.item_id == "tube"]
    assert PLANTING not in {one.id for one in plan.jobs}


def test_without_a_share_nothing_is_set_aside_and_it_is_said() -> None:
    plan = planned(rowed(season=SEASON - 1, replace_pct=None))
    assert job_in(plan, REPLACING).rows == ()
    assert codes(plan, REPLACING) == {"N361"}


def test_a_row_without_a_length_is_not_counted() -> None:
    place = {"id": "edge", "name": "Edge", "known_as": "Strip 9", "area_ac": 0.3}
    plan = planned(rowed(place=place))
    assert (job_in(plan).rows, codes(plan)) == ((), {"C270"})
    plan = planned(rowed(place=place, row_ft=80))
    assert counts(job_in(plan))["plants_count"] == 22
    assert "C270" not in codes(plan)


def test_no_guard_is_a_note_and_rows_wider_than_the_place_a_caution() -> None:
    assert codes(planned(rowed(guards=None))) == {"N360"}
    assert codes(planned(rowed(rows_apart_ft=31))) == {"C271"}
    assert codes(planned(rowed(rows_apart_ft=30))) == set()


def test_another_reader_sees_what_to_plant_and_no_price_or_id() -> None:
    data = rowed()
    data["readers"]["readers"][0]["jobs"].append({"planting": "edge-row", "steps": ["all"]})
    plan = planned(data)
    seen = job_in(seen_by(plan, inventory_of(data).readers[0]), f"strip-9/{SEASON}/row_planting")
    (row,) = seen.rows
    assert row.numbers["plants_count"].value == 102
    assert (row.plant.name, row.plant.id, row.plant.price_usd) == (
        "Redcedar, 12 in",
        "plants-1",
        None,
    )
    assert "cedar" not in row.numbers["plants_count"].identity
