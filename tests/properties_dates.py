"""Dates, people and papers for invented property data: what takes days, who works, what allows."""

from __future__ import annotations

import random
from typing import Any

Data = dict[str, Any]

QUIET = ("2026-09-18", "2027-01-24")
HUNTING = ("2026-10-01", "2027-01-10")


def add_dates(data: Data, chance: random.Random) -> Data:
    """Return the property with dates, people and papers; `data` is changed."""
    places = [one["id"] for one in data["screens"]["screens"]]
    some = chance.sample(places, max(1, len(places) // 2))
    rows = [one["id"] for one in data["screens"]["screens"] if one["id"].startswith("row-")]
    data["dates"] = {
        "dates": [
            {"id": "rest", "kind": "quiet", "first": QUIET[0], "last": QUIET[1], "places": some},
            {
                "id": "season",
                "kind": "hunting",
                "first": HUNTING[0],
                "last": HUNTING[1],
                "every_year": True,
                "places": chance.choice(["all", some]),
                "source": "booklet, invented",
                "looked_up_on": "2026-08-02",
            },
            {
                "id": "hens",
                "kind": "nesting",
                "first": "2027-05-15",
                "last": "2027-07-15",
                "places": chance.sample(places, 1),
            },
        ],
        "shooting_hours": [
            {
                "id": "hours",
                "dates": "season",
                "begins": "sunrise",
                "begins_before_minutes": 30,
                "ends": "sunset",
                "ends_after_minutes": chance.choice([0, 30]),
                "source": "booklet, invented",
                "looked_up_on": "2026-08-02",
            }
        ],
        "looked_up": [
            {
                "id": f"law-{subject.replace('_', '-')}",
                "subject": subject,
                "words": f"what it says of {subject.replace('_', ' ')}, invented",
                "source": "booklet, invented",
                "looked_up_on": "2026-08-02",
            }
            for subject in ("orange", "baiting", "recovery")
        ],
    }
    data["property"]["after_the_shot"] = {
        "game_officer": "an invented officer, 555-0144",
        "stay_out_ground": "ask_first",
        "beyond": [{"side": "over the creek", "whose": "an invented farm", "may_enter": "no"}],
    }
    data["people"] = {
        "applicators": [{"id": "sprays", "licence_class": "private", "reader": "hired"}],
        "helpers": [{"id": "friend", "weekend_hours": chance.randint(0, 9)}],
        "contractors": [{"id": "digger", "reader": "hired", "insured": chance.random() < 0.5}],
    }
    data["papers"] = {
        "permits": [{"id": "leave", "kind": "burn", "places": "all", "limits": "none at night"}],
        "contracts": [
            {
                "id": "cover",
                "name": "Cover contract, invented",
                "places": chance.sample(places, 1),
                "approved_on": "2026-08-03",
                "work_allowed": ["mow", "sow"],
                "written_permission_for": chance.choice([["mow"], ["mow", "spray"]]),
                "permission_on": "2026-08-04",
            }
        ],
        "one_calls": [
            {"id": "call", "places": one, "number": "117", "clear_on": "2027-03-20"}
            for one in rows[:1]
        ],
    }
    return data


def change_dates(
    data: Data, handed: set[str], chance: random.Random, *, looked_up_is_told: bool = False
) -> None:
    """Change dates, people and papers, all but what a reader sees of `handed` places and stands.

    A partner is told on which day dates that hold there were looked up.
    """
    lasting = {one["id"] for kind in ("screens", "stands", "routes") for one in data[kind][kind]}
    for file in ("dates", "papers"):
        for key, entries in data[file].items():
            if key not in ("shooting_hours", "looked_up"):
                data[file][key] = [one for one in entries if _still_holds(one, lasting)]
    for one in data["dates"]["dates"]:
        one["source"] = f"looked at {chance.random()}"
        if not (looked_up_is_told and _touches(one, handed)):
            one["looked_up_on"] = "2026-07-01"
        if not _touches(one, handed):
            one |= {"kind": chance.choice(["quiet", "turkey"]), "first": "2026-09-02"}
            one["last"] = f"2027-02-{chance.randint(10, 28)}"
    _change_hours(data["dates"], chance)
    if not looked_up_is_told:
        _change_law(data, chance)
    for one in data["papers"]["contracts"]:
        one |= {"name": f"contract {chance.random()}", "approved_on": "2026-08-09"}
        one["work_allowed"] = chance.sample(["mow", "spray", "till"], 2)
        if not _touches(one, handed):
            one.pop("written_permission_for")
    for one in data["papers"]["permits"]:
        one |= {"limits": f"{chance.random()} fires", "kind": "water"}
    for one in data["papers"]["one_calls"]:
        one["asked_on"] = f"2026-08-{chance.randint(1, 20):02}"
    data["people"] = {
        "applicators": [
            {
                "id": "sprays-too",
                "name": f"somebody {chance.random()}",
                "licence_class": "noncommercial",
                "licence_expires_on": f"2027-03-{chance.randint(10, 28)}",
            }
        ],
        "helpers": [{"id": "cousin", "weekend_hours": chance.randint(0, 40)}],
        "contractors": [{"id": "hauler", "name": f"hauls {chance.random()}"}],
    }
    stranger = {"id": "far", "kind": "hunting", "first": "2026-09-01", "last": "2027-08-31"}
    far = sorted(lasting - handed)
    if far:
        data["dates"]["dates"].append(stranger | {"places": far})


def _change_law(data: Data, chance: random.Random) -> None:
    """Change what was looked up of the law and what holds after a shot: hunters alone have it."""
    for one in data["dates"]["looked_up"]:
        one |= {"words": f"says {chance.random()}", "looked_up_on": "2026-07-03"}
    data["property"]["after_the_shot"] = {
        "tracker": f"tracks {chance.random()}",
        "stay_out_ground": "no",
    }


def _change_hours(dates: Data, chance: random.Random) -> None:
    """Change the rule of the shooting hours; none is left where its dates are gone or are quiet."""
    hunted = {one["id"] for one in dates["dates"] if one["kind"] in ("hunting", "turkey")}
    dates["shooting_hours"] = [
        one
        | {
            "begins": "civil_dawn",
            "source": f"read {chance.random()}",
            "looked_up_on": "2025-01-02",
        }
        for one in dates["shooting_hours"]
        if one["dates"] in hunted
    ]


def _still_holds(entry: Data, lasting: set[str]) -> bool:
    """Drop the places that are gone; whether any is left."""
    if entry["places"] != "all":
        places = entry["places"] if isinstance(entry["places"], list) else [entry["places"]]
        entry["places"] = [one for one in places if one in lasting]
    return bool(entry["places"])


def _touches(entry: Data, places: set[str]) -> bool:
    return entry["places"] == "all" or bool(places & set(entry["places"]))
