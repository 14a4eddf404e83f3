"""Seed that is far from what is usual: the tag, the seeds of a pound, the rate on an acre."""

from collections.abc import Iterator, Sequence

from generator.compute import seed
from generator.compute.seed_rate import ALONE_SHARE, MIXTURE_SHARE
from generator.dataclass import dataclass
from generator.inventory.fields import Where
from generator.inventory.places import Planting, SownSeed
from generator.inventory.rule import typed_at
from generator.inventory.stock import SeedLot
from generator.plan.findings.about_usual import UsualCaution
from generator.plan.jobs.request import JobRequest
from generator.plan.model.finding import Finding, Subject, about_item, about_job, about_place
from generator.plan.model.job import Job
from generator.plan.model.place import Place
from generator.plan.model.work import Sowing
from generator.plan.sowing.seed_rates import sowings
from generator.plan.usual.out_of_usual import out_of_usual
from generator.reference.library import species, values
from generator.reference.usual import Usual, UsualSeed, usual, usual_seed
from generator.working import Given, Quantity


def unusual_lots(lots: Sequence[SeedLot]) -> Iterator[Finding]:
    """Yield a caution for each lot whose tag or whose seeds in a pound are out of the usual."""
    for lot in lots:
        # little germinates where little is alive: one slip, told at the graver
        found = [_purity(lot), _live(lot) or _germination(lot), _count(lot)]
        yield from (caution for caution in found if caution is not None)


def _purity(lot: SeedLot) -> Finding | None:
    pure = lot.tag.purity_fraction
    return out_of_usual(
        UsualCaution.TAG_OUT_OF_USUAL,
        about_item(lot.id),
        typed_at(pure),
        ("Pure seed on the tag", pure),
        usual("purity", "pct"),
        lot=lot.id,
        what="pure seed",
        keys="purity_pct",
    )


def _alive(lot: SeedLot) -> Quantity:
    tag = lot.tag
    return seed.VIABLE(
        f"seed/{lot.id}/viable_fraction",
        germination_fraction=tag.germination_fraction,
        hard_fraction=tag.hard_fraction,
        dormant_fraction=tag.dormant_fraction,
    )


def _germination(lot: SeedLot) -> Finding | None:
    """Return a caution where little germinates, and little enough is hard or dormant beside it."""
    germinates = lot.tag.germination_fraction
    mostly = values()["mostly_alive_pct"]
    if germinates.value == 0 or not Usual(mostly, None).beyond(_alive(lot)):
        return None
    return out_of_usual(
        UsualCaution.TAG_OUT_OF_USUAL,
        about_item(lot.id),
        typed_at(germinates),
        ("Germination on the tag", germinates),
        usual("germination", "pct"),
        lot=lot.id,
        what="germination",
        keys="germination_pct",
    )


def _live(lot: SeedLot) -> Finding | None:
    tag, live = lot.tag, _alive(lot)
    return out_of_usual(
        UsualCaution.TAG_OUT_OF_USUAL,
        about_item(lot.id),
        typed_at(tag.germination_fraction),
        ("Alive on the tag", live),
        usual("live_seed", "pct"),
        lot=lot.id,
        what="live seed",
        keys="germination_pct, hard_pct and dormant_pct",
    )


def _count(lot: SeedLot) -> Finding | None:
    of_kind = usual_seed().get(lot.species)
    if lot.live_seeds_per_lb is None or of_kind is None:
        return None
    return out_of_usual(
        UsualCaution.SEED_COUNT_OUT_OF_USUAL,
        about_item(lot.id),
        typed_at(lot.live_seeds_per_lb),
        ("Seeds in a pound", lot.live_seeds_per_lb),
        of_kind.seeds,
        lot=lot.id,
        species=species()[lot.species].name,
    )


@dataclass(frozen=True, slots=True)
class Sown:
    """A planting with what it takes of every lot; `base` begins ids, `subject` is told of it."""

    subject: Subject
    base: str
    planting: Planting
    parts: tuple[Sowing, ...]
    when: str = ""


def rate_findings(request: JobRequest, job: Job) -> Iterator[Finding]:
    """Yield a caution for each rate of a sowing that is out of the usual, or for a thin mixture."""
    if job.sowings:
        yield from _rates(
            Sown(about_job(request.job_id), request.job_id, request.planting, job.sowings)
        )


def later_rates(place: Place, lots: tuple[SeedLot, ...], season: int) -> Iterator[Finding]:
    """Yield the same of what is to be sown on a place in seasons after the plan's."""
    for planting in place.typed.plantings if place.typed is not None else ():
        if planting.season > season and planting.seed:
            base = f"{place.id}/{planting.season}/{planting.id}"
            parts = sowings(base, planting, place.area, lots)
            when = f", to be sown for {planting.season}"
            yield from _rates(Sown(about_place(place.id), base, planting, parts, when))


def _rates(asked: Sown) -> Iterator[Finding]:
    """Yield cautions of rates, or one of a thin mixture.

    What a species takes alone bounds it in a mixture from above; from below the parts together.
    """
    parts = list(zip(asked.planting.seed, asked.parts, strict=True))
    alone = len(parts) == 1
    found = [_rate(asked, sown, part, alone) for sown, part in parts]
    told = [caution for caution in found if caution is not None]
    yield from told
    # a rate that is told makes the mixture thin or thick by itself
    if not told and not alone:
        yield from _thin(asked, asked.parts)


def _rate(asked: Sown, sown: SownSeed, part: Sowing, alone: bool) -> Finding | None:
    of_kind = usual_seed().get(part.lot.species)
    if of_kind is None:
        return None
    rate, range_of_it = _typed_rate(asked, sown, part, of_kind)
    if not alone:
        # less than alone is what a part of a mixture should be
        range_of_it = Usual(None, range_of_it.high)
    return out_of_usual(
        UsualCaution.RATE_OUT_OF_USUAL,
        asked.subject,
        _typed_where(asked, sown, rate),
        ("Live seed sown", rate),
        range_of_it,
        what=f"{species()[part.lot.species].name}{asked.when}",
        key=_typed_key(sown),
    )


def _typed_rate(
    asked: Sown, sown: SownSeed, part: Sowing, of_kind: UsualSeed
) -> tuple[Given | Quantity, Usual]:
    """Return a rate with its range, in seeds on a square foot where it was typed in seeds."""
    if sown.rate_seeds_per_sq_ft is not None:
        return sown.rate_seeds_per_sq_ft, _seeds_on_ground(asked, part.lot, of_kind)
    rate = part.rate
    assert isinstance(rate, Given | Quantity)
    return rate, of_kind.rate


def _seeds_on_ground(asked: Sown, lot: SeedLot, of_kind: UsualSeed) -> Usual:
    """Return what a square foot has from the least seed of the largest to the most of the least."""
    ends = (
        seed.SEEDS_PER_SQ_FT(
            f"{asked.base}/{lot.id}.usual_{end}_seeds_per_sq_ft",
            rate_pls_lb_per_ac=rate,
            live_seeds_per_lb=count,
        )
        for end, rate, count in (
            ("low", of_kind.rate.low, of_kind.seeds.low),
            ("high", of_kind.rate.high, of_kind.seeds.high),
        )
        if rate is not None and count is not None
    )
    return Usual(*ends)


def _typed_where(asked: Sown, sown: SownSeed, rate: Given | Quantity) -> Where:
    mixed = asked.planting.mix_rate_pls_lb_per_ac
    if isinstance(rate, Given):
        return typed_at(rate)
    return sown.where if mixed is None else typed_at(mixed)


def _typed_key(sown: SownSeed) -> str:
    if sown.rate_seeds_per_sq_ft is not None:
        return "rate_seeds_per_sq_ft"
    return "mix_rate_pls_lb_per_ac" if sown.rate_pls_lb_per_ac is None else "rate_pls_lb_per_ac"


def _thin(asked: Sown, parts: tuple[Sowing, ...]) -> Iterator[Finding]:
    shares = [
        ALONE_SHARE(
            f"{asked.base}/{part.lot.id}.alone_share_fraction",
            rate_pls_lb_per_ac=part.rate,
            usual_rate_low_lb_per_ac=low,
        )
        for part in parts
        if (of_kind := usual_seed().get(part.lot.species)) and (low := of_kind.rate.low)
    ]
    # with one kind of no known rate left out, any mixture would look thin
    if len(shares) < len(parts):
        return
    together = MIXTURE_SHARE(f"{asked.base}/mixture_share_fraction", each_fraction=tuple(shares))
    found = out_of_usual(
        UsualCaution.RATE_OUT_OF_USUAL,
        asked.subject,
        asked.planting.where,
        ("The kinds together, each of the least that is usual of it alone", together),
        Usual(values()["thinnest_mixture_pct"], None),
        what=f"The mixture{asked.when}",
        key="the rate or the shares",
    )
    yield from [found] if found is not None else []
