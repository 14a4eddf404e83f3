"""Sowings held back by what was or will be sprayed on the same ground, and everything decided."""

import datetime
from collections.abc import Iterable, Iterator, Mapping

from generator.compute.waiting import DAYS_SHORT
from generator.inventory.log import LogEntry
from generator.inventory.schema import Inventory
from generator.plan.after.count_decisions import decision_findings, planting_counts
from generator.plan.after.residues import UP_TO_SOWING, Residue, residues, sprayed_nowhere
from generator.plan.after.waiting_days import waiting_findings
from generator.plan.after.waits import Wanted, day_after, place_waits, wait_of
from generator.plan.findings.about_after import AfterCaution, AfterStop
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.labels.sowing_wait import BEFORE
from generator.plan.log.done import entries_on, finished_on
from generator.plan.log.longest import bound_of_a_sowing
from generator.plan.model.counts import Ask, Decided
from generator.plan.model.days import day_words
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.place import Place
from generator.reference.library import species
from generator.working import Given, Reference


def decide(
    inventory: Inventory,
    places: Mapping[str, Place],
    ever: Iterable[JobRequest],
    listed: Iterable[JobRequest],
    entries: tuple[LogEntry, ...],
    as_of: datetime.date,
    grounds: Mapping[str, frozenset[str]],
    sprayed_later: Mapping[str, str],
) -> tuple[Decided, list[Finding]]:
    """Return what counts and labels say of every place, and what is to be told of it.

    Sprayings of every job there ever is count; what is told is of the jobs that are listed.
    `grounds` are the places on whose ground each place lies; `sprayed_later` says by place what of
    its sprayings is later than the plan's day: nothing can be said there of when what may be sown.
    """
    ahead = tuple(
        request for request in listed if finished_on(entries_on(request, entries)) is None
    )
    # every season's, listed or not: the soil keeps what another season put on it
    sprayed = residues(ever, inventory, entries, grounds)
    waits = tuple(
        wait.not_answered(sprayed_later[wait.place_id]) if wait.place_id in sprayed_later else wait
        for wait in place_waits(inventory.products, inventory.places(), sprayed)
    )
    counts = planting_counts(inventory, places.values(), entries)
    bound = bound_of_a_sowing(inventory.products)
    on_place: dict[str, list[tuple[int, Residue]]] = {}
    for number, residue in enumerate(sprayed, 1):
        on_place.setdefault(residue.spraying.place_id, []).append((number, residue))
    found = [
        told
        for asked in ahead
        if asked.step.does.brings_plants
        for told in held_back(asked, on_place.get(asked.ground.id, ()), bound, as_of)
    ]
    found += decision_findings(counts, waits, as_of)
    found += waiting_findings(sprayed, ahead, inventory.products, inventory.dates, as_of)
    nowhere = sprayed_nowhere(inventory, entries)
    return Decided(counts, waits, nowhere, inventory.property.noxious), found


def held_back(
    request: JobRequest,
    sprayed: Iterable[tuple[int, Residue]],
    bound: Given | None,
    as_of: datetime.date,
) -> Iterator[Finding]:
    """Yield what holds a sowing back after sprayings of its ground, and what is not known of it.

    Each spraying comes with a number that tells it from others.
    """
    kinds = frozenset({request.kind, *(species()[name].kind for name in request.species)})
    wanted = Wanted(kinds, request.species)
    for number, residue in sprayed:
        if not _comes_before(residue, request):
            continue
        wait = wait_of(residue, wanted, bound)
        yield from _not_known(request, residue, wait.asks, as_of)
        if (
            wait.days is not None
            and not _held_by_its_job(request, residue, wait.days)
            and _comes_too_soon(request, residue, wait.days, as_of)
        ):
            yield _too_soon(request, residue, wait.days, number, as_of)


def _comes_before(residue: Residue, request: JobRequest) -> bool:
    """Whether a spraying lies on the ground before a sowing, as far as the days are known."""
    spraying = residue.spraying
    if spraying.place_id != request.ground.id:
        return False
    # a step after its own sowing holds that back on no account, whatever its dates
    own = spraying.planting_id == request.planting.id
    if own and residue.after_sowing and request.step.timing in UP_TO_SOWING:
        return False
    closes = request.dates.closes
    # days not known may lie before, and so may one on the last open day itself
    return spraying.first is None or closes is None or spraying.first <= closes


def _held_by_its_job(request: JobRequest, residue: Residue, wait: Given) -> bool:
    """Whether a planned spraying is stopped itself where it leaves its own sowing too few days."""
    own = residue.spraying.planting_id == request.planting.id and not residue.spraying.logged
    # the very figure: other waits of as many days are no stop of the spraying itself
    asks = any(use.seeding_interval_days == wait for use in residue.uses)
    return own and residue.timing == BEFORE and asks


def _comes_too_soon(
    request: JobRequest, residue: Residue, wait: Given | None, as_of: datetime.date
) -> bool:
    """Whether a sowing opens before a wait is over, and it is not over on the plan's day either.

    A sowing whose open dates are not known may be done today. A wait without days has no end.
    """
    spraying = residue.spraying
    if spraying.last is None:
        return False
    if wait is None:
        return True
    over = day_after(spraying.last, wait)
    if spraying.logged and over <= as_of:
        return False
    # the wait is over on that day, so a sowing that opens on it waits for nothing
    return over > (request.dates.opens or as_of)


def _not_known(
    request: JobRequest, residue: Residue, asks: tuple[Ask, ...], as_of: datetime.date
) -> Iterator[Finding]:
    """Yield what is to be asked of a spraying: a stop while the answer could hold the sowing back.

    What a card leaves out, and a card without a use for it, stop a planned job itself; here they
    are asked of what is logged.
    """
    logged = residue.spraying.logged
    for ask in asks:
        # two stops for one gap of a card would look like two gaps
        if not logged and not (residue.matched and (ask.crops or ask.line)):
            continue
        if _comes_too_soon(request, residue, ask.longest, as_of):
            yield _stopped(request, residue, ask)
        elif logged and ask.line is None:
            yield finding(
                AfterCaution.WAIT_NOT_KNOWN,
                about_job(request.job_id),
                day=_day(residue),
                unknown=ask.asks,
                cure=ask.cure,
            )


def _stopped(request: JobRequest, residue: Residue, ask: Ask) -> Finding:
    last, product, line = residue.spraying.last, residue.product, ask.line
    assert last is not None
    until = day_words(day_after(last, ask.longest)) if ask.longest is not None else ""
    bound = (
        f" Else this stops no sowing from {until} on: the longest wait on any card is over then."
        if until
        else ""
    )
    # cured at the card; a crop that nobody can place, on its own line
    typed_at = product.where if product is not None else None
    return finding(
        AfterStop.WAIT_NOT_KNOWN if line is None else AfterStop.CROP_NOT_KNOWN,
        about_job(request.job_id),
        typed_at if line is None else line.where,
        (("The line asks for", line.wait_days),) if line is not None else (),
        product=residue.spraying.product_name,
        sprayed=_sprayed(residue),
        day=_day(residue),
        unknown=ask.asks,
        cure=ask.cure,
        until=until,
        bound=bound,
    )


def _sprayed(residue: Residue) -> str:
    if residue.nowhere:
        return "may have been sprayed, by an entry of the log that names no place,"
    return "was sprayed" if residue.spraying.logged else "is planned to be sprayed"


def _day(residue: Residue) -> str:
    last = residue.spraying.last
    if last is None:
        return "on a day that is not known"
    return f"on {day_words(last)}" if residue.spraying.logged else f"as late as {day_words(last)}"


def _too_soon(
    request: JobRequest, residue: Residue, wait: Given, number: int, as_of: datetime.date
) -> Finding:
    spraying = residue.spraying
    assert spraying.last is not None
    opens = request.dates.opens or as_of
    between = Reference(
        "between_days",
        (opens - spraying.last).days,
        "days",
        "arithmetic",
        f"from {day_words(spraying.last)} to {day_words(opens)}",
    )
    short = DAYS_SHORT(
        f"{request.job_id}/wait-{number}.short_days", wait_days=wait, between_days=between
    )
    begins = f"the open dates begin {day_words(opens)}"
    return finding(
        AfterStop.SOWN_IN_RESIDUE,
        about_job(request.job_id),
        residue.product.where if residue.product is not None else None,
        (("The label asks for", wait), ("There are", between), ("Too soon by", short)),
        product=spraying.product_name,
        sprayed=_sprayed(residue),
        day=_day(residue),
        earliest=day_words(day_after(spraying.last, wait)),
        opens=begins if request.dates.opens is not None else "its open dates are not known",
    )
