"""The page of shooting hours: every hunting day of the season with its times."""

import datetime
from itertools import groupby

from generator.book.pages.dates import DATE_KINDS, law_told, placed
from generator.book.pages.written import STANDS, Written, from_template
from generator.plan.days.shooting import clock_changes
from generator.plan.model.plan import HuntedDates, HuntedDay, Plan
from generator.reference.library import Method, methods

HOURS_ADDRESS = "hours.md"
# How the words of a rule name what it goes by.
SUN = {
    "sunrise": "sunrise",
    "civil_dawn": "the begin of civil twilight",
    "sunset": "sunset",
    "civil_dusk": "the end of civil twilight",
}
METHOD_OF = {"sunrise": "sunrise_minutes", "civil_dawn": "civil_dawn_minutes",
             "sunset": "sunset_minutes", "civil_dusk": "civil_dusk_minutes"}  # fmt: skip


def hours_page(plan: Plan) -> Written:
    """Return the hours of every hunting day, by the owner's own rule; the sun's times without."""
    return from_template(
        plan,
        HOURS_ADDRESS,
        "Shooting hours",
        STANDS,
        "hours",
        ["shooting hours", "sunrise", "sunset", "twilight", "legal light"],
        hunted=[
            (
                hunted,
                DATE_KINDS[hunted.dates.kind],
                _by_month(hunted),
                clock_changes(hunted),
                _findings(plan, hunted),
            )
            for hunted in plan.hunted
        ],
        sun=SUN,
        methods=_methods(plan),
        placed=placed(plan),
        law=plan.once("law told", law_told),
    )


def _findings(plan: Plan, hunted: HuntedDates) -> list[object]:
    about_hours = hunted.hours.where if hunted.hours is not None else None
    place = f"{about_hours.file}:{about_hours.line}" if about_hours is not None else ""
    return [
        finding for finding in plan.findings_on(hunted.dates.id) if place and finding.place == place
    ]


def _by_month(hunted: HuntedDates) -> list[tuple[datetime.date, list[HuntedDay]]]:
    return [
        (days[0].day, days)
        for _, group in groupby(hunted.days, lambda day: (day.day.year, day.day.month))
        if (days := list(group))
    ]


def _methods(plan: Plan) -> list[tuple[str, Method]]:
    """Return how each of the sun's times on the page is found."""
    named = ["sunrise", "sunset"]
    named += [
        by
        for hunted in plan.hunted
        if hunted.hours
        for by in (hunted.hours.begins, hunted.hours.ends)
    ]
    shown = [time for time in SUN if time in named]
    return [(SUN[time], methods()[METHOD_OF[time]]) for time in shown]
