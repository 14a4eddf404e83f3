"""Job sheets on paper: a page and its back, large enough to read outdoors, nothing lost."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.book.sites import Site, build_sites
from tests.browser.kinds import one_of_each_kind
from tests.browser.visits import DESKTOP, listening_page
from tests.plan.planned import KILL, job_of
from tests.properties import the_work, write_property
from tests.properties_tank import on_drawn_ground, three_in_the_tank

SIDE = re.compile(rb"/Type\s*/Page\b")
POINTS_PER_PX = 0.75
MM_PER_PX = 25.4 / 96
FONT_SIZES = """() => [...document.querySelectorAll(".sheet *")]
  .filter((e) => [...e.childNodes].some((n) => n.nodeType === 3 && n.data.trim()))
  .filter((e) => e.checkVisibility() && !e.closest("svg.lay"))
  .map((e) => parseFloat(getComputedStyle(e).fontSize))"""
# Letters of a drawing of the ground grow and shrink with its sheet, and so does what is drawn.
LETTERS = """() => [...document.querySelectorAll("svg.lay")].filter((svg) => svg.checkVisibility())
  .map((svg) => [...svg.querySelectorAll("text")]
    .map((e) => parseFloat(getComputedStyle(e).fontSize) * svg.getScreenCTM().a))"""
# As small as the notes of a field guide.
LEAST_LETTERS_POINTS = 8
INK = """() => [...document.querySelectorAll("svg.lay text, svg.lay path:not(.core)")]
  .map((e) => getComputedStyle(e)[e.matches("text") ? "fill" : "stroke"])"""
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


@pytest.fixture(scope="module")
def drawn_sites(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Site]:
    """The same on drawn ground; whoever is hired, with a sprayer of their own, mixes two of it."""
    folder = tmp_path_factory.mktemp("drawn tank")
    every, fewer = on_drawn_ground(three_in_the_tank()), on_drawn_ground(three_in_the_tank())
    the_work(fewer)[0]["partners"].pop()
    owners = write_property(folder / "owner's", every)
    theirs = write_property(folder / "theirs", fewer)
    return {
        **build_sites(owners, folder / "sites", "owner"),
        **build_sites(theirs, folder / "sites", "hired"),
    }


@pytest.mark.parametrize("reader", ["owner", "hired"])
def test_the_fullest_spray_sheet_is_a_page_and_its_back_with_its_drawing(
    browser: Browser, drawn_sites: dict[str, Site], reader: str
) -> None:
    with listening_page(browser, DESKTOP, []) as page:
        _open(page, drawn_sites[reader])
        paper, other = page.pdf(format="Letter"), page.pdf(format="A4")
        page.emulate_media(media="print")
        page.set_viewport_size({"width": int(WIDTH_PX["A4"]), "height": int(LEAF_PX["A4"])})
        sizes = page.evaluate(FONT_SIZES)
        drawing = page.locator(".sheet svg.lay")
        box = drawing.bounding_box()
        assert page.locator("svg.lay path.kept-off").is_visible()
        words = set(drawing.locator("text").all_text_contents())
        assert page.get_by_text("Hatched: what labels keep the spray off.").is_visible()
        listed = page.locator("figure.lies > ol > li")
        assert all(one.is_visible() for one in listed.all())
        numbers = {one.get_attribute("value") for one in listed.all()}
        first = page.locator(".sheet .at-first").bounding_box()
    assert [len(SIDE.findall(one)) for one in (paper, other)] == [2, 2]
    assert min(sizes) * POINTS_PER_PX >= 11
    assert words >= {"Begin here", "The gate", "North"}
    assert {one for one in words if one.isdigit()} == numbers
    assert len(numbers) > 1
    # on the first leaf, beside where and when, and over nothing of it
    assert box is not None
    assert first is not None
    assert box["y"] + box["height"] < LEAF_PX["A4"] / 2
    assert first["x"] + first["width"] <= box["x"]


def test_every_drawing_of_the_ground_is_printed_in_black_and_large_enough_to_read(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    faults: list[str] = []
    kinds: set[str] = set()
    with listening_page(browser, DESKTOP, []) as page:
        page.emulate_media(media="print")
        page.set_viewport_size({"width": int(WIDTH_PX["A4"]), "height": int(LEAF_PX["A4"])})
        for one in one_of_each_kind(demo_sites):
            if 'class="lay"' not in (one.site.folder / one.address).read_text(encoding="utf-8"):
                continue
            page.goto(one.uri)
            kinds.add(one.kind)
            drawings = page.evaluate(LETTERS)
            if len(drawings) != page.locator("svg.lay").count():
                faults.append(f"{one.name}: not every drawing is printed")
            letters = min(min(sizes) for sizes in drawings) * POINTS_PER_PX
            if letters < LEAST_LETTERS_POINTS:
                faults.append(f"{one.name}: letters of {letters:.2f} points")
            if {ink for ink in page.evaluate(INK) if ink != "none"} != {"rgb(0, 0, 0)"}:
                faults.append(f"{one.name}: {set(page.evaluate(INK))}")
    assert faults == []
    assert kinds >= {"places", "stands", "routes", "land.html", "work/spray", "work/sow"}


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
