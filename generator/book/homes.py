"""Where each number of a plan unfolds: on one page, of its job, place, season or kind."""

from collections.abc import Callable, Mapping

from generator.book.marks import Home, Marks
from generator.book.money_views import view_numbers
from generator.book.number_subjects import subjects_of
from generator.dataclass import dataclass
from generator.plan.model.plan import Plan
from generator.plan.views.numbers import numbers_of
from generator.plan.views.years_ahead import seasons_ahead
from generator.working import Quantity

# The page of numbers that are of no one place: by how their ids begin, the season left out.
_LISTS = {
    "buy": "buy",
    "money": "money",
    "money/month": "hours-by-month",
    "money/work_hours": "hours-by-job",
    "machine": "hours-by-job",
    "hours": "hours-by-month",
    "weekends": "hours-by-weekend",
    "budget/season": "costs",
    "budget/item": "costs-by-thing",
}


@dataclass(frozen=True, slots=True)
class Homes:
    """The homes of numbers by their ids, and the numbers that unfold on a page by its address."""

    of_number: Mapping[str, Home]
    on_page: Mapping[str, tuple[Quantity, ...]]


def homes_of(plan: Plan) -> Homes:
    """Return the homes of an owner's numbers; on other readers' few pages each unfolds in place."""
    return plan.once("homes", _homes)


def marks_of(plan: Plan, address: str) -> Marks:
    """Return the marks of a page that is begun."""
    is_sheet = address.startswith("work/")
    page = address.removesuffix(".md")
    return Marks(page, homes_of(plan).of_number, subjects_of(plan), is_whole=is_sheet)


def unfold_what_is_at_home(plan: Plan, marks: Marks) -> None:
    """Have every number that is at home on a page unfold there, also where none shows it."""
    # what a sheet shows it holds to the last number; what others ask of it need not be as whole
    marks.entries()
    marks.is_whole = False
    for number in homes_of(plan).on_page.get(marks.page, ()):
        marks.anchor(number)


def _homes(plan: Plan) -> Homes:
    if plan.reader != "owner":
        return Homes({}, {})
    costs = [line.cost for line in plan.lines]
    page_of = _page_of(plan)
    numbers = numbers_of(plan, [*view_numbers(plan), *costs])
    found: dict[str, Home] = {}
    on_page: dict[str, list[Quantity]] = {}
    taken: set[Home] = set()
    for identity, number in numbers.items():
        page, rest = page_of(identity.split("/"))
        home = Home(page, "w-" + "-".join(rest).replace(".", "-"))
        # of two whose names differ in signs alone the second unfolds wherever it is shown
        if page and home not in taken:
            taken.add(home)
            found[identity] = home
            on_page.setdefault(page, []).append(number)
    return Homes(found, {page: tuple(numbers) for page, numbers in on_page.items()})


def _page_of(plan: Plan) -> Callable[[list[str]], tuple[str, list[str]]]:
    """Return what gives the page of a number, none as "", and the rest of its name."""
    sheets = {job.id: f"work/{job.address}" for job in plan.jobs}
    runs = {run.id: f"runs/{run.address}" for run in plan.runs}
    places = {place.id: f"places/{place.address}" for place in plan.places}
    plantings = {
        planting.id: f"places/{place.address}"
        for place in plan.places
        if place.typed is not None
        for planting in place.typed.plantings
    }

    ahead = seasons_ahead(plan.season)

    def page_of(parts: list[str]) -> tuple[str, list[str]]:
        if run := runs.get("/".join(parts[:4])):
            return run, parts[4:]
        if sheet := sheets.get("/".join(parts[:3])):
            return sheet, parts[3:]
        if parts[0] == "height":
            return plantings.get(parts[1], ""), parts
        if parts[0] == "budget" and parts[2] in ("planting", "place"):
            return (plantings if parts[2] == "planting" else places).get(parts[3], ""), parts
        if parts[0] in ("acres", "ahead"):
            return (f"seasons/{parts[2]}" if int(parts[2]) in ahead else "places"), parts
        if page := _LISTS.get("/".join((parts[0], *parts[2:3])), _LISTS.get(parts[0])):
            return page, parts
        return places.get(parts[0], ""), parts[1:]

    return page_of
