"""Pages of counts and waits: what a count decides, what may be sown when, weeds."""

import datetime
from collections.abc import Iterable

from generator.book.pages.written import HOW, PLACES, Written, from_template
from generator.dataclass import dataclass
from generator.plan.model.counts import Earliest, Outcome, PlaceWaits, Spraying
from generator.plan.model.place import Place
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
# Ways of working that last in the soil.
STAYS_IN_SOIL = ("soil_residual", "sulfonylurea")
COUNT_CODES = ("C320", "C321", "C322", "C323", "N400", "N401", "N402", "N403")


@dataclass(frozen=True, slots=True)
class SownFrom:
    """From when kinds of planting may be sown: `day` None where no wait holds them back.

    `is_over` says that the day has come, `is_open` that it is not answerable yet, `every` that no
    kind has another answer.
    """

    day: datetime.date | None
    is_over: bool
    is_open: bool
    kinds: tuple[str, ...]
    every: bool


@dataclass(frozen=True, slots=True)
class PlaceAnswered:
    """A place with what may be sown on it from when, by the log and after what is planned."""

    place: Place
    waits: PlaceWaits
    now: tuple[SownFrom, ...]
    after: tuple[SownFrom, ...]
    residual: Spraying | None


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
        answered=[_answered(plan, waits) for waits in plan.decided.waits],
        kinds=planting_kinds(),
    )


def _answered(plan: Plan, waits: PlaceWaits) -> PlaceAnswered:
    now = _answers(waits.logged, plan.as_of) if waits.any_logged() else ()
    residuals = [
        spraying for spraying in waits.sprayings if set(spraying.works) & set(STAYS_IN_SOIL)
    ]
    last = max(residuals, key=lambda one: one.last or datetime.date.max, default=None)
    return PlaceAnswered(
        plan.place(waits.place_id), waits, now, _answers(waits.planned, plan.as_of), last
    )


def _answers(found: Iterable[Earliest], as_of: datetime.date) -> tuple[SownFrom, ...]:
    """Return the kinds that have the same answer together, the soonest first."""
    kinds: dict[tuple[bool, datetime.date | None], list[str]] = {}
    for one in found:
        # beside a question no day stands: it would be read as the answer
        is_open = bool(one.asks)
        kinds.setdefault((is_open, None if is_open else one.day), []).append(one.kind)
    soonest = sorted(kinds.items(), key=lambda pair: (pair[0][0], pair[0][1] or datetime.date.min))
    return tuple(
        SownFrom(day, day is not None and day <= as_of, is_open, tuple(named), len(kinds) == 1)
        for (is_open, day), named in soonest
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
