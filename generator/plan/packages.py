"""What to buy of one thing: whole packages, or the weight itself where it comes loose."""

from dataclasses import dataclass

from generator.compute.buying import COST, COST_OF_NONE, LOOSE_COST, NONE_TO_BUY, PACKAGES
from generator.compute.stock import LEFT_OF_LOOSE, LEFT_OVER, LEFT_UNBOUGHT, SHORT_BY
from generator.plan.items import StockItem, in_unit
from generator.working import Given, Quantity, whole_up


@dataclass(frozen=True, slots=True)
class ToBuy:
    """Packages, or `loose` in the thing's unit; cost and what is left over. None: not known."""

    packages: Quantity | None = None
    loose: Quantity | None = None
    cost: Quantity | None = None
    left_over: Quantity | None = None

    def is_nothing(self) -> bool:
        """Return whether it is known that nothing has to be bought."""
        amount = self.packages or self.loose
        return amount is not None and whole_up(amount.value) == 0


def to_buy(item: StockItem, needed: Quantity, there: Given | Quantity, base: str) -> ToBuy:
    """Return what to buy beyond what is there; both amounts in the unit of the thing."""
    if item.loose:
        return _loose(item, needed, there, base)
    if item.package is not None:
        return _packages(item, item.package, needed, there, base)
    if whole_up(needed.value - there.value) > 0:
        return ToBuy()
    left = in_unit(LEFT_UNBOUGHT, item.unit)(
        f"{base}/left_over_{item.unit}", had=there, used=(needed,)
    )
    none = NONE_TO_BUY(f"{base}/packages_count", needed=needed, on_hand=there)
    return ToBuy(none, None, COST_OF_NONE(f"{base}/cost_usd", packages_count=none), left)


def _packages(
    item: StockItem, size: Given, needed: Quantity, there: Given | Quantity, base: str
) -> ToBuy:
    count = PACKAGES(f"{base}/packages_count", needed=needed, on_hand=there, package_size=size)
    left = in_unit(LEFT_OVER, item.unit)(
        f"{base}/left_over_{item.unit}",
        on_hand=there,
        packages_count=count,
        package_size=size,
        needed=needed,
    )
    cost = None
    if item.price_usd is not None:
        cost = COST(f"{base}/cost_usd", packages_count=count, price_usd=item.price_usd)
    elif count.value == 0:
        cost = COST_OF_NONE(f"{base}/cost_usd", packages_count=count)
    return ToBuy(count, None, cost, left)


def _loose(item: StockItem, needed: Quantity, there: Given | Quantity, base: str) -> ToBuy:
    amount = in_unit(SHORT_BY, item.unit)(f"{base}/loose_{item.unit}", needed=needed, on_hand=there)
    left = in_unit(LEFT_OF_LOOSE, item.unit)(
        f"{base}/left_over_{item.unit}", on_hand=there, bought=amount, needed=needed
    )
    cost = None
    if item.package is not None and item.price_usd is not None:
        cost = LOOSE_COST(
            f"{base}/cost_usd", amount=amount, package_size=item.package, price_usd=item.price_usd
        )
    elif amount.value == 0:
        cost = COST_OF_NONE(f"{base}/cost_usd", packages_count=amount)
    return ToBuy(None, amount, cost, left)
