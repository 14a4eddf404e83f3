"""Workings are read by a person: the names that things have in the program are on none of them."""

import ast
import re
from collections.abc import Iterator

import pytest

from generator.book.content import input_words
from generator.book.workings import SIGNS, formula_words, input_called
from tests.book.reading import Element, read, workings
from tests.book.sites import Site
from tests.structure.modules import PACKAGE

# A file is named as it is on the disk, which is where its line is looked up.
NAME = re.compile(r"\b[a-z][a-z0-9]*(?:_[a-z0-9]+)+\b(?!\.(?:yaml|csv))")


def seen(element: Element) -> Iterator[str]:
    """The text of an element as somebody reads it, the parts apart."""
    for one in element.inside:
        if isinstance(one, str):
            yield one
        else:
            yield from seen(one)


def test_a_name_of_the_program_is_seen_and_a_file_is_let_through() -> None:
    assert NAME.findall("area_ac × rate_lb_per_ac") == ["area_ac", "rate_lb_per_ac"]
    assert NAME.findall("typed in soil_tests.yaml, line 3; a well-made bed") == []


def test_no_working_shows_a_name_of_the_program(demo_sites: dict[str, Site]) -> None:
    folds = 0
    for site in demo_sites.values():
        for address, html in site.pages().items():
            for fold in read(html).all("details", "workings"):
                folds += 1
                assert NAME.findall(" ".join(seen(fold))) == [], address
    assert folds > 100


def test_every_working_of_a_job_stands_under_its_place_and_step(
    demo_sites: dict[str, Site],
) -> None:
    plan = demo_sites["owner"].plan
    jobs = {job.id: (plan.place(job.place_id).name, job.step.name) for job in plan.jobs}
    found = 0
    for html in demo_sites["owner"].pages().values():
        for working in workings(read(html)).values():
            job = jobs.get("/".join(working.identity.split("/")[:3]))
            if job is not None:
                assert all(words in working.head for words in job)
                found += 1
    assert found > 500


def test_a_working_stands_once_in_the_owner_s_book_but_for_what_a_sheet_repeats(
    demo_sites: dict[str, Site],
) -> None:
    pages: dict[str, list[str]] = {}
    for address, html in demo_sites["owner"].pages().items():
        for working in workings(read(html)).values():
            if working.identity and not address.startswith("work/"):
                pages.setdefault(working.identity, []).append(address)
    money = {name: found for name, found in pages.items() if name.startswith(("buy/", "budget/"))}
    assert money
    assert {name: found for name, found in money.items() if len(found) > 1} == {}


def _is_arithmetic(text: str) -> bool:
    """Whether a formula can be worked out as it stands; methods of arrays are said in words."""
    try:
        ast.parse(" ".join(text.split()), mode="eval")
    except SyntaxError:
        return False
    return "[" not in text


@pytest.fixture(scope="module")
def formulas() -> list[str]:
    """The formulas of all calculations, as their docstrings have them."""
    return [
        " ".join(text.split())
        for path in sorted((PACKAGE / "compute").glob("*.py"))
        for text in re.findall(
            r"^ +Formula: (.*?)(?=^ +Valid for:)", path.read_text(encoding="utf-8"), re.M | re.S
        )
        if _is_arithmetic(text)
    ]


def test_no_input_is_named_that_no_formula_has(formulas: list[str]) -> None:
    named = {name for text in formulas for name in re.findall(r"[A-Za-z_]\w*", text)}
    assert set(input_words()) <= named


def test_no_two_inputs_of_a_formula_are_called_the_same(formulas: list[str]) -> None:
    assert len(formulas) > 150
    for text in formulas:
        names = set(re.findall(r"[A-Za-z_]\w*", text)) - SIGNS.keys()
        called = [input_called(name) for name in sorted(names)]
        assert len(set(called)) == len(called), text
        assert "_" not in formula_words(text)
