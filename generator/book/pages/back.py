"""Pages about the book itself: workings, words, sources."""

from itertools import groupby

from markupsafe import Markup

from generator.book.homes import homes_of
from generator.book.model import Page
from generator.book.pages.written import (
    HOW,
    NumberShown,
    Written,
    from_template,
)
from generator.plan.model.plan import Plan
from generator.reference.library import sources, words

MOST_NAMED = 40  # pages that use a source, and are named
FOLDED_FROM = 3  # pages that use a source, named in one line up to here
# How far a source can be trusted, the surest first.
TRUST = ("published", "common_practice", "memory", "definition")


def workings_page(plan: Plan, written: list[Written]) -> Written:
    """Return where numbers are worked out: the pages they are at home on, and those on none."""
    rows: dict[str, tuple[NumberShown, Markup]] = {}
    homes = homes_of(plan)
    at_home = []
    for entry in written:
        page = _html(entry.page.address)
        if homes.on_page.get(entry.page.address.removesuffix(".md")) and not _is_of_place(page):
            at_home.append((Markup(entry.page.title), Markup(page)))
        for number in entry.numbers:
            if number.identity not in homes.of_number:
                # wherever it stands it has the same working: the first page is named
                rows.setdefault(number.identity, (number, Markup(f"{page}#{number.anchor}")))
    groups: dict[str, list[tuple[NumberShown, Markup]]] = {}
    for _, row in sorted(rows.items()):
        groups.setdefault(row[0].subject, []).append(row)
    return from_template(
        plan,
        "workings.md",
        "Workings",
        HOW,
        "workings",
        ["workings", "formulas"],
        groups=list(groups.items()),
        at_home=at_home,
        places=plan.places if at_home else (),
    )


def _is_of_place(page: str) -> bool:
    """Return whether a page is that of a place or of work on one: such are found by the place."""
    return page.startswith(("places/", "work/"))


def glossary_page(plan: Plan) -> Written:
    """Return the words of the book, by their first letters."""
    in_order = sorted(words().items(), key=lambda pair: pair[0].lower())
    letters = [
        (letter, list(entries))
        for letter, entries in groupby(in_order, key=lambda pair: pair[0][0].upper())
    ]
    return from_template(plan, "glossary.md", "Words", HOW, "glossary", words(), letters=letters)


def sources_page(plan: Plan, written: list[Written]) -> Written:
    """Return the sources the book's numbers rest on, with the pages that use them."""
    using: dict[str, list[Page]] = {}
    for entry in written:
        for key in sorted(entry.sources):
            using.setdefault(key, []).append(entry.page)
    ordered = sorted(using, key=lambda key: sources()[key].title.lower())
    return from_template(
        plan,
        "sources.md",
        "Sources",
        HOW,
        "sources",
        # by titles of sources nobody would find the pages that rest on them
        [],
        graded=[
            (trust, [(sources()[key], *_links(using[key])) for key in keys])
            for trust in TRUST
            if (keys := [key for key in ordered if sources()[key].trust == trust])
        ],
    )


def _links(pages: list[Page]) -> tuple[list[tuple[Markup, Markup]], int, int]:
    """Return title and address of the first pages, how many fold away, how many are not named."""
    named = pages[:MOST_NAMED]
    links = [(Markup(page.title), Markup(_html(page.address))) for page in named]
    folded = len(pages) if len(links) > FOLDED_FROM else 0
    return links, folded, len(pages) - len(named)


def _html(address: str) -> str:
    return address.removesuffix(".md") + ".html"
