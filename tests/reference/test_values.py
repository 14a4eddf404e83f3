"""The worked examples of the chapters hold together: their results follow from their inputs."""

import pytest

from generator.compute import seed
from generator.reference.load import emergency_numbers, values
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
