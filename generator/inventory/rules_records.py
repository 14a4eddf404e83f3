"""Rules of log entries: what they say fits the job, and days and times can be read."""

import re
from collections.abc import Iterator

from generator.inventory.fields import Where
from generator.inventory.log import LogEntry
from generator.inventory.log_work import Sprayed
from generator.inventory.problems import listed, meant_or_listed, shown_value
from generator.inventory.rule import Broken, Rule
from generator.inventory.schema import Inventory
from generator.reference.operations import operations

TIME = re.compile(r"([01]\d|2[0-3]):[0-5]\d", re.ASCII)


def _work_keys() -> tuple[str, ...]:
    """Return the keys of an entry that tell of one kind of work alone."""
    return tuple(does.logged_as for does in operations().values() if does.logged_as is not None)


def _said_of_its_work(inventory: Inventory) -> Iterator[Broken]:
    kinds = {
        (planting.id, step.id): step.does
        for place in inventory.places()
        for planting in place.plantings
        for step in inventory.steps_of(planting)
    }
    for entry in inventory.entries:
        job = entry.job
        does = kinds.get((job.planting, job.step)) if job is not None else None
        for name in _work_keys():
            said = getattr(entry, name)
            # without a step that is there nothing speaks against what is said
            if said is not None and does is not None and does.logged_as != name:
                assert job is not None
                what = f"{name}: stands in an entry about {shown_value(job.step)}"
                yield Broken(said.where, what, f"{name}: for a step of its own kind of work")


def _one_kind_of_work(inventory: Inventory) -> Iterator[Broken]:
    for entry in inventory.entries:
        said = [name for name in _work_keys() if getattr(entry, name) is not None]
        if len(said) > 1:
            what = f"entry {shown_value(entry.id)} holds {listed(said, 'and')}"
            yield Broken(entry.where_of(said[1]), what, "an entry for each kind of work")


def _times(inventory: Inventory) -> Iterator[Broken]:
    for where, name, time in _times_of(inventory.entries):
        if not TIME.fullmatch(time):
            what = f"{shown_value(time)} for {name} is no time of day"
            yield Broken(where, what, "hours and minutes of the day, as in 07:40 or 16:05")
    for entry in inventory.entries:
        sprayed = entry.sprayed
        began, ended = (
            (sprayed.started_at, sprayed.stopped_at) if sprayed is not None else (None, None)
        )
        readable = began and ended and TIME.fullmatch(began) and TIME.fullmatch(ended)
        # in two digits each, so as text they stand in the order of the day
        if sprayed is not None and began and ended and readable and ended < began:
            what = f"stopped_at {ended} comes before started_at {began}"
            yield Broken(
                sprayed.where_of("stopped_at"), what, "an entry for each day, begun before it ended"
            )


def _times_of(entries: tuple[LogEntry, ...]) -> Iterator[tuple[Where, str, str]]:
    for entry in entries:
        if entry.sprayed is not None:
            sprayed = entry.sprayed
            for name, time in (
                ("started_at", sprayed.started_at),
                ("stopped_at", sprayed.stopped_at),
            ):
                if time is not None:
                    yield sprayed.where_of(name), name, time
        if entry.burned is not None and entry.burned.ended_at is not None:
            yield entry.burned.where_of("ended_at"), "ended_at", entry.burned.ended_at


def _days_after_the_work(inventory: Inventory) -> Iterator[Broken]:
    for entry in inventory.entries:
        said: list[tuple[LogEntry | Sprayed, str]] = [(entry, "recorded_on")]
        if entry.sprayed is not None:
            said.append((entry.sprayed, "copy_given_on"))
        for record, name in said:
            day = getattr(record, name)
            if day is not None and day < entry.done_on:
                what = f"{name} {day} comes before done_on {entry.done_on}"
                yield Broken(record.where_of(name), what, "the day it was done, or a later one")


def _ground_in_one_place(inventory: Inventory) -> Iterator[Broken]:
    for entry in inventory.entries:
        sprayed = entry.sprayed
        if sprayed is None or entry.job is None:
            continue
        for name in ("place", "location", "treated_ac", "part"):
            if getattr(sprayed, name) is not None:
                what = f"{name} of sprayed: stands beside a job, which says it already"
                accepted = "area_ac: or part: of the job, or an entry without a job"
                yield Broken(sprayed.where_of(name), what, accepted)


def _wind_or_none(inventory: Inventory) -> Iterator[Broken]:
    for entry in inventory.entries:
        sprayed = entry.sprayed
        if sprayed is not None and sprayed.wind_not_measured and sprayed.wind_mph is not None:
            what = f"wind_not_measured: stands beside a wind of {sprayed.wind_mph.typed:g}"
            yield Broken(
                sprayed.where_of("wind_not_measured"),
                what,
                "wind_mph: as it was measured, or wind_not_measured:",
            )


def _not_doing(inventory: Inventory) -> Iterator[Broken]:
    plans = inventory.plans()
    steps = {
        planting.id: [step.id for step in inventory.steps_of(planting)]
        for place in inventory.places()
        for planting in place.plantings
    } | {
        thing.id: [step.id for step in plans[thing.upkeep].steps]
        for thing in inventory.kept_up()
        if thing.upkeep is not None
    }
    for entry in inventory.entries:
        for left_out in entry.not_doing:
            named = [name for name in (left_out.planting, left_out.at) if name is not None]
            if len(named) != 1:
                what = "not_doing: names no planting and nothing else, or two things"
                fitting = "planting:, or at: with a stand, a walk or a water hole"
                yield Broken(left_out.where_of("planting", "at"), what, fitting)
            elif left_out.step not in (known := steps.get(named[0], [])):
                what = f"{shown_value(named[0])} has no step {shown_value(left_out.step)}"
                fitting = meant_or_listed(left_out.step, known) or "a thing with upkeep:"
                yield Broken(left_out.where_of("step"), what, fitting)


def _one_load(inventory: Inventory) -> Iterator[Broken]:
    by_id = {entry.id: entry for entry in inventory.entries}
    for entry in inventory.entries:
        sprayed = entry.sprayed
        first = by_id.get(sprayed.same_load_as or "") if sprayed is not None else None
        if sprayed is not None and first is not None:
            where = sprayed.where_of("same_load_as")
            yield from (Broken(where, what, fits) for what, fits in _no_load_of(entry, first))


def _no_load_of(entry: LogEntry, first: LogEntry) -> Iterator[tuple[str, str]]:
    """Yield what speaks against two entries being of one load, and what is accepted."""
    named = shown_value(first.id)
    mine, its = entry.sprayed, first.sprayed
    if first.id == entry.id or its is None or its.same_load_as is not None:
        yield (
            f"{named} is no first entry of a load",
            "the entry of the first place, with sprayed: and without same_load_as:",
        )
        return
    if first.done_on != entry.done_on:
        yield f"{named} was sprayed on {first.done_on}", "an entry of the same day"
    assert mine is not None
    if mine.sprayer and its.sprayer and mine.sprayer != its.sprayer:
        yield f"{named} went through {shown_value(its.sprayer)}", "an entry of the same sprayer"
    used, used_first = ({one.item for one in each.used} for each in (entry, first))
    if used and used_first and used != used_first:
        yield f"{named} used something else", "an entry that used the same products"


RECORDS_RULES = (
    Rule("F390", "An entry says of its job what can be said of such work.", _said_of_its_work),
    Rule("F391", "An entry holds one kind of work.", _one_kind_of_work, alone=True),
    Rule("F392", "Times of a day can be read.", _times, alone=True),
    Rule("F393", "Nothing is written down before it was done.", _days_after_the_work, alone=True),
    Rule("F394", "Where it was is said once.", _ground_in_one_place, alone=True),
    Rule("F395", "What will not be done is a step of one thing.", _not_doing),
)
SPRAYED_RULES = (
    Rule("F440", "A wind is measured or not.", _wind_or_none, alone=True),
    Rule("F441", "Entries of one load are of one day, one sprayer and one mix.", _one_load),
)
