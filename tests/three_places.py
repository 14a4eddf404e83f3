"""An invented property whose three small places are sprayed, or sown, with one mix or one fill."""

import copy
from typing import Any

from tests.properties import Data, full_card, full_use, small_property

# 15 fl oz caught on a 128th of an acre (340.3125 sq ft) are 15 gal to an acre.
KNAPSACK: Data = {
    "id": "knapsack",
    "name": "Knapsack",
    "kind": "backpack",
    "tank_gal": 5,
    "new": True,
    "measure": ["jug"],
    "catch_tests": [{"tested_on": "2026-08-16", "caught_fl_oz": [15], "covered_sq_ft": 340.3125}],
}
GROUND_AC = {"one": 0.125, "two": 0.1, "three": 0.08}


def three_places(**work: Any) -> Data:
    """Return three places of 0.125, 0.10 and 0.08 acres, each sprayed at 64 fl oz to an acre."""
    asked = {"rate_product_fl_oz_per_ac": 64, "sprayer": "knapsack"} | work
    data = small_property(full_card(full_use()), **asked)
    data["equipment"]["sprayers"].append(copy.deepcopy(KNAPSACK))
    (lane,) = data["screens"]["screens"]
    data["screens"]["screens"] = [
        _place(lane, number, name, ground)
        for number, (name, ground) in enumerate(GROUND_AC.items(), 1)
    ]
    data["readers"] = {"readers": []}
    return data


def _place(lane: Data, number: int, name: str, ground_ac: float) -> Data:
    place = copy.deepcopy(lane)
    del place["length_ft"], place["width_ft"]
    place |= {
        "id": name,
        "name": f"Piece {name}",
        "known_as": f"Strip {number}",
        "area_ac": ground_ac,
    }
    (planting,) = place["plantings"]
    planting["id"] = f"{name}-27"
    planting["work"][0]["treated_ac"] = ground_ac
    return place


def piece(data: Data, name: str) -> Data:
    """Return one of the places, to change it in place."""
    found: Data = next(place for place in data["screens"]["screens"] if place["id"] == name)
    return found


def work_on(data: Data, name: str) -> Data:
    """Return the work of one of the places, to change it in place."""
    work: Data = piece(data, name)["plantings"][0]["work"][0]
    return work
