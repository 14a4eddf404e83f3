"""The page of what the book takes for granted: every value of its own, in one place."""

from collections.abc import Iterable

from generator.book.pages.written import HOW, Written, from_template
from generator.plan.model.days import MONTHS
from generator.plan.model.plan import Plan
from generator.plan.views.granted import FIXED
from generator.reference.found_signs import emergence_soils
from generator.reference.granted import granted_groups
from generator.reference.growth import GrownBy, growths
from generator.reference.library import species
from generator.reference.usual import usual_seed
from generator.working import Reference

GRANTED = "What this book takes for granted"


def granted_page(plan: Plan) -> Written:
    """Return every value that the book assumes, where it enters, its source, what replaces it."""
    groups = granted_groups()
    return from_template(
        plan,
        "granted.md",
        GRANTED,
        HOW,
        "granted",
        ["assumptions", "defaults", *(group.name for group in groups)],
        groups=groups,
        fixed=FIXED,
        soils=[
            (species()[species_id].name, value) for species_id, value in emergence_soils().items()
        ],
        growths=[
            (growth, _by_day(growth.first_grown), _by_day(growth.later_grown))
            for growth in growths()
        ],
        seeds=[(species()[species_id].name, usual) for species_id, usual in usual_seed().items()],
    )


def _by_day(grown: Iterable[GrownBy]) -> list[tuple[Reference, str]]:
    """Return the parts of a summer's growth, each with its day in words."""
    days = [(one.fraction, *one.month_day) for one in grown]
    return [(fraction, f"{MONTHS[month - 1]} {day}") for fraction, month, day in days]
