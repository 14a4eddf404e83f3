"""The worked examples of the chapters hold together: their results follow from their inputs."""

import pytest

from generator.compute import seed
from generator.reference.library import emergency_numbers, values
from generator.reference.steps import step_plans
from generator.units import convert


def share(name: str) -> float:
    """The example's percent as a fraction."""
    return convert(values()[name].value, "pct", "fraction")


def test_the_example_tag_gives_the_pure_live_seed_it_prints() -> None:
    tag = {
        f"{part}_fraction": share(f"example_{part}_pct")
        for part in ("purity", "germination", "hard", "dormant")
    }
    assert seed.pls_fraction(**tag) == pytest.approx(share("example_pure_live_seed_pct"), rel=1e-12)
    bag_lb = values()["example_bag_lb"].value
    pure_lb = bag_lb * tag["purity_fraction"]
    expected = {
        "example_bag_pure_lb": pure_lb,
        "example_bag_live_lb": bag_lb * seed.pls_fraction(**tag),
        "example_bag_ready_lb": pure_lb * tag["germination_fraction"],
        "example_bag_asleep_lb": pure_lb * tag["dormant_fraction"],
    }
    assert {name: values()[name].value for name in expected} == pytest.approx(expected, rel=1e-12)


def test_the_example_strip_is_as_large_as_it_prints() -> None:
    width_ft = values()["example_strip_width_ft"].value
    length_ft = values()["example_strip_length_ft"].value
    off_ft = 2 * values()["example_outline_error_ft"].value
    areas_ac = {
        "example_strip_ac": width_ft,
        "example_strip_least_ac": width_ft - off_ft,
        "example_strip_most_ac": width_ft + off_ft,
    }
    for name, wide_ft in areas_ac.items():
        exact_ac = convert(wide_ft * length_ft, "sq_ft", "ac")
        assert values()[name].value == pytest.approx(exact_ac, abs=0.005)
    narrow = values()["example_narrow_error_ft"].value / values()["example_narrow_width_ft"].value
    assert share("example_narrow_error_pct") == pytest.approx(narrow, abs=0.0005)


# University of Missouri Extension, How much lime to apply; Manitoba Agriculture, Soil fertility
# guide: both print need, strength and answer. Manitoba takes the nitrogen of the rounded 77 lb.
def test_the_example_bags_follow_from_need_and_strength() -> None:
    said = {name: one.value for name, one in values().items()}
    assert said["example_lime_ton_per_ac"] == pytest.approx(
        said["example_lime_need_lb_per_ac"] / said["example_lime_strength_lb_per_ton"], abs=0.005
    )
    bag_lb = said["example_phosphate_need_lb_per_ac"] / share("example_phosphate_grade_pct")
    assert said["example_fertilizer_lb_per_ac"] == pytest.approx(bag_lb, abs=0.5)
    nitrogen_lb = 0.11 * said["example_fertilizer_lb_per_ac"]
    assert said["example_nitrogen_along_lb_per_ac"] == pytest.approx(nitrogen_lb, abs=0.05)


# The straight line from an eye over a screen to the top of a head, on flat ground; worked by hand.
def test_the_example_screen_is_as_tall_as_the_line_of_sight() -> None:
    said = {name: one.value for name, one in values().items()}
    eye_ft, head_ft = said["deer_eye_ft"], said["example_walker_ft"]
    sight_ft = said["example_sight_ft"]
    way = (sight_ft - said["example_screen_from_path_ft"]) / sight_ft
    needed_ft = eye_ft + (head_ft - eye_ft) * way
    assert said["example_screen_needed_ft"] == pytest.approx(needed_ft, abs=0.05)
    assert said["example_screen_halfway_ft"] == pytest.approx((eye_ft + head_ft) / 2, abs=0.005)


def test_a_setting_of_a_step_says_its_low_before_its_high() -> None:
    settings = [step.settings for plan in step_plans().values() for step in plan.steps]
    pairs = [
        (low.value, high.value)
        for some in settings
        for low in some
        for high in some
        if low.name.replace("_low_", "_high_") == high.name != low.name
    ]
    assert pairs
    assert all(low < high for low, high in pairs)


# US Environmental Protection Agency, In case of pesticide emergency (2017 snapshot).
def test_the_poison_line_is_the_number_the_agency_prints() -> None:
    assert emergency_numbers() == {"poison_line": "1-800-222-1222"}
