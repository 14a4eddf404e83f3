"""What is to be said of the seed of a sowing: how far it goes, its tag, its inoculant."""

import datetime
from collections.abc import Iterator

from generator.compute.seed_short import WAITING_AREA
from generator.inventory.fields import FirstOfMonth
from generator.inventory.stock import SeedLot
from generator.plan.asked import JobAsked
from generator.plan.cautions import Caution
from generator.plan.findings import finding, older_than_a_year
from generator.plan.known_days import judged_on
from generator.plan.model import Finding, Sowing
from generator.plan.notes import Note
from generator.plan.seed_short import Reach
from generator.plan.stops import Stop
from generator.plan.tag_findings import tag_findings
from generator.reference.load import Species, species

# Common practice: from April on too little winter is left to wake much of the seed.
LATE_FROM = (4, 1)
NONE = (
    "none",
    "none found",
    "none listed",
    "nothing",
    "no",
    "nil",
    "0",
    "untreated",
    "not treated",
)


def reach_findings(asked: JobAsked, reach: Reach | None) -> Iterator[Finding]:
    """Yield what a short lot means for this place."""
    if reach is None:
        return
    job_id, where = asked.job_id, asked.planting.where
    if reach.lot is not None and reach.area is None:
        waiting = WAITING_AREA(f"{job_id}/waiting_area_ac", area_ac=asked.area)
        figures = (("Not sown", waiting),)
        yield finding(Stop.SEED_WAITS, job_id, where, figures, lot=reach.lot.id)
    elif reach.lot is not None and reach.area is not None and reach.not_sown is not None:
        both = (("Sown at the full rate", reach.area), ("Not sown", reach.not_sown))
        yield finding(Caution.SEED_SHORT, job_id, where, both, lot=reach.lot.id)
    if reach.order_guessed:
        yield finding(Caution.ORDER_GUESSED, job_id, where)


def lot_findings(asked: JobAsked, parts: tuple[Sowing, ...]) -> Iterator[Finding]:
    """Yield cautions and notes on the lots, judged on the last open day of the job."""
    for one in parts:
        lot, job_id = one.lot, asked.job_id
        yield from _dormant(asked, one)
        yield from _tested(asked, lot)
        yield from tag_findings(asked, lot)
        if says_something(lot.tag.noxious_weeds):
            yield finding(
                Caution.NOXIOUS, job_id, lot.where, lot=lot.id, weeds=str(lot.tag.noxious_weeds)
            )
        if says_something(lot.tag.treated):
            yield finding(
                Caution.TREATED, job_id, lot.where, lot=lot.id, treated=str(lot.tag.treated)
            )
        yield from _inoculated(asked, lot)
        if lot.live_seeds_per_lb is None:
            yield finding(Note.NO_SIZE, job_id, lot.where, lot=lot.id)


def says_something(printed: str | None) -> bool:
    """Return whether a tag lists anything there; only whole words for none mean none."""
    return printed is not None and printed.strip(" .").casefold() not in NONE


def _dormant(asked: JobAsked, part: Sowing) -> Iterator[Finding]:
    lot, share = part.lot, part.numbers["dormant_share_fraction"]
    if not share.value or not species()[lot.species].dormancy:
        return
    closes = asked.dates.closes
    late = closes is not None and LATE_FROM <= (closes.month, closes.day) < (9, 1)
    figures = (
        ("Asleep in the test", share),
        ("On the tag", part.numbers["pls_fraction"]),
        ("To an acre, as the tag counts it", part.rate),
        ("Ready to grow without a winter", part.numbers["ready_rate_pls_lb_per_ac"]),
    )
    reason = Caution.DORMANT_LATE if late else Caution.DORMANT
    yield finding(reason, asked.job_id, lot.where, figures, lot=lot.id)


def _tested(asked: JobAsked, lot: SeedLot) -> Iterator[Finding]:
    tested, judged = lot.tag.tested_on, judged_on(asked.dates, asked.season)
    if tested is None:
        why = "has no date"
    elif older_than_a_year(tested, judged):
        why = "is more than a year older than this job"
    else:
        return
    yield finding(Caution.OLD_SEED_TEST, asked.job_id, lot.where, lot=lot.id, why=why)


def _inoculated(asked: JobAsked, lot: SeedLot) -> Iterator[Finding]:
    kind = species()[lot.species]
    if not kind.legume:
        return
    name = kind.name
    if lot.inoculant is None:
        group = (
            f"group {kind.inoculant_group}"
            if kind.inoculant_group
            else "the group its seller names"
        )
        yield finding(
            Caution.NO_INOCULANT, asked.job_id, lot.where, lot=lot.id, species=name, group=group
        )
        return
    why = _unfit(lot, kind, judged_on(asked.dates, asked.season))
    if why:
        at = lot.inoculant.where
        yield finding(Caution.INOCULANT_UNFIT, asked.job_id, at, lot=lot.id, species=name, why=why)
    if lot.inoculant.expires_on is None:
        yield finding(Note.INOCULANT_UNDATED, asked.job_id, lot.inoculant.where, lot=lot.id)


def _unfit(lot: SeedLot, kind: Species, judged: datetime.date) -> str:
    assert lot.inoculant is not None
    group, last = lot.inoculant.group, lot.inoculant.expires_on
    if kind.inoculant_group and kind.inoculant_group.casefold() not in _words(group):
        return f"is for {group}, and this plant takes group {kind.inoculant_group}"
    if last is not None and last < judged:
        if isinstance(last, FirstOfMonth):
            return (
                f"is good until {last:%Y-%m}, which counts from its first day since no day is "
                "typed, and the job may be done after that"
            )
        return f"is good until {last.isoformat()} alone, and the job may be done after that"
    return ""


def _words(text: str) -> list[str]:
    return "".join(one if one.isalnum() else " " for one in text.casefold()).split()
