"""The work of a job, one thing of four kinds: what goes through a sprayer, is sown, spread or set.

A kind of work yields its own numbers and what it uses up; whoever lists, buys or hands over a job
asks here.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Literal

from generator.compute.buying import TOTAL_COUNT
from generator.dataclass import dataclass
from generator.inventory.drill import Drill, DrillTest
from generator.inventory.equipment import Measure, Sprayer, SprayerTest, Spreader, SpreaderTest
from generator.inventory.label import LabelCard, Use
from generator.inventory.spreadable import Fertilizer, Lime
from generator.inventory.stock import Adjuvant, Product, SeedLot
from generator.inventory.woody import Guard, Plant
from generator.plan.model.days import Span
from generator.plan.model.place import KeptOff
from generator.working import Figure, Quantity

# Kind of thing, its id, and how much of it.
Taken = tuple[str, str, Quantity]
Numbers = Mapping[str, Quantity]


@dataclass(frozen=True, slots=True)
class Dose:
    """What is measured of one thing into a load, and the rate it gives on an acre."""

    name: str
    amount: Quantity
    rate: Quantity


@dataclass(frozen=True, slots=True)
class Pour:
    """One thing to measure into a load: what its numbers are called, its rate, and its limits.

    `low` and `most` bound the rate that a rounded amount may give, in the unit of the rate; None
    where no label bounds it.
    """

    prefix: str
    name: str
    rate: Figure
    measure: Measure
    low: float | None = None
    most: float | None = None

    @property
    def dry(self) -> bool:
        """Whether it is weighed rather than poured."""
        return self.rate.unit == "lb_per_ac"


@dataclass(frozen=True, slots=True)
class Load:
    """One kind of tank load: how many of it, spray mix, what to measure into it.

    `poured` is the spray mix in gallons, quarts and ounces, as tanks and pails are marked; empty
    where the tank is full.
    """

    name: str
    count: Figure | None
    spray: Figure
    doses: tuple[Dose, ...]
    poured: tuple[Quantity, ...] = ()

    def figures(self) -> Iterator[Figure | None]:
        """Yield every figure of it."""
        yield self.count
        yield self.spray
        yield from self.poured
        for dose in self.doses:
            yield dose.amount
            yield dose.rate


@dataclass(frozen=True, slots=True)
class MixPart:
    """One cleared product of a tank: the card and use it rests on, and what the place takes."""

    product: Product
    card: LabelCard
    use: Use
    measure: Measure
    in_all: Quantity


@dataclass(frozen=True, slots=True)
class AdjuvantPart:
    """An adjuvant of a tank and what the place takes of it."""

    adjuvant: Adjuvant
    measure: Measure
    in_all: Quantity


@dataclass(frozen=True, slots=True)
class OwnLoads:
    """What a sprayer that a contractor brings takes where it puts `carrier` on an acre."""

    carrier: Figure
    whole: Load
    part: Load

    def figures(self) -> Iterator[Figure | None]:
        """Yield every figure of it."""
        yield self.carrier
        yield from self.whole.figures()
        yield from self.part.figures()


@dataclass(frozen=True, slots=True)
class Mix:
    """What goes into a sprayer's tank, every product of it cleared; `order` names what goes first.

    `order` is empty where one product goes in alone or a formulation is not known. `own_sprayer`
    is for a contractor alone, a row for each volume of spray that the labels allow. `pours` say
    how each thing is measured and within which limits, for the owner alone.
    """

    parts: tuple[MixPart, ...]
    adjuvants: tuple[AdjuvantPart, ...]
    sprayer: Sprayer
    test: SprayerTest
    loads: tuple[Load, ...]
    small_place: tuple[Load, ...]
    order: tuple[str, ...]
    own_sprayer: tuple[OwnLoads, ...] = ()
    pours: tuple[Pour, ...] = ()

    def figures(self) -> Iterator[Figure | None]:
        """Yield every figure of it."""
        yield from (part.in_all for part in self.parts)
        yield from (part.in_all for part in self.adjuvants)
        yield from (pour.rate for pour in self.pours)
        for load in (*self.loads, *self.small_place):
            yield from load.figures()
        for own in self.own_sprayer:
            yield from own.figures()


@dataclass(frozen=True, slots=True)
class Sowing:
    """One lot in a sowing, with its numbers by name."""

    lot: SeedLot
    rate: Figure
    numbers: dict[str, Quantity]

    def used_up(self) -> Quantity:
        """Return what it takes of its lot, what falls beside the place counted in."""
        return self.numbers.get("load_lb", self.numbers["bulk_seed_lb"])


@dataclass(frozen=True, slots=True)
class Spreading:
    """One fertilizer or lime on a place, with its numbers by name."""

    item: Fertilizer | Lime
    numbers: dict[str, Quantity]


@dataclass(frozen=True, slots=True)
class Nutrient:
    """One nutrient to an acre: asked for, what goes on, what is short: all, if none goes on.

    `over` is what goes on beyond what is asked for, where more does.
    """

    name: str
    need: Figure
    got: Quantity | None
    short: Figure | None
    over: Quantity | None

    def numbers(self) -> tuple[Quantity, ...]:
        """Return what of it is computed."""
        return tuple(
            figure for figure in (self.got, self.short, self.over) if isinstance(figure, Quantity)
        )


@dataclass(frozen=True, slots=True)
class LimeAsked:
    """The lab's lime need as printed: base, its percent where it has one, and the lime's own."""

    base: str
    need: Figure
    base_strength: Figure | None
    own_strength: Figure


@dataclass(frozen=True, slots=True)
class RowPlanted:
    """Rows of one kind of plant in a job, with their numbers by name."""

    plant: Plant
    guard: Guard | None
    spacing: Figure
    rows_apart: Figure | None
    numbers: dict[str, Quantity]


@dataclass(frozen=True, slots=True)
class Sower:
    """What sows a planting, with the last catch test made with its seed."""

    spreader: Spreader | None = None
    spreader_test: SpreaderTest | None = None
    drill: Drill | None = None
    drill_test: DrillTest | None = None


@dataclass(frozen=True, slots=True)
class SprayWork:
    """What is sprayed: the ground, the passes and the tank, where one is cleared.

    `kept_off` is what is left out of the place beside what labels keep from.
    """

    numbers: Numbers
    mix: Mix | None
    kept_off: tuple[KeptOff, ...] = ()

    def figures(self) -> Iterator[Figure | None]:
        """Yield every figure of it."""
        yield from self.numbers.values()
        yield from self.mix.figures() if self.mix is not None else ()
        for one in self.kept_off:
            yield from one.numbers()

    def used_up(self, job_id: str) -> Iterator[Taken]:  # noqa: ARG002  # asked of every kind alike
        """Yield everything it uses up, as the budget counts it."""
        if self.mix is not None:
            yield from (("product", part.product.id, part.in_all) for part in self.mix.parts)
            yield from (("adjuvant", part.adjuvant.id, part.in_all) for part in self.mix.adjuvants)


@dataclass(frozen=True, slots=True)
class SowWork:
    """What is sown, with its numbers together, and what sows it."""

    numbers: Numbers
    sowings: tuple[Sowing, ...]
    sower: Sower

    def figures(self) -> Iterator[Figure | None]:
        """Yield every figure of it."""
        yield from self.numbers.values()
        for sowing in self.sowings:
            yield sowing.rate
            yield from sowing.numbers.values()

    def used_up(self, job_id: str) -> Iterator[Taken]:  # noqa: ARG002  # asked of every kind alike
        """Yield everything it uses up, as the budget counts it."""
        yield from (("seed", sowing.lot.id, sowing.used_up()) for sowing in self.sowings)


@dataclass(frozen=True, slots=True)
class SpreadWork:
    """What is spread, and what the ground asked for."""

    spreadings: tuple[Spreading, ...]
    nutrients: tuple[Nutrient, ...] = ()
    lime_asked: LimeAsked | None = None

    def figures(self) -> Iterator[Figure | None]:
        """Yield every figure of it."""
        for spreading in self.spreadings:
            yield from spreading.numbers.values()
        for nutrient in self.nutrients:
            yield nutrient.need
            yield from nutrient.numbers()
        if (asked := self.lime_asked) is not None:
            yield from (asked.need, asked.base_strength, asked.own_strength)

    def used_up(self, job_id: str) -> Iterator[Taken]:  # noqa: ARG002  # asked of every kind alike
        """Yield everything it uses up, as the budget counts it."""
        for spreading in self.spreadings:
            kind = "lime" if isinstance(spreading.item, Lime) else "fertilizer"
            yield kind, spreading.item.id, spreading.numbers["product_lb"]


@dataclass(frozen=True, slots=True)
class RowsWork:
    """Rows of trees and shrubs that are set, each kind of plant with its guards."""

    rows: tuple[RowPlanted, ...]

    def figures(self) -> Iterator[Figure | None]:
        """Yield every figure of it."""
        for row in self.rows:
            yield row.spacing
            yield row.rows_apart
            yield from row.numbers.values()

    def used_up(self, job_id: str) -> Iterator[Taken]:
        """Yield everything it uses up, as the budget counts it, each thing once."""
        guarded: dict[str, list[Quantity]] = {}
        for row in self.rows:
            count = row.numbers.get("replaced_count") or row.numbers["plants_count"]
            yield "plant", row.plant.id, count
            if row.guard is not None:
                guarded.setdefault(row.guard.id, []).append(count)
        for guard, counts in guarded.items():
            yield "guard", guard, _in_all(f"{job_id}/{guard}.guards_count", counts)


def _in_all(identity: str, counts: list[Quantity]) -> Quantity:
    return counts[0] if len(counts) == 1 else TOTAL_COUNT(identity, parts=tuple(counts))


JobWork = SprayWork | SowWork | SpreadWork | RowsWork


@dataclass(frozen=True, slots=True)
class RunPlace:
    """One place of a run: what it takes, and what is left in tank or hopper at its gate.

    `doses` are what goes on there of each thing, in the order of the run's `doses`; `begun` is
    how many loads or fills were mixed or poured by then.
    """

    job_id: str
    area: Quantity
    amount: Quantity
    doses: tuple[Quantity, ...]
    begun: Quantity
    left: Quantity

    def numbers(self) -> tuple[Quantity, ...]:
        """Return its numbers."""
        return (self.area, self.amount, *self.doses, self.begun, self.left)


@dataclass(frozen=True, slots=True)
class Run:
    """Several jobs done with one mix or one fill, in the order of the owner's places.

    `id` is that of the first job with `run` behind it; `days` are those on which every place can be
    done. `doses` name each thing with what all places take of it. A sprayed run has `loads`, a sown
    one `fill`. `apart` names other jobs with the same thing by why they are not in it, for the
    owner alone.
    """

    id: str
    address: str
    kind: Literal["spray", "sow"]
    days: tuple[Span, ...]
    places: tuple[RunPlace, ...]
    area: Quantity
    amount: Quantity
    count: Quantity
    doses: tuple[tuple[str, Quantity], ...]
    loads: tuple[Load, ...] = ()
    fill: Quantity | None = None
    apart: tuple[tuple[str, tuple[str, ...]], ...] = ()

    def numbers(self) -> Iterator[Quantity]:
        """Yield every computed number of it."""
        yield from (self.area, self.amount, self.count)
        yield from (amount for _, amount in self.doses)
        yield from (self.fill,) if self.fill is not None else ()
        for load in self.loads:
            yield from (one for one in load.figures() if isinstance(one, Quantity))
        for place in self.places:
            yield from place.numbers()
