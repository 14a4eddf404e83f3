"""What is measured into a tank: its rate, and the limits within which a mark may round it."""

import math

from generator.compute import dose
from generator.dataclass import dataclass
from generator.inventory.label import LabelCard, Use, YearlyLimit
from generator.inventory.places import AdjuvantUsed
from generator.inventory.stock import Adjuvant
from generator.plan.jobs.request import JobRequest
from generator.plan.labels.limit_stops import figure_value, limit_basis, on_the_place
from generator.plan.labels.rates import JobRate, as_product, is_dry
from generator.plan.labels.spray_stops import Chosen
from generator.plan.labels.yearly_sums import (
    PlannedSpray,
    amount_in_a_year,
    as_laid,
    shares_ground_with_others,
)
from generator.plan.model.work import Pour
from generator.plan.spraying.tank import SprayerSetUp
from generator.working import Given, Quantity, Reference

# Spray to an acre: by a catch test, by a label, or a round figure.
Carrier = Given | Quantity | Reference


@dataclass(frozen=True, slots=True)
class Cleared:
    """A chosen product whose card clears the job: its card, use and rate."""

    chosen: Chosen
    card: LabelCard
    use: Use
    rate: JobRate


def adjuvant_is_dry(used: AdjuvantUsed) -> bool:
    by_weight = used.rate_product is not None and used.rate_product.unit == "lb_per_ac"
    return by_weight or used.rate_lb_per_100_gal is not None


def product_pour(
    request: JobRequest,
    part: Cleared,
    carrier: Carrier,
    machine: SprayerSetUp,
    sprays: tuple[PlannedSpray, ...],
) -> Pour:
    measure = machine.measure_for(dry=is_dry(part.card))
    assert measure is not None
    assert part.use.rate_low is not None
    low = _in_product(request, part, part.use.rate_low, part.use.basis, carrier)
    most = _most_at_one_time(request, part, carrier, sprays)
    return Pour(part.chosen.prefix, part.chosen.product.name, part.rate.product, measure, low, most)


def _in_product(
    request: JobRequest, part: Cleared, limit: Given, basis: str | None, carrier: Carrier
) -> float:
    """Return a limit of the card as product to an acre, in the unit of the product."""
    if basis == "product":
        return limit.value
    if basis == "mix":
        return dose.percent_rate_fl_oz_per_ac(carrier.value, limit.value)
    return as_product(f"{request.job_id}/", limit, part.card, "limit").value


def _most_at_one_time(
    request: JobRequest, part: Cleared, carrier: Carrier, sprays: tuple[PlannedSpray, ...]
) -> float:
    """Return the highest rate of product that a rounded amount may give.

    What a year's limit leaves over is shared evenly, so that every spraying of the year may
    round up and their sum still holds; a card's smallest limit counts, whichever use it is of.
    Where another product counts on the same ground, by this label or its own, nothing is left to
    share and no amount may round up: then what was typed, and held every limit, is passed nowhere.
    """
    use = part.use
    assert use.rate_high is not None
    most = _in_product(request, part, use.rate_high, use.basis, carrier)
    mine, here = on_the_place(request, part.chosen.product, sprays)
    # a percent holds for the spray however often it is laid; a rate on ground is shared by passes
    at_once = most if use.basis != "mix" else math.inf
    if isinstance(use.max_per_application, Given):
        basis = limit_basis(use, use.max_per_application, part.card)
        at_once = _in_product(request, part, use.max_per_application, basis, carrier)
    most = min(most, at_once / mine.laid_times)
    if shares_ground_with_others(mine, here):
        return min(most, figure_value(part.rate.product))
    share = _share_left_over(request, part, mine, as_laid(here), carrier)
    return min(most, figure_value(part.rate.product) + share)


def _share_left_over(
    request: JobRequest,
    part: Cleared,
    mine: PlannedSpray,
    here: tuple[PlannedSpray, ...],
    carrier: Carrier,
) -> float:
    """Return the product to an acre that may be added; without end where no use limits a year."""
    shares = [math.inf]
    for use in part.card.uses:
        if isinstance(use.max_per_year, YearlyLimit):
            limit = use.max_per_year
            basis = limit_basis(use, limit, part.card)
            together = amount_in_a_year(mine, here, part.card, basis, limit) if basis else None
            # where nothing can be added up there is nothing to round up into; a sum of nothing is
            # none: of what the log says, nobody knows how much of it lies here
            if together is None or basis is None or together.count == 0:
                return 0.0
            left_over = limit.amount.value - together.amount.value
            of_limit = _in_product(request, part, limit.amount, basis, carrier) / limit.amount.value
            shares.append(left_over * of_limit / together.count)
    # a use that the job does not rest on may be passed already: no reason to pour less than typed
    return max(0.0, min(shares))


def adjuvant_pours(
    request: JobRequest,
    partners: tuple[tuple[AdjuvantUsed, Adjuvant], ...],
    carrier: Carrier,
    machine: SprayerSetUp,
    way: str = "",
) -> tuple[Pour, ...]:
    """Return the pours of adjuvants; `way` begins ids where a job has more than one carrier."""
    pours = []
    for number, (used, adjuvant) in enumerate(partners, 1):
        prefix = f"adjuvant-{number}."
        rate = adjuvant_rate(f"{request.job_id}/{way}{prefix}", used, carrier)
        measure = machine.measure_for(dry=adjuvant_is_dry(used))
        assert rate is not None
        assert measure is not None
        pours.append(Pour(prefix, adjuvant.name, rate, measure))
    return tuple(pours)


def adjuvant_rate(identity: str, used: AdjuvantUsed, carrier: Carrier) -> Given | Quantity | None:
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
