"""Catch tests on the pages of machines: what each gave, the newest first, the old ones marked."""

from pathlib import Path

import pytest

from tests.book.reading import Element, read
from tests.book.sites import build_sites
from tests.plan.sown import by_drill, by_spreader, sown
from tests.properties import Data, small_property, write_property

OLD = "2025-08-15"  # the day of the plan is Aug 20, 2026
AGO = "more than twelve months ago"


def page(data: Data, address: str, folder: Path) -> Element:
    site = build_sites(write_property(folder / "property", data), folder / "sites", "owner")[
        "owner"
    ]
    return read((site.folder / address).read_text(encoding="utf-8"))


def facts(document: Element) -> list[str]:
    """The lists of facts on a page that are of a catch test, as text."""
    told = [" ".join(one.text().split()) for one in document.all("dl", "facts")]
    return [one for one in told if "Tested" in one]


def test_a_sprayer_s_tests_with_spray_to_an_acre_and_the_nozzle_that_differs(
    tmp_path: Path,
) -> None:
    data = small_property()
    tests = data["equipment"]["sprayers"][0]["catch_tests"]
    # Mean 32; 28 is an eighth below it. 5940 x 0.25 / (4.5 x 20) = 16.5 gal to an acre at 4.5 mph.
    tests.insert(
        0,
        {
            "tested_on": OLD,
            "caught_fl_oz": [32, 34, 34, 32, 28, 32],
            "caught_in_seconds": 60,
            "speed_mph": 4.5,
        },
    )
    newest, older = facts(page(data, "equipment/boom.html", tmp_path))
    assert "Aug 16, 2026" in newest
    assert AGO not in newest
    assert "18.6 gal/ac at 4 mph, nozzles 20 in apart" in newest
    assert "0% from the mean" in newest
    assert "Aug 15, 2025" in older
    assert AGO in older
    assert "16.5 gal/ac at 4.5 mph, nozzles 20 in apart" in older
    assert "12.5% from the mean" in older


@pytest.mark.parametrize(
    ("sow", "address", "test", "told"),
    [
        # 0.14 lb on 12 by 100 ft: 0.14 x 43,560 / 1,200 = 5.082 lb to an acre
        (by_spreader, "equipment/crank.html", {"caught_lb": 0.14}, "5.08 lb/ac"),
        # 0.1 lb from 6 rows of 7.5 in over 100 ft, 375 sq ft: 0.1 x 43,560 / 375 = 11.616 lb
        (
            by_drill,
            "equipment/box.html",
            {"caught_lb": 0.1, "rows_caught_count": 6, "distance_ft": 100},
            "11.6 lb/ac",
        ),
    ],
)
def test_tests_of_spreaders_and_drills_stand_newest_first(
    tmp_path: Path, sow: object, address: str, test: Data, told: str
) -> None:
    assert callable(sow)
    data = sow(sown(), test | {"tested_on": OLD}, test)
    newest, older = facts(page(data, address, tmp_path))
    assert "Aug 16, 2026" in newest
    assert AGO not in newest
    assert "Aug 15, 2025" in older
    assert AGO in older
    assert told in newest
