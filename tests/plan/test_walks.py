"""Cover that goes: a crop beside a walk is cut, ice lays a screen down; and what brings it back.

The heights by hand are those of test_verdicts: upland switchgrass in its third season, low 48 in
and typical 66 in on Nov 15; winter leaves 0.6 of the low and 0.85 of the typical.
"""

import datetime
from pathlib import Path
from typing import Any

import pytest

from generator.inventory.load import load_inventory
from generator.plan.build.season_plan import make_plan
from generator.plan.findings.about_places import PlaceCaution, PlaceNote
from generator.plan.model.place import OpenWalk
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.plan.standing.heights import heights_on
from generator.plan.standing.planting_curves import standing_growth
from generator.plan.standing.verdicts import judged
from tests.plan.planned import inventory_of
from tests.plan.test_verdicts import ALL_ALONG, property_of
from tests.properties import Data, small_property

DAY = datetime.date
DEMO = Path(__file__).resolve().parents[2] / "demo_property"
WALK_OPEN, LAID_DOWN = PlaceCaution.WALK_OPEN.value.code, PlaceCaution.LAID_DOWN.value.code
WALK_OPENS, NO_DAY_OF_CUT = PlaceNote.WALK_OPENS.value.code, PlaceNote.NO_DAY_OF_CUT.value.code


def walked(*entries: Data, beside: str = "walk", **crop: Any) -> Data:
    """A walk to two stands, a second way to one of them, and corn beside the walk or its screen."""
    data = small_property()
    data["stands"] = {"stands": [{"id": "oak", "name": "Oak"}, {"id": "elm", "name": "Elm"}]}
    data["routes"] = {
        "routes": [
            {"id": "walk", "name": "Walk", "serves": ["oak", "elm"]},
            {"id": "bank", "name": "Bank way", "serves": ["oak"]},
        ]
    }
    screen = data["screens"]["screens"][0] | {"hides": ["walk"]}
    data["screens"]["screens"][0] = screen
    owner = data["routes"]["routes"][0] if beside == "walk" else screen
    owner["crops_beside"] = [{"id": "corn", "kind": "field corn"} | crop]
    data["log"] = {"entries": [{"id": f"e{n}"} | one for n, one in enumerate(entries)]}
    return data


def plan_on(day: str, data: Data) -> Plan:
    return make_plan(inventory_of(data), 2027, DAY.fromisoformat(day))


def told(plan: Plan, subject: str = "walk") -> list[str]:
    return [one.code for one in plan.findings_on(subject)]


CUT: Data = {"done_on": "2026-10-08", "harvested": {"crops": ["corn"], "stubble_in": 11}}
LOOKED: Data = {"sight_checked": {"route": "walk", "seen_from": "the road", "hidden": True}}


@pytest.mark.parametrize(("as_of", "code"), [("2026-10-09", WALK_OPENS), ("2026-10-10", WALK_OPEN)])
def test_a_walk_is_open_from_the_day_its_crop_is_meant_to_be_cut(as_of: str, code: str) -> None:
    plan = plan_on(as_of, walked(harvest_planned_on="2026-10-10"))
    (walk,) = plan.open_walks
    assert (walk.since, walk.known) == (DAY(2026, 10, 10), "planned")
    assert told(plan) == [code]
    (found,) = plan.findings_on("walk")
    assert "No other walk to Elm is known that you are not seen on." in found.words
    assert "Another way in to Oak: Bank way (nobody has looked" in found.words


def test_the_log_says_when_it_was_cut_and_what_is_left_of_it() -> None:
    data = walked(CUT, harvest_planned_on="2026-10-20", harvested_on="2026-10-15")
    (walk,) = plan_on("2026-10-12", data).open_walks
    assert (walk.since, walk.known) == (DAY(2026, 10, 8), "logged")
    assert walk.stubble_in is not None
    assert walk.stubble_in.value == 11
    # before the entry counts, what is typed does
    (typed,) = plan_on("2026-10-07", data).open_walks
    assert (typed.since, typed.known) == (DAY(2026, 10, 15), "typed")


def test_a_look_since_the_cut_settles_it_and_one_before_does_not() -> None:
    before = CUT | LOOKED | {"done_on": "2026-10-08"}
    early, late = LOOKED | {"done_on": "2026-10-01"}, LOOKED | {"done_on": "2026-10-09"}
    assert told(plan_on("2026-10-12", walked(CUT, early))) == [WALK_OPEN]
    assert told(plan_on("2026-10-12", walked(CUT, late))) == []
    assert told(plan_on("2026-10-12", walked(before))) == []
    seen = LOOKED["sight_checked"] | {"hidden": False}
    again = {"done_on": "2026-10-11", "sight_checked": seen}
    assert told(plan_on("2026-10-12", walked(CUT, late, again))) == [WALK_OPEN]


def ways_in(plan: Plan) -> list[tuple[str, str, bool]]:
    return [(way.stand, way.route, way.is_hidden) for way in plan.open_walks[0].ways]


def test_another_way_in_is_one_on_which_nobody_was_seen() -> None:
    look: Data = {"done_on": "2026-09-01", "sight_checked": {"route": "bank", "seen_from": "road"}}
    assert ways_in(plan_on("2026-10-12", walked(CUT, look))) == [("oak", "bank", False)]
    look["sight_checked"]["hidden"] = True
    assert ways_in(plan_on("2026-10-12", walked(CUT, look))) == [("oak", "bank", True)]
    look["sight_checked"]["hidden"] = False
    assert ways_in(plan_on("2026-10-12", walked(CUT, look))) == []
    opened = walked(CUT)
    beans = {"id": "beans", "kind": "soybeans", "harvested_on": "2026-09-20"}
    opened["routes"]["routes"][1]["crops_beside"] = [beans]
    assert ways_in(plan_on("2026-10-12", opened)) == []


def test_a_crop_of_which_nobody_knows_when_it_is_cut_is_asked_about() -> None:
    assert told(plan_on("2026-10-12", walked())) == [NO_DAY_OF_CUT]
    assert told(plan_on("2026-10-12", walked(beside="lane")), "lane")[-1:] == [NO_DAY_OF_CUT]
    assert NO_DAY_OF_CUT not in told(plan_on("2026-10-12", walked(CUT)))


def test_of_two_crops_the_first_to_go_opens_the_walk() -> None:
    data = walked(harvest_planned_on="2026-11-01")
    crops = data["routes"]["routes"][0]["crops_beside"]
    crops.append({"id": "beans", "kind": "soybeans", "harvest_planned_on": "2026-09-25"})
    (walk,) = plan_on("2026-08-20", data).open_walks
    assert (walk.since, walk.crop) == (DAY(2026, 9, 25), "soybeans")


def beside_a_screen(needed_ft: float) -> tuple[OpenWalk, ...]:
    """Walks opened by corn cut beside a screen in its third season, by the height it needs."""
    data = property_of(screen={"height_needed_ft": needed_ft, "hides": ["walk"]})
    data["routes"] = {"routes": [{"id": "walk", "name": "Walk"}]}
    crop = {"id": "corn", "kind": "field corn", "harvested_on": "2029-10-08"}
    data["screens"]["screens"][0]["crops_beside"] = [crop]
    return make_plan(inventory_of(data), 2030, DAY(2029, 10, 12)).open_walks


def test_a_screen_that_hides_by_itself_does_without_its_crop() -> None:
    assert beside_a_screen(4) == ()
    (walk,) = beside_a_screen(4.1)
    assert (walk.route, walk.beside) == ("walk", "Lane screen")


def test_a_partner_is_told_from_which_day_and_not_of_what() -> None:
    data = walked(CUT)
    data["readers"]["readers"].append(
        {"id": "friend", "kind": "partner", "jobs": [], "stands": ["oak"], "routes": ["walk"]}
    )
    inventory = inventory_of(data)
    plan = make_plan(inventory, 2027, DAY(2026, 10, 12))
    seen = seen_by(plan, inventory.readers[-1])
    (walk,) = seen.open_walks
    assert (walk.route, walk.since) == ("walk", DAY(2026, 10, 8))
    assert (walk.crop, walk.stands, walk.ways, walk.stubble_in) == ("", (), (), None)
    assert [one.code for one in seen.findings_on("walk")] == [WALK_OPEN]
    assert seen_by(plan, inventory.readers[0]).open_walks == ()


def test_the_corn_beside_the_ridge_walk_of_the_demo_is_cut_on_the_tenth_of_october() -> None:
    loaded = load_inventory(DEMO).inventory
    assert loaded is not None
    before, after = (make_plan(loaded, 2027, DAY(2026, month, 20)) for month in (8, 10))
    assert told(before, "ridge-walk") == [WALK_OPENS]
    assert told(after, "ridge-walk") == [WALK_OPEN]
    (walk,) = after.open_walks
    assert (walk.since, ways_in(after)) == (
        DAY(2026, 10, 10),
        [("north-stand", "back-way", False)],
    )


def low_in(plan: Plan, day: datetime.date) -> float:
    (growing,) = standing_growth(plan, plan.place("lane"))
    found = heights_on(growing, day, ("low",))
    assert found is not None
    return found.by_curve["low"].value


def iced(*entries: Data, as_of: datetime.date, season: int = 2030, **planting: Any) -> Plan:
    data = property_of(*entries, screen={"height_needed_in": 40})
    data["screens"]["screens"][0]["plantings"][0] |= planting
    return make_plan(inventory_of(data), season, as_of)


def ice(day: str, by: str = "ice") -> Data:
    return {"done_on": day, "laid_down": {"places": ["lane"], "by": by}}


def tall(day: str, height_in: float) -> Data:
    stations = [one | {"height_in": height_in} for one in ALL_ALONG]
    return {"done_on": day, "measured": {"planting": "lane-27", "stations": stations}}


@pytest.mark.parametrize("by", ["ice", "wet_snow"])
def test_what_lies_down_in_fall_has_its_winter_early(by: str) -> None:
    """0.6 of 48 in is 28.8 in, on Nov 15 as on Jan 15; before the ice it is 48 in."""
    as_of, fall = DAY(2029, 11, 12), DAY(2029, 11, 15)
    sound, lying = iced(as_of=as_of), iced(ice("2029-11-05", by), as_of=as_of)
    assert low_in(sound, fall) == pytest.approx(48)
    assert low_in(lying, fall) == pytest.approx(28.8)
    assert low_in(lying, DAY(2029, 11, 4)) == pytest.approx(48)
    assert [judged(plan, plan.place("lane"))[0].verdict for plan in (sound, lying)] == [
        "hides",
        "not_tall_enough",
    ]
    assert LAID_DOWN in told(lying, "lane")
    assert LAID_DOWN not in told(sound, "lane")


def test_a_winter_share_of_the_owner_s_own_falls_to_the_low_one_until_it_is_measured() -> None:
    """0.9 of 48 in is 43.2 in; laid down 0.6 of it, 28.8 in; measured as expected, 43.2 in."""
    as_of, winter = DAY(2030, 1, 10), DAY(2030, 1, 15)
    own = {"winter_share_pct": 90}
    lying, expected_in = ice("2029-12-18"), 0.9 * 66
    assert low_in(iced(as_of=as_of, **own), winter) == pytest.approx(43.2)
    assert low_in(iced(lying, as_of=as_of, **own), winter) == pytest.approx(28.8)
    measured = iced(lying, tall("2030-01-04", expected_in), as_of=as_of, **own)
    assert low_in(measured, winter) == pytest.approx(43.2)
    assert LAID_DOWN not in told(measured, "lane")
    # measured before the ice it says nothing of what lies there now
    before = iced(lying, tall("2029-12-10", expected_in), as_of=as_of, **own)
    assert low_in(before, winter) == pytest.approx(28.8)
    assert LAID_DOWN in told(before, "lane")


def test_how_low_it_lay_says_nothing_of_next_year_s_growth() -> None:
    as_of, next_fall = DAY(2030, 9, 2), DAY(2030, 11, 15)
    lay = tall("2030-01-04", 20)
    assert low_in(iced(ice("2029-12-18"), lay, as_of=as_of), next_fall) == pytest.approx(48)
    assert low_in(iced(lay, as_of=as_of), next_fall) < 48
    assert LAID_DOWN not in told(iced(ice("2029-12-18"), as_of=as_of), "lane")
