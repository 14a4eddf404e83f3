"""First stage: the property as its files say it, with what the log and the weather add."""

import datetime
from collections.abc import Mapping

from generator.dataclass import dataclass
from generator.inventory.log import LogEntry
from generator.inventory.problems import listed
from generator.inventory.schema import Inventory
from generator.plan.after.records import correction_findings, record_findings, spray_records
from generator.plan.findings.about_places import PlaceNote
from generator.plan.findings.order import finding
from generator.plan.jobs.ground import ground_findings, place_on_its_ground
from generator.plan.jobs.lane_mowing import lane_findings
from generator.plan.labels.clearance import card_gaps
from generator.plan.labels.distances import distance_notes
from generator.plan.log.entries import entries_in_force
from generator.plan.log.inspections import with_logged_days
from generator.plan.log.told import Sprayings, sprayings_of
from generator.plan.model.finding import WHOLE_FOLDER, Finding, Subject
from generator.plan.model.markers import WeatherSeen
from generator.plan.model.place import Place, SharedGround, Water
from generator.plan.model.spray_record import SprayRecord
from generator.plan.placed.beside_walks import walked_findings
from generator.plan.placed.misplaced import misplaced_findings
from generator.plan.placed.mixing import mixing_findings
from generator.plan.placed.same_ground import (
    overlap_findings,
    overlaps_of,
    same_ground,
    shared_grounds,
)
from generator.plan.placed.slopes import with_slopes
from generator.plan.placed.strips import strip_findings
from generator.plan.season.season_markers import with_markers
from generator.plan.season.seen_signs import with_seen
from generator.plan.season.weather_findings import weather_findings
from generator.plan.spraying.tank_log import with_logged_loads
from generator.plan.standing.upkeep_findings import upkeep_findings
from generator.plan.standing.water import water_findings, waters
from generator.plan.usual.far_points import far_findings
from generator.plan.usual.usual_heights import height_findings
from generator.plan.usual.usual_machines import tests_to_come
from generator.plan.winds.wind_findings import wind_findings
from generator.reference.library import marker_names
from generator.working import Quantity


@dataclass(frozen=True, slots=True)
class Logged:
    """What is there before any job: ground, log, weather, water, and what is said of them.

    `inventory` has the season markers that weather gave and the loads and inspections of the log.
    `grounds` are the places on whose ground each place lies, by its id.
    """

    inventory: Inventory
    season: int
    as_of: datetime.date
    weather: WeatherSeen | None
    places: Mapping[str, Place]
    shared: tuple[SharedGround, ...]
    grounds: Mapping[str, frozenset[str]]
    told: Sprayings
    entries: tuple[LogEntry, ...]
    records: tuple[SprayRecord, ...]
    water: tuple[Water, ...]
    findings: tuple[Finding, ...]

    @property
    def areas(self) -> dict[str, Quantity]:
        """The area of each place, by its id."""
        return {name: place.area for name, place in self.places.items()}


def typed_and_logged(typed: Inventory, season: int, as_of: datetime.date) -> Logged:
    """Return what the files of a property, its log and its weather say for a season."""
    marked, weather = with_markers(with_slopes(typed))
    places = {place.id: place_on_its_ground(place, season) for place in marked.places()}
    overlaps = overlaps_of(marked.places(), marked.property.location_lat_lon)
    shared = shared_grounds(marked.places(), overlaps)
    told = sprayings_of(marked)
    entries = entries_in_force(marked.entries, as_of, told)
    # before any job is planned: a load in the log may have changed what a tank held
    seen = with_seen(marked, entries)
    inventory = with_logged_days(with_logged_loads(seen, entries, told), entries)
    water = waters(inventory.water_holes, season)
    records = spray_records(inventory, entries, {name: at.area for name, at in places.items()})
    return Logged(
        inventory=inventory,
        season=season,
        as_of=as_of,
        weather=weather,
        places=places,
        shared=shared,
        grounds=same_ground(marked.places(), shared),
        told=told,
        entries=entries,
        records=records,
        water=water,
        findings=(
            # what is asked of typed signs goes by what was typed, not by what the weather gave
            *_marker_findings(typed),
            *(weather_findings(weather, marked) if weather is not None else ()),
            *(found for place in places.values() for found in ground_findings(place)),
            *overlap_findings(overlaps, shared),
            *misplaced_findings(marked),
            *mixing_findings(marked),
            *walked_findings(marked),
            *strip_findings(marked.places(), marked.property.location_lat_lon),
            *(found for hole in water for found in water_findings(hole)),
            *tests_to_come(inventory, as_of),
            *height_findings(inventory, entries),
            *far_findings(inventory),
            *record_findings(records, as_of),
            *correction_findings(inventory.entries, told, as_of),
            *upkeep_findings(inventory, entries, as_of),
            *wind_findings(inventory.stands),
            *lane_findings(inventory.routes, inventory.machines),
            *_passed_over(inventory.passed_over),
            *card_gaps(inventory.products),
            *distance_notes(inventory.products),
        ),
    )


def _passed_over(passed_over: tuple[str, ...]) -> list[Finding]:
    """Return one note on all that lies in the property folder and is read by nobody."""
    names = listed(passed_over, "and")
    return [finding(PlaceNote.PASSED_OVER, WHOLE_FOLDER, names=names)] if names else []


def _marker_findings(inventory: Inventory) -> list[Finding]:
    markers = inventory.property.season_signs
    found = []
    for name, words in marker_names().items():
        marker = getattr(markers, name) if markers is not None else None
        if marker is not None and marker.single:
            found.append(
                finding(
                    PlaceNote.SINGLE_DAY_SIGN, Subject("marker", name), marker.where, sign=words
                )
            )
    return found
