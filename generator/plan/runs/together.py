"""Which jobs go together: the same things at one rate from one machine, on shared days."""

import datetime
from collections.abc import Iterable, Mapping

from generator.compute.dose import treated_ac
from generator.dataclass import dataclass
from generator.plan.findings.about_places import PlaceNote
from generator.plan.findings.about_spraying import SprayCaution
from generator.plan.jobs.slope import slope_to_measure
from generator.plan.labels.limit_stops import figure_value
from generator.plan.model.days import Span, inside_of, joined
from generator.plan.model.job import Job

RATE_DECIMALS = 6
# Why a job is in no run, or not in this one, as its page says it to the owner.
STOP_STANDS = "A stop stands on it"
WAITS = "It waits for an answer"
NO_AMOUNT = "Nothing is worked out for it"
NO_MACHINE = "No machine is named for it"
NO_PASSES = "Its passes are not counted"
NOT_SET_BACK = "What its label keeps clear is not taken out of its ground"
NO_SLOPE = "Its slope is not measured"
NO_WIDTH = "Its width is not taped"
NO_DAYS = "No day of it is left or known"
OTHER_THINGS = "Something else goes in with it"
OTHER_RATE = "Another rate"
OTHER_MACHINE = "Another machine, nozzle, setting or way"
OTHER_HANDS = "Somebody else does it"
OTHER_DAYS = "No day suits it and all of these"
OTHER_GROUND = "Its ground may be that of a place here"
OTHER_RUN = "It is in another run"
_NO_PASSES = SprayCaution.NO_PASSES.value.code
_NOT_SET_BACK = SprayCaution.NOTHING_SET_BACK.value.code
_NO_WIDTH = PlaceNote.NO_WIDTH.value.code


@dataclass(frozen=True, slots=True)
class InCommon:
    """What jobs of one run have in common, part by part."""

    kind: str
    things: tuple[str, ...]
    rates: tuple[tuple[float, str], ...]
    machine: tuple[str, ...]
    hands: tuple[str, ...]


def kind_of(job: Job) -> str | None:
    """Return what a run of such jobs is, or None where there are no such runs."""
    if job.step.does.sprays:
        return "spray"
    return "sow" if job.step.does.puts_down == "seed" else None


def alike_of(job: Job, hands: tuple[str, ...]) -> InCommon:
    """Return what a job that can be in a run must have in common with others of it."""
    if job.mix is not None:
        mix = job.mix
        added = (part.adjuvant.id for part in mix.adjuvants)
        methods = (str(part.use.method) for part in mix.parts)
        return InCommon(
            "spray",
            (*(part.product.id for part in mix.parts), *added),
            tuple((_rounded(figure_value(pour.rate)), pour.rate.unit) for pour in mix.pours),
            (mix.sprayer.id, *methods),
            hands,
        )
    sower = job.sower
    machine, test = sower.spreader or sower.drill, sower.spreader_test or sower.drill_test
    assert machine is not None
    setting = test.setting if test is not None else None
    return InCommon(
        "sow",
        tuple(sowing.lot.id for sowing in job.sowings),
        tuple((_rounded(figure_value(sowing.rate)), sowing.rate.unit) for sowing in job.sowings),
        (machine.id, setting or "", job.method or ""),
        hands,
    )


def _rounded(rate: float) -> float:
    # quarts and ounces of one rate differ by what computing adds
    return round(rate, RATE_DECIMALS)


def why_alone(job: Job, *, stopped: bool, codes: frozenset[str], days: tuple[Span, ...]) -> str:
    """Return why a job is in no run at all, or nothing."""
    if stopped:
        return STOP_STANDS
    if job.state.question is not None:
        return WAITS
    if job.mix is None and not job.sowings:
        return NO_AMOUNT
    if doubt := _unmeasured(job, codes):
        return doubt
    if job.mix is None and job.sower.spreader is None and job.sower.drill is None:
        return NO_MACHINE
    return "" if days else NO_DAYS


def _unmeasured(job: Job, codes: frozenset[str]) -> str:
    """Return what of the ground nobody measured, so that what is left at a gate may be wrong."""
    if job.mix is None:
        return NO_WIDTH if _NO_WIDTH in codes else ""
    if _NO_PASSES in codes:
        return NO_PASSES
    if _NOT_SET_BACK in codes and not _is_measured(job):
        return NOT_SET_BACK
    return NO_SLOPE if slope_to_measure(job) else ""


def _is_measured(job: Job) -> bool:
    """Whether somebody measured the ground that a job sprays, and typed it."""
    ground = job.numbers.get("treated_ac")
    return ground is not None and ground.formula.function is treated_ac


def why_apart(mine: InCommon, run: InCommon) -> str:
    """Return in what a job differs from those of a run, or nothing."""
    if mine.things != run.things:
        return OTHER_THINGS
    if mine.rates != run.rates:
        return OTHER_RATE
    if mine.machine != run.machine:
        return OTHER_MACHINE
    return OTHER_HANDS if mine.hands != run.hands else ""


def days_from(job: Job, as_of: datetime.date) -> tuple[Span, ...]:
    """Return the days of a job that are left on a day."""
    return tuple(span for days in job.usable for span in inside_of(days, (as_of, days[1])))


def shared_days(one: tuple[Span, ...], other: tuple[Span, ...]) -> tuple[Span, ...]:
    """Return the days that lie in both.

    >>> day = datetime.date
    >>> first = ((day(2027, 5, 1), day(2027, 5, 9)),)
    >>> shared_days(first, ((day(2027, 5, 8), day(2027, 5, 12)),))
    ((datetime.date(2027, 5, 8), datetime.date(2027, 5, 9)),)
    """
    return joined(span for mine in one for theirs in other for span in inside_of(mine, theirs))


@dataclass(frozen=True, slots=True)
class RunGroup:
    """Jobs that go together, with the days on which all of them can be done."""

    jobs: tuple[Job, ...]
    days: tuple[Span, ...]


def run_groups(
    jobs: Iterable[tuple[Job, tuple[Span, ...]]], grounds: Mapping[str, frozenset[str]]
) -> list[RunGroup]:
    """Return jobs that are alike in groups with shared days and apart on the ground.

    Each joins the first group whose days it leaves some of: the earliest opens it.
    """
    found: list[RunGroup] = []
    for job, days in sorted(jobs, key=lambda pair: pair[1][0]):
        for number, group in enumerate(found):
            shared = shared_days(group.days, days)
            if shared and not on_its_ground(job, group.jobs, grounds):
                found[number] = RunGroup((*group.jobs, job), shared)
                break
        else:
            found.append(RunGroup((job,), days))
    return found


def on_its_ground(job: Job, jobs: Iterable[Job], grounds: Mapping[str, frozenset[str]]) -> bool:
    """Return whether a job lies, or may lie, on the ground of one of the others."""
    here = grounds[job.place_id]
    return any(other.place_id in here or job.place_id in grounds[other.place_id] for other in jobs)
