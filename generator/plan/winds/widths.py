"""How wide scent goes and which wind is too slow to count on, by how the wind is told."""

from generator.compute.scent import HALF_ANGLE
from generator.inventory.places import Route, Stand
from generator.inventory.winds import OPEN, TIMBER
from generator.plan.winds.airs import Air, HowTold
from generator.reference.library import values
from generator.working import Quantity, Reference

# The winds of a forecast, clockwise from north.
EIGHT_WINDS_DEG = {
    "north": 0,
    "northeast": 45,
    "east": 90,
    "southeast": 135,
    "south": 180,
    "southwest": 225,
    "west": 270,
    "northwest": 315,
}


def half_angle(speed_mph: float, *, steady: bool) -> Quantity:
    """Return half of the angle in which scent goes, of a wind with its direction in degrees."""
    known = values()
    if speed_mph > known["fast_wind_above_mph"].value:
        wander = known["wander_fast_deg"]
    elif speed_mph >= known["slow_wind_below_mph"].value:
        wander = known["wander_middling_deg"]
    else:
        wander = known["wander_slow_deg"]
    plume = known["plume_steady_deg"] if steady else known["plume_sunny_deg"]
    return HALF_ANGLE(
        "wind/half_angle_deg",
        half_sector_deg=known["half_sector_deg"],
        plume_deg=plume,
        wander_deg=wander,
    )


def within_deg(air: Air) -> float:
    """Return how far off the downwind line scent of a wind counts as arriving."""
    known = values()
    if air.told is HowTold.FORECAST or air.speed_mph is None:
        return known["scent_line_deg"].value + known["forecast_off_deg"].value
    return half_angle(air.speed_mph, steady=air.steady).value


def has_slope(stand: Stand) -> bool:
    """Return whether a stand lies on a slope; one of which nobody typed how steep counts as one."""
    steep = stand.fall_pct
    is_flat = steep is not None and steep.value <= values()["slope_air_from_pct"].value
    return stand.falls_to is not None and not is_flat


def drifts_below(of: Stand | Route, told: HowTold = HowTold.FORECAST) -> Reference:
    """Return the wind below which scent drifts there for sure, whatever else is typed."""
    known = values()
    if of.lies == TIMBER and told is not HowTold.MEASURED:
        return known["drifts_in_timber_mph"]
    if isinstance(of, Stand) and has_slope(of):
        return known["slope_air_below_mph"]
    return known["drifts_in_the_open_mph"]


def counts_from(of: Stand | Route, told: HowTold = HowTold.FORECAST) -> Reference:
    """Return the wind from which a direction can be counted on there.

    At an edge, or where nobody typed what lies around, that is the wind it takes in timber; a wind
    measured at the stand is what it is there.
    """
    if of.lies == OPEN or told is HowTold.MEASURED:
        return drifts_below(of, told)
    return values()["drifts_in_timber_mph"]
