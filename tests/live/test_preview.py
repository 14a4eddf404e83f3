"""Pages made anew on a save: what a cold build would make, and the last good ones on a fault."""

import gc
import random
import shutil
from pathlib import Path
from typing import Any

import pytest

from generator.book.make import make_book
from generator.book.model import Book
from generator.inventory.known import Known
from generator.inventory.load import Loaded, load_inventory
from generator.live.preview import Preview
from generator.live.told import Told
from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.site.publish import publish
from tests.full_disk import contents
from tests.fuzz.damage import damaged
from tests.fuzz.tried import AS_OF, write
from tests.properties import SEASON, property_data, small_property, write_property

FEW, MANY = 14, 200


def never() -> bool:
    return False


class Typing:
    """A property folder that is being typed, with its preview."""

    def __init__(self, work: Path) -> None:
        self.land, self.work, self.known = work / "land", work, Known()
        self.told = Told()
        (work / "preview").mkdir()
        self.preview = Preview(self.read, planned, work / "preview", self.told)

    def read(self) -> Loaded:
        return load_inventory(self.land, known=self.known)

    def save(self, data: Any) -> None:
        shutil.rmtree(self.land, ignore_errors=True)
        write_property(self.land, data)

    def page(self, name: str) -> str:
        return (self.preview.site / name).read_text(encoding="utf-8")


def planned(loaded: Loaded) -> Plan:
    assert loaded.inventory is not None
    own = loaded.inventory.property
    return make_plan(loaded.inventory, own.season, own.as_of or AS_OF)


@pytest.fixture
def typing(tmp_path: Path) -> Typing:
    return Typing(tmp_path)


def test_the_page_that_is_looked_at_comes_first(typing: Typing) -> None:
    data = small_property()
    typing.save(data)
    typing.preview.renew(never)
    version = typing.told.version
    typing.told.look_at("places/lane.html")
    data["screens"]["screens"][0]["note"] = "Kept open on the west side"
    typing.save(data)
    asked: list[bool] = []

    def is_stale() -> bool:
        # asked before the first page of those that nobody looks at
        asked.append("west side" in typing.page("places/lane.html"))
        return False

    renewed = typing.preview.renew(is_stale)
    assert renewed is not None
    assert renewed.looked_at_s is not None
    assert asked[0]
    assert typing.told.wait(version, "places/lane.html", 0).again
    assert not typing.told.wait(version, "emergency.html", 0).again
    assert 1 <= renewed.pages < 10


def test_of_a_book_that_stands_no_page_stays_in_memory(typing: Typing) -> None:
    """A round that stays needs what frames pages, not the texts of those that stand."""
    gc.collect()
    others = {id(one) for one in gc.get_objects() if isinstance(one, Book)}
    typing.save(small_property())
    typing.preview.renew(never)
    gc.collect()
    assert not [one for one in gc.get_objects() if isinstance(one, Book) and id(one) not in others]


def test_a_fault_is_told_and_the_last_good_page_stays(typing: Typing) -> None:
    data = small_property()
    typing.save(data)
    typing.preview.renew(never)
    before, version = contents(typing.preview.site), typing.told.version
    screen = data["screens"]["screens"][0]
    width, screen["width_ft"] = screen["width_ft"], "wide"
    typing.save(data)
    assert typing.preview.renew(never) is None
    news = typing.told.wait(version, "index.html", 0)
    assert (news.again, len(news.faults)) == (False, 1)
    assert news.faults[0].startswith("screens.yaml:")
    assert contents(typing.preview.site) == before
    screen["width_ft"] = width
    typing.save(data)
    assert typing.preview.renew(never) is not None
    assert typing.told.wait(news.version, "index.html", 0).faults == ()
    assert contents(typing.preview.site) == before


def test_a_folder_with_a_fault_from_the_start_has_no_page_until_it_is_mended(
    typing: Typing,
) -> None:
    data = small_property()
    data["screens"]["screens"][0]["width_ft"] = "wide"
    typing.save(data)
    assert typing.preview.renew(never) is None
    assert typing.told.site is None
    assert len(typing.told.faults) == 1
    typing.save(small_property())
    assert typing.preview.renew(never) is not None
    assert typing.told.site is not None


def test_what_is_saved_meanwhile_ends_a_round_and_the_next_one_makes_up_for_it(
    typing: Typing,
) -> None:
    data = small_property()
    typing.save(data)
    typing.preview.renew(never)
    data["property"]["name"] = "Other land"
    typing.save(data)
    assert typing.preview.renew(lambda: True) is None
    assert "Other land" not in typing.page("index.html")
    assert typing.preview.renew(never) is not None
    assert "Other land" in typing.page("index.html")


def _edit(data: Any, chance: random.Random) -> None:
    """Change one thing as somebody who types would: a number, a note, a name, an entry."""
    screens = data["screens"]["screens"]
    screen = chance.choice(screens)
    match chance.randrange(7):
        case 0:
            name = next(key for key in screen if key.startswith("width_"))
            screen[name] = round(screen[name] * chance.choice((0.9, 1.1, 2)), 1)
        case 1:
            screen["note"] = f"note {chance.randrange(100)}"
        case 2:
            screen["name"] = f"Screen {chance.randrange(5)}"
        case 3 if len(screens) > 2:
            data["readers"] = {"readers": []}
        case 4:
            data["property"]["name"] = f"Land {chance.randrange(3)}"
        case 5:
            lot = chance.choice(data["seed"]["lots"])
            lot["price_usd"] = chance.randrange(10, 200)
        case _:
            data["property"]["as_of"] = f"2026-08-{chance.randrange(10, 31)}"


def _as_built_cold(typing: Typing, round_: int) -> bool:
    """Whether the preview is to the last byte what a build makes, or tells the folder's faults."""
    loaded = load_inventory(typing.land)
    if loaded.inventory is None:
        return bool(typing.told.faults)
    cold = typing.work / f"cold-{round_}"
    assert publish(make_book(planned(loaded)), cold) == ()
    same = contents(typing.preview.site) == contents(cold)
    shutil.rmtree(cold)
    return same


@pytest.mark.parametrize(
    "edits", [pytest.param(FEW, id="few"), pytest.param(MANY, id="many", marks=pytest.mark.long)]
)
def test_after_many_edits_it_is_what_a_cold_build_makes(typing: Typing, edits: int) -> None:
    chance = random.Random(f"edits {edits}")
    data = property_data(SEASON, 2)
    for number in range(edits):
        if number % 10 == 9:
            # any folder at all in the place of this one, faults and all
            write(damaged(number), typing.land)
        else:
            _edit(data, chance)
            typing.save(data)
        typing.preview.renew(never)
        if number % 7 == 6 or number == edits - 1:
            assert _as_built_cold(typing, number), number
