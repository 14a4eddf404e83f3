"""Whether a screen hides somebody on a day of the hunting season: by its low curve, never a higher.

What is needed is the owner's own height, judged on the ground. Nothing typed, no verdict.
"""

import datetime
from dataclasses import dataclass
from typing import Literal

from generator.inventory.places import Screen
from generator.plan.growing import Growing, standing_growth
from generator.plan.growth import Heights, is_hunted, told_heights
from generator.plan.model import Place, Plan
from generator.units import convert
from generator.working import Given

Verdict = Literal["hides", "not_to_count_on", "not_tall_enough", "first_season"]
# From the worst to the one that lets somebody walk there.
VERDICTS: tuple[Verdict, ...] = ("first_season", "not_tall_enough", "not_to_count_on", "hides")
VERDICT_WORDS: dict[Verdict, str] = {
    "first_season": "counts as no screen",
    "not_tall_enough": "not tall enough",
    "not_to_count_on": "do not count on it",
    "hides": "hides",
}


@dataclass(frozen=True, slots=True)
class Judged:
    """A screen on a day: what stands there by the curves, what is needed, and the verdict."""

    heights: Heights
    needed_ft: Given
    verdict: Verdict

    @property
    def day(self) -> datetime.date:
        """Return the day of the verdict."""
        return self.heights.day

    @property
    def words(self) -> str:
        """Return the verdict in words."""
        return VERDICT_WORDS[self.verdict]


def needed_on(place: Place) -> Given | None:
    """Return the height a screen needs to hide what walks behind it; None where none is typed."""
    return place.typed.height_needed_ft if isinstance(place.typed, Screen) else None


def judged(plan: Plan, place: Place) -> tuple[Judged, ...]:
    """Return the verdicts on a screen on the days ahead that are asked about, in order."""
    needed = needed_on(place)
    if needed is None:
        return ()
    return tuple(
        Judged(found, needed, verdict(one, found, needed))
        for one in standing_growth(plan, place)
        for found in told_heights(plan, one)
        if is_hunted(found.day)
    )


def verdict(one: Growing, heights: Heights, needed_ft: Given) -> Verdict:
    """Return the verdict on the heights of a day.

    The first season counts as no screen whatever its curves say; a plant that lives one season has
    no other and is judged by it.
    """
    if heights.year == 1 and one.growth.lives_on:
        return "first_season"
    needed_in = convert(needed_ft.value, "ft", "in")
    if heights.by_curve["low"].value >= needed_in:
        return "hides"
    if heights.by_curve["typical"].value >= needed_in:
        return "not_to_count_on"
    return "not_tall_enough"
