"""What a planting's soil test asks for, and whether the planting asks for it to be spread."""

import datetime

from generator.inventory.ground import NutrientNeed, SoilTest
from generator.inventory.places import Planting
from generator.plan.findings.about_places import PlaceCaution, PlaceNote
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest, work_of
from generator.plan.model.finding import Finding, about_job
from generator.plan.season.open_dates import judged_on, last_day_at_most
from generator.reference.steps import Step
from generator.working import Reference


def soil_test_of(planting: Planting, soil_tests: tuple[SoilTest, ...]) -> SoilTest | None:
    """Return the soil test a planting rests on."""
    named = planting.soil_test
    return next((test for test in soil_tests if test.id == named), None) if named else None


def need_of(planting: Planting, soil_tests: tuple[SoilTest, ...]) -> NutrientNeed | None:
    """Return what a planting needs: as its soil test says, else as stated without one."""
    test = soil_test_of(planting, soil_tests)
    return test.need if test is not None and test.need is not None else planting.need


def is_asked_for(step: Step, planting: Planting, soil_tests: tuple[SoilTest, ...]) -> bool:
    """Return whether a step is a job here: some are only where lime or fertilizer is asked for."""
    if step.only_with == "lime":
        return planting.lime is not None and not asks_for_no_lime(planting, soil_tests)
    if step.only_with == "fertilizer":
        return bool(planting.fertilizers) or planting.need is not None
    return step.only_with is None or work_of(planting, step) is not None


def asks_for_no_lime(planting: Planting, soil_tests: tuple[SoilTest, ...]) -> bool:
    """Return whether the lab printed that no lime is needed: an amount of 0."""
    test = soil_test_of(planting, soil_tests)
    need = test.lime_need if test is not None else None
    return need is not None and need.amount_lb_per_ac.value == 0


def setting(step: Step, name: str) -> Reference:
    """Return a setting of a step. Raises StopIteration where it has none of this name."""
    return next(figure for figure in step.settings if figure.name == name)


def age_findings(request: JobRequest, test: SoilTest) -> list[Finding]:
    """Return a caution where the soil test is too old on the job's day, or of a day after it."""
    last = last_day_at_most(request.dates)
    # however young it is: what was sampled after the job cannot have asked for it
    if last is not None and test.sampled_on > last:
        return [
            finding(PlaceCaution.SAMPLED_AFTER, about_job(request.job_id), test.where, test=test.id)
        ]
    good = setting(request.step, "test_good_years")
    if not older_than_years(test.sampled_on, judged_on(request.dates, request.season), good.value):
        return []
    figures = (("Good for", good),)
    return [
        finding(
            PlaceCaution.OLD_SOIL_TEST, about_job(request.job_id), test.where, figures, test=test.id
        )
    ]


def older_than_years(noted: datetime.date, job_day: datetime.date, most_years: float) -> bool:
    """Return whether something noted is more than so many years old on the job's day."""
    # by the calendar: counted in days, a test would be too old a day sooner over a leap year
    then = (job_day.year - most_years, job_day.month, job_day.day)
    return then > (noted.year, noted.month, noted.day)


def left_undone(request: JobRequest, soil_tests: tuple[SoilTest, ...]) -> list[Finding]:
    """Return notes, on the sowing, of what the soil test asks for and nobody means to spread."""
    planting = request.planting
    test = soil_test_of(planting, soil_tests)
    if test is None:
        return []
    found = []
    if asks_for_no_lime(planting, soil_tests):
        if planting.lime is not None:
            found.append(
                finding(
                    PlaceNote.NO_LIME_ASKED, about_job(request.job_id), test.where, test=test.id
                )
            )
    elif test.lime_need is not None and planting.lime is None:
        found.append(
            finding(PlaceNote.LIME_LEFT_UNDONE, about_job(request.job_id), test.where, test=test.id)
        )
    need = test.need
    short = need is not None and (need.p2o5_lb_per_ac.value or need.k2o_lb_per_ac.value)
    if short and not planting.fertilizers:
        found.append(
            finding(
                PlaceNote.FERTILIZER_LEFT_UNDONE,
                about_job(request.job_id),
                test.where,
                test=test.id,
            )
        )
    return found
