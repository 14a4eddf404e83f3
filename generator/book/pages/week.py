"""The first page: what must not be done, what to do now, what to order next, for any day."""

import datetime
from collections.abc import Iterable, Iterator

from markupsafe import Markup

from generator.book.charts.bands import band, month_scale
from generator.book.content import finding_heads
from generator.book.pages.calendar import Kept, kept_in, season_days
from generator.book.pages.lines import NamedLine, NamedPage, in_groups, line_of, sheet_of
from generator.book.pages.seen import last_look
from generator.book.pages.sits import sit_lines
from generator.book.pages.subjects import Subjects
from generator.book.pages.written import (
    Listed,
    Written,
    address_of,
    everything_to_do,
    from_template,
)
from generator.dataclass import dataclass
from generator.inventory.schema import PARTNER
from generator.plan.findings.about_after import AfterCaution
from generator.plan.jobs.safety import emergency_lines
from generator.plan.model.days import ONE_DAY, Span, inside_of, joined
from generator.plan.model.finding import Finding
from generator.plan.model.job import last_day_of
from generator.plan.model.plan import Plan
from generator.plan.views.closed import closed_without_record
from generator.plan.views.month_by_month import WELL_INTO_NEXT_MONTH

_TITLE = "This week"
# So many are named in a line; of more it says how many there are.
NAMED_IN_A_LINE = 4
# What must be known before somebody goes: whom to call, and how to get in.
CALLED = ("emergency.owner_telephone", "emergency.gate_words")
_REST = {"Stay-out dates": ("quiet",), "Hunting": ("hunting", "turkey")}
_ON_GROUND = ("stand", "route")
_KEPT_OUT = AfterCaution.KEEP_OUT.value.code
BUY = Markup("buy.html")
INSIDE = {
    "owner": (
        ("The year", "year.html"), ("Month by month", "months.html"), ("All work", "work.html"),
        ("Places", "places.html"), ("Stands", "stands.html"), ("Walks", "routes.html"),
        ("Who hunts where", "sits.html"),
        ("What to plant", "plant-when.html"), ("What to buy", "buy.html"),
        ("Money and hours", "money.html"),
        ("Stops and cautions", "findings.html"), ("Records", "records.html"),
        ("How the work is done", "chapters.html"), ("Safety", "safety.html"),
    ),
    PARTNER: (
        ("Days others are out", "dates.html"), ("Who hunts where", "sits.html"),
        ("All work", "work.html"), ("Month by month", "months.html"),
        ("How the work is done", "chapters.html"), ("Safety", "safety.html"),
    ),
}  # fmt: skip
INSIDE_OF_OTHERS = (
    ("All work", "work.html"), ("Month by month", "months.html"),
    ("How the work is done", "chapters.html"), ("Safety", "safety.html"),
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class LineOfWork:
    """A step with the same days left on one thing or on several.

    `ends` is the last day where none that can be used is known; `this_month`, whether one of its
    days is in the month of the plan's day and not over.
    """

    line: NamedLine
    days: tuple[Span, ...]
    ends: datetime.date | None
    count: int
    stopped: bool
    asks: bool
    this_month: bool


@dataclass(frozen=True, slots=True)
class OrderLine:
    """What is to be ordered by one day; `by` is None where it is late already.

    `near` is what shows on the plan's day.
    """

    by: datetime.date | None
    line: NamedLine
    near: bool


def week_page(plan: Plan) -> Written:
    """Return the first page. The device's day picks among lines that are written for every day."""
    closed = [job for job in closed_without_record(plan) if job.settled_by is None]
    work = work_lines(everything_to_do(plan), rest_of_month(plan.as_of))
    return from_template(
        plan,
        "index.md",
        _TITLE,
        "",
        "week",
        ["this week", "now", "today", f"season {plan.season}"],
        work=work,
        anything=any(one.this_month for one in work),
        orders=order_lines(plan),
        kept=_kept_lines(plan),
        sits=sit_lines(plan, rest_of_month(plan.as_of)),
        grave=_grave_lines(plan),
        closed=sum(not job.is_optional and not job.before_log for job in closed),
        nothing_before=plan.as_of
        if any(job.before_log for job in closed) and not plan.entries
        else None,
        season_days=season_days(plan),
        strip=list(_strip(plan)),
        scale=month_scale(plan.season),
        called=[line for line in emergency_lines(plan.land.emergency) if line.key in CALLED],
        is_partner=plan.reader == PARTNER,
        last_looks={stand.id: last_look(plan, stand) for stand in plan.land.stands},
        address_of=address_of,
        inside=INSIDE.get(plan.reader, INSIDE_OF_OTHERS),
        days=in_attribute,
    )


def rest_of_month(day: datetime.date) -> Span:
    """Return a day with the last day of its month.

    >>> rest_of_month(datetime.date(2027, 2, 9))[1].day
    28
    """
    following = (day.replace(day=1) + WELL_INTO_NEXT_MONTH).replace(day=1)
    return day, following - ONE_DAY


def in_attribute(spans: Iterable[Span]) -> Markup:
    """Return spans of days as an attribute holds them, first and last of each."""
    return Markup(" ").join(
        Markup(f"{first.isoformat()}/{last.isoformat()}") for first, last in spans
    )


def work_lines(listed: Iterable[Listed], month: Span) -> list[LineOfWork]:
    """Return what is still to be done in lines, those of one step with the same days together.

    The first to close first; jobs whose last day is not known are in none.
    """
    ahead = [row for row in listed if row[0].state.is_ahead and last_day_of(row[0]) is not None]
    groups = in_groups(
        ahead,
        lambda row: (
            last_day_of(row[0]), row[0].usable, row[0].step.name, row[1],
            row[0].state.question is not None,
        ),
    )  # fmt: skip
    return [
        LineOfWork(
            line_of(rows[0][0].step.name, [sheet_of(row) for row in rows], NAMED_IN_A_LINE),
            rows[0][0].usable,
            last_day_of(rows[0][0]) if not rows[0][0].usable else None,
            len(rows),
            rows[0][1],
            rows[0][0].state.question is not None,
            any(inside_of(span, month) for span in rows[0][0].usable),
        )
        for rows in sorted(
            groups.values(), key=lambda rows: (str(last_day_of(rows[0][0])), rows[0][0].id)
        )
    ]


def _closing(rows: list[Listed]) -> tuple[str, str]:
    # by the id and not by what it is called, which does not order anything
    return str(last_day_of(rows[0][0])), rows[0][0].id


def order_lines(plan: Plan) -> list[OrderLine]:
    """Return what is to be ordered, by the day it is to be ordered by; what is late first."""
    groups: dict[datetime.date | None, list[NamedPage]] = {}
    for purchase in plan.buying.purchases:
        order = purchase.order
        if not purchase.nothing and (order.by is not None or order.state in ("now", "late")):
            by = order.by if order.state == "by" else None
            groups.setdefault(by, []).append((purchase.item.words, BUY))
    first = datetime.date.min
    days = sorted(groups, key=lambda by: by or first)
    # what is late, and the next day that is not
    near = days[: 1 + (bool(days) and days[0] is None)]
    return [OrderLine(by, line_of("", groups[by], NAMED_IN_A_LINE), by in near) for by in days]


def _kept_lines(plan: Plan) -> list[tuple[NamedLine, tuple[Span, ...]]]:
    """Return the dates to keep, each kind with the same days once, with where they hold."""
    within: list[Kept] = kept_in(plan, (plan.as_of, season_days(plan)[1]))
    groups = in_groups(within, lambda dates: (dates.spans, dates.kind))
    return [
        (line_of(kind, [(dates.where, Markup("")) for dates in same], NAMED_IN_A_LINE), spans)
        for (spans, kind), same in groups.items()
    ]


def _grave_lines(plan: Plan) -> list[NamedLine]:
    """Return what forbids a stand or a walk, or keeps out of sprayed ground, by its rule."""
    subjects = Subjects(plan)
    groups = in_groups(
        (finding for finding in plan.to_act_on() if _is_grave(finding)),
        lambda finding: finding.code,
    )
    return [
        line_of(
            finding_heads()[code],
            list(dict.fromkeys(subjects.named(finding.subject) for finding in found)),
            NAMED_IN_A_LINE,
        )
        for code, found in groups.items()
    ]


def _is_grave(finding: Finding) -> bool:
    forbids = finding.severity != "note" and finding.subject.kind in _ON_GROUND
    return forbids or finding.code == _KEPT_OUT


def _strip(plan: Plan) -> Iterator[tuple[str, tuple[Span, ...], Markup]]:
    """Yield the days of the season that are kept free, a band for each kind."""
    season = season_days(plan)
    for name, kinds in _REST.items():
        spans = joined(span for dates in kept_in(plan, season, kinds) for span in dates.spans)
        if spans:
            yield name, spans, band(plan.season, spans, plan.as_of, kind="closed")
