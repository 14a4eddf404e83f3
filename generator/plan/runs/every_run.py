"""Every run of a season: its jobs, its amounts, and why others with the same thing are apart."""

import datetime
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from generator.dataclass import dataclass
from generator.inventory.schema import Inventory
from generator.plan.jobs.licenses import readers_of
from generator.plan.model.days import Span
from generator.plan.model.finding import Finding, stopped_in
from generator.plan.model.job import Job
from generator.plan.model.work import Run
from generator.plan.runs.sown import sown_run
from generator.plan.runs.sprayed import sprayed_run
from generator.plan.runs.together import (
    OTHER_DAYS,
    OTHER_GROUND,
    OTHER_RUN,
    InCommon,
    RunGroup,
    alike_of,
    days_from,
    kind_of,
    on_its_ground,
    run_groups,
    shared_days,
    why_alone,
    why_apart,
)


@dataclass(frozen=True, slots=True)
class _Asked:
    """A job that may be done together with others: why it is not, else what it is alike in."""

    job: Job
    days: tuple[Span, ...]
    why_not: str
    alike: InCommon | None


def runs_of(
    jobs: Iterable[Job],
    findings: Iterable[Finding],
    inventory: Inventory,
    grounds: Mapping[str, frozenset[str]],
    as_of: datetime.date,
) -> tuple[Run, ...]:
    """Return the runs of jobs, each with its places in the order of the owner's files."""
    asked = list(_asked(jobs, list(findings), inventory, as_of))
    by_alike: dict[InCommon, list[_Asked]] = defaultdict(list)
    for one in asked:
        if one.alike is not None:
            by_alike[one.alike].append(one)
    order = {place.id: number for number, place in enumerate(inventory.places())}
    found = [
        (alike, group, run)
        for alike, together in by_alike.items()
        for group in run_groups(((one.job, one.days) for one in together), grounds)
        if len(group.jobs) > 1
        and (run := _run(alike, _in_order(group, order), inventory)) is not None
    ]
    with_apart = (
        replace(run, apart=_apart(alike, group, asked, grounds)) for alike, group, run in found
    )
    return tuple(sorted(with_apart, key=lambda run: (run.days, run.id)))


def _asked(
    jobs: Iterable[Job], findings: list[Finding], inventory: Inventory, as_of: datetime.date
) -> Iterator[_Asked]:
    stopped, codes = stopped_in(findings), defaultdict[str, set[str]](set)
    for finding in findings:
        codes[finding.subject.id].add(finding.code)
    for job in jobs:
        if kind_of(job) is None or not job.state.is_ahead:
            continue
        days = days_from(job, as_of)
        why = why_alone(job, stopped=job.id in stopped, codes=frozenset(codes[job.id]), days=days)
        hands = readers_of(job.planting_id, job.step.id, inventory.readers)
        yield _Asked(job, days, why, None if why else alike_of(job, hands))


def _in_order(group: RunGroup, order: Mapping[str, int]) -> RunGroup:
    return replace(group, jobs=tuple(sorted(group.jobs, key=lambda job: order[job.place_id])))


def _run(alike: InCommon, group: RunGroup, inventory: Inventory) -> Run | None:
    return sprayed_run(group, inventory) if alike.kind == "spray" else sown_run(group)


def _apart(
    alike: InCommon, group: RunGroup, asked: list[_Asked], grounds: Mapping[str, frozenset[str]]
) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Return the other jobs that take one of the same things, by why they are not in a run."""
    mine, things = {job.id for job in group.jobs}, set(group.jobs[0].needs)
    found: dict[str, list[str]] = defaultdict(list)
    for one in asked:
        if one.job.id not in mine and things.intersection(one.job.needs):
            found[_why(alike, group, one, grounds)].append(one.job.id)
    return tuple((why, tuple(ids)) for why, ids in found.items())


def _why(
    alike: InCommon, group: RunGroup, one: _Asked, grounds: Mapping[str, frozenset[str]]
) -> str:
    if one.alike is None:
        return one.why_not
    if why := why_apart(one.alike, alike):
        return why
    if on_its_ground(one.job, group.jobs, grounds):
        return OTHER_GROUND
    return OTHER_RUN if shared_days(one.days, group.days) else OTHER_DAYS
