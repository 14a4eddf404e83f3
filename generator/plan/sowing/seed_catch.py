"""Which catch test a sowing rests on: one made with just its seed before one made with part of it.

A mixture runs through an opening at another rate than one of its kinds alone (common practice).
"""

from collections.abc import Iterator, Sequence
from typing import TypeVar

from generator.inventory.drill import DrillTest
from generator.inventory.equipment import SpreaderTest
from generator.plan.findings.about_sowing import SowCaution
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.work import Sowing
from generator.plan.sowing.seed_rates import heaviest

_T = TypeVar("_T", SpreaderTest, DrillTest)


def lots_in(test: SpreaderTest | DrillTest) -> frozenset[str]:
    """Return the lots that were in the hopper when something was caught."""
    return frozenset({test.lot, *test.mixed_with})


def latest_with(tests: Sequence[_T], parts: tuple[Sowing, ...]) -> _T | None:
    """Return the last test with just what is sown, else with the heaviest part in it, else None."""
    sown, most = _lots_of(parts), heaviest(parts).id
    by_day = sorted(tests, key=lambda test: test.tested_on)
    alike = [test for test in by_day if lots_in(test) == sown]
    near = [test for test in by_day if most in lots_in(test)]
    return next(reversed(alike or near), None)


def other_seed_findings(
    request: JobRequest, parts: tuple[Sowing, ...], test: SpreaderTest | DrillTest
) -> Iterator[Finding]:
    """Yield a caution where what was caught is not just what is sown."""
    sown, caught = _lots_of(parts), lots_in(test)
    if caught != sown:
        words = {"caught": ", ".join(sorted(caught)), "sown": ", ".join(sorted(sown))}
        yield finding(
            SowCaution.CAUGHT_OTHER_SEED, about_job(request.job_id), test.where, (), **words
        )


def _lots_of(parts: tuple[Sowing, ...]) -> frozenset[str]:
    return frozenset(part.lot.id for part in parts)
