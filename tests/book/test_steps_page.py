"""The page that names every step by its id: for the owner, linked from where ids are typed."""

from functools import cache

from generator.book.make import make_book
from generator.book.model import Book
from generator.plan.readers import seen_by
from generator.reference.steps import step_plans
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
            assert f"<code>{step.id}</code>" in page.markdown.replace("&#95;", "_")
    assert "my&#95;look" in page.markdown or "my_look" in page.markdown
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
