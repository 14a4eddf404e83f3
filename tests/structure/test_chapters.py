"""Every chapter is reached from the work that needs it, and links only where its readers may go."""

import re
from collections.abc import Iterator

import pytest

from generator.book.content import Chapter, chapters, named_value
from generator.reference.library import mixing_steps, sources
from generator.reference.operations import operations
from generator.reference.steps import step_plans
from tests.reasons import every
from tests.structure.modules import CHECKOUT

CHAPTERS = {one.name: one for one in chapters()}
# An address in a template: `{{ root }}chapters/records.html`, or without the root.
IN_TEMPLATE = re.compile(r'"(?:\{\{ root \}\})?chapters/([a-z0-9-]+)\.html')
IN_CHAPTER = re.compile(r"\]\(([^)\s]*)\)")


def named() -> dict[str, set[str]]:
    """The chapters that are linked to, by what links to them; chapters among themselves aside."""
    templates = sorted((CHECKOUT / "site_templates" / "pages").glob("*.jinja"))
    texts = [path.read_text(encoding="utf-8") for path in templates]
    return {
        "operations": {name for kind in operations().values() for name in kind.chapters},
        "steps": {
            name for plan in step_plans().values() for step in plan.steps for name in step.chapters
        },
        "findings": {one.value.chapter for one in every() if one.value.chapter},
        "pages": {name for text in texts for name in IN_TEMPLATE.findall(text)},
    }


NAMED = named()


def link_faults(chapter: Chapter, known: dict[str, Chapter]) -> Iterator[str]:
    """Links of a chapter that lead nowhere, or where one of its readers cannot follow."""
    for address in IN_CHAPTER.findall(chapter.body):
        name = address.partition("#")[0].removesuffix(".md")
        if f"{name}.md" != address.partition("#")[0] or name not in known:
            yield f"{address} is no chapter"
        elif missing := set(chapter.readers) - set(known[name].readers):
            yield f"{address} is not for {', '.join(sorted(missing))}"


@pytest.mark.parametrize("part", NAMED)
def test_every_chapter_named_is_there(part: str) -> None:
    assert NAMED[part]
    assert NAMED[part] - CHAPTERS.keys() == set()


@pytest.mark.parametrize("name", CHAPTERS)
def test_every_chapter_is_linked_from_a_job_a_finding_or_a_page(name: str) -> None:
    assert name in set().union(*NAMED.values())


@pytest.mark.parametrize("chapter", CHAPTERS.values(), ids=lambda one: one.name)
def test_a_chapter_links_to_chapters_that_its_readers_have(chapter: Chapter) -> None:
    assert list(link_faults(chapter, CHAPTERS)) == []


@pytest.mark.parametrize("chapter", CHAPTERS.values(), ids=lambda one: one.name)
def test_a_chapter_is_for_the_owner_among_others(chapter: Chapter) -> None:
    assert "owner" in chapter.readers
    assert len(set(chapter.readers)) == len(chapter.readers)


def test_a_step_names_its_own_chapters_first_and_none_twice() -> None:
    """Independent: read by hand off frost_seeded_native_grass.yaml and operations.yaml."""
    steps = {one.id: one for one in step_plans()["frost_seeded_native_grass"].steps}
    assert steps["frost_seeding"].chapters[0] == "frost-seeding"
    assert set(operations()["sow"].chapters) < set(steps["frost_seeding"].chapters)
    for plan in step_plans().values():
        for step in plan.steps:
            assert len(set(step.chapters)) == len(step.chapters)


@pytest.mark.parametrize(
    ("link", "fault"),
    [
        ("[a](nowhere.md)", "nowhere.md is no chapter"),
        ("[a](../index.html)", "../index.html is no chapter"),
        ("[a](private.md)", "private.md is not for contractor"),
    ],
)
def test_a_link_that_leads_nowhere_is_seen(link: str, fault: str) -> None:
    private = Chapter("private", "Private", "limits", ("owner",), "")
    chapter = Chapter("one", "One", "limits", ("owner", "contractor"), f"See {link}.")
    assert list(link_faults(chapter, {"private": private, "one": chapter})) == [fault]


def test_an_address_in_a_template_is_found() -> None:
    found = IN_TEMPLATE.findall('href="{{ root }}chapters/one.html" href="chapters/two.html#x"')
    assert found == ["one", "two"]


SHOWN = re.compile(r"""\bvalue\(\s*["']([^"']+)["']\s*\)""")
# Chapters and cautions somebody turns to when a life is at stake.
OF_SAFETY = ("emergencies", "heat-ticks-alone", "machines-and-lines")


@pytest.mark.parametrize("name", OF_SAFETY)
def test_a_figure_that_safety_rests_on_was_read_in_its_source(name: str) -> None:
    shown = [named_value(key) for key in SHOWN.findall(CHAPTERS[name].body)]
    assert shown
    assert {sources()[one.source].trust for one in shown} == {"published"}


def test_the_chapter_on_mixing_gives_the_order_of_the_mixing_sheet() -> None:
    """South Dakota State and Oklahoma State extension, in mixing.yaml; the sheet prints it too."""
    text = CHAPTERS["mixing"].body.partition("## The order")[2].partition("\n## ")[0]
    heads = [one.lower() for one in re.findall(r"^\d+\. \*\*(.+?),?\*\*", text, re.MULTILINE)]
    kinds = [step.name.partition(",")[0].removesuffix(" or oil") for step in mixing_steps()]
    firsts = [one.split()[0] for one in kinds]
    at = [next(n for n, head in enumerate(heads) if head.startswith(one)) for one in firsts]
    assert at == sorted(at)
    assert heads[0] == "water"
    assert heads[-1].endswith("water")
