"""What the log has of one place, lot or product: the day, the work, and the amounts used."""

from collections.abc import Iterator

from generator.book.pages.log import log_address
from generator.dataclass import dataclass
from generator.inventory.log import LogEntry
from generator.plan.log.told import area_of
from generator.plan.model.place import Place
from generator.plan.model.plan import Plan
from generator.reference.steps import Step
from generator.working import Given


@dataclass(frozen=True, slots=True)
class Amount:
    """So much of one thing as an entry has it; `kind` is that of the thing, `id` its id."""

    id: str
    kind: str
    name: str
    amount: Given


@dataclass(frozen=True, slots=True)
class DoneHere:
    """An entry of the log as the page of a place has it.

    `step` is that of its job, None where it was no job; `perhaps` says that nobody knows whether
    its spraying was here. `lowest` and `highest` are heights measured on its day.
    """

    entry: LogEntry
    address: str
    step: Step | None
    used: tuple[Amount, ...]
    ground: Given | None
    perhaps: bool
    lowest: Given | None
    highest: Given | None


@dataclass(frozen=True, slots=True)
class MovedOn:
    """An entry of the log that used or bought one thing: where, for what, how much of it.

    `amount` is None where a sowing says nothing of it.
    """

    entry: LogEntry
    address: str
    place: Place | None
    step: Step | None
    ground: Given | None
    amount: Given | None
    bought: bool
    cost: Given | None


def steps_by_job(plan: Plan) -> dict[tuple[str, str], Step]:
    """Return the steps of every planting, by its id and the step's."""
    plans = {step_plan.id: step_plan for step_plan in plan.land.step_plans}
    return {
        (planting.id, step.id): step
        for place in plan.places
        if place.typed is not None
        for planting in place.typed.plantings
        for name in (planting.steps, planting.upkeep)
        if name in plans
        for step in plans[name].steps
    }


def done_here(plan: Plan, place: Place) -> list[DoneHere]:
    """Return what the log has of a place, the newest first."""
    return plan.once("done by place", _done_by_place).get(place.id, [])


def _done_by_place(plan: Plan) -> dict[str, list[DoneHere]]:
    steps = plan.once("steps by job", steps_by_job)
    planted = plan.once("places by planting", _places_by_planting)
    named = {item.id: (item.kind, item.words) for item in plan.items}
    found: dict[str, list[DoneHere]] = {}
    for entry in reversed(plan.entries):
        for place_id in sorted(_places_of(entry, planted)):
            done = _done(entry, place_id, steps, named)
            found.setdefault(place_id, []).append(done)
    return found


def _places_by_planting(plan: Plan) -> dict[str, tuple[Place, tuple[str, ...]]]:
    """Return the place of every planting with the lots that are sown on it."""
    return {
        planting.id: (place, tuple(seed.lot for seed in planting.seed))
        for place in plan.places
        if place.typed is not None
        for planting in place.typed.plantings
    }


def _places_of(entry: LogEntry, planted: dict[str, tuple[Place, tuple[str, ...]]]) -> set[str]:
    """Return the places that an entry is about, those it may have been on among them."""
    plantings = [
        about.planting for about in (entry.job, entry.counted, entry.measured) if about is not None
    ]
    places = {planted[planting][0].id for planting in plantings}
    places |= set(entry.inspected.what if entry.inspected is not None else ())
    places |= set(entry.unknown.places if entry.unknown is not None else ())
    on = (entry.sprayed, entry.drift_checked)
    return places | {about.place for about in on if about is not None and about.place is not None}


def _done(
    entry: LogEntry,
    place_id: str,
    steps: dict[tuple[str, str], Step],
    named: dict[str, tuple[str, str]],
) -> DoneHere:
    job = entry.job
    measured = entry.measured.readings if entry.measured is not None else ()
    tall = sorted((reading.height_in for reading in measured), key=lambda height: height.value)
    said_here = entry.sprayed is not None and entry.sprayed.place == place_id
    return DoneHere(
        entry,
        _address(entry),
        steps.get((job.planting, job.step)) if job is not None else None,
        tuple(Amount(used.item, *named[used.item], used.amount) for used in entry.used),
        area_of(entry),
        perhaps=entry.unknown is not None and job is None and not said_here,
        lowest=tall[0] if tall else None,
        highest=tall[-1] if tall else None,
    )


def _address(entry: LogEntry) -> str:
    return f"{log_address(entry)}.html#entry-{entry.id}"


def moved_on(plan: Plan, item_id: str) -> list[MovedOn]:
    """Return the entries that used or bought a thing, or sowed of it, the newest first."""
    return plan.once("moved by item", _moved_by_item).get(item_id, [])


def _moved_by_item(plan: Plan) -> dict[str, list[MovedOn]]:
    found: dict[str, list[MovedOn]] = {}
    for entry in reversed(plan.entries):
        for item_id, moved in (*_bought(entry), *_used(plan, entry)):
            found.setdefault(item_id, []).append(moved)
    return found


def _bought(entry: LogEntry) -> Iterator[tuple[str, MovedOn]]:
    for one in entry.bought:
        yield (
            one.item,
            MovedOn(
                entry, _address(entry), None, None, None, one.amount, bought=True, cost=one.cost_usd
            ),
        )


def _used(plan: Plan, entry: LogEntry) -> Iterator[tuple[str, MovedOn]]:
    planted = plan.once("places by planting", _places_by_planting)
    steps = plan.once("steps by job", steps_by_job)
    job, sprayed = entry.job, entry.sprayed
    place, lots = planted[job.planting] if job is not None else (None, ())
    if place is None and sprayed is not None and sprayed.place is not None:
        place = plan.place(sprayed.place)
    step = steps.get((job.planting, job.step)) if job is not None else None
    amounts: list[tuple[str, Given | None]] = [(used.item, used.amount) for used in entry.used]
    if step is not None and step.does.sows:
        # sown of it, and nobody wrote down how much
        amounts += [(lot, None) for lot in lots if lot not in dict(amounts)]
    for item_id, amount in amounts:
        yield (
            item_id,
            MovedOn(
                entry, _address(entry), place, step, area_of(entry), amount, bought=False, cost=None
            ),
        )
