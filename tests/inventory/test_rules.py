"""Rules between fields: each has an inventory that keeps it and one that breaks it alone."""

import re
from collections import Counter
from dataclasses import fields, replace
from pathlib import Path

import pytest

import generator.inventory
from generator.inventory import rules
from generator.inventory.load import load_inventory
from generator.inventory.rule import Rule
from generator.inventory.rules import RULES
from generator.inventory.schema import Inventory
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
# what may not be opened. `test_load.py` and `test_folder.py` make them, `test_elevation.py`
# grids of heights.
MADE_ELSEWHERE = {"F001", "F215", "F217", "F218", "F219", *(f"F54{n}" for n in range(4))}


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


ALONE = [name for rule in RULES if rule.alone for name in BAD if name.startswith(f"{rule.code}_")]


@pytest.mark.parametrize("name", ALONE)
def test_a_rule_on_one_record_is_asked_beside_any_other_fault(name: str, tmp_path: Path) -> None:
    folder = overlaid("bad", name, tmp_path / "property")
    typed = (folder / "property.yaml").read_text(encoding="utf-8")
    # nothing is sound where nothing is known of the property as a whole
    (folder / "property.yaml").write_text(re.sub(r"(?m)^season: ", "seasons: ", typed))
    told = {f"{one.file} {one.line} {one.code}" for one in load_inventory(folder).problems}
    assert place_said(name) in told
    assert any(one.startswith("property.yaml") for one in told)


@pytest.mark.parametrize("rule", [rule for rule in RULES if rule.alone], ids=lambda rule: rule.code)
def test_a_rule_asked_alone_looks_at_one_record_and_no_other(
    rule: Rule, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(rules, "RULES", ())  # so that what breaks one is read all the same
    for name in (one for one in BAD if one.startswith(f"{rule.code}_")):
        typed = load_inventory(overlaid("bad", name, tmp_path / name)).inventory
        assert typed is not None
        lists = {
            one.name: getattr(typed, one.name)
            for one in fields(Inventory)
            if isinstance(getattr(typed, one.name), tuple) and one.name != "passed_over"
        }
        nobody = replace(typed, **dict.fromkeys(lists, ()))
        one_by_one = [
            broken
            for key, records in lists.items()
            for record in records
            for broken in rule.check(replace(nobody, **{key: (record,)}))
        ]
        told = list(rule.check(typed))
        assert sorted(one_by_one, key=str) == sorted(told, key=str)
        assert told
