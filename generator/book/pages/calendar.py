"""Pages of the calendar: the months to come, and the year as bands."""

from collections.abc import Iterable

from markupsafe import Markup

from generator.book.charts.bands import band, month_scale
from generator.book.pages.dates import DATE_KINDS, placed
from generator.book.pages.lines import NamedLine, in_groups, line_of, sheet_of
from generator.book.pages.pictures_year import leaf_picture
from generator.book.pages.written import YEAR, Listed, Written, everything_to_do, from_template
from generator.dataclass import dataclass
from generator.plan.jobs.job_days import FIRST_OF_SEASON, LAST_OF_SEASON
from generator.plan.model.days import Span, comes_back, inside_of
from generator.plan.model.plan import Plan
from generator.plan.season.open_dates import day_in_season
from generator.plan.views.month_by_month import MonthOfWork, month_by_month
from generator.reference.operations import work_groups

MONTH_BY_MONTH = "Month by month"
NAMED_IN_A_MONTH = 12


@dataclass(frozen=True, slots=True)
class BandRow:
    """One row of the year: a step with the same open dates on one place or on several."""

    name: str
    days: tuple[Span, ...]
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


def months_page(plan: Plan) -> Written:
    """Return the months to come with their work, what to order in them and the dates to keep.

    Every reader has their own: the jobs they see, and a partner the days when others are out.
    """
    listed = {row[0].id: row for row in everything_to_do(plan)}
    return from_template(
        plan,
        "months.md",
        MONTH_BY_MONTH,
        YEAR,
        "months",
        ["month", "calendar", *{job.step.name: None for job, _, _ in listed.values()}],
        months=_months(plan, month_by_month(plan), listed),
    )


def _months(
    plan: Plan, months: Iterable[MonthOfWork], listed: dict[str, Listed]
) -> list[tuple[MonthOfWork, list[tuple[NamedLine, tuple[Span, ...]]], list[tuple[Kept, Span]]]]:
    """Return the months with their jobs and dates; quiet ones are for the owner alone."""
    found = [
        (month, _in_lines(month, listed), _by_days(kept_in(plan, (month.first, month.last))))
        for month in months
    ]
    return [row for row in found if plan.reader == "owner" or row[1] or row[2]]


def kept_in(plan: Plan, inside: Span, kinds: Iterable[str] = DATE_KINDS) -> list[Kept]:
    """Return the dates that a reader keeps and that fall inside a span, in the plan's order.

    The owner has all of them. A partner has the days when others are out; others have none, and
    read on each sheet who may be there.
    """
    told = placed(plan)
    own = [
        Kept(DATE_KINDS[dates.kind], told(dates.places), comes_back(dates, inside), dates.note)
        for dates in plan.land.dates
        if dates.kind in kinds
    ]
    others = [
        Kept(
            DATE_KINDS[record.kind],
            told(record.on) or "all the ground",
            _inside(record.spans, inside),
        )
        for record in plan.others_out
        if record.kind in kinds
    ]
    return [dates for dates in (*own, *others) if dates.spans]


def _inside(spans: Iterable[Span], inside: Span) -> tuple[Span, ...]:
    return tuple(part for span in spans for part in inside_of(span, inside))


def _by_days(kept: Iterable[Kept]) -> list[tuple[Kept, Span]]:
    """Return each span of dates with them, the first to begin first."""
    found = [(dates, span) for dates in kept for span in dates.spans]
    return sorted(found, key=lambda entry: entry[1])


def _in_lines(
    month: MonthOfWork, listed: dict[str, Listed]
) -> list[tuple[NamedLine, tuple[Span, ...]]]:
    """Return the jobs of a month, those of one step with the same days of it together."""
    groups = in_groups(month.jobs, lambda work: (work.job.step.name, work.days))
    return [
        (line_of(name, [sheet_of(listed[work.job.id]) for work in jobs], NAMED_IN_A_MONTH), days)
        for (name, days), jobs in groups.items()
    ]


def year_page(plan: Plan) -> Written:
    """Return the season as bands: every kind of work with its open dates, and dates to keep."""
    listed = [row for row in everything_to_do(plan) if _is_in_season(plan, row)]
    by_group = [
        (group.name, [row for row in listed if row[0].step.does.group == group])
        for group in work_groups().values()
    ]
    groups = [(title, _rows(plan, rows)) for title, rows in by_group]
    kept = _kept(plan)
    return from_template(
        plan,
        "year.md",
        YEAR,
        YEAR,
        "year",
        ["year", "season", "calendar", *(title for title, rows in groups if rows)],
        scale=month_scale(plan.season),
        season_days=season_days(plan),
        kept=kept,
        leaf=leaf_picture(
            plan,
            season_days(plan),
            ((kind, spans) for kind, _, spans, _, _ in kept),
            (rows for _, rows in by_group),
        ),
        groups=[(title, rows) for title, rows in groups if rows],
        years_differ=any(row[0].dates.by_year for row in listed),
        undated=[row for row in everything_to_do(plan) if row[0].state.kind == "undated"],
        placed=placed(plan),
    )


def season_days(plan: Plan) -> Span:
    """Return the first and the last day of a plan's season."""
    first, last = (day_in_season(day, plan.season) for day in (FIRST_OF_SEASON, LAST_OF_SEASON))
    return first, last


def _is_in_season(plan: Plan, row: Listed) -> bool:
    days = row[0].usable
    first, last = season_days(plan)
    return bool(days) and days[0][0] <= last and days[-1][1] >= first


def _rows(plan: Plan, listed: list[Listed]) -> list[BandRow]:
    """Return the rows of one kind of work: what is the same on several places shares a row."""
    same = in_groups(listed, lambda row: (row[0].usable, row[0].step.name))
    return [
        BandRow(
            name,
            days,
            (years := _years(jobs)),
            tuple(jobs),
            band(plan.season, days, plan.as_of, years),
        )
        for (days, name), jobs in sorted(same.items(), key=lambda entry: entry[0])
    ]


def _years(jobs: Iterable[Listed]) -> tuple[Span, ...]:
    """Return from the first day of any year to the last of any, where dates wait for a sign."""
    years = [year for row in jobs for year in row[0].dates.by_year]
    opens = [year.opens for year in years if year.opens is not None]
    closes = [year.closes for year in years if year.closes is not None]
    if not opens or not closes or min(opens) > max(closes):
        return ()
    return ((min(opens), max(closes)),)


def _kept(plan: Plan) -> list[tuple[str, Markup, tuple[Span, ...], tuple[str, ...], str | None]]:
    """Return the dates of the season with their bands, by the first day."""
    rows = []
    for dates in plan.land.dates:
        spans = comes_back(dates, season_days(plan))
        if spans:
            drawn = band(plan.season, spans, plan.as_of, kind="closed")
            rows.append((DATE_KINDS[dates.kind], drawn, spans, dates.places, dates.note))
    return sorted(rows, key=lambda entry: (entry[2], entry[0]))
