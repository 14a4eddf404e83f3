"""What goes into a tank beside the product, where it is far from what is usual."""

from collections.abc import Iterator

from generator.inventory.rule import typed_at
from generator.inventory.schema import Inventory
from generator.plan.asked import JobAsked
from generator.plan.cautions import Caution
from generator.plan.model import Finding
from generator.plan.out_of_usual import out_of_usual
from generator.reference.usual import usual


def adjuvant_findings(asked: JobAsked, inventory: Inventory) -> Iterator[Finding]:
    """Yield a caution for each share of an adjuvant in the spray that is out of the usual."""
    names = {one.id: one.name for one in inventory.adjuvants}
    for used in asked.work.adjuvants if asked.work is not None else ():
        for given, name, unit in (
            (used.mix_fraction, "adjuvant_mix", "pct"),
            (used.rate_lb_per_100_gal, "adjuvant", "lb_per_100_gal"),
        ):
            if given is None:
                continue
            found = out_of_usual(
                Caution.ADJUVANT_OUT_OF_USUAL,
                asked.job_id,
                typed_at(given),
                ("In the spray", given),
                usual(name, unit),
                item=names[used.adjuvant],
                key=f"{given.name.removesuffix(f'_{given.unit}')}_{given.typed_unit}",
            )
            yield from [found] if found is not None else []
