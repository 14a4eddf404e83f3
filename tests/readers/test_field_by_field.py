"""What is handed over is put together field by field: a new field passes to nobody by itself."""

import ast
from collections.abc import Mapping
from dataclasses import field, fields, is_dataclass
from functools import cache
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

from generator.dataclass import dataclass
from generator.geometry.arcs import OnGround
from generator.inventory.fields import Points
from generator.inventory.land import LandThing
from generator.inventory.places import Route, Stand
from generator.inventory.schema import EmergencyCard
from generator.plan.build.season_plan import make_plan
from generator.plan.model.finding import Finding, SafetyLine
from generator.plan.model.job import DateReason, Job, JobDays, JobState, OpenDates, UpkeepJob
from generator.plan.model.place import DangerNear, KeptOff, LeftOut, Place
from generator.plan.model.plan import Plan
from generator.plan.model.sits import Forbids, KeepAway, SitAhead, StandAnswer
from generator.plan.model.work import (
    AdjuvantPart,
    Dose,
    LimeAsked,
    Load,
    Mix,
    MixPart,
    Nutrient,
    RowPlanted,
    RowsWork,
    Sower,
    Sowing,
    SowWork,
    SprayWork,
    Spreading,
    SpreadWork,
)
from generator.plan.readers import hours_away, land_shown, partner, redacted, released
from generator.plan.readers import seen_by as readers
from generator.plan.readers.redacted import redacted as redacted_record
from generator.plan.readers.seen_by import seen_by
from generator.reference.steps import AnswerNeeded, Bound, Instead, Step
from generator.working import Formula, Given, Measured, Quantity, Reference, Withheld
from tests.plan.planned import AS_OF, inventory_of
from tests.properties import SEASON, property_data
from tests.readers.test_every_number_told import demo
from tests.readers.test_non_interference import made

CANARY = "canaryzq"
MODULES = (released, partner, readers, redacted, hours_away, land_shown)
MADE_ANEW = (
    Job, Mix, MixPart, AdjuvantPart, Load, Dose, Sowing, Spreading, Nutrient, LimeAsked,
    RowPlanted, SprayWork, SowWork, SpreadWork, RowsWork, Sower,
    JobDays, JobState, OpenDates, DateReason, SafetyLine, Step, UpkeepJob, Stand, Route,
    Place, Finding, Quantity, Given, Measured, SitAhead, KeepAway, Forbids, StandAnswer,
    OnGround, DangerNear, LandThing, Points,
    KeptOff, LeftOut,
)  # fmt: skip
# They hold what ships with the program, or a step of the owner's that all who do it read.
PASS_WHOLE = (Bound, AnswerNeeded, Instead, Reference, Formula, Withheld)


def calls(module: ModuleType) -> list[ast.Call]:
    assert module.__file__ is not None
    tree = ast.parse(Path(module.__file__).read_text(encoding="utf-8"))
    return [one for one in ast.walk(tree) if isinstance(one, ast.Call)]


@pytest.mark.parametrize("made_anew", MADE_ANEW, ids=lambda one: one.__name__)
def test_every_field_is_named_where_it_is_put_together(made_anew: type) -> None:
    found = [
        one
        for module in MODULES
        for one in calls(module)
        if isinstance(one.func, ast.Name) and one.func.id == made_anew.__name__
    ]
    assert found
    names = {one.name for one in fields(made_anew)}
    for one in found:
        assert one.args == []
        assert {keyword.arg for keyword in one.keywords} == names


@pytest.mark.parametrize("module", MODULES, ids=lambda one: one.__name__)
def test_nothing_is_copied_with_some_fields_replaced(module: ModuleType) -> None:
    named = {ast.unparse(one.func).rpartition(".")[2] for one in calls(module)}
    assert not named & {"copy", "deepcopy", "asdict", "__replace__"}
    assert not [
        one for one in calls(module) if isinstance(one.func, ast.Name) and one.func.id == "replace"
    ]


@cache
def with_a_field_more(kind: type) -> type:
    """The same kind of thing with one field more, which nobody declared as seen by anyone."""
    more = {"something_new": field(default="", kw_only=True)}
    wider = type(kind.__name__, (kind,), more | {"__annotations__": {"something_new": str}})
    return dataclass(frozen=True, slots=True)(wider)


def salted(value: Any) -> Any:
    """A value in which everything made of fields has one more, with something private in it."""
    if isinstance(value, PASS_WHOLE):
        return value
    if is_dataclass(value) and not isinstance(value, type):
        inner = {one.name: salted(getattr(value, one.name)) for one in fields(value) if one.init}
        return with_a_field_more(type(value))(**inner, something_new=CANARY)
    if isinstance(value, Mapping):
        return {key: salted(one) for key, one in value.items()}
    if isinstance(value, tuple):
        return tuple(salted(one) for one in value)
    return value


def check_nothing_new_passes(plan: Plan, inventory_readers: tuple[Any, ...]) -> None:
    owned: Plan = salted(plan)
    for reader in inventory_readers:
        seen = seen_by(owned, reader)
        assert CANARY not in repr(seen)
        assert repr(seen).replace(", something_new=''", "") == repr(seen_by(plan, reader))


def test_a_new_field_of_anything_in_the_demo_passes_to_nobody() -> None:
    inventory = demo()
    plan = make_plan(inventory, 2027, AS_OF)
    assert repr(salted(plan.jobs[0])).count(CANARY) > 10
    check_nothing_new_passes(plan, inventory.readers)


@pytest.mark.parametrize("seed", range(6))
def test_a_new_field_of_anything_generated_passes_to_nobody(seed: int) -> None:
    inventory = inventory_of(made(seed))
    plan = make_plan(inventory, SEASON, AS_OF)
    check_nothing_new_passes(plan, inventory.readers)


def test_the_whole_of_a_kind_of_job_is_tried() -> None:
    # every kind of amount stands in a job that is handed over somewhere above
    wanted = {"sowings", "mix", "spreadings", "nutrients", "rows", "days", "safety", "near"}
    kinds: set[str] = set()
    for inventory in (demo(), *(inventory_of(made(seed)) for seed in range(6))):
        season = inventory.property.season
        plan = make_plan(inventory, season, AS_OF)
        for reader in inventory.readers:
            for job in seen_by(plan, reader).jobs:
                kinds |= {name for name in wanted if getattr(job, name)}
    assert kinds == wanted


def test_a_field_without_a_class_is_left_behind_by_a_record() -> None:
    data = property_data(1, 3)
    card = inventory_of(data).property.emergency
    assert card is not None
    more = with_a_field_more(EmergencyCard)
    typed = {one.name: getattr(card, one.name) for one in fields(card)}
    salty = more(**typed, something_new=CANARY)
    assert CANARY not in repr(redacted_record(salty, frozenset({"page"})))
