"""A spray job: cleared or stopped, and when cleared, what goes into each tank load."""

import datetime
import math
from collections.abc import Iterator
from dataclasses import dataclass

from generator.compute import dose
from generator.inventory.label import CarrierRange, LabelCard, Use, YearlyLimit, year_in
from generator.inventory.places import AdjuvantUsed
from generator.inventory.schema import Inventory
from generator.inventory.stock import Adjuvant, Product
from generator.plan.asked import JobAsked
from generator.plan.cautions import Caution
from generator.plan.clearance import cleared_use
from generator.plan.crop import crop_of
from generator.plan.findings import finding, older_than_a_year
from generator.plan.history import tank_stops
from generator.plan.known_days import judged_on
from generator.plan.label_harm import harm_cautions
from generator.plan.laps import lap_stops, pass_findings, twice_stops
from generator.plan.limit_stops import Judged, limit_basis, on_the_place, value_of
from generator.plan.mixing import mixing_order
from generator.plan.model import AdjuvantPart, Finding, Mix, MixPart
from generator.plan.notes import Note
from generator.plan.passes import Passes, all_open, passes_of
from generator.plan.rates import JobRate, as_product, is_dry, job_rate
from generator.plan.setbacks import setback_cautions
from generator.plan.sowing_wait import wait_cautions
from generator.plan.spots import spot_stops, treated_ground, treated_stops
from generator.plan.spray_stops import Chosen, asked_of_label, card_stops, no_use, use_stops
from generator.plan.stops import Stop
from generator.plan.tank import (
    Machine,
    Pour,
    carrier_numbers,
    in_all,
    machine_for,
    small_place_loads,
    tank_loads,
    tank_numbers,
)
from generator.plan.years import (
    PlannedSpray,
    amount_in_a_year,
    as_laid,
    shares_ground_with_others,
)
from generator.working import Given, Quantity

NOZZLES_MAY_DIFFER = 0.1  # share of the mean, common practice
LABEL_GOOD_FOR_YEARS = 2  # common practice: look whether a newer one is out
MARKS_MAY_MISS_BY = 0.1  # share of the typed rate, common practice


@dataclass(frozen=True, slots=True)
class Sprayed:
    """What planning a spray job gave: a mix when cleared, numbers, findings."""

    mix: Mix | None
    numbers: dict[str, Quantity]
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class Cleared:
    """A chosen product whose card clears the job: its card, use and rate."""

    chosen: Chosen
    card: LabelCard
    use: Use
    rate: JobRate


def chosen_products(asked: JobAsked, inventory: Inventory) -> tuple[Chosen, ...]:
    """Return the products a job means to put into one tank, the first without a prefix."""
    work = asked.work
    if work is None or work.product is None:
        return ()
    by_id = {one.id: one for one in inventory.products}
    partners = tuple(
        Chosen(f"part-{number}.", one, by_id[one.product])
        for number, one in enumerate(work.partners, 2)
    )
    return (Chosen("", work, by_id[work.product]), *partners)


def planned_sprays(
    asked: JobAsked, inventory: Inventory, grounds: frozenset[str]
) -> tuple[PlannedSpray, ...]:
    """Return what a spray job would put on its ground, product by product, cleared or not."""
    machine = machine_for(asked.work.sprayer if asked.work else None, inventory)
    carrier, passes = _carrier(asked, machine), passes_of(asked, machine)
    laid_times = passes.most_times if passes is not None else 1
    return tuple(
        _planned(asked, one, carrier, grounds, laid_times)
        for one in chosen_products(asked, inventory)
    )


def _planned(
    asked: JobAsked,
    chosen: Chosen,
    carrier: Quantity | None,
    grounds: frozenset[str],
    laid_times: int,
) -> PlannedSpray:
    card = chosen.product.label
    return PlannedSpray(
        job_id=asked.job_id,
        place_id=asked.ground.id,
        grounds=grounds,
        crop=crop_of(asked.ground, asked.planting),
        product_id=chosen.product.id,
        product_name=chosen.product.name,
        actives=card.named_actives if card else (),
        pooled=card.named_pooled if card else (),
        rate=_rate(asked, chosen, card, carrier) if card else None,
        opens=asked.dates.opens,
        closes=asked.dates.closes,
        part=asked.work.part if asked.work else None,
        laid_times=laid_times,
    )


def _rate(
    asked: JobAsked, chosen: Chosen, card: LabelCard, carrier: Quantity | None
) -> JobRate | None:
    return job_rate(f"{asked.job_id}/{chosen.prefix}", chosen.typed, card, carrier)


def _carrier(asked: JobAsked, machine: Machine | None) -> Quantity | None:
    return carrier_numbers(asked.job_id, machine)["carrier_gal_per_ac"] if machine else None


def plan_spray(asked: JobAsked, inventory: Inventory, sprays: tuple[PlannedSpray, ...]) -> Sprayed:
    """Return the mix of a cleared job, or the stops that keep it from being worked out."""
    products = chosen_products(asked, inventory)
    if asked.work is None or not products:
        where = asked.work.where if asked.work else asked.planting.where
        return Sprayed(None, {}, (finding(Stop.NO_PRODUCT, asked.job_id, where),))
    machine = machine_for(asked.work.sprayer, inventory)
    passes = passes_of(asked, machine)
    stops: list[Finding] = []
    cleared: list[Cleared] = []
    for chosen in products:
        one = _clear(asked, chosen, _carrier(asked, machine), passes, sprays, inventory)
        if isinstance(one, Cleared):
            cleared.append(one)
        else:
            stops += one
    if len(cleared) < len(products):
        return Sprayed(None, {}, tuple(stops))
    stops += _tank_stops(asked, inventory, machine, passes, cleared)
    if stops or machine is None:
        return Sprayed(None, {}, tuple(stops))
    return _mix(asked, inventory, machine, passes, tuple(cleared), sprays)


def _clear(
    asked: JobAsked,
    chosen: Chosen,
    carrier: Quantity | None,
    passes: Passes | None,
    sprays: tuple[PlannedSpray, ...],
    inventory: Inventory,
) -> Cleared | list[Finding]:
    product = chosen.product
    stops = list(card_stops(asked, product, inventory))
    if stops or product.label is None:
        return stops
    use = cleared_use(product.label, asked_of_label(asked))
    if isinstance(use, Stop):
        return [no_use(use, asked, product)]
    rate = _rate(asked, chosen, product.label, carrier)
    stops = list(use_stops(asked, chosen, product.label, use, rate, sprays))
    stops += spot_stops(asked, chosen, product.label)
    if not stops and rate is not None:
        judged = Judged(asked, product, product.label, use, rate)
        stops += twice_stops(judged, sprays, passes)
    return stops if stops or rate is None else Cleared(chosen, product.label, use, rate)


def _tank_stops(
    asked: JobAsked,
    inventory: Inventory,
    machine: Machine | None,
    passes: Passes | None,
    cleared: list[Cleared],
) -> Iterator[Finding]:
    assert asked.work is not None
    yield from treated_stops(asked)
    if machine is None or not machine.measures:
        yield finding(Stop.NO_SPRAYER, asked.job_id, asked.work.where)
        return
    yield from lap_stops(asked, machine, passes)
    carrier = carrier_numbers(asked.job_id, machine)["carrier_gal_per_ac"]
    yield from (
        _carrier_outside(asked, one, machine, missed, carrier.value)
        for one in cleared
        if (missed := _missed_by(one.use, carrier.value)) is not None
    )
    wanted = [(one.chosen.product.name, is_dry(one.card)) for one in cleared]
    wanted += [(one.name, _adjuvant_is_dry(used)) for used, one in _adjuvants(asked, inventory)]
    for name, dry in wanted:
        if machine.measure_for(dry=dry) is None:
            yield finding(
                Stop.NO_MEASURE,
                asked.job_id,
                machine.sprayer.where,
                product=name,
                measure="scale with a mark_oz_wt" if dry else "jug with a mark_fl_oz",
            )
    for used, adjuvant in _adjuvants(asked, inventory):
        if _adjuvant_rate("", used, carrier) is None:
            yield finding(Stop.NO_ADJUVANT_RATE, asked.job_id, used.where, item=adjuvant.name)
    actives = [active for one in cleared for active in one.card.actives]
    yield from tank_stops(asked, machine.sprayer, inventory, actives)


def _missed_by(use: Use, carrier_gal_per_ac: float) -> CarrierRange | None:
    """Return the spray volume that a use asks for where a sprayer does not put it on."""
    wanted = use.carrier_gal_per_ac
    if not isinstance(wanted, CarrierRange):
        return None
    low, high = wanted.low_gal_per_ac.value, wanted.high_gal_per_ac.value
    return None if low <= carrier_gal_per_ac <= high else wanted


def _carrier_outside(
    asked: JobAsked, one: Cleared, machine: Machine, wanted: CarrierRange, carrier_gal_per_ac: float
) -> Finding:
    limits = [f"{one.value:g}" for one in (wanted.low_gal_per_ac, wanted.high_gal_per_ac)]
    # as many digits as it takes to tell it from a limit
    written = (f"{carrier_gal_per_ac:.{digits}g}" for digits in range(3, 16))
    return finding(
        Stop.CARRIER_OUTSIDE,
        asked.job_id,
        machine.test.where,
        carrier=next(one for one in written if one not in limits),
        product=one.chosen.product.name,
        low=limits[0],
        high=limits[1],
    )


def _adjuvants(asked: JobAsked, inventory: Inventory) -> tuple[tuple[AdjuvantUsed, Adjuvant], ...]:
    by_id = {one.id: one for one in inventory.adjuvants}
    used = asked.work.adjuvants if asked.work else ()
    return tuple((one, by_id[one.adjuvant]) for one in used)


def _adjuvant_is_dry(used: AdjuvantUsed) -> bool:
    by_weight = used.rate_product is not None and used.rate_product.unit == "lb_per_ac"
    return by_weight or used.rate_lb_per_100_gal is not None


def _mix(
    asked: JobAsked,
    inventory: Inventory,
    machine: Machine,
    passes: Passes | None,
    cleared: tuple[Cleared, ...],
    sprays: tuple[PlannedSpray, ...],
) -> Sprayed:
    job = asked.job_id
    numbers = carrier_numbers(job, machine)
    carrier = numbers["carrier_gal_per_ac"]
    ground = treated_ground(asked) if passes is None else passes.ground
    if passes is not None:
        numbers |= passes.numbers | all_open(asked, passes, carrier)
    elif ground is not asked.area:
        numbers["treated_ac"] = ground
    numbers |= tank_numbers(job, ground, carrier, machine)
    pours = [_pour(asked, one, carrier, machine, sprays) for one in cleared]
    partners = _adjuvants(asked, inventory)
    added = _adjuvant_pours(asked, partners, carrier, machine)
    every = (*pours, *added)
    loads = tank_loads(job, every, machine, numbers)
    if loads is None:
        measure = every[0].measure
        return Sprayed(None, {}, (finding(Stop.MARK_TOO_COARSE, job, measure.where),))
    if loads[0].name == "equal":
        del numbers["last_load_gal"]  # no load of that size is poured
    totals = [in_all(job, pour, ground) for pour in every]
    parts = tuple(
        MixPart(one.chosen.product, one.card, one.use, pour.measure, total)
        for one, pour, total in zip(cleared, pours, totals[: len(pours)], strict=True)
    )
    with_adjuvants = tuple(
        AdjuvantPart(adjuvant, pour.measure, total)
        for (_, adjuvant), pour, total in zip(partners, added, totals[len(pours) :], strict=True)
    )
    made_up: list[Product | Adjuvant] = [part.product for part in parts]
    order = mixing_order([*made_up, *(one.adjuvant for one in with_adjuvants)])
    mix = Mix(
        parts,
        with_adjuvants,
        machine.sprayer,
        machine.test,
        loads,
        small_place_loads(job, every, machine, carrier) if machine.by_hand else (),
        order or (),
    )
    numbers["product_fl_oz" if not pours[0].dry else "product_oz_wt"] = totals[0]
    found = [
        *_cautions(asked, mix),
        *_marks_that_miss(job, every, mix),
        *pass_findings(asked, machine, passes),
    ]
    if order is None:
        found.append(finding(Note.NO_FORMULATION, job, asked.work.where if asked.work else None))
    return Sprayed(mix, numbers, tuple(found))


def _cautions(asked: JobAsked, mix: Mix) -> Iterator[Finding]:
    job, test, judged = asked.job_id, mix.test, judged_on(asked.dates, asked.season)
    for part in mix.parts:
        if part.card.read_on is not None and older_than_a_year(part.card.read_on, judged):
            yield finding(Caution.OLD_LABEL, job, part.card.where)
        yield from _label_age(asked, part.card, judged)
        yield from harm_cautions(asked, part)
        yield from wait_cautions(asked, part.use)
    yield from setback_cautions(asked, mix)
    if older_than_a_year(test.tested_on, judged):
        yield finding(Caution.OLD_CATCH_TEST, job, test.where)
    caught = [one.value for one in test.caught_fl_oz]
    mean = sum(caught) / len(caught)
    if any(abs(one - mean) > NOZZLES_MAY_DIFFER * mean for one in caught):
        yield finding(Caution.NOZZLES_DIFFER, job, test.where)


def _label_age(asked: JobAsked, card: LabelCard, judged: datetime.date | None) -> Iterator[Finding]:
    """Yield a note where the label was printed more than two years before, or says no year."""
    year = year_in(card.label_date)
    if year is None:
        yield finding(Note.LABEL_UNDATED, asked.job_id, card.where)
    elif judged is not None and judged.year - year > LABEL_GOOD_FOR_YEARS:
        yield finding(Note.LABEL_PRINTED_LONG_AGO, asked.job_id, card.where, year=str(year))


def _marks_that_miss(job: str, pours: tuple[Pour, ...], mix: Mix) -> Iterator[Finding]:
    loads = mix.loads + mix.small_place
    for number, pour in enumerate(pours):
        wanted = value_of(pour.rate)
        given = [load.doses[number].rate.value for load in loads]
        if any(abs(one - wanted) > MARKS_MAY_MISS_BY * wanted for one in given):
            yield finding(
                Caution.MARKS_MISS_THE_RATE,
                job,
                pour.measure.where,
                measure=pour.measure.name,
                item=pour.name,
            )


def _pour(
    asked: JobAsked,
    one: Cleared,
    carrier: Quantity,
    machine: Machine,
    sprays: tuple[PlannedSpray, ...],
) -> Pour:
    measure = machine.measure_for(dry=is_dry(one.card))
    assert measure is not None
    assert one.use.rate_low is not None
    low = _in_product(asked, one, one.use.rate_low, one.use.basis, carrier)
    most = _most_at_one_time(asked, one, carrier, sprays)
    return Pour(one.chosen.prefix, one.chosen.product.name, one.rate.product, measure, low, most)


def _in_product(
    asked: JobAsked, one: Cleared, limit: Given, basis: str | None, carrier: Quantity
) -> float:
    """Return a limit of the card as product to an acre, in the unit of the product."""
    if basis == "product":
        return limit.value
    if basis == "mix":
        return dose.percent_rate_fl_oz_per_ac(carrier.value, limit.value)
    return as_product(f"{asked.job_id}/", limit, one.card, "limit").value


def _most_at_one_time(
    asked: JobAsked, one: Cleared, carrier: Quantity, sprays: tuple[PlannedSpray, ...]
) -> float:
    """Return the highest rate of product that a rounded amount may give.

    What a year's limit leaves over is shared evenly, so that every spraying of the year may
    round up and their sum still holds; a card's smallest limit counts, whichever use it is of.
    Where another product counts on the same ground, by this label or its own, nothing is left to
    share and no amount may round up: then what was typed, and held every limit, is passed nowhere.
    """
    use = one.use
    assert use.rate_high is not None
    most = _in_product(asked, one, use.rate_high, use.basis, carrier)
    mine, here = on_the_place(asked, one.chosen.product, sprays)
    at_once = most if use.basis != "mix" else math.inf
    if isinstance(use.max_per_application, Given):
        basis = limit_basis(use, use.max_per_application, one.card)
        at_once = _in_product(asked, one, use.max_per_application, basis, carrier)
    most = min(most, at_once / mine.laid_times)
    if shares_ground_with_others(mine, here):
        return min(most, value_of(one.rate.product))
    share = _share_left_over(asked, one, mine, as_laid(here), carrier)
    return min(most, value_of(one.rate.product) + share)


def _share_left_over(
    asked: JobAsked,
    one: Cleared,
    mine: PlannedSpray,
    here: tuple[PlannedSpray, ...],
    carrier: Quantity,
) -> float:
    """Return the product to an acre that may be added; without end where no use limits a year."""
    shares = [math.inf]
    for use in one.card.uses:
        if isinstance(use.max_per_year, YearlyLimit):
            limit = use.max_per_year
            basis = limit_basis(use, limit, one.card)
            together = amount_in_a_year(mine, here, one.card, basis, limit) if basis else None
            if together is None or basis is None:
                return 0.0
            left_over = limit.amount.value - together.amount.value
            of_limit = _in_product(asked, one, limit.amount, basis, carrier) / limit.amount.value
            shares.append(left_over * of_limit / together.count)
    return max(0.0, min(shares))


def _adjuvant_pours(
    asked: JobAsked,
    partners: tuple[tuple[AdjuvantUsed, Adjuvant], ...],
    carrier: Quantity,
    machine: Machine,
) -> tuple[Pour, ...]:
    pours = []
    for number, (used, adjuvant) in enumerate(partners, 1):
        prefix = f"adjuvant-{number}."
        rate = _adjuvant_rate(f"{asked.job_id}/{prefix}", used, carrier)
        measure = machine.measure_for(dry=_adjuvant_is_dry(used))
        assert rate is not None
        assert measure is not None
        pours.append(Pour(prefix, adjuvant.name, rate, measure))
    return tuple(pours)


def _adjuvant_rate(identity: str, used: AdjuvantUsed, carrier: Quantity) -> Given | Quantity | None:
    if used.rate_product is not None:
        return used.rate_product
    if used.mix_fraction is not None:
        return dose.PERCENT_RATE(
            f"{identity}rate_product_fl_oz_per_ac",
            carrier_gal_per_ac=carrier,
            mix_fraction=used.mix_fraction,
        )
    if used.rate_lb_per_100_gal is not None:
        return dose.ADJUVANT_RATE(
            f"{identity}rate_product_lb_per_ac",
            carrier_gal_per_ac=carrier,
            rate_lb_per_100_gal=used.rate_lb_per_100_gal,
        )
    return None
