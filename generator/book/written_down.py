"""A record of the property files as its owner wrote it: every field that says something, in words.

It goes by the rules of the fields, so a new field is shown without anybody thinking of it.
"""

import datetime
from collections.abc import Iterator, Mapping
from typing import Any

from generator.book.pages.written import soil_test_title
from generator.dataclass import dataclass
from generator.inventory.fields import FieldRule, Record, rules_of
from generator.inventory.log_work import TIME_WORDS
from generator.inventory.places import Planting
from generator.plan.model.days import day_words
from generator.plan.model.plan import Plan
from generator.reference.library import marker_names
from generator.working import Given


@dataclass(frozen=True, slots=True)
class FieldSaid:
    """What one field says: values as they are shown, or records with fields of their own."""

    label: str
    values: tuple[Given | datetime.date | datetime.time | str, ...] = ()
    inside: tuple[tuple["FieldSaid", ...], ...] = ()


def said_in(record: Record, names: Mapping[str, str]) -> tuple[FieldSaid, ...]:
    """Return what a record says, field by field; `names` are what ids are called."""
    return tuple(_fields(record, names))


def _fields(record: Record, names: Mapping[str, str]) -> Iterator[FieldSaid]:
    for name, rule in rules_of(type(record)).items():
        value = getattr(record, name)
        if rule.form == "identity" or value is None or value == ():
            continue
        label = _label(rule.help)
        values = value if isinstance(value, tuple) else (value,)
        if rule.form == "record":
            yield FieldSaid(label, inside=tuple(said_in(part, names) for part in values))
        else:
            yield FieldSaid(label, tuple(_shown(part, rule, names) for part in values))


def _label(help_words: str) -> str:
    """Return what a field is called: its help, without how it is typed."""
    words = help_words.removeprefix("true where ").removeprefix("true for ")
    words = words.removesuffix(f", {TIME_WORDS}").partition(": ")[0]
    return words[:1].upper() + words[1:]


def _shown(
    value: object, rule: FieldRule, names: Mapping[str, str]
) -> Given | datetime.date | datetime.time | str:
    if isinstance(value, Given | datetime.date):
        return value
    if isinstance(value, bool):
        return "yes" if value else "no"
    said = str(value)
    if rule.help.endswith(TIME_WORDS):
        return datetime.time.fromisoformat(said)
    if rule.form == "reference":
        # an entry that another one corrects is in no plan any more
        lost = "an entry that no longer counts" if "entry" in rule.refers_to else said
        return names.get(said, lost)
    return said.replace("_", " ") if rule.form == "choice" else said


def names_of(plan: Plan) -> dict[str, str]:
    """Return what the things that an entry of the log can name are called, by their ids."""
    land = plan.land
    things: tuple[Any, ...] = (
        *plan.places, *land.products, *land.fertilizers, *land.limes, *land.plants, *land.guards,
        *land.sprayers, *land.spreaders, *land.drills, *land.stands, *land.routes,
        *(water.hole for water in plan.water),
    )  # fmt: skip
    names = {**marker_names(), **{thing.id: thing.name for thing in things}}
    papers: tuple[Any, ...] = (*land.applicators, *land.permits)
    names |= {paper.id: paper.name or paper.id.replace("-", " ") for paper in papers}
    names |= {test.id: soil_test_title(plan, test) for test in land.soil_tests}
    names |= {entry.id: f"the entry of {day_words(entry.done_on)}" for entry in plan.entries}
    names |= {item.id: item.words for item in plan.items}
    names |= {
        planting.id: f"{place.name}, {_begun(planting)} {planting.season}"
        for place in plan.places
        if place.typed is not None
        for planting in place.typed.plantings
    }
    return names | {step.id: step.name for step_plan in land.step_plans for step in step_plan.steps}


def _begun(planting: Planting) -> str:
    return "sown for season" if planting.standing_since is None else "standing since season"
