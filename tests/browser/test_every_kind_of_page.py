"""Pages of the demo's sites, of every kind and for every reader, looked at as readers meet them."""

import re
from collections.abc import Container
from pathlib import Path

import pytest
from playwright.sync_api import Browser, ViewportSize

from generator.inventory.schema import PARTNER
from tests.book.sites import Site
from tests.browser.kinds import (
    Looked,
    every_page,
    of_each_and_carried,
    one_of_each,
    one_of_each_kind,
)
from tests.browser.looking import (
    PAPER,
    SCHEMES,
    Scheme,
    is_dark,
    look,
    on_a_screen,
    on_paper,
    windows,
)
from tests.browser.visits import DESKTOP, PHONE, listening_page

# Read in a hurry, outdoors or before something dangerous.
HOME = "index.html"
AAA = (HOME, "work.html", "emergency.html", "safety.html", "findings.html")

CARRIED = (*AAA, "index.html", "buy.html", "money.html", "records.html", "records", "runs")

# Workings unfolded, axe takes many seconds for the colors of a page of more bytes.
LONG_PAGE = 100_000

SIDE = re.compile(rb"/Type\s*/Page\b")

SIZES = pytest.mark.parametrize(
    ("size", "turn"),
    [
        pytest.param(PHONE, 0, id="telephone"),
        pytest.param(DESKTOP, 1, id="desk", marks=pytest.mark.long),
    ],
)


def _faults(
    browser: Browser,
    size: ViewportSize,
    pages: list[tuple[Looked, Scheme]],
    coloured: Container[Looked],
    closely: Container[Looked],
) -> list[str]:
    """Faults of each page in its scheme, seen in windows of one size; axe sees some in color.

    Some are looked at closely, on the narrowest screen and in large text.
    """
    faults: list[str] = []
    with windows(browser, size, faults) as shown:
        for one, scheme in pages:
            aaa = one.kind in AAA or _is_sheet(one)
            found = on_a_screen(
                shown[scheme], one.uri, aaa=aaa, colours=one in coloured, closely=one in closely
            )
            if is_dark(shown[scheme]) != (scheme == "dark"):
                found.append("the scheme is not kept")
            faults += [f"{one.name}, {scheme}: {fault}" for fault in found]
    return faults


@SIZES
def test_one_page_of_each_kind_trips_nobody(
    browser: Browser, demo_sites: dict[str, Site], size: ViewportSize, turn: int
) -> None:
    # of all that other readers have, what they carry outside; the long run looks at the rest
    pages = of_each_and_carried(demo_sites, (*AAA, "work/spray", "work/sow"))
    assert {page.reader for page in pages} == demo_sites.keys()
    assert len(pages) > 60
    shared_out = [(page, SCHEMES[(at + turn) % 2]) for at, page in enumerate(pages)]
    # Colors are the same at every width and for every reader. Of a long page axe looks at them in
    # the long run alone; the look of our own sees those of every page here.
    closely = [one for one in one_of_each(demo_sites) if _is_carried(one)]
    coloured = [one for one in closely if size == PHONE and one.bytes < LONG_PAGE]
    assert len(coloured) > 10 or size == DESKTOP
    closely += [one for one in pages if one.reader.startswith("hired") and _is_sheet(one)]
    assert len(closely) > 25
    assert _faults(browser, size, shared_out, coloured, closely) == []


def _is_carried(page: Looked) -> bool:
    """Whether a page is read on a phone, outdoors or at a counter, however long it is."""
    return page.kind in CARRIED or _is_sheet(page)


def _is_sheet(page: Looked) -> bool:
    return page.kind.startswith("work/")


@pytest.mark.long
@pytest.mark.parametrize("scheme", SCHEMES)
@pytest.mark.parametrize("size", [PHONE, DESKTOP], ids=["telephone", "desk"])
def test_no_page_trips_anybody(
    browser: Browser, demo_sites: dict[str, Site], size: ViewportSize, scheme: Scheme
) -> None:
    pages = every_page(demo_sites)
    assert len(pages) >= sum(len(site.book.pages) for site in demo_sites.values())
    coloured = pages if size == PHONE else []
    shown = [(page, scheme) for page in pages]
    assert _faults(browser, size, shown, coloured, closely=pages) == []


def _papers(browser: Browser, pages: list[Looked]) -> list[str]:
    faults: list[str] = []
    with windows(browser, PAPER, faults) as shown:
        for at, one in enumerate(pages):
            scheme = SCHEMES[at % 2]
            found = on_paper(shown[scheme], one.uri)
            faults += [f"{one.name}, {scheme}: {fault}" for fault in found]
    return faults


def test_what_is_carried_prints_whole_in_black_on_white(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    carried = [one for one in one_of_each_kind(demo_sites) if _is_carried(one)]
    assert len(carried) > 25
    assert _papers(browser, carried) == []


@pytest.mark.long
def test_every_page_prints_whole_in_black_on_white(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    assert _papers(browser, every_page(demo_sites)) == []


def _sides_at_most(page: Looked) -> int | None:
    """How many sides of paper a page may take: a sheet and its back, or one that is handed on."""
    if _is_sheet(page) or page.kind == "runs":
        return 2
    hired = page.site.plan.reader not in ("owner", PARTNER)
    if page.kind in ("emergency.html", "records") or (page.kind == HOME and hired):
        return 1
    return {HOME: 2, "buy.html": 2, "year.html": 1}.get(page.kind)


def test_what_is_carried_outside_takes_a_sheet_and_its_back_at_most(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    sides: dict[str, int] = {}
    too_many: dict[str, int] = {}
    with listening_page(browser, DESKTOP, []) as page:
        for one in one_of_each_kind(demo_sites):
            if at_most := _sides_at_most(one):
                page.goto(one.uri)
                sides[one.name] = len(SIDE.findall(page.pdf(format="Letter")))
                if sides[one.name] > at_most:
                    too_many[one.name] = sides[one.name]
    assert len(sides) > 20
    assert too_many == {}


FAULTY = """<!doctype html><html><head><title>Faulty</title><style>
  body { background: #fff; color: #000; font-size: 1rem; margin: 0 }
  .pale { color: #999 }
  .moves { transition: color 1s }
  .short { height: 8px; overflow: hidden; width: 4rem; white-space: nowrap }
  @media (prefers-color-scheme: dark) { body { background: #000 } }
</style></head><body><main><article>
  <h1>Faulty</h1><h3>Skipped</h3>
  <nav><a href="#x" style="display: block">alone</a></nav>
  <input type="text"><p class="pale">pale</p><p class="moves">moves</p>
  <p class="short">a long text that is cut off</p>
  <table><tr><th>Head</th></tr><tr><td>Cell</td></tr></table>
  <table><tr><td>No head</td></tr></table>
  <svg viewBox="0 0 9 9"><path d="M0 0"/></svg><span title="told by hovering">word</span>
  <a href="#y" tabindex="3">out of turn</a><p style="width: 2000px">wide</p>
  <dl style="display: grid; grid-template-columns: 6rem 1fr; width: 6.4rem">
  <dt>Where</dt><dd style="margin: 0; overflow-wrap: anywhere">Lane screen</dd></dl>
  <a href="#z" style="display: block; height: 3rem">one</a>
  <a href="#z" style="display: block; height: 3rem; margin-top: -2rem">two</a>
  <img src="gone.png" alt="gone"><p>1</p><p>2</p><p>3</p><p>4</p>
</article></main></body></html>"""


@pytest.mark.parametrize(
    ("size", "signs"),
    [
        (
            PHONE,
            [
                "target of",
                "axe, serious, color-contrast:",
                "at 320 px: scrolls sideways",
                "at 320 px: target of",
                "at 320 px: torn: Lane in dd",
                'at 320 px: lies over another: a "one" and a "two"',
                "at 200%: torn to",
            ],
        ),
        (
            DESKTOP,
            [
                "at 200%: scrolls sideways",
                "at 200%: cut off at the side",
                "at 200%: torn: screen in dd",
                "at 200%: lies over another",
            ],
        ),
    ],
    ids=["telephone", "desk"],
)
def test_what_would_trip_somebody_is_seen(
    browser: Browser, tmp_path: Path, size: ViewportSize, signs: list[str]
) -> None:
    (tmp_path / "faulty.html").write_text(FAULTY, encoding="utf-8")
    with listening_page(browser, size, []) as page:
        address = (tmp_path / "faulty.html").as_uri()
        found = "\n".join(on_a_screen(page, address, aaa=True, colours=size == PHONE, closely=True))
    for sign in (
        "axe, critical, label:",
        "axe, serious, html-has-lang:",
        "names no language",
        "heading skips a level",
        "navigation without a label",
        "header cell without scope",
        "table without header cells",
        "drawing without role",
        "said by a title alone: told by hovering",
        "out of turn",
        "scrolls sideways by",
        "gone.png",
        "2.85 to 1",
        "moves for 1 s",
        *signs,
    ):
        assert sign in found, sign


def test_what_paper_would_cut_or_waste_is_seen(browser: Browser, tmp_path: Path) -> None:
    (tmp_path / "faulty.html").write_text(FAULTY, encoding="utf-8")
    with listening_page(browser, PAPER, [], "dark") as page:
        found = "\n".join(on_paper(page, (tmp_path / "faulty.html").as_uri()))
    for sign in (
        "past the edge",
        "of no use on paper: nav",
        "not in black: p.pale",
        "not on white",
    ):
        assert sign in found, sign


def test_the_search_and_the_contents_are_named_and_large_enough_once_open(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    faults: list[str] = []
    with listening_page(browser, PHONE, faults) as page:
        look(page, (demo_sites["owner"].folder / "index.html").as_uri())
        page.locator(".md-header label[for='__drawer']").click()
        page.locator(".contents a").first.wait_for(state="visible")
        targets = page.locator(".contents a").count()
        faults += page.evaluate("looks.targets()")
    assert targets > 10
    assert faults == []
