"""What an entry of the log says of things looked at: heights, stands, soil, walks, drift."""

from generator.dataclass import dataclass
from generator.inventory.fields import (
    POSITIVE,
    Limits,
    Record,
    choice,
    measure,
    record,
    reference,
    text,
    yes_no,
)
from generator.working import Given

_AT_LEAST_NONE = Limits(at_least=0)


@dataclass(frozen=True, slots=True, kw_only=True)
class HeightReading(Record):
    """How tall a planting stood at a station or over a stretch; with neither, somewhere in it."""

    height_in: Given = measure("place", "how tall it stood there", "in", POSITIVE, required=True)
    at_ft: Given | None = measure(
        "place", "station it was measured at, along the strip", "ft", _AT_LEAST_NONE
    )
    from_ft: Given | None = measure(
        "place", "station where the stretch begins, along the strip", "ft", _AT_LEAST_NONE
    )
    to_ft: Given | None = measure("place", "station where the stretch ends", "ft", POSITIVE)


@dataclass(frozen=True, slots=True, kw_only=True)
class HeightsLogged(Record):
    """How tall a planting stood on the day: one height, or one for each of its stations."""

    planting: str = reference("place", "planting", "planting", required=True)
    height_in: Given | None = measure("place", "how tall it stood", "in", POSITIVE)
    at_ft: Given | None = measure(
        "place", "station it was measured at, along the strip", "ft", _AT_LEAST_NONE
    )
    stations: tuple[HeightReading, ...] = record(
        "place", "heights station by station, or stretch by stretch", HeightReading, many=True
    )

    @property
    def readings(self) -> tuple[HeightReading, ...]:
        """Every height of the day, one or many."""
        if self.height_in is None:
            return self.stations
        one = HeightReading(where=self.where, height_in=self.height_in, at_ft=self.at_ft)
        return (one, *self.stations)


@dataclass(frozen=True, slots=True, kw_only=True)
class Inspected(Record):
    """A look over stands, places or water holes."""

    what: tuple[str, ...] = reference(
        "place", "what was inspected, by id", "stand", "place", "water_hole",
        many=True, required=True,
    )  # fmt: skip
    found: str | None = text("place", "what was found")
    sound: bool | None = yes_no("place", "true where nothing has to be mended first")


@dataclass(frozen=True, slots=True, kw_only=True)
class SoilTested(Record):
    """A soil test that came back."""

    test: str = reference("place", "soil test", "soil_test", required=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class SightChecked(Record):
    """A walk looked at from where it should not be seen."""

    route: str = reference("place", "route that was walked", "route", required=True)
    seen_from: str = text("place", "where it was looked at from", required=True)
    hidden: bool | None = yes_no("place", "true where nobody walking it could be seen")


@dataclass(frozen=True, slots=True, kw_only=True)
class Harvested(Record):
    """Crops beside walks and screens that were cut: from that day they hide nobody."""

    crops: tuple[str, ...] = reference(
        "place", "crops that were cut", "crop", many=True, required=True
    )
    stubble_in: Given | None = measure("place", "how tall the stubble is after it", "in", POSITIVE)


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidDown(Record):
    """Screens that ice or wet snow laid down."""

    places: tuple[str, ...] = reference(
        "place", "screens that lie down", "place", many=True, required=True
    )
    by: str = choice("place", "what laid them down", "ice", "wet_snow", required=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class DriftChecked(Record):
    """A look at what grows around a place after it was sprayed."""

    place: str | None = reference("place", "place that had been sprayed", "place")
    found: str | None = text("place", "what was found")
    clean: bool | None = yes_no("place", "true where nothing outside was harmed")
