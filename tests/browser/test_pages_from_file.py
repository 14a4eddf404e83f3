"""The pages of a book, opened from a folder: nothing asked of a network, nothing out of place."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from generator.site.publish import publish
from tests.browser.looking import AAA_CONTRAST, look
from tests.browser.visits import DESKTOP, PHONE, SIDEWAYS, listening_page, search_opens, visit_all
from tests.site.books import book_of

# WCAG 2.2: 2.5.5 asks 44 px of targets.
THUMB_PX = 44


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("book") / "owner's site"
    assert publish(book_of(12), folder) == ()
    return folder


def _open(page: Page, site: Path, address: str) -> None:
    page.goto((site / address.partition("#")[0]).as_uri() + "".join(address.partition("#")[1:]))


def test_every_page_opens_clean_and_unfolds_within_a_phone(browser: Browser, site: Path) -> None:
    assert visit_all(browser, site) == []


def test_faults_are_seen(browser: Browser, tmp_path: Path) -> None:
    (tmp_path / "index.html").write_text(
        "<img src='gone.png'><p style='width: 900px'>wide</p><script>console.log('said')</script>"
        "<script>throw new Error('thrown')</script>"
        "<script>document.write('<img src=\"http://127.0.0.1:9/x.png\">')</script>"
    )
    faults = "\n".join(visit_all(browser, tmp_path))
    for sign in ("gone.png", "sideways", "said", "thrown", "leaves the folder: http://127.0.0.1:9"):
        assert sign in faults


@pytest.mark.parametrize(("words", "heading"), [("spring7", "Job 7"), ("ambulance", "Emergency")])
def test_a_search_hit_opens_its_page(
    browser: Browser, site: Path, words: str, heading: str
) -> None:
    assert search_opens(browser, site, words) == heading


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize(
    "address",
    ["index.html", "emergency.html", "work/job-3.html", "work/job-4.html", "work/job-5.html"],
)
def test_every_text_stands_out_from_its_ground(
    browser: Browser, site: Path, scheme: str, address: str
) -> None:
    faults: list[str] = []
    with listening_page(browser, DESKTOP, faults, scheme) as page:
        look(page, (site / address).as_uri())
        ratios = page.evaluate("looks.contrasts()")
        ground = page.evaluate("getComputedStyle(document.body).backgroundColor")
    assert faults == []
    assert len(ratios) > 10
    assert [found for found in ratios if found[1] < AAA_CONTRAST] == []
    assert (sum(map(int, ground[4:-1].split(", "))) < 3 * 64) == (scheme == "dark")


def test_a_numbers_mark_unfolds_its_working(browser: Browser, site: Path) -> None:
    with listening_page(browser, PHONE, []) as page:
        _open(page, site, "work/job-3.html")
        assert not page.locator("#w-3-1 p").is_visible()
        page.locator("a.n[href='#w-3-1']").first.click()
        page.locator("#w-3-1 p").wait_for(state="visible")


def test_without_scripts_the_working_that_is_asked_for_is_read(
    browser: Browser, site: Path
) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    _open(page, site, "work/job-3.html#w-3-1")
    assert page.locator("#w-3-1 p").is_visible()
    context.close()


def test_emergency_is_one_tap_away_also_on_a_phone(browser: Browser, site: Path) -> None:
    with listening_page(browser, PHONE, []) as page:
        _open(page, site, "work/job-3.html")
        page.mouse.wheel(0, 3000)
        page.locator(".to-emergency").click()
        assert page.locator("h1").inner_text() == "Emergency"


def test_targets_are_as_large_as_a_thumb(browser: Browser, site: Path) -> None:
    with listening_page(browser, PHONE, []) as page:
        _open(page, site, "work/job-3.html")
        page.locator(".md-header label[for='__drawer']").click()
        boxes = page.locator(".contents a, .to-emergency, .workings summary, .turn a").all()
        heights = [box["height"] for target in boxes if (box := target.bounding_box())]
    assert len(heights) > 20
    assert min(heights) >= THUMB_PX


def test_text_twice_as_large_still_fits(browser: Browser, site: Path) -> None:
    with listening_page(browser, DESKTOP, []) as page:
        _open(page, site, "work/job-3.html")
        page.add_style_tag(content="html { font-size: 250% !important }")
        assert page.evaluate(SIDEWAYS) <= 0


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_on_paper_there_is_only_the_page(browser: Browser, site: Path, scheme: str) -> None:
    with listening_page(browser, DESKTOP, [], scheme) as page:
        _open(page, site, "work/job-3.html")
        page.emulate_media(media="print")
        for gone in (".md-header", ".md-sidebar", ".to-emergency", ".turn", ".workings"):
            assert not page.locator(gone).first.is_visible(), gone
        assert page.locator(".sheet").is_visible()
        style = "e => [getComputedStyle(e).color, getComputedStyle(e).backgroundColor]"
        colours = page.locator(".finding").evaluate(style)
    assert colours == ["rgb(0, 0, 0)", "rgb(255, 255, 255)"]


def test_stop_caution_and_note_differ_without_colour(browser: Browser, site: Path) -> None:
    looks = []
    with listening_page(browser, DESKTOP, []) as page:
        for number, word in ((3, "Stop"), (4, "Caution"), (5, "Note")):
            _open(page, site, f"work/job-{number}.html")
            finding = page.locator(".finding")
            assert finding.locator("strong").inner_text().title() == word
            style = "e => [getComputedStyle(e).borderLeftStyle, getComputedStyle(e).borderWidth]"
            looks.append(tuple(finding.evaluate(style)))
    assert len(set(looks)) == 3
