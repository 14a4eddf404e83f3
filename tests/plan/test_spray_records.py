"""Spray records: what each is asked for, what is late, how long the ground and the paper wait."""

import datetime
from typing import Any

import pytest

from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.model.spray_record import EXTRAS, kept_until, missing_by_rule, missing_extras
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import BURN_DOWN, KILL, inventory_of, well_stocked
from tests.properties import SEASON, Data, full_card, full_use, small_property

DAY = datetime.date(2026, 9, 30)
FULL: Data = {
    "started_at": "07:30",
    "stopped_at": "09:05",
    "wind_mph": 4,
    "wind_from_deg": 270,
    "temperature_f": 61,
    "humidity_pct": 60,
    "sprayer": "boom",
    "nozzle": "flat fan",
    "carrier_gal_per_ac": 18.5,
    "weeds": "brome",
    "growth_stage": "green",
    "lot_number": "L-1",
    "neighbour_told": True,
    "applicator": "self",
}
JOB: Data = {"planting": "lane-27", "step": "autumn_kill", "area_ac": 1, "finished": True}
USED: list[Data] = [{"item": "brew", "amount_fl_oz": 32}]


def entry(**changes: Any) -> Data:
    """A whole record of the kill on Sep 14; a field of None is left out."""
    whole = {
        "id": "e-1",
        "done_on": "2026-09-14",
        "recorded_on": "2026-09-14",
        "job": JOB,
        "used": USED,
        "sprayed": FULL,
    }
    return {key: value for key, value in (whole | changes).items() if value is not None}


def sprayed(**changes: Any) -> Data:
    return {key: value for key, value in (FULL | changes).items() if value is not None}


def with_log(*entries: Data, restricted: bool = False) -> Data:
    data = well_stocked(small_property(full_card(full_use(), restricted_use=restricted)))
    data["readers"] = {"readers": []}
    data["people"] = {"applicators": [
        {"id": "self", "licence_class": "private", "licence_number": "P-1"},
        {"id": "spare", "licence_class": "none"},
    ]}  # fmt: skip
    data["log"] = {"entries": list(entries)}
    return data


def plan_of(data: Data, day: datetime.date = DAY) -> Plan:
    return make_plan(inventory_of(data), SEASON, day)


def said(data: Data, day: datetime.date = DAY) -> dict[str, str]:
    return {one.code: one.words for one in plan_of(data, day).findings_on("log/e-1")}


def test_a_whole_record_has_no_gap() -> None:
    assert said(with_log(entry(), restricted=True)) == {}
    (record,) = plan_of(with_log(entry())).records
    assert missing_by_rule(record) == missing_extras(record) == ()
    assert (record.location, record.site, record.who) == ("Lane screen", "Native grass", "self")
    assert record.licence_number == "P-1"
    assert kept_until(record) == datetime.date(2028, 9, 14)


@pytest.mark.parametrize(
    ("changes", "missing"),
    [
        ({"used": None}, "product and the amount used"),
        ({"job": JOB | {"area_ac": None}}, "size of the ground"),
        ({"job": JOB | {"area_ac": 10}}, "a size no larger than the place"),
        ({"sprayed": sprayed(applicator=None)}, "who sprayed"),
        ({"sprayed": sprayed(applicator="spare")}, "number of the license"),
        ({"job": None}, "location"),
        ({"job": None, "sprayed": sprayed(location="fence row")}, "crop or site"),
    ],
)
def test_what_the_rule_lists_is_named_where_it_is_left_out(changes: Data, missing: str) -> None:
    if "job" in changes and changes["job"] is not None:
        changes = {"job": {key: one for key, one in changes["job"].items() if one is not None}}
    words = said(with_log(entry(**changes), restricted=True))
    assert missing in words["C310"]


def test_a_correction_that_fills_the_gaps_cures_them() -> None:
    gaps = entry(used=None)
    assert "C310" in said(with_log(gaps))
    whole = entry(id="e-2", corrects="e-1")
    plan = plan_of(with_log(gaps, whole))
    assert not [one for one in plan.findings if one.code.startswith(("C31", "N39"))]
    assert [one.entry.id for one in plan.records] == ["e-2"]


def test_a_card_without_a_number_is_a_gap_until_it_is_typed() -> None:
    data = with_log(entry())
    card = data["products"]["products"][0]["label"]
    number = card.pop("epa_reg_no")
    assert "EPA registration number" in said(data)["C310"]
    card["epa_reg_no"] = number
    assert said(data) == {}


def test_a_product_of_no_restricted_use_takes_no_licence() -> None:
    unlicensed = entry(sprayed=sprayed(applicator="spare"))
    assert "C310" not in said(with_log(unlicensed))
    assert "C310" in said(with_log(unlicensed, restricted=True))
    told = entry(sprayed=sprayed(applicator="spare", licence_number="S-9"))
    assert "C310" not in said(with_log(told, restricted=True))


def test_only_spots_are_asked_for_no_size() -> None:
    def codes(**changes: Any) -> set[str]:
        at = {"place": "lane", "site": "thistles"}
        return set(said(with_log(entry(job=None, sprayed=sprayed(**at, **changes)))))

    assert codes(spot=True) == set()
    assert codes() == {"C310"}
    assert codes(treated_ac=0.3) == set()


def test_a_herbicide_used_without_a_word_is_a_record_with_gaps() -> None:
    words = said(with_log({"id": "e-1", "done_on": "2026-09-14", "used": USED}))
    assert "location" in words["C310"]
    assert "size of the ground" in words["C310"]


def test_seed_and_a_begun_mowing_are_no_spray_records() -> None:
    sown = {"id": "e-1", "done_on": "2026-09-14", "used": [{"item": "sg", "amount_lb": 1}]}
    assert plan_of(with_log(sown)).records == ()


def test_what_is_good_to_have_is_a_note_and_named() -> None:
    for name, words in EXTRAS:
        told = said(with_log(entry(sprayed=sprayed(**{_typed(name): None}))))
        # a wind that is left out is asked for besides, since the label has one
        assert set(told) == ({"N390", "C374"} if name == "wind_mph" else {"N390"})
        assert words in told["N390"]


def _typed(name: str) -> str:
    return "humidity_pct" if name == "humidity_fraction" else name


@pytest.mark.parametrize(("recorded", "late"), [("2026-09-28", False), ("2026-09-29", True)])
def test_a_restricted_spraying_written_down_after_fourteen_days(recorded: str, late: bool) -> None:
    assert ("C311" in said(with_log(entry(recorded_on=recorded), restricted=True))) == late
    assert "C311" not in said(with_log(entry(recorded_on=recorded)))


@pytest.mark.parametrize(
    ("given", "day", "late"),
    [
        (None, datetime.date(2026, 10, 14), False),
        (None, datetime.date(2026, 10, 15), True),
        ("2026-10-14", datetime.date(2026, 12, 1), False),
        ("2026-10-15", datetime.date(2026, 12, 1), True),
    ],
)
def test_a_hired_spraying_without_its_copy(
    given: str | None, day: datetime.date, late: bool
) -> None:
    hired = entry(sprayed=sprayed(applicator=None, copy_given_on=given), by="the crew")
    data = with_log(hired)
    hire = {"id": "crew", "jobs": [{"planting": "lane-27", "steps": ["autumn_kill"]}]}
    data["money"] = {"hires": [hire | {"price_usd": 90}]}
    assert ("C312" in said(data, day)) == late
    own = entry(sprayed=sprayed(copy_given_on=given))
    assert "C312" not in said(data | {"log": {"entries": [own]}}, day)


@pytest.mark.parametrize("kind", ["contractor", "partner"])
@pytest.mark.parametrize("applicator", [None, "theirs"])
def test_a_partner_who_sprays_owes_no_copy_as_somebody_hired_does(
    kind: str, applicator: str | None
) -> None:
    data = with_log(entry(sprayed=sprayed(applicator=applicator), by="them"))
    jobs = [{"planting": "lane-27", "steps": ["autumn_kill"]}]
    data["readers"] = {"readers": [{"id": "them", "kind": kind, "jobs": jobs}]}
    theirs = {"id": "theirs", "licence_class": "private", "reader": "them"}
    data.setdefault("people", {}).setdefault("applicators", []).append(theirs)
    late = datetime.date(2026, 12, 1)
    assert ("C312" in said(data, late)) == (kind == "contractor")


def test_nothing_is_kept_out_once_the_label_s_hours_are_over() -> None:
    def codes(subject: str, day: datetime.date) -> set[str]:
        plan = plan_of(with_log(entry(job=JOB | {"finished": False})), day)
        return {one.code for one in plan.findings_on(subject)}

    # twelve hours: over in the course of the next day
    for day, kept_out in ((14, True), (15, True), (16, False)):
        at = datetime.date(2026, 9, day)
        assert ("C314" in codes("lane", at)) == kept_out
        assert ("C314" in codes(KILL, at)) == kept_out
        assert "C314" not in codes(BURN_DOWN, at)


def test_a_reader_is_told_to_keep_out_and_nothing_else_of_the_record() -> None:
    data = with_log(entry(job=JOB | {"finished": False}))
    handed = [{"planting": "lane-27", "steps": ["all"]}]
    data["readers"] = {"readers": [{"id": "crew", "kind": "contractor", "jobs": handed}]}
    inventory = inventory_of(data)
    plan = make_plan(inventory, SEASON, datetime.date(2026, 9, 15))
    theirs = seen_by(plan, inventory.readers[0])
    told = [one for one in theirs.findings if one.code == "C314"]
    assert [(one.words, one.cure + one.to_type, one.figures) for one in told] == [
        (
            "This ground was sprayed lately. Keep out until the owner says that the label lets "
            "you back.",
            "",
            (),
        )
    ]
    assert theirs.records == ()
    assert theirs.entries == ()


def test_drift_is_looked_at_on_the_same_ground_and_not_before() -> None:
    looks = [
        {"id": "before", "done_on": "2026-09-13", "drift_checked": {"place": "lane"}},
        {"id": "elsewhere", "done_on": "2026-09-15", "drift_checked": {"clean": True}},
    ]
    (record,) = plan_of(with_log(entry(), *looks)).records
    assert record.drift_check is None
    looks.append({"id": "there", "done_on": "2026-09-21", "drift_checked": {"place": "lane"}})
    (record,) = plan_of(with_log(entry(), *looks)).records
    assert record.drift_check is not None
    assert record.drift_check.id == "there"


def test_the_29th_of_february_is_kept_a_day_longer() -> None:
    data = with_log(entry(done_on="2024-02-29", recorded_on="2024-02-29"))
    (record,) = plan_of(data).records
    assert kept_until(record) == datetime.date(2026, 3, 1)
