"""What each job asks of a day: its label, its kind of work, its hours and who must be along.

A day as it is stands beside it only on the page. Nothing here is for one day alone, and a stop is
never weighed against a fine day.
"""

import datetime
from collections.abc import Mapping

from generator.dataclass import dataclass
from generator.inventory.places import Work, hidden_by
from generator.plan.days.spray_weather import Wind, longest_dry, tightest_wind
from generator.plan.findings.about_after import AfterCaution
from generator.plan.jobs.request import work_of
from generator.plan.model.finding import Finding
from generator.plan.model.job import Job, UpkeepJob
from generator.plan.model.plan import Plan, WorkTime
from generator.reference.library import species, values
from generator.reference.suited import FREEZES_AND_THAWS, Suits, suited
from generator.working import Given, Quantity, Reference

# What the ground may be like on a day, as somebody sees who stands on it.
GROUND_STATES = ("frozen", "firm", "soft")
# Work whose hours are not known may last the day.
_HOURS_IN_DAY = 24.0


@dataclass(frozen=True, slots=True)
class DayAsks:
    """What one job that is still to come asks of a day; what is None or empty is not asked.

    `hours` is how long it takes, None where that is not known. `warm` and `night` are what the day
    and the night after it have at least, `frost` what the night before has at most. `dry_hours`
    is how long no rain may come from its first minute on: while it is done, and `dry_after` that
    where a label asks for it; hours that are not known count as a day. `kept_out` is the last day
    on which sprayed ground may keep people out. `walks` are the walks it lies on, by id; `load` is
    the same for sprayings that one mix does.
    """

    job: Job | UpkeepJob
    stop: Finding | None
    stop_on_it: Finding | None
    kept_out: datetime.date | None
    suits: Suits | None
    hours: Quantity | None
    takes: tuple[str, ...]
    wind: Wind | None
    warm: Reference | None
    night: Reference | None
    frost: Reference | None
    ground: tuple[str, ...]
    dry_after: Given | None
    dry_hours: float | None
    walks: tuple[str, ...]
    load: tuple[object, ...]

    @property
    def uses_fire(self) -> bool:
        """Whether a permit, a crew and a written plan decide, whatever the day is like."""
        return self.job.step.does.uses_fire

    @property
    def nothing_cleared(self) -> bool:
        """Whether it is a spraying for which no tank is worked out."""
        job = self.job
        return job.step.does.sprays and (isinstance(job, UpkeepJob) or job.mix is None)

    @property
    def not_alone(self) -> str | None:
        """How it is shared out, where one person alone never does it."""
        return self.job.step.does.not_alone


def day_asks(plan: Plan) -> tuple[DayAsks, ...]:
    """Return what every job asks that can still come and has days; what closes first, first."""
    times = {time.job_id: time for time in plan.times}
    lots = {item.id: item.words for item in plan.items if item.kind == "seed"}
    every: tuple[Job | UpkeepJob, ...] = (*plan.jobs, *plan.upkeep)
    to_come = [job for job in every if job.state.is_ahead and job.usable]
    to_come.sort(key=lambda job: (job.usable[-1][1], job.id))
    return tuple(_asks(plan, job, times.get(job.id), lots) for job in to_come)


def _asks(
    plan: Plan, job: Job | UpkeepJob, time: WorkTime | None, lots: Mapping[str, str]
) -> DayAsks:
    suits = suited()[job.step.suits] if job.step.suits is not None else None
    mix = job.mix if isinstance(job, Job) else None
    after = longest_dry(mix) if mix is not None else None
    thaws = suits is not None and suits.freezes_and_thaws
    freezing, thawing = (values()[name] if thaws else None for name in FREEZES_AND_THAWS)
    return DayAsks(
        job=job,
        stop=_stop_on(plan, job.id),
        stop_on_it=_stop_on(plan, job.subject.id) if isinstance(job, UpkeepJob) else None,
        kept_out=_kept_out(plan, job),
        suits=suits,
        hours=time.hours if time is not None else None,
        takes=_takes(job, time, lots),
        wind=tightest_wind(mix) if mix is not None else None,
        warm=thawing or (suits.high_at_least if suits is not None else None),
        night=suits.night_at_least if suits is not None else None,
        frost=freezing,
        ground=_ground(job, suits),
        dry_after=after,
        dry_hours=_dry_hours(suits, time, after),
        walks=_walks(plan, job),
        load=_load(plan, job) if mix is not None else (),
    )


def _stop_on(plan: Plan, subject: str) -> Finding | None:
    """Return the first stop on a job or a thing."""
    found = plan.findings_on(subject)
    return next((finding for finding in found if finding.severity == "stop"), None)


def _kept_out(plan: Plan, job: Job | UpkeepJob) -> datetime.date | None:
    """Return the last day on which a spraying may keep people out of the ground of a job.

    Who is not told of the spraying is told of no day, and stays out until the owner says more.
    """
    code = AfterCaution.KEEP_OUT.value.code
    found = [finding for finding in plan.findings_on(job.id) if finding.code == code]
    last = {
        f"{record.entry.where.file}:{record.entry.where.line}": record.keep_out.until()
        for record in plan.records
    }
    return max((last.get(one.place, datetime.date.max) for one in found), default=None)


def _ground(job: Job | UpkeepJob, suits: Suits | None) -> tuple[str, ...]:
    """Return in which states the ground may be; none where it does not matter."""
    if suits is None or suits.ground is None:
        return ()
    if suits.ground == "thawed":
        return ("firm", "soft")
    does = job.step.does
    # frozen ground carries a machine, and takes neither a blade nor what is laid on it
    worked = does.digs or does.packs or does.puts_down != "nothing"
    return ("firm",) if worked else ("frozen", "firm")


def _dry_hours(suits: Suits | None, time: WorkTime | None, after: Given | None) -> float | None:
    """Return how long no rain may come from the first minute of a job on."""
    if after is None and (suits is None or suits.rain_at_most is None):
        return None
    work = time.hours.value if time is not None else _HOURS_IN_DAY
    return work + (after.value if after is not None else 0)


def _takes(job: Job | UpkeepJob, time: WorkTime | None, lots: Mapping[str, str]) -> tuple[str, ...]:
    """Return what a job takes along, as its sheet calls it: what is put down, and with what."""
    names: list[str] = []
    if isinstance(job, Job):
        if job.mix is not None:
            names += [part.product.name for part in job.mix.parts]
            names += [part.adjuvant.name for part in job.mix.adjuvants]
            names.append(job.mix.sprayer.name)
        # the sheet of who keeps no lots calls seed by what grows of it
        names += [lots.get(one.lot.id, species()[one.lot.species].name) for one in job.sowings]
        names += [tool.name for tool in (job.sower.spreader, job.sower.drill) if tool is not None]
        names += [spreading.item.name for spreading in job.spreadings]
        names += [row.plant.name for row in job.rows]
    if time is not None:
        names.append(time.machine.name)
    return tuple(dict.fromkeys(names))


def _walks(plan: Plan, job: Job | UpkeepJob) -> tuple[str, ...]:
    """Return the walks that a job lies on: itself, one that leads to it, one it hides."""
    if isinstance(job, UpkeepJob):
        about = job.subject.id
        return tuple(
            walk.id for walk in plan.land.routes if about == walk.id or about in walk.serves
        )
    typed = plan.place(job.place_id).typed
    hidden = hidden_by(typed) if typed is not None else ()
    return tuple(walk.id for walk in plan.land.routes if walk.id in hidden)


def _load(plan: Plan, job: Job | UpkeepJob) -> tuple[object, ...]:
    """Return what is the same for every spraying that one mix does: products, rates, sprayer."""
    typed = plan.place(job.place_id).typed if isinstance(job, Job) else None
    # what is typed for the place is the owner's; others mix by the sheet
    if typed is None or not isinstance(job, Job):
        return ()
    planting = next(one for one in typed.plantings if one.id == job.planting_id)
    work = work_of(planting, job.step)
    return _mixed(work) if work is not None else ()


def _mixed(work: Work) -> tuple[object, ...]:
    return (
        work.sprayer,
        (work.product, *_rates(work)),
        tuple((one.product, *_rates(one)) for one in work.partners),
        tuple((one.adjuvant, *_rates(one)) for one in work.adjuvants),
    )


def _rates(record: object) -> tuple[tuple[float, str] | None, ...]:
    """Return the rates typed for one thing in a tank, wherever they stand in the files."""
    names = (
        "rate_product", "rate_ai_lb_per_ac", "rate_ae_lb_per_ac", "mix_fraction",
        "rate_lb_per_100_gal",
    )  # fmt: skip
    typed: list[Given | None] = [getattr(record, name, None) for name in names]
    return tuple((one.value, one.unit) if one is not None else None for one in typed)
