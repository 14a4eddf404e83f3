"""What the owner looked up of the law: everything the law decides stands, looked up or not."""

import copy
from typing import Any

import pytest

from generator.inventory.load import load_inventory
from generator.plan.days.law import law_rows
from generator.plan.readers.seen_by import seen_by
from generator.reference.library import law_subjects
from tests.plan.planned import inventory_of, planned
from tests.properties import Data, small_property, write_property
from tests.readers.test_partner import shared

ORANGE: Data = {"id": "hat", "subject": "orange", "words": "Hat and vest of thistle orange",
                "source": "booklet, invented", "looked_up_on": "2026-08-02"}  # fmt: skip
SEASON: Data = {"id": "season", "kind": "hunting", "first": "2026-10-01", "last": "2027-01-10",
                "places": "all"}  # fmt: skip
AFTER: Data = {
    "game_officer": "officer of nettle county",
    "tracker": "somebody with a bramble dog",
    "stay_out_ground": "ask_first",
    "beyond": [{"side": "over the burdock fence", "whose": "the teasel farm", "may_enter": "yes"}],
}


def with_law(data: Data, *looked_up: Data) -> Data:
    data["dates"] = {"dates": [SEASON], "looked_up": [copy.deepcopy(one) for one in looked_up]}
    data["property"]["after_the_shot"] = copy.deepcopy(AFTER)
    return data


def test_what_nobody_looked_up_has_its_row_too() -> None:
    rows = law_rows(inventory_of(with_law(small_property(), ORANGE)).looked_up)
    assert [row.subject.id for row in rows] == list(law_subjects())
    assert {row.subject.id for row in rows if row.looked_up} == {"orange"}
    assert all("ook up" in row.subject.look_up for row in rows)
    assert all(row.looked_up == () for row in law_rows(()))


def test_of_one_thing_the_newest_stands_first_however_the_file_has_it() -> None:
    older = ORANGE | {"id": "cap", "looked_up_on": "2025-07-01", "words": "A cap"}
    for both in ((ORANGE, older), (older, ORANGE)):
        rows = law_rows(inventory_of(with_law(small_property(), *both)).looked_up)
        (row,) = (row for row in rows if row.looked_up)
        assert [one.id for one in row.looked_up] == ["hat", "cap"]


def test_words_of_the_season_before_are_told_until_they_are_looked_up_again() -> None:
    def told(day: str, **season: Any) -> list[str]:
        data = with_law(small_property(), ORANGE | {"looked_up_on": day})
        data["dates"]["dates"] = [SEASON | season] if season.get("kind") != "none" else []
        return [one.code for one in planned(data).findings if one.code == "C460"]

    # hunting dates of a year ago ended on Jan 10, 2026
    assert told("2026-01-10") == ["C460"]
    assert told("2026-01-11") == []
    assert told("2026-01-10", kind="quiet") == []
    assert told("2026-01-10", kind="none") == []


def test_a_subject_that_is_none_is_a_fault_that_names_those_there_are(tmp_path: Any) -> None:
    data = with_law(small_property(), ORANGE | {"subject": "oranje"})
    (problem,) = load_inventory(write_property(tmp_path / "property", data)).problems
    assert problem.file == "dates.yaml"
    assert "orange" in str(problem)


@pytest.mark.parametrize("reader", ["friend", "hired"])
def test_a_partner_is_handed_all_of_it_and_a_contractor_nothing(reader: str) -> None:
    data = with_law(shared(), ORANGE | {"note": "my secret"})
    inventory = inventory_of(data)
    view = seen_by(planned(data), next(one for one in inventory.readers if one.id == reader))
    said = repr(view.land.looked_up) + repr(view.land.after_the_shot)
    words = ("thistle orange", "nettle", "bramble", "burdock", "teasel", "ask_first")
    assert [word in said for word in words] == [reader == "friend"] * len(words)
    assert "secret" not in said
    assert "hat" not in [entry.id for entry in view.land.looked_up]
