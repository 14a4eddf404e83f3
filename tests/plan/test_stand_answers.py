"""One answer for a stand: what forbids it comes first, in its order, and else nothing does."""

import datetime
from itertools import pairwise

from generator.inventory.load import load_inventory
from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.model.sits import StandAnswer
from generator.plan.readers.seen_by import seen_by
from tests.book.sites import DEMO
from tests.plan.planned import AS_OF, inventory_of, planned
from tests.properties import SEASON, Data, small_property

DATES = [
    {"id": "bow", "kind": "hunting", "first": "2026-09-15", "last": "2026-11-30", "places": "all",
     "looked_up_on": "2026-08-01"},
]  # fmt: skip
SOUND = {"id": "look", "done_on": "2026-08-08", "inspected": {"what": ["oak"], "sound": True}}


def land(*, stand: Data | None = None, **files: Data) -> Data:
    data = small_property()
    oak = {"id": "oak", "name": "Oak ladder", "straps_checked_on": "2026-08-01"}
    data["stands"] = {"stands": [oak | (stand or {})]}
    data["dates"] = {"dates": list(DATES)}
    return data | files


def on(plan: Plan, day: str, stand: str = "oak") -> StandAnswer:
    when = datetime.date.fromisoformat(day)
    (found,) = (one for one in plan.answers[stand] if one.first <= when <= one.last)
    return found


def whys(data: Data, day: str) -> list[str]:
    return [one.why.value for one in on(planned(data), day).forbids]


def test_fourteen_september_of_the_demo_s_oak_for_the_partner() -> None:
    inventory = load_inventory(DEMO).inventory
    assert inventory is not None
    plan = make_plan(inventory, SEASON, AS_OF)
    partner = next(one for one in inventory.readers if one.id == "hunting-partner")
    answer = on(seen_by(plan, partner), "2026-09-14", "oak-ladder")
    assert [(one.why.value, one.day) for one in answer.forbids] == [
        ("unsafe", datetime.date(2026, 8, 12)),
        ("closed", datetime.date(2026, 9, 15)),
    ]
    # the day after, the season alone is another
    after = on(seen_by(plan, partner), "2026-09-15", "oak-ladder")
    assert [one.why.value for one in after.forbids] == ["unsafe"]


def test_every_day_from_the_plan_s_to_the_last_of_the_season_has_one_answer() -> None:
    answers = planned(land()).answers["oak"]
    assert answers[0].first == AS_OF
    assert answers[-1].last == datetime.date(2027, 8, 31)
    for before, after in pairwise(answers):
        assert after.first - before.last == datetime.timedelta(days=1)
        assert before.forbids != after.forbids


def test_the_season_opens_and_closes_it() -> None:
    days = ("2026-09-14", "2026-09-15", "2026-11-30", "2026-12-01")
    assert [whys(land(), day) for day in days] == [
        ["closed"],
        [],
        [],
        ["closed"],
    ]
    assert on(planned(land()), "2026-12-01").forbids[0].day is None
    assert whys(land(dates={"dates": []}), "2026-10-01") == ["no_dates"]
    not_yet = {key: value for key, value in DATES[0].items() if key != "looked_up_on"}
    assert whys(land(dates={"dates": [not_yet]}), "2026-10-01") == ["not_looked_up"]


def test_safety_goes_before_all_else_and_goes_once_it_is_sound() -> None:
    bad = {"id": "bad", "done_on": "2026-08-05", "inspected": {"what": ["oak"], "sound": False}}
    assert whys(land(log={"entries": [bad]}), "2026-09-14") == ["unsafe", "closed"]
    assert whys(land(log={"entries": [bad, SOUND]}), "2026-10-01") == []
    old = land(stand={"straps_checked_on": "2024-08-01"})
    assert whys(old, "2026-10-01") == ["not_inspected"]


def test_stay_out_dates_leave_and_distances_forbid_it_in_this_order() -> None:
    quiet = {"id": "still", "kind": "quiet", "first": "2026-10-20", "last": "2026-10-25",
             "places": ["oak"]}  # fmt: skip
    leave = {"id": "leave", "kind": "other", "name": "Leave of the neighbor", "places": ["oak"],
             "approved_on": "2026-08-01", "expires_on": "2026-10-15"}  # fmt: skip
    barn = {"what": "a barn", "distance_yd": 90, "at_least_yd": 100}
    data = land(
        stand={"keeps_off": [barn]},
        dates={"dates": [*DATES, quiet]},
        papers={"permits": [leave]},
    )
    assert whys(data, "2026-10-15") == ["too_near"]
    assert whys(data, "2026-10-16") == ["no_leave", "too_near"]
    assert whys(data, "2026-10-20") == ["quiet", "no_leave", "too_near"]
    assert whys(land(stand={"keeps_off": [barn | {"distance_yd": 100}]}), "2026-10-15") == []
    # a permit to burn is no leave to hunt
    burn = land(papers={"permits": [leave | {"kind": "burn"}]})
    assert whys(burn, "2026-10-16") == []


def test_it_rests_after_a_sit_of_the_log_and_after_one_to_come() -> None:
    sat = {"id": "s", "done_on": "2026-08-19", "sat": {"stand": "oak"}}
    sit = {"id": "t", "sits_on": "2026-10-10", "from_time": "15:00", "until_time": "19:00",
           "stand": "oak", "person": "me"}  # fmt: skip
    data = land(stand={"rest_days": 3}, log={"entries": [sat]}, sits={"sits": [sit]})
    found = {day: whys(data, day) for day in ("2026-08-22", "2026-08-23", "2026-10-10",
                                             "2026-10-11", "2026-10-13", "2026-10-14")}  # fmt: skip
    assert found == {
        "2026-08-22": ["closed", "rests"],
        "2026-08-23": ["closed"],
        "2026-10-10": ["taken"],
        "2026-10-11": ["rests"],
        "2026-10-13": ["rests"],
        "2026-10-14": [],
    }
    assert whys(land(log={"entries": [sat]}), "2026-08-22") == ["closed"]


def test_a_partner_hears_that_the_owner_keeps_it_closed_and_not_why() -> None:
    quiet = {"id": "still", "kind": "quiet", "first": "2026-10-20", "last": "2026-10-25",
             "places": ["oak"], "note": "thorn"}  # fmt: skip
    sits = [
        {"id": name, "sits_on": "2026-10-10", "from_time": begins, "until_time": ends,
         "stand": "oak", "person": "me"}
        for name, begins, ends in (("s", "15:00", "17:00"), ("t", "16:30", "19:00"))
    ]  # fmt: skip
    data = land(stand={"rest_days": 2}, dates={"dates": [*DATES, quiet]}, sits={"sits": sits})
    data["readers"]["readers"].append({"id": "friend", "kind": "partner", "stands": ["oak"]})
    inventory = inventory_of(data)
    friend = next(one for one in inventory.readers if one.id == "friend")
    seen = seen_by(planned(data), friend)

    def told(day: str) -> list[tuple[str, object]]:
        return [(one.why.value, one.hours) for one in on(seen, day, "oak-ladder").forbids]

    assert told("2026-10-11") == told("2026-10-22") == [("kept_closed", None)]
    # two sits that lie over each other are one stretch of hours
    assert told("2026-10-10") == [("taken", (datetime.time(15), datetime.time(19)))]
    assert all(one.what is None for answer in seen.answers["oak-ladder"] for one in answer.forbids)
