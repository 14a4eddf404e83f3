"""Views of the budget lines: what to buy, with packages less what is on hand, and what it costs."""

from dataclasses import dataclass

from generator.compute.buying import COST, PACKAGES, TOTAL_FL_OZ, TOTAL_LB, TOTAL_USD
from generator.inventory.stock import Product, SeedLot
from generator.plan.findings import finding
from generator.plan.model import Finding, Plan, is_stopped
from generator.plan.reasons import Caution
from generator.working import Given, Quantity


@dataclass(frozen=True, slots=True)
class Purchase:
    """One thing to buy: need, on hand, packages and cost where they are known."""

    item: SeedLot | Product
    needed: Quantity
    on_hand: Given | None
    package: Given | None
    packages: Quantity | None
    cost: Quantity | None


def purchases(plan: Plan) -> tuple[Purchase, ...]:
    """Return what the plan's lines need, seed first, each thing once."""
    items: tuple[SeedLot | Product, ...] = (*plan.lots, *plan.products)
    return tuple(
        _purchase(plan, item)
        for item in items
        if any(line.item_id == item.id for line in plan.lines)
    )


def _purchase(plan: Plan, item: SeedLot | Product) -> Purchase:
    parts = tuple(line.amount for line in plan.lines if line.item_id == item.id)
    base = f"buy/{plan.season}/{item.id}"
    if isinstance(item, SeedLot):
        needed = TOTAL_LB(f"{base}/needed_lb", parts=parts)
        on_hand, package = item.on_hand_lb, item.package_lb
    else:
        needed = TOTAL_FL_OZ(f"{base}/needed_fl_oz", parts=parts)
        on_hand, package = item.on_hand_fl_oz, item.package_fl_oz
    packages = cost = None
    if on_hand is not None and package is not None:
        packages = PACKAGES(
            f"{base}/packages_count", needed=needed, on_hand=on_hand, package_size=package
        )
        if item.price_usd is not None:
            cost = COST(f"{base}/cost_usd", packages_count=packages, price_usd=item.price_usd)
    return Purchase(item, needed, on_hand, package, packages, cost)


def cost_in_all(plan: Plan, bought: tuple[Purchase, ...]) -> Quantity | None:
    """Return the cost of everything, or None while any cost is not known."""
    costs = tuple(one.cost for one in bought if one.cost is not None)
    if not costs or len(costs) < len(bought):
        return None
    return TOTAL_USD(f"buy/{plan.season}/all/cost_usd", parts=costs)


def not_to_buy_yet(plan: Plan) -> tuple[SeedLot | Product, ...]:
    """Return what a stopped job needs and no other job does, seed first."""
    bought = {line.item_id for line in plan.lines}
    held = {item for job in plan.jobs if is_stopped(job.id, plan.findings) for item in job.needs}
    items: tuple[SeedLot | Product, ...] = (*plan.lots, *plan.products)
    return tuple(one for one in items if one.id in held - bought)


def buying_findings(bought: tuple[Purchase, ...]) -> tuple[Finding, ...]:
    """Return a caution for everything whose packages or cost are left out."""
    return tuple(
        finding(Caution.NO_PRICE, one.item.id, one.item.where, item=one.item.id)
        for one in bought
        if one.cost is None
    )
