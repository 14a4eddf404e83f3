"""Rates of a spray job and of a label's use, brought to one basis so that they can be compared."""

from generator.compute import buying, dose
from generator.dataclass import dataclass
from generator.inventory.label import ActiveStrength, LabelCard
from generator.inventory.places import Partner, Work
from generator.reference.active_names import ActiveName, most_alike
from generator.working import Figure, Given, Quantity

ROUNDING = 1e-9  # relative: a rate typed as exactly the limit must not fail by a rounding error


@dataclass(frozen=True, slots=True)
class ActiveRate:
    """One active, or several that a label counts together, in pounds on an acre."""

    named: ActiveName
    basis: str
    rate: Given | Quantity


@dataclass(frozen=True, slots=True)
class JobRate:
    """The owner's rate as product, each active by itself, and what the label counts together.

    `product` is in fluid ounces to an acre of a liquid and in pounds of a dry product; `mix` is
    the share of the spray where a percent was typed.
    """

    product: Given | Quantity
    actives: tuple[ActiveRate, ...]
    counted: ActiveRate | None
    mix: Given | None = None

    def in_basis(self, basis: str) -> Given | Quantity | None:
        """Return the rate as a label's use counts it, or None where it cannot be compared."""
        if basis == "product":
            return self.product
        if basis == "mix":
            return self.mix
        return self.counted.rate if self.counted and self.counted.basis == basis else None


def job_rate(
    identity: str, typed: Work | Partner, card: LabelCard, carrier: Quantity | None
) -> JobRate | None:
    """Return the typed rate in every basis it can be had in, or None where it cannot be had.

    `identity` is what the numbers' ids begin with. A rate of active ingredient or acid equivalent
    needs a card whose label counts one active, or several together, in that basis; a percent of
    the spray needs a catch test.
    """
    product = _product_rate(identity, typed, card, carrier)
    if product is None:
        return None
    actives = _actives(identity, product, card)
    counted = _counted(identity, typed, product, card, actives)
    return JobRate(product, actives, counted, typed.mix_fraction)


def rate_of_product(identity: str, product: Given | Quantity, card: LabelCard) -> JobRate:
    """Return so much product on an acre in every basis it can be had in."""
    actives = _actives(identity, product, card)
    return JobRate(product, actives, _counted(identity, None, product, card, actives))


def _actives(identity: str, product: Figure, card: LabelCard) -> tuple[ActiveRate, ...]:
    return tuple(
        ActiveRate(active.named, active.basis, figure)
        for number, active in enumerate(card.actives, 1)
        if (figure := _active_rate(_active_id(identity, card, active, number), product, active))
    )


def _active_id(identity: str, card: LabelCard, active: ActiveStrength, number: int) -> str:
    part = "" if len(card.actives) == 1 else f"_{number}"
    return f"{identity}rate_{active.basis}{part}_lb_per_ac"


def _product_rate(
    identity: str, typed: Work | Partner, card: LabelCard, carrier: Quantity | None
) -> Given | Quantity | None:
    if typed.rate_product is not None:
        # never turned from weight into volume or back: no density stands on a card
        return typed.rate_product if typed.rate_product.unit == _product_unit(card) else None
    if typed.mix_fraction is not None:
        # a percent is a share of a volume, and a dry product is weighed
        if carrier is None or is_dry(card):
            return None
        return dose.PERCENT_RATE(
            f"{identity}rate_product_fl_oz_per_ac",
            carrier_gal_per_ac=carrier,
            mix_fraction=typed.mix_fraction,
        )
    for basis, rate in (("ai", typed.rate_ai_lb_per_ac), ("ae", typed.rate_ae_lb_per_ac)):
        if rate is not None and counted_basis(card) == basis:
            return as_product(identity, rate, card)
    return None


def is_dry(card: LabelCard) -> bool:
    """Return whether the product of a card is weighed rather than poured."""
    return any(active.strength_fraction is not None for active in card.actives)


def _product_unit(card: LabelCard) -> str:
    return "lb_per_ac" if is_dry(card) else "fl_oz_per_ac"


def _active_rate(identity: str, product: Figure, active: ActiveStrength) -> Quantity | None:
    if active.strength_fraction is not None:
        return dose.DRY_ACTIVE_RATE(
            identity, rate_product_lb_per_ac=product, strength_fraction=active.strength_fraction
        )
    if active.strength_lb_per_gal is not None:
        return dose.ACTIVE_RATE(
            identity,
            rate_product_fl_oz_per_ac=product,
            strength_lb_per_gal=active.strength_lb_per_gal,
        )
    return None


def _counted(
    identity: str,
    typed: Work | Partner | None,
    product: Figure,
    card: LabelCard,
    actives: tuple[ActiveRate, ...],
) -> ActiveRate | None:
    basis = counted_basis(card)
    if basis is None:
        return None
    names = ActiveName(" and ".join(active.active for active in card.actives))
    typed_rate = _typed_as(basis, typed) if typed is not None else None
    # the product follows from what was typed: worked back, it could miss the figure by a rounding
    if typed is not None and typed_rate is not None and product != typed.rate_product:
        return ActiveRate(names, basis, typed_rate)
    if len(actives) == 1:
        return actives[0]
    together = buying.TOTAL_RATE(
        f"{identity}rate_{basis}_lb_per_ac", parts=tuple(active.rate for active in actives)
    )
    return ActiveRate(names, basis, together)


def _typed_as(basis: str, typed: Work | Partner) -> Given | None:
    return typed.rate_ai_lb_per_ac if basis == "ai" else typed.rate_ae_lb_per_ac


def counted_basis(card: LabelCard) -> str | None:
    """Return the basis in which a card's limits count: of its one active, or of all it pools."""
    bases = {active.basis for active in card.actives}
    # pounds of acid and pounds of active ingredient make no sum
    if len(bases) != 1:
        return None
    # several count only where the label pools them all: else no limit is known to be on their sum
    pooled = all(most_alike((name,), card.named_pooled) == "same" for name in card.named_actives)
    return bases.pop() if len(card.actives) == 1 or pooled else None


def strengths_of(card: LabelCard) -> tuple[tuple[str, Given], ...]:
    """Return the actives of a card, each with its typed strength."""
    return tuple(
        (active.active, strength)
        for active in card.actives
        if (strength := active.strength_lb_per_gal or active.strength_fraction) is not None
    )


def _strength(identity: str, card: LabelCard) -> Figure:
    strengths = tuple(strength for _, strength in strengths_of(card))
    if len(strengths) == 1:
        return strengths[0]
    if is_dry(card):
        return buying.TOTAL_FRACTION(f"{identity}strength_fraction", parts=strengths)
    return buying.TOTAL_STRENGTH(f"{identity}strength_lb_per_gal", parts=strengths)


def as_product(identity: str, rate: Figure, card: LabelCard, name: str = "rate") -> Quantity:
    """Return pounds of what the card counts as product, in the product's own unit."""
    strength = _strength(identity, card)
    if is_dry(card):
        return dose.DRY_PRODUCT_RATE(
            f"{identity}{name}_product_lb_per_ac", rate_lb_per_ac=rate, strength_fraction=strength
        )
    return dose.PRODUCT_RATE(
        f"{identity}{name}_product_fl_oz_per_ac", rate_lb_per_ac=rate, strength_lb_per_gal=strength
    )


def as_active(identity: str, limit: Given, basis: str, card: LabelCard) -> Given | Quantity | None:
    """Return a card's limit in pounds of active to an acre, or None where it counts several."""
    if basis in ("ai", "ae"):
        return limit
    if basis != "product" or counted_basis(card) is None:
        return None
    strength = _strength(f"{identity}/", card)
    if is_dry(card):
        return dose.DRY_ACTIVE_RATE(
            identity, rate_product_lb_per_ac=limit, strength_fraction=strength
        )
    return dose.ACTIVE_RATE(identity, rate_product_fl_oz_per_ac=limit, strength_lb_per_gal=strength)
