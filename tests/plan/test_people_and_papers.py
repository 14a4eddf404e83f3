"""Licenses, hours, insurance, permits, contracts and requests against jobs, by hand.

The fall kill of the small property is open from 10 to Sep 27, 2026; one acre. A mower of
5 ft at 4 mph and 0.8 does 4 x 5 x 0.8 x 5280 / 43560 = 1.93939 acres in an hour, so the mowing of
that acre, open from Jun 1 to Aug 1, 2027, takes 43560 / (5280 x 16) = 0.515625 hours.
"""

import datetime
from typing import Any

import pytest

from generator.book.make import make_book
from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from generator.plan.money.free_hours import free_in, overfull, own_months, own_work
from generator.plan.readers.seen_by import seen_by
from tests.plan.planned import AS_OF, KILL, inventory_of, job_of, planned
from tests.plan.test_woody import PLANTING, rowed
from tests.properties import SEASON, Data, full_card, full_use, small_property, the_work

MOWING = f"lane/{SEASON}/first_summer_mowing"
DAY = datetime.date
MOWER = {"id": "mower", "name": "Mower", "width_ft": 5, "speed_mph": 4, "efficiency_fraction": 0.8}
LICENCE = {
    "id": "sprays",
    "licence_class": "private",
    "licence_expires_on": "2026-09-27",
    "fits": ["brew"],
    "asked_on": "2026-08-02",
}
FOR_PAY = {"licence_class": "commercial", "for_hire": True}
HIRE = {"id": "crew", "jobs": [{"planting": "lane-27", "steps": ["autumn_kill"]}], "price_usd": 90}


def codes(plan: Plan, subject: str = KILL) -> set[str]:
    return {one.code for one in plan.findings_on(subject)}


def restricted(*applicators: Data, handed: bool = False) -> Data:
    """The small property with a restricted product, its kill handed over or not."""
    data = small_property(full_card(full_use(), restricted_use=True))
    if not handed:
        data["readers"]["readers"][0]["jobs"][0]["steps"] = ["frost_seeding"]
    data["people"] = {"applicators": list(applicators)}
    return data


def without(record: Data, key: str) -> Data:
    return {name: value for name, value in record.items() if name != key}


def test_a_licence_that_fits_lifts_the_stop_of_a_restricted_product() -> None:
    assert "S114" in codes(planned(restricted()))
    plan = planned(restricted(LICENCE))
    assert "S114" not in codes(plan)
    assert job_of(plan).mix is not None


@pytest.mark.parametrize(
    "wrong",
    [
        {"licence_expires_on": "2026-09-26"},
        {"licence_class": "none"},
        {"fits": []},
        {"reader": "hired"},
    ],
)
def test_a_licence_that_does_not_fit_lifts_nothing(wrong: Data) -> None:
    held = LICENCE | wrong
    if wrong.get("licence_class") == "none":
        held = {"id": "sprays", "licence_class": "none"}
    if not held.get("fits"):
        held.pop("fits", None)
    assert codes(planned(restricted(held))) >= {"S114"}


@pytest.mark.parametrize("key", ["licence_expires_on", "asked_on"])
def test_a_licence_without_its_days_lifts_nothing(key: str) -> None:
    assert "S114" in codes(planned(restricted(without(LICENCE, key))))


def test_a_licence_is_of_no_help_where_the_last_open_day_is_not_known() -> None:
    data = restricted(LICENCE)
    del data["property"]["season_signs"]["first_hard_freeze"]
    assert "S114" in codes(planned(data))


def test_who_is_handed_a_restricted_spraying_needs_a_licence_for_hire_of_their_own() -> None:
    theirs = LICENCE | FOR_PAY | {"reader": "hired"}
    assert "S114" not in codes(planned(restricted(theirs, handed=True)))
    assert "S114" in codes(planned(restricted(LICENCE, handed=True)))
    assert "S114" in codes(planned(restricted(without(theirs, "reader"), handed=True)))
    assert "S114" in codes(planned(restricted(theirs | {"for_hire": False}, handed=True)))
    # a hired job is no job of the owner's license either
    hired = restricted(LICENCE)
    hired["money"] = {"hires": [HIRE]}
    assert "S114" in codes(planned(hired))
    hired["people"]["applicators"][0] = LICENCE | FOR_PAY
    assert "S114" not in codes(planned(hired))


def test_a_partner_works_without_pay_and_needs_a_fitting_licence_of_their_own() -> None:
    theirs = LICENCE | {"reader": "hired"}
    for licence, stopped in (
        (theirs, False),
        (LICENCE, True),
        (without(theirs, "fits"), True),
        (theirs | {"licence_expires_on": "2026-09-26"}, True),
    ):
        data = restricted(licence, handed=True)
        data["readers"]["readers"][0]["kind"] = "partner"
        assert ("S114" in codes(planned(data))) == stopped


def test_a_sheet_of_a_restricted_product_says_so_to_every_reader() -> None:
    data = restricted(LICENCE | FOR_PAY | {"reader": "hired"}, handed=True)
    plan = planned(data)
    for one in (plan, seen_by(plan, inventory_of(data).readers[0])):
        job = next(job for job in one.jobs if job.step.id == "autumn_kill")
        line = next(line for line in job.safety if line.key == "label.restricted_use")
        assert "certified applicators" in (line.text or "")
    free = job_of(planned(small_property()))
    assert "label.restricted_use" not in {line.key for line in free.safety}


def hired(*applicators: Data) -> Data:
    data = small_property()
    data["money"] = {"hires": [HIRE]}
    data["readers"]["readers"][0]["jobs"][0]["steps"] = ["frost_seeding"]
    data["people"] = {"applicators": list(applicators)}
    return data


def test_hired_spraying_asks_for_a_licence_that_covers_hire() -> None:
    held = without(without(LICENCE, "fits"), "asked_on")
    assert "C306" in codes(planned(hired()))
    assert "C306" in codes(planned(hired(held)))
    assert "C306" not in codes(planned(hired(held | FOR_PAY)))
    late = held | FOR_PAY | {"licence_expires_on": "2026-09-26"}
    assert "C306" in codes(planned(hired(late)))
    assert "C306" not in codes(planned(small_property()))
    assert "C306" not in codes(planned(hired()), f"lane/{SEASON}/frost_seeding")


def insured(**contractor: Any) -> Data:
    """Reader `hired` has the kill alone, open to Sep 27, 2026."""
    data = small_property()
    data["readers"]["readers"][0]["jobs"][0]["steps"] = ["autumn_kill"]
    data["people"] = {"contractors": [{"id": "crew", "reader": "hired"} | contractor]}
    return data


def test_proof_of_insurance_is_asked_for_to_the_last_open_day() -> None:
    assert codes(planned(insured()), "crew") == {"C307"}
    assert codes(planned(insured(insured=False)), "crew") == {"C307"}
    assert codes(planned(insured(insured=True, insured_until="2026-09-26")), "crew") == {"C307"}
    assert codes(planned(insured(insured=True, insured_until="2026-09-27")), "crew") == set()
    assert codes(planned(insured(insured=True)), "crew") == set()


def test_a_contractor_who_may_be_the_reader_with_jobs_is_asked_who_he_is() -> None:
    data = insured(insured=True)
    del data["people"]["contractors"][0]["reader"]
    (one,) = planned(data).findings_on("crew")
    assert one.code == "C431"
    assert "You hand work to hired" in one.words
    assert one.to_type.startswith("Type reader: hired on contractor crew")
    other = {"id": "others", "reader": "hired", "insured": True}
    data["people"]["contractors"].append(other)
    assert codes(planned(data), "crew") == set()
    job = {"planting": "lane-27", "step": "autumn_kill", "finished": True}
    data["people"]["contractors"].remove(other)
    data["log"] = {"entries": [{"id": "e", "done_on": "2026-08-19", "job": job}]}
    assert codes(planned(data), "crew") == set()


def test_a_contractor_with_no_job_left_is_asked_for_nothing() -> None:
    data = insured()
    job = {"planting": "lane-27", "step": "autumn_kill", "finished": True}
    data["log"] = {"entries": [{"id": "e", "done_on": "2026-08-19", "job": job}]}
    assert codes(planned(data), "crew") == set()


def lines_marked(**call: Any) -> Data:
    """A row whose plants are set from Apr 14 to May 10, 2027."""
    data = rowed()
    del data["papers"]
    if call:
        data["papers"] = {"one_calls": [{"id": "call", "places": ["edge"]} | call]}
    return data


def test_ground_is_opened_once_buried_lines_are_marked() -> None:
    opens = job_of(planned(lines_marked()), PLANTING).dates
    assert (opens.opens, opens.closes) == (DAY(2027, 4, 14), DAY(2027, 5, 10))
    assert "C303" in codes(planned(lines_marked()), PLANTING)
    good = {"number": "117", "clear_on": "2027-04-20", "expires_on": "2027-05-04"}
    plan = planned(lines_marked(**good))
    assert "C303" not in codes(plan, PLANTING)
    line = next(one for one in job_of(plan, PLANTING).safety if one.key == "dates.lines_marked")
    assert line.text == "request 117, dig Apr 20 to May 4, 2027 only"
    for wrong in (
        {"clear_on": "2027-05-11", "expires_on": "2027-05-20"},
        {"clear_on": "2026-09-02", "expires_on": "2027-04-13"},
        {"places": ["lane"]},
    ):
        assert "C303" in codes(planned(lines_marked(**(good | wrong))), PLANTING), wrong
    assert "C303" in codes(planned(lines_marked(**without(good, "clear_on"))), PLANTING)


def test_lines_that_are_not_marked_are_a_blank_on_every_reader_s_sheet() -> None:
    data = lines_marked()
    handed = {"planting": "edge-row", "steps": ["row_planting"]}
    data["readers"]["readers"][0]["jobs"].append(handed)
    plan = planned(data)
    theirs = seen_by(plan, inventory_of(data).readers[0])
    for one in (plan, theirs):
        job = next(job for job in one.jobs if job.step.id == "row_planting")
        line = next(line for line in job.safety if line.key == "dates.lines_marked")
        assert line.text is None
    assert [one.words for one in theirs.findings if one.code == "C303"] != [""]


def under(*entries: Data, **contract: Any) -> Data:
    """The lane under a contract that names every kind of its work."""
    data = small_property()
    data["screens"]["screens"][0]["contract"] = "ten-year cover"
    allowed = {"work_allowed": ["spray", "sow", "mow"]}
    paper = {"id": "cover", "name": "ten-year cover", "places": ["lane"]} | allowed | contract
    data["papers"] = {"contracts": [paper]}
    if entries:
        data["log"] = {"entries": [{"id": f"e-{n}"} | one for n, one in enumerate(entries)]}
    return data


def begun(day: str) -> Data:
    return {"done_on": day, "job": {"planting": "lane-27", "step": "autumn_kill"}}


def test_a_contract_that_is_not_approved_before_work_is_a_caution() -> None:
    assert codes(planned(under()), "cover") == {"C304"}
    assert codes(planned(under(approved_on="2026-08-20")), "cover") == set()
    later = codes(planned(under(approved_on="2026-08-21")), "cover")
    assert later == {"C304", "N384"}
    logged = under(begun("2026-08-09"), approved_on="2026-08-10")
    assert codes(planned(logged), "cover") == {"C304"}
    in_time = under(begun("2026-08-10"), approved_on="2026-08-10")
    assert codes(planned(in_time), "cover") == set()


def test_a_job_that_opened_before_the_approval_is_a_caution() -> None:
    inventory = inventory_of(under(approved_on="2026-09-11"))
    plan = make_plan(inventory, SEASON, DAY(2026, 9, 12))
    assert codes(plan, "cover") == {"C304"}
    in_time = inventory_of(under(approved_on="2026-09-10"))
    plan = make_plan(in_time, SEASON, DAY(2026, 9, 12))
    assert codes(plan, "cover") == set()


@pytest.mark.parametrize("by", ["id", "name"])
def test_a_contract_that_is_a_cost_share_is_told_once(by: str) -> None:
    data = under()
    share = {"id": "program", "name": "ten-year cover", "planting": "lane-27", "pays_usd": 5}
    if by == "id":
        share["name"] = "another name"
        data["papers"]["contracts"][0]["cost_share"] = ["program"]
    data["money"] = {"cost_share": [share]}
    plan = planned(data)
    assert codes(plan, "cover") == set()
    assert "C264" in codes(plan, "program")


def test_work_that_the_contract_s_plan_does_not_name_is_a_caution() -> None:
    named = {"approved_on": "2026-08-01"}
    assert "C305" not in codes(planned(under(**named)))
    by_step = named | {"work_allowed": ["autumn_kill"]}
    assert "C305" not in codes(planned(under(**by_step)))
    other = named | {"work_allowed": ["sow", "mow", "spring_burn_down"]}
    assert "C305" in codes(planned(under(**other)))
    assert "C305" not in codes(planned(small_property()))


def test_a_contract_whose_paper_is_not_typed_is_a_note_on_the_place() -> None:
    data = under()
    del data["papers"]
    assert "N383" in codes(planned(data), "lane")
    assert "N383" not in codes(planned(under()), "lane")
    data["screens"]["screens"][0]["contract"] = "none"
    assert "N383" not in codes(planned(data), "lane")


def test_a_permit_of_a_later_day_does_not_count_yet() -> None:
    data = small_property()
    permit = {"id": "leave", "kind": "water", "places": "all", "approved_on": "2026-08-21"}
    data["papers"] = {"permits": [permit]}
    assert codes(planned(data), "leave") == {"N384"}
    permit["approved_on"] = "2026-08-20"
    assert codes(planned(data), "leave") == set()


def mown(*helpers: Data, length_ft: float = 726) -> Data:
    """The mowing is the owner's own, with a machine: 0.515625 hours on the acre of 726 ft."""
    data = small_property()
    data["readers"]["readers"][0]["jobs"][0]["steps"] = ["autumn_kill"]
    data["equipment"]["machines"] = [MOWER]
    data["screens"]["screens"][0]["length_ft"] = length_ft
    the_work(data).append({"step": "first_summer_mowing", "machine": "mower"})
    data["people"] = {"helpers": list(helpers)}
    return data


ONE_HOUR = {"id": "me", "months": [{"month": one, "free_hours": 1} for one in ("june", "july")]}
NONE_IN_AUGUST = {"id": "me", "weekend_hours": 0}


def test_hours_free_are_weekends_times_hours_or_those_of_the_month() -> None:
    helper = {"id": "me", "weekend_hours": 3, "months": [{"month": "july", "free_hours": 5}]}
    plan = planned(mown(helper, {"id": "friend", "weekend_hours": 2}))
    # June 2027 has four Saturdays: 4 x (3 + 2). July has five: 5 of one, 5 x 2 of the other.
    assert [str(one.first) for one in own_months(plan)] == [
        "2027-06-01",
        "2027-07-01",
        "2027-08-01",
    ]
    assert [one.free.value for one in own_months(plan)][:2] == [20, 15]
    assert [one.work.value for one in own_months(plan)] == pytest.approx([0.515625] * 3)
    assert [one.only for one in own_months(plan)] == [None] * 3


def test_weekends_before_the_plan_s_day_are_not_free() -> None:
    inventory = inventory_of(mown({"id": "me", "weekend_hours": 3}))
    # Saturdays of June 2027 are the 5th, 12th, 19th and 26th.
    left = [
        free_in(make_plan(inventory, SEASON, DAY(2027, 6, day)), (DAY(2027, 6, 1),))
        for day in (1, 12, 13)
    ]
    assert [one.value for one in left] == [12, 9, 6]


def test_more_hours_of_work_than_free_is_a_caution_until_somebody_helps() -> None:
    # 8 acres take 4.125 hours. June and July have an hour each, August none; in all 2.
    short = planned(mown(ONE_HOUR, length_ft=726 * 8))
    (run,) = overfull(short)
    assert (run.first, run.last) == (DAY(2027, 6, 1), DAY(2027, 8, 1))
    assert (run.work.value, run.free.value) == (pytest.approx(4.125), 2)
    assert codes(short, "hours/2027-06") == {"C308"}
    friend = {"id": "friend", "months": [{"month": "june", "free_hours": 2.2}]}
    assert overfull(planned(mown(ONE_HOUR, friend, length_ft=726 * 8))) == ()
    enough = planned(mown(ONE_HOUR, friend, length_ft=726 * 8))
    assert codes(enough, "hours/2027-06") == set()


def test_work_that_fits_into_the_months_around_is_no_caution() -> None:
    # 0.515625 hours, none free in June and August, and one in July: it is done in July.
    july = {"id": "me", "months": [{"month": "july", "free_hours": 1}]}
    assert overfull(planned(mown(july))) == ()
    assert len(overfull(planned(mown(NONE_IN_AUGUST)))) == 1


def test_what_is_hired_or_handed_over_takes_no_hours_of_the_owner() -> None:
    hired = mown(NONE_IN_AUGUST)
    jobs = [{"planting": "lane-27", "steps": ["first_summer_mowing"]}]
    hired["money"] = {"hires": [{"id": "crew", "jobs": jobs, "price_usd": 90}]}
    assert own_work(planned(hired)) == ()
    handed = mown(NONE_IN_AUGUST)
    handed["readers"]["readers"][0]["jobs"][0]["steps"] = ["first_summer_mowing"]
    assert own_work(planned(handed)) == ()
    assert overfull(planned(handed)) == ()


def test_nobody_s_hours_typed_says_nothing_of_hours() -> None:
    plan = planned(mown())
    assert own_months(plan) == ()
    assert overfull(plan) == ()
    assert not [one for one in plan.findings if one.code == "C308"]


def test_the_page_of_dates_and_papers_is_the_owner_s_alone() -> None:
    data = under(approved_on="2026-08-01")
    plan = planned(data)
    theirs = seen_by(plan, inventory_of(data).readers[0])
    assert "dates.md" in {one.address for one in make_book(plan).pages}
    assert "dates.md" not in {one.address for one in make_book(theirs).pages}
    assert (
        theirs.land.dates,
        theirs.land.contracts,
        theirs.land.applicators,
        theirs.land.helpers,
    ) == ((), (), (), ())
    assert plan.as_of == AS_OF
