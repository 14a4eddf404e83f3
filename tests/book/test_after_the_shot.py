"""The card for after the shot, and what stands of the law on the pages of those who hunt."""

import html
import re

import pytest

from generator.book.make import make_book
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import inventory_of, planned
from tests.plan.test_law import ORANGE, with_law
from tests.properties import Data, small_property
from tests.readers.test_partner import shared

CARD = "after-the-shot.md"
NOT_WRITTEN = "not written down: look it up at your agency."


def pages(data: Data, reader: str = "owner") -> dict[str, str]:
    """The words of every page of a reader's book by its address."""
    plan = planned(data)
    if reader != "owner":
        readers = inventory_of(data).readers
        plan = seen_by(plan, next(one for one in readers if one.id == reader))
    return {
        page.address: " ".join(html.unescape(re.sub(r"<[^>]*>", " ", page.markdown)).split())
        for page in make_book(plan).pages
    }


@pytest.mark.parametrize("reader", ["owner", "friend"])
def test_the_card_says_whom_to_call_and_whose_ground_it_is(reader: str) -> None:
    data = with_law(shared(), ORANGE)
    data["property"]["emergency"] |= {"owner_telephone": "555-0101", "neighbour": "Green barn"}
    card = pages(data, reader)[CARD]
    for words in ("555-0101", "Green barn", "officer of nettle county", "bramble dog",
                  "over the burdock fence the teasel farm", "ask the owner first, each time",
                  "is the law's to say: look it up"):  # fmt: skip
        assert words in card, words
    assert "May you follow a deer there: yes , on which day they said so is not written" in card


def test_what_is_not_written_is_a_blank_with_where_to_write_it() -> None:
    data = shared()
    owner, partner = pages(data)[CARD], pages(data, "friend")[CARD]
    for key in ("tracker:", "game_officer:", "stay_out_ground:", "beyond:", "looked_up:"):
        assert key in owner, key
        assert key not in partner, key
    for card in (owner, partner):
        assert "nobody goes in before the owner has said yes" in card
        assert "Do not cross the line before whoever owns the ground has said yes" in card
    assert "not written down : ask the owner before you hunt here" in partner


def test_stay_out_dates_to_come_stand_on_the_owner_s_card_alone() -> None:
    data = with_law(shared(), ORANGE)
    quiet = {"id": "still", "kind": "quiet", "first": "2026-10-03", "last": "2026-10-09"}
    past = quiet | {"id": "gone", "first": "2026-06-01", "last": "2026-06-03", "places": ["elm"]}
    data["dates"]["dates"] += [quiet | {"places": ["oak"]}, past]
    owner, partner = pages(data)[CARD], pages(data, "friend")[CARD]
    assert "Oak ladder: Oct 3 to 9, 2026" in owner
    assert "Jun 1" not in owner
    assert "Oct 3" not in partner
    assert "Ask the owner which ground is closed today" in partner


def test_what_the_law_decides_stands_on_every_page_of_those_who_hunt() -> None:
    data = with_law(shared(), ORANGE)
    data["property"] |= {"location_lat_lon": [41.03, -93.02], "time_zone": "America/Chicago"}
    owner, partner = pages(data), pages(data, "friend")
    of_partner = [partner[one] for one in (CARD, "stands/oak-ladder.md", "dates.md")]
    for page in (owner[CARD], owner["hours.md"], owner["stands/oak.md"], *of_partner):
        assert "Hat and vest of thistle orange Looked up Aug 2, 2026 , booklet, invented" in page
        # the other five, and hunting dates that were typed without being looked up
        assert page.count(NOT_WRITTEN) == 5
        assert "not looked up yet: look it up at your agency." in page
        assert "No rule of a state is built into this book" in page
    assert "Orange: dates.yaml:" in owner[CARD]
    assert all("dates.yaml" not in page for page in of_partner)


def test_without_any_hunting_dates_the_book_does_not_say_that_none_are_hunted() -> None:
    card = pages(small_property())[CARD]
    assert f"Hunting dates {NOT_WRITTEN}" in card
    assert card.count(NOT_WRITTEN) == 7


def test_a_contractor_has_no_such_page() -> None:
    data = with_law(shared(), ORANGE)
    theirs = pages(data, "hired")
    assert CARD not in theirs
    said = " ".join(theirs.values())
    typed = ("thistle orange", "nettle county", "teasel farm", "bramble dog", "law decides")
    assert [words for words in typed if words in said] == []


def test_what_was_looked_up_before_the_last_season_stands_as_a_caution() -> None:
    old = with_law(small_property(), ORANGE | {"looked_up_on": "2025-08-01"})
    assert "Caution You looked up what the law says (Orange) on Aug 1, 2025" in pages(old)[CARD]
    assert "Caution" not in pages(with_law(small_property(), ORANGE))[CARD]
