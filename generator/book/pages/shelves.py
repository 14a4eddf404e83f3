"""Lists of what is kept and bought, and of what is known of soil and water."""

from collections.abc import Iterable

from generator.book.pages.written import (
    MONEY,
    PLACES,
    Written,
    address_of,
    from_template,
    soil_test_title,
)
from generator.inventory.spreadable import Fertilizer, Lime
from generator.inventory.stock import Product, SeedLot
from generator.inventory.woody import Guard, Plant
from generator.plan.model.items import StockItem
from generator.plan.model.plan import Plan

Shelved = SeedLot | Plant | Guard | Product | Fertilizer | Lime


def seed_page(plan: Plan) -> Written:
    """Return every seed lot, and plants and guards for rows, with what is on hand."""
    return from_template(
        plan,
        "seed.md",
        "Seed and plants",
        MONEY,
        "seed",
        ["seed", "plants"],
        rows=_rows(plan, (*plan.land.lots, *plan.land.plants, *plan.land.guards)),
    )


def products_page(plan: Plan) -> Written:
    """Return every herbicide with its actives, every fertilizer and lime, with what is on hand."""
    return from_template(
        plan,
        "products.md",
        "Products",
        MONEY,
        "products",
        ["products"],
        herbicides=[
            (*row, product.label.actives if product.label is not None else ())
            for product, row in zip(
                plan.land.products, _rows(plan, plan.land.products), strict=True
            )
        ],
        others=_rows(plan, (*plan.land.fertilizers, *plan.land.limes)),
    )


def ground_page(plan: Plan) -> Written:
    """Return every soil test and every water hole."""
    return from_template(
        plan,
        "ground.md",
        "Soil tests and water",
        PLACES,
        "ground",
        ["soil tests", "water"],
        tests=[(address_of(test), soil_test_title(plan, test)) for test in plan.land.soil_tests],
        holes=[(address_of(water.hole), water.hole.name) for water in plan.water],
    )


def _rows(plan: Plan, listed: Iterable[Shelved]) -> list[tuple[str, StockItem]]:
    """Return the file name of each thing's page, and how it is kept."""
    items = {item.id: item for item in plan.items}
    return [(address_of(kept), items[kept.id]) for kept in listed]
