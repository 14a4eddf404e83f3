"""Opens a finished page and says, in sentences, what a reader of it would trip over.

What is looked at stands in looks.js; the rules of axe-core, a checker of its own, are run beside.
"""

from collections.abc import Iterator, Sequence
from contextlib import ExitStack, contextmanager
from functools import cache
from pathlib import Path
from typing import Literal

from axe_playwright_python.base import AXE_SCRIPT
from playwright.sync_api import Browser, Page, ViewportSize

from tests.browser.visits import PHONE, listening_page

Scheme = Literal["light", "dark"]
SCHEMES: tuple[Scheme, Scheme] = ("light", "dark")

# A letter sheet, 8.5 in wide, between the margins of 11 mm that print.css leaves it, in px.
PAPER: ViewportSize = {"width": int(8.5 * 96 - 2 * 11 / 25.4 * 96), "height": 980}

# WCAG 2.2, 1.4.6 (AAA) and 1.4.3 (AA): how text stands out from its ground, to 1.
AAA_CONTRAST, AA_CONTRAST = 7.0, 4.5

# WCAG 2.2, 1.4.10: a page reads on a screen as narrow as this without scrolling sideways.
NARROW: ViewportSize = {"width": 320, "height": 640}

# WCAG 2.2, 1.4.4: text may be twice as large. The theme's root stands at 125% or more.
TWICE = "html { font-size: 250% !important }"

AXE = """(colors) => axe.run({
    resultTypes: ["violations"], iframes: false, preload: false,
    rules: {"color-contrast": {enabled: colors}},
  }).then((found) => found.violations
    .filter((one) => ["serious", "critical"].includes(one.impact))
    .flatMap((one) => one.nodes.map((node) =>
      `axe, ${one.impact}, ${one.id}: ${node.target.join(" ")} ${node.html.slice(0, 120)}`)))"""


@cache
def _looks() -> str:
    return (Path(__file__).parent / "looks.js").read_text(encoding="utf-8")


@contextmanager
def windows(
    browser: Browser, size: ViewportSize, faults: list[str]
) -> Iterator[dict[Scheme, Page]]:
    """A window for each scheme: the theme keeps the first one it meets."""
    with ExitStack() as stack:
        yield {
            scheme: stack.enter_context(listening_page(browser, size, faults, scheme))
            for scheme in SCHEMES
        }


def look(page: Page, address: str) -> None:
    """Opens `address`, ready to be looked at."""
    page.emulate_media(media="screen", reduced_motion="no-preference")
    page.goto(address)
    page.evaluate(_looks())


def is_dark(page: Page) -> bool:
    """Whether the page stands on a dark ground."""
    ground: str = page.evaluate("getComputedStyle(document.body).backgroundColor")
    return sum(map(int, ground[4:-1].split(", "))) < 3 * 64


def on_a_screen(page: Page, address: str, *, aaa: bool, colours: bool, closely: bool) -> list[str]:
    """Faults of a page on a phone or a desk, whichever the window of `page` is.

    With every working unfolded. `aaa` asks 7 to 1 of every text instead of 4.5; `colors` lets axe
    look at them too, for which it takes most of its time. `closely` looks at every word and at all
    that is aimed at on the narrowest screen and in text twice as large.
    """
    on_a_phone = page.viewport_size == PHONE
    look(page, address)
    faults = _said(page, "structure")
    if on_a_phone and closely:
        faults += _narrow_and_large(page)
    page.evaluate("looks.unfold()")
    faults += _said(page, "sideways", "pictures", *(["targets"] if on_a_phone else []))
    faults += _pale(page, AAA_CONTRAST if aaa else AA_CONTRAST)
    page.evaluate(AXE_SCRIPT)
    faults += page.evaluate(AXE, colours)
    page.emulate_media(reduced_motion="reduce")
    faults += _said(page, "motion")
    if not on_a_phone:
        page.add_style_tag(content=TWICE)
        close = ("crowded", "overlapping") if closely else ()
        faults += [f"at 200%: {fault}" for fault in _said(page, "sideways", "clipped", *close)]
    return faults


def _narrow_and_large(page: Page) -> list[str]:
    """Faults on the narrowest screen and, on a phone, of text twice as large."""
    looks = ("sideways", "crowded", "overlapping")
    page.set_viewport_size(NARROW)
    faults = [f"at {NARROW['width']} px: {fault}" for fault in _said(page, *looks, "targets")]
    page.set_viewport_size(PHONE)
    large = page.add_style_tag(content=TWICE)
    faults += [f"at 200%: {fault}" for fault in _said(page, *looks)]
    large.evaluate("style => style.remove()")
    return faults


def on_paper(page: Page, address: str) -> list[str]:
    """Faults of a page as it is printed, opened in a window as wide as the paper's text."""
    look(page, address)
    page.emulate_media(media="print")
    return _said(page, "paper")


def _pale(page: Page, at_least: float) -> list[str]:
    found: Sequence[tuple[str, float]] = page.evaluate("looks.contrasts()")
    assert len(found) > 10
    return [f"{ratio:.2f} to 1: {of}" for of, ratio in found if ratio < at_least]


def _said(page: Page, *looks: str) -> list[str]:
    return [fault for one in looks for fault in page.evaluate(f"looks.{one}()")]
