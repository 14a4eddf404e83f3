"""What each job asks of a day, held to the label typed, the hours counted and the kind of work."""

import datetime

import pytest

from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.plan.views.day_asks import DayAsks, day_asks
from generator.reference.operations import operations
from tests.book.sites import DEMO, plans_of
from tests.plan.planned import KILL, inventory_of, planned
from tests.plan.test_spray_records import JOB, entry, with_log
from tests.properties import SEASON, Data, full_card, full_use, small_property, the_work


@pytest.fixture(scope="module")
def demo() -> Plan:
    """The owner's plan of the demo property."""
    return plans_of(DEMO)["owner"]


def asked(plan: Plan) -> dict[str, DayAsks]:
    return {asks.job.id: asks for asks in day_asks(plan)}


def test_every_job_that_can_come_and_has_days_asks_once(demo: Plan) -> None:
    jobs = (*demo.jobs, *demo.upkeep)
    expected = {job.id for job in jobs if job.state.is_ahead and job.usable}
    found = [asks.job.id for asks in day_asks(demo)]
    assert len(found) > 100
    assert sorted(found) == sorted(expected)
    closing = [asks.job.usable[-1][1] for asks in day_asks(demo)]
    assert closing == sorted(closing)


def test_a_spraying_asks_for_the_wind_and_the_dry_hours_of_its_label() -> None:
    """Typed: 4 to 8 mph and 5 hours; no machine is named, so the work counts as a day of 24."""
    card = full_card(full_use(wind_mph={"low_mph": 4, "high_mph": 8}), rainfast_hours=5)
    asks = asked(planned(small_property(card)))[KILL]
    assert asks.stop is None
    assert asks.wind is not None
    assert (asks.wind.low.value, asks.wind.high.value) == (4, 8)
    assert asks.hours is None
    assert asks.dry_hours == 29
    assert asks.warm is not None
    assert asks.warm.name == "growing_day_f"
    assert asks.night is not None
    assert asks.night.name == "cool_night_f"


def test_dry_hours_are_those_of_the_work_and_of_the_label_together(demo: Plan) -> None:
    """By the demo's files: 0.256 hours with the cart, and its label's 6 hours."""
    asks = asked(demo)["lane/2027/autumn_kill"]
    assert asks.hours is not None
    assert asks.hours.printed() == "0.256 hours"
    assert asks.dry_hours == pytest.approx(6 + asks.hours.value)
    assert asks.takes == (
        "Demo weed killer A", "Water conditioner, soluble powder", "Cart sprayer",
        "Garden tractor with the cart sprayer",
    )  # fmt: skip


def test_the_ground_that_a_kind_of_work_needs(demo: Plan) -> None:
    """Frozen ground carries a mower, takes no plow and no seed; a residual is for thawed soil."""
    grounds = {asks.job.step.does.id: asks.ground for asks in day_asks(demo)}
    assert grounds["mow"] == ("frozen", "firm")
    for does in ("till", "plant", "roll", "lime", "fertilize"):
        assert grounds[does] == ("firm",), does
    sown = {asks.job.step.suits: asks.ground for asks in day_asks(demo) if asks.job.step.does.sows}
    assert sown == {"ground": ("firm",), "frost_seeding": ()}
    residual = [asks for asks in day_asks(demo) if asks.job.step.suits == "residual"]
    assert {asks.ground for asks in residual} == {("firm", "soft")}


def test_seed_sown_on_frost_asks_for_frost_and_thaw(demo: Plan) -> None:
    sown = [asks for asks in day_asks(demo) if asks.job.step.suits == "frost_seeding"]
    assert sown
    for asks in sown:
        assert asks.frost is not None
        assert asks.warm is not None
        assert (asks.frost.name, asks.warm.name) == ("freezes_f", "thaws_f")


def test_nobody_burns_climbs_or_saws_alone() -> None:
    """Of the callouts: "nobody alone", "Two people", "Never alone"."""
    alone = {kind.id for kind in operations().values() if kind.not_alone}
    assert alone == {"burn", "inspect", "cut"}


def test_a_stop_of_the_job_is_told_and_one_of_its_thing_beside_it(demo: Plan) -> None:
    found = asked(demo)
    stopped = {finding.subject.id for finding in demo.findings if finding.severity == "stop"}
    assert {job_id for job_id, asks in found.items() if asks.stop} == stopped & found.keys()
    assert len(stopped & found.keys()) >= 5
    lanes = [asks for asks in found.values() if asks.job.id.startswith("oak/")]
    assert lanes
    assert {asks.stop_on_it.code for asks in lanes if asks.stop_on_it} == {"S331"}


def test_jobs_on_one_walk(demo: Plan) -> None:
    """In the demo's files the Ridge walk leads to two stands and is hidden by two screens."""
    on_it = {asks.job.id.partition("/")[0] for asks in day_asks(demo) if "ridge-walk" in asks.walks}
    assert on_it == {"ridge-walk", "ridge-stand", "north-stand", "ridge", "north"}


def _two(**second: object) -> Data:
    """The small property with a second screen that is sprayed as the first, but for `second`."""
    data = small_property()
    (first,) = data["screens"]["screens"]
    (planting,) = first["plantings"]
    works = [{**work, **second} for work in planting["work"]]
    data["screens"]["screens"].append(
        {**first, "id": "far", "name": "Far screen", "known_as": "Strip 9"}
        | {"plantings": [{**planting, "id": "far-27", "work": works}]}
    )
    return data


def test_one_mix_is_the_same_products_at_the_same_rates_in_the_same_sprayer() -> None:
    rate = next(key for key in the_work(small_property())[0] if key.startswith("rate_"))
    far = KILL.replace("lane/", "far/")
    alike = asked(planned(_two()))
    assert alike[KILL].load
    assert alike[KILL].load == alike[far].load
    value = the_work(small_property())[0][rate]
    other = asked(planned(_two(**{rate: value * 0.9})))
    assert other[KILL].load != other[far].load


def test_others_mix_by_their_sheets_and_their_hours_are_their_own() -> None:
    for name, plan in plans_of(DEMO).items():
        if name != "owner":
            found = day_asks(plan)
            assert {asks.job.id for asks in found} <= {job.id for job in (*plan.jobs, *plan.upkeep)}
            assert all(asks.hours is None and not asks.load for asks in found)


def test_sprayed_ground_keeps_out_until_its_day_and_others_until_they_are_told() -> None:
    """Sprayed on Sep 14 with twelve hours on the card: over in the course of the next day."""
    data = with_log(entry(job=JOB | {"finished": False}))
    handed = [{"planting": "lane-27", "steps": ["all"]}]
    data["readers"] = {"readers": [{"id": "crew", "kind": "contractor", "jobs": handed}]}
    inventory = inventory_of(data)
    plan = make_plan(inventory, SEASON, datetime.date(2026, 9, 15))
    assert asked(plan)[KILL].kept_out == datetime.date(2026, 9, 15)
    (theirs,) = (
        asks
        for asks in day_asks(seen_by(plan, inventory.readers[0]))
        if asks.job.step.id == "autumn_kill"
    )
    assert theirs.kept_out == datetime.date.max
    later = make_plan(inventory, SEASON, datetime.date(2026, 9, 16))
    assert asked(later)[KILL].kept_out is None
