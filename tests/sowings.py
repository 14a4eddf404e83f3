"""Ways to sow for invented properties: by pounds, by share, by count, and by drill."""

from typing import Any

Data = dict[str, Any]

DRILLED_STEPS = {"spring_burn_down": "green_up_kill", "frost_seeding": "drilling"}
AMPLE_LB = 4000  # more than any generated property sows: nobody's acres hang on it


def sown_its_way(planting: Data, lots: list[Data], number: int) -> Data:
    """Return a planting of pounds sown another way, by its number."""
    planting["priority"] = number + 1
    if number % 4 == 1:
        _by_share(planting)
    elif number % 4 == 2:
        _by_count(planting, {lot["id"] for lot in lots if "live_seeds_per_lb" in lot})
    elif number % 4 == 3:
        _by_drill(planting)
    return planting


def _by_share(planting: Data) -> None:
    seeds = planting["seed"]
    shares = [100] if len(seeds) == 1 else [62.5, 37.5]
    planting["mix_rate_pls_lb_per_ac"] = 8
    for seed, share in zip(seeds, shares, strict=True):
        del seed["rate_pls_lb_per_ac"]
        seed["share_pct"] = share


def _by_count(planting: Data, counted: set[str]) -> None:
    for seed in planting["seed"]:
        if seed["lot"] in counted:
            del seed["rate_pls_lb_per_ac"]
            seed["rate_seeds_per_sq_ft"] = 32


def _by_drill(planting: Data) -> None:
    planting |= {"method": "drill", "steps": "drilled_native_grass"}
    for work in planting["work"]:
        work["step"] = drilled(work["step"])
        if work.pop("spreader", None):
            work["drill"] = "box"


def drilled(step: str) -> str:
    """Return what a step of the frost-seeded plan is called in the drilled one."""
    return DRILLED_STEPS.get(step, step)


def drill(lot: str) -> Data:
    """Return a drill that was caught twice with a lot, by turns of its wheel and by distance."""
    common = {"tested_on": "2026-08-17", "lot": lot, "setting": "C 14", "rows_caught_count": 4}
    return {
        "id": "box",
        "name": "Box drill",
        "row_spacing_in": 7.5,
        "rows_count": 12,
        "wheel_circumference_ft": 8,
        "catch_tests": [
            common | {"caught_g": 31, "wheel_turns": 20},
            common | {"caught_oz_wt": 1.2, "distance_ft": 150},
        ],
    }


def tagged_further(lot: Data, number: int) -> Data:
    """Return a lot with what else its tag and its seller may say, by its number."""
    if number % 2 == 0:
        lot["most_to_be_had_lb"] = AMPLE_LB
    if number % 3 == 1:
        lot["tag"] |= {"other_crop_pct": 0.2, "weed_pct": 0.1, "inert_pct": 0.7}
        lot["tag"] |= {"noxious_weeds": f"{number} thistle", "treated": f"a coat, batch {number}"}
    return lot
