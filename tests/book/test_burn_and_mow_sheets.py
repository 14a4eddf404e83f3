"""What must be ticked before fire and cutter, on every sheet of such work."""

import html
import re

from generator.book.make import make_book
from generator.plan.build.season_plan import make_plan
from tests.plan.planned import inventory_of
from tests.plan.test_burning import JANUARY, standing
from tests.properties import SEASON, Data

THROWN = "Nobody is within 300 ft, and no road, house or stock in the line of throw."
FIRE = [
    "Permit in hand, and no burn ban today.",
    "The written plan is in hand, and today's weather is inside it.",
    "No front and no shift of wind is forecast within 12 hours.",
    "Breaks all around are bare, wet or mown short, as wide as the plan says; downwind at least "
    "10 times as wide as what burns is tall.",
    "Crew, water and phones are in place; everybody on the list was told.",
]


def ticks_of(data: Data, step: str) -> list[str]:
    plan = make_plan(inventory_of(data), SEASON, JANUARY)
    (page,) = (
        one.markdown
        for one in make_book(plan).pages
        if one.address.startswith("work/") and one.address.endswith(f"{SEASON}-{step}.md")
    )
    boxes = page.split('<ul class="ticks">')[1].split("</ul>")[0]
    told = (
        html.unescape(re.sub(r"<[^>]*>", "", one)) for one in re.findall(r"<li>(.*)</li>", boxes)
    )
    return [" ".join(one.split()) for one in told]


def test_a_burn_asks_for_permit_plan_front_breaks_and_crew_before_its_own_ticks() -> None:
    ticks = ticks_of(standing(treated_sq_ft=10000), "upkeep_burning")
    assert ticks[: len(FIRE)] == FIRE
    assert "No more than 33% of the screen burns this year" in ticks[len(FIRE)]


def test_a_mowing_asks_who_and_what_is_near() -> None:
    ticks = ticks_of(standing("upkeep_mowing", treated_sq_ft=10000), "upkeep_mowing")
    assert ticks[0] == THROWN
    assert "Cutter set at 8 in or higher." in ticks


def test_a_step_of_the_owners_own_asks_the_same() -> None:
    data = standing("lane_edges")
    data["screens"]["screens"][0]["plantings"][0]["upkeep"] = "lane_upkeep"
    edges = {
        "step": "lane_edges",
        "name": "Mow the edges",
        "operation": "mow",
        "timing": "established_growing",
        "why": "So that the lane stays open.",
        "opens": [{"date": "04-01"}],
        "closes": [{"date": "04-20"}],
        "ticks": ["The gate is shut."],
        "if_missed": "Leave it.",
    }
    fire = edges | {"step": "lane_fire", "operation": "burn", "ticks": ["Hens were thought of."]}
    own = {"id": "lane_upkeep", "name": "Lane", "kind": "native_grass", "yearly_from": 2}
    data["steps"] = {"step_plans": [own | {"steps": [edges, fire]}]}
    assert ticks_of(data, "lane_edges")[:2] == [THROWN, "The gate is shut."]
    assert ticks_of(data, "lane_fire")[: len(FIRE) + 1] == [*FIRE, "Hens were thought of."]
