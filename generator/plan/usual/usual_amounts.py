"""Amounts of a job that no sound figure gives: passes, fills, loads, a catch far off.

A slip upstream gives such amounts too: where one that is told already gives them alone, nothing is
said here.
"""

from collections.abc import Iterator

from generator.compute.spread import LANES
from generator.inventory.rule import typed_at
from generator.inventory.stock import Adjuvant
from generator.plan.findings.about_usual import UsualCaution
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.job import Job
from generator.plan.sowing.drilling import drill_width
from generator.plan.usual.meant_figures import MeantFigures, SameFigure, as_if, figure_as_such
from generator.plan.usual.out_of_usual import out_of_usual
from generator.reference.library import values
from generator.reference.usual import Usual, usual
from generator.working import Figure, Given, Quantity

CORRECTIONS = ("correction_fraction", "drill_correction_fraction")
_FILLED = {"fills_count": "fills of the hopper", "loads_count": "loads of the tank"}


def amount_findings(request: JobRequest, job: Job, meant: MeantFigures) -> Iterator[Finding]:
    """Yield what is out of the usual in the passes, fills and loads of a job.

    `meant` is what figures that are told were meant to be: what they give alone is not told.
    """
    yield from _passes(request, job, meant)
    yield from _fills(request, job, meant)


def catch_findings(request: JobRequest, job: Job, meant: MeantFigures) -> Iterator[Finding]:
    """Yield a caution for each catch of a job that is far from what is wanted."""
    test, wanted = job.sower.spreader_test or job.sower.drill_test, usual("catch_correction", "pct")
    for name in CORRECTIONS:
        if name in job.numbers and test is not None:
            if not _is_beyond(wanted, job.numbers[name], meant):
                continue
            found = out_of_usual(
                UsualCaution.CATCH_FAR_OFF,
                about_job(request.job_id),
                test.where,
                ("It must put down, of what it did", job.numbers[name]),
                wanted,
            )
            yield from [found] if found is not None else []


def _is_beyond(wanted: Usual, number: Quantity, meant: MeantFigures) -> bool:
    """Whether a number is out of the usual, and would be if all that is told were as meant."""
    is_beyond = wanted.beyond(number) is not None
    # both: what is usual as it stands is not asked about for what might be meant
    return is_beyond and wanted.is_beyond(as_if(number, meant), number.unit) is not None


def caught_as_wanted(job: Job) -> dict[SameFigure, float]:
    """Return what a catch that is told was meant to give: the rate in one pass over each lane."""
    times = job.numbers.get("times_over_count")
    # a catch far off is corrected by more passes: those need no second caution
    return {figure_as_such(times): 1} if times is not None else {}


def _passes(request: JobRequest, job: Job, meant: MeantFigures) -> Iterator[Finding]:
    """Yield a caution of more passes than a place of its width takes."""
    passes, width = _passes_over(request, job), request.ground.width_ft
    most: list[tuple[str, Figure]] = [("Usual up to", values()["usual_passes_count"])]
    if passes is None:
        return
    if width is not None:
        most += [("or, where the place is wide, one to every", values()["narrowest_passes_ft"])]
    # the width may be the slip as well, so both sides are taken as meant
    if all(as_if(passes, instead) > _allowed(width, instead) for instead in ({}, meant)):
        figures = (("Passes", passes), *most)
        yield finding(
            UsualCaution.MANY_PASSES, about_job(request.job_id), request.planting.where, figures
        )


def _allowed(width: Given | None, meant: MeantFigures) -> float:
    """Return the most passes that are usual over a place of a width."""
    most = values()["usual_passes_count"].value
    if width is None:
        return most
    return max(most, as_if(width, meant) / values()["narrowest_passes_ft"].value)


def _passes_over(request: JobRequest, job: Job) -> Quantity | None:
    for name in ("passes_count", "times_over_count", "lanes_count"):
        if name in job.numbers:
            return job.numbers[name]
    # a job of a drill has no passes of its own: they come of its width here
    if job.sower.drill is None or request.ground.width_ft is None:
        return None
    return LANES(
        f"{request.job_id}/drill_passes_count",
        width_ft=request.ground.width_ft,
        swath_ft=drill_width(request.job_id, job.sower.drill),
    )


def _fills(request: JobRequest, job: Job, meant: MeantFigures) -> Iterator[Finding]:
    most = Usual(None, values()["usual_fills_count"])
    for name, words in _FILLED.items():
        if name in job.numbers and _is_beyond(most, job.numbers[name], meant):
            found = out_of_usual(
                UsualCaution.MANY_FILLS,
                about_job(request.job_id),
                request.planting.where,
                (words.capitalize(), job.numbers[name]),
                most,
                what=words,
            )
            yield from [found] if found is not None else []


def adjuvant_findings(request: JobRequest, adjuvants: tuple[Adjuvant, ...]) -> Iterator[Finding]:
    """Yield a caution for each share of an adjuvant in the spray that is out of the usual."""
    names = {adjuvant.id: adjuvant.name for adjuvant in adjuvants}
    for used in request.work.adjuvants if request.work is not None else ():
        for given, name, unit in (
            (used.mix_fraction, "adjuvant_mix", "pct"),
            (used.rate_lb_per_100_gal, "adjuvant", "lb_per_100_gal"),
        ):
            if given is None:
                continue
            found = out_of_usual(
                UsualCaution.ADJUVANT_OUT_OF_USUAL,
                about_job(request.job_id),
                typed_at(given),
                ("In the spray", given),
                usual(name, unit),
                item=names[used.adjuvant],
                key=f"{given.name.removesuffix(f'_{given.unit}')}_{given.typed_unit}",
            )
            yield from [found] if found is not None else []
