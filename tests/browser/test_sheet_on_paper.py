"""Job sheets on paper: a page and its back, large enough to read outdoors, nothing lost."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.book.sites import Site, build_sites
from tests.browser.visits import DESKTOP, listening_page
from tests.plan.planned import KILL, job_of
from tests.properties import write_property
from tests.properties_tank import three_in_the_tank

SIDE = re.compile(rb"/Type\s*/Page\b")
POINTS_PER_PX = 0.75
MM_PER_PX = 25.4 / 96
FONT_SIZES = """() => [...document.querySelectorAll(".sheet *")]
  .filter((e) => [...e.childNodes].some((n) => n.nodeType === 3 && n.data.trim()))
  .filter((e) => e.checkVisibility())
  .map((e) => parseFloat(getComputedStyle(e).fontSize))"""
TICK = "e => parseFloat(getComputedStyle(e, '::before').width)"


@pytest.fixture(scope="module")
def sites(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Site]:
    folder = tmp_path_factory.mktemp("tank")
    return build_sites(write_property(folder / "property", three_in_the_tank()), folder / "sites")


def _open(page: Page, site: Site) -> None:
    (sheet,) = (site.folder / "work").glob("*autumn_kill.html")
    page.goto(Path(sheet).as_uri())


# Height of a leaf less its margins, at 96 px to an inch.
LEAF_PX = {"Letter": (11 - 20 / 25.4) * 96, "A4": (297 - 20) / 25.4 * 96}
WIDTH_PX = {"Letter": (8.5 - 22 / 25.4) * 96, "A4": (210 - 22) / 25.4 * 96}


@pytest.mark.parametrize("paper", ["Letter", "A4"])
@pytest.mark.parametrize("reader", ["owner", "hired"])
def test_whom_to_call_and_the_line_to_fill_in_stand_on_the_first_leaf(
    browser: Browser, sites: dict[str, Site], reader: str, paper: str
) -> None:
    with listening_page(browser, DESKTOP, []) as page:
        page.emulate_media(media="print")
        page.set_viewport_size({"width": int(WIDTH_PX[paper]), "height": int(LEAF_PX[paper])})
        _open(page, sites[reader])
        for told in ("Call 911", "1200 Demo Ridge Road", "Done on ____"):
            place = page.locator(f".sheet p:has-text('{told}')").first.bounding_box()
            assert place is not None, told
            assert place["y"] + place["height"] < LEAF_PX[paper] / 2, told


@pytest.mark.parametrize("reader", ["owner", "hired"])
def test_the_fullest_spray_sheet_is_a_page_and_its_back(
    browser: Browser, sites: dict[str, Site], reader: str
) -> None:
    with listening_page(browser, DESKTOP, []) as page:
        _open(page, sites[reader])
        paper, other = page.pdf(format="Letter"), page.pdf(format="A4")
        page.emulate_media(media="print")
        sizes = page.evaluate(FONT_SIZES)
        lines = page.locator("[data-safety]").all()
        assert all(one.is_visible() for one in lines)
        keys = {one.get_attribute("data-safety") for one in lines}
        ticks = page.locator("ul.ticks > li").evaluate_all(f"all => all.map({TICK})")
    assert [len(SIDE.findall(one)) for one in (paper, other)] == [2, 2]
    assert min(sizes) * POINTS_PER_PX >= 11
    assert keys == {one.key for one in job_of(sites["owner"].plan, KILL).safety}
    assert min(ticks) * MM_PER_PX >= 5


def test_ticks_are_large_enough_for_a_thumb_with_a_pen(
    browser: Browser, sites: dict[str, Site]
) -> None:
    with listening_page(browser, DESKTOP, []) as page:
        _open(page, sites["owner"])
        ticks = page.locator("ul.ticks > li").evaluate_all(f"all => all.map({TICK})")
    assert len(ticks) > 3
    assert min(ticks) >= 24


def test_workings_unfold_on_paper_nowhere(browser: Browser, sites: dict[str, Site]) -> None:
    for address in ("buy.html", "money.html", "places/lane.html", "equipment/boom.html"):
        with listening_page(browser, DESKTOP, []) as page:
            page.goto((sites["owner"].folder / address).as_uri())
            assert page.locator(".workings summary").first.is_visible(), address
            page.emulate_media(media="print")
            assert not page.locator(".workings summary").first.is_visible(), address
    with listening_page(browser, DESKTOP, []) as page:
        page.goto((sites["owner"].folder / "workings.html").as_uri())
        page.emulate_media(media="print")
        assert page.locator("ul.links").first.is_visible()


@pytest.mark.parametrize("reader", ["owner", "hired"])
def test_a_record_to_fill_in_is_one_page_with_room_for_a_pen(
    browser: Browser, sites: dict[str, Site], reader: str
) -> None:
    (form,) = (sites[reader].folder / "records").glob("*autumn_kill.html")
    with listening_page(browser, DESKTOP, []) as page:
        page.goto(form.as_uri())
        paper = page.pdf(format="Letter")
        page.emulate_media(media="print")
        sizes = page.evaluate(FONT_SIZES)
        rooms = page.locator(".write").evaluate_all("all => all.map((e) => e.offsetWidth)")
    assert len(SIDE.findall(paper)) == 1
    assert min(sizes) * POINTS_PER_PX >= 11
    assert len(rooms) > 10
    assert min(rooms) * MM_PER_PX >= 20
