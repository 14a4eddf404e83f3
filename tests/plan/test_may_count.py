"""What a stop says of sprayings that may count: which days, in order, and which names are near."""

import dataclasses
import datetime

from generator.inventory.fields import Where
from generator.plan.labels.may_count import may_count_stops, unsaid_stops
from generator.plan.labels.yearly_sums import Gap, PlannedSpray
from generator.reference.active_names import ActiveName
from tests.plan.test_at_the_bounds import spray

WHERE = Where("products.yaml", 7, 3)
JOB = "lane/2027/kill"


def lacking(gap: Gap, opens: str, closes: str = "") -> PlannedSpray:
    return dataclasses.replace(spray("log", opens, closes), gaps=frozenset({gap}))


def words_of(*sprayings: PlannedSpray) -> list[str]:
    return [one.words for one in unsaid_stops(sprayings, JOB, WHERE)]


def test_each_day_is_told_once_and_the_first_comes_first() -> None:
    (words,) = words_of(
        lacking("amount", "2026-06-02"),
        lacking("amount", "2026-05-01", "2026-05-04"),
        lacking("amount", "2026-06-02"),
    )
    assert ": May 1, 2026 to May 4, 2026, Jun 2, 2026." in words


def test_a_spraying_of_no_known_day_is_told_as_such() -> None:
    unknown = lacking("amount", "2026-06-02")
    for opens, closes in ((None, None), (datetime.date(2026, 6, 2), None)):
        (words,) = words_of(dataclasses.replace(unknown, opens=opens, closes=closes))
        assert ": on a day that is not known." in words


def test_each_thing_left_out_has_a_stop_of_its_own_with_its_own_days() -> None:
    found = words_of(lacking("product", "2026-06-02"), lacking("area", "2026-06-03"))
    assert [("Jun 2, 2026" in one, "Jun 3, 2026" in one) for one in found] == [
        (False, True),
        (True, False),
    ]


def test_names_that_are_near_are_asked_by_their_names() -> None:
    mine = dataclasses.replace(
        spray("mine", "2026-09-10"),
        actives=(ActiveName("made-up alderane"), ActiveName("made-up aldarane")),
    )
    other = dataclasses.replace(
        spray("log", "2026-09-20"),
        product_id="second",
        product_name="Second",
        actives=(ActiveName("made-up aldorane"),),
    )
    (stop,) = may_count_stops(mine, [other], JOB, WHERE)
    assert stop.code == "S203"
    near = "Is made-up aldorane of Second the same as made-up alderane or made-up aldarane of Brew?"
    assert stop.words.startswith(near)
    same = dataclasses.replace(other, actives=(*mine.actives, *other.actives))
    assert list(may_count_stops(mine, [same], JOB, WHERE)) == []
    pooled = dataclasses.replace(mine, actives=(), pooled=(ActiveName("made-up aldorane"),))
    assert list(may_count_stops(pooled, [other], JOB, WHERE)) == []
