"""The same purchase, use, spending or finished job in two entries that both count."""

from collections import defaultdict
from collections.abc import Hashable, Iterator, Mapping

from generator.inventory.log import LogEntry
from generator.inventory.places import PlantedGround
from generator.plan.doubts.doubt import (
    Confirmed,
    Doubt,
    StepLogged,
    about,
    day_of,
    is_confirmed,
    steps_to_log,
)
from generator.plan.findings.about_doubts import DoubtCaution
from generator.plan.log.told import part_told
from generator.plan.model.items import Taking
from generator.reference.steps import StepPlan
from generator.working import Given

WORK = ("used", "finished")
Said = tuple[tuple[Hashable, ...], str]  # what two entries would say alike, and its words
_Alike = dict[str, tuple[LogEntry, dict[str, bool]]]  # by the other's id; words: of work or money


def said_twice(
    places: tuple[PlantedGround, ...],
    plans: Mapping[str, StepPlan],
    entries: tuple[LogEntry, ...],
    confirmed: Confirmed,
    items: Mapping[str, str],
) -> Iterator[Doubt]:
    """Yield every entry that says what an earlier one says, where neither corrects the other.

    `items` are the things that are kept, in words, by their ids. An entry is held against the
    first before it that nobody has confirmed it beside.
    """
    steps = steps_to_log(places, plans)
    before: Mapping[Hashable, list[LogEntry]] = defaultdict(list)
    for entry in entries:
        alike: _Alike = {}
        # by key once: a thing named twice in one entry is not said by two
        for key, words in dict(_said(entry, steps, items)).items():
            other = _beside(entry, before[key], confirmed)
            before[key].append(entry)
            if other is not None:
                # one question for two entries, however much of them is alike
                alike.setdefault(other.id, (other, {}))[1][words] = key[0] in WORK
        for other, told in alike.values():
            yield Doubt(
                DoubtCaution.SAID_TWICE,
                entry,
                {
                    "day": day_of(entry),
                    "what": "; ".join(told),
                    "entry": entry.id,
                    "other": other.id,
                },
                beside=other,
                is_of_work=any(told.values()),
            )


def _beside(entry: LogEntry, before: list[LogEntry], confirmed: Confirmed) -> LogEntry | None:
    return next(
        (
            earlier
            for earlier in before
            if not _begun_apart(earlier, entry) and not is_confirmed(confirmed, earlier, entry)
        ),
        None,
    )


def _begun_apart(entry: LogEntry, other: LogEntry) -> bool:
    """Whether two sprayings of a day were begun at different times, and so are two."""
    if entry.sprayed is None or other.sprayed is None or entry.done_on != other.done_on:
        return False
    times = (entry.sprayed.started_at, other.sprayed.started_at)
    finished = all(each.job is not None and each.job.finished for each in (entry, other))
    # two rounds of a day are two sprayings, but a job is finished once
    return None not in times and times[0] != times[1] and not finished


def _said(
    entry: LogEntry, steps: dict[Taking, StepLogged], items: Mapping[str, str]
) -> Iterator[Said]:
    day, job = entry.done_on, about(entry, steps)
    for bought in entry.bought:
        cost = _value(bought.cost_usd)
        yield (
            ("bought", day, bought.item, _value(bought.amount), cost),
            f"{items[bought.item]} bought",
        )
    for used in entry.used:
        ground = _ground(entry, job)
        part = part_told(entry)
        # as much again on other ground or another part is another use
        yield (
            ("used", day, ground, part, used.item, _value(used.amount)),
            f"{items[used.item]} used",
        )
    for spent in entry.spent:
        what = spent.what.strip().casefold()
        yield ("spent", day, what, _value(spent.cost_usd), spent.planting), f"spent on {spent.what}"
    if job is not None and entry.job is not None and entry.job.finished:
        key = ("finished", job.planting.id, job.step.id, job.season_for(entry))
        yield key, f"{job.words}, finished"


def _value(amount: Given | None) -> float | None:
    return amount.value if amount is not None else None


def _ground(entry: LogEntry, job: StepLogged | None) -> Hashable:
    """Return where an entry says it was: a job, a place or words; None where it does not say."""
    if job is not None:
        return job.planting.id, job.step.id
    said = entry.sprayed
    if said is None:
        return None
    return said.place or (said.location or "").strip().casefold() or None
