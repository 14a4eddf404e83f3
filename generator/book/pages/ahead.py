"""Pages of the years ahead: five seasons of work, ground, money and heights, for the owner."""

from generator.book.money_views import season_row
from generator.book.pages.pictures import acres_picture, work_picture
from generator.book.pages.written import YEAR, Written, from_template
from generator.dataclass import dataclass
from generator.plan.model.job import Job, JobAhead
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
    """One step with the same open dates and the same state, on one place or on several."""

    job: AnyJob
    signs: tuple[str, ...]
    places: tuple[tuple[AnyJob, Place, bool], ...]


def ahead_page(plan: Plan) -> Written:
    """Return the plan's season and the four after it, a short table each."""
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
        seasons=[(season, _lines(plan, season.jobs)) for season in seasons],
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
        every_year=every_year(plan.upkeep, plan.season),
    )


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
        same.setdefault((job.dates, job.step.name, job.state.kind, job.state.question), []).append(
            job
        )
    return [
        StepAhead(
            alike[0],
            tuple(names[sign].lower() for sign in alike[0].dates.missing_signs),
            tuple((job, plan.place(job.place_id), job.id in stopped) for job in alike),
        )
        for alike in same.values()
    ]
