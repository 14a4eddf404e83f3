"""The page that names every step by its id: for the owner, linked from where ids are typed."""

import html
import re
from functools import cache

from generator.book.make import make_book
from generator.book.model import Book
from generator.plan.readers.seen_by import seen_by
from generator.reference.library import sources
from generator.reference.steps import StepPlan, step_plans
from tests.plan.planned import inventory_of, planned
from tests.properties import small_property

OWN = {
    "id": "my_grass",
    "name": "My own <b>way</b>",
    "based_on": "frost_seeded_native_grass",
    "steps": [
        {
            "step": "my_look",
            "name": "A look of mine",
            "operation": "inspect",
            "timing": "before_sowing",
            "why": "to see",
            "opens": [{"date": "03-01"}],
            "closes": [{"date": "04-01"}],
            "if_missed": "look later",
        }
    ],
}


@cache
def book_of(**reader: str) -> Book:
    data = small_property()
    data["steps"] = {"step_plans": [OWN]}
    plan = planned(data)
    if not reader:
        return make_book(plan)
    return make_book(seen_by(plan, inventory_of(data).readers[0]))


def test_every_step_of_every_plan_stands_there_with_its_id() -> None:
    (page,) = [one for one in book_of().pages if one.address == "steps.md"]
    for plan in step_plans().values():
        for step in plan.steps:
            assert f'<code class="id">{step.id}</code>' in page.markdown.replace("<wbr>", "")
    assert "my_<wbr>look" in page.markdown
    assert "<b>" not in page.markdown


def test_plans_that_are_used_come_first_and_places_and_readers_lead_there() -> None:
    book = book_of()
    pages = {one.address: one.markdown for one in book.pages}
    first = pages["steps.md"].index("It is used here.")
    assert pages["steps.md"].index("#plan-") < first < pages["steps.md"].index("#plan-my_grass")
    assert 'href="../steps.html#plan-frost_seeded_native_grass"' in pages["places/lane.md"]
    assert 'href="steps.html"' in pages["readers.md"]


def test_no_other_reader_is_given_it() -> None:
    assert "steps.md" not in {one.address for one in book_of(kind="contractor").pages}


def test_each_plan_says_for_which_latitudes_its_days_are_written_and_by_what_source() -> None:
    """By the data of each plan: both ends, and the title of the source beside them."""
    (page,) = [one for one in book_of().pages if one.address == "steps.md"]
    plain = " ".join(html.unescape(re.sub(r"<[^>]*>", " ", page.markdown)).split())
    by_id = dict(re.findall(r"#plan-(\S+) }(.*?)(?=## |$)", plain))
    for plan in (*step_plans().values(), planned_own()):
        assert plan.latitudes is not None
        ends = f"{plan.latitudes.south.value:g} degrees to {plan.latitudes.north.value:g} degrees"
        assert f"Its calendar days are written for {ends} north" in by_id[plan.id], plan.id
        assert sources()[plan.latitudes.south.source].title in by_id[plan.id]


def planned_own() -> StepPlan:
    data = small_property()
    data["steps"] = {"step_plans": [OWN]}
    return inventory_of(data).plans()["my_grass"]


def test_a_plan_whose_days_are_looked_up_says_that_they_are_the_owner_s() -> None:
    data = small_property()
    data["steps"] = {"step_plans": [OWN | {"days_looked_up_on": "2026-08-01"}]}
    (page,) = [one for one in make_book(planned(data)).pages if one.address == "steps.md"]
    assert page.markdown.count("Its calendar days are your own.") == 1
