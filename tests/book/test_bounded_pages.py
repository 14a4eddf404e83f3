"""No page grows without bound: on a large property an edit rewrites few bytes of each."""

import datetime
from pathlib import Path

import pytest

from generator.book.make import make_book
from generator.inventory.load import load_inventory
from generator.plan.build.season_plan import make_plan
from tests.properties import SEASON, make_property

MOST_BYTES = 300_000
SCREENS, MANY_SCREENS = 75, 230


@pytest.mark.parametrize("screens", [SCREENS, pytest.param(MANY_SCREENS, marks=pytest.mark.long)])
def test_no_page_of_a_large_property_is_over_300_kb(tmp_path: Path, screens: int) -> None:
    inventory = load_inventory(make_property(tmp_path / "large", SEASON, screens)).inventory
    assert inventory is not None
    book = make_book(make_plan(inventory, SEASON, datetime.date(2026, 8, 20)))
    assert len(book.pages) > 1000
    sizes = {page.address: len(page.markdown.encode()) for page in book.pages}
    assert {name: size for name, size in sizes.items() if size > MOST_BYTES} == {}
