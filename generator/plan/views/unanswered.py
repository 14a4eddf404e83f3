"""What the book cannot say, since the owner has not typed what it would rest on."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import fields
from enum import Enum
from functools import partial

from generator.dataclass import dataclass
from generator.inventory.fields import NOT_ON_LABEL
from generator.inventory.label import Use
from generator.inventory.places import Hazards, hidden_by
from generator.inventory.schema import PARTNER, Inventory
from generator.inventory.stock import Product
from generator.plan.days.day_findings import NESTS
from generator.plan.jobs.request import JobRequest
from generator.plan.jobs.slope import slope_of
from generator.plan.labels.distances import listed_setbacks
from generator.plan.land.kept_things import drawn_kinds, not_told
from generator.plan.model.finding import Unanswered
from generator.plan.model.job import JobState
from generator.plan.standing.burning import shears_standing
from generator.working import Given


@dataclass(frozen=True, slots=True)
class QuestionWords:
    """A question in words with what is not known, what to do, and what to type for it."""

    asks: str
    cure: str
    to_type: str = ""


class Question(Enum):
    """A rule that cannot be judged without something the owner has not typed."""

    HUNTED = QuestionWords(
        "Do others hunt here on the days of a job? No hunting or turkey dates are noted.",
        "Look the seasons up for this year.",
        "Type them in dates.yaml, with source and day.",
    )
    NESTS = QuestionWords(
        "Do hens sit or fawns lie where you mow, burn or spray? No nesting or fawning dates are "
        "noted.",
        "Ask your state's wildlife agency, and your program where the ground is under contract.",
        "Type the dates in dates.yaml.",
    )
    BANNED = QuestionWords(
        "Is burning banned? No burn ban is noted.",
        "Look it up on the morning of the burn.",
        "A ban that is announced goes into dates.yaml.",
    )
    CONTRACT = QuestionWords(
        "Does a contract on the ground allow the work? Whether it is under contract is not noted.",
        "Say of the place whether it is under a contract.",
        "Type contract: none, or its id, with the place in screens.yaml or strips.yaml.",
    )
    STEEP = QuestionWords(
        "Is the ground too steep for what a label allows, or for your machines? Its slope is not "
        "noted.",
        "Measure the steepest part with a level or a phone.",
        "Type slope_pct under near: of the place.",
    )
    NEAR = QuestionWords(
        "What can be hurt or hurt you near the work? Lines about it are blank.",
        "Walk the place and fill them in. Until then they stand as blanks on every sheet.",
        "Type them under near: of the place.",
    )
    SOIL = QuestionWords(
        "Is the soil one that a label leaves out? The book knows no soils.",
        "Read the label's words on the sheet, and look up your soil on the soil survey map.",
    )
    SET_BACK = QuestionWords(
        "How much ground lies nearer to water, wells or neighbors than a label lets you spray? "
        "Where nothing says how far they lie, buffers are not subtracted.",
        "Measure and flag the distances on the sheet, and mix less by what is left out.",
        "Type distances: under near: of the place. Or give place and things points, and name kinds "
        "that are all in land.yaml, or of which there are none, as all_drawn: in property.yaml.",
    )
    REGROWTH = QuestionWords(
        "Does what is burned or mown hide the walk again by opening day? How fast it grows back is "
        "not worked out.",
        "Count on no cover there this fall until you have measured its height in August and "
        "logged it.",
    )
    INSURED = QuestionWords(
        "Is the contractor to whom you hand jobs insured? Nothing says who of your contractors "
        "that is.",
        "Ask for proof of insurance.",
        "Type the contractor in people.yaml with reader:, insured: and insured_until.",
    )
    HOURS = QuestionWords(
        "Does the work fit your free hours? Nobody's hours are noted.",
        "Write down who helps, yourself among them, and when you are free.",
        "Type helpers with their free hours in people.yaml.",
    )


def unanswered(
    requests: tuple[JobRequest, ...], states: Mapping[str, JobState], inventory: Inventory
) -> tuple[Unanswered, ...]:
    """Return what cannot be judged for the jobs still to come, each with the places it is about."""
    ahead = tuple(request for request in requests if states[request.job_id].is_ahead)
    found = []
    for question, judge in _judged(drawn_kinds(inventory)).items():
        places = tuple(
            dict.fromkeys(request.ground.id for request in ahead if judge(request, inventory))
        )
        if places:
            asks = question.value
            found.append(Unanswered(asks.asks, asks.cure, asks.to_type, places))
    return tuple(found)


def _no_dates(inventory: Inventory, *kinds: str) -> bool:
    return not any(record.kind in kinds for record in inventory.dates)


def _hunted(_: JobRequest, inventory: Inventory) -> bool:
    return _no_dates(inventory, "hunting", "turkey")


def _nests(request: JobRequest, inventory: Inventory) -> bool:
    return request.step.does.disturbs_nests and _no_dates(inventory, *NESTS)


def _banned(request: JobRequest, inventory: Inventory) -> bool:
    return request.step.does.uses_fire and _no_dates(inventory, "burn_ban")


def _contract(request: JobRequest, _: Inventory) -> bool:
    return request.ground.contract is None


def _steep(request: JobRequest, inventory: Inventory) -> bool:
    if slope_of(request) is not None:
        return False
    # any use of that time: which one it will be may still change
    if any(isinstance(use.slope_limit_pct, Given) for use in _uses(request, inventory.products)):
        return True
    limited = inventory.property.slope_limit_pct is not None
    does = request.step.does
    return limited and (does.by_machine or does.sprays)


def _near(request: JobRequest, _: Inventory) -> bool:
    near = request.ground.near
    typed = (
        each.name
        for each in fields(Hazards)
        # the slope has a question of its own, and the way it falls stands on no sheet
        if each.name not in ("where", "field_marks", "slope_pct", "falls_to")
    )
    return near is None or any(getattr(near, name) is None for name in typed)


def _soil(request: JobRequest, inventory: Inventory) -> bool:
    return any(
        use.soil_limits not in (None, NOT_ON_LABEL) for use in _uses(request, inventory.products)
    )


def _set_back(request: JobRequest, inventory: Inventory, drawn: frozenset[str]) -> bool:
    kept = [
        setback
        for use in _uses(request, inventory.products)
        for setback in listed_setbacks(use.setbacks_ft)
    ]
    return bool(not_told(request.ground, kept, drawn))


def _regrowth(request: JobRequest, _: Inventory) -> bool:
    return shears_standing(request) and bool(hidden_by(request.ground))


def _insured(request: JobRequest, inventory: Inventory) -> bool:
    known = {contractor.reader for contractor in inventory.contractors}
    return any(
        reader.kind != PARTNER
        and reader.id not in known
        and reader.has(request.planting.id, request.step.id)
        for reader in inventory.readers
    )


def _hours(request: JobRequest, inventory: Inventory) -> bool:
    return not inventory.helpers and request.work is not None and request.work.machine is not None


def _uses(request: JobRequest, products: tuple[Product, ...]) -> Iterator[Use]:
    """Yield the uses on the cards of what a job means to spray."""
    if request.work is None or not request.step.does.sprays:
        return
    chosen = {request.work.product, *(each.product for each in request.work.partners)}
    for product in products:
        if product.id in chosen and product.label is not None:
            yield from (use for use in product.label.uses if use.timing == request.step.timing)


def _judged(drawn: frozenset[str]) -> Mapping[Question, Callable[[JobRequest, Inventory], bool]]:
    """Return what judges each question; `drawn` are the kinds of things that are drawn."""
    return {
        Question.HUNTED: _hunted,
        Question.NESTS: _nests,
        Question.BANNED: _banned,
        Question.CONTRACT: _contract,
        Question.STEEP: _steep,
        Question.NEAR: _near,
        Question.SOIL: _soil,
        Question.SET_BACK: partial(_set_back, drawn=drawn),
        Question.REGROWTH: _regrowth,
        Question.INSURED: _insured,
        Question.HOURS: _hours,
    }
