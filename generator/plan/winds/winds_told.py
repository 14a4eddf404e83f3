"""The eight winds of a forecast as pages tell them of a stand, with the numbers they show."""

from collections.abc import Iterable, Iterator

from generator.compute.scent import OFF_DOWNWIND
from generator.dataclass import dataclass
from generator.inventory.places import Route, Stand
from generator.plan.winds.airs import Air, WindVerdict
from generator.plan.winds.stand_winds import wind_with_walks
from generator.plan.winds.widths import EIGHT_WINDS_DEG
from generator.working import Quantity, Reference


@dataclass(frozen=True, slots=True)
class TellsOf:
    """A wind of a forecast, what it is for a stand, and how far off its line what decides lies.

    `off` is None where no bearing decides and none stands beside what was typed.
    """

    wind: str
    verdict: WindVerdict
    off: Quantity | None


def eight_winds(stand: Stand, routes: Iterable[Route]) -> tuple[TellsOf, ...]:
    """Return what each wind of a forecast is for a stand and its walks, clockwise from north."""
    routes = tuple(routes)
    found = []
    for wind, from_deg in EIGHT_WINDS_DEG.items():
        verdict = wind_with_walks(stand, routes, Air(from_deg))
        found.append(TellsOf(wind, verdict, _off_line(stand, wind, verdict)))
    return tuple(found)


def wind_numbers(stands: Iterable[Stand], routes: Iterable[Route]) -> Iterator[Quantity]:
    """Yield the numbers that pages show of the winds of stands."""
    routes = tuple(routes)
    for stand in stands:
        yield from (told.off for told in eight_winds(stand, routes) if told.off is not None)


def _off_line(stand: Stand, wind: str, verdict: WindVerdict) -> Quantity | None:
    thing = (verdict.beside or verdict).thing
    if thing is None:
        return None
    from_deg = Reference(
        "wind_from_deg", EIGHT_WINDS_DEG[wind], "deg", "arithmetic", f"wind from the {wind}"
    )
    identity = f"{stand.id}/wind/{wind}/off_downwind_deg"
    return OFF_DOWNWIND(identity, wind_from_deg=from_deg, toward_deg=thing.toward)
