"""What the log holds of days after the plan's: the jobs it weighs on stop until it counts.

Worked out by hand: on one acre the sheet hands out a job that was sprayed a day after the plan's.
"""

import copy
import datetime
from dataclasses import replace

import pytest

from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import KILL, inventory_of, planned
from tests.properties import SEASON, Data, full_card, full_use, small_property

LATER = "2026-08-21"
SOWING = f"lane/{SEASON}/frost_seeding"
OTHER_KILL = f"far/{SEASON}/autumn_kill"
OTHER_SOWING = f"far/{SEASON}/frost_seeding"
NEW = {"S230", "S231", "S232", "S233"}
JOB = {"planting": "lane-27", "step": "autumn_kill"}


def two_places(**sprayer: object) -> Data:
    """Two places alike; the far one is sprayed with a sprayer of its own."""
    data = small_property(full_card(full_use()))
    (lane,) = data["screens"]["screens"]
    far = copy.deepcopy(lane) | {"id": "far", "name": "Far screen", "known_as": "Strip 9"}
    far["plantings"][0]["id"] = "far-27"
    (boom,) = data["equipment"]["sprayers"]
    data["equipment"]["sprayers"].append(boom | {"id": "other", "name": "Other cart"} | sprayer)
    for work in far["plantings"][0]["work"]:
        if "sprayer" in work:
            work["sprayer"] = "other"
    data["screens"]["screens"].append(far)
    return data


def with_entries(data: Data, *entries: Data) -> Data:
    data["log"] = {
        "entries": [{"id": f"e-{n}", "done_on": LATER} | one for n, one in enumerate(entries)]
    }
    return data


def stopped(plan: Plan) -> dict[str, set[str]]:
    """The stops of later days, by job."""
    found: dict[str, set[str]] = {}
    for one in plan.findings:
        if one.code in NEW:
            assert one.severity == "stop"
            found.setdefault(one.subject, set()).add(one.code)
    return found


def stops_by(*entries: Data, **sprayer: object) -> dict[str, set[str]]:
    return stopped(planned(with_entries(two_places(**sprayer), *entries)))


def all_of(place: str, code: str) -> dict[str, set[str]]:
    """Every job of a place that is not settled, with one stop."""
    plan = planned(two_places())
    return {one.id: {code} for one in plan.jobs if one.place_id == place}


def test_the_places_have_the_jobs_that_are_asked_about() -> None:
    assert {KILL, SOWING} < all_of("lane", "").keys()
    assert {OTHER_KILL, OTHER_SOWING} < all_of("far", "").keys()


def used(amount: float = 32) -> list[Data]:
    return [{"item": "brew", "amount_fl_oz": amount}]


def test_a_job_sprayed_later_is_not_handed_out_again() -> None:
    entry = {"job": JOB | {"finished": True}, "used": used()}
    plan = planned(with_entries(two_places(), entry))
    kill = next(one for one in plan.jobs if one.id == KILL)
    assert kill.state.kind != "done"
    assert kill.mix is None
    assert kill.numbers == {}
    (stop,) = [one for one in plan.findings_on(KILL) if one.code in NEW]
    assert stop.code == "S233"
    assert "Aug 21, 2026" in stop.words
    assert "e-0" in stop.to_type
    assert "--as-of 2026-08-21" in stop.to_type
    assert "as_of: in property.yaml" in stop.to_type
    assert stop.place.startswith("log.yaml:")


def test_the_stop_goes_with_a_later_day() -> None:
    entry = {"job": JOB | {"finished": True, "area_ac": 0.5}, "used": used()}
    inventory = inventory_of(with_entries(two_places(), entry))
    for day in (21, 22):
        plan = make_plan(inventory, SEASON, datetime.date(2026, 8, day))
        assert stopped(plan) == {}
        assert "N352" not in {one.code for one in plan.findings}
        assert next(one for one in plan.jobs if one.id == KILL).state.kind == "done"


def test_a_later_spraying_stops_its_place_and_its_sprayer_and_no_other() -> None:
    by_boom = {"sprayed": {"place": "lane", "sprayer": "boom"}, "used": used()}
    assert stops_by(by_boom) == all_of("lane", "S230")
    by_other = {"sprayed": {"place": "lane", "sprayer": "other"}, "used": used()}
    assert stops_by(by_other) == all_of("lane", "S230") | {OTHER_KILL: {"S232"}}


@pytest.mark.parametrize(
    "entry",
    [{"used": used()}, {"sprayed": {"wind_mph": 5}}, {"sprayed": {"sprayer": "boom"}}],
)
def test_a_later_spraying_of_no_place_may_have_been_on_any(entry: Data) -> None:
    assert stops_by(entry) == all_of("lane", "S230") | all_of("far", "S230")


def test_a_later_spraying_off_the_property_loads_its_sprayer_alone() -> None:
    entry = {"sprayed": {"location": "neighbor's fence", "sprayer": "other"}, "used": used()}
    assert stops_by(entry) == {OTHER_KILL: {"S232"}}


def test_a_later_spraying_through_a_sprayer_that_is_not_said_stops_every_spraying() -> None:
    entry = {"sprayed": {"location": "neighbor's fence"}, "used": used()}
    assert stops_by(entry) == {KILL: {"S232"}, OTHER_KILL: {"S232"}}


def test_a_later_sowing_stops_its_place() -> None:
    job = {"planting": "far-27", "step": "frost_seeding", "finished": True}
    entry = {"job": job, "used": [{"item": "sg", "amount_lb": 4}]}
    assert stops_by(entry) == all_of("far", "S231") | {OTHER_SOWING: {"S233"}}
    nowhere = {"seeded": {"method": "by hand"}}
    assert stops_by(nowhere) == all_of("lane", "S231") | all_of("far", "S231")


def test_a_later_clean_out_stops_the_sprayings_through_that_sprayer() -> None:
    assert stops_by({"cleaned_out": {"sprayer": "boom"}}) == {KILL: {"S232"}}


@pytest.mark.parametrize(
    "load",
    [
        {"sprayed_on": LATER, "works_as": ["auxin"]},
        {"sprayed_on": "2026-08-01", "works_as": ["auxin"], "cleaned_out_on": LATER},
    ],
)
def test_a_load_typed_with_the_sprayer_counts_as_later_too(load: Data) -> None:
    assert stops_by(last_load=load) == {OTHER_KILL: {"S232"}}
    earlier = {one: "2026-08-20" if one.endswith("_on") else had for one, had in load.items()}
    assert stops_by(last_load=earlier) == {}


@pytest.mark.parametrize(
    "entry",
    [
        {"job": JOB | {"step": "first_summer_mowing", "finished": True}},
        {"job": JOB | {"step": "first_summer_mowing"}, "mowed": {"cut_height_in": 8}},
        {"job": JOB | {"step": "first_summer_mowing", "area_ac": 0.2}},
    ],
)
def test_other_later_work_stops_its_own_job_alone(entry: Data) -> None:
    assert stops_by(entry) == {f"lane/{SEASON}/first_summer_mowing": {"S233"}}


@pytest.mark.parametrize(
    "entry",
    [
        {"measured": {"planting": "lane-27", "height_in": 30}},
        {"weeds_seen": [{"weed": "giant ragweed", "planting": "lane-27"}]},
        {"drift_checked": {"place": "lane", "clean": True}},
        {"bought": [{"item": "brew", "amount_gal": 2}]},
        {"spent": [{"what": "fuel", "cost_usd": 12}]},
        {"note": "walked it"},
    ],
)
def test_later_sightings_and_purchases_are_a_note(entry: Data) -> None:
    plan = planned(with_entries(two_places(), entry))
    assert stopped(plan) == {}
    (note,) = [one for one in plan.findings_on("log/e-0") if one.code == "N352"]
    assert note.severity == "note"
    assert "Aug 21, 2026" in note.words
    assert "--as-of 2026-08-21" in note.to_type


def test_a_later_correction_weighs_with_what_it_corrects() -> None:
    """A note alone that corrects a spraying of the day itself: what of it counts, nobody knows."""
    wrong = {"done_on": "2026-08-19", "sprayed": {"place": "far", "sprayer": "other"}}
    wrong |= {"used": used()}
    right = {"corrects": "e-0", "note": "it was half as much"}
    assert stops_by(wrong, right) == all_of("far", "S230")
    moved = {"corrects": "e-0", "sprayed": {"place": "lane", "sprayer": "boom"}, "used": used()}
    both = all_of("far", "S230") | all_of("lane", "S230")
    assert stops_by(wrong, moved) == both


def test_a_later_entry_that_was_taken_back_stops_nothing() -> None:
    wrong = {"sprayed": {"place": "lane", "sprayer": "boom"}, "used": used()}
    right = {"done_on": "2026-08-19", "corrects": "e-0", "note": "never done"}
    assert stops_by(wrong, right) == {}


def test_more_later_entries_are_one_stop_with_the_last_of_their_days() -> None:
    first = {"sprayed": {"place": "lane", "sprayer": "boom"}, "used": used()}
    second = first | {"done_on": "2026-08-30"}
    plan = planned(with_entries(two_places(), first, second))
    (stop,) = [one for one in plan.findings_on(SOWING) if one.code in NEW]
    assert "Aug 21, 2026; Aug 30, 2026" in stop.words
    assert "from 2026-08-30 on" in stop.to_type


def test_when_what_may_be_planted_is_not_answered_past_a_later_spraying() -> None:
    """The page of first days would leave the spraying out."""
    entry = {"sprayed": {"place": "lane", "sprayer": "boom"}, "used": used()}
    plan = planned(with_entries(two_places(), entry))
    waits = {one.place_id: one for one in plan.decided.waits}
    for kind in waits["lane"].planned:
        assert kind.day is None
        assert "Aug 21, 2026" in kind.unknown[0]
    assert all("Aug 21" not in ask.words for ask in waits["far"].open_questions())


def test_a_stop_of_a_later_day_stands_for_a_hired_reader_and_gives_nothing_away() -> None:
    data = with_entries(two_places(), {"used": used()})
    inventory = inventory_of(data)
    plan = planned(data)
    for reader in inventory.readers:
        seen = seen_by(plan, reader)
        told = [one for one in seen.findings if one.code == "S230"]
        assert {one.subject for one in told} == {one.id for one in seen.jobs}
        for one in told:
            assert "ask the owner" in one.words
            assert "August" not in one.words + one.cure
            assert "e-0" not in one.words


def test_upkeep_done_later_stops_its_own_sheet() -> None:
    data = small_property()
    data["stands"] = {"stands": [
        {"id": one, "name": one.title(), "upkeep": "stand_inspection"} for one in ("oak", "elm")
    ]}  # fmt: skip
    entry = {"upkeep": [{"at": "oak", "step": "stand_check", "season": SEASON}]}
    plan = planned(with_entries(data, entry))
    assert stopped(plan) == {f"oak/{SEASON}/stand_check": {"S233"}}


def test_what_is_passed_over_is_named_in_one_note() -> None:
    inventory = inventory_of(small_property())
    assert "N420" not in {one.code for one in planned(small_property()).findings}
    left = replace(inventory, passed_over=(".log.yaml.swp", "log.yaml~"))
    plan = make_plan(left, SEASON, datetime.date(2026, 8, 20))
    (note,) = [one for one in plan.findings if one.code == "N420"]
    assert note.severity == "note"
    assert ".log.yaml.swp and log.yaml~" in note.words
    assert note.words_for_others == ""
