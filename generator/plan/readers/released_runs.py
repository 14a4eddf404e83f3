"""A run as another reader is handed it: one of whose jobs all are theirs, and of no other place."""

from collections.abc import Iterator, Mapping

from generator.plan.model.job import Job
from generator.plan.model.work import Run, RunPlace
from generator.plan.readers.released import Releasing, released_id, released_load


def released_runs(
    runs: tuple[Run, ...], jobs: list[Job], place_ids: Mapping[str, str], seen: frozenset[str]
) -> Iterator[Run]:
    """Yield the runs whose jobs are all handed to a reader, on places by their new names."""
    by_id = {job.id: job for job in jobs}
    for run in runs_handed(runs, jobs):
        yield _run(run, by_id, place_ids, seen)


def runs_handed(runs: tuple[Run, ...], jobs: list[Job]) -> list[Run]:
    """Return the runs of which every job is among those handed over."""
    handed = {job.id for job in jobs}
    return [run for run in runs if all(place.job_id in handed for place in run.places)]


def _run(
    run: Run, jobs: Mapping[str, Job], place_ids: Mapping[str, str], seen: frozenset[str]
) -> Run:
    first = jobs[run.places[0].job_id]
    things = {sowing.lot.id: f"lot-{number}" for number, sowing in enumerate(first.sowings, 1)}
    mine = {job.place_id: place_ids[job.place_id] for job in jobs.values()}
    release = Releasing(seen, mine, things)
    ids = {name: released_id(job, place_ids[job.place_id]) for name, job in jobs.items()}
    return Run(
        id=f"{ids[first.id]}/run",
        address=ids[first.id].replace("/", "-"),
        kind=run.kind,
        days=run.days,
        places=tuple(_place(place, ids, release) for place in run.places),
        area=release.number(run.area),
        amount=release.number(run.amount),
        count=release.number(run.count),
        doses=tuple((name, release.number(amount)) for name, amount in run.doses),
        loads=tuple(released_load(load, release) for load in run.loads),
        fill=release.number(run.fill) if run.fill is not None else None,
        apart=(),
    )


def _place(place: RunPlace, ids: Mapping[str, str], release: Releasing) -> RunPlace:
    return RunPlace(
        job_id=ids[place.job_id],
        area=release.number(place.area),
        amount=release.number(place.amount),
        doses=tuple(release.number(dose) for dose in place.doses),
        begun=release.number(place.begun),
        left=release.number(place.left),
    )
