"""Where the passes of a spraying run, what is shut on them, and where the sprayer is steered."""

from collections.abc import Mapping
from dataclasses import dataclass

from generator.compute import lanes, steering
from generator.working import Figure, Quantity


@dataclass(frozen=True, slots=True)
class Parts:
    """What shuts on its own: how wide one is, how many a pass has, and a pass with all open.

    `count` is None of a pattern without a boom, whose parts are its two sides, or the whole of it.
    """

    part: Figure
    count: Quantity | None
    full: Figure


def shut_on_passes(
    job: str, in_all: Quantity, count: Quantity, each: Quantity, parts: Parts
) -> dict[str, Quantity]:
    """Return what is open on the last pass where that is less, and the nozzles to shut."""
    numbers: dict[str, Quantity] = {}
    last = lanes.OPEN_LAST(
        f"{job}/open_last_count", parts_count=in_all, lanes_count=count, open_count=each
    )
    if last.value < each.value:
        numbers["open_last_count"] = last
    if parts.count is None:
        return numbers
    numbers["nozzles_count"] = parts.count
    if each.value < parts.count.value:
        numbers["shut_count"] = lanes.SHUT(
            f"{job}/shut_count", nozzles_count=parts.count, open_count=each
        )
    if last.value < each.value:
        numbers["shut_last_count"] = lanes.SHUT_LAST(
            f"{job}/shut_last_count", nozzles_count=parts.count, open_count=last
        )
    return numbers


def places_of_passes(
    job: str, width: Figure, parts: Parts, numbers: Mapping[str, Quantity]
) -> dict[str, Quantity]:
    """Return where the first pass runs and the last, and where the sprayer is steered for that."""
    if numbers["lanes_count"].value == 1:
        first = lanes.MIDDLE(f"{job}/first_pass_ft", width_ft=width)
    else:
        first = lanes.FIRST_PASS(f"{job}/first_pass_ft", width_ft=numbers["pass_width_ft"])
    found = {"first_pass_ft": first} | _steered(job, parts, numbers)
    if "open_last_count" in numbers:
        found |= _last(job, numbers["open_last_count"], parts)
        found |= _steered_last(job, parts, numbers)
    return found


def _last(job: str, open_last: Quantity, parts: Parts) -> dict[str, Quantity]:
    """Return how wide a last pass is with less open, and where it runs: it ends at the far edge."""
    width = lanes.LAST_WIDTH(f"{job}/last_width_ft", open_count=open_last, part_ft=parts.part)
    middle = lanes.LAST_PASS(f"{job}/last_pass_ft", width_ft=width)
    return {"last_width_ft": width, "last_pass_ft": middle}


def _steered(job: str, parts: Parts, numbers: Mapping[str, Quantity]) -> dict[str, Quantity]:
    """Return how far the sprayer runs beside the middle of what is open, one part more shut."""
    if parts.count is None:
        one_side = parts.part is not parts.full and numbers["open_count"].value == 1
    else:
        one_side = "shut_count" in numbers and numbers["shut_count"].value % 2 == 1
    if not one_side:
        return {}
    return {"steer_off_ft": steering.STEER_OFF(f"{job}/steer_off_ft", part_ft=parts.part)}


def _steered_last(job: str, parts: Parts, numbers: Mapping[str, Quantity]) -> dict[str, Quantity]:
    """Return the same of the last pass, of which more is shut toward the far edge."""
    off = f"{job}/last_steer_off_ft"
    if parts.count is None:
        return {"last_steer_off_ft": steering.STEER_OFF(off, part_ft=parts.part)}
    shut, last = numbers.get("shut_count"), numbers["shut_last_count"]
    if shut is None:
        shut = lanes.SHUT(
            f"{job}/shut_count", nozzles_count=parts.count, open_count=numbers["open_count"]
        )
    far = steering.SHUT_FAR(f"{job}/shut_far_count", shut_last_count=last, shut_count=shut)
    return {
        "shut_far_count": far,
        "last_steer_off_ft": steering.LAST_STEER_OFF(
            off, shut_far_count=far, shut_last_count=last, part_ft=parts.part
        ),
    }
