"""What a tank held before a job: last, by the log, or by a job that is planned before it."""

import copy
import datetime
from dataclasses import replace
from typing import Any

import pytest

from generator.inventory.equipment import LastLoad
from generator.inventory.places import Partner
from generator.inventory.schema import Inventory
from generator.plan.build.season_jobs import SeasonJobs, season_jobs
from generator.plan.build.season_plan import make_plan
from generator.plan.build.typed_and_logged import typed_and_logged
from generator.plan.jobs.request import JobRequest
from generator.plan.labels.history import harm_of
from generator.plan.log.told import sprayings_of
from generator.plan.model.finding import Finding
from generator.plan.model.plan import Plan
from generator.plan.spraying.tank_before import tank_before_findings
from generator.plan.spraying.tank_log import with_logged_loads
from tests.plan.planned import BURN_DOWN, KILL, inventory_of, job_of
from tests.properties import SEASON, Data, full_card, full_use, small_property, the_work

TANK = ("S154", "C241", "C313")
BEFORE = datetime.date(2026, 8, 20)
WITHIN = datetime.date(2026, 9, 20)  # within the open dates of the fall kill, after both entries


def grass_killer_first() -> Data:
    """A grass killer through the boom on the first place, then the boom over the second one."""
    data = small_property()
    killer = copy.deepcopy(data["products"]["products"][0]) | {"id": "killer", "name": "Killer"}
    killer["label"]["actives"][0] |= {
        "active": "made-up active killdeer",
        "works_as": ["grass_killer"],
    }
    data["products"]["products"].append(killer)
    with_other_place(data)
    the_work(data)[0]["product"] = "killer"
    return data


def with_other_place(data: Data) -> None:
    screens = data["screens"]["screens"]
    other = copy.deepcopy(screens[0]) | {"id": "far", "name": "Far screen", "known_as": "Strip 2"}
    other["plantings"][0]["id"] = "far-27"
    screens.append(other)
    boom = data["equipment"]["sprayers"][0]
    data["equipment"]["sprayers"].append(copy.deepcopy(boom) | {"id": "cart", "name": "Cart"})


def of_far(data: Data, day: datetime.date = BEFORE) -> set[str]:
    """What is said of the tank before the kill on the second place."""
    plan = make_plan(inventory_of(data), SEASON, day)
    return {one.code for one in plan.findings_on(FAR) if one.code in TANK}


FAR = f"far/{SEASON}/autumn_kill"


def logged(data: Data, *entries: Data) -> Data:
    told = [{"id": f"e-{number}"} | one for number, one in enumerate(entries)]
    return data | {"log": {"entries": told}}


def sprayed(day: str, **more: Any) -> Data:
    job = {"planting": "lane-27", "step": "autumn_kill", "area_ac": 1, "finished": True}
    used = [{"item": "killer", "amount_fl_oz": 32}]
    return {"done_on": day, "job": job, "used": used, "sprayed": {"sprayer": "boom"} | more}


def cleaned(day: str, sprayer: str = "boom") -> Data:
    return {"done_on": day, "cleaned_out": {"sprayer": sprayer}}


def test_a_job_planned_before_in_the_same_sprayer_is_a_caution() -> None:
    assert of_far(grass_killer_first()) == {"C313"}


def test_another_sprayer_cures_it() -> None:
    data = grass_killer_first()
    data["screens"]["screens"][1]["plantings"][0]["work"][0]["sprayer"] = "cart"
    assert of_far(data) == set()


def test_what_harms_nothing_or_goes_in_again_says_nothing() -> None:
    data = grass_killer_first()
    killer = data["products"]["products"][1]["label"]["actives"][0]
    killer["works_as"] = ["auxin"]
    assert of_far(data) == set()
    killer["works_as"] = []  # nobody knows what it does
    assert of_far(data) == {"C313"}
    plan = make_plan(inventory_of(data), SEASON, BEFORE)
    (one,) = (each for each in plan.findings_on(FAR) if each.code == "C313")
    assert "How it works is not known from its card" in one.words
    assert one.to_type.endswith("type actives: with works_as: on the card of Killer.")
    killer["active"] = "made-up active A"
    assert of_far(data) == set()


def test_logged_it_is_a_stop_until_a_clean_out_after_it_is_logged() -> None:
    data = grass_killer_first()
    assert of_far(logged(data, sprayed("2026-09-14")), WITHIN) == {"S154"}
    with_clean = logged(data, sprayed("2026-09-14"), cleaned("2026-09-15"))
    assert of_far(with_clean, WITHIN) == set()
    too_early = logged(data, sprayed("2026-09-14"), cleaned("2026-09-13"))
    assert of_far(too_early, WITHIN) == {"S154"}
    another = logged(data, sprayed("2026-09-14"), cleaned("2026-09-15", "cart"))
    assert of_far(another, WITHIN) == {"S154"}
    elsewhere = logged(data, sprayed("2026-09-14", sprayer="cart"))
    assert of_far(elsewhere, WITHIN) == set()


def test_an_entry_without_a_sprayer_used_the_one_of_its_job() -> None:
    entry = sprayed("2026-09-14")
    del entry["sprayed"]
    assert of_far(logged(grass_killer_first(), entry), WITHIN) == {"S154"}


def test_all_that_went_in_since_the_clean_out_may_have_left_a_trace() -> None:
    data = grass_killer_first()
    harmless = {"done_on": "2026-09-16", "sprayed": {"sprayer": "boom", "location": "yard"},
                "used": [{"item": "brew", "amount_fl_oz": 3}]}  # fmt: skip
    assert of_far(logged(data, sprayed("2026-09-14"), harmless), WITHIN) == {"S154"}
    between = logged(data, sprayed("2026-09-14"), cleaned("2026-09-15"), harmless)
    assert of_far(between, WITHIN) == set()


@pytest.mark.parametrize(
    ("cleaned_on", "stopped"),
    [
        ("2026-07-01", False),  # on the day of the load, typed beside it: after it
        ("2026-09-20", False),
        ("2026-09-27", False),  # the last day of the kill
        ("2026-09-28", True),
        ("2027-01-15", True),
    ],
)
def test_a_clean_out_after_the_last_day_of_the_job_does_it_no_good(
    cleaned_on: str, stopped: bool
) -> None:
    data = small_property()
    held = {"sprayed_on": "2026-07-01", "works_as": ["grass_killer"], "cleaned_out_on": cleaned_on}
    data["equipment"]["sprayers"][0]["last_load"] = held
    plan = make_plan(inventory_of(data), SEASON, datetime.date(2027, 1, 20))
    closes = job_of(plan).dates.closes
    assert closes is not None
    assert closes.isoformat() < "2027-01-15"
    assert ("S154" in {one.code for one in plan.findings_on(KILL)}) == stopped


def test_an_auxin_over_a_legume_sown_in_the_same_season() -> None:
    """The kill is of sod; the second place is of clover, and the boom goes over it later."""
    data = grass_killer_first()
    data["products"]["products"][1]["label"]["actives"][0]["works_as"] = ["auxin"]
    far = data["screens"]["screens"][1]["plantings"][0]
    lot = copy.deepcopy(data["seed"]["lots"][0]) | {"id": "ib", "species": "illinois-bundleflower"}
    data["seed"]["lots"].append(lot)
    far["seed"] = [{"species": lot["species"], "lot": "ib", "rate_pls_lb_per_ac": 1}]
    assert of_far(data) == {"C313"}


def caution(plan: Plan) -> Finding:
    (one,) = (one for one in plan.findings_on(BURN_DOWN) if one.code == "C313")
    return one


def test_it_says_which_product_of_which_job_in_which_sprayer() -> None:
    data = grass_killer_first()
    later = copy.deepcopy(the_work(data)[0]) | {"step": "spring_burn_down", "product": "brew"}
    the_work(data).append(later)
    data["products"]["products"][0]["label"] = full_card(
        full_use(), full_use("after_sowing_before_emergence")
    )
    plan = make_plan(inventory_of(data), SEASON, BEFORE)
    words = caution(plan).words
    assert "Boom may hold Killer before this job, from Kill the sod" in words
    assert "Lane screen. It is a grass killer: a trace of it harms what grows" in words
    assert caution(plan).cure.endswith("with another sprayer.")


@pytest.mark.parametrize(
    ("typed_on", "day", "held"),
    [
        ("2026-09-09", "2026-09-14", ("brew",)),
        ("2026-09-14", "2026-09-14", ("brew",)),  # of the day of the last load: the log tells it
        ("2026-09-15", "2026-09-15", ("killer",)),
        (None, "2026-09-14", ("brew",)),
    ],
)
def test_of_a_clean_tank_the_last_load_is_kept_with_the_day_it_was_cleaned(
    typed_on: str | None, day: str, held: tuple[str, ...]
) -> None:
    """Killer on the 10th, brew on the 14th by the log; killer typed; cleaned on the 20th."""
    data = grass_killer_first()
    if typed_on is not None:
        load = {"sprayed_on": typed_on, "product": "killer"}
        data["equipment"]["sprayers"][0]["last_load"] = load
    brew = sprayed("2026-09-14") | {"used": [{"item": "brew", "amount_fl_oz": 32}]}
    del brew["job"]["finished"]
    killer = sprayed("2026-09-10")
    del killer["job"]["finished"]
    last = last_load_of(data, killer, brew, cleaned("2026-09-20"))
    assert (str(last.sprayed_on), last.product) == (day, held)
    assert str(last.cleaned_out_on) == "2026-09-20"


def last_load_of(data: Data, *entries: Data) -> LastLoad:
    """What the boom held last, as what is typed and the log say it together."""
    inventory = inventory_of(logged(data, *entries))
    found = with_logged_loads(inventory, inventory.entries, sprayings_of(inventory))
    last = found.sprayers[0].last_load
    assert last is not None
    return last


@pytest.mark.parametrize(
    ("typed", "unknown"),
    [
        ({"product": "killer"}, False),
        ({"works_as": ["auxin"]}, False),
        ({"product": "killer", "unknown": True}, True),
        ({}, True),  # it held something, and nobody says what
    ],
)
@pytest.mark.parametrize("entries", [(), (sprayed("2026-09-14"),)])
def test_a_typed_load_that_may_have_held_more_stays_unknown(
    typed: Data, unknown: bool, entries: tuple[Data, ...]
) -> None:
    data = grass_killer_first()
    data["equipment"]["sprayers"][0]["last_load"] = {"sprayed_on": "2026-09-01"} | typed
    assert bool(last_load_of(data, *entries).unknown) == unknown


@pytest.mark.parametrize(
    ("said", "unknown"),
    [({}, True), ({"new": True}, False), ({"cleaned_out_on": "2026-09-01"}, False)],
)
def test_before_the_first_load_that_is_known_a_tank_may_have_held_anything(
    said: Data, unknown: bool
) -> None:
    data = grass_killer_first()
    boom = data["equipment"]["sprayers"][0]
    del boom["last_load"]
    boom |= said
    assert bool(last_load_of(data, sprayed("2026-09-14")).unknown) == unknown


def test_a_product_without_a_card_does_itself_no_harm() -> None:
    """The boom over the first place, then over the second, with the same product in it."""
    data = small_property()
    with_other_place(data)
    del data["products"]["products"][0]["label"]
    assert of_far(data) == set()
    data["products"]["products"].append(data["products"]["products"][0] | {"id": "second"})
    the_work(data)[0]["product"] = "second"
    assert of_far(data) == {"C313"}


def planned_of_season(data: Data) -> tuple[Inventory, SeasonJobs]:
    """The jobs of a season as the plan's second stage has them."""
    logged_so_far = typed_and_logged(inventory_of(data), SEASON, BEFORE)
    return logged_so_far.inventory, season_jobs(logged_so_far)


def asked_for(season: SeasonJobs, job_id: str) -> JobRequest:
    return next(request for request in season.requests if request.job_id == job_id)


@pytest.mark.parametrize(("later", "told"), [(0, True), (1, False)])
def test_a_job_that_opens_on_the_last_day_of_another_may_come_before_it(
    later: int, told: bool
) -> None:
    inventory, season = planned_of_season(grass_killer_first())
    mine, other = asked_for(season, FAR), asked_for(season, KILL)
    closes = mine.dates.closes
    assert closes is not None
    opens = closes + datetime.timedelta(days=later)
    other = replace(other, dates=replace(other.dates, opens=opens, closes=None))
    found = tank_before_findings(
        (mine,), (mine, other), season.states, inventory.products, inventory.sprayers
    )
    assert [one.code for one in found] == (["C313"] if told else [])


def test_what_goes_in_again_is_known_of_a_job_that_names_its_product_alone() -> None:
    inventory, season = planned_of_season(grass_killer_first())
    request = asked_for(season, KILL)
    killer = next(product for product in inventory.products if product.id == "killer")
    assert request.work is not None
    assert harm_of(request, [killer], []) is None
    partner = Partner(where=request.work.where, product="killer")
    for nameless in (
        replace(request, work=None),
        replace(request, work=replace(request.work, product=None)),
        replace(request, work=replace(request.work, product=None, partners=(partner,))),
    ):
        assert harm_of(nameless, [killer], []) is not None


def of_one_load(**more: Any) -> Data:
    """A story of two places sprayed from one load of a grass killer, cleaned out in the second."""
    data = grass_killer_first()
    job = {"planting": "far-27", "step": "spring_burn_down", "area_ac": 1}
    used = [{"item": "killer", "amount_fl_oz": 32}]
    second = {"done_on": "2026-08-10", "job": job, "used": used}
    second |= {"sprayed": {"sprayer": "boom"} | more, "cleaned_out": {"sprayer": "boom"}}
    return logged(data, sprayed("2026-08-10"), second)


def test_one_clean_out_counts_for_all_entries_of_a_load() -> None:
    # the same day and apart, nobody knows which came first; as one load the clean-out is after it
    assert "S154" in of_far(of_one_load())
    assert "S154" not in of_far(of_one_load(same_load_as="e-0"))


def test_entries_of_one_load_are_one_load_of_the_tank() -> None:
    data = of_one_load(same_load_as="e-0")
    inventory = inventory_of(data)
    told = sprayings_of(inventory)
    with_loads = with_logged_loads(inventory, inventory.entries, told)
    boom = next(one for one in with_loads.sprayers if one.id == "boom")
    assert boom.last_load is not None
    assert boom.last_load.product == ("killer",)
    assert boom.last_load.cleaned_out_on == datetime.date(2026, 8, 10)
