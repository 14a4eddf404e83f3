"""Sits: what lies in the arc of an occupied stand, two that come together, and the light."""

import datetime
from itertools import product

import pytest

from generator.plan.findings.about_readers import SitNote, SitStop
from generator.plan.model.plan import Plan
from generator.plan.model.sits import KEEP_AWAY, away_words
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import KILL, inventory_of, job_of, planned
from tests.properties import Data, small_property

# By hand: a thousandth of a degree of latitude is 364 to 365 ft at 41 north, of longitude 276 ft.
LAT, LON = 41.0, -93.0
NORTH_FT, EAST_FT = 364_500, 276_000
# Sep 16 is a day on which the fall kill of the small property is open.
DAY = "2026-09-16"


def at(east_ft: float, north_ft: float) -> list[float]:
    """A point so far from the corner of an invented property, to a hair."""
    return [LAT + north_ft / NORTH_FT, LON + east_ft / EAST_FT]


def sit(name: str, stand: str, **more: str) -> Data:
    hours = {"from_time": "15:00", "until_time": "19:00"}
    return {"id": name, "sits_on": DAY, "stand": stand, "person": "me"} | hours | more


def land(*sits: Data, **stands: Data) -> Data:
    """Two stands 2,000 ft apart from west to east, a walk to each from the north, and a screen.

    The screen lies 300 ft north of the western stand, which may shoot 600 ft to the north.
    """
    data = small_property()
    west = {"id": "west", "name": "West ladder", "at_lat_lon": at(0, 0),
            "arc_of_fire": {"from_deg": 300, "to_deg": 60, "reach_yd": 200}}  # fmt: skip
    east = {"id": "east", "name": "East ladder", "at_lat_lon": at(2000, 0),
            "arc_of_fire": {"from_deg": 60, "to_deg": 120, "reach_yd": 200}}  # fmt: skip
    data["stands"] = {"stands": [west | stands.get("west", {}), east | stands.get("east", {})]}
    data["routes"] = {"routes": [
        {"id": "to-west", "name": "West walk", "serves": ["west"],
         "line_lat_lon": [at(-900, 0), at(0, 0)]},
        {"id": "to-east", "name": "East walk", "serves": ["east"],
         "line_lat_lon": [at(2000, 900), at(2000, 0)]},
        {"id": "across", "name": "Cross walk", "serves": ["east"],
         "line_lat_lon": [at(-900, 400), at(2000, 400), at(2000, 0)]},
    ]}  # fmt: skip
    screen = data["screens"]["screens"][0]
    screen |= {"line_lat_lon": [at(-363, 300), at(363, 300)], "known_as": "Strip 1"}
    data["sits"] = {"sits": list(sits)}
    return data


def without_arc(data: Data, stand: str) -> Data:
    next(one for one in data["stands"]["stands"] if one["id"] == stand).pop("arc_of_fire")
    return data


def codes(plan: Plan, sit_id: str) -> set[str]:
    return {one.code for one in plan.findings_on(sit_id) if one.severity == "stop"}


def told(plan: Plan, thing: str) -> str:
    return away_words(plan.away_on(thing))


HOURS = "Sep 16, 2026, 3 to 7 p.m."


def test_what_lies_in_the_arc_is_kept_clear_and_what_lies_elsewhere_is_not() -> None:
    plan = planned(land(sit("s", "west", walk_in="to-west", walk_out="to-west")))
    assert {one: told(plan, one) for one in ("lane", "across", "west", "to-west")} == dict.fromkeys(
        ("lane", "across", "west", "to-west"), HOURS
    )
    assert [told(plan, one) for one in ("east", "to-east")] == ["", ""]
    assert all(keep.is_known for keep in plan.keep_away)
    # the screen lies north: from the eastern stand, which shoots east, nothing of it is reached
    other = planned(land(sit("s", "east", walk_in="to-east", walk_out="to-east")))
    assert told(other, "lane") == ""
    assert told(other, "across") == HOURS  # it ends at the stand


def test_what_points_may_be_off_counts_as_in_the_arc_and_never_less_than_a_phone_is_off() -> None:
    # By hand: the arc ends 600 ft out at 60 degrees, so 520 ft east; the walk runs 2,000 ft east,
    # 1,480 ft from there. A phone at the stand is off by 13 m, 43 ft in whole feet.
    for off_ft, expected in ((1400, ""), (1450, HOURS)):
        data = land(sit("s", "west"))
        data["routes"]["routes"][1]["off_ft"] = off_ft
        assert told(planned(data), "to-east") == expected
    # 600 ft north of the stand the arc ends; 70 ft beyond it a walk is within 86 ft
    data = land(sit("s", "west"))
    data["routes"]["routes"][1] |= {"line_lat_lon": [at(-90, 670), at(90, 670)], "off_ft": 2}
    data["stands"]["stands"][0]["got"] = "surveyed"
    assert told(planned(data), "to-east") == HOURS


def test_turning_the_whole_property_by_a_quarter_changes_nothing() -> None:
    upright = land(sit("s", "west"), sit("t", "east", walk_in="across"))
    turned = land(sit("s", "west"), sit("t", "east", walk_in="across"))
    for stand in turned["stands"]["stands"]:
        arc = stand["arc_of_fire"]
        arc["from_deg"], arc["to_deg"] = ((arc[name] + 90) % 360 for name in ("from_deg", "to_deg"))
        stand["at_lat_lon"] = _turned(stand["at_lat_lon"])
    lines = [*turned["routes"]["routes"], turned["screens"]["screens"][0]]
    for thing in lines:
        thing["line_lat_lon"] = [_turned(point) for point in thing["line_lat_lon"]]
    plans = [planned(data) for data in (upright, turned)]
    away = [{(one.subject, one.hours, one.is_known) for one in plan.keep_away} for plan in plans]
    assert away[0] == away[1]
    assert codes(plans[0], "t") == codes(plans[1], "t") != set()


def _turned(point: list[float]) -> list[float]:
    east, north = (point[1] - LON) * EAST_FT, (point[0] - LAT) * NORTH_FT
    return at(north, -east)


def test_the_sheet_of_a_job_in_the_arc_says_the_hours_and_keeps_its_amounts() -> None:
    plan = planned(land(sit("s", "west")))
    job = job_of(plan)
    (line,) = (one for one in job.safety if one.key == KEEP_AWAY)
    assert line.text == HOURS
    assert job.mix is not None
    # on a day on which the job is not open the sheet says nothing of it
    later = planned(land(sit("s", "west", sits_on="2027-06-01")))
    assert KEEP_AWAY not in {one.key for one in job_of(later).safety}
    assert told(later, "lane") == "Jun 1, 2027, 3 to 7 p.m."


def test_a_sit_that_is_over_keeps_nobody_away() -> None:
    plan = planned(land(sit("s", "west", sits_on="2026-08-19")))
    assert (plan.sits, plan.keep_away) == ((), ())


def test_what_has_no_points_counts_as_in_the_way_and_is_told_once() -> None:
    data = land(sit("s", "west"), sit("t", "west", sits_on="2026-09-17"))
    for route in data["routes"]["routes"][1:]:
        del route["line_lat_lon"]
    plan = planned(data)
    assert told(plan, "to-east") == "Sep 16 to 17, 2026, 3 to 7 p.m."
    assert not any(keep.is_known for keep in plan.away_on("to-east"))
    notes = [one for one in plan.findings if one.code == SitNote.MAY_LIE_IN_ARC.value.code]
    assert [one.to_type for one in notes] == ["Type line_lat_lon of walks in routes.yaml."]
    assert "East walk and Cross walk" in notes[0].words
    typed = planned(land(sit("s", "west"), sit("t", "west", sits_on="2026-09-17")))
    assert SitNote.MAY_LIE_IN_ARC.value.code not in {one.code for one in typed.findings}


def test_without_an_arc_all_ground_counts_and_the_note_says_how_to_settle_it() -> None:
    plan = planned(without_arc(land(sit("s", "west")), "west"))
    assert {told(plan, one) for one in ("lane", "east", "to-east", "across")} == {HOURS}
    (note,) = (one for one in plan.findings if one.code == SitNote.NO_ARC.value.code)
    assert note.to_type == "Type arc_of_fire of the stand west in stands.yaml."
    # points of walks settle nothing before the arc is typed
    assert SitNote.MAY_LIE_IN_ARC.value.code not in {one.code for one in plan.findings}
    own = {"from_deg": 170, "to_deg": 190, "reach_yd": 50}
    settled = planned(without_arc(land(sit("s", "west") | {"arc_of_fire": own}), "west"))
    assert SitNote.NO_ARC.value.code not in {one.code for one in settled.findings}
    assert told(settled, "lane") == ""


def test_two_at_one_stand_at_once_are_a_stop_on_both() -> None:
    one = sit("s", "west", walk_in="to-west", walk_out="to-west")
    plan = planned(land(one, one | {"id": "t", "from_time": "18:30", "until_time": "20:00"}))
    both = {SitStop.TWO_AT_ONE_STAND.value.code}
    assert codes(plan, "s") == codes(plan, "t") == both
    # who is back when the other leaves is not out with them
    apart = planned(land(one, one | {"id": "t", "from_time": "19:00", "until_time": "20:00"}))
    assert codes(apart, "s") == codes(apart, "t") == set()


def test_a_walk_through_the_arc_of_an_occupied_stand_is_a_stop_on_both() -> None:
    west = sit("s", "west", walk_in="to-west", walk_out="to-west")
    through = {SitStop.WALK_THROUGH_ARC.value.code}
    across = planned(land(west, sit("t", "east", walk_in="across", walk_out="to-east")))
    assert codes(across, "s") == codes(across, "t") == through
    (words,) = {one.words for one in across.findings_on("t")}
    assert "Cross walk" in words
    clear = planned(land(west, sit("t", "east", walk_in="to-east", walk_out="to-east")))
    assert codes(clear, "s") == codes(clear, "t") == set()
    another_day = sit("t", "east", walk_in="across", walk_out="across", sits_on="2026-09-17")
    assert codes(planned(land(west, another_day)), "t") == set()


def test_two_arcs_that_reach_each_other_are_a_stop() -> None:
    sits = [
        sit("s", "west", walk_in="to-west", walk_out="to-west"),
        sit("t", "east", walk_in="to-east", walk_out="to-east"),
    ]
    toward = {"arc_of_fire": {"from_deg": 80, "to_deg": 100, "reach_ft": 1200}}
    back = {"arc_of_fire": {"from_deg": 260, "to_deg": 280, "reach_ft": 900}}
    reach = SitStop.ARCS_REACH.value.code
    assert reach in codes(planned(land(*sits, west=toward, east=back)), "s")
    # 1,200 and 600 of 2,000 ft leave 200, more than two phones are off: 2 x 13 m are 85 ft
    short = back | {"arc_of_fire": back["arc_of_fire"] | {"reach_ft": 600}}
    assert reach not in codes(planned(land(*sits, west=toward, east=short)), "s")
    nearly = back | {"arc_of_fire": back["arc_of_fire"] | {"reach_ft": 730}}
    assert reach in codes(planned(land(*sits, west=toward, east=nearly)), "s")


def test_two_out_at_once_whom_nothing_typed_keeps_apart_are_a_stop_until_it_is_typed() -> None:
    sits = [
        sit("s", "west", walk_in="to-west", walk_out="to-west"),
        sit("t", "east", walk_in="to-east"),
    ]
    doubt = {SitStop.NOT_KNOWN_APART.value.code}
    plan = planned(land(*sits))
    assert codes(plan, "s") == codes(plan, "t") == doubt
    assert {one.to_type for one in plan.findings_on("s")} == {"Type walk_out of the sit t."}
    sits[1]["walk_out"] = "to-east"
    assert codes(planned(land(*sits)), "s") == set()
    plan = planned(without_arc(land(*sits), "east"))
    assert codes(plan, "s") == doubt
    assert "arc_of_fire of the stand east" in plan.findings_on("s")[0].to_type


@pytest.mark.parametrize("reader", ["hired", "friend"])
def test_others_are_told_the_hours_of_a_private_sit_and_nothing_else(reader: str) -> None:
    data = land(sit("s", "west", note="thorn"), sit("t", "west", from_time="18:00"))
    partner = {"id": "friend", "kind": "partner", "stands": ["east"], "routes": ["across"],
               "jobs": [{"planting": "lane-27", "steps": ["autumn_kill"]}]}  # fmt: skip
    data["readers"]["readers"].append(partner)
    inventory = inventory_of(data)
    seen = seen_by(planned(data), next(one for one in inventory.readers if one.id == reader))
    assert seen.sits == ()
    told_on = {one.subject.kind: (away_words([one]), one.sit_ids) for one in seen.keep_away}
    places = {"place": (HOURS, ())}
    assert told_on == (places if reader == "hired" else places | {"route": (HOURS, ())})
    assert all(one.is_known for one in seen.keep_away)
    kill = next(job for job in seen.jobs if job.step.id == "autumn_kill")
    (line,) = (one for one in kill.safety if one.key == KEEP_AWAY)
    assert line.text == HOURS
    assert [one for one in seen.findings if one.subject.kind == "sit"] == []


def test_a_partner_sees_sits_at_what_is_handed_over_and_which_are_their_own() -> None:
    theirs = sit("t", "east", walk_in="across", walk_out="across", reader="friend")
    del theirs["person"]
    data = land(sit("s", "west"), theirs, sit("u", "east", sits_on="2026-09-18"))
    partner = {"id": "friend", "kind": "partner", "jobs": [], "stands": ["east"],
               "routes": ["across"]}  # fmt: skip
    data["readers"]["readers"].append(partner)
    inventory = inventory_of(data)
    friend = next(one for one in inventory.readers if one.id == "friend")
    seen = seen_by(planned(data), friend)
    assert [(one.is_readers, one.who, one.legal) for one in seen.sits] == [
        (True, None, None),
        (False, None, None),
    ]
    # their walk goes through the arc of the stand that is not handed to them
    (stop,) = (one for one in seen.findings if one.subject.id == seen.sits[0].id)
    assert stop.code == SitStop.WALK_THROUGH_ARC.value.code
    assert "West" not in stop.words + stop.cure + stop.to_type
    # their own sit keeps them off nothing; the stand is taken on the day of the other
    days = {(one.subject.kind, one.day.day) for one in seen.keep_away}
    assert days == {("route", 16), ("stand", 18), ("route", 18)}


@pytest.mark.parametrize(("day", "ends"), [("2026-10-31", (18, 24)), ("2026-11-01", (17, 23))])
def test_the_clock_of_the_day_counts_on_either_side_of_its_change(
    day: str, ends: tuple[int, int]
) -> None:
    # By hand, as an almanac works it out: the sun stands 14.2 degrees south of the equator and runs
    # 16.4 minutes ahead. cos H = 0.8693 x 0.2530 - 0.0145 / 0.7316 = 0.200, so H is 78.5 degrees or
    # 314 minutes. Noon at 93 W is 11:55.6 standard time, sunset 5:09, a quarter of an hour on 5:24;
    # by the clock of summer 6:24. The day after, the sun sets a minute earlier.
    data = land(sit("s", "west", sits_on=day))
    data["property"] |= {"location_lat_lon": [41.0, -93.0], "time_zone": "America/Chicago"}
    data["dates"] = {
        "dates": [{"id": "bow", "kind": "hunting", "first": "2026-09-15", "last": "2027-01-10",
                   "places": "all"}],
        "shooting_hours": [{"id": "hours", "dates": "bow", "begins": "sunrise",
                            "begins_before_minutes": 30, "ends": "sunset",
                            "ends_after_minutes": 15, "source": "invented",
                            "looked_up_on": "2026-08-01"}],
    }  # fmt: skip
    (found,) = planned(data).sits
    assert found.is_hunted
    assert found.legal is not None
    assert abs(_minutes(found.legal[1].time()) - _minutes(datetime.time(*ends))) <= 1


def _minutes(time: datetime.time) -> int:
    return time.hour * 60 + time.minute


def test_a_day_without_hunting_dates_is_said() -> None:
    (found,) = planned(land(sit("s", "west"))).sits
    assert (found.is_hunted, found.legal, found.sunset) == (False, None, None)


def test_the_sits_of_a_job_s_place_do_not_depend_on_the_order_of_the_file() -> None:
    sits = [sit("s", "west"), sit("t", "east"), sit("u", "west", sits_on="2026-09-18")]
    orders = [planned(land(*some)) for some in (sits, sits[::-1])]
    assert orders[0].keep_away == orders[1].keep_away
    assert [one.id for one in orders[0].sits] == [one.id for one in orders[1].sits]
    for plan, name in product(orders, ("s", "t", "u")):
        assert codes(plan, name) == codes(orders[0], name)
    assert KILL in {job.id for job in orders[0].jobs}
