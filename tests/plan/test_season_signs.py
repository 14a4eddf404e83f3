"""Season signs out of the weather: whom is trusted, what each year says, what moves with what."""

import csv
import datetime
import gzip
from dataclasses import replace
from pathlib import Path

import pytest

from generator.inventory.fields import SeasonMarker
from generator.plan.model.markers import FoundMarkers
from generator.plan.readers.released import released_dates
from generator.plan.season.marker_years import MOST_MISSING, month_and_day
from generator.plan.season.season_markers import has_weather
from generator.reference.library import marker_names
from tests.plan.planned import BURN_DOWN, KILL, inventory_of, job_of, planned
from tests.plan.weathered import (
    FREEZE,
    NORMALS,
    Day,
    changed,
    codes_on,
    days,
    sign_of,
    weather_of,
    weathered,
)
from tests.properties import Data, small_property

REAL = Path(__file__).resolve().parents[1] / "data" / "weather"
RECORD = days()
EMERGENCE = "grass_emergence"
# What waits for warmth alone, and never for cold to come back.
OF_WARMTH = (
    "weed_green_up",
    "grass_green_up",
    "soil_warm",
    "soil_for_corn",
    "soil_for_sorghum",
    EMERGENCE,
)


def test_a_typed_sign_comes_before_a_record() -> None:
    found = sign_of(weathered(RECORD, {"thaw": "03-01"}), "thaw")
    assert found.kind == "typed"
    assert found.days is not None
    assert found.days.typical == (3, 1)


def test_a_record_comes_before_published_days_and_they_before_nothing() -> None:
    assert sign_of(weathered(RECORD, freeze_dates=[FREEZE]), "first_hard_freeze").kind == "daily"
    found = sign_of(weathered(None, freeze_dates=[FREEZE]), "first_hard_freeze")
    assert found.kind == "published"
    assert found.days is not None
    assert (found.days.early, found.days.typical, found.days.late) == ((10, 6), (10, 19), (11, 1))
    assert sign_of(weathered(None, freeze_dates=[FREEZE]), "thaw").kind == "open"
    light = sign_of(weathered(None, freeze_dates=[FREEZE]), "first_light_freeze")
    assert light.kind == "open"


def test_a_record_of_few_years_gives_way() -> None:
    few = [one for one in RECORD if one[0].year < 1999]
    data = weathered(few, freeze_dates=[FREEZE], normals=[NORMALS])
    assert sign_of(data, "first_hard_freeze").kind == "published"
    assert sign_of(data, "soil_warm").kind == "normals"
    ten = [one for one in RECORD if one[0].year < 2000]
    data = weathered(ten, freeze_dates=[FREEZE], normals=[NORMALS])
    assert sign_of(data, "first_hard_freeze").kind == "daily"


def test_no_freeze_is_taken_from_normals() -> None:
    seen = weather_of(weathered(None, normals=[NORMALS]))
    kinds = {one.sign: one.kind for one in (*seen.signs, *seen.others)}
    freezes = {name for name in kinds if "freeze" in name}
    assert len(freezes) == 5
    assert {kinds[name] for name in freezes} == {"open"}
    assert {kind for name, kind in kinds.items() if name not in freezes} == {"normals"}
    wanting = {one.sign: one.wanting for one in seen.signs}
    assert "never normals" in wanting["first_hard_freeze"]


def test_a_day_of_normals_lies_near_the_middle_of_a_record_of_the_same_climate() -> None:
    """Independent: normals worked out here from the record, month by month."""

    def mean(month: int, which: int) -> float:
        values = [one[which] for one in RECORD if one[0].month == month]
        return round(sum(float(one or 0) for one in values) / len(values), 2)

    normals = {
        "highs_f": [mean(month, 1) for month in range(1, 13)],
        "lows_f": [mean(month, 2) for month in range(1, 13)],
        "source": "worked out",
    }
    for name in ("soil_warm", "soil_for_corn", "soil_for_sorghum"):
        by_normals = sign_of(weathered(None, normals=[normals]), name).days
        by_record = sign_of(weathered(RECORD), name).days
        assert by_normals is not None
        assert by_record is not None
        assert by_normals.single
        # the curve has no warm spells; over a record it lies within two weeks of the middle year
        assert abs(apart(by_record.typical, by_normals.typical)) <= 14


def apart(one: tuple[int, int], other: tuple[int, int]) -> int:
    return (datetime.date(2001, *other) - datetime.date(2001, *one)).days


def test_every_sign_moves_ten_days_when_every_day_of_the_record_does() -> None:
    """The same weather ten days later: every year's day, and so early, typical and late.

    A leap day is no day of a common year, so it may cost one.
    """
    ten = datetime.timedelta(days=10)
    record = cold_at_the_turn(days(datetime.date(1989, 12, 1)))
    before = weather_of(weathered(record))
    after = weather_of(weathered(changed(record, lambda one: (one[0] + ten, *one[1:]))))
    for was, now in zip(
        (*before.signs, *before.others), (*after.signs, *after.others), strict=True
    ):
        assert {one + ten for one in was.years} == set(now.years), was.sign
        assert was.days is not None
        assert now.days is not None
        for part in ("early", "typical", "late"):
            moved = apart(getattr(was.days, part), getattr(now.days, part))
            assert abs(moved - 10) <= 1, (was.sign, part)


def cold_at_the_turn(record: list[Day]) -> list[Day]:
    """The record with nothing growing around the turn of the year, from which a sum is counted."""
    return [
        (day, 30, 20) if (day.month, day.day) > (12, 15) or (day.month, day.day) < (1, 15) else one
        for one in record
        for day in one[:1]
    ]


def test_open_dates_move_with_the_record_and_calendar_limits_and_typed_signs_stay() -> None:
    """A leap day is no day of a common year, so it may cost one."""
    ten = datetime.timedelta(days=10)
    record = cold_at_the_turn(days(datetime.date(1989, 12, 1)))
    typed: Data = {"weed_green_up": "04-12"}
    before = planned(weathered(record, typed))
    after = planned(weathered(changed(record, lambda one: (one[0] + ten, *one[1:])), typed))
    moved = stayed = typed_seen = 0
    for job in before.jobs:
        then = job_of(after, job.id)
        for was, now in zip(
            (*job.dates.opens_reasons, *job.dates.closes_reasons),
            (*then.dates.opens_reasons, *then.dates.closes_reasons),
            strict=True,
        ):
            assert (was.sign, was.offset_days) == (now.sign, now.offset_days)
            by = (now.day - was.day).days
            rests_on = was.rests_on
            if rests_on is not None and rests_on.kind == "daily":
                assert abs(by - 10) <= 1, (job.id, was.sign)
                moved += by == 10
            else:
                assert by == 0, job.id
                stayed += 1
                typed_seen += rests_on is not None
        alone = [one for one in job.dates.closes_reasons if one.sign is None]
        assert not alone or then.dates.closes <= min(one.day for one in alone)
    assert moved >= 5
    assert stayed >= 6
    assert typed_seen >= 1


def test_a_degree_more_on_every_day_makes_nothing_that_waits_for_warmth_later() -> None:
    def warmer(one: Day) -> Day:
        day, high, low = one
        return day, (high or 0) + 1, (low or 0) + 1

    before, after = weather_of(weathered(RECORD)), weather_of(weathered(changed(RECORD, warmer)))
    earlier = 0
    for was, now in zip(
        (*before.signs, *before.others), (*after.signs, *after.others), strict=True
    ):
        by_year = {one.year: one for one in now.years}
        if was.sign in OF_WARMTH or was.sign.startswith("last"):
            assert all(by_year.get(one.year, one) <= one for one in was.years), was.sign
            earlier += sum(by_year.get(one.year, one) < one for one in was.years)
        if was.sign.startswith("first"):
            assert all(by_year.get(one.year, one) >= one for one in was.years), was.sign
    assert earlier > 20


@pytest.mark.parametrize("gone", [MOST_MISSING, MOST_MISSING + 1])
def test_a_year_that_misses_too_many_days_is_left_out_and_counted(gone: int) -> None:
    first = datetime.date(2003, 1, 5)
    last = first + datetime.timedelta(days=gone - 1)

    def without(one: Day) -> Day:
        return (one[0], None, None) if first <= one[0] <= last else one

    found = sign_of(weathered(changed(RECORD, without)), "last_hard_freeze")
    assert found.left_out == (gone > MOST_MISSING)
    assert (2003 in {one.year for one in found.years}) == (gone <= MOST_MISSING)
    assert len(found.years) + found.left_out == 25


@pytest.mark.parametrize(
    ("sign", "begins", "left_out"),
    [
        # the record freezes hard last on a day from March to May, and the gap hides that it may
        ("last_hard_freeze", (3, 25), 1),
        ("last_hard_freeze", (7, 1), 0),  # no year of it freezes so late
        ("first_hard_freeze", (12, 5), 0),  # a first day stands, whatever comes behind it
    ],
)
def test_behind_a_gap_there_may_have_been_a_later_last_day(
    sign: str, begins: tuple[int, int], left_out: int
) -> None:
    whole = sign_of(weathered(RECORD), sign)
    first = datetime.date(2003, *begins)
    last = first + datetime.timedelta(days=30)

    def without(one: Day) -> Day:
        return (one[0], None, None) if first <= one[0] <= last else one

    found = sign_of(weathered(changed(RECORD, without)), sign)
    assert (whole.left_out, found.left_out) == (0, left_out)


def test_a_sign_that_fails_to_come_is_not_made_up() -> None:
    def mild(one: Day) -> Day:
        day, high, low = one
        return (day, max(high or 0, 60), max(low or 0, 40)) if day.year < warm_until else one

    for warm_until, kind in ((1990, "daily"), (1992, "daily"), (1993, "open"), (2020, "open")):
        found = sign_of(weathered(changed(RECORD, mild)), "last_hard_freeze")
        assert (found.kind, found.without) == (kind, min(warm_until, 2015) - 1990)
        assert (found.days is None) == (kind == "open")


def test_the_freezes_of_champion_by_the_whole_way_through() -> None:
    """Independent: the middle of 37 sorted days of the real record, read here by csv alone."""
    with gzip.open(REAL / "champion_daily.csv.gz", "rt", encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    last: dict[str, tuple[int, int]] = {}
    for row in rows:
        year, month, day = row["date"].split("-")
        if int(month) < 8 and float(row["tmin_c"]) <= 0:
            last[year] = (int(month), int(day))
    in_order = sorted(last.values())
    assert len(in_order) == 37
    record = [
        (
            datetime.date.fromisoformat(row["date"]),
            round(float(row["tmax_c"]) * 9 / 5 + 32, 1),
            round(float(row["tmin_c"]) * 9 / 5 + 32, 1),
        )
        for row in rows
    ]
    found = sign_of(weathered(record), "last_light_freeze").days
    assert found is not None
    assert found.typical == in_order[18]
    # 0.1 of 38 is between the 3rd and the 4th, 0.9 between the 34th and the 35th
    assert in_order[2] <= found.early <= in_order[3]
    assert in_order[33] <= found.late <= in_order[34]


def test_a_property_without_weather_is_as_it_was() -> None:
    inventory = inventory_of(small_property())
    assert not has_weather(inventory)
    plan = planned(small_property())
    assert plan.weather is None
    assert plan.land.signs == inventory.property.season_signs
    assert not isinstance(plan.land.signs, FoundMarkers)
    reasons = [one for job in plan.jobs for one in job.dates.opens_reasons]
    assert {one.rests_on for one in reasons} == {None}


def test_found_signs_give_dates_and_say_what_they_rest_on() -> None:
    open_before = planned(weathered(None))
    assert job_of(open_before, BURN_DOWN).dates.missing_signs
    plan = planned(weathered(RECORD))
    dates = job_of(plan, BURN_DOWN).dates
    assert dates.missing_signs == ()
    assert dates.opens is not None
    by_sign = {one.sign: one for one in (*dates.opens_reasons, *dates.closes_reasons) if one.sign}
    green = by_sign["weed_green_up"].rests_on
    assert green is not None
    assert (green.kind, green.rests_on, len(green.years)) == ("daily", "Ridge farm", 25)
    assert "C206" not in {one.code for one in plan.findings_on(BURN_DOWN)}


def test_dates_are_those_of_the_same_days_typed() -> None:
    found = weather_of(weathered(RECORD))
    typed = {
        one.sign: {part: told(getattr(one.days, part)) for part in ("early", "typical", "late")}
        for one in found.signs
    }
    by_hand, by_weather = planned(weathered(None, typed)), planned(weathered(RECORD))
    for job in by_hand.jobs:
        other = job_of(by_weather, job.id).dates
        assert (job.dates.opens, job.dates.closes) == (other.opens, other.closes), job.id
    assert by_hand.weather is None


def told(day: tuple[int, int]) -> str:
    return f"{day[0]:02}-{day[1]:02}"


def test_each_grass_comes_up_by_its_own_soil_and_by_how_it_was_sown() -> None:
    data = weathered(RECORD)
    planting = data["screens"]["screens"][0]["plantings"][0]
    (seed,) = weather_of(data).emergence
    assert (seed.species, seed.waits, seed.is_own) == ("Switchgrass", (14, 21), False)
    # 10.8 C as printed, to a tenth of a degree F
    assert seed.soil.value == pytest.approx(10.8 * 9 / 5 + 32, abs=0.05)
    assert seed.days is not None
    data["weather"]["emergence"] = [
        {"species": "switchgrass", "method": "frost_seed", "fewest_days": 9, "most_days": 30}
    ]
    (own,) = weather_of(data).emergence
    assert own.days is not None
    assert own.is_own
    assert apart(own.days.early, seed.days.early) == 5
    assert apart(seed.days.late, own.days.late) == 9
    planting |= {"method": "drill", "steps": "drilled_native_grass", "work": []}
    (drilled,) = weather_of(data).emergence
    assert drilled.days is None


def test_a_typed_emergence_stands_for_every_planting() -> None:
    signs = planned(weathered(RECORD, {EMERGENCE: "05-14"})).land.signs
    assert isinstance(signs, FoundMarkers)
    assert signs.of_planting == {}
    assert isinstance(signs.grass_emergence, SeasonMarker)
    assert signs.grass_emergence.early == (5, 14)


def test_few_years_and_normals_are_told() -> None:
    some = [one for one in RECORD if one[0].year < 2005]
    assert "N415" in codes_on(planned(weathered(some)), "sign/thaw")
    assert "N415" not in codes_on(planned(weathered(RECORD)), "sign/thaw")
    assert "C351" in codes_on(planned(weathered(None, normals=[NORMALS])), "sign/thaw")
    assert "C351" not in codes_on(planned(weathered(RECORD, normals=[NORMALS])), "sign/thaw")


@pytest.mark.parametrize(
    ("place", "here", "there", "is_far"),
    [
        ([41.02, -93.01], 700, 1190, False),
        ([41.02, -93.01], 700, 1210, True),
        ([41.02, -93.01], 1210, 700, True),
        # 41.02 to 41.44 N is 29.0 miles, to 41.47 N 31.1 (69.05 miles to a degree there)
        ([41.44, -93.01], 700, 700, False),
        ([41.47, -93.01], 700, 700, True),
    ],
)
def test_a_station_far_off_or_at_another_height_is_a_caution(
    place: list[float], here: int, there: int, is_far: bool
) -> None:
    data = weathered(RECORD)
    data["property"]["elevation_ft"] = here
    data["weather"]["stations"][0] |= {"at_lat_lon": place, "elevation_ft": there}
    assert ("C350" in codes_on(planned(data), "ridge")) == is_far


def test_a_station_read_in_the_morning_is_a_note() -> None:
    data = weathered([])
    lines = []
    for day, high, low in RECORD:
        for element, value in (("TMAX", high), ("TMIN", low)):
            tenths = round(((value or 0) - 32) * 50 / 9)
            lines.append(f"US1,{day:%Y%m%d},{element},{tenths},,,7,0700")
    data["weather"]["stations"][0]["kind"] = "ghcn_by_station"
    data["weather_files"] = {"ridge.csv": "\n".join(lines) + "\n"}
    assert "N416" in codes_on(planned(data), "ridge")
    data["weather_files"]["ridge.csv"] = "\n".join(lines).replace("0700", "1700") + "\n"
    assert "N416" not in codes_on(planned(data), "ridge")


def test_freeze_thaw_days_left_only_fall_and_end_near_nothing() -> None:
    left = weather_of(weathered(RECORD)).left
    assert len(left) >= 17
    assert [one.typical for one in left] == sorted((one.typical for one in left), reverse=True)
    assert all(one.few <= one.typical <= one.many for one in left)
    assert left[-1].typical <= 1
    # by hand: days from Jan 1 to Apr 30 with a high of 32 or more and a low of 28 or less
    first = sorted(
        sum(
            one[1] is not None and one[2] is not None and one[1] >= 32 and one[2] <= 28
            for one in RECORD
            if one[0].year == year and one[0].month < 5
        )
        for year in range(1990, 2015)
    )
    assert left[0].typical == first[12]


def test_every_sign_of_the_season_can_be_found() -> None:
    seen = weather_of(weathered(RECORD))
    assert [one.sign for one in seen.signs] == list(marker_names())
    assert {one.kind for one in (*seen.signs, *seen.others)} == {"daily"}
    assert job_of(planned(weathered(RECORD)), KILL).dates.closes is not None


def test_a_day_past_the_year_is_held_to_it() -> None:
    assert month_and_day(366) == (12, 31)
    assert month_and_day(0) == (1, 1)


def test_others_are_told_no_origin() -> None:
    job = job_of(planned(weathered(RECORD)), BURN_DOWN)
    plain = released_dates(job.dates)
    bare = replace(job.dates, opens_reasons=(), closes_reasons=(), by_year=())
    assert replace(plain, opens_reasons=(), closes_reasons=()) == bare
    assert {one.rests_on for one in (*plain.opens_reasons, *plain.closes_reasons)} == {None}
