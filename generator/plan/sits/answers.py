"""One answer for a stand on each day: what forbids it first, and that nothing written does.

Never that it is to be hunted: what nobody wrote down is not in here.
"""

import datetime
from collections.abc import Iterable, Iterator, Mapping

from generator.dataclass import dataclass
from generator.inventory.dates import HUNTED
from generator.inventory.log import LogEntry
from generator.inventory.papers import Permit
from generator.inventory.places import Stand
from generator.inventory.schema import Inventory
from generator.plan.findings.about_places import PlaceCaution, PlaceStop
from generator.plan.jobs.job_days import LAST_OF_SEASON
from generator.plan.model.days import ONE_DAY, Span, days_of, holds_on
from generator.plan.model.finding import Finding, Subject
from generator.plan.model.sits import Forbids, KeepAway, StandAnswer, WhyNot
from generator.plan.season.open_dates import day_in_season

_UNSAFE = PlaceStop.STAND_UNSAFE.value.code
_NOT_INSPECTED = PlaceCaution.STRAPS_NOT_LOOKED_OVER.value.code
_LEAVE = "other"  # the kind of permit that is none for work


@dataclass(frozen=True, slots=True)
class _Known:
    """What is known of one stand over the days of a season.

    `safety` and `distances` forbid it on every day; `opened` are hunting dates that somebody looked
    up, `typed` those and others.
    """

    safety: tuple[Forbids, ...]
    distances: tuple[Forbids, ...]
    opened: tuple[Span, ...]
    typed: tuple[Span, ...]
    quiet: tuple[Span, ...]
    rests: tuple[Span, ...]
    permits: tuple[Permit, ...]
    taken: tuple[KeepAway, ...]


def stand_answers(
    inventory: Inventory,
    entries: tuple[LogEntry, ...],
    findings: tuple[Finding, ...],
    away: tuple[KeepAway, ...],
    season: int,
    as_of: datetime.date,
) -> Mapping[str, tuple[StandAnswer, ...]]:
    """Return by the id of a stand the answer of each day, from the plan's to the season's last."""
    inside = (as_of, day_in_season(LAST_OF_SEASON, season))
    codes: dict[str, set[str]] = {}
    for one in findings:
        codes.setdefault(one.subject, set()).add(one.code)
    found: dict[str, tuple[StandAnswer, ...]] = {}
    for stand in inventory.stands:
        told = codes.get(Subject("stand", stand.id), set())
        found[stand.id] = _in_spans(_known(stand, inventory, entries, told, away, inside), inside)
    return found


def _known(
    stand: Stand,
    inventory: Inventory,
    entries: tuple[LogEntry, ...],
    codes: set[str],
    away: tuple[KeepAway, ...],
    inside: Span,
) -> _Known:
    dates = inventory.dates
    looked_up = [one for one in dates if one.looked_up_on is not None]
    return _Known(
        safety=tuple(_unsafe(stand, codes, entries)),
        distances=tuple(
            Forbids(WhyNot.TOO_NEAR, what=thing.what)
            for thing in stand.keeps_off
            if thing.distance_yd.value < thing.at_least_yd.value
        ),
        opened=days_of(looked_up, HUNTED, stand.id, inside),
        typed=days_of(dates, HUNTED, stand.id, inside),
        quiet=days_of(dates, ("quiet",), stand.id, inside),
        rests=tuple(_rests(stand, entries, inventory)),
        permits=tuple(
            one
            for one in inventory.permits
            if one.kind == _LEAVE and holds_on(one.places, stand.id)
        ),
        taken=tuple(keep for keep in away if keep.subject == Subject("stand", stand.id)),
    )


def _unsafe(stand: Stand, codes: set[str], entries: tuple[LogEntry, ...]) -> Iterator[Forbids]:
    """Yield that nobody climbs it until somebody does something about it."""
    if _UNSAFE in codes:
        looks = (
            entry.done_on
            for entry in entries
            if entry.inspected is not None
            and stand.id in entry.inspected.what
            and entry.inspected.sound is False
        )
        yield Forbids(WhyNot.UNSAFE, max(looks, default=None))
    elif _NOT_INSPECTED in codes:
        yield Forbids(WhyNot.NOT_INSPECTED)


def _rests(stand: Stand, entries: Iterable[LogEntry], inventory: Inventory) -> Iterator[Span]:
    """Yield the days on which a stand rests after a sit, by log or to come."""
    if stand.rest_days is None:
        return
    length = int(stand.rest_days.value) * ONE_DAY
    days = {entry.done_on for entry in entries if entry.sat and entry.sat.stand == stand.id}
    days |= {sit.sits_on for sit in inventory.sits if sit.stand == stand.id}
    yield from ((day + ONE_DAY, day + length) for day in days)


def _forbids_on(known: _Known, day: datetime.date) -> Iterator[Forbids]:
    """Yield what forbids a stand on a day, in the order in which it is said."""
    yield from known.safety
    yield from _season(known, day)
    if _is_in(day, known.quiet):
        yield Forbids(WhyNot.QUIET)
    rest = max((last for first, last in known.rests if first <= day <= last), default=None)
    if rest is not None:
        yield Forbids(WhyNot.RESTS, rest)
    for permit in known.permits:
        if not _is_good(permit, day):
            yield Forbids(WhyNot.NO_LEAVE, what=permit.name or permit.id)
    yield from known.distances
    for keep in known.taken:
        if keep.day == day:
            yield Forbids(WhyNot.TAKEN, hours=keep.hours, sit_ids=keep.sit_ids)


def _season(known: _Known, day: datetime.date) -> Iterator[Forbids]:
    if _is_in(day, known.opened):
        return
    if _is_in(day, known.typed):
        yield Forbids(WhyNot.NOT_LOOKED_UP)
    elif not known.typed:
        yield Forbids(WhyNot.NO_DATES)
    else:
        opens = min((first for first, _ in known.typed if first > day), default=None)
        yield Forbids(WhyNot.CLOSED, opens)


def _is_good(permit: Permit, day: datetime.date) -> bool:
    """Return whether leave is known to be given on a day and not over."""
    given, ends = permit.approved_on, permit.expires_on
    return given is not None and given <= day and (ends is None or day <= ends)


def _is_in(day: datetime.date, spans: Iterable[Span]) -> bool:
    return any(first <= day <= last for first, last in spans)


def _in_spans(known: _Known, inside: Span) -> tuple[StandAnswer, ...]:
    """Return the answers of days in a row that are the same as one."""
    found: list[StandAnswer] = []
    day, last = inside
    while day <= last:
        forbids = tuple(_forbids_on(known, day))
        if found and found[-1].forbids == forbids:
            found[-1] = StandAnswer(found[-1].first, day, forbids)
        else:
            found.append(StandAnswer(day, day, forbids))
        day += ONE_DAY
    return tuple(found)
