"""Weather of the place: stations with their files, published chances of freezes, normals."""

import datetime

from generator.dataclass import dataclass
from generator.inventory.fields import (
    Limits,
    Record,
    choice,
    day,
    identity,
    lat_lon,
    measure,
    month_day,
    reference,
    text,
    whole,
)
from generator.units import LatLon
from generator.working import Given

GHCN, SUMMARIES, PLAIN = "ghcn_by_station", "daily_summaries", "plain"
ISD_LITE = "isd_lite"
FAHRENHEIT, CELSIUS, TENTHS = "f_and_in", "c_and_mm", "tenths_of_c_and_mm"
LAST_IN_SPRING, FIRST_IN_AUTUMN = "last_in_spring", "first_in_autumn"
ON_EARTH_FT = Limits(at_least=-300, at_most=15000)
IN_THE_AIR_F = Limits(at_least=-100, at_most=140)
MONTHS_IN_YEAR = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class Station(Record):
    """A weather station with a record of days."""

    id: str = identity("id of the station")
    name: str = text("place", "name of the station", required=True)
    file: str = text("place", "its file, in the folder weather", required=True)
    kind: str = choice("place", "kind of file", GHCN, SUMMARIES, PLAIN, required=True)
    units: str | None = choice(
        "place", "units of the file, where its kind has no fixed ones", FAHRENHEIT, CELSIUS, TENTHS
    )
    at_lat_lon: LatLon | None = lat_lon("place", "where it stands")
    elevation_ft: Given | None = measure("place", "its height above the sea", "ft", ON_EARTH_FT)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class WindStation(Record):
    """A station with a record of the wind hour by hour."""

    id: str = identity("id of the station")
    name: str = text("place", "name of the station", required=True)
    file: str = text("place", "its file, in the folder weather", required=True)
    more_files: tuple[str, ...] = text(
        "place", "further files of it, such as one for each year", many=True
    )
    kind: str = choice("place", "kind of file", ISD_LITE, PLAIN, required=True)
    at_lat_lon: LatLon | None = lat_lon("place", "where it stands")
    elevation_ft: Given | None = measure("place", "its height above the sea", "ft", ON_EARTH_FT)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class FreezeDates(Record):
    """Published days of a freeze: over in one year in ten, in half, in nine of ten."""

    when: str = choice("page", "which freeze", LAST_IN_SPRING, FIRST_IN_AUTUMN, required=True)
    threshold_f: Given = measure(
        "page", "a freeze at or below", "f", Limits(at_least=10, at_most=40), required=True
    )
    early: tuple[int, int] = month_day("page", "in one year in ten by this day", required=True)
    typical: tuple[int, int] = month_day("page", "in half the years by this day", required=True)
    late: tuple[int, int] = month_day("page", "in nine years of ten by this day", required=True)
    source: str = text("place", "where it was looked up", required=True)
    looked_up_on: datetime.date | None = day("page", "looked up on")


@dataclass(frozen=True, slots=True, kw_only=True)
class Normals(Record):
    """Mean high and mean low of each month over many years, January first."""

    highs_f: tuple[Given, ...] = measure(
        "place", "mean high of each month, January first", "f", IN_THE_AIR_F,
        many=True, required=True,
    )  # fmt: skip
    lows_f: tuple[Given, ...] = measure(
        "place", "mean low of each month, January first", "f", IN_THE_AIR_F,
        many=True, required=True,
    )  # fmt: skip
    source: str = text("place", "where it was looked up", required=True)
    looked_up_on: datetime.date | None = day("page", "looked up on")


@dataclass(frozen=True, slots=True, kw_only=True)
class Emergence(Record):
    """What the owner has seen: days from warm soil to first seedlings, for a kind of grass."""

    species: str = reference("page", "species", "species", required=True)
    method: str = choice("page", "how it was sown", "frost_seed", "drill", required=True)
    fewest_days: int = whole(
        "page", "fewest days to first seedlings", Limits(at_least=0, at_most=120), required=True
    )
    most_days: int = whole(
        "page", "most days to first seedlings", Limits(at_least=0, at_most=120), required=True
    )


@dataclass(frozen=True, slots=True)
class DailyRecord:
    """Highs, lows and rain of a station from its first day to its last, None where missing.

    `flagged` values failed a quality check of the record's keeper and count as missing;
    `read_early` says that the station is read in the morning: a high is that of the day before.
    """

    station: str
    first: datetime.date
    high_f: tuple[float | None, ...]
    low_f: tuple[float | None, ...]
    rain_in: tuple[float | None, ...]
    flagged: int
    read_early: bool

    def __hash__(self) -> int:
        """Return a hash of what tells most records apart, without their thousands of days."""
        return hash((self.station, self.first, len(self.high_f)))

    @property
    def last(self) -> datetime.date:
        """The last day of the record."""
        return self.first + datetime.timedelta(days=len(self.high_f) - 1)

    @property
    def missing(self) -> int:
        """Days between the first and the last without a high or without a low."""
        pairs = zip(self.high_f, self.low_f, strict=True)
        return sum(high is None or low is None for high, low in pairs)


@dataclass(frozen=True, slots=True)
class HourlyWind:
    """Wind of a station, hour by hour: `hours` since 1970 in UTC, where it came from, how fast.

    `from_deg` is None in a calm, where it was not told, and where the wind turned about. `step_deg`
    is what directions are told to: each is anywhere within half of it on either side.
    """

    station: str
    hours: tuple[int, ...]
    from_deg: tuple[float | None, ...]
    speed_mph: tuple[float | None, ...]
    step_deg: float = 10.0

    @property
    def count(self) -> int:
        """Hours of which the record has a line."""
        return len(self.hours)

    @property
    def calm(self) -> int:
        """Hours without any wind."""
        return sum(one == 0 for one in self.speed_mph)

    @property
    def turning(self) -> int:
        """Hours of a wind that turned about, or whose direction nobody told."""
        both = zip(self.from_deg, self.speed_mph, strict=True)
        return sum(one is None and speed is not None and speed > 0 for one, speed in both)

    @property
    def missing(self) -> int:
        """Hours between the first and the last that have no speed."""
        told = sum(one is not None for one in self.speed_mph)
        return self.hours[-1] - self.hours[0] + 1 - told if self.hours else 0
