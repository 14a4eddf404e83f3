"""One job of a plan, put together from what its kind of work takes."""

from collections.abc import Mapping
from dataclasses import replace

from generator.inventory.ground import SoilTest
from generator.inventory.schema import Inventory
from generator.inventory.spreadable import Fertilizer, Lime
from generator.plan.feeding.fertilizing import plan_fertilizing
from generator.plan.feeding.liming import plan_liming
from generator.plan.jobs.ground import first_name, width_findings
from generator.plan.jobs.request import JobRequest
from generator.plan.jobs.safety import safety_lines
from generator.plan.jobs.soil import left_undone
from generator.plan.labels.spray_stops import chosen_products
from generator.plan.labels.yearly_sums import PlannedSpray
from generator.plan.land.kept_off import GroundLeft
from generator.plan.model.finding import Finding
from generator.plan.model.job import Job, JobState
from generator.plan.model.work import RowsWork, SowWork, SprayWork, SpreadWork
from generator.plan.sowing.rows import Rows, plan_planting, plan_replacing
from generator.plan.sowing.seed_short import Reach
from generator.plan.sowing.sow_job import plan_sowing
from generator.plan.sowing.sown_how import method_of, way_findings
from generator.plan.spraying.spray_job import plan_spray


def planned_job(
    request: JobRequest,
    state: JobState,
    inventory: Inventory,
    sprays: tuple[PlannedSpray, ...],
    reached: Mapping[str, Reach],
    left: GroundLeft | None,
) -> tuple[Job, list[Finding]]:
    job = Job(
        id=request.job_id,
        address=f"{first_name(request.ground.id, request.ground.was)}-{_tail(request.job_id)}",
        place_id=request.ground.id,
        planting_id=request.planting.id,
        season=request.season,
        step=request.step,
        dates=request.dates,
        state=state,
        note=request.work.note if request.work else None,
        part=request.work.part if request.work else None,
        # of the ground and for emergencies: on the sheet even where a stop takes the mix off it
        safety=safety_lines(inventory.property.emergency, request.ground.near, None),
    )
    match request.step.does.puts_down:
        case "spray":
            assert left is not None
            return _spray_job(job, request, inventory, sprays, left)
        case "seed":
            return _sow_job(job, request, inventory, reached.get(request.job_id))
        case "fertilizer":
            return _fertilizing_job(job, request, inventory.soil_tests, inventory.fertilizers)
        case "lime":
            return _liming_job(job, request, inventory.soil_tests, inventory.limes)
        case "plants":
            return _rows_job(job, plan_planting(request, inventory.plants, inventory.guards))
        case "plants_again":
            return _rows_job(job, plan_replacing(request, inventory.plants, inventory.guards))
        case "nothing":
            return job, []


def _tail(job_id: str) -> str:
    return "-".join(job_id.split("/")[1:])


def _spray_job(
    job: Job,
    request: JobRequest,
    inventory: Inventory,
    sprays: tuple[PlannedSpray, ...],
    left: GroundLeft,
) -> tuple[Job, list[Finding]]:
    done = plan_spray(request, inventory, sprays, left)
    near, emergency = request.ground.near, inventory.property.emergency
    planned = replace(
        job,
        needs=tuple(part.product.id for part in chosen_products(request, inventory.products)),
        work=SprayWork(done.numbers, done.mix, left.kept_off),
        safety=safety_lines(emergency, near, done.mix, left.kept_off),
    )
    return planned, list(done.findings)


def _sow_job(
    job: Job, request: JobRequest, inventory: Inventory, reach: Reach | None
) -> tuple[Job, list[Finding]]:
    done = plan_sowing(request, inventory, reach)
    found = [
        *done.findings,
        *left_undone(request, inventory.soil_tests),
        *way_findings(request, inventory),
    ]
    if done.sower.spreader is not None:
        found += width_findings(job.id, request.ground)
    sown = replace(
        job,
        needs=tuple(part.lot.id for part in done.parts),
        work=SowWork(done.numbers, done.parts, done.sower),
        method=method_of(request),
    )
    return sown, found


def _fertilizing_job(
    job: Job,
    request: JobRequest,
    soil_tests: tuple[SoilTest, ...],
    fertilizers: tuple[Fertilizer, ...],
) -> tuple[Job, list[Finding]]:
    done = plan_fertilizing(request, soil_tests, fertilizers)
    fed = replace(
        job,
        needs=tuple(spreading.item.id for spreading in done.spreadings),
        work=SpreadWork(done.spreadings, done.nutrients),
    )
    return fed, list(done.findings)


def _liming_job(
    job: Job, request: JobRequest, soil_tests: tuple[SoilTest, ...], limes: tuple[Lime, ...]
) -> tuple[Job, list[Finding]]:
    done = plan_liming(request, soil_tests, limes)
    limed = replace(
        job,
        needs=(request.planting.lime,) if request.planting.lime is not None else (),
        work=SpreadWork(
            (done.spreading,) if done.spreading is not None else (), lime_asked=done.asked
        ),
    )
    return limed, list(done.findings)


def _rows_job(job: Job, done: Rows) -> tuple[Job, list[Finding]]:
    work = RowsWork(done.rows)
    needs = tuple(item for _, item, _ in work.used_up(job.id))
    return replace(job, work=work, needs=needs), list(done.findings)
