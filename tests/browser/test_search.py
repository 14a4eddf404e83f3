"""What a reader types into the search box, and what is found first.

The forty questions and their pages were written down before the index was; they are data beside
this file. Names of things and of work are held to less: the page meant is among the first two.
"""

from collections.abc import Iterator
from html import unescape
from pathlib import Path, PurePosixPath

import yaml
from playwright.sync_api import Browser, Page
from playwright.sync_api import TimeoutError as PlaywrightTimeout

from generator.book.content import search_words
from generator.site.standing import published
from tests.book.sites import Site
from tests.browser.visits import DESKTOP, listening_page

QUESTIONS = Path(__file__).parent / "forty_questions.yaml"
HITS = """() => [...document.querySelectorAll(".md-search-result__item > a")]
  .map((hit) => [hit.querySelector("h1").textContent.trim(), hit.getAttribute("href")])"""
RESTS_ON = ("sources.html", "glossary.html", "workings.html")
# A chapter whose every word is also the name of things and work; the list of chapters has it.
IN_OTHER_NAMES = ("A water hole",)
NAMED = ("places", "stands", "routes", "products", "seed", "equipment", "chapters")
SET_ASIDE = "document.querySelectorAll('.md-search-result__item').forEach((e) => (e.id = 'old'))"
ANSWERED = "document.querySelector('.md-search-result__item:not(#old)') !== null"


def _asked(site: Site) -> Iterator[tuple[str, str]]:
    """The words a reader types, and the name of the page that is meant or its beginning.

    Of a sheet the work alone is typed: its place has a page of its own, which comes first.
    """
    for page in site.book.pages:
        title = unescape(page.title)
        if PurePosixPath(page.address).parts[0] in NAMED and title not in IN_OTHER_NAMES:
            yield title, title
        if PurePosixPath(page.address).parts[0] == "work" and ": " in title:
            yield title.split(": ")[0], title.split(": ")[0]


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
            asked = dict(_asked(site))
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
    pages = {published(page.address) for page in site.book.pages}
    wanted: dict[str, str] = {}
    for question in yaml.safe_load(QUESTIONS.read_text(encoding="utf-8")):
        named = question["page"] if isinstance(question["page"], list) else [question["page"]]
        wanted[question["asked"]] = next(f"{one}.html" for one in named if f"{one}.html" in pages)
    assert len(wanted) == 40
    faults: list[str] = []
    with listening_page(browser, DESKTOP, faults) as page:
        answers = _answers(page, site, list(wanted))
    for asked, hits in answers.items():
        if [address for _, address in hits[:1]] != [wanted[asked]]:
            faults.append(f"{asked}: found instead is {hits[:3]}")
    assert faults == [], "\n".join(faults)


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
