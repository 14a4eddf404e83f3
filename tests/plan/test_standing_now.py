"""What the log says was killed stands no longer; in doubt a kill took a part, and counts against.

The rules are the project's own; each case is worked out by hand.
"""

import datetime
from typing import Any

import pytest

from generator.book.make import make_book
from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.standing.cover_by_season import grown_in
from generator.plan.standing.planting_curves import standing_growth
from generator.plan.standing.standing_now import StandsNow, stands_now
from generator.plan.standing.verdicts import hides_from, judged, looked_until
from tests.plan.planned import inventory_of
from tests.properties import SEASON, Data, small_property

AS_OF = datetime.date(2026, 11, 10)
KILL: Data = {"planting": "lane-27", "step": "autumn_kill"}


def property_with(*entries: Data, **screen: Any) -> Data:
    """The small property, an acre of sod seen in July, with older grass where it is asked for."""
    data = small_property()
    lane = data["screens"]["screens"][0]
    lane["cover_now"] = {"kind": "perennial_sod", "seen_on": "2026-07-12"}
    older = screen.pop("older", None)
    lane |= screen
    if older is not None:
        seed = lane["plantings"][0]["seed"]
        old = {"id": "lane-old", "season": older, "seed": seed, "method": "frost_seed"}
        lane["plantings"].append(old | {"steps": lane["plantings"][0]["steps"]})
    data["log"] = {"entries": list(entries)}
    return data


def plan_of(data: Data, day: datetime.date = AS_OF) -> Plan:
    return make_plan(inventory_of(data), SEASON, day)


def now(data: Data, day: datetime.date = AS_OF) -> StandsNow:
    plan = plan_of(data, day)
    return stands_now(plan, plan.places[0])


def kill(day: str = "2026-09-20", **job: Any) -> Data:
    return {"id": f"kill-{day}", "done_on": day, "job": KILL | job}


def test_sod_that_was_seen_and_not_killed_still_stands() -> None:
    found = now(property_with())
    assert found.seen is not None
    assert found.killed is None
    assert found.sown == ()


@pytest.mark.parametrize(
    ("job", "whole"),
    [
        ({"finished": True}, True),
        ({"finished": True, "area_ac": 1}, True),
        # of an acre, measured a tenth too large or not
        ({"finished": True, "area_ac": 0.95}, True),
        ({"finished": True, "area_ac": 0.5}, False),
        ({"finished": True, "part": "north half"}, False),
        ({"area_ac": 1}, False),
        ({}, False),
    ],
)
def test_a_kill_is_of_all_of_it_where_nothing_says_otherwise(job: Data, whole: bool) -> None:
    found = now(property_with(kill(**job)))
    assert found.killed is not None
    assert found.killed.whole == whole
    assert found.killed.on == datetime.date(2026, 9, 20)


def test_parts_together_are_all_of_it() -> None:
    first = kill("2026-09-18", area_ac=0.5, part="north")
    second = kill("2026-09-20", area_ac=0.5, part="south", finished=True)
    found = now(property_with(first, second)).killed
    assert found is not None
    assert found.whole


def test_spots_are_no_kill_of_all_of_it() -> None:
    entry = kill(finished=True) | {"sprayed": {"spot": True}}
    found = now(property_with(entry)).killed
    assert found is not None
    assert not found.whole


def test_a_decision_is_no_kill_and_neither_is_what_was_not_done() -> None:
    looked = {"id": "look", "done_on": "2026-10-04",
              "job": {"planting": "lane-27", "step": "look_again", "answer": "no"}}  # fmt: skip
    assert now(property_with(looked)).killed is None
    wrong = kill(finished=True)
    taken_back = {"id": "wrong", "done_on": "2026-09-21", "corrects": wrong["id"], "not_done": True}
    assert now(property_with(wrong, taken_back)).killed is None


def test_what_was_seen_after_a_kill_came_up_again() -> None:
    seen = {"kind": "perennial_sod", "seen_on": "2026-10-20"}
    assert now(property_with(kill(finished=True), cover_now=seen)).killed is None
    # on the day of the kill it was seen before it, as far as anybody knows
    same_day = {"kind": "perennial_sod", "seen_on": "2026-09-20"}
    assert now(property_with(kill(finished=True), cover_now=same_day)).killed is not None


def test_before_its_day_an_entry_kills_nothing() -> None:
    data = property_with(kill(finished=True))
    assert now(data, datetime.date(2026, 9, 19)).killed is None


def test_what_is_sown_after_the_kill_stands() -> None:
    sown = {"id": "sown", "done_on": "2027-02-10",
            "job": {"planting": "lane-27", "step": "frost_seeding", "finished": True}}  # fmt: skip
    found = now(property_with(kill(finished=True), sown), datetime.date(2027, 3, 1))
    assert [(day.isoformat(), planting.id) for day, planting in found.sown] == [
        ("2027-02-10", "lane-27")
    ]


def test_an_older_planting_that_was_killed_hides_nobody_and_covers_nothing() -> None:
    lane = {"older": 2022, "soil": "ordinary", "height_needed_ft": 2}
    standing = plan_of(property_with(**lane))
    place = standing.places[0]
    # a season before the new one is sown the old grass is what stands
    assert [grown.planting.id for grown in grown_in(standing, SEASON - 1)] == ["lane-old"]
    for whole, job in ((True, {"finished": True}), (False, {"area_ac": 0.4, "part": "north end"})):
        plan = plan_of(property_with(kill("2026-08-20", **job), **lane))
        stands = [grown.planting.id for grown in grown_in(plan, SEASON - 1)]
        # a part that was killed leaves the rest on the ground, and none of it to count on
        assert stands == ([] if whole else ["lane-old"])
        assert "lane-old" not in {each.planting.id for each in standing_growth(plan, place)}


def test_a_planting_that_is_killed_again_and_not_sown_again_stands_no_longer() -> None:
    """The lane is sown in February 2027, and its ground killed once more in September 2028."""
    lane = {"soil": "ordinary", "height_needed_ft": 2}
    seeding = {"planting": "lane-27", "step": "frost_seeding", "finished": True}
    sown: Data = {"id": "sown", "done_on": "2027-02-10", "job": seeding}
    first, again = kill(finished=True), kill("2028-09-20", finished=True)
    after = datetime.date(2028, 11, 10)

    def told(*entries: Data) -> tuple[list[str], list[str]]:
        plan = plan_of(property_with(*entries, **lane), after)
        standing = standing_growth(plan, plan.places[0])
        return (
            [grown.planting.id for grown in grown_in(plan, SEASON + 2)],
            [each.planting.id for each in standing],
        )

    assert told(first, sown) == (["lane-27"], ["lane-27"])
    assert told(first, sown, again) == ([], [])
    # a part of it leaves the rest on the ground, and none of it to count on
    part = kill("2028-09-20", area_ac=0.4, part="north end")
    assert told(first, sown, part) == (["lane-27"], [])
    # sown once more it stands
    resown = sown | {"id": "resown", "done_on": "2028-10-20"}
    assert told(first, sown, again, resown) == (["lane-27"], ["lane-27"])


def test_without_a_record_of_its_sowing_a_planting_stands_from_its_season_on() -> None:
    lane = {"older": 2022, "soil": "ordinary", "height_needed_ft": 2}

    def standing(day: str) -> list[str]:
        entry = kill(day, finished=True, planting="lane-old")
        plan = plan_of(property_with(entry, **lane))
        return [grown.planting.id for grown in grown_in(plan, SEASON - 1)]

    # season 2022 ends on August 31: what was killed in it was killed before the sowing
    assert standing("2022-08-20") == ["lane-old"]
    assert standing("2022-09-20") == []


def test_a_part_killed_again_is_not_all_of_it() -> None:
    part = kill("2028-09-20", area_ac=0.4, part="north end")
    found = now(property_with(kill(finished=True), part), datetime.date(2028, 11, 10)).killed
    assert found is not None
    assert (found.on, found.whole) == (datetime.date(2026, 9, 20), True)


def test_a_screen_hides_from_the_first_day_after_which_it_always_does() -> None:
    """By hand, upland on ordinary soil: low 36 in, then 48 in in fall; winter leaves 0.6."""
    screen = {"soil": "ordinary", "height_needed_ft": 2}
    data = property_with(**screen)
    data["seed"]["lots"][0]["ecotype"] = "upland"
    del data["log"]
    plan = plan_of(data)
    place = plan.places[0]
    # 36 in hide in fall 2028, the 21.6 in of that winter do not, 28.8 in of the next do
    assert hides_from(plan, place) == datetime.date(2029, 11, 15)
    assert looked_until(plan) == datetime.date(2031, 1, 15)
    assert all(one.verdict != "hides" for one in judged(plan, place) if one.day.month == 1)
    data["screens"]["screens"][0]["height_needed_ft"] = 3
    taller = plan_of(data)
    assert hides_from(taller, taller.places[0]) is None


def test_the_page_of_the_place_says_what_was_killed() -> None:
    def page(*entries: Data) -> str:
        book = make_book(plan_of(property_with(*entries)))
        return next(one.markdown for one in book.pages if one.address == "places/lane.md")

    assert "Nothing that is counted on" in page(kill(finished=True))
    assert "Part of it was killed" in page(kill(area_ac=0.3))
    assert "the rest still grows" in page(kill(area_ac=0.3))
    assert "killed" not in page().split("## Sprayed and done here")[0]
