"""What an entry of the log may leave out, and what it weighs on: the property of each combination.

An acre is to be burned down in April 2027 with 32 fl oz of brew. The entry tells of 104 fl oz of
another product of the same active on Sep 14, 2026: a residual, of which people keep out for 48
hours and after which switchgrass waits 300 days. 104 and 32 are over the 128 of the card, twice is
over once in a year, and 300 days end after the sowing of February.
"""

import copy
import datetime
from collections.abc import Callable, Mapping
from functools import cache
from pathlib import Path
from typing import Any

import yaml

from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.model.spray_record import missing_by_rule
from tests.plan.by_hand import BLUE, NONE, RED, STARTS
from tests.plan.planned import inventory_of
from tests.properties import SEASON, Data, the_work

TABLE = yaml.safe_load((Path(__file__).parent / "what_counts.yaml").read_text(encoding="utf-8"))
DAY, AFTER, LATER = "2026-09-14", datetime.date(2026, 9, 15), datetime.date(2026, 10, 1)
BURN_DOWN, SOWING, MOWING = (
    f"lane/{SEASON}/{step}" for step in ("spring_burn_down", "frost_seeding", "winter_mowing")
)
KILL = {"planting": "lane-27", "step": "autumn_kill", "area_ac": 1}
# Kinds of entries, each telling all there is to tell.
KINDS: Mapping[str, Data] = {
    "job_finished": {"job": KILL | {"finished": True}, "sprayed": {"wind_mph": 5}},
    "job_begun": {"job": KILL, "sprayed": {"wind_mph": 5}},
    "at_a_place": {"sprayed": {"place": "lane", "treated_ac": 1, "sprayer": "boom"}},
    "elsewhere": {"sprayed": {"location": "the yard", "treated_ac": 1, "sprayer": "boom"}},
    "other_work": {"job": {"planting": "lane-27", "step": "winter_mowing", "area_ac": 1}},
    "product_used": {},
}
ALONE = ("year", "times", "tank", "reentry")  # each with limits or a day of its own
WEIGHS = ("year", "times", "wait", "tank", "reentry", "plant_back", "records")
ASKED = {"S200", "S201", "S202", "S203", "S204", "S206"}


def data_of(kind: str, gap: str, weighs: str) -> Data:
    """The property of one combination, with its log."""
    data = _land(weighs)
    if kind.startswith("job"):
        work = dict(the_work(data)[0]) | {"step": "autumn_kill", "product": "other"}
        the_work(data).append(work | {"rate_product_fl_oz_per_ac": 8})
    used = [{"item": "other", "amount_fl_oz": 104}]
    entry = {"id": "e-1", "done_on": DAY, "used": used} | copy.deepcopy(KINDS[kind])
    entries = [entry]
    LEFT_OUT[gap](data, entries)
    data["log"] = {"entries": entries}
    return data


def _land(weighs: str) -> Data:
    data = STARTS["winter_mowing"]()
    del data["readers"]  # of a job that is handed over somebody else's sprayer is used
    mowing = data["steps"]["step_plans"][0]["steps"][0]
    mowing |= {"opens": [{"date": "09-02"}], "closes": [{"date": "08-30"}]}
    brew, other, third = data["products"]["products"]
    other["label"]["actives"][0] |= {"active": RED, "works_as": ["soil_residual"]}
    other["label"]["reentry"]["agricultural_hours"] = 48
    if weighs == "tank":  # of the same active nothing harms in the tank
        brew["label"]["actives"][0]["active"] = BLUE
    for use in (*other["label"]["uses"], *third["label"]["uses"]):
        use |= {"seeding_interval_days": NONE}
        use |= {"plant_back_days": [{"crop": "Native grass", "wait_days": 300}]}
    near = copy.deepcopy(other) | {"id": "near", "name": "Near"}
    near["label"]["actives"][0]["active"] = f"{RED}, bright"
    data["products"]["products"].append(near)
    for product in data["products"]["products"]:
        del product["on_hand_fl_oz"], product["counted_on"]
    for use in brew["label"]["uses"]:
        if weighs != "year":
            use["max_per_year"] = NONE
        if weighs == "times":
            use["times_per_year"] = 1
    work = the_work(data)[0]
    work |= {"step": "spring_burn_down", "sprayer": "boom" if weighs == "tank" else "cart"}
    return data


def _used(item: str) -> Callable[[Data, list[Data]], None]:
    def change(data: Data, entries: list[Data]) -> None:
        entries[0]["used"][0]["item"] = item
        third = data["products"]["products"][2]
        if item == "third":
            del third["label"]

    return change


def _without_actives(data: Data, entries: list[Data]) -> None:
    entries[0]["used"][0]["item"] = "third"
    del data["products"]["products"][2]["label"]["actives"]


def _without_used(_: Data, entries: list[Data]) -> None:
    del entries[0]["used"]


def _ground(to: float | None) -> Callable[[Data, list[Data]], None]:
    def change(_: Data, entries: list[Data]) -> None:
        for name, key in (("job", "area_ac"), ("sprayed", "treated_ac")):
            said = entries[0].get(name, {})
            if key in said and to is None:
                del said[key]
            elif key in said:
                said[key] = to

    return change


def _without_place(_: Data, entries: list[Data]) -> None:
    entries[0].pop("job", None)
    entries[0]["sprayed"] = {"treated_ac": 1, "sprayer": "boom"}


def _without_sprayer(data: Data, entries: list[Data]) -> None:
    entries[0].get("sprayed", {}).pop("sprayer", None)
    for work in the_work(data):
        if work["step"] == "autumn_kill":
            del work["sprayer"]


def _corrected(**by: Any) -> Callable[[Data, list[Data]], None]:
    def change(_: Data, entries: list[Data]) -> None:
        entries.append({"id": "e-2", "done_on": DAY, "corrects": "e-1"} | by)

    return change


def _bounded(_: Data, entries: list[Data]) -> None:
    del entries[0]["used"]
    bound = {"products": ["other"], "most_fl_oz_per_ac": 104, "checked_with": "the neighbor"}
    entries[0]["unknown"] = bound


LEFT_OUT: Mapping[str, Callable[[Data, list[Data]], None]] = {
    "nothing": lambda _data, _entries: None,
    "what_was_used": _without_used,
    "how_much_ground": _ground(None),
    "more_ground_than_there_is": _ground(10),
    "a_card": _used("third"),
    "actives_on_the_card": _without_actives,
    "a_name_that_is_clear": _used("near"),
    "where_it_was": _without_place,
    "which_sprayer": _without_sprayer,
    "corrected_by_a_note": _corrected(note="see the paper"),
    "corrected_as_not_done": _corrected(not_done=True),
    "bounded": _bounded,
}


def seen(kind: str, gap: str, weighs: str) -> str:
    """What the plan makes of one combination: it counts, is asked, or says nothing."""
    return SEEN[weighs](_plan(kind, gap, weighs if weighs in ALONE else "all else"))


@cache
def _plan(kind: str, gap: str, weighs: str) -> Plan:
    day = AFTER if weighs == "reentry" else LATER
    return make_plan(inventory_of(data_of(kind, gap, weighs)), SEASON, day)


def _codes(plan: Plan, subject: str) -> set[str]:
    return {one.code for one in plan.findings_on(subject)}


def _of_codes(subject: str, counts: set[str], asked: set[str]) -> Callable[[Plan], str]:
    def told(plan: Plan) -> str:
        found = _codes(plan, subject)
        return "asked" if found & asked else "counts" if found & counts else "nothing"

    return told


def _tank(plan: Plan) -> str:
    (words, *_) = [one.words for one in plan.findings_on(BURN_DOWN) if one.code == "S154"] or [""]
    return "asked" if "not known" in words else "counts" if words else "nothing"


def _plant_back(plan: Plan) -> str:
    (waits,) = plan.decided.waits
    (grass,) = [one for one in waits.logged if one.kind == "native_grass"]
    return "asked" if grass.asks else "counts" if grass.day is not None else "nothing"


def _records(plan: Plan) -> str:
    found = [one for one in plan.records if one.entry.id == "e-1"]
    if not found:
        return "nothing"
    wanted = {"product and the amount used", "EPA registration number", "location",
              "size of the ground", "a size no larger than the place"}  # fmt: skip
    return "asked" if wanted & set(missing_by_rule(found[0])) else "counts"


SEEN: Mapping[str, Callable[[Plan], str]] = {
    "year": _of_codes(BURN_DOWN, {"S112"}, ASKED),
    "times": _of_codes(BURN_DOWN, {"S113"}, set()),
    "wait": _of_codes(SOWING, {"S210"}, {"S211", "S212"}),
    "tank": _tank,
    "reentry": _of_codes(MOWING, {"C314"}, {"S205"}),
    "plant_back": _plant_back,
    "records": _records,
}
