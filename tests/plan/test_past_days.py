"""Days that suited work in past years: by hand, against pandas on real weather, and what moves."""

import datetime
import gzip
import io
from dataclasses import replace
from pathlib import Path

import pandas as pd
import pytest

from generator.compute.suited import (
    all_of_days,
    dry_before_days,
    rain_after_days,
    running_days,
    storm_after_days,
)
from generator.inventory.weather import DailyRecord, HourlyWind
from generator.plan.days.past_days import counted_at, counted_in, past_of, spans_left
from generator.plan.days.wind_days import wind_by_day
from generator.plan.model.days import Span
from generator.plan.model.suited_days import CountedDays
from generator.plan.readers.seen_by import seen_by
from generator.plan.season.marker_years import series_of
from generator.reference.library import values
from generator.reference.suited import suited
from tests.invented_weather import invented_days
from tests.plan.planned import KILL, inventory_of, job_of, planned
from tests.plan.weathered import FIRST, LAST, STATION, codes_on, file_of, weathered
from tests.properties import SEASON, Data, small_property

REAL = Path(__file__).resolve().parents[1] / "data" / "weather"
DAY = datetime.date
FROST_SEEDING = f"lane/{SEASON}/frost_seeding"
RESIDUAL = f"lane/{SEASON}/spring_residual"


def champion() -> pd.DataFrame:
    """Champion, Nebraska, 1982 to 2018, read by pandas, in degrees F and inches."""
    with gzip.open(REAL / "champion_daily.csv.gz", "rt", encoding="utf-8") as file:
        read = pd.read_csv(file, index_col="date", parse_dates=True)
    high, low = (read[name] * 9 / 5 + 32 for name in ("tmax_c", "tmin_c"))
    return pd.DataFrame({"high": high, "low": low, "rain": (read["precip_mm"] / 25.4).round(4)})


REAL_DAYS = champion()
SERIES = series_of(
    DailyRecord(
        "champion",
        DAY(1982, 1, 1),
        tuple(REAL_DAYS["high"]),
        tuple(REAL_DAYS["low"]),
        tuple(REAL_DAYS["rain"]),
        flagged=0,
        read_early=False,
    )
)


def of_years(suited_days: "pd.Series[bool]", first: str, last: str) -> dict[int, int]:
    """How many days of each year suited between two days of it, by pandas."""
    found = {}
    for year in range(1982, 2019):
        found[year] = int(suited_days.loc[f"{year}-{first}" : f"{year}-{last}"].sum())
    return found


def counted(name: str, *spans: Span) -> CountedDays:
    return counted_in(past_of(suited()[name], SERIES), spans)


@pytest.mark.parametrize(
    ("name", "first", "last"),
    [
        ("leaves", "09-10", "10-05"),
        ("leaves", "04-15", "05-10"),
        ("ground", "05-01", "06-05"),
        ("fire", "03-10", "04-10"),
        ("frost_seeding", "01-20", "03-10"),
    ],
)
def test_counts_of_a_real_record_are_those_of_pandas(name: str, first: str, last: str) -> None:
    high, low, rain = (REAL_DAYS[one] for one in ("high", "low", "rain"))
    before = rain.shift(1) + rain.shift(2)
    rules = {
        "leaves": (high >= 60) & (low.shift(-1) >= 40) & (rain <= 0.05),
        "ground": (rain <= 0.05) & (before.round(4) <= 0.5),
        "fire": (rain <= 0.05) & (before.round(4) <= 0.05),
        "frost_seeding": (low <= 28) & (high >= 32) & (rain <= 0.05),
    }
    expected = of_years(rules[name], first, last)
    span = (DAY.fromisoformat(f"2027-{first}"), DAY.fromisoformat(f"2027-{last}"))
    found = counted(name, span)
    assert {one.year: one.suited for one in found.years} == expected
    assert len(set(expected.values())) > 3
    assert found.left_out == 0
    # 37 years: the tenth part of 38 is the 3.8th of them in order, the half the 19th
    ordered = sorted(expected.values())
    assert found.least == int(ordered[2] + 0.8 * (ordered[3] - ordered[2]))
    assert found.typical == ordered[18]


def test_freezing_days_left_and_rain_of_a_real_record_are_those_of_pandas() -> None:
    rain = REAL_DAYS["rain"]
    freezing = (REAL_DAYS["low"] <= 28) & (REAL_DAYS["high"] >= 32)
    frost = counted("frost_seeding", (DAY(2027, 1, 20), DAY(2027, 3, 10)))
    assert {one.year: one.left_after for one in frost.years} == of_years(freezing, "03-11", "04-30")
    after = pd.concat([rain.shift(-day) for day in range(1, 15)], axis=1).sum(axis=1)
    came = (after.round(4) >= 0.5)[lambda all_days: all_days.index.month == 4]
    residual = counted("residual", (DAY(2027, 4, 1), DAY(2027, 4, 30)))
    assert residual.rain is not None
    assert residual.storm is not None
    assert (residual.rain.days, residual.rain.came) == (37 * 30, int(came.sum()))
    worst = pd.concat([rain.shift(-day) for day in range(1, 15)], axis=1).max(axis=1)
    storms = (worst >= 1.5)[lambda all_days: all_days.index.month == 4]
    assert residual.storm.came == int(storms.sum())
    assert 0 < residual.storm.came < residual.rain.came


def test_more_days_suit_a_longer_stretch_and_two_stretches_add_up() -> None:
    short = counted("leaves", (DAY(2026, 9, 10), DAY(2026, 9, 20)))
    later = counted("leaves", (DAY(2026, 9, 21), DAY(2026, 9, 30)))
    whole = counted("leaves", (DAY(2026, 9, 10), DAY(2026, 9, 30)))
    split = counted(
        "leaves", (DAY(2026, 9, 10), DAY(2026, 9, 20)), (DAY(2026, 9, 21), DAY(2026, 9, 30))
    )
    assert split.years == whole.years
    assert split.open_days == whole.open_days == 21
    for one, two, both in zip(short.years, later.years, whole.years, strict=True):
        assert one.suited + two.suited == both.suited


def test_a_stretch_over_the_new_year_is_named_by_its_first_day() -> None:
    over = counted("ground", (DAY(2026, 12, 20), DAY(2027, 1, 10)))
    assert [one.year for one in over.years] == list(range(1982, 2018))


def test_a_day_not_known_leaves_open_what_it_may_decide_and_no_more() -> None:
    rain = [0.0, None, 0.6, 0.0, 0.0]
    assert dry_before_days(rain, 1, 0.5) == [None, True, None, False, True]
    assert rain_after_days(rain, 2, 0.5) == [True, True, False, None, None]
    assert storm_after_days(rain, 2, 0.6) == [True, True, False, None, None]
    assert all_of_days([[None, None, True], [False, True, True]]) == [False, None, True]
    assert running_days([True, None, False, None], None) == [0, 0, 1, 1, 2]


def test_a_year_with_too_many_gaps_is_left_out() -> None:
    record = SERIES.record
    at = (DAY(2000, 9, 12) - record.first).days
    high = [None if at <= n < at + 3 else one for n, one in enumerate(record.high_f)]
    gapped = series_of(replace(record, high_f=tuple(high)))
    span = (DAY(2026, 9, 10), DAY(2026, 9, 30))
    past = past_of(suited()["leaves"], gapped)
    # 3 of 21 days are more than a tenth, 2 are not
    assert counted_in(past, (span,)).left_out == 1
    assert 2000 not in {one.year for one in counted_in(past, (span,)).years}
    longer = (DAY(2026, 9, 1), DAY(2026, 9, 30))
    assert counted_in(past, (longer,)).left_out == 0


def rained(factor: float = 1.0, least_in: float = 0.0) -> Data:
    """The small property with a record that has rain: a multiple of the invented, or more."""
    data = weathered([])
    rows = ["date,tmax_f,tmin_f,precip_in"]
    for day, high, low, rain in invented_days(5, FIRST, LAST):
        rows.append(f"{day},{high},{low},{max(rain * factor, least_in):.2f}")
    data["weather"]["stations"] = [dict(STATION)]
    data["weather_files"] = {"ridge.csv": "\n".join(rows) + "\n"}
    return data


def test_every_job_ahead_with_days_that_matter_is_counted_and_no_other() -> None:
    plan = planned(rained())
    assert plan.weather is not None
    wanted = {
        job.id for job in plan.jobs if job.step.suits is not None and spans_left(job, plan.as_of)
    }
    assert set(plan.suited_days) == wanted
    assert {KILL, FROST_SEEDING} <= wanted
    assert {job.step.operation for job in plan.jobs if job.id not in wanted} >= {"look"}
    for job_id, found in plan.suited_days.items():
        assert found.least is not None
        assert found.typical is not None
        assert 0 <= found.least <= found.typical <= found.open_days, job_id


def test_more_rain_never_gives_more_days() -> None:
    few, many = planned(rained(factor=0.5)).suited_days, planned(rained(factor=3)).suited_days
    assert few.keys() == many.keys()
    for job_id, found in few.items():
        dry = [one.suited for one in found.years]
        wet = [one.suited for one in many[job_id].years]
        assert all(one >= other for one, other in zip(dry, wet, strict=True)), job_id
    assert sum(one.typical or 0 for one in few.values()) > sum(
        one.typical or 0 for one in many.values()
    )


def test_days_that_dates_take_are_not_counted() -> None:
    data = rained()
    free = planned(data).suited_days[KILL]
    data["dates"] = {
        "dates": [{"id": "q", "kind": "quiet", "places": "all", "first": "2026-09-15",
                   "last": "2026-09-24"}]
    }  # fmt: skip
    held = planned(data).suited_days[KILL]
    assert free.open_days - held.open_days == 10
    assert len(held.spans) == 2
    assert sum(one.suited for one in held.years) < sum(one.suited for one in free.years)


def test_without_a_record_or_rain_nothing_is_promised() -> None:
    assert planned(small_property()).suited_days == {}
    data = weathered([(day, high, low) for day, high, low, _ in invented_days(5, FIRST, LAST)])
    found = planned(data).suited_days[KILL]
    assert (found.years, found.least, found.typical) == ((), None, None)
    assert found.left_out == 25


def test_four_years_of_new_york_are_counted_as_pandas_does_and_are_too_few_to_count_on() -> None:
    with gzip.open(REAL / "new_york_daily.csv.gz", "rt", encoding="utf-8") as file:
        text = file.read()
    data = weathered([], {"freeze_thaw_ends": "03-20"})
    data["weather"]["stations"] = [dict(STATION)]
    data["weather_files"] = {"ridge.csv": text}
    found = planned(data).suited_days[FROST_SEEDING]
    read = pd.read_csv(io.StringIO(text), index_col="date", parse_dates=True)
    # 28 F is -2.22 C, 0.05 in are 1.27 mm
    suits = (read["tmin_c"] <= -2.2) & (read["tmax_c"] >= 0) & (read["precip_mm"] <= 1.27)
    ((first, last),) = found.spans
    expected = {
        year: int(suits.loc[f"{year}-{first:%m-%d}" : f"{year}-{last:%m-%d}"].sum())
        for year in range(2012, 2016)
    }
    assert {one.year: one.suited for one in found.years} == expected
    assert len(set(expected.values())) > 1
    assert (found.least, found.typical) == (None, None)


def test_days_are_counted_at_the_first_station_that_has_rain() -> None:
    data = rained()
    dry = dict(STATION) | {"id": "hill", "name": "Hill farm", "file": "weather/hill.csv"}
    days = [(day, high, low) for day, high, low, _ in invented_days(6, FIRST, LAST)]
    data["weather"]["stations"].insert(0, dry)
    data["weather_files"]["hill.csv"] = file_of(days)
    plan = planned(data)
    assert plan.weather is not None
    station = counted_at(plan.weather.stations)
    assert station is not None
    assert station.station.id == "ridge"
    assert plan.suited_days[KILL].least is not None


def test_few_days_are_a_caution_with_what_to_do_instead() -> None:
    always = planned(rained(least_in=0.5))
    assert "C360" in codes_on(always, KILL)
    (said,) = [one for one in always.findings_on(KILL) if one.code == "C360"]
    assert job_of(always, KILL).step.if_missed in said.cure
    assert not {"C360", "C361"} & codes_on(planned(rained(factor=0)), FROST_SEEDING)
    some = planned(rained(factor=3))
    for job_id, found in some.suited_days.items():
        expected = {"C360"} if found.typical == 0 else {"C361"} if found.least == 0 else set()
        assert codes_on(some, job_id) & {"C360", "C361"} == expected, job_id


def test_what_is_counted_is_the_owner_s_alone() -> None:
    data = rained(least_in=0.5)
    seen = seen_by(planned(data), inventory_of(data).readers[0])
    assert seen.jobs
    assert (seen.suited_days, seen.wind_use) == ({}, {})
    assert not {"C360", "C361"} & {one.code for one in seen.findings}


def hour(day: DAY, at: int) -> int:
    return (day - DAY(1970, 1, 1)).days * 24 + at


def windy(speeds: dict[int, float | None], lon_deg: float = 0) -> HourlyWind:
    """One day whose wind is 5 mph in every hour by the sun at a longitude but for some."""
    shift = round(lon_deg / 15)
    told = {at: speeds.get(at, 5.0) for at in range(24)}
    return HourlyWind(
        "field",
        tuple(hour(DAY(2025, 10, 1), at - shift) for at in told),
        (None,) * len(told),
        tuple(told.values()),
    )


def test_the_hours_of_a_day_are_those_by_the_sun_where_the_station_stands() -> None:
    night: dict[int, float | None] = dict.fromkeys([*range(8), *range(18, 24)], 99.0)
    for lon_deg in (0.0, -93.1, 152.0):
        found = wind_by_day(windy(night, lon_deg), lon_deg)
        assert found[DAY(2025, 10, 1)] == (5.0,) * 10
    assert wind_by_day(windy({8: None, 9: None}), 0)[DAY(2025, 10, 1)].count(None) == 2
    assert wind_by_day(windy({8: None, 9: None, 10: None}), 0) == {}


def hours_of(record: "list[tuple[int, float]]") -> str:
    """ISD-Lite lines of hours since 1970 and speeds in m/s."""
    lines = []
    for at, speed in record:
        time = datetime.datetime(1970, 1, 1) + datetime.timedelta(hours=at)
        blanks = " ".join(["-9999"] * 3)
        lines.append(f"{time:%Y %m %d %H} {blanks} 200 {round(speed * 10)} {blanks}")
    return "\n".join(lines) + "\n"


def test_wind_of_a_label_is_counted_by_hand() -> None:
    # The label of the small property says 3 to 9 mph, that is 1.3 to 4.0 m/s. The kill is open
    # from 10 to Sep 27; of the record's days there two are calm, one is stormy.
    calm, stormy = {DAY(2025, 9, 12), DAY(2025, 9, 13)}, {DAY(2025, 9, 20)}
    record = []
    for number in range(40):
        day = DAY(2025, 9, 1) + datetime.timedelta(days=number)
        speed = 0.0 if day in calm else 9.0 if day in stormy else 3.0
        record += [(hour(day, at) + 6, speed) for at in range(24)]
    data = rained()
    use = data["products"]["products"][0]["label"]["uses"][0]["wind_mph"]
    assert (use["low_mph"], use["high_mph"]) == (3, 9)
    data["weather"]["wind_stations"] = [
        {"id": "field", "name": "Field", "file": "weather/w.txt", "kind": "isd_lite",
         "at_lat_lon": [41.0, -93.0]}
    ]  # fmt: skip
    data["weather_files"]["w.txt"] = hours_of(record)
    data["property"]["season_signs"] = {"first_hard_freeze": "10-04"}
    found = planned(data).wind_use[KILL]
    assert (found.days, found.in_range) == (18, 15)
    # the daily record ends in 2014: on no day is both known
    assert (found.also_known, found.both) == (0, 0)
    assert RESIDUAL not in planned(data).wind_use


def test_every_figure_is_among_the_values_with_a_source() -> None:
    for one in suited().values():
        assert one.figures
        for figure in one.figures:
            assert values()[figure.name] is figure
            assert "{" + figure.name + "}" in one.words
