"""First seedlings of what each planting sows, by how it was sown: soil warm enough, and a wait.

No sum of warmth from sowing to the first seedling is published for these grasses. Seed that lies in
the ground over winter waits for the soil; seed that is drilled later waits for its sowing day too.
"""

from collections.abc import Sequence
from dataclasses import replace

from generator.inventory.fields import SeasonMarker
from generator.inventory.places import Planting
from generator.inventory.schema import Inventory
from generator.inventory.weather import Normals, Station
from generator.plan.model.markers import EmergenceSeen, Series
from generator.plan.season.marker_years import (
    SPRING,
    Window,
    Years,
    emergence,
    enough,
    later,
    spread,
    windows,
    years_of,
)
from generator.reference.found_signs import emergence_soils
from generator.reference.library import species, values
from generator.working import Reference

IN_GROUND = "frost_seed"
SOWN = (IN_GROUND, "drill")
_GRASS = "native_grass"


def emergences(
    inventory: Inventory, every: Sequence[Series], normals: Window | None
) -> tuple[EmergenceSeen, ...]:
    """Return when each grass of each planting comes up, as far as the weather tells it."""
    own = {(record.species, record.method): record for record in inventory.emergence}
    usual = usual_waits()
    found = []
    # The years are looked at once for each soil that a grass waits for.
    soils = {
        soil_of(name).value
        for ground in inventory.places()
        for planting in ground.plantings
        for name in _grasses(planting)
    }
    warmed = {
        threshold_f: _warm_soil(threshold_f, inventory.stations, inventory.normals, every, normals)
        for threshold_f in soils
    }
    for ground in inventory.places():
        for planting in ground.plantings:
            for name in _grasses(planting):
                method = planting.method or ""  # sown, all of these: see `_grasses`
                soil, seen = soil_of(name), own.get((name, method))
                waits = (seen.fewest_days, seen.most_days) if seen is not None else usual
                warm = warmed[soil.value]
                days = waited(warm, waits) if warm is not None and method == IN_GROUND else None
                found.append(
                    EmergenceSeen(
                        planting.id, ground.name, species()[name].name, method,
                        soil, waits, seen is not None, days,
                    )
                )  # fmt: skip
    return tuple(found)


def of_plantings(seen: Sequence[EmergenceSeen]) -> dict[str, SeasonMarker]:
    """Return the emergence of each planting: of a mixture, from its first grass to its last."""
    return {
        planting: over_all(
            [grass.days for grass in seen if grass.planting == planting if grass.days]
        )
        for planting in dict.fromkeys(grass.planting for grass in seen if grass.days is not None)
    }


def over_all(days: Sequence[SeasonMarker]) -> SeasonMarker:
    """Return the earliest early and typical day and the latest late one."""
    return replace(
        days[0],
        early=min(marker.early for marker in days),
        # in a typical year too the first grass ends the work that must be over before seedlings
        typical=min(marker.typical for marker in days),
        late=max(marker.late for marker in days),
    )


def usual_waits() -> tuple[int, int]:
    """Return the fewest and the most days of waiting by common practice."""
    fewest, most = (values()[f"emergence_{end}_days"].value for end in ("fewest", "most"))
    return int(fewest), int(most)


def soil_of(name: str) -> Reference:
    """Return the soil a species waits for."""
    return emergence_soils().get(name, values()["grass_soil_f"])


def waited(warm: SeasonMarker, waits: tuple[int, int]) -> SeasonMarker:
    """Return days after warm soil: an early year waits fewest days, a late one most."""
    fewest, most = waits
    return replace(
        warm,
        early=later(warm.early, fewest),
        # half a day goes to the early side
        typical=later(warm.typical, (fewest + most) // 2),
        late=later(warm.late, most),
    )


def warm_years(threshold_f: float, series: Series) -> Years:
    """Return the first of the run of days of warm soil, year by year."""
    run = int(values()["soil_held_days"].value)
    return years_of(windows(series, SPRING), emergence(threshold_f, run))


def _grasses(planting: Planting) -> list[str]:
    if planting.method not in SOWN:
        return []
    return [seed.species for seed in planting.seed if species()[seed.species].kind == _GRASS]


def _warm_soil(
    threshold_f: float,
    stations: tuple[Station, ...],
    normals: tuple[Normals, ...],
    every: Sequence[Series],
    year: Window | None,
) -> SeasonMarker | None:
    # the first station that can tell, and no mean of several: the first is trusted most
    for station, series in zip(stations, every, strict=True):
        years = warm_years(threshold_f, series)
        if enough(years):
            early, typical, late = spread(years.days)
            return SeasonMarker(
                where=station.where, early=early, typical=typical, late=late, single=False
            )
    if year is None:
        return None
    at = emergence(threshold_f, int(values()["soil_held_days"].value))(year)
    if at is None:
        return None
    day, where = later((1, 1), at), normals[0].where
    return SeasonMarker(where=where, early=day, typical=day, late=day, single=True)
