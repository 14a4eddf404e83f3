"""What is to be said of the seed of a sowing: how far it goes, its tag, its inoculant."""

import datetime
from collections.abc import Iterator

from generator.compute.seed_short import WAITING_AREA
from generator.inventory.fields import FirstOfMonth
from generator.inventory.stock import SeedLot
from generator.plan.findings.about_sowing import SowCaution, SowNote, SowStop
from generator.plan.findings.order import finding, older_than_a_year
from generator.plan.findings.words import Caution
from generator.plan.jobs.request import JobRequest
from generator.plan.model.days import MONTHS, day_words
from generator.plan.model.finding import Finding, about_job
from generator.plan.model.work import Sowing
from generator.plan.season.open_dates import judged_on
from generator.plan.sowing.seed_short import Reach
from generator.reference.library import Species, species, values
from generator.units import convert
from generator.working import Given

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


def reach_findings(request: JobRequest, reach: Reach | None) -> Iterator[Finding]:
    """Yield what a short lot means for this place."""
    if reach is None:
        return
    job_id, where = request.job_id, request.planting.where
    if reach.lot is not None and reach.area is None:
        waiting = WAITING_AREA(f"{job_id}/waiting_area_ac", area_ac=request.area)
        figures = (("Not sown", waiting),)
        yield finding(SowStop.SEED_WAITS, about_job(job_id), where, figures, lot=reach.lot.id)
    elif reach.lot is not None and reach.area is not None and reach.not_sown is not None:
        both = (("Sown at the full rate", reach.area), ("Not sown", reach.not_sown))
        yield finding(SowCaution.SEED_SHORT, about_job(job_id), where, both, lot=reach.lot.id)
    if reach.order_guessed:
        yield finding(SowCaution.ORDER_GUESSED, about_job(job_id), where)


def lot_findings(request: JobRequest, parts: tuple[Sowing, ...]) -> Iterator[Finding]:
    """Yield cautions and notes on the lots, judged on the last open day of the job."""
    for part in parts:
        lot, job_id = part.lot, request.job_id
        yield from _dormant(request, part)
        yield from _tested(request, lot)
        yield from tag_findings(request, lot)
        if says_something(lot.tag.noxious_weeds):
            yield finding(
                SowCaution.NOXIOUS,
                about_job(job_id),
                lot.where,
                lot=lot.id,
                weeds=str(lot.tag.noxious_weeds),
            )
        if says_something(lot.tag.treated):
            yield finding(
                SowCaution.TREATED,
                about_job(job_id),
                lot.where,
                lot=lot.id,
                treated=str(lot.tag.treated),
            )
        yield from _inoculated(request, lot)
        if lot.live_seeds_per_lb is None:
            yield finding(SowNote.NO_SIZE, about_job(job_id), lot.where, lot=lot.id)


def says_something(printed: str | None) -> bool:
    """Return whether a tag lists anything there; only whole words for none mean none."""
    return printed is not None and printed.strip(" .").casefold() not in NONE


def _dormant(request: JobRequest, part: Sowing) -> Iterator[Finding]:
    lot, share = part.lot, part.numbers["dormant_share_fraction"]
    if not share.value or not species()[lot.species].dormancy:
        return
    closes = request.dates.closes
    # from September on a whole winter is still ahead of the seed
    late = closes is not None and LATE_FROM <= (closes.month, closes.day) < (9, 1)
    figures = (
        ("Asleep in the test", share),
        ("On the tag", part.numbers["pls_fraction"]),
        ("To an acre, as the tag counts it", part.rate),
        ("Ready to grow without a winter", part.numbers["ready_rate_pls_lb_per_ac"]),
    )
    reason = SowCaution.DORMANT_LATE if late else SowCaution.DORMANT
    yield finding(reason, about_job(request.job_id), lot.where, figures, lot=lot.id)


def _tested(request: JobRequest, lot: SeedLot) -> Iterator[Finding]:
    tested, judged = lot.tag.tested_on, judged_on(request.dates, request.season)
    if tested is None:
        why = "has no date"
    elif older_than_a_year(tested, judged):
        why = "is more than a year older than this job"
    else:
        return
    yield finding(
        SowCaution.OLD_SEED_TEST, about_job(request.job_id), lot.where, lot=lot.id, why=why
    )


def _inoculated(request: JobRequest, lot: SeedLot) -> Iterator[Finding]:
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
            SowCaution.NO_INOCULANT,
            about_job(request.job_id),
            lot.where,
            lot=lot.id,
            species=name,
            group=group,
        )
        return
    why = _unfit(lot, kind, judged_on(request.dates, request.season))
    if why:
        at = lot.inoculant.where
        yield finding(
            SowCaution.INOCULANT_UNFIT,
            about_job(request.job_id),
            at,
            lot=lot.id,
            species=name,
            why=why,
        )
    if lot.inoculant.expires_on is None:
        yield finding(
            SowNote.INOCULANT_UNDATED, about_job(request.job_id), lot.inoculant.where, lot=lot.id
        )


def _unfit(lot: SeedLot, kind: Species, judged: datetime.date) -> str:
    assert lot.inoculant is not None
    group, last = lot.inoculant.group, lot.inoculant.expires_on
    # as a whole word: a group of one letter is part of almost any other word
    if kind.inoculant_group and kind.inoculant_group.casefold() not in _words(group):
        return f"is for {group}, and this plant takes group {kind.inoculant_group}"
    if last is not None and last < judged:
        if isinstance(last, FirstOfMonth):
            return (
                f"is good until {MONTHS[last.month - 1]} {last.year}, which counts from its first "
                "day since it names none, and the job may be done after that"
            )
        return f"is good until {day_words(last)} alone, and the job may be done after that"
    return ""


def _words(text: str) -> list[str]:
    return "".join(letter if letter.isalnum() else " " for letter in text.casefold()).split()


# A blank there must not pass for none: what the tag lists can be unlawful or unsafe to sow.
MUST_BE_READ = {
    "noxious_weeds": "what noxious weed seed it lists",
    "treated": "whether the seed is treated",
}


def tag_findings(request: JobRequest, lot: SeedLot) -> Iterator[Finding]:
    """Yield cautions on much weed seed or other crop, and on what was not typed from the tag."""
    tag = lot.tag
    yield from _much(request, lot, tag.weed_fraction, SowCaution.WEED_SEED, "most_weed_seed_pct")
    yield from _much(
        request, lot, tag.other_crop_fraction, SowCaution.OTHER_CROP, "most_other_crop_pct"
    )
    missing = [name for name in MUST_BE_READ if getattr(tag, name) is None]
    if missing:
        yield finding(
            SowCaution.TAG_NOT_TYPED,
            about_job(request.job_id),
            tag.where,
            lot=lot.id,
            told=" and ".join(MUST_BE_READ[name] for name in missing),
            missing=" and ".join(missing),
        )


def _much(
    request: JobRequest, lot: SeedLot, share: Given | None, reason: Caution, limit: str
) -> Iterator[Finding]:
    most = values()[limit]
    if share is not None and share.value > convert(most.value, most.unit, "fraction"):
        figures = (("On the tag", share), ("Seldom over", most))
        yield finding(reason, about_job(request.job_id), lot.where, figures, lot=lot.id)
