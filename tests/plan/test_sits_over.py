"""Sits of the log beside what their wind was expected to be, and counted after ten."""

from generator.plan.sits.sits_over import SitOver, counted_by_wind, sits_over
from tests.plan.planned import planned
from tests.properties import Data, small_property

NONE: Data = {}


def land(*sats: Data, **stand: object) -> Data:
    data = small_property()
    oak = {"id": "oak", "name": "Oak", "lies": "open"}
    oak |= {"beds": [{"toward": 160, "distance_yd": 180}]}
    data["stands"] = {"stands": [oak | stand, {"id": "elm", "name": "Elm"}]}
    walks = [
        {"id": "walk", "name": "Lane walk", "serves": ["oak"], "winds_for": ["NW"]},
        {"id": "bad", "name": "Bad walk", "serves": ["oak"], "winds_against": ["NW"]},
    ]
    data["routes"] = {"routes": walks}
    data["log"] = {
        "entries": [
            {"id": f"e-{number}", "done_on": f"2026-0{1 + number // 28}-{1 + number % 28:02}",
             "sat": {"stand": "oak"} | sat}
            for number, sat in enumerate(sats)
        ]
    }  # fmt: skip
    return data


def over(data: Data) -> list[SitOver]:
    plan = planned(data)
    return list(sits_over(plan.land.stands[0], plan.land.routes, plan.entries))


def test_a_measured_wind_is_held_against_the_half_angle_of_its_speed() -> None:
    # By hand, from the reference's half-angles: 11.25 of the sector, 20 of the wide plume, and of
    # wandering 10 at 8 to 12 mph, told to the nearest half of a sector: 45 degrees. From 310 the
    # downwind line runs to 130, and the beds at 160 lie 30 off it; from 260, to 80, and 80 off it.
    ten = {"wind_mph": 10}
    told = over(land(ten | {"wind_from_deg": 260}, ten | {"wind_from_deg": 310}, NONE))
    assert [one.expected.word if one.expected else None for one in told] == [
        None,
        "wrong wind",
        "OK",
    ]
    # too slow to have a direction in the open
    slow = {"wind_mph": 3, "wind_from_deg": 260}
    assert [one.expected.word for one in over(land(slow)) if one.expected] == ["drifts"]


def test_the_walk_that_was_walked_counts_where_it_is_written_down() -> None:
    wind = {"wind_from_deg": 315, "wind_mph": 10}
    away = [{"toward": 45, "distance_yd": 180}]
    plain, walked, wrong = (
        over(land(wind | walk, beds=away))[0].expected
        for walk in (NONE, {"walk_in": "walk"}, {"walk_in": "bad"})
    )
    assert plain is not None
    assert walked is not None
    assert wrong is not None
    assert (plain.word, plain.walk) == ("OK", None)
    assert (walked.word, walked.walk) == ("OK", "walk")
    assert (wrong.word, wrong.of_walk) == ("wrong wind", True)


def test_ten_sits_with_a_measured_wind_are_counted_by_it_and_nine_are_not() -> None:
    northwest = {"wind_from_deg": 320, "wind_mph": 9, "deer_count": 3, "winded_count": 1}
    south = {"wind_from_deg": 181, "wind_mph": 9}
    sats = [*[northwest] * 6, *[south] * 3, {"deer_count": 9}]
    assert counted(land(*sats)) == []
    # a sit at another stand is none at this one
    assert counted(land(*sats, south | {"stand": "elm"})) == []
    assert counted(land(*sats, south | {"deer_count": 2})) == [
        ("south", 4, 2, None),
        ("northwest", 6, 18, 6),
    ]


def counted(data: Data) -> list[tuple[str, float, float | None, float | None]]:
    plan = planned(data)
    return [
        (one.wind, one.sits.value, one.deer.value if one.deer else None,
         one.winded.value if one.winded else None)
        for one in counted_by_wind(plan.land.stands[0], plan.entries)
    ]  # fmt: skip
