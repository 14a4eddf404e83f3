"""Pages of the years ahead: five seasons of work, ground, money and heights, for the owner."""

from generator.book.money_views import season_row
from generator.book.pages.pictures import acres_picture, work_picture
from generator.book.pages.written import YEAR, Written, from_template
from generator.dataclass import dataclass
from generator.plan.model.days import moved
from generator.plan.model.job import Job, JobAhead, UpkeepJob
from generator.plan.model.place import Place
from generator.plan.model.plan import Plan
from generator.plan.money.money_hours import to_pay
from generator.plan.standing.cover_by_season import AGES
from generator.plan.views.years_ahead import SeasonAhead, every_year, years_ahead
from generator.reference.library import marker_names
from generator.reference.operations import work_groups

AHEAD = "Years ahead"
PLACES_NAMED = 6  # in a line of work on the page of all seasons
AnyJob = Job | JobAhead


@dataclass(frozen=True, slots=True)
class StepAhead:
    """One step with the same days and the same state, on one place or on several."""

    job: AnyJob
    signs: tuple[str, ...]
    places: tuple[tuple[AnyJob, Place, bool], ...]


def ahead_page(plan: Plan) -> Written:
    """Return the plan's season, and the work of the four after it in a short table each."""
    seasons = years_ahead(plan)
    acres = tuple(season.acres for season in seasons)
    steps = dict.fromkeys(job.step.name for season in seasons for job in season.jobs)
    return from_template(
        plan,
        "ahead.md",
        AHEAD,
        YEAR,
        "ahead",
        ["years ahead", "next seasons", "five seasons", *steps],
        glance=seasons,
        seasons=_told(plan, seasons),
        named=PLACES_NAMED,
        acres_picture=acres_picture(acres),
        ages=[
            (age, words)
            for age, words in AGES.items()
            if any(age in season.acres for season in acres)
        ],
        work_picture=work_picture(seasons),
        groups=[
            head.name
            for head in work_groups().values()
            if any(head.name == group.title for season in seasons for group in season.work)
        ],
        pay=to_pay(plan),
        row=season_row(plan),
        every_year=_by_things(plan),
    )


def _by_things(plan: Plan) -> list[tuple[list[str], list[UpkeepJob]]]:
    """Return the things that ask for the same in every season, and what that is."""
    found: dict[tuple[str, ...], list[UpkeepJob]] = {}
    for jobs in every_year(plan.upkeep, plan.season):
        found.setdefault(tuple(job.subject.id for job in jobs), []).append(jobs[0])
    names = {job.subject.id: job.subject.name for job in plan.upkeep}
    return [([names[thing] for thing in things], jobs) for things, jobs in found.items()]


@dataclass(frozen=True, slots=True)
class SeasonTold:
    """A season on the page of all; `as_in` is the season whose work comes back on the same days.

    `again` are those of its lines that come back from the season before, in the same places on the
    same days.
    """

    season: SeasonAhead
    lines: tuple[StepAhead, ...]
    again: tuple[StepAhead, ...]
    as_in: int | None

    @property
    def before(self) -> int:
        """The season before."""
        return self.season.season - 1

    def new(self) -> tuple[StepAhead, ...]:
        """Return the lines that the season before did not have."""
        return tuple(line for line in self.lines if line not in self.again)


def _told(plan: Plan, seasons: tuple[SeasonAhead, ...]) -> list[SeasonTold]:
    """Return the seasons after the plan's, each with its work or the season that has the same."""
    told: list[SeasonTold] = []
    for season in seasons[1:]:
        lines = tuple(_lines(plan, season.jobs))
        last = next((one for one in reversed(told) if one.as_in is None), None)
        same = last is not None and _a_year_apart(last, season.season, lines)
        before = {_seen_as(line, 1) for line in told[-1].lines} if told else set()
        again = tuple(line for line in lines if _seen_as(line, 0) in before)
        as_in = last.season.season if last and same else None
        told.append(SeasonTold(season, lines, again, as_in))
    return told


def _a_year_apart(one: SeasonTold, season: int, lines: tuple[StepAhead, ...]) -> bool:
    """Return whether the work of a season is that of another, whole years later."""
    years = season - one.season.season
    return bool(lines) and [_seen_as(line, years) for line in one.lines] == [
        _seen_as(line, 0) for line in lines
    ]


def _seen_as(line: StepAhead, years: int) -> object:
    """Return what a line says, its days moved by years."""
    job = line.job
    ends = tuple(day and moved(day, years) for day in (job.dates.opens, job.dates.closes))
    days = tuple((moved(first, years), moved(last, years)) for first, last in job.usable)
    places = tuple((place.id, stopped) for _, place, stopped in line.places)
    return job.step.name, ends, days, line.signs, job.state.kind, places


def season_page(plan: Plan, year: int) -> Written:
    """Return one season of those ahead: every place of its work, ground, heights, what it takes."""
    season = next(one for one in years_ahead(plan) if one.season == year)
    return from_template(
        plan,
        f"seasons/{year}.md",
        f"Season {year}",
        YEAR,
        "season",
        [f"season {year}", *dict.fromkeys(job.step.name for job in season.jobs)],
        one=season,
        work=_work(plan, season),
        age_words=AGES,
        is_of_plan=year == plan.season,
        owed=any(job.season < plan.season for job in plan.jobs),
    )


def _work(plan: Plan, season: SeasonAhead) -> list[tuple[str, list[StepAhead]]]:
    """Return the lines of work of a season, in their groups."""
    return [(group.title, _lines(plan, group.jobs)) for group in season.work]


def _lines(plan: Plan, jobs: tuple[AnyJob, ...]) -> list[StepAhead]:
    stopped, names = plan.stopped(), marker_names()
    same: dict[object, list[AnyJob]] = {}
    for job in jobs:
        state = job.state
        alike = (job.dates, job.usable, job.step.name, state.kind, state.day, state.question)
        same.setdefault(alike, []).append(job)
    return [
        StepAhead(
            alike[0],
            tuple(names[sign].lower() for sign in alike[0].dates.missing_signs),
            tuple((job, plan.place(job.place_id), job.id in stopped) for job in alike),
        )
        for alike in same.values()
    ]
