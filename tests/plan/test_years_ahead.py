"""The five seasons ahead, worked out by hand on small properties and compared on the demonstration.

The small property has one acre of switchgrass on one screen, frost seeded for season 2027.
"""

import datetime
from collections.abc import Iterable
from typing import Any

import pytest

from generator.inventory.load import load_inventory
from generator.inventory.schema import Inventory
from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.plan.season.open_dates import day_in_season
from generator.plan.views.numbers import numbers_of
from generator.plan.views.years_ahead import ScreenAhead, SeasonAhead, every_year, years_ahead
from generator.reference.steps import step_plans
from tests.plan.planned import AS_OF, inventory_of, planned
from tests.plan.test_grown import replanted
from tests.plan.test_states import DEMO
from tests.plan.test_upkeep import kept_up
from tests.properties import SEASON, Data, small_property

UPKEEP = "established_screen_upkeep"
FIVE = [SEASON + number for number in range(5)]


@pytest.fixture(scope="module")
def demo() -> Inventory:
    inventory = load_inventory(DEMO).inventory
    assert inventory is not None
    return inventory


@pytest.fixture(scope="module")
def plan(demo: Inventory) -> Plan:
    return make_plan(demo, SEASON, AS_OF)


def kept(steps_from: int = SEASON) -> Data:
    """The small property with the upkeep of a screen, its grass sown in a season."""
    data = small_property()
    planting = data["screens"]["screens"][0]["plantings"][0]
    planting |= {"season": steps_from, "upkeep": UPKEEP}
    return data


def screen(one: SeasonAhead, place: str = "lane") -> ScreenAhead:
    return next(found for found in one.screens if found.place.id == place)


def told(jobs: Iterable[Any]) -> dict[str, Any]:
    return {one.id: (one.dates, one.usable, one.state, one.step.id) for one in jobs}


def shape(one: SeasonAhead) -> Any:
    """All that a section tells, without the ids of numbers: they name the plan's season."""
    return (
        one.season,
        [(group.title, told(group.jobs), group.count.value) for group in one.work],
        {age: number.value for age, number in one.acres.acres.items()},
        one.standing_on,
        [
            (
                found.place.id,
                found.grown and (found.grown.planting.id, found.grown.year),
                found.too_young,
                found.heights and {key: n.value for key, n in found.heights.by_curve.items()},
            )
            for found in one.screens
        ],
        [item.id for item in one.takes],
        [share.id for share in one.shares],
    )


def test_five_seasons_are_looked_at_the_plan_s_own_first(plan: Plan) -> None:
    assert [one.season for one in years_ahead(plan)] == FIVE
    assert {one.season for one in plan.ahead} == set(FIVE[1:])


def test_the_plan_s_own_season_holds_the_jobs_of_the_work_page(plan: Plan) -> None:
    own = [job for job in plan.jobs if job.season == SEASON]
    assert len(own) > 30
    assert told(years_ahead(plan)[0].jobs) == told(own)


def test_the_season_moved_by_one_moves_every_section_by_one(demo: Inventory, plan: Plan) -> None:
    next_plan = make_plan(demo, SEASON + 1, AS_OF)
    ours, theirs = years_ahead(plan)[1:], years_ahead(next_plan)[:-1]
    assert [shape(one) for one in ours] == [shape(one) for one in theirs]
    assert all(one.work for one in ours)


@pytest.mark.parametrize("season", FIVE)
def test_a_season_ahead_is_what_the_plan_of_that_season_says(
    demo: Inventory, plan: Plan, season: int
) -> None:
    then = make_plan(demo, season, AS_OF)
    section = years_ahead(plan)[season - SEASON]
    assert told(section.jobs) == told(one for one in then.jobs if one.season == season)


def test_a_planting_of_a_later_season_is_there_from_it_on_and_not_before() -> None:
    seasons = years_ahead(planned(replanted(SEASON + 2)))
    sown = [[job.id for job in one.jobs if job.planting_id == "lane-again"] for one in seasons]
    # its ground is got ready in the August before, and nothing of it comes earlier
    ready = [f"lane/{SEASON + 1}/thatch_off", f"lane/{SEASON + 1}/soil_sample"]
    assert sown[:2] == [[], ready]
    assert f"lane/{SEASON + 2}/drilling" in sown[2]
    stands = [found.grown and found.grown.planting.id for found in map(screen, seasons)]
    assert stands == ["lane-27", "lane-27", "lane-again", "lane-again", "lane-again"]
    assert [screen(one).too_young for one in seasons] == [True, False, True, False, False]
    ages = [list(one.acres.acres) for one in seasons]
    assert ages == [["first"], ["second"], ["first"], ["second"], ["third"]]


def test_an_annual_is_a_screen_in_its_season_and_gone_the_season_after(plan: Plan) -> None:
    found = [screen(one, "lane-bridge") for one in years_ahead(plan)]
    assert found[0].grown is not None
    assert not found[0].too_young
    assert found[0].heights is not None
    # by the list of heights 72 in low and 120 in typical, and no winter yet
    assert {key: n.value for key, n in found[0].heights.by_curve.items()} == {
        "low": 72.0, "typical": 120.0
    }  # fmt: skip
    assert [(one.grown, one.heights) for one in found[1:]] == [(None, None)] * 4


def test_heights_of_the_fall_are_those_of_each_season_of_growth() -> None:
    """Full heights of the list stand until December, nothing measured pulls them."""
    plan = planned(small_property())
    seasons = years_ahead(plan)
    lane = [screen(one) for one in seasons]
    assert [one.standing_on for one in seasons] == [datetime.date(one, 11, 15) for one in FIVE]
    assert [one.grown and one.grown.year for one in lane] == [1, 2, 3, 4, 5]
    assert [one.too_young for one in lane] == [True, False, False, False, False]
    heights = [one.heights.by_curve for one in lane if one.heights]
    assert [n["low"].value for n in heights] == [6, 36, 36, 36, 36]
    assert [n["typical"].value for n in heights] == [24, 48, 60, 60, 60]


def test_yearly_upkeep_of_a_planting_begins_in_its_third_season_and_comes_back() -> None:
    yearly = {
        step.id for step in step_plans()[UPKEEP].steps if step.only_with is None
    }  # the others wait for the owner's word
    seasons = years_ahead(planned(kept()))
    found = [{job.step.id for job in one.jobs} & yearly for one in seasons]
    assert yearly
    assert found == [set(), set(), yearly, yearly, yearly]


def test_what_comes_back_has_the_same_days_of_every_season() -> None:
    seasons = years_ahead(planned(kept(SEASON - 3)))
    for one in seasons:
        look = next(job for job in one.jobs if job.step.id == "upkeep_ice_look")
        assert (look.dates.opens, look.dates.closes) == (
            day_in_season((1, 10), one.season),
            day_in_season((3, 10), one.season),
        )


def test_stay_out_dates_of_a_later_season_take_their_days() -> None:
    """The look after ice is open from Jan 10 to Mar 10; worked out by hand."""
    data = kept(SEASON - 3)
    quiet = {"kind": "quiet", "places": ["lane"]}
    data["dates"] = {"dates": [
        {"id": "rut", "first": "2020-11-01", "last": "2021-01-20", "every_year": True} | quiet,
        {"id": "once", "first": f"{SEASON + 2}-02-01", "last": f"{SEASON + 2}-12-31"} | quiet,
    ]}  # fmt: skip
    found = [
        next(job for job in one.jobs if job.step.id == "upkeep_ice_look")
        for one in years_ahead(planned(data))
    ]
    assert [job.dates.opens for job in found] == [datetime.date(one, 1, 10) for one in FIVE]
    ends = [[(1, 21), (3, 10)]] * 2 + [[(1, 21), (1, 31)]] + [[(1, 21), (3, 10)]] * 2
    assert [
        [(day.month, day.day) for job_span in job.usable for day in job_span] for job in found
    ] == ends


def test_upkeep_ends_where_a_later_planting_takes_the_place() -> None:
    data = kept(SEASON - 3)
    again = dict(data["screens"]["screens"][0]["plantings"][0])
    del again["upkeep"]
    again |= {"id": "lane-again", "season": SEASON + 2}
    data["screens"]["screens"][0]["plantings"].append(again)
    seasons = years_ahead(planned(data))
    old = [
        any(job.step.id == "upkeep_ice_look" for job in one.jobs if job.planting_id == "lane-27")
        for one in seasons
    ]
    assert old == [True, True, False, False, False]


def test_what_hangs_on_a_question_names_it(plan: Plan) -> None:
    asked = [
        (one.season, job.step.id, job.state.question)
        for one in years_ahead(plan)
        for job in one.jobs
        if job.state.question is not None
    ]
    assert {season for season, _, _ in asked} >= {SEASON, SEASON + 1}
    assert all(question for _, _, question in asked)


def test_no_amount_is_planned_for_a_season_that_is_looked_at(plan: Plan) -> None:
    ahead = {job.id for job in plan.ahead}
    assert ahead
    assert not ahead & {line.job_id for line in plan.lines}
    later = {str(season) for season in FIVE[1:]}
    amounts = {key for key in numbers_of(plan) if key.split("/")[1] in later}
    assert {key.split("/")[0] for key in amounts} <= {"height"}


def test_upkeep_of_stands_walks_and_water_stands_once() -> None:
    plan = planned(kept_up())
    groups = every_year(plan.upkeep, plan.season)
    ids = [job.id for jobs in groups for job in jobs]
    assert sorted(ids) == sorted(job.id for job in plan.upkeep if job.season == SEASON)
    for jobs in groups:
        assert len({(job.step.name, job.dates.opens, job.dates.closes) for job in jobs}) == 1
    next_plan = make_plan(inventory_of(kept_up()), SEASON + 1, AS_OF)
    again = [
        [job.id.replace(str(SEASON + 1), str(SEASON)) for job in one]
        for one in every_year(next_plan.upkeep, next_plan.season)
    ]
    assert again == [[job.id for job in one] for one in groups]


def test_what_a_later_season_takes_is_what_its_jobs_take(plan: Plan) -> None:
    seasons = years_ahead(plan)
    # corner-28 sows switchgrass of lot sg-26a and partridge pea of pea-26; the clover sown
    # in season 2027 is sown no more
    assert {"sg-26a", "pea-26"} <= {one.id for one in seasons[1].takes}
    assert "wc-26" in {one.id for one in seasons[0].takes}
    assert "wc-26" not in {one.id for one in seasons[1].takes}


def test_contracts_stand_in_the_season_of_the_planting_they_pay_for(plan: Plan) -> None:
    shares = [[share.id for share in one.shares] for one in years_ahead(plan)]
    assert shares == [["lane-cost-share", "lane-add-on"], [], [], [], []]


def test_every_job_is_counted_once(plan: Plan) -> None:
    for one in years_ahead(plan):
        assert sum(group.count.value for group in one.work) == len({job.id for job in one.jobs})


def test_no_other_reader_is_given_the_years_ahead(demo: Inventory, plan: Plan) -> None:
    assert plan.ahead
    assert demo.readers
    assert all(seen_by(plan, reader).ahead == () for reader in demo.readers)
