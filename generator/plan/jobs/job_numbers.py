"""Every computed number of a job, in one place: for audit, lists of numbers, budget and readers."""

from collections.abc import Iterable, Iterator

from generator.compute.buying import TOTAL_COUNT
from generator.plan.model.job import Job, Load, Mix, RowPlanted, Sowing
from generator.plan.model.spread import LimeAsked
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
    computed = (number for number in figures if isinstance(number, Quantity))
    return tuple({number.identity: number for number in computed}.values())


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
        yield "seed", part.lot.id, seed_used_up(part)
    kind = "lime" if job.step.does.puts_down == "lime" else "fertilizer"
    for spread in job.spreadings:
        yield kind, spread.item.id, spread.numbers["product_lb"]
    yield from plants_used_up(job.id, job.rows)
    if job.mix is not None:
        yield from (("product", part.product.id, part.in_all) for part in job.mix.parts)
        yield from (("adjuvant", part.adjuvant.id, part.in_all) for part in job.mix.adjuvants)


def seed_used_up(part: Sowing) -> Quantity:
    """Return what a sowing takes of a lot, what falls beside the place counted in."""
    return part.numbers.get("load_lb", part.numbers["bulk_seed_lb"])


def plants_used_up(
    job_id: str, rows: tuple[RowPlanted, ...]
) -> Iterator[tuple[str, str, Quantity]]:
    """Yield kind, id and count of everything the rows of a job take, each thing once."""
    guarded: dict[str, list[Quantity]] = {}
    for row in rows:
        count = row.numbers.get("replaced_count") or row.numbers["plants_count"]
        yield "plant", row.plant.id, count
        if row.guard is not None:
            guarded.setdefault(row.guard.id, []).append(count)
    for guard, counts in guarded.items():
        yield "guard", guard, _in_all(f"{job_id}/{guard}.guards_count", counts)


def _in_all(identity: str, counts: list[Quantity]) -> Quantity:
    return counts[0] if len(counts) == 1 else TOTAL_COUNT(identity, parts=tuple(counts))
