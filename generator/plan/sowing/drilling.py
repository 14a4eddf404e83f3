"""A sowing by drill: what the catch test put down, the correction, what each row must give."""

from generator.compute import drill as rows
from generator.inventory.drill import Drill, DrillTest
from generator.plan.model.work import Sowing
from generator.plan.sowing.hopper import catches_apart
from generator.plan.sowing.seed_catch import latest_with, lots_in
from generator.plan.sowing.seed_rates import bulk_rate
from generator.working import Given, Quantity


def latest_drill_test(drill: Drill, parts: tuple[Sowing, ...]) -> DrillTest | None:
    """Return the last catch test with what is sown, or with its heaviest part in it, or None."""
    return latest_with(drill.catch_tests, parts)


def drill_numbers(
    job_id: str, parts: tuple[Sowing, ...], drill: Drill, test: DrillTest | None
) -> dict[str, Quantity]:
    """Return the correction and the catch of each row, where there is a catch test."""
    if test is None:
        return {}
    rate, drilled = bulk_rate(job_id, parts), drilled_rate(job_id, drill, test)
    numbers = {
        "bulk_rate_lb_per_ac": rate,
        "drilled_rate_lb_per_ac": drilled,
        "drill_correction_fraction": rows.DRILL_CORRECTION(
            f"{job_id}/drill_correction_fraction",
            bulk_rate_lb_per_ac=rate,
            drilled_rate_lb_per_ac=drilled,
        ),
        "row_catch_g": rows.ROW_CATCH(
            f"{job_id}/row_catch_g",
            bulk_rate_lb_per_ac=rate,
            row_spacing_in=drill.row_spacing_in,
            distance_ft=tested_distance(job_id, drill, test),
        ),
    }
    if drill.wheel_circumference_ft is not None:
        numbers["distance_turns"] = rows.DISTANCE_TURNS(
            f"{job_id}/distance_turns",
            distance_ft=tested_distance(job_id, drill, test),
            wheel_circumference_ft=drill.wheel_circumference_ft,
        )
    # numbered as in the file, as on the page of equipment, and only then put by day
    numbered = sorted(enumerate(drill.catch_tests, 1), key=lambda pair: pair[1].tested_on)
    # another setting is meant to let more or less through, so it says nothing of how even it runs
    alike = [
        drilled_rate(f"{job_id}/catch_{number}", drill, catch)
        for number, catch in numbered
        if (lots_in(catch), catch.setting) == (lots_in(test), test.setting)
    ]
    return numbers | catches_apart(job_id, alike)


def drill_width(base: str, drill: Drill) -> Quantity:
    """Return the width that one pass sows."""
    return rows.DRILL_WIDTH(
        f"{base}/drill_width_ft", rows_count=drill.rows_count, row_spacing_in=drill.row_spacing_in
    )


def drilled_rate(base: str, drill: Drill, test: DrillTest) -> Quantity:
    """Return what the drill put down on an acre in a catch test."""
    ground = rows.ROWS_GROUND(
        f"{base}/rows_ground_sq_ft",
        distance_ft=tested_distance(base, drill, test),
        row_spacing_in=drill.row_spacing_in,
        rows_count=test.rows_caught_count,
    )
    return rows.DRILLED_RATE(
        f"{base}/drilled_rate_lb_per_ac", caught_lb=test.caught_lb, ground_sq_ft=ground
    )


def tested_distance(base: str, drill: Drill, test: DrillTest) -> Given | Quantity:
    """Return the distance of a catch test: as driven, or from turns of the wheel."""
    if test.distance_ft is not None:
        return test.distance_ft
    turns, around = test.wheel_turns, drill.wheel_circumference_ft
    assert turns is not None  # a rule holds a test to one of the two
    assert around is not None
    return rows.TURNED_DISTANCE(
        f"{base}/turned_distance_ft", wheel_turns=turns, wheel_circumference_ft=around
    )
