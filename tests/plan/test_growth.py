"""Heights of a planting by hand, on the rule of thumb for good ground, and by what must hold.

Common practice on good ground: the first summer about 2 in at the end of June, 6 to 7 in at the end
of July, 40 in at the end of August; 5 to 6 ft in the second season, 7 to 8 ft in the third.
"""

import datetime
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.standing.heights import heights_on
from generator.plan.standing.planting_curves import Growing, growing, standing_growth
from generator.reference.growth import CURVES, species_growth
from tests.plan.planned import inventory_of
from tests.properties import SEASON, Data, small_property

DAY = datetime.date


def grown(
    *entries: Data, soil: str | None = "good", lot: Data | None = None, **planting: Any
) -> Growing:
    """The planting of the small property, switchgrass on good soil for season 2027, with a log."""
    data = small_property()
    screen = data["screens"]["screens"][0]
    screen["plantings"][0] |= planting
    if soil is not None:
        screen["soil"] = soil
    data["seed"]["lots"][0] |= lot or {}
    data["log"] = {"entries": [{"id": f"e{n}"} | one for n, one in enumerate(entries)]}
    plan = planned_on(data)
    (one,) = growing(plan.entries, plan.land, plan.place("lane"))
    return one


def planned_on(data: Data) -> Plan:
    return make_plan(inventory_of(data), SEASON, DAY(2031, 1, 1))


def inches(one: Growing, day: datetime.date, curve: str = "high") -> float:
    found = heights_on(one, day, CURVES)
    assert found is not None
    return found.by_curve[curve].value  # type: ignore[index]  # the words of the test


def measured(day: str, height_in: float) -> Data:
    return {"done_on": day, "measured": {"planting": "lane-27", "height_in": height_in}}


def all_along(day: str, height_in: float) -> Data:
    """A height measured every 33 ft of the 726 ft of the small property's screen, and at its end.

    726 ft are 221.3 m, so 23 stations are asked for, one for every 10 m.
    """
    stations = [{"at_ft": at, "height_in": height_in} for at in (*range(0, 726, 33), 726)]
    return {"done_on": day, "measured": {"planting": "lane-27", "stations": stations}}


def mowed(day: str, cut_height_in: float) -> Data:
    job = {"planting": "lane-27", "step": "first_summer_mowing"}
    return {"done_on": day, "job": job, "mowed": {"cut_height_in": cut_height_in}}


@pytest.mark.parametrize(
    ("day", "low_in", "high_in"),
    [
        (DAY(2027, 6, 30), 2, 2),
        (DAY(2027, 7, 31), 6, 7),
        (DAY(2027, 8, 31), 40, 40),
        (DAY(2028, 8, 31), 60, 72),
        (DAY(2029, 8, 31), 84, 96),
        (DAY(2033, 8, 31), 84, 96),
    ],
)
def test_the_high_curve_is_the_rule_of_thumb_for_good_ground(
    day: datetime.date, low_in: float, high_in: float
) -> None:
    assert low_in <= inches(grown(), day) <= high_in


def test_a_day_between_two_of_the_list_lies_on_a_straight_line() -> None:
    """By hand: Jun 1 is day 31 of the 61 from May 1 to Jul 1: 0.3 x 31/61 of the 90 in of year 3.

    Where nothing was burned, the 66 in of the year before still stand on the high curve.
    """
    assert inches(grown(), DAY(2029, 6, 1)) == 66
    burnt = grown(burned("2029-04-01"), upkeep="established_screen_upkeep")
    assert inches(burnt, DAY(2029, 6, 1)) == pytest.approx(90 * 0.3 * 31 / 61)
    part = burned("2029-04-01")
    part["burned"]["part"] = "north third"
    unburnt = grown(part, upkeep="established_screen_upkeep")
    assert inches(unburnt, DAY(2029, 6, 1)) == 66


def burned(day: str) -> Data:
    job = {"planting": "lane-27", "step": "upkeep_burning"}
    return {"done_on": day, "job": job, "burned": {"permit": "made up"}}


def test_winter_leaves_its_share() -> None:
    """By hand: 60 in typical at three years, 0.85 of it is 51; low 36, 0.6 of it is 21.6."""
    one = grown()
    assert inches(one, DAY(2029, 11, 30), "typical") == 60
    assert inches(one, DAY(2029, 12, 1), "typical") == pytest.approx(51)
    assert inches(one, DAY(2030, 4, 30), "low") == pytest.approx(21.6)
    assert inches(grown(winter_share_pct=50), DAY(2030, 1, 1), "low") == pytest.approx(18)


def test_a_measured_height_is_on_the_typical_curve_of_its_day_and_pulls_the_others() -> None:
    """By hand: 36 in at the end of August of year 2, against 48: three quarters of every curve."""
    one = grown(measured("2028-08-31", 36))
    assert [inches(one, DAY(2028, 8, 31), curve) for curve in CURVES] == pytest.approx(
        [27, 36, 49.5]
    )
    assert inches(one, DAY(2029, 8, 31), "typical") == pytest.approx(60 * (1 + 0.75) / 2)
    assert inches(one, DAY(2028, 8, 30), "typical") == pytest.approx(
        inches(grown(), DAY(2028, 8, 30), "typical")
    )


def test_a_tall_stand_early_in_summer_pulls_no_curve_out_of_reach() -> None:
    """By hand, year 3: 0.3 of 60 in, 18 in, are typical on Jul 1. 40 in is 2.22 times that.

    Pulled by so much, the low 36 in would promise 80 in at the end of August; only 40 were seen.
    The typical 60 in would come to 133; the kind reaches 90 on good ground. Measured at 30 in, 1.67
    times, the low curve stays at its 36: less was never promised.
    """
    tall = grown(all_along("2029-07-01", 40))
    assert inches(tall, DAY(2029, 7, 1), "low") == pytest.approx(36 * 0.3 * 40 / 18)
    ends = [inches(tall, DAY(2029, 8, 31), curve) for curve in CURVES]
    assert ends == pytest.approx([40, 90, 90])
    assert inches(tall, DAY(2030, 8, 31), "low") == pytest.approx(40)
    less = grown(all_along("2029-07-01", 30))
    assert inches(less, DAY(2029, 8, 31), "low") == pytest.approx(36)
    late = grown(all_along("2029-08-31", 100))
    ends = [inches(late, DAY(2029, 8, 31), curve) for curve in CURVES]
    assert ends == pytest.approx([36 * 100 / 60, 100, 100])


def test_a_height_measured_in_winter_is_held_against_what_winter_leaves() -> None:
    """By hand, year 3: 0.85 of 60 in, 51 in, are typical in January; so much pulls nothing.

    40.8 in is 0.8 of it, and the season after keeps half of that lag: 0.9 of 60 in is 54 in. What
    was mown that winter tells nothing of the next summer.
    """
    one = grown(measured("2030-01-15", 51))
    assert inches(one, DAY(2030, 1, 15), "typical") == pytest.approx(51)
    assert inches(one, DAY(2030, 8, 31), "typical") == pytest.approx(60)
    less = grown(measured("2030-01-15", 40.8))
    assert inches(less, DAY(2030, 1, 16), "low") == pytest.approx(36 * 0.6 * 0.8)
    assert inches(less, DAY(2030, 8, 31), "typical") == pytest.approx(54)
    cut = {"done_on": "2030-01-10", "job": {"planting": "lane-27", "step": "upkeep_mowing"}}
    mown = grown(
        cut | {"mowed": {"cut_height_in": 8}},
        measured("2030-01-15", 8),
        upkeep="established_screen_upkeep",
    )
    assert inches(mown, DAY(2030, 8, 31), "typical") == pytest.approx(60)


def test_mowing_sets_it_back_and_it_grows_on() -> None:
    """By hand, high curve of year 1: cut on Jul 31 at 4 in; 6.5 in stood, 33.5 in are to come."""
    one = grown(mowed("2027-07-31", 4))
    assert inches(one, DAY(2027, 7, 31)) == pytest.approx(4)
    assert inches(one, DAY(2027, 8, 31)) == pytest.approx(4 + 33.5)
    above = grown(mowed("2027-07-31", 8))
    assert inches(above, DAY(2027, 7, 31)) == pytest.approx(6.5)


def test_what_is_cut_or_burnt_in_winter_stands_no_more_that_winter() -> None:
    """By hand, typical curve of year 3: 51 in stand in February; 8 in after the mower, then 0."""
    cut = {"done_on": "2030-02-10", "job": {"planting": "lane-27", "step": "upkeep_mowing"}}
    one = grown(
        cut | {"mowed": {"cut_height_in": 8}},
        burned("2030-04-01"),
        upkeep="established_screen_upkeep",
    )
    days = (DAY(2030, 2, 9), DAY(2030, 2, 10), DAY(2030, 3, 31), DAY(2030, 4, 1))
    assert [inches(one, day, "typical") for day in days] == pytest.approx([51, 8, 8, 0])
    assert inches(one, DAY(2030, 5, 1), "typical") == 0


def test_a_page_tells_no_height_of_what_was_replaced() -> None:
    data = small_property()
    first = data["screens"]["screens"][0]["plantings"][0]
    again = first | {"id": "lane-29", "season": 2029}
    data["screens"]["screens"][0]["plantings"].append(again)
    plan = make_plan(inventory_of(data), 2029, DAY(2029, 1, 1))
    (standing,) = standing_growth(plan, plan.place("lane"))
    assert standing.planting.id == "lane-29"
    assert len(growing(plan.entries, plan.land, plan.place("lane"))) == 2


def test_before_it_is_sown_and_after_an_annual_s_year_nothing_stands() -> None:
    assert heights_on(grown(), DAY(2027, 4, 30), CURVES) is None
    sorghum = species_growth("tall-sorghum")
    assert sorghum is not None
    assert sorghum.grown(2) == ()


def test_what_is_not_known_has_no_curve() -> None:
    assert species_growth("partridge-pea") is None


LATE = DAY(2031, 8, 31)


@pytest.mark.parametrize(
    ("ecotype", "variety", "soil", "heights_in"),
    [
        (None, "Common", "good", [36, 60, 90]),
        ("upland", "Common", "good", [48, 66, 78]),
        ("upland", "Common", "ordinary", [48, 66, 66]),
        ("upland", "Common", "poor", [36, 60, 60]),
        ("upland", "Common", None, [36, 60, 60]),
        ("lowland", "Common", "ordinary", [72, 90, 90]),
        ("lowland", "KANLOW, certified", "good", [72, 84, 96]),
        (None, "Kanlow", "good", [72, 84, 96]),
        # The tag and what is typed do not agree: nobody knows the kind.
        ("upland", "Kanlow", "good", [36, 60, 90]),
    ],
)
def test_heights_by_kind_and_soil(
    ecotype: str | None, variety: str, soil: str | None, heights_in: list[float]
) -> None:
    """Full stands by hand from growth.yaml, with what its head says of soil."""
    lot: Data = {"tag": small_property()["seed"]["lots"][0]["tag"] | {"variety": variety}}
    if ecotype is not None:
        lot["ecotype"] = ecotype
    one = grown(soil=soil, lot=lot)
    assert [inches(one, LATE, curve) for curve in CURVES] == heights_in


def test_of_a_mixture_the_lowest_counts() -> None:
    """Little bluestem, 24 in at least, counts before lowland switchgrass, in either order."""
    data = small_property()
    switchgrass = data["seed"]["lots"][0]
    switchgrass["ecotype"] = "lowland"
    data["seed"]["lots"].append(switchgrass | {"id": "lb", "species": "little-bluestem"})
    del data["seed"]["lots"][1]["ecotype"]
    screen = data["screens"]["screens"][0] | {"soil": "good"}
    data["screens"]["screens"][0] = screen
    seed = [
        {"species": "switchgrass", "lot": switchgrass["id"], "rate_pls_lb_per_ac": 6},
        {"species": "little-bluestem", "lot": "lb", "rate_pls_lb_per_ac": 2},
    ]
    for sown in (seed, seed[::-1]):
        screen["plantings"][0]["seed"] = sown
        plan = planned_on(data)
        (one,) = growing(plan.entries, plan.land, plan.place("lane"))
        assert one.growth.name == "little bluestem"
        assert inches(one, LATE, "low") == 24


@settings(deadline=None, max_examples=60)
@given(st.dates(DAY(2027, 5, 1), DAY(2034, 12, 31)))
def test_low_is_at_most_typical_and_typical_at_most_high(day: datetime.date) -> None:
    heights = [inches(PLAIN, day, curve) for curve in CURVES]
    assert heights == sorted(heights)
    assert heights[0] >= 0


PLAIN = grown()


def stations(at_ft: list[float], height_in: float = 60, **others: Data) -> Data:
    told: list[Data] = [{"at_ft": at, "height_in": height_in} for at in at_ft]
    told += others.values()
    return {"done_on": "2029-08-31", "measured": {"planting": "lane-27", "stations": told}}


EVERY_33_FT: list[float] = [*range(0, 726, 33), 726]


@pytest.mark.parametrize(
    ("at_ft", "low_in"),
    [
        (EVERY_33_FT, 54),
        (EVERY_33_FT[1:], 36),
        ([*EVERY_33_FT[:-1], 0], 36),
        ([at / 2 for at in EVERY_33_FT], 36),
        ([*EVERY_33_FT[:10], *EVERY_33_FT[12:], 5, 6], 36),
        ([*EVERY_33_FT[:10], *EVERY_33_FT[11:], 5], 36),
        ([*range(30, 690, 30), 700, 710], 54),
    ],
)
def test_the_low_curve_is_raised_by_enough_stations_without_a_gap_alone(
    at_ft: list[float], low_in: float
) -> None:
    """By hand, year 3: 90 in against 60 typical is 1.5 times, and 36 in become 54.

    Asked are 23 stations on 726 ft. One less, one typed twice, half of the screen, or a gap of 99
    ft or 66 ft, over twice 10 m, raise nothing.
    """
    one = grown(stations(at_ft, 90))
    assert inches(one, DAY(2029, 8, 31), "low") == pytest.approx(low_in)
    assert inches(one, DAY(2029, 8, 31), "typical") == pytest.approx(90)


def test_a_height_without_a_station_or_of_another_day_makes_no_station() -> None:
    (*others, last) = EVERY_33_FT
    loose = grown(stations(others, 90, more={"height_in": 90}))
    assert inches(loose, DAY(2029, 8, 31), "low") == 36
    first = stations(others, 90)
    second = stations([last], 90)
    assert inches(grown(first, second), DAY(2029, 8, 31), "low") == pytest.approx(54)
    before = {**second, "done_on": "2029-08-30"}
    assert inches(grown(first, before), DAY(2029, 8, 31), "low") == 36


def test_the_low_curve_goes_by_the_lowest_and_the_others_by_the_mean() -> None:
    """By hand, year 3, 60 in typical: 22 heights of 90 in and one of 67 have a mean of 89 in."""
    *others, last = EVERY_33_FT
    one = grown(stations(others, 90, low={"at_ft": last, "height_in": 67}))
    assert inches(one, DAY(2029, 8, 31), "low") == pytest.approx(36 * 67 / 60)
    assert inches(one, DAY(2029, 8, 31), "typical") == pytest.approx(89)
    few = grown(stations([100, 200], 90, low={"from_ft": 300, "to_ft": 400, "height_in": 42}))
    assert inches(few, DAY(2029, 8, 31), "low") == pytest.approx(36 * 0.7)
    assert inches(few, DAY(2029, 8, 31), "typical") == pytest.approx(74)


def test_nothing_is_raised_on_a_place_whose_length_nobody_knows() -> None:
    data = small_property()
    screen = data["screens"]["screens"][0] | {"soil": "good", "area_ac": 1}
    del screen["length_ft"], screen["width_ft"]
    data["screens"]["screens"][0] = screen
    data["log"] = {"entries": [{"id": "e0"} | stations(EVERY_33_FT, 90)]}
    plan = planned_on(data)
    (one,) = growing(plan.entries, plan.land, plan.place("lane"))
    assert inches(one, DAY(2029, 8, 31), "low") == 36


@settings(deadline=None, max_examples=40)
@given(st.dates(DAY(2027, 6, 15), DAY(2030, 8, 31)), st.floats(1, 200), st.floats(1, 200))
def test_a_taller_measuring_never_makes_it_lower(
    day: datetime.date, one_in: float, other_in: float
) -> None:
    low, high = sorted((one_in, other_in))
    later = day + datetime.timedelta(days=20)
    smaller, taller = (grown(measured(day.isoformat(), round(h, 2))) for h in (low, high))
    assert inches(smaller, later, "low") <= inches(taller, later, "low") + 1e-9
