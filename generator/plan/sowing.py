"""A sowing job: seed off the bag, hopper fills, passes."""

import datetime

from generator.compute import buying, seed, spread
from generator.inventory.equipment import Spreader, SpreaderTest
from generator.inventory.fields import Where
from generator.inventory.places import SownSeed
from generator.inventory.schema import Inventory
from generator.inventory.stock import SeedLot
from generator.plan.findings import finding, older_than_a_year
from generator.plan.model import Finding, Sowing
from generator.plan.reasons import Caution, Note
from generator.reference.load import species
from generator.working import Given, Quantity


def sowings(
    job_id: str, parts: tuple[SownSeed, ...], area: Quantity, inventory: Inventory
) -> tuple[Sowing, ...]:
    """Return the numbers of every lot in the sowing."""
    lots = {lot.id: lot for lot in inventory.lots}
    return tuple(_sowing(job_id, part, lots[part.lot], area) for part in parts)


def _sowing(job_id: str, part: SownSeed, lot: SeedLot, area: Quantity) -> Sowing:
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
    rate = part.rate_pls_lb_per_ac
    numbers = {
        "pls_fraction": pls,
        "bulk_rate_lb_per_ac": seed.BULK_RATE(
            f"{base}.bulk_rate_lb_per_ac", rate_pls_lb_per_ac=rate, pls_fraction=pls
        ),
        "bulk_seed_lb": seed.BULK_SEED(
            f"{base}.bulk_seed_lb", area_ac=area, rate_pls_lb_per_ac=rate, pls_fraction=pls
        ),
        "dormant_share_fraction": dormant,
        "ready_rate_pls_lb_per_ac": seed.READY_RATE(
            f"{base}.ready_rate_pls_lb_per_ac",
            rate_pls_lb_per_ac=rate,
            dormant_share_fraction=dormant,
        ),
    }
    if lot.live_seeds_per_lb is not None:
        numbers["seeds_per_sq_ft"] = seed.SEEDS_PER_SQ_FT(
            f"{base}.seeds_per_sq_ft",
            rate_pls_lb_per_ac=rate,
            live_seeds_per_lb=lot.live_seeds_per_lb,
        )
    return Sowing(lot, rate, numbers)


def hopper_numbers(
    job_id: str,
    parts: tuple[Sowing, ...],
    width: Given,
    spreader: Spreader,
    test: SpreaderTest | None,
) -> dict[str, Quantity]:
    """Return fills, and passes with the correction where there is a catch test."""
    bulk = buying.TOTAL_LB(
        f"{job_id}/bulk_seed_lb", parts=tuple(one.numbers["bulk_seed_lb"] for one in parts)
    )
    fills = spread.FILLS(f"{job_id}/fills_count", bulk_lb=bulk, hopper_lb=spreader.hopper_lb)
    fill = spread.FILL(f"{job_id}/fill_lb", bulk_lb=bulk, fills_count=fills)
    numbers = {"bulk_seed_lb": bulk, "fills_count": fills, "fill_lb": fill}
    return numbers | (_passes(job_id, parts, width, test) if test is not None else {})


def _passes(
    job_id: str, parts: tuple[Sowing, ...], width: Given, test: SpreaderTest
) -> dict[str, Quantity]:
    rate = buying.TOTAL_RATE(
        f"{job_id}/bulk_rate_lb_per_ac",
        parts=tuple(one.numbers["bulk_rate_lb_per_ac"] for one in parts),
    )
    caught = spread.CAUGHT_RATE(
        f"{job_id}/caught_rate_lb_per_ac",
        caught_lb=test.caught_lb,
        swath_ft=test.swath_ft,
        distance_ft=test.distance_ft,
    )
    lanes = spread.LANES(f"{job_id}/lanes_count", width_ft=width, swath_ft=test.swath_ft)
    times = spread.TIMES_OVER(
        f"{job_id}/times_over_count", bulk_rate_lb_per_ac=rate, caught_rate_lb_per_ac=caught
    )
    return {
        "bulk_rate_lb_per_ac": rate,
        "caught_rate_lb_per_ac": caught,
        "lanes_count": lanes,
        "times_over_count": times,
        "passes_count": spread.PASSES(
            f"{job_id}/passes_count", lanes_count=lanes, times_over_count=times
        ),
        "correction_fraction": spread.CORRECTION(
            f"{job_id}/correction_fraction",
            bulk_rate_lb_per_ac=rate,
            caught_rate_lb_per_ac=caught,
            times_over_count=times,
        ),
    }


def latest_test(spreader: Spreader, parts: tuple[Sowing, ...]) -> SpreaderTest | None:
    """Return the last catch test made with the heaviest part of what is sown, or None."""
    heaviest = max(parts, key=lambda one: one.numbers["bulk_seed_lb"].value)
    tests = [one for one in spreader.catch_tests if one.lot == heaviest.lot.id]
    return max(tests, key=lambda one: one.tested_on, default=None)


def sowing_findings(
    job_id: str,
    parts: tuple[Sowing, ...],
    spreader: Spreader | None,
    test: SpreaderTest | None,
    job_day: datetime.date | None,
    where: Where,
) -> list[Finding]:
    """Return cautions and notes on the seed and the spreader."""
    found: list[Finding] = []
    for one in parts:
        lot, share = one.lot, one.numbers["dormant_share_fraction"]
        if share.value > 0 and species()[lot.species].dormancy:
            figures = (
                ("Asleep in the test", share),
                ("On the tag", one.numbers["pls_fraction"]),
                ("Ready to grow without a winter", one.numbers["ready_rate_pls_lb_per_ac"]),
            )
            found.append(finding(Caution.DORMANT, job_id, lot.where, figures, lot=lot.id))
        if lot.live_seeds_per_lb is None:
            found.append(finding(Note.NO_SIZE, job_id, lot.where, lot=lot.id))
    if test is None:
        heaviest = max(parts, key=lambda one: one.numbers["bulk_seed_lb"].value)
        at = spreader.where if spreader is not None else where
        found.append(finding(Caution.NO_SEED_TEST, job_id, at, lot=heaviest.lot.id))
    elif older_than_a_year(test.tested_on, job_day):
        found.append(finding(Caution.OLD_CATCH_TEST, job_id, test.where))
    return found
