"""Liming by hand: each base by its own conversion, never one for another, and in how many times."""

from pathlib import Path
from typing import Any

import pytest

from generator.inventory.load import load_inventory
from generator.plan.model.plan import Plan
from generator.plan.model.work import SpreadWork
from tests.plan.planned import planned
from tests.properties import SEASON, Data, small_property, write_property

JOB = f"lane/{SEASON}/liming"
SOWING = f"lane/{SEASON}/frost_seeding"
QUARRY = {"id": "quarry", "name": "Quarry lime", "enm_lb_per_ton": 400, "cce_pct": 90}
FIGURES = {"enm": "enm_lb_per_ton", "cce": "cce_pct", "ecce": "ecce_pct"}
STRENGTHS = {"enm": 400, "cce": 90, "ecce": 60}


def limed(need: Data | None, **lime: Any) -> Data:
    """The small property, an acre, whose soil test asks for lime, with one lime chosen."""
    data = small_property()
    test: Data = {"id": "soil", "places": ["lane"], "sampled_on": "2026-04-11"}
    data["ground"] = {"soil_tests": [test | ({"lime_need": need} if need else {})]}
    stated = lime or {"enm_lb_per_ton": 400}
    data["products"]["limes"] = [{"id": "quarry", "name": "Quarry lime"} | stated]
    _planting(data).update(soil_test="soil", lime="quarry")
    return data


def _planting(data: Data) -> Data:
    planting: Data = data["screens"]["screens"][0]["plantings"][0]
    return planting


def numbers(plan: Plan) -> dict[str, float]:
    """The numbers of the lime that goes on, by name; none where it is not worked out."""
    job = next(one for one in plan.jobs if one.id == JOB)
    asked = job.work.lime_asked if isinstance(job.work, SpreadWork) else None
    assert (asked is None) == (not job.spreadings)
    return {k: v.value for one in job.spreadings for k, v in one.numbers.items()}


def codes(plan: Plan, job_id: str = JOB) -> set[str]:
    return {one.code for one in plan.findings_on(job_id)}


def enm(pounds: float) -> Data:
    return {"amount_lb_per_ac": pounds, "base": "enm"}


@pytest.mark.parametrize(
    ("need", "lime", "tons"),
    [
        # 600 / 400
        (enm(600), {"enm_lb_per_ton": 400}, 1.5),
        # a ton at CCE 90, lime of 45: twice as much
        (
            {"amount_ton_per_ac": 1, "base": "cce", "base_pct": 90},
            {"cce_pct": 45},
            2,
        ),
        # 2,800 lb at CCE 100, lime of 70: 4,000 lb
        (
            {"amount_lb_per_ac": 2800, "base": "cce", "base_pct": 100},
            {"cce_pct": 70},
            2,
        ),
        # 1.3 tons at ECCE 80, lime of 65: 1.6 tons
        (
            {"amount_ton_per_ac": 1.3, "base": "ecce", "base_pct": 80},
            {"ecce_pct": 65},
            1.6,
        ),
    ],
)
def test_lime_to_an_acre_on_each_base(need: Data, lime: Data, tons: float) -> None:
    plan = planned(limed(need, **lime))
    assert numbers(plan)["lime_ton_per_ac"] == pytest.approx(tons)
    assert codes(plan) == set()


@pytest.mark.parametrize("base", FIGURES)
@pytest.mark.parametrize("stated", FIGURES)
def test_bases_are_never_mixed(base: str, stated: str) -> None:
    need = enm(600) if base == "enm" else {"amount_lb_per_ac": 2000, "base": base, "base_pct": 80}
    data = limed(need, **{FIGURES[stated]: STRENGTHS[stated]})
    plan = planned(data)
    if base == stated:
        assert "S160" not in codes(plan)
        assert numbers(plan)
        return
    (stop,) = (one for one in plan.findings_on(JOB) if one.severity == "stop")
    assert (stop.code, FIGURES[base] in stop.to_type) == ("S160", True)
    assert numbers(plan) == {}
    assert not [one for one in plan.lines if one.kind == "lime"]
    # The cure: the seller states the other figure too.
    data["products"]["limes"][0][FIGURES[base]] = 81 if base == "cce" else STRENGTHS[base]
    plan = planned(data)
    assert "S160" not in codes(plan)
    assert numbers(plan)


def test_a_figure_of_another_kind_changes_nothing() -> None:
    one = numbers(planned(limed(enm(600), enm_lb_per_ton=400)))
    two = numbers(planned(limed(enm(600), enm_lb_per_ton=400, cce_pct=55, ecce_pct=20)))
    assert one == two


def test_more_than_two_tons_goes_on_in_parts_and_only_the_first_is_bought() -> None:
    data = limed(
        enm(1200), enm_lb_per_ton=400, package_ton=1, loose=True, price_usd=38, on_hand_lb=0
    )
    plan = planned(data)
    # 3 tons: 2 now on an acre, 4,000 lb, and 1 later, in two times. No bags of loose lime.
    assert numbers(plan) == {
        "lime_ton_per_ac": 3,
        "now_ton_per_ac": 2,
        "now_ton": pytest.approx(2),
        "product_lb": pytest.approx(4000),
        "stretch_lb": pytest.approx(4000 * 6000 / 43560),  # on 100 ft of 60 ft
        "times_count": 2,
        "later_ton_per_ac": 1,
        "later_ton": pytest.approx(1),
    }
    (caution,) = (one for one in plan.findings_on(JOB) if one.code == "C258")
    assert [figure.value for _, figure in caution.figures] == [2, 1, 2, 2, 3]  # type: ignore[union-attr]
    (line,) = (one for one in plan.lines if one.kind == "lime")
    assert line.amount.value == pytest.approx(4000)
    (bought,) = (one for one in plan.buying.purchases if one.item.id == "quarry")
    assert bought.cost is not None
    assert bought.cost.value == 76


def test_loose_lime_is_bought_to_the_weight() -> None:
    data = limed(
        enm(700), enm_lb_per_ton=400, package_ton=1, loose=True, price_usd=38, on_hand_lb=200,
        counted_on="2026-08-15",
    )  # fmt: skip
    # 1.75 tons on an acre are 3,500 lb, 200 lb are there: 3,300 lb at $38 for 2,000
    (bought,) = (one for one in planned(data).buying.purchases if one.item.id == "quarry")
    assert bought.packages is None
    assert bought.loose is not None
    assert bought.cost is not None
    assert bought.left_over is not None
    assert bought.loose.value == pytest.approx(3300)
    assert bought.cost.value == pytest.approx(62.70)
    assert bought.left_over.value == pytest.approx(0, abs=1e-9)
    data["products"]["limes"][0]["on_hand_lb"] = 3600
    (bought,) = (one for one in planned(data).buying.purchases if one.item.id == "quarry")
    assert bought.nothing
    assert bought.cost is not None
    assert bought.left_over is not None
    assert (bought.cost.value, bought.left_over.value) == (0, pytest.approx(100))
    # in bags of a ton it would be two of them
    data["products"]["limes"][0] |= {"on_hand_lb": 200, "loose": False}
    (bought,) = (one for one in planned(data).buying.purchases if one.item.id == "quarry")
    assert bought.packages is not None
    assert bought.packages.value == 2


def test_two_tons_to_the_acre_go_on_at_once() -> None:
    plan = planned(limed(enm(800), enm_lb_per_ton=400))
    assert numbers(plan)["times_count"] == 1
    assert "later_ton" not in numbers(plan)
    assert "C258" not in codes(plan)


def test_bags_of_lime() -> None:
    plan = planned(limed(enm(200), enm_lb_per_ton=400, package_lb=40))
    # Half a ton on an acre, 1,000 lb in bags of 40: 25.
    assert numbers(plan)["bags_count"] == 25
    assert numbers(plan)["part_bag_lb"] == pytest.approx(0, abs=1e-9)


def test_a_job_only_where_lime_is_asked_for() -> None:
    data = limed(enm(600))
    del _planting(data)["lime"]
    plan = planned(data)
    assert JOB not in [one.id for one in plan.jobs]
    assert "N341" in codes(plan, SOWING)
    plan = planned(limed(enm(600)))
    assert JOB in [one.id for one in plan.jobs]
    assert "N341" not in codes(plan, SOWING)


def test_a_lab_that_asks_for_no_lime_gives_no_job_and_no_stop() -> None:
    data = limed(enm(0))
    plan = planned(data)
    assert JOB not in [one.id for one in plan.jobs]
    assert {one.code for one in plan.findings} & {"S160", "C252", "C274", "N341"} == set()
    assert not [one for one in plan.lines if one.kind == "lime"]
    assert "N346" in codes(plan, SOWING)
    del _planting(data)["lime"]
    plan = planned(data)
    assert codes(plan, SOWING) & {"N341", "N346"} == set()


def test_an_amount_of_none_needs_no_percent_beside_it() -> None:
    data = limed({"amount_ton_per_ac": 0, "base": "cce"})
    assert JOB not in [one.id for one in planned(data).jobs]


def test_a_rate_of_home_gardens_is_the_same_to_an_acre() -> None:
    # 50 lb to 1,000 sq ft and 5 lb to 100 sq ft are each 43.56 x 50 = 2,178 lb an acre, 1.089 tons
    for amount in ({"amount_lb_per_1000_sq_ft": 50}, {"amount_lb_per_100_sq_ft": 5}):
        data = limed(amount | {"base": "cce", "base_pct": 90}, cce_pct=90)
        assert numbers(planned(data))["lime_ton_per_ac"] == pytest.approx(1.089)


@pytest.mark.parametrize(
    ("need", "lime", "what"),
    [
        # 42 lb/ton of ENM typed for 420: 1,050 / 42 = 25 tons
        (enm(1050), {"enm_lb_per_ton": 42}, "more"),
        (enm(4000), {"enm_lb_per_ton": 400}, None),
        (enm(4001), {"enm_lb_per_ton": 400}, "more"),
        # 2 lb typed for 2 tons: 0.001 tons
        ({"amount_lb_per_ac": 2, "base": "cce", "base_pct": 90}, {"cce_pct": 90}, "less"),
        ({"amount_lb_per_ac": 200, "base": "cce", "base_pct": 90}, {"cce_pct": 90}, None),
    ],
)
def test_an_amount_no_lab_asks_for_is_a_slip_of_unit(
    need: Data, lime: Data, what: str | None
) -> None:
    found = [one for one in planned(limed(need, **lime)).findings_on(JOB) if one.code == "C274"]
    assert [f"is {what} than" in one.words for one in found] == [True] * (what is not None)
    assert all("Check the unit" in one.to_type for one in found)


@pytest.mark.parametrize(
    "lime",
    [{"cce_pct": 0.92}, {"ecce_pct": 0.6}, {"enm_lb_per_ton": 42000}, {"cce_fraction": 92}],
)
def test_a_strength_no_lime_has_is_refused(lime: Data, tmp_path: Path) -> None:
    data = limed(enm(600), **({"enm_lb_per_ton": 400} | lime))
    (fault,) = load_inventory(write_property(tmp_path / "property", data)).problems
    assert (fault.code, fault.file) == ("F204", "products.yaml")


def test_a_base_of_one_percent_is_refused(tmp_path: Path) -> None:
    data = limed({"amount_lb_per_ac": 2000, "base": "cce", "base_pct": 1}, cce_pct=90)
    (fault,) = load_inventory(write_property(tmp_path / "property", data)).problems
    assert (fault.code, fault.file) == ("F204", "ground.yaml")


def test_drilled_grass_is_limed_and_fertilized_the_autumn_before() -> None:
    data = limed(enm(600))
    data["products"]["fertilizers"] = [
        {"id": "triple", "name": "0-46-0", "n_pct": 0, "p2o5_pct": 46, "k2o_pct": 0}
    ]
    need = {"n_lb_per_ac": 0, "p2o5_lb_per_ac": 46, "k2o_lb_per_ac": 0}
    data["ground"]["soil_tests"][0]["need"] = need
    planting = _planting(data)
    planting |= {"method": "drill", "steps": "drilled_native_grass", "fertilizers": ["triple"]}
    planting["work"] = [one for one in planting["work"] if one["step"] == "autumn_kill"]
    data["readers"]["readers"][0]["jobs"] = [
        {"planting": planting["id"], "steps": ["liming", "fertilizing"]}
    ]
    plan = planned(data)
    spread = {one.step.id: one for one in plan.jobs if one.spreadings}
    assert set(spread) == {"liming", "fertilizing"}
    rates = {
        one.item.id: one.numbers[name].value
        for job, name in (("liming", "lime_ton_per_ac"), ("fertilizing", "rate_lb_per_ac"))
        for one in spread[job].spreadings
    }
    # 600 / 400 tons, and 46 / 0.46 lb
    assert rates == {"quarry": pytest.approx(1.5), "triple": pytest.approx(100)}
    sowing = next(one for one in plan.jobs if one.step.operation == "sow")
    for job in spread.values():
        assert job.dates.closes is not None
        assert sowing.dates.opens is not None
        assert (job.dates.closes.year, sowing.dates.opens.year) == (SEASON - 1, SEASON)


def test_without_a_soil_test_or_its_lime_need_nothing_is_worked_out() -> None:
    data = limed(None)
    plan = planned(data)
    assert (codes(plan), numbers(plan)) == ({"C252"}, {})
    del _planting(data)["soil_test"]
    plan = planned(data)
    assert (codes(plan), numbers(plan)) == ({"C251"}, {})


def test_an_old_soil_test_is_said() -> None:
    data = limed(enm(600))
    data["ground"]["soil_tests"][0]["sampled_on"] = "2022-10-01"
    assert codes(planned(data)) == {"C250"}
