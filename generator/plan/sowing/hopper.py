"""A sowing by hand-crank spreader: fills, lanes and passes, what falls beside, the pace."""

from dataclasses import replace

from generator.compute import spread
from generator.compute import swath as throw
from generator.inventory.equipment import Spreader, SpreaderTest
from generator.plan.model.work import Sowing
from generator.plan.sowing.seed_catch import latest_with, lots_in
from generator.plan.sowing.seed_rates import bulk_rate
from generator.reference.library import values
from generator.working import Figure, Given, Quantity

Width = Given | Quantity


def latest_test(spreader: Spreader, parts: tuple[Sowing, ...]) -> SpreaderTest | None:
    """Return the last catch test with what is sown, or with its heaviest part in it, or None."""
    return latest_with(spreader.catch_tests, parts)


def with_what_falls_beside(
    job_id: str, parts: tuple[Sowing, ...], width: Width | None, test: SpreaderTest | None
) -> tuple[Sowing, ...]:
    """Return the sowings with the seed to load where the throw is wider than the place."""
    if test is None or width is None or width.value >= test.swath_ft.value:
        return parts
    return tuple(_beside(f"{job_id}/{part.lot.id}", part, width, test) for part in parts)


def _beside(base: str, part: Sowing, width: Width, test: SpreaderTest) -> Sowing:
    bulk = part.numbers["bulk_seed_lb"]
    beside = throw.SEED_BESIDE(
        f"{base}.beside_lb", bulk_seed_lb=bulk, swath_ft=test.swath_ft, width_ft=width
    )
    load = throw.LOAD(f"{base}.load_lb", bulk_seed_lb=bulk, beside_lb=beside)
    return replace(part, numbers=part.numbers | {"beside_lb": beside, "load_lb": load})


def hopper_numbers(
    job_id: str,
    parts: tuple[Sowing, ...],
    bulk: Quantity,
    width: Width | None,
    spreader: Spreader,
    test: SpreaderTest | None,
) -> dict[str, Quantity]:
    """Return fills, and passes with the correction where there is a catch test."""
    numbers = _load(job_id, parts)
    # the hopper holds what falls beside too
    load = numbers.get("load_lb", bulk)
    fills = spread.FILLS(f"{job_id}/fills_count", bulk_lb=load, hopper_lb=spreader.hopper_lb)
    numbers["fills_count"] = fills
    numbers["fill_lb"] = spread.FILL(f"{job_id}/fill_lb", bulk_lb=load, fills_count=fills)
    if test is not None:
        numbers |= _opening(job_id, parts, width, test) | pace(job_id, test)
        numbers |= catches_apart(job_id, _alike(job_id, spreader, test))
    return numbers


def _load(job_id: str, parts: tuple[Sowing, ...]) -> dict[str, Quantity]:
    if not all("beside_lb" in part.numbers for part in parts):
        return {}
    return {
        "beside_lb": throw.BESIDE_IN_ALL(
            f"{job_id}/beside_lb", each_lb=tuple(part.numbers["beside_lb"] for part in parts)
        ),
        "load_lb": throw.LOAD_IN_ALL(
            f"{job_id}/load_lb", each_lb=tuple(part.used_up() for part in parts)
        ),
    }


def _opening(
    job_id: str, parts: tuple[Sowing, ...], width: Width | None, test: SpreaderTest
) -> dict[str, Quantity]:
    rate, caught = bulk_rate(job_id, parts), caught_rate(job_id, test)
    numbers = {"bulk_rate_lb_per_ac": rate, "caught_rate_lb_per_ac": caught}
    # what lies on the ground after one pass; lanes that overlap lay more than the test caught
    laid = caught
    if width is not None:
        numbers |= _lanes(job_id, width, test, caught)
        laid = numbers.get("laid_rate_lb_per_ac", caught)
    times = spread.TIMES_OVER(
        f"{job_id}/times_over_count", bulk_rate_lb_per_ac=rate, caught_rate_lb_per_ac=laid
    )
    numbers["times_over_count"] = times
    if "lanes_count" in numbers:
        numbers["passes_count"] = spread.PASSES(
            f"{job_id}/passes_count", lanes_count=numbers["lanes_count"], times_over_count=times
        )
    numbers["correction_fraction"] = spread.CORRECTION(
        f"{job_id}/correction_fraction",
        bulk_rate_lb_per_ac=rate,
        caught_rate_lb_per_ac=laid,
        times_over_count=times,
    )
    numbers["pass_catch_oz_wt"] = spread.PASS_CATCH(
        f"{job_id}/pass_catch_oz_wt",
        caught_lb=put_down(job_id, test),
        correction_fraction=numbers["correction_fraction"],
    )
    return numbers


def _lanes(job_id: str, width: Width, test: SpreaderTest, caught: Quantity) -> dict[str, Quantity]:
    """Return the lanes: the outer ones end at the edges, so those between overlap."""
    lanes = spread.LANES(f"{job_id}/lanes_count", width_ft=width, swath_ft=test.swath_ft)
    numbers = {"lanes_count": lanes}
    # in a place narrower than the throw no lane keeps the seed inside the edges
    if width.value >= test.swath_ft.value:
        numbers["first_lane_ft"] = throw.FIRST_LANE(
            f"{job_id}/first_lane_ft", swath_ft=test.swath_ft
        )
    if lanes.value > 1:
        numbers["lanes_apart_ft"] = throw.LANES_APART(
            f"{job_id}/lanes_apart_ft",
            width_ft=width,
            swath_ft=test.swath_ft,
            gaps_count=throw.GAPS(f"{job_id}/gaps_count", lanes_count=lanes),
        )
    lane = throw.LANE_WIDTH(f"{job_id}/lane_ft", width_ft=width, lanes_count=lanes)
    if lanes.value > 1 and lane.value < test.swath_ft.value:
        numbers["lane_ft"] = lane
        numbers["laid_rate_lb_per_ac"] = throw.LAID_RATE(
            f"{job_id}/laid_rate_lb_per_ac",
            caught_rate_lb_per_ac=caught,
            swath_ft=test.swath_ft,
            lane_ft=lane,
        )
    return numbers


def caught_rate(base: str, test: SpreaderTest) -> Quantity:
    """Return what one pass of a catch test put down on an acre."""
    return spread.CAUGHT_RATE(
        f"{base}/caught_rate_lb_per_ac",
        caught_lb=put_down(base, test),
        swath_ft=test.swath_ft,
        distance_ft=test.distance_ft,
    )


def put_down(base: str, test: SpreaderTest) -> Figure:
    """Return what a pass put down: as caught, or what was put in less what was left."""
    if test.caught_lb is not None:
        return test.caught_lb
    assert test.put_in_lb is not None and test.left_lb is not None  # noqa: PT018 - a rule holds it
    return throw.RUN_OUT(f"{base}/put_down_lb", put_in_lb=test.put_in_lb, left_lb=test.left_lb)


def _alike(job_id: str, spreader: Spreader, test: SpreaderTest) -> list[Quantity]:
    numbered = sorted(enumerate(spreader.catch_tests, 1), key=lambda pair: pair[1].tested_on)
    return [
        caught_rate(f"{job_id}/catch_{number}", catch)
        for number, catch in numbered
        if (lots_in(catch), catch.setting) == (lots_in(test), test.setting)
    ]


def catches_apart(job_id: str, rates: list[Quantity]) -> dict[str, Quantity]:
    """Return how far the last two of some catches, by day, lie apart, where there are two."""
    if len(rates) < 2:
        return {}
    return {
        "catches_apart_fraction": throw.THROW_APART(
            f"{job_id}/catches_apart_fraction",
            one_rate_lb_per_ac=rates[-2],
            other_rate_lb_per_ac=rates[-1],
        )
    }


def pace(job_id: str, test: SpreaderTest) -> dict[str, Quantity]:
    """Return how fast a catch test was walked, where its time is noted."""
    if test.walked_in_seconds is None:
        return {}
    return {
        "pace_mph": throw.PACE(
            f"{job_id}/pace_mph",
            distance_ft=test.distance_ft,
            walked_in_seconds=test.walked_in_seconds,
        ),
        "stretch_seconds": throw.STRETCH_SECONDS(
            f"{job_id}/stretch_seconds",
            stretch_ft=values()["timed_stretch_ft"],
            distance_ft=test.distance_ft,
            walked_in_seconds=test.walked_in_seconds,
        ),
    }
