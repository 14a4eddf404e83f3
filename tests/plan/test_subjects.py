"""What a finding is about is a kind and an id: a wrong one fails where it is made or looked up."""

import copy
import datetime
import pickle
from collections.abc import Iterator

import pytest

from generator.book.pages.subjects import Subjects
from generator.inventory.load import load_inventory
from generator.plan.build.season_plan import make_plan
from generator.plan.findings.order import about_record
from generator.plan.model.finding import WHOLE_FOLDER, Subject, about_item, about_job, about_place
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from tests.book.sites import DEMO
from tests.plan.planned import AS_OF, inventory_of
from tests.properties import SEASON, property_data, small_property


def test_a_subject_is_named_by_its_id_and_by_what_it_is_of_where_that_is_no_thing() -> None:
    assert [about_job("lane/2027/kill"), about_place("lane"), about_item("brew")] == [
        "lane/2027/kill", "lane", "brew",
    ]  # fmt: skip
    entry = Subject("entry", "e-4")
    assert (entry, entry.kind, entry.id) == ("log/e-4", "entry", "e-4")
    assert Subject("marker", "thaw") == "sign/thaw"


@pytest.mark.parametrize(
    ("kind", "subject_id"),
    [("jobs", "lane/2027/kill"), ("job", "lane"), ("place", "lane/2027/kill"), ("upkeep", "oak")],
)
def test_a_kind_or_an_id_that_cannot_be_is_refused(kind: str, subject_id: str) -> None:
    with pytest.raises(ValueError, match=r"about a|no id of a"):
        Subject(kind, subject_id)  # type: ignore[arg-type]  # what is tried


def test_a_copy_of_a_subject_is_the_subject() -> None:
    entry = Subject("entry", "e-4")
    for same in (copy.copy(entry), copy.deepcopy(entry), pickle.loads(pickle.dumps(entry))):
        assert (same, same.kind, same.id) == (entry, "entry", "e-4")


def test_a_record_is_what_its_page_is_of() -> None:
    inventory = inventory_of(small_property())
    assert about_record(inventory.screens[0]).kind == "place"
    assert about_record(inventory.sprayers[0]).kind == "sprayer"
    assert about_record(inventory.property) == WHOLE_FOLDER


def plans() -> Iterator[Plan]:
    inventory = load_inventory(DEMO).inventory
    assert inventory is not None
    for month in (9, 12, 4, 8):
        day = datetime.date(2026 if month > 8 else 2027, month, 15)
        plan = make_plan(inventory, 2027, day)
        yield plan
        yield from (seen_by(plan, reader) for reader in inventory.readers)
    for seed in range(25):
        yield make_plan(inventory_of(property_data(seed, 4)), SEASON, AS_OF)


def test_everything_that_is_told_is_about_something_with_a_name() -> None:
    kinds = set()
    for plan in plans():
        subjects = Subjects(plan)
        for finding in plan.findings:
            name, page = subjects.named(finding.subject)
            assert name
            assert page == "" or ".html" in page
            kinds.add(finding.subject.kind)
    assert kinds >= {"job", "place", "item", "entry", "marker", "contractor"}


def test_a_thing_that_is_not_there_is_not_passed_over() -> None:
    plan = make_plan(inventory_of(small_property()), SEASON, AS_OF)
    with pytest.raises(KeyError):
        Subjects(plan).named(about_place("lnae"))
