"""Lists that open the groups of the book: every place, stand, walk, machine at a glance."""

import datetime
from collections.abc import Sequence
from typing import TypeVar

from generator.book.content import BOOK_PARTS, written_for
from generator.book.pages.ground import names_of_ground
from generator.book.pages.seen import last_look, sight_checks
from generator.book.pages.stands_walks import opened_walks, stay_out_dates
from generator.book.pages.written import (
    HOW,
    PLACES,
    STANDS,
    Listed,
    Written,
    address_of,
    from_template,
    next_jobs,
)
from generator.dataclass import dataclass
from generator.inventory.places import Screen, hidden_by
from generator.plan.findings.order import older_than_a_year
from generator.plan.model.place import Place
from generator.plan.model.plan import Plan
from generator.plan.sowing.catches import (
    Catch,
    SprayerCatch,
    drill_catches,
    sprayer_catches,
    spreader_catches,
)
from generator.plan.standing.cover_by_season import AGES, acres_by_age
from generator.plan.standing.planting_curves import standing_growth
from generator.plan.standing.standing_now import StandsNow, stands_now
from generator.plan.standing.verdicts import ScreenJudged, hides_from, judged

_C = TypeVar("_C", Catch, SprayerCatch)


@dataclass(frozen=True, slots=True)
class PlaceRow:
    """A place at a glance: what stands on it, whether it hides, its next job.

    `judged` is the verdict of the next hunting day, `asks_height` says that one could be given, and
    `hides_from` is the day from which on all of it hides.
    """

    place: Place
    stands: StandsNow
    next_job: Listed | None
    judged: ScreenJudged | None
    hides_from: datetime.date | None
    asks_height: bool
    is_screen: bool


def places_page(plan: Plan) -> Written:
    """Return every place with what stands on it, whether it hides, and what comes next."""
    acres = acres_by_age(plan)
    coming = next_jobs(plan)
    return from_template(
        plan,
        "places.md",
        "Places and plantings",
        PLACES,
        "places",
        ["places", "screens", "strips", "plots", "plantings"],
        rows=[_place_row(plan, place, coming.get(place.id)) for place in plan.places],
        names=names_of_ground(plan),
        acres=acres,
        ages=[
            (age, words)
            for age, words in AGES.items()
            if any(age in season.acres for season in acres)
        ],
    )


def _place_row(plan: Plan, place: Place, next_job: Listed | None) -> PlaceRow:
    is_screen = isinstance(place.typed, Screen)
    return PlaceRow(
        place,
        stands_now(plan, place),
        next_job,
        next(iter(judged(plan, place)), None),
        hides_from(plan, place),
        is_screen and bool(standing_growth(plan, place)),
        is_screen,
    )


def stands_page(plan: Plan) -> Written:
    """Return every stand with its inspection, its ways in, and what stands against climbing it."""
    coming = next_jobs(plan)
    return from_template(
        plan,
        "stands.md",
        "Stands",
        STANDS,
        "stands",
        ["stands", "inspection", "ways in"],
        rows=[
            (
                stand,
                [route for route in plan.land.routes if stand.id in route.serves],
                plan.findings_on(stand.id),
                coming.get(stand.id),
                last_look(plan, stand),
                stay_out_dates(plan, stand.id, plan.as_of),
            )
            for stand in plan.land.stands
        ],
        address_of=address_of,
        opened=opened_walks(plan),
    )


def routes_page(plan: Plan) -> Written:
    """Return every walk with where it leads, what hides it, and when it was last looked at."""
    coming, opened = next_jobs(plan), opened_walks(plan)
    return from_template(
        plan,
        "routes.md",
        "Walks in",
        STANDS,
        "routes",
        ["routes", "walks", "hidden"],
        rows=[
            (
                route,
                [stand for stand in plan.land.stands if stand.id in route.serves],
                [place for place in plan.places if _hides(place, route.id)],
                opened.get(route.id),
                next(iter(sight_checks(plan, route.id)), None),
                coming.get(route.id),
                stay_out_dates(plan, route.id, plan.as_of),
            )
            for route in plan.land.routes
        ],
        address_of=address_of,
    )


def _hides(place: Place, route_id: str) -> bool:
    return place.typed is not None and route_id in hidden_by(place.typed)


def calibration_page(plan: Plan) -> Written:
    """Return every sprayer, spreader and drill with what its last catch test gave."""
    return from_template(
        plan,
        "calibration.md",
        "Sprayers, spreaders and drills",
        HOW,
        "calibration",
        ["calibration", "catch test", "sprayer", "spreader", "drill"],
        sprayers=[
            (sprayer, *_last(plan, sprayer_catches(sprayer, plan.season)))
            for sprayer in plan.land.sprayers
        ],
        spreaders=[
            (spreader, *_last(plan, spreader_catches(spreader, plan.season)))
            for spreader in plan.land.spreaders
        ],
        drills=[
            (drill, *_last(plan, drill_catches(drill, plan.season))) for drill in plan.land.drills
        ],
        address_of=address_of,
    )


def _last(plan: Plan, catches: Sequence[_C]) -> tuple[_C | None, bool]:
    """Return the last catch test, if there is one, and whether it is more than a year old."""
    last = next(iter(catches), None)
    return last, last is not None and older_than_a_year(last.test.tested_on, plan.as_of)


def chapters_page(plan: Plan) -> Written:
    """Return the chapters that this reader has, in the order of the work."""
    return from_template(
        plan,
        "chapters.md",
        "Chapters",
        HOW,
        "chapters",
        ["chapters", *(chapter.title for chapter in written_for(plan.reader))],
        parts_of_the_book=[
            (words, listed)
            for part, words in BOOK_PARTS.items()
            if (listed := [chapter for chapter in written_for(plan.reader) if chapter.part == part])
        ],
    )
