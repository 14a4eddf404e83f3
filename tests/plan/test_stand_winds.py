"""What a wind is for a stand and a walk, by the stories of a stand in the open and in timber."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.inventory.fields import Where
from generator.inventory.places import Route, Stand
from generator.inventory.winds import DeerSpot
from generator.plan.winds.airs import (
    DRIFTS,
    OK,
    WRONG_WIND,
    YOUR_CALL,
    Air,
    Because,
    HowTold,
    WindVerdict,
)
from generator.plan.winds.slope_air import slope_air
from generator.plan.winds.stand_winds import stand_wind, walk_wind, wind_with_walks
from generator.plan.winds.widths import EIGHT_WINDS_DEG, half_angle
from generator.working import Given

WHERE = Where("stands.yaml", 1, 1)
NW = EIGHT_WINDS_DEG["northwest"]


def number(value: float, unit: str = "deg") -> Given:
    return Given(f"toward_{unit}", value, unit, value, unit, "stands.yaml", 1, "place")


def spot(toward: float, distance: float | None) -> DeerSpot:
    return DeerSpot(
        where=WHERE,
        toward=number(toward),
        distance_yd=None if distance is None else number(distance, "yd"),
    )


def stand(*beds: tuple[float, float | None], lies: str | None = "open", **more: Any) -> Stand:
    found = tuple(spot(toward, distance) for toward, distance in beds)
    return Stand(where=WHERE, id="oak", name="Oak", lies=lies, beds=found, **more)


def walk(identity: str = "lane", **more: Any) -> Route:
    return Route(where=WHERE, id=identity, name=identity, serves=("oak",), **more)


def winds(*bearings: float) -> tuple[Given, ...]:
    return tuple(number(bearing) for bearing in bearings)


# Worked by hand for a wind from the northwest, 315: it blows toward 135. 160 lies 25 off that
# line, 60 lies 75 off it, 30 lies 105 off. Wrong up to 22.5 and 45, the hunter's call up to 90.
@pytest.mark.parametrize(
    ("toward", "distance", "word", "because"),
    [
        (160, 180, WRONG_WIND, Because.BLOWS_TO),
        (60, 220, YOUR_CALL, Because.MAY_BLOW_TO),
        (30, 220, OK, Because.BLOWS_PAST),
        (160, None, YOUR_CALL, Because.NO_DISTANCE),
        (160, 301, YOUR_CALL, Because.BEYOND_REACH),
        (135 + 67.5, 180, WRONG_WIND, Because.BLOWS_TO),
        (135 + 90, 180, YOUR_CALL, Because.MAY_BLOW_TO),
        (135 + 91, 180, OK, Because.BLOWS_PAST),
    ],
)
def test_a_stand_in_the_open_on_six_miles_an_hour_from_the_northwest(
    toward: float, distance: float | None, word: str, because: Because
) -> None:
    found = stand_wind(stand((toward, distance)), Air(NW, 6))
    assert (found.word, found.because) == (word, because)


def test_in_timber_the_same_wind_drifts() -> None:
    assert stand_wind(stand((30, 220), lies="timber"), Air(NW, 6)).word == DRIFTS
    assert stand_wind(stand((30, 220), lies="timber"), Air(NW, 10)).word == OK


@pytest.mark.parametrize(
    ("lies", "words"),
    [
        ("open", [DRIFTS, OK, OK, OK]),
        ("timber", [DRIFTS, DRIFTS, DRIFTS, OK]),
        # of an edge, and of what nobody typed, half is known
        ("edge", [DRIFTS, YOUR_CALL, YOUR_CALL, OK]),
        (None, [DRIFTS, YOUR_CALL, YOUR_CALL, OK]),
    ],
)
def test_speed_alone_changes_answers(lies: str | None, words: list[str]) -> None:
    found = [stand_wind(stand((30, 220), lies=lies), Air(NW, speed)) for speed in (3.9, 4, 9.9, 10)]
    assert [one.word for one in found] == words


def test_a_wind_measured_at_the_stand_is_what_it_is_there() -> None:
    in_timber = stand((30, 220), lies="timber")
    assert stand_wind(in_timber, Air(NW, 6, HowTold.MEASURED)).word == OK
    assert stand_wind(in_timber, Air(NW, 3, HowTold.MEASURED)).word == DRIFTS
    assert stand_wind(in_timber, Air(NW, 6, HowTold.RECORD)).word == DRIFTS


def test_the_worst_of_all_that_scent_must_not_reach_decides() -> None:
    both = stand((30, 220), (160, 180))
    found = stand_wind(both, Air(NW, 6))
    assert (found.word, found.thing and found.thing.toward.value) == (WRONG_WIND, 160)
    fed = stand((30, 220), food=(spot(150, 90),))
    assert stand_wind(fed, Air(NW, 6)).word == WRONG_WIND
    crossed = stand((30, 220), deer_come_from=winds(135))
    assert stand_wind(crossed, Air(NW, 6)).word == WRONG_WIND


def test_without_a_bed_it_is_never_ok() -> None:
    assert stand_wind(stand(), Air(NW, 6)) == WindVerdict(YOUR_CALL, Because.NO_BEDS)
    fed = stand(food=(spot(30, 90),))
    assert stand_wind(fed, Air(NW, 6)).because == Because.NO_BEDS


def test_the_reach_that_is_typed_holds() -> None:
    far = stand((160, 180), downwind_reach_yd=number(150, "yd"))
    assert stand_wind(far, Air(NW, 6)).because == Because.BEYOND_REACH


def test_a_typed_wind_stands_above_what_is_worked_out_and_below_drifting() -> None:
    is_for = stand((160, 180), winds_for=winds(315))
    found = stand_wind(is_for, Air(NW, 6))
    assert (found.word, found.because) == (OK, Because.TYPED_FOR)
    assert found.beside is not None
    assert found.beside.word == WRONG_WIND
    assert stand_wind(is_for, Air(NW, 3)).word == DRIFTS
    is_against = stand((30, 220), winds_against=winds(315))
    found = stand_wind(is_against, Air(NW, 6))
    assert (found.word, found.beside and found.beside.word) == (WRONG_WIND, OK)
    # no word of a typed wind from elsewhere
    assert stand_wind(is_for, Air(0, 6)).because == Because.BLOWS_TO


def test_a_typed_wind_counts_half_a_direction_to_each_side() -> None:
    typed = stand(winds_for=winds(337.5))
    told = {name for name, deg in EIGHT_WINDS_DEG.items() if stand_wind(typed, Air(deg, 6)).beside}
    assert told == {"north", "northwest"}
    both = stand(winds_for=winds(0), winds_against=winds(337.5))
    found = {name: stand_wind(both, Air(deg, 6)) for name, deg in EIGHT_WINDS_DEG.items()}
    assert found["north"].because == Because.TYPED_BOTH
    assert found["northwest"].because == Because.TYPED_AGAINST


# By hand: half-angle 34 degrees at ten miles an hour with a low sun, 45 with the sun up; a bed 40
# off the line is the hunter's call in the one and wrong in the other, and by a forecast wrong.
def test_in_degrees_with_speed_and_hour_the_half_angles_hold() -> None:
    oak = stand((175, 180))
    steady, sunny = Air(NW, 10, HowTold.RECORD, steady=True), Air(NW, 10, HowTold.RECORD)
    assert stand_wind(oak, steady).word == YOUR_CALL
    assert stand_wind(oak, sunny).word == WRONG_WIND
    assert stand_wind(oak, Air(NW, 10)).word == WRONG_WIND
    assert stand_wind(oak, Air(NW, 13, HowTold.RECORD, steady=True)).word == YOUR_CALL
    assert stand_wind(oak, Air(NW, 6, HowTold.RECORD, steady=True)).word == WRONG_WIND


def test_half_angles_by_speed() -> None:
    """The table of the reference: 22, 34, 45 and 56 degrees, slower being wider."""
    steady = [half_angle(speed, steady=True).value for speed in (4, 7.9, 8, 12, 12.1, 30)]
    assert steady == [45, 45, 33.75, 33.75, 22.5, 22.5]
    sunny = [half_angle(speed, steady=False).value for speed in (4, 7.9, 8, 12, 12.1, 30)]
    assert sunny == [56.25, 56.25, 45, 45, 33.75, 33.75]


@given(
    beds=st.lists(st.tuples(st.integers(0, 359), st.none() | st.integers(10, 500)), max_size=3),
    typed=st.lists(st.integers(0, 359), max_size=2),
    against=st.lists(st.integers(0, 359), max_size=2),
    speed=st.none() | st.integers(0, 20),
    lies=st.sampled_from(("open", "edge", "timber", None)),
    wind=st.sampled_from(sorted(EIGHT_WINDS_DEG.values())),
    told=st.sampled_from(HowTold),
)
def test_turning_a_property_by_a_quarter_turns_every_answer(
    beds: list[tuple[int, int | None]],
    typed: list[int],
    against: list[int],
    speed: int | None,
    lies: str | None,
    wind: int,
    told: HowTold,
) -> None:
    def answer(turn: int) -> tuple[str, Because, str | None]:
        turned = stand(
            *(((toward + turn) % 360, distance) for toward, distance in beds),
            lies=lies,
            winds_for=winds(*((one + turn) % 360 for one in typed)),
            winds_against=winds(*((one + turn) % 360 for one in against)),
        )
        by = walk(winds_for=winds(*((one + turn) % 360 for one in typed)))
        found = wind_with_walks(turned, (by,), Air((wind + turn) % 360, speed, told))
        return found.word, found.because, found.walk

    assert answer(0) == answer(90) == answer(180) == answer(270)


def test_of_the_walks_the_first_on_which_the_wind_is_least_wrong_goes_with_it() -> None:
    oak, air = stand((30, 220)), Air(NW, 6)
    wrong, open_to_doubt = walk("creek", winds_against=winds(315)), walk("lane")
    good, good_too = walk("ridge", winds_for=winds(315)), walk("fence", winds_for=winds(315))
    found = wind_with_walks(oak, (wrong, open_to_doubt, good, good_too), air)
    assert (found.word, found.walk, found.of_walk) == (OK, "ridge", False)
    found = wind_with_walks(oak, (wrong, open_to_doubt), air)
    assert (found.word, found.walk, found.of_walk) == (YOUR_CALL, "lane", True)
    found = wind_with_walks(oak, (wrong,), air)
    assert (found.word, found.because) == (WRONG_WIND, Because.TYPED_AGAINST)
    assert found.of_walk
    found = wind_with_walks(oak, (walk("far", winds_for=winds(315)),)[:0], air)
    assert (found.word, found.because) == (YOUR_CALL, Because.NO_WALK)


def test_a_wind_that_is_wrong_for_the_stand_needs_no_walk() -> None:
    good = walk(winds_for=winds(315))
    found = wind_with_walks(stand((160, 180)), (good,), Air(NW, 6))
    assert (found.word, found.walk) == (WRONG_WIND, None)


def test_a_walk_in_timber_drifts_too() -> None:
    assert walk_wind(walk(lies="timber", winds_for=winds(315)), Air(NW, 6)).word == DRIFTS
    assert walk_wind(walk(winds_for=winds(315)), Air(NW, 6)).word == OK
    assert walk_wind(walk(), Air(NW, 6)).because == Because.NOT_TYPED


def test_a_slope_moves_light_air() -> None:
    # the hill falls to the southeast, 135; beds 20 off that way, and uphill, 300, 15 off
    steep = stand((155, 180), (300, 180), falls_to=number(135))
    assert stand_wind(steep, Air(NW, 4.9)).because == Because.SLOPE
    assert stand_wind(steep, Air(NW, 5)).because == Because.BLOWS_TO
    air = slope_air(steep)
    assert air is not None
    assert [thing.toward.value for thing in air.downhill] == [155]
    assert [thing.toward.value for thing in air.uphill] == [300]
    flat = stand((155, 180), falls_to=number(135), fall_pct=number(5, "pct"))
    assert slope_air(flat) is None
    assert stand_wind(flat, Air(0, 4.5)).word == WRONG_WIND
    assert slope_air(stand((155, 180))) is None
