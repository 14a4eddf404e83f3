"""Kinds of work say each of their traits, and what is planned goes by those alone."""

from collections.abc import Iterator
from copy import deepcopy
from typing import Any

import pytest

from generator.book.content import callout
from generator.book.make import make_book
from generator.plan.build.season_plan import make_plan
from generator.plan.findings.about_days import DayCaution
from generator.reference import operations as module
from generator.reference.operations import operations, work_groups
from generator.reference.read import read_data
from generator.reference.suited import suited
from generator.reference.usual import usual
from tests.plan.planned import inventory_of
from tests.plan.test_burning import JANUARY, standing
from tests.properties import SEASON

ROWS: list[dict[str, Any]] = read_data("operations.yaml")
TRENCH: dict[str, Any] = {
    "id": "trench",
    "name": "Trenching",
    "cautions_of": "dig",
    "chapters": ["machines-and-lines"],
    "traits": ROWS[0]["traits"]
    | dict.fromkeys(ROWS[0]["traits"], "no")
    | {"group": "ways", "puts_down": "nothing", "digs": "yes"},
}


@pytest.fixture
def _afresh() -> Iterator[None]:
    operations.cache_clear()
    yield
    operations.cache_clear()


def read_rows(monkeypatch: pytest.MonkeyPatch, rows: list[dict[str, Any]]) -> None:
    """Lets the kinds of work be those of `rows`."""

    def read(name: str) -> object:
        return rows if name == "operations.yaml" else read_data(name)

    monkeypatch.setattr(module, "read_data", read)
    operations.cache_clear()


def test_words_of_traits_are_of_their_few() -> None:
    kinds = operations().values()
    assert {kind.puts_down for kind in kinds} == {
        "spray", "seed", "fertilizer", "lime", "plants", "plants_again", "nothing",
    }  # fmt: skip
    assert {kind.lays_down for kind in kinds} == {"always", "standing", None}
    assert {kind.shears for kind in kinds} == {"mown", "burnt", None}


def test_whose_machines_have_usual_ranges_has_them_among_the_values() -> None:
    ranged = [kind.id for kind in operations().values() if kind.machine_ranges]
    assert ranged
    for kind in ranged:
        assert usual(f"{kind}_width", "ft") != usual(f"{kind}_speed", "mph")


def test_what_a_day_must_be_like_is_one_of_the_ways_that_there_are() -> None:
    named = {row["suits"] for row in ROWS if "suits" in row}
    assert named <= suited().keys()
    assert named


def test_who_is_told_to_call_before_digging_does_work_that_digs() -> None:
    for kind in operations().values():
        if "Call 811" in callout(kind.cautions):
            assert kind.digs, kind.id


@pytest.mark.usefixtures("_afresh")
@pytest.mark.parametrize("trait", [name for name in ROWS[0]["traits"] if name != "group"])
def test_a_kind_of_work_that_leaves_a_trait_out_is_refused(
    trait: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    short = deepcopy(ROWS)
    del short[-1]["traits"][trait]
    read_rows(monkeypatch, short)
    with pytest.raises((TypeError, KeyError)):
        operations()


@pytest.mark.usefixtures("_afresh")
def test_a_trait_is_said_as_it_is_read(monkeypatch: pytest.MonkeyPatch) -> None:
    wrong = deepcopy(ROWS)
    wrong[-1]["traits"]["digs"] = "maybe"
    read_rows(monkeypatch, wrong)
    with pytest.raises(KeyError, match="maybe"):
        operations()


def test_every_group_of_the_year_holds_some_work() -> None:
    assert {kind.group.id for kind in operations().values()} == work_groups().keys()


@pytest.mark.usefixtures("_afresh")
def test_a_new_kind_of_work_is_a_row_and_is_asked_what_its_traits_ask(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    read_rows(monkeypatch, [*ROWS, TRENCH])
    data = standing("lane_trench")
    data["screens"]["screens"][0]["plantings"][0]["upkeep"] = "lane_upkeep"
    trench = {
        "step": "lane_trench",
        "name": "Trench for the pipe",
        "operation": "trench",
        "timing": "established_growing",
        "why": "So that water comes to the pond.",
        "opens": [{"date": "04-01"}],
        "closes": [{"date": "04-20"}],
        "ticks": ["The pipe is here."],
        "if_missed": "Leave it.",
    }
    own = {"id": "lane_upkeep", "name": "Lane", "kind": "native_grass", "yearly_from": 2}
    data["steps"] = {"step_plans": [own | {"steps": [trench]}]}
    plan = make_plan(inventory_of(data), SEASON, JANUARY)
    (job,) = (job for job in plan.jobs if job.step.id == "lane_trench")
    codes = {finding.code for finding in plan.findings_on(job.id)}
    assert DayCaution.NO_ONE_CALL.value.code in codes
    assert "dates.lines_marked" in {line.key for line in job.safety}
    (sheet,) = (page for page in make_book(plan).pages if page.address == f"work/{job.address}.md")
    assert "Trench for the pipe" in sheet.markdown
    assert 'data-safety="dates.lines_marked"' in sheet.markdown
    assert "Buried lines marked" in sheet.markdown
