"""Rates of a spray job and of a label's use, brought to one basis so that they can be compared."""

from dataclasses import dataclass

from generator.compute.spray import ACTIVE_RATE, PRODUCT_RATE
from generator.inventory.label import ActiveStrength, LabelCard
from generator.inventory.places import Work
from generator.working import Figure, Given, Quantity

ROUNDING = 1e-9  # relative: a rate typed as exactly the limit must not fail by a rounding error


@dataclass(frozen=True, slots=True)
class JobRate:
    """The owner's rate as product and, where one active counts, as active in its basis."""

    product: Given | Quantity
    active: Given | Quantity | None
    basis: str | None

    def in_basis(self, basis: str) -> Figure | None:
        """Return the rate as a label's use counts it, or None where it cannot be compared."""
        if basis == "product":
            return self.product
        return self.active if basis == self.basis else None


def job_rate(job_id: str, work: Work, card: LabelCard) -> JobRate | None:
    """Return the typed rate in every basis it can be had in, or None where it cannot be had.

    A rate of active ingredient or acid equivalent needs a card with exactly one active, whose
    strength is stated in that basis.
    """
    only = card.actives[0] if len(card.actives) == 1 else None
    if work.rate_product is not None:
        return JobRate(
            work.rate_product,
            _active(job_id, work.rate_product, only) if only else None,
            only.basis if only else None,
        )
    for basis, typed in (("ai", work.rate_ai_lb_per_ac), ("ae", work.rate_ae_lb_per_ac)):
        if typed is not None and only is not None and only.basis == basis:
            product = PRODUCT_RATE(
                f"{job_id}/rate_product_fl_oz_per_ac",
                rate_lb_per_ac=typed,
                strength_lb_per_gal=only.strength_lb_per_gal,
            )
            return JobRate(product, typed, basis)
    return None


def _active(job_id: str, product: Given, only: ActiveStrength) -> Quantity:
    return ACTIVE_RATE(
        f"{job_id}/rate_{only.basis}_lb_per_ac",
        rate_product_fl_oz_per_ac=product,
        strength_lb_per_gal=only.strength_lb_per_gal,
    )


def as_active(identity: str, limit: Given, basis: str, card: LabelCard) -> Figure | None:
    """Return a card's limit in pounds of active to an acre, or None with several actives."""
    if basis != "product":
        return limit
    if len(card.actives) != 1:
        return None
    return ACTIVE_RATE(
        identity,
        rate_product_fl_oz_per_ac=limit,
        strength_lb_per_gal=card.actives[0].strength_lb_per_gal,
    )
