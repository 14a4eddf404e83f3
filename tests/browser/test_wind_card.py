"""The wind card in the truck: one leaf of paper, and a phone at arm's length."""

import re

import pytest
from playwright.sync_api import Browser

from tests.book.sites import Site
from tests.browser.visits import DESKTOP, PHONE, listening_page

SIDE = re.compile(rb"/Type\s*/Page\b")
POINTS_PER_PX = 0.75
# A leaf that lies across, less its margins, at 96 px to an inch.
LEAF_PX = {
    "Letter": ((11 - 16 / 25.4) * 96, (8.5 - 14 / 25.4) * 96),
    "A4": ((297 - 16) / 25.4 * 96, (210 - 14) / 25.4 * 96),
}
MOST_WORDS = 700
WORDS_OF_WIND = "all => all.map((e) => parseFloat(getComputedStyle(e).fontSize))"


@pytest.mark.parametrize("paper", LEAF_PX)
@pytest.mark.parametrize("reader", ["owner", "hunting-partner"])
def test_all_stands_are_on_the_face_of_one_leaf(
    browser: Browser, demo_sites: dict[str, Site], reader: str, paper: str
) -> None:
    width, height = LEAF_PX[paper]
    with listening_page(browser, DESKTOP, []) as page:
        page.goto((demo_sites[reader].folder / "winds.html").as_uri())
        assert len(SIDE.findall(page.pdf(format=paper, prefer_css_page_size=False))) <= 2
        page.emulate_media(media="print")
        page.set_viewport_size({"width": int(width), "height": int(height)})
        card = page.locator(".across").last.bounding_box()
        sizes = page.locator(".across .wind").evaluate_all(WORDS_OF_WIND)
    assert card is not None
    assert card["y"] + card["height"] < height
    assert card["width"] <= width
    assert min(sizes) * POINTS_PER_PX >= 10.5


def test_it_is_short_and_on_a_phone_each_wind_names_its_stands(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    site = demo_sites["owner"]
    with listening_page(browser, PHONE, []) as page:
        page.goto((site.folder / "winds.html").as_uri())
        assert len(page.locator("article").inner_text().split()) < MOST_WORDS
        page.get_by_role("link", name="Southwest", exact=True).click()
        assert page.locator("td#southwest").is_visible()
        row = page.locator("tr", has=page.locator("td#southwest"))
        heads = row.locator("td[data-head]").evaluate_all("all => all.map((e) => e.dataset.head)")
        assert heads == ["Wind from the", *(stand.name for stand in site.plan.land.stands)]
