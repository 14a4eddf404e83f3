"""Rows of trees and shrubs for an invented property, all made up."""

import random
from typing import Any

Data = dict[str, Any]

PLANTS: tuple[Data, ...] = (
    {"id": "cedar", "name": "Redcedar, 12 in", "species": "eastern-redcedar", "root": "bare_root"},
    {"id": "plum", "name": "Plum, 18 in", "species": "american-plum", "root": "plug"},
)
KEPT: Data = {"package_count": 25, "price_usd": 42, "priced_on": "2026-08-10",
              "on_hand_count": 7, "counted_on": "2026-08-15"}  # fmt: skip


def with_rows(data: Data, chance: random.Random) -> Data:
    """Return a property with plants, guards and one or two places of rows, some handed over."""
    data["seed"] |= {
        "plants": [KEPT | one for one in PLANTS],
        "guards": [KEPT | {"id": "tube", "name": "Tube, 4 ft"}],
    }
    for number in range(chance.randint(1, 2)):
        planting = _planting(number, data["property"]["season"], chance)
        data["screens"]["screens"].append(
            {
                "id": f"row-{number}",
                "name": f"Row {number}",
                "known_as": f"Edge {number}",
                "length_ft": chance.randint(60, 900),
                "width_ft": chance.randint(12, 40),
                "cover_now": {"kind": chance.choice(["perennial_sod", "stubble"])},
                "plantings": [planting],
            }
        )
        if chance.random() < 0.6:
            handed = {"planting": planting["id"], "steps": ["all"]}
            data["readers"]["readers"][0]["jobs"].append(handed)
    return data


def _planting(number: int, season: int, chance: random.Random) -> Data:
    rows = []
    for plants in chance.sample([one["id"] for one in PLANTS], chance.randint(1, 2)):
        row = {
            "plants": plants,
            "rows_count": chance.randint(1, 3),
            "spacing_ft": 8,
            "row_ft": chance.randint(40, 900),
        }
        if chance.random() < 0.5:
            row["guards"] = "tube"
        if chance.random() < 0.5:
            row |= {"replace_pct": 15, "rows_apart_ft": 10}
        rows.append(row)
    return {
        "id": f"row-{number}-planted",
        "season": season - chance.randint(0, 1),
        "woody": rows,
        "method": "plant",
        "steps": "woody_row",
        "work": [],
    }
