"""The card for after the shot: whom to call, whose ground, what the law decides."""

from generator.book.pages.dates import law_told, placed
from generator.book.pages.written import STANDS, Written, from_template
from generator.plan.jobs.job_days import LAST_OF_SEASON
from generator.plan.jobs.safety import emergency_lines
from generator.plan.model.days import Span, comes_back
from generator.plan.model.finding import SafetyLine
from generator.plan.model.plan import Plan
from generator.plan.season.open_dates import day_in_season
from generator.reference.library import law_subjects

AFTER_SHOT_ADDRESS = "after-the-shot.md"
# Lines of the emergency card of those who are called when nobody is hurt.
_CALLED = ("emergency.owner_telephone", "emergency.neighbour")
_QUIET = "quiet"


def after_shot_page(plan: Plan) -> Written:
    """Return the card that goes along: what to do first, whom to call, where one may go."""
    called: list[SafetyLine] = [
        line for line in emergency_lines(plan.land.emergency) if line.key in _CALLED
    ]
    return from_template(
        plan,
        AFTER_SHOT_ADDRESS,
        "After the shot",
        STANDS,
        "after_the_shot",
        ["after the shot", *(subject.name for subject in law_subjects().values())],
        safety_keys=tuple(line.key for line in called),
        called=called,
        after=plan.land.after_the_shot,
        stay_out=_stay_out(plan),
        law=plan.once("law told", law_told),
        findings=[
            finding for entry in plan.land.looked_up for finding in plan.findings_on(entry.id)
        ],
    )


def _stay_out(plan: Plan) -> list[tuple[str, tuple[Span, ...]]]:
    """Return the ground on which nobody goes in and its days, from the plan's day on."""
    inside = (plan.as_of, day_in_season(LAST_OF_SEASON, plan.season))
    names = placed(plan)
    return [
        (names(dates.places), spans)
        for dates in plan.land.dates
        if dates.kind == _QUIET
        if inside[0] <= inside[1] and (spans := comes_back(dates, inside))
    ]
