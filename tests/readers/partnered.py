"""A partner on invented property data: stands and walks handed over and kept back, looks, dates."""

from __future__ import annotations

import random
from typing import Any

from tests.shapes import line_of

Data = dict[str, Any]

PARTNER = "friend-who-hunts"
# A look long ago, one of the summer: hunting of any date in the season finds them old or good.
LOOKED_OVER = ("2024-05-01", "2026-07-12")
STEPS = {
    "stands": ("strap_release", "lane_cutting", "stand_check"),
    "routes": ("storm_check", "cut_walk", "rake_walk"),
}


def with_partner(data: Data, chance: random.Random) -> Data:
    """Return the property with a partner, who is handed jobs, stands and walks; it is changed.

    At least one stand and one walk are handed over and one of each is kept back. A walk handed
    over leads to one kept back, and the log has looks over both.
    """
    stands, routes = data["stands"]["stands"], data["routes"]["routes"]
    stands += [_stand("ash", chance), _stand("elm", chance)]
    routes += [_route("bank", ["ash", "elm"]), _route("ridge", ["elm"])]
    for number, route in enumerate(routes[-2:]):
        route["line_lat_lon"] = line_of(41.5 + number / 100, -93, 700)
        route["coordinates"] = chance.choice(["yes", "no"])
    plantings = [one for screen in data["screens"]["screens"] for one in screen["plantings"]]
    handed = chance.sample(plantings, max(1, len(plantings) // 3))
    reader = {
        "id": PARTNER,
        "kind": "partner",
        "name": "an old friend",
        "jobs": [{"planting": one["id"], "steps": ["all"]} for one in handed],
        "stands": ["ash", *_some(stands[:-2], chance)],
        "routes": ["bank", *_some(routes[:-2], chance)],
    }
    data["readers"]["readers"].append(reader)
    _name_for_others([*stands, *routes], chance)
    data["log"]["entries"] += [*_looks(stands, chance), *_kept_up(data, chance)]
    data["dates"]["dates"] += _dates(chance)
    data["sits"] = {"sits": _sits()}
    return data


def handed_ground(data: Data, reader: str) -> set[str]:
    """The stands and walks a reader is handed."""
    found: Data = next(one for one in data["readers"]["readers"] if one["id"] == reader)
    return {*found.get("stands", []), *found.get("routes", [])}


def _stand(name: str, chance: random.Random) -> Data:
    stand = {"id": name, "name": f"The {name}", "upkeep": "stand_inspection", "note": "a thorn"}
    stand |= {"at_lat_lon": [41.5, -93 - chance.random()], "seat_height_ft": chance.randint(9, 20)}
    stand |= {"winds_for": ["NW", chance.randint(0, 90)], "winds_against": ["south"]}
    stand |= {"lies": chance.choice(["open", "edge", "timber"]), "falls_to": "E", "fall_pct": 8}
    stand["beds"] = [{"toward": 160, "distance_yd": 180, "name": "the cedar bed"}]
    if chance.random() < 0.5:
        stand["coordinates"] = chance.choice(["yes", "no"])
    return (
        stand
        if chance.random() < 0.3
        else stand | {"straps_checked_on": chance.choice(LOOKED_OVER)}
    )


def _route(name: str, serves: list[str]) -> Data:
    return {"id": name, "name": f"The {name}", "serves": serves, "length_ft": 700,
            "walked_on": "2026-07-13", "upkeep": "walk_in_work", "winds_for": ["N"],
            "winds_against": [200], "lies": "timber"}  # fmt: skip


def _some(things: list[Data], chance: random.Random) -> list[str]:
    return [one["id"] for one in things if chance.random() < 0.4]


def _name_for_others(things: list[Data], chance: random.Random) -> None:
    for number, one in enumerate(things):
        if chance.random() < 0.5:
            one["known_as"] = f"Known {number}"


def _sits() -> list[Data]:
    """Return a sit of the partner's at what is handed over, and two of others at what is not.

    No arc is typed, so each counts as in the way of everything.
    """
    evening = {"from_time": "15:00", "until_time": "18:30", "note": "a bramble"}
    theirs = {"id": "their-sit", "sits_on": "2026-11-07", "reader": PARTNER, "stand": "ash"}
    mine = {"id": "my-sit", "sits_on": "2026-11-08", "person": "me", "stand": "elm"}
    early = {"id": "early-sit", "sits_on": "2026-09-12", "person": "a guest", "stand": "elm"}
    return [theirs | evening | {"walk_in": "bank"}, mine | evening | {"walk_in": "ridge"},
            early | evening]  # fmt: skip


def _looks(stands: list[Data], chance: random.Random) -> list[Data]:
    """Return a look over each stand, on a day of its own, and one over two stands at once."""
    found = [
        {
            "id": f"look-{number}",
            "done_on": f"2026-07-{number + 13}",
            "inspected": {"what": [one["id"]], "sound": chance.random() < 0.5, "found": "a crack"},
        }
        for number, one in enumerate(stands)
        if chance.random() < 0.7
    ]
    both = {"what": ["ash", "elm"], "sound": chance.random() < 0.5}
    return [*found, {"id": "look-both", "done_on": "2026-07-30", "by": "me", "inspected": both}]


def _kept_up(data: Data, chance: random.Random) -> list[Data]:
    return [
        {
            "id": f"kept-{one['id']}",
            "done_on": "2026-02-14",
            "upkeep": [{"at": one["id"], "step": chance.choice(STEPS[kind])}],
        }
        for kind in STEPS
        for one in data[kind][kind]
        if "upkeep" in one and chance.random() < 0.6
    ]


def _dates(chance: random.Random) -> list[Data]:
    days = {"first": "2026-11-05", "last": "2026-11-20", "source": "booklet, invented"}
    return [
        {"id": "guns", "kind": "hunting", "places": ["ash", "elm"], "looked_up_on": "2026-08-02"}
        | days,
        {"id": "birds", "kind": "turkey", "places": ["bank"], "every_year": True} | days,
        {"id": "mine", "kind": "hunting", "places": ["elm", "ridge"]} | days,
        {"id": "still", "kind": "quiet", "places": [chance.choice(["ash", "elm"])]} | days,
    ]
