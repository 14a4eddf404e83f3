"""Takes the pictures of the README from the books of the demo property."""

import tempfile
from pathlib import Path

from playwright.sync_api import Browser, ViewportSize, sync_playwright

from tests.book.sites import CHECKOUT, DEMO, build_sites
from tests.chromium import LAUNCH_FLAGS, find_chromium

INTO = CHECKOUT / "tests" / "readme"
DESK: ViewportSize = {"width": 1100, "height": 760}
PHONE: ViewportSize = {"width": 390, "height": 760}
# A day of work, so that the pictures are the same on any day they are taken.
DAY = "2026-09-12T12:00:00"
# Each picture's name, whose book it is from, the page, and the size of the window.
PICTURES: tuple[tuple[str, str, str, ViewportSize], ...] = (
    ("home", "owner", "index.html", DESK),
    ("job-sheet", "owner", "work/lane-2027-autumn_kill.html", PHONE),
    ("hired", "hired-sprayer", "index.html", PHONE),
)


def main() -> None:
    """Builds the books, opens each page from its folder and writes what is seen."""
    browser_path = str(find_chromium())
    INTO.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        sites = build_sites(DEMO, Path(folder))
        browser = playwright.chromium.launch(executable_path=browser_path, args=LAUNCH_FLAGS)
        for name, reader, page, size in PICTURES:
            _take(browser, sites[reader].folder / page, size, INTO / f"{name}.png")
        browser.close()


def _take(browser: Browser, page_file: Path, size: ViewportSize, into: Path) -> None:
    page = browser.new_page(viewport=size)
    page.clock.set_fixed_time(DAY)
    page.goto(page_file.as_uri())
    page.screenshot(path=into)
    page.close()


if __name__ == "__main__":
    main()
