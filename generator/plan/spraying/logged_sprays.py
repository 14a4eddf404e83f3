"""Sprayings as the log says they went, in place of what was planned, for a label's year.

The larger amount decides, and what the log leaves out is not guessed: a finished spraying counts
by what was used on the ground it was used on, one that is begun by the larger of that and its
plan. What an entry leaves out stands as a gap, and nothing is cleared by it.
"""

import datetime
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from generator.compute import applied
from generator.compute.buying import TOTAL_FL_OZ_PER_AC, TOTAL_RATE
from generator.dataclass import dataclass
from generator.inventory.label import LabelCard
from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory
from generator.inventory.stock import Product
from generator.plan.jobs.request import JobRequest
from generator.plan.labels.crops import crop_of, crop_on
from generator.plan.labels.rates import ROUNDING, JobRate, is_dry, rate_of_product
from generator.plan.labels.yearly_sums import Gap, PlannedSpray
from generator.plan.land.kept_off import GroundLeft, all_left
from generator.plan.log.done import entries_on, finished_on
from generator.plan.log.told import Sprayings, area_of, latest_day, part_told, sprayings_of
from generator.plan.model.spray_record import larger_than_its_place
from generator.plan.spraying.logged_parts import PutOn, by_part, fit_on, most_of, runs_of_days
from generator.plan.spraying.passes import Passes, passes_of
from generator.plan.spraying.spots import treated
from generator.plan.spraying.tank import machine_for
from generator.plan.spraying.tank_log import sprayer_of
from generator.working import Given, Quantity

OUTSIDE = "log/"  # what the id of a spraying begins with that is no job


@dataclass(frozen=True, slots=True)
class _Ground:
    """The whole place, the ground that a job is for, and what counts where an entry says none.

    `laid` is what the passes of the job spray, laps and what falls beside counted each time.
    """

    place: Quantity | None
    job: Quantity | None
    unsaid: Quantity | None
    laid: Quantity | None = None

    def counted(self, said: Given | None) -> Given | Quantity | None:
        """Return the ground that an amount is spread over: the smaller makes the larger rate."""
        if said is None:
            return self.unsaid
        return self.job if self.job is not None and said.value > self.job.value else said

    def sprayed(self, said: Given | None) -> Given | Quantity | None:
        """Return the ground that an amount went onto: of a whole job that of its passes."""
        if said is None or self.job is None or self.laid is None:
            return self.counted(said)
        # of less than the whole nobody knows which passes went over it
        return self.laid if said.value >= self.job.value * (1 - ROUNDING) else self.counted(said)


def as_logged(
    sprays: tuple[PlannedSpray, ...],
    ever: Iterable[JobRequest],
    inventory: Inventory,
    entries: tuple[LogEntry, ...],
    grounds: Mapping[str, frozenset[str]],
    areas: Mapping[str, Quantity],
    left: Mapping[str, GroundLeft],
) -> tuple[PlannedSpray, ...]:
    """Return the sprayings of a property, those in the log as they went.

    `grounds` are the places on whose ground each place lies, `areas` the ground of each, by its id;
    `left` is what labels leave of the ground of each job.
    """
    told = sprayings_of(inventory)
    by_job: dict[str, list[PlannedSpray]] = {}
    for spray in sprays:
        by_job.setdefault(spray.job_id, []).append(spray)
    found: list[PlannedSpray] = []
    counted: set[str] = set()
    for request in ever:
        if not request.step.does.sprays:
            continue
        planned = tuple(by_job.get(request.job_id, ()))
        on_job = tuple(entry for entry in entries_on(request, entries) if told.tells(entry))
        # what is counted on its job is not counted once more as outside any
        counted |= {entry.id for entry in on_job}
        laid = _passes_of(request, on_job, inventory)
        if on_job:
            on = left[request.job_id]
            found += _of_a_job(request, planned, on_job, told, grounds, laid, on)
        else:
            found += planned
    for entry in entries:
        if entry.id not in counted and told.tells(entry):
            found += _outside(entry, told, grounds, areas)
    return tuple(found)


def _passes_of(
    request: JobRequest, on_job: tuple[LogEntry, ...], inventory: Inventory
) -> Passes | None:
    """Return the passes of a job, where all of it went through the planned sprayer."""
    planned = request.work.sprayer if request.work is not None else None
    if planned is None or any(sprayer_of(entry, inventory.places()) != planned for entry in on_job):
        # the bare ground then counts, which is less than what passes lay: the larger rate
        return None
    machine = machine_for(planned, inventory.measures, inventory.sprayers)
    # what went stays as it went, whatever is left of the place by now
    return passes_of(request, machine, all_left(request.ground, request.area))


def _of_a_job(
    request: JobRequest,
    planned: tuple[PlannedSpray, ...],
    on_job: tuple[LogEntry, ...],
    told: Sprayings,
    grounds: Mapping[str, frozenset[str]],
    passes: Passes | None,
    left: GroundLeft,
) -> Iterator[PlannedSpray]:
    by_product = {spray.product_id: spray for spray in planned if spray.product_id}
    named = [name for entry in on_job for name in _products(entry, told)]
    finished = finished_on(on_job) is not None
    unsaid = any(not _products(entry, told) for entry in on_job)
    # where an entry bounds what is not known, it counts on the places it may have been on too
    where = frozenset().union(grounds[request.ground.id], *(
        grounds[place] for entry in on_job for place in told.places_of(entry)
    ))  # fmt: skip
    days = [day for entry in on_job for day in (entry.done_on, latest_day(entry))]
    # what was not planned went over the same ground as often as what was
    as_often = passes.most_times if passes is not None else 1
    laid_times = max((spray.laid_times for spray in planned), default=as_often)
    laid = passes.ground if passes is not None else None
    blank = replace(_blank(request, where), laid_times=laid_times)
    if not by_product and unsaid:
        yield replace(
            blank, opens=min(days), closes=max(days), by_log=True, gaps=frozenset({"product"})
        )
    for product_id in dict.fromkeys([*by_product, *named]):
        product = told.products[product_id]
        spray = replace(by_product.get(product_id) or _named(blank, product), grounds=where)
        ground = treated(request)
        # finished on ground nobody said it makes no rate: spread over all, it would look little
        unsaid_ground = None if finished else treated(request, left)
        puts = tuple(
            _puts(
                product,
                on_job,
                told,
                _Ground(request.area, ground, unsaid_ground, laid),
                request.job_id,
            )
        )
        got = _on_an_acre(request, product, puts)
        nothing_said = unsaid or (finished and not puts) or any(put.area_ac is None for put in puts)
        gaps = _gaps(product, puts, got.rate, nothing_said=nothing_said)
        spray = replace(spray, gaps=gaps, times=got.times)
        if finished:
            spray = replace(spray, opens=min(days), closes=max(days), by_log=True)
            # without an amount at least what was planned is shown; nothing is cleared by it
            yield replace(spray, rate=got.rate or spray.rate, most=got.most)
        else:
            yield _begun(spray, got.most or got.rate, days)


def _begun(spray: PlannedSpray, rate: JobRate | None, days: list[datetime.date]) -> PlannedSpray:
    """Return a begun spraying at the larger of what was used and what was planned."""
    # days of its plan that are not known stay so: the rest of it may be done in any year
    opens = min([spray.opens, *days]) if spray.opens is not None else None
    closes = max([spray.closes, *days]) if spray.closes is not None else None
    spray = replace(spray, opens=opens, closes=closes)
    planned = spray.rate
    if rate is None or (planned is not None and planned.product.value >= rate.product.value):
        return spray
    return replace(spray, rate=rate)


def _products(entry: LogEntry, told: Sprayings) -> tuple[str, ...]:
    """Return what an entry says was sprayed, or could have been."""
    unknown = entry.unknown.products if entry.unknown is not None else ()
    return tuple(dict.fromkeys([*(used.item for used in told.used(entry)), *unknown]))


def _puts(
    product: Product,
    entries: Iterable[LogEntry],
    told: Sprayings,
    ground: _Ground,
    base: str,
) -> Iterator[PutOn]:
    """Yield what entries put down of a product on some ground; the smaller ground counts."""
    number = 0
    for entry in entries:
        if product.id not in _products(entry, told):
            continue
        area = area_of(entry)
        place = ground.place
        counts = ground.counted(area)
        most = entry.unknown.most if entry.unknown is not None else None
        amounts = tuple(one.amount for one in told.used(entry) if one.item == product.id)
        # named without an amount, it was sprayed all the same: a put without a rate is a gap
        for used in amounts or (None,):
            number += 1
            on = ground.sprayed(area)
            rate = most or _applied(f"{base}/{product.id}.logged_{number}", product, used, on)
            if rate is not None and not _fits(rate, product):
                rate = None
            said_ac = counts.value if area is not None and counts is not None else None
            larger = area is not None and place is not None and larger_than_its_place(area, place)
            yield PutOn(entry, rate, said_ac, larger)


def _fits(rate: Given | Quantity, product: Product) -> bool:
    card = product.label
    return card is not None and rate.unit == ("lb_per_ac" if is_dry(card) else "fl_oz_per_ac")


def _applied(
    base: str, product: Product, used: Given | None, area: Given | Quantity | None
) -> Quantity | None:
    if product.label is None or area is None or used is None:
        return None
    dry = is_dry(product.label)
    if used.unit != ("lb" if dry else "fl_oz"):
        return None
    if dry:
        return applied.APPLIED_LB(f"{base}_lb_per_ac", used_lb=used, area_ac=area)
    return applied.APPLIED_FL_OZ(f"{base}_fl_oz_per_ac", used_fl_oz=used, area_ac=area)


def _gaps(
    product: Product, puts: tuple[PutOn, ...], rate: JobRate | None, *, nothing_said: bool
) -> frozenset[Gap]:
    """Return what is not known of a product that was sprayed."""
    found: set[Gap] = set()
    # without its actives nobody can say which labels count it
    if product.label is None or not product.label.actives:
        found.add("product")
    if nothing_said or (puts and rate is None):
        found.add("amount")
    if any(put.too_much_ground for put in puts):
        found.add("area")
    return frozenset(found)


@dataclass(frozen=True, slots=True)
class _OnAnAcre:
    """What an acre of a job got: surely, and at most where entries may be of the same ground."""

    rate: JobRate | None
    most: JobRate | None
    times: int


def _on_an_acre(request: JobRequest, product: Product, puts: tuple[PutOn, ...]) -> _OnAnAcre:
    """Return what an acre of a job got of a product, as far as its entries say.

    Parts that each entry names are ground of their own; so are entries on days in a row whose
    ground fits onto the job's. Later ones may be over the same ground; what does not fit is.
    """
    ground_ac = treated(request).value
    parts = by_part(puts, ground_ac)
    groups = parts or tuple(most_of(run, ground_ac) for run in runs_of_days(puts))
    certain = fit_on([put.area_ac or ground_ac for put in puts], ground_ac)
    counts = [len(group) for group in groups]
    # parts lie side by side, and the one with most counts; else every run may be on one acre
    times = max([1, max(counts, default=1) if parts else sum(counts)])
    card = product.label
    if card is None or not puts or any(put.rate is None for put in puts):
        return _OnAnAcre(None, None, times)
    base = f"{request.job_id}/{product.id}."
    sums = [
        _together(f"{base}group_{number}", card, [put.rate for put in group if put.rate])
        for number, group in enumerate(groups, 1)
    ]
    largest = rate_of_product(f"{base}logged_", max(sums, key=lambda rate: rate.value), card)
    if parts or len(sums) == 1:
        return _OnAnAcre(largest, None, times)
    in_all = rate_of_product(f"{base}logged_all_", _together(f"{base}logged", card, sums), card)
    return _OnAnAcre(largest, in_all, times) if certain else _OnAnAcre(in_all, None, times)


def _together(base: str, card: LabelCard, rates: Sequence[Given | Quantity]) -> Given | Quantity:
    if len(rates) == 1:
        return rates[0]
    if is_dry(card):
        return TOTAL_RATE(f"{base}_lb_per_ac", parts=tuple(rates))
    return TOTAL_FL_OZ_PER_AC(f"{base}_fl_oz_per_ac", parts=tuple(rates))


def _outside(
    entry: LogEntry,
    told: Sprayings,
    grounds: Mapping[str, frozenset[str]],
    areas: Mapping[str, Quantity],
) -> Iterator[PlannedSpray]:
    """Yield what an entry put on ground that is no job of the plan's.

    Where it can have been on several places, it counts on each as if it had been there.
    """
    where, place = told.places_of(entry), told.place_of(entry)
    if place is None and entry.unknown is None:
        if where:
            spread = frozenset().union(*(grounds[place_id] for place_id in where))
            yield from _put_on(entry, told, "", spread, None, frozenset({"place"}))
        return
    for place_id in sorted(where):
        yield from _put_on(entry, told, place_id, grounds[place_id], areas[place_id], frozenset())


def _put_on(
    entry: LogEntry,
    told: Sprayings,
    place: str,
    grounds: frozenset[str],
    ground: Quantity | None,
    gaps: frozenset[Gap],
) -> Iterator[PlannedSpray]:
    """Yield what an entry put on a place of some ground, product by product."""
    latest = latest_day(entry)
    blank = PlannedSpray(
        f"{OUTSIDE}{entry.id}", place, grounds, crop_on(place, entry.done_on, latest), "", "", (),
        (), None, entry.done_on, latest, by_log=True, part=part_told(entry),
    )  # fmt: skip
    names = _products(entry, told)
    if not names:
        yield replace(blank, gaps=gaps | {"product"})
    base = f"{place}/{entry.id}" if place else f"{OUTSIDE}{entry.id}"
    for name in names:
        product = told.products[name]
        puts = tuple(_puts(product, (entry,), told, _Ground(ground, ground, None), base))
        rate = _all_of(f"{base}/{name}.", product, puts)
        unsaid = _gaps(product, puts, rate, nothing_said=False)
        yield replace(_named(blank, product), rate=rate, gaps=gaps | unsaid)


def _all_of(base: str, product: Product, puts: tuple[PutOn, ...]) -> JobRate | None:
    """Return what one entry put on an acre of a product in all, None where that is not known."""
    card = product.label
    rates = [put.rate for put in puts if put.rate is not None]
    if card is None or not rates or len(rates) < len(puts):
        return None
    return rate_of_product(base, _together(f"{base}in_all", card, rates), card)


def _blank(request: JobRequest, where: frozenset[str]) -> PlannedSpray:
    return PlannedSpray(
        request.job_id,
        request.ground.id,
        where,
        crop_of(request.ground, request.planting),
        "",
        "",
        (),
        (),
        None,
        None,
        None,
        part=request.work.part if request.work else None,
    )


def _named(spray: PlannedSpray, product: Product) -> PlannedSpray:
    card = product.label
    return replace(
        spray,
        product_id=product.id,
        product_name=product.name,
        actives=card.named_actives if card else (),
        pooled=card.named_pooled if card else (),
    )
