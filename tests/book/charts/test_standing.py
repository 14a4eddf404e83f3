"""Heights and screens as they are drawn, measured off the drawing against the plan's numbers."""

import datetime
import re

import pytest

from generator.book.charts.drawing import kept_apart
from generator.inventory.places import Screen
from generator.plan.model.days import holds_on
from generator.plan.standing.heights import bends, heights_on
from generator.plan.standing.low_curve import LowCurve, falls_ahead, low_curves
from generator.plan.standing.planting_curves import Growing, growing
from generator.plan.standing.verdicts import needed_on
from generator.reference.growth import CURVES
from tests.book.charts.drawn import day, name_of, number, pictures, shapes
from tests.book.reading import Element
from tests.book.sites import Site

MOVE = re.compile(r"M(-?[\d.]+),0Q\1,-?[\d.]+ (-?[\d.]+),(-[\d.]+)")


@pytest.fixture(scope="module")
def curves(owner: Site) -> dict[str, Growing]:
    plan = owner.plan
    return {
        one.planting.id: one
        for place in plan.places
        for one in growing(plan.entries, plan.land, place)
    }


@pytest.fixture(scope="module")
def drawn(pages: dict[str, Element]) -> dict[str, Element]:
    """The pictures of heights by their plantings."""
    return {
        name_of(picture).removeprefix("heights-"): picture
        for address, page in pages.items()
        if address.startswith("places/")
        for picture in pictures(page)
        if name_of(picture).startswith("heights-")
    }


def feet_at(picture: Element, y: float) -> float:
    """The height at a place of a picture, by the lines of its scale and the words over them."""
    lines = [one for one in picture.all("line") if one.has("level") or one.has("ground-line")]
    ground, top = number(lines[0], "y1"), number(lines[-1], "y1")
    words = [one.text() for one in picture.all("text", "scale") if one.text().endswith(" ft")]
    return float(words[-1].removesuffix(" ft")) * (ground - y) / (ground - top)


def days_across(picture: Element) -> tuple[datetime.date, int, float]:
    """The first day of a picture, how many days it has, and the percent of the width they take."""
    first, last = (day(picture.attributes[f"data-{name}"]) for name in ("first", "last"))
    return first, (last - first).days + 1, number(picture, "data-across")


def test_curves_run_through_the_plan_s_heights(
    curves: dict[str, Growing], drawn: dict[str, Element]
) -> None:
    """Each curve, at every point of it, is what the plan gives for that planting and day."""
    compared = 0
    for planting, picture in drawn.items():
        begins, days, _ = days_across(picture)
        last = begins.year + round(days / 365)
        known = {
            one for year in range(begins.year, last + 2) for one in bends(curves[planting], year)
        }
        sheets = [one for one in picture.all("svg") if "viewbox" in one.attributes]
        assert [one.attributes["viewbox"].split()[2] for one in sheets] == [str(days)] * len(sheets)
        for line in picture.all("polyline"):
            (curve,) = [one for one in CURVES if line.has(one)]
            for point in line.attributes["points"].split():
                x, y = map(float, point.split(","))
                when = begins + datetime.timedelta(days=x)
                assert when in known, (planting, when)
                found = heights_on(curves[planting], when, (curve,))
                assert found is not None
                assert feet_at(picture, y) * 12 == pytest.approx(
                    found.by_curve[curve].value, abs=0.02
                )
                compared += 1
    assert compared > 200


def test_a_picture_of_heights_reaches_the_third_fall_to_come(
    owner: Site, drawn: dict[str, Element]
) -> None:
    last = falls_ahead(owner.plan.as_of)[-1]
    assert drawn.keys() >= {"lane-27", "north-22"}
    for picture in drawn.values():
        assert day(picture.attributes["data-last"]) > last


def test_what_is_needed_is_drawn_and_named_at_its_end(
    owner: Site, drawn: dict[str, Element]
) -> None:
    needed = {
        planting.id: figure.value
        for place in owner.plan.places
        if (figure := needed_on(place)) is not None and place.typed is not None
        for planting in place.typed.plantings
    }
    assert len(needed) > 3
    for planting, picture in drawn.items():
        lines = picture.all("line", "needed")
        heights = [feet_at(picture, number(line, "y1")) for line in lines]
        assert heights == pytest.approx([needed[planting]] if planting in needed else [], abs=0.01)
        names = [one.text() for one in picture.all("text", "scale")]
        assert ("needed" in names) == (planting in needed)
        if picture.all("polyline"):
            assert set(CURVES) <= set(names)


def test_the_hunting_season_is_shaded_and_the_day_of_the_plan_marked(
    owner: Site, drawn: dict[str, Element]
) -> None:
    hunting = [
        (one.first, one.last)
        for one in owner.plan.land.dates
        if one.kind == "hunting" and holds_on(one.places, "lane")
    ]
    picture = drawn["lane-27"]
    begins, days, across = days_across(picture)
    shaded = list(shapes(picture, "from"))
    assert [
        (day(o.attributes["data-from"]), day(o.attributes["data-to"])) for o in shaded
    ] == hunting
    for one, (first, last) in zip(shaded, hunting, strict=True):
        assert number(one, "x") == pytest.approx(across * (first - begins).days / days, abs=0.01)
        width = ((last - first).days + 1) / days
        assert number(one, "width") == pytest.approx(across * width, abs=0.01)
    (now,) = picture.all("line", "now")
    today = (owner.plan.as_of - begins).days / days
    assert number(now, "x1") == number(now, "x2") == pytest.approx(across * today, abs=0.01)
    assert [one.text() for one in picture.all("text", "now")] == ["day of this plan"]


def test_the_finding_stands_under_the_picture(owner: Site, pages: dict[str, Element]) -> None:
    """Independent: switchgrass on common ground, the lower end of growth.yaml, sown in 2027.

    Half a foot in its first fall, three feet in the second, six in the third.
    """
    (caption,) = [
        one
        for one in pages["places/lane.html"].all("figcaption")
        if one.attributes.get("id") == "heights-lane-27-f"
    ]
    assert caption.text() == "Low curve reaches 3 ft by fall 2028; 6 ft needed."
    assert [str(one) for one in falls_ahead(owner.plan.as_of)][-1] == "2028-11-15"


def test_dots_are_the_heights_of_the_log(owner: Site, pages: dict[str, Element]) -> None:
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


def _beside(page: Element) -> Element:
    (figure,) = page.all("figure", "beside")
    return figure


@pytest.mark.parametrize("place", ["lane", "creek", "north", "ridge"])
def test_a_screen_stands_to_the_person_as_its_low_curve_does(
    owner: Site, pages: dict[str, Element], place: str
) -> None:
    """Measured off the drawing: the tallest blade against the figure, which is 6 ft tall."""
    figure = _beside(pages[f"places/{place}.html"])
    curve = _curve(owner, place)
    heads = figure.all("ellipse", "person")
    assert len(heads) == len(curve.told) == 3
    person_px = -(number(heads[0], "cy") - number(heads[0], "ry"))
    grass = [
        max(-float(up) for _, _, up in MOVE.findall(one.attributes["d"]))
        for one in figure.all("path", "grass")
    ]
    standing = [low.height.value for low in curve.told if low.height is not None]
    assert [6 * tall / person_px for tall in grass] == pytest.approx(standing, abs=0.02)
    assert "person 6 ft tall" in figure.all("figcaption")[0].text()


def _curve(owner: Site, place: str) -> LowCurve:
    typed = owner.plan.place(place).typed
    assert isinstance(typed, Screen)
    (planting,) = [one for one in typed.plantings if one.id in low_curves(owner.plan)]
    return low_curves(owner.plan)[planting.id]


def test_each_height_is_said_below_with_what_it_means(
    owner: Site, pages: dict[str, Element]
) -> None:
    """Independent: lane is sown in 2027; north was measured at over five feet and needs 50 in."""
    lane = [one.text() for one in _beside(pages["places/lane.html"]).all("li")]
    assert lane == ["Nownothing yet", "Fall 2026nothing yet", "Fall 20276 inno screen yet"]
    north = [one.text() for one in _beside(pages["places/north.html"]).all("li")]
    assert [text.startswith(day) for text, day in zip(north, ("Now", "Fall 2026"), strict=False)]
    assert north[1].endswith("hides")
    for low, said in zip(_curve(owner, "north").told, north, strict=True):
        assert low.height is not None
        assert low.height.printed() in said


def test_places_too_near_are_moved_apart_and_others_stay() -> None:
    """Independent: worked by hand."""
    assert kept_apart((50, 10, 100), 14) == (50, 10, 100)
    assert kept_apart((20, 20), 14) == (13, 27)
    assert kept_apart((10, 20, 24), 14) == pytest.approx((4, 18, 32))
    assert kept_apart((), 14) == ()
