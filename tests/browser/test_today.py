"""The page of now on the day of the device: every job stands where the plan of that day has it."""

import datetime
from collections.abc import Iterable, Iterator

import pytest
from playwright.sync_api import Browser, Page

from generator.inventory.load import load_inventory
from generator.inventory.schema import Inventory
from generator.plan.build.season_plan import make_plan
from generator.plan.model.days import Span
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from tests.book.reading import read
from tests.book.sites import DEMO, Site, demo_readers
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


def _plan_on(inventory: Inventory, reader: str, season: int, day: datetime.date) -> Plan:
    """The plan of a day as a reader sees it."""
    plan = make_plan(inventory, season, day)
    others = {one.id: one for one in inventory.readers}
    return seen_by(plan, others[reader]) if reader in others else plan


def _compare(browser: Browser, site: Site, reader: str, step: int) -> set[str]:
    """Compare every state the page shows, and return the states that were met."""
    inventory = load_inventory(DEMO).inventory
    assert inventory is not None
    faults: list[str] = []
    kinds = set()
    with listening_page(browser, PHONE, faults) as page:
        for day in _days(step):
            plan = _plan_on(inventory, reader, site.plan.season, day)
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
    return kinds


@pytest.mark.parametrize("reader", demo_readers())
def test_states_of_some_days_are_the_plan_s(
    browser: Browser, demo_sites: dict[str, Site], reader: str
) -> None:
    kinds = _compare(browser, demo_sites[reader], reader, EVERY)
    assert kinds >= {"waiting", "missed"}
    assert "open" in kinds or reader != "owner"


@pytest.mark.long
@pytest.mark.parametrize("reader", demo_readers())
def test_states_of_366_days_are_the_plan_s(
    browser: Browser, demo_sites: dict[str, Site], reader: str
) -> None:
    kinds = _compare(browser, demo_sites[reader], reader, 1)
    assert kinds >= {"open", "waiting", "missed"}


def test_a_partner_is_told_on_the_day_that_others_are_out(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    site = demo_sites["hunting-partner"]
    assert site.plan.others_out
    spans = [span for one in site.plan.others_out for span in one.spans]
    with listening_page(browser, PHONE, []) as page:
        for first, last in spans:
            for day in (max(first, site.plan.as_of), last):
                on = [one for one in site.plan.others_out if _holds(one.spans, day)]
                _opened_on(page, site, day)
                shown = page.locator("#today .kept > li:visible")
                assert shown.count() == len(on), day
        quiet = next(day for day in _days(1) if not _holds(spans, day))
        _opened_on(page, site, quiet)
        assert not page.locator("#today .keeping").is_visible()


def _holds(spans: Iterable[Span], day: datetime.date) -> bool:
    return any(first <= day <= last for first, last in spans)


def test_others_read_of_their_own_work_alone(demo_sites: dict[str, Site]) -> None:
    for reader in demo_readers()[1:]:
        site = demo_sites[reader]
        plan = site.plan
        page = read(site.pages()["now.html"])
        told = {one.attributes["data-job"] for one in page.walk() if "data-job" in one.attributes}
        open_to_them = {one.id for one in plan.jobs if not one.state.is_settled}
        open_to_them |= {one.id for one in plan.upkeep if one.state.is_ahead}
        assert told == open_to_them
        sheets = {f"work/{one.address}.html" for one in plan.jobs}
        sheets |= {f"work/{one.address}.html" for one in plan.upkeep}
        (article,) = page.all("article")
        links = {one.attributes.get("href", "") for one in article.all("a")}
        linked = {one for one in links if one.startswith("work/")}
        assert linked
        assert linked <= sheets


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


def test_a_day_with_nothing_to_do_says_so(browser: Browser, demo_sites: dict[str, Site]) -> None:
    site = demo_sites["hired-driller"]
    opens = [job.dates.opens for job in site.plan.jobs]
    with listening_page(browser, PHONE, []) as page:
        _opened_on(page, site, datetime.date(2026, 12, 1))
        assert datetime.date(2026, 12, 31) < min(day for day in opens if day is not None)
        assert page.locator("#today .idle").is_visible()
        _opened_on(page, site, datetime.date(2027, 5, 6))
        assert not page.locator("#today .idle").is_visible()
        assert page.locator("#today [data-group=open]").is_visible()


def test_without_scripts_the_months_are_read(browser: Browser, demo_sites: dict[str, Site]) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((demo_sites["owner"].folder / "now.html").as_uri())
    assert not page.locator("#today").is_visible()
    assert page.locator("h2", has_text="September 2026").is_visible()
    context.close()
