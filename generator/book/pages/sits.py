"""The page of who hunts where, and the lines of sits on other pages."""

import datetime
from collections.abc import Iterable

from markupsafe import Markup

from generator.book.pages.lines import NamedLine, NamedPage, in_groups, line_of
from generator.book.pages.subjects import Subjects
from generator.book.pages.written import STANDS, Written, address_of, from_template
from generator.dataclass import dataclass
from generator.plan.model.days import Span
from generator.plan.model.finding import Finding
from generator.plan.model.place import OpenWalk
from generator.plan.model.plan import Plan
from generator.plan.model.sits import KeepAway, SitAhead, away_words, hours_words

SITS_ADDRESS = "sits.md"
# So many things are named in one line of the first page.
_NAMED = 4


@dataclass(frozen=True, slots=True)
class HoursOff:
    """Hours of one day, with what is known to lie in an arc and what may."""

    day: datetime.date
    hours: str
    known: list[NamedPage]
    doubtful: list[NamedPage]


@dataclass(frozen=True, slots=True)
class SitWalk:
    """A walk of a sit, None where none is named; `open` where whoever walks it then is seen."""

    named: NamedPage | None
    open: OpenWalk | None
    others: list[NamedPage]


def sits_page(plan: Plan) -> Written:
    """Return who sits where, by which walk and until what light, and who keeps off what then."""
    stopped = plan.stopped()
    return from_template(
        plan,
        SITS_ADDRESS,
        "Who hunts where",
        STANDS,
        "sits",
        ["sits", *(sit.stand.name for sit in plan.sits)],
        sits=[
            (sit, hours_words(sit.hours), _walks(plan, sit), sit.id in stopped) for sit in plan.sits
        ],
        off=_hours_off(plan),
        findings=_findings(plan),
        address_of=address_of,
    )


def _findings(plan: Plan) -> list[list[Finding]]:
    """Return the findings on sits, those of one rule together, what is said of two sits once."""
    told = [finding for finding in plan.findings if finding.subject.kind in ("sit", "sits")]
    once = {(finding.code, finding.words): finding for finding in reversed(told)}.values()
    return list(in_groups(reversed(once), lambda finding: (finding.code, finding.cure)).values())


def _walks(plan: Plan, sit: SitAhead) -> list[SitWalk]:
    pages = {
        route.id: (route.name, Markup("routes/{}.html").format(address_of(route)))
        for route in plan.land.routes
    }
    opened = {walk.route: walk for walk in plan.open_walks if walk.is_open_on(sit.day)}
    # in and out by one walk is said once
    return [
        SitWalk(
            pages.get(walk or ""),
            found := opened.get(walk or ""),
            [pages[way.route] for way in found.ways if way.stand == sit.stand.id] if found else [],
        )
        for walk in dict.fromkeys(sit.walks)
    ]


def _hours_off(plan: Plan) -> list[HoursOff]:
    subjects = Subjects(plan)
    by_hours = in_groups(plan.keep_away, lambda keep: (keep.day, keep.hours))
    return [
        HoursOff(
            day,
            hours_words(hours),
            [subjects.named(keep.subject) for keep in same if keep.is_known],
            [subjects.named(keep.subject) for keep in same if not keep.is_known],
        )
        for (day, hours), same in by_hours.items()
    ]


def away_told(plan: Plan, thing_id: str) -> str:
    """Return the days and hours in which nobody else goes to or on a thing, in words."""
    return away_words(plan.away_on(thing_id))


def sit_lines(plan: Plan, month: Span) -> list[tuple[NamedLine, Span, bool]]:
    """Return lines of the first page, each of its day, and whether it shows without scripts.

    What a reader keeps off, and a partner's own sits.
    """
    subjects = Subjects(plan)
    off = in_groups(plan.keep_away, lambda keep: (keep.day, keep.hours))
    # the owner's page of all sits says who keeps off what; others have no more than their own few
    lines = [
        (
            line_of(
                _head(plan, same),
                [("who keeps off what", Markup("sits.html"))]
                if plan.reader == "owner"
                else [subjects.named(keep.subject) for keep in same],
                _NAMED,
            ),
            day,
        )
        for (day, _), same in off.items()
    ]
    lines += [
        (line_of(f"You sit from {hours_words(sit.hours)}", [_stand(sit)], _NAMED), sit.day)
        for sit in plan.sits
        if sit.is_readers
    ]
    first, last = month
    return [(line, (day, day), first <= day <= last) for line, day in lines]


def _head(plan: Plan, same: Iterable[KeepAway]) -> str:
    keeps = list(same)
    named = {sit.id: sit.stand.name for sit in plan.sits}
    stands = dict.fromkeys(named[sit_id] for keep in keeps for sit_id in keep.sit_ids)
    hours = hours_words(keeps[0].hours)
    if stands:
        return f"{' and '.join(stands)} hunted {hours}"
    return f"Another hunter's ground from {hours}, keep off"


def _stand(sit: SitAhead) -> NamedPage:
    return sit.stand.name, Markup("stands/{}.html").format(address_of(sit.stand))
