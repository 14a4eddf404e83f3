"""Where a season marker comes from, in words for the owner."""

from generator.plan.model.days import day_words
from generator.plan.model.markers import MarkerFound


def origin_words(found: MarkerFound) -> str:
    """Return what a marker rests on: what the owner typed, a record, published days, normals."""
    if found.kind == "seen":
        return f"by you, on {day_words(found.years[0])}"
    if found.kind == "typed" and found.days is not None:
        return "typed by you"
    if found.kind == "daily":
        first, last = found.years[0].year, found.years[-1].year
        count = len(found.years)
        return f"the record of {found.rests_on}, {first} to {last}; years used: {count}"
    if found.kind == "published":
        return f"published freeze dates: {found.rests_on}"
    if found.kind == "normals":
        return f"monthly normals, only a typical day: {found.rests_on}"
    return "not known"
