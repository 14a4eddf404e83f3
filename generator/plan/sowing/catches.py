"""What every catch test of a sprayer, spreader or drill put down on an acre, the newest first."""

import datetime
from collections.abc import Callable
from typing import TypeVar

from generator.compute.spray import FARTHEST_NOZZLE
from generator.compute.swath import SWATH_GROUND
from generator.dataclass import dataclass
from generator.inventory.drill import Drill, DrillTest
from generator.inventory.equipment import Sprayer, SprayerTest, Spreader, SpreaderTest
from generator.plan.model.plan import Land
from generator.plan.sowing.drilling import drilled_rate
from generator.plan.sowing.hopper import caught_rate
from generator.plan.spraying.tank import SprayerSetUp, carrier_numbers
from generator.working import Quantity

_C = TypeVar("_C")


@dataclass(frozen=True, slots=True)
class Catch:
    """One catch test: the ground it covered and the rate it gave."""

    test: SpreaderTest | DrillTest
    ground: Quantity
    rate: Quantity


@dataclass(frozen=True, slots=True)
class SprayerCatch:
    """One catch test of a sprayer: spray on an acre, and how far nozzles differ where several."""

    test: SprayerTest
    carrier: Quantity
    farthest: Quantity | None

    def numbers(self) -> tuple[Quantity, ...]:
        """Return every number of it."""
        return (self.carrier, *((self.farthest,) if self.farthest is not None else ()))


def sprayer_catches(sprayer: Sprayer, season: int) -> tuple[SprayerCatch, ...]:
    """Return the catch tests of a sprayer, the newest first."""
    return _newest_first(
        [
            _caught(f"equipment/{season}/{sprayer.id}/test_{number}", sprayer, test)
            for number, test in enumerate(sprayer.catch_tests, 1)
        ],
        lambda catch: catch.test.tested_on,
    )


def _newest_first(catches: list[_C], day_of: Callable[[_C], datetime.date]) -> tuple[_C, ...]:
    return tuple(sorted(catches, key=day_of, reverse=True))


def _caught(base: str, sprayer: Sprayer, test: SprayerTest) -> SprayerCatch:
    farthest = None
    if len(test.caught_fl_oz) > 1:
        farthest = FARTHEST_NOZZLE(
            f"{base}/farthest_nozzle_fraction", caught_fl_oz=test.caught_fl_oz
        )
    carrier = carrier_numbers(base, SprayerSetUp(sprayer, test, ()))["carrier_gal_per_ac"]
    return SprayerCatch(test, carrier, farthest)


def spreader_catches(spreader: Spreader, season: int) -> tuple[Catch, ...]:
    """Return the catch tests of a spreader, the newest first."""
    return _newest_first(
        [
            _walked(f"equipment/{season}/{spreader.id}/test_{number}", test)
            for number, test in enumerate(spreader.catch_tests, 1)
        ],
        lambda catch: catch.test.tested_on,
    )


def _walked(base: str, test: SpreaderTest) -> Catch:
    ground = SWATH_GROUND(
        f"{base}/swath_ground_sq_ft", swath_ft=test.swath_ft, distance_ft=test.distance_ft
    )
    return Catch(test, ground, caught_rate(base, test))


def drill_catches(drill: Drill, season: int) -> tuple[Catch, ...]:
    """Return the catch tests of a drill, the newest first."""
    return _newest_first(
        [
            _driven(f"equipment/{season}/{drill.id}/test_{number}", drill, test)
            for number, test in enumerate(drill.catch_tests, 1)
        ],
        lambda catch: catch.test.tested_on,
    )


def _driven(base: str, drill: Drill, test: DrillTest) -> Catch:
    rate = drilled_rate(base, drill, test)
    ground = dict(rate.inputs)["ground_sq_ft"]
    assert isinstance(ground, Quantity)
    return Catch(test, ground, rate)


def catch_numbers(land: Land, season: int) -> tuple[Quantity, ...]:
    """Return every number of the catch tests."""
    catches = [
        *(catch for machine in land.spreaders for catch in spreader_catches(machine, season)),
        *(catch for machine in land.drills for catch in drill_catches(machine, season)),
    ]
    sprayed = [catch for sprayer in land.sprayers for catch in sprayer_catches(sprayer, season)]
    return (
        *(number for catch in catches for number in (catch.ground, catch.rate)),
        *(number for catch in sprayed for number in catch.numbers()),
    )
