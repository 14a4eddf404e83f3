"""What can be done on a day as it is: what the page lists against the plan's own records.

What each job asks is worked out here anew, from jobs, labels and hours of the plan as they stand.
"""

import datetime
import shutil
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from playwright.sync_api import Browser, Page

from generator.book.make import make_book
from generator.inventory.label import WindRange
from generator.plan.model.job import Job, UpkeepJob
from generator.plan.model.plan import Plan
from generator.reference.library import values
from generator.reference.suited import suited
from generator.site.one_file import file_beside
from generator.site.publish import publish
from generator.working import Given
from tests.book.sites import Site, demo_readers
from tests.browser.visits import DESKTOP, PHONE, SIDEWAYS, listening_page
from tests.plan.test_burning import BURNING, plan_of, standing

Said = Mapping[str, str]
NOON = datetime.time(12)
MOST_WORDS = 700
CALLOUT_NEVER_ALONE = {"burn", "inspect", "cut"}  # as content/callouts says of these
# Fine weather for a spraying in fall and for firm ground; each other one differs in one thing.
FINE = {
    "hours": "10", "helpers": "2", "wind": "6", "warm": "68", "night": "52", "frost": "45",
    "ground": "firm", "rain": "48",
}  # fmt: skip
COLD = FINE | {"ground": "frozen", "frost": "18", "warm": "41", "night": "22"}
WET = {"hours": "5", "helpers": "1", "wind": "8", "warm": "58", "ground": "soft", "rain": "12"}
DAYS = [
    FINE,
    {},
    FINE | {"wind": "14"},
    FINE | {"wind": "1"},
    FINE | {"wind": "3"},
    FINE | {"wind": "9"},
    FINE | {"warm": "45"},
    FINE | {"night": "31"},
    FINE | {"ground": "soft"},
    COLD,
    FINE | {"rain": "4"},
    FINE | {"rain": "0"},
    FINE | {"helpers": "0"},
    FINE | {"hours": "0.3"},
    FINE | {"hours": ""},
    WET,
]
TYPED = {
    "hours": "5", "helpers": "1", "wind": "8", "warm": "70", "night": "52", "frost": "50",
    "ground": "fi", "rain": "24",
}  # fmt: skip
OPEN_ON = [datetime.date(2026, 8, 20), datetime.date(2026, 9, 12), datetime.date(2027, 2, 28),
           datetime.date(2027, 3, 10), datetime.date(2027, 6, 5)]  # fmt: skip
LISTS = """() => {
  const sheets = (list) => [...list.querySelectorAll("a")].map((link) => link.getAttribute("href"));
  const [can, , not] = document.querySelectorAll(".answers > ul");
  const reasons = [...not.children].flatMap((item) =>
    sheets(item).map((sheet) => [sheet, item.querySelector(".where").textContent]));
  return { can: sheets(can), not: Object.fromEntries(reasons) };
}"""
WORDS = "() => document.querySelector('article').innerText.split(/\\s+/).filter(Boolean).length"
# What rules out each job open on a day, of many days at once, asked of the page's own script.
RULED = """([days, day]) => {
  const jobs = [...document.querySelectorAll("tr[data-days] i")];
  return days.map((said) => jobs.map((job) => {
    const out = ruledOut({ ...job.closest("tr").dataset, ...job.dataset }, said, day);
    return [job.querySelector("a").getAttribute("href"), out && out.by];
  }));
}"""
SAY = """(said) => {
  const boxes = [...document.querySelectorAll(".day-is [name]")];
  for (const box of boxes) {
    const value = said[box.name] ?? "";
    box.value = value;
    if (box.value !== value) throw new Error(`${box.name} takes no ${value}`);
  }
  boxes[0].dispatchEvent(new Event("input", { bubbles: true }));
}"""
TOLD_BY = {
    "stop": "Stop: ", "asks": "Waits for an answer: ", "wind": "of", "warm": "by day",
    "night": "in the night after", "frost": "in the night before", "ground": "ground",
    "rain": "while it is done", "helpers": "Not alone: ", "hours": "It takes ",
}  # fmt: skip


def open_on(page: Page, site: Site, day: datetime.date, name: str = "can-do.html") -> None:
    page.clock.set_fixed_time(datetime.datetime.combine(day, NOON))
    page.goto((site.folder / name).as_uri())


def say(page: Page, said: Said) -> None:
    """Fill the boxes of the page that are there; what is not said is emptied."""
    page.evaluate(SAY, dict(said))


def _wanting(plan: Plan, job: Job | UpkeepJob, said: Said) -> Iterator[str]:
    """Yield what rules a job out, in the order in which it is told, from the plan's records."""
    mix = job.mix if isinstance(job, Job) else None
    times = {time.job_id: time.hours.value for time in plan.times}
    if any(one.severity == "stop" for one in plan.findings_on(job.id)):
        yield "stop"
    if job.state.question is not None:
        yield "asks"
    does, kind = job.step.does, suited()[job.step.suits] if job.step.suits else None
    for part in mix.parts if mix is not None else ():
        if isinstance(part.use.wind_mph, WindRange):
            low, high = part.use.wind_mph.low_mph.value, part.use.wind_mph.high_mph.value
            if not said.get("wind") or not low <= float(said["wind"]) <= high:
                yield "wind"
    if kind is not None:
        thaws = values()["thaws_f"] if kind.freezes_and_thaws else None
        for name, least in (("warm", kind.high_at_least or thaws), ("night", kind.night_at_least)):
            if least is not None and (not said.get(name) or float(said[name]) < least.value):
                yield name
        freezes = values()["freezes_f"].value
        if thaws and (not said.get("frost") or float(said["frost"]) > freezes):
            yield "frost"
        if kind.soil_over is not None and said.get("ground") not in ("firm", "soft"):
            yield "ground"
        if kind.id == "ground":
            carries = ("firm", "frozen") if does.id == "mow" else ("firm",)
            if said.get("ground") not in carries:
                yield "ground"
    dry = _dry_hours(job, times.get(job.id, 24), kind is not None and kind.rain_at_most)
    if dry is not None and (not said.get("rain") or float(said["rain"]) < dry):
        yield "rain"
    if does.id in CALLOUT_NEVER_ALONE and (not said.get("helpers") or said["helpers"] == "0"):
        yield "helpers"
    if job.id in times and (not said.get("hours") or float(said["hours"]) < times[job.id]):
        yield "hours"


def _dry_hours(job: Job | UpkeepJob, work: float, asks_dry: object) -> float | None:
    parts = job.mix.parts if isinstance(job, Job) and job.mix is not None else ()
    fast = [one.card.rainfast_hours for one in parts]
    longest = max((one.value for one in fast if isinstance(one, Given)), default=None)
    if longest is None and not asks_dry:
        return None
    return work + (longest or 0)


def expected(plan: Plan, day: datetime.date, said: Said) -> dict[str, str | None]:
    """By the sheet of each job open on a day, what rules it out."""
    return {
        f"work/{job.address}.html": next(_wanting(plan, job, said), None)
        for job in (*plan.jobs, *plan.upkeep)
        if job.state.is_ahead and any(first <= day <= last for first, last in job.usable)
    }


HUNTED = datetime.date(2026, 9, 16)
MINDED = """() => [...document.querySelectorAll(".answers > ul:first-of-type li")]
  .filter((item) => /somebody hunts there/i.test(item.textContent))
  .flatMap((item) => [...item.querySelectorAll("a")].map((link) => link.getAttribute("href")))"""


@pytest.mark.parametrize("reader", demo_readers())
def test_hours_in_which_somebody_hunts_stand_with_the_job_on_that_day_alone(
    browser: Browser, demo_sites: dict[str, Site], reader: str
) -> None:
    site, faults = demo_sites[reader], list[str]()
    away = {
        f"work/{job.address}.html"
        for job in (*site.plan.jobs, *site.plan.upkeep)
        for keep in site.plan.away_on(job.place_id if isinstance(job, Job) else job.subject.id)
        if keep.day == HUNTED
    }
    with listening_page(browser, PHONE, faults) as page:
        for day in (HUNTED, HUNTED + datetime.timedelta(days=1)):
            open_on(page, site, day)
            say(page, FINE)
            can = {sheet for sheet, by in expected(site.plan, day, FINE).items() if by is None}
            assert set(page.evaluate(MINDED)) == (can & away if day == HUNTED else set())
            if reader == "owner" and day == HUNTED:
                assert can & away
    assert faults == []


@pytest.mark.parametrize("reader", demo_readers())
def test_what_survives_a_day_is_what_the_plan_s_records_let(
    browser: Browser, demo_sites: dict[str, Site], reader: str
) -> None:
    site, faults, met = demo_sites[reader], list[str](), set[str | None]()
    with listening_page(browser, PHONE, faults) as page:
        for day in OPEN_ON:
            open_on(page, site, day)
            for said in DAYS:
                say(page, said)
                lists = page.evaluate(LISTS)
                wanted = expected(site.plan, day, said)
                can = {sheet for sheet, by in wanted.items() if by is None}
                assert set(lists["can"]) == can, (day, said)
                assert lists["not"].keys() == wanted.keys() - can, (day, said)
                for sheet, told in lists["not"].items():
                    by = wanted[sheet]
                    assert by is not None
                    assert TOLD_BY[by] in told, (day, said, sheet)
                    unsaid = by in FINE and not said.get(by)
                    assert told.startswith("Say ") == unsaid, (day, said, sheet)
                met |= set(wanted.values())
    assert faults == []
    if reader == "owner":
        assert met == {None, *TOLD_BY}


def test_every_figure_compared_is_the_one_beside_it(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    """A wind of the label, at its ends and a mile beside them, on the day its job is open."""
    site = demo_sites["owner"]
    job = next(one for one in site.plan.jobs if one.id == "lane/2027/autumn_kill")
    sheet = f"work/{job.address}.html"
    with listening_page(browser, DESKTOP, []) as page:
        open_on(page, site, datetime.date(2026, 9, 12))
        for wind, can in ((2, False), (3, True), (9, True), (10, False)):
            say(page, FINE | {"wind": str(wind)})
            lists = page.evaluate(LISTS)
            assert (sheet in lists["can"]) == can
            if not can:
                assert lists["not"][sheet] == (
                    "It asks for wind of 3 mph to 9 mph by the label, measured at the boom."
                )
        # 0.256 hours of work and the label's 6
        for rain, can in ((6, False), (8, True)):
            say(page, FINE | {"rain": str(rain)})
            assert (sheet in page.evaluate(LISTS)["can"]) == can


numbers = st.one_of(st.just(""), st.integers(-20, 110).map(str))
a_day = st.fixed_dictionaries({
    "hours": st.one_of(st.just(""), st.floats(0, 24).map(str)),
    "helpers": st.one_of(st.just(""), st.integers(0, 4).map(str)),
    "wind": numbers, "warm": numbers, "night": numbers, "frost": numbers,
    "ground": st.sampled_from(["", "frozen", "firm", "soft"]),
    "rain": st.one_of(st.just(""), st.sampled_from(["0", "4", "12", "24", "48"])),
})  # fmt: skip


@pytest.fixture(scope="module")
def asked_of(browser: Browser, demo_sites: dict[str, Site]) -> Iterator[Page]:
    """The owner's page on a day, to ask its script many times."""
    with listening_page(browser, DESKTOP, []) as page:
        open_on(page, demo_sites["owner"], datetime.date(2027, 3, 10))
        yield page


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(said=a_day, more=st.floats(0, 12), along=st.integers(0, 3))
def test_more_hours_and_more_helpers_never_rule_a_job_out(
    asked_of: Page, said: dict[str, str], more: float, along: int
) -> None:
    richer = said | {
        "hours": str(float(said["hours"] or 0) + more),
        "helpers": str(int(said["helpers"] or 0) + along),
    }
    before, after = asked_of.evaluate(RULED, [[said, richer], "2027-03-10"])
    can = [{sheet for sheet, by in rows if by is None} for rows in (before, after)]
    assert can[0] <= can[1]


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(said=a_day)
def test_on_no_day_does_a_job_with_a_stop_survive(
    asked_of: Page, demo_sites: dict[str, Site], said: dict[str, str]
) -> None:
    plan = demo_sites["owner"].plan
    stopped = {f"work/{job.address}.html" for job in plan.jobs if job.id in plan.stopped()}
    (rows,) = asked_of.evaluate(RULED, [[said], "2027-03-10"])
    found = {sheet: by for sheet, by in rows if sheet in stopped}
    assert len(found) >= 5
    assert set(found.values()) == {"stop"}


def test_fire_says_that_the_window_is_open_and_what_comes_first(
    browser: Browser, tmp_path: Path
) -> None:
    plan = plan_of(standing(treated_sq_ft=14520))
    publish(make_book(plan), tmp_path / "site")
    job = next(one for one in plan.jobs if one.id == BURNING)
    with listening_page(browser, PHONE, []) as page:
        page.clock.set_fixed_time(datetime.datetime.combine(job.usable[0][1], NOON))
        page.goto((tmp_path / "site" / "can-do.html").as_uri())
        say(page, FINE)
        line = page.locator(".answers > ul").first.locator("li", has_text=job.step.name)
        assert (
            "Window open: permit, crew, that day's weather first. "
            "The crew of the written plan, nobody alone." in line.inner_text()
        )
        say(page, FINE | {"helpers": "0"})
        assert not line.count()
        told = page.evaluate(LISTS)["not"][f"work/{job.address}.html"]
        assert told == "Not alone: The crew of the written plan, nobody alone."
        say(page, FINE | {"rain": "4"})
        assert "of rain while it is done" in page.evaluate(LISTS)["not"][f"work/{job.address}.html"]


def test_those_on_one_walk_are_told_together(browser: Browser, demo_sites: dict[str, Site]) -> None:
    """The Ridge walk is hidden by two screens, and leads to two stands."""
    with listening_page(browser, PHONE, []) as page:
        open_on(page, demo_sites["owner"], datetime.date(2027, 3, 10))
        say(page, FINE)
        shared = page.locator(".answers > ul").nth(1).locator("li")
        (ridge,) = (text for text in shared.all_inner_texts() if text.startswith("Ridge walk: "))
        for name in ("North screen", "Ridge screen", "North hang-on", "Ridge ladder", "Ridge walk"):
            assert name in ridge
        # alone nobody cuts: what is left of it is less
        say(page, FINE | {"helpers": "0"})
        assert "Ridge ladder" not in page.locator(".answers > ul").nth(1).inner_text()


def test_the_page_is_short_on_its_fullest_days(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    faults: list[str] = []
    with listening_page(browser, {"width": 320, "height": 700}, faults) as page:
        for name, site in demo_sites.items():
            for day in OPEN_ON:
                open_on(page, site, day)
                for said in ({}, FINE, COLD, WET):
                    say(page, said)
                    assert page.evaluate(WORDS) <= MOST_WORDS, (name, day)
                    assert page.evaluate(SIDEWAYS) <= 0, (name, day)
    assert faults == []


def test_without_scripts_a_table_by_condition_stands(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    for site in demo_sites.values():
        context = browser.new_context(java_script_enabled=False, viewport=PHONE)
        page = context.new_page()
        page.goto((site.folder / "can-do.html").as_uri())
        assert not page.locator(".day-is").is_visible()
        assert not page.locator(".answers").is_visible()
        jobs = [
            job for job in (*site.plan.jobs, *site.plan.upkeep) if job.state.is_ahead and job.usable
        ]
        listed = page.locator("tr[data-days] i:visible")
        assert listed.count() == len(jobs)
        kinds = {suited()[job.step.suits].name for job in jobs if job.step.suits}
        heads = page.locator("tr.group strong").all_inner_texts()
        assert set(heads) - {"Any day suits"} == kinds
        context.close()


def test_it_is_worked_by_keys_alone_and_keeps_nothing(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    with listening_page(browser, DESKTOP, []) as page:
        open_on(page, demo_sites["owner"], datetime.date(2026, 9, 12))
        kept = page.evaluate("Object.keys(localStorage).length + document.cookie.length")
        before = page.locator(".counted").inner_text()
        page.locator("#day-hours").focus()
        for name, keys in TYPED.items():
            assert page.evaluate("document.activeElement.name") == name
            page.keyboard.type(keys)
            page.keyboard.press("Tab")
        assert page.locator(".counted").inner_text() != before
        assert page.evaluate("Object.keys(localStorage).length + document.cookie.length") == kept
        page.reload()
        values_now = page.eval_on_selector_all(
            ".day-is [name]", "(all) => all.map((one) => one.value)"
        )
        assert set(values_now) == {""}
        assert page.locator(".counted").inner_text() == before


def test_on_paper_stands_what_was_said_and_what_is_left(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    with listening_page(browser, DESKTOP, []) as page:
        open_on(page, demo_sites["owner"], datetime.date(2027, 3, 10))
        say(page, FINE)
        page.emulate_media(media="print")
        assert page.locator(".picked").inner_text() == (
            "Hours you have: 10; Helpers along: 2; Wind, mph: 6; Warmest today, °F: 68; "
            "Coldest tonight, °F: 52; Coldest last night, °F: 45; The ground: firm; "
            "Hours without rain: 48 or more"
        )
        assert not page.locator(".day-is").is_visible()
        assert not page.locator(".asked-of-days").is_visible()
        assert page.locator(".answers > ul").first.is_visible()


def test_a_clock_before_the_plan_is_told_and_nothing_is_listed(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    with listening_page(browser, PHONE, []) as page:
        open_on(page, demo_sites["owner"], datetime.date(2025, 1, 1))
        assert page.locator(".answers .before").is_visible()
        assert page.locator(".answers > ul li").count() == 0


def test_the_one_file_lists_the_same(
    browser: Browser, demo_sites: dict[str, Site], tmp_path: Path
) -> None:
    """Turned to and turned back to, the boxes are empty again."""
    site, day = demo_sites["owner"], datetime.date(2027, 3, 10)
    alone = tmp_path / "book.html"
    shutil.copy(file_beside(site.folder), alone)
    told: list[Any] = []
    faults: list[str] = []
    with listening_page(browser, PHONE, faults) as page:
        open_on(page, site, day)
        say(page, FINE)
        told.append(page.locator(".answers").inner_text())
        page.goto(f"{alone.as_uri()}#can-do")
        page.locator(".day-is").wait_for()
        say(page, FINE)
        told.append(page.locator(".answers").inner_text())
        page.goto(f"{alone.as_uri()}#index")
        page.locator("#today").wait_for()
        page.get_by_role("link", name="What can I do today?").first.click()
        page.locator(".day-is").wait_for()
        assert page.locator("[name=wind]").input_value() == ""
    assert told[0] == told[1]
    assert faults == []


def test_the_script_is_loaded_on_its_page_alone_and_the_first_page_leads_there(
    demo_sites: dict[str, Site],
) -> None:
    for site in demo_sites.values():
        pages = site.pages()
        assert [name for name, html in pages.items() if "assets/can-do.js" in html] == [
            "can-do.html"
        ]
        assert '<a href="can-do.html">What can I do today?</a>' in pages["index.html"]
