"""Draws the icons of an installed book from the mark of the pages: `python -m tests.icons`."""

from pathlib import Path

from playwright.sync_api import Browser, sync_playwright

from generator.site.hosted import ICON_SIZES_PX
from tests.chromium import LAUNCH_FLAGS, find_chromium

ASSETS = Path(__file__).resolve().parents[1] / "site_templates" / "theme" / "assets"
# A launcher may cut a maskable icon to a circle whose radius is two fifths of its width.
MARK_SHARE = 0.52
DRAWING = """<body style="margin:0;display:grid;place-items:center;height:100vh;background:#fbf8f1">
<div style="width:{share}%">{mark}</div></body>"""


def draw(browser: Browser, size_px: int, into: Path) -> None:
    """Draw one icon, the mark in the middle of paper that reaches its edges."""
    page = browser.new_page(viewport={"width": size_px, "height": size_px})
    mark = (ASSETS / "mark.svg").read_text(encoding="utf-8")
    page.set_content(DRAWING.format(share=100 * MARK_SHARE, mark=mark))
    page.screenshot(path=into)
    page.close()


def main() -> None:
    """Draw every icon into the theme."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=find_chromium(), args=LAUNCH_FLAGS)
        for size_px in ICON_SIZES_PX:
            draw(browser, size_px, ASSETS / f"icon-{size_px}.png")
        browser.close()


if __name__ == "__main__":
    main()
