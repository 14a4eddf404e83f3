"""One fill for several places: pounds for each, and what is left in the hopper at its gate."""

from generator.compute import runs, spread
from generator.plan.model.job import Job
from generator.plan.model.work import Run, RunPlace
from generator.plan.runs.together import RunGroup
from generator.reference.library import species
from generator.working import Quantity


def sown_run(group: RunGroup) -> Run:
    """Return the run of a group of sowings; a drill's box is filled once with all they take."""
    first = group.jobs[0]
    base, each = f"{first.id}/run", tuple(_loaded(job) for job in group.jobs)
    seed = runs.RUN_SEED(f"{base}/seed_lb", each_lb=each)
    count, fill = _fills(base, first, seed)
    return Run(
        id=base,
        address=first.address,
        kind="sow",
        days=group.days,
        places=tuple(
            _at_gate(base, number, job, each, fill) for number, job in enumerate(group.jobs, 1)
        ),
        area=runs.RUN_GROUND(f"{base}/ground_ac", each_ac=tuple(map(_ground_of, group.jobs))),
        amount=seed,
        count=count,
        doses=tuple(
            (
                species()[sowing.lot.species].name,
                runs.RUN_SEED(f"{base}/{sowing.lot.id}.seed_lb", each_lb=taken),
            )
            for sowing, taken in zip(
                first.sowings, zip(*map(_taken, group.jobs), strict=True), strict=True
            )
        ),
        fill=fill,
    )


def _loaded(job: Job) -> Quantity:
    """Return the seed that a place takes, what falls beside it counted in."""
    return job.numbers.get("load_lb", job.numbers["bulk_seed_lb"])


def _taken(job: Job) -> tuple[Quantity, ...]:
    return tuple(sowing.used_up() for sowing in job.sowings)


def _ground_of(job: Job) -> Quantity:
    ground = dict(job.sowings[0].numbers["bulk_seed_lb"].inputs)["area_ac"]
    assert isinstance(ground, Quantity)
    return ground


def _fills(base: str, first: Job, seed: Quantity) -> tuple[Quantity, Quantity]:
    """Return how often the hopper is filled, and with how much."""
    if first.sower.spreader is None:
        return runs.FILLS_BEGUN(f"{base}/fills_count", used_lb=seed, fill_lb=seed), seed
    hopper = first.sower.spreader.hopper_lb
    count = spread.FILLS(f"{base}/fills_count", bulk_lb=seed, hopper_lb=hopper)
    return count, spread.FILL(f"{base}/fill_lb", bulk_lb=seed, fills_count=count)


def _at_gate(
    base: str, number: int, job: Job, each: tuple[Quantity, ...], fill: Quantity
) -> RunPlace:
    """Return a place of a run, counted from 1, with what is left on leaving it."""
    gate = f"{base}/gate-{number}"
    used = runs.SOWN_SO_FAR(f"{gate}/sown_lb", each_lb=each[:number])
    begun = runs.FILLS_BEGUN(f"{gate}/fills_begun_count", used_lb=used, fill_lb=fill)
    left = runs.LEFT_IN_HOPPER(
        f"{gate}/left_in_hopper_lb", used_lb=used, fills_begun_count=begun, fill_lb=fill
    )
    return RunPlace(job.id, _ground_of(job), each[number - 1], _taken(job), begun, left)
