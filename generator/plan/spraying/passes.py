"""Passes of a sprayer side by side over a place, laid so that hardly any ground is sprayed twice.

Of a boom whole nozzles are shut, of a pattern a side where each shuts on its own. The outer passes
end at the edges of the place; what the passes are then wider than it is shared out as laps between
them, all alike. A single pass runs along the middle, and what it is wider falls beside the place.
"""

from dataclasses import replace

from generator.compute import lanes, lapped, spray, spread
from generator.dataclass import dataclass
from generator.plan.jobs.request import JobRequest
from generator.plan.labels.rates import ROUNDING
from generator.plan.land.kept_off import GroundLeft
from generator.plan.spraying.pass_places import (
    Parts,
    laps_of_passes,
    places_of_passes,
    shut_on_passes,
    times_over,
)
from generator.plan.spraying.tank import SprayerSetUp
from generator.reference.library import values
from generator.units import IN_PER_FT, convert
from generator.working import Figure, Given, Quantity

Figures = tuple[tuple[str, Figure], ...]


@dataclass(frozen=True, slots=True)
class Passes:
    """The passes over a place: their numbers by name, and the ground that they spray.

    `over` is the ground they are laid on, so wide as `over_width`.
    """

    numbers: dict[str, Quantity]
    ground: Quantity
    over: Quantity
    over_width: Figure
    pass_width: Figure
    full: Figure
    typed_lap: Given | None

    @property
    def is_laid_twice(self) -> bool:
        """Whether laps are wider than the share of a pass that may be, and than a typed lap may.

        A lap that is wider than the one that was typed was not meant.
        """
        share, lap = self.numbers.get("lap_fraction"), self.numbers.get("lap_in")
        if share is None or lap is None or not is_wide(share.value):
            return False
        return not _is_meant(lap.value, self.typed_lap)

    @property
    def falls_beside(self) -> bool:
        """Whether more of a single pass falls beside the place than may be."""
        share = self.numbers.get("beside_fraction")
        return share is not None and is_wide(share.value)

    @property
    def most_times(self) -> int:
        """How often the same ground is sprayed in one go, at most; narrow laps are not counted."""
        return self.over_the_same if self.is_laid_twice else 1

    @property
    def over_the_same(self) -> int:
        """How many passes lie over the same ground, at most, however narrow the laps."""
        apart = self.numbers.get("passes_apart_ft")
        if apart is None:
            return 1
        count, width = self.numbers["lanes_count"], self.numbers["pass_width_ft"]
        return int(lapped.laid_times_count(count.value, width.value, apart.value))

    @property
    def typed_lap_too_wide(self) -> bool:
        """Whether the typed lap is half of a pass or more, as narrow as the passes are laid."""
        several = self.numbers["lanes_count"].value > 1
        return several and _is_half(self.typed_lap, width_of(self.pass_width))

    def fits(self) -> Figures:
        """Return widths and settings without such a lap, each with what it is, for a cure."""
        told = (
            ("Width that fits", "narrower_width_ft"),
            ("Width that fits, the next", "wider_width_ft"),
            ("Pattern that fits this width", "fitting_swath_ft"),
        )
        return tuple((words, self.numbers[name]) for words, name in told if name in self.numbers)


def is_wide(lap_fraction: float) -> bool:
    """Whether a share of a pass is more than may be laid twice, or beside the place."""
    most = values()["lap_may_be_pct"]
    return lap_fraction > convert(most.value, most.unit, "fraction") * (1 + ROUNDING)


def _is_meant(lap_in: float, typed: Given | None) -> bool:
    """Whether a lap is no wider than the one that was typed, and than a typed one may be."""
    # typing a lap makes no wide one good: beyond what is common it is looked at like any other
    may_be_in = min(typed.value if typed else 0, values()["typed_lap_may_be_in"].value)
    return lap_in <= may_be_in * (1 + ROUNDING)


def width_of(figure: Figure) -> float:
    """Return the value of a width that has one."""
    assert isinstance(figure, Given | Quantity)
    return figure.value


def passes_of(request: JobRequest, machine: SprayerSetUp | None, left: GroundLeft) -> Passes | None:
    """Return the passes of a spraying over what is left of a place, None where nobody can say.

    None too for a typed lap that is no lap any more: half of a pass or more, with all open.
    """
    width = left.width
    if left.is_none or machine is None or width is None or not is_over_the_place(request):
        return None
    parts = _parts(request.job_id, machine)
    if parts is None or _is_half(machine.sprayer.lap_in, width_of(parts.full)):
        return None
    return _laid(request.job_id, left.ground, width, parts, machine.sprayer.lap_in)


def all_open(job: str, passes: Passes, carrier: Quantity) -> dict[str, Quantity]:
    """Return what as many passes would take with all open, where nozzles or a side are shut."""
    shut = {"shut_count", "shut_last_count", "open_last_count"} & passes.numbers.keys()
    if not (shut or width_of(passes.pass_width) < width_of(passes.full)):
        return {}
    return {
        "all_open_gal": lanes.ALL_OPEN(
            f"{job}/all_open_gal",
            area_ac=passes.over,
            width_ft=passes.over_width,
            lanes_count=passes.numbers["lanes_count"],
            full_width_ft=passes.full,
            carrier_gal_per_ac=carrier,
        )
    }


def is_over_the_place(request: JobRequest) -> bool:
    """Whether a spraying goes over the whole place, and not over spots or a part of it."""
    work = request.work
    return work is not None and work.treated_sq_ft is None and not is_over_spots(request)


def is_over_spots(request: JobRequest) -> bool:
    """Whether spots are sprayed, which no passes are laid over."""
    return request.work is not None and request.work.method == "spot"


def lapped_half(
    request: JobRequest, machine: SprayerSetUp, passes: Passes | None
) -> tuple[Given, Figure] | None:
    """Return the typed lap and the pass of which it is half or more, or None.

    The pass is as narrow as it is laid; where no passes are laid it is the whole of it.
    """
    typed, parts = machine.sprayer.lap_in, _parts(request.job_id, machine)
    if typed is None or parts is None:
        return None
    if _is_half(typed, width_of(parts.full)):
        return typed, parts.full
    return (typed, passes.pass_width) if passes is not None and passes.typed_lap_too_wide else None


def _is_half(lap: Given | None, pass_ft: float) -> bool:
    return lap is not None and lapped.lap_fraction(lap.value, pass_ft) >= 1 / 2


def caught_but_once(machine: SprayerSetUp) -> bool:
    """Whether a boom was caught under one nozzle, which does not tell how many it has."""
    return machine.sprayer.kind == "boom" and len(machine.test.caught_fl_oz) == 1


def _parts(job: str, machine: SprayerSetUp) -> Parts | None:
    sprayer = machine.sprayer
    if caught_but_once(machine):
        return None
    if sprayer.kind == "boom":
        assert sprayer.nozzle_spacing_in is not None
        spacing = sprayer.nozzle_spacing_in
        count = spray.NOZZLES(f"{job}/nozzles_count", caught_fl_oz=machine.test.caught_fl_oz)
        full = spray.BOOM_WIDTH(
            f"{job}/boom_width_ft", nozzles_count=count, nozzle_spacing_in=spacing
        )
        return Parts(lanes.NOZZLE_WIDTH(f"{job}/nozzle_ft", nozzle_spacing_in=spacing), count, full)
    if sprayer.swath_ft is None:
        return None
    if sprayer.sides_shut and not machine.by_hand:
        side = lanes.SIDE_WIDTH(f"{job}/side_ft", swath_ft=sprayer.swath_ft)
        return Parts(side, None, sprayer.swath_ft)
    return Parts(sprayer.swath_ft, None, sprayer.swath_ft)


def _laid(job: str, over: Quantity, width: Figure, parts: Parts, lap: Given | None) -> Passes:
    divided = parts.are_several
    count = _lanes(job, width, parts, lap)
    numbers = {"lanes_count": count}
    in_all = count
    if divided:
        in_all = _in_all(job, width, count, parts, lap)
        each = lanes.OPEN(f"{job}/open_count", parts_count=in_all, lanes_count=count)
        pass_width = lanes.PASS_WIDTH(f"{job}/pass_width_ft", open_count=each, part_ft=parts.part)
        numbers |= {"open_count": each} | shut_on_passes(job, in_all, count, each, parts)
    else:
        pass_width = lanes.WHOLE_PASS(f"{job}/pass_width_ft", swath_ft=parts.full)
    numbers["pass_width_ft"] = pass_width
    laid = lanes.LAID_WIDTH(f"{job}/laid_width_ft", parts_count=in_all, part_ft=parts.part)
    ground = over
    # wider by an error of rounding alone is no lap
    if laid.value > width_of(width) * (1 + ROUNDING):
        ground = numbers["laid_ac"] = lanes.LAID(
            f"{job}/laid_ac", area_ac=ground, laid_width_ft=laid, width_ft=width
        )
        numbers |= laps_of_passes(job, laid, width, numbers)
    numbers |= places_of_passes(job, width, parts, numbers)
    passes = Passes(numbers, ground, over, width, pass_width, parts.full, lap)
    found: dict[str, Quantity] = {}
    if passes.is_laid_twice:
        found |= times_over(job, numbers)
    if passes.is_laid_twice or passes.falls_beside:
        found |= _fitting(job, in_all, width, count, parts, lap)
    return replace(passes, numbers=numbers | found)


def _lanes(job: str, width: Figure, parts: Parts, lap: Given | None) -> Quantity:
    """Return the fewest passes that lap by no more than may be; the fewest where none do."""
    fewest = _fewest(f"{job}/lanes_count", width, parts, lap)
    count = int(fewest.value)
    more = [n for n in range(count + 1) if _is_narrow(width, count + n, parts, lap)]
    # the fewest lap little, or no number does: more passes would only take longer
    if not more or not more[0]:
        return fewest
    # one by one, so that the working on the page leads from the fewest to as many
    found = _fewest(f"{job}/fewest_lanes_count", width, parts, lap)
    for n in range(1, more[0] + 1):
        name = "lanes_count" if n == more[0] else f"lanes_{n}_count"
        found = lanes.ONE_MORE(f"{job}/{name}", lanes_count=found)
    return found


def _fewest(identity: str, width: Figure, parts: Parts, lap: Given | None) -> Quantity:
    if lap is None:
        return spread.LANES(identity, width_ft=width, swath_ft=parts.full)
    return lanes.LAPPED_LANES(identity, width_ft=width, pass_width_ft=parts.full, least_lap_in=lap)


def _is_narrow(width: Figure, count: int, parts: Parts, lap: Given | None) -> bool:
    """Whether so many passes lap, or a single one sprays beside, by no more than may be."""
    width_ft, part_ft, lap_in = width_of(width), width_of(parts.part), lap.value if lap else 0
    # bare figures: a number of passes that is only tried leaves no working behind
    in_all = lanes.lapped_parts_count(width_ft, count, lap_in, part_ft)
    each = lanes.open_count(in_all, count)
    # a last pass with nothing open would be none
    if lanes.open_last_count(in_all, count, each) < 1:
        return False
    laid_ft, pass_ft = in_all * part_ft, each * part_ft
    if count > 1 and _is_half(lap, pass_ft):
        return False
    # a single pass has no lap: all that it is too wide counts as one
    too_wide_in = (laid_ft - width_ft) * IN_PER_FT / max(1, count - 1)
    return not is_wide(too_wide_in / IN_PER_FT / pass_ft) or _is_meant(too_wide_in, lap)


def _in_all(job: str, width: Figure, count: Quantity, parts: Parts, lap: Given | None) -> Quantity:
    """Return the nozzles or sides that are open over all passes together."""
    if lap is None:
        return lanes.PARTS(f"{job}/parts_count", width_ft=width, part_ft=parts.part)
    return lanes.LAPPED_PARTS(
        f"{job}/parts_count",
        width_ft=width,
        lanes_count=count,
        least_lap_in=lap,
        part_ft=parts.part,
    )


def _fitting(
    job: str, in_all: Quantity, width: Figure, count: Quantity, parts: Parts, lap: Given | None
) -> dict[str, Quantity]:
    """Return the widths next to this one that passes just cover, and a pattern that fits.

    None where the typed lap alone is too wide: no width cures that.
    """
    numbers: dict[str, Quantity] = {}
    if lap is not None and is_wide(lapped.lap_fraction(lap.value, width_of(parts.full))):
        return numbers
    if in_all.value > 1:
        fewer = lapped.FEWER_PARTS(f"{job}/fewer_count", parts_count=in_all)
        numbers["narrower_width_ft"] = _covered(f"{job}/narrower_width_ft", fewer, parts, lap)
    numbers["wider_width_ft"] = _covered(f"{job}/wider_width_ft", in_all, parts, lap)
    if not parts.are_several and count.value > 1 and lap is None:
        numbers["fitting_swath_ft"] = lapped.FITTING_SWATH(
            f"{job}/fitting_swath_ft", width_ft=width, lanes_count=count
        )
    return numbers


def _covered(identity: str, in_all: Quantity, parts: Parts, lap: Given | None) -> Quantity:
    """Return the width that so many parts cover, side by side or with the typed lap."""
    if lap is None:
        return lapped.FITTING_WIDTH(identity, parts_count=in_all, part_ft=parts.part)
    return lapped.LAPPED_WIDTH(
        identity,
        parts_count=in_all,
        part_ft=parts.part,
        full_width_ft=parts.full,
        least_lap_in=lap,
    )
