"""Rules between fields of money, log and stock."""

from collections.abc import Iterator

from generator.inventory.fields import Where
from generator.inventory.kept import kept_lists, kept_units
from generator.inventory.log import Bought, LogEntry, Used
from generator.inventory.problems import meant_or_listed, shown_value
from generator.inventory.rule import Broken, Rule, typed_at
from generator.inventory.schema import Inventory
from generator.units import UNITS, family_suffixes

_ALL = "all"


def _steps_by_planting(inventory: Inventory) -> dict[str, list[str]]:
    return {
        planting.id: [step.id for step in inventory.steps_of(planting)]
        for place in inventory.places()
        for planting in place.plantings
    }


def _steps_that_exist(inventory: Inventory) -> Iterator[Broken]:
    steps_of = _steps_by_planting(inventory)
    named: list[tuple[str, str, Where]] = [
        (jobs.planting, step, jobs.where_of("steps", number=number))
        for hire in inventory.hires
        for jobs in hire.jobs
        for number, step in enumerate(jobs.steps)
        if step != _ALL
    ]
    named += [
        (entry.job.planting, entry.job.step, entry.job.where_of("step"))
        for entry in inventory.entries
        if entry.job is not None
    ]
    for planting, step, where in named:
        known = steps_of[planting]
        if step not in known:
            what = f"planting {shown_value(planting)} has no step {shown_value(step)}"
            yield Broken(where, what, meant_or_listed(step, known))


def _hired_once(inventory: Inventory) -> Iterator[Broken]:
    steps_of = _steps_by_planting(inventory)
    seen: set[tuple[str, str]] = set()
    for hire in inventory.hires:
        # apart until the hire is read: all, and a step beside it, are one hire
        mine: set[tuple[str, str]] = set()
        for jobs in hire.jobs:
            known = steps_of[jobs.planting]
            steps = known if _ALL in jobs.steps else jobs.steps
            for step in steps:
                if (jobs.planting, step) in seen:
                    what = (
                        f"step {shown_value(step)} of {shown_value(jobs.planting)} is hired twice"
                    )
                    yield Broken(jobs.where_of("steps"), what, "each job in one hire")
                mine.add((jobs.planting, step))
        seen |= mine


def _shares(inventory: Inventory) -> Iterator[Broken]:
    for share in inventory.cost_share:
        if share.pays.unit == "fraction" and share.pays.value > 1:
            what = f"a share of {share.pays.typed:g} is more than the whole cost"
            yield Broken(typed_at(share.pays), what, "a share of the cost, at most all of it")


def _units_of_items(inventory: Inventory) -> Iterator[Broken]:
    families = dict(_families(inventory))
    for entry in inventory.entries:
        moved: tuple[Used | Bought, ...] = (*entry.used, *entry.bought)
        for moved_item in moved:
            wanted = families[moved_item.item]
            family = UNITS[moved_item.amount.unit].family
            if family not in wanted:
                typed = moved_item.amount.typed_unit.replace("_", " ")
                what = f"{shown_value(moved_item.item)} is not counted in {typed}"
                units = [name for kind in sorted(wanted) for name in family_suffixes(kind)]
                yield Broken(
                    typed_at(moved_item.amount), what, ", ".join(f"amount_{u}" for u in units)
                )


def _families(inventory: Inventory) -> Iterator[tuple[str, frozenset[str]]]:
    """Yield for every kept thing the families of units it can be counted in."""
    for kept in kept_lists(inventory):
        for record in kept:
            yield record.id, frozenset(UNITS[unit].family for unit in kept_units(record))


def _corrections(inventory: Inventory) -> Iterator[Broken]:
    by_id = {logged.id: logged for logged in inventory.entries}
    corrected: set[str] = set()
    for entry in inventory.entries:
        if entry.corrects is None:
            continue
        if _goes_round(entry, by_id):
            what = f"entry {shown_value(entry.id)} corrects itself by way of {entry.corrects}"
            yield Broken(entry.where_of("corrects"), what, "an entry that was there before")
        elif entry.corrects in corrected:
            # two corrections would both stand in its place
            what = f"entry {shown_value(entry.corrects)} is corrected twice"
            yield Broken(entry.where_of("corrects"), what, "one correction; correct the correction")
        corrected.add(entry.corrects)


def _goes_round(entry: LogEntry, by_id: dict[str, LogEntry]) -> bool:
    seen = {entry.id}
    at = entry.corrects
    while at is not None:
        if at in seen:
            # a circle that only leads on from here is told at the entries in it
            return at == entry.id
        seen.add(at)
        at = by_id[at].corrects
    return False


MONEY_RULES = (
    Rule("F350", "Money and log name steps that exist.", _steps_that_exist),
    Rule("F351", "A job is hired from one hand.", _hired_once),
    Rule("F352", "No contract pays more than all.", _shares, alone=True),
    Rule("F353", "What is used or bought is counted as it is kept.", _units_of_items),
    Rule("F354", "An entry is corrected once, by a later one.", _corrections),
)
