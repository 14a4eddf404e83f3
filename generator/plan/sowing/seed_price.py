"""What a pound of live seed costs, lot by lot: the way to compare two bags."""

from generator.compute.seed import PLS_FRACTION
from generator.compute.seed_rate import PLS_POUND
from generator.dataclass import dataclass
from generator.inventory.stock import SeedLot
from generator.plan.model.plan import Plan
from generator.working import Quantity


@dataclass(frozen=True, slots=True)
class LivePrice:
    """Of one lot: the live part of a bag, and a pound of it in dollars where a price is typed."""

    lot: SeedLot
    pls: Quantity
    pound: Quantity | None


def live_prices(plan: Plan) -> tuple[LivePrice, ...]:
    """Return the live part and its price for every lot, in the order of the owner's file."""
    return tuple(_live_price(f"seed/{plan.season}/{lot.id}", lot) for lot in plan.land.lots)


def _live_price(base: str, lot: SeedLot) -> LivePrice:
    tag = lot.tag
    pls = PLS_FRACTION(
        f"{base}/pls_fraction",
        purity_fraction=tag.purity_fraction,
        germination_fraction=tag.germination_fraction,
        hard_fraction=tag.hard_fraction,
        dormant_fraction=tag.dormant_fraction,
    )
    pound = None
    if lot.price_usd is not None and lot.package_lb is not None:
        pound = PLS_POUND(
            f"{base}/pls_pound_usd",
            price_usd=lot.price_usd,
            package_lb=lot.package_lb,
            pls_fraction=pls,
        )
    return LivePrice(lot, pls, pound)
