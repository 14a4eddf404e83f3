"""Views of the budget: each is the same lines in other groups, and no way to look changes a sum."""

import copy
import math
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.book.money_views import totals
from generator.book.table_rows import LINE_COLUMNS, line_rows
from generator.book.tables import budget_table
from generator.plan.model.plan import Plan
from generator.plan.money.budget import WITHOUT_COST, planting_total, season_total
from generator.plan.money.money_hours import hours_in_all
from generator.working import Quantity, replay
from tests.plan.planned import planned
from tests.properties import Data, full_card, full_use, property_data, small_property, the_work
from tests.properties_money import MACHINES

BY = ("season", "job", "place", "planting", "kind", "item", "unit")
SEEDS = st.integers(min_value=0, max_value=10**6)


def generated(seed: int) -> Plan:
    return planned(property_data(seed, random.Random(seed).randint(2, 5)))


@settings(max_examples=15, deadline=None)
@given(seed=SEEDS)
def test_every_view_has_each_line_once_and_the_sum_of_the_table(seed: int) -> None:
    plan = generated(seed)
    table = budget_table(line_rows(plan)).frame
    assert list(table.columns) == list(LINE_COLUMNS)
    assert len(table) == len(plan.lines)
    known = table["cost_usd"].dropna().sum()
    costing = [line for line in plan.lines if line.kind != WITHOUT_COST]
    for column in BY:
        groups = totals(plan, column)
        in_groups = [line for one in groups for line in one.lines]
        assert sorted(map(repr, in_groups)) == sorted(map(repr, costing))
        costs = [one.cost.value for one in groups if one.cost is not None]
        assert math.fsum(costs) == pytest.approx(known, rel=1e-9, abs=1e-9)
        for one in groups:
            # the working of a total is its lines
            without = {line for line in one.lines if line.cost is None}
            assert set(one.unpriced) == without
            if one.cost is not None:
                _, parts = one.cost.inputs[0]
                assert parts == tuple(line.cost for line in one.lines if line.cost is not None)


@settings(max_examples=15, deadline=None)
@given(seed=SEEDS)
def test_groups_agree_with_the_table_s_own_sums(seed: int) -> None:
    plan = generated(seed)
    table = budget_table(line_rows(plan)).frame
    for column in ("planting", "item"):
        sums = table.groupby(column)["cost_usd"].sum()
        for one in totals(plan, column):
            cost = one.cost.value if one.cost is not None else 0
            assert cost == pytest.approx(sums[one.key], rel=1e-9, abs=1e-9)


@settings(max_examples=15, deadline=None)
@given(seed=SEEDS)
def test_the_season_and_each_planting_are_totalled_as_their_tables_are(seed: int) -> None:
    plan = generated(seed)
    seasons = [one for one in totals(plan, "season") if one.key == str(plan.season)]
    assert [season_total(plan)] == (seasons or [None])
    plantings = totals(plan, "planting")
    assert tuple(planting_total(plan, one.key) for one in plantings) == plantings
    assert planting_total(plan, "none such") is None


@settings(max_examples=15, deadline=None)
@given(seed=SEEDS)
def test_what_is_needed_is_the_sum_of_the_lines_of_a_thing(seed: int) -> None:
    data = property_data(seed, 3)
    del data["log"]
    plan = planned(data)
    amounts = budget_table(line_rows(plan)).frame.groupby("item")["amount"].sum()
    bought = plan.buying.purchases
    assert {one.item.id for one in bought} <= set(amounts.index)
    for one in bought:
        assert one.needed.value == pytest.approx(amounts[one.item.id], rel=1e-9)
        values = [part.value for part in one.needed.inputs[0][1] if isinstance(part, Quantity)]
        assert replay(one.needed.formula.text, {"parts": values}) == one.needed.value


def machined(length_ft: float) -> Data:
    """The small property with every kind of line on it, so long."""
    data = small_property(full_card(full_use()), machine="mower")
    the_work(data).append({"step": "first_summer_mowing", "machine": "mower"})
    data["equipment"]["machines"] = copy.deepcopy(MACHINES)
    data["screens"]["screens"][0]["length_ft"] = length_ft
    del data["readers"]
    return data


def hire(data: Data, plantings: list[str]) -> Data:
    jobs = [{"planting": one, "steps": ["autumn_kill"]} for one in plantings]
    crew = {"id": "crew", "jobs": jobs, "price_usd_per_ac": 60, "minimum_usd": 55}
    data["money"] = {"hires": [crew]}
    return data


@settings(max_examples=15, deadline=None)
@given(
    length_ft=st.integers(min_value=400, max_value=3000),
    cut=st.floats(min_value=0.1, max_value=0.9),
)
def test_a_place_parted_in_two_changes_no_total(length_ft: int, cut: float) -> None:
    whole = planned(hire(machined(length_ft), ["lane-27"]))
    data = machined(length_ft * cut)
    other = copy.deepcopy(data["screens"]["screens"][0])
    other |= {"id": "back", "name": "Back", "known_as": "Strip 2"}
    other["length_ft"] = length_ft * (1 - cut)
    other["plantings"][0]["id"] = "back-27"
    data["screens"]["screens"].append(other)
    parted = planned(hire(data, ["lane-27", "back-27"]))
    for column in ("season", "kind", "item"):
        one = {row.key: row.cost.value for row in totals(whole, column) if row.cost is not None}
        two = {row.key: row.cost.value for row in totals(parted, column) if row.cost is not None}
        assert two == pytest.approx(one, rel=1e-9)
    for purchase, same in zip(whole.buying.purchases, parted.buying.purchases, strict=True):
        assert same.packages is not None
        assert purchase.packages is not None
        assert same.packages.value == purchase.packages.value
    hours = [hours_in_all(plan.times, plan.season) for plan in (whole, parted)]
    assert hours[0] is not None
    assert hours[1] is not None
    assert hours[1].value == pytest.approx(hours[0].value, rel=1e-9)


def test_a_table_without_lines_has_no_groups() -> None:
    data = small_property()
    data["property"]["season"] = 2030
    plan = planned(data | {"screens": {"screens": []}, "readers": {"readers": []}})
    assert len(budget_table(line_rows(plan)).frame) == 0
    assert totals(plan, "planting") == ()
