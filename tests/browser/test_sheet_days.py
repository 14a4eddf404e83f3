"""A job sheet counts its days by the day of the device; without scripts those printed stand."""

import datetime
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.book.sites import Site, build_sites
from tests.browser.visits import PHONE, listening_page
from tests.properties import small_property, write_property

NOON = datetime.time(12)
# Open Sep 10 to 27, 2026, and kept free Sep 15 to 18: 5 days before, 9 after.
PRINTED = ("14", "waits until Sep 10, 2026")


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Site:
    data = small_property()
    data["dates"] = {
        "dates": [
            {"id": "rest", "kind": "quiet", "first": "2026-09-15", "last": "2026-09-18",
             "places": "all"},
        ]
    }  # fmt: skip
    folder = tmp_path_factory.mktemp("days")
    return build_sites(write_property(folder / "property", data), folder / "sites", "owner")[
        "owner"
    ]


def _told(page: Page, site: Site) -> tuple[str, str]:
    (sheet,) = (site.folder / "work").glob("*autumn_kill.html")
    page.goto(Path(sheet).as_uri())
    facts = page.locator(".sheet .top > div").all_inner_texts()
    said = dict(" ".join(fact.split("\n")).split(" ", 1) for fact in facts)
    return said["Days"].removeprefix("left "), said["State"]


@pytest.mark.parametrize(
    ("day", "left", "state"),
    [
        (datetime.date(2026, 8, 1), *PRINTED),
        (datetime.date(2026, 8, 20), *PRINTED),
        (datetime.date(2026, 9, 12), "12, today is one", "open today"),
        (datetime.date(2026, 9, 16), "9", "not today"),
        (datetime.date(2026, 9, 27), "1, today is one", "open today"),
        (datetime.date(2026, 9, 28), "none", "missed"),
    ],
)
def test_days_and_state_are_those_of_the_device_s_day(
    browser: Browser, site: Site, day: datetime.date, left: str, state: str
) -> None:
    faults: list[str] = []
    with listening_page(browser, PHONE, faults) as page:
        page.clock.set_fixed_time(datetime.datetime.combine(day, NOON))
        assert _told(page, site) == (left, state)
    assert faults == []


def test_without_scripts_the_printed_days_stand(browser: Browser, site: Site) -> None:
    context = browser.new_context(viewport=PHONE, java_script_enabled=False)
    assert _told(context.new_page(), site) == PRINTED
    context.close()
