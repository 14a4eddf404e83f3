"""Whatever is typed: rounded doses keep the label's limits, amounts follow the ground."""

import copy

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from generator.plan.model.plan import Plan
from tests.plan.planned import KILL, job_of, planned
from tests.properties import Data, full_card, full_use, small_property

FEW = settings(
    max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow], derandomize=True
)


def odd_property(
    rate: float, most: float, mark: float, tank: float, width: float, length: float = 726
) -> Data:
    """The small property with these figures; the label allows from 24 to `most`."""
    use = full_use(
        rate_high_fl_oz_per_ac=most,
        max_per_application_fl_oz_per_ac=most,
        max_per_year={"amount_fl_oz_per_ac": most, "counted": "calendar_year"},
    )
    data = small_property(full_card(use), rate_product_fl_oz_per_ac=rate)
    data["equipment"]["measures"][0]["mark_fl_oz"] = mark
    data["equipment"]["sprayers"][0]["tank_gal"] = tank
    data["screens"]["screens"][0] |= {"width_ft": width, "length_ft": length}
    return data


@FEW
@given(
    rate=st.floats(24, 64),
    share=st.floats(1, 1.2),
    mark=st.sampled_from([0.25, 0.5, 1, 2, 4]),
    tank=st.floats(2, 40),
    width=st.floats(8, 120),
)
def test_a_rounded_dose_is_never_above_the_label(
    rate: float, share: float, mark: float, tank: float, width: float
) -> None:
    most = rate * share
    mix = job_of(planned(odd_property(rate, most, mark, tank, width))).mix
    if mix is not None:
        for load in mix.loads:
            for dose in load.doses:
                assert 24 * (1 - 1e-9) <= dose.rate.value <= most * (1 + 1e-9)
                assert dose.amount.value / mark == pytest.approx(round(dose.amount.value / mark))


@FEW
@given(
    rate=st.floats(24, 64),
    mark=st.sampled_from([0.25, 0.5, 1, 2, 4]),
    tank=st.floats(2, 40),
    width=st.floats(8, 120),
)
def test_loads_fit_the_tank_and_add_up_to_the_whole(
    rate: float, mark: float, tank: float, width: float
) -> None:
    job = job_of(planned(odd_property(rate, 64, mark, tank, width)))
    if job.mix is None:
        return
    counts = [load.count.value if load.count is not None else 1 for load in job.mix.loads]
    sprays = [load.spray.value for load in job.mix.loads]
    assert max(sprays) <= tank * (1 + 1e-9)
    together = sum(count * spray for count, spray in zip(counts, sprays, strict=True))
    wanted = job.numbers["spray_gal"].value
    # every load is rounded up to a mark of 8 fl oz or finer, so the tank is never short
    assert wanted * (1 - 1e-9) <= together <= wanted + sum(counts) * 8 / 128 + 1e-9
    more = rate * (together - wanted) / job.numbers["carrier_gal_per_ac"].value
    measured = sum(
        count * load.doses[0].amount.value
        for count, load in zip(counts, job.mix.loads, strict=True)
    )
    # each load is measured at a mark next to its own share
    apart = measured - job.numbers["product_fl_oz"].value - more
    assert abs(apart) <= mark * sum(counts) * (1 + 1e-9)


def test_most_of_these_are_cleared() -> None:
    assert job_of(planned(odd_property(40, 44, 1, 20, 60))).mix is not None


def amounts(plan: Plan, place: str) -> dict[str, float]:
    """What the jobs of a place take in all, by item."""
    return {line.item_id: line.amount.value for line in plan.lines if line.place_id == place}


@FEW
@given(width=st.floats(5, 200), length=st.floats(60, 2000), rate=st.floats(30, 60))
def test_twice_the_ground_takes_twice_of_everything(
    width: float, length: float, rate: float
) -> None:
    # twice as long: a strip twice as wide has other passes, that lap elsewhere
    one = planned(odd_property(rate, 64, 0.25, 30, width, length))
    two = planned(odd_property(rate, 64, 0.25, 30, width, 2 * length))
    mine, theirs = amounts(one, "lane"), amounts(two, "lane")
    assume(mine.keys() == theirs.keys())  # a mark may be too coarse for a small last load
    for item, amount in mine.items():
        assert theirs[item] == pytest.approx(2 * amount, rel=1e-9)


@FEW
@given(length=st.floats(120, 2400), share=st.floats(0.1, 0.9))
def test_a_place_in_two_parts_takes_the_same(length: float, share: float) -> None:
    # cut across: cut along, each part has passes of its own
    whole = odd_property(40, 64, 0.25, 30, 24, length)
    parted = copy.deepcopy(whole)
    first = parted["screens"]["screens"][0]
    second = copy.deepcopy(first) | {"id": "rest", "known_as": "Strip 2"}
    first["length_ft"], second["length_ft"] = length * share, length * (1 - share)
    second["plantings"][0]["id"] = "rest-27"
    parted["screens"]["screens"].append(second)
    together, apart = planned(whole), planned(parted)
    ours, theirs = amounts(together, "lane"), (amounts(apart, "lane"), amounts(apart, "rest"))
    assert job_of(together, KILL).mix is not None
    for item, amount in ours.items():
        assert sum(one[item] for one in theirs) == pytest.approx(amount, rel=1e-9)
