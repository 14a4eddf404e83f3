"""Sowing into living sod: stopped without a kill, cautioned while a stop stands on the kill."""

import datetime
from typing import Any

import pytest

from generator.plan.build.season_plan import make_plan
from tests.plan.planned import KILL, inventory_of, planned
from tests.properties import SEASON, Data, small_property, the_work

SOWING = f"lane/{SEASON}/frost_seeding"
AFTER_THE_KILL = datetime.date(2026, 12, 1)


def of_sod(data: Data, day: datetime.date | None = None) -> dict[str, str]:
    """What sod says against the sowing, by code."""
    plan = planned(data)
    if day is not None:
        plan = make_plan(inventory_of(data), SEASON, day)
    return {one.code: one.words for one in plan.findings_on(SOWING) if one.code in ("S180", "C207")}


def without_kill() -> Data:
    data = small_property()
    the_work(data).clear()
    return data


def logged_kill(data: Data, **job: Any) -> Data:
    told = {"planting": "lane-27", "step": "autumn_kill"} | job
    data["log"] = {"entries": [{"id": "e-1", "done_on": "2026-08-19", "job": told}]}
    return data


def test_a_kill_that_is_cleared_says_nothing() -> None:
    assert of_sod(small_property()) == {}


def test_sod_without_a_kill_stops_the_sowing_and_names_the_autumn_for_it() -> None:
    said = of_sod(without_kill())
    assert set(said) == {"S180"}
    assert f"fall of {SEASON - 1}, for a sowing in season {SEASON}" in said["S180"]


def test_a_logged_kill_lifts_the_stop_only_once_it_is_finished() -> None:
    assert set(of_sod(logged_kill(without_kill(), area_ac=0.5))) == {"S180"}
    assert of_sod(logged_kill(without_kill(), area_ac=1, finished=True)) == {}


def test_a_missed_kill_moves_the_sowing_on_by_a_season() -> None:
    said = of_sod(small_property(), AFTER_THE_KILL)
    assert set(said) == {"S180"}
    assert f"fall of {SEASON}, for a sowing in season {SEASON + 1}" in said["S180"]
    data = logged_kill(small_property(), area_ac=1, finished=True)
    assert of_sod(data, AFTER_THE_KILL) == {}


@pytest.mark.parametrize(
    ("kind", "codes"), [("perennial_sod", {"S180"}), ("unsure", {"S180"}), ("stubble", set())]
)
def test_what_grows_there_now_decides(kind: str, codes: set[str]) -> None:
    data = without_kill()
    data["screens"]["screens"][0]["cover_now"] = {"kind": kind}
    assert set(of_sod(data)) == codes


def test_a_stopped_kill_is_a_caution_on_the_sowing_until_it_is_cleared() -> None:
    data = small_property(rate_product_fl_oz_per_ac=70)
    assert "stop" in {one.severity for one in planned(data).findings_on(KILL)}
    assert set(of_sod(data)) == {"C207"}
    the_work(data)[0]["rate_product_fl_oz_per_ac"] = 32
    assert of_sod(data) == {}
