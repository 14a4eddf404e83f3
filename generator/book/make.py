"""A book from a plan: every page, in navigation order, from what one reader may see."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import NamedTuple

from generator.book.calendar_file import calendar_file
from generator.book.content import Chapter, written_for
from generator.book.exports import Filing, filed_at_last, owner_rows
from generator.book.geo_files import ground_files
from generator.book.homes import homes_of
from generator.book.model import Book, LeftFolder
from generator.book.pages.after_shot import after_shot_page
from generator.book.pages.ahead import ahead_page, season_page
from generator.book.pages.back import (
    glossary_page,
    sources_page,
    workings_page,
)
from generator.book.pages.buy import buy_page
from generator.book.pages.calendar import months_page, year_page
from generator.book.pages.can_do import can_do_page
from generator.book.pages.count_on import count_on_page
from generator.book.pages.counts import counts_page, plant_when_page, weeds_page
from generator.book.pages.dates import dates_page, others_out_page
from generator.book.pages.front import chapter_page, emergency_page, findings_page, safety_page
from generator.book.pages.granted import granted_page
from generator.book.pages.ground import place_page
from generator.book.pages.hours import hours_page
from generator.book.pages.land import land_page
from generator.book.pages.lists import (
    calibration_page,
    chapters_page,
    places_page,
    routes_page,
    stands_page,
)
from generator.book.pages.log import log_page, log_seasons
from generator.book.pages.missed import missed_page
from generator.book.pages.money import costs_by_thing_page, costs_page, money_page
from generator.book.pages.readers import reader_page, readers_page
from generator.book.pages.records import forms_of, record_form_page, records_page
from generator.book.pages.runs import run_page, runs_page
from generator.book.pages.shelves import ground_page, products_page, seed_page
from generator.book.pages.signs import signs_page
from generator.book.pages.sits import sits_page
from generator.book.pages.soil import fertilizer_page, lime_page, soil_test_page, water_page
from generator.book.pages.stands_walks import route_page, stand_page
from generator.book.pages.steps import steps_page
from generator.book.pages.store import (
    drill_page,
    lot_page,
    product_page,
    row_stock_page,
    sprayer_page,
    spreader_page,
)
from generator.book.pages.tanks import tanks_page
from generator.book.pages.week import week_page
from generator.book.pages.wind_months import wind_months_page
from generator.book.pages.winds import wind_card_page
from generator.book.pages.work import job_page, upkeep_page, work_page
from generator.book.pages.work_hours import (
    hours_by_job_page,
    hours_by_month_page,
    hours_by_weekend_page,
)
from generator.book.pages.written import Written
from generator.book.text import searchable
from generator.in_two import in_two
from generator.inventory.schema import PARTNER
from generator.plan.model.place import Water
from generator.plan.model.plan import Handed, Plan
from generator.plan.views.years_ahead import seasons_ahead

# A part of a book: pages in the order of the navigation, and files beside them.
Part = tuple[list[Written], Mapping[str, bytes]]


class Task(NamedTuple):
    """What makes a part of a book; `key` is the same for the same part of the next plan's book."""

    key: tuple[str, ...]
    make: Callable[[], Part]


def make_book(plan: Plan, left: Iterable[LeftFolder] = (), filing: Filing = filed_at_last) -> Book:
    """Return the book of one reader: pages as Markdown with their search records.

    `left` are folders of readers who are gone, which the owner's book names.
    """
    filed = owners_files(plan, filing)
    # asked for by every page, and made here once while the files come on the other core
    homes_of(plan)
    parts = in_two([task.make for task in tasks_of(plan, left)])
    return put_together(plan, parts, filed())


def owners_files(plan: Plan, filing: Filing = filed_at_last) -> Callable[[], Mapping[str, bytes]]:
    """Return what waits for the files beside the owner's pages; another reader gets none."""
    return filing(owner_rows(plan)) if plan.reader == "owner" else dict


def put_together(plan: Plan, parts: Iterable[Part], owners: Mapping[str, bytes]) -> Book:
    """Return the book of a plan whose parts are made, in the order of their tasks.

    `owners` are files that stand beside the pages and belong to no part.
    """
    parts = list(parts)
    written = [entry for pages, _ in parts for entry in pages]
    # made last, from all pages before them; neither list looks through the other
    sources = sources_page(plan, written)
    written += [workings_page(plan, written), glossary_page(plan), sources]
    pages = tuple(entry.page for entry in written)
    files = {name: content for _, files in parts for name, content in files.items()}
    title, files = searchable(plan.title), {**files, **owners}
    return Book(title, plan.reader, plan.as_of, pages, files, plan.old_after)


def tasks_of(plan: Plan, left: Iterable[LeftFolder] = ()) -> list[Task]:
    """Return what makes the parts of a book, in the order of the navigation."""
    tasks = list(_tasks(plan, left))
    assert len({task.key for task in tasks}) == len(tasks)
    return tasks


def _tasks(plan: Plan, left: Iterable[LeftFolder]) -> Iterator[Task]:
    is_owner = plan.reader == "owner"

    def page(make: Callable[..., Written], *about: object) -> Task:
        return Task((make.__name__, *map(_named, about)), lambda: ([make(plan, *about)], {}))

    # first, since it has no page and takes long: at the end one process would wait for the other
    yield Task(("calendars",), lambda: ([], calendar_file(plan)))
    yield Task(("ground files",), lambda: ([], ground_files(plan)))
    yield from map(page, (week_page, emergency_page, safety_page))
    yield from _year(plan, page)
    yield from _places(plan, page)
    yield from _stands_and_walks(plan, page)
    if is_owner:
        yield from _money(plan, page)
        yield page(records_page)
    yield page(missed_page)
    yield from (page(record_form_page, job, place) for job, place in forms_of(plan))
    if is_owner:
        yield from (page(log_page, season) for season in log_seasons(plan))
    yield page(chapters_page)
    yield from map(_chapter, written_for(plan.reader))
    if is_owner:
        yield from _machines(plan, page)
        yield from (page(weeds_page), page(steps_page), page(readers_page, tuple(left)))
        yield from (page(reader_page, handed) for handed in plan.handed)
        yield page(granted_page)


def _named(thing: object) -> str:
    thing = thing.hole if isinstance(thing, Water) else thing
    if isinstance(thing, Handed):
        return thing.reader
    return str(getattr(thing, "id", thing if isinstance(thing, int) else ""))


def _chapter(chapter: Chapter) -> Task:
    return Task(("chapter", chapter.name), lambda: ([chapter_page(chapter)], {}))


def _year(plan: Plan, page: Callable[..., Task]) -> Iterator[Task]:
    is_owner = plan.reader == "owner"
    yield Task((can_do_page.__name__,), _made_of(can_do_page, plan))
    yield from [page(year_page)] if is_owner else []
    yield from (page(months_page), page(work_page))
    yield from (page(job_page, job) for job in plan.jobs)
    yield from (page(upkeep_page, job) for job in plan.upkeep)
    if plan.runs:
        yield page(runs_page)
        yield from (page(run_page, run) for run in plan.runs)
    yield from [page(tanks_page), page(dates_page), page(findings_page)] if is_owner else []
    yield from [page(others_out_page)] if plan.reader == PARTNER else []
    for make in (signs_page, count_on_page):
        yield Task((make.__name__,), _made_of(make, plan))
    if is_owner:
        yield page(ahead_page)
        yield from (page(season_page, season) for season in seasons_ahead(plan.season))


def _made_of(make: Callable[[Plan], list[Written]], plan: Plan) -> Callable[[], Part]:
    return lambda: (make(plan), {})


def _places(plan: Plan, page: Callable[..., Task]) -> Iterator[Task]:
    is_owner = plan.reader == "owner"
    yield from [page(places_page)] if is_owner else []
    yield from (page(place_page, place) for place in plan.places)
    if is_owner:
        yield from map(page, (land_page, counts_page, plant_when_page, ground_page))
        yield from (page(soil_test_page, test) for test in plan.land.soil_tests)
        yield from (page(water_page, water) for water in plan.water)


def _stands_and_walks(plan: Plan, page: Callable[..., Task]) -> Iterator[Task]:
    is_owner = plan.reader == "owner"
    yield from [page(stands_page)] if is_owner else []
    yield from (page(stand_page, stand) for stand in plan.land.stands)
    yield from [page(routes_page)] if is_owner else []
    yield from (page(route_page, route) for route in plan.land.routes)
    # a card of no stand would be an empty leaf
    yield from [page(wind_card_page)] if plan.land.stands else []
    if is_owner:
        yield page(hours_page)
        yield Task((wind_months_page.__name__,), _made_of(wind_months_page, plan))
    yield from [page(after_shot_page)] if is_owner or plan.reader == PARTNER else []
    yield from [page(sits_page)] if is_owner or plan.reader == PARTNER else []


def _money(plan: Plan, page: Callable[..., Task]) -> Iterator[Task]:
    yield from map(page, (buy_page, money_page, costs_page, costs_by_thing_page))
    yield from map(page, (hours_by_job_page, hours_by_month_page, hours_by_weekend_page))
    yield page(seed_page)
    yield from (page(lot_page, lot) for lot in plan.land.lots)
    yield from (page(row_stock_page, kept) for kept in (*plan.land.plants, *plan.land.guards))
    yield page(products_page)
    yield from (page(product_page, product) for product in plan.land.products)
    yield from (page(fertilizer_page, fertilizer) for fertilizer in plan.land.fertilizers)
    yield from (page(lime_page, lime) for lime in plan.land.limes)


def _machines(plan: Plan, page: Callable[..., Task]) -> Iterator[Task]:
    yield page(calibration_page)
    yield from (page(sprayer_page, sprayer) for sprayer in plan.land.sprayers)
    yield from (page(spreader_page, spreader) for spreader in plan.land.spreaders)
    yield from (page(drill_page, drill) for drill in plan.land.drills)
