"""The one file of each reader, opened alone from an empty folder, as from a message on a phone."""

import datetime
import re
import shutil
from collections.abc import Iterator
from html import unescape
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.base import AXE_SCRIPT
from playwright.sync_api import Browser, Page, ViewportSize

from generator.site.bound import name_of_page
from generator.site.one_file import file_beside
from tests.book.sites import Site
from tests.browser.asked import named_in, the_forty
from tests.browser.kinds import every_page, one_of_each
from tests.browser.looking import AXE, NARROW, Scheme, is_dark, look, on_a_screen, windows
from tests.browser.test_nothing_is_kept import CAN_KEEP, IS_NOT_THERE, THROWS
from tests.browser.visits import DESKTOP, PHONE, SIDEWAYS, listening_page

NOON = datetime.time(12)
LOOKS = [(PHONE, "light", "work"), (DESKTOP, "dark", "index")]
LEAF = re.compile(rb"/Type\s*/Page\b")
HITS = """(asked) => asked.map((words) => {
  const box = document.getElementById("find");
  box.value = words;
  box.dispatchEvent(new Event("input"));
  return [...document.querySelectorAll(".find li a")]
    .map((hit) => [hit.firstChild.textContent, hit.getAttribute("href").slice(1)]);
})"""
LINES = """() => [...document.querySelectorAll("article li, article .stamp")]
  .filter((line) => line.checkVisibility() && !line.closest("nav"))
  .map((line) => line.innerText.trim())"""
# Turns to pages one after another, and tells of each what a reader would trip over.
TURNED = """async (names) => {
  const faults = [];
  for (const name of names) {
    const turned = new Promise((done) => addEventListener("turned", done, { once: true }));
    location.hash = "#" + name;
    await turned;
    const article = document.querySelector("article");
    for (const fold of article.querySelectorAll("details")) fold.open = true;
    if (article.id !== name) faults.push(`${name}: shows ${article.id}`);
    if (document.activeElement !== article.querySelector("h1")) faults.push(`${name}: no focus`);
    if (article.querySelector("a.drawn")) faults.push(`${name}: a drawing is not drawn`);
    const root = document.documentElement;
    const over = root.scrollWidth - root.clientWidth;
    if (over > 0) faults.push(`${name}: ${over} px sideways`);
    const ids = [...document.querySelectorAll("[id]")].map((one) => one.id);
    if (new Set(ids).size < ids.length) faults.push(`${name}: an id stands twice`);
    for (const one of article.querySelectorAll("[aria-labelledby], [aria-describedby]")) {
      const named = `${one.getAttribute("aria-labelledby") ?? ""} ${
        one.getAttribute("aria-describedby") ?? ""}`;
      for (const id of named.split(/\\s+/).filter(Boolean)) {
        if (!document.getElementById(id)) faults.push(`${name}: nothing is called ${id}`);
      }
    }
  }
  return faults;
}"""


def _alone(site: Site, folder: Path) -> str:
    """The address of a site's one file, copied to where nothing stands beside it."""
    folder.mkdir(exist_ok=True)
    return Path(shutil.copy(file_beside(site.folder), folder)).as_uri()


@pytest.fixture(scope="module")
def files(demo_sites: dict[str, Site], tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    folder = tmp_path_factory.mktemp("alone")
    return {reader: _alone(site, folder / reader) for reader, site in demo_sites.items()}


def _pages(sites: dict[str, Site], *, every: bool) -> dict[str, list[str]]:
    """The names of pages in the file of each reader: all of them, or one of each kind."""
    looked = every_page(sites) if every else one_of_each(sites)
    return {
        reader: [page.address.removesuffix(".html") for page in looked if page.reader == reader]
        for reader in sites
    }


def _turned(browser: Browser, files: dict[str, str], pages: dict[str, list[str]]) -> list[str]:
    faults: list[str] = []
    for reader, names in pages.items():
        said: list[str] = []
        with listening_page(browser, NARROW, said) as page:
            page.goto(f"{files[reader]}#emergency")
            # the one that is shown is not turned to
            said += page.evaluate(TURNED, [name for name in names if name != "emergency"])
        faults += [f"{reader}: {fault}" for fault in said]
    return faults


def test_one_page_of_each_kind_is_turned_to_and_holds_together(
    browser: Browser, demo_sites: dict[str, Site], files: dict[str, str]
) -> None:
    pages = _pages(demo_sites, every=False)
    assert sum(map(len, pages.values())) > 40
    assert _turned(browser, files, pages) == []


@pytest.mark.long
def test_every_page_is_turned_to_and_holds_together(
    browser: Browser, demo_sites: dict[str, Site], files: dict[str, str]
) -> None:
    assert _turned(browser, files, _pages(demo_sites, every=True)) == []


def test_the_forty_questions_and_the_names_of_things_find_their_pages_as_in_the_folder(
    browser: Browser, demo_sites: dict[str, Site], files: dict[str, str]
) -> None:
    faults: list[str] = []
    for reader, site in demo_sites.items():
        named = dict(named_in(site))
        forty = the_forty(site) if reader == "owner" else {}
        with listening_page(browser, DESKTOP, faults) as page:
            page.goto(files[reader])
            found = dict(zip([*named, *forty], page.evaluate(HITS, [*named, *forty]), strict=True))
        for asked, title in named.items():
            titles = [hit[0] for hit in found[asked][:2]]
            if not any(one.startswith(title) for one in titles):
                faults.append(f"{reader}: {asked}: found instead is {titles}")
        for asked, address in forty.items():
            if [hit[1] for hit in found[asked][:1]] != [address.removesuffix(".html")]:
                faults.append(f"{asked}: found instead is {found[asked][:3]}")
    assert faults == [], "\n".join(faults)


def _waits_for(page: Page, name: str) -> None:
    page.wait_for_function("name => document.querySelector('article').id === name", arg=name)


def test_a_reader_goes_by_search_and_links_and_back_again(
    browser: Browser, files: dict[str, str]
) -> None:
    faults: list[str] = []
    with listening_page(browser, PHONE, faults) as page:
        page.goto(files["owner"])
        assert page.locator("h1").inner_text() == "This week"
        page.mouse.wheel(0, 400)
        page.wait_for_function("scrollY > 200")
        page.wait_for_timeout(200)
        was_at = page.evaluate("scrollY")
        page.keyboard.press("Tab")
        page.locator(".md-header label[for='__search']").press("Enter")
        page.keyboard.type("lane screen")
        page.locator(".find li a").first.click()
        _waits_for(page, "places/lane")
        assert page.url.endswith("#places/lane")
        assert page.evaluate("scrollY") == 0
        assert not page.locator(".find").is_visible()
        page.locator("article .to-safety").click()
        _waits_for(page, "safety")
        page.locator(".to-emergency").click()
        _waits_for(page, "emergency")
        for name in ("safety", "places/lane", "index"):
            page.go_back()
            _waits_for(page, name)
        page.wait_for_function("at => Math.abs(scrollY - at) < 2", arg=was_at)
        page.go_forward()
        _waits_for(page, "places/lane")
        page.goto("about:blank")
        page.goto(f"{files['owner']}#places/lane")
        _waits_for(page, "places/lane")
        assert page.evaluate("scrollY") == 0
    assert faults == []


def test_a_numbers_mark_unfolds_its_working_and_leads_there_alone_too(
    browser: Browser, files: dict[str, str]
) -> None:
    faults: list[str] = []
    with listening_page(browser, PHONE, faults) as page:
        page.goto(f"{files['owner']}#buy")
        here = page.locator("article a.n[href]").first
        place = (here.get_attribute("href") or "#")[1:]
        assert ":" in place
        here.click()
        page.locator(f"[id='{place}'] p").first.wait_for(state="visible")
        # the place alone is an address too
        page.goto("about:blank")
        page.goto(f"{files['owner']}#{place}")
        page.locator(f"[id='{place}'] p").first.wait_for(state="visible")
        assert (
            page.locator(f"[id='{place}']").evaluate("one => one.getBoundingClientRect().top") > 0
        )
        assert page.url.endswith(place)
    assert faults == []


def test_addresses_are_those_of_the_folder(
    browser: Browser, demo_sites: dict[str, Site], files: dict[str, str]
) -> None:
    site = demo_sites["hired-sprayer"]
    with listening_page(browser, DESKTOP, []) as page:
        page.goto(files["hired-sprayer"])
        named = page.evaluate(
            "JSON.parse(document.getElementById('book').textContent).pages.map((one) => one[0])"
        )
    assert [f"{name}.html" for name in sorted(named)] == sorted(site.pages())


@pytest.mark.parametrize("day", [datetime.date(2026, 8, 20), datetime.date(2026, 11, 10)])
def test_the_first_page_and_a_sheet_are_of_the_devices_day_as_in_the_folder(
    browser: Browser, demo_sites: dict[str, Site], files: dict[str, str], day: datetime.date
) -> None:
    sheet = next(
        page.address for page in demo_sites["owner"].book.pages if "autumn_kill" in page.address
    )
    seen: list[list[list[str]]] = []
    with listening_page(browser, PHONE, []) as page:
        page.clock.set_fixed_time(datetime.datetime.combine(day, NOON))
        folder = demo_sites["owner"].folder
        for first, second in (
            ((folder / "index.html").as_uri(), (folder / sheet).with_suffix(".html").as_uri()),
            (files["owner"], f"{files['owner']}#{name_of_page(sheet)}"),
        ):
            page.goto(first)
            lines = [page.evaluate(LINES)]
            page.goto(second)
            page.locator("article .sheet").wait_for()
            lines.append(
                [page.locator(f".sheet .{name}").inner_text() for name in ("left", "stands")]
            )
            seen.append(lines)
    assert len(seen[0][0]) > 3
    assert seen[1] == seen[0]


@pytest.mark.parametrize("script", [THROWS, IS_NOT_THERE], ids=["throws", "is not there"])
def test_a_browser_that_keeps_nothing_reads_it(
    browser: Browser, files: dict[str, str], script: str
) -> None:
    context = browser.new_context(viewport=PHONE)
    context.add_init_script(script)
    faults: list[str] = []
    page = context.new_page()
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.goto(files["hunting-partner"])
    assert not page.evaluate(CAN_KEEP)
    scheme = "document.body.getAttribute('data-md-color-scheme')"
    before = page.evaluate(scheme)
    page.locator(".scheme").click()
    assert page.evaluate(scheme) != before
    page.locator(".md-header label[for='__search']").click()
    page.locator("#find").fill("emergency")
    page.locator(".find li a").first.click()
    _waits_for(page, "emergency")
    assert not page.locator(".older").is_visible()
    context.close()
    assert faults == []


def test_an_older_copy_says_that_a_newer_one_was_opened(
    browser: Browser, files: dict[str, str], tmp_path: Path
) -> None:
    text = Path(files["hired-driller"].removeprefix("file://")).read_text(encoding="utf-8")
    newer = tmp_path / "hired-driller (1).html"
    newer.write_text(text.replace('"day":"2026-08-20"', '"day":"2026-09-02"'), encoding="utf-8")
    with listening_page(browser, PHONE, []) as page:
        page.goto(files["hired-driller"])
        assert not page.locator(".older").is_visible()
        page.goto(newer.as_uri())
        assert not page.locator(".older").is_visible()
        page.goto(files["hired-driller"])
        assert "as of Sep 2, 2026" in page.locator(".older").inner_text()
        # another reader's file is no older copy of this one
        page.goto(files["hired-sprayer"])
        assert not page.locator(".older").is_visible()


@pytest.fixture
def without_scripts(browser: Browser) -> Iterator[Page]:
    context = browser.new_context(viewport=NARROW, java_script_enabled=False)
    yield context.new_page()
    context.close()


def test_without_scripts_every_page_is_read_in_order(
    without_scripts: Page, demo_sites: dict[str, Site], files: dict[str, str]
) -> None:
    page, site = without_scripts, demo_sites["hunting-partner"]
    page.goto(files["hunting-partner"])
    named = page.locator("article").evaluate_all("all => all.map((one) => one.id)")
    assert named == [name_of_page(one.address) for one in site.book.pages]
    assert page.evaluate(SIDEWAYS) <= 0
    heads = page.locator("article h1").all_text_contents()
    assert [unescape(one.title) for one in site.book.pages[1:]] == heads[1:]
    for gone in (".scheme", ".prints", ".md-header label[for='__search']"):
        assert not page.locator(gone).is_visible(), gone
    page.locator(".md-header label[for='__drawer']").click()
    page.locator(".contents a[href='#work']").first.click()
    assert page.url.endswith("#work")
    number = page.locator("article[id^='work/'] a.n").first
    place = (number.get_attribute("href") or "#")[1:]
    page.goto(f"{files['hunting-partner']}#{place}")
    assert page.locator(f"[id='{place}'] p").first.is_visible()


def _leaves(pdf: bytes) -> int:
    return len(LEAF.findall(pdf))


def test_the_whole_book_is_one_pdf_in_order_and_begins_at_once(
    browser: Browser, demo_sites: dict[str, Site], files: dict[str, str]
) -> None:
    faults: list[str] = []
    with listening_page(browser, DESKTOP, faults) as page:
        page.goto(f"{files['hired-driller']}#print/book")
        named = page.locator("article").evaluate_all("all => all.map((one) => one.id)")
        assert "36 pages" in page.locator(".whole b").inner_text()
        whole = _leaves(page.pdf(format="Letter"))
        page.emulate_media(media="print")
        first = page.locator("h1").first.bounding_box()
        for gone in (".md-header", ".md-sidebar", ".whole", ".copy", ".prints", ".to-emergency"):
            assert not page.locator(gone).first.is_visible(), gone
        page.emulate_media(media="screen")
        page.goto(f"{files['hired-driller']}#index")
        _waits_for(page, "index")
        alone = _leaves(page.pdf(format="Letter"))
    assert named == [name_of_page(one.address) for one in demo_sites["hired-driller"].book.pages]
    assert first is not None
    assert first["y"] < 40
    assert len(named) <= whole < 4 * len(named)
    assert 1 <= alone < 5
    assert faults == []


def test_all_sheets_and_one_sheet_print_as_in_the_folder(
    browser: Browser, demo_sites: dict[str, Site], files: dict[str, str]
) -> None:
    site = demo_sites["hired-driller"]
    sheets = [name for name, html in site.pages().items() if '<section class="sheet' in html]
    assert len(sheets) > 2
    with listening_page(browser, DESKTOP, []) as page:
        apart = 0
        for name in sheets:
            page.goto((site.folder / name).as_uri())
            apart += _leaves(page.pdf(format="Letter"))
        page.goto(files["hired-driller"])
        page.locator(".prints a[href='#print/sheets']").click()
        page.locator(".whole").wait_for()
        named = page.locator("article").evaluate_all("all => all.map((one) => one.id)")
        together = _leaves(page.pdf(format="Letter"))
        page.go_back()
        _waits_for(page, "index")
    assert sorted(f"{name}.html" for name in named) == sorted(sheets)
    assert together == apart


@pytest.mark.parametrize(("size", "scheme", "name"), LOOKS)
def test_it_is_legible_and_in_reach_of_a_thumb_and_of_what_reads_aloud(
    browser: Browser, files: dict[str, str], size: ViewportSize, scheme: Scheme, name: str
) -> None:
    faults: list[str] = []
    with windows(browser, size, faults) as pages:
        page = pages[scheme]
        address = f"{files['hunting-partner']}#{name}"
        faults += on_a_screen(page, address, aaa=True, colours=False, closely=True)
        assert is_dark(page) == (scheme == "dark")
    assert faults == [], "\n".join(faults)


def test_search_and_contents_are_in_reach_of_a_thumb_and_of_what_reads_aloud(
    browser: Browser, files: dict[str, str]
) -> None:
    faults: list[str] = []
    with listening_page(browser, PHONE, faults) as page:
        look(page, files["owner"])
        page.evaluate(AXE_SCRIPT)
        page.locator(".md-header label[for='__search']").click()
        page.locator("#find").fill("spray")
        for opened in ("search", "contents"):
            said = [*page.evaluate("looks.targets()"), *page.evaluate(AXE, True)]
            faults += [f"{opened}: {fault}" for fault in said]
            page.keyboard.press("Escape")
            page.locator(".md-header label[for='__drawer']").click()
            page.wait_for_timeout(300)
        assert page.locator(".contents a").first.is_visible()
    assert faults == [], "\n".join(faults)


SAME = """() => [...document.querySelector("article").querySelectorAll("h1, h2, p, li, dd, td, th")]
  .filter((one) => !one.closest("nav") && one.checkVisibility())
  .map((one) => [one.tagName, getComputedStyle(one).fontSize, getComputedStyle(one).color,
    getComputedStyle(one).fontFamily, Math.round(one.getBoundingClientRect().width),
    Math.round(one.getBoundingClientRect().height)].join(" "))"""


@pytest.mark.parametrize("name", ["index", "emergency", "months", "chapters/mixing"])
def test_a_page_looks_as_it_does_in_the_folder(
    browser: Browser, demo_sites: dict[str, Site], files: dict[str, str], name: str
) -> None:
    seen: list[Any] = []
    with listening_page(browser, PHONE, []) as page:
        folder = demo_sites["hired-sprayer"].folder
        for address in ((folder / f"{name}.html").as_uri(), f"{files['hired-sprayer']}#{name}"):
            page.goto(address)
            seen.append(page.evaluate(SAME))
    assert len(seen[0]) > 5
    # what is said of a file that is not in this one is the one difference there may be
    differ = [one for one in zip(*seen, strict=True) if one[0] != one[1]]
    assert differ == []
