"""Stories of helpers, papers and days: what an owner does, and what the book then says.

The kill of the lane, an acre, is open from 10 to Sep 27, 2026; its mowing from Jun 1 to 1
August 2027.
"""

import copy
from pathlib import Path

from tests.properties import SEASON, Data, full_card, full_use, small_property, the_work
from tests.stories.land import Land

KILL = f"lane/{SEASON}/autumn_kill"
SOWING = f"lane/{SEASON}/frost_seeding"
BURNING = f"lane/{SEASON}/upkeep_burning"
MOWING = f"lane/{SEASON}/first_summer_mowing"
HIRED_KILL = f"work/strip-1-{SEASON}-autumn_kill.html"
STOPPED = "Do not do this job yet"


def dates(*spans: Data) -> Data:
    return {
        "dates": [
            {"id": f"d-{n}", "places": "all", "source": "booklet", "looked_up_on": "2026-08-01"}
            | one
            for n, one in enumerate(spans)
        ]
    }


def test_a_contractor_on_opening_day(tmp_path: Path) -> None:
    """The contractor is free on the Saturday on which bow hunters go out."""
    land = Land(tmp_path, small_property())
    assert "hunting here" not in land.book("2026-08-20", reader="hired").page(HIRED_KILL)

    opening = {"kind": "hunting", "first": "2026-09-19", "last": "2026-12-31"}
    land.change("dates", dates(opening))
    owner = land.book("2026-08-20")
    said = "Open days of this job fall into hunting dates, and the job is handed to somebody"
    assert said in owner.sheet(KILL)
    hired = land.book("2026-08-20", reader="hired").page(HIRED_KILL)
    assert "Others here: may be hunting Sep 19 to 27, 2026" in hired

    # nobody is to be on the ground from a week before, and the owner keeps the reason
    week = {"kind": "quiet", "first": "2026-09-12", "last": "2026-12-31",
            "note": "big buck on the ridge"}  # fmt: skip
    land.change("dates", dates(opening, week))
    theirs = land.book("2026-08-20", reader="hired")
    assert "WhenSep 10 to 11, 2026" in theirs.page(HIRED_KILL)
    pages = [path.read_text(encoding="utf-8") for path in theirs.folder.rglob("*.html")]
    assert len(pages) > 5
    assert not any("big buck" in page for page in pages)


def standing_screen() -> Data:
    """A screen of 2024 of which a part is to be burned, before it greens up on Apr 10."""
    data = small_property()
    screen = data["screens"]["screens"][0]
    screen["plantings"][0] |= {
        "id": "lane-24",
        "season": 2024,
        "upkeep": "established_screen_upkeep",
        "work": [{"step": "upkeep_burning", "treated_sq_ft": 10890}],
    }
    data["readers"]["readers"][0]["jobs"][0]["planting"] = "lane-24"
    data["property"]["season_signs"]["grass_green_up"] = "04-10"
    return data


def test_a_burn_without_a_permit(tmp_path: Path) -> None:
    """The crew has a free weekend, and nobody has asked the fire authority."""
    land = Land(tmp_path, standing_screen())
    assert "No written burn permit covers every open day" in land.book("2027-01-15").sheet(BURNING)
    assert STOPPED in land.book("2027-01-15").sheet(BURNING)

    permit = {"id": "burn-27", "kind": "burn", "places": ["lane"], "approved_on": "2027-01-20",
              "expires_on": "2027-04-30"}  # fmt: skip
    land.change("papers", {"permits": [permit]})
    assert STOPPED in land.book("2027-01-15").sheet(BURNING)
    ready = land.book("2027-02-01").sheet(BURNING)
    assert STOPPED not in ready
    assert "Go only if every box is ticked" in ready

    ban = {"kind": "burn_ban", "first": "2027-03-01", "last": "2027-04-30"}
    land.change("dates", dates(ban))
    banned = land.book("2027-03-20").sheet(BURNING)
    assert STOPPED in banned
    assert "A burn ban holds on this place" in banned


def test_a_licence_that_ran_out(tmp_path: Path) -> None:
    """Only a certified applicator may spray the product, and the card in the truck is old."""
    data = small_property(full_card(full_use(), restricted_use=True))
    data["readers"]["readers"][0]["jobs"][0]["steps"] = ["frost_seeding"]
    card = {"id": "mine", "licence_class": "private", "fits": ["brew"], "asked_on": "2026-08-02",
            "licence_expires_on": "2026-09-01"}  # fmt: skip
    data["people"] = {"applicators": [card]}
    land = Land(tmp_path, data)
    book = land.book("2026-08-20")
    assert STOPPED in book.sheet(KILL)
    assert "Not to buy yet" in book.page("buy.html")
    assert "fl oz" not in book.page("buy.html")
    land.change("people", {"applicators": [card | {"licence_expires_on": "2029-09-01"}]})
    after = land.book("2026-08-20")
    assert STOPPED not in after.sheet(KILL)
    assert "certified applicators" in after.sheet(KILL)
    assert "32 fl oz" in after.page("buy.html")


def test_a_rate_heard_at_a_meeting(tmp_path: Path) -> None:
    """Three quarts, somebody said; the card allows two and a half pounds of it in a year."""
    use = full_use(max_per_year={"amount_lb_per_ac": 2.5, "counted": "calendar_year"},
                   rate_high_fl_oz_per_ac=128, max_per_application_fl_oz_per_ac=128)  # fmt: skip
    data = small_property(full_card(use), rate_product_fl_oz_per_ac=None, rate_product_qt_per_ac=3)
    land = Land(tmp_path, data)
    book = land.book("2026-08-20")
    sheet = book.sheet(KILL)
    assert STOPPED in sheet
    for shown in ("3 qt/ac", "4 lb/gal", "3 lb/ac", "2.5 lb/ac"):
        assert shown in sheet, shown
    assert "96 fl oz" not in sheet.replace("(96 fl oz/ac)", "")
    assert "Made-up product brew" in book.page("buy.html").split("Not to buy yet")[1]
    the_work(data)[0]["rate_product_qt_per_ac"] = 1
    land.change("screens", data["screens"])
    assert "One load" in land.book("2026-08-20").sheet(KILL)


def two_places(first: str | None) -> Data:
    """The lane and a far strip, an acre each, with 12 lb of the lot to be had: enough for one."""
    data = small_property()
    far = copy.deepcopy(data["screens"]["screens"][0])
    far |= {"id": "far", "name": "Far strip", "known_as": "Strip 2"}
    far["plantings"][0]["id"] = "far-27"
    data["screens"]["screens"].append(far)
    for screen in data["screens"]["screens"]:
        screen["plantings"][0]["priority"] = 1 if screen["id"] == first else 2
        screen["cover_now"] = {"kind": "stubble"}
    data["seed"]["lots"][0] |= {"most_to_be_had_lb": 10, "on_hand_lb": 2}
    del data["seed"]["lots"][0]["package_lb"]
    return data


def test_seed_that_does_not_reach(tmp_path: Path) -> None:
    """Half the seed is sold out: one place is sown in full, the other waits a year."""
    land = Land(tmp_path, two_places("lane"))
    book = land.book("2026-08-20")
    far = f"far/{SEASON}/frost_seeding"
    # 8 / 0.72 are 11.1 lb to an acre; of 12 lb 0.89 lb are left
    assert "11.1 lb" in book.sheet(SOWING)
    assert "does not reach" in book.sheet(far)
    land.change("screens", two_places("far")["screens"])
    book = land.book("2026-08-20")
    assert "11.1 lb" in book.sheet(far)
    assert "does not reach" in book.sheet(SOWING)


def test_a_partner_who_finishes_what_was_begun(tmp_path: Path) -> None:
    """Wind came up at noon: half is sprayed by one, the rest by another, each writing it down."""
    land = Land(tmp_path, small_property())
    job = ("--planting", "lane-27", "--step", "autumn_kill", "--set", "sprayed.wind_mph=5")
    land.record("2026-09-14", "--bought", "brew=1_gal")
    land.record("2026-09-15", *job, "--used", "brew=16_fl_oz", "--area", "0.5_ac", "--by", "me")
    begun = land.book("2026-09-16")
    assert "begun and not as finished" in begun.sheet(KILL)
    land.record("2026-09-18", *job, "--used", "brew=16_fl_oz", "--area", "0.5_ac", "--finished",
                "--by", "partner")  # fmt: skip
    done = land.book("2026-09-20")
    assert "Done on Sep 18, 2026" in done.sheet(KILL)
    assert sorted(path.name for path in (land.folder / "log").iterdir()) == [
        "2026-09-14-bought.yaml",
        "2026-09-15-lane-27-autumn-kill.yaml",
        "2026-09-18-lane-27-autumn-kill.yaml",
    ]
    for day in ("Sep 15, 2026", "Sep 18, 2026"):
        assert day in done.page("records.html"), day


def test_mowing_under_a_contract_in_nesting_dates(tmp_path: Path) -> None:
    """Weeds stand in July, hens sit, and the ground is paid for by a program."""
    nests = {"kind": "nesting", "first": "2027-05-15", "last": "2027-08-01"}
    data = small_property()
    data["screens"]["screens"][0]["contract"] = "cover"
    contract = {"id": "cover", "name": "Ten-year cover", "places": ["lane"],
                "approved_on": "2026-06-01"}  # fmt: skip
    data["papers"] = {"contracts": [contract]}
    data["dates"] = dates(nests)
    land = Land(tmp_path, data)
    held = land.book("2027-05-20").sheet(MOWING)
    assert STOPPED in held
    assert "falls into nesting dates" in held
    # off contract it is a note, and the caution says to look for nests
    land.change("screens", small_property()["screens"])
    land.change("papers", {"contracts": []})
    free = land.book("2027-05-20")
    assert STOPPED not in free.sheet(MOWING)
    assert "Hens may sit or fawns may lie here" in free.sheet(MOWING)
