"""What every catch test of a spreader or drill put down on an acre."""

from dataclasses import dataclass

from generator.compute.throw import SWATH_GROUND
from generator.inventory.drill import Drill, DrillTest
from generator.inventory.equipment import Spreader, SpreaderTest
from generator.plan.drilling import drilled_rate
from generator.plan.hopper import caught_rate
from generator.plan.model import Plan
from generator.working import Quantity


@dataclass(frozen=True, slots=True)
class Catch:
    """One catch test: the ground it covered and the rate it gave."""

    test: SpreaderTest | DrillTest
    ground: Quantity
    rate: Quantity


def spreader_catches(spreader: Spreader, season: int) -> tuple[Catch, ...]:
    """Return the catch tests of a spreader in the order they are typed."""
    return tuple(
        _walked(f"equipment/{season}/{spreader.id}/test_{number}", test)
        for number, test in enumerate(spreader.catch_tests, 1)
    )


def _walked(base: str, test: SpreaderTest) -> Catch:
    ground = SWATH_GROUND(
        f"{base}/swath_ground_sq_ft", swath_ft=test.swath_ft, distance_ft=test.distance_ft
    )
    return Catch(test, ground, caught_rate(base, test))


def drill_catches(drill: Drill, season: int) -> tuple[Catch, ...]:
    """Return the catch tests of a drill in the order they are typed."""
    return tuple(
        _driven(f"equipment/{season}/{drill.id}/test_{number}", drill, test)
        for number, test in enumerate(drill.catch_tests, 1)
    )


def _driven(base: str, drill: Drill, test: DrillTest) -> Catch:
    rate = drilled_rate(base, drill, test)
    ground = dict(rate.inputs)["ground_sq_ft"]
    assert isinstance(ground, Quantity)
    return Catch(test, ground, rate)


def catch_numbers(plan: Plan) -> tuple[Quantity, ...]:
    """Return every number of the catch tests."""
    catches = [
        *(one for machine in plan.spreaders for one in spreader_catches(machine, plan.season)),
        *(one for machine in plan.drills for one in drill_catches(machine, plan.season)),
    ]
    return tuple(number for one in catches for number in (one.ground, one.rate))
