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
    planting_ids = [planting.id for planting in typed.plantings] if typed is not None else []
    seen_heights = heights(plan, planting_ids)
    standing = standing_growth(plan, place)
    curves = {growing.planting.id: growing for growing in standing}
    said = [place.name, *(job.step.name for job in jobs)]
    if typed is not None:
        said += [planting.steps.replace("_", " ") for planting in typed.plantings]
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
        actives=[active for active in plan.actives if active.place_id == place.id],
        shares=_shares(plan, place),
        species=species(),
        step_plans={step_plan.id: step_plan for step_plan in plan.land.step_plans},
        routes={route.id: route for route in plan.land.routes},
        soil_tests={test.id: test for test in plan.land.soil_tests},
        soil_titles={test.id: soil_test_title(plan, test) for test in plan.land.soil_tests},
        plants={plant.id: plant for plant in plan.land.plants},
        guards={guard.id: guard for guard in plan.land.guards},
        address_of=address_of,
        counts=plan.decided.of_place(place.id),
        outcomes=OUTCOMES,
        looks=looked_over(plan, place.id),
        heights=seen_heights,
        height_pictures=[
            picture
            for planting in (place.typed.plantings if place.typed is not None else ())
            if planting.season <= plan.season + 1
            if (picture := heights_picture(plan, planting, curves.get(planting.id), seen_heights))
        ],
        told_heights=[
            (growing, told, last_measured(growing))
            for growing in standing
            if (told := told_heights(plan, growing))
        ],
        gap=values()["two_stations_apart_ft"],
        has_kinds=has_kinds,
        lots={lot.id: lot for lot in plan.land.lots},
        judged={verdict.day: verdict for verdict in judged(plan, place)},
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
    serving = [route for route in plan.land.routes if stand.id in route.serves]
    return from_template(
        plan,
        f"stands/{address_of(stand)}.md",
        stand.name,
        STANDS,
        "stand",
        [stand.name, stand.note or "", *(route.name for route in serving)],
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
            (hunted, _DATE_KINDS[hunted.dates.kind], weeks(hunted))
            for hunted in on_stand(plan.hunted, stand.id)
        ],
        address_of=address_of,
    )


def route_page(plan: Plan, route: Route) -> Written:
    """Return an access route."""
    hiding = [
        place
        for place in plan.places
        if place.typed is not None and route.id in hidden_by(place.typed)
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
        stands=[stand for stand in plan.land.stands if stand.id in route.serves],
        hiding=hiding,
        sights=sight_checks(plan, route.id),
        upkeep=upkeep_of(plan, route.id),
        upkeep_plan=plan_of_upkeep(plan, route),
        hunted=hunted_on(plan, route.id, HUNTED),
        findings=plan.findings_on(route.id),
        address_of=address_of,
        chapters=chapters_for(plan.reader, ("walking-in",)),
    )
