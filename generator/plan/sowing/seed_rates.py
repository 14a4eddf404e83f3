"""What a sowing takes of every lot: rates, seed off the bag, seeds on the ground."""

from generator.compute import buying, seed, seed_rate
from generator.inventory.places import Planting, SownSeed
from generator.inventory.stock import SeedLot
from generator.plan.model.work import Sowing
from generator.working import Figure, Quantity


def sowings(
    job_id: str, planting: Planting, area: Quantity, lots: tuple[SeedLot, ...]
) -> tuple[Sowing, ...]:
    """Return the numbers of every lot in the sowing of an area."""
    by_id = {lot.id: lot for lot in lots}
    return tuple(_sowing(job_id, planting, part, by_id[part.lot], area) for part in planting.seed)


def _sowing(
    job_id: str, planting: Planting, part: SownSeed, lot: SeedLot, area: Quantity
) -> Sowing:
    tag, base = lot.tag, f"{job_id}/{lot.id}"
    pls = seed.PLS_FRACTION(
        f"{base}.pls_fraction",
        purity_fraction=tag.purity_fraction,
        germination_fraction=tag.germination_fraction,
        hard_fraction=tag.hard_fraction,
        dormant_fraction=tag.dormant_fraction,
    )
    dormant = seed.DORMANT_SHARE(
        f"{base}.dormant_share_fraction",
        germination_fraction=tag.germination_fraction,
        hard_fraction=tag.hard_fraction,
        dormant_fraction=tag.dormant_fraction,
    )
    rate = _rate(base, planting, part, lot)
    numbers = {
        "pls_fraction": pls,
        "bulk_rate_lb_per_ac": seed.BULK_RATE(
            f"{base}.bulk_rate_lb_per_ac", rate_pls_lb_per_ac=rate, pls_fraction=pls
        ),
        "bulk_seed_lb": seed.BULK_SEED(
            f"{base}.bulk_seed_lb", area_ac=area, rate_pls_lb_per_ac=rate, pls_fraction=pls
        ),
        # told beside, and never reckoned in: a rate of live seed counts dormant seed as alive
        "dormant_share_fraction": dormant,
        "ready_rate_pls_lb_per_ac": seed.READY_RATE(
            f"{base}.ready_rate_pls_lb_per_ac",
            rate_pls_lb_per_ac=rate,
            germination_fraction=tag.germination_fraction,
            hard_fraction=tag.hard_fraction,
            dormant_fraction=tag.dormant_fraction,
        ),
    }
    return Sowing(lot, rate, numbers | _counted(base, lot, rate))


def _rate(base: str, planting: Planting, part: SownSeed, lot: SeedLot) -> Figure:
    """Return the pure live seed to an acre as typed, or from seeds counted, or from a share."""
    if part.rate_seeds_per_sq_ft is not None and lot.live_seeds_per_lb is not None:
        return seed_rate.COUNTED_RATE(
            f"{base}.rate_pls_lb_per_ac",
            rate_seeds_per_sq_ft=part.rate_seeds_per_sq_ft,
            live_seeds_per_lb=lot.live_seeds_per_lb,
        )
    if part.share_fraction is not None and planting.mix_rate_pls_lb_per_ac is not None:
        return seed_rate.SHARE_RATE(
            f"{base}.rate_pls_lb_per_ac",
            mix_rate_pls_lb_per_ac=planting.mix_rate_pls_lb_per_ac,
            share_fraction=part.share_fraction,
        )
    assert part.rate_pls_lb_per_ac is not None  # a rule holds every seed to one rate
    return part.rate_pls_lb_per_ac


def _counted(base: str, lot: SeedLot, rate: Figure) -> dict[str, Quantity]:
    if lot.live_seeds_per_lb is None:
        return {}
    return {
        "seeds_per_sq_ft": seed.SEEDS_PER_SQ_FT(
            f"{base}.seeds_per_sq_ft",
            rate_pls_lb_per_ac=rate,
            live_seeds_per_lb=lot.live_seeds_per_lb,
        )
    }


def together(job_id: str, planting: Planting, parts: tuple[Sowing, ...]) -> dict[str, Quantity]:
    """Return what all lots come to together: seed off the bag, and seeds where all are counted."""
    numbers = {
        "bulk_seed_lb": buying.TOTAL_LB(
            f"{job_id}/bulk_seed_lb", parts=_each(parts, "bulk_seed_lb")
        )
    }
    seeds = _each(parts, "seeds_per_sq_ft")
    # a sum that leaves out a kind without a count would pass for that of all
    if len(parts) == 1 or len(seeds) < len(parts):
        return numbers
    numbers["seeds_per_sq_ft"] = seed_rate.TOGETHER(
        f"{job_id}/seeds_per_sq_ft", each_seeds_per_sq_ft=seeds
    )
    shares = _shares(job_id, planting, parts)
    if shares:
        numbers["mix_seeds_per_lb"] = seed_rate.MIX_SEEDS(
            f"{job_id}/mix_seeds_per_lb", share_seeds_per_lb=shares
        )
    return numbers


def _shares(job_id: str, planting: Planting, parts: tuple[Sowing, ...]) -> tuple[Quantity, ...]:
    """Return the seeds each kind brings to a pound of a mixture, or nothing of no mixture."""
    return tuple(
        seed_rate.SHARE_SEEDS(
            f"{job_id}/{sowing.lot.id}.share_seeds_per_lb",
            share_fraction=part.share_fraction,
            live_seeds_per_lb=sowing.lot.live_seeds_per_lb,
        )
        for part, sowing in zip(planting.seed, parts, strict=True)
        if part.share_fraction is not None and sowing.lot.live_seeds_per_lb is not None
    )


def _each(parts: tuple[Sowing, ...], name: str) -> tuple[Quantity, ...]:
    return tuple(part.numbers[name] for part in parts if name in part.numbers)


def bulk_rate(job_id: str, parts: tuple[Sowing, ...]) -> Quantity:
    """Return the seed of all lots off the bag to an acre."""
    return buying.TOTAL_RATE(
        f"{job_id}/bulk_rate_lb_per_ac", parts=_each(parts, "bulk_rate_lb_per_ac")
    )


def heaviest(parts: tuple[Sowing, ...]) -> SeedLot:
    """Return the lot that weighs most in the sowing: catch tests are made with it."""
    return max(parts, key=lambda part: part.numbers["bulk_seed_lb"].value).lot
