"""The page that says what can be done on a day as it is: every job to come with what it asks."""

import datetime
from collections.abc import Hashable, Iterable, Mapping

from generator.book.content import head_words
from generator.book.pages.lines import NamedPage, in_groups, sheet_of
from generator.book.pages.week import in_attribute
from generator.book.pages.written import YEAR, Written, everything_to_do, from_template
from generator.dataclass import dataclass
from generator.inventory.stock import Product
from generator.plan.model.job import Job, UpkeepJob
from generator.plan.model.plan import Plan
from generator.plan.model.sits import hours_words
from generator.plan.views.day_asks import GROUND_STATES, DayAsks, day_asks
from generator.reference.suited import Suits

_TITLE = "What can I do today?"
# What a day is told by, as the script and the boxes of the page call it.
HOURS, HELPERS, WIND, WARM, NIGHT, FROST, GROUND, RAIN = (
    "hours", "helpers", "wind", "warm", "night", "frost", "ground", "rain",
)  # fmt: skip
# So many helpers and hours without rain can be picked.
HELPERS_PICKED = (0, 1, 2, 3, 4)
DRY_PICKED_HOURS = (48, 36, 24, 12, 8, 6, 4, 2, 0)


@dataclass(frozen=True, slots=True)
class JobOfADay:
    """One job in its row: `limits` are those of its own, `load` numbers the mix it shares.

    `away` are hours of its days in which somebody hunts where it is done.
    """

    asks: DayAsks
    named: NamedPage
    limits: Mapping[str, str]
    load: int | None
    walks: str
    away: tuple[tuple[datetime.date, str], ...]


@dataclass(frozen=True, slots=True)
class RowOfADay:
    """Jobs of one step on the same days that ask for the same, told by what one of them asks.

    Limits are numbers as the script reads them, by what of a day they are held against.
    """

    asks: DayAsks
    jobs: tuple[JobOfADay, ...]
    limits: Mapping[str, str]


def can_do_page(plan: Plan) -> list[Written]:
    """Return the page, or none for a reader who has no job to come."""
    asked = day_asks(plan)
    if not asked:
        return []
    rows = _rows(plan, asked)
    return [
        from_template(
            plan,
            "can-do.md",
            _TITLE,
            YEAR,
            "can_do",
            [
                "today",
                "Saturday",
                "rain",
                "wind",
                *dict.fromkeys(one.job.step.name for one in asked),
            ],
            groups=list(_groups(rows).items()),
            told=frozenset(name for asks in asked for name in _limits(asks)),
            products=_products(asked),
            walks=[walk.name for walk in plan.land.routes],
            ground_states=GROUND_STATES,
            helpers_picked=HELPERS_PICKED,
            dry_picked=DRY_PICKED_HOURS,
            days=in_attribute,
        )
    ]


def _rows(plan: Plan, asked: Iterable[DayAsks]) -> list[RowOfADay]:
    """Return jobs in rows, those of one step that ask for the same on the same days together."""
    listed = {row[0].id: row for row in everything_to_do(plan)}
    numbered = {walk.id: str(number) for number, walk in enumerate(plan.land.routes)}
    loads = in_groups((asks for asks in asked if asks.load), lambda asks: asks.load)
    shared = [load for load, jobs in loads.items() if len(jobs) > 1]
    return [
        RowOfADay(
            same[0],
            tuple(
                JobOfADay(
                    asks,
                    sheet_of(listed[asks.job.id]),
                    {name: limit for name, limit in _limits(asks).items() if _is_own(name, asks)},
                    shared.index(asks.load) if asks.load in shared else None,
                    " ".join(numbered[walk] for walk in asks.walks),
                    _away(plan, asks.job),
                )
                for asks in same
            ),
            _of_row(same[0]),
        )
        for same in in_groups(asked, _alike).values()
    ]


def _away(plan: Plan, job: Job | UpkeepJob) -> tuple[tuple[datetime.date, str], ...]:
    """Return the hours of days of a job in which nobody but who hunts there goes to its ground."""
    thing_id = job.place_id if isinstance(job, Job) else job.subject.id
    return tuple(
        (keep.day, hours_words(keep.hours))
        for keep in plan.away_on(thing_id)
        if any(first <= keep.day <= last for first, last in job.usable)
    )


def _is_own(name: str, asks: DayAsks) -> bool:
    """Return whether a limit is of one job and not of its row: what rests on its hours."""
    return name in (HOURS, RAIN) and asks.hours is not None


def _of_row(asks: DayAsks) -> dict[str, str]:
    return {name: limit for name, limit in _limits(asks).items() if not _is_own(name, asks)}


def _alike(asks: DayAsks) -> tuple[Hashable, ...]:
    """Return what jobs share that stand in one row: all that is said there of what they ask."""
    stops = (asks.stop, asks.stop_on_it)
    return (
        asks.suits.id if asks.suits is not None else None,
        asks.job.step.name,
        asks.job.usable,
        asks.job.state.question,
        tuple(head_words(stop) if stop is not None else None for stop in stops),
        (asks.nothing_cleared, asks.kept_out, asks.uses_fire, asks.not_alone),
        asks.takes,
        asks.dry_after.value if asks.dry_after is not None else None,
        tuple(_of_row(asks).items()),
    )


def _limits(asks: DayAsks) -> dict[str, str]:
    """Return what a job asks as the script compares it."""
    wind = asks.wind
    numbers = {
        HOURS: [asks.hours.value] if asks.hours is not None else [],
        WIND: [wind.low.value, wind.high.value] if wind is not None else [],
        WARM: [asks.warm.value] if asks.warm is not None else [],
        NIGHT: [asks.night.value] if asks.night is not None else [],
        FROST: [asks.frost.value] if asks.frost is not None else [],
        RAIN: [asks.dry_hours] if asks.dry_hours is not None else [],
    }
    # what is rounded off is too little to be picked
    found = {name: " ".join(f"{one:.6g}" for one in them) for name, them in numbers.items() if them}
    if asks.ground:
        found[GROUND] = " ".join(asks.ground)
    if asks.not_alone is not None:
        found[HELPERS] = "1"
    return found


def _products(asked: Iterable[DayAsks]) -> list[Product]:
    """Return every product that the page names, each once."""
    mixes = (one.job.mix for one in asked if isinstance(one.job, Job) and one.job.mix is not None)
    return list({part.product.id: part.product for mix in mixes for part in mix.parts}.values())


def _groups(rows: Iterable[RowOfADay]) -> dict[Suits | None, list[RowOfADay]]:
    """Return rows by what their kind of work asks of a day; those that any day suits last."""
    groups = in_groups(rows, lambda row: row.asks.suits)
    return dict(sorted(groups.items(), key=lambda group: group[0] is None))
