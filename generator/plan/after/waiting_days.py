"""How long stock, hay, game and dogs have to wait after a spraying, where a label prints it."""

import datetime
from collections.abc import Iterable, Iterator, Mapping, Sequence

from generator.inventory.dates import HUNTED, DateRange
from generator.inventory.label import Use
from generator.inventory.stock import Product
from generator.plan.after.residues import Residue
from generator.plan.after.waits import day_after
from generator.plan.findings.about_after import AfterCaution
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.jobs.safety import WAIT_LABELS
from generator.plan.log.longest import longest_wait_days, longest_waiting_days
from generator.plan.model.days import ONE_DAY, Span, day_words, days_of, first_record, in_words
from generator.plan.model.finding import Finding, Subject, about_job, about_place
from generator.working import Given

OF_THE_HUNT = ("game", "dogs")
HUNT_LATER = "Hunt elsewhere until that day, and tell everybody who hunts here."
SPRAY_EARLIER = (
    "Spray so early that the wait is over, keep that hunting off this place, or choose another "
    "product."
)


def waiting_findings(
    sprayed: Iterable[Residue],
    ahead: Sequence[JobRequest],
    products: tuple[Product, ...],
    dates: tuple[DateRange, ...],
    as_of: datetime.date,
) -> Iterator[Finding]:
    """Yield what still waits on a sprayed place, and where hunting falls into a wait.

    It is told on the place, and on its jobs `ahead` that open before the wait is over.
    """
    by_id = {request.job_id: request for request in ahead}
    for residue in sprayed:
        spraying = residue.spraying
        if spraying.last is None:
            continue
        if spraying.logged:
            yield from _still(residue, ahead, products, dates, as_of)
        # without a use it is stopped itself, and with its days over it sprays no more
        elif residue.matched and residue.job_id in by_id and spraying.last >= as_of:
            first = max(spraying.first or as_of, as_of)
            about = (about_job(residue.job_id),)
            yield from _hunted(residue, about, dates, (first, spraying.last))


def _waits(residue: Residue) -> Mapping[str, Given]:
    """Return the longest wait before each thing that a use the spraying may rest on asks for."""
    longest: dict[str, Given] = {}
    for use in residue.uses:
        for wait in use.waiting_days if isinstance(use.waiting_days, tuple) else ():
            known = longest.get(wait.before)
            # any of the uses may be the one it was sprayed by, so the longest holds
            if known is None or wait.wait_days.value > known.value:
                longest[wait.before] = wait.wait_days
    return longest


def _still(
    residue: Residue,
    ahead: Sequence[JobRequest],
    products: tuple[Product, ...],
    dates: tuple[DateRange, ...],
    as_of: datetime.date,
) -> Iterator[Finding]:
    """Yield what a logged spraying still asks to wait for, and what is not known of it."""
    place, day = residue.spraying.place_id, residue.spraying.last
    assert day is not None
    product, on = residue.spraying.product_name, f"on {day_words(day)}"
    where = residue.product.where if residue.product is not None else None
    over = {name: (wait, day_after(day, wait)) for name, wait in _waits(residue).items()}
    # on the day itself the wait is over
    left = {name: pair for name, pair in over.items() if as_of < pair[1]}
    if left:
        what = "; ".join(f"{name} before {day_words(until)}" for name, (_, until) in left.items())
        figures = tuple((WAIT_LABELS[name], wait) for name, (wait, _) in left.items())
        subjects = _subjects(place, ahead, max(until for _, until in left.values()))
        for subject in subjects:
            yield finding(
                AfterCaution.WAITS_STILL,
                subject,
                where,
                figures,
                product=product,
                day=on,
                what=what,
            )
        # hunts before the plan's day are over: nobody can keep off any more
        yield from _hunted(residue, subjects, dates, (max(day, as_of), day))
    cure = _left_out(residue)
    if cure and _may_still_run(products, day, as_of):
        yield finding(
            AfterCaution.WAITING_NOT_KNOWN,
            about_place(place),
            where,
            cure=cure,
            product=product,
            day=on,
        )


def _subjects(place: str, ahead: Sequence[JobRequest], until: datetime.date) -> tuple[Subject, ...]:
    """Return a place, and its jobs ahead that open before a day."""
    jobs = (
        about_job(request.job_id)
        for request in ahead
        if request.ground.id == place
        and (request.dates.opens is None or request.dates.opens < until)
    )
    return (about_place(place), *jobs)


def _left_out(residue: Residue) -> str:
    """Return the line that settles what is not known of these waits, empty where all is."""
    if residue.product is None:
        return "Type used: with the product in the log."
    if not residue.uses:
        return "Type the use from the label, with its waiting_days."
    open_uses = [use.site_words for use in residue.uses if _is_left_out(use)]
    if not open_uses:
        return ""
    return (
        f"With the label in hand, type waiting_days of the use {', '.join(open_uses)}; "
        "not_on_label where it is silent."
    )


def _is_left_out(use: Use) -> bool:
    # an empty list is one not filled in: a silent label is typed as such
    return use.waiting_days is None or use.waiting_days == ()


def _may_still_run(products: tuple[Product, ...], day: datetime.date, as_of: datetime.date) -> bool:
    """Whether a wait that is not known may run still: no longer than the longest on any card."""
    # where no card types one, waits before a sowing tell best how long it may be
    bound = longest_waiting_days(products) or longest_wait_days(products)
    return bound is None or as_of < day_after(day, bound)


def _hunted(
    residue: Residue, subjects: Iterable[Subject], dates: tuple[DateRange, ...], days: Span
) -> Iterator[Finding]:
    """Yield a caution where hunting falls between the first day and the end of a wait."""
    waits = {name: wait for name, wait in _waits(residue).items() if name in OF_THE_HUNT}
    place, (first, last) = residue.spraying.place_id, days
    if not waits:
        return
    until = max(day_after(last, wait) for wait in waits.values())
    inside = (first, until - ONE_DAY)
    # a wait of no days has no day inside it
    if inside[1] < first:
        return
    hunted = days_of(dates, HUNTED, place, inside)
    hunt = first_record(dates, HUNTED, place, inside)
    if not hunted or hunt is None:
        return
    logged = residue.spraying.logged
    figures = tuple((WAIT_LABELS[name], wait) for name, wait in waits.items())
    for subject in subjects:
        yield finding(
            AfterCaution.HUNTED_IN_WAIT,
            subject,
            hunt.where,
            figures,
            product=residue.spraying.product_name,
            sprayed="was sprayed" if logged else "is planned to be sprayed",
            day=f"on {day_words(last)}" if logged else f"as late as {day_words(last)}",
            until=day_words(until),
            what=" and ".join(waits),
            days=in_words(hunted),
            cure=HUNT_LATER if logged else SPRAY_EARLIER,
        )
