"""Properties with sowings: the small one with its seed, tag and machines changed."""

import copy
from typing import Any

from generator.plan.model.finding import Finding
from generator.plan.model.plan import Plan
from tests.properties import SEASON, Data, small_property

SOWING = f"lane/{SEASON}/frost_seeding"
DRILLING = f"lane/{SEASON}/drilling"


def sown(**planting: Any) -> Data:
    """An acre of switchgrass at 8 lb: 90% pure, 80 % alive, so 11.1111 lb off the bag."""
    data = small_property()
    the_planting(data).update(planting)
    return data


def the_planting(data: Data, place: int = 0) -> Data:
    planting: Data = data["screens"]["screens"][place]["plantings"][0]
    return planting


def the_lot(data: Data, number: int = 0) -> Data:
    lot: Data = data["seed"]["lots"][number]
    return lot


def with_lot(data: Data, identity: str, species: str, **changes: Any) -> Data:
    """Add a lot like the first one, of another species: 72% of it is pure live seed."""
    lot = the_lot(data) | {"id": identity, "species": species} | changes
    data["seed"]["lots"].append({key: value for key, value in lot.items() if value is not None})
    return data


def by_spreader(data: Data, *tests: Data, hopper_lb: float = 3) -> Data:
    """Sow with a crank spreader that has these catch tests, each 12 ft by 100 ft with lot sg."""
    common = {"tested_on": "2026-08-16", "lot": "sg", "setting": "third", "swath_ft": 12,
              "distance_ft": 100}  # fmt: skip
    spreader = {"id": "crank", "name": "Crank", "hopper_lb": hopper_lb,
                "catch_tests": [common | one for one in tests]}  # fmt: skip
    data["equipment"]["spreaders"] = [spreader]
    the_planting(data)["work"].append({"step": "frost_seeding", "spreader": "crank"})
    return data


def by_drill(data: Data, *tests: Data, **changes: Any) -> Data:
    """Sow with a drill of 7.5 in rows and a wheel of 8 ft that has these catch tests."""
    common = {"tested_on": "2026-08-16", "lot": "sg", "setting": "C 14"}
    drill = {"id": "box", "name": "Drill", "row_spacing_in": 7.5, "rows_count": 12}
    drill |= {"wheel_circumference_ft": 8, "catch_tests": [common | one for one in tests]}
    data["equipment"]["drills"] = [drill | changes]
    planting = the_planting(data)
    planting |= {"method": "drill", "steps": "drilled_native_grass"}
    planting["work"].append({"step": "drilling", "drill": "box"})
    return data


def codes_on(plan: Plan, job_id: str = SOWING) -> set[str]:
    return {one.code for one in plan.findings_on(job_id)}


def found_on(plan: Plan, code: str, job_id: str = SOWING) -> Finding:
    (one,) = [one for one in plan.findings_on(job_id) if one.code == code]
    return one


def with_place(data: Data, identity: str, **changes: Any) -> Data:
    """Add a place like the lane, an acre sown with the same seed unless said otherwise."""
    place = copy.deepcopy(data["screens"]["screens"][0])
    place |= {"id": identity, "name": identity, "known_as": f"Strip {identity}"}
    planting = place["plantings"][0] | {"id": f"{identity}-27"} | changes
    place["plantings"] = [planting]
    data["screens"]["screens"].append(place)
    return data
