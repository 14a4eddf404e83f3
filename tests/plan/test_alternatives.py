"""What can still be sown once a sowing is missed, by the day, worked out by hand."""

import datetime

import pytest

from generator.plan.build.season_plan import make_plan
from generator.plan.jobs.alternatives import still_to_sow
from generator.plan.model.job import Job
from tests.plan.planned import inventory_of
from tests.properties import SEASON, Data, small_property


def plot() -> Data:
    """The small property with turnips and oats on its ground, to be sown by Aug 15, 2027."""
    data = small_property()
    data["screens"]["screens"][0]["cover_now"] = {"kind": "stubble"}
    planting = data["screens"]["screens"][0]["plantings"][0]
    lot = data["seed"]["lots"][0]
    lot["species"] = "turnip"
    lot["tag"] |= {"dormant_pct": 0}
    planting |= {
        "seed": [{"species": "turnip", "lot": "sg", "rate_pls_lb_per_ac": 5}],
        "method": "drill",
        "steps": "fall_small_grain_and_brassica",
        "work": [],
    }
    return data


def sowing_on(day: str) -> tuple[Job, datetime.date]:
    """The sowing of the plot as it stands on a day."""
    as_of = datetime.date.fromisoformat(day)
    plan = make_plan(inventory_of(plot()), SEASON, as_of)
    return next(one for one in plan.jobs if one.step.operation == "sow"), as_of


@pytest.mark.parametrize(
    ("day", "left"),
    [
        ("2027-08-15", []),
        ("2027-08-16", ["2027-08-31", "2027-10-15", "2028-03-15"]),
        ("2027-09-01", ["2027-10-15", "2028-03-15"]),
        ("2027-10-16", ["2028-03-15"]),
        ("2028-03-16", []),
    ],
)
def test_a_missed_brassica_leaves_oats_then_rye_then_clover(day: str, left: list[str]) -> None:
    job, as_of = sowing_on(day)
    assert [str(until) for _, until, _ in still_to_sow(job, as_of)] == left


def test_each_choice_says_its_name_and_why() -> None:
    job, as_of = sowing_on("2027-08-20")
    names = [name for name, _, _ in still_to_sow(job, as_of)]
    assert "oats" in names[0].lower()
    assert "rye" in names[1].lower()
    assert "clover" in names[2].lower()
    assert all(one.why and one.source for _, _, one in still_to_sow(job, as_of))
