"""The list of findings names each rule once, and what it leaves out stands where it leads."""

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from typing import get_args, get_type_hints

import pytest

from generator.book.content import finding_heads, head_words
from generator.book.pages.by_rule import by_rule
from generator.book.pages.subjects import Subjects
from generator.book.pages.work import ON_THE_SHEET
from generator.book.text import clean
from generator.inventory.fields import Record
from generator.inventory.schema import Inventory
from generator.plan.views.before_next import next_until, when_needed
from generator.plan.views.unanswered import Question
from tests.book.reading import Element, read
from tests.book.sites import Site
from tests.reasons import every

LONGEST_HEAD = 52
CODE = re.compile(r"\b[SCN]\d{3}\b")
FILE = re.compile(r"\b\w+\.yaml\b")
BESIDE_PLACEHOLDERS = re.compile(r"\{\w+\}")
# How sentences bring a key of one word in: a word before a colon is mostly no key.
BROUGHT_IN = re.compile(r"\b(?:[Tt]ype|[Uu]nder|[Ww]ith|[Bb]y|[Aa]dd|[Cc]hange) ([a-z]+):")
# What stands in an option of a command or between words of a key, and in no sentence.
OF_A_KEY = re.compile(r"\w_\w|(?<!\w)--\w")


def keys_of(kind: type, seen: set[type]) -> Iterator[str]:
    """Every key of a kind of record, and of the records in it."""
    if kind in seen or not is_dataclass(kind):
        return
    seen.add(kind)
    hints = get_type_hints(kind)
    for one in fields(kind):
        yield one.name
        for inner in _kinds_in(hints[one.name]):
            yield from keys_of(inner, seen)


def _kinds_in(hint: object) -> Iterator[type]:
    if isinstance(hint, type) and issubclass(hint, Record):
        yield hint
    for part in get_args(hint):
        yield from _kinds_in(part)


def keys_in(text: str, keys: frozenset[str]) -> list[str]:
    """The keys of property files that a sentence names, and the files themselves."""
    told = BESIDE_PLACEHOLDERS.sub("", text)
    named = [word for word in BROUGHT_IN.findall(told) if word in keys]
    return [*named, *FILE.findall(told), *OF_A_KEY.findall(told), *CODE.findall(told)]


@pytest.fixture(scope="module")
def keys() -> frozenset[str]:
    return frozenset(keys_of(Inventory, set()))


def test_every_rule_has_a_head_that_is_short() -> None:
    heads = finding_heads()
    assert {reason.value.code for reason in every()} == set(heads)
    for code, head in heads.items():
        assert len(head) <= LONGEST_HEAD, code
        assert re.findall(r"\{.*?\}", head) in ([], ["{thing}"]), code
        assert not head.endswith("."), code


def test_a_key_in_a_sentence_is_found(keys: frozenset[str]) -> None:
    assert {"product", "width_ft", "reader", "cover_now"} <= keys
    assert keys_in("Type product: there, or width_ft in screens.yaml.", keys) == [
        "product",
        "screens.yaml",
        "h_f",
    ]
    assert keys_in("Left are: {days}. It is S104: the lime.", keys) == ["S104"]


def test_what_is_said_and_what_to_do_name_no_key(keys: frozenset[str]) -> None:
    for reason in every():
        words = reason.value
        for text in (words.owner, words.others, words.cure, finding_heads()[words.code]):
            assert keys_in(text, keys) == [], words.code
    for question in Question:
        assert keys_in(f"{question.value.asks} {question.value.cure}", keys) == [], question


@pytest.fixture(scope="module")
def owner(demo_sites: dict[str, Site]) -> Site:
    return demo_sites["owner"]


@pytest.fixture(scope="module")
def page(owner: Site) -> Element:
    return read(owner.pages()["findings.html"])


def test_every_finding_is_met_once_under_its_rule_with_what_it_is_about(
    owner: Site, page: Element
) -> None:
    subjects = Subjects(owner.plan)
    met = Counter(
        (section.attributes["data-rule"], link.attributes["href"])
        for section in page.all("section", "rule")
        # what the book cannot say is no finding of a rule
        if "data-rule" in section.attributes
        for about in section.all("ul", "about")
        for link in about.all("a")
    )
    when = when_needed(owner.plan)
    told = [finding for finding in owner.plan.findings if when(finding) != "over"]
    for finding in told:
        _, address = subjects.named(finding.subject)
        if address:
            assert (finding.code, address) in met, finding.id
    assert max(met.values()) == 1


def test_what_stands_before_the_next_jobs_is_open_to_see(owner: Site, page: Element) -> None:
    folded = {id(one) for fold in page.all("details", "fold") for one in fold.walk()}
    open_rules = [one for one in page.all("section", "rule") if id(one) not in folded]
    until = next_until(owner.plan)
    jobs = {job.id: job for job in owner.plan.jobs}
    soon = [
        finding
        for finding in owner.plan.findings
        if finding.severity != "note"
        and finding.subject in jobs
        and (job := jobs[finding.subject]).state.is_ahead
        and (job.dates.opens is None or job.dates.opens <= until)
    ]
    assert soon
    seen = {
        (section.attributes["data-rule"], link.attributes["href"])
        for section in open_rules
        for link in section.all("a")
    }
    for finding in soon:
        assert (finding.code, f"work/{jobs[finding.subject].address}.html") in seen, finding.id
    # notes never stand among them
    assert {code[0] for code, _ in seen} <= {"S", "C"}


def test_what_the_list_leaves_out_stands_on_the_page_it_leads_to(owner: Site) -> None:
    texts = {address: read(html).text() for address, html in owner.pages().items()}
    subjects = Subjects(owner.plan)
    left_out = 0
    for finding in owner.plan.findings:
        _, address = subjects.named(finding.subject)
        is_told = subjects.is_told(finding)
        where = texts[address.partition("#")[0] if is_told else "findings.html"]
        # what a sheet keeps the spray away from it says in a list of its own
        if finding.code in ON_THE_SHEET:
            continue
        for said in (finding.words, finding.cure, *(label for label, _ in finding.figures)):
            assert clean(said) in where, finding.id
        if is_told:
            assert clean(finding.to_type) in where, finding.id
            left_out += 1
    assert left_out > 60


def told_outside_folds(element: Element) -> Iterator[str]:
    """The text of a page, what the owner's folds hold left out."""
    for one in element.inside:
        if isinstance(one, str):
            yield one
        elif not (one.tag == "details" and one.has("type-this")):
            yield from told_outside_folds(one)


def findings_told(page: Element) -> Iterator[str]:
    for section in page.all("section", "finding"):
        yield " ".join(told_outside_folds(section))


def test_codes_files_and_keys_stand_in_the_owner_s_fold_alone(
    demo_sites: dict[str, Site], keys: frozenset[str]
) -> None:
    folds = 0
    for name, site in demo_sites.items():
        for address, html in site.pages().items():
            document = read(html)
            inside = document.all("details", "type-this")
            folds += len(inside)
            assert name == "owner" or not inside, address
            assert all(fold.attributes.keys() <= {"class"} for fold in inside), "closed at first"
            for told in findings_told(document):
                assert CODE.findall(told) == [], (name, address)
                assert FILE.findall(told) == [], (name, address)
                if name != "owner":
                    assert keys_in(told, keys) == [], (name, address)
    assert folds > 100


def test_one_deed_for_many_jobs_is_named_in_the_head(owner: Site, page: Element) -> None:
    cleaned = [one for one in owner.plan.findings if one.code == "C313"]
    assert len({one.thing for one in cleaned}) == 1
    heads = [one.text() for one in page.all("p", "head")]
    assert f"{head_words(cleaned[0])}: 5 jobs" in [head.strip() for head in heads]


def test_findings_of_two_things_are_two_rules(owner: Site) -> None:
    one = next(one for one in owner.plan.findings if one.code == "C313")
    rules = by_rule([one, replace(one, thing="Backpack")], Subjects(owner.plan))
    assert [rule.head for rule in rules] == [head_words(one), "Clean the sprayer first: Backpack"]
