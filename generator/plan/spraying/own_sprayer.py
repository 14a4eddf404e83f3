"""A sprayer that a contractor brings: spray and doses at each volume that the labels allow.

Nobody here knows that sprayer. Its own catch test tells the gallons to an acre, and these loads
what goes with them, each foot of the ground sprayed once.
"""

import math
from collections.abc import Iterable
from dataclasses import replace

from generator.compute import spray
from generator.inventory.label import CarrierRange, Use
from generator.inventory.places import AdjuvantUsed
from generator.inventory.stock import Adjuvant
from generator.plan.jobs.request import JobRequest
from generator.plan.labels.yearly_sums import PlannedSpray
from generator.plan.model.work import OwnLoads, Pour
from generator.plan.spraying.pours import Cleared, adjuvant_pours, product_pour
from generator.plan.spraying.tank import SprayerSetUp, load_of
from generator.reference.library import values
from generator.working import Given, Quantity, Reference

Volume = Given | Reference
VOLUMES_BETWEEN = 4  # as many rows as a narrow table shows at once, the two ends beside them
STEPS_GAL_PER_AC = (1, 2, 5, 10, 20, 50, 100)


def own_loads(
    request: JobRequest,
    cleared: tuple[Cleared, ...],
    partners: tuple[tuple[AdjuvantUsed, Adjuvant], ...],
    machine: SprayerSetUp,
    sprays: tuple[PlannedSpray, ...],
    ground: Quantity,
) -> tuple[OwnLoads, ...]:
    """Return all that `ground` takes, and what goes into a fixed amount of spray, by the volume.

    None where a card gives no volume, where a rate follows the spray and not the ground, or where
    at one of the volumes no mark on the measures of `machine` holds the labels' rates.
    """
    if any(_follows_the_spray(request, part) for part in cleared):
        return ()
    rows = []
    for number, volume in enumerate(volumes(part.use for part in cleared), 1):
        name = f"own_{number}"
        pours = (
            *(product_pour(request, part, volume, machine, sprays) for part in cleared),
            *adjuvant_pours(request, partners, volume, machine, f"{name}."),
        )
        row = _own_load(request.job_id, name, volume, pours, ground)
        if row is None:
            return ()
        rows.append(row)
    return tuple(rows)


def _follows_the_spray(request: JobRequest, part: Cleared) -> bool:
    """Return whether the rate is a share of the spray, or the ground is spots wetted by eye."""
    spots = request.work is not None and request.work.method == "spot"
    return spots or part.rate.mix is not None or part.use.basis == "mix"


def _own_load(
    job: str, name: str, volume: Volume, pours: tuple[Pour, ...], ground: Quantity
) -> OwnLoads | None:
    in_all = spray.SPRAY_GAL(f"{job}/{name}_spray_gal", area_ac=ground, carrier_gal_per_ac=volume)
    whole = load_of(job, name, None, in_all, pours, volume)
    part = load_of(job, f"{name}_part", None, values()["mixed_at_once_gal"], pours, volume)
    if whole is None or part is None:
        return None
    # every row is measured out in gallons that its own tank is marked with
    return OwnLoads(volume, replace(whole, poured=()), replace(part, poured=()))


def volumes(uses: Iterable[Use]) -> tuple[Volume, ...]:
    """Return the least and the most spray to an acre that every card allows, round ones between.

    Nothing where a card gives none, or no volume is within all of them.
    """
    ranges = [use.carrier_gal_per_ac for use in uses]
    given = [one for one in ranges if isinstance(one, CarrierRange)]
    if not given or len(given) < len(ranges):
        return ()
    low = max((one.low_gal_per_ac for one in given), key=lambda figure: figure.value)
    high = min((one.high_gal_per_ac for one in given), key=lambda figure: figure.value)
    if high.value < low.value:
        return ()
    if high.value == low.value:
        return (low,)
    return (low, *map(_round_volume, _between(low.value, high.value)), high)


def _between(low_gal_per_ac: float, high_gal_per_ac: float) -> list[int]:
    """Return round volumes between two, as few as are read at once.

    >>> _between(10, 20), _between(9.4, 11), _between(5, 100)
    ([12, 14, 16, 18], [10], [20, 40, 60, 80])
    """
    every: list[int] = []
    for step in STEPS_GAL_PER_AC:
        first = (int(low_gal_per_ac // step) + 1) * step
        every = list(range(first, math.ceil(high_gal_per_ac), step))
        if len(every) <= VOLUMES_BETWEEN:
            break
    return every


def _round_volume(volume_gal_per_ac: int) -> Reference:
    where = "a round figure within the volumes of the labels"
    return Reference("own_spray_gal_per_ac", volume_gal_per_ac, "gal_per_ac", "arithmetic", where)
