"""The list of stops, cautions and notes is read in a few minutes, whatever the day."""

import datetime
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from generator.book.make import make_book
from generator.inventory.load import load_inventory
from generator.plan.build.season_plan import make_plan
from generator.site.publish import publish
from tests.book.sites import DEMO
from tests.browser.visits import PHONE, listening_page

MOST_WORDS, MOST_BEFORE_A_FOLD = 3000, 1500
DAYS = (
    datetime.date(2026, 8, 20),
    datetime.date(2026, 11, 10),
    datetime.date(2027, 4, 1),
)
WORDS = """() => document.querySelector("article").innerText.split(/\\s+/).filter(Boolean).length"""
UNFOLD = """() => document.querySelectorAll("details").forEach((one) => { one.open = true; })"""
# WCAG 2.2, 2.5.5: a target is 44 px at the least.
THUMB_PX = 44
TOO_SMALL = """(least) => [...document.querySelectorAll("article .rule a, article summary")]
  .filter((one) => one.getBoundingClientRect().height < least)
  .map((one) => one.outerHTML.slice(0, 120))"""


@pytest.mark.parametrize("day", DAYS, ids=str)
def test_the_list_is_short_before_and_behind_its_folds(
    browser: Browser, tmp_path: Path, day: datetime.date
) -> None:
    inventory = load_inventory(DEMO).inventory
    assert inventory is not None
    plan = make_plan(inventory, inventory.property.season, day)
    assert publish(make_book(plan), tmp_path / "site") == ()
    faults: list[str] = []
    with listening_page(browser, PHONE, faults) as page:
        page.goto((tmp_path / "site" / "findings.html").as_uri())
        assert 0 < page.evaluate(WORDS) <= MOST_BEFORE_A_FOLD
        page.evaluate(UNFOLD)
        assert MOST_BEFORE_A_FOLD < page.evaluate(WORDS) <= MOST_WORDS, "most of it is folded"
        assert page.evaluate(TOO_SMALL, THUMB_PX) == []
    assert faults == []
