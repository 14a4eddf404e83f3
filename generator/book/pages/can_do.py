"""The page that says what can be done on a day as it is: every job to come with what it asks."""

from collections.abc import Iterable

from generator.book.pages.lines import in_groups
from generator.book.pages.week import in_attribute
from generator.book.pages.written import YEAR, Listed, Written, everything_to_do, from_template
from generator.dataclass import dataclass
from generator.plan.model.plan import Plan
from generator.plan.views.day_asks import GROUND_STATES, DayAsks, day_asks
from generator.reference.suited import Suits
from generator.units import shown

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
    """One job with what it asks; `load` numbers the mix it shares, `limits` are what is compared.

    Limits are numbers as the script reads them, by what of a day they are held against.
    """

    asks: DayAsks
    listed: Listed
    load: int | None
    limits: dict[str, str]


def can_do_page(plan: Plan) -> list[Written]:
    """Return the page, or none for a reader who has no job to come."""
    jobs = _jobs(plan)
    if not jobs:
        return []
    return [
        from_template(
            plan,
            "can-do.md",
            _TITLE,
            YEAR,
            "can_do",
            ["today", "Saturday", "rain", "wind", *dict.fromkeys(_names(jobs))],
            groups=list(_groups(jobs).items()),
            told=_told(jobs),
            walks={walk.id: walk.name for walk in plan.land.routes},
            ground_states=GROUND_STATES,
            helpers_picked=HELPERS_PICKED,
            dry_picked=[(hours, shown(hours, "hours")) for hours in DRY_PICKED_HOURS],
            days=in_attribute,
        )
    ]


def _jobs(plan: Plan) -> list[JobOfADay]:
    listed = {row[0].id: row for row in everything_to_do(plan)}
    asked = [asks for asks in day_asks(plan) if asks.job.id in listed]
    loads = in_groups((asks for asks in asked if asks.load), lambda asks: asks.load)
    shared = [load for load, jobs in loads.items() if len(jobs) > 1]
    return [
        JobOfADay(
            asks,
            listed[asks.job.id],
            shared.index(asks.load) if asks.load in shared else None,
            _limits(asks),
        )
        for asks in asked
    ]


def _limits(asks: DayAsks) -> dict[str, str]:
    """Return what a job asks as the script compares it, each number with all its decimals."""
    wind = asks.wind
    numbers = {
        HOURS: [asks.hours.value] if asks.hours is not None else [],
        WIND: [wind.low.value, wind.high.value] if wind is not None else [],
        WARM: [asks.warm.value] if asks.warm is not None else [],
        NIGHT: [asks.night.value] if asks.night is not None else [],
        FROST: [asks.frost.value] if asks.frost is not None else [],
        RAIN: [asks.dry_hours] if asks.dry_hours is not None else [],
    }
    found = {name: " ".join(map(repr, them)) for name, them in numbers.items() if them}
    if asks.ground:
        found[GROUND] = " ".join(asks.ground)
    if asks.not_alone is not None:
        found[HELPERS] = "1"
    return found


def _told(jobs: Iterable[JobOfADay]) -> frozenset[str]:
    """Return what of a day any job asks: nothing else needs to be said of it."""
    return frozenset(name for job in jobs for name in job.limits)


def _groups(jobs: Iterable[JobOfADay]) -> dict[Suits | None, list[JobOfADay]]:
    """Return jobs by what their kind of work asks of a day; those that any day suits last."""
    groups = in_groups(jobs, lambda job: job.asks.suits)
    return {**{suits: groups[suits] for suits in groups if suits is not None}, **_any_day(groups)}


def _any_day(groups: dict[Suits | None, list[JobOfADay]]) -> dict[Suits | None, list[JobOfADay]]:
    return {None: groups[None]} if None in groups else {}


def _names(jobs: Iterable[JobOfADay]) -> Iterable[str]:
    return (job.asks.job.step.name for job in jobs)
