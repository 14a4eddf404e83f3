"""What a plan knows of its season signs: where each comes from, and what the weather is."""

import datetime
from collections.abc import Mapping
from dataclasses import field
from typing import Literal

from generator.dataclass import dataclass
from generator.inventory.fields import SeasonMarker
from generator.inventory.schema import SeasonMarkers
from generator.inventory.weather import (
    DailyRecord,
    FreezeDates,
    HourlyWind,
    Normals,
    Station,
    WindStation,
)
from generator.working import Measured, Reference

Kind = Literal["seen", "typed", "daily", "published", "normals", "open"]


@dataclass(frozen=True, slots=True)
class MarkerFound:
    """One sign and what it rests on, the most trusted of what there is.

    `rests_on` names the station, or says where it was looked up; `years` are its days, one a year;
    `left_out` years had too many days missing, and in `without` years it did not come. `method`
    names the record of how it was found, `settings` are its figures, `wanting` says what to bring
    where it is open.
    """

    sign: str
    name: str
    kind: Kind
    days: SeasonMarker | None
    rests_on: str = ""
    years: tuple[datetime.date, ...] = ()
    left_out: int = 0
    without: int = 0
    method: str = ""
    settings: tuple[Reference, ...] = ()
    wanting: str = ""


@dataclass(frozen=True, slots=True)
class SeenInSeason:
    """The days on which one sign was seen in one season: the first and the last, mostly one."""

    first: datetime.date
    last: datetime.date


@dataclass(frozen=True, slots=True)
class MarkerSeen:
    """What the owner saw of one sign, season by season; `days` are those of ten seasons or more."""

    sign: str
    name: str
    seasons: Mapping[int, SeenInSeason]
    days: SeasonMarker | None


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundMarkers(SeasonMarkers):
    """Season signs, typed and found, with what each rests on.

    `of_planting` is the emergence of what one planting sows, where that was found; `seen` are the
    seasons in which the owner saw a sign, by the sign: there it stands before all others.
    """

    found: Mapping[str, MarkerFound] = field(default_factory=dict)
    seen: Mapping[str, MarkerSeen] = field(default_factory=dict)
    of_planting: Mapping[str, SeasonMarker] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Series:
    """A whole record with the mean of every day and the soil, gaps filled."""

    record: DailyRecord
    mean_f: tuple[float, ...]
    soil_f: tuple[float, ...]

    def __hash__(self) -> int:
        """Return the hash of the record, which all else is made of."""
        return hash(self.record)


@dataclass(frozen=True, slots=True)
class StationSeen:
    """A station, its record, and how far it stands from the middle of the property."""

    station: Station
    series: Series
    away: Measured | None

    @property
    def record(self) -> DailyRecord:
        """The record of the station."""
        return self.series.record


@dataclass(frozen=True, slots=True)
class WindSeen:
    """A station of hourly wind, its record, and how far it stands from the property."""

    station: WindStation
    record: HourlyWind
    away: Measured | None


@dataclass(frozen=True, slots=True)
class Left:
    """Freeze-thaw days left from a day on: in one year in ten as few, typically, in one as many."""

    from_day: tuple[int, int]
    few: int
    typical: int
    many: int


@dataclass(frozen=True, slots=True)
class HeatOfYears:
    """Degree days of a year by one method: in a cool year, typically, in a warm one."""

    method: str
    cool_degree_days_f: float
    typical_degree_days_f: float
    warm_degree_days_f: float


@dataclass(frozen=True, slots=True)
class EmergenceSeen:
    """One grass of one planting: the soil it waits for, the days after, when it comes up.

    `waits` are fewest and most days, `is_own` where the owner has seen them; `days` is None where
    the soil is not known or the seed is not in the ground yet.
    """

    planting: str
    place: str
    species: str
    method: str
    soil: Reference
    waits: tuple[int, int]
    is_own: bool
    days: SeasonMarker | None


@dataclass(frozen=True, slots=True)
class WeatherSeen:
    """What is shown of the weather: stations, signs beside those jobs wait for, sums."""

    stations: tuple[StationSeen, ...]
    winds: tuple[WindSeen, ...]
    signs: tuple[MarkerFound, ...]
    others: tuple[MarkerFound, ...]
    left: tuple[Left, ...]
    heat: tuple[HeatOfYears, ...]
    emergence: tuple[EmergenceSeen, ...]
    freeze_dates: tuple[FreezeDates, ...] = ()
    normals: tuple[Normals, ...] = ()

    def every_station(self) -> tuple[StationSeen | WindSeen, ...]:
        """Return every station, those of days first."""
        return (*self.stations, *self.winds)
