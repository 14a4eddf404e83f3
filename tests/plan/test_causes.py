"""One slip in a catch test stops many jobs: it is told first, and each of them points at it."""

import datetime
from collections.abc import Callable
from typing import Any

import pytest

from generator.book.in_lines import cause_lines
from generator.plan.build.season_plan import make_plan
from generator.plan.model.finding import Finding
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import KILL, inventory_of, planned
from tests.plan.test_out_of_usual import sprayer
from tests.plan.test_tank_mixes import percent
from tests.properties import Data, full_card, full_use, small_property


def caught(*fl_oz: float) -> Data:
    data = small_property()
    sprayer(data)["catch_tests"][0]["caught_fl_oz"] = list(fl_oz)
    return data


def causes(plan: Plan) -> list[tuple[str, str]]:
    return [(one.code, one.cause) for one in plan.findings if one.cause]


@pytest.mark.parametrize(
    ("fl_oz", "asked"),
    [
        ([32, 32, 32, 32, 32, 32], False),
        ([32, 29, 32, 35, 32, 32], False),  # within a tenth
        ([48, 32, 32, 32, 32, 32], False),  # 38% over the mean, a bad nozzle
        ([17, 33, 33, 33, 33, 33], False),  # half stopped up
        ([320, 32, 32, 32, 32, 32], True),
        ([32, 32, 32, 32, 32, 3.2], True),
        ([320, 32], True),
        ([320], False),  # alone it is told by what it puts on an acre
    ],
)
def test_a_nozzle_ten_times_off_is_told_by_its_number(fl_oz: list[float], asked: bool) -> None:
    found = [one for one in planned(caught(*fl_oz)).findings if one.code == "C413"]
    assert len(found) == asked
    for one in found:
        far = max(range(len(fl_oz)), key=lambda at: abs(fl_oz[at] - sum(fl_oz) / len(fl_oz)))
        assert f"nozzle {far + 1} of {len(fl_oz)}" in one.words
        *_, (_, typed) = one.figures
        assert getattr(typed, "value", None) == fl_oz[far]
        assert one.subject == "boom"
        assert one.column > 0


def test_a_nozzle_that_is_told_leaves_no_second_caution_of_the_same_test() -> None:
    # 3200 in one of six nozzles give 560 fl oz, 325 gal to an acre
    codes = {one.code for one in planned(caught(3200, 32, 32, 32, 32, 32)).findings}
    assert "C413" in codes
    assert "C405" not in codes


def slip(name: str, value: object) -> Callable[[Data], None]:
    def change(data: Data) -> None:
        one = sprayer(data)
        (one["catch_tests"][0] if name not in one else one)[name] = value

    return change


@pytest.mark.parametrize(
    ("change", "cause"),
    [
        (slip("caught_fl_oz", [320, 32, 32, 32, 32, 32]), "C413 boom"),
        (slip("caught_fl_oz", [320] * 6), "C405 boom"),
        (slip("speed_mph", 40), "C404 boom"),
        (slip("nozzle_spacing_in", 2), "C404 boom"),
    ],
)
def test_a_stop_over_the_spray_on_an_acre_points_at_the_slip(
    change: Callable[[Data], None], cause: str
) -> None:
    data = small_property()
    change(data)
    plan = planned(data)
    assert causes(plan) == [("S120", cause)]
    first, stop = plan.findings[0], next(one for one in plan.findings if one.cause)
    assert first.id == cause
    assert stop.severity == "stop"
    assert stop.cure.startswith(f"First look at {cause.split()[0]} on Boom: ")
    assert "change nozzle, pressure or speed" in stop.cure
    job = next(one for one in plan.jobs if one.id == KILL)
    assert (job.mix, job.numbers) == (None, {})


@pytest.mark.parametrize(("covered", "cause"), [(34.03125, "C405 boom"), (340.3125, "")])
def test_a_percent_of_too_much_spray_does_not_blame_the_typed_rate(
    covered: float, cause: str
) -> None:
    # 30 fl oz over 34 sq ft are 300 gal to an acre, and one percent of them 384 fl oz; with the
    # right ground 1.7 percent are 65 fl oz, over the 64 of the card
    data = percent(1 if cause else 1.7)
    sprayer(data)["catch_tests"][0]["covered_sq_ft"] = covered
    stops = [one for one in planned(data).findings_on(KILL) if one.severity == "stop"]
    assert {one.code for one in stops} >= {"S110", "S111"}
    for one in stops:
        assert one.cause == cause
        assert "typed rate" not in one.words
        assert "its percent of the spray that the last catch test puts on" in one.words
        assert "the ground that took it" in one.cure


def test_a_tank_that_is_off_is_no_cause_of_spray_outside_the_card() -> None:
    data = small_property(full_card(full_use(carrier_gal_per_ac={
        "low_gal_per_ac": 20, "high_gal_per_ac": 30})))  # fmt: skip
    sprayer(data)["tank_gal"] = 0.25
    plan = planned(data)
    assert "C404 boom" in {one.id for one in plan.findings}
    assert {one.cause for one in plan.findings if one.code == "S120"} == {""}


def test_a_rate_to_an_acre_is_wrong_by_itself_whatever_the_catch() -> None:
    data = caught(320, 32, 32, 32, 32, 32)
    data["screens"]["screens"][0]["plantings"][0]["work"][0]["rate_product_fl_oz_per_ac"] = 640
    stops = [one for one in planned(data).findings_on(KILL) if one.severity == "stop"]
    assert {one.code: one.cause for one in stops} == {"S110": "", "S111": "", "S112": ""}
    assert all("typed rate" in one.words for one in stops)


def test_nothing_points_anywhere_where_the_catch_is_usual() -> None:
    assert causes(planned(small_property())) == []


def found(code: str, subject: str, severity: Any, cause: str = "") -> Finding:
    return Finding(code, severity, subject, "", "", "", "f.yaml:3", cause=cause, column=7)


def test_jobs_that_one_slip_stops_are_summed_up() -> None:
    slip_of = [found("C413", "cart", "caution"), found("C405", "pack", "caution")]
    stops = [found("S120", f"job-{number}", "stop", "C413 cart") for number in range(9)]
    spots = [found(code, "job-10", "stop", "C405 pack") for code in ("S110", "S111")]
    beside = [found("C209", "job-11", "caution", "C405 pack")]
    assert cause_lines([*slip_of, *stops, *spots, *beside]) == [
        "9 jobs stop because of C413 cart, f.yaml:3:7: see it first.",
        "1 job stops because of C405 pack, f.yaml:3:7: see it first.",
    ]
    assert cause_lines(planned(small_property()).findings) == []


def test_what_is_handed_over_names_no_cause() -> None:
    inventory = inventory_of(caught(320, 32, 32, 32, 32, 32))
    plan = make_plan(inventory, 2027, datetime.date(2026, 8, 20))
    seen = seen_by(plan, inventory.readers[0])
    assert causes(plan)
    assert causes(seen) == []
