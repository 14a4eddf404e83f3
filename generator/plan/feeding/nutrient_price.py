"""What a pound of a nutrient costs in each fertilizer that carries one nutrient alone."""

from generator.compute.fertility import NUTRIENT_PRICE
from generator.inventory.spreadable import Fertilizer
from generator.plan.feeding.doses import ORDER, share
from generator.plan.model.plan import Land
from generator.working import Quantity


def nutrient_price(fertilizer: Fertilizer) -> Quantity | None:
    """Return the price of a pound of the only nutrient it carries, where package and price are."""
    carried = [nutrient for nutrient in ORDER if share(fertilizer, nutrient).value > 0]
    # of a bag with two nutrients nobody can say what each of them costs
    if len(carried) > 1 or fertilizer.package_lb is None or fertilizer.price_usd is None:
        return None
    return NUTRIENT_PRICE(
        f"fertilizer/{fertilizer.id}/pound_usd",
        price_usd=fertilizer.price_usd,
        package_lb=fertilizer.package_lb,
        nutrient_fraction=share(fertilizer, carried[0]),
    )


def nutrient_prices(land: Land) -> tuple[Quantity, ...]:
    """Return every such price."""
    prices = (nutrient_price(fertilizer) for fertilizer in land.fertilizers)
    return tuple(price for price in prices if price is not None)
