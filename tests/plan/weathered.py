"""Properties with weather: the small property, its signs untyped, and records from a seed."""

import copy
import datetime
from collections.abc import Callable, Iterable

from generator.plan.model.markers import MarkerFound, WeatherSeen
from generator.plan.model.plan import Plan
from tests.invented_weather import invented_days
from tests.plan.planned import planned
from tests.properties import Data, small_property

Day = tuple[datetime.date, float | None, float | None]
FIRST, LAST = datetime.date(1990, 1, 1), datetime.date(2014, 12, 31)
HIGHS = [31, 36, 48, 61, 72, 81, 86, 84, 76, 63, 48, 35]
LOWS = [13, 17, 28, 39, 50, 60, 64, 62, 52, 40, 29, 18]
NORMALS: Data = {"highs_f": HIGHS, "lows_f": LOWS, "source": "county pages"}
FREEZE: Data = {
    "when": "first_in_autumn",
    "threshold_f": 28,
    "early": "10-06",
    "typical": "10-19",
    "late": "11-01",
    "source": "county pages",
}
STATION: Data = {
    "id": "ridge",
    "name": "Ridge farm",
    "file": "weather/ridge.csv",
    "kind": "plain",
    "at_lat_lon": [41.03, -93.02],
}


def days(first: datetime.date = FIRST, last: datetime.date = LAST, seed: int = 5) -> list[Day]:
    """Days of the invented climate."""
    return [(day, high, low) for day, high, low, _ in invented_days(seed, first, last)]


def file_of(record: Iterable[Day]) -> str:
    """A plain weather file of these days."""

    def told(value: float | None) -> str:
        return "" if value is None else f"{value:g}"

    rows = [f"{day},{told(high)},{told(low)}" for day, high, low in record]
    return "\n".join(["date,tmax_f,tmin_f", *rows]) + "\n"


def weathered(record: Iterable[Day] | None, typed: Data | None = None, **more: list[Data]) -> Data:
    """The small property with a station of this record, and with these signs typed, no others."""
    data = small_property()
    data["property"]["season_signs"] = typed or {}
    data["property"]["location_lat_lon"] = [41.02, -93.01]
    data["weather"] = copy.deepcopy(more)
    if record is not None:
        data["weather"]["stations"] = [dict(STATION)]
        data["weather_files"] = {"ridge.csv": file_of(record)}
    return data


def weather_of(data: Data) -> WeatherSeen:
    """What the owner's plan of property data shows of the weather."""
    seen = planned(data).weather
    assert seen is not None
    return seen


def sign_of(data: Data, name: str) -> MarkerFound:
    """One sign in the owner's plan of property data."""
    seen = weather_of(data)
    return next(one for one in (*seen.signs, *seen.others) if one.sign == name)


def codes_on(plan: Plan, subject: str) -> set[str]:
    """The codes of the findings on a subject."""
    return {one.code for one in plan.findings_on(subject)}


def changed(record: Iterable[Day], change: Callable[[Day], Day]) -> list[Day]:
    """The record with every day changed."""
    return [change(one) for one in record]
