"""Pages of the calendar: now and the months to come, and the year as bands."""

import datetime
from collections.abc import Callable, Iterable

from markupsafe import Markup

from generator.book.charts.bands import band, month_scale
from generator.book.pages.dates import _DATE_KINDS, placed
from generator.book.pages.subjects import Subjects
from generator.book.pages.written import (
    SEASONS,
    Listed,
    Written,
    everything_to_do,
    from_template,
)
from generator.dataclass import dataclass
from generator.plan.findings.about_after import AfterCaution
from generator.plan.jobs.job_days import FIRST_OF_SEASON, LAST_OF_SEASON
from generator.plan.model.days import Span, comes_back, inside_of
from generator.plan.model.job import Job
from generator.plan.model.plan import Plan
from generator.plan.season.open_dates import day_in_season
from generator.plan.views.month_by_month import MonthOfWork, Turn, month_by_month
from generator.reference.operations import work_groups

NOW, YEAR = "Now, month by month", "The year"
A_YEAR = datetime.timedelta(days=365)
KEEP_OUT = AfterCaution.KEEP_OUT.value.code


@dataclass(frozen=True, slots=True)
class BandRow:
    """One row of the year: a step with the same open dates on one place or on several."""

    name: str
    dates: Span
    years: tuple[Span, ...]
    jobs: tuple[Listed, ...]
    picture: Markup


@dataclass(frozen=True, slots=True)
class Kept:
    """Dates to keep in mind: their kind and where they hold in words, and their days."""

    kind: str
    where: str
    spans: tuple[Span, ...]
    note: str | None = None


def now_page(plan: Plan) -> Written:
    """Return what is open, what must rest, and the months to come with their work.

    Every reader has their own: the jobs they see, and a partner the days when others are out.
    """
    listed = {row[0].id: row for row in everything_to_do(plan)}
    months = month_by_month(plan)
    within_a_year = _kept_in(plan, (plan.as_of, plan.as_of + A_YEAR))
    subjects = Subjects(plan)
    return from_template(
        plan,
        "now.md",
        NOW,
        SEASONS if plan.reader == "owner" else "",
        "now",
        ["now", "today", "this month", "open", *(job.step.name for job, _, _ in listed.values())],
        open_now=_together(
            _closing_first(row for row in listed.values() if row[0].state.kind == "open"),
            lambda row: row[0].state,
        ),
        # spans are cut off at the plan's day: those that hold today begin with it
        resting=[
            (dates, last)
            for dates in within_a_year
            for first, last in dates.spans
            if first == plan.as_of
        ],
        kept_out=[
            (finding, subjects.named(finding.subject))
            for finding in plan.findings
            if finding.code == KEEP_OUT
        ],
        months=_months(plan, months, listed),
        every=[
            (*row, _days(_not_on(row))) for row in listed.values() if not row[0].state.is_settled
        ],
        kept=[
            (dates, _days(dates.spans)) for dates in _kept_in(plan, (plan.as_of, _season(plan)[1]))
        ],
        last_day=_season(plan)[1],
    )


def _months(
    plan: Plan, months: Iterable[MonthOfWork], listed: dict[str, Listed]
) -> list[tuple[MonthOfWork, list[tuple[list[Listed], Turn]], list[tuple[Kept, Span]]]]:
    """Return the months with their jobs and dates; quiet ones are for the owner alone."""
    found = [
        (month, _turns(month, listed), _by_days(_kept_in(plan, (month.first, month.last))))
        for month in months
    ]
    return [row for row in found if plan.reader == "owner" or row[1] or row[2]]


def _kept_in(plan: Plan, inside: Span) -> list[Kept]:
    """Return the dates that a reader keeps and that fall inside a span, in the plan's order.

    The owner has all of them. A partner has the days when others are out; others have none, and
    read on each sheet who may be there.
    """
    told = placed(plan)
    own = [
        Kept(_DATE_KINDS[dates.kind], told(dates.places), comes_back(dates, inside), dates.note)
        for dates in plan.land.dates
    ]
    others = [
        Kept(
            _DATE_KINDS[record.kind],
            told(record.on) or "all the ground",
            _inside(record.spans, inside),
        )
        for record in plan.others_out
    ]
    return [dates for dates in (*own, *others) if dates.spans]


def _inside(spans: Iterable[Span], inside: Span) -> tuple[Span, ...]:
    return tuple(part for span in spans for part in inside_of(span, inside))


def _by_days(kept: Iterable[Kept]) -> list[tuple[Kept, Span]]:
    """Return each span of dates with them, the first to begin first."""
    found = [(dates, span) for dates in kept for span in dates.spans]
    return sorted(found, key=lambda entry: entry[1])


def _days(spans: Iterable[Span]) -> Markup:
    """Return spans of days as an attribute holds them, first and last of each."""
    return Markup(" ").join(
        Markup(f"{first.isoformat()}/{last.isoformat()}") for first, last in spans
    )


def _together(jobs: Iterable[Listed], alike: Callable[[Listed], object]) -> list[list[Listed]]:
    """Return jobs in groups of one step and of what is alike in them, in the order they come."""
    groups: dict[tuple[str, object], list[Listed]] = {}
    for row in jobs:
        groups.setdefault((row[0].step.name, alike(row)), []).append(row)
    return list(groups.values())


def _turns(month: MonthOfWork, listed: dict[str, Listed]) -> list[tuple[list[Listed], Turn]]:
    """Return the jobs of a month, those of one step with the same dates together."""
    turns = {work.job.id: work.turn for work in month.jobs}
    groups = _together((listed[work.job.id] for work in month.jobs), _dates)
    return [(group, turns[group[0][0].id]) for group in groups]


def _closing_first(jobs: Iterable[Listed]) -> list[Listed]:
    last = datetime.date.max
    return sorted(jobs, key=lambda row: (row[0].dates.closes or last, row[0].id))


def year_page(plan: Plan) -> Written:
    """Return the season as bands: every kind of work with its open dates, and dates to keep."""
    listed = [row for row in everything_to_do(plan) if _is_in_season(plan, row)]
    groups = [
        (group.name, _rows(plan, [row for row in listed if row[0].step.does.group == group]))
        for group in work_groups().values()
    ]
    return from_template(
        plan,
        "year.md",
        YEAR,
        SEASONS,
        "year",
        ["year", "season", "calendar", *(title for title, rows in groups if rows)],
        scale=month_scale(plan.season),
        kept=_kept(plan),
        groups=[(title, rows) for title, rows in groups if rows],
        years_differ=any(row[0].dates.by_year for row in listed),
        undated=[row for row in everything_to_do(plan) if row[0].state.kind == "undated"],
        placed=placed(plan),
    )


def _season(plan: Plan) -> Span:
    first, last = (day_in_season(day, plan.season) for day in (FIRST_OF_SEASON, LAST_OF_SEASON))
    return first, last


def _is_in_season(plan: Plan, row: Listed) -> bool:
    opens, closes = row[0].dates.opens, row[0].dates.closes
    if opens is None or closes is None or closes < opens:
        return False
    first, last = _season(plan)
    return opens <= last and closes >= first


def _rows(plan: Plan, listed: list[Listed]) -> list[BandRow]:
    """Return the rows of one kind of work: what is the same on several places shares a row."""
    same: dict[tuple[Span, str, tuple[Span, ...]], list[Listed]] = {}
    for row in listed:
        same.setdefault((_dates(row), row[0].step.name, _not_on(row)), []).append(row)
    return [
        BandRow(
            name,
            dates,
            (years := _years(jobs)),
            tuple(jobs),
            band(plan.season, (dates,), not_on, plan.as_of, years),
        )
        for (dates, name, not_on), jobs in sorted(same.items(), key=lambda entry: entry[0])
    ]


def _years(jobs: Iterable[Listed]) -> tuple[Span, ...]:
    """Return from the first day of any year to the last of any, where dates wait for a sign."""
    years = [year for row in jobs for year in row[0].dates.by_year]
    opens = [year.opens for year in years if year.opens is not None]
    closes = [year.closes for year in years if year.closes is not None]
    if not opens or not closes or min(opens) > max(closes):
        return ()
    return ((min(opens), max(closes)),)


def _dates(row: Listed) -> Span:
    """Return the open dates of a job that has them."""
    opens, closes = row[0].dates.opens, row[0].dates.closes
    assert opens is not None
    assert closes is not None
    return opens, closes


def _not_on(row: Listed) -> tuple[Span, ...]:
    job = row[0]
    return job.days.not_on if isinstance(job, Job) and job.days is not None else ()


def _kept(plan: Plan) -> list[tuple[str, Markup, tuple[Span, ...], tuple[str, ...], str | None]]:
    """Return the dates of the season with their bands, by the first day."""
    rows = []
    for dates in plan.land.dates:
        spans = comes_back(dates, _season(plan))
        if spans:
            drawn = band(plan.season, (), spans, plan.as_of)
            rows.append((_DATE_KINDS[dates.kind], drawn, spans, dates.places, dates.note))
    return sorted(rows, key=lambda entry: (entry[2], entry[0]))
