"""A book from a plan: every page, in navigation order, from what one reader may see."""

from collections.abc import Iterable

from generator.book.calendar_file import calendar_file
from generator.book.content import written_for
from generator.book.exports import owner_files
from generator.book.model import Book, LeftFolder
from generator.book.pages.ahead import ahead_page
from generator.book.pages.back import glossary_page, readers_page, sources_page, workings_page
from generator.book.pages.calendar import now_page, year_page
from generator.book.pages.count_on import count_on_page
from generator.book.pages.counts import counts_page, plant_when_page, weeds_page
from generator.book.pages.dates import dates_page, others_out_page
from generator.book.pages.front import chapter_page, emergency_page, findings_page, safety_page
from generator.book.pages.ground import place_page, route_page, stand_page
from generator.book.pages.hours import hours_page
from generator.book.pages.lists import (
    calibration_page,
    chapters_page,
    places_page,
    routes_page,
    stands_page,
)
from generator.book.pages.log import log_pages
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
from generator.book.pages.work import home_page, job_page, upkeep_page, work_page
from generator.book.pages.written import Written
from generator.book.text import searchable
from generator.inventory.schema import PARTNER
from generator.plan.model.plan import Plan


def make_book(plan: Plan, left: Iterable[LeftFolder] = ()) -> Book:
    """Return the book of one reader: pages as Markdown with their search records.

    `left` are folders of readers who are gone, which the owner's book names.
    """
    is_owner = plan.reader == "owner"
    written: list[Written] = [home_page(plan), emergency_page(plan), safety_page(plan)]
    written.append(now_page(plan))
    if is_owner:
        written += [year_page(plan), ahead_page(plan), findings_page(plan)]
        written += [buy_page(plan), money_page(plan), dates_page(plan), hours_page(plan)]
        written += [counts_page(plan), plant_when_page(plan)]
        written += [records_page(plan), *log_pages(plan)]
    if plan.reader == PARTNER:
        written.append(others_out_page(plan))
    written += [
        work_page(plan),
        *signs_page(plan),
        *count_on_page(plan),
        *(job_page(plan, job) for job in plan.jobs),
    ]
    written += [record_form_page(plan, job, place) for job, place in forms_of(plan)]
    written += [places_page(plan)] if is_owner else []
    written += [place_page(plan, place) for place in plan.places]
    written += _stands_and_walks(plan)
    written += _owner_pages(plan) if is_owner else []
    written += [
        chapters_page(plan),
        *(chapter_page(chapter) for chapter in written_for(plan.reader)),
    ]
    if is_owner:
        written += [weeds_page(plan), readers_page(plan, left), steps_page(plan)]
    # made last, from all pages before them; neither list looks through the other
    sources = sources_page(plan, written)
    written += [workings_page(plan, written), glossary_page(plan), sources]
    pages = tuple(entry.page for entry in written)
    files = {**(owner_files(plan) if is_owner else {}), **calendar_file(plan)}
    return Book(searchable(plan.title), plan.reader, plan.as_of, pages, files)


def _stands_and_walks(plan: Plan) -> list[Written]:
    is_owner = plan.reader == "owner"
    return [
        *([stands_page(plan)] if is_owner else []),
        *(stand_page(plan, stand) for stand in plan.land.stands),
        *([routes_page(plan)] if is_owner else []),
        *(route_page(plan, route) for route in plan.land.routes),
        *(upkeep_page(plan, job) for job in plan.upkeep),
    ]


def _owner_pages(plan: Plan) -> list[Written]:
    return [
        *(lot_page(plan, lot) for lot in plan.land.lots),
        *(row_stock_page(plan, plant) for plant in plan.land.plants),
        *(row_stock_page(plan, guard) for guard in plan.land.guards),
        *(soil_test_page(plan, test) for test in plan.land.soil_tests),
        *(water_page(plan, water) for water in plan.water),
        *(product_page(plan, product) for product in plan.land.products),
        *(fertilizer_page(plan, fertilizer) for fertilizer in plan.land.fertilizers),
        *(lime_page(plan, lime) for lime in plan.land.limes),
        calibration_page(plan),
        *(sprayer_page(plan, sprayer) for sprayer in plan.land.sprayers),
        *(spreader_page(plan, spreader) for spreader in plan.land.spreaders),
        *(drill_page(plan, drill) for drill in plan.land.drills),
    ]
