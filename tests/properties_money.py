"""Money, log and machines for invented property data: hires, cost-share and entries."""

from __future__ import annotations

import random
from typing import Any

Data = dict[str, Any]

MACHINES: list[Data] = [
    {
        "id": "mower",
        "name": "Brush mower",
        "width_ft": 5,
        "speed_mph": 4,
        "efficiency_fraction": 0.8,
        "fuel_gal_per_hour": 1.5,
        "fuel_usd_per_gal": 3.5,
        "rent_usd_per_day": 90,
        "work_day_hours": 6,
    },
    {"id": "tug", "name": "Tug", "width_ft": 10, "speed_mph": 3, "efficiency_fraction": 0.55},
]


def add_money(data: Data, chance: random.Random) -> Data:
    """Return the property with machines on its jobs, hires, cost-share and a log.

    `data` is changed: lists that stand in a file of their own are added, machines to its equipment.
    """
    plantings = [
        planting
        for screen in data["screens"]["screens"]
        for planting in screen.get("plantings", ())
    ]
    data["equipment"]["machines"] = [dict(one) for one in MACHINES]
    for planting in plantings:
        if chance.random() < 0.7:
            planting["work"].append({"step": "first_summer_mowing", "machine": "mower"})
        for work in planting["work"]:
            if work["step"] == "autumn_kill" and chance.random() < 0.5:
                work["machine"] = "tug"
    data["money"] = {"hires": [_hire(plantings, chance)], "cost_share": _shares(plantings, chance)}
    data["log"] = {"entries": _entries(data, plantings, chance)}
    return data


def _hire(plantings: list[Data], chance: random.Random) -> Data:
    hired = chance.sample(plantings, max(1, len(plantings) // 2))
    unit = chance.choice(["usd", "usd_per_ac", "usd_per_hour"])
    hire: Data = {
        "id": "crew",
        "name": "the mowing crew",
        "jobs": [{"planting": one["id"], "steps": ["first_summer_mowing"]} for one in hired],
        f"price_{unit}": chance.randint(20, 90),
        "priced_on": "2026-08-11",
    }
    if chance.random() < 0.5:
        hire["minimum_usd"] = chance.randint(50, 200)
    return hire


def _shares(plantings: list[Data], chance: random.Random) -> list[Data]:
    key, most = chance.choice([("pays_pct", 75), ("pays_usd_per_ac", 90), ("pays_usd", 400)])
    share: Data = {
        "id": "program",
        "name": "Screen program, invented",
        "planting": chance.choice(plantings)["id"],
        key: chance.randint(10, most),
    }
    if chance.random() < 0.7:
        share["approved_on"] = "2026-08-01"
    return [share]


def _looked_at(plantings: list[Data], chance: random.Random) -> list[Data]:
    """Return a count of a planting that is old enough, if there is one, and weeds of any other."""
    sown = [one for one in plantings if one.get("seed")]
    seen = {"weed": chance.choice(["giant-foxtail", "my own weed"]), "share": "many"}
    looks: list[Data] = [
        {
            "id": "e-weeds",
            "done_on": "2026-08-12",
            "weeds_seen": [seen | {"planting": chance.choice(plantings)["id"]}],
        }
    ]
    old = [one for one in sown if one["season"] < 2027]
    if old:
        counted = {
            "planting": chance.choice(old)["id"],
            "placements_count": 4,
            "cells_with_plant_count": chance.randint(0, 100),
        }
        looks.append({"id": "e-count", "done_on": "2026-08-13", "counted": counted})
    return looks


def _sprayed_and_seen(data: Data, used: Data) -> list[Data]:
    """Return a spraying that was no job, and what else is written down on other days."""
    said = {
        "location": "fence row",
        "own_sprayer": False,
        "treated_ac": 0.2,
        "site": "fence row, invented site",
        "started_at": "07:10",
        "wind_mph": 5,
        "temperature_f": 64,
        "weeds": "brome",
        "lot_number": "L-7",
        "licence_number": "P-3",
        "neighbour_told": True,
    }
    seen_on = {"id": "e-seen", "done_on": "2026-08-14"}
    return [
        {"id": "e-sprayed", "done_on": "2026-08-09", "used": [used], "sprayed": said},
        seen_on
        | {
            "cleaned_out": {"sprayer": data["equipment"]["sprayers"][0]["id"], "how": "rinsed"},
            "drift_checked": {"found": "nothing", "clean": True},
            "inspected": {"what": [data["stands"]["stands"][0]["id"]], "sound": True},
            "sight_checked": {
                "route": data["routes"]["routes"][0]["id"],
                "seen_from": "the creek",
                "hidden": True,
            },
            "spent": [{"what": "gloves", "cost_usd": 7.5}],
        },
        {"id": "e-mowed", "done_on": "2026-08-15", "mowed": {"cut_height_in": 9}},
    ]


def _entries(data: Data, plantings: list[Data], chance: random.Random) -> list[Data]:
    lot = data["seed"]["lots"][0]["id"]
    product = data["products"]["products"][0]["id"]
    used = {"item": product, "amount_fl_oz": chance.randint(1, 9)}
    job = {"planting": chance.choice(plantings)["id"], "step": "autumn_kill"}
    # On no place of the owner's and with nobody's sprayer: what is private here stops no job.
    elsewhere = {"location": "fence row", "own_sprayer": False, "wind_mph": 4}
    return [
        {
            "id": "e-1",
            "done_on": "2026-08-10",
            "by": "me",
            "used": [used],
            "sprayed": dict(elsewhere),
        },
        *_looked_at(plantings, chance),
        *_sprayed_and_seen(data, used),
        {
            "id": "e-2",
            "done_on": "2026-08-18",
            "used": [used],
            "job": job,
            "note": "slip of the pen",
        },
        {
            "id": "e-3",
            "done_on": "2026-08-18",
            "used": [used],
            "bought": [{"item": lot, "amount_oz_wt": chance.randint(8, 80), "cost_usd": 12.5}],
            "sprayed": dict(elsewhere),
            "corrects": "e-2",
        },
    ]
