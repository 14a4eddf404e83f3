"""What a partner sees of the ground: stands and walks handed over, and the days others are out.

Handing a stand or a walk over hands over what is written down of it, notes aside: its seat, when it
was looked over and whether it was sound, its upkeep; where it lies only where the owner says so for
that one. What is not handed over is named nowhere, also where a walk handed over leads to it.
"""

import datetime
from collections.abc import Iterable, Mapping
from dataclasses import field

from generator.dataclass import dataclass
from generator.inventory.dates import ALL_PLACES
from generator.inventory.ground import YES
from generator.inventory.law import AfterTheShot, GroundBeyond, LookedUp
from generator.inventory.log import LogEntry
from generator.inventory.log_seen import Inspected
from generator.inventory.page_names import slug
from generator.inventory.places import Route, Stand
from generator.inventory.schema import KeptUp, Reader
from generator.plan.jobs.job_days import FIRST_OF_SEASON, LAST_OF_SEASON
from generator.plan.model.days import Span, comes_back, joined
from generator.plan.model.job import UpkeepJob
from generator.plan.model.place import OpenWalk
from generator.plan.model.plan import OthersOut, Plan
from generator.plan.model.sits import SitAhead, StandAnswer
from generator.plan.readers.hours_away import answers_for_others
from generator.plan.readers.land_shown import points_alone
from generator.plan.readers.redacted import NOWHERE, without_line
from generator.plan.readers.released import (
    released_dates,
    released_days,
    released_safety,
    released_state,
    released_step,
)
from generator.plan.season.open_dates import day_in_season
from generator.working import Given

# Dates that tell who or what else is on the ground, or that nobody burns; quiet dates are not.
TOLD_TO_PARTNERS = ("hunting", "turkey", "fawning", "nesting", "burn_ban")


@dataclass(frozen=True, slots=True)
class HandedGround:
    """Stands and walks under their new names, with what is told of them; `new_ids` by their old.

    `new_sheets` are the ids of their upkeep, by their old ones too.
    """

    new_ids: Mapping[str, str] = field(default_factory=dict)
    new_sheets: Mapping[str, str] = field(default_factory=dict)
    stands: tuple[Stand, ...] = ()
    routes: tuple[Route, ...] = ()
    upkeep: tuple[UpkeepJob, ...] = ()
    looks: tuple[LogEntry, ...] = ()
    others_out: tuple[OthersOut, ...] = ()
    looked_up: tuple[LookedUp, ...] = ()
    after_the_shot: AfterTheShot | None = None
    open_walks: tuple[OpenWalk, ...] = ()
    sits: tuple[SitAhead, ...] = ()
    answers: Mapping[str, tuple[StandAnswer, ...]] = field(default_factory=dict)


def handed_ground(plan: Plan, reader: Reader, places: Mapping[str, str]) -> HandedGround:
    """Return what a partner is handed beside jobs; `places` are those of the jobs, by new ids."""
    stands = [stand for stand in plan.land.stands if stand.id in reader.stands]
    routes = [route for route in plan.land.routes if route.id in reader.routes]
    new_ids = {stand.id: slug(_name(stand)) for stand in stands}
    new_ids |= {route.id: slug(_name(route)) for route in routes}
    upkeep = {job.id: _upkeep(job, new_ids) for job in plan.upkeep if job.subject.id in new_ids}
    sits = _sits(plan, reader, new_ids)
    return HandedGround(
        {**new_ids, **{old: sit.id for old, sit in sits.items()}},
        {old: new.id for old, new in upkeep.items()},
        tuple(sorted((_stand(stand, new_ids) for stand in stands), key=_by_id)),
        tuple(sorted((_route(route, new_ids) for route in routes), key=_by_id)),
        tuple(sorted(upkeep.values(), key=_by_date)),
        _looks(plan.entries, {stand.id: new_ids[stand.id] for stand in stands}),
        _others_out(plan, {**places, **new_ids}),
        tuple(sorted(map(_looked_up, plan.land.looked_up), key=_by_words)),
        _after_the_shot(plan.land.after_the_shot),
        tuple(
            sorted(
                (_open(walk, new_ids) for walk in plan.open_walks if walk.route in new_ids),
                key=lambda walk: walk.route,
            )
        ),
        tuple(sits.values()),
        {
            new_ids[stand.id]: answers_for_others(plan.answers[stand.id], own_sits(plan, reader))
            for stand in stands
        },
    )


def _name(thing: Stand | Route) -> str:
    return thing.known_as or thing.name


def _by_id(thing: Stand | Route) -> str:
    return thing.id


def _by_date(job: UpkeepJob) -> tuple[datetime.date, datetime.date, str]:
    last = datetime.date.max
    return (job.dates.opens or last, job.dates.closes or last, job.id)


def _stand(stand: Stand, new_ids: Mapping[str, str]) -> Stand:
    seat = stand.seat_height_ft
    return Stand(
        where=NOWHERE,
        field_marks={},
        id=new_ids[stand.id],
        was=(),
        name=_name(stand),
        known_as=None,
        at_lat_lon=stand.at_lat_lon if stand.coordinates == YES else None,
        shape=None,
        got=None,
        off_ft=None,
        coordinates=None,
        far=None,
        seat_height_ft=without_line(seat) if seat is not None else None,
        arc_of_fire=None,
        rest_days=None,
        keeps_off=(),
        straps_checked_on=stand.straps_checked_on,
        winds_for=_winds(stand.winds_for),
        winds_against=_winds(stand.winds_against),
        lies=stand.lies,
        falls_to=without_line(stand.falls_to) if stand.falls_to is not None else None,
        fall_pct=without_line(stand.fall_pct) if stand.fall_pct is not None else None,
        # where deer bed, feed and come from is the owner's alone to know
        deer_come_from=(),
        beds=(),
        food=(),
        downwind_reach_yd=None,
        upkeep=None,
        asked_for=(),
        note=None,
    )


def _route(route: Route, new_ids: Mapping[str, str]) -> Route:
    """Return a walk as handed over: where it runs is told only where the owner says so."""
    return Route(
        where=NOWHERE,
        field_marks={},
        id=new_ids[route.id],
        was=(),
        name=_name(route),
        known_as=None,
        serves=tuple(sorted(new_ids[stand_id] for stand_id in route.serves if stand_id in new_ids)),
        coordinates=None,
        length_ft=without_line(route.length_ft) if route.length_ft is not None else None,
        shape=None,
        parking_lat_lon=route.parking_lat_lon if route.coordinates == YES else None,
        gate_lat_lon=route.gate_lat_lon if route.coordinates == YES else None,
        got=None,
        off_ft=None,
        line_lat_lon=points_alone(route.line_lat_lon) if route.coordinates == YES else None,
        far=None,
        walked_on=route.walked_on,
        winds_for=_winds(route.winds_for),
        winds_against=_winds(route.winds_against),
        lies=route.lies,
        crops_beside=(),
        lane_width_ft=None,
        machine=None,
        upkeep=None,
        asked_for=(),
        note=None,
    )


def _winds(typed: tuple[Given, ...]) -> tuple[Given, ...]:
    return tuple(without_line(wind) for wind in typed)


def _open(walk: OpenWalk, new_ids: Mapping[str, str]) -> OpenWalk:
    """Return from which day a handed walk is open: not what hid it, nor the owner's other ways."""
    return OpenWalk(
        route=new_ids[walk.route],
        since=walk.since,
        known=walk.known,
        stands=(),
        ways=(),
        crop="",
        beside="",
        stubble_in=None,
    )


def _sits(plan: Plan, reader: Reader, new_ids: Mapping[str, str]) -> dict[str, SitAhead]:
    """Return the sits at handed stands, by their old ids: when, by which walk, and whether by them.

    Who else sits there is not told, nor the times of the sun, which tell where the ground lies.
    """
    stands = {stand.id: stand for stand in plan.land.stands}
    own = own_sits(plan, reader)
    found: dict[str, SitAhead] = {}
    counted: dict[str, int] = {}
    for sit in plan.sits:
        stand = stands[sit.stand.id]
        if stand.id not in reader.stands:
            continue
        # counted on each stand: an id that came of the owner's would tell something of it
        number = counted[stand.id] = counted.get(stand.id, 0) + 1
        walk_in, walk_out = (new_ids.get(walk or "") for walk in sit.walks)
        found[sit.id] = SitAhead(
            id=f"{new_ids[stand.id]}--{number}",
            day=sit.day,
            hours=sit.hours,
            stand=_stand(stand, new_ids),
            who=None,
            is_readers=sit.id in own,
            walks=(walk_in, walk_out),
            is_hunted=sit.is_hunted,
            legal=None,
            sunset=None,
            note=None,
            reader=None,
        )
    return found


def own_sits(plan: Plan, reader: Reader) -> frozenset[str]:
    """Return the ids of the sits that are a reader's own."""
    return frozenset(sit.id for sit in plan.sits if sit.reader == reader.id)


def _upkeep(job: UpkeepJob, new_ids: Mapping[str, str]) -> UpkeepJob:
    new_id = f"{new_ids[job.subject.id]}/{job.season}/{job.step.id}"
    return UpkeepJob(
        id=new_id,
        address=new_id.replace("/", "-"),
        subject=_subject(job.subject, new_ids),
        kind=job.kind,
        season=job.season,
        step=released_step(job.step),
        dates=released_dates(job.dates),
        state=released_state(job.state),
        safety=tuple(released_safety(line) for line in job.safety),
        days=released_days(job.days),
    )


def _subject(subject: KeptUp, new_ids: Mapping[str, str]) -> KeptUp:
    if isinstance(subject, Stand):
        return _stand(subject, new_ids)
    assert isinstance(subject, Route)
    return _route(subject, new_ids)


def _looked_up(entry: LookedUp) -> LookedUp:
    """Return what the owner looked up of the law, under no name of theirs."""
    return LookedUp(
        where=NOWHERE,
        id="",
        subject=entry.subject,
        words=entry.words,
        source=entry.source,
        looked_up_on=entry.looked_up_on,
        note=None,
    )


def _by_words(entry: LookedUp) -> tuple[str, str, str, datetime.date]:
    return (entry.subject, entry.words, entry.source, entry.looked_up_on)


def _after_the_shot(typed: AfterTheShot | None) -> AfterTheShot | None:
    """Return whom to call and whose ground lies beside: a partner who follows a deer needs all."""
    if typed is None:
        return None
    return AfterTheShot(
        where=NOWHERE,
        game_officer=typed.game_officer,
        tracker=typed.tracker,
        stay_out_ground=typed.stay_out_ground,
        beyond=tuple(
            GroundBeyond(
                where=NOWHERE,
                side=ground.side,
                whose=ground.whose,
                may_enter=ground.may_enter,
                asked_on=ground.asked_on,
            )
            for ground in typed.beyond
        ),
    )


def _looks(entries: Iterable[LogEntry], stands: Mapping[str, str]) -> tuple[LogEntry, ...]:
    """Return of each look over a handed stand its day and whether it was sound, and no more."""
    told = {
        (entry.done_on, stands[thing], entry.inspected.sound)
        for entry in entries
        if entry.inspected is not None
        for thing in entry.inspected.what
        if thing in stands
    }
    return tuple(
        LogEntry(
            where=NOWHERE,
            id="",
            done_on=day,
            inspected=Inspected(where=NOWHERE, what=(stand,), sound=sound),
        )
        for day, stand, sound in sorted(told, key=lambda look: (look[0], look[1], str(look[2])))
    )


def _others_out(plan: Plan, new_ids: Mapping[str, str]) -> tuple[OthersOut, ...]:
    """Return the days that matter on what is handed over, from the plan's day or season on."""
    # a book made in summer for the season to come is used in the weeks before it too
    begins = min(plan.as_of, day_in_season(FIRST_OF_SEASON, plan.season))
    inside = (begins, day_in_season(LAST_OF_SEASON, plan.season))
    found: dict[tuple[str, tuple[str, ...], datetime.date | None], list[Span]] = {}
    for dates in plan.land.dates:
        on = tuple(sorted(new_ids[place] for place in dates.places if place in new_ids))
        if dates.kind in TOLD_TO_PARTNERS and (on or ALL_PLACES in dates.places):
            # apart by when they were looked up: the page prints it, and old must not pass for new
            spans = found.setdefault((dates.kind, on, dates.looked_up_on), [])
            spans += comes_back(dates, inside)
    told = (
        OthersOut(kind, joined(spans), on, looked_up)
        for (kind, on, looked_up), spans in found.items()
        if spans
    )
    return tuple(
        sorted(told, key=lambda days: (days.spans, days.kind, days.on, str(days.looked_up_on)))
    )


def hunted_on(
    others_out: tuple[OthersOut, ...], new_id: str, kinds: tuple[str, ...]
) -> tuple[Span, ...]:
    """Return the days of some kinds of dates on one of the things a partner is handed."""
    return joined(
        span
        for days in others_out
        if days.kind in kinds and (not days.on or new_id in days.on)
        for span in days.spans
    )
