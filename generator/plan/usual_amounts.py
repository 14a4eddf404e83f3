"""Amounts of a job that no sound figure gives: passes, fills, loads, a catch far off.

A slip upstream gives such amounts too: where one is told already, nothing is said here.
"""

from collections.abc import Iterator

from generator.compute.spread import LANES
from generator.plan.asked import JobAsked
from generator.plan.cautions import Caution
from generator.plan.drilling import drill_width
from generator.plan.findings import finding
from generator.plan.model import Finding, Job
from generator.plan.out_of_usual import out_of_usual
from generator.reference.load import values
from generator.reference.usual import Usual, usual
from generator.working import Figure, Quantity

CORRECTIONS = ("correction_fraction", "drill_correction_fraction")
FILLED = {"fills_count": "fills of the hopper", "loads_count": "loads of the tank"}


def amount_findings(asked: JobAsked, job: Job, *, with_passes: bool) -> Iterator[Finding]:
    """Yield what is out of the usual in the passes, fills and loads of a job.

    A catch that is far off gives passes that are: where it is told they are left out.
    """
    if with_passes:
        yield from _passes(asked, job)
    yield from _fills(asked, job)


def catch_findings(asked: JobAsked, job: Job) -> Iterator[Finding]:
    """Yield a caution for each catch of a job that is far from what is wanted."""
    test = job.spreader_test or job.drill_test
    for name in CORRECTIONS:
        if name in job.numbers and test is not None:
            found = out_of_usual(
                Caution.CATCH_FAR_OFF,
                asked.job_id,
                test.where,
                ("It must put down, of what it did", job.numbers[name]),
                usual("catch_correction", "pct"),
            )
            yield from [found] if found is not None else []


def _passes(asked: JobAsked, job: Job) -> Iterator[Finding]:
    """Yield a caution of more passes than a place of its width takes."""
    passes, width = _passes_over(asked, job), asked.ground.width_ft
    most: list[tuple[str, Figure]] = [("Usual up to", values()["usual_passes_count"])]
    allowed = values()["usual_passes_count"].value
    if passes is None:
        return
    if width is not None:
        narrowest = values()["narrowest_passes_ft"]
        most += [("or, where the place is wide, one to every", narrowest)]
        allowed = max(allowed, width.value / narrowest.value)
    if passes.value > allowed:
        figures = (("Passes", passes), *most)
        yield finding(Caution.MANY_PASSES, asked.job_id, asked.planting.where, figures)


def _passes_over(asked: JobAsked, job: Job) -> Quantity | None:
    for name in ("passes_count", "times_over_count", "lanes_count"):
        if name in job.numbers:
            return job.numbers[name]
    if job.drill is None or asked.ground.width_ft is None:
        return None
    return LANES(
        f"{asked.job_id}/drill_passes_count",
        width_ft=asked.ground.width_ft,
        swath_ft=drill_width(asked.job_id, job.drill),
    )


def _fills(asked: JobAsked, job: Job) -> Iterator[Finding]:
    for name, words in FILLED.items():
        if name in job.numbers:
            found = out_of_usual(
                Caution.MANY_FILLS,
                asked.job_id,
                asked.planting.where,
                (words.capitalize(), job.numbers[name]),
                Usual(None, values()["usual_fills_count"]),
                what=words,
            )
            yield from [found] if found is not None else []
