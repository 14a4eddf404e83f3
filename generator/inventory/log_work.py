"""What an entry of the log says of work: sprayed, sown, mowed, burned, cleaned out, watered."""

import datetime

from generator.dataclass import dataclass
from generator.inventory.fields import (
    POSITIVE,
    SHARE,
    Limits,
    Record,
    day,
    measure,
    reference,
    text,
    yes_no,
)
from generator.inventory.season import a_season
from generator.working import Given

TIME_WORDS = "time of day, like 07:40"
CALM_OR_MORE = Limits(at_least=0, at_most=100)
AROUND = Limits(at_least=0, at_most=360)
OUTDOORS_F = Limits(at_least=-60, at_most=130)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sprayed(Record):
    """How one spraying went: what a spray record asks for besides day, job and products.

    `place`, `location` and `treated_ac` are for a spraying that was no job of a step plan.
    """

    started_at: str | None = text("place", f"begun, {TIME_WORDS}")
    stopped_at: str | None = text("place", f"ended, {TIME_WORDS}")
    place: str | None = reference("place", "place it was, where it was no job", "place")
    location: str | None = text("place", "where it was, in words, where it was no place of yours")
    treated_ac: Given | None = measure(
        "place", "ground that was sprayed, where it was no job", "ac", POSITIVE
    )
    part: str | None = text("place", "part of the place, as you call it")
    site: str | None = text("place", "crop or site, in the words of the label")
    wind_mph: Given | None = measure("place", "wind", "mph", CALM_OR_MORE)
    wind_not_measured: bool | None = yes_no(
        "place", "true where nobody measured the wind: it is not made up later"
    )
    wind_from_deg: Given | None = measure(
        "place", "where the wind came from: 0 north, 90 east", "deg", AROUND
    )
    temperature_f: Given | None = measure("place", "temperature", "f", OUTDOORS_F)
    humidity_fraction: Given | None = measure("place", "relative humidity", "fraction", SHARE)
    sprayer: str | None = reference("place", "sprayer", "sprayer")
    same_load_as: str | None = reference(
        "place", "entry of the first place that was sprayed from this load", "entry"
    )
    own_sprayer: bool | None = yes_no("place", "false where it was none of your sprayers")
    nozzle: str | None = text("place", "nozzle")
    carrier_gal_per_ac: Given | None = measure("place", "spray on an acre", "gal_per_ac", POSITIVE)
    spray_gal: Given | None = measure("place", "spray mix put out", "gal", POSITIVE)
    weeds: str | None = text("place", "weeds it was against")
    weed_height_in: Given | None = measure("place", "how tall they were", "in", POSITIVE)
    growth_stage: str | None = text("place", "how far they were")
    applicator: str | None = reference("person", "who sprayed", "applicator")
    licence_number: str | None = text("person", "number of the license", numbered=True)
    lot_number: str | None = text("place", "lot number on the container", numbered=True)
    spot: bool | None = yes_no("place", "true where spots alone were sprayed")
    neighbour_told: bool | None = yes_no("place", "true where the neighbor was told before")
    copy_given_on: datetime.date | None = day(
        "place", "whoever sprayed for hire gave you the record on"
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Seeded(Record):
    """How a sowing went."""

    method: str | None = text("place", "how it was sown")
    spreader: str | None = reference("place", "spreader", "spreader")
    drill: str | None = reference("place", "drill", "drill")
    setting: str | None = text("place", "setting it stood at", numbered=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Mowed(Record):
    """How a mowing went."""

    cut_height_in: Given | None = measure("place", "left standing", "in", Limits(at_least=0))
    weeds_height_in: Given | None = measure("place", "weeds stood before", "in", POSITIVE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Burned(Record):
    """How a burn went."""

    permit: str | None = text("place", "permit it was burned under")
    part: str | None = text("place", "part of the place that burned, as you call it")
    wind_from_deg: Given | None = measure(
        "place", "where the wind came from: 0 north, 90 east", "deg", AROUND
    )
    wind_mph: Given | None = measure("place", "wind", "mph", CALM_OR_MORE)
    humidity_fraction: Given | None = measure("place", "relative humidity", "fraction", SHARE)
    ended_at: str | None = text("place", f"out and cold, {TIME_WORDS}")


@dataclass(frozen=True, slots=True, kw_only=True)
class CleanedOut(Record):
    """A sprayer cleaned out, so that its tank holds nothing of what it held before."""

    sprayer: str = reference("place", "sprayer", "sprayer", required=True)
    how: str | None = text("place", "how it was cleaned")
    after_last_load: bool | None = yes_no(
        "place", "true where it was done after the last load of that day"
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class UpkeepDone(Record):
    """A step of the upkeep of a stand, a walk or a water hole, done for the season."""

    at: str = reference(
        "place", "stand, walk or water hole it was done at", "stand", "route", "water_hole",
        required=True,
    )  # fmt: skip
    step: str = reference("place", "step of its maintenance", "step", required=True)
    season: int | None = a_season("place", "season it counts for, where it is not its day's")


@dataclass(frozen=True, slots=True, kw_only=True)
class NotDoing(Record):
    """A step that its owner decided not to do: of a planting, or of what is kept up."""

    planting: str | None = reference("place", "planting it belongs to", "planting")
    at: str | None = reference(
        "place", "stand, walk or water hole it belongs to", "stand", "route", "water_hole"
    )
    step: str = reference("place", "step that will not be done", "step", required=True)
    season: int | None = a_season("place", "season it is left out in, where it is not its day's")
    why: str = text("note", "why not, in words of your own", required=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterAdded(Record):
    """Water brought to a water hole."""

    water_hole: str = reference("place", "water hole", "water_hole", required=True)
    amount_gal: Given = measure("place", "how much", "gal", POSITIVE, required=True)
