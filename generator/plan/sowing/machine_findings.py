"""What is to be said of the spreader or drill of a sowing and of its catch tests."""

from collections.abc import Iterator, Mapping

from generator.inventory.drill import Drill, DrillTest
from generator.inventory.equipment import Spreader, SpreaderTest
from generator.plan.findings.about_sowing import SowCaution
from generator.plan.findings.about_spraying import SprayCaution
from generator.plan.findings.order import finding, older_than_a_year
from generator.plan.jobs.request import JobRequest
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.work import Sowing
from generator.plan.season.open_dates import judged_on
from generator.plan.sowing.seed_catch import other_seed_findings
from generator.plan.sowing.seed_rates import heaviest
from generator.reference.library import values
from generator.units import convert
from generator.working import Quantity


def spreader_findings(
    request: JobRequest,
    parts: tuple[Sowing, ...],
    numbers: Mapping[str, Quantity],
    spreader: Spreader,
    test: SpreaderTest | None,
) -> Iterator[Finding]:
    """Yield cautions on a spreader: its test, two catches apart, seed that falls beside."""
    yield from untested(request, parts, spreader, test)
    if test is None:
        return
    yield from _apart(request, numbers, test)
    beside = [part.numbers["beside_lb"] for part in parts if "beside_lb" in part.numbers]
    if beside and request.ground.width_ft is not None:
        figures = (
            ("The throw is wide", test.swath_ft),
            ("The place is wide", request.ground.width_ft),
        )
        yield finding(SowCaution.FALLS_BESIDE, about_job(request.job_id), test.where, figures)


def drill_findings(
    request: JobRequest,
    parts: tuple[Sowing, ...],
    numbers: Mapping[str, Quantity],
    drill: Drill,
    test: DrillTest | None,
) -> Iterator[Finding]:
    """Yield cautions on a drill: its test, and two catches apart."""
    yield from untested(request, parts, drill, test)
    if test is not None:
        yield from _apart(request, numbers, test)


def untested(
    request: JobRequest,
    parts: tuple[Sowing, ...],
    machine: Spreader | Drill | None,
    test: SpreaderTest | DrillTest | None,
) -> Iterator[Finding]:
    """Yield a caution where no catch test is with the seed, or it is with other seed, or old."""
    if test is None:
        at = machine.where if machine is not None else request.planting.where
        yield finding(
            SowCaution.NO_SEED_TEST, about_job(request.job_id), at, lot=heaviest(parts).id
        )
        return
    yield from other_seed_findings(request, parts, test)
    # on the day of the job, not of the plan: a test may be fresh now and old by then
    if older_than_a_year(test.tested_on, judged_on(request.dates, request.season)):
        yield finding(SprayCaution.OLD_CATCH_TEST, about_job(request.job_id), test.where)


def _apart(
    request: JobRequest, numbers: Mapping[str, Quantity], test: SpreaderTest | DrillTest
) -> Iterator[Finding]:
    """Yield a caution where the last two catches in the same setting lie too far apart."""
    apart, most = numbers.get("catches_apart_fraction"), values()["spreader_apart_pct"]
    if apart is not None and apart.value > convert(most.value, most.unit, "fraction"):
        figures = (("Apart", apart), ("At most", most))
        yield finding(SowCaution.CATCHES_APART, about_job(request.job_id), test.where, figures)
