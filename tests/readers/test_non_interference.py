"""What a reader may not see, and what feeds nothing they are handed, changes no byte for them."""

import copy
import random
import tempfile
from collections.abc import Callable
from pathlib import Path

import pytest

from generator.book.make import make_book
from generator.inventory.load import load_inventory
from generator.plan.build.season_plan import make_plan
from generator.plan.readers.seen_by import seen_by
from generator.site.one_file import file_beside
from generator.site.publish import publish
from tests.plan.planned import AS_OF
from tests.properties import SEASON, Data, property_data, write_property
from tests.readers.lands import with_land
from tests.readers.partnered import PARTNER, handed_ground, with_partner
from tests.readers.scramble import AMPLE_FL_OZ, READER, handed_plantings, scrambled

SHORT = [*((seed, READER) for seed in range(12)), *((seed, PARTNER) for seed in range(5))]
LONG = range(12, 525)
Change = Callable[[Data, random.Random], tuple[Data, str]]
LISTS = ("screens", "stands", "routes", "seed", "products", "equipment", "readers", "money", "log",
         "ground", "dates", "people", "papers", "sits", "land")  # fmt: skip


def contractor_site(folder: Path, reader_id: str, site: Path) -> dict[str, bytes]:
    """Every file of another reader's site and the one file, built from a property folder."""
    loaded = load_inventory(folder)
    assert loaded.problems == ()
    inventory = loaded.inventory
    assert inventory is not None
    plan = make_plan(inventory, SEASON, AS_OF)
    reader = next(one for one in inventory.readers if one.id == reader_id)
    assert publish(make_book(seen_by(plan, reader)), site, property_folder=folder) == ()
    files = {
        path.relative_to(site).as_posix(): path.read_bytes()
        for path in sorted(site.rglob("*"))
        if path.is_file()
    }
    return files | {"../one file": file_beside(site).read_bytes()}


def made(seed: int) -> Data:
    """A generated property of a handful of screens, with a partner beside the contractor."""
    data = property_data(seed, random.Random(seed).randint(3, 6))
    for product in data["products"]["products"]:
        product["on_hand_fl_oz"] = AMPLE_FL_OZ  # less than was used would stop a job
    data = with_partner(data, random.Random(f"partner {seed}"))
    return with_land(data, random.Random(f"land {seed}"))


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


def _another_ground(data: Data, chance: random.Random) -> tuple[Data, str]:
    """Type other ground for every place that is handed over, in place of all it was measured by."""
    result, reader = scrambled(data, chance)
    handed = handed_plantings(result, reader)
    for place in (*result["screens"]["screens"], *result.get("strips", {}).get("strips", ())):
        if handed & {planting["id"] for planting in place["plantings"]}:
            for key in [one for one in place if one.startswith(("length_", "line_", "area_"))]:
                del place[key]
            place["area_ac"] = 7.7
    return result, reader


def _another_telephone(data: Data, chance: random.Random) -> tuple[Data, str]:
    result, reader = scrambled(data, chance)
    result["property"]["emergency"]["owner_telephone"] = "555-0199"
    return result, reader


def _quiet_days(kind: str) -> Change:
    """Adds dates of a kind in the midst of the fall kill, on all places."""

    def change(data: Data, chance: random.Random) -> tuple[Data, str]:
        result, reader = scrambled(data, chance)
        days = {"kind": kind, "first": "2026-09-11", "last": "2026-09-12", "places": "all"}
        result["dates"]["dates"].append({"id": "in-the-midst"} | days)
        return result, reader

    return change


@pytest.mark.parametrize(
    "change", [_another_ground, _another_telephone, _quiet_days("quiet"), _quiet_days("hunting")]
)
def test_a_released_change_is_seen(change: Change) -> None:
    before, after = site_before_and_after(0, change)
    assert [name for name in before if before[name] != after.get(name)] != []


def _partners(data: Data) -> Data:
    return next(one for one in data["readers"]["readers"] if one["id"] == PARTNER)


def _another_seat(data: Data) -> None:
    _thing(data, "stands", "ash")["seat_height_ft"] = 31


def _another_length(data: Data) -> None:
    _thing(data, "routes", "bank")["length_ft"] = 701


def _not_sound(data: Data) -> None:
    look = {"what": ["ash"], "sound": False}
    data["log"]["entries"].append({"id": "new", "done_on": "2026-08-19", "inspected": look})


def _kept_up(data: Data) -> None:
    done = [{"at": "bank", "step": "gate_and_culvert"}]
    data["log"]["entries"].append({"id": "new", "done_on": "2026-08-19", "upkeep": done})


def _hunted(data: Data) -> None:
    days = {"kind": "hunting", "first": "2026-12-01", "last": "2026-12-02", "places": ["ash"]}
    data["dates"]["dates"].append({"id": "late"} | days)


def _another_hour(data: Data) -> None:
    _thing(data, "sits", "my-sit")["until_time"] = "19:00"


def _one_stand_more(data: Data) -> None:
    _partners(data)["stands"].append("elm")


def _thing(data: Data, kind: str, name: str) -> Data:
    found: Data = next(one for one in data[kind][kind] if one["id"] == name)
    return found


@pytest.mark.parametrize(
    "release",
    [_another_seat, _another_length, _not_sound, _kept_up, _hunted, _another_hour, _one_stand_more],
)
def test_what_is_released_to_a_partner_is_seen(release: Callable[[Data], None]) -> None:
    def change(data: Data, chance: random.Random) -> tuple[Data, str]:
        result = copy.deepcopy(data)
        release(result)
        return scrambled(result, chance, PARTNER)

    before, after = site_before_and_after(0, change, PARTNER)
    assert [name for name in before if before[name] != after.get(name)] != []


def test_the_scramble_leaves_little_as_it_was() -> None:
    data = made(0)
    other, reader = scrambled(data, random.Random(0))
    ids = {one["id"] for one in data["screens"]["screens"]}
    assert not ids & {one["id"] for one in other["screens"]["screens"]}
    assert not handed_plantings(data, READER) & handed_plantings(other, reader)
    assert data["property"]["name"] != other["property"]["name"]
    assert len(other["products"]["products"]) > len(data["products"]["products"])


def test_the_scramble_of_a_partner_s_property_keeps_names_of_what_is_handed_over_alone() -> None:
    data = made(0)
    other, reader = scrambled(data, random.Random(0), PARTNER)
    ground, after = handed_ground(data, PARTNER), handed_ground(other, reader)
    assert len(ground) == len(after) >= 2
    for kind in ("stands", "routes"):
        kept = {one["name"] for one in data[kind][kind] if one["id"] not in ground}
        assert kept
        assert not kept & {one["name"] for one in other[kind][kind]}
    assert set(_thing(data, "routes", "bank")["serves"]) - ground
