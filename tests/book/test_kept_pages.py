"""Pages of what is bought and kept say what jobs need of it, what is there and what to buy."""

from pathlib import Path

import pytest

from tests.book.reading import read
from tests.book.sites import build_sites
from tests.plan.test_fertilizing import POTASH, fed
from tests.plan.test_liming import enm, limed
from tests.properties import Data, full_card, full_use, small_property, write_property


def facts(data: Data, address: str, folder: Path) -> dict[str, str]:
    """What a page says of a thing, by the word before it."""
    site = build_sites(write_property(folder / "property", data), folder / "sites", "owner")[
        "owner"
    ]
    document = read((site.folder / address).read_text(encoding="utf-8"))
    return {
        row.all("dt")[0].text(): " ".join(row.all("dd")[0].text().split())
        for kept in document.all("dl", "facts")
        for row in kept.all("div")
    }


def test_a_herbicide_needed_on_hand_and_to_buy(tmp_path: Path) -> None:
    # An acre takes 32 fl oz; 12 are there; a gallon is bought.
    said = facts(small_property(), "products/brew.html", tmp_path)
    assert said["Needed by jobs without a stop"] == "32 fl oz"
    assert said["On hand"] == "12 fl oz, counted Aug 15, 2026"
    assert said["To buy"].startswith("1 of 1 gal")


def test_no_amount_of_a_herbicide_stands_where_every_job_of_it_has_a_stop(tmp_path: Path) -> None:
    data = small_property(full_card(full_use(allowed="no")))
    said = facts(data, "products/brew.html", tmp_path)
    assert not {"Needed by jobs without a stop", "On hand", "To buy"} & said.keys()


@pytest.mark.parametrize(
    ("data", "address", "needed"),
    [
        # 15 lb of potash an acre at 60 percent
        (fed(POTASH | {"on_hand_lb": 10}), "products/potash.html", "25 lb"),
        # 600 lb of ENM at 400 to the ton: a ton and a half
        (limed(enm(600), enm_lb_per_ton=400, on_hand_lb=10), "products/quarry.html", "3,000 lb"),
    ],
)
def test_fertilizer_and_lime_needed_and_on_hand(
    tmp_path: Path, data: Data, address: str, needed: str
) -> None:
    said = facts(data, address, tmp_path)
    assert said["Needed by jobs without a stop"] == needed
    assert said["On hand"] == "10 lb"
