"""Dots left standing are not an answer: on a label card they would count as having read it."""

from pathlib import Path

import pytest

from generator.inventory.load import load_inventory
from tests.properties import changed, small_property, write_property


@pytest.mark.parametrize("left", ["...", "\u2026", "?", "??", "- -", "___", "."])
@pytest.mark.parametrize("key", ["label_date", "epa_reg_no"])
def test_dots_on_a_label_card_are_a_fault(tmp_path: Path, key: str, left: str) -> None:
    data = changed(small_property(), "products", "products", 0, "label", key, to=left)
    loaded = load_inventory(write_property(tmp_path / "land", data))
    assert [problem.code for problem in loaded.problems] == ["F216"]
    assert loaded.inventory is None


def test_dots_in_a_list_are_a_fault_and_words_with_dots_are_not(tmp_path: Path) -> None:
    worn = ["gloves ...", "..."]
    where = ("products", "products", 0, "label", "protective_equipment")
    loaded = load_inventory(
        write_property(tmp_path / "land", changed(small_property(), *where, to=worn))
    )
    assert [problem.code for problem in loaded.problems] == ["F216"]
