"""What every book must hold: help in an emergency, and no rule of a state told as a fact."""

import html
import re
from pathlib import Path

import pytest

from generator.reference.library import emergency_numbers
from tests.book.sites import CHECKOUT, Site

TEXTS = [
    path
    for folder in ("content", "site_templates/pages", "generator/reference/data")
    for path in sorted((CHECKOUT / folder).rglob("*"))
    # what is typed into a search tells nobody anything
    if path.suffix in (".md", ".jinja", ".yaml") and path.name != "search_words.yaml"
]
# Words of rules that differ by state, and words that hand them to whoever looks them up.
OF_A_STATE = re.compile(
    r"(?<!feed or )\bbait|shooting (?:hours|time|light)|legal light|bag limit|"
    r"(?:before|after) (?:sunrise|sunset)",
    re.IGNORECASE,
)
HANDED_OVER = re.compile(
    r"\b(?:look(?:ed)?\b.{0,20}\bup|your state|where you live|by law|laws?|rules?|ask)\b",
    re.IGNORECASE | re.DOTALL,
)
SENTENCE = re.compile(r"[^.!?;|]+[.!?;|]?")


def told_as_a_fact(text: str) -> list[str]:
    """The sentences on a rule of a state in which, and after which, nobody is sent to look."""
    sentences = SENTENCE.findall(" ".join(text.split()))
    beside = zip(sentences, [*sentences[1:], ""], strict=True)
    return [
        one
        for one, after in beside
        if OF_A_STATE.search(one) and not HANDED_OVER.search(f"{one} {after}")
    ]


@pytest.mark.parametrize("path", TEXTS, ids=lambda path: path.relative_to(CHECKOUT).as_posix())
def test_no_rule_of_a_state_is_told_as_a_fact(path: Path) -> None:
    assert told_as_a_fact(path.read_text(encoding="utf-8")) == []


def test_a_rule_told_as_a_fact_is_seen() -> None:
    assert told_as_a_fact("Shooting hours end at sunset. Go home then.")
    assert told_as_a_fact("Corn in a heap is bait. Keep away from it.")
    assert not told_as_a_fact("Shooting hours differ by state: look them up.")


@pytest.mark.parametrize("reader", ["owner", "hired-sprayer", "hunting-partner"])
def test_the_emergency_page_holds_whom_to_call_and_where(
    demo_sites: dict[str, Site], reader: str
) -> None:
    site = demo_sites[reader]
    page = html.unescape(site.pages()["emergency.html"])
    card = site.plan.land.emergency
    assert card is not None
    assert card.gate_lat_lon is not None
    for told in (card.address_911, card.hospital, *map(repr, card.gate_lat_lon)):
        assert told is not None
        assert told in page
    assert 'href="tel:911"' in page
    assert emergency_numbers()["poison_line"] in page


@pytest.mark.parametrize("reader", ["owner", "hired-sprayer", "hunting-partner"])
def test_every_job_sheet_holds_whom_to_call_and_where(
    demo_sites: dict[str, Site], reader: str
) -> None:
    site = demo_sites[reader]
    card = site.plan.land.emergency
    assert card is not None
    sheets = [page for name, page in site.pages().items() if re.match(r"work/.", name)]
    assert len(sheets) == len(site.plan.jobs) + len(site.plan.upkeep)
    for sheet in map(html.unescape, sheets):
        for told in (card.address_911, card.hospital):
            assert told is not None
            assert told in sheet
        assert emergency_numbers()["poison_line"] in sheet


@pytest.mark.parametrize("reader", ["owner", "hired-sprayer", "hired-driller", "hunting-partner"])
def test_every_page_that_names_a_made_up_product_says_so(
    demo_sites: dict[str, Site], reader: str
) -> None:
    """Cautions alone may name one on the sheet of another product; sources list what uses them."""
    names = [one.name for one in demo_sites["owner"].plan.land.products if one.invented]
    assert len(names) >= 8
    found = 0
    for address, page in demo_sites[reader].pages().items():
        (article,) = re.findall(r"<article.*?</article>", page, re.DOTALL)
        text = html.unescape(re.sub(r"<[^>]+>", " ", article))
        if address == "sources.html" or not any(one in text for one in names):
            continue
        found += 1
        assert "invented" in text.lower() or "fill to" not in text.lower(), address
        if not address.startswith("work/"):
            assert "invented" in text.lower(), address
    assert found >= (20 if reader == "owner" else reader == "hired-sprayer")
