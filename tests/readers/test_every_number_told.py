"""The owner is told of every released number that rests on something hidden: of all, and no other.

What is told is held against a walk through all fields of what a reader is handed, by name of none.
"""

import datetime
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass, replace
from pathlib import Path

import pytest

from generator.inventory.load import load_inventory
from generator.inventory.schema import Inventory
from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Handed, Plan
from generator.plan.model.work import RowsWork, SowWork, SprayWork, SpreadWork
from generator.plan.readers.seen_by import seen_by
from generator.plan.views.numbers import numbers_of
from generator.working import Figure, Quantity, Withheld, flat_inputs
from tests.plan.planned import AS_OF, inventory_of
from tests.properties import SEASON, property_data
from tests.readers.test_non_interference import made
from tests.readers.test_partner import shared

DEMO = Path(__file__).resolve().parents[2] / "demo_property"
SEEDS = range(12)
Row = tuple[str, float, str, tuple[str, ...]]


def quantities(value: object) -> Iterator[Quantity]:
    """Every computed number anywhere in a value, those it rests on aside."""
    if isinstance(value, Quantity):
        yield value
    elif is_dataclass(value):
        for one in fields(value):
            yield from quantities(getattr(value, one.name))
    elif isinstance(value, Mapping):
        for one in value.values():
            yield from quantities(one)
    elif isinstance(value, tuple | list):
        for one in value:
            yield from quantities(one)


def below(quantity: Quantity) -> Iterator[Quantity]:
    """A computed number and all it rests on, as far as it is not withheld."""
    yield quantity
    for _, one in flat_inputs(quantity):
        if isinstance(one, Quantity):
            yield from below(one)


def withheld_in(quantity: Quantity) -> tuple[str, ...]:
    """The names of what is withheld anywhere below a number."""
    return tuple(
        sorted(
            {
                name
                for number in below(quantity)
                for name, one in flat_inputs(number)
                if isinstance(one, Withheld)
            }
        )
    )


def name_of(identity: str) -> str:
    """The last name of a number, without the lot or item it is of, which has another name."""
    return identity.rpartition("/")[2].rpartition(".")[2]


def in_the_released(plan: Plan) -> Counter[Row]:
    """Every number of a reader's plan below which something is withheld."""
    found = {
        one.identity: one for top in quantities(plan) for one in below(top) if withheld_in(one)
    }
    return Counter(
        (name_of(one.identity), one.value, one.unit, withheld_in(one)) for one in found.values()
    )


def as_told(handed: Handed) -> Counter[Row]:
    """What the owner is told, in the same form; an own name of a number of another place."""
    return Counter(
        (
            name_of(number.identity),
            number.value,
            number.unit,
            tuple(sorted({_input_name(number, one) for one in hidden})),
        )
        for number, hidden in handed.rest_on_hidden
    )


def _input_name(number: Quantity, hidden: str) -> str:
    if "/" not in hidden:
        return hidden
    inputs: Iterator[tuple[str, Figure]] = (
        pair for one in _all_below(number) for pair in flat_inputs(one)
    )
    return next(n for n, one in inputs if isinstance(one, Quantity) and one.identity == hidden)


def _all_below(quantity: Quantity) -> Iterator[Quantity]:
    yield quantity
    for _, one in flat_inputs(quantity):
        if isinstance(one, Quantity):
            yield from _all_below(one)


def demo() -> Inventory:
    inventory = load_inventory(DEMO).inventory
    assert inventory is not None
    return inventory


def check_all_told(inventory: Inventory, season: int, as_of: datetime.date) -> int:
    """Hold what is told to what is released, for every reader; return how many are told."""
    plan = make_plan(inventory, season, as_of)
    assert len(plan.handed) == len(inventory.readers)
    told = 0
    for handed, reader in zip(plan.handed, inventory.readers, strict=True):
        assert handed.reader == reader.id
        assert as_told(handed) == in_the_released(seen_by(plan, reader))
        told += len(handed.rest_on_hidden)
    return told


def test_all_that_the_demo_releases_is_told() -> None:
    assert check_all_told(demo(), 2027, AS_OF) > 0


def test_of_a_spraying_loads_and_doses_are_told_too() -> None:
    # The fall kill and the frost seeding of the lane hold 20, on a length that is not handed
    # over, and what a contractor's own sprayer takes at four volumes 20 more; the ground itself,
    # the length made of it and ten numbers of their workings rest on it as well.
    plan = make_plan(demo(), 2027, AS_OF)
    told = {number.identity for number, _ in plan.handed[0].rest_on_hidden}
    of_jobs = {one.identity for job in plan.jobs for one in job.every_number()} & told
    kill, sown = "lane/2027/autumn_kill", "lane/2027/frost_seeding"
    own = [f"own_{number}" for number in (1, 2, 3, 4)]
    assert of_jobs == {
        *(f"{kill}/{one}_spray_gal" for one in own),
        *(f"{kill}/{one}_load_product_fl_oz" for one in own),
        *(f"{kill}/{one}_load_rate_fl_oz_per_ac" for one in own),
        *(f"{kill}/adjuvant-1.{one}_load_product_oz_wt" for one in own),
        *(f"{kill}/adjuvant-1.{one}_load_rate_lb_per_ac" for one in own),
        f"{kill}/adjuvant-1.last_load_product_oz_wt",
        f"{kill}/adjuvant-1.last_load_rate_lb_per_ac",
        f"{kill}/adjuvant-1.product_oz_wt",
        f"{kill}/all_open_gal",
        f"{kill}/full_loads_count",
        f"{kill}/laid_ac",
        f"{kill}/last_fill_gal",
        f"{kill}/last_load_gal",
        f"{kill}/last_load_left_fl_oz",
        f"{kill}/last_load_product_fl_oz",
        f"{kill}/last_load_rate_fl_oz_per_ac",
        f"{kill}/last_load_whole_gal",
        f"{kill}/last_load_whole_qt",
        f"{kill}/loads_count",
        f"{kill}/product_fl_oz",
        f"{kill}/spray_gal",
        f"{sown}/bulk_seed_lb",
        f"{sown}/fill_lb",
        f"{sown}/fills_count",
        f"{sown}/sg-26a.bulk_seed_lb",
    }
    assert told - of_jobs == {
        "lane/2027/ground/area_ac",
        "lane/2027/ground/length_ft",
        *(f"{kill}/{one}_load_exact_fl_oz" for one in own),
        *(f"{kill}/adjuvant-1.{one}_load_exact_oz_wt" for one in own),
        f"{kill}/adjuvant-1.last_load_exact_oz_wt",
        f"{kill}/last_load_exact_fl_oz",
    }


@pytest.mark.parametrize("seed", SEEDS)
def test_all_that_generated_properties_release_is_told(seed: int) -> None:
    check_all_told(inventory_of(made(seed)), SEASON, AS_OF)


def test_of_a_job_that_is_over_only_the_ground_is_told() -> None:
    # its sheet has no amount left
    plan = make_plan(demo(), 2027, datetime.date(2027, 8, 1))
    check_all_told(demo(), 2027, datetime.date(2027, 8, 1))
    over = {job.id for job in plan.jobs if not job.state.is_ahead}
    assert over & {one for handed in plan.handed for one in handed.job_ids}
    told = [number.identity for handed in plan.handed for number, _ in handed.rest_on_hidden]
    assert told
    assert not [one for one in told if "/".join(one.split("/")[:3]) in over]


def plans() -> Iterator[Plan]:
    yield make_plan(demo(), 2027, AS_OF)
    yield make_plan(inventory_of(shared()), SEASON, AS_OF)
    for seed in SEEDS:
        inventory = inventory_of(property_data(seed, 4))
        yield make_plan(inventory, SEASON, AS_OF)


def test_every_number_of_a_job_is_every_one_that_stands_anywhere_in_it() -> None:
    kinds = set()
    for plan in plans():
        known = numbers_of(plan)
        for job in plan.jobs:
            numbers = {one.identity for one in quantities(job)}
            assert {one.identity for one in job.every_number()} == numbers
            assert numbers <= known.keys()
            assert list(quantities(job.without_amounts())) == []
            kinds |= {type(job.work) for _ in quantities(job.work)}
    assert kinds == {SprayWork, SowWork, SpreadWork, RowsWork}


def test_what_a_job_uses_up_is_among_its_numbers() -> None:
    used = 0
    for plan in plans():
        for job in plan.jobs:
            every = {one.identity for one in job.every_number()}
            for _, _, amount in job.used_up():
                parts = {
                    one.identity for _, one in flat_inputs(amount) if isinstance(one, Quantity)
                }
                assert amount.identity in every or parts <= every
                used += 1
    assert used > 20


def test_no_stopped_job_holds_a_number() -> None:
    stopped = 0
    for plan in plans():
        for job in plan.jobs:
            if any(one.severity == "stop" for one in plan.findings_on(job.id)):
                assert job.every_number() == ()
                stopped += 1
    assert stopped > 5


def test_a_walk_finds_a_number_wherever_it_is_put() -> None:
    plan = make_plan(demo(), 2027, AS_OF)
    number = plan.place("lane").area
    line = replace(plan.jobs[0].safety[0], figure=number)
    job = replace(plan.jobs[0].without_amounts(), safety=(line,))
    assert list(quantities(job)) == [number]
    assert job.every_number() == (number,)
