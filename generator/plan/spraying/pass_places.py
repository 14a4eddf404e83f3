"""What is shut on the passes of a spraying, how they lap, where they run and are steered."""

from collections.abc import Mapping

from generator.compute import lanes, lapped, steering
from generator.dataclass import dataclass
from generator.working import Figure, Quantity


@dataclass(frozen=True, slots=True)
class Parts:
    """What shuts on its own: how wide one is, how many a pass has, and a pass with all open.

    `count` is None of a pattern without a boom, whose parts are its two sides, or the whole of it.
    """

    part: Figure
    count: Quantity | None
    full: Figure

    @property
    def are_several(self) -> bool:
        """Whether a pass has more than one of them."""
        return self.part != self.full


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


def laps_of_passes(
    job: str, laid: Quantity, width: Figure, numbers: Mapping[str, Quantity]
) -> dict[str, Quantity]:
    """Return the lap between passes and how far they lie apart, or what one sprays beside."""
    count, pass_width = numbers["lanes_count"], numbers["pass_width_ft"]
    if count.value == 1:
        beside = lapped.BESIDE(f"{job}/beside_in", laid_width_ft=laid, width_ft=width)
        share = lapped.BESIDE_SHARE(
            f"{job}/beside_fraction", beside_in=beside, pass_width_ft=pass_width
        )
        return {"beside_in": beside, "beside_fraction": share}
    lap = lanes.LAP(f"{job}/lap_in", laid_width_ft=laid, width_ft=width, lanes_count=count)
    share = lapped.LAP_SHARE(f"{job}/lap_fraction", lap_in=lap, pass_width_ft=pass_width)
    apart = lanes.APART(f"{job}/passes_apart_ft", pass_width_ft=pass_width, lap_in=lap)
    return {"lap_in": lap, "lap_fraction": share, "passes_apart_ft": apart}


def times_over(job: str, numbers: Mapping[str, Quantity]) -> dict[str, Quantity]:
    """Return how many passes lie over the ground that most of them lie over."""
    return {
        "laid_times_count": lapped.LAID_TIMES(
            f"{job}/laid_times_count",
            lanes_count=numbers["lanes_count"],
            pass_width_ft=numbers["pass_width_ft"],
            passes_apart_ft=numbers["passes_apart_ft"],
        )
    }


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
    # as many shut at each end leave the middle of what is open where that of the sprayer is
    if parts.count is None:
        one_side = parts.are_several and numbers["open_count"].value == 1
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
