"""Pages speak in names: no id, key or file of the property stands in what a page shows.

What to type stands in folds of its own, `details.type-this`, in sections "What to type" of
chapters, on the page of the ids of steps, and in the chapter that goes through a label card.
"""

import re
from collections.abc import Iterator
from typing import Any

import pytest
import yaml

from tests.book.reading import Element, read
from tests.book.sites import DEMO, Site, demo_readers

NOT_SHOWN = ("script", "style", "head", "nav", "template", "form")
# Pages on which typing is the subject.
OF_TYPING = ("steps.html", "chapters/label-card.html")
KEY = re.compile(r"\b\w*[a-z]_[a-z]\w*\b")
FILE = re.compile(r"\b\w+\.yaml\b")
TYPING = "What to type"


def shown(element: Element) -> Iterator[str]:
    """The text that an element shows, folds of what to type and addresses of sources aside."""
    section = ""
    for one in element.inside:
        if isinstance(one, str):
            yield one
        elif one.tag in ("h1", "h2"):
            section = one.text().strip()
            yield section
        elif section.startswith(TYPING) or one.tag in NOT_SHOWN:
            continue
        elif not one.has("type-this") and not one.has("address") and not one.has("md-sidebar"):
            yield from shown(one)


def ids_of(told: Any) -> Iterator[tuple[str, str]]:
    """Every id in the property files with the name beside it, or nothing."""
    if isinstance(told, dict):
        if isinstance(told.get("id"), str):
            yield told["id"], str(told.get("name", ""))
        for value in told.values():
            yield from ids_of(value)
    elif isinstance(told, list):
        for value in told:
            yield from ids_of(value)


def raw_ids() -> frozenset[str]:
    """Ids that nobody would say: with a dash, and not the name of the thing."""
    found = set()
    for path in DEMO.glob("*.yaml"):
        for thing, name in ids_of(yaml.safe_load(path.read_text(encoding="utf-8"))):
            if "-" in thing and thing.lower() != name.lower():
                found.add(thing)
    return frozenset(found)


IDS = raw_ids()
# A lot has no name beside the one on its bags: "lot sg-26a" is how its owner says it.
LOT = re.compile(r"\blots? [a-z0-9-]+(?:, [a-z0-9-]+)*", re.IGNORECASE)
ID = re.compile(rf"(?<![\w./-])(?:{'|'.join(sorted(map(re.escape, IDS), key=len)[::-1])})(?![\w-])")


# Where a number was typed: its owner goes there to change it.
TYPED_AT = re.compile(r"typed in [\w-]+\.yaml, line \d+")


def raw_words(text: str) -> list[str]:
    """The ids, keys and files in a text that a page shows."""
    text = TYPED_AT.sub(" ", text)
    without_lots = LOT.sub(" ", text)
    return [*KEY.findall(text), *FILE.findall(text), *ID.findall(without_lots)]


@pytest.mark.parametrize("reader", demo_readers())
def test_no_page_shows_an_id_a_key_or_a_file(demo_sites: dict[str, Site], reader: str) -> None:
    found = {}
    for address, page in demo_sites[reader].pages().items():
        if address not in OF_TYPING:
            words = raw_words(" ".join(shown(read(page))))
            if words:
                found[address] = sorted(set(words))[:8]
    assert found == {}, found


def test_a_raw_word_is_seen_and_what_is_to_be_typed_is_not() -> None:
    assert raw_words("by lane-27 under work: width_ft in screens.yaml") == [
        "width_ft",
        "screens.yaml",
        "lane-27",
    ]
    assert raw_words("lots wc-26, rc-26, mixed; the Lane screen, 24 ft wide") == []
    page = read(
        "<main><h2>What to type</h2><p>width_ft</p><h2>Next</h2><p>fine</p>"
        '<details class="type-this"><p>lane-27</p></details></main>'
    )
    assert raw_words(" ".join(shown(page))) == []
