"""What a tag draws: each caution appears, and goes once the cure is done."""

import pytest

from generator.plan.sowing.seed_findings import MUST_BE_READ
from generator.reference.library import sources, species
from tests.plan.planned import planned
from tests.plan.sown import codes_on, found_on, sown, the_lot, with_lot
from tests.properties import Data

PEA = "partridge-pea"


def tagged(**changes: object) -> Data:
    data = sown()
    tag = the_lot(data)["tag"] | {"tested_on": "2026-06-02"} | changes
    the_lot(data)["tag"] = {key: value for key, value in tag.items() if value is not None}
    return data


@pytest.mark.parametrize(
    ("tested", "told"),
    [
        # the job closes on Mar 3, 2027, 21 days before freezing and thawing ends early
        ("2026-03-03", False),
        ("2026-03-02", True),
        ("2024-05-01", True),
        (None, True),
    ],
)
def test_a_seed_test_is_good_for_a_year_on_the_job_s_own_day(
    tested: str | None, told: bool
) -> None:
    plan = planned(tagged(tested_on=tested))
    assert ("C232" in codes_on(plan)) == told
    if told:
        words = found_on(plan, "C232").words
        assert ("has no date" in words) == (tested is None)
        assert "common practice" in words
        assert "state" in words


def test_noxious_weed_seed_is_told_by_name() -> None:
    plan = planned(tagged(noxious_weeds="18 seeds of a thistle in a pound"))
    assert "18 seeds of a thistle" in found_on(plan, "C233").words
    assert "C233" not in codes_on(planned(tagged()))


def test_treated_seed_is_told_with_what_keeps_people_and_wildlife_safe() -> None:
    plan = planned(tagged(treated="a fungicide, dyed pink"))
    found = found_on(plan, "C234")
    for words in (found.words, found.words_for_others):
        for wanted in ("gloves", "not for food or feed", "wildlife", "tag"):
            assert wanted in words
    assert "dyed pink" in found.words
    assert "the tag decides" in found.cure
    assert "C234" not in codes_on(planned(tagged()))


@pytest.mark.parametrize("printed", ["none", "None found", "none listed.", "Untreated", "nothing"])
def test_a_tag_that_says_none_lists_none(printed: str) -> None:
    plan = planned(tagged(treated=printed, noxious_weeds=printed))
    assert not codes_on(plan) & {"C233", "C234"}


@pytest.mark.parametrize("printed", ["not treated with this, but that", "no. 7 fungicide", "none?"])
def test_what_only_begins_like_none_is_told(printed: str) -> None:
    plan = planned(tagged(treated=printed, noxious_weeds=printed))
    assert codes_on(plan) >= {"C233", "C234"}


def legume(kind: str = PEA, **inoculant: str) -> Data:
    data = tagged()
    with_lot(data, "pea", kind)
    if inoculant:
        the_lot(data, 1)["inoculant"] = inoculant
    data["screens"]["screens"][0]["plantings"][0]["seed"].append(
        {"species": kind, "lot": "pea", "rate_pls_lb_per_ac": 2}
    )
    return data


GOOD = {"group": "EL", "expires_on": "2027-06-30"}


@pytest.mark.parametrize(
    ("inoculant", "codes"),
    [
        ({}, {"C235"}),
        (GOOD, set()),
        (GOOD | {"group": "Cowpea type (EL)"}, set()),
        (GOOD | {"group": "alfalfa and sweet clover"}, {"C236"}),
        (GOOD | {"expires_on": "2027-03-03"}, set()),
        (GOOD | {"expires_on": "2027-03-02"}, {"C236"}),
        # a month counts from its first day, as that of a seed test does
        (GOOD | {"expires_on": "3/2027"}, {"C236"}),
        (GOOD | {"expires_on": "4/2027"}, set()),
        ({"group": "EL"}, {"N321"}),
    ],
)
def test_a_legume_wants_fresh_inoculant_of_its_group(
    inoculant: dict[str, str], codes: set[str]
) -> None:
    plan = planned(legume(**inoculant))
    assert codes_on(plan) & {"C235", "C236", "N321"} == codes


def test_a_legume_whose_group_is_not_known_still_wants_one() -> None:
    missing = found_on(planned(legume("illinois-bundleflower")), "C235")
    assert "its seller names" in missing.words
    typed = planned(legume("illinois-bundleflower", group="what the seller named"))
    assert codes_on(typed) & {"C235", "C236"} == set()


def test_grass_wants_none() -> None:
    assert codes_on(planned(tagged())) & {"C235", "C236", "N321"} == set()


def test_a_group_of_inoculant_was_read_in_a_source() -> None:
    grouped = [one for one in species().values() if one.inoculant_group]
    assert grouped
    assert all(sources()[one.inoculant_source].trust == "published" for one in grouped)
    assert all(one.legume for one in grouped)


def test_a_label_for_grass_does_not_clear_a_legume_among_it() -> None:
    kill = "lane/2027/autumn_kill"
    assert "S104" not in codes_on(planned(tagged()), kill)
    data = legume(**GOOD)
    assert "S104" in codes_on(planned(data), kill)
    card = data["products"]["products"][0]["label"]
    card["uses"][0]["covers"]["kinds"] = ["native_grass", "native_legume"]
    assert "S104" not in codes_on(planned(data), kill)


def test_age_is_judged_where_the_last_day_waits_for_a_sign() -> None:
    # the sowing opens Jan 20, 2027 whatever is typed; its last day waits for the end of winter
    data = tagged(tested_on="2026-01-19")
    del data["property"]["season_signs"]["freeze_thaw_ends"]
    assert "C232" in codes_on(planned(data))
    the_lot(data)["tag"]["tested_on"] = "2026-01-21"
    assert "C232" not in codes_on(planned(data))


def test_inoculant_past_its_date_is_told_where_the_last_day_waits_for_a_sign() -> None:
    data = legume(**GOOD | {"expires_on": "2027-01-19"})
    del data["property"]["season_signs"]["freeze_thaw_ends"]
    assert "is good until Jan 19, 2027" in found_on(planned(data), "C236").words
    the_lot(data, 1)["inoculant"]["expires_on"] = "2027-01-20"
    assert "C236" not in codes_on(planned(data))


@pytest.mark.parametrize(
    ("part", "most", "code"), [("weed_pct", 1, "C243"), ("other_crop_pct", 2, "C244")]
)
def test_much_of_what_is_not_sown_is_told(part: str, most: float, code: str) -> None:
    found = found_on(planned(tagged(**{part: most + 0.1})), code)
    figures = dict(found.figures)
    assert figures["On the tag"].value == pytest.approx((most + 0.1) / 100)
    assert figures["Seldom over"].value == most
    assert found.words_for_others
    assert code not in codes_on(planned(tagged(**{part: most})))
    assert code not in codes_on(planned(tagged()))


@pytest.mark.parametrize("blank", ["noxious_weeds", "treated"])
def test_what_is_not_typed_from_the_tag_is_not_taken_for_none(blank: str) -> None:
    found = found_on(planned(tagged(**{blank: None})), "C245")
    assert f"Type {blank};" in found.to_type
    assert MUST_BE_READ[blank] in found.words
    assert "gloves" in found.words_for_others
    assert "C245" not in codes_on(planned(tagged(**{blank: "none"})))
