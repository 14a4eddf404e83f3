"""The first page on the day of the device: every line stands where the plan of that day has it."""

import datetime
import re
from collections.abc import Iterable, Iterator

import pytest
from playwright.sync_api import Browser, Page

from generator.inventory.load import load_inventory
from generator.inventory.schema import Inventory
from generator.plan.build.season_plan import make_plan
from generator.plan.model.days import Span, day_words
from generator.plan.model.job import last_day_of
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from generator.plan.views.closed import closed_without_record
from tests.book.reading import read
from tests.book.sites import DEMO, Site, demo_readers
from tests.browser.visits import PHONE, listening_page

# what closed by a day in August, November and April
CLOSED_ON = [datetime.date(2026, 8, 20), datetime.date(2026, 11, 10), datetime.date(2027, 4, 1)]
DAYS = 366
EVERY = 61
MOST_WORDS = 300
MOST_LINES = 7
SOME_PAGES = 4
# What the plan may call so what a page calls so, before an answer is asked for. Of a job that dates
# leave no day of, or whose first day is not known, a page knows only when it is over.
STATES = {
    "open": {"open"},
    "closed": {"missed"},
    "undated": {"undated", "waiting", "open"},
    "held": {"waiting"},
    "next": {"waiting"},
    "asks": {"waiting"},
}
LINES = """() => [...document.querySelectorAll("#today .work > li")].map((row) => ({
  state: row.dataset.state, count: Number(row.dataset.count), shown: !row.hidden,
  told: row.querySelector(".told").textContent, last: row.dataset.days.split("/").pop(),
  sheets: [...row.querySelectorAll("a")].map((link) => link.getAttribute("href")),
}))"""
WORDS = "() => document.querySelector('article').innerText.split(/\\s+/).filter(Boolean).length"
NOON = datetime.time(12)


def _opened_on(page: Page, site: Site, day: datetime.date, name: str = "index.html") -> None:
    page.clock.set_fixed_time(datetime.datetime.combine(day, NOON))
    page.goto((site.folder / name).as_uri())


def _days(step: int) -> Iterator[datetime.date]:
    first = datetime.date(2026, 8, 20)
    yield from (first + datetime.timedelta(days=number) for number in range(0, DAYS, step))


def _plan_on(inventory: Inventory, reader: str, season: int, day: datetime.date) -> Plan:
    """The plan of a day as a reader sees it."""
    plan = make_plan(inventory, season, day)
    others = {one.id: one for one in inventory.readers}
    return seen_by(plan, others[reader]) if reader in others else plan


def _compare(browser: Browser, site: Site, reader: str, step: int) -> set[str]:
    """Compare the state of every sheet a line names with the plan of the day, and count words."""
    inventory = load_inventory(DEMO).inventory
    assert inventory is not None
    faults: list[str] = []
    kinds = set()
    with listening_page(browser, PHONE, faults) as page:
        for day in _days(step):
            plan = _plan_on(inventory, reader, site.plan.season, day)
            states = {f"work/{job.address}.html": job.state for job in (*plan.jobs, *plan.upkeep)}
            _opened_on(page, site, day)
            lines = page.evaluate(LINES)
            for line in lines:
                for sheet in set(line["sheets"]) & states.keys():
                    assert states[sheet].kind in STATES[line["state"]], (day, sheet)
                    asks = states[sheet].question is not None
                    assert (line["state"] == "asks") <= asks, (day, sheet)
            shown = [line for line in lines if line["shown"]]
            now = sum(line["state"] in ("open", "asks") for line in lines)
            assert len(shown) <= MOST_LINES
            assert len(shown) >= min(now, MOST_LINES)
            assert page.evaluate(WORDS) <= MOST_WORDS, day
            kinds |= {line["state"] for line in lines}
    assert faults == []
    return kinds


@pytest.mark.parametrize("reader", demo_readers())
def test_states_of_some_days_are_the_plan_s(
    browser: Browser, demo_sites: dict[str, Site], reader: str
) -> None:
    kinds = _compare(browser, demo_sites[reader], reader, EVERY)
    assert kinds >= {"next", "closed"}


@pytest.mark.long
@pytest.mark.parametrize("reader", demo_readers())
def test_states_of_every_day_are_the_plan_s(
    browser: Browser, demo_sites: dict[str, Site], reader: str
) -> None:
    kinds = _compare(browser, demo_sites[reader], reader, 1)
    assert kinds >= {"open", "next", "closed"}


def test_every_job_that_can_come_is_counted_in_a_line(demo_sites: dict[str, Site]) -> None:
    for reader in demo_readers():
        site = demo_sites[reader]
        page = read(site.pages()["index.html"])
        counted = [
            int(one.attributes["data-count"])
            for one in page.walk()
            if "data-count" in one.attributes
        ]
        to_come = [
            job
            for job in (*site.plan.jobs, *site.plan.upkeep)
            if job.state.is_ahead and last_day_of(job) is not None
        ]
        assert sum(counted) == len(to_come)


def test_dates_to_keep_are_shown_on_their_days(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    site = demo_sites["owner"]
    spans = [
        tuple(part.split("/") for part in one.attributes["data-days"].split())
        for one in read(site.pages()["index.html"]).walk()
        if "data-days" in one.attributes and "data-count" not in one.attributes
    ]
    assert len(spans) > 3
    with listening_page(browser, PHONE, []) as page:
        for day in _days(EVERY):
            _opened_on(page, site, day)
            on = [days for days in spans if _holds(days, day)]
            shown = page.locator("#mustnot > li[data-days]:visible")
            assert shown.count() == len(on), day


def _holds(spans: Iterable[Iterable[str]], day: datetime.date) -> bool:
    return any(first <= day.isoformat() <= last for first, last in spans)


def test_others_read_of_their_own_work_alone(demo_sites: dict[str, Site]) -> None:
    for reader in demo_readers()[1:]:
        site = demo_sites[reader]
        (article,) = read(site.pages()["index.html"]).all("article")
        links = {one.attributes.get("href", "") for one in article.all("a")}
        linked = {one for one in links if one.startswith("work/")}
        assert linked
        assert linked <= {
            f"work/{job.address}.html" for job in (*site.plan.jobs, *site.plan.upkeep)
        }


def test_the_first_to_close_stands_first_with_the_days_that_are_left(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    day = datetime.date(2027, 6, 15)
    with listening_page(browser, PHONE, []) as page:
        _opened_on(page, demo_sites["owner"], day)
        shown = [line for line in page.evaluate(LINES) if line["shown"]]
        assert len(shown) == MOST_LINES
        left = [(datetime.date.fromisoformat(line["last"]) - day).days for line in shown]
        assert left == sorted(left)
        # today is one of them, as on the sheet
        words = {0: "last day today"}
        assert [line["told"] for line in shown] == [
            words.get(count, f"{count + 1} days left") for count in left
        ]
        assert re.fullmatch(
            r"\d+ more that can be done today", page.locator("#today .rest").inner_text()
        )


def test_what_closed_without_a_record_is_counted_and_has_its_page(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    """On a day in November and one in April the jobs of the plan of that day, none lost."""
    site = demo_sites["owner"]
    inventory = load_inventory(DEMO).inventory
    assert inventory is not None
    with listening_page(browser, PHONE, []) as page:
        for day in CLOSED_ON:
            plan = _plan_on(inventory, "owner", site.plan.season, day)
            closed = [
                one for one in closed_without_record(plan)
                if one.settled_by is None and not one.is_optional
            ]  # fmt: skip
            _opened_on(page, site, day)
            assert page.locator("#mustnot li.closed").inner_text() == (
                f"{len(closed)} jobs closed without a record"
            )
            _opened_on(page, site, day, "missed.html")
            told = page.locator("[data-step] li:visible").all_inner_texts()
            names = [name for line in told for name in line.partition(":")[2].split(", ")]
            assert len(names) == len(closed)
            days = {day_words(one.last_day) for one in closed}
            assert {line.partition(":")[0].removeprefix("Last day ") for line in told} == days


def test_a_job_in_dates_to_keep_is_not_for_today(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    with listening_page(browser, PHONE, []) as page:
        _opened_on(page, demo_sites["owner"], datetime.date(2026, 8, 25))
        held = [line for line in page.evaluate(LINES) if line["state"] == "held"]
        assert bool(held) == page.locator("#today .held").is_visible()
        for line in held:
            assert not line["shown"] or line["told"].startswith("begins")


def test_a_clock_before_the_plan_is_told(browser: Browser, demo_sites: dict[str, Site]) -> None:
    with listening_page(browser, PHONE, []) as page:
        _opened_on(page, demo_sites["owner"], datetime.date(2025, 1, 1))
        assert page.locator(".early").is_visible()


@pytest.mark.parametrize(
    ("reader", "what_to_do"),
    [("owner", "Build a new one"), ("hired-sprayer", "Ask the owner for a new one")],
)
def test_every_page_says_from_its_day_on_that_it_is_old(
    browser: Browser, demo_sites: dict[str, Site], reader: str, what_to_do: str
) -> None:
    """The demo says a day before its season ends."""
    site = demo_sites[reader]
    names = [f"{page.address.removesuffix('.md')}.html" for page in site.book.pages]
    with listening_page(browser, PHONE, []) as page:
        for name in names[:: len(names) // SOME_PAGES]:
            _opened_on(page, site, datetime.date(2027, 7, 31), name)
            assert not page.locator(".old").is_visible(), name
            _opened_on(page, site, datetime.date(2027, 8, 1), name)
            assert page.locator(".old").inner_text() == (
                "This book is old. It is as of Aug 20, 2026, for use until Jul 31, 2027. "
                f"{what_to_do} before you work by it."
            )
            page.emulate_media(media="print")
            assert page.locator(".old").is_visible()
            page.emulate_media(media="screen")


def test_every_page_has_the_day_it_is_as_of_and_the_day_it_is_old_after(
    demo_sites: dict[str, Site],
) -> None:
    for site in demo_sites.values():
        for name, html in site.pages().items():
            assert html.count('<p class="old" data-old-after="2027-07-31" hidden>') == 1, name
            assert html.count("<p>As of Aug 20, 2026. Made for ") == 1, name


def test_a_day_with_nothing_to_do_says_so(browser: Browser, demo_sites: dict[str, Site]) -> None:
    site = demo_sites["hired-driller"]
    opens = [job.usable[0][0] for job in site.plan.jobs if job.usable]
    with listening_page(browser, PHONE, []) as page:
        _opened_on(page, site, datetime.date(2026, 11, 1))
        assert datetime.date(2026, 12, 1) < min(opens)
        assert page.locator("#today .idle").is_visible()
        _opened_on(page, site, datetime.date(2027, 5, 6))
        assert not page.locator("#today .idle").is_visible()
        assert page.locator("#today .work > li:visible").count() > 0


def test_today_stands_in_the_bands_where_the_device_says(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    with listening_page(browser, PHONE, []) as page:
        for name in ("index.html", "year.html"):
            _opened_on(page, demo_sites["owner"], datetime.date(2027, 3, 2), name)
            line = page.locator(".bands[data-first] svg line.now").first
            # Sep 1 to Mar 2 are 182 days of the 365 of the season
            assert float((line.get_attribute("x1") or "").rstrip("%")) == pytest.approx(18200 / 365)
            _opened_on(page, demo_sites["owner"], datetime.date(2027, 9, 2), name)
            assert not page.locator(".bands[data-first] svg line.now").first.is_visible()


def test_without_scripts_the_rest_of_the_month_is_read(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    site = demo_sites["owner"]
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((site.folder / "index.html").as_uri())
    shown = page.locator("#today .work > li:visible")
    expected = {
        job.step.name
        for job in (*site.plan.jobs, *site.plan.upkeep)
        if job.state.kind in ("open", "waiting")
        if _in_august(job.usable)
    }
    assert {row.locator("strong").last.inner_text() for row in shown.all()} == expected
    page.goto((site.folder / "months.html").as_uri())
    assert page.locator("h2", has_text="September 2026").is_visible()
    context.close()


def _in_august(spans: Iterable[Span]) -> bool:
    return any(
        first <= datetime.date(2026, 8, 31) and last >= datetime.date(2026, 8, 20)
        for first, last in spans
    )
