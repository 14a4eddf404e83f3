"""Slips in germination, heights, later seasons, stock, prices, shares and days, each told once."""

import copy
import datetime
from collections.abc import Callable
from typing import Any, get_args, get_type_hints

import pytest

from generator.inventory.fields import Record, rules_of
from generator.inventory.load import load_inventory
from generator.inventory.schema import Inventory
from generator.plan.build.season_plan import make_plan
from generator.plan.model.days import day_words
from generator.plan.model.finding import Finding
from generator.plan.model.plan import Plan
from generator.plan.usual.days_to_come import GONE_BY, LISTS_APART
from generator.reference.library import values
from tests.plan.planned import AS_OF, inventory_of, planned
from tests.plan.sown import sown, the_lot, with_lot
from tests.properties import Data, small_property, write_property

TAG, COUNT, RATE, MACHINE = "C401", "C402", "C403", "C404"
HEIGHT, STOCK, PRICE, TO_COME, MANY_TO_COME = "C414", "C415", "C416", "C417", "C418"
ASKED = {TAG, COUNT, RATE, MACHINE, HEIGHT, STOCK, PRICE, TO_COME, MANY_TO_COME}


def told(plan: Plan) -> list[Finding]:
    return [one for one in plan.findings if one.code in ASKED]


def what(data: Data, as_of: datetime.date = AS_OF) -> list[tuple[str, str]]:
    return [(one.code, one.subject) for one in told(make_plan(inventory_of(data), 2027, as_of))]


@pytest.mark.parametrize(
    ("germination", "hard", "dormant", "asked"),
    [
        (41, 0, 49, False),
        (4.1, 0, 49, True),
        (95, 0, 0, False),
        (9.5, 0, 0, True),
        (6, 0, 85, False),  # fresh seed that is nearly all dormant
        (9.9, 30, 30, True),  # 69.9% alive, and a hair under a tenth
        (9.9, 30, 30.1, False),
        (5, 30, 30, True),
        (0, 0, 60, False),  # a tag that names dormant seed alone
        (12, 0, 45, False),
    ],
)
def test_a_germination_typed_a_tenth_is_told_though_dormant_seed_hides_it(
    germination: float, hard: float, dormant: float, asked: bool
) -> None:
    data = sown()
    the_lot(data)["tag"] |= {
        "germination_pct": germination, "hard_pct": hard, "dormant_pct": dormant
    }  # fmt: skip
    assert what(data) == ([(TAG, "sg")] if asked else [])


def grown(species: str, kind: dict[str, Any] | None = None) -> Data:
    """The small property with a planting of two seasons ago, to be measured."""
    data = with_lot(sown(), "other", species, live_seeds_per_lb=None)
    old = copy.deepcopy(data["screens"]["screens"][0]) | {
        "id": "old", "name": "Old", "known_as": "Strip old"}  # fmt: skip
    old["plantings"] = [
        {"id": "old-24", "season": 2024, "method": "frost_seed",
         "steps": "frost_seeded_native_grass",
         "seed": [{"species": species, "lot": "other", "rate_pls_lb_per_ac": 8}]}
        | (kind or {})
    ]  # fmt: skip
    data["screens"]["screens"].append(old)
    return data


def logged(data: Data, **said: Any) -> Data:
    data["log"] = {"entries": [{"id": "e-1", "done_on": "2026-08-15"} | said]}
    return data


@pytest.mark.parametrize(
    ("height_in", "asked"), [(57, 0), (108, 0), (160, 0), (163, 1), (570, 1), (5.7, 0)]
)
def test_a_height_that_no_grass_reaches_is_asked(height_in: float, asked: int) -> None:
    data = logged(grown("switchgrass"), measured={"planting": "old-24", "height_in": height_in})
    assert what(data) == [(HEIGHT, "log/e-1")] * asked
    stations = [{"at_ft": 0, "height_in": 57}, {"at_ft": 33, "height_in": height_in}]
    data = logged(grown("switchgrass"), measured={"planting": "old-24", "stations": stations})
    assert what(data) == [(HEIGHT, "log/e-1")] * asked


def test_a_height_is_held_against_its_own_kind_and_told_at_its_line() -> None:
    for name, height, asked in (("oats", 90, 0), ("oats", 100, 1), ("turnip", 500, 1)):
        data = logged(grown(name), measured={"planting": "old-24", "height_in": height})
        assert len(what(data)) == asked, (name, height)
    data = logged(grown("switchgrass"), measured={"planting": "old-24", "height_m": 14})
    (one,) = told(planned(data))
    (label, typed), (_, high) = one.figures
    assert label == "The height measured"
    assert getattr(typed, "typed", None) == 14
    assert high == values()["usual_native_grass_height_high_in"]
    assert "height_m," in one.to_type
    assert one.place.startswith("log.yaml:")


@pytest.mark.parametrize(
    ("said", "asked"),
    [
        ({"weeds_seen": [{"weed": "foxtail", "planting": "old-24", "height_in": 26}]}, 0),
        ({"weeds_seen": [{"weed": "foxtail", "planting": "old-24", "height_in": 260}]}, 1),
    ],
)
def test_heights_of_weeds_are_looked_at_too(said: Data, asked: int) -> None:
    assert what(logged(grown("switchgrass"), **said)) == [(HEIGHT, "log/e-1")] * asked


def test_what_is_corrected_is_asked_no_more_and_what_screens_and_stands_say_is() -> None:
    data = logged(grown("switchgrass"), measured={"planting": "old-24", "height_in": 570})
    data["log"]["entries"].append(
        {"id": "e-2", "done_on": "2026-08-16", "corrects": "e-1",
         "measured": {"planting": "old-24", "height_in": 57}}
    )  # fmt: skip
    assert what(data) == []
    data["screens"]["screens"][0]["height_needed_ft"] = 60
    data["stands"] = {"stands": [{"id": "oak", "name": "Oak", "seat_height_ft": 180}]}
    assert what(data) == [(HEIGHT, "lane"), (HEIGHT, "oak")]
    data["screens"]["screens"][0]["height_needed_ft"] = 6
    data["stands"]["stands"][0]["seat_height_ft"] = 18
    assert what(data) == []


def later(**planting: Any) -> Data:
    data = with_lot(sown(), "bb", "big-bluestem", live_seeds_per_lb=165000)
    screen = copy.deepcopy(data["screens"]["screens"][0]) | {
        "id": "next", "name": "Next", "known_as": "Strip next"}  # fmt: skip
    screen["plantings"] = [
        {"id": "next-29", "season": 2029, "method": "frost_seed",
         "steps": "frost_seeded_native_grass"} | planting
    ]  # fmt: skip
    data["screens"]["screens"].append(screen)
    return data


MIXED = [
    {"species": "switchgrass", "lot": "sg", "share_pct": 90},
    {"species": "big-bluestem", "lot": "bb", "share_pct": 10},
]


@pytest.mark.parametrize(
    ("planting", "asked"),
    [
        ({"seed": MIXED, "mix_rate_pls_lb_per_ac": 6}, 0),
        ({"seed": MIXED, "mix_rate_pls_lb_per_ac": 60}, 1),
        ({"seed": MIXED, "mix_rate_pls_lb_per_ac": 0.6}, 1),
        ({"seed": [{"species": "switchgrass", "lot": "sg", "rate_pls_lb_per_ac": 8}]}, 0),
        ({"seed": [{"species": "switchgrass", "lot": "sg", "rate_pls_lb_per_ac": 80}]}, 1),
        ({"seed": [{"species": "switchgrass", "lot": "sg", "rate_seeds_per_sq_ft": 40}]}, 0),
        ({"seed": [{"species": "switchgrass", "lot": "sg", "rate_seeds_per_sq_ft": 400}]}, 1),
    ],
)
def test_rates_and_mixtures_of_later_seasons_are_looked_at(planting: Data, asked: int) -> None:
    plan = planned(later(**planting))
    assert [(one.code, one.subject) for one in told(plan)] == [(RATE, "next")] * asked
    assert all("2029" in one.words for one in told(plan))


def test_what_was_sown_in_seasons_before_is_asked_no_more() -> None:
    data = later(seed=[{"species": "switchgrass", "lot": "sg", "rate_pls_lb_per_ac": 80}])
    data["screens"]["screens"][1]["plantings"][0]["season"] = 2024
    assert what(data) == []


def stocked(**changes: Any) -> Data:
    """An acre takes 11.1 lb of the lot: 8 lb at 72%."""
    data = sown()
    the_lot(data).update({"counted_on": "2026-08-01"} | changes)
    return data


@pytest.mark.parametrize(
    ("changes", "asked"),
    [
        ({"on_hand_lb": 11}, 0),
        ({"on_hand_lb": 111}, 0),
        ({"on_hand_lb": 112}, 1),
        ({"on_hand_lb": 620}, 1),
        ({"on_hand_lb": 112, "package_lb": 56}, 0),  # two bags are what can be bought
        ({"on_hand_lb": 113, "package_lb": 56}, 1),
    ],
)
def test_ten_times_what_all_jobs_need_on_hand_is_asked(changes: Data, asked: int) -> None:
    assert what(stocked(**changes)) == [(STOCK, "sg")] * asked


def test_what_later_seasons_take_counts_as_needed() -> None:
    data = later(seed=[{"species": "switchgrass", "lot": "sg", "rate_pls_lb_per_ac": 8}])
    the_lot(data).update(counted_on="2026-08-01", on_hand_lb=150)
    assert what(data) == []
    the_lot(data)["on_hand_lb"] = 250
    assert what(data) == [(STOCK, "sg")]


def bought(*paid: tuple[float, float], **lot: Any) -> Data:
    """The lot, priced for a bag of ten pounds, with purchases in the log: pounds and dollars."""
    data = stocked(on_hand_lb=0, package_lb=10, **lot)
    data["log"] = {"entries": [
        {"id": f"b-{number}", "done_on": f"2026-08-{number:02}",
         "bought": [{"item": "sg", "amount_lb": pounds, "cost_usd": cost}]}
        for number, (pounds, cost) in enumerate(paid, 2)
    ]}  # fmt: skip
    return data


@pytest.mark.parametrize(
    ("data", "asked"),
    [
        (lambda: bought(price_usd=118), 0),  # nothing to compare with
        (lambda: bought((10, 110), price_usd=118), 0),
        (lambda: bought((10, 110), price_usd=1180), 1),
        (lambda: bought((10, 1100), price_usd=118), 1),
        (lambda: bought((10, 110), (1, 30), price_usd=118), 0),  # a small bag is dear
        (lambda: bought((10, 110), (10, 105), (10, 11), price_usd=118), 1),
        (lambda: bought((160, 118), price_usd=118), 1),  # ounces typed as pounds
        (lambda: bought((10, 0), price_usd=118), 0),  # a gift
    ],
)
def test_a_price_many_times_off_what_else_was_paid_is_asked(
    data: Callable[[], Data], asked: int
) -> None:
    assert [one for one in what(data()) if one[0] == PRICE] == [(PRICE, "sg")] * asked


def test_lots_of_one_species_are_prices_of_the_same_thing() -> None:
    def priced(first: float, second: float, species: str = "switchgrass") -> list[tuple[str, str]]:
        data = with_lot(sown(), "other", species, package_lb=25, price_usd=second)
        the_lot(data).update(package_lb=10, price_usd=first)
        return [one for one in what(data) if one[0] == PRICE]

    assert priced(118.5, 262) == []
    assert priced(1185, 262) == [(PRICE, "sg")]
    assert priced(118.5, 26.2) == [(PRICE, "sg")]  # of two nobody knows which: told once
    assert priced(1185, 262, "big-bluestem") == []


def test_what_is_bought_by_volume_is_not_held_against_a_weight() -> None:
    """Without package or count nobody knows whether a product is poured or weighed."""
    data = small_property()
    product = data["products"]["products"][0]
    for key in ("package_gal", "price_usd", "priced_on", "on_hand_fl_oz", "counted_on"):
        del product[key]
    bought = {"item": "brew", "amount_gal": 1}
    data["log"] = {"entries": [
        {"id": f"b-{number}", "done_on": f"2026-08-{number:02}",
         "bought": [bought | {"cost_usd": cost}]}
        for number, cost in enumerate((40, 400), 2)
    ]}  # fmt: skip
    assert [one for one in what(data) if one[0] == PRICE] == []


def with_machine(step: str, **sizes: float) -> list[tuple[str, str]]:
    data = small_property()
    machine = {"id": "tool", "name": "Tool", "width_ft": 5, "speed_mph": 3, "efficiency_pct": 70}
    data["equipment"]["machines"] = [machine | sizes]
    work = data["screens"]["screens"][0]["plantings"][0]["work"]
    if step == "autumn_kill":
        work[0]["machine"] = "tool"
    elif step:
        work.append({"step": step, "machine": "tool"})
    return what(data)


@pytest.mark.parametrize(
    ("step", "sizes", "asked"),
    [
        ("first_summer_mowing", {}, 0),
        ("first_summer_mowing", {"width_ft": 50}, 1),
        ("first_summer_mowing", {"width_ft": 0.5}, 1),
        ("first_summer_mowing", {"width_ft": 15}, 0),
        ("first_summer_mowing", {"speed_mph": 0.3}, 1),
        ("first_summer_mowing", {"speed_mph": 12}, 1),
        ("pack", {"width_ft": 4}, 0),
        ("pack", {"width_ft": 40}, 1),
        ("autumn_kill", {"width_ft": 40, "speed_mph": 6}, 0),
        ("autumn_kill", {"speed_mph": 12}, 1),
        ("", {"width_ft": 50, "speed_mph": 12}, 0),  # of no known work: what any machine has
        ("", {"width_ft": 70}, 1),
    ],
)
def test_widths_and_speeds_go_by_the_work_a_machine_does(
    step: str, sizes: dict[str, float], asked: int
) -> None:
    assert with_machine(step, **sizes) == [(MACHINE, "tool")] * asked


@pytest.mark.parametrize(
    ("change", "subject", "key"),
    [
        (lambda data: the_lot(data)["tag"].update(tested_on="2062-03-02"), "sg", "tested_on"),
        (lambda data: the_lot(data)["tag"].update(tested_on="2026-09"), "sg", "tested_on"),
        (lambda data: the_lot(data).update(priced_on="2027-08-10"), "sg", "priced_on"),
        (
            lambda data: data["screens"]["screens"][0]["cover_now"].update(seen_on="2027-07-01"),
            "lane",
            "seen_on",
        ),
        (
            lambda data: data["products"]["products"][0]["label"].update(read_on="2062-08-01"),
            "brew",
            "read_on",
        ),
        (
            lambda data: data["equipment"]["sprayers"][0]["last_load"].update(
                cleaned_out_on="2027-05-02"),
            "boom",
            "cleaned_out_on",
        ),
    ],
)  # fmt: skip
def test_a_day_that_has_to_be_gone_by_and_is_to_come_is_asked(
    change: Callable[[Data], None], subject: str, key: str
) -> None:
    data = sown()
    change(data)
    (one,) = [one for one in told(planned(data)) if one.code == TO_COME]
    assert one.subject == subject
    assert f"{key}: 20" in one.to_type
    day = datetime.date.fromisoformat(one.to_type.partition(": ")[2].removesuffix("."))
    assert f"the day of this plan: {day_words(day)}." in one.words
    line = int(one.place.partition(":")[2])
    assert line > 1


def records_of(kind: type[Record]) -> set[type[Record]]:
    """A kind of record and every kind inside it, but for those whose days are told apart."""
    inside = [
        rule.record
        for name, rule in rules_of(kind).items()
        if rule.record is not None and name not in LISTS_APART
    ]
    return {kind}.union(*(records_of(one) for one in inside))


# Days that may lie ahead, and those that are told of where they weigh on something.
AHEAD = {"as_of", "clear_on", "expires_on", "first", "insured_until", "last"}
AHEAD |= {"approved_on", "harvest_planned_on", "licence_expires_on", "old_after", "permission_on"}
AHEAD |= {"sits_on"}


def test_every_day_that_is_typed_is_gone_by_or_may_lie_ahead() -> None:
    hints = get_type_hints(Inventory)
    kinds = [each for name, hint in hints.items() if name not in LISTS_APART
             for each in (*get_args(hint), hint)]  # fmt: skip
    records = [one for one in kinds if isinstance(one, type) and issubclass(one, Record)]
    days = {
        name
        for kind in set().union(*(records_of(one) for one in records))
        for name, rule in rules_of(kind).items()
        if rule.form == "date"
    }
    assert days == AHEAD | set(GONE_BY)
    assert not AHEAD & set(GONE_BY)


def test_a_count_of_a_later_day_is_told_once() -> None:
    data = stocked(on_hand_lb=5, counted_on="2026-09-01")
    codes = [one.code for one in planned(data).findings if one.subject == "sg"]
    assert [one for one in codes if one in (TO_COME, "N357")] == ["N357"]
    data["products"]["products"].append({"id": "unused", "name": "made-up product U",
        "on_hand_fl_oz": 3, "counted_on": "2026-09-01"})  # fmt: skip
    assert (TO_COME, "unused") in what(data)


def test_a_day_of_the_plan_is_not_after_it_and_many_days_are_one_slip() -> None:
    data = sown()
    the_lot(data)["tag"]["tested_on"] = "2026-08-20"
    assert what(data) == []
    for number in range(6):
        with_lot(data, f"lot-{number}", "switchgrass")
    for lot in data["seed"]["lots"]:
        lot["tag"] = lot["tag"] | {"tested_on": "2026-08-21"}
    assert what(data) == [(MANY_TO_COME, "property folder")]
    assert what(data, datetime.date(2026, 8, 21)) == []


@pytest.mark.parametrize(
    ("pays", "faults"),
    [({"pays_pct": 50}, 0), ({"pays_pct": 0.5}, 1), ({"pays_fraction": 0.5}, 0),
     ({"pays_pct": 1.5}, 0), ({"pays_usd": 0.5}, 0)],
)  # fmt: skip
def test_a_share_of_the_cost_typed_as_a_part_is_a_fault(
    tmp_path: Any, pays: Data, faults: int
) -> None:
    data = small_property()
    share = {"id": "share", "name": "A contract", "planting": "lane-27"} | pays
    data["money"] = {"cost_share": [share]}
    loaded = load_inventory(write_property(tmp_path / "land", data))
    assert [one.code for one in loaded.problems] == ["F464"] * faults


def test_words_of_seed_counts_and_machines_say_what_is_wrong_and_what_to_do() -> None:
    data = sown()
    the_lot(data)["live_seeds_per_lb"] = 259
    data["equipment"]["sprayers"][0]["catch_tests"][0]["speed_mph"] = 40
    count, machine = (
        next(one for one in planned(data).findings if one.code == code) for code in (COUNT, MACHINE)
    )
    assert "far fewer seeds in a pound of lot sg than a pound of Switchgrass has" in count.words
    assert "as 259000 and not 259" in count.to_type
    assert (
        "Boom: Speed of the catch test, as you noted it, is far more than such a machine has"
        in (machine.words)
    )
    assert "speed_mph in equipment.yaml" in machine.to_type
    for one in (count, machine):
        assert [label for label, _ in one.figures][1:] == ["Usual from", "to"]
        assert one.source
