"""Spreaders and drills from their catch tests: lanes, what falls beside, pace, rows, by hand."""

from pathlib import Path

import pytest

from generator.inventory.load import load_inventory
from tests.plan.planned import job_of, planned
from tests.plan.sown import (
    DRILLING,
    SOWING,
    by_drill,
    by_spreader,
    codes_on,
    found_on,
    sown,
    the_planting,
    with_lot,
)
from tests.properties import Data, write_property

CAUGHT = {"caught_lb": 0.14}


def numbers(data: Data, job_id: str = SOWING) -> dict[str, float]:
    return {name: one.value for name, one in job_of(planned(data), job_id).numbers.items()}


def of_width(width_ft: float, *tests: Data) -> Data:
    data = by_spreader(sown(), *(tests or (CAUGHT,)))
    data["screens"]["screens"][0] |= {"width_ft": width_ft, "length_ft": 43560 / width_ft}
    return data


def test_a_run_out_test_is_a_catch_test() -> None:
    caught = numbers(of_width(60, CAUGHT))
    for run_out in ({"put_in_lb": 0.14, "left_lb": 0}, {"put_in_oz_wt": 4.24, "left_lb": 0.125}):
        number = numbers(of_width(60, run_out))
        # 0.14 lb on 12 by 100 ft: 0.14 x 43,560 / 1,200 = 5.082 lb an acre
        assert number["caught_rate_lb_per_ac"] == pytest.approx(5.082)
        assert number == pytest.approx(caught)


def test_lanes_as_wide_as_the_throw() -> None:
    number = numbers(of_width(60))
    # 60 / 12 = 5 lanes; 11.1111 / 5.082 = 2.19: twice; 11.1111 / (2 x 5.082) = 1.0932
    assert (number["lanes_count"], number["times_over_count"]) == (5, 2)
    assert number["correction_fraction"] == pytest.approx(1.0932, abs=5e-5)
    assert not {"lane_ft", "laid_rate_lb_per_ac", "beside_lb", "load_lb"} & number.keys()


def test_lanes_that_share_a_width_lie_closer() -> None:
    number = numbers(of_width(20))
    # 20 ft in two lanes of 10 ft: the test's 5.082 lb on 12 ft are 6.0984 lb on 10
    assert (number["lanes_count"], number["lane_ft"]) == (2, 10)
    # the outer lanes half a throw inside the edges, at 6 and 14 ft: 8 ft apart
    assert (number["first_lane_ft"], number["lanes_apart_ft"]) == (6, 8)
    assert number["laid_rate_lb_per_ac"] == pytest.approx(6.0984)
    # 11.1111 / 6.0984 = 1.82: twice; 11.1111 / (2 x 6.0984) = 0.9110
    assert number["times_over_count"] == 2
    assert number["correction_fraction"] == pytest.approx(0.9110, abs=5e-5)
    assert "C238" not in codes_on(planned(of_width(20)))


def test_a_place_narrower_than_the_throw_has_one_lane_and_counts_what_falls_beside() -> None:
    plan = planned(of_width(8))
    job = job_of(plan, SOWING)
    number = {name: one.value for name, one in job.numbers.items()}
    assert number["lanes_count"] == 1
    # 11.1111 lb on the acre; 12 / 8 = 1.5: 5.5556 beside, 16.6667 to load, six fills of 2.7778
    assert number["bulk_seed_lb"] == pytest.approx(11.1111, abs=5e-5)
    assert number["beside_lb"] == pytest.approx(5.5556, abs=5e-5)
    assert number["load_lb"] == pytest.approx(16.6667, abs=5e-5)
    assert (number["fills_count"], number["fill_lb"]) == (6, pytest.approx(2.7778, abs=5e-5))
    # the setting is for the place: as where nothing falls beside
    assert number["correction_fraction"] == pytest.approx(1.0932, abs=5e-5)
    (line,) = [one for one in plan.lines if one.kind == "seed"]
    assert line.amount.value == number["load_lb"]
    told = found_on(plan, "C238")
    assert "Close part of the throw" in told.cure
    # the cure: a throw closed to the width of the place
    assert "C238" not in codes_on(planned(of_width(8, CAUGHT | {"swath_ft": 8})))


def test_the_parts_of_a_load_are_the_load() -> None:
    data = of_width(8)
    with_lot(data, "bb", "big-bluestem")
    blue = {"species": "big-bluestem", "lot": "bb", "rate_pls_lb_per_ac": 3}
    the_planting(data)["seed"].append(blue)
    job = job_of(planned(data), SOWING)
    for name in ("bulk_seed_lb", "beside_lb", "load_lb"):
        each = [one.numbers[name].value for one in job.sowings]
        assert sum(each) == pytest.approx(job.numbers[name].value, rel=1e-12)


def test_the_pace_to_hold() -> None:
    number = numbers(of_width(60, CAUGHT | {"walked_in_seconds": 27}))
    # 100 ft in 27 s: 100 x 60 / (27 x 88) = 2.5253 mph
    assert number["pace_mph"] == pytest.approx(2.5253, abs=5e-5)
    assert number["stretch_seconds"] == pytest.approx(27)
    assert "pace_mph" not in numbers(of_width(60))


def test_without_a_test_there_is_nothing_to_set() -> None:
    data = by_spreader(sown())
    assert "C202" in codes_on(planned(data))
    assert not {"correction_fraction", "passes_count"} & numbers(data).keys()
    assert "C202" not in codes_on(planned(of_width(60)))


@pytest.mark.parametrize(("tested", "old"), [("2026-02-20", True), ("2026-08-16", False)])
def test_an_old_test_is_told(tested: str, old: bool) -> None:
    plan = planned(of_width(60, CAUGHT | {"tested_on": tested}))
    assert ("C204" in codes_on(plan)) == old


@pytest.mark.parametrize(
    ("other", "told"),
    [
        ({"caught_lb": 0.155}, True),
        ({"caught_lb": 0.153}, False),
        ({"caught_lb": 0.126}, True),
        ({"caught_lb": 0.3, "setting": "fourth"}, False),
    ],
)
def test_two_catches_more_than_a_tenth_apart_are_told(other: Data, told: bool) -> None:
    plan = planned(of_width(60, other, CAUGHT))
    assert ("C239" in codes_on(plan)) == told
    if told:
        assert "Apart" in dict(found_on(plan, "C239").figures)


def test_the_last_two_catches_are_those_of_the_last_days_wherever_they_stand() -> None:
    wild, late = {"caught_lb": 0.3, "tested_on": "2026-08-10"}, {"tested_on": "2026-08-17"}
    for order in ((CAUGHT | late, wild, CAUGHT), (CAUGHT, CAUGHT | late, wild)):
        assert "C239" not in codes_on(planned(of_width(60, *order)))
    assert "C239" in codes_on(planned(of_width(60, CAUGHT | late, wild)))

    wild = {"caught_oz_wt": 9, "tested_on": "2026-08-10"}
    typed = (DRILLED | late, DRILLED | wild, DRILLED)
    assert "C239" not in codes_on(planned(by_drill(sown(), *typed)), DRILLING)
    assert "C239" in codes_on(planned(by_drill(sown(), *typed[:2])), DRILLING)


def test_the_last_test_counts() -> None:
    number = numbers(of_width(60, {"caught_lb": 0.2}, CAUGHT))
    assert number["caught_rate_lb_per_ac"] == pytest.approx(5.082)


DRILLED = {"caught_oz_wt": 4, "rows_caught_count": 4, "distance_ft": 150}


def test_a_drill_is_set_by_its_catch() -> None:
    number = numbers(by_drill(sown(), DRILLED), DRILLING)
    # four rows of 7.5 in over 150 ft: 0.625 x 4 x 150 = 375 sq ft; 0.25 x 43,560 / 375 = 29.04
    assert number["drilled_rate_lb_per_ac"] == pytest.approx(29.04)
    # 11.1111 / 29.04 = 0.38261; a row: 11.1111 x 0.625 x 150 / 43,560 = 0.0239134 lb, 10.847 g
    assert number["drill_correction_fraction"] == pytest.approx(0.38261, abs=5e-6)
    assert number["row_catch_g"] == pytest.approx(10.847, abs=5e-4)
    assert number["distance_turns"] == pytest.approx(18.75)
    assert number["bulk_seed_lb"] == pytest.approx(11.1111, abs=5e-5)


def test_turns_of_the_wheel_stand_for_a_distance() -> None:
    by_turns = {"caught_g": 26.03, "rows_caught_count": 1, "wheel_turns": 20}
    number = numbers(by_drill(sown(), by_turns), DRILLING)
    # 20 turns of 8 ft, one row: 100 sq ft; 26.03 g are 0.0573864 lb: 24.9975 lb an acre
    assert number["drilled_rate_lb_per_ac"] == pytest.approx(24.9975, abs=5e-5)
    assert number["distance_turns"] == pytest.approx(20)


def test_a_drill_draws_the_same_cautions() -> None:
    assert "C202" in codes_on(planned(by_drill(sown())), DRILLING)
    old = by_drill(sown(), DRILLED | {"tested_on": "2026-04-30"})
    assert "C204" in codes_on(planned(old), DRILLING)
    good = by_drill(sown(), DRILLED, DRILLED | {"caught_oz_wt": 4.3})
    assert not codes_on(planned(good), DRILLING) & {"C202", "C204", "C239"}
    apart = by_drill(sown(), DRILLED, DRILLED | {"caught_oz_wt": 4.5})
    assert "C239" in codes_on(planned(apart), DRILLING)


def test_one_machine_sows_a_planting(tmp_path: Path) -> None:
    data = by_drill(by_spreader(sown(), CAUGHT), DRILLED)
    work = the_planting(data)["work"]
    work[:] = [one for one in work if one["step"] != "frost_seeding"]
    next(one for one in work if one["step"] == "drilling")["spreader"] = "crank"
    loaded = load_inventory(write_property(tmp_path / "property", data))
    assert [one.code for one in loaded.problems] == ["F325"]


def test_twice_the_length_takes_twice_the_seed_and_two_halves_the_same() -> None:
    def load(length_ft: float) -> float:
        data = of_width(8)
        data["screens"]["screens"][0]["length_ft"] = length_ft
        return numbers(data)["load_lb"]

    assert load(1000) == pytest.approx(2 * load(500), rel=1e-12)
    assert load(300) + load(700) == pytest.approx(load(1000), rel=1e-12)


def mixed(*tests: Data) -> Data:
    """Switchgrass and big bluestem, 51 and 49 parts of a hundred, by the crank spreader."""
    data = with_lot(sown(), "bb", "big-bluestem")
    planting = the_planting(data)
    planting["mix_rate_pls_lb_per_ac"] = 8
    planting["seed"] = [
        {"species": "switchgrass", "lot": "sg", "share_pct": 51},
        {"species": "big-bluestem", "lot": "bb", "share_pct": 49},
    ]
    return by_spreader(data, *tests)


def test_a_mixture_is_caught_as_it_is_sown() -> None:
    alone = planned(mixed(CAUGHT))
    found = found_on(alone, "C242")
    assert "made with sg, and this job sows bb, sg" in found.words
    assert "Catch again" in found.words_for_others
    # the mixture, caught before that, counts before the later catch with one seed
    whole = {"caught_lb": 0.2, "mixed_with": ["bb"], "tested_on": "2026-08-10"}
    data = mixed(CAUGHT, whole)
    assert "C242" not in codes_on(planned(data))
    # 0.2 lb on 1,200 sq ft: 7.26 lb an acre
    assert numbers(data)["caught_rate_lb_per_ac"] == pytest.approx(7.26)
    # and is not a test of one of its seeds alone
    one = by_spreader(with_lot(sown(), "bb", "big-bluestem"), whole)
    assert "C242" in codes_on(planned(one))


def test_a_drill_catches_the_mixture_too() -> None:
    data = with_lot(sown(), "bb", "big-bluestem")
    the_planting(data)["seed"].append(
        {"species": "big-bluestem", "lot": "bb", "rate_pls_lb_per_ac": 2}
    )
    alone = by_drill(data, DRILLED)
    assert "C242" in codes_on(planned(alone), DRILLING)
    alone["equipment"]["drills"][0]["catch_tests"][0]["mixed_with"] = ["bb"]
    assert "C242" not in codes_on(planned(alone), DRILLING)
