"""The list of findings names each rule once, and what it leaves out stands where it leads."""

import pytest

from generator.book.content import finding_heads
from generator.book.pages.by_rule import by_rule
from generator.book.pages.subjects import Subjects
from generator.book.pages.work import ON_THE_SHEET
from generator.book.text import clean
from tests.book.reading import read
from tests.book.sites import Site
from tests.reasons import every

LONGEST_HEAD = 52


def test_every_rule_has_a_head_that_is_short() -> None:
    heads = finding_heads()
    assert {reason.value.code for reason in every()} == set(heads)
    for code, head in heads.items():
        assert len(head) <= LONGEST_HEAD, code
        assert "{" not in head
        assert not head.endswith("."), code


@pytest.fixture(scope="module")
def owner(demo_sites: dict[str, Site]) -> Site:
    return demo_sites["owner"]


def test_a_rule_is_met_once_with_everything_it_is_about(owner: Site) -> None:
    page = read(owner.pages()["findings.html"])
    sections = page.all("section", "rule")
    codes = [section.all("small")[0].text() for section in sections]
    assert len(codes) == len(set(codes))
    assert set(codes) == {finding.code for finding in owner.plan.findings}
    about = sum(len(section.all("ul", "about")[0].all("li")) for section in sections)
    assert about == len(owner.plan.findings)


def test_what_the_list_leaves_out_stands_on_the_page_it_leads_to(owner: Site) -> None:
    texts = {address: read(html).text() for address, html in owner.pages().items()}
    left_out = 0
    for rule in by_rule(owner.plan.findings, Subjects(owner.plan)):
        for told in rule.told:
            name, page = told.subject
            if rule.same is not None or told.whole:
                assert clean(told.finding.words) in texts["findings.html"]
            # what a sheet keeps the spray away from it says in a list of its own
            elif rule.code not in ON_THE_SHEET:
                assert page, name
                assert clean(told.finding.words) in texts[page.partition("#")[0]], rule.code
                left_out += 1
    assert left_out > 20
