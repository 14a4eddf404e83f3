"""The page of season signs: days, what they rest on, and a dot for every year of the record."""

import html
import re

import pytest

from generator.book.make import make_book
from generator.book.pages.signs import signs_page
from generator.plan.model.plan import Plan
from tests.plan.planned import BURN_DOWN, job_of, planned
from tests.plan.weathered import FREEZE, days, weathered
from tests.properties import small_property

DOT = re.compile(r'<circle cx="([0-9.]+)%" cy="([0-9.]+)" r="5" class="dot" data-value="([0-9-]+)"')
RECORD = days()


@pytest.fixture(scope="module")
def plan() -> Plan:
    return planned(weathered(RECORD, {"thaw": "03-01"}, freeze_dates=[FREEZE]))


@pytest.fixture(scope="module")
def page(plan: Plan) -> str:
    (written,) = signs_page(plan)
    return html.unescape(written.page.markdown)


def part(page: str, name: str) -> str:
    """What the page says under the name of a sign."""
    return page.split(f"\n### {name}\n")[1].split("\n### ")[0].split("\n## ")[0]


def test_a_dot_stands_for_the_day_of_every_year(plan: Plan, page: str) -> None:
    assert plan.weather is not None
    drawn = 0
    for sign in (*plan.weather.signs, *plan.weather.others):
        if sign.kind == "daily":
            under = part(page, sign.name)
            assert sorted(day for _, _, day in DOT.findall(under)) == sorted(
                str(one) for one in sign.years
            )
            # and the list beside the picture holds the same days
            assert all(f'datetime="{one}"' in under for one in sign.years)
            drawn += 1
    assert drawn == 11


def test_dots_go_from_left_to_right_by_the_calendar_and_hide_nothing(page: str) -> None:
    dots = DOT.findall(part(page, "Warm soil"))
    in_order = sorted((day[5:], float(x)) for x, _, day in dots)
    assert len(dots) == 25
    assert [x for _, x in in_order] == sorted(float(x) for x, _, _ in dots)
    placed = [(float(x), float(y)) for x, y, _ in dots]
    for number, (x, y) in enumerate(placed):
        for other_x, other_y in placed[number + 1 :]:
            assert abs(x - other_x) >= 1.39 or abs(y - other_y) >= 11


def test_a_typed_sign_is_told_with_its_line_and_has_no_picture(page: str) -> None:
    assert "typed by you" in page
    assert "\n### Thaw\n" not in page


def test_every_sign_says_what_it_rests_on(plan: Plan, page: str) -> None:
    table = page.split("\n## ")[0]
    assert table.count("Ridge farm") == 7
    assert "1990 to 2014" in table
    assert plan.weather is not None
    assert "years used" in table


def test_an_open_sign_says_what_to_bring() -> None:
    (written,) = signs_page(planned(weathered(None, freeze_dates=[FREEZE])))
    page = html.unescape(written.page.markdown)
    under = part(page, "Thaw")
    assert "Not known" in under
    assert "daily record of ten years" in under
    hard = part(page, "First hard freeze")
    assert "As published" in hard


def test_without_weather_there_is_no_such_page_and_signs_are_as_typed() -> None:
    plan = planned(small_property())
    assert signs_page(plan) == []
    book = make_book(plan)
    work = next(one.markdown for one in book.pages if one.address == "work.md")
    assert "Season markers as typed" in work
    assert "signs.html" not in work


def test_the_table_on_the_page_of_work_and_the_job_sheet_say_where_a_day_is_from(
    plan: Plan,
) -> None:
    book = make_book(plan)
    pages = {one.address: html.unescape(one.markdown) for one in book.pages}
    assert (
        "<summary>Season markers, looked up" in pages["work.md"]
        or "<summary>Season markers</summary>" in pages["work.md"]
    )
    assert pages["work.md"].count("Ridge farm") == 7
    job = job_of(plan, BURN_DOWN)
    sheet = pages[f"work/{job.address}.md"].split("Where the dates come from")[1]
    assert "the record of Ridge farm, 1990 to 2014" in sheet


def seen_on(*seen: str) -> str:
    """What the page says under the markers as their owner saw them."""
    data = weathered(RECORD, {"thaw": "03-01"})
    entries = [
        {"id": f"saw-{number}", "done_on": day, "markers_seen": ["weed_green_up"]}
        for number, day in enumerate(seen)
    ]
    data["log"] = {"entries": entries}
    (written,) = signs_page(planned(data))
    told = html.unescape(written.page.markdown)
    return told.split("\n## As you saw them\n")[1].split("\n## ")[0]


def test_markers_of_one_s_own_stand_beside_the_station_s_after_ten_seasons() -> None:
    springs = [f"{year}-03-{year - 2000 - 7:02}" for year in range(2017, 2027)]
    assert "told after" in seen_on(*springs[1:])
    # March 10 to 19, one a year: the same days as by hand in tests/plan/test_seen_signs.py
    own = seen_on(*springs)
    assert re.findall(r'datetime="([0-9-]+)"', own)[-3:] == [
        "2027-03-10",
        "2027-03-14",
        "2027-03-19",
    ]
    assert "not yet" in own
    assert "<table" not in seen_on()
