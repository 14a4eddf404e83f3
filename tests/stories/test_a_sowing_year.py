"""Stories of sod, residual, seed and counts: what an owner does, and what the book then says.

The lane is an acre, 726 by 60 ft. Its kill is open from 10 to Sep 27, 2026, its sowing from 20
January to Mar 3, 2027, its residual from 10 to Mar 18, 2027.
"""

from pathlib import Path

from tests.properties import SEASON, Data, full_card, full_use, small_property, the_work
from tests.stories.land import Land

KILL = f"lane/{SEASON}/autumn_kill"
SOWING = f"lane/{SEASON}/frost_seeding"
RESIDUAL = f"lane/{SEASON}/spring_residual"
SPRAYING = {
    "product": "brew",
    "rate_product_fl_oz_per_ac": 32,
    "method": "broadcast",
    "sprayer": "boom",
}
KILLED = ("--planting", "lane-27", "--step", "autumn_kill", "--finished", "--used", "brew=32_fl_oz",
          "--area", "1_ac", "--bought", "brew=1_gal", "--set", "sprayed.wind_mph=5")  # fmt: skip


def test_sod_without_a_kill(tmp_path: Path) -> None:
    """The strip is to be sown this winter, and nobody thought of the sod."""
    data = small_property()
    kill = the_work(data).pop()
    land = Land(tmp_path, data)
    before = land.book("2026-08-20")
    assert "Kill the sod in the fall of 2026" in before.sheet(SOWING)
    assert "Do not do this job yet" in before.sheet(SOWING)
    assert "lb" not in before.sheet(SOWING).split("Safety")[0]

    the_work(data).append(kill)
    land.change("screens", data["screens"])
    assert "11.1 lb" in land.book("2026-08-20").sheet(SOWING)
    # Dec 1: the kill was never done, so the sowing moves on by a year
    late = land.book("2026-12-01").sheet(SOWING)
    assert "Kill the sod in the fall of 2027, for a sowing in season 2028" in late

    land.record("2026-09-20", *KILLED)
    after = land.book("2026-12-01")
    assert "11.1 lb" in after.sheet(SOWING)
    assert "Done on Sep 20, 2026. Do not do it again." in after.sheet(KILL)


def with_residual() -> Data:
    data = small_property(full_card(full_use(), full_use("after_sowing_before_emergence")))
    the_work(data).append({"step": "spring_residual"} | SPRAYING)
    data["property"]["season_signs"]["thaw"] = {
        "early": "02-20",
        "typical": "03-01",
        "late": "03-10",
    }
    return data


def test_a_missed_residual(tmp_path: Path) -> None:
    """Rain kept the tractor out until the weeds were green."""
    land = Land(tmp_path, with_residual())
    before = land.book("2027-02-01")
    assert "32 fl oz" in before.sheet(RESIDUAL)
    assert "32 fl oz" in before.page("buy.html")

    after = land.book("2027-04-01")
    sheet = after.sheet(RESIDUAL).split("Show the working")[0]
    assert "The last day was Mar 18, 2027. Do not start it now." in sheet
    assert "a residual is wasted money" in sheet
    assert "32 fl oz" not in sheet
    assert "One load" not in sheet
    assert "Nothing is cleared to buy" in after.page("buy.html")
    assert "Mow weeds above the grass" in after.page("work.html").split("Missed")[0]
    # the contractor's sheet of it has no dose either
    hired = land.book("2027-04-01", reader="hired")
    theirs = hired.page(f"work/strip-1-{SEASON}-spring_residual.html")
    assert "Do not start it now" in theirs
    assert "fl oz" not in theirs

    # the spring came late after all, and the owner types what was seen
    data = with_residual()
    data["property"]["season_signs"]["weed_green_up"] = "04-20"
    land.change("property", data["property"])
    assert "32 fl oz" in land.book("2027-04-01").sheet(RESIDUAL)


def test_seed_that_comes_late(tmp_path: Path) -> None:
    """The sod is dead, the seed is on a truck somewhere, and the ground no longer freezes."""
    land = Land(tmp_path, small_property())
    land.record("2026-09-20", *KILLED)
    book = land.book("2027-03-10")
    sheet = book.sheet(SOWING)
    assert "The last day was Mar 3, 2027. Do not start it now." in sheet
    assert "Keep the seed cool and dry, and drill it in late spring or sow it next winter" in sheet
    for other in ("Native grass by drill, until Jun 5, 2027", "Tall sorghum for one season, until"):
        assert other in sheet
    buy = book.page("buy.html")
    assert "Nothing is cleared to buy" in buy
    assert "Switchgrass, lot sg: Frost seed the grass, Lane screen" in buy.split("Missed")[1]
    # in June the drill is over too
    assert "Native grass by drill" not in land.book("2027-06-10").sheet(SOWING)


FRAME = ("--set", "counted.planting=lane-27", "--set", "counted.placements_count=4")
SOWN = ("--planting", "lane-27", "--step", "frost_seeding", "--finished")


def test_a_thin_stand_in_the_second_year(tmp_path: Path) -> None:
    """What looks like failure in the first fall is counted again in June, then decided."""
    data = small_property(full_card(full_use(seeding_interval_days=500)))
    land = Land(tmp_path, data)
    land.record("2026-09-20", *KILLED)
    land.record("2027-02-10", *SOWN)
    land.record("2027-09-10", *FRAME, "--set", "counted.cells_with_plant_count=20")
    first = land.book("2027-09-20", SEASON + 1).page("counts.html")
    assert "Too early" in first
    assert "to sow" not in first

    # the near 200 of 726 ft are thin: 20 of 100 cells; the rest has 70
    land.record("2028-06-20", *FRAME, "--set", "counted.cells_with_plant_count=20",
                "--set", "counted.from_ft=0", "--set", "counted.to_ft=200")  # fmt: skip
    land.record("2028-06-20", *FRAME, "--set", "counted.cells_with_plant_count=70",
                "--set", "counted.from_ft=200", "--set", "counted.to_ft=726")  # fmt: skip
    second = land.book("2028-07-01", SEASON + 1)
    page = second.page("counts.html")
    assert "Overseed" in page
    assert "Keep" in page
    # 200 by 60 ft are 0.27548 ac; at 8 lb and 0.72 that is 3.06 lb of the lot, at 11.85 dollars
    assert "3.06 lb" in page
    assert "$36.27" in page

    # counted again all along, it is thin everywhere; Sep 20, 2026 and 500 days
    land.record("2028-06-28", *FRAME, "--set", "counted.cells_with_plant_count=20")
    third = land.book("2028-07-01", SEASON + 1)
    assert "Start over" in third.page("counts.html")
    assert "native grass may be sown from Feb 2, 2028 on" in third.page("counts.html")


def brassicas(crop: str) -> Data:
    """A fall plot is to follow on the lane, whose residual asks for a wait before this crop."""
    waits = [{"crop": crop, "wait_days": 540}, {"crop": "native grass", "wait_days": 60}]
    data = small_property(full_card(full_use(plant_back_days=waits)))
    data["screens"]["screens"][0]["plantings"].append(
        {
            "id": "lane-plot",
            "season": SEASON,
            "seed": [{"species": "turnip", "lot": "turnip-26", "rate_pls_lb_per_ac": 4}],
            "method": "drill",
            "steps": "fall_small_grain_and_brassica",
        }
    )
    lot = data["seed"]["lots"][0]
    data["seed"]["lots"].append(lot | {"id": "turnip-26", "species": "turnip"})
    return data


def test_brassicas_where_a_residual_was_used(tmp_path: Path) -> None:
    """The grass failed, and a fall plot shall go where a long residual lies."""
    land = Land(tmp_path, brassicas("brassica"))
    land.record("2026-09-20", *KILLED)
    book = land.book("2027-06-01")
    plot = f"lane/{SEASON}/plot_sowing"
    sheet = book.sheet(plot)
    # Sep 20, 2026 and 540 days
    assert "from Mar 13, 2028 on" in sheet
    assert "Do not do this job yet" in sheet
    assert "Mar 13, 2028" in book.page("plant-when.html")
    assert "turnip" not in book.page("buy.html").split("Not to buy yet")[0]
    # a label that does not name the crop holds it by the longest wait it names
    land.change("products", brassicas("corn")["products"])
    assert "from Mar 13, 2028 on" in land.book("2027-06-01").sheet(plot)


def test_a_drought_in_the_first_summer(tmp_path: Path) -> None:
    """No rain from June on: water is hauled, and grass that looks gone is not given up."""
    data = small_property()
    hole = {"id": "hole", "name": "Hole", "shape": "round", "top_ft": 16, "bottom_ft": 4,
            "depth_ft": 3, "deer_count": 10, "deer_weight_lb": 150, "refill_gal": 200}  # fmt: skip
    data["ground"] = {"water_holes": [hole]}
    land = Land(tmp_path, data)
    before = land.book("2027-06-15").page("ground/hole.html")
    assert "Type dry_spell_days and refill_gal" in before
    # 1974 gal last ten deer of 150 lb 175 days at 11.25 gal a day; 65 days more take 4 loads of 200
    land.change("ground", {"water_holes": [hole | {"dry_spell_days": 240}]})
    land.record("2027-08-20", "--set", "water_added.water_hole=hole",
                "--set", "water_added.amount_gal=200")  # fmt: skip
    after = land.book("2027-09-20", SEASON + 1)
    assert "4 of 200 gal" in after.page("ground/hole.html")
    assert "Last refilledAug 20, 2027" in after.page("ground/hole.html")

    land.record("2027-02-10", *SOWN)
    land.record("2027-09-10", *FRAME, "--set", "counted.cells_with_plant_count=5")
    counts = land.book("2027-09-20", SEASON + 1).page("counts.html")
    assert "Too early" in counts
    assert "Jun 15, 2028" in counts
    assert "Start over" not in counts
