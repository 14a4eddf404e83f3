"""An id or a name for others becomes the name of a page: what no page can be called is a fault."""

from pathlib import Path

import pytest

from generator.inventory.load import load_inventory
from generator.inventory.problems import LONGEST_ID
from tests.properties import changed, small_property, write_property


@pytest.mark.parametrize("name", ["readme", "con", "a" * 151])
@pytest.mark.parametrize(("key", "code"), [("id", "F210"), ("known_as", "F306")])
def test_a_name_no_page_can_have_is_a_fault(tmp_path: Path, name: str, key: str, code: str) -> None:
    data = changed(small_property(), "screens", "screens", 0, key, to=name)
    problems = load_inventory(write_property(tmp_path / "land", data)).problems
    assert code in {problem.code for problem in problems}


def test_the_longest_id_is_taken(tmp_path: Path) -> None:
    data = changed(small_property(), "screens", "screens", 0, "id", to="a" * LONGEST_ID)
    problems = load_inventory(write_property(tmp_path / "land", data)).problems
    assert "F210" not in {problem.code for problem in problems}
