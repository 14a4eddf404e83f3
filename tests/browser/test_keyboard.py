"""A reader without a mouse: the Tab key, Enter and Escape reach and close everything there is."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.book.sites import Site
from tests.browser.kinds import Looked, every_page, one_of_each
from tests.browser.looking import look
from tests.browser.visits import DESKTOP, PHONE, listening_page

# Set before the first press: what each press of Tab comes to, in turn, and whether that is seen.
WATCH = """() => {
  const all = looks.all("article :is(a[href], button, summary, input, select, textarea)")
    .filter(looks.shown);
  window.wanted = all;
  window.reached = [];
  window.unseen = [];
  addEventListener("focusin", (event) => {
    const on = event.target;
    window.reached.push(on);
    const box = on.getBoundingClientRect(), style = getComputedStyle(on);
    const clear = /^rgba.*, 0\\)$/.test(style.outlineColor);
    const ring = style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2 && !clear;
    const inView = box.width > 0 && box.bottom > 0 && box.top < innerHeight;
    if (!ring || !inView) window.unseen.push(looks.name(on));
  });
  document.querySelector("article").tabIndex = -1;
  document.querySelector("article").focus();
  window.reached.length = window.unseen.length = 0;
  return all.length;
}"""

# The reading order is the document's; a press past the last one leaves the article.
REACHED = """(presses) => {
  const inside = window.reached.filter((one) => one.closest("article"));
  const faults = window.unseen.map((one) => `the focus is not seen on ${one}`);
  window.wanted.slice(0, presses).forEach((one, turn) => {
    if (inside[turn] !== one) faults.push(`turn ${turn} is not that of ${looks.name(one)}`);
  });
  if (inside.length > window.wanted.length) faults.push("the focus stays in the article");
  return faults.slice(0, 5);
}"""

OUT_OF_TURN = """<!doctype html><style>a { outline: 3px solid red } .bare { outline: none }</style>
<article><h1>Page</h1><a href="#a">first</a><a href="#b" tabindex="-1">passed over</a>
<a class="bare" href="#c">bare</a></article>"""

TABS_AT_MOST = 25
# Of each kind of thing one page; the long run takes every page.
MET = ("index.html", "work.html", "findings.html", "money.html", "records.html", "places", "stands",
       "routes", "seed", "work/spray", "work/sow", "search.html")  # fmt: skip
FOCUS_IS_IN = "(within) => document.activeElement.closest(within) !== null"


def met(sites: dict[str, Site]) -> list[Looked]:
    """A page of each of some kinds, which the keyboard is tried on."""
    found = [page for page in one_of_each(sites) if page.kind in MET]
    assert len(found) > 9
    return found


def _in_turn(page: Page, at_most: int | None = None) -> list[str]:
    """Faults of the page that is open, over all that Tab comes to or the first `at_most`."""
    presses = page.evaluate(WATCH) + 1
    presses = min(presses, at_most or presses)
    for _ in range(presses):
        page.keyboard.press("Tab")
    found: list[str] = page.evaluate(REACHED, presses)
    return found


def test_tab_comes_to_all_there_is_in_reading_order_and_is_seen(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    faults: list[str] = []
    with listening_page(browser, DESKTOP, faults) as page:
        for one in met(demo_sites):
            look(page, one.uri)
            faults += [f"{one.name}: {fault}" for fault in _in_turn(page, TABS_AT_MOST)]
    assert faults == []


@pytest.mark.long
@pytest.mark.parametrize("size", [PHONE, DESKTOP], ids=["telephone", "desk"])
def test_tab_comes_to_all_there_is_on_every_page(
    browser: Browser, demo_sites: dict[str, Site], size: dict[str, int]
) -> None:
    faults: list[str] = []
    with listening_page(browser, size, faults) as page:
        for one in every_page(demo_sites):
            look(page, one.uri)
            faults += [f"{one.name}: {fault}" for fault in _in_turn(page)]
    assert faults == []


def test_a_link_out_of_turn_and_one_without_a_ring_are_seen(
    browser: Browser, tmp_path: Path
) -> None:
    (tmp_path / "page.html").write_text(OUT_OF_TURN, encoding="utf-8")
    with listening_page(browser, DESKTOP, []) as page:
        look(page, (tmp_path / "page.html").as_uri())
        found = _in_turn(page)
    assert found == [
        'the focus is not seen on a.bare "bare"',
        'turn 1 is not that of a "passed over"',
        'turn 2 is not that of a.bare "bare"',
    ]


def test_the_first_press_skips_to_the_text_and_enter_opens_what_is_folded_away(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    opened = 0
    with listening_page(browser, DESKTOP, []) as page:
        for one in met(demo_sites):
            look(page, one.uri)
            _skips_to_the_text(page, one.name)
            opened += _opens_by_enter(page, one.name)
    assert opened > 5


def _skips_to_the_text(page: Page, name: str) -> None:
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.className").startswith("md-skip"), name
    assert page.locator(".md-skip").is_visible()
    page.keyboard.press("Enter")
    links = page.locator("article :is(a[href], summary)").count()
    page.keyboard.press("Tab")
    within = "article" if links else ".foot"
    assert page.evaluate(FOCUS_IS_IN, within), name


def _opens_by_enter(page: Page, name: str) -> bool:
    """Whether the page has something folded away; it is closed, and Enter opens it."""
    folds = page.locator("article details > summary")
    if not folds.count():
        return False
    fold = folds.first
    assert not fold.evaluate("fold => fold.parentElement.open"), name
    fold.focus()
    page.keyboard.press("Enter")
    assert fold.evaluate("fold => fold.parentElement.open"), name
    return True


@pytest.mark.parametrize("size", [PHONE, DESKTOP], ids=["telephone", "desk"])
def test_escape_closes_the_search(
    browser: Browser, demo_sites: dict[str, Site], size: dict[str, int]
) -> None:
    with listening_page(browser, size, []) as page:
        look(page, (demo_sites["owner"].folder / "index.html").as_uri())
        if size == PHONE:
            page.get_by_role("button", name="Search").focus()
            page.keyboard.press("Enter")
        else:
            page.keyboard.press("s")
        page.wait_for_function("document.activeElement.matches('.md-search__input')")
        page.keyboard.type("lane")
        page.locator(".md-search-result__link").first.wait_for(state="visible")
        assert page.locator("#__search").is_checked()
        page.keyboard.press("Escape")
        assert not page.locator("#__search").is_checked()


@pytest.mark.parametrize("key", ["Enter", "Space"])
def test_a_key_opens_the_contents_and_escape_closes_them(
    browser: Browser, demo_sites: dict[str, Site], key: str
) -> None:
    with listening_page(browser, PHONE, []) as page:
        look(page, (demo_sites["owner"].folder / "index.html").as_uri())
        opener = page.get_by_role("button", name="Contents")
        opener.focus()
        page.keyboard.press(key)
        assert opener.get_attribute("aria-expanded") == "true"
        page.wait_for_function(f"({FOCUS_IS_IN})('.contents')")
        page.keyboard.press("Escape")
        assert opener.get_attribute("aria-expanded") == "false"
        assert not page.locator("#__drawer").is_checked()
        assert opener.evaluate("opener => opener === document.activeElement")
