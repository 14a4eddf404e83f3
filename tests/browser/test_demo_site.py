"""The demo property's sites, opened from their folders as the owner and the contractor do."""

import re
from collections.abc import Callable, Mapping

import pytest
from playwright.sync_api import Browser, Page

from tests.book.sites import Site, demo_readers
from tests.browser.kinds import Looked, every_page, one_of_each_kind
from tests.browser.visits import DESKTOP, PHONE, listening_page, visit_all

READERS = demo_readers()
MAIN_LINKS = ".cards a, .to-emergency, .contents a"
TABS_AT_MOST = 120

# What has the focus: its address, whether it is in view, and the ring drawn around it.
FOCUSED = """() => {
  const element = document.activeElement, box = element.getBoundingClientRect();
  const style = getComputedStyle(element);
  const shown = box.width > 0 && box.top >= 0 && box.bottom <= innerHeight + 1;
  const ring = style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2;
  const clear = /, 0\\)$/.test(style.outlineColor) || style.outlineColor === "transparent";
  return [element.tagName === "A" ? element.href : "", shown && ring && !clear];
}"""


# Pages are many, and the look at one of each kind opens each kind.
@pytest.mark.parametrize(
    "reader",
    [
        one if one == "hired-sprayer" else pytest.param(one, marks=pytest.mark.long)
        for one in READERS
    ],
)
def test_every_page_opens_clean_and_unfolds_within_a_phone(
    browser: Browser, demo_sites: dict[str, Site], reader: str
) -> None:
    assert visit_all(browser, demo_sites[reader].folder) == []


def test_a_search_for_the_lane_finds_its_screen_and_opens_it(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    screen = demo_sites["owner"].plan.place("lane")
    faults: list[str] = []
    with listening_page(browser, DESKTOP, faults) as page:
        page.goto((demo_sites["owner"].folder / "index.html").as_uri())
        page.keyboard.press("s")
        page.locator(".md-search__input").press_sequentially("lane")
        title = page.locator("h1", has_text=re.compile(rf"^\s*{re.escape(screen.name)}\s*$"))
        page.locator(".md-search-result__link", has=title).first.click()
        page.wait_for_url(f"**/places/{screen.id}.html?h=*")
        assert page.locator("article h1").inner_text() == screen.name
    assert faults == []


@pytest.mark.parametrize("reader", READERS)
def test_the_tab_key_reaches_every_main_link_and_shows_where_it_is(
    browser: Browser, demo_sites: dict[str, Site], reader: str
) -> None:
    with listening_page(browser, DESKTOP, []) as page:
        page.goto((demo_sites[reader].folder / "index.html").as_uri())
        wanted = {link.evaluate("a => a.href") for link in page.locator(MAIN_LINKS).all()}
        reached = _tabbed_through(page)
    assert len(wanted) >= 5
    assert wanted - reached.keys() == set()
    assert [address for address in wanted if not reached[address]] == []


@pytest.mark.parametrize(
    "pages", [one_of_each_kind, pytest.param(every_page, marks=pytest.mark.long)]
)
def test_a_click_on_a_number_opens_its_working(
    browser: Browser,
    demo_sites: dict[str, Site],
    pages: Callable[[Mapping[str, Site]], list[Looked]],
) -> None:
    sheets = [one for one in pages(demo_sites) if one.kind.startswith("work/")]
    assert {one.reader for one in sheets} == demo_sites.keys()
    clicked = 0
    with listening_page(browser, PHONE, []) as page:
        for one in sheets:
            page.goto(one.uri)
            # on some sheets every number lies in a fold
            if not page.locator("article a.n:visible").count():
                continue
            clicked += 1
            number = page.locator("article a.n:visible").first
            working = page.locator(f"[id='{(number.get_attribute('href') or '#')[1:]}'] p").first
            assert not working.is_visible(), one.name
            number.click()
            working.wait_for(state="visible")
    assert clicked > len(sheets) / 2


@pytest.mark.parametrize("reader", READERS)
def test_every_page_has_one_main_heading(demo_sites: dict[str, Site], reader: str) -> None:
    pages = demo_sites[reader].pages()
    headings = {address: len(re.findall(r"<h1[\s>]", text)) for address, text in pages.items()}
    assert headings == dict.fromkeys(pages, 1)


def _tabbed_through(page: Page) -> dict[str, bool]:
    """The address of each link the Tab key comes to, and whether the focus was seen on it."""
    reached: dict[str, bool] = {}
    for _ in range(TABS_AT_MOST):
        page.keyboard.press("Tab")
        address, seen = page.evaluate(FOCUSED)
        if address:
            reached[address] = reached.get(address, True) and seen
    return reached
