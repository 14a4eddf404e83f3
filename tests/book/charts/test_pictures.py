"""Pictures on the finished pages: what is drawn is what the plan says, and is said in words too."""

import datetime
import posixpath

import pytest

from generator.book.charts.bands import Season
from generator.book.charts.columns import Column, ColumnPart, Columns, columns_drawn
from generator.book.charts.scale import level_step, scale_top
from generator.book.money_views import view_numbers
from generator.plan.model.days import MONTHS, ONE_DAY, comes_back
from generator.plan.model.job import Job
from generator.plan.standing.cover_by_season import SEASONS_SHOWN
from generator.plan.views.numbers import numbers_of
from generator.reference.operations import operations, work_groups
from tests.book.charts.drawn import day, number, pictures, shapes
from tests.book.reading import Element, marked_numbers, read, workings
from tests.book.sites import Site

WITH_PICTURES = {"ahead.html", "buy.html", "hours-by-weekend.html", "year.html"}


def test_the_pages_with_pictures_are_looked_at(pages: dict[str, Element]) -> None:
    assert pages.keys() >= WITH_PICTURES
    assert any(address.startswith("places/") for address in pages)


def test_every_value_drawn_is_the_plan_s_own(owner: Site, pages: dict[str, Element]) -> None:
    numbers = numbers_of(owner.plan, view_numbers(owner.plan))
    drawn_ids = []
    for page in pages.values():
        for one in shapes(page, "q"):
            identity = one.attributes["data-q"]
            assert float(one.attributes["data-value"]) == numbers[identity].value
            drawn_ids.append(identity)
    assert len(drawn_ids) > SEASONS_SHOWN


def test_every_value_drawn_is_said_as_a_number_with_its_working(
    owner: Site, pages: dict[str, Element]
) -> None:
    every = {address: workings(read(text)) for address, text in owner.pages().items()}
    for address, page in pages.items():
        said = {one.identity for one in every[address].values()}
        for mark in marked_numbers(page):
            target, _, anchor = mark.attributes["href"].partition("#")
            there = posixpath.normpath(posixpath.join(posixpath.dirname(address), target))
            said.add(every[there if target else address][anchor].identity)
        drawn = {one.attributes["data-q"] for one in shapes(page, "q")}
        assert drawn <= said, address
        assert marked_numbers(page) or address in ("index.html", "year.html")


def test_columns_stand_to_each_other_as_their_values_do(pages: dict[str, Element]) -> None:
    for page in pages.values():
        for picture in pictures(page):
            filled = [
                (float(one.attributes["height"]), float(one.attributes["data-value"]))
                for one in shapes(picture, "q")
                if one.attributes["class"] != "above"
            ]
            tall = [(height, value) for height, value in filled if height > 20]
            ratios = [height / value for height, value in tall]
            assert ratios == pytest.approx(ratios[:1] * len(ratios), rel=1e-3)


def bars(page: Element, kind: str = "") -> list[Element]:
    """The bars of the bands of a page, or those of one kind."""
    return [
        one
        for band in page.all("div", "bands")
        for one in shapes(band, "first")
        if one.tag == "rect" and (not kind or one.has(kind))
    ]


def spans_of(drawn: list[Element]) -> set[tuple[str, str]]:
    return {(one.attributes["data-first"], one.attributes["data-last"]) for one in drawn}


def test_bands_lie_where_their_days_lie(owner: Site, pages: dict[str, Element]) -> None:
    """Independent: an ordinary year counted day by day from Sep 1."""
    first = datetime.date(owner.plan.season - 1, 9, 1)
    drawn = bars(pages["year.html"])
    assert drawn
    for one in drawn:
        begins, ends = day(one.attributes["data-first"]), day(one.attributes["data-last"])
        left = max((begins - first).days, 0)
        right = min((ends - first).days + 1, 365)
        assert number(one, "x") == pytest.approx(left / 3.65, abs=0.01)
        assert number(one, "width") == pytest.approx((right - left) / 3.65, abs=0.01)


def test_every_dated_job_of_the_season_has_its_band(owner: Site, pages: dict[str, Element]) -> None:
    """Independent: the days left of open dates are counted one by one."""
    season = Season(owner.plan.season)
    expected = set()
    for job in (*owner.plan.jobs, *owner.plan.upkeep):
        opens, closes = job.dates.opens, job.dates.closes
        if opens is None or closes is None:
            continue
        not_on = job.days.not_on if isinstance(job, Job) and job.days is not None else ()
        days = [opens + n * ONE_DAY for n in range((closes - opens).days + 1)]
        left = [day for day in days if not any(first <= day <= last for first, last in not_on)]
        begins = [day for day in left if day - ONE_DAY not in left]
        ends = [day for day in left if day + ONE_DAY not in left]
        expected |= {
            (first.isoformat(), last.isoformat())
            for first, last in zip(begins, ends, strict=True)
            if first <= season.last and last >= season.first
        }
    assert spans_of(bars(pages["year.html"], "open")) == expected
    kept = {
        (first.isoformat(), last.isoformat())
        for dates in owner.plan.land.dates
        for first, last in comes_back(dates, (season.first, season.last))
    }
    assert spans_of(bars(pages["year.html"], "closed")) == kept


def test_the_line_of_a_band_goes_from_an_early_year_to_a_late_one(
    owner: Site, pages: dict[str, Element]
) -> None:
    lines = spans_of(bars(pages["year.html"], "years"))
    assert len(lines) > 5
    season = Season(owner.plan.season)
    spans = set()
    for job in (*owner.plan.jobs, *owner.plan.upkeep):
        opens = [one.opens for one in job.dates.by_year if one.opens]
        closes = [one.closes for one in job.dates.by_year if one.closes]
        if opens and closes and min(opens) <= season.last and max(closes) >= season.first:
            spans.add((min(opens).isoformat(), max(closes).isoformat()))
    assert lines <= spans


def test_a_picture_is_spoken_or_left_to_the_words_beside_it(pages: dict[str, Element]) -> None:
    for page in pages.values():
        for picture in pictures(page):
            if picture.attributes.get("aria-hidden") == "true":
                assert not picture.all("title")
                continue
            assert picture.attributes["role"] == "img"
            ids = {one.attributes.get("id"): one for one in page.walk()}
            named = picture.attributes["aria-labelledby"].split()
            named += picture.attributes.get("aria-describedby", "").split()
            assert len(named) == 2
            assert all(ids[one].text().strip() for one in named)


def test_no_picture_tells_things_apart_by_colour_alone(pages: dict[str, Element]) -> None:
    """Each fill of one picture is another pattern: none but one is a plain color."""
    for page in pages.values():
        for picture in pictures(page):
            fills = {
                (one.attributes["class"], one.attributes.get("fill", ""))
                for one in shapes(picture, "q")
            }
            plain = [kind for kind, fill in fills if not fill and kind not in ("empty", "above")]
            assert len(plain) <= 1


def test_every_kind_of_work_stands_in_one_group_of_the_year() -> None:
    assert {kind.group.id for kind in operations().values()} == work_groups().keys()


def test_month_names_stand_over_the_first_of_their_months(pages: dict[str, Element]) -> None:
    scale = next(one for one in pictures(pages["year.html"]) if "aria-hidden" in one.attributes)
    names = [one.text() for one in scale.all("text")]
    assert names == [MONTHS[(8 + number) % 12][:3] for number in range(12)]


@pytest.mark.parametrize("highest", [0.004, 0.34, 1, 7.2, 9.99, 10, 99, 1134.21, 250_000])
def test_a_scale_reaches_above_the_highest_with_few_round_levels(highest: float) -> None:
    top, step = scale_top(highest), level_step(highest)
    assert top >= highest > top - step * 1.0001
    assert 1 <= round(top / step) <= 5


def test_what_a_picture_says_is_text() -> None:
    hostile = '<script>alert("1")</script>'
    column = Column(hostile, (ColumnPart(1.0, "solid", hostile),))
    page = read(str(columns_drawn(Columns("one", hostile, hostile, (column,)))))
    assert page.all("script") == []
    assert page.all("title")[0].text() == hostile
