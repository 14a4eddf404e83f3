"""Tank loads of a cleared spraying: water and product, rounded to the marks of a measure."""

from dataclasses import dataclass

from generator.compute import spray
from generator.inventory.equipment import Measure, Sprayer, SprayerTest
from generator.inventory.label import LabelCard, Use
from generator.inventory.schema import Inventory
from generator.plan.model import Load
from generator.plan.rates import ROUNDING, JobRate
from generator.working import Figure, Quantity


@dataclass(frozen=True, slots=True)
class Allowed:
    """What a rounded amount must hold: the use's lowest rate and the most at one time."""

    card: LabelCard
    use: Use
    most: float

    def holds(self, given: Quantity) -> bool:
        """Whether the rate that a rounded amount gives still lies within the limits."""
        value = given.value
        if self.use.basis != "product":
            strength = self.card.actives[0].strength_lb_per_gal.value
            value = spray.active_rate_lb_per_ac(given.value, strength)
        assert self.use.rate_low is not None
        return self.use.rate_low.value * (1 - ROUNDING) <= value <= self.most * (1 + ROUNDING)


@dataclass(frozen=True, slots=True)
class Machine:
    """A sprayer with the catch test that counts and the measure to pour with."""

    sprayer: Sprayer
    test: SprayerTest
    measure: Measure


def machine_for(named: str | None, inventory: Inventory) -> Machine | None:
    """Return the sprayer of this id with its last catch test and its measure, or None."""
    sprayer = next((one for one in inventory.sprayers if one.id == named), None)
    if sprayer is None or not sprayer.catch_tests:
        return None
    measure = next((one for one in inventory.measures if one.id == sprayer.measure), None)
    if measure is None:
        return None
    return Machine(sprayer, max(sprayer.catch_tests, key=lambda one: one.tested_on), measure)


def tank_numbers(job: str, area: Quantity, rate: JobRate, machine: Machine) -> dict[str, Quantity]:
    """Return the numbers of the whole spraying by name: spray to an acre, loads, product."""
    test, sprayer = machine.test, machine.sprayer
    flow = spray.NOZZLE_FLOW(
        f"{job}/flow_gal_per_minute",
        caught_fl_oz=test.caught_fl_oz,
        caught_in_seconds=test.caught_in_seconds,
    )
    carrier = spray.CARRIER(
        f"{job}/carrier_gal_per_ac",
        flow_gal_per_minute=flow,
        speed_mph=test.speed_mph,
        nozzle_spacing_in=sprayer.nozzle_spacing_in,
    )
    mix = spray.SPRAY(f"{job}/spray_gal", area_ac=area, carrier_gal_per_ac=carrier)
    loads = spray.LOADS(f"{job}/loads_count", spray_gal=mix, tank_gal=sprayer.tank_gal)
    return {
        "carrier_gal_per_ac": carrier,
        "spray_gal": mix,
        "loads_count": loads,
        "last_load_gal": spray.LAST_LOAD(
            f"{job}/last_load_gal", spray_gal=mix, tank_gal=sprayer.tank_gal, loads_count=loads
        ),
        "product_fl_oz": spray.PRODUCT(
            f"{job}/product_fl_oz", area_ac=area, rate_product_fl_oz_per_ac=rate.product
        ),
    }


def tank_loads(
    job: str,
    rate: JobRate,
    machine: Machine,
    numbers: dict[str, Quantity],
    allowed: Allowed,
) -> tuple[Load, ...] | None:
    """Return the full loads and the last part load, or equal loads where the last is too small.

    None where no mark on the measure holds the label's rates either way.
    """
    loads_count = numbers["loads_count"]
    last = _load(job, "last", None, numbers["last_load_gal"], rate, machine, numbers, allowed)
    if last is not None and loads_count.value == 1:
        return (last,)
    count = spray.FULL_LOADS(f"{job}/full_loads_count", loads_count=loads_count)
    tank = machine.sprayer.tank_gal
    full = _load(job, "full", count, tank, rate, machine, numbers, allowed)
    if last is not None and full is not None:
        return (full, last)
    each = spray.EQUAL_LOAD(
        f"{job}/equal_load_gal", spray_gal=numbers["spray_gal"], loads_count=loads_count
    )
    equal = _load(job, "equal", loads_count, each, rate, machine, numbers, allowed)
    return None if equal is None else (equal,)


def _load(
    job: str,
    name: str,
    count: Quantity | None,
    load_gal: Figure,
    rate: JobRate,
    machine: Machine,
    numbers: dict[str, Quantity],
    allowed: Allowed,
) -> Load | None:
    carrier, mark = numbers["carrier_gal_per_ac"], machine.measure.mark_fl_oz
    exact = spray.LOAD_PRODUCT(
        f"{job}/{name}_load_exact_fl_oz",
        load_gal=load_gal,
        carrier_gal_per_ac=carrier,
        rate_product_fl_oz_per_ac=rate.product,
    )
    for rounding in (spray.MEASURED, spray.MARK_BELOW):
        measured = rounding(f"{job}/{name}_load_product_fl_oz", amount_fl_oz=exact, mark_fl_oz=mark)
        given = spray.RATE_GIVEN(
            f"{job}/{name}_load_rate_fl_oz_per_ac",
            measured_fl_oz=measured,
            load_gal=load_gal,
            carrier_gal_per_ac=carrier,
        )
        if allowed.holds(given):
            return Load(name, count, load_gal, measured, given)
    return None
