"""Rules between fields: each has an inventory that keeps it and one that breaks it alone."""

import re
from collections import Counter
from pathlib import Path

import pytest

import generator.inventory
from generator.inventory.load import load_inventory
from generator.inventory.rules import RULES
from tests.inventories.overlaid import BAD, GOOD, overlaid, place_said

CODES = [rule.code for rule in RULES]


def test_rules_have_codes_of_their_own_in_order_and_a_reason() -> None:
    assert sorted(set(CODES)) == CODES
    assert all(rule.reason.endswith(".") and rule.reason[0].isupper() for rule in RULES)


@pytest.mark.parametrize("code", CODES)
def test_every_rule_has_an_inventory_that_keeps_it_and_one_that_breaks_it(code: str) -> None:
    assert [name for name in GOOD if name.startswith(f"{code}_")]
    assert [name for name in BAD if name.startswith(f"{code}_")]


# A file too long for a checkout, one that is not there, and what no checkout holds: links, pipes,
# what may not be opened. `test_load.py` and `test_folder.py` make them.
MADE_ELSEWHERE = {"F001", "F215", "F217", "F218", "F219"}


def test_every_fault_has_a_broken_inventory_and_none_has_many() -> None:
    source = Path(generator.inventory.__file__).parent
    said = {
        code
        for path in source.glob("*.py")
        for code in re.findall(r'"(F\d{3})"', path.read_text(encoding="utf-8"))
    }
    shown = Counter(name.partition("_")[0] for name in BAD)
    assert shown.keys() | MADE_ELSEWHERE == said
    assert len(BAD) >= 60
    assert {code: count for code, count in shown.items() if count > 4} == {}


@pytest.mark.parametrize("name", GOOD)
def test_a_sound_inventory_has_no_fault(name: str, tmp_path: Path) -> None:
    loaded = load_inventory(overlaid("good", name, tmp_path / "property"))
    assert loaded.problems == ()
    assert loaded.inventory is not None


@pytest.mark.parametrize("name", BAD)
def test_a_broken_inventory_has_the_one_fault_it_says(name: str, tmp_path: Path) -> None:
    loaded = load_inventory(overlaid("bad", name, tmp_path / "property"))
    assert loaded.inventory is None
    assert [f"{one.file} {one.line} {one.code}" for one in loaded.problems] == [place_said(name)]
    (fault,) = loaded.problems
    assert fault.code == name.partition("_")[0]
    assert len(fault.what) > len(fault.code)
    assert fault.accepted


def test_a_count_that_is_wrong_does_not_hide_the_next(tmp_path: Path) -> None:
    folder = overlaid("good", "F400_every_cell_has_a_plant", tmp_path / "property")
    counted = "counted: {planting: lane-27, placements_count: 4.5, cells_with_plant_count: 40}"
    more = "counted: {planting: lane-27, placements_count: 1, cells_with_plant_count: 26}"
    entries = [
        f"  - id: e-{number}\n    done_on: 2028-06-1{number}\n    {said}\n"
        for number, said in enumerate((counted, more))
    ]
    (folder / "log.yaml").write_text("entries:\n" + "".join(entries))
    told = [(fault.code, fault.line) for fault in load_inventory(folder).problems]
    assert told == [("F400", 4), ("F400", 7)]
