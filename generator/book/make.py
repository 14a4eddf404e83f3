"""A book from a plan: every page, in navigation order, from what one reader may see."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import NamedTuple

from generator.book.calendar_file import calendar_file
from generator.book.content import Chapter, written_for
from generator.book.exports import owner_files
from generator.book.model import Book, LeftFolder
from generator.book.pages.ahead import ahead_page
from generator.book.pages.back import (
    glossary_page,
    readers_page,
    sources_page,
    workings_page,
)
from generator.book.pages.calendar import months_page, year_page
from generator.book.pages.count_on import count_on_page
from generator.book.pages.counts import counts_page, plant_when_page, weeds_page
from generator.book.pages.dates import dates_page, others_out_page
from generator.book.pages.front import chapter_page, emergency_page, findings_page, safety_page
from generator.book.pages.granted import granted_page
from generator.book.pages.ground import place_page, route_page, stand_page
from generator.book.pages.hours import hours_page
from generator.book.pages.lists import (
    calibration_page,
    chapters_page,
    places_page,
    routes_page,
    stands_page,
)
from generator.book.pages.log import log_page, log_seasons
from generator.book.pages.missed import missed_page
from generator.book.pages.money import buy_page, money_page
from generator.book.pages.records import forms_of, record_form_page, records_page
from generator.book.pages.signs import signs_page
from generator.book.pages.soil import fertilizer_page, lime_page, soil_test_page, water_page
from generator.book.pages.steps import steps_page
from generator.book.pages.store import (
    drill_page,
    lot_page,
    product_page,
    row_stock_page,
    sprayer_page,
    spreader_page,
)
from generator.book.pages.week import week_page
from generator.book.pages.work import job_page, upkeep_page, work_page
from generator.book.pages.written import Written
from generator.book.text import searchable
from generator.in_two import in_two
from generator.inventory.schema import PARTNER
from generator.plan.model.plan import Plan
from generator.plan.model.water_hole import Water

# A part of a book: pages in the order of the navigation, and files beside them.
Part = tuple[list[Written], Mapping[str, bytes]]


class Task(NamedTuple):
    """What makes a part of a book; `key` is the same for the same part of the next plan's book."""

    key: tuple[str, ...]
    make: Callable[[], Part]


def make_book(plan: Plan, left: Iterable[LeftFolder] = ()) -> Book:
    """Return the book of one reader: pages as Markdown with their search records.

    `left` are folders of readers who are gone, which the owner's book names.
    """
    return put_together(plan, in_two([task.make for task in tasks_of(plan, left)]))


def put_together(plan: Plan, parts: Iterable[Part]) -> Book:
    """Return the book of a plan whose parts are made, in the order of their tasks."""
    parts = list(parts)
    written = [entry for pages, _ in parts for entry in pages]
    # made last, from all pages before them; neither list looks through the other
    sources = sources_page(plan, written)
    written += [workings_page(plan, written), glossary_page(plan), sources]
    pages = tuple(entry.page for entry in written)
    files = {name: content for _, files in parts for name, content in files.items()}
    return Book(searchable(plan.title), plan.reader, plan.as_of, pages, files)


def tasks_of(plan: Plan, left: Iterable[LeftFolder] = ()) -> list[Task]:
    """Return what makes the parts of a book, in the order of the navigation."""
    tasks = list(_tasks(plan, left))
    assert len({task.key for task in tasks}) == len(tasks)
    return tasks


def _tasks(plan: Plan, left: Iterable[LeftFolder]) -> Iterator[Task]:
    is_owner = plan.reader == "owner"

    def page(make: Callable[..., Written], *about: object) -> Task:
        return Task((make.__name__, *map(_named, about)), lambda: ([make(plan, *about)], {}))

    def some(make: Callable[[Plan], list[Written]]) -> Task:
        return Task((make.__name__,), lambda: (make(plan), {}))

    yield from map(page, (week_page, missed_page, emergency_page, safety_page, months_page))
    if is_owner:
        yield from map(page, (year_page, ahead_page, findings_page, buy_page))
        # from the same tables, whose library is slow to load: one process does all of it
        yield Task(("money",), lambda: ([money_page(plan)], owner_files(plan)))
        yield from map(page, (dates_page, hours_page, counts_page, plant_when_page, records_page))
        yield from (page(log_page, season) for season in log_seasons(plan))
    if plan.reader == PARTNER:
        yield page(others_out_page)
    yield page(work_page)
    yield from map(some, (signs_page, count_on_page))
    yield from (page(job_page, job) for job in plan.jobs)
    yield from (page(record_form_page, job, place) for job, place in forms_of(plan))
    if is_owner:
        yield page(places_page)
    yield from (page(place_page, place) for place in plan.places)
    yield from _stands_and_walks(plan, page)
    if is_owner:
        yield from _owner_pages(plan, page)
    yield page(chapters_page)
    yield from map(_chapter, written_for(plan.reader))
    if is_owner:
        yield from (page(weeds_page), page(readers_page, tuple(left)), page(steps_page))
        yield page(granted_page)
    yield Task(("calendars",), lambda: ([], calendar_file(plan)))


def _named(thing: object) -> str:
    thing = thing.hole if isinstance(thing, Water) else thing
    return str(getattr(thing, "id", thing if isinstance(thing, int) else ""))


def _chapter(chapter: Chapter) -> Task:
    return Task(("chapter", chapter.name), lambda: ([chapter_page(chapter)], {}))


def _stands_and_walks(plan: Plan, page: Callable[..., Task]) -> Iterator[Task]:
    is_owner = plan.reader == "owner"
    yield from [page(stands_page)] if is_owner else []
    yield from (page(stand_page, stand) for stand in plan.land.stands)
    yield from [page(routes_page)] if is_owner else []
    yield from (page(route_page, route) for route in plan.land.routes)
    yield from (page(upkeep_page, job) for job in plan.upkeep)


def _owner_pages(plan: Plan, page: Callable[..., Task]) -> Iterator[Task]:
    listed: tuple[tuple[Callable[..., Written], Iterable[object]], ...] = (
        (lot_page, plan.land.lots),
        (row_stock_page, (*plan.land.plants, *plan.land.guards)),
        (soil_test_page, plan.land.soil_tests),
        (water_page, plan.water),
        (product_page, plan.land.products),
        (fertilizer_page, plan.land.fertilizers),
        (lime_page, plan.land.limes),
    )
    for make, things in listed:
        yield from (page(make, thing) for thing in things)
    yield page(calibration_page)
    yield from (page(sprayer_page, sprayer) for sprayer in plan.land.sprayers)
    yield from (page(spreader_page, spreader) for spreader in plan.land.spreaders)
    yield from (page(drill_page, drill) for drill in plan.land.drills)
