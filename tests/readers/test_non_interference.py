"""What a reader may not see, and what feeds nothing they are handed, changes no byte for them."""

import random
import tempfile
from collections.abc import Callable
from pathlib import Path

import pytest

from generator.book.make import make_book
from generator.inventory.load import load_inventory
from generator.plan.build import make_plan
from generator.plan.readers import seen_by
from generator.site.publish import publish
from tests.plan.planned import AS_OF
from tests.properties import SEASON, Data, property_data, write_property
from tests.readers.partnered import PARTNER, with_partner
from tests.readers.scramble import READER, handed_plantings, scrambled

SHORT = [*((seed, READER) for seed in range(25)), *((seed, PARTNER) for seed in range(12))]
LONG = range(25, 525)
Change = Callable[[Data, random.Random], tuple[Data, str]]
LISTS = ("screens", "stands", "routes", "seed", "products", "equipment", "readers", "money", "log",
         "ground", "dates", "people", "papers")  # fmt: skip


def contractor_site(folder: Path, reader_id: str, site: Path) -> dict[str, bytes]:
    """Every file of another reader's site, built from a property folder."""
    loaded = load_inventory(folder)
    assert loaded.problems == ()
    inventory = loaded.inventory
    assert inventory is not None
    plan = make_plan(inventory, SEASON, AS_OF, as_of_typed=True)
    reader = next(one for one in inventory.readers if one.id == reader_id)
    assert publish(make_book(seen_by(plan, reader)), site, property_folder=folder) == ()
    return {
        path.relative_to(site).as_posix(): path.read_bytes()
        for path in sorted(site.rglob("*"))
        if path.is_file()
    }


def made(seed: int) -> Data:
    """A generated property of a handful of screens, with a partner beside the contractor."""
    data = property_data(seed, random.Random(seed).randint(3, 6))
    return with_partner(data, random.Random(f"partner {seed}"))


def site_before_and_after(
    seed: int, change: Change, reader_id: str = READER
) -> tuple[dict[str, bytes], dict[str, bytes]]:
    """A reader's site of a generated property, and of one changed and laid out anew."""
    chance = random.Random(seed)
    data = made(seed)
    with tempfile.TemporaryDirectory() as work:
        before = write_property(Path(work) / "before", data)
        split = chance.sample(LISTS, chance.randint(0, len(LISTS)))
        other, reader = change(data, chance)
        after = write_property(Path(work) / "after", other, split, f"comment {chance.random()}")
        return (
            contractor_site(before, reader_id, Path(work) / "site-before"),
            contractor_site(after, reader, Path(work) / "site-after"),
        )


def check_nothing_changes(seed: int, reader_id: str) -> None:
    """Fails with the files that differ, where any does."""

    def change(data: Data, chance: random.Random) -> tuple[Data, str]:
        return scrambled(data, chance, reader_id)

    before, after = site_before_and_after(seed, change, reader_id)
    assert any(name.startswith("work/") for name in before)
    assert sorted(before) == sorted(after)
    assert [name for name in before if before[name] != after[name]] == []


@pytest.mark.parametrize(("seed", "reader_id"), SHORT)
def test_private_changes_change_no_byte(seed: int, reader_id: str) -> None:
    check_nothing_changes(seed, reader_id)


@pytest.mark.long
@pytest.mark.parametrize("reader_id", [READER, PARTNER])
@pytest.mark.parametrize("seed", LONG)
def test_private_changes_change_no_byte_in_many_properties(seed: int, reader_id: str) -> None:
    check_nothing_changes(seed, reader_id)


def _widened(data: Data, chance: random.Random) -> tuple[Data, str]:
    result, reader = scrambled(data, chance)
    handed = handed_plantings(result, reader)
    screen, width = next(
        (one, key)
        for one in result["screens"]["screens"]
        for key in ("width_ft", "width_m")
        if handed & {planting["id"] for planting in one["plantings"]} and key in one
    )
    screen[width] += 1
    return result, reader


def _another_telephone(data: Data, chance: random.Random) -> tuple[Data, str]:
    result, reader = scrambled(data, chance)
    result["property"]["emergency"]["owner_telephone"] = "555-0199"
    return result, reader


def _quiet_days(kind: str) -> Change:
    """Adds dates of a kind in the midst of the autumn kill, on all places."""

    def change(data: Data, chance: random.Random) -> tuple[Data, str]:
        result, reader = scrambled(data, chance)
        days = {"kind": kind, "first": "2026-09-11", "last": "2026-09-12", "places": "all"}
        result["dates"]["dates"].append({"id": "in-the-midst"} | days)
        return result, reader

    return change


@pytest.mark.parametrize(
    "change", [_widened, _another_telephone, _quiet_days("quiet"), _quiet_days("hunting")]
)
def test_a_released_change_is_seen(change: Change) -> None:
    before, after = site_before_and_after(0, change)
    assert [name for name in before if before[name] != after.get(name)] != []


def test_the_scramble_leaves_little_as_it_was() -> None:
    data = made(0)
    other, reader = scrambled(data, random.Random(0))
    ids = {one["id"] for one in data["screens"]["screens"]}
    assert not ids & {one["id"] for one in other["screens"]["screens"]}
    assert not handed_plantings(data, READER) & handed_plantings(other, reader)
    assert data["property"]["name"] != other["property"]["name"]
    assert len(other["products"]["products"]) > len(data["products"]["products"])
