"""Machines whose sizes, speeds or catch tests are far from what is usual."""

import datetime
from collections.abc import Iterator
from dataclasses import replace

from generator.inventory.drill import Drill
from generator.inventory.equipment import Sprayer, Spreader
from generator.inventory.machine import Machine
from generator.inventory.rule import typed_at
from generator.inventory.schema import Inventory
from generator.plan.findings.about_usual import UsualCaution
from generator.plan.findings.order import about_record, finding
from generator.plan.jobs.slope import BY_HAND
from generator.plan.model.days import day_words
from generator.plan.model.finding import Finding, Subject
from generator.plan.sowing.catches import sprayer_catches
from generator.plan.sowing.hopper import pace
from generator.plan.usual.out_of_usual import out_of_usual
from generator.reference.usual import usual
from generator.working import Given

# (what it is called, the number typed, its range in values.yaml, the unit of the range)
Side = tuple[str, Given | None, str, str]
TANKS = {"backpack": "backpack_tank", "hand_gun": "gun_tank"}


def machine_findings(inventory: Inventory, season: int) -> Iterator[Finding]:
    """Yield a caution for each number of a machine out of the usual.

    What a sprayer puts on an acre is looked at where nothing of it is out of the usual by itself.
    """
    for sprayer in inventory.sprayers:
        found = list(_typed(sprayer, _sprayer_sides(sprayer)))
        # what a sprayer puts on an acre comes of these: one slip is told once
        found += _nozzle(sprayer, season)
        yield from found or _carrier(sprayer, season)
    for spreader in inventory.spreaders:
        found = list(_typed(spreader, _spreader_sides(spreader)))
        yield from found or _walked(spreader, season)
    for drill in inventory.drills:
        yield from _typed(drill, _drill_sides(drill))
    for machine in inventory.machines:
        yield from _typed(machine, _machine_sides(machine, _work_of(machine, inventory)))


def _typed(
    machine: Sprayer | Spreader | Drill | Machine, sides: Iterator[Side]
) -> Iterator[Finding]:
    for what, given, name, unit in sides:
        if given is not None:
            found = out_of_usual(
                UsualCaution.MACHINE_OUT_OF_USUAL,
                about_record(machine),
                typed_at(given),
                (what, given),
                usual(name, unit),
                machine=machine.name,
                what=what,
                key=f"{given.name.removesuffix(f'_{given.unit}')}_{given.typed_unit}",
            )
            yield from [found] if found is not None else []


def _sprayer_sides(sprayer: Sprayer) -> Iterator[Side]:
    yield "Tank", sprayer.tank_gal, TANKS.get(sprayer.kind, "boom_tank"), "gal"
    yield "Between nozzles", sprayer.nozzle_spacing_in, "nozzle_spacing", "in"
    yield "Width of the pattern", sprayer.swath_ft, "pattern", "ft"
    for test in sprayer.catch_tests:
        yield "Speed of the catch test", test.speed_mph, "spraying", "mph"


def _spreader_sides(spreader: Spreader) -> Iterator[Side]:
    yield "Hopper", spreader.hopper_lb, "hopper", "lb"
    for test in spreader.catch_tests:
        yield "Width it throws", test.swath_ft, "throw", "ft"


def _drill_sides(drill: Drill) -> Iterator[Side]:
    yield "Between rows", drill.row_spacing_in, "drill_row", "in"
    yield "Once round the wheel", drill.wheel_circumference_ft, "drill_wheel", "ft"


def _work_of(machine: Machine, inventory: Inventory) -> str | None:
    """Return the one kind of work a machine does that has ranges of its own; else None.

    Without one its width and speed go by what any machine has.
    """
    kinds = {
        step.does
        for place in inventory.places()
        for planting in place.plantings
        for work in planting.work
        if work.machine == machine.id
        for step in inventory.steps_of(planting)
        if step.id == work.step
    }
    return next((does.id for does in kinds if does.machine_ranges and len(kinds) == 1), None)


def _machine_sides(machine: Machine, work: str | None) -> Iterator[Side]:
    yield "Width", machine.width_ft, f"{work}_width" if work else "machine", "ft"
    yield "Speed at work", machine.speed_mph, f"{work}_speed" if work else "working", "mph"
    yield "Share of the time on new ground", machine.efficiency_fraction, "efficiency", "pct"


def _nozzle(sprayer: Sprayer, season: int) -> Iterator[Finding]:
    """Yield a caution where one nozzle of the last catch test is far off the mean of all."""
    for catch in sprayer_catches(sprayer, season)[:1]:
        if catch.farthest is None:
            continue
        caught = catch.test.caught_fl_oz
        mean = sum(nozzle.value for nozzle in caught) / len(caught)
        far = max(caught, key=lambda nozzle: abs(nozzle.value - mean))
        found = out_of_usual(
            UsualCaution.NOZZLE_FAR_OFF,
            Subject("sprayer", sprayer.id),
            typed_at(far),
            ("From the mean of all", catch.farthest),
            usual("farthest_nozzle", "pct"),
            machine=sprayer.name,
            number=str(caught.index(far) + 1),
            count=str(len(caught)),
        )
        if found is not None:
            figures = (*found.figures, ("Caught under that nozzle", far))
            # behind the others: the first figure is taken for the one that is off
            yield replace(found, figures=figures)


def _carrier(sprayer: Sprayer, season: int) -> Iterator[Finding]:
    name = "hand_carrier" if sprayer.kind in BY_HAND else "boom_carrier"
    for catch in sprayer_catches(sprayer, season)[:1]:
        found = out_of_usual(
            UsualCaution.CARRIER_OUT_OF_USUAL,
            Subject("sprayer", sprayer.id),
            catch.test.where,
            ("Spray on an acre by the last catch test", catch.carrier),
            usual(name, "gal_per_ac"),
            machine=sprayer.name,
        )
        yield from [found] if found is not None else []


def _walked(spreader: Spreader, season: int) -> Iterator[Finding]:
    for number, test in enumerate(spreader.catch_tests, 1):
        for walked in pace(f"equipment/{season}/{spreader.id}/test_{number}", test).values():
            if walked.unit == "mph":
                found = out_of_usual(
                    UsualCaution.MACHINE_OUT_OF_USUAL,
                    Subject("spreader", spreader.id),
                    test.where,
                    ("Pace of the catch test", walked),
                    usual("walking", "mph"),
                    machine=spreader.name,
                    what="Pace of the catch test",
                    key="distance_ft and walked_in_seconds",
                )
                yield from [found] if found is not None else []


def tests_to_come(inventory: Inventory, as_of: datetime.date) -> Iterator[Finding]:
    """Yield a caution for each catch test of a day after the plan's: nobody has made it yet."""
    machines: tuple[Sprayer | Spreader | Drill, ...] = inventory.sprayers
    for machine in (*machines, *inventory.spreaders, *inventory.drills):
        for test in machine.catch_tests:
            if test.tested_on > as_of:
                words = {"machine": machine.name, "tested": day_words(test.tested_on)}
                yield finding(
                    UsualCaution.TEST_TO_COME, about_record(machine), test.where, (), **words
                )
