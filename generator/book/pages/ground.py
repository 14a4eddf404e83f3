"""Pages of the ground: places, stands, routes."""

from generator.book.content import chapters_for
from generator.book.pages.counts import OUTCOMES
from generator.book.pages.dates import _DATE_KINDS
from generator.book.pages.pictures import heights_picture
from generator.book.pages.seen import heights, last_look, looked_over, sight_checks
from generator.book.pages.written import (
    PLACES,
    ROUTES,
    STANDS,
    Written,
    address_of,
    from_template,
    plan_of_upkeep,
    soil_test_title,
    upkeep_of,
)
from generator.inventory.dates import HUNTED
from generator.inventory.places import Route, Screen, Stand, hidden_by
from generator.plan.days.shooting import on_stand, weeks
from generator.plan.jobs.ground import WAY_WORDS
from generator.plan.model.finding import stopped_in
from generator.plan.model.place import Place
from generator.plan.model.plan import Plan
from generator.plan.readers.partner import hunted_on
from generator.plan.sowing.sown_how import METHOD_WORDS
from generator.plan.standing.heights_told import last_measured, told_heights
from generator.plan.standing.planting_curves import standing_growth
from generator.plan.standing.verdicts import judged, needed_on
from generator.reference.growth import has_kinds
from generator.reference.library import species, values


def place_page(plan: Plan, place: Place) -> Written:
    """Return a place with its plantings and jobs."""
    jobs = [job for job in plan.jobs if job.place_id == place.id]
    stopped = stopped_in(plan.findings)
    typed = place.typed
    planting_ids = [one.id for one in typed.plantings] if typed is not None else []
    seen_heights = heights(plan, planting_ids)
    standing = standing_growth(plan, place)
    curves = {one.planting.id: one for one in standing}
    said = [place.name, *(job.step.name for job in jobs)]
    if typed is not None:
        said += [one.steps.replace("_", " ") for one in typed.plantings]
        said += [typed.IN_WORDS, typed.note or "", typed.known_as or ""]
    return from_template(
        plan,
        f"places/{place.address}.md",
        place.name,
        PLACES,
        "place",
        said,
        ("place",),
        place=place,
        typed=typed,
        hides=hidden_by(typed) if typed is not None else (),
        findings=plan.findings_on(place.id),
        way_words=WAY_WORDS,
        method_words=METHOD_WORDS,
        jobs=[(job, job.id in stopped) for job in jobs],
        actives=[one for one in plan.actives if one.place_id == place.id],
        shares=_shares(plan, place),
        species=species(),
        step_plans={one.id: one for one in plan.step_plans},
        routes={one.id: one for one in plan.routes},
        soil_tests={one.id: one for one in plan.soil_tests},
        soil_titles={one.id: soil_test_title(plan, one) for one in plan.soil_tests},
        plants={one.id: one for one in plan.plants},
        guards={one.id: one for one in plan.guards},
        address_of=address_of,
        counts=plan.decided.of_place(place.id),
        outcomes=OUTCOMES,
        looks=looked_over(plan, place.id),
        heights=seen_heights,
        height_pictures=[
            picture
            for one in (place.typed.plantings if place.typed is not None else ())
            if one.season <= plan.season + 1
            if (picture := heights_picture(plan, one, curves.get(one.id), seen_heights))
        ],
        told_heights=[
            (one, told, last_measured(one)) for one in standing if (told := told_heights(plan, one))
        ],
        gap=values()["two_stations_apart_ft"],
        has_kinds=has_kinds,
        lots={one.id: one for one in plan.lots},
        judged={one.day: one for one in judged(plan, place)},
        needed=needed_on(place),
        is_screen=isinstance(typed, Screen),
    )


def _shares(plan: Plan, place: Place) -> list[tuple[Place, str]]:
    """Return the other places on some of the ground of a place, and how that is known."""
    pairs = [
        (pair.other if pair.one == place.id else pair.one, pair.why)
        for pair in plan.shared_grounds
        if place.id in (pair.one, pair.other)
    ]
    return [(plan.place(name), why) for name, why in pairs]


def stand_page(plan: Plan, stand: Stand) -> Written:
    """Return a hunting stand."""
    serving = [one for one in plan.routes if stand.id in one.serves]
    return from_template(
        plan,
        f"stands/{address_of(stand)}.md",
        stand.name,
        STANDS,
        "stand",
        [stand.name, stand.note or "", *(one.name for one in serving)],
        ("stand",),
        stand=stand,
        routes=serving,
        findings=plan.findings_on(stand.id),
        looks=looked_over(plan, stand.id),
        look=last_look(plan, stand),
        upkeep=upkeep_of(plan, stand.id),
        upkeep_plan=plan_of_upkeep(plan, stand),
        hunted=hunted_on(plan, stand.id, HUNTED),
        hours=[
            (one, _DATE_KINDS[one.dates.kind], weeks(one))
            for one in on_stand(plan.hunted, stand.id)
        ],
        address_of=address_of,
    )


def route_page(plan: Plan, route: Route) -> Written:
    """Return an access route."""
    hiding = [
        one for one in plan.places if one.typed is not None and route.id in hidden_by(one.typed)
    ]
    return from_template(
        plan,
        f"routes/{address_of(route)}.md",
        route.name,
        ROUTES,
        "route",
        [route.name, route.note or ""],
        ("route",),
        route=route,
        stands=[one for one in plan.stands if one.id in route.serves],
        hiding=hiding,
        sights=sight_checks(plan, route.id),
        upkeep=upkeep_of(plan, route.id),
        upkeep_plan=plan_of_upkeep(plan, route),
        hunted=hunted_on(plan, route.id, HUNTED),
        findings=plan.findings_on(route.id),
        address_of=address_of,
        chapters=chapters_for(plan.reader, ("walking-in",)),
    )
