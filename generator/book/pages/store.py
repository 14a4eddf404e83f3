"""Pages of what is kept and bought: seed, products, equipment."""

from collections.abc import Sequence

from generator.book.pages.written import (
    EQUIPMENT,
    PRODUCTS,
    SEED,
    Written,
    address_of,
    from_template,
    jobs_with_places,
    kept_and_bought,
    place_of,
)
from generator.inventory.drill import Drill
from generator.inventory.equipment import Sprayer, Spreader
from generator.inventory.stock import Product, SeedLot
from generator.inventory.woody import Guard, Plant
from generator.plan.findings.order import older_than_a_year
from generator.plan.model.plan import Plan
from generator.plan.sowing.catches import (
    Catch,
    SprayerCatch,
    drill_catches,
    sprayer_catches,
    spreader_catches,
)
from generator.plan.sowing.seed_price import live_prices
from generator.reference.growth import has_kinds
from generator.reference.library import species


def lot_page(plan: Plan, lot: SeedLot) -> Written:
    """Return a seed lot with its tag and what is sown of it."""
    sown = [(job, sowing) for job in plan.jobs for sowing in job.sowings if sowing.lot.id == lot.id]
    title = f"{species()[lot.species].name}, lot {lot.id}"
    prices = [price for price in live_prices(plan) if price.lot.species == lot.species]
    return from_template(
        plan,
        f"seed/{address_of(lot)}.md",
        title,
        SEED,
        "lot",
        [title, lot.tag.variety or "", lot.note or ""],
        ("seed",),
        lot=lot,
        price=next(price for price in prices if price.lot.id == lot.id),
        alike=prices if len(prices) > 1 else [],
        legume=species()[lot.species] if species()[lot.species].legume else None,
        sown=sown,
        has_kinds=has_kinds,
        places={place.id: place for place in plan.places},
        address_of=address_of,
    )


def row_stock_page(plan: Plan, kept: Plant | Guard) -> Written:
    """Return plants for rows, or their guards, with what takes them."""
    jobs = [job for job in plan.jobs if any(kept in (row.plant, row.guard) for row in job.rows)]
    return from_template(
        plan,
        f"seed/{address_of(kept)}.md",
        kept.name,
        SEED,
        "row_stock",
        [kept.name, kept.note or ""],
        ("seed",),
        kept=kept,
        plant=kept if isinstance(kept, Plant) else None,
        species=species(),
        jobs=jobs_with_places(plan, jobs),
    )


def product_page(plan: Plan, product: Product) -> Written:
    """Return a product: its card where a cleared job rests on it, else what is missing."""
    jobs = [job for job in plan.jobs if product.id in job.needs]
    cleared = any(job.mix is not None for job in jobs)
    return from_template(
        plan,
        f"products/{address_of(product)}.md",
        product.name,
        PRODUCTS,
        "product",
        [product.name, *(use.site_words for use in (product.label.uses if product.label else ()))],
        ("product",),
        product=product,
        card=product.label,
        findings=plan.findings_on(product.id),
        kept=kept_and_bought(plan, "product", product.id),
        cleared=cleared,
        resting=list(
            dict.fromkeys(
                part.use
                for job in jobs
                if job.mix is not None
                for part in job.mix.parts
                if part.product.id == product.id
            )
        ),
        jobs=jobs_with_places(plan, jobs),
    )


def _aged(
    plan: Plan, catches: Sequence[Catch | SprayerCatch]
) -> list[tuple[Catch | SprayerCatch, bool]]:
    """Return catch tests, each with whether it is more than a year old on the plan's day."""
    return [(catch, older_than_a_year(catch.test.tested_on, plan.as_of)) for catch in catches]


def sprayer_page(plan: Plan, sprayer: Sprayer) -> Written:
    """Return a sprayer with its catch tests, and an eighth of an acre of each of its mixes."""
    jobs = [
        (job, place_of(plan, job))
        for job in plan.jobs
        if job.mix is not None and job.mix.sprayer.id == sprayer.id
    ]
    return from_template(
        plan,
        f"equipment/{address_of(sprayer)}.md",
        sprayer.name,
        EQUIPMENT,
        "sprayer",
        [sprayer.name, sprayer.nozzle or ""],
        ("equipment",),
        sprayer=sprayer,
        findings=plan.findings_on(sprayer.id),
        catches=_aged(plan, sprayer_catches(sprayer, plan.season)),
        measures=[measure for measure in plan.land.measures if measure.id in sprayer.measure],
        sprayed=[record for record in plan.records if record.sprayer_id == sprayer.id],
        cleaned=[
            entry
            for entry in plan.entries
            if entry.cleaned_out is not None and entry.cleaned_out.sprayer == sprayer.id
        ],
        jobs=jobs,
        small_places=[(job, place) for job, place in jobs if job.mix and job.mix.small_place],
    )


def spreader_page(plan: Plan, spreader: Spreader) -> Written:
    """Return a spreader with its catch tests."""
    return from_template(
        plan,
        f"equipment/{address_of(spreader)}.md",
        spreader.name,
        EQUIPMENT,
        "spreader",
        [spreader.name],
        ("equipment",),
        spreader=spreader,
        findings=plan.findings_on(spreader.id),
        catches=_aged(plan, spreader_catches(spreader, plan.season)),
        jobs=[
            (job, place_of(plan, job))
            for job in plan.jobs
            if job.sower.spreader is not None and job.sower.spreader.id == spreader.id
        ],
    )


def drill_page(plan: Plan, drill: Drill) -> Written:
    """Return a drill with its catch tests."""
    return from_template(
        plan,
        f"equipment/{address_of(drill)}.md",
        drill.name,
        EQUIPMENT,
        "drill",
        [drill.name],
        ("equipment",),
        drill=drill,
        findings=plan.findings_on(drill.id),
        catches=_aged(plan, drill_catches(drill, plan.season)),
        jobs=[
            (job, place_of(plan, job))
            for job in plan.jobs
            if job.sower.drill is not None and job.sower.drill.id == drill.id
        ],
    )
