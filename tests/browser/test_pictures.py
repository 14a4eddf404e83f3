"""Pictures as they are drawn: no label lies over another or past the edge, on screens and paper."""

import datetime
import re
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, ViewportSize

from generator.book.charts.letters import BOLD_FRACTION, words_px
from tests.book.sites import Site, build_sites
from tests.browser.looking import NARROW, PAPER
from tests.browser.test_sheet_on_paper import POINTS_PER_PX, SIDE
from tests.browser.visits import DESKTOP, PHONE, listening_page
from tests.properties import make_property

GENERATED_SEED, GENERATED_SCREENS = 3, 6
SVG = re.compile(r"<svg.*?</svg>", re.DOTALL)
DRAWN = ('class="picture"', 'class="drawing"', 'class="lay"')
UNFOLD = "() => document.querySelectorAll('details').forEach((fold) => (fold.open = true))"
ARTICLE = "article svg:not(svg svg)"
# Boxes of letters hold the room above and below them: touching there is no lying over.
COLLISIONS = """(selector) => {
  const told = (text) => `"${text.textContent}"`;
  const faults = [];
  for (const drawn of document.querySelectorAll(selector)) {
    const texts = [...drawn.querySelectorAll("text")].filter((one) => one.checkVisibility());
    const boxes = texts.map((one) => one.getBoundingClientRect());
    texts.forEach((text, turn) => {
      const a = boxes[turn];
      if (a.left < -1 || a.right > document.documentElement.clientWidth + 1) {
        faults.push(`past the edge: ${told(text)}`);
      }
      for (let other = turn + 1; other < texts.length; other++) {
        const b = boxes[other];
        const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
        if (across > 0.5 && down > 3) faults.push(`${told(text)} and ${told(texts[other])}`);
      }
    });
  }
  return faults;
}"""


@pytest.fixture(scope="module")
def generated_sites(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Site]:
    folder = tmp_path_factory.mktemp("drawn")
    land = make_property(folder / "land", GENERATED_SEED, GENERATED_SCREENS)
    return build_sites(land, folder / "sites")


def _drawn(sites: Mapping[str, Site]) -> Iterator[Path]:
    """Yield pages until every drawing was seen on one: sheets of a place have the same of it."""
    seen = set[str]()
    for site in sites.values():
        for address, html in site.pages().items():
            if any(sign in html for sign in DRAWN):
                drawings = set(SVG.findall(html))
                if drawings - seen:
                    yield site.folder / address
                seen |= drawings


def _collisions(page: Page, address: Path) -> list[str]:
    page.goto(address.as_uri())
    page.evaluate(UNFOLD)
    return [f"{address.name}: {one}" for one in page.evaluate(COLLISIONS, ARTICLE)]


@pytest.mark.parametrize(
    ("sites", "size"),
    [
        ("demo_sites", NARROW),
        ("demo_sites", PHONE),
        ("demo_sites", DESKTOP),
        ("generated_sites", NARROW),
    ],
    ids=lambda one: str(one["width"]) if isinstance(one, dict) else str(one),
)
def test_no_label_lies_over_another(
    browser: Browser, request: pytest.FixtureRequest, sites: str, size: ViewportSize
) -> None:
    pages = list(_drawn(request.getfixturevalue(sites)))
    assert len(pages) > 5
    with listening_page(browser, size, []) as page:
        assert [fault for one in pages for fault in _collisions(page, one)] == []


@pytest.mark.parametrize("sites", ["demo_sites", "generated_sites"])
def test_no_label_lies_over_another_on_paper(
    browser: Browser, request: pytest.FixtureRequest, sites: str
) -> None:
    pages = list(_drawn(request.getfixturevalue(sites)))
    with listening_page(browser, PAPER, []) as page:
        page.emulate_media(media="print")
        assert [fault for one in pages for fault in _collisions(page, one)] == []


def test_labels_that_lie_over_each_other_are_seen(browser: Browser) -> None:
    drawn = '<article><svg width="200" height="40"><text x="0" y="20">one</text>{}</svg></article>'
    for other, faults in (
        ('<text x="5" y="22">two</text>', 1),
        ('<text x="60" y="20">two</text>', 0),
        ('<text x="-40" y="20">two</text>', 1),
    ):
        with listening_page(browser, PHONE, []) as page:
            page.set_content(f"<style>body {{ margin: 0 }}</style>{drawn.format(other)}")
            assert len(page.evaluate(COLLISIONS, ARTICLE)) == faults


# What a device may take for the fonts that pages ask for: those here, and others that are as wide.
FONTS = ("system-ui", "sans-serif", '"DejaVu Sans"', "Verdana", "Arial")
WIDTHS = """([letters, font]) => {
  const paper = document.createElement("canvas").getContext("2d");
  paper.font = font;
  return letters.map((letter) => paper.measureText(letter).width);
}"""


@pytest.mark.parametrize("font", FONTS)
def test_no_letter_is_wider_than_drawings_of_the_ground_leave_room_for(
    browser: Browser, font: str
) -> None:
    letters = [chr(number) for number in range(32, 127)] + ["é", "Ü", "ñ"]
    with listening_page(browser, DESKTOP, []) as page:
        for weight, wider in (("400", 1.0), ("700", BOLD_FRACTION)):
            widths = page.evaluate(WIDTHS, [letters, f"{weight} 100px {font}"])
            for letter, width in zip(letters, widths, strict=True):
                most = words_px(letter, 100)
                assert most is not None, letter
                assert 0 < width <= most * wider, letter


LEAF = "year.html"
# As small as the notes of a field guide; a sheet is read outdoors, the leaf hangs on a wall.
LEAST_POINTS = 8
AT = """() => [...document.querySelectorAll("svg.picture[data-first] line.now")]
  .map((line) => [line.getAttribute("x1"), line.getAttribute("x2")])"""


@pytest.mark.parametrize("paper", ["Letter", "A4"])
def test_the_year_is_one_leaf(browser: Browser, demo_sites: dict[str, Site], paper: str) -> None:
    with listening_page(browser, DESKTOP, []) as page:
        page.goto((demo_sites["owner"].folder / LEAF).as_uri())
        assert not page.locator("figure.leaf").is_visible()
        assert len(SIDE.findall(page.pdf(format=paper))) == 1
        page.set_viewport_size(PAPER)
        page.emulate_media(media="print")
        sizes = page.locator("figure.leaf .names text").evaluate_all(
            "all => all.map((one) => parseFloat(getComputedStyle(one).fontSize))"
        )
    assert len(sizes) > 50
    assert min(sizes) * POINTS_PER_PX >= LEAST_POINTS


@pytest.mark.parametrize(
    ("day", "is_inside"),
    [
        (datetime.date(2026, 12, 1), True),
        (datetime.date(2029, 8, 31), True),
        (datetime.date(2026, 7, 31), False),
        (datetime.date(2031, 1, 1), False),
    ],
)
def test_the_day_of_the_device_is_marked_in_a_picture(
    browser: Browser, demo_sites: dict[str, Site], day: datetime.date, is_inside: bool
) -> None:
    """Independent: the share of the days from Aug 1, 2026 to Aug 31, 2029, counted."""
    with listening_page(browser, PHONE, []) as page:
        page.clock.set_fixed_time(datetime.datetime.combine(day, datetime.time(12)))
        page.goto((demo_sites["owner"].folder / "places" / "lane.html").as_uri())
        page.evaluate(UNFOLD)
        ((x1, x2),) = page.evaluate(AT)
        words = page.locator("svg.picture text.now")
        assert words.is_visible() == is_inside
        assert words.text_content() == "today"
    share = (day - datetime.date(2026, 8, 1)) / datetime.timedelta(days=1127)
    assert x1 == x2
    assert float(x1.rstrip("%")) == pytest.approx(78 * share, abs=0.01)


def test_without_scripts_the_day_of_the_plan_is_marked(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((demo_sites["owner"].folder / "places" / "lane.html").as_uri())
    page.locator("details:has(svg.picture) > summary").click()
    words = page.locator("svg.picture text.now")
    assert words.is_visible()
    assert words.text_content() == "day of this plan"
    context.close()
