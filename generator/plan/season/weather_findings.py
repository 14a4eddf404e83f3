"""What to look at in the weather that signs rest on: stations far off, few years, normals."""

from generator.inventory.schema import Inventory
from generator.plan.findings.about_days import DayCaution, DayNote
from generator.plan.findings.order import finding
from generator.plan.model.finding import Finding, Subject
from generator.plan.model.markers import MarkerFound, StationSeen, WeatherSeen, WindSeen
from generator.reference.library import values
from generator.working import Figure


def weather_findings(weather: WeatherSeen, inventory: Inventory) -> list[Finding]:
    """Return the findings on stations, and on signs that rest on little."""
    found = [caution for seen in weather.every_station() for caution in _far(seen, inventory)]
    for seen in weather.stations:
        if seen.record.read_early:
            where, name = seen.station.where, seen.station.name
            found.append(
                finding(
                    DayNote.STATION_READ_EARLY,
                    Subject("station", seen.station.id),
                    where,
                    station=name,
                )
            )
    for sign in weather.signs:
        found += _on_little(sign)
    return found


def _far(seen: StationSeen | WindSeen, inventory: Inventory) -> list[Finding]:
    """Return the caution of a station too far away, too high or too low."""
    how: list[str] = []
    figures: list[tuple[str, Figure]] = []
    furthest = values()["station_away_mi"]
    if seen.away is not None and seen.away.value > furthest.value:
        how.append("far away")
        figures += [("Away", seen.away), ("A station speaks for a place as far as", furthest)]
    here, there = inventory.property.elevation_ft, seen.station.elevation_ft
    highest = values()["station_height_ft"]
    if here is not None and there is not None and abs(here.value - there.value) > highest.value:
        how.append("much higher" if there.value > here.value else "much lower")
        figures += [("The property", here), ("The station", there), ("At most apart", highest)]
    if not how:
        return []
    return [
        finding(
            DayCaution.STATION_FAR,
            Subject("station", seen.station.id),
            seen.station.where,
            tuple(figures),
            station=seen.station.name,
            how=" and ".join(how),
        )
    ]


def _on_little(sign: MarkerFound) -> list[Finding]:
    subject = Subject("marker", sign.sign)
    if sign.days is None:
        return []
    if sign.kind == "normals":
        return [finding(DayCaution.SIGN_FROM_NORMALS, subject, sign.days.where, sign=sign.name)]
    if sign.kind == "daily" and len(sign.years) < values()["enough_years"].value:
        count = str(len(sign.years))
        return [
            finding(
                DayNote.FEW_YEARS_OF_WEATHER, subject, sign.days.where, sign=sign.name, count=count
            )
        ]
    return []
