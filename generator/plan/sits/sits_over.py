"""Sits of the log beside what their wind was expected to be, and counted by wind after enough."""

from collections.abc import Iterable, Iterator

from generator.compute.buying import TOTAL_COUNT
from generator.compute.sat import SITS_COUNT
from generator.compute.scent import sector_count
from generator.dataclass import dataclass
from generator.inventory.log import LogEntry
from generator.inventory.log_sat import Sat
from generator.inventory.places import Route, Stand
from generator.plan.winds.airs import Air, HowTold, WindVerdict
from generator.plan.winds.stand_winds import stand_wind, wind_with_walks
from generator.plan.winds.widths import EIGHT_WINDS_DEG
from generator.reference.library import values
from generator.working import Given, Quantity


@dataclass(frozen=True, slots=True)
class SitOver:
    """An entry of the log about a sit, and what its wind was expected to be.

    `expected` is None where nobody measured where the wind came from.
    """

    entry: LogEntry
    sat: Sat
    expected: WindVerdict | None


@dataclass(frozen=True, slots=True)
class SitsByWind:
    """The sits on a stand with one wind: how many there were, deer seen, deer that winded."""

    wind: str
    sits: Quantity
    deer: Quantity | None
    winded: Quantity | None


def sits_over(
    stand: Stand, routes: Iterable[Route], entries: Iterable[LogEntry]
) -> tuple[SitOver, ...]:
    """Return the sits on a stand that the log tells of, the newest first."""
    routes = tuple(routes)
    found = [
        SitOver(entry, entry.sat, _expected(stand, routes, entry.sat))
        for entry in entries
        if entry.sat is not None and entry.sat.stand == stand.id
    ]
    return tuple(found[::-1])


def _expected(stand: Stand, routes: tuple[Route, ...], sat: Sat) -> WindVerdict | None:
    """Return what a wind was as measured there: the wide plume, since no sky is written down."""
    if sat.wind_from_deg is None:
        return None
    speed_mph = sat.wind_mph.value if sat.wind_mph is not None else None
    air = Air(sat.wind_from_deg.value, speed_mph, HowTold.MEASURED)
    walked = [route for route in routes if route.id in (sat.walk_in, sat.walk_out)]
    return wind_with_walks(stand, walked, air) if walked else stand_wind(stand, air)


def counted_by_wind(stand: Stand, entries: Iterable[LogEntry]) -> tuple[SitsByWind, ...]:
    """Return the sits on a stand by the wind as measured; none before there are enough of them."""
    sats = [entry.sat for entry in entries if entry.sat is not None]
    told = [sat for sat in sats if sat.stand == stand.id and sat.wind_from_deg is not None]
    if len(told) < values()["sits_before_counting_count"].value:
        return ()
    return tuple(_of_each_wind(stand, told))


def _of_each_wind(stand: Stand, told: list[Sat]) -> Iterator[SitsByWind]:
    for number, wind in enumerate(EIGHT_WINDS_DEG):
        of_it = [sat for sat in told if _sector(sat) == number]
        winds = tuple(sat.wind_from_deg for sat in of_it if sat.wind_from_deg is not None)
        if not of_it:
            continue
        base = f"{stand.id}/sits/{wind}"
        yield SitsByWind(
            wind,
            SITS_COUNT(f"{base}/sits_count", winds_deg=winds),
            _together(f"{base}/deer_count", [sat.deer_count for sat in of_it]),
            _together(f"{base}/winded_count", [sat.winded_count for sat in of_it]),
        )


def _sector(sat: Sat) -> int:
    assert sat.wind_from_deg is not None
    return sector_count(sat.wind_from_deg.value, len(EIGHT_WINDS_DEG))


def _together(identity: str, counts: list[Given | None]) -> Quantity | None:
    """Return counts added up; None where nobody counted."""
    known = tuple(count for count in counts if count is not None)
    return TOTAL_COUNT(identity, parts=known) if known else None


def sit_numbers(stands: Iterable[Stand], entries: tuple[LogEntry, ...]) -> Iterator[Quantity]:
    """Yield the numbers that pages show of sits that are over."""
    for stand in stands:
        for one in counted_by_wind(stand, entries):
            yield from (told for told in (one.sits, one.deer, one.winded) if told is not None)
