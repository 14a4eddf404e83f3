"""Heights of a planting on a day, in three curves, pulled by what was measured and cut.

A season of growth runs from spring to the spring after. From September the full height stands, from
December what winter leaves of it, until the new growth is taller.
"""

import datetime
import itertools
from collections.abc import Iterator
from functools import partial

from generator.compute.growth import (
    CUT_IN_WINTER,
    GROWING,
    GROWN,
    HELD,
    LATER_PULL,
    PULL,
    REGROWN,
    WINTERED,
)
from generator.compute.height_stations import UNLIFTED
from generator.dataclass import dataclass
from generator.inventory.log import LogEntry
from generator.plan.model.days import ONE_DAY
from generator.plan.standing.heights_measured import (
    Measuring,
    is_enough_to_lift,
    lowest_of,
    mean_of,
    measured_days,
)
from generator.plan.standing.planting_curves import FIRST_MONTH_OF_GROWTH, Growing, growing_year
from generator.reference.growth import Curve
from generator.working import Figure, Given, Quantity, Reference

FIRST_MONTH_OF_WINTER = 12
FIRST_MONTH_OF_FALL = 9
UNPULLED = Reference("pull_fraction", 1.0, "fraction", "arithmetic", "nothing measured")
NOTHING_GROWN = Reference("grown_fraction", 0.0, "fraction", "arithmetic", "before growth begins")
BURNT_TO = Reference("cut_in", 0.0, "in", "arithmetic", "burned to the ground")


@dataclass(frozen=True, slots=True)
class Pull:
    """How far the curves are pulled, and the measured height that pulls them."""

    figure: Quantity
    measured_in: Given | Quantity


@dataclass(frozen=True, slots=True)
class Heights:
    """The heights of one planting on a day, by curve; `year` is the season of growth it shows."""

    day: datetime.date
    year: int
    by_curve: dict[Curve, Quantity]


def heights_on(growing: Growing, day: datetime.date, curves: tuple[Curve, ...]) -> Heights | None:
    """Return the heights of a planting on a day; None before it grows, or after an annual's year.

    The first season is counted as no screen by whoever reads them: it is young, thin and late.
    """
    year = growing.year_of(day)
    if year < 1 or not growing.growth.grown(year):
        return None
    base = f"{_base(growing)}/{day.isoformat()}"
    return Heights(day, year, {curve: _standing(growing, day, curve, base) for curve in curves})


def _standing(growing: Growing, day: datetime.date, curve: Curve, base: str) -> Quantity:
    year = growing.year_of(day)
    # what lies down before December has had its winter early
    if _is_winter(day) or laid_down(growing, year, day) is not None:
        return _left_in_winter(growing, day, curve, base)
    new = _growth(growing, day, curve, base, day)
    if day.month < FIRST_MONTH_OF_WINTER and year > 1 and not _cut_since(growing, day):
        old = _wintered(growing, year - 1, curve, f"{base}/old", day)
        return old if old.value > new.value else new
    return new


def _left_in_winter(growing: Growing, day: datetime.date, curve: Curve, base: str) -> Quantity:
    """Return what stands on a day of winter: less than the winter's share where it was cut."""
    standing = _wintered(growing, growing.year_of(day), curve, base, day)
    cuts = _cuts_of_winter(growing, day)
    if not cuts:
        return standing
    lowest = min((_cut_to(entry) for entry in cuts), key=lambda cut: cut.value)
    return CUT_IN_WINTER(f"{base}/{curve}_left_in", cut_in=lowest, height_in=standing)


def _cuts_of_winter(growing: Growing, day: datetime.date) -> list[LogEntry]:
    first = datetime.date(growing_year(day), FIRST_MONTH_OF_WINTER, 1)
    return [entry for entry in growing.cut if first <= entry.done_on <= day]


def _is_winter(day: datetime.date) -> bool:
    return day.month == FIRST_MONTH_OF_WINTER or day.month < FIRST_MONTH_OF_GROWTH


def _wintered(growing: Growing, year: int, curve: Curve, base: str, day: datetime.date) -> Quantity:
    """Return what winter leaves of a season's growth, as it is known on a day."""
    height = _growth(growing, _end_of(growing, year), curve, base, day)
    return _share_of(growing, height, curve, base, laid_down(growing, year, day) is not None)


def laid_down(growing: Growing, year: int, known_on: datetime.date) -> LogEntry | None:
    """Return the last ice or wet snow on a season's growth that is known on a day; None without.

    Measured since then, what lies there is known again.
    """
    laid = [
        entry
        for entry in growing.laid
        if entry.done_on <= known_on
        and growing.year_of(entry.done_on) == year
        and entry.done_on >= datetime.date(growing_year(entry.done_on), FIRST_MONTH_OF_FALL, 1)
    ]
    last = max(laid, key=lambda entry: entry.done_on, default=None)
    if last is None or any(last.done_on < entry.done_on <= known_on for entry in growing.measured):
        return None
    return last


def _share_of(
    growing: Growing, height: Quantity, curve: Curve, base: str, lies_down: bool
) -> Quantity:
    share = growing.planting.winter_share_fraction or growing.growth.winter[curve]
    if lies_down:
        share = min(share, growing.growth.winter["low"], key=lambda each: each.value)
    return WINTERED(f"{base}/{curve}_wintered_in", height_in=height, winter_share_fraction=share)


def _end_of(growing: Growing, year: int) -> datetime.date:
    """Return the last day on which the full height of a season of growth stands."""
    return datetime.date(growing.planting.season + year - 1, 11, 30)


def _growth(
    growing: Growing, day: datetime.date, curve: Curve, base: str, known_on: datetime.date
) -> Quantity:
    """Return the height of this year's growth, cut and pulled as the log has it.

    Pulled up, the low curve is held to its full height or to what was measured, and the others to
    what the kind reaches on good ground: an early stand need not become a taller one.
    """
    pull = _pull(growing, curve, growing.year_of(day), known_on)
    if pull is None:
        return _pulled(growing, day, curve, base, UNPULLED)
    height = _pulled(growing, day, curve, base, pull.figure)
    if pull.figure.value <= 1:
        return height
    most = growing.growth if curve == "low" else growing.kind
    return HELD(
        f"{base}/{curve}_held_in",
        height_in=height,
        measured_in=pull.measured_in,
        full_in=most.full_in(growing.year_of(day), "low" if curve == "low" else "high"),
    )


def _pulled(
    growing: Growing, day: datetime.date, curve: Curve, base: str, pulled: Figure
) -> Quantity:
    full = growing.growth.full_in(growing.year_of(day), curve)
    grown = _grown(growing, day, f"{base}/{curve}")
    cut = _last_cut(growing, day)
    if cut is None:
        return GROWING(
            f"{base}/{curve}_in", full_in=full, grown_fraction=grown, pull_fraction=pulled
        )
    at_cut = _grown(growing, cut.done_on, f"{base}/{curve}/at_cut")
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


def _grown(growing: Growing, day: datetime.date, base: str) -> Figure:
    """Return the part of its year's growth that a planting has on a day."""
    year, fractions = growing_year(day), growing.growth.grown(growing.year_of(day))
    on = (day.year, day.month, day.day)
    if on <= (year, *fractions[0].month_day):
        return NOTHING_GROWN
    for before, after in itertools.pairwise(fractions):
        if on <= (year, *after.month_day):
            first, last = (datetime.date(year, *one.month_day) for one in (before, after))
            return GROWN(
                f"{base}/grown_fraction",
                before_fraction=before.fraction,
                after_fraction=after.fraction,
                past_days=_days(first, day),
                between_days=_days(first, last),
            )
    return fractions[-1].fraction


def _days(first: datetime.date, last: datetime.date) -> Reference:
    words = f"from {first.isoformat()} to {last.isoformat()}"
    return Reference("days_between_days", float((last - first).days), "days", "arithmetic", words)


def _pull(growing: Growing, curve: Curve, year: int, known_on: datetime.date) -> Pull | None:
    """Return how the last measuring that is known on a day pulls a curve of a season of growth.

    The low curve goes by the lowest that counts and is not raised by few stations; the others go
    by the mean. What was measured in a season before counts by half.
    """
    for measuring in measured_days(growing):
        measured_year = growing.year_of(measuring.day)
        # a height measured later must not change what was known on a day before it
        if measuring.day > known_on or not 1 <= measured_year <= year:
            continue
        if not growing.growth.grown(measured_year):
            continue
        # how tall it lies says nothing of how tall its like will grow
        if measured_year < year and _lay_on(growing, measuring.day):
            continue
        about = ("pull", measuring.day, curve)
        pull = growing.once(about, partial(_pull_of_day, growing, curve, measuring))
        # nothing to measure it by on that day: the measuring before it may still tell
        if pull is None:
            continue
        if measured_year == year:
            return pull
        base = _base_of(growing, measuring, curve)
        later = LATER_PULL(f"{base}_later_pull_fraction", pull_fraction=pull.figure)
        return Pull(later, pull.measured_in)
    return None


def _lay_on(growing: Growing, day: datetime.date) -> bool:
    """Return whether ice or wet snow had laid a season's growth down before a day of it."""
    return any(
        entry.done_on <= day and growing.year_of(entry.done_on) == growing.year_of(day)
        for entry in growing.laid
    )


def _pull_of_day(growing: Growing, curve: Curve, measuring: Measuring) -> Pull | None:
    """Return how a day's heights pull a curve; None where nothing is expected of that day."""
    expected = _expected(growing, measuring.day)
    if expected is None:
        return None
    base = _base_of(growing, measuring, curve)
    heights = measuring.within(growing.part_ft)
    if curve == "low":
        measured = lowest_of(heights, f"{base}_lowest_in")
    else:
        measured = mean_of(heights, f"{base}_mean_in")
    pull = PULL(f"{base}_pull_fraction", measured_in=measured, expected_in=expected)
    if curve == "low" and not is_enough_to_lift(growing, measuring):
        pull = UNLIFTED(f"{base}_unlifted_fraction", pull_fraction=pull)
    return Pull(pull, measured)


def _base_of(growing: Growing, measuring: Measuring, curve: Curve) -> str:
    return f"{_base(growing)}/{measuring.name}/{curve}"


def _base(growing: Growing) -> str:
    """Return what the names of the heights of a planting begin with, those of a part apart."""
    part = "" if growing.part_ft is None else f"/{growing.part_ft[0]:g}-{growing.part_ft[1]:g}"
    return f"height/{growing.planting.id}{part}"


def _expected(growing: Growing, day: datetime.date) -> Quantity | None:
    """Return the typical height of a day, not pulled; None where there is none to measure by."""
    base = f"{_base(growing)}/{day.isoformat()}/expected"
    if _is_winter(day):
        # what a cut left says nothing of how tall it grew
        if _cuts_of_winter(growing, day):
            return None
        full = _pulled(growing, _end_of(growing, growing.year_of(day)), "typical", base, UNPULLED)
        expected = _share_of(growing, full, "typical", base, lies_down=False)
    else:
        expected = _pulled(growing, day, "typical", base, UNPULLED)
    return expected if expected.value > 0 else None


def _last_cut(growing: Growing, day: datetime.date) -> LogEntry | None:
    """Return the last mowing or burn of the year of growth a day shows, up to the day."""
    cuts = [
        entry
        for entry in growing.cut
        if entry.done_on <= day and growing.year_of(entry.done_on) == growing.year_of(day)
    ]
    return max(cuts, key=lambda entry: entry.done_on, default=None)


def _cut_since(growing: Growing, day: datetime.date) -> bool:
    """Return whether last year's stems are gone: cut or burned since they stopped growing."""
    stood = datetime.date(growing_year(day) - 1, 9, 1)
    return any(stood <= entry.done_on <= day for entry in growing.cut)


def _cut_to(entry: LogEntry) -> Given | Reference:
    if entry.mowed is not None and entry.mowed.cut_height_in is not None:
        return entry.mowed.cut_height_in
    # a burn; of mowings only those with a height are among the cuts
    return BURNT_TO


def bends(growing: Growing, season: int) -> Iterator[datetime.date]:
    """Yield the days of the year of a season on which a curve of a planting may bend, in order."""
    first, last = datetime.date(season - 1, 9, 1), datetime.date(season, 8, 31)
    listed = {
        by.month_day
        for part in (growing.growth.first_grown, growing.growth.later_grown)
        for by in part
    }
    # full height, winter and new growth begin here, each with the day before: a curve may jump
    listed |= {(9, 1), (11, 30), (12, 1), (4, 30), (5, 1), (8, 31)}
    years = (season - 1, season)
    days = {datetime.date(year, *month_day) for year in years for month_day in listed}
    for entry in (*growing.measured, *growing.cut, *growing.laid):
        # a cut, a measuring or ice makes a jump too, so the day before it stands beside it
        days |= {entry.done_on - ONE_DAY, entry.done_on}
    yield from sorted(day for day in days if first <= day <= last)
