"""Weather files: every kind says the same of a day, flags and gaps count, faults have a line."""

import datetime
import gzip
import shutil
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.inventory.fields import Where
from generator.inventory.problems import Problem
from generator.inventory.weather import DailyRecord, HourlyWind, Station, WindStation
from generator.inventory.weather_days import read_days
from generator.inventory.weather_wind import EPOCH, read_wind

REAL = Path(__file__).resolve().parents[1] / "data" / "weather"
WHERE = Where("weather.yaml", 2, 5)


def read(
    folder: Path, text: str | bytes, kind: str = "plain", units: str | None = None
) -> tuple[DailyRecord | None, list[Problem]]:
    """What a file of this text gives."""
    (folder / "weather").mkdir(exist_ok=True)
    content = text.encode() if isinstance(text, str) else text
    (folder / "weather" / "ridge.csv").write_bytes(content)
    station = Station(
        where=WHERE, id="ridge", name="Ridge", file="weather/ridge.csv", kind=kind, units=units
    )
    return read_days(folder, station)


def record_of(
    folder: Path, text: str | bytes, kind: str = "plain", units: str | None = None
) -> DailyRecord:
    record, problems = read(folder, text, kind, units)
    assert problems == []
    assert record is not None
    return record


GHCN = """US1,20260101,TMAX,44,,,7,0700
US1,20260101,TMIN,-22,,,7,0700
US1,20260101,PRCP,254,,,7,0700
US1,20260103,TMAX,100,,,7,0700
US1,20260103,TMIN,0,,,7,0700
US1,20260103,SNWD,25,,,7,
"""
SUMMARIES = """STATION,NAME,DATE,PRCP,PRCP_ATTRIBUTES,TMAX,TMAX_ATTRIBUTES,TMIN,TMIN_ATTRIBUTES
"US1","RIDGE FARM, XX US","2026-01-01","25.4",",,7,0700","4.4",",,7","-2.2",",,7"
"US1","RIDGE FARM, XX US","2026-01-03","",",,","10.0",",,7","0.0",",,7"
"""
PLAIN_F = """# typed by hand
date,tmax_f,tmin_f,precip_in
2026-01-01,39.9,28,1
2026-01-03,50,32,
"""
PLAIN_C = """date,tmin_c,tmax_c,precip_mm
2026-01-01,-2.2,4.4,25.4
2026-01-03,0,10,
"""


@pytest.mark.parametrize(
    ("text", "kind", "units"),
    [
        (GHCN, "ghcn_by_station", None),
        (
            "ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\n" + GHCN,
            "ghcn_by_station",
            None,
        ),
        (SUMMARIES, "daily_summaries", "c_and_mm"),
        (PLAIN_F, "plain", None),
        (PLAIN_C, "plain", None),
        (PLAIN_C.replace("\n", "\r\n"), "plain", None),
        ("\ufeff" + PLAIN_C, "plain", None),
    ],
)
def test_every_kind_says_the_same_of_the_same_days(
    text: str, kind: str, units: str | None, tmp_path: Path
) -> None:
    for content in (text.encode(), gzip.compress(text.encode(), mtime=0)):
        record = record_of(tmp_path, content, kind, units)
        assert record.first == datetime.date(2026, 1, 1)
        assert record.last == datetime.date(2026, 1, 3)
        assert record.high_f == (39.9, None, 50.0)
        # 28 F on the thermometer is -2.2 C in the record, and 28 F again
        assert record.low_f == (28.0, None, 32.0)
        assert record.rain_in == (1.0, None, None)
        assert (record.missing, record.flagged) == (1, 0)


def test_tenths_of_a_degree_are_known_by_their_size(tmp_path: Path) -> None:
    text = "STATION,DATE,TMAX,TMIN\nUS1,2026-07-01,311,200\nUS1,2026-07-02,300,189\n"
    record = record_of(tmp_path, text, "daily_summaries")
    assert record.high_f == (88.0, 86.0)


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        (GHCN.replace("TMIN,-22,,,", "TMIN,-722,,I,"), "ghcn_by_station"),
        (SUMMARIES.replace('"-2.2",",,7"', '"-72.2",",I,7"'), "daily_summaries"),
    ],
)
def test_what_a_quality_check_set_aside_is_missing(text: str, kind: str, tmp_path: Path) -> None:
    record = record_of(tmp_path, text, kind, "c_and_mm" if kind == "daily_summaries" else None)
    assert record.low_f[0] is None
    assert (record.flagged, record.missing) == (1, 2)


@pytest.mark.parametrize("missing", ["", "-9999", "9999"])
def test_what_is_left_empty_is_missing(missing: str, tmp_path: Path) -> None:
    record = record_of(tmp_path, PLAIN_F.replace("39.9,28", f"39.9,{missing}"))
    assert record.low_f[0] is None
    assert record.missing == 2


def test_a_station_read_in_the_morning_is_told(tmp_path: Path) -> None:
    assert record_of(tmp_path, GHCN, "ghcn_by_station").read_early
    assert not record_of(tmp_path, GHCN.replace("0700", "1700"), "ghcn_by_station").read_early


def test_a_file_that_is_wrong_throughout_gives_ten_faults(tmp_path: Path) -> None:
    rows = "".join(f"2026-01-{n:02},x,1\n" for n in range(1, 32))
    record, problems = read(tmp_path, "date,tmax_f,tmin_f\n" + rows)
    assert record is None
    assert [one.line for one in problems] == list(range(2, 12))
    assert all(one.file == "weather/ridge.csv" for one in problems)


@given(st.binary(max_size=200))
def test_no_bytes_bring_the_reader_down(
    tmp_path_factory: pytest.TempPathFactory, noise: bytes
) -> None:
    folder = tmp_path_factory.mktemp("noise")
    try:
        for kind in ("plain", "ghcn_by_station", "daily_summaries"):
            for content in (noise, PLAIN_F.encode() + noise, GHCN.encode() + noise):
                record, problems = read(folder, content, kind)
                assert (record is None) == bool(problems)
                assert all(one.line >= 1 for one in problems)
    finally:
        shutil.rmtree(folder)


def test_the_real_record_of_champion_has_every_day(tmp_path: Path) -> None:
    """aquacrop 3.1.0, champion_climate.txt: 13,514 days without a gap (tests/data/weather)."""
    record = record_of(tmp_path, (REAL / "champion_daily.csv.gz").read_bytes())
    assert (record.first, record.last) == (datetime.date(1982, 1, 1), datetime.date(2018, 12, 31))
    assert (len(record.high_f), record.missing) == (13514, 0)


def wind_of(folder: Path, content: bytes) -> tuple[HourlyWind | None, list[Problem]]:
    (folder / "weather").mkdir(exist_ok=True)
    (folder / "weather" / "wind.gz").write_bytes(content)
    station = WindStation(
        where=WHERE, id="field", name="Airfield", file="weather/wind.gz", kind="isd_lite"
    )
    return read_wind(folder, station)


def hour(text: str) -> str:
    """One line of hourly weather with this direction and speed."""
    return f"2026 10 01 {text}     4 -9999 -9999\n"


def test_calm_turning_and_missing_wind_are_three_things(tmp_path: Path) -> None:
    lines = [
        hour("00   -44   -83 10256   270    45"),
        hour("01   -44   -83 10256     0     0"),
        hour("02   -44   -83 10256 -9999    21"),
        hour("05   -44   -83 10256 -9999 -9999"),
        hour("06   -44   -83 10256   360    10"),
    ]
    wind, problems = wind_of(tmp_path, "".join(lines).encode())
    assert problems == []
    assert wind is not None
    assert wind.from_deg == (270.0, None, None, None, 360.0)
    # 4.5 m/s is 10.1 mph: 4.5 * 3600 / 1609.344
    assert wind.speed_mph == (10.1, 0.0, 4.7, None, 2.2)
    assert (wind.calm, wind.missing) == (1, 3)


def test_the_real_autumn_of_chicago(tmp_path: Path) -> None:
    """diyepw 1.3.1, 725300-2016.gz: the counts were taken with another program (awk)."""
    wind, problems = wind_of(tmp_path, (REAL / "chicago_autumn_2016.gz").read_bytes())
    assert problems == []
    assert wind is not None
    assert len(wind.hours) == 2206
    first = EPOCH + datetime.timedelta(hours=wind.hours[0])
    assert first == datetime.datetime(2016, 10, 1)
    # 2,208 hours from 1 October to 31 December, two of them without a line
    assert (wind.calm, wind.missing) == (124, 2)
