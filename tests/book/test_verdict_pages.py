"""What pages say of heights: whose curves, on what soil, and whether the screen hides."""

import datetime
import html
import re
from typing import Any

import pytest

from generator.book.make import make_book
from generator.plan.build.season_plan import make_plan
from generator.plan.standing.verdicts import VERDICTS, judged
from tests.book.sites import DEMO, plans_of
from tests.plan.planned import inventory_of
from tests.properties import small_property

AS_OF = datetime.date(2029, 9, 2)


def page_of(
    address: str = "places/lane.md", ecotype: str | None = None, variety: str = "", **screen: Any
) -> str:
    """One of the owner's pages of the small property as Markdown, without tags."""
    data = small_property()
    data["screens"]["screens"][0] |= screen
    data["screens"]["screens"][0]["plantings"][0]["upkeep"] = "established_screen_upkeep"
    lot = data["seed"]["lots"][0]
    lot["tag"]["variety"] = variety or "Common"
    if ecotype is not None:
        lot["ecotype"] = ecotype
    book = make_book(make_plan(inventory_of(data), 2030, AS_OF))
    (page,) = [one for one in book.pages if one.address == address]
    return " ".join(html.unescape(re.sub(r"<[^>]*>", " ", page.markdown)).split())


def test_what_to_type_is_said_where_nothing_is_typed() -> None:
    page = page_of()
    assert "the curves of switchgrass of any kind." in page
    assert "No soil is typed, so it is taken as poor" in page
    assert "Type soil: good , ordinary or poor on this place" in page
    assert "Type ecotype: upland or lowland on the seed lot" in page
    assert "Type height_needed_ft on this screen" in page
    assert "Against" not in page
    assert "no height typed" in page_of("places.md")


@pytest.mark.parametrize(
    ("soil", "said"),
    [
        ("good", "the high curve stands beside the others"),
        ("ordinary", "nothing is counted above the typical curve, since"),
        ("poor", "a taller kind or variety counts for nothing."),
    ],
)
def test_the_soil_says_what_is_counted(soil: str, said: str) -> None:
    page = page_of(soil=soil, ecotype="lowland")
    assert said in page
    assert "Type soil:" not in page
    assert "Type ecotype:" not in page
    assert ("lowland switchgrass" in page) == (soil != "poor")


def test_a_tag_and_an_ecotype_that_do_not_agree_are_told() -> None:
    page = page_of(soil="good", ecotype="upland", variety="Kanlow")
    assert "is of another ecotype than the one typed, so neither counts" in page
    assert "the curves of switchgrass of any kind." in page


@pytest.fixture(scope="module")
def demo_pages() -> dict[str, str]:
    """The pages of the demonstration's owner as Markdown, by their addresses."""
    (plan,) = [plan for name, plan in plans_of(DEMO).items() if name == "owner"]
    return {one.address: one.markdown for one in make_book(plan).pages}


def test_a_mixture_says_whose_curves_these_are(demo_pages: dict[str, str]) -> None:
    said = "the curves of big bluestem: of what is sown here, the lowest whose heights are known."
    assert said in demo_pages["places/north.md"]


def test_verdicts_stand_beside_their_days() -> None:
    """By hand, upland on ordinary soil: low 48 in in fall and 28.8 in in winter; needed 3 ft."""
    page = page_of(soil="ordinary", ecotype="upland", height_needed_ft=3)
    assert "Against 3 ft needed" in page
    assert re.search(r"Nov 15, 2029 3 48 in 66 in 66 in Hides", page)
    assert re.search(r"Jan 15, 2030 3 28.8 in 56.1 in 66 in Do not count on it", page)
    places = page_of("places.md", soil="ordinary", ecotype="upland", height_needed_ft=3)
    assert "Nov 15, 2029: Hides, low 48 in, needed 3 ft" in re.sub(r" (?=[:,])", "", places)


def test_the_feet_that_hide_and_those_that_do_not_are_named(demo_pages: dict[str, str]) -> None:
    text = {
        address: " ".join(html.unescape(re.sub(r"<[^>]*>", " ", demo_pages[address])).split())
        for address in ("places/creek.md", "places.md", "seasons/2027.md", "places/ridge.md")
    }
    thin = re.compile(r"Not 380 ft .*?to 620 ft : counted thin Jun 17, 2026")
    told = text["places/creek.md"][text["places/creek.md"].index("Hides in part") :]
    assert re.match(r"Hides in part : 0 ft .*?to 363 ft", told)
    assert re.search(r"Not 363 ft .*?to 380 ft : too low to count on\. Not 380 ft", told)
    assert thin.search(told)
    assert "Hides in part" in text["places.md"]
    assert re.search(r"380 ft .*?to 620 ft .*?counted thin: hides nobody", text["seasons/2027.md"])
    assert "Aug 10, 2026 does not raise the low curve." in text["places/ridge.md"]
    assert "does not raise" not in text["places/creek.md"]


def test_the_demonstration_shows_every_verdict_to_the_owner_and_none_to_others() -> None:
    plans = plans_of(DEMO)
    shown = {
        name: {one.verdict for place in plan.places for one in judged(plan, place)}
        for name, plan in plans.items()
    }
    assert shown.pop("owner") == set(VERDICTS)
    assert len(shown) >= 2
    assert not any(shown.values())
