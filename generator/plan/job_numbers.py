"""Every computed number of a job, in one place: for audit, lists of numbers, budget and readers."""

from collections.abc import Iterable, Iterator

from generator.plan.model import Job, Load, Mix
from generator.plan.sowing import used_up
from generator.plan.spreading import LimeAsked
from generator.plan.woody import used_up as used_up_by_rows
from generator.working import Figure, Quantity

# Kind of thing, its id, and how much of it.
Taken = tuple[str, str, Quantity]


def every_number(job: Job) -> tuple[Quantity, ...]:
    """Return every computed number that stands anywhere in a job, each once."""
    figures: list[Figure | None] = [*job.numbers.values()]
    for sowing in job.sowings:
        figures += [sowing.rate, *sowing.numbers.values()]
    for spreading in job.spreadings:
        figures += spreading.numbers.values()
    for nutrient in job.nutrients:
        figures += [nutrient.need, *nutrient.numbers()]
    for row in job.rows:
        figures += [row.spacing, row.rows_apart, *row.numbers.values()]
    figures += _of_mix(job.mix) if job.mix is not None else ()
    figures += _of_lime(job.lime_asked) if job.lime_asked is not None else ()
    figures += [line.figure for line in job.safety]
    computed = (one for one in figures if isinstance(one, Quantity))
    return tuple({one.identity: one for one in computed}.values())


def _of_mix(mix: Mix) -> Iterator[Figure | None]:
    yield from (part.in_all for part in mix.parts)
    yield from (part.in_all for part in mix.adjuvants)
    for load in (*mix.loads, *mix.small_place):
        yield from _of_load(load)


def _of_load(load: Load) -> Iterator[Figure | None]:
    yield load.count
    yield load.spray
    yield from load.poured
    for dose in load.doses:
        yield dose.amount
        yield dose.rate


def _of_lime(asked: LimeAsked) -> Iterable[Figure | None]:
    return (asked.need, asked.base_strength, asked.own_strength)


def used_up_by(job: Job) -> Iterator[Taken]:
    """Yield everything a job uses up, by kind of thing and id, as the budget counts it."""
    for part in job.sowings:
        yield "seed", part.lot.id, used_up(part)
    kind = "lime" if job.step.operation == "lime" else "fertilizer"
    for spread in job.spreadings:
        yield kind, spread.item.id, spread.numbers["product_lb"]
    yield from used_up_by_rows(job.id, job.rows)
    if job.mix is not None:
        yield from (("product", one.product.id, one.in_all) for one in job.mix.parts)
        yield from (("adjuvant", one.adjuvant.id, one.in_all) for one in job.mix.adjuvants)
