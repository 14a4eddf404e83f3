"""A finished page, and the way every page is written from its template."""

import datetime
from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import partial
from itertools import pairwise
from typing import Any, NamedTuple

from markupsafe import Markup

from generator.book.content import search_words
from generator.book.homes import marks_of, unfold_what_is_at_home
from generator.book.marks import Marks, figure_identity, label, printed
from generator.book.model import Page, SearchRecord
from generator.book.render import render
from generator.book.text import inert, searchable
from generator.book.workings import with_workings
from generator.dataclass import dataclass
from generator.inventory.ground import SoilTest
from generator.inventory.schema import KeptUp
from generator.plan.model.buying import Purchase
from generator.plan.model.days import day_words
from generator.plan.model.items import StockItem
from generator.plan.model.job import Job, UpkeepJob
from generator.plan.model.place import Place
from generator.plan.model.plan import Plan
from generator.reference.steps import StepPlan
from generator.working import Measured, Quantity, Reference, flat_inputs

# The heads of the menu beside the first page, in their order there.
YEAR, PLACES, STANDS = "The year", "Places", "Stands and walks"
MONEY, RECORDS, HOW = "Buying and money", "Records", "How the work is done"
# The page that lists what has its pages in a folder.
LISTED_ON = {
    "work": "work.md",
    "places": "places.md",
    "ground": "ground.md",
    "stands": "stands.md",
    "routes": "routes.md",
    "seed": "seed.md",
    "products": "products.md",
    "records": "records.md",
    "runs": "runs.md",
    "seasons": "ahead.md",
    "chapters": "chapters.md",
    "readers": "readers.md",
    "equipment": "calibration.md",
}
# A place stands before other things that carry its name, a thing before the work that does, the
# year before what shares the name of a season, and what the book rests on behind all else.
BOOST = {
    "year.md": 1.2,
    **dict.fromkeys(("places", "stands", "routes"), 1.5),
    "work": 0.65,
    **dict.fromkeys(("glossary.md", "sources.md", "workings.md"), 0.0001),
}
# Folders of things and work that somebody calls by their names.
CALLED_BY_NAME = ("work", "places", "ground", "stands", "routes", "seed", "products", "equipment")
NO_WORDS = str.maketrans(dict.fromkeys(",:;()?!", " "))  # as the search box parts words
TITLE_LETTERS, FIRST_LETTERS = 59, 12  # of a title, and what is left of the work in one
_LISTED_FIRST = ("open", "waiting", "undated")
TITLE_ANCHOR = "this-page"
CALENDAR, CALENDAR_SPANS = "calendar.ics", "calendar-spans.ics"
BUDGET_CSV, BUY_CSV, BUDGET_XLSX = "budget.csv", "buy.csv", "budget.xlsx"
RECORDS_CSV = "records.csv"
GROUND_GEOJSON, GROUND_GPX, GROUND_KML = "ground.geojson", "ground.gpx", "ground.kml"


class NumberShown(NamedTuple):
    """A computed number of a page: its id, what it is of and called, as printed, its anchor."""

    identity: str
    subject: str
    label: str
    printed: str
    anchor: str


@dataclass(frozen=True, slots=True)
class Written:
    """A finished page with the numbers it shows and the sources it rests on."""

    page: Page
    numbers: tuple[NumberShown, ...]
    sources: frozenset[str]


def from_template(
    plan: Plan,
    address: str,
    title: str,
    group: str,
    template: str,
    found: Iterable[str] = (),
    tags: tuple[str, ...] = (),
    safety_keys: tuple[str, ...] = (),
    **context: Any,
) -> Written:
    marks = marks_of(plan, address)
    root = Markup("../" if "/" in address else "")
    body = render(f"{template}.md.jinja", marks, plan=plan, root=root, **context)
    unfold_what_is_at_home(plan, marks)
    return finished(address, title, group, body, marks, found, tags, safety_keys)


def finished(
    address: str,
    title: str,
    group: str,
    body: str,
    marks: Marks,
    found: Iterable[str],
    tags: tuple[str, ...] = (),
    safety_keys: tuple[str, ...] = (),
) -> Written:
    folder = address.rpartition("/")[0]
    named = shortened(title)
    record = SearchRecord(
        searchable(named),
        searchable(" ".join(found)),
        tuple(searchable(tag) for tag in tags),
        searchable(_words(address, title)),
        BOOST.get(folder or address, 1),
    )
    # An anchor made from the words of a title could be one that a number on the page has.
    heading = f"# {inert(title)} {{: #{TITLE_ANCHOR} }}\n\n"
    markdown = heading + with_workings(body, marks)
    listed_on = LISTED_ON.get(folder, address if address in LISTED_ON.values() else "")
    page = Page(address, inert(named), group, str(markdown), record, safety_keys, listed_on)
    return Written(page, tuple(_numbers(marks)), frozenset(_sources(marks)))


def shortened(title: str) -> str:
    """Return a title as menus, tabs and lists of hits have room for; the page prints all of it.

    Of work on a place the words of the work give way.

    >>> shortened("Take the old growth off: The strip along the lane to the far gate")
    'Take the old…: The strip along the lane to the far gate'
    """
    if len(title) <= TITLE_LETTERS:
        return title
    work, colon, where = title.rpartition(": ")
    kept = f"…{colon}{where}"
    if not colon or len(kept) > TITLE_LETTERS - FIRST_LETTERS:
        work, kept = title, "…"
    words = work[: TITLE_LETTERS - len(kept) + 1].rpartition(" ")[0].rstrip(" ,:")
    return f"{words or work[: TITLE_LETTERS - len(kept)]}{kept}"


def _words(address: str, title: str) -> str:
    """Return what finds a page before the titles of others do, each word once.

    What is typed finds all that begins with it: of words that begin alike the longest is enough.
    """
    folder = address.rpartition("/")[0]
    told = search_words().get(address, search_words().get(f"{folder}/", ""))
    named = title if folder in CALLED_BY_NAME else ""
    words = dict.fromkeys(f"{named} {told}".lower().translate(NO_WORDS).split())
    # in the order of letters a word comes right before those that begin with it
    begun = {one for one, after in pairwise(sorted(words)) if after.startswith(one)}
    return " ".join(word for word in words if word not in begun)


def _numbers(marks: Marks) -> Iterator[NumberShown]:
    for figure in marks.entries():
        if isinstance(figure, Quantity):
            anchor = marks.anchors[figure_identity(figure)]
            yield NumberShown(
                figure.identity, marks.subject(figure), label(figure), printed(figure), anchor
            )


def _sources(marks: Marks) -> Iterator[str]:
    yield from marks.cited
    for figure in marks.figures:
        shown = [figure]
        if isinstance(figure, Quantity):
            yield figure.formula.source
            shown = [number for _, number in flat_inputs(figure)]
        yield from (number.source for number in shown if isinstance(number, Measured | Reference))


def place_of(plan: Plan, job: Job) -> Place:
    """Return the place a job is done on.

    Where two of the owner's plantings there want the same step in one season, its name says which.
    """
    return plan.once(f"place of {job.id} of {job.planting_id}", partial(_place_of, job=job))


def _place_of(plan: Plan, job: Job) -> Place:
    place = plan.place(job.place_id)
    beside = (other for other in plan.jobs_on(job.place_id) if other.planting_id != job.planting_id)
    alike = any((other.step.name, other.season) == (job.step.name, job.season) for other in beside)
    if not alike or plan.reader != "owner" or place.typed is None:
        return place
    (planting,) = (each for each in place.typed.plantings if each.id == job.planting_id)
    return replace(place, name=f"{place.name} ({planting.season} planting)")


def address_of(thing: Any) -> Markup:
    """Return the file name of a thing's page: the id it had first, so a rename never moves it."""
    return Markup(thing.was[0] if thing.was else thing.id)


def soil_test_title(plan: Plan, test: SoilTest) -> str:
    """Return what a soil test is called: the places its cores are from, and their day."""
    names = [place.name for place in plan.places if place.id in test.places]
    return f"Soil test: {', '.join(names) or test.id}, {day_words(test.sampled_on)}"


def kept_and_bought(plan: Plan, kind: str, item_id: str) -> tuple[StockItem, Purchase | None]:
    """Return a thing that is kept, with what is bought of it where jobs still need it."""
    item = next(thing for thing in plan.items if (thing.kind, thing.id) == (kind, item_id))
    bought = (purchase for purchase in plan.buying.purchases if purchase.item.id == item.id)
    return item, next(bought, None)


Listed = tuple[Job | UpkeepJob, bool, Place | KeptUp]


def by_dates(listed: Iterable[Listed]) -> list[Listed]:
    """Return jobs of lists in the order in which they open."""
    last = datetime.date.max
    return sorted(
        listed, key=lambda row: (row[0].dates.opens or last, row[0].dates.closes or last, row[0].id)
    )


def everything_to_do(plan: Plan) -> list[Listed]:
    """Return every job, those of stands, walks and water holes among them, as they open.

    Of the season before, those that it still owes.
    """
    upkeep: list[Listed] = [
        (job, False, job.subject)
        for job in plan.upkeep
        if job.season == plan.season or job.state.is_ahead
    ]
    return by_dates([*jobs_with_places(plan, plan.jobs), *upkeep])


def next_jobs(plan: Plan) -> dict[str, Listed]:
    """Return the first job that is still ahead on each place, stand, walk and water hole."""
    return plan.once("next jobs", _next_jobs)


def _next_jobs(plan: Plan) -> dict[str, Listed]:
    first: dict[str, Listed] = {}
    ahead = [row for row in everything_to_do(plan) if row[0].state.kind in _LISTED_FIRST]
    # a sort that keeps order: in each state what opens first stays first
    for row in sorted(ahead, key=lambda listed: _LISTED_FIRST.index(listed[0].state.kind)):
        first.setdefault(row[2].id, row)
    return first


def plan_of_upkeep(plan: Plan, kept: KeptUp) -> StepPlan | None:
    """Return the step plan of every season of a stand, a walk or a water hole, for the owner."""
    if plan.reader != "owner":
        return None
    return next(
        (step_plan for step_plan in plan.land.step_plans if step_plan.id == kept.upkeep), None
    )


def upkeep_of(plan: Plan, subject_id: str) -> dict[int, list[UpkeepJob]]:
    """Return the jobs of a stand, a walk or a water hole by their season."""
    mine = plan.upkeep_of(subject_id)
    seasons = sorted({job.season for job in mine})
    return {season: [job for job in mine if job.season == season] for season in seasons}


def jobs_with_places(plan: Plan, jobs: Iterable[Job]) -> list[tuple[Job, bool, Place]]:
    """Return jobs as lists of them show them: each, whether it is stopped, and its place."""
    stopped = plan.stopped()
    return [(job, job.id in stopped, place_of(plan, job)) for job in jobs]
