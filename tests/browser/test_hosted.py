"""A book on a host: kept whole after one visit, read without signal, a newer one offered."""

import base64
import json
import os
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import replace
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from generator.book.model import Book
from generator.site.hosted import ICON_SIZES_PX, MANIFEST, WORKER
from generator.site.publish import publish
from tests.browser.visits import DESKTOP, PHONE, listening_page
from tests.icons import ASSETS, draw
from tests.site.books import book_of

JOBS = 5
LONG_MS = 30_000
A_DAY_LATER = time.time() + 86_400
PAGES = JOBS + 2
KEPT = f"Stored on this device, as of Jul 12, 2026, {PAGES} pages."
# Of icons and manifest a browser decides by itself.
READ_ELSEWHERE = {
    ".handbook-site",
    "search/search_index.js",
    MANIFEST,
    *(f"assets/icon-{px}.png" for px in ICON_SIZES_PX),
}
# W3C, Web Application Manifest: what lies within two fifths of an icon's width of its middle is
# never cut off.
SAFE_SHARE = 0.4
# The largest distance from the middle of what is not paper, as a share of the width.
FARTHEST = """async (data) => {
  const picture = new Image();
  picture.src = `data:image/png;base64,${data}`;
  await picture.decode();
  const { width, height } = picture;
  const paper = Object.assign(document.createElement("canvas"), { width, height }).getContext("2d");
  paper.drawImage(picture, 0, 0);
  const { data: points } = paper.getImageData(0, 0, width, height);
  let farthest = 0;
  for (let at = 0; at < points.length; at += 4) {
    const isPaper = [0, 1, 2, 3].every((part) => points[at + part] === points[part]);
    const [x, y] = [(at / 4) % width, Math.floor(at / 4 / width)];
    if (!isPaper) farthest = Math.max(farthest, Math.hypot(x - width / 2, y - height / 2) / width);
  }
  return { width, height, farthest, corner: [...points.slice(0, 4)] };
}"""


class _Host(SimpleHTTPRequestHandler):
    """A static host; `asked` is what it was asked for, `moved` whether it leaves endings away."""

    asked: list[str]
    moved = False

    def do_GET(self) -> None:
        self.asked.append(self.path.lstrip("/"))
        if self.moved and self.path.endswith(".html"):
            self.send_response(308)
            self.send_header("Location", self.path.removesuffix(".html"))
            self.end_headers()
            return
        with suppress(ConnectionError):  # whoever asked has gone
            super().do_GET()

    def translate_path(self, path: str) -> str:
        found = super().translate_path(path)
        return found if Path(found).exists() else f"{found}.html"

    def log_message(self, format: str, *args: Any) -> None:
        """Say nothing of every request."""


class Hosted:
    """A folder on a host, until the host is stopped."""

    def __init__(self, folder: Path, moved: bool) -> None:
        handler = type("Host", (_Host,), {"asked": [], "moved": moved})
        self.asked: list[str] = handler.asked  # type: ignore[attr-defined]  # made just above
        self.server = ThreadingHTTPServer(("127.0.0.1", 0), partial(handler, directory=str(folder)))
        self.thread = threading.Thread(target=self.server.serve_forever, args=(0.02,), daemon=True)
        self.thread.start()

    def url(self, name: str = "") -> str:
        return f"http://127.0.0.1:{self.server.server_port}/{name}"

    def stop(self) -> None:
        if self.thread.is_alive():
            self.server.shutdown()
            self.server.server_close()
            self.thread.join()


@contextmanager
def hosted(folder: Path, moved: bool = False) -> Iterator[Hosted]:
    host = Hosted(folder, moved)
    try:
        yield host
    finally:
        host.stop()


@contextmanager
def visiting(browser: Browser) -> Iterator[tuple[BrowserContext, Page]]:
    context = browser.new_context(viewport=PHONE)
    try:
        yield context, context.new_page()
    finally:
        context.close()


def _with_words(book: Book, address: str, words: str) -> Book:
    pages = tuple(
        replace(page, markdown=f"{page.markdown}\n\n{words}\n") if page.address == address else page
        for page in book.pages
    )
    return replace(book, pages=pages)


def _names(folder: Path) -> set[str]:
    return {path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file()}


def _differing(one: Path, other: Path) -> set[str]:
    return {
        name
        for name in _names(one) | _names(other)
        if not (one / name).is_file()
        or not (other / name).is_file()
        or (one / name).read_bytes() != (other / name).read_bytes()
    }


@pytest.fixture
def site(tmp_path: Path) -> Path:
    assert publish(book_of(JOBS), tmp_path / "host" / "book") == ()
    return tmp_path / "host" / "book"


@pytest.mark.parametrize(
    "moved",
    [False, pytest.param(True, marks=pytest.mark.long)],
    ids=["plain", "endings left away"],
)
def test_after_one_visit_all_of_it_is_read_and_searched_without_a_host(
    browser: Browser, site: Path, moved: bool
) -> None:
    with hosted(site.parent, moved) as host, visiting(browser) as (context, page):
        said: list[str] = []
        page.on("console", lambda message: said.append(message.text))
        page.goto(host.url("book/"))
        expect(page.locator(".foot .kept")).to_have_text(KEPT, timeout=LONG_MS)
        asked = {name.removeprefix("book/") for name in host.asked}
        assert {name for name in _names(site) if name not in READ_ELSEWHERE} <= asked
        assert "search/search_index.js" not in asked
        _look_at_manifest(context, page, site)
        host.stop()
        page.goto(host.url("book/work/job-4.html"))
        assert page.locator("h1").inner_text() == "Job 4"
        assert page.evaluate("[...document.images].every((image) => image.naturalWidth)")
        expect(page.locator(".foot .kept")).to_have_text(KEPT, timeout=LONG_MS)
        page.keyboard.press("s")
        page.locator(".md-search__input").press_sequentially("spring3")
        page.locator(".md-search-result__link").first.click()
        page.wait_for_url("**?h=*")
        assert page.locator("h1").inner_text() == "Job 3"
        page.goto(host.url("book/of-an-earlier-book.html"))
        assert page.locator("h1").inner_text() == "Lane & Creek"
        assert said == []


def _look_at_manifest(context: BrowserContext, page: Page, site: Path) -> None:
    """Chromium finds nothing wrong with it, and with installing from it."""
    session = context.new_cdp_session(page)
    told = session.send("Page.getAppManifest")
    assert told["errors"] == []
    manifest = json.loads(told["data"])
    assert manifest["name"] == "Lane & Creek"
    assert all((site / icon["src"]).is_file() for icon in manifest["icons"])
    found = session.send("Page.getInstallabilityErrors")["installabilityErrors"]
    # a context of the tests keeps nothing, and is never installed from
    assert {error["errorId"] for error in found} <= {"in-incognito"}


def test_after_an_edit_what_changed_is_fetched_and_shown_once_it_is_asked_for(
    browser: Browser, site: Path, tmp_path: Path
) -> None:
    edited = _with_words(book_of(JOBS), "work/job-2.md", "Words of a later day.")
    assert publish(replace(edited, files={"figures/plan.svg": b"<svg/>\n"}), tmp_path / "new") == ()
    changed = _differing(site, tmp_path / "new") - {".handbook-site"}
    assert changed == {"work/job-2.html", "figures/plan.svg", WORKER}
    with hosted(site) as host, visiting(browser) as (context, page):
        page.goto(host.url())
        expect(page.locator(".kept")).to_have_text(KEPT, timeout=LONG_MS)
        for name in changed:
            (site / name).write_bytes((tmp_path / "new" / name).read_bytes())
            # a host tells files of different seconds apart
            os.utime(site / name, (A_DAY_LATER, A_DAY_LATER))
        host.asked.clear()
        page.goto(host.url("work/job-2.html"))
        # a browser looks for a newer worker by itself, some seconds after a page is opened
        expect(page.locator(".newer")).to_have_text(
            "A newer book is here, as of Jul 12, 2026: show it", timeout=LONG_MS
        )
        assert sorted(set(host.asked) - {MANIFEST}) == sorted(changed)
        assert [name for name in host.asked if name != WORKER] == [
            name for name in dict.fromkeys(host.asked) if name != WORKER
        ]
        # nothing changes under anybody's hands, on any page, until then
        page.goto(host.url("index.html"))
        page.goto(host.url("work/job-2.html"))
        assert "Words of a later day." not in page.locator("article").inner_text()
        host.stop()
        page.locator(".newer button").click()
        expect(page.locator("article")).to_contain_text("Words of a later day.", timeout=LONG_MS)
        expect(page.locator(".newer")).to_have_count(0)
        names = page.evaluate("caches.keys()")
        assert len(names) == 1
        assert context.pages == [page]


def test_a_file_that_is_not_what_was_built_is_not_kept_and_what_was_kept_is_used_next_time(
    browser: Browser, site: Path
) -> None:
    built = (site / "work" / "job-1.html").read_bytes()
    (site / "work" / "job-1.html").write_bytes(built + b"<!-- put in on the way -->")
    with hosted(site) as host, visiting(browser) as (_, page):
        page.goto(host.url())
        expect(page.locator(".kept")).to_contain_text("Not stored on this device", timeout=LONG_MS)
        (site / "work" / "job-1.html").write_bytes(built)
        before = set(host.asked)
        host.asked.clear()
        page.goto(host.url("work/job-1.html"))
        expect(page.locator(".kept")).to_have_text(KEPT, timeout=LONG_MS)
        # what was kept is not asked for again, but for what the page itself shows
        assert {name for name in before if name.startswith("work/")} - {"work/job-1.html"}
        assert {name for name in host.asked if name.endswith(".html")} == {"work/job-1.html"}


def test_two_books_on_one_host_keep_each_other(browser: Browser, site: Path) -> None:
    assert publish(replace(book_of(1), title="Other"), site.with_name("other")) == ()
    with hosted(site.parent) as host, visiting(browser) as (_, page):
        page.goto(host.url("book/index.html"))
        expect(page.locator(".kept")).to_have_text(KEPT, timeout=LONG_MS)
        page.goto(host.url("other/index.html"))
        expect(page.locator(".kept")).to_have_text(
            "Stored on this device, as of Jul 12, 2026, 3 pages.", timeout=LONG_MS
        )
        host.stop()
        page.goto(host.url("book/work/job-5.html"))
        assert page.locator("h1").inner_text() == "Job 5"


def test_from_a_folder_nothing_of_it_is_asked_for(browser: Browser, site: Path) -> None:
    faults: list[str] = []
    with listening_page(browser, DESKTOP, faults) as page:
        asked: list[str] = []
        page.on("request", lambda request: asked.append(request.url))
        page.goto((site / "index.html").as_uri())
        page.wait_for_load_state("networkidle")
        assert page.locator(".kept, .newer, link[rel=manifest]").count() == 0
        assert not [url for url in asked if url.endswith((MANIFEST, WORKER))]
    assert faults == []


@pytest.mark.parametrize("size_px", ICON_SIZES_PX)
def test_an_icon_is_the_mark_within_what_is_never_cut_off(
    browser: Browser, tmp_path: Path, size_px: int
) -> None:
    draw(browser, size_px, tmp_path / "icon.png")
    with visiting(browser) as (_, page):
        kept, drawn = (
            page.evaluate(FARTHEST, _base64(file))
            for file in (ASSETS / f"icon-{size_px}.png", tmp_path / "icon.png")
        )
    assert (kept["width"], kept["height"]) == (size_px, size_px)
    assert kept == drawn
    assert 0.2 < kept["farthest"] < SAFE_SHARE
    assert kept["corner"][3] == 255


def _base64(file: Path) -> str:
    return base64.b64encode(file.read_bytes()).decode()
