"""A spray job: cleared or stopped, and when cleared, what goes into each tank load."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from generator.inventory.label import Bulletin, CarrierRange, LabelCard, Use, YearlyLimit
from generator.inventory.schema import Inventory
from generator.inventory.stock import Product
from generator.plan.asked import JobAsked
from generator.plan.clearance import Asked, cleared_use, missing_on_card, missing_on_use
from generator.plan.findings import finding, older_than_a_year
from generator.plan.model import Finding, Mix, OpenDates
from generator.plan.rates import ROUNDING, JobRate, as_active, job_rate
from generator.plan.reasons import Caution, Stop
from generator.plan.tank import Allowed, Machine, machine_for, tank_loads, tank_numbers
from generator.plan.years import (
    PlannedSpray,
    amount_in_a_year,
    shares_ground_with_others,
    times_in_a_year,
)
from generator.reference.load import planting_kinds, species
from generator.working import (
    KEPT_WHILE_STOPPED,
    Figure,
    Given,
    Input,
    Quantity,
    Withheld,
    flat_inputs,
)

MONTHS_BULLETIN_IS_GOOD = 6
LAST_OF_YEAR = (12, 31)
NO_CONTRACT = "none"


@dataclass(frozen=True, slots=True)
class Sprayed:
    """What planning a spray job gave: a mix when cleared, numbers, findings."""

    mix: Mix | None
    numbers: dict[str, Quantity]
    findings: tuple[Finding, ...]


def plan_spray(asked: JobAsked, inventory: Inventory, sprays: tuple[PlannedSpray, ...]) -> Sprayed:
    """Return the mix of a cleared job, or the stops that keep it from being worked out."""
    if asked.work is None or asked.work.product is None:
        where = asked.work.where if asked.work else asked.planting.where
        return Sprayed(None, {}, (finding(Stop.NO_PRODUCT, asked.job_id, where),))
    product = next(one for one in inventory.products if one.id == asked.work.product)
    stops = list(_card_stops(asked, product))
    if stops or product.label is None:
        return Sprayed(None, {}, tuple(stops))
    use = cleared_use(product.label, _asked_of_label(asked))
    if isinstance(use, Stop):
        return Sprayed(None, {}, (_no_use(use, asked, product),))
    rate = job_rate(asked.job_id, asked.work, product.label)
    stops = list(_use_stops(asked, product, product.label, use, rate, sprays))
    machine = machine_for(asked.work.sprayer, inventory)
    if machine is None:
        stops.append(finding(Stop.NO_SPRAYER, asked.job_id, asked.work.where))
    if stops or machine is None or rate is None:
        return Sprayed(None, {}, tuple(stops))
    most = _most_at_one_time(asked, product.label, use, rate, sprays)
    return _mix(asked, product, product.label, use, rate, machine, most)


def _asked_of_label(asked: JobAsked) -> Asked:
    contract = asked.screen.contract
    free = contract is not None and contract.strip().casefold() == NO_CONTRACT
    land = None if contract is None else "not_contract" if free else "contract"
    assert asked.work is not None
    return Asked(
        asked.kind,
        tuple(seed.species for seed in asked.planting.seed),
        asked.screen.id,
        land,
        asked.step.timing,
        asked.work.method or "broadcast",
    )


def _no_use(stop: Stop, asked: JobAsked, product: Product) -> Finding:
    want = _asked_of_label(asked)
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


def _card_stops(asked: JobAsked, product: Product) -> Iterator[Finding]:
    card, job = product.label, asked.job_id
    if card is None:
        yield finding(Stop.NO_CARD, job, product.where, product=product.name)
        return
    missing = missing_on_card(card)
    if missing:
        yield finding(
            Stop.CARD_GAPS, job, card.where, product=product.name, missing=", ".join(missing)
        )
    if card.restricted_use:
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


def _use_stops(
    asked: JobAsked,
    product: Product,
    card: LabelCard,
    use: Use,
    rate: JobRate | None,
    sprays: tuple[PlannedSpray, ...],
) -> Iterator[Finding]:
    job, name = asked.job_id, product.name
    missing = missing_on_use(use)
    if missing:
        listed = ", ".join(missing)
        yield finding(Stop.USE_GAPS, job, use.where, product=name, missing=listed)
    if asked.work is not None and (rate is None or not _comparable(rate, use)):
        yield finding(Stop.NO_RATE, job, asked.work.where)
    elif rate is not None:
        yield from _rate_stops(asked, card, use, rate)
        yield from _year_stops(asked, card, use, sprays)
    if isinstance(use.last_date, tuple) and not _ends_by(use.last_date, asked.dates):
        yield finding(Stop.PAST_LAST_DATE, job, use.where)
    if isinstance(use.seeding_interval_days, Given) and not _leaves_days(
        use.seeding_interval_days, asked
    ):
        yield finding(Stop.SOWN_TOO_SOON, job, use.where)


def _comparable(rate: JobRate, use: Use) -> bool:
    return use.basis is not None and rate.in_basis(use.basis) is not None


def _rate_stops(asked: JobAsked, card: LabelCard, use: Use, rate: JobRate) -> Iterator[Finding]:
    assert use.basis is not None
    mine = _value(rate.in_basis(use.basis))
    if use.rate_low is not None and use.rate_high is not None:
        low, high = use.rate_low.value, use.rate_high.value
        if not low * (1 - ROUNDING) <= mine <= high * (1 + ROUNDING):
            limits = (("Lowest on the card", use.rate_low), ("Highest on the card", use.rate_high))
            figures = _beside(asked.job_id, rate, limits, use.basis, card)
            yield finding(Stop.RATE_OUTSIDE, asked.job_id, use.where, figures)
    most = use.max_per_application
    if isinstance(most, Given) and mine > most.value * (1 + ROUNDING):
        figures = _beside(asked.job_id, rate, (("Most at one time", most),), use.basis, card)
        yield finding(Stop.OVER_ONE_TIME, asked.job_id, use.where, figures)


def _value(figure: Figure | None) -> float:
    assert isinstance(figure, Given | Quantity)
    return figure.value


def _beside(
    job_id: str,
    rate: JobRate,
    limits: tuple[tuple[str, Given], ...],
    basis: str,
    card: LabelCard,
) -> tuple[tuple[str, Figure], ...]:
    """Return the owner's rate beside the card's limits, in pounds of active to an acre alone."""
    if rate.active is None:
        return ()
    shown: list[tuple[str, Figure]] = [("Your rate", _without_working(rate.active))]
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


def _on_the_place(
    asked: JobAsked, sprays: tuple[PlannedSpray, ...]
) -> tuple[PlannedSpray, tuple[PlannedSpray, ...]]:
    """Return the job's own spraying, and every spraying on its place."""
    here = tuple(one for one in sprays if one.place_id == asked.screen.id)
    return next(one for one in here if one.job_id == asked.job_id), here


def _year_stops(
    asked: JobAsked, card: LabelCard, use: Use, sprays: tuple[PlannedSpray, ...]
) -> Iterator[Finding]:
    mine, here = _on_the_place(asked, sprays)
    if isinstance(use.max_per_year, YearlyLimit) and use.basis is not None:
        limit = use.max_per_year
        together = amount_in_a_year(mine, here, card, use.basis, limit.counted)
        if together is None or together.value > limit.amount.value * (1 + ROUNDING):
            shown = _yearly_figures(asked.job_id, together, limit.amount, use.basis, card)
            yield finding(Stop.OVER_YEAR, asked.job_id, use.where, shown)
    counted = use.max_per_year.counted if isinstance(use.max_per_year, YearlyLimit) else None
    times = use.times_per_year
    if isinstance(times, int) and times_in_a_year(mine, here, counted) > times:
        yield finding(Stop.TOO_OFTEN, asked.job_id, use.where)


def _most_at_one_time(
    asked: JobAsked,
    card: LabelCard,
    use: Use,
    rate: JobRate,
    sprays: tuple[PlannedSpray, ...],
) -> float:
    """Return the highest rate, in the use's basis, that a rounded amount may give.

    What a year's limit leaves over is shared evenly, so that every spraying of the year may
    round up and their sum still holds; a card's smallest limit counts, whichever use it is of.
    Where another product counts on the same ground, nothing is left to share.
    """
    assert use.basis is not None
    assert use.rate_high is not None
    most = use.rate_high.value
    if isinstance(use.max_per_application, Given):
        most = min(most, use.max_per_application.value)
    if isinstance(use.max_per_year, YearlyLimit):
        mine, here = _on_the_place(asked, sprays)
        alone = not shares_ground_with_others(mine, here)
        share = _share_left_over(mine, here, card, use.basis) if alone else 0.0
        most = min(most, _value(rate.in_basis(use.basis)) + share)
    return most


def _share_left_over(
    mine: PlannedSpray, here: tuple[PlannedSpray, ...], card: LabelCard, basis: str
) -> float:
    shares = []
    for use in card.uses:
        if isinstance(use.max_per_year, YearlyLimit):
            limit = use.max_per_year
            together = amount_in_a_year(mine, here, card, basis, limit.counted)
            if together is None or use.basis != basis:
                return 0.0
            counted = len(list(flat_inputs(together)))
            shares.append((limit.amount.value - together.value) / counted)
    return max(0.0, min(shares))


def _yearly_figures(
    job_id: str, together: Quantity | None, limit: Given, basis: str, card: LabelCard
) -> tuple[tuple[str, Figure], ...]:
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


def _mix(
    asked: JobAsked,
    product: Product,
    card: LabelCard,
    use: Use,
    rate: JobRate,
    machine: Machine,
    most: float,
) -> Sprayed:
    job, test = asked.job_id, machine.test
    numbers = tank_numbers(job, asked.area, rate, machine)
    carrier = numbers["carrier_gal_per_ac"]
    found: list[Finding] = []
    if isinstance(use.carrier_gal_per_ac, CarrierRange) and not _within(
        carrier.value, use.carrier_gal_per_ac
    ):
        return Sprayed(None, {}, (finding(Stop.CARRIER_OUTSIDE, job, test.where),))
    loads = tank_loads(job, rate, machine, numbers, Allowed(card, use, most))
    if loads is None:
        return Sprayed(None, {}, (finding(Stop.MARK_TOO_COARSE, job, machine.measure.where),))
    if card.read_on is not None and older_than_a_year(card.read_on, asked.dates.closes):
        found.append(finding(Caution.OLD_LABEL, job, card.where))
    if older_than_a_year(test.tested_on, asked.dates.closes):
        found.append(finding(Caution.OLD_CATCH_TEST, job, test.where))
    mix = Mix(product, card, use, machine.sprayer, test, machine.measure, loads)
    return Sprayed(mix, numbers, tuple(found))


def _within(carrier: float, wanted: CarrierRange) -> bool:
    return wanted.low_gal_per_ac.value <= carrier <= wanted.high_gal_per_ac.value
