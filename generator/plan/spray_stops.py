"""Why a product may not go onto a place yet: what its card says against the job."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from generator.inventory.fields import Where
from generator.inventory.label import Bulletin, LabelCard, Use, YearlyLimit
from generator.inventory.places import Partner, Screen, Work
from generator.inventory.schema import Inventory
from generator.inventory.stock import Product
from generator.plan.asked import JobAsked
from generator.plan.clearance import Asked, missing_on_card, missing_on_use
from generator.plan.day_words import day_words
from generator.plan.findings import finding
from generator.plan.licences import may_be_restricted
from generator.plan.model import Finding, OpenDates
from generator.plan.rates import ROUNDING, JobRate, as_active, counted_basis
from generator.plan.reasons import Stop
from generator.plan.years import (
    PlannedSpray,
    amount_at_one_time,
    amount_in_a_year,
    not_said_by_the_log,
    times_in_a_year,
)
from generator.reference.load import planting_kinds, species
from generator.working import KEPT_WHILE_STOPPED, Figure, Given, Input, Quantity, Withheld

MONTHS_BULLETIN_IS_GOOD = 6
LAST_OF_YEAR = (12, 31)
NO_CONTRACT = "none"


@dataclass(frozen=True, slots=True)
class Chosen:
    """A product chosen for a job: how its rate was typed, and how its numbers' ids begin."""

    prefix: str
    typed: Work | Partner
    product: Product

    @property
    def where(self) -> Where:
        """Where the choice was typed."""
        return self.typed.where


def asked_of_label(asked: JobAsked) -> Asked:
    """Return what the job asks of a label."""
    assert asked.work is not None
    return Asked(
        asked.kind,
        asked.species,
        asked.screen.id,
        land_of(asked.screen),
        asked.step.timing,
        asked.work.method or "broadcast",
    )


def land_of(screen: Screen) -> str | None:
    """Return contract or not_contract, None where the owner has not said."""
    if screen.contract is None:
        return None
    return "not_contract" if screen.contract.strip().casefold() == NO_CONTRACT else "contract"


def no_use(stop: Stop, asked: JobAsked, product: Product) -> Finding:
    """Return the stop of a card without a matching use, or with an answer against the job."""
    want = asked_of_label(asked)
    land = {"contract": "contract land", "not_contract": "land under no contract"}
    return finding(
        stop,
        asked.job_id,
        product.where,
        product=product.name,
        kind=planting_kinds()[want.kind].lower(),
        species=", ".join(species()[one].name.lower() for one in want.species),
        timing=want.timing.replace("_", " "),
        method=want.method,
        land=land.get(want.land or "", "land whose contract is not stated"),
    )


def card_stops(asked: JobAsked, product: Product, inventory: Inventory) -> Iterator[Finding]:
    """Yield what the head of the card leaves open or says against the job."""
    card, job = product.label, asked.job_id
    if card is None:
        yield finding(Stop.NO_CARD, job, product.where, product=product.name)
        return
    missing = missing_on_card(card)
    if missing:
        yield finding(
            Stop.CARD_GAPS, job, card.where, product=product.name, missing=", ".join(missing)
        )
    if card.restricted_use and not may_be_restricted(
        product.id, asked.planting.id, asked.step.id, asked.dates.closes, inventory
    ):
        yield finding(Stop.RESTRICTED, job, card.where, product=product.name)
    if card.state_registered in ("no", "unsure"):
        yield finding(Stop.NOT_REGISTERED, job, card.where, product=product.name)
    noted = card.bulletin if isinstance(card.bulletin, tuple) else ()
    if noted and not _bulletins_cover(noted, asked.dates):
        yield finding(Stop.NO_BULLETIN, job, card.where, product=product.name)


def _bulletins_cover(bulletins: tuple[Bulletin, ...], dates: OpenDates) -> bool:
    if dates.opens is None or dates.closes is None:
        return False
    first = dates.opens.year * 12 + dates.opens.month - 1
    last = dates.closes.year * 12 + dates.closes.month - 1
    return all(
        any(_good_for(bulletin, month) for bulletin in bulletins)
        for month in range(first, last + 1)
    )


def _good_for(bulletin: Bulletin, month: int) -> bool:
    checked = bulletin.checked_on.year * 12 + bulletin.checked_on.month - 1
    wanted = f"{month // 12:04}-{month % 12 + 1:02}"
    return bulletin.month == wanted and 0 <= month - checked <= MONTHS_BULLETIN_IS_GOOD


def use_stops(
    asked: JobAsked,
    chosen: Chosen,
    card: LabelCard,
    use: Use,
    rate: JobRate | None,
    sprays: tuple[PlannedSpray, ...],
) -> Iterator[Finding]:
    """Yield what the use leaves open, and where the job goes past what it allows."""
    job, name = asked.job_id, chosen.product.name
    missing = missing_on_use(use)
    if missing:
        listed = ", ".join(missing)
        yield finding(Stop.USE_GAPS, job, use.where, product=name, missing=listed)
    if rate is None or not _comparable(rate, use):
        yield finding(Stop.NO_RATE, job, chosen.where)
    else:
        yield from _rate_stops(asked, card, use, rate)
        yield from _one_time_stops(asked, chosen, card, use, rate, sprays)
        yield from _year_stops(asked, chosen, card, use, sprays)
    if isinstance(use.last_date, tuple) and not _ends_by(use.last_date, asked.dates):
        yield finding(Stop.PAST_LAST_DATE, job, use.where)
    if isinstance(use.seeding_interval_days, Given) and not _leaves_days(
        use.seeding_interval_days, asked
    ):
        yield finding(Stop.SOWN_TOO_SOON, job, use.where)


def _comparable(rate: JobRate, use: Use) -> bool:
    return use.basis is not None and rate.in_basis(use.basis) is not None


def limit_basis(use: Use, limit: Given, card: LabelCard) -> str | None:
    """Return what a limit on ground counts; beside a percent mix its unit says so."""
    if use.basis != "mix":
        return use.basis
    return "product" if limit.unit == "fl_oz_per_ac" else counted_basis(card)


def _rate_stops(asked: JobAsked, card: LabelCard, use: Use, rate: JobRate) -> Iterator[Finding]:
    assert use.basis is not None
    mine = value_of(rate.in_basis(use.basis))
    if use.rate_low is not None and use.rate_high is not None:
        low, high = use.rate_low.value, use.rate_high.value
        if not low * (1 - ROUNDING) <= mine <= high * (1 + ROUNDING):
            limits = (("Lowest on the card", use.rate_low), ("Highest on the card", use.rate_high))
            figures = _beside(asked.job_id, rate, limits, use.basis, card)
            yield finding(Stop.RATE_OUTSIDE, asked.job_id, use.where, figures)


def _one_time_stops(
    asked: JobAsked,
    chosen: Chosen,
    card: LabelCard,
    use: Use,
    rate: JobRate,
    sprays: tuple[PlannedSpray, ...],
) -> Iterator[Finding]:
    """Yield a stop where the tank holds more at one time than the card allows, partners counted."""
    most = use.max_per_application
    if not isinstance(most, Given):
        return
    mine, here = on_the_place(asked, chosen.product, sprays)
    tank = tuple(one for one in here if one.job_id == asked.job_id)
    basis = limit_basis(use, most, card)
    together = amount_at_one_time(mine, tank, card, basis) if basis else None
    if together is None or together.value > most.value * (1 + ROUNDING):
        figures = _beside(asked.job_id, rate, (("Most at one time", most),), basis, card)
        yield finding(Stop.OVER_ONE_TIME, asked.job_id, use.where, figures)


def value_of(figure: Figure | None) -> float:
    """Return the value of a figure that has one."""
    assert isinstance(figure, Given | Quantity)
    return figure.value


def _beside(
    job_id: str,
    rate: JobRate,
    limits: tuple[tuple[str, Given], ...],
    basis: str | None,
    card: LabelCard,
) -> tuple[tuple[str, Figure], ...]:
    """Return the owner's rate beside the card's limits, in pounds of active to an acre alone."""
    if rate.counted is None or basis is None:
        return ()
    shown: list[tuple[str, Figure]] = [("Your rate", _without_working(rate.counted.rate))]
    for label, limit in limits:
        name = label.lower().replace(" ", "_")
        active = as_active(f"{job_id}/{name}_lb_per_ac", limit, basis, card)
        if active is not None:
            shown.append((label, _without_working(active)))
    return tuple(shown)


def _without_working(figure: Figure) -> Figure:
    """Return the figure with what it was worked out from kept back.

    A stop may show pounds of active; its working would show the ounces of product beside them.
    """
    if not isinstance(figure, Quantity):
        return figure
    return replace(figure, inputs=tuple((name, _kept_back(one)) for name, one in figure.inputs))


def _kept_back(figure: Input) -> Input:
    if isinstance(figure, tuple):
        return tuple(Withheld("", one.unit, KEPT_WHILE_STOPPED) for one in figure)
    return Withheld("", figure.unit, KEPT_WHILE_STOPPED)


def on_the_place(
    asked: JobAsked, product: Product, sprays: tuple[PlannedSpray, ...]
) -> tuple[PlannedSpray, tuple[PlannedSpray, ...]]:
    """Return the job's own spraying of a product, and every spraying on its place."""
    here = tuple(one for one in sprays if one.place_id == asked.screen.id)
    mine = (one for one in here if one.job_id == asked.job_id and one.product_id == product.id)
    return next(mine), here


def _year_stops(
    asked: JobAsked,
    chosen: Chosen,
    card: LabelCard,
    use: Use,
    sprays: tuple[PlannedSpray, ...],
) -> Iterator[Finding]:
    mine, here = on_the_place(asked, chosen.product, sprays)
    if isinstance(use.max_per_year, YearlyLimit):
        limit = use.max_per_year
        basis = limit_basis(use, limit.amount, card)
        together = (
            amount_in_a_year(mine, here, card, basis, limit.counted) if basis is not None else None
        )
        unsaid = not_said_by_the_log(mine, here, limit.counted)
        if unsaid:
            days = ", ".join(map(day_words, sorted({one.opens for one in unsaid if one.opens})))
            yield finding(Stop.AMOUNT_NOT_LOGGED, asked.job_id, use.where, days=days or "then")
        elif together is None or together.amount.value > limit.amount.value * (1 + ROUNDING):
            amount = together.amount if together else None
            shown = _yearly_figures(asked.job_id, amount, limit.amount, basis, card)
            yield finding(Stop.OVER_YEAR, asked.job_id, use.where, shown)
    counted = use.max_per_year.counted if isinstance(use.max_per_year, YearlyLimit) else None
    times = use.times_per_year
    if isinstance(times, int) and times_in_a_year(mine, here, counted) > times:
        yield finding(Stop.TOO_OFTEN, asked.job_id, use.where)


def _yearly_figures(
    job_id: str, together: Quantity | None, limit: Given, basis: str | None, card: LabelCard
) -> tuple[tuple[str, Figure], ...]:
    if basis is None:
        return ()
    active = as_active(f"{job_id}/limit_year_lb_per_ac", limit, basis, card)
    if together is None or together.unit != "lb_per_ac" or active is None:
        return ()
    return (
        ("Planned in a year", _without_working(together)),
        ("Most in a year", _without_working(active)),
    )


def _ends_by(last: tuple[int, int], dates: OpenDates) -> bool:
    """Whether every open day lies on or before the label's last day of its own calendar year."""
    opens, closes = dates.opens, dates.closes
    if opens is None or closes is None:
        return False
    if opens.year < closes.year and last != LAST_OF_YEAR:
        return False
    return (closes.month, closes.day) <= last


def _leaves_days(interval: Given, asked: JobAsked) -> bool:
    """Whether the sowing can wait long enough; a spray after the sowing is not held by it."""
    if asked.step.timing != "before_sowing":
        return True
    if asked.dates.closes is None or asked.sowing_opens is None:
        return False
    return (asked.sowing_opens - asked.dates.closes).days >= interval.value
