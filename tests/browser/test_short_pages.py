"""Pages of money begin with the answer: what is not asked first is folded, or on another page."""

from playwright.sync_api import Browser

from tests.book.sites import Site
from tests.browser.visits import PHONE, listening_page

MOST_WORDS = {"buy.html": 700, "money.html": 900, "ahead.html": 1200}


def test_what_to_buy_money_and_years_ahead_are_short_before_anything_is_unfolded(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    site, counted = demo_sites["owner"], {}
    with listening_page(browser, PHONE, []) as page:
        for name in MOST_WORDS:
            page.goto((site.folder / name).as_uri())
            counted[name] = len(page.locator("article").inner_text().split())
    assert all(counted.values())
    assert {name: count for name, count in counted.items() if count > MOST_WORDS[name]} == {}
