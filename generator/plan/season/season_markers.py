"""Season signs by the order of trust: typed, the daily record, published days, normals, or open."""

import datetime
from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import lru_cache, partial
from typing import Any

from generator.compute.climate_spread import daily_from_months_f
from generator.geometry.geodesic import distances_mi
from generator.inventory.fields import SeasonMarker, Where
from generator.inventory.places import Planting
from generator.inventory.schema import Inventory, SeasonMarkers
from generator.inventory.weather import Normals, Station, WindStation
from generator.plan.model.markers import (
    EmergenceSeen,
    FoundMarkers,
    HeatOfYears,
    MarkerFound,
    Series,
    StationSeen,
    WeatherSeen,
    WindSeen,
)
from generator.plan.season.emergence import emergences, of_plantings, over_all, usual_waits, waited
from generator.plan.season.marker_years import (
    AUTUMN,
    SPRING,
    Find,
    Window,
    Years,
    emergence,
    enough,
    first_freeze,
    freeze_thaw_end,
    freeze_thaw_left,
    heat_of_years,
    last_freeze,
    later,
    normal_year,
    often_without,
    series_of,
    soil_held,
    spread,
    thaw,
    warm_sum,
    windows,
    years_of,
)
from generator.reference.found_signs import FoundBy, found_by
from generator.reference.library import marker_names, methods, values
from generator.units import LatLon
from generator.working import Measured

EMERGENCE = "grass_emergence"
# Never from normals: means of months hide cold nights, and a last freeze comes out days too early.
_FREEZES = {"first_freeze_days", "last_freeze_days", "freeze_thaw_ends_days"}
# Signs of the records a property has; a process that stays asks for them at each save.
_REMEMBERED = 100
BRING_RECORD = "a daily record of ten years or more"
BRING_FREEZE = f"{BRING_RECORD}, or freeze dates published for your county; never normals"


def has_weather(inventory: Inventory) -> bool:
    """Return whether anything of the weather is typed that a sign could rest on."""
    return bool(inventory.stations or inventory.freeze_dates or inventory.normals)


def with_markers(inventory: Inventory) -> tuple[Inventory, WeatherSeen | None]:
    """Return the inventory with every sign that is typed or found, and what they rest on.

    Without weather it stays as it is.
    """
    if not has_weather(inventory) and not inventory.wind_stations:
        return inventory, None
    every = [series_of(record) for record in inventory.daily]
    normals = _year_of_normals(inventory.normals) if inventory.normals else None
    coming = emergences(inventory, every, normals)
    found = {
        sign.id: _sign(_as_sown(sign, coming), inventory, every, normals) for sign in found_by()
    }
    # a typed day is the owner's own and stands for every planting, whatever it sows
    if found[EMERGENCE].kind in ("daily", "normals") and any(grass.days for grass in coming):
        sown = over_all([grass.days for grass in coming if grass.days is not None])
        found[EMERGENCE] = replace(found[EMERGENCE], days=sown)
    names = list(marker_names())
    days: dict[str, Any] = {name: found[name].days for name in names}
    typed = inventory.property.season_signs
    signs = FoundMarkers(
        where=typed.where if typed is not None else inventory.property.where,
        found={name: found[name] for name in names},
        of_planting={} if found[EMERGENCE].kind == "typed" else of_plantings(coming),
        **days,
    )
    seen = WeatherSeen(
        tuple(
            StationSeen(station, series, away(inventory, station))
            for station, series in zip(inventory.stations, every, strict=True)
        ),
        tuple(
            WindSeen(station, record, away(inventory, station))
            for station, record in zip(inventory.wind_stations, inventory.hourly_wind, strict=True)
        ),
        tuple(found[name] for name in names),
        tuple(marker for name, marker in found.items() if name not in names),
        freeze_thaw_left(every[0]) if every else (),
        _heat(every[0]) if every else (),
        coming,
        inventory.freeze_dates,
        inventory.normals,
    )
    # where typed signs stand, so that nothing that reads a sign need know where it is from
    new = replace(inventory.property, season_signs=signs)
    return replace(inventory, property=new), seen


def markers_for(planting: Planting, signs: SeasonMarkers | None) -> SeasonMarkers | None:
    """Return the signs as they are for a planting: with the emergence of what it sows."""
    if isinstance(signs, FoundMarkers) and planting.id in signs.of_planting:
        return replace(signs, grass_emergence=signs.of_planting[planting.id])
    return signs


def _as_sown(sign: FoundBy, coming: Sequence[EmergenceSeen]) -> FoundBy:
    """Return how emergence is found of what is sown: by the soil of its first grass.

    Where the owner has seen how long it takes, the usual wait is not among its figures.
    """
    in_ground = [grass for grass in coming if grass.days is not None]
    if sign.id != EMERGENCE or not in_ground:
        return sign
    soil = min((grass.soil for grass in in_ground), key=lambda each: each.value)
    _, run, *waits = sign.values
    waits = [] if any(grass.is_own for grass in in_ground) else waits
    return replace(sign, values=(soil, run, *waits))


def _sign(
    sign: FoundBy, inventory: Inventory, every: Sequence[Series], normals: Window | None
) -> MarkerFound:
    """Return one sign, by what is trusted most of what there is."""
    blank = MarkerFound(sign.id, sign.name, "open", None, method=sign.method, settings=sign.values)
    typed = getattr(inventory.property.season_signs, sign.id, None)
    if typed is not None:
        return replace(blank, kind="typed", days=typed, method="", settings=())
    short = blank
    for station, series in zip(inventory.stations, every, strict=True):
        found = _daily(blank, station, _years(sign, series))
        if found.days is not None:
            return found
        # of several stations that cannot tell, the page names what the first one lacks
        short = found if short == blank else short
    for typed_freeze in inventory.freeze_dates:
        threshold = sign.values[0].value
        if (typed_freeze.when, typed_freeze.threshold_f.value) == (sign.published, threshold):
            days = SeasonMarker(
                where=typed_freeze.where, early=typed_freeze.early, typical=typed_freeze.typical,
                late=typed_freeze.late, single=False,
            )  # fmt: skip
            return replace(blank, kind="published", days=days, rests_on=typed_freeze.source)
    if sign.method in _FREEZES:
        return replace(short, wanting=BRING_FREEZE if sign.published else BRING_RECORD)
    return _normal(sign, short, inventory.normals, normals)


def _daily(blank: MarkerFound, station: Station, found: Years) -> MarkerFound:
    """Return the sign from the years of a record, open where they are too few."""
    told = replace(
        blank,
        rests_on=station.name,
        years=found.days,
        left_out=found.left_out,
        without=found.without,
        wanting=BRING_RECORD,
    )
    # before `enough`: more years are no cure for a sign that does not come
    if often_without(found):
        return replace(told, wanting="a sign of your own: it does not come in nine years of ten")
    if not enough(found):
        return told
    early, typical, late = spread(found.days)
    days = SeasonMarker(where=station.where, early=early, typical=typical, late=late, single=False)
    if blank.sign == EMERGENCE:
        days = waited(days, usual_waits())
        # the record gives warm soil; the years beside the days are those of seedlings as well
        wait = datetime.timedelta(days=sum(usual_waits()) // 2)
        told = replace(told, years=tuple(day + wait for day in found.days))
    return replace(told, kind="daily", days=days, wanting="")


# A later day of these may hide behind a gap.
LAST_OF_ITS_KIND = frozenset({"last_freeze_days", "freeze_thaw_ends_days", "thawed_days"})


def _finder(sign: FoundBy) -> tuple[tuple[tuple[int, int], tuple[int, int]], Find]:
    """Return the part of the year a sign comes in, and what finds it there."""
    first = sign.values[0].value
    if sign.method == "first_freeze_days":
        return AUTUMN, first_freeze(first)
    run = values()["soil_held_days"].value
    finders: dict[str, Callable[[], Find]] = {
        "last_freeze_days": partial(last_freeze, first),
        "freeze_thaw_ends_days": lambda: freeze_thaw_end,
        "sum_reached_days": partial(warm_sum, first, values()["growth_base_f"].value),
        "held_days": partial(soil_held, first, int(run)),
        "thawed_days": lambda: thaw,
        "emergence_days": partial(emergence, first, int(run)),
    }
    return SPRING, finders[sign.method]()


@lru_cache(maxsize=_REMEMBERED)
def _years(sign: FoundBy, series: Series) -> Years:
    part, find = _finder(sign)
    is_last = sign.method in LAST_OF_ITS_KIND
    return years_of(windows(series, part), find, is_last=is_last)


def _normal(
    sign: FoundBy, short: MarkerFound, normals: tuple[Normals, ...], year: Window | None
) -> MarkerFound:
    """Return the sign of a year of normals: a typical day, whose spread nobody knows."""
    wanting = f"{BRING_RECORD}, or normals of the months"
    if year is None:
        return replace(short, wanting=short.wanting or wanting)
    typed = normals[0]
    at = _finder(sign)[1](year)
    if at is None:
        return replace(short, wanting="a sign of your own: normals never reach it")
    day = later((1, 1), at)
    if sign.id == EMERGENCE:
        day = later(day, sum(usual_waits()) // 2)
    days = SeasonMarker(where=typed.where, early=day, typical=day, late=day, single=True)
    return replace(short, kind="normals", days=days, rests_on=typed.source, wanting="")


def _year_of_normals(normals: tuple[Normals, ...]) -> Window:
    typed = normals[0]
    months = [
        (high.value + low.value) / 2 for high, low in zip(typed.highs_f, typed.lows_f, strict=True)
    ]
    return normal_year(lambda lengths: daily_from_months_f(months, lengths))


def _heat(series: Series) -> tuple[HeatOfYears, ...]:
    return heat_of_years(series, values()["heat_base_f"].value, values()["heat_top_f"].value)


def away(inventory: Inventory, station: Station | WindStation) -> Measured | None:
    """Return how far a station stands from the middle of the property; None where not known."""
    middle: LatLon | None = inventory.property.location_lat_lon
    if middle is None or station.at_lat_lon is None:
        return None
    method = methods()["distances_mi"]
    where: Where = station.where
    (miles,) = distances_mi(middle, [station.at_lat_lon])
    return Measured(
        "distances_mi", miles, "mi", method.words, 2, method.source, where.file, where.line, "place"
    )
