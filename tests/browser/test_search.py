"""What a reader types into the search box, and what is found first.

The forty questions and their pages were written down before the index was; they are data beside
this file. Names of things and of work are held to less: the page meant is among the first two.
"""

from pathlib import PurePosixPath

from playwright.sync_api import Browser, Page
from playwright.sync_api import TimeoutError as PlaywrightTimeout

from generator.book.content import search_words
from tests.book.sites import Site
from tests.browser.asked import named_in, the_forty
from tests.browser.visits import DESKTOP, listening_page

HITS = """() => [...document.querySelectorAll(".md-search-result__item > a")]
  .map((hit) => [hit.querySelector("h1").textContent.trim(), hit.getAttribute("href")])"""
RESTS_ON = ("sources.html", "glossary.html", "workings.html")
SET_ASIDE = "document.querySelectorAll('.md-search-result__item').forEach((e) => (e.id = 'old'))"
ANSWERED = "document.querySelector('.md-search-result__item:not(#old)') !== null"


def _answers(page: Page, site: Site, asked: list[str]) -> dict[str, list[tuple[str, str]]]:
    """What is found for each words typed, the first hit first: its title, its page in the site."""
    page.goto((site.folder / "index.html").as_uri())
    page.keyboard.press("s")
    box = page.locator(".md-search__input")
    found: dict[str, list[tuple[str, str]]] = {}
    for words in asked:
        page.evaluate(SET_ASIDE)
        box.fill(words)
        box.press("End")  # the search listens for keys
        try:
            page.wait_for_function(ANSWERED, timeout=5000)
        except PlaywrightTimeout:
            found[words] = []
            continue
        hits = page.evaluate(HITS)
        base = site.folder.as_uri() + "/"
        found[words] = [(title, href.removeprefix(base).split("?")[0]) for title, href in hits]
    return found


def test_the_name_of_a_thing_or_of_work_finds_its_page(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    faults: list[str] = []
    with listening_page(browser, DESKTOP, faults) as page:
        for reader, site in demo_sites.items():
            asked = dict(named_in(site))
            assert asked
            for words, hits in _answers(page, site, list(asked)).items():
                titles = [title for title, _ in hits[:2]]
                if not any(title.startswith(asked[words]) for title in titles):
                    faults.append(f"{reader}: {words}: found instead is {titles}")
    assert faults == [], "\n".join(faults)


def test_forty_questions_find_their_page_first(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    site = demo_sites["owner"]
    wanted = the_forty(site)
    assert len(wanted) == 40
    faults: list[str] = []
    with listening_page(browser, DESKTOP, faults) as page:
        answers = _answers(page, site, list(wanted))
    for asked, hits in answers.items():
        if [address for _, address in hits[:1]] != [wanted[asked]]:
            faults.append(f"{asked}: found instead is {hits[:3]}")
    assert faults == [], "\n".join(faults)


# What somebody types who has shot, and who goes by the law: by words, the page of the owner's book.
AFTER_A_SHOT = {
    "after the shot": "after-the-shot.html",
    "blood trail": "after-the-shot.html",
    "whom to call": "emergency.html",
    "orange": "after-the-shot.html",
    "driving deer": "after-the-shot.html",
    "legal hours": "hours.html",
}


def test_words_of_hunting_and_its_law_find_their_page_first(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    faults: list[str] = []
    with listening_page(browser, DESKTOP, faults) as page:
        answers = _answers(page, demo_sites["owner"], list(AFTER_A_SHOT))
    found = {asked: next((hit for _, hit in hits), "") for asked, hits in answers.items()}
    assert found == AFTER_A_SHOT
    assert faults == []


def test_what_the_book_rests_on_is_found_behind_all_else(
    browser: Browser, demo_sites: dict[str, Site]
) -> None:
    """Words of the glossary, of titles of sources and of workings, which other pages share."""
    asked = ("dormant", "legume", "thatch", "label", "pesticide", "restricted", "switchgrass")
    faults: list[str] = []
    with listening_page(browser, DESKTOP, faults) as page:
        answers = _answers(page, demo_sites["owner"], list(asked))
    behind = {
        words: [address in RESTS_ON for _, address in hits] for words, hits in answers.items()
    }
    assert {words for words, found in behind.items() if True in found} >= {"dormant", "legume"}
    assert {words: found for words, found in behind.items() if found != sorted(found)} == {}
    assert [words for words, found in behind.items() if all(found)] == []
    assert faults == []


def test_words_are_told_of_pages_that_there_are(demo_sites: dict[str, Site]) -> None:
    addresses = {page.address for page in demo_sites["owner"].book.pages}
    folders = {f"{PurePosixPath(address).parent}/" for address in addresses}
    assert set(search_words()) - addresses - folders == set()


def test_what_the_wind_is_for_is_found_first(browser: Browser, demo_sites: dict[str, Site]) -> None:
    asked = ["wind", "which wind", "southwest", "wind card"]
    with listening_page(browser, DESKTOP, []) as page:
        for reader in ("owner", "hunting-partner"):
            found = _answers(page, demo_sites[reader], asked)
            assert {words: hits[0][1] for words, hits in found.items()} == dict.fromkeys(
                asked, "winds.html"
            )
