"""A step that is handed over and makes no job is a caution, and goes once it is asked for."""

from __future__ import annotations

import pytest

from generator.plan.model.finding import READERS, Finding
from tests.plan.planned import planned
from tests.properties import Data, small_property, the_work


def handed(*steps: str) -> Data:
    data = small_property()
    data["readers"]["readers"][0]["jobs"][0]["steps"] = list(steps)
    return data


def promised(data: Data) -> list[Finding]:
    return [one for one in planned(data).findings_on(READERS) if one.code == "C430"]


def test_a_step_nobody_asked_for_is_told_once_at_its_place() -> None:
    data = handed("autumn_kill", "spring_residual")
    (caution,) = promised(data)
    assert "The step is spring_residual of planting lane-27." in caution.to_type
    assert "does not ask for it" in caution.words
    assert caution.place.startswith("readers.yaml:")
    the_work(data).append({"step": "spring_residual"})
    assert promised(data) == []


def test_a_step_of_the_upkeep_is_not_one_of_the_plan() -> None:
    data = handed("upkeep_residual")
    data["screens"]["screens"][0]["plantings"][0]["upkeep"] = "established_screen_upkeep"
    (caution,) = promised(data)
    assert "upkeep_residual" in caution.to_type


@pytest.mark.parametrize(
    ("step", "why", "key"),
    [
        ("liming", "asks for no lime", "lime:"),
        ("fertilizing", "no fertilizer and no nutrients", "fertilizers:"),
    ],
)
def test_lime_and_fertilizer_have_to_be_asked_for(step: str, why: str, key: str) -> None:
    (caution,) = promised(handed(step))
    assert why in caution.words
    assert f"Ask for it with {key}" in caution.to_type


def test_all_steps_and_steps_of_every_planting_promise_nothing_more() -> None:
    assert promised(handed("all")) == []
    assert promised(handed("autumn_kill", "frost_seeding", "first_summer_mowing")) == []


def test_an_upkeep_that_begins_in_a_later_season_is_no_empty_promise() -> None:
    data = handed("upkeep_weed_look")
    data["screens"]["screens"][0]["plantings"][0]["upkeep"] = "established_screen_upkeep"
    assert promised(data) == []


def test_an_upkeep_that_a_later_planting_ended_is_one() -> None:
    data = handed("upkeep_weed_look")
    plantings = data["screens"]["screens"][0]["plantings"]
    bare = {key: value for key, value in plantings[0].items() if key != "work"}
    upkeep = {"upkeep": "established_screen_upkeep"}
    plantings.append(bare | {"id": "lane-10", "season": 2010} | upkeep)
    plantings.append(bare | {"id": "lane-20", "season": 2020})
    data["readers"]["readers"][0]["jobs"][0]["planting"] = "lane-10"
    (caution,) = promised(data)
    assert "a later planting has taken the place" in caution.words
