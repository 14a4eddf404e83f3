"""The season on one leaf: every kind of dates and every step, with the days that are left to it."""

from collections.abc import Iterable

from markupsafe import Markup

from generator.book.charts.leaf import Leaf, LeafRow, leaf_drawn
from generator.book.pages.written import Listed
from generator.plan.model.days import Span, day_words, inside_of, joined
from generator.plan.model.plan import Plan

# Of more spans than this a row says the first day and the last; its bar shows what lies between.
SPANS_SAID = 2


def leaf_picture(
    plan: Plan,
    season: Span,
    kept: Iterable[tuple[str, tuple[Span, ...]]],
    groups: Iterable[list[Listed]],
) -> Markup:
    """Return the leaf: dates to keep first, then each kind of work, what is alike in one row."""
    dates: dict[str, list[Span]] = {}
    for kind, spans in kept:
        dates.setdefault(kind, []).extend(spans)
    rows = [
        tuple(_row(kind, spans, season, is_kept=True) for kind, spans in dates.items()),
        *(_steps(listed, season) for listed in groups),
    ]
    told = "Every step of the season with its days, along the months. The lists hold the same days."
    shown = tuple(group for group in rows if group)
    return leaf_drawn(Leaf("leaf", "The year on one leaf", told, plan.season, plan.as_of, shown))


def _steps(listed: Iterable[Listed], season: Span) -> tuple[LeafRow, ...]:
    days: dict[str, list[Span]] = {}
    for row in listed:
        days.setdefault(row[0].step.name, []).extend(row[0].usable)
    rows = (_row(name, spans, season) for name, spans in days.items())
    return tuple(sorted((row for row in rows if row.spans), key=lambda row: row.spans[0]))


def _row(name: str, spans: Iterable[Span], season: Span, *, is_kept: bool = False) -> LeafRow:
    shown = joined(part for span in spans for part in inside_of(span, season))
    return LeafRow(name, _in_short(shown), shown, is_kept)


def _in_short(spans: tuple[Span, ...]) -> str:
    """Return spans as a row has room for them, without the year."""
    if len(spans) > SPANS_SAID:
        return f"{_short((spans[0][0], spans[-1][1]))}, not all of it"
    return ", ".join(map(_short, spans))


def _short(span: Span) -> str:
    first, last = (day_words(day).partition(",")[0] for day in span)
    if span[0] == span[1]:
        return first
    alike = (span[0].year, span[0].month) == (span[1].year, span[1].month)
    return f"{first} to {span[1].day if alike else last}"
