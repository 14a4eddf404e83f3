"""Soil tests, fertilizers, limes and water holes for an invented property, all made up."""

from __future__ import annotations

import random
from typing import Any

Data = dict[str, Any]

GRADES = ((11, 52, 0), (0, 46, 0), (0, 0, 60), (13, 13, 13), (46, 0, 0))
LIME_NEEDS: tuple[Data, ...] = (
    {"amount_lb_per_ac": 1050, "base": "enm"},
    {"amount_ton_per_ac": 2, "base": "cce", "base_pct": 90},
    {"amount_ton_per_ac": 1.5, "base": "ecce", "base_pct": 80},
)
HOLES: tuple[Data, ...] = (
    {"shape": "round", "top_ft": 16, "bottom_ft": 4, "depth_ft": 3},
    {"shape": "cone", "top_m": 5, "depth_ft": 4},
    {"shape": "rectangle", "length_ft": 40, "width_ft": 20, "side_ft_per_ft": 2, "depth_ft": 4},
)
DRINKERS: Data = {"deer_count": 10, "deer_weight_lb": 150, "dry_spell_days": 200, "refill_gal": 250}


def fed(data: Data, chance: random.Random) -> Data:
    """Return a property with things to spread, soil tests for some plantings, and water holes."""
    data["products"] |= {
        "fertilizers": [_fertilizer(n, grade) for n, grade in enumerate(GRADES)],
        "limes": [_lime(0, {"enm_lb_per_ton": 410}), _lime(1, {"cce_pct": 92, "ecce_pct": 61})],
    }
    tests: list[Data] = []
    for screen in data["screens"]["screens"]:
        for planting in screen["plantings"]:
            if chance.random() < 0.6:
                _feed(planting, screen["id"], tests, chance)
    data["ground"] = {"soil_tests": tests, "water_holes": [_hole(n) for n in range(len(HOLES))]}
    return data


def _fertilizer(number: int, grade: tuple[int, int, int]) -> Data:
    n, p2o5, k2o = grade
    return {
        "id": f"fertilizer-{number}",
        "name": f"{n}-{p2o5}-{k2o}",
        "n_pct": n,
        "p2o5_pct": p2o5,
        "k2o_pct": k2o,
        "package_lb": 50,
        "price_usd": 20 + number,
        "priced_on": "2026-08-10",
        "on_hand_lb": 15,
        "counted_on": "2026-08-15",
    }


def _lime(number: int, strength: Data) -> Data:
    lime = {"id": f"lime-{number}", "name": f"Lime {number}", "package_lb": 40, "price_usd": 6}
    return lime | strength


def _hole(number: int) -> Data:
    hole: Data = {"id": f"hole-{number}", "name": f"Hole {number}"} | HOLES[number]
    return hole | DRINKERS if number else hole


def _feed(planting: Data, place: str, tests: list[Data], chance: random.Random) -> None:
    need = {
        "n_lb_per_ac": chance.choice([0, 30]),
        "p2o5_lb_per_ac": chance.choice([0, 25, 40]),
        "k2o_lb_per_ac": chance.choice([0, 15, 60]),
    }
    chosen = chance.sample(range(len(GRADES)), chance.randint(1, 3))
    planting["fertilizers"] = [f"fertilizer-{one}" for one in chosen]
    if chance.random() < 0.2:
        planting["need"] = need
        return
    test: Data = {
        "id": f"soil-{len(tests)}",
        "places": [place],
        "sampled_on": chance.choice(["2026-04-11", "2022-10-02"]),
        "lab": "the county laboratory",
        "soil_ph": 5.6,
        "need": need,
    }
    if chance.random() < 0.7:
        test["lime_need"] = dict(chance.choice(LIME_NEEDS))
        planting["lime"] = chance.choice(["lime-0", "lime-1"])
    tests.append(test)
    planting["soil_test"] = test["id"]
