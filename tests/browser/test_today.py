"""The page of now on the day of the device: every job stands where the plan of that day has it."""

import datetime
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from generator.inventory.load import load_inventory
from generator.plan.build import make_plan
from tests.book.sites import DEMO, Site
from tests.browser.visits import PHONE, listening_page

DAYS = 366
EVERY = 61
SETTLED = ("done", "not_needed")
STATES = """() => Object.fromEntries([...document.querySelectorAll("#today .every > li")]
  .map((row) => [row.dataset.job, row.dataset.state]))"""
NOON = datetime.time(12)


def _opened_on(page: Page, site: Site, day: datetime.date) -> None:
    page.clock.set_fixed_time(datetime.datetime.combine(day, NOON))
    page.goto((site.folder / "now.html").as_uri())


def _days(step: int) -> Iterator[datetime.date]:
    first = datetime.date(2026, 8, 20)
    yield from (first + datetime.timedelta(days=number) for number in range(0, DAYS, step))


def _compare(browser: Browser, site: Site, step: int) -> None:
    inventory = load_inventory(DEMO).inventory
    assert inventory is not None
    faults: list[str] = []
    kinds = set()
    with listening_page(browser, PHONE, faults) as page:
        for day in _days(step):
            plan = make_plan(inventory, site.plan.season, day, as_of_typed=True)
            jobs = (*plan.jobs, *plan.upkeep)
            states = {one.id: one.state.kind for one in jobs}
            _opened_on(page, site, day)
            shown = page.evaluate(STATES)
            expected = {job: states[job] for job in shown if job in states}
            assert {job: shown[job] for job in expected} == expected, day
            to_do = {
                one.id
                for one in jobs
                if one.season == plan.season and one.state.kind not in SETTLED
            }
            assert to_do <= shown.keys(), day
            kinds |= set(shown.values())
    assert faults == []
    assert kinds >= {"open", "waiting", "missed"}


def test_states_of_some_days_are_the_plan_s(browser: Browser, demo_sites: dict[str, Site]) -> None:
    _compare(browser, demo_sites["owner"], EVERY)


@pytest.mark.long
def test_states_of_366_days_are_the_plan_s(browser: Browser, demo_sites: dict[str, Site]) -> None:
    _compare(browser, demo_sites["owner"], 1)


def test_the_first_to_close_stands_first(browser: Browser, demo_sites: dict[str, Site]) -> None:
    with listening_page(browser, PHONE, []) as page:
        _opened_on(page, demo_sites["owner"], datetime.date(2026, 9, 12))
        assert "September 12, 2026" in page.locator("#today h2").inner_text()
        rows = page.locator("#today [data-group=open] li")
        closes = [row.get_attribute("data-closes") or "" for row in rows.all()]
        assert len(closes) > 3
        assert closes == sorted(closes)
        first = rows.first.locator(".told").inner_text()
        days = (datetime.date.fromisoformat(closes[0]) - datetime.date(2026, 9, 12)).days
        assert first == f"closes in {days} days"


def test_a_job_in_its_quiet_dates_says_so(browser: Browser, demo_sites: dict[str, Site]) -> None:
    with listening_page(browser, PHONE, []) as page:
        _opened_on(page, demo_sites["owner"], datetime.date(2026, 9, 24))
        told = page.locator("#today [data-job='lane/2027/autumn_kill'] .told").first
        assert told.inner_text() == "not today: dates to keep"
        assert page.locator("#today .keeping").is_visible()


def test_a_clock_before_the_plan_and_one_after_the_season_are_told(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    with listening_page(browser, PHONE, []) as page:
        _opened_on(page, demo_sites["owner"], datetime.date(2025, 1, 1))
        assert page.locator("#today .early").is_visible()
        assert not page.locator("#today [data-group=open]").is_visible()
        _opened_on(page, demo_sites["owner"], datetime.date(2027, 9, 1))
        assert page.locator("#today .late").is_visible()


def test_without_scripts_the_months_are_read(browser: Browser, demo_sites: dict[str, Site]) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((demo_sites["owner"].folder / "now.html").as_uri())
    assert not page.locator("#today").is_visible()
    assert page.locator("h2", has_text="September 2026").is_visible()
    context.close()
