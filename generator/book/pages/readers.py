"""Pages of the other readers: who there is, and for each what they see and what it gives away."""

import datetime
from collections.abc import Iterable

from generator.book.marks import label, printed
from generator.book.model import LeftFolder
from generator.book.pages.dates import DATE_KINDS
from generator.book.pages.lines import in_groups
from generator.book.pages.subjects import SEEN_BY_READERS, Subjects
from generator.book.pages.written import HOW, Written, address_of, from_template, place_of
from generator.book.workings import input_called
from generator.dataclass import dataclass
from generator.inventory.dates import HUNTED
from generator.inventory.land import LandThing
from generator.plan.land.kept_kinds import public_name
from generator.plan.model.finding import READERS
from generator.plan.model.job import Job, UpkeepJob
from generator.plan.model.plan import Handed, Plan, ThingTold, WindowTold
from generator.plan.model.sits import away_words
from generator.working import Quantity

# What a sheet says of days that a kind of private dates takes or names.
TOLD_AS = dict.fromkeys(HUNTED, "Others here: may be hunting")
NOT_ON = "Not on"
CALLED_OFF = "In the calendar, where it is called off: not on"


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet that is handed over: its work and what it is done on."""

    job: Job | UpkeepJob
    on: str


@dataclass(frozen=True, slots=True)
class RestsOn:
    """Numbers of one sheet, or of the ground, that rest on the same hidden inputs."""

    work: str
    hidden: str
    numbers: tuple[Quantity, ...]


def readers_page(plan: Plan, left: Iterable[LeftFolder] = ()) -> Written:
    """Return who the other readers are, each with the page of what they see.

    `left` are folders of readers who are gone, as the command found them.
    """
    return from_template(
        plan,
        "readers.md",
        SEEN_BY_READERS,
        HOW,
        "readers",
        [handed.kind for handed in plan.handed],
        handed=[_in_short(plan, one) for one in plan.handed],
        findings=plan.findings_on(READERS),
        left=tuple(left),
    )


def _in_short(
    plan: Plan, handed: Handed
) -> tuple[Handed, list[str], list[str], list[datetime.date]]:
    """Return a reader with the names of their jobs, and the inputs and days these give away."""
    resting = (name for _, hidden in handed.rest_on_hidden for name in hidden)
    return (
        handed,
        list(dict.fromkeys(sheet.job.step.name for sheet in _sheets(plan, handed))),
        list(dict.fromkeys(map(input_called, resting))),
        sorted({day for told in handed.windows for day in told.ends}),
    )


def reader_page(plan: Plan, handed: Handed) -> Written:
    """Return what one other reader is handed, and what of the private that gives away."""
    sheets = _sheets(plan, handed)
    by_id = {sheet.job.id: sheet for sheet in sheets}
    return from_template(
        plan,
        f"readers/{handed.reader}.md",
        f"What {reader_words(handed)} sees",
        HOW,
        "reader",
        [handed.kind, handed.reader],
        one=handed,
        sheets=sheets,
        numbers=_resting(plan, handed, by_id),
        stands=[stand for stand in plan.land.stands if stand.id in handed.stand_ids],
        walks=[walk for walk in plan.land.routes if walk.id in handed.route_ids],
        away=_away(plan, handed),
        land=_land(plan, handed),
        lying=_lying(plan, handed),
        windows=[_window(by_id[told.job_id], told) for told in handed.windows],
        address_of=address_of,
    )


def _away(plan: Plan, handed: Handed) -> list[tuple[str, str]]:
    """Return the hours in which a reader is told to keep away, thing by thing."""
    subjects = Subjects(plan)
    by_thing = in_groups(handed.kept_away, lambda keep: keep.subject)
    return [(subjects.named(about)[0], away_words(same)) for about, same in by_thing.items()]


def _land(plan: Plan, handed: Handed) -> list[tuple[LandThing, str, ThingTold, list[str]]]:
    """Return things of the land a reader sees: each, its name for them, why, and near what."""
    things = {thing.id: thing for thing in plan.land.things}
    return [
        (
            things[told.thing_id],
            public_name(things[told.thing_id]),
            told,
            [plan.place(place_id).name for place_id in told.near],
        )
        for told in handed.things
    ]


def _lying(plan: Plan, handed: Handed) -> list[str]:
    """Return the places of their work that have points, by name: files hold where they lie."""
    jobs = {job.id: job for job in plan.jobs}
    worked_on = {jobs[job_id].place_id for job_id in handed.job_ids}
    return [place.name for place in plan.places if place.id in worked_on and place.lies is not None]


def reader_words(handed: Handed) -> str:
    """Return what a reader goes by."""
    return handed.name or handed.reader.replace("-", " ")


def _sheets(plan: Plan, handed: Handed) -> list[Sheet]:
    jobs = {job.id: job for job in plan.jobs}
    upkeep = {job.id: job for job in plan.upkeep}
    return [
        *(Sheet(jobs[job_id], place_of(plan, jobs[job_id]).name) for job_id in handed.job_ids),
        *(Sheet(upkeep[job_id], upkeep[job_id].subject.name) for job_id in handed.upkeep_ids),
    ]


def _resting(plan: Plan, handed: Handed, sheets: dict[str, Sheet]) -> list[RestsOn]:
    """Return what rests on the hidden, a sheet and what it rests on together.

    What is called and reads the same on one sheet, as the loads of a hired sprayer, stands once.
    """
    groups: dict[tuple[str, str], dict[tuple[str, str], Quantity]] = {}
    for number, hidden in handed.rest_on_hidden:
        key = _work_of(plan, sheets, number), ", ".join(map(input_called, hidden))
        groups.setdefault(key, {}).setdefault((label(number), printed(number)), number)
    return [
        RestsOn(work, hidden, tuple(numbers.values())) for (work, hidden), numbers in groups.items()
    ]


def _work_of(plan: Plan, sheets: dict[str, Sheet], number: Quantity) -> str:
    """Return the work a number belongs to, or the place whose ground it is, in words."""
    # an id begins with that of its job; of ground alone, with its place
    job_id = "/".join(number.identity.split("/")[:3])
    if (sheet := sheets.get(job_id)) is not None:
        return f"{sheet.job.step.name}: {sheet.on}"
    return plan.place(number.identity.partition("/")[0]).name


def _window(sheet: Sheet, told: WindowTold) -> tuple[Sheet, str, WindowTold, str]:
    """Return a row of days that private dates end: the work, what its sheet says, the dates."""
    said = TOLD_AS.get(told.dates.kind, NOT_ON)
    if sheet.job.state.is_settled:
        said = CALLED_OFF
    return sheet, said, told, DATE_KINDS[told.dates.kind]
