"""Whether a screen hides somebody on a day of the hunting season: by its low curve, never a higher.

What is needed is the owner's own height, judged on the ground. Nothing typed, no verdict. A stretch
that was counted too thin hides nobody, whatever its height.
"""

import datetime
from typing import Literal

from generator.dataclass import dataclass
from generator.inventory.places import Screen
from generator.plan.model.counts import CountSaid
from generator.plan.model.place import Place
from generator.plan.model.plan import Plan
from generator.plan.standing.cover_by_season import SEASONS_SHOWN
from generator.plan.standing.heights import Heights
from generator.plan.standing.heights_told import (
    heights_of_years,
    is_hunted,
    last_day_of_years,
    told_heights,
)
from generator.plan.standing.planting_curves import Growing, standing_growth
from generator.plan.standing.stretches import Stretch, counts_of, stretches
from generator.units import convert
from generator.working import Given

Verdict = Literal["hides", "in_part", "not_to_count_on", "not_tall_enough", "first_season"]
# From the worst to the one that lets somebody walk there.
VERDICTS: tuple[Verdict, ...] = (
    "first_season",
    "not_tall_enough",
    "not_to_count_on",
    "in_part",
    "hides",
)
VERDICT_WORDS: dict[Verdict, str] = {
    "first_season": "counts as no screen",
    "not_tall_enough": "not tall enough",
    "not_to_count_on": "do not count on it",
    "in_part": "hides in part",
    "hides": "hides",
}


@dataclass(frozen=True, slots=True)
class ScreenJudged:
    """A screen on a day: what stands there by the curves, what is needed, and the verdict.

    `stretches` are its stretches from where the stations begin; none in its first season.
    """

    heights: Heights
    needed_ft: Given
    verdict: Verdict
    stretches: tuple[Stretch, ...]

    @property
    def day(self) -> datetime.date:
        """Return the day of the verdict."""
        return self.heights.day

    @property
    def words(self) -> str:
        """Return the verdict in words."""
        return VERDICT_WORDS[self.verdict]

    @property
    def hiding(self) -> tuple[Stretch, ...]:
        """Return the stretches that hide, where others do not."""
        return tuple(
            stretch for stretch in self.stretches if stretch.hides and self.verdict != "hides"
        )

    @property
    def showing(self) -> tuple[Stretch, ...]:
        """Return the stretches that do not hide, where it is not for the height of them all."""
        told = self.hiding or any(stretch.why == "thin" for stretch in self.stretches)
        return tuple(stretch for stretch in self.stretches if not stretch.hides) if told else ()


def needed_on(place: Place) -> Given | None:
    """Return the height a screen needs to hide what walks behind it; None where none is typed."""
    return place.typed.height_needed_ft if isinstance(place.typed, Screen) else None


def judged(plan: Plan, place: Place) -> tuple[ScreenJudged, ...]:
    """Return the verdicts on a screen on the days ahead that are asked about, in order."""
    needed = needed_on(place)
    if needed is None:
        return ()
    return tuple(
        _judge(growing, found, needed, counts_of(plan.decided, growing.planting.id))
        for growing in standing_growth(plan, place)
        for found in told_heights(plan, growing)
        if is_hunted(found.day)
    )


def hides_from(plan: Plan, place: Place) -> datetime.date | None:
    """Return the first hunted day of the seasons looked at from which on a screen hides.

    From that day on it hides on every one of them; None where it does not on the last of them, or
    where nothing is needed.
    """
    needed = needed_on(place)
    if needed is None:
        return None
    found: datetime.date | None = None
    for growing in standing_growth(plan, place):
        counts = counts_of(plan.decided, growing.planting.id)
        for heights in heights_of_years(plan, growing, SEASONS_SHOWN):
            if not is_hunted(heights.day):
                continue
            hides = _judge(growing, heights, needed, counts).verdict == "hides"
            found = (found or heights.day) if hides else None
    return found


def looked_until(plan: Plan) -> datetime.date:
    """Return the last day on which it is asked whether a screen hides."""
    return last_day_of_years(plan, SEASONS_SHOWN)


def _judge(
    growing: Growing, heights: Heights, needed_ft: Given, counts: tuple[CountSaid, ...]
) -> ScreenJudged:
    """Return the verdict on a day.

    The first season counts as no screen whatever its curves say; a plant that lives one season has
    no other and is judged by it.
    """
    if heights.year == 1 and growing.growth.lives_on:
        return ScreenJudged(heights, needed_ft, "first_season", ())
    needed_in = convert(needed_ft.value, "ft", "in")
    found = stretches(growing, counts, heights.day, needed_in)
    return ScreenJudged(heights, needed_ft, _verdict(heights, needed_in, found), found)


def _verdict(heights: Heights, needed_in: float, found: tuple[Stretch, ...]) -> Verdict:
    hiding = [stretch.hides for stretch in found]
    if all(hiding):
        return "hides"
    if any(hiding):
        return "in_part"
    # higher curves only say how far off it is: none of them ever makes a screen hide
    if heights.by_curve["typical"].value >= needed_in:
        return "not_to_count_on"
    return "not_tall_enough"
