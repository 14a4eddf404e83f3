"""What a taped width adds to a job on a strip: passes of a sprayer, pounds on a stretch.

The strip of the small property is 60 ft wide and an acre; a stretch is 100 ft of it.
"""

import pytest

from tests.plan.planned import KILL, job_of, planned
from tests.plan.test_fertilizing import JOB as FERTILIZING
from tests.plan.test_fertilizing import MAP, POTASH, fed
from tests.plan.test_liming import JOB as LIMING
from tests.plan.test_liming import enm, limed
from tests.properties import Data, small_property


def without_width(data: Data) -> Data:
    screen = data["screens"]["screens"][0]
    del screen["width_ft"], screen["length_ft"]
    screen["area_ac"] = 1
    return data


def test_passes_of_a_boom_over_the_width() -> None:
    # Six nozzles 20 in apart spray 10 ft: six passes over 60 ft, a seventh over one foot more.
    data = small_property()
    numbers = job_of(planned(data), KILL).numbers
    assert numbers["pass_width_ft"].value == 10
    assert numbers["lanes_count"].value == 6
    data["screens"]["screens"][0]["width_ft"] = 61
    assert job_of(planned(data), KILL).numbers["lanes_count"].value == 7


def test_passes_of_a_pattern_without_a_boom() -> None:
    # 60 ft in swaths of 18.5 ft: three cover 55.5 ft, so four.
    data = small_property()
    sprayer = data["equipment"]["sprayers"][0]
    sprayer |= {"kind": "boomless", "swath_ft": 18.5}
    del sprayer["nozzle_spacing_in"]
    sprayer["catch_tests"][0] |= {"caught_fl_oz": [240, 240], "speed_mph": 5}
    numbers = job_of(planned(data), KILL).numbers
    assert numbers["lanes_count"].value == 4
    assert numbers["pass_width_ft"].value == 18.5


def test_no_passes_without_a_width_nor_on_spots() -> None:
    assert "lanes_count" not in job_of(planned(without_width(small_property())), KILL).numbers
    assert "lanes_count" not in job_of(planned(small_property(treated_ac=0.5)), KILL).numbers


def test_fertilizer_on_a_stretch_of_the_strip() -> None:
    data = fed(MAP, POTASH)
    job = job_of(planned(data), FERTILIZING)
    for one in job.spreadings:
        rate = one.numbers["rate_lb_per_ac"].value
        # 100 ft of 60 ft are 6,000 of 43,560 square feet.
        assert one.numbers["stretch_lb"].value == pytest.approx(rate * 6000 / 43560)
    assert job.spreadings
    for one in job_of(planned(without_width(data)), FERTILIZING).spreadings:
        assert "stretch_lb" not in one.numbers


def test_lime_on_a_stretch_of_the_strip() -> None:
    # 600 / 400 = 1.5 tons to an acre: 3,000 lb by 6,000 of 43,560 square feet.
    data = limed(enm(600))
    (one,) = job_of(planned(data), LIMING).spreadings
    assert one.numbers["stretch_lb"].value == pytest.approx(3000 * 6000 / 43560)
    (one,) = job_of(planned(without_width(data)), LIMING).spreadings
    assert "stretch_lb" not in one.numbers
