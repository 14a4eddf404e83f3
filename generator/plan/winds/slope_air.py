"""The air that a slope makes in light wind: downhill at both ends of the day, uphill between."""

from generator.compute.scent import HALF_CIRCLE_DEG, blows_to, off_downwind_deg
from generator.inventory.places import Stand
from generator.plan.winds.airs import Downwind, SlopeAir
from generator.plan.winds.stand_winds import downwind_of
from generator.plan.winds.widths import has_slope
from generator.reference.library import values


def slope_air(stand: Stand) -> SlopeAir | None:
    """Return the air a slope makes at a stand, None on flat ground or where no fall is typed."""
    if stand.falls_to is None or not has_slope(stand):
        return None
    things = tuple(downwind_of(stand))
    return SlopeAir(
        stand.falls_to,
        values()["slope_air_below_mph"],
        tuple(thing for thing in things if _runs_to(stand, thing, downhill=True)),
        tuple(thing for thing in things if _runs_to(stand, thing, downhill=False)),
    )


def _runs_to(stand: Stand, thing: Downwind, *, downhill: bool) -> bool:
    """Return whether air up or down the slope may run to a thing; one too far to know may be."""
    assert stand.falls_to is not None
    # air that runs downhill comes from uphill: what it is off that line uphill is off the other
    off_deg = off_downwind_deg(stand.falls_to.value, thing.toward.value)
    off_deg = HALF_CIRCLE_DEG - off_deg if downhill else off_deg
    reach = stand.downwind_reach_yd or values()["downwind_reach_yd"]
    line, doubt = values()["scent_line_deg"].value, values()["scent_doubt_deg"].value
    return blows_to(off_deg, line, doubt, thing.distance_yd, reach.value) is not False
