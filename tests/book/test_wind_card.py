"""The wind card and the winds on pages of stands and walks, read off the finished pages."""

from html import unescape
from re import sub

import pytest

from generator.book.make import make_book
from generator.book.model import Book
from generator.inventory.schema import PARTNER
from generator.plan.readers.seen_by import seen_by
from tests.book.reading import read
from tests.book.sites import Site
from tests.plan.planned import inventory_of, planned
from tests.properties import Data, small_property

Rows = dict[str, dict[str, str]]
BED = {"toward": 160, "distance_yd": 180, "name": "the cedar bed"}


def with_stands(*stands: Data, walks: tuple[Data, ...] = (), **files: Data) -> Data:
    data = small_property() | files
    data["stands"] = {"stands": list(stands)}
    data["routes"] = {"routes": list(walks)}
    data["screens"]["screens"][0]["hides"] = []
    return data


def a_stand(identity: str, **more: object) -> Data:
    return {"id": identity, "name": identity.title(), "straps_checked_on": "2026-08-01", **more}


def a_walk(identity: str, **more: object) -> Data:
    return {"id": identity, "name": identity.title(), "serves": ["oak"], **more}


def book(data: Data, reader: str = "owner") -> Book:
    plan = planned(data)
    if reader == "owner":
        return make_book(plan)
    (found,) = (one for one in inventory_of(data).readers if one.id == reader)
    return make_book(seen_by(plan, found))


def page_of(data: Data, address: str, reader: str = "owner") -> str:
    pages = {page.address: page.markdown for page in book(data, reader).pages}
    return str(pages[address])


def card(data: Data, reader: str = "owner") -> Rows:
    """The rows of the card by their first cell, each cell by the stand it is of."""
    found: Rows = {}
    for table in read(page_of(data, "winds.md", reader)).all("table", "winds"):
        _, *stands = (head.text() for head in table.all("th"))
        for row in table.all("tr")[1:]:
            first, *cells = (" ".join(cell.text().split()) for cell in row.all("td"))
            found.setdefault(first, {}).update(zip(stands, cells, strict=True))
    return found


def test_each_wind_says_its_word_the_walk_and_the_reason() -> None:
    """By hand: a bed at 160 is 25, 70 and 115 off the line of winds from NW, W and SW."""
    oak = a_stand("oak", lies="open", beds=[BED])
    rows = card(with_stands(oak, walks=(a_walk("path", winds_for=["SW", "W"]), a_walk("creek"))))
    assert rows["Northwest"]["Oak"] == "wrong wind onto the cedar bed"
    assert rows["West"]["Oak"] == "your call Path; maybe onto the cedar bed"
    assert rows["Southwest"]["Oak"] == "OK Path; blows clear"
    assert rows["South"]["Oak"] == "your call Path: not typed"
    assert rows["Light air"]["Oak"] == "drifts below 4 mph"
    assert "Light air on a slope, morning" not in rows


def test_stands_stand_in_the_order_of_the_file_and_nothing_ranks_them() -> None:
    stands = [a_stand(name) for name in ("oak", "elm", "ash")]
    assert [*card(with_stands(*stands))["North"]] == ["Oak", "Elm", "Ash"]
    assert [*card(with_stands(*stands[::-1]))["North"]] == ["Ash", "Elm", "Oak"]


def test_many_stands_take_more_than_one_leaf() -> None:
    data = with_stands(*(a_stand(f"stand-{number}") for number in range(8)))
    tables = read(page_of(data, "winds.md")).all("table", "winds")
    assert [len(table.all("th")) - 1 for table in tables] == [6, 2]
    ids = [
        one.attributes["id"]
        for one in read(page_of(data, "winds.md")).all("td")
        if "id" in one.attributes
    ]
    assert len(ids) == len(set(ids)) == 8


def test_what_is_unsafe_or_closed_stands_first_and_takes_the_words_of_its_winds() -> None:
    """A wind typed as right does not stand above an unsafe ladder, nor above stay-out dates."""
    oak = a_stand("oak", winds_for=["NW"])
    look = {"id": "look", "done_on": "2026-08-10", "inspected": {"what": ["oak"], "sound": False}}
    quiet = {"id": "rest", "kind": "quiet", "places": ["elm"]}
    quiet |= {"first": "2026-10-20", "last": "2026-11-25"}
    data = with_stands(
        oak,
        a_stand("elm", winds_for=["NW"]),
        walks=(a_walk("path", winds_for=["NW"], serves=["oak", "elm"]),),
        log={"entries": [look]},
        dates={"dates": [quiet]},
    )
    rows = card(data)
    assert next(iter(rows)) == "First"
    assert "unsafe" in rows["First"]["Oak"]
    assert rows["Northwest"]["Oak"] == "do not climb"
    assert rows["First"]["Elm"] == "Stay out Oct 20 to Nov 25, 2026"
    assert rows["Northwest"]["Elm"] == "OK Path; typed as right; by bearings your call"


def test_a_slope_says_which_way_air_runs_in_the_morning_and_in_the_evening() -> None:
    """By hand: 160 lies 25 off the fall to the southeast, and half a sector is in doubt too."""
    rows = card(with_stands(a_stand("oak", lies="open", falls_to="SE", beds=[BED]), a_stand("elm")))
    morning, evening = (rows[f"Light air on a slope, {half}"] for half in ("morning", "evening"))
    assert morning["Oak"] == "downhill, southeast: to the cedar bed; later uphill"
    assert evening["Oak"] == "uphill; at last downhill, southeast: to the cedar bed"
    assert morning["Elm"] == "no slope typed"
    assert rows["Light air"]["Oak"] == "drifts below 5 mph"
    assert rows["Light air"]["Elm"] == "drifts below 4 mph, your call below 10 mph"


def test_a_stand_s_page_shows_what_is_typed_and_how_far_off_the_line_it_lies() -> None:
    oak = a_stand(
        "oak",
        lies="timber",
        beds=[BED],
        winds_for=["NNW", 200],
        food=[{"toward": "W"}],
        deer_come_from=["N"],
        downwind_reach_yd=250,
    )
    data = with_stands(oak, walks=(a_walk("path", lies="edge"),))
    page = text_of(page_of(data, "stands/oak.md"))
    for told in ("25 degrees", "from the north-northwest, 200 degrees", "the cedar bed, 160",
                 "180 yd", "west, how far is not typed", "timber", "250 yd",
                 "told in one of eight directions"):  # fmt: skip
        assert told in page, told
    walk = text_of(
        page_of(with_stands(oak, walks=(a_walk("path", lies="edge"),)), "routes/path.md")
    )
    assert "Around it an edge" in walk


def text_of(markdown: str) -> str:
    return " ".join(unescape(sub(r"<[^>]*>", " ", markdown)).split())


FRIEND = {"id": "friend", "kind": PARTNER, "jobs": [], "stands": ["oak"], "routes": ["path"]}


def handed(**oak: object) -> Data:
    data = with_stands(
        a_stand("oak", winds_for=["W"], lies="open", **oak),
        a_stand("elm", winds_for=["N"]),
        walks=(a_walk("path", winds_for=["W"]), a_walk("hindmost", winds_for=["N"])),
    )
    data["readers"]["readers"].append(FRIEND)
    return data


def test_a_partner_sees_typed_winds_of_what_is_handed_over_and_never_beds() -> None:
    data = handed(beds=[BED], food=[{"toward": 20, "name": "the far clover"}], deer_come_from=["N"])
    rows = card(data, "friend")
    assert rows["West"] == {"Oak": "OK Path; typed as right"}
    assert rows["Northwest"] == {"Oak": "your call Path; ask the owner"}
    everything = " ".join(str(page.markdown) for page in book(data, "friend").pages)
    for kept in ("cedar bed", "the far clover", "Hindmost", "Elm"):
        assert kept not in everything, kept
    # what is kept changes no byte of theirs
    assert book(data, "friend").pages == book(handed(), "friend").pages


def test_a_contractor_has_nothing_of_the_wind(demo_sites: dict[str, Site]) -> None:
    data = handed(beds=[BED])
    contractor = next(one for one in data["readers"]["readers"] if one["kind"] == "contractor")
    addresses = {page.address for page in book(data, contractor["id"]).pages}
    assert "winds.md" not in addresses
    have = {name for name, site in demo_sites.items() if "winds.html" in site.pages()}
    assert have == {"owner", "hunting-partner"}


def test_without_a_stand_there_is_no_card() -> None:
    addresses = {page.address for page in book(with_stands()).pages}
    assert "winds.md" not in addresses


# Stands of the demo, worked by hand in tests/plan/test_stand_winds.py: beds 25 and 75 off the line.
@pytest.mark.parametrize(
    ("stand", "told"),
    [
        ("Oak ladder", "do not climb"),
        ("Ridge ladder", "wrong wind onto the cedar draw"),
        ("Pond blind", "your call Pond walk; maybe onto the slough"),
        ("North hang-on", "OK Ridge walk; blows clear"),
    ],
)
def test_the_demo_s_card_on_a_wind_from_the_northwest(
    demo_sites: dict[str, Site], stand: str, told: str
) -> None:
    (table,) = read(demo_sites["owner"].pages()["winds.html"]).all("table", "winds")
    heads = [head.text() for head in table.all("th")]
    (row,) = (
        row for row in table.all("tr") if row.all("td") and row.all("td")[0].text() == "Northwest"
    )
    cells = dict(zip(heads, (" ".join(cell.text().split()) for cell in row.all("td")), strict=True))
    assert cells[stand] == told
