"""Words typed of a place that say nothing is near, where by its points something is."""

from collections.abc import Iterator

from generator.plan.findings.about_land import LandCaution
from generator.plan.findings.order import all_listed, finding
from generator.plan.jobs.near_lines import STANDS_BESIDE
from generator.plan.jobs.safety import NEAR_LABELS
from generator.plan.model.finding import Finding, about_place
from generator.plan.model.place import DangerNear
from generator.plan.model.plan import Plan

# How words begin that say so: "None within sight", "Nothing above or below".
NONE_WORDS = ("no", "none", "nothing")
# Lines on a sheet that say so of all that stands beside them; roads have a line of their own.
_ASKED = ("water_and_wells", "lines", "neighbours")
ROAD = "road"


def typed_none_findings(plan: Plan) -> Iterator[Finding]:
    """Yield a caution for each line of a place that says none is near, and points say otherwise.

    Words that begin otherwise are not read: they may name what lies there.
    """
    drawn = {job.place_id: job.near for job in plan.jobs if job.state.is_ahead}
    names = {thing.id: thing.name for thing in plan.land.things}
    for place in plan.places:
        near = place.typed.near if place.typed is not None else None
        if near is None:
            continue
        for line in _ASKED:
            typed = getattr(near, line) or ""
            lies = [one for one in drawn.get(place.id, ()) if _is_asked_in(line, one)]
            if not lies or not _says_none(typed):
                continue
            figures = tuple((names[one.thing_id], one.apart) for one in lies)
            yield finding(
                LandCaution.NONE_TYPED_BUT_DRAWN,
                about_place(place.id),
                near.where_of(line),
                figures,
                what=NEAR_LABELS[line].lower(),
                typed=typed,
                things=all_listed(name for name, _ in figures),
            )


def _is_asked_in(line: str, one: DangerNear) -> bool:
    return STANDS_BESIDE[one.kind] == line and one.kind != ROAD


def _says_none(words: str) -> bool:
    """Return whether words begin by saying that there is none.

    >>> _says_none("None within sight"), _says_none("Northern pond"), _says_none("")
    (True, False, False)
    """
    return words.lower().replace(",", " ").split()[:1] in [[word] for word in NONE_WORDS]
