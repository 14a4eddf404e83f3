"""Pictures on the finished pages: what is drawn is what the plan says, and is said in words too."""

import datetime
import posixpath
from collections.abc import Iterator

import pytest

from generator.book.charts.bands import Season
from generator.book.charts.columns import Column, Columns, Piece, columns_drawn
from generator.book.charts.scale import level_step, scale_top
from generator.book.money_views import view_numbers
from generator.plan.model.days import MONTHS
from generator.plan.standing.cover_by_season import SEASONS_SHOWN
from generator.plan.standing.heights import heights_on
from generator.plan.standing.planting_curves import growing
from generator.plan.views.numbers import numbers_of
from generator.reference.growth import CURVES
from generator.reference.operations import operations, work_groups
from generator.units import convert
from tests.book.reading import Element, marked_numbers, read, workings
from tests.book.sites import Site

WITH_PICTURES = {"ahead.html", "hours-by-weekend.html", "money.html", "places.html", "year.html"}


@pytest.fixture(scope="module")
def owner(demo_sites: dict[str, Site]) -> Site:
    return demo_sites["owner"]


@pytest.fixture(scope="module")
def pages(owner: Site) -> dict[str, Element]:
    documents = {address: read(html) for address, html in owner.pages().items()}
    return {address: one for address, one in documents.items() if pictures(one)}


def pictures(page: Element) -> list[Element]:
    return page.all("svg", "picture")


def shapes(picture: Element, name: str) -> Iterator[Element]:
    """The shapes of a picture that stand for a value of this name."""
    return (one for one in picture.walk() if f"data-{name}" in one.attributes)


def day(text: str) -> datetime.date:
    return datetime.date.fromisoformat(text)


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


def test_bands_lie_where_their_days_lie(owner: Site, pages: dict[str, Element]) -> None:
    """Independent: an ordinary year counted day by day from Sep 1."""
    first = datetime.date(owner.plan.season - 1, 9, 1)
    bars = list(shapes(pages["year.html"], "first"))
    assert bars
    for one in bars:
        begins, ends = day(one.attributes["data-first"]), day(one.attributes["data-last"])
        left = max((begins - first).days, 0)
        right = min((ends - first).days + 1, 365)
        assert float(one.attributes["x"].rstrip("%")) == pytest.approx(left / 3.65, abs=0.01)
        assert float(one.attributes["width"].rstrip("%")) == pytest.approx(
            (right - left) / 3.65, abs=0.01
        )


def test_every_dated_job_of_the_season_has_its_band(owner: Site, pages: dict[str, Element]) -> None:
    bars = {
        (one.attributes["data-first"], one.attributes["data-last"])
        for one in shapes(pages["year.html"], "first")
        if one.attributes["class"] == "open"
    }
    season = Season(owner.plan.season)
    jobs = [*owner.plan.jobs, *owner.plan.upkeep]
    dated = {
        (job.dates.opens.isoformat(), job.dates.closes.isoformat())
        for job in jobs
        if job.dates.opens and job.dates.closes
        if job.dates.opens <= job.dates.closes
        if job.dates.opens <= season.last and job.dates.closes >= season.first
    }
    assert bars == dated
    closed = {
        (one.attributes["data-first"], one.attributes["data-last"])
        for one in shapes(pages["year.html"], "first")
        if one.attributes["class"] == "closed"
    }
    for job in owner.plan.jobs:
        if job.days is not None and job.season == owner.plan.season:
            spans = {(a.isoformat(), b.isoformat()) for a, b in job.days.not_on}
            assert spans <= closed


def test_the_line_of_a_band_goes_from_an_early_year_to_a_late_one(
    owner: Site, pages: dict[str, Element]
) -> None:
    lines = {
        (one.attributes["data-first"], one.attributes["data-last"])
        for one in shapes(pages["year.html"], "first")
        if one.attributes["class"] == "years"
    }
    assert len(lines) > 5
    season = Season(owner.plan.season)
    spans = set()
    for job in (*owner.plan.jobs, *owner.plan.upkeep):
        opens = [one.opens for one in job.dates.by_year if one.opens]
        closes = [one.closes for one in job.dates.by_year if one.closes]
        if opens and closes and min(opens) <= season.last and max(closes) >= season.first:
            spans.add((min(opens).isoformat(), max(closes).isoformat()))
    assert lines <= spans


def test_heights_are_those_of_the_log(owner: Site, pages: dict[str, Element]) -> None:
    seen = {
        (one.attributes["data-day"], float(one.attributes["data-value"]))
        for page in pages.values()
        for one in shapes(page, "day")
    }
    logged = {
        (entry.done_on.isoformat(), one.height_in.value)
        for entry in owner.plan.entries
        if entry.measured is not None
        for one in entry.measured.readings
    }
    assert seen == logged
    assert seen


def test_a_picture_is_spoken_or_left_to_the_words_beside_it(pages: dict[str, Element]) -> None:
    for page in pages.values():
        for picture in pictures(page):
            if picture.attributes.get("aria-hidden") == "true":
                assert not picture.all("title")
                continue
            assert picture.attributes["role"] == "img"
            ids = {one.attributes.get("id") for one in picture.walk()}
            assert set(picture.attributes["aria-labelledby"].split()) <= ids
            assert all(one.text().strip() for one in (*picture.all("title"), *picture.all("desc")))


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
    scale = pictures(pages["year.html"])[0]
    names = [one.text() for one in scale.all("text")]
    assert names == [MONTHS[(8 + number) % 12][:3] for number in range(12)]


@pytest.mark.parametrize("highest", [0.004, 0.34, 1, 7.2, 9.99, 10, 99, 1134.21, 250_000])
def test_a_scale_reaches_above_the_highest_with_few_round_levels(highest: float) -> None:
    top, step = scale_top(highest), level_step(highest)
    assert top >= highest > top - step * 1.0001
    assert 1 <= round(top / step) <= 5


def test_what_a_picture_says_is_text() -> None:
    hostile = '<script>alert("1")</script>'
    column = Column(hostile, (Piece(1.0, "solid", hostile),))
    page = read(str(columns_drawn(Columns("one", hostile, hostile, (column,)))))
    assert page.all("script") == []
    assert page.all("title")[0].text() == hostile


def test_curves_run_through_the_plan_s_heights(owner: Site, pages: dict[str, Element]) -> None:
    """Each curve of a picture, day by day, is what the plan gives for that planting and day."""
    known = {
        f"heights-{one.planting.id}": one
        for place in owner.plan.places
        for one in growing(owner.plan.entries, owner.plan.land, place)
    }
    compared = 0
    for page in pages.values():
        for picture in pictures(page):
            name = picture.attributes.get("aria-labelledby", "").partition("-t ")[0]
            for line in picture.all("polyline"):
                (curve,) = [one for one in CURVES if line.has(one)]
                days = line.attributes["data-days"].split()
                heights = line.attributes["data-heights"].split()
                for when, height in zip(days, heights, strict=True):
                    found = heights_on(known[name], day(when), (curve,))
                    assert found is not None
                    assert float(height) == convert(found.by_curve[curve].value, "in", "ft")
                    compared += 1
    assert compared > 100
