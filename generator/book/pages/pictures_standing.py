"""Pictures of what stands on a place: its heights over the seasons, and the screen by a person."""

from markupsafe import Markup

from generator.book.charts.drawing import caption_id, dot_sample
from generator.book.charts.heights import DrawnCurve, Height, HeightPicture, heights_drawn
from generator.book.charts.silhouettes import Silhouettes, silhouettes_drawn
from generator.dataclass import dataclass
from generator.inventory.log import LogEntry
from generator.inventory.places import Planting
from generator.inventory.season import season_of
from generator.plan.jobs.job_days import FIRST_OF_SEASON, LAST_OF_SEASON
from generator.plan.model.days import days_of
from generator.plan.model.place import Place
from generator.plan.model.plan import Plan
from generator.plan.season.open_dates import day_in_season
from generator.plan.standing.heights import bends, heights_on
from generator.plan.standing.low_curve import LowHeight, Reached, falls_ahead, low_curves
from generator.plan.standing.planting_curves import Growing
from generator.plan.standing.verdicts import Verdict, judged, needed_on
from generator.reference.growth import CURVES
from generator.reference.library import values
from generator.units import convert
from generator.working import Figure, Given

SEASONS_BACK = 2
MEANS: dict[Verdict, str] = {
    "first_season": "no screen yet",
    "not_tall_enough": "too low",
    "not_to_count_on": "not to count on",
    "in_part": "hides in part",
    "hides": "hides",
}


@dataclass(frozen=True, slots=True)
class HeightsPictured:
    """The heights of a planting as a picture, its sample of a dot, and the finding under it."""

    svg: Markup
    caption_id: str
    sample: Markup | None
    reached: Reached | None


@dataclass(frozen=True, slots=True)
class ScreenPictured:
    """A screen beside a person: what is drawn, and each height with what it means."""

    svg: Markup
    caption_id: str
    person: Figure
    needed: Given | None
    panels: tuple[tuple[LowHeight, str], ...]


def heights_picture(
    plan: Plan,
    place: Place,
    planting: Planting,
    growth: Growing | None,
    entries: list[LogEntry],
) -> HeightsPictured | None:
    """Return the curves of a planting and its measured heights; None where there is neither."""
    first = max(planting.season, plan.season - SEASONS_BACK)
    measured = tuple(
        Height(entry.done_on, convert(reading.height_in.value, "in", "ft"), reading.height_in.value)
        for entry in entries
        if entry.measured is not None
        if entry.measured.planting == planting.id
        if season_of(entry.done_on) >= first
        for reading in entry.measured.readings
    )
    ends = [season_of(falls_ahead(plan.as_of)[-1]), *(season_of(one.day) for one in measured)]
    lines = _lines(plan, growth, first, max(ends)) if growth is not None else ()
    if not measured and not any(line.points_ft for line in lines):
        return None
    name = f"heights-{planting.id}"
    needed = needed_on(place)
    seasons = (day_in_season(FIRST_OF_SEASON, first), day_in_season(LAST_OF_SEASON, max(ends)))
    svg = heights_drawn(
        HeightPicture(
            name,
            "Height by season",
            first,
            max(ends),
            plan.as_of,
            measured,
            lines,
            needed.value if needed is not None else None,
            days_of(plan.land.dates, ("hunting",), place.id, seasons),
        )
    )
    curve = low_curves(plan).get(planting.id) if growth is not None else None
    return HeightsPictured(
        svg,
        caption_id(name),
        dot_sample() if measured else None,
        curve.reached if curve is not None else None,
    )


def _lines(plan: Plan, growth: Growing, first: int, last: int) -> tuple[DrawnCurve, ...]:
    """Return the curves: those of plantings of which the log tells nothing are drawn once."""
    if growth.measured or growth.cut or growth.laid:
        return _through_bends(growth, first, last)
    share, sown = growth.planting.winter_share_fraction, growth.planting.season
    alike = (growth.growth, growth.kind, share, sown, first, last)
    drawn: list[tuple[object, tuple[DrawnCurve, ...]]] = plan.once("curves drawn", lambda _: [])
    found = next((lines for like, lines in drawn if like == alike), None)
    if found is None:
        found = _through_bends(growth, first, last)
        drawn.append((alike, found))
    return found


def _through_bends(growth: Growing, first: int, last: int) -> tuple[DrawnCurve, ...]:
    """Return the curves, drawn through every day on which one of them bends."""
    days = [day for season in range(first, last + 1) for day in bends(growth, season)]
    found = [point for day in days if (point := heights_on(growth, day, CURVES)) is not None]
    return tuple(
        DrawnCurve(
            curve,
            tuple((point.day, convert(point.by_curve[curve].value, "in", "ft")) for point in found),
        )
        for curve in CURVES
    )


def screen_picture(plan: Plan, place: Place, growth: Growing) -> ScreenPictured | None:
    """Return a screen beside a person, now and in the falls to come; None where nothing stands."""
    curve = low_curves(plan).get(growth.planting.id)
    if curve is None or not any(low.height for low in curve.told):
        return None
    name, needed = f"screen-{growth.planting.id}", needed_on(place)
    verdicts = {one.day: one.verdict for one in judged(plan, place)}
    person = values()["drawn_person_ft"]
    svg = silhouettes_drawn(
        Silhouettes(
            name,
            "The screen beside a person",
            person.value,
            tuple(low.height.value if low.height is not None else 0.0 for low in curve.told),
            needed.value if needed is not None else None,
        )
    )
    panels = tuple(
        (low, MEANS[verdicts[low.day]] if low.day in verdicts else "") for low in curve.told
    )
    return ScreenPictured(svg, caption_id(name), person, needed, panels)
