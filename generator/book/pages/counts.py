"""Pages of counts and waits: what a count decides, what may be sown when, weeds."""

from generator.book.pages.written import HOW, PLACES, Written, from_template
from generator.plan.model.counts import Outcome
from generator.plan.model.plan import Plan
from generator.reference.library import planting_kinds, species, values, ways_of_working
from generator.reference.weeds import OTHER, weeds

_COUNTS = "Counts and decisions"
PLANT_WHEN = "What can I plant here, when"
WEEDS = "Weeds"
OUTCOMES: dict[Outcome, str] = {
    "too_early": "Too early to decide",
    "keep": "Keep",
    "weeds": "Keep, and hold the weeds down",
    "overseed": "Overseed this stretch",
    "start_over": "Start over",
}
COUNT_CODES = ("C320", "C321", "C322", "C323", "N400", "N401", "N402", "N403")


def counts_page(plan: Plan) -> Written:
    """Return every planting of native grass with its counts and what they decide."""
    counted = [
        (
            place,
            plan.decided.of_place(place.id),
            [finding for finding in plan.findings_on(place.id) if finding.code in COUNT_CODES],
        )
        for place in plan.places
        if plan.decided.of_place(place.id)
    ]
    return from_template(
        plan,
        "counts.md",
        _COUNTS,
        PLACES,
        "counts",
        [
            *(place.name for place, _, _ in counted),
            "plant count",
            "frame",
            "overseed",
            "start over",
        ],
        counted=counted,
        outcomes=OUTCOMES,
        species=species(),
        values=values(),
    )


def plant_when_page(plan: Plan) -> Written:
    """Return place by place what was sprayed, and from when each kind of planting may be sown."""
    return from_template(
        plan,
        "plant-when.md",
        PLANT_WHEN,
        PLACES,
        "plant_when",
        ["plant-back", "residual", "wait", "sow after spraying"],
        waits=[(plan.place(wait.place_id), wait) for wait in plan.decided.waits],
        kinds=planting_kinds(),
        works=ways_of_working(),
        other=OTHER,
    )


def weeds_page(plan: Plan) -> Written:
    """Return the list of weeds: looks, when each is weak, what kills it and what that harms."""
    return from_template(
        plan,
        "weeds.md",
        WEEDS,
        HOW,
        "weeds",
        [weed.name for weed in weeds().values()],
        weeds=weeds(),
        works=ways_of_working(),
        kinds=planting_kinds(),
        other=OTHER,
    )
