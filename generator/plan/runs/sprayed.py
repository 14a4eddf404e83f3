"""One mix for several places: loads at marks that hold every card's limits, and what is left."""

from dataclasses import replace

from generator.compute import runs, spray
from generator.dataclass import dataclass
from generator.inventory.schema import Inventory
from generator.plan.labels.limit_stops import figure_value
from generator.plan.model.job import Job
from generator.plan.model.work import Load, Mix, Pour, Run, RunPlace
from generator.plan.runs.together import RunGroup
from generator.plan.spraying.spray_job import MARKS_MAY_MISS_BY
from generator.plan.spraying.tank import machine_for, tank_loads
from generator.working import Quantity


def sprayed_run(group: RunGroup, inventory: Inventory) -> Run | None:
    """Return the run of a group of sprayings; None where no mark holds every label's limits."""
    first, mixes = group.jobs[0], [_mix_of(job) for job in group.jobs]
    machine = machine_for(mixes[0].sprayer.id, inventory.measures, inventory.sprayers)
    assert machine is not None
    base, tank = f"{first.id}/run", machine.sprayer.tank_gal
    each = tuple(job.numbers["spray_gal"] for job in group.jobs)
    mix = runs.RUN_SPRAY(f"{base}/spray_gal", each_gal=each)
    count = spray.LOADS(f"{base}/loads_count", spray_gal=mix, tank_gal=tank)
    last = spray.LAST_LOAD(f"{base}/last_load_gal", spray_gal=mix, tank_gal=tank, loads_count=count)
    pours = tuple(_strictest(pours) for pours in zip(*(mix.pours for mix in mixes), strict=True))
    numbers = {
        "carrier_gal_per_ac": first.numbers["carrier_gal_per_ac"],
        "spray_gal": mix,
        "loads_count": count,
        "last_load_gal": last,
    }
    loads = tank_loads(base, pours, machine, numbers)
    if loads is None or _misses(loads, pours):
        return None
    mixed = _Mixed(base, loads, count, each)
    return Run(
        id=base,
        address=first.address,
        kind="spray",
        days=group.days,
        places=tuple(_at_gate(mixed, number, job) for number, job in enumerate(group.jobs, 1)),
        area=runs.RUN_GROUND(
            f"{base}/ground_ac", each_ac=tuple(_ground_of(job) for job in group.jobs)
        ),
        amount=mix,
        count=count,
        doses=tuple(
            (pour.name, _in_all(base, pour, taken))
            for pour, taken in zip(pours, zip(*map(_doses, mixes), strict=True), strict=True)
        ),
        loads=loads,
    )


def _mix_of(job: Job) -> Mix:
    assert job.mix is not None
    return job.mix


def _strictest(pours: tuple[Pour, ...]) -> Pour:
    """Return one pour for all places: what holds the limits of each holds on all of them."""
    lows = [pour.low for pour in pours if pour.low is not None]
    most = [pour.most for pour in pours if pour.most is not None]
    return replace(pours[0], low=max(lows, default=None), most=min(most, default=None))


def _misses(loads: tuple[Load, ...], pours: tuple[Pour, ...]) -> bool:
    """Whether the marks miss a rate by more than a job's own tank may."""
    return any(
        abs(dose.rate.value - figure_value(pour.rate)) > MARKS_MAY_MISS_BY * figure_value(pour.rate)
        for load in loads
        for dose, pour in zip(load.doses, pours, strict=True)
    )


def _ground_of(job: Job) -> Quantity:
    """Return the ground that the spray of a job is worked out for."""
    ground = dict(job.numbers["spray_gal"].inputs)["area_ac"]
    assert isinstance(ground, Quantity)
    return ground


def _doses(mix: Mix) -> tuple[Quantity, ...]:
    """Return what the place takes of each thing, in the order of the pours."""
    return (*(part.in_all for part in mix.parts), *(part.in_all for part in mix.adjuvants))


def _in_all(base: str, pour: Pour, taken: tuple[Quantity, ...]) -> Quantity:
    name = f"{base}/{pour.prefix}product"
    if pour.dry:
        return runs.RUN_DRY_PRODUCT(f"{name}_oz_wt", each_oz_wt=taken)
    return runs.RUN_PRODUCT(f"{name}_fl_oz", each_fl_oz=taken)


@dataclass(frozen=True, slots=True)
class _Mixed:
    """What is mixed for a run: its loads, how many, and what each place takes of them."""

    base: str
    loads: tuple[Load, ...]
    count: Quantity
    each: tuple[Quantity, ...]


def _at_gate(mixed: _Mixed, number: int, job: Job) -> RunPlace:
    """Return a place of a run, counted from 1, with what is left on leaving it."""
    gate = f"{mixed.base}/gate-{number}"
    load, last = mixed.loads[0].spray, mixed.loads[-1].spray
    used = runs.SPRAYED_SO_FAR(f"{gate}/sprayed_gal", each_gal=mixed.each[:number])
    begun = runs.LOADS_BEGUN(
        f"{gate}/loads_begun_count", used_gal=used, load_gal=load, loads_count=mixed.count
    )
    left = runs.LEFT_IN_TANK(
        f"{gate}/left_in_tank_gal",
        used_gal=used,
        loads_begun_count=begun,
        loads_count=mixed.count,
        load_gal=load,
        last_gal=last,
    )
    amount, taken = mixed.each[number - 1], _doses(_mix_of(job))
    return RunPlace(job.id, _ground_of(job), amount, taken, begun, left)
