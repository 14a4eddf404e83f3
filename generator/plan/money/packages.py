"""What to buy of one thing: whole packages, or the weight itself where it comes loose.

No package is bought for less than a hundredth of it: what is short then is told.
"""

from generator.compute.buying import (
    COST,
    COST_OF_NONE,
    LET_GO_FRACTION,
    LOOSE_COST,
    NONE_TO_BUY,
    PACKAGES,
)
from generator.compute.stock import (
    LEFT_OF_LOOSE,
    LEFT_OVER,
    LEFT_UNBOUGHT,
    SHORT_BY,
    SHORT_OF,
)
from generator.dataclass import dataclass
from generator.plan.model.items import StockItem, in_unit
from generator.working import Given, Quantity, whole_up


@dataclass(frozen=True, slots=True)
class ToBuy:
    """Packages, or `loose` in the thing's unit; cost and what is left over. None: not known.

    `short` stands in place of what is left over where so little is short that nothing is bought
    for it.
    """

    packages: Quantity | None = None
    loose: Quantity | None = None
    cost: Quantity | None = None
    left_over: Quantity | None = None
    short: Quantity | None = None

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
    # something is short, and what it comes in nobody has typed
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
    amounts: dict[str, Given | Quantity] = {
        "needed": needed,
        "on_hand": there,
        "packages_count": count,
        "package_size": size,
    }
    short = in_unit(SHORT_OF, item.unit)(f"{base}/short_{item.unit}", **amounts)
    left = in_unit(LEFT_OVER, item.unit)(f"{base}/left_over_{item.unit}", **amounts)
    cost = None
    if item.price_usd is not None:
        cost = COST(f"{base}/cost_usd", packages_count=count, price_usd=item.price_usd)
    # nothing costs nothing, price or no price, so the total of all stays known
    elif count.value == 0:
        cost = COST_OF_NONE(f"{base}/cost_usd", packages_count=count)
    if is_short(short.value):
        return ToBuy(count, None, cost, None, short)
    return ToBuy(count, None, cost, left)


def is_short(missing: float) -> bool:
    """Return whether an amount is missing, by more than a rounding error of computing."""
    return whole_up(missing) > 0


def is_let_go(item: StockItem, missing: float) -> bool:
    """Return whether nothing is bought for what is missing of a thing, in its unit."""
    if not is_short(missing):
        return True
    size = item.package
    # bought to the weight, or by no known package: nothing to let go a part of
    if size is None or item.loose:
        return False
    # as the count of packages has it: a full hundredth of one is bought
    return is_short(LET_GO_FRACTION * size.value - missing)


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
