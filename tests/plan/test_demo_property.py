"""The invented property that ships with the program, from its files to what to buy, by hand."""

import datetime
from dataclasses import replace
from pathlib import Path

import pytest

from generator.geometry.geodesic import line_length_ft
from generator.inventory.load import load_inventory
from generator.inventory.places import hidden_by
from generator.inventory.schema import Inventory
from generator.inventory.season import season_of
from generator.plan.build.season_plan import make_plan
from generator.plan.model.buying import Buying
from generator.plan.model.job import Job
from generator.plan.model.plan import Plan
from generator.plan.money.budget import cost_in_all
from generator.working import Measured

DEMO = Path(__file__).resolve().parents[2] / "demo_property"


@pytest.fixture(scope="module")
def inventory() -> Inventory:
    loaded = load_inventory(DEMO)
    assert loaded.problems == ()
    assert loaded.inventory is not None
    return loaded.inventory


@pytest.fixture(scope="module")
def plan(inventory: Inventory) -> Plan:
    return make_plan(inventory, 2027, datetime.date(2026, 8, 20))


def job(plan: Plan, step: str) -> Job:
    """The job of a step on the lane's planting."""
    return next(one for one in plan.jobs if one.id == f"lane/2027/{step}")


def test_ground(plan: Plan) -> None:
    # 1,240 ft x 24 ft = 29,760 sq ft; / 43,560 = 0.68320 ac
    assert plan.place("lane").area.value == pytest.approx(0.68320, abs=5e-6)


def test_dates(plan: Plan) -> None:
    dates = {
        one.step.id: (one.dates.opens, one.dates.closes)
        for one in plan.jobs
        if one.place_id == "lane"
    }
    day = datetime.date
    assert dates == {
        # owed by the season before, which runs until Aug 31
        "soil_sample": (day(2026, 6, 15), day(2026, 8, 31)),
        "thatch_off": (day(2026, 8, 1), day(2026, 8, 31)),
        # from Sep 1 to the first hard freeze of an early year, Oct 4
        "fertilizing": (day(2026, 9, 1), day(2026, 10, 4)),
        "liming": (day(2026, 9, 1), day(2026, 10, 4)),
        # from the plan's Sep 10 to seven days before the early first freeze, Oct 4
        "autumn_kill": (day(2026, 9, 10), day(2026, 9, 27)),
        # from Sep 24 to seven days after the early first freeze
        "look_again": (day(2026, 9, 24), day(2026, 10, 11)),
        # from Jan 5 to the last day of the frost seeding
        "bare_ground": (day(2027, 1, 5), day(2027, 3, 3)),
        # from Jan 20 to 21 days before freezing and thawing ends early, Mar 24
        "frost_seeding": (day(2027, 1, 20), day(2027, 3, 3)),
        # from the late green-up, Apr 8, to seven days before emergence, May 6
        "spring_burn_down": (day(2027, 4, 8), day(2027, 4, 29)),
        "first_summer_mowing": (day(2027, 6, 1), day(2027, 8, 1)),
    }


def test_autumn_kill(plan: Plan) -> None:
    kill = job(plan, "autumn_kill")
    number = {name: one.value for name, one in kill.numbers.items()}
    # (25.5 + 26 + 25.5 + 26 + 25 + 26) / 6 = 25.6667 fl oz a minute = 0.200521 gal a minute;
    # 5940 x 0.200521 / (4 mph x 20 in) = 14.8887 gal an acre
    assert number["carrier_gal_per_ac"] == pytest.approx(14.8887, abs=5e-5)
    # 24 ft / 20 in = 14.4: 15 nozzles over three passes, five of six on each, 25 ft with two laps
    # of 6 in. 0.683196 ac x 25 / 24 = 0.711662 ac x 14.8887 = 10.5957 gal: in a tank of 8 gal two
    # loads, the last of 2.5957. All open, 30 ft would take 12.715.
    assert (number["lanes_count"], number["open_count"], number["shut_count"]) == (3, 5, 1)
    assert number["lap_in"] == pytest.approx(6)
    assert number["spray_gal"] == pytest.approx(10.5957, abs=5e-5)
    assert number["all_open_gal"] == pytest.approx(12.7148, abs=5e-5)
    assert number["loads_count"] == 2
    assert number["last_load_gal"] == pytest.approx(2.5957, abs=5e-5)
    # 1.5 qt = 48 fl oz an acre; 0.711662 x 48 = 34.160 fl oz
    assert number["product_fl_oz"] == pytest.approx(34.160, abs=5e-4)
    assert kill.mix is not None
    full, last = kill.mix.loads
    # 8 / 14.8887 x 48 = 25.79, on a mark of one ounce 26; 26 / (8 / 14.8887) = 48.388
    assert (full.name, full.doses[0].amount.value) == ("full", 26)
    assert full.doses[0].rate.value == pytest.approx(48.388, abs=5e-4)
    # 2.5957 gal are 332.25 fl oz, by eights 336: 2 gal 2 qt 16 fl oz, 2.625 gal
    assert last.spray.value == 2.625
    assert [(one.value, one.unit) for one in last.poured] == [(2, "gal"), (2, "qt"), (16, "fl_oz")]
    # 2.625 / 14.888672 x 48 = 8.463, on the mark 8; 8 / (2.625 / 14.888672) = 45.375
    assert (last.name, last.doses[0].amount.value) == ("last", 8)
    assert last.doses[0].rate.value == pytest.approx(45.375, abs=5e-4)


def test_sowing(plan: Plan) -> None:
    sowing = job(plan, "frost_seeding")
    (part,) = sowing.sowings
    seed = {name: one.value for name, one in part.numbers.items()}
    # 0.982 x (0.41 + 0 + 0.49) = 0.8838
    assert seed["pls_fraction"] == pytest.approx(0.8838, abs=1e-9)
    # 8 / 0.8838 = 9.0518 lb an acre off the bag; x 0.683196 ac = 6.1842 lb
    assert seed["bulk_rate_lb_per_ac"] == pytest.approx(9.0518, abs=5e-5)
    assert seed["bulk_seed_lb"] == pytest.approx(6.1842, abs=5e-5)
    # asleep: 0.49 / 0.90 = 0.5444; ready to grow: 8 x (1 - 0.5444) = 3.6444
    assert seed["dormant_share_fraction"] == pytest.approx(0.5444, abs=5e-5)
    assert seed["ready_rate_pls_lb_per_ac"] == pytest.approx(3.6444, abs=5e-5)
    # 8 lb x 259,000 / 43,560 = 47.57 seeds on a square foot
    assert seed["seeds_per_sq_ft"] == pytest.approx(47.57, abs=5e-3)


def test_the_demo_is_asked_of_one_catch_and_no_more(plan: Plan) -> None:
    # 5 lb of 59.22% live seed are 8.443 lb off the bag. 0.12 lb over 1,200 sq ft are 4.356, and
    # two lanes of 9 ft under a throw of 12 ft get 5.808: 1.45 of it is wanted, over 1.33
    asked = {f"C{number}" for number in range(400, 411)}
    told = [(one.code, one.subject) for one in plan.findings if one.code in asked]
    assert told == [("C406", "long-strip/2027/clover_overseeding")]


def test_spreading(plan: Plan) -> None:
    number = {name: one.value for name, one in job(plan, "frost_seeding").numbers.items()}
    # 6.1842 lb in a hopper of 3: three fills of 2.0614 lb
    assert number["fills_count"] == 3
    assert number["fill_lb"] == pytest.approx(2.0614, abs=5e-5)
    # 0.14 lb over 12 ft x 100 ft = 1,200 sq ft: 0.14 x 43,560 / 1,200 = 5.082 lb an acre
    assert number["caught_rate_lb_per_ac"] == pytest.approx(5.082, abs=5e-4)
    # 24 ft in swaths of 12: two lanes. 9.0518 / 5.082 = 1.78: each walked twice, four passes
    assert (number["lanes_count"], number["times_over_count"]) == (2, 2)
    assert number["passes_count"] == 4
    # 9.0518 / (2 x 5.082) = 0.8906
    assert number["correction_fraction"] == pytest.approx(0.8906, abs=5e-5)


def test_rows(plan: Plan) -> None:
    planting = next(one for one in plan.jobs if one.id == "road/2027/row_planting")
    # 310 / 8 = 38.75: 38 gaps, 39 redcedars; 310 / 4 = 77.5: 77 gaps, 78 plums
    counts = {one.plant.id: one.numbers["plants_count"].value for one in planting.rows}
    assert counts == {"redcedar": 39, "plum": 78}
    # from the late end of freezing and thawing, Apr 14
    assert planting.dates.opens == datetime.date(2027, 4, 14)
    bought = {one.item.id: one.packages for one in plan.buying.purchases}
    # 39 and 78 plants in bundles of 25; 117 tubes less 20 on hand, in packages of 50
    packages = {name: bought[name] for name in ("redcedar", "plum", "tube")}
    assert {name: one.value for name, one in packages.items() if one is not None} == {
        "redcedar": 2, "plum": 4, "tube": 2,
    }  # fmt: skip


def test_buying(plan: Plan) -> None:
    bought = {one.item.id: one for one in plan.buying.purchases}
    assert set(bought) >= {
        "sg-26a", "demo-burn-down-a", "conditioner", "map", "potash", "quarry-lime",
        "redcedar", "plum", "tube",
    }  # fmt: skip
    seed, product = bought["sg-26a"], bought["demo-burn-down-a"]
    assert seed.packages is not None
    assert seed.cost is not None
    # 6.18 lb needed, none on hand, bags of 10 lb: one at $118.50
    assert (seed.packages.value, seed.cost.value) == (1, 118.5)
    assert product.packages is not None
    assert product.cost is not None
    # on the lane 34.2 fl oz, on 300 x 40 ft = 0.275 ac of the gate strip 32 x 0.275 = 8.8, on the
    # fence corners 64 x (0.125 + 0.1 + 0.08) = 19.5, less 12 on hand, in gallons: one at $41.25
    assert product.needed.value == pytest.approx(34.160 + 8.815 + 19.52, abs=5e-3)
    assert (product.packages.value, product.cost.value) == (1, 41.25)
    cost = cost_in_all(replace(plan, buying=Buying((seed, product))))
    assert cost is not None
    assert cost.value == pytest.approx(159.75)


def test_the_burn_down_is_not_cleared(plan: Plan) -> None:
    # The card covers native grass before sowing only, and clover.
    burn_down = job(plan, "spring_burn_down")
    assert burn_down.mix is None
    (stop,) = [one for one in plan.findings_on(burn_down.id) if one.severity == "stop"]
    assert stop.code == "S104"


def test_counts_of_the_creek_screen(plan: Plan) -> None:
    (creek,) = plan.decided.of_place("creek")
    # 21 of 100 cells in the first fall; 52 from 0 to 380 ft, 14 from 380 to 620 ft in June
    assert [one.outcome for one in creek.counts] == ["too_early", "weeds", "overseed"]
    lower = creek.counts[2]
    # 240 ft x 24 ft = 5,760 sq ft = 0.132231 ac; x 8 / (0.97 x 0.88 = 0.8536) = 1.23928 lb
    (seed,) = lower.seed
    assert seed.bulk.value == pytest.approx(1.23928, abs=5e-6)
    # x 112 / 10 = $13.88
    assert seed.cost is not None
    assert seed.cost.value == pytest.approx(13.88, abs=0.005)
    codes = {one.code for one in plan.findings_on("creek")}
    assert codes >= {"C320", "C322", "C323"}


def test_screens_of_every_age_strips_with_rotation_and_a_row(inventory: Inventory) -> None:
    plans = inventory.plans()
    grass = {
        planting.season
        for screen in inventory.screens
        for planting in screen.plantings
        if plans[planting.steps].kind == "native_grass"
    }
    assert len(inventory.screens) >= 6
    assert grass >= {2022, 2024, 2025, 2026, 2027, 2028}
    assert any(one.woody for screen in inventory.screens for one in screen.plantings)
    assert len(inventory.strips) >= 6
    rotated = [
        [plans[one.steps].kind for one in strip.plantings]
        for strip in inventory.strips
        if len(strip.plantings) > 1
    ]
    assert ["clover", "small_grain", "small_grain"] in rotated
    assert len(rotated) >= 3
    used = {one.steps for place in inventory.places() for one in place.plantings}
    assert len(used & {
        "ladino_clover", "late_summer_clover", "fall_oats", "fall_rye", "beans_or_corn",
        "fall_small_grain_and_brassica", "bridge_sorghum",
    }) >= 6  # fmt: skip


def test_stands_walks_and_water(inventory: Inventory) -> None:
    assert len(inventory.stands) >= 6
    assert all(one.at_lat_lon is not None for one in inventory.stands)
    assert len(inventory.routes) >= 6
    assert all(one.serves for one in inventory.routes)
    assert {stand for one in inventory.routes for stand in one.serves} == {
        one.id for one in inventory.stands
    }
    hidden = {route for place in inventory.places() for route in hidden_by(place)}
    assert len(hidden) >= 4
    assert inventory.water_holes


def test_a_walk_by_phone_and_a_slope_out_of_a_grid(inventory: Inventory, plan: Plan) -> None:
    walk = next(one for one in inventory.routes if one.id == "pond-walk")
    assert walk.shape is not None
    assert walk.got == "phone"
    assert walk.line_lat_lon is not None
    # 0.0019 degrees west, then 0.0009 north and 0.00128 west: 524 ft and 482 ft
    assert line_length_ft(walk.line_lat_lon.lat_lon) == pytest.approx(524 + 482, abs=3)
    near = plan.place("back-plot").typed.near  # type: ignore[union-attr]
    assert near is not None
    assert isinstance(near.slope_pct, Measured)
    assert isinstance(near.falls_to, Measured)
    # the grid was made to rise 3.6 ft in 100 to the north and to fall 1.1 to the east, with a wave
    # of 1.1 ft on it that adds 1.1 / 90 and 1.1 / 120 at its steepest
    assert 3.8 < near.slope_pct.value < 3.8 + 1.3
    assert near.falls_to.value == pytest.approx(163, abs=10)


def test_stock_machines_people_and_papers(inventory: Inventory) -> None:
    assert len(inventory.lots) >= 4
    invented = [one for one in inventory.products if one.invented]
    assert len(invented) >= 8
    assert len(inventory.sprayers) >= 2
    assert inventory.spreaders
    assert inventory.drills
    assert any("mower" in one.name for one in inventory.machines)
    assert [one.kind for one in inventory.readers].count("contractor") >= 2
    assert len(inventory.contractors) >= 2
    assert inventory.contracts
    assert any(one.kind == "quiet" for one in inventory.dates)


def test_a_real_active_has_no_number_and_is_stopped(inventory: Inventory, plan: Plan) -> None:
    (real,) = [one for one in inventory.products if not one.invented]
    assert real.label is not None
    assert real.label.restricted_use is True
    text = (DEMO / "products.yaml").read_text(encoding="utf-8")
    entry = text.partition(f"- id: {real.id}\n")[2].partition("\n\n")[0]
    assert "restricted_use: true" in entry
    assert not [one for one in entry if one.isdigit()]
    jobs = [
        (place.id, work.step)
        for place in inventory.places()
        for planting in place.plantings
        for work in planting.work
        if work.product == real.id
    ]
    ((place_id, step),) = jobs
    (asked,) = [one for one in plan.jobs if (one.place_id, one.step.id) == (place_id, step)]
    codes = {one.code for one in plan.findings_on(asked.id) if one.severity == "stop"}
    assert "S114" in codes
    assert asked.mix is None
    assert real.id not in {one.item.id for one in plan.buying.purchases}


def test_two_seasons_of_log(inventory: Inventory) -> None:
    seasons: dict[str, set[int]] = {}
    for one in inventory.entries:
        told = {
            "sprayed": one.sprayed, "seeded": one.seeded, "mowed": one.mowed,
            "counted": one.counted, "inspected": one.inspected, "spent": one.spent,
        }  # fmt: skip
        for what, said in told.items():
            if said:
                seasons.setdefault(what, set()).add(season_of(one.done_on))
    for what in ("sprayed", "seeded", "mowed", "counted", "spent"):
        assert seasons[what] >= {2025, 2026}, what
    assert seasons["inspected"]
    heights: dict[str, set[int]] = {}
    for one in inventory.entries:
        if one.measured is not None:
            heights.setdefault(one.measured.planting, set()).add(season_of(one.done_on))
    assert len([found for found in heights.values() if len(found) >= 2]) >= 3


def test_it_shows_stops_cautions_and_notes_of_many_kinds_with_the_way_out(plan: Plan) -> None:
    codes: dict[str, set[str]] = {}
    for one in plan.findings:
        codes.setdefault(one.severity, set()).add(one.code)
        assert one.words
        assert one.cure, one.code
    assert len(codes["stop"]) >= 5
    assert len(codes["caution"]) >= 20
    assert len(codes["note"]) >= 8
    assert plan.unanswered
