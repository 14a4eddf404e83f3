"""The page of what lies where: every thing with its size, its points, and who sees it."""

from dataclasses import replace
from itertools import pairwise
from typing import Any

import pytest
from geographiclib.geodesic import Geodesic

from generator.book.pages.land import land_page
from generator.plan.findings.about_places import PlaceNote
from generator.plan.findings.order import finding
from generator.plan.land.measured import measured_line_ft, measured_outline_ac
from generator.plan.model.finding import Subject
from generator.plan.model.plan import Plan
from generator.units import convert
from tests.book.reading import Element, read
from tests.plan.planned import inventory_of, planned
from tests.properties import Data, small_property

WGS84 = Geodesic.WGS84
FIELD = [[41.0001, -93.0001], [41.0001, -92.9981], [40.9987, -92.9978], [40.9985, -93.0003]]
LINE = [[41.0, -93.0], [41.001, -93.0], [41.001, -92.9985]]
CREEK: dict[str, Any] = {
    "id": "creek", "kind": "creek", "name": "North creek", "known_as": "The creek",
    "line_lat_lon": LINE, "width_ft": 8, "counts_from": "waters_edge", "got": "surveyed",
    "off_ft": 2, "note": "Runs all year.",
}  # fmt: skip
ORCHARD = {
    "id": "orchard", "kind": "neighbors_crop", "name": "Orchard", "area_lat_lon": FIELD,
    "height_ft": 14, "leaf_off": "yes", "far": "yes", "got": "drawn",
}  # fmt: skip
WELL = {"id": "well", "kind": "well", "name": "Old well", "at_lat_lon": [41.0004, -93.0002]}
BEDS = {"id": "beds", "kind": "bedding", "name": "Beds", "at_lat_lon": [41.0005, -93.0002]}
POND = {
    "id": "pond", "kind": "pond", "name": "Low pond", "at_lat_lon": [41.0, -93.001],
    "radius_ft": 40, "leaf_off": "no", "counts_from": "bank",
}  # fmt: skip


def property_with(*things: dict[str, Any]) -> Data:
    data = small_property()
    data["property"] |= {"location_lat_lon": [41.0, -93.0], "time_zone": "America/Chicago"}
    data["readers"]["readers"].append({"id": "friend", "kind": "partner", "jobs": []})
    data["land"] = {"land": list(things)}
    return data


def page_of(plan: Plan) -> Element:
    return read(land_page(plan).page.markdown)


def rows_of(plan: Plan) -> dict[str, list[str]]:
    """The cells of each thing, by the id its line has for those who link to it."""
    return {
        row.attributes["id"]: [cell.text() for cell in row.all("td")]
        for row in page_of(plan).all("tr")
        if "id" in row.attributes
    }


def test_every_thing_stands_there_with_its_size_and_its_points() -> None:
    plan = planned(property_with(CREEK, ORCHARD, WELL, POND))
    rows = rows_of(plan)
    assert list(rows) == ["thing-creek", "thing-orchard", "thing-well", "thing-pond"]
    name, kind, size, got, shown = rows["thing-creek"]
    assert (name, got, shown) == (
        "North creek",
        "surveyed, may be off by 2 ft",
        "you aloneOthers call it The creek.",
    )
    assert kind == "Creek. Runs all year.Labels count from the water's edge."
    assert size == "778 ft long, 8 ft wide"
    assert rows["thing-orchard"][1:4] == [
        "Neighbor's crop, bare in winter",
        "7.8 ac, 14 ft tall",
        "drawn, may be off by 30 fttruly lies that far off",
    ]
    assert rows["thing-well"][2:] == [
        "a point",
        "not said, so with a phone, may be off by 16 ft",
        "you alone",
    ]
    assert rows["thing-pond"][1:3] == [
        "Pond, in leaf all winterLabels count from the bank.",
        "40 ft around a point",
    ]


def test_sizes_are_those_of_another_library() -> None:
    """Independent: geographiclib on the same points."""
    creek, orchard = inventory_of(property_with(CREEK, ORCHARD)).land
    assert creek.line_lat_lon is not None
    assert orchard.area_lat_lon is not None
    meters = sum(WGS84.Inverse(*one, *other)["s12"] for one, other in pairwise(LINE))
    polygon = WGS84.Polygon()
    for point in FIELD:
        polygon.AddPoint(*point)
    _, _, square_meters = polygon.Compute()
    length = measured_line_ft(creek.line_lat_lon, type(creek))
    inside = measured_outline_ac(orchard.area_lat_lon, type(orchard))
    assert length.value == pytest.approx(convert(meters, "m", "ft"), rel=1e-9)
    assert inside.value == pytest.approx(convert(abs(square_meters), "sq_m", "ac"), rel=1e-9)


def test_readers_are_named_as_they_are_handed_things() -> None:
    shown = {"shown_to": ["friend"], "coordinates_for": ["friend"]}
    assert (
        rows_of(planned(property_with(WELL | shown)))["thing-well"][-1]
        == "friendwith coordinates: friend"
    )


def test_what_is_found_of_a_thing_stands_above_the_table() -> None:
    plan = planned(property_with(WELL))
    assert page_of(plan).all("section") == []
    found = finding(PlaceNote.NO_WIDTH, Subject("land", "well"), plan.land.things[0].where)
    (told,) = page_of(replace(plan, findings=(found,))).all("section")
    assert found.words in told.text()


def test_with_nothing_of_the_land_the_page_says_so() -> None:
    page = page_of(planned(property_with()))
    assert "Nothing is written down of what lies on the land" in page.text()
    assert "In land.yaml" in page.text()
    assert page.all("table") == []


def test_whoever_works_near_a_thing_that_is_dangerous_sees_it() -> None:
    data = property_with(WELL, BEDS)
    line = [[41.0002, -93.0002], [41.002, -93.0002]]
    data["screens"]["screens"][0] |= {"line_lat_lon": line}
    rows = rows_of(planned(data))
    assert rows["thing-well"][-1] == "hired"
    assert rows["thing-beds"][-1] == "you alone"
