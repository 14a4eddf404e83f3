"""What findings are about, in words and with the address of a page: every kind has its own."""

from collections.abc import Iterable, Iterator
from typing import Any

from markupsafe import Markup

from generator.book.pages.dates import DATE_KINDS
from generator.book.pages.log import log_address
from generator.book.pages.written import address_of, place_of, soil_test_title
from generator.inventory.people import Applicator, Helper
from generator.plan.model.days import day_words
from generator.plan.model.finding import Finding, Subject, SubjectKind
from generator.plan.model.plan import Plan
from generator.reference.library import law_subjects, marker_names

SubjectNamed = tuple[str, Markup]
_Listed = Iterator[tuple[SubjectKind, str, SubjectNamed]]

SEEN_BY_READERS = "What each reader sees"
_AFTER = Markup("after-the-shot.html")
_SITS = Markup("sits.html")
_LAND = Markup("land.html")
_BUY, _MONEY, _DATES = Markup("buy.html"), Markup("money.html"), Markup("dates.html")
_SIGNS, _READERS = Markup("signs.html"), Markup("readers.html")
_CALIBRATION, _NOWHERE = Markup("calibration.html"), Markup("")


class Subjects:
    """What findings of a plan can be about, looked up once for all that is told of it."""

    def __init__(self, plan: Plan) -> None:
        listed = (
            *_work(plan),
            *_ground(plan),
            *_entries(plan),
            *_kept(plan),
            *_people_and_papers(plan),
            *_sits(plan),
        )
        self._known = {(kind, subject_id): named for kind, subject_id, named in listed}
        self._work = {job.id: (job.step.name, place_of(plan, job).name) for job in plan.jobs}
        self._work |= {job.id: (job.step.name, job.subject.name) for job in plan.upkeep}
        self._bought = {bought.item.id for bought in plan.buying.purchases}
        self._bought |= {late.item.id for late in plan.buying.too_late}

    def work_on(self, subject: Subject) -> tuple[str, str] | None:
        """Return a job's step and the thing it is done on, None for what is no job."""
        return self._work.get(subject.id) if subject.kind in ("job", "upkeep") else None

    def is_told(self, finding: Finding) -> bool:
        """Return whether all that a finding says stands on the page of what it is about."""
        subject = finding.subject
        # what is bought has its findings there, a product its page
        if self.named(subject)[1] == _BUY:
            return subject.id in self._bought
        return bool(self.named(subject)[1])

    def named(self, subject: Subject) -> SubjectNamed:
        """Return what a finding is about in words, with the address of its page or nothing.

        Raises KeyError for a thing that the plan does not hold.
        """
        match subject.kind:
            case "folder":
                return "The property folder", _NOWHERE
            case "sits":
                return "Who hunts where", _SITS
            case "readers":
                return SEEN_BY_READERS, _READERS
            case "hours":
                return "Free hours", _MONEY
            # an entry that does not count yet stands on no page, and is told of all the same
            case "entry":
                return self._known.get(("entry", subject.id), ("An entry of a later day", _NOWHERE))
            case _:
                return self._known[subject.kind, subject.id]


def _work(plan: Plan) -> _Listed:
    for job in plan.jobs:
        title = f"{job.step.name}: {place_of(plan, job).name}"
        yield "job", job.id, (title, Markup("work/{}.html").format(job.address))
    for sheet in plan.upkeep:
        title = f"{sheet.step.name}: {sheet.subject.name}"
        yield "upkeep", sheet.id, (title, Markup("work/{}.html").format(sheet.address))


def _ground(plan: Plan) -> _Listed:
    for place in plan.places:
        yield "place", place.id, (place.name, Markup("places/{}.html").format(place.address))
    yield from _each("water_hole", (water.hole for water in plan.water), "ground")
    yield from _each("stand", plan.land.stands, "stands")
    yield from _each("route", plan.land.routes, "routes")
    for thing in plan.land.things:
        yield "land", thing.id, (thing.name, Markup("{}#thing-{}").format(_LAND, thing.id))
    for test in plan.land.soil_tests:
        page = Markup("ground/{}.html").format(address_of(test))
        yield "soil_test", test.id, (soil_test_title(plan, test), page)
    for name in marker_names():
        yield "marker", name, ("Season markers", _SIGNS if plan.weather is not None else _NOWHERE)
    for seen in plan.weather.every_station() if plan.weather is not None else ():
        yield "station", seen.station.id, (seen.station.name, _SIGNS)


def _sits(plan: Plan) -> _Listed:
    for sit in plan.sits:
        page = Markup("{}#sit-{}").format(_SITS, sit.id)
        yield "sit", sit.id, (f"Sit at {sit.stand.name}, {day_words(sit.day)}", page)


def _entries(plan: Plan) -> _Listed:
    for entry in plan.entries if plan.reader == "owner" else ():
        page = Markup("{}.html#entry-{}").format(log_address(entry), entry.id)
        yield "entry", entry.id, (f"Log of {day_words(entry.done_on)}", page)


def _kept(plan: Plan) -> _Listed:
    products = {product.id: product for product in plan.land.products}
    for item in plan.items:
        product = products.get(item.id)
        page = Markup("products/{}.html").format(address_of(product)) if product else _BUY
        yield "item", item.id, (item.words, page)
    yield from _each("sprayer", plan.land.sprayers, "equipment")
    yield from _each("spreader", plan.land.spreaders, "equipment")
    yield from _each("drill", plan.land.drills, "equipment")
    yield from (("measure", kept.id, (kept.name, _CALIBRATION)) for kept in plan.land.measures)
    yield from (("machine", kept.id, (kept.name, _MONEY)) for kept in plan.land.machines)
    yield from (("hire", hire.id, (hire.name or "Hired work", _MONEY)) for hire in plan.land.hires)
    yield from (("cost_share", share.id, (share.name, _MONEY)) for share in plan.land.cost_share)


def _people_and_papers(plan: Plan) -> _Listed:
    land = plan.land
    for dates in land.dates:
        words = f"{DATE_KINDS[dates.kind]} dates from {day_words(dates.first)}"
        yield "dates", dates.id, (words, _DATES)
    for hours in land.shooting_hours:
        yield "shooting_hours", hours.id, ("Shooting hours", _DATES)
    for entry in land.looked_up:
        yield "looked_up", entry.id, (law_subjects()[entry.subject].name, _AFTER)
    people: tuple[Applicator | Helper, ...] = (*land.applicators, *land.helpers)
    for person in people:
        yield "person", person.id, (person.name or person.id, _DATES)
    for contractor in land.contractors:
        yield (
            "contractor",
            contractor.id,
            (f"Contractor: {contractor.name}" if contractor.name else "A contractor", _DATES),
        )
    for permit in land.permits:
        yield "permit", permit.id, (permit.name or "A permit", _DATES)
    for contract in land.contracts:
        yield "contract", contract.id, (contract.name, _DATES)
    for call in land.one_calls:
        yield "one_call", call.id, ("Request to mark buried lines", _DATES)
    for handed in plan.handed:
        yield "reader", handed.reader, (handed.name or handed.reader, _READERS)


def _each(kind: SubjectKind, things: Iterable[Any], folder: str) -> _Listed:
    for thing in things:
        page = Markup("{}/{}.html").format(folder, address_of(thing))
        yield kind, thing.id, (thing.name, page)
