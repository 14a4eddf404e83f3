"""What the log says that can hardly be: asked, a stop where a sum rests on it, settled.

All worked out by hand on the small property: an acre, a card of 128 fl oz in a calendar year, 12 fl
oz of the product and 1.25 lb of seed counted on Aug 15, 2026. The planting is of season 2027,
from Sep 1, 2026 to Aug 31, 2027.
"""

import datetime
from typing import Any

import pytest

from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import BURN_DOWN, KILL, inventory_of, well_stocked
from tests.properties import SEASON, Data, full_card, full_use, small_property, the_work

DAY = datetime.date(2026, 12, 1)
SOWING = f"lane/{SEASON}/frost_seeding"
CODES = {"C370", "C371", "C372", "C373", "C374", "C375", "S240", "S241", "S242", "S243", "S244"}


def land(*entries: Data, **product: Any) -> Data:
    """The small property, sprayed in fall and in spring with the same product, and its log."""
    uses = [full_use(timing) for timing in ("before_sowing", "after_sowing_before_emergence")]
    data = small_property(full_card(*uses))
    the_work(data).append(dict(the_work(data)[0]) | {"step": "spring_burn_down"})
    brew = data["products"]["products"][0] | product
    data["products"]["products"] = [{k: v for k, v in brew.items() if v is not None}]
    data["log"] = {"entries": [{"id": f"e-{n}"} | one for n, one in enumerate(entries)]}
    return data


def plan_of(data: Data, day: datetime.date = DAY) -> Plan:
    return make_plan(inventory_of(data), SEASON, day)


def asked(data: Data, day: datetime.date = DAY) -> set[str]:
    """What is asked, as code and subject."""
    found = plan_of(data, day).findings
    return {f"{one.code} {one.subject}" for one in found if one.code in CODES}


def bought(day: str, fl_oz: float, **more: Any) -> Data:
    return {"done_on": day, "bought": [{"item": "brew", "amount_fl_oz": fl_oz}]} | more


def used(day: str, fl_oz: float, **more: Any) -> Data:
    return {"done_on": day, "used": [{"item": "brew", "amount_fl_oz": fl_oz}]} | more


def killed(day: str = "2026-09-20", fl_oz: float = 32, **more: Any) -> Data:
    """The fall kill of the acre, in a wind its label allows."""
    job = {"planting": "lane-27", "step": "autumn_kill", "area_ac": 1, "finished": True}
    return used(day, fl_oz, job=job, sprayed={"wind_mph": 5}) | more


def confirmed(*entries: str, day: str = "2026-11-30") -> Data:
    return {"done_on": day, "confirms": list(entries)}


# --- more used than was there ---


def test_more_sprayed_than_was_counted_stops_what_is_added_to_it() -> None:
    assert asked(land(killed(fl_oz=12))) == set()
    assert asked(land(killed(fl_oz=12.5))) == {"C370 log/e-0", f"S240 {BURN_DOWN}"}


@pytest.mark.parametrize(
    "cure",
    [
        bought("2026-09-20", 20),
        bought("2026-08-16", 20),
        killed(fl_oz=12, corrects="e-0"),
        confirmed("e-0"),
    ],
)
def test_one_line_settles_more_used_than_was_there(cure: Data) -> None:
    assert asked(land(killed(fl_oz=32), cure)) == set()


def test_a_later_count_settles_it() -> None:
    counted = {"on_hand_fl_oz": 0, "counted_on": "2026-09-21"}
    assert asked(land(killed(fl_oz=32), **counted)) == set()


def test_what_was_bought_after_the_use_was_not_there_for_it() -> None:
    late = bought("2026-09-21", 128)
    assert asked(land(killed(fl_oz=32), late)) == {"C370 log/e-0", f"S240 {BURN_DOWN}"}


def test_a_thing_with_neither_count_nor_purchase_is_not_asked_about() -> None:
    none = {"on_hand_fl_oz": None, "counted_on": None}
    assert asked(land(killed(fl_oz=500), **none)) == set()
    more = land(bought("2026-09-01", 16), killed(fl_oz=17), **none)
    assert asked(more) == {"C370 log/e-1", f"S240 {BURN_DOWN}"}
    # what was on the shelf before the first purchase nobody knows
    assert asked(land(killed(fl_oz=17), bought("2026-09-21", 16), **none)) == set()


def test_a_thing_of_no_known_form_is_held_against_what_was_bought_of_that_form() -> None:
    bare = {"package_gal": None, "price_usd": None, "on_hand_fl_oz": None, "counted_on": None}
    dry = {"done_on": "2026-09-01", "bought": [{"item": "brew", "amount_lb": 1}]}
    assert "C370 log/e-1" in asked(land(bought("2026-09-01", 16), killed(fl_oz=17), **bare))
    # pounds and fluid ounces of it cannot be added up
    assert asked(land(dry, killed(fl_oz=17), **bare)) == set()


def test_up_to_a_count_purchases_alone_say_what_was_there() -> None:
    calm = {"sprayed": {"wind_mph": 5}}
    assert asked(land(used("2026-08-10", 40, **calm))) == set()
    both = land(bought("2026-08-01", 32), used("2026-08-10", 40, **calm))
    assert "C370 log/e-1" in asked(both)
    assert asked(land(bought("2026-08-01", 40), used("2026-08-10", 40, **calm))) == set()


def test_a_count_without_its_day_is_what_was_ever_there() -> None:
    assert "C370 log/e-0" in asked(land(killed(fl_oz=32), counted_on=None))
    assert asked(land(killed(fl_oz=12), counted_on=None)) == set()


def test_amounts_in_other_units_that_come_to_the_same_are_no_more() -> None:
    tenth: Data = {"done_on": "2026-08-20", "bought": [{"item": "brew", "amount_gal": 0.1}]}
    put = [used(f"2026-09-{day:02}", 2.56, sprayed={"wind_mph": 5}) for day in (1, 2, 3, 4, 5)]
    assert asked(land(tenth, *put, on_hand_fl_oz=0)) == set()  # 5 x 2.56 = 12.8 = 0.1 gal


def test_each_use_beyond_what_is_there_is_asked_about() -> None:
    data = land(killed(fl_oz=32), used("2026-09-22", 4, sprayed={"wind_mph": 5, "place": "lane"}))
    assert {one for one in asked(data) if one.startswith("C370")} == {
        "C370 log/e-0",
        "C370 log/e-1",
    }


def test_seed_that_was_not_there_is_a_caution_alone() -> None:
    job = {"planting": "lane-27", "step": "frost_seeding", "finished": True}
    sown = {"done_on": "2026-11-20", "job": job, "used": [{"item": "sg", "amount_lb": 1.5}]}
    within = sown | {"used": [{"item": "sg", "amount_lb": 1.25}], "done_on": "2027-02-10"}
    sown["done_on"] = "2027-02-10"
    later = datetime.date(2027, 2, 20)
    assert asked(land(sown), later) == {"C370 log/e-0"}
    assert asked(land(within), later) == set()
    assert asked(land(sown, confirmed("e-0", day="2027-02-11")), later) == set()


def test_a_label_without_a_year_adds_nothing_up() -> None:
    data = land(killed(fl_oz=32))
    for use in data["products"]["products"][0]["label"]["uses"]:
        use |= {"max_per_year": "not_on_label", "times_per_year": "not_on_label"}
    assert asked(data) == {"C370 log/e-0"}


def test_a_year_that_is_over_stops_nothing() -> None:
    old = used("2024-09-20", 32, sprayed={"wind_mph": 5, "place": "lane", "treated_ac": 1})
    data = land(old, on_hand_fl_oz=12, counted_on="2024-09-01")
    assert asked(data) == {"C370 log/e-0"}


def test_another_product_on_other_ground_is_not_stopped() -> None:
    data = land(used("2026-09-20", 32, sprayed={"wind_mph": 5, "location": "the yard"}))
    # the same product, wherever it was
    assert asked(data) == {"C370 log/e-0", f"S240 {KILL}", f"S240 {BURN_DOWN}"}
    other = dict(data["products"]["products"][0]) | {"id": "other", "name": "Other"}
    other["label"] = full_card(
        full_use(),
        full_use("after_sowing_before_emergence"),
        actives=[{"active": "invented zeta", "strength_lb_per_gal": 4, "basis": "ae"}],
    )
    data["products"]["products"].append(other)
    for work in the_work(data):
        work["product"] = "other"
    data["log"]["entries"][0]["sprayed"] = {"wind_mph": 5, "place": "lane", "treated_ac": 1}
    assert asked(data) == {"C370 log/e-0"}


# --- the same in two entries ---


def test_the_same_purchase_twice_is_a_caution() -> None:
    one = {"done_on": "2026-10-01", "bought": [{"item": "sg", "amount_lb": 10, "cost_usd": 118}]}
    assert asked(land(one)) == set()
    assert asked(land(one, one)) == {"C371 log/e-1"}
    assert asked(land(one, one, confirmed("e-0", "e-1"))) == set()
    assert asked(land(one, one | {"confirms": ["e-0"]})) == set()
    assert asked(land(one, one | {"corrects": "e-0"})) == set()
    assert asked(land(one, one, {"done_on": "2026-10-02", "corrects": "e-1"})) == set()


@pytest.mark.parametrize(
    "changes",
    [
        {"done_on": "2026-10-02"},
        {"bought": [{"item": "sg", "amount_lb": 10, "cost_usd": 117}]},
        {"bought": [{"item": "sg", "amount_lb": 9, "cost_usd": 118}]},
        {"bought": [{"item": "sg", "amount_lb": 10}]},
    ],
)
def test_another_day_cost_or_amount_is_another_purchase(changes: Data) -> None:
    one = {"done_on": "2026-10-01", "bought": [{"item": "sg", "amount_lb": 10, "cost_usd": 118}]}
    assert asked(land(one, one | changes)) == set()


def test_the_same_amount_in_another_unit_is_the_same() -> None:
    ounces = {"done_on": "2026-10-01", "bought": [{"item": "sg", "amount_oz_wt": 160}]}
    pounds = {"done_on": "2026-10-01", "bought": [{"item": "sg", "amount_lb": 10}]}
    assert asked(land(pounds, ounces)) == {"C371 log/e-1"}


def test_a_third_entry_is_asked_about_beside_those_that_are_confirmed() -> None:
    one = {"done_on": "2026-10-01", "bought": [{"item": "sg", "amount_lb": 10}]}
    assert asked(land(one, one, one, confirmed("e-0", "e-1"))) == {"C371 log/e-2"}
    assert asked(land(one, one, one, confirmed("e-0", "e-1", "e-2"))) == set()


def test_a_spraying_finished_twice_stops_what_is_added_to_it() -> None:
    data = well_stocked(land(killed(), killed("2026-09-28")))
    assert asked(data) == {"C371 log/e-1", f"S241 {BURN_DOWN}"}
    data["log"]["entries"].append({"id": "e-2"} | confirmed("e-0", "e-1"))
    assert asked(data) == set()


def test_a_job_that_is_no_spraying_finished_twice_is_a_caution() -> None:
    job = {"planting": "lane-27", "step": "bare_ground", "finished": True}
    look = {"done_on": "2027-01-20", "job": job}
    later = datetime.date(2027, 2, 1)
    assert asked(land(look, look | {"done_on": "2027-01-21"}), later) == {"C371 log/e-1"}
    begun = look | {"job": {"planting": "lane-27", "step": "bare_ground"}}
    assert asked(land(begun, look), later) == set()


def test_a_yearly_job_finished_in_two_seasons_is_finished_once_in_each() -> None:
    data = land()
    data["screens"]["screens"][0]["plantings"][0]["upkeep"] = "established_screen_upkeep"
    job = {"planting": "lane-27", "step": "upkeep_summer_count", "finished": True}
    counts = [{"id": f"c-{year}", "done_on": f"{year}-06-20", "job": job} for year in (2030, 2031)]
    data["log"]["entries"] = counts
    later = datetime.date(2031, 7, 1)
    assert asked(data, later) == set()
    counts[1]["done_on"] = "2030-06-22"
    assert asked(data, later) == {"C371 log/c-2031"}


def test_the_same_spraying_twice_on_a_place_that_was_no_job() -> None:
    at = {"wind_mph": 5, "place": "lane", "treated_ac": 0.2}
    one = used("2026-09-20", 4, sprayed=at)
    data = well_stocked(land(one, one))
    assert asked(data) == {"C371 log/e-1", f"S241 {KILL}", f"S241 {BURN_DOWN}"}
    # begun at two times, they are two
    apart = [used("2026-09-20", 4, sprayed=at | {"started_at": t}) for t in ("07:00", "09:00")]
    assert asked(well_stocked(land(*apart))) == set()
    elsewhere = used("2026-09-20", 4, sprayed=at | {"place": None, "location": "the yard"})
    elsewhere["sprayed"] = {k: v for k, v in elsewhere["sprayed"].items() if v is not None}
    assert asked(well_stocked(land(one, elsewhere))) == set()


def test_the_same_money_twice_is_a_caution_and_stops_no_spraying() -> None:
    spent = {"spent": [{"what": "Mower for a day", "cost_usd": 95}]}
    one = killed() | spent
    other = {"done_on": "2026-09-20", "spent": [{"what": "mower for a day", "cost_usd": 95}]}
    assert asked(well_stocked(land(one, other))) == {"C371 log/e-1"}


# --- a job outside its season ---


@pytest.mark.parametrize(
    ("day", "outside"),
    [("2026-08-31", True), ("2026-09-01", False), ("2027-08-31", False), ("2027-09-01", True)],
)
def test_a_job_is_done_in_its_season(day: str, outside: bool) -> None:
    job = {"planting": "lane-27", "step": "bare_ground", "finished": True}
    data = land({"done_on": day, "job": job})
    later = datetime.date(2027, 9, 15)
    assert asked(data, later) == ({"C372 log/e-0"} if outside else set())


def test_a_step_whose_dates_begin_before_its_season_is_done_in_them() -> None:
    data = land()
    # 45 days before Oct 4, the early first freeze: from Aug 20 on
    mine = {
        "step": "first_look", "name": "Look early", "operation": "look", "timing": "before_sowing",
        "why": "The sod.", "opens": [{"sign": "first_hard_freeze", "by": "early",
                                      "offset_days": -45}],
        "closes": [{"date": "09-20"}], "if_missed": "Look later.",
    }  # fmt: skip
    plan = {"id": "mine", "name": "Mine", "based_on": "frost_seeded_native_grass", "steps": [mine]}
    data["steps"] = {"step_plans": [plan]}
    data["screens"]["screens"][0]["plantings"][0]["steps"] = "mine"
    job = {"planting": "lane-27", "step": "first_look", "finished": True}
    data["log"]["entries"] = [{"id": "e-0", "done_on": "2026-08-20", "job": job}]
    assert asked(data) == set()
    data["log"]["entries"][0]["done_on"] = "2026-08-19"
    assert asked(data) == {"C372 log/e-0"}


def test_a_spraying_a_year_off_stops_what_its_true_day_would_weigh_on() -> None:
    wrong = well_stocked(land(killed("2025-09-20"), counted_on="2025-08-15"))
    day = datetime.date(2026, 9, 21)  # the day after it was truly done
    assert asked(wrong, day) == {"C372 log/e-0", f"S242 {BURN_DOWN}"}
    for cure in (killed("2026-09-20", corrects="e-0"), confirmed("e-0", day="2026-09-21")):
        entries = [*wrong["log"]["entries"], {"id": "cure"} | cure]
        assert asked(wrong | {"log": {"entries": entries}}, day) == set()


def test_a_sowing_waits_as_long_as_after_the_last_day_it_may_have_been() -> None:
    entry = killed("2025-09-20", sprayed={"wind_mph": 5})
    data = well_stocked(land(entry, counted_on="2025-08-15"))
    for use in data["products"]["products"][0]["label"]["uses"]:
        use["seeding_interval_days"] = 120
    # sprayed on Dec 1, 120 days reach to Mar 31: the sowing opens in January
    assert f"S243 {SOWING}" in asked(data)
    data["log"]["entries"].append({"id": "e-1"} | confirmed("e-0"))
    assert asked(data) == set()


def test_nobody_is_back_on_ground_that_may_have_been_sprayed_lately() -> None:
    data = well_stocked(land(killed("2025-09-20"), counted_on="2025-08-15"))
    looking = f"S244 lane/{SEASON}/look_again"
    # twelve hours: on the day itself and the next; the look opens on Sep 24
    for day, stopped in (("2026-09-22", False), ("2026-09-23", True), ("2026-09-24", True)):
        assert (looking in asked(data, datetime.date.fromisoformat(day))) == stopped
    data["log"]["entries"].append({"id": "e-1"} | confirmed("e-0", day="2026-09-24"))
    assert asked(data, datetime.date(2026, 9, 24)) == set()


def test_a_yearly_job_belongs_to_the_season_of_its_day_or_the_one_it_names() -> None:
    data = land()
    data["screens"]["screens"][0]["plantings"][0]["upkeep"] = "established_screen_upkeep"
    job = {"planting": "lane-27", "step": "upkeep_summer_count", "finished": True}
    data["log"]["entries"] = [{"id": "e-0", "done_on": "2026-06-20", "job": job}]
    assert asked(data) == {"C372 log/e-0"}  # before the screen was sown
    data["log"]["entries"][0]["done_on"] = "2030-09-03"
    assert asked(data, datetime.date(2030, 9, 15)) == set()
    data["log"]["entries"][0]["job"] = job | {"season": 2030}
    assert asked(data, datetime.date(2030, 9, 15)) == set()


# --- an answer before its question ---


def looked(day: str, answer: str = "no", **more: Any) -> Data:
    job = {"planting": "lane-27", "step": "look_again", "finished": True, "answer": answer}
    return {"done_on": day, "job": job} | more


def test_an_answer_before_its_step_is_open_is_asked_about() -> None:
    data = land(looked("2026-09-02"))
    assert asked(data) == {"C373 log/e-0"}
    assert asked(land(looked("2026-09-02"), confirmed("e-0"))) == set()
    assert asked(land(looked("2026-09-02"), looked("2026-10-20", corrects="e-0"))) == set()
    step = next(one for one in plan_of(data).jobs if one.id == f"lane/{SEASON}/look_again")
    early = [one.opens for one in step.dates.by_year] or [step.dates.opens]
    first = min(one for one in early if one is not None)
    assert asked(land(looked(first.isoformat()))) == set()
    before = first - datetime.timedelta(days=1)
    assert asked(land(looked(before.isoformat()))) == {"C373 log/e-0"}


def test_an_answer_before_what_it_asks_about_was_done() -> None:
    late_kill = killed("2026-10-25")
    data = well_stocked(land(looked("2026-10-20"), late_kill))
    assert asked(data) == {"C373 log/e-0"}
    assert asked(well_stocked(land(looked("2026-10-28"), late_kill))) == set()


def test_a_day_to_decide_and_an_answer_to_nothing_are_not_asked_about() -> None:
    job = {"planting": "lane-27", "step": "look_again", "decide_on": "2026-10-20"}
    assert asked(land({"done_on": "2026-09-02", "job": job})) == set()


# --- wind ---


@pytest.mark.parametrize(
    ("said", "code"),
    [
        ({}, "C374"),
        ({"wind_mph": 3}, ""),
        ({"wind_mph": 9}, ""),
        ({"wind_mph": 2.9}, "C375"),
        ({"wind_mph": 9.1}, "C375"),
        ({"wind_km_per_h": 10}, ""),
        ({"wind_not_measured": True}, ""),
        ({"wind_not_measured": False}, "C374"),
    ],
)
def test_a_spraying_has_its_wind_where_the_label_has_one(said: Data, code: str) -> None:
    entry = killed(fl_oz=12, sprayed={"nozzle": "flat fan"} | said)
    assert asked(land(entry)) == ({f"{code} log/e-0"} if code else set())
    assert asked(land(entry, confirmed("e-0"))) == set()


def test_a_spraying_without_a_word_on_it_has_no_wind() -> None:
    entry = {key: one for key, one in killed(fl_oz=12).items() if key != "sprayed"}
    assert asked(land(entry)) == {"C374 log/e-0"}


def test_a_label_that_names_no_wind_asks_for_none() -> None:
    data = land(killed(fl_oz=12, sprayed={"wind_mph": 20}))
    for use in data["products"]["products"][0]["label"]["uses"]:
        use["wind_mph"] = "not_on_label"
    assert asked(data) == set()
    data["log"]["entries"][0]["sprayed"] = {"nozzle": "flat fan"}
    assert asked(data) == set()


def test_outside_a_job_a_wind_that_one_use_allows_may_be_right() -> None:
    at = {"place": "lane", "treated_ac": 0.1}
    data = land(used("2026-09-20", 4, sprayed=at | {"wind_mph": 12}))
    assert asked(data) == {"C375 log/e-0"}
    data["products"]["products"][0]["label"]["uses"][1]["wind_mph"]["high_mph"] = 15
    assert asked(data) == set()


# --- for all of them ---


def test_a_confirmation_counts_from_its_own_day_and_only_while_it_stands() -> None:
    day = datetime.date(2026, 11, 1)
    late = land(killed(fl_oz=32), confirmed("e-0", day="2026-11-30"))
    assert asked(late, day) == {"C370 log/e-0", f"S240 {BURN_DOWN}"}
    assert asked(late) == set()
    taken_back = {"done_on": "2026-11-30", "corrects": "e-1"}
    data = land(killed(fl_oz=32), confirmed("e-0"), taken_back)
    assert asked(data) == {"C370 log/e-0", f"S240 {BURN_DOWN}"}


def test_a_stop_takes_every_amount_and_gives_others_nothing_away() -> None:
    data = land(killed(fl_oz=32))
    plan = plan_of(data)
    job = next(one for one in plan.jobs if one.id == BURN_DOWN)
    assert job.mix is None
    assert job.numbers == {}
    theirs = seen_by(plan, inventory_of(data).readers[0])
    told = [one for one in theirs.findings if one.code in CODES]
    assert [(one.code, one.words, one.cure + one.to_type, one.figures) for one in told] == [
        ("S240", "This job is not cleared. Do not mix or spray. Ask the owner.", "", ())
    ]
