"""Heights of a planting on a day, in three curves, pulled by what was measured and cut.

A season of growth runs from spring to the spring after. From September the full height stands, from
December what winter leaves of it, until the new growth is taller.
"""

import datetime
import itertools
from collections.abc import Iterator
from dataclasses import dataclass

from generator.compute.growth import (
    CUT_IN_WINTER,
    GROWING,
    GROWN,
    HELD_PULL,
    LATER_PULL,
    PULL,
    REGROWN,
    WINTERED,
)
from generator.inventory.log import LogEntry
from generator.inventory.places import Planting, SownSeed
from generator.plan.grown import grown_in
from generator.plan.model import Place, Plan
from generator.reference.growth import (
    CURVES,
    Curve,
    Growth,
    kind_growth,
    on_soil,
    species_growth,
)
from generator.working import Figure, Given, Quantity, Reference

ONE_DAY = datetime.timedelta(days=1)
FIRST_MONTH_OF_GROWTH, FIRST_MONTH_OF_WINTER = 5, 12
HUNTED_DAYS = ((11, 15), (1, 15))
UNPULLED = Reference("pull_fraction", 1.0, "fraction", "arithmetic", "nothing measured")
NOTHING_GROWN = Reference("grown_fraction", 0.0, "fraction", "arithmetic", "before growth begins")
BURNT_TO = Reference("cut_in", 0.0, "in", "arithmetic", "burnt to the ground")


@dataclass(frozen=True, slots=True)
class Growing:
    """A planting whose growth is known: its place, its season, what was measured, cut, burnt.

    `kind` is how the seed that counts grows, `growth` what is counted on of it on the place's soil.
    """

    place: Place
    planting: Planting
    seed: SownSeed
    kind: Growth
    growth: Growth
    measured: tuple[LogEntry, ...]
    cut: tuple[LogEntry, ...]

    def year_of(self, day: datetime.date) -> int:
        """Return the season of growth that a day shows, from 1; 0 and less before the first."""
        return _growing_year(day) - self.planting.season + 1


@dataclass(frozen=True, slots=True)
class Heights:
    """The heights of one planting on a day, by curve; `year` is the season of growth it shows."""

    day: datetime.date
    year: int
    by_curve: dict[Curve, Quantity]


def growing(plan: Plan, place: Place) -> tuple[Growing, ...]:
    """Return the plantings of a place whose growth is known, by their season."""
    plantings = place.typed.plantings if place.typed is not None else ()
    found = (_growing(plan, place, one) for one in sorted(plantings, key=lambda one: one.season))
    return tuple(one for one in found if one is not None)


def _growing(plan: Plan, place: Place, planting: Planting) -> Growing | None:
    """Return how a planting grows: of a mixture as what is sown of the least height in the end."""
    soil = place.typed.soil if place.typed is not None else None
    sown = [
        (seed, kind, on_soil(kind, unknown, soil))
        for seed in planting.seed
        if (kind := _kind(plan, seed)) is not None
        if (unknown := species_growth(seed.species)) is not None
    ]
    if not sown:
        return None
    seed, kind, growth = min(sown, key=lambda one: _least(one[2]))
    return Growing(
        place,
        planting,
        seed,
        kind,
        growth,
        tuple(e for e in plan.entries if e.measured and e.measured.planting == planting.id),
        tuple(e for e in plan.entries if _cuts(e, planting.id)),
    )


def _kind(plan: Plan, seed: SownSeed) -> Growth | None:
    lot = next((one for one in plan.lots if one.id == seed.lot), None)
    if lot is None:
        return species_growth(seed.species)
    return kind_growth(seed.species, lot.ecotype, lot.tag.variety)


def _least(growth: Growth) -> tuple[float, float]:
    full = growth.full[-1]
    return (full["low"].value, full["typical"].value)


def _cuts(entry: LogEntry, planting_id: str) -> bool:
    """Return whether an entry mows or burns the whole of a planting, to a height that is known."""
    if entry.job is None or entry.job.planting != planting_id:
        return False
    if entry.burned is not None:
        return entry.burned.part is None and entry.job.area_ac is None
    return entry.mowed is not None and entry.mowed.cut_height_in is not None


def heights_on(one: Growing, day: datetime.date, curves: tuple[Curve, ...]) -> Heights | None:
    """Return the heights of a planting on a day; None before it grows, or after an annual's year.

    The first season is counted as no screen by whoever reads them: it is young, thin and late.
    """
    year = one.year_of(day)
    if year < 1 or not one.growth.grown(year):
        return None
    base = f"height/{one.planting.id}/{day.isoformat()}"
    return Heights(day, year, {curve: _standing(one, day, curve, base) for curve in curves})


def _standing(one: Growing, day: datetime.date, curve: Curve, base: str) -> Quantity:
    year = one.year_of(day)
    if _is_winter(day):
        return _left_in_winter(one, day, curve, base)
    new = _growth(one, day, curve, base)
    if day.month < FIRST_MONTH_OF_WINTER and year > 1 and not _cut_since(one, day):
        old = _wintered(one, year - 1, curve, f"{base}/old")
        return old if old.value > new.value else new
    return new


def _left_in_winter(one: Growing, day: datetime.date, curve: Curve, base: str) -> Quantity:
    """Return what stands on a day of winter: less than the winter's share where it was cut."""
    standing = _wintered(one, one.year_of(day), curve, base)
    first = datetime.date(_growing_year(day), FIRST_MONTH_OF_WINTER, 1)
    cuts = [entry for entry in one.cut if first <= entry.done_on <= day]
    if not cuts:
        return standing
    lowest = min((_cut_to(entry) for entry in cuts), key=lambda cut: cut.value)
    return CUT_IN_WINTER(f"{base}/{curve}_left_in", cut_in=lowest, height_in=standing)


def _is_winter(day: datetime.date) -> bool:
    return day.month == FIRST_MONTH_OF_WINTER or day.month < FIRST_MONTH_OF_GROWTH


def _wintered(one: Growing, year: int, curve: Curve, base: str) -> Quantity:
    end = datetime.date(one.planting.season + year - 1, 11, 30)
    share: Figure = one.planting.winter_share_fraction or one.growth.winter[curve]
    return WINTERED(
        f"{base}/{curve}_wintered_in",
        height_in=_growth(one, end, curve, base),
        winter_share_fraction=share,
    )


def _growth(
    one: Growing, day: datetime.date, curve: Curve, base: str, pull: Figure | None = None
) -> Quantity:
    """Return the height of this year's growth, cut and pulled as the log has it."""
    full = one.growth.full_in(one.year_of(day), curve)
    grown = _grown(one, day, f"{base}/{curve}")
    pulled = pull if pull is not None else _pull(one, day, curve)
    cut = _last_cut(one, day)
    if cut is None:
        return GROWING(
            f"{base}/{curve}_in", full_in=full, grown_fraction=grown, pull_fraction=pulled
        )
    at_cut = _grown(one, cut.done_on, f"{base}/{curve}/at_cut")
    return REGROWN(
        f"{base}/{curve}_in",
        cut_in=_cut_to(cut),
        at_cut_in=GROWING(
            f"{base}/{curve}/at_cut_in", full_in=full, grown_fraction=at_cut, pull_fraction=pulled
        ),
        full_in=full,
        grown_fraction=grown,
        before_fraction=at_cut,
        pull_fraction=pulled,
    )


def _grown(one: Growing, day: datetime.date, base: str) -> Figure:
    """Return the part of its year's growth that a planting has on a day."""
    calendar_year = _growing_year(day)
    listed = [
        (datetime.date(calendar_year, *by.month_day), by.fraction)
        for by in one.growth.grown(one.year_of(day))
    ]
    if day <= listed[0][0]:
        return NOTHING_GROWN
    for (first, before), (last, after) in itertools.pairwise(listed):
        if day <= last:
            return GROWN(
                f"{base}/grown_fraction",
                before_fraction=before,
                after_fraction=after,
                past_days=_days(first, day),
                between_days=_days(first, last),
            )
    return listed[-1][1]


def _growing_year(day: datetime.date) -> int:
    return day.year if day.month >= FIRST_MONTH_OF_GROWTH else day.year - 1


def _days(first: datetime.date, last: datetime.date) -> Reference:
    words = f"from {first.isoformat()} to {last.isoformat()}"
    return Reference("days_between_days", float((last - first).days), "days", "arithmetic", words)


def _pull(one: Growing, day: datetime.date, curve: Curve) -> Figure:
    """Return how the last measuring before a day pulls a curve, half of it in later seasons.

    The low curve is pulled up no further than to what was measured.
    """
    for entry in sorted(one.measured, key=lambda found: found.done_on, reverse=True):
        year = one.year_of(entry.done_on)
        if entry.done_on > day or year < 1 or not one.growth.grown(year):
            continue
        assert entry.measured is not None
        expected = _expected(one, entry.done_on)
        if expected is None:
            continue
        base = f"height/{one.planting.id}/{entry.id}"
        pull = PULL(
            f"{base}/pull_fraction",
            measured_in=entry.measured.height_in,
            expected_in=expected,
        )
        if curve == "low":
            base = f"{base}/low"
            pull = HELD_PULL(
                f"{base}/pull_fraction",
                pull_fraction=pull,
                measured_in=entry.measured.height_in,
                full_in=one.growth.full_in(year, "low"),
            )
        if year == one.year_of(day):
            return pull
        return LATER_PULL(f"{base}/later_pull_fraction", pull_fraction=pull)
    return UNPULLED


def _expected(one: Growing, day: datetime.date) -> Quantity | None:
    """Return the typical height of a day of growth, not pulled; None where there is none."""
    base = f"height/{one.planting.id}/{day.isoformat()}/expected"
    expected = _growth(one, day, "typical", base, UNPULLED)
    return expected if expected.value > 0 else None


def _last_cut(one: Growing, day: datetime.date) -> LogEntry | None:
    """Return the last mowing or burn of the year of growth a day shows, up to the day."""
    cuts = [
        entry
        for entry in one.cut
        if entry.done_on <= day and one.year_of(entry.done_on) == one.year_of(day)
    ]
    return max(cuts, key=lambda entry: entry.done_on, default=None)


def _cut_since(one: Growing, day: datetime.date) -> bool:
    """Return whether last year's stems are gone: cut or burnt since they stopped growing."""
    stood = datetime.date(_growing_year(day) - 1, 9, 1)
    return any(stood <= entry.done_on <= day for entry in one.cut)


def _cut_to(entry: LogEntry) -> Given | Reference:
    if entry.mowed is not None and entry.mowed.cut_height_in is not None:
        return entry.mowed.cut_height_in
    return BURNT_TO


def told_days(season: int) -> tuple[datetime.date, ...]:
    """Return the days of a season's growth that a page tells: of summer, fall and winter."""
    return (
        datetime.date(season, 6, 30),
        datetime.date(season, 7, 31),
        datetime.date(season, 8, 31),
        *(
            datetime.date(season + (month < FIRST_MONTH_OF_GROWTH), month, day)
            for month, day in HUNTED_DAYS
        ),
    )


def is_hunted(day: datetime.date) -> bool:
    """Return whether a told day is one on which a hunter asks: of late fall or of winter."""
    return (day.month, day.day) in HUNTED_DAYS


def bends(one: Growing, season: int) -> Iterator[datetime.date]:
    """Yield the days of the year of a season on which a curve of a planting may bend, in order."""
    first, last = datetime.date(season - 1, 9, 1), datetime.date(season, 8, 31)
    listed = {
        by.month_day for part in (one.growth.first_grown, one.growth.later_grown) for by in part
    }
    listed |= {(9, 1), (11, 30), (12, 1), (4, 30), (5, 1), (8, 31)}
    years = (season - 1, season)
    days = {datetime.date(year, *month_day) for year in years for month_day in listed}
    for entry in (*one.measured, *one.cut):
        days |= {entry.done_on - ONE_DAY, entry.done_on}
    yield from sorted(day for day in days if first <= day <= last)


def told_heights(plan: Plan, one: Growing) -> tuple[Heights, ...]:
    """Return what a page tells of a planting: the season of growth that stands, and the next.

    What grew in a summer stands until the last told day of the winter after it.
    """
    stands = plan.as_of.year - (told_days(plan.as_of.year - 1)[-1] >= plan.as_of)
    first = max(stands, plan.season - 1)
    days = (day for season in (first, first + 1) for day in told_days(season))
    ahead = (day for day in days if day >= plan.as_of)
    return tuple(found for day in ahead if (found := heights_on(one, day, CURVES)) is not None)


def standing_growth(plan: Plan, place: Place) -> tuple[Growing, ...]:
    """Return the planting of a place whose heights a page tells: what stands in the season."""
    stands = {one.planting.id for one in grown_in(plan, plan.season)}
    return tuple(one for one in growing(plan, place) if one.planting.id in stands)


def height_numbers(plan: Plan) -> list[Quantity]:
    """Return every computed height that stands on a page."""
    return [
        number
        for place in plan.places
        for one in standing_growth(plan, place)
        for found in told_heights(plan, one)
        for number in found.by_curve.values()
    ]
