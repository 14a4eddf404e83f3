"""The answer of a stand on the day of the device; without scripts, of every day in a table."""

import datetime

import pytest
from playwright.sync_api import Browser

from tests.book.sites import Site
from tests.browser.visits import PHONE, listening_page

NOON = datetime.time(12)
PICKED = "() => document.querySelector('.picked').innerText.trim()"


def _said_on(browser: Browser, site: Site, name: str, day: str) -> tuple[str, bool, bool]:
    """What stands open on a day, whether all days do, and whether the walk and wind follow."""
    faults: list[str] = []
    with listening_page(browser, PHONE, faults) as page:
        page.clock.set_fixed_time(datetime.datetime.combine(datetime.date.fromisoformat(day), NOON))
        page.goto((site.folder / name).as_uri())
        told = page.evaluate(PICKED)
        is_open = page.evaluate("() => document.querySelector('[data-answers] details').open")
        follows = page.locator(".then").is_visible()
        last = page.evaluate("() => document.querySelector('[data-answers]').innerText.trim()")
    assert faults == []
    assert last.endswith("Call before you go. This page does not know who is out today.")
    return str(told), bool(is_open), follows


def test_fourteen_september_the_partner_asks_for_the_oak(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    site = demo_sites["hunting-partner"]
    told = _said_on(browser, site, "stands/oak-ladder.html", "2026-09-14")
    assert told == (
        "No. It was found unsafe Aug 12, 2026: nobody climbs it. "
        "The season is closed; it opens Sep 15, 2026.",
        False,
        False,
    )


@pytest.mark.parametrize(
    ("day", "told", "follows"),
    [
        ("2026-10-30", "Nothing written here speaks against it.", True),
        (
            "2026-10-31",
            "Not from 3 to 7:15 p.m.: somebody sits here or shoots this way. "
            "Nothing else written here speaks against it.",
            True,
        ),
        ("2027-02-01", "No. The season is closed.", False),
    ],
)
def test_the_answer_is_that_of_the_day(
    browser: Browser, demo_sites: dict[str, Site], day: str, told: str, follows: bool
) -> None:
    assert _said_on(browser, demo_sites["owner"], "stands/creek-stand.html", day) == (
        told,
        False,
        follows,
    )


def test_a_day_before_the_book_has_the_table_alone(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    site = demo_sites["owner"]
    assert _said_on(browser, site, "stands/creek-stand.html", "2026-08-01") == ("", True, True)


def test_without_scripts_the_table_of_all_days_stands_open(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((demo_sites["owner"].folder / "stands/creek-stand.html").as_uri())
    table = page.locator("[data-answers] table")
    assert table.is_visible()
    assert table.locator("tbody tr").count() > 4
    context.close()
