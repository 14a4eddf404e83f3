"""A spray job: cleared or stopped, and when cleared, what goes into each tank load."""

import datetime
from collections.abc import Iterator

from generator.dataclass import dataclass
from generator.inventory.label import CarrierRange, LabelCard, Use, year_in
from generator.inventory.places import AdjuvantUsed
from generator.inventory.schema import Inventory, Workers
from generator.inventory.stock import Adjuvant, Product
from generator.plan.findings.about_spraying import SprayCaution, SprayNote, SprayStop
from generator.plan.findings.order import finding, older_than_a_year
from generator.plan.findings.words import Stop
from generator.plan.jobs.licenses import is_handed_to_a_contractor
from generator.plan.jobs.request import JobRequest
from generator.plan.labels.clearance import cleared_use
from generator.plan.labels.crops import crop_of
from generator.plan.labels.history import tank_stops
from generator.plan.labels.label_harm import harm_cautions
from generator.plan.labels.limit_stops import Judged, figure_value
from generator.plan.labels.rates import ROUNDING, JobRate, is_dry, job_rate
from generator.plan.labels.sowing_wait import wait_cautions
from generator.plan.labels.spray_stops import (
    Chosen,
    asked_of_label,
    card_stops,
    chosen_products,
    no_use,
    use_stops,
)
from generator.plan.labels.yearly_sums import PlannedSpray
from generator.plan.land.kept_off import GroundLeft
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.work import AdjuvantPart, Mix, MixPart, Pour
from generator.plan.season.open_dates import judged_on
from generator.plan.spraying.laps import lap_stops, pass_findings, twice_stops
from generator.plan.spraying.own_sprayer import own_loads
from generator.plan.spraying.passes import Passes, all_open, passes_of
from generator.plan.spraying.pours import (
    Cleared,
    adjuvant_is_dry,
    adjuvant_pours,
    adjuvant_rate,
    product_pour,
)
from generator.plan.spraying.spots import left_cautions, spot_stops, treated, treated_stops
from generator.plan.spraying.tank import (
    SprayerSetUp,
    carrier_numbers,
    in_all,
    machine_for,
    mixing_order,
    small_place_loads,
    tank_loads,
    tank_numbers,
)
from generator.working import Quantity

NOZZLES_MAY_DIFFER = 0.1  # share of the mean, common practice
LABEL_GOOD_FOR_YEARS = 2  # common practice: look whether a newer one is out
MARKS_MAY_MISS_BY = 0.1  # share of the typed rate, common practice


@dataclass(frozen=True, slots=True)
class SprayPlanned:
    """What planning a spray job gave: a mix when cleared, numbers, findings."""

    mix: Mix | None
    numbers: dict[str, Quantity]
    findings: tuple[Finding, ...]


def planned_sprays(
    request: JobRequest, inventory: Inventory, grounds: frozenset[str], left: GroundLeft
) -> tuple[PlannedSpray, ...]:
    """Return what a spray job would put on its ground, product by product, cleared or not."""
    machine = machine_for(
        request.work.sprayer if request.work else None, inventory.measures, inventory.sprayers
    )
    carrier, passes = _carrier(request, machine), passes_of(request, machine, left)
    laid_times = passes.most_times if passes is not None else 1
    return tuple(
        _planned(request, chosen, carrier, grounds, laid_times)
        for chosen in chosen_products(request, inventory.products)
    )


def _planned(
    request: JobRequest,
    chosen: Chosen,
    carrier: Quantity | None,
    grounds: frozenset[str],
    laid_times: int,
) -> PlannedSpray:
    # cleared or not: what is stopped today may be sprayed once that is cured, and counts in years
    card = chosen.product.label
    return PlannedSpray(
        job_id=request.job_id,
        place_id=request.ground.id,
        grounds=grounds,
        crop=crop_of(request.ground, request.planting),
        product_id=chosen.product.id,
        product_name=chosen.product.name,
        actives=card.named_actives if card else (),
        pooled=card.named_pooled if card else (),
        rate=_rate(request, chosen, card, carrier) if card else None,
        opens=request.dates.opens,
        closes=request.dates.closes,
        part=request.work.part if request.work else None,
        laid_times=laid_times,
    )


def _rate(
    request: JobRequest, chosen: Chosen, card: LabelCard, carrier: Quantity | None
) -> JobRate | None:
    return job_rate(f"{request.job_id}/{chosen.prefix}", chosen.typed, card, carrier)


def _carrier(request: JobRequest, machine: SprayerSetUp | None) -> Quantity | None:
    return carrier_numbers(request.job_id, machine)["carrier_gal_per_ac"] if machine else None


def plan_spray(
    request: JobRequest,
    inventory: Inventory,
    sprays: tuple[PlannedSpray, ...],
    left: GroundLeft,
) -> SprayPlanned:
    """Return the mix of a cleared job, or the stops that keep it from being worked out."""
    products = chosen_products(request, inventory.products)
    if request.work is None or not products:
        where = request.work.where if request.work else request.planting.where
        return SprayPlanned(
            None, {}, (finding(SprayStop.NO_PRODUCT, about_job(request.job_id), where),)
        )
    machine = machine_for(request.work.sprayer, inventory.measures, inventory.sprayers)
    passes = passes_of(request, machine, left)
    stops: list[Finding] = []
    cleared: list[Cleared] = []
    for chosen in products:
        one = _clear(
            request, chosen, _carrier(request, machine), passes, sprays, inventory.workers()
        )
        if isinstance(one, Cleared):
            cleared.append(one)
        else:
            stops += one
    # one product that is not cleared stops the tank, and its loads need no look yet
    if len(cleared) < len(products):
        return SprayPlanned(None, {}, tuple(stops))
    stops += treated_stops(request, left)
    stops += _tank_stops(request, inventory.adjuvants, inventory.products, machine, passes, cleared)
    if stops or machine is None:
        return SprayPlanned(None, {}, tuple(stops))
    return _mix(request, inventory, machine, passes, tuple(cleared), sprays, left)


def _clear(
    request: JobRequest,
    chosen: Chosen,
    carrier: Quantity | None,
    passes: Passes | None,
    sprays: tuple[PlannedSpray, ...],
    workers: Workers,
) -> Cleared | list[Finding]:
    product = chosen.product
    stops = list(card_stops(request, product, workers))
    if stops or product.label is None:
        return stops
    use = cleared_use(product.label, asked_of_label(request))
    if isinstance(use, Stop):
        return [no_use(use, request, product)]
    rate = _rate(request, chosen, product.label, carrier)
    stops = list(use_stops(request, chosen, product.label, use, rate, sprays))
    stops += spot_stops(request, chosen, product.label)
    # what breaks on ground laid once would break where passes lap too, and be told twice
    if not stops and rate is not None:
        judged = Judged(request, product, product.label, use, rate)
        stops += twice_stops(judged, sprays, passes)
    return stops if stops or rate is None else Cleared(chosen, product.label, use, rate)


def _tank_stops(
    request: JobRequest,
    adjuvants: tuple[Adjuvant, ...],
    products: tuple[Product, ...],
    machine: SprayerSetUp | None,
    passes: Passes | None,
    cleared: list[Cleared],
) -> Iterator[Finding]:
    assert request.work is not None
    if machine is None or not machine.measures:
        yield finding(SprayStop.NO_SPRAYER, about_job(request.job_id), request.work.where)
        return
    yield from lap_stops(request, machine, passes)
    carrier = carrier_numbers(request.job_id, machine)["carrier_gal_per_ac"]
    yield from (
        _carrier_outside(request, part, machine, missed, carrier.value)
        for part in cleared
        if (missed := _missed_by(part.use, carrier.value)) is not None
    )
    wanted = [(part.chosen.product.name, is_dry(part.card)) for part in cleared]
    wanted += [
        (adjuvant.name, adjuvant_is_dry(used)) for used, adjuvant in _adjuvants(request, adjuvants)
    ]
    for name, dry in wanted:
        if machine.measure_for(dry=dry) is None:
            yield finding(
                SprayStop.NO_MEASURE,
                about_job(request.job_id),
                machine.sprayer.where,
                product=name,
                measure="scale" if dry else "jug",
                mark="mark_oz_wt" if dry else "mark_fl_oz",
            )
    for used, adjuvant in _adjuvants(request, adjuvants):
        # asked only whether there is one; it is made with its id where it is poured
        if adjuvant_rate("", used, carrier) is None:
            yield finding(
                SprayStop.NO_ADJUVANT_RATE,
                about_job(request.job_id),
                used.where,
                item=adjuvant.name,
            )
    actives = [active for part in cleared for active in part.card.actives]
    yield from tank_stops(request, machine.sprayer, products, actives)


def _missed_by(use: Use, carrier_gal_per_ac: float) -> CarrierRange | None:
    """Return the spray volume that a use asks for where a sprayer does not put it on."""
    wanted = use.carrier_gal_per_ac
    if not isinstance(wanted, CarrierRange):
        return None
    low, high = wanted.low_gal_per_ac.value, wanted.high_gal_per_ac.value
    fits = low * (1 - ROUNDING) <= carrier_gal_per_ac <= high * (1 + ROUNDING)
    return None if fits else wanted


def _carrier_outside(
    request: JobRequest,
    part: Cleared,
    machine: SprayerSetUp,
    wanted: CarrierRange,
    carrier_gal_per_ac: float,
) -> Finding:
    limits = [f"{limit.value:g}" for limit in (wanted.low_gal_per_ac, wanted.high_gal_per_ac)]
    # as many digits as it takes to tell it from a limit
    written = (f"{carrier_gal_per_ac:.{digits}g}" for digits in range(3, 16))
    return finding(
        SprayStop.CARRIER_OUTSIDE,
        about_job(request.job_id),
        machine.test.where,
        carrier=next(text for text in written if text not in limits),
        product=part.chosen.product.name,
        low=limits[0],
        high=limits[1],
    )


def _adjuvants(
    request: JobRequest, adjuvants: tuple[Adjuvant, ...]
) -> tuple[tuple[AdjuvantUsed, Adjuvant], ...]:
    by_id = {adjuvant.id: adjuvant for adjuvant in adjuvants}
    used = request.work.adjuvants if request.work else ()
    return tuple((typed, by_id[typed.adjuvant]) for typed in used)


def _mix(
    request: JobRequest,
    inventory: Inventory,
    machine: SprayerSetUp,
    passes: Passes | None,
    cleared: tuple[Cleared, ...],
    sprays: tuple[PlannedSpray, ...],
    left: GroundLeft,
) -> SprayPlanned:
    job = request.job_id
    numbers = carrier_numbers(job, machine)
    carrier = numbers["carrier_gal_per_ac"]
    sprayed = treated(request, left)
    ground = sprayed if passes is None else passes.ground
    if sprayed is left.ground:
        numbers |= left.numbers
    elif sprayed != request.area:
        numbers["treated_ac"] = sprayed
    if passes is not None:
        numbers |= passes.numbers | all_open(job, passes, carrier)
    numbers |= tank_numbers(job, ground, carrier, machine)
    pours = [product_pour(request, part, carrier, machine, sprays) for part in cleared]
    partners = _adjuvants(request, inventory.adjuvants)
    added = adjuvant_pours(request, partners, carrier, machine)
    every = (*pours, *added)
    loads = tank_loads(job, every, machine, numbers)
    if loads is None:
        measure = every[0].measure
        return SprayPlanned(
            None, {}, (finding(SprayStop.MARK_TOO_COARSE, about_job(job), measure.where),)
        )
    if loads[0].name == "equal":
        del numbers["last_load_gal"]  # no load of that size is poured
    totals = [in_all(job, pour, ground) for pour in every]
    parts = tuple(
        MixPart(part.chosen.product, part.card, part.use, pour.measure, total)
        for part, pour, total in zip(cleared, pours, totals[: len(pours)], strict=True)
    )
    with_adjuvants = tuple(
        AdjuvantPart(adjuvant, pour.measure, total)
        for (_, adjuvant), pour, total in zip(partners, added, totals[len(pours) :], strict=True)
    )
    made_up: list[Product | Adjuvant] = [part.product for part in parts]
    order = mixing_order([*made_up, *(part.adjuvant for part in with_adjuvants)])
    hired = is_handed_to_a_contractor(request.planting.id, request.step.id, inventory.readers)
    mix = Mix(
        parts,
        with_adjuvants,
        machine.sprayer,
        machine.test,
        loads,
        small_place_loads(job, every, machine, carrier) if machine.by_hand else (),
        order or (),
        own_loads(request, cleared, partners, machine, sprays, sprayed) if hired else (),
        every,
    )
    numbers["product_fl_oz" if not pours[0].dry else "product_oz_wt"] = totals[0]
    found = [
        *_cautions(request, mix),
        *left_cautions(request, mix.parts[0].use.where, left),
        *_marks_that_miss(job, every, mix),
        *pass_findings(request, machine, passes),
    ]
    if order is None:
        found.append(
            finding(
                SprayNote.NO_FORMULATION,
                about_job(job),
                request.work.where if request.work else None,
            )
        )
    return SprayPlanned(mix, numbers, tuple(found))


def _cautions(request: JobRequest, mix: Mix) -> Iterator[Finding]:
    job, test, judged = request.job_id, mix.test, judged_on(request.dates, request.season)
    for part in mix.parts:
        if part.card.read_on is not None and older_than_a_year(part.card.read_on, judged):
            yield finding(SprayCaution.OLD_LABEL, about_job(job), part.card.where)
        yield from _label_age(request, part.card, judged)
        yield from harm_cautions(request, part)
        yield from wait_cautions(request, part.use)
    if older_than_a_year(test.tested_on, judged):
        yield finding(SprayCaution.OLD_CATCH_TEST, about_job(job), test.where)
    caught = [catch.value for catch in test.caught_fl_oz]
    mean = sum(caught) / len(caught)
    if any(abs(fl_oz - mean) > NOZZLES_MAY_DIFFER * mean for fl_oz in caught):
        yield finding(SprayCaution.NOZZLES_DIFFER, about_job(job), test.where)


def _label_age(
    request: JobRequest, card: LabelCard, judged: datetime.date | None
) -> Iterator[Finding]:
    """Yield a note where the label was printed more than two years before, or says no year."""
    year = year_in(card.label_date)
    if year is None:
        yield finding(SprayNote.LABEL_UNDATED, about_job(request.job_id), card.where)
    # of a printed date the year alone is read, so whole years are counted
    elif judged is not None and judged.year - year > LABEL_GOOD_FOR_YEARS:
        yield finding(
            SprayNote.LABEL_PRINTED_LONG_AGO, about_job(request.job_id), card.where, year=str(year)
        )


def _marks_that_miss(job: str, pours: tuple[Pour, ...], mix: Mix) -> Iterator[Finding]:
    loads = mix.loads + mix.small_place
    for number, pour in enumerate(pours):
        wanted = figure_value(pour.rate)
        given = [load.doses[number].rate.value for load in loads]
        if any(abs(rate - wanted) > MARKS_MAY_MISS_BY * wanted for rate in given):
            yield finding(
                SprayCaution.MARKS_MISS_THE_RATE,
                about_job(job),
                pour.measure.where,
                measure=pour.measure.name,
                item=pour.name,
            )
