"""Tank loads of a cleared spraying: water and what goes into it, rounded to marks."""

from collections.abc import Iterator

from generator.compute import dose, fill, spray
from generator.dataclass import dataclass
from generator.inventory.equipment import Measure, Sprayer, SprayerTest
from generator.inventory.stock import Adjuvant, Product
from generator.plan.jobs.slope import BY_HAND
from generator.plan.labels.rates import ROUNDING
from generator.plan.model.work import Dose, Load, Pour
from generator.reference.library import mixing_steps, values
from generator.units import FL_OZ_PER_GAL, convert
from generator.working import Figure, Formula, Quantity


@dataclass(frozen=True, slots=True)
class ProductMeasuring:
    """How a kind of product is measured: units, what a load takes, its marks, and its rate."""

    unit: str
    rate_unit: str
    load_product: Formula
    roundings: tuple[Formula, ...]
    rate_given: Formula


POURING = ProductMeasuring(
    "fl_oz",
    "fl_oz_per_ac",
    dose.LOAD_PRODUCT,
    (dose.MEASURED, dose.MARK_BELOW, dose.MARK_ABOVE),
    dose.RATE_GIVEN,
)
WEIGHING = ProductMeasuring(
    "oz_wt",
    "lb_per_ac",
    dose.DRY_LOAD_PRODUCT,
    (dose.WEIGHED, dose.WEIGHED_BELOW, dose.WEIGHED_ABOVE),
    dose.DRY_RATE_GIVEN,
)


@dataclass(frozen=True, slots=True)
class SprayerSetUp:
    """A sprayer with the catch test that counts and the measures to pour and weigh with."""

    sprayer: Sprayer
    test: SprayerTest
    measures: tuple[Measure, ...]

    @property
    def by_hand(self) -> bool:
        """Whether the sprayer is carried or its gun is held."""
        return self.sprayer.kind in BY_HAND

    def measure_for(self, *, dry: bool) -> Measure | None:
        """Return the first measure that weighs, or that pours, or None."""
        return next(
            (measure for measure in self.measures if (measure.mark_oz_wt is not None) == dry),
            None,
        )


def holds(pour: Pour, given: float) -> bool:
    """Return whether the rate that a rounded amount gives lies within the limits of its label."""
    above = pour.low is None or pour.low * (1 - ROUNDING) <= given
    below = pour.most is None or given <= pour.most * (1 + ROUNDING)
    # the mark below a small amount may be nothing
    return above and below and given > 0


def machine_for(
    named: str | None, measures: tuple[Measure, ...], sprayers: tuple[Sprayer, ...]
) -> SprayerSetUp | None:
    """Return the sprayer of this id with its last catch test and its measures, or None."""
    sprayer = next((sprayer for sprayer in sprayers if sprayer.id == named), None)
    if sprayer is None or not sprayer.catch_tests or not sprayer.measure:
        return None
    by_id = {measure.id: measure for measure in measures}
    caught_in = tuple(by_id[name] for name in sprayer.measure)
    return SprayerSetUp(
        sprayer, max(sprayer.catch_tests, key=lambda test: test.tested_on), caught_in
    )


def carrier_numbers(job: str, machine: SprayerSetUp) -> dict[str, Quantity]:
    """Return the spray put on an acre by the sprayer's last catch test, and the flow behind it."""
    test, sprayer = machine.test, machine.sprayer
    carrier = f"{job}/carrier_gal_per_ac"
    # a hand keeps no speed and no width: measured ground tells what an acre gets
    if machine.by_hand:
        assert test.covered_sq_ft is not None
        return {
            "carrier_gal_per_ac": spray.HAND_CARRIER(
                carrier, caught_fl_oz=test.caught_fl_oz, covered_sq_ft=test.covered_sq_ft
            )
        }
    assert test.caught_in_seconds is not None
    assert test.speed_mph is not None
    formula = spray.NOZZLE_FLOW if sprayer.kind == "boom" else spray.PATTERN_FLOW
    flow = formula(
        f"{job}/flow_gal_per_minute",
        caught_fl_oz=test.caught_fl_oz,
        caught_in_seconds=test.caught_in_seconds,
    )
    if sprayer.kind == "boom":
        assert sprayer.nozzle_spacing_in is not None
        on_an_acre = spray.CARRIER(
            carrier,
            flow_gal_per_minute=flow,
            speed_mph=test.speed_mph,
            nozzle_spacing_in=sprayer.nozzle_spacing_in,
        )
    else:
        assert sprayer.swath_ft is not None
        on_an_acre = spray.SWATH_CARRIER(
            carrier,
            flow_gal_per_minute=flow,
            speed_mph=test.speed_mph,
            swath_ft=sprayer.swath_ft,
        )
    return {"carrier_gal_per_ac": on_an_acre}


def tank_numbers(
    job: str, area: Quantity, carrier: Quantity, machine: SprayerSetUp
) -> dict[str, Quantity]:
    """Return the numbers of the whole spraying by name: spray in all, loads, the last load."""
    tank = machine.sprayer.tank_gal
    mix = spray.SPRAY_GAL(f"{job}/spray_gal", area_ac=area, carrier_gal_per_ac=carrier)
    loads = spray.LOADS(f"{job}/loads_count", spray_gal=mix, tank_gal=tank)
    return {
        "spray_gal": mix,
        "loads_count": loads,
        "last_load_gal": spray.LAST_LOAD(
            f"{job}/last_load_gal", spray_gal=mix, tank_gal=tank, loads_count=loads
        ),
    }


def in_all(job: str, pour: Pour, area: Quantity) -> Quantity:
    """Return what the whole place takes of one thing."""
    if pour.dry:
        return dose.DRY_PRODUCT(
            f"{job}/{pour.prefix}product_oz_wt", area_ac=area, rate_product_lb_per_ac=pour.rate
        )
    return dose.PRODUCT(
        f"{job}/{pour.prefix}product_fl_oz", area_ac=area, rate_product_fl_oz_per_ac=pour.rate
    )


def tank_loads(
    job: str,
    pours: tuple[Pour, ...],
    machine: SprayerSetUp,
    numbers: dict[str, Quantity],
) -> tuple[Load, ...] | None:
    """Return the full loads and the last part load, or equal loads where the last is too small.

    None where no mark on a measure holds the label's rates either way.
    """
    split = Split("", numbers["spray_gal"], numbers["loads_count"], numbers["last_load_gal"])
    return _loads(job, split, pours, machine, numbers["carrier_gal_per_ac"])


def small_place_loads(
    job: str, pours: tuple[Pour, ...], machine: SprayerSetUp, carrier: Quantity
) -> tuple[Load, ...]:
    """Return what an eighth of an acre takes in loads the tank holds; none where no mark does."""
    tank = machine.sprayer.tank_gal
    eighth = spray.EIGHTH(f"{job}/eighth_gal", carrier_gal_per_ac=carrier)
    count = spray.LOADS(f"{job}/eighth_loads_count", spray_gal=eighth, tank_gal=tank)
    last = spray.LAST_LOAD(
        f"{job}/eighth_last_load_gal", spray_gal=eighth, tank_gal=tank, loads_count=count
    )
    # a help beside the loads of the job, which stands without it
    return _loads(job, Split("eighth_", eighth, count, last), pours, machine, carrier) or ()


@dataclass(frozen=True, slots=True)
class Split:
    """Spray to be split into loads: how ids of its numbers begin, loads in all, the last."""

    prefix: str
    spray: Quantity
    count: Quantity
    last: Quantity


def _loads(
    job: str, split: Split, pours: tuple[Pour, ...], machine: SprayerSetUp, carrier: Quantity
) -> tuple[Load, ...] | None:
    """Return loads that marks can measure: equal ones first where the last would be small."""
    tank, count, base = machine.sprayer.tank_gal, split.count, f"{job}/{split.prefix}"

    def load(kind: str, times: Quantity | None, gal: Figure) -> Load | None:
        return load_of(job, f"{split.prefix}{kind}", times, gal, pours, carrier)

    def at_mark(kind: str, gal: Quantity) -> Quantity:
        return fill_at_mark(f"{base}{kind}_fill_gal", gal, tank)

    def filled() -> tuple[Load | None, ...]:
        last = load("last", None, at_mark("last", split.last))
        if count.value == 1:
            return (last,)
        full_count = spray.FULL_LOADS(f"{base}full_loads_count", loads_count=count)
        return (load("full", full_count, tank), last)

    def equal() -> tuple[Load | None, ...]:
        each = spray.EQUAL_LOAD(f"{base}equal_load_gal", spray_gal=split.spray, loads_count=count)
        return (load("equal", count, at_mark("equal", each)),)

    small = count.value > 1 and split.last.value < _least_of_a_tank() * tank.value
    # the other way is tried too: its loads may come out on marks that hold
    for way in (equal, filled) if small else (filled, equal):
        made = way()
        loads = tuple(one for one in made if one is not None)
        if len(loads) == len(made):
            return loads
    return None


def _least_of_a_tank() -> float:
    least = values()["last_load_at_least_pct"]
    return convert(least.value, least.unit, "fraction")


def fill_at_mark(identity: str, load: Quantity, tank: Figure) -> Quantity:
    """Return a load rounded up to what is marked: ounces below a gallon, else the wider mark."""
    small = load.value < 1
    mark = values()["water_mark_below_a_gallon_fl_oz" if small else "water_mark_fl_oz"]
    return fill.LOAD_AT_MARK(identity, load_gal=load, mark_fl_oz=mark, tank_gal=tank)


def _filled_in(base: str, load: Figure) -> tuple[Quantity, ...]:
    """Return a load in gallons, quarts and ounces as they are poured; none of a full tank."""
    # cut off at what the tank holds it may be no whole ounces, and nobody pours by such a figure
    if not isinstance(load, Quantity) or (load.value * FL_OZ_PER_GAL) % 1:
        return ()
    poured = (
        fill.WHOLE_GAL(f"{base}_whole_gal", load_gal=load),
        fill.WHOLE_QT(f"{base}_whole_qt", load_gal=load),
        fill.LEFT_FL_OZ(f"{base}_left_fl_oz", load_gal=load),
    )
    return tuple(amount for amount in poured if amount.value)


def load_of(
    job: str,
    name: str,
    count: Quantity | None,
    load_gal: Figure,
    pours: tuple[Pour, ...],
    carrier: Figure,
) -> Load | None:
    """Return a load of this much spray with all that goes into it; None where no mark holds."""
    doses = [_dose(job, name, load_gal, pour, carrier) for pour in pours]
    measured = tuple(one for one in doses if one is not None)
    # a load is all that goes in: what no mark measures cannot be left out of it
    if len(measured) < len(pours):
        return None
    return Load(name, count, load_gal, measured, _filled_in(f"{job}/{name}_load", load_gal))


def _dose(job: str, load: str, load_gal: Figure, pour: Pour, carrier: Figure) -> Dose | None:
    base = f"{job}/{pour.prefix}{load}_load"
    # the first that holds: the nearest mark, unless the label's limits ask for another
    for amount, given in _ways(base, load_gal, pour, carrier):
        if holds(pour, given.value):
            return Dose(pour.name, amount, given)
    return None


def _ways(
    base: str, load_gal: Figure, pour: Pour, carrier: Figure
) -> Iterator[tuple[Quantity, Quantity]]:
    """Yield the amount at the nearest mark, at the one below and above, each with its rate."""
    way = WEIGHING if pour.dry else POURING
    unit, rate_unit = way.unit, way.rate_unit
    mark = pour.measure.mark_oz_wt if pour.dry else pour.measure.mark_fl_oz
    assert mark is not None
    exact = way.load_product(
        f"{base}_exact_{unit}",
        load_gal=load_gal,
        carrier_gal_per_ac=carrier,
        **{f"rate_product_{rate_unit}": pour.rate},
    )
    for rounding in way.roundings:
        to_round: dict[str, Figure] = {f"amount_{unit}": exact, f"mark_{unit}": mark}
        amount = rounding(f"{base}_product_{unit}", **to_round)
        given = way.rate_given(
            f"{base}_rate_{rate_unit}",
            load_gal=load_gal,
            carrier_gal_per_ac=carrier,
            **{f"measured_{unit}": amount},
        )
        yield amount, given


def mixing_order(parts: list[Product | Adjuvant]) -> tuple[str, ...] | None:
    """Return the names in the order they go in, or None where a formulation is not known.

    A part that goes in alone needs no order.
    """
    if len(parts) == 1:
        return ()
    place = {step.id: number for number, step in enumerate(mixing_steps())}
    # the one that is not known might be the one to go in first
    if any(part.formulation is None for part in parts):
        return None
    ordered = sorted(parts, key=lambda part: place[str(part.formulation)])
    return tuple(part.name for part in ordered)
