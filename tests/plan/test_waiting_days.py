"""Waits before grazing, hay, game and dogs, worked by hand. Every number of a card is made up."""

import datetime
from typing import Any

from generator.plan.build.season_plan import make_plan
from generator.plan.model.finding import Finding
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import KILL, inventory_of, planned, stops_of
from tests.plan.test_plant_back import plan_of, sprayed
from tests.properties import SEASON, Data, full_card, full_use, small_property

SPRAYED = "2026-09-22"


def waiting(*lines: tuple[str, int], **dates: Any) -> Data:
    """The lane, whose card asks to wait, with hunting dates where they are given."""
    days = [{"before": before, "wait_days": wait} for before, wait in lines]
    data = small_property(full_card(full_use(waiting_days=days or "not_on_label")))
    if dates:
        data["dates"] = {"dates": [{"id": "bow", "kind": "hunting", "places": ["lane"]} | dates]}
    return data


def told(data: Data, as_of: str, code: str, subject: str = "lane") -> list[Finding]:
    plan = plan_of(data, as_of)
    return [one for one in plan.findings_on(subject) if one.code == code]


def test_a_wait_that_is_left_out_stops_the_job_and_not_on_label_does_not() -> None:
    assert stops_of(planned(waiting())) == set()
    data = waiting()
    del data["products"]["products"][0]["label"]["uses"][0]["waiting_days"]
    plan = planned(data)
    (stop,) = [one for one in plan.findings_on(KILL) if one.severity == "stop"]
    assert stop.code == "S108"
    assert "waiting_days" in stop.to_type


def test_what_waits_stands_on_the_place_until_it_is_over() -> None:
    # 10 days after Sep 22, 2026 are Oct 2, 21 are Oct 13
    data = sprayed(waiting(("grazing", 10), ("hay", 21)), SPRAYED)
    (both,) = told(data, "2026-10-01", "C390")
    assert "grazing before Oct 2, 2026; hay before Oct 13, 2026" in both.words
    assert {figure.value for _, figure in both.figures} == {10, 21}
    (hay,) = told(data, "2026-10-02", "C390")
    assert "grazing" not in hay.words
    assert told(data, "2026-10-13", "C390") == []
    assert told(sprayed(waiting(), SPRAYED), "2026-09-23", "C390") == []


def test_the_wait_before_another_crop_is_no_wait_before_grazing() -> None:
    data = sprayed(waiting(("dogs", 0)), SPRAYED)
    assert told(data, "2026-09-22", "C390") == []


def test_hunting_in_a_wait_that_runs_is_told_on_the_place() -> None:
    lines, days = (("game", 21), ("dogs", 3)), {"first": "2026-10-12", "last": "2026-11-30"}
    data = sprayed(waiting(*lines, **days), SPRAYED)
    (caution,) = told(data, "2026-10-01", "C391")
    # Oct 13 is the first day after the wait, so the 12th alone falls into it
    assert "Oct 12, 2026." in caution.words
    assert told(data, "2026-10-13", "C391") == []
    later = sprayed(waiting(*lines, first="2026-10-13", last="2026-11-30"), SPRAYED)
    assert told(later, "2026-10-01", "C391") == []
    grazed = sprayed(waiting(("grazing", 90), **days), SPRAYED)
    assert told(grazed, "2026-10-01", "C391") == []
    elsewhere = sprayed(waiting(*lines, **days), SPRAYED)
    elsewhere["dates"]["dates"][0]["places"] = ["other"]
    elsewhere["screens"]["screens"].append(
        {"id": "other", "name": "Other", "length_ft": 9, "width_ft": 9}
    )
    assert told(elsewhere, "2026-10-01", "C391") == []


def test_hunting_in_the_wait_of_a_planned_spraying_is_told_on_its_job() -> None:
    # the kill closes on Sep 27, 2026; 20 days after are Oct 17
    for first, count in (("2026-10-16", 1), ("2026-10-17", 0)):
        data = waiting(("game", 20), first=first, last="2026-12-01")
        found = told(data, "2026-08-20", "C391", KILL)
        assert len(found) == count
    assert stops_of(planned(data)) == set()


def test_a_wait_left_out_is_asked_once_it_is_sprayed_as_long_as_it_may_run() -> None:
    data = sprayed(waiting(("game", 30)), SPRAYED)
    product = data["products"]["products"][0]
    gap = full_use()
    del gap["waiting_days"]
    data["products"]["products"].append(product | {"id": "second", "label": full_card(gap)})
    data["log"]["entries"][0]["used"] = [{"item": "second", "amount_fl_oz": 32}]
    # 30 days are the longest on any card: until Oct 22, 2026
    (asked,) = told(data, "2026-10-21", "C392")
    assert "type waiting_days" in asked.to_type
    assert told(data, "2026-10-22", "C392") == []
    data["products"]["products"][1]["label"]["uses"][0]["waiting_days"] = "not_on_label"
    assert told(data, "2026-10-21", "C392") == []


def test_other_readers_are_told_to_keep_off_and_no_dates() -> None:
    data = sprayed(waiting(("game", 21), first="2026-10-01", last="2026-11-30"), SPRAYED)
    plan = make_plan(inventory_of(data), SEASON, datetime.date(2026, 10, 1))
    seen = seen_by(plan, inventory_of(data).readers[0])
    found = [one for one in seen.findings if one.code in ("C390", "C391")]
    # looking again opens within the wait, the sowing of January does not
    assert {one.subject for one in found} == {f"strip-1/{SEASON}/look_again"}
    assert {one.code for one in found} == {"C390", "C391"}
    for one in found:
        assert one.figures == ()
        assert "2026" not in one.words
