"""Rules on plant counts and on weeds seen."""

import datetime
from collections.abc import Iterator

from generator.inventory.counted import CELLS_OF_A_PLACEMENT, Counted
from generator.inventory.log import LogEntry
from generator.inventory.log_seen import HeightReading, HeightsLogged
from generator.inventory.places import PlantedGround, Planting
from generator.inventory.problems import shown_value
from generator.inventory.rule import Broken, Rule, typed_at
from generator.inventory.schema import Inventory
from generator.inventory.season import FIRST_MONTH_OF_A_SEASON
from generator.working import Given

ONE_OR_STATIONS = "height_in, or stations with a height each"
FRAME_OR_ROW = (
    "placements_count with cells_with_plant_count, or mean_plants_per_row_ft with row_spacing_in"
)


def _counts(inventory: Inventory) -> Iterator[tuple[LogEntry, Counted, PlantedGround, Planting]]:
    grown = {
        planting.id: (place, planting)
        for place in inventory.places()
        for planting in place.plantings
    }
    for entry in inventory.entries:
        if entry.counted is not None:
            place, planting = grown[entry.counted.planting]
            yield entry, entry.counted, place, planting


def _cells(inventory: Inventory) -> Iterator[Broken]:
    for _, counted, _, _ in _counts(inventory):
        placed, cells = counted.placements_count, counted.cells_count
        with_plant = counted.cells_with_plant_count
        typed = (number for number in (placed, cells, with_plant) if number is not None)
        part = next((number for number in typed if number.value % 1), None)
        if part is not None:
            yield Broken(typed_at(part), f"{part.typed:g} is a part of one", "a whole number")
        elif placed is not None and with_plant is not None:
            yield from _too_many(placed, cells, with_plant)


def _too_many(placed: Given, cells: Given | None, with_plant: Given) -> Iterator[Broken]:
    most = placed.value * CELLS_OF_A_PLACEMENT
    if cells is not None and cells.value > most:
        what = f"{cells.typed:g} cells were looked at in {placed.typed:g} placements"
        yield Broken(typed_at(cells), what, f"at most {CELLS_OF_A_PLACEMENT} cells a placement")
    elif with_plant.value > (cells.value if cells is not None else most):
        looked_at = cells.value if cells is not None else most
        what = f"{with_plant.typed:g} cells have a plant and {looked_at:g} were looked at"
        yield Broken(typed_at(with_plant), what, "no more than were looked at")


def _stations(inventory: Inventory) -> Iterator[Broken]:
    for _, counted, place, _ in _counts(inventory):
        yield from _stretch(counted, place)
    for measured, place in _measurings(inventory):
        for reading in measured.readings:
            yield from _stretch(reading, place)
            if reading.at_ft is not None and _lies_beyond(reading.at_ft, place.length_ft):
                yield _beyond(reading.at_ft, place)


def _measurings(inventory: Inventory) -> Iterator[tuple[HeightsLogged, PlantedGround]]:
    grown = {planting.id: place for place in inventory.places() for planting in place.plantings}
    for entry in inventory.entries:
        if entry.measured is not None:
            yield entry.measured, grown[entry.measured.planting]


def _stretch(measured: Counted | HeightReading, place: PlantedGround) -> Iterator[Broken]:
    start, end = measured.from_ft, measured.to_ft
    if (start is None) != (end is None):
        what = "a stretch with one station"
        where = measured.where_of("from_ft", "to_ft")
        yield Broken(where, what, "from_ft and to_ft, or neither for the whole place")
    elif start is not None and end is not None and start.value >= end.value:
        what = f"the stretch runs from {start.typed:g} to {end.typed:g}"
        yield Broken(typed_at(end), what, "a to_ft beyond from_ft")
    elif end is not None and _lies_beyond(end, place.length_ft):
        yield _beyond(end, place)


def _beyond(station: Given, place: PlantedGround) -> Broken:
    what = f"station {station.typed:g} lies beyond the end of {shown_value(place.id)}"
    return Broken(typed_at(station), what, "a station within the measured length")


def _measured_once(inventory: Inventory) -> Iterator[Broken]:
    for measured, _ in _measurings(inventory):
        if (measured.height_in is None) == (not measured.stations):
            what = "no height" if measured.height_in is None else "one height and heights besides"
            yield Broken(measured.where, what, ONE_OR_STATIONS)
        elif measured.height_in is None and measured.at_ft is not None:
            what = "at_ft: stands beside stations, which say it each"
            yield Broken(typed_at(measured.at_ft), what, ONE_OR_STATIONS)
        for reading in measured.stations:
            if reading.at_ft is not None and reading.to_ft is not None:
                what = "a station and a stretch for one height"
                yield Broken(reading.where, what, "at_ft, or from_ft and to_ft")


def _lies_beyond(station: Given, length: Given | None) -> bool:
    # where no length was measured nothing is known to lie beyond it
    return length is not None and station.value > length.value


def _frame_or_row(inventory: Inventory) -> Iterator[Broken]:
    for _, counted, _, _ in _counts(inventory):
        frame = (counted.placements_count, counted.cells_with_plant_count)
        row = (counted.mean_plants_per_row_ft, counted.row_spacing_in)
        by_frame = any(figure is not None for figure in (*frame, counted.cells_count))
        by_row = any(figure is not None for figure in row)
        if by_frame == by_row or None in (frame if by_frame else row):
            what = (
                "a count of both kinds or half of one" if by_frame or by_row else "an empty count"
            )
            yield Broken(counted.where, what, FRAME_OR_ROW)


def _weeds_somewhere(inventory: Inventory) -> Iterator[Broken]:
    for entry in inventory.entries:
        named = entry.counted is not None or entry.job is not None
        for seen in entry.weeds_seen:
            if seen.planting is None and not named:
                what = f"{shown_value(seen.weed)} was seen nowhere"
                accepted = "planting: of the weed, or counted: or job: of the entry"
                yield Broken(seen.where_of("weed"), what, accepted)


def _of_what_is_sown(inventory: Inventory) -> Iterator[Broken]:
    for entry, counted, _, planting in _counts(inventory):
        # a season begins in the fall before the spring it is named by
        begins = datetime.date(planting.season - 1, FIRST_MONTH_OF_A_SEASON, 1)
        if not planting.seed:
            how = "planted in rows" if planting.woody else "what stood there before"
            what = f"{shown_value(planting.id)} is {how}, not sown"
            yield Broken(counted.where_of("planting"), what, "a planting that is sown")
        elif entry.done_on < begins:
            what = f"{shown_value(planting.id)} was counted on {entry.done_on}, before its season"
            yield Broken(counted.where_of("planting"), what, f"a day from {begins} on")


DECIDE_RULES = (
    Rule("F400", "Cells with a plant are among the cells looked at.", _cells),
    Rule("F401", "A stretch runs forward and within its place.", _stations),
    Rule("F402", "A count is by the frame or by the row.", _frame_or_row),
    Rule("F403", "A weed is seen in a planting.", _weeds_somewhere, alone=True),
    Rule("F404", "What is counted was sown before.", _of_what_is_sown),
)
HEIGHT_RULES = (Rule("F452", "A height is one alone, or one of its station.", _measured_once),)
