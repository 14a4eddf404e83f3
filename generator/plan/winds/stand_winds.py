"""What a wind is for a stand, for a walk, and for a stand with the walk that goes with it."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from generator.compute.scent import HALF_CIRCLE_DEG, blows_to, off_downwind_deg
from generator.inventory.places import Route, Stand
from generator.plan.winds.airs import (
    DRIFTS,
    OK,
    WIND_WORDS,
    WRONG_WIND,
    YOUR_CALL,
    Air,
    Because,
    Downwind,
    WindVerdict,
)
from generator.plan.winds.widths import counts_from, drifts_below, has_slope, within_deg
from generator.reference.library import values
from generator.working import Given

BED, FOOD, DEER = "bed", "food", "deer"


def downwind_of(stand: Stand) -> Iterator[Downwind]:
    """Yield what scent from a stand must not reach: beds, food, and where deer come from."""
    for kind, spots in ((BED, stand.beds), (FOOD, stand.food)):
        for spot in spots:
            distance = spot.distance_yd
            yield Downwind(kind, spot.name, spot.toward, distance.value if distance else None)
    for toward in stand.deer_come_from:
        yield Downwind(DEER, None, toward, 0)


def worked_out(stand: Stand, air: Air) -> WindVerdict:
    """Return what a wind is for a stand by the bearings of what it must not blow to."""
    reach = stand.downwind_reach_yd or values()["downwind_reach_yd"]
    within, doubt = within_deg(air), values()["scent_doubt_deg"].value
    asked = [
        (off_downwind_deg(air.from_deg, thing.toward.value), thing) for thing in downwind_of(stand)
    ]
    told = [
        (blows_to(off_deg, within, doubt, thing.distance_yd, reach.value), off_deg, thing)
        for off_deg, thing in sorted(asked, key=lambda pair: pair[0])
    ]
    for reached, _, thing in told:
        if reached:
            return WindVerdict(WRONG_WIND, Because.BLOWS_TO, thing)
    for reached, off_deg, thing in told:
        if reached is None:
            return WindVerdict(YOUR_CALL, _why_open(off_deg, within_deg(air), thing), thing)
    if not stand.beds:
        return WindVerdict(YOUR_CALL, Because.NO_BEDS)
    return WindVerdict(OK, Because.BLOWS_PAST)


def _why_open(off_deg: float, widest_deg: float, thing: Downwind) -> Because:
    if off_deg > widest_deg:
        return Because.MAY_BLOW_TO
    return Because.NO_DISTANCE if thing.distance_yd is None else Because.BEYOND_REACH


def typed_wind(of: Stand | Route, air: Air) -> WindVerdict | None:
    """Return what the owner typed of a wind, None where no typed wind is that near to it.

    Where one it is for and one it is not for are both that near, it is the hunter's call.
    """
    is_for, is_against = _near(of.winds_for, air), _near(of.winds_against, air)
    if is_for and is_against:
        return WindVerdict(YOUR_CALL, Because.TYPED_BOTH)
    if is_against:
        return WindVerdict(WRONG_WIND, Because.TYPED_AGAINST)
    return WindVerdict(OK, Because.TYPED_FOR) if is_for else None


def _near(winds: Iterable[Given], air: Air) -> bool:
    most = values()["typed_wind_deg"].value
    # as far off the line away from where it comes as it is from the other wind
    return any(HALF_CIRCLE_DEG - off_downwind_deg(air.from_deg, one.value) <= most for one in winds)


def stand_wind(stand: Stand, air: Air) -> WindVerdict:
    """Return what a wind is for a stand alone: drifting first, then what is typed, then worked out.

    What is worked out stands beside a typed wind.
    """
    return _slow(stand, air) or _fast_enough(stand, air, worked_out(stand, air))


def walk_wind(route: Route, air: Air) -> WindVerdict:
    """Return what a wind is for a walk: of what lies beside it nothing is typed but winds."""
    open_to_doubt = WindVerdict(YOUR_CALL, Because.NOT_TYPED)
    return _slow(route, air) or typed_wind(route, air) or open_to_doubt


def _slow(of: Stand | Route, air: Air) -> WindVerdict | None:
    """Return that a wind is too slow to have a direction there, None where it is not."""
    if air.speed_mph is None or air.speed_mph >= drifts_below(of, air.told).value:
        return None
    on_slope = isinstance(of, Stand) and has_slope(of)
    moved_by_it = on_slope and air.speed_mph < values()["slope_air_below_mph"].value
    return WindVerdict(DRIFTS, Because.SLOPE if moved_by_it else Because.TOO_SLOW)


def _fast_enough(stand: Stand, air: Air, worked: WindVerdict) -> WindVerdict:
    typed = typed_wind(stand, air)
    if typed is not None:
        return replace(typed, beside=worked)
    is_slow = air.speed_mph is not None and air.speed_mph < counts_from(stand, air.told).value
    if is_slow and worked.word == OK:
        return WindVerdict(YOUR_CALL, Because.MAY_BE_TOO_SLOW)
    return worked


def wind_with_walks(stand: Stand, routes: Iterable[Route], air: Air) -> WindVerdict:
    """Return what a wind is for a stand and the walk that goes with it.

    Of the walks that lead there, the one on which the wind is least wrong; of several the one the
    owner wrote first. The word is that of stand or walk, whichever is worse.
    """
    own = stand_wind(stand, air)
    if own.word in (WRONG_WIND, DRIFTS):
        return own
    walks = [(route, walk_wind(route, air)) for route in routes if stand.id in route.serves]
    if not walks:
        return worse(own, WindVerdict(YOUR_CALL, Because.NO_WALK, of_walk=True))
    route, of_walk = min(walks, key=lambda walk: WIND_WORDS.index(walk[1].word))
    return replace(worse(own, replace(of_walk, of_walk=True)), walk=route.id)


def worse(own: WindVerdict, of_walk: WindVerdict) -> WindVerdict:
    """Return the worse of two verdicts, that of the stand itself where they are alike."""
    return max(own, of_walk, key=lambda one: WIND_WORDS.index(one.word))
