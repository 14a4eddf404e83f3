"""What a page says was measured on points is what another implementation measures on them."""

from collections.abc import Iterator
from itertools import pairwise
from typing import Any

import pytest
import yaml
from geographiclib.geodesic import Geodesic

from generator.units import convert
from tests.book.reading import Element, read, workings
from tests.book.sites import DEMO, Site

WGS84 = Geodesic.WGS84
SCREENS = yaml.safe_load((DEMO / "screens.yaml").read_text(encoding="utf-8"))["screens"]


def measured_inputs(page: Element, words: str) -> Iterator[tuple[float, str]]:
    """Every input called so in the workings of a page: its value, and what is said of it."""
    for working in workings(page).values():
        for one in working.inputs:
            if one.words == words and " points typed in " in one.told:
                assert one.value is not None
                yield one.value, one.told


def place_page(site: Site, place: str) -> Element:
    return read(site.pages()[f"places/{place}.html"])


def screens_with(key: str) -> list[dict[str, Any]]:
    found = [one for one in SCREENS if key in one]
    assert found, f"the demonstration shows no {key}"
    return found


def test_the_length_of_a_line(demo_sites: dict[str, Site]) -> None:
    for screen in screens_with("line_lat_lon"):
        points = screen["line_lat_lon"]
        metres = sum(WGS84.Inverse(*one, *other)["s12"] for one, other in pairwise(points))
        page = place_page(demo_sites["owner"], screen["id"])
        # of the ground by the line, and of what its ends may be off
        inputs = list(measured_inputs(page, "length"))
        assert len(inputs) == 2
        for value, told in inputs:
            assert value == pytest.approx(convert(metres, "m", "ft"), rel=1e-6)
            assert f"{len(points)} points" in told


def test_the_area_of_an_outline_and_the_way_around_it(demo_sites: dict[str, Site]) -> None:
    for screen in screens_with("area_lat_lon"):
        polygon = WGS84.Polygon()
        for point in screen["area_lat_lon"]:
            polygon.AddPoint(*point)
        count, metres, square_metres = polygon.Compute()
        page = place_page(demo_sites["owner"], screen["id"])
        ((area_ac, told),) = measured_inputs(page, "area in the outline")
        ((around_ft, _),) = measured_inputs(page, "length around it")
        assert area_ac == pytest.approx(convert(abs(square_metres), "sq_m", "ac"), rel=1e-6)
        assert around_ft == pytest.approx(convert(metres, "m", "ft"), rel=1e-6)
        assert f"{count} points typed in screens.yaml" in told


def test_the_source_of_the_method_is_listed(demo_sites: dict[str, Site]) -> None:
    title = "Planimeter, the area of geodesic polygons"
    assert title in demo_sites["owner"].pages()["sources.html"]
    for reader, site in demo_sites.items():
        if reader != "owner":
            assert all(title not in page for page in site.pages().values())
